#!/usr/bin/env bash
# Installs what is missing, checks the format, builds everything, has clang-tidy look at the rooms that
# changed, looks for functions that only tests reach and for long ones, and runs every test; core's tests
# run a second time under the address and undefined-behaviour sanitizers. Exits non-zero when any fails.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
source "$root/app/prepare.sh"

install_missing "${build_packages[@]}" "${test_packages[@]}"
find "$root/app" "$root/core" "$root/ui" "$root/tests" \( -name '*.h' -o -name '*.cpp' \) -print0 |
  xargs -0 clang-format --dry-run -Werror

export QT_QPA_PLATFORM=offscreen

configure "$root/build"
build "$root/build"
bash "$root/tests/tidy.sh"
bash "$root/tests/unused.sh" "$root/build"
python3 "$root/tests/measure.py" "$root"
ctest --test-dir "$root/build" --output-on-failure --parallel "$(nproc)"

# Without precompiled headers, so that a source of core's that forgets an include is found.
configure "$root/build-sanitize" -DPLUMULE_CORE_ONLY=ON -DPLUMULE_SANITIZE=ON \
          -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON
build "$root/build-sanitize"
ctest --test-dir "$root/build-sanitize" --output-on-failure --parallel "$(nproc)"
