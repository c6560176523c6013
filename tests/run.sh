#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds and runs all tests; on a fresh Debian 12 installs what is missing first.
#   tests/run.sh              all tests
#   tests/run.sh sanitize     the same with the address and undefined-behaviour sanitizers
#   tests/run.sh lint         clang-format and clang-tidy as configured
set -euo pipefail
cd "$(dirname "$0")/.."
source demo/packages.sh
preset=tests
case "${1:-}" in
    "") install_missing "${build_packages[@]}" "${test_packages[@]}" ;;
    sanitize) install_missing "${build_packages[@]}" "${test_packages[@]}"; preset=sanitize ;;
    lint) install_missing "${build_packages[@]}" "${test_packages[@]}" "${lint_packages[@]}"
        cmake --preset tests >/dev/null
        cmake --build build/tests -- -j"$(nproc)" >/dev/null
        git ls-files '*.cpp' '*.h' | xargs clang-format-14 --dry-run --Werror
        # clang 19 does not take qpdf 11's JSON.hh for C++20
        git ls-files '*.cpp' | grep -vx ui/sheet/pdf_finish.cpp | xargs -P "$(nproc)" -n 8 clang-tidy-19 --quiet -p build/tests
        exit ;;
    *) echo "tests/run.sh: no such argument: $1" >&2; exit 2 ;;
esac
cmake --preset "$preset" >/dev/null
cmake --build "build/$preset" -- -j"$(nproc)" --quiet 2>/dev/null || cmake --build "build/$preset" -- -j"$(nproc)"
export QT_QPA_PLATFORM=offscreen XDG_RUNTIME_DIR
XDG_RUNTIME_DIR=$(mktemp -d)
trap 'rm -rf "$XDG_RUNTIME_DIR"' EXIT

# Files that grew past one reason: a report, not a verdict.
long=$(git ls-files '*.cpp' '*.h' | xargs wc -l | awk '($2 ~ /\.cpp$/ && $1 > 400) || ($2 ~ /\.h$/ && $1 > 200) { if ($2 != "total") print "  " $2 " " $1 }')
[ -z "$long" ] || printf 'Files over 400 lines (200 for headers):\n%s\n' "$long"

ctest --test-dir "build/$preset" -j"$(nproc)" --output-on-failure --progress --no-tests=error
