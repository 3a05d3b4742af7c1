#!/usr/bin/env bash
# Runs each fuzzer for so many seconds under the address and undefined-behaviour sanitizers, from the
# seeds in tests/fuzz/seeds. Needs Debian's package clang, besides what app/prepare.sh installs.
#
#   tests/fuzz/run.sh [SECONDS]     60 of each unless told otherwise
#
# What a fuzzer meets anew is kept in build-fuzz/<target>; what it fails on is written there as
# crash-… or timeout-…, to be mended and put among the seeds. Exits non-zero where one fails.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
seconds=${1:-60}
command -v clang++ >/dev/null || { echo "Please install the package clang." >&2; exit 1; }

cmake -S "$root" -B "$root/build-fuzz" -G Ninja -DPLUMULE_CORE_ONLY=ON -DPLUMULE_FUZZ=ON \
  -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_C_COMPILER=clang >/dev/null
cmake --build "$root/build-fuzz" --target fuzz_table fuzz_scale fuzz_journal fuzz_changeset

failed=0
for target in table scale journal changeset; do
  kept=$root/build-fuzz/$target
  mkdir -p "$kept"
  echo "== $target, $seconds s"
  "$root/build-fuzz/tests/fuzz_$target" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2048 \
    -max_len=4096 -artifact_prefix="$kept/" -print_final_stats=1 -verbosity=0 \
    "$kept" "$root/tests/fuzz/seeds/$target" || failed=1
done
exit "$failed"
