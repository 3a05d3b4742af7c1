#!/usr/bin/env bash
# Makes the rooms of many years (room and farm; giant where it is asked for), measures what is done in
# them beside the least that it could cost, and the window on them, prints the tables and leaves
# build-bench/bench_<room>.json and window_<room>.json. Room and farm take under ten minutes on two
# cores besides the compiling, and half a gigabyte for that long; giant half an hour and six gigabytes.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
source "$root/app/prepare.sh"
rooms=$(mktemp -d "${TMPDIR:-/tmp}/plumule-bench-XXXXXX")
trap 'rm -rf "$rooms"' EXIT
[[ $# -gt 0 ]] || set -- room farm

# The sums of core at their best; the window as everybody builds it.
cmake -S "$root" -B "$root/build-bench" -G Ninja -DCMAKE_BUILD_TYPE=Release -DPLUMULE_CORE_ONLY=ON \
      -DPLUMULE_BENCH=ON >/dev/null
build "$root/build-bench" --target plumule_life_bench >&2
cmake -S "$root" -B "$root/build" -G Ninja -DPLUMULE_BENCH=ON >/dev/null
build "$root/build" --target plumule_window_bench >&2

"$root/build-bench/tests/plumule_life_bench" "$rooms" "$@"
"$root/build/tests/plumule_window_bench" "$rooms" "$@"
cp "$rooms"/*.json "$root/build-bench/"
