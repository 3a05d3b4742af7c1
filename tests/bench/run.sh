#!/usr/bin/env bash
# Makes the rooms of many years (room and farm; giant where it is asked for), measures what is done in
# them beside the least that it could cost, prints the tables and leaves build-bench/bench_<room>.json.
# Room and farm take under ten minutes on two cores, and half a gigabyte for that long.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
build="$root/build-bench"
rooms=$(mktemp -d "${TMPDIR:-/tmp}/plumule-bench-XXXXXX")
trap 'rm -rf "$rooms"' EXIT

cmake -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DPLUMULE_CORE_ONLY=ON \
      -DPLUMULE_BENCH=ON >/dev/null
cmake --build "$build" --target plumule_life_bench -- -j2 >&2
[[ $# -gt 0 ]] || set -- room farm
"$build/tests/plumule_life_bench" "$rooms" "$@"
cp "$rooms"/bench_*.json "$build/"
