#!/usr/bin/env bash
# Tries disasters many times over and prints what they came to; some minutes.
#
#   tests/soak/run.sh [BUILD]     a configured build; build/ unless told otherwise
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
build=${1:-$root/build}
cmake --build "$build" --target test_soak
out=$(mktemp)
trap 'rm -f "$out"' EXIT
PLUMULE_SOAK=1 "$build/tests/test_soak" | tee "$out"
echo
echo "Figures:"
sed -n 's/^\[  FIGURES \] /  /p' "$out"
