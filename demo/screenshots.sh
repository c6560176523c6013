#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Pictures of each page, light and dark, for the README: opens the demo book in a real window on a
# virtual screen and turns the pages by keyboard. Needs what demo/run.sh builds.
#   demo/screenshots.sh [FOLDER]     default: demo/screenshots
set -euo pipefail
cd "$(dirname "$0")/.."
source demo/packages.sh
install_missing xvfb xauth xdotool openbox imagemagick x11-utils
out=$(realpath -m "${1:-demo/screenshots}")
mkdir -p "$out"
[ -f build/demo/van.ohmwright ] || env -u DISPLAY -u WAYLAND_DISPLAY demo/run.sh >/dev/null
export out program="${OHMWRIGHT:-$PWD/build/release/bin/ohmwright}" book="$PWD/build/demo/van.ohmwright"

xvfb-run -a -s "-screen 0 1280x800x24" bash -c '
    export HOME=$(mktemp -d) XDG_RUNTIME_DIR=$(mktemp -d) QT_QPA_PLATFORM=xcb LC_ALL=C.UTF-8
    openbox & sleep 1
    "$program" "$book" & app=$!
    window=$(timeout 30 xdotool search --sync --onlyvisible --pid $app | tail -1)
    xdotool windowsize --sync $window 1280 800 windowmove $window 0 0 windowfocus --sync $window
    sleep 2
    # a picture once nothing changes any more: the sheet is laid out, the forecast made
    still() {
        for turn in $(seq 40); do
            import -window root -strip "$1"
            sleep 1.5
            import -window root -strip "$HOME/next.png"
            cmp -s "$1" "$HOME/next.png" && return
        done
    }
    for shade in light dark; do
        page=0
        for name in bench parts build-order budget checks sheet; do
            page=$((page + 1))
            xdotool key ctrl+$page
            sleep 4
            still "$out/$name-$shade.png"
        done
        xdotool key F9
        sleep 1
    done
    kill $app'
echo "Wrote $out"
