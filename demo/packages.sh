# SPDX-License-Identifier: GPL-3.0-or-later
# Debian 12 packages the project needs, and a way to install those that are missing. Sourced by
# demo/run.sh and tests/run.sh.

build_packages=(
    g++ cmake ninja-build ccache pkg-config git
    qt6-base-dev libqt6sql6-sqlite qt6-svg-dev libqt6svgwidgets6 qt6-charts-dev libqt6opengl6-dev libxkbcommon-dev
    libspdlog-dev libsqlite3-dev libexpected-dev libqpdf-dev libical-dev nlohmann-json3-dev
    fonts-dejavu-core
)
# independent readers and validators the tests hold our output against
test_packages=(
    libgtest-dev libgmock-dev sqlite3 qpdf poppler-utils librsvg2-bin xvfb xauth xdotool
    python3 python3-networkx python3-scipy python3-jsonschema python3-icalendar locales
)
lint_packages=(clang-format-14 clang-tidy-19 clang-19)
bench_packages=(libbenchmark-dev python3-networkx)

install_missing() {
    local missing=()
    for package in "$@"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
    done
    [ ${#missing[@]} -eq 0 ] && return
    echo "Installing from Debian: ${missing[*]}"
    local sudo=()
    [ "$(id -u)" -eq 0 ] || sudo=(sudo)
    "${sudo[@]}" apt-get update -qq
    DEBIAN_FRONTEND=noninteractive "${sudo[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}
