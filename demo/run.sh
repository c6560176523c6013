#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds Ohmwright, makes the demo book and opens it. Without a display it prints the four everyday
# answers and writes the build sheet instead. On a fresh Debian 12 it installs what is missing.
set -euo pipefail
cd "$(dirname "$0")/.."
source demo/packages.sh
install_missing "${build_packages[@]}"
cmake --preset release >/dev/null
cmake --build build/release -- -j"$(nproc)" --quiet 2>/dev/null || cmake --build build/release -- -j"$(nproc)"

out=build/demo
book=$out/van.ohmwright
rm -rf "$out"
mkdir -p "$out"
build/release/bin/ohmwright_draw_pictures demo "$out"
build/release/bin/ohmwright load "$book" "$out/build.json"

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    exec build/release/bin/ohmwright "$book"
fi

ohmwright() { build/release/bin/ohmwright "$@"; }
told() { printf '\n== %s\n' "$1"; }
told "Log a part"
ohmwright log-part "$book" --name "Spare contactor" --seller "Bench find" --price "45 EUR" \
    --circuit traction --rating "voltage,limit,DC=?" --warranty-days 90
told "What holds up the next milestone"
ohmwright holdups "$book" || true   # exit 1 says: yes, something does
told "Spend against budget"
ohmwright budget "$book" || true
told "Does it fit together"
ohmwright checks "$book" || true   # exit 1 says: not all of it, or not known yet
told "The build sheet"
ohmwright sheet "$book" --out "$out/build-sheet.pdf"
