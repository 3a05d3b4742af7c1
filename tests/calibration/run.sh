#!/usr/bin/env bash
# Builds the whole calibration and prints its table; with a text, only the rooms or sections whose name
# holds it. Exits non-zero when a bound does not hold. On two cores under half an hour.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
build="$root/build-calibration"

cmake -S "$root" -B "$build" -G Ninja -DPLUMULE_CORE_ONLY=ON -DPLUMULE_CALIBRATION=ON >/dev/null
cmake --build "$build" --target plumule_calibration -- -j2 >&2
exec nice -n 10 "$build/tests/plumule_calibration" "$@"
