#!/usr/bin/env bash
# Lists the functions of core/ and ui/ that the program never reaches, so that only tests can call them:
# what the rooms' libraries define, less what is left in the linked program. Rooms are compiled with a
# section a function and the program is linked with --gc-sections, so what nothing calls is gone from it.
#
#   tests/unused.sh [BUILD]     a finished build; build/ unless told otherwise
#
# Exits non-zero when the list is not empty. Templates, inline functions and functions of one file are
# not seen; the compiler itself warns of the last.
set -euo pipefail
export LC_ALL=C
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
build=${1:-$root/build}

# Names that may be unreached, each with its reason, as an extended regular expression.
allowed=(
)

[ -x "$build/plumule" ] || { echo "unused.sh: $build/plumule is not built" >&2; exit 2; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# Global functions of our own namespace, as one reads them; the two or three kinds of a constructor or
# destructor have one name and count as one.
functions_of() {
  nm --defined-only "$@" 2>/dev/null | sed -n 's/^[0-9a-f]* T //p' | grep '^_ZNK\?7plumule' | sort -u
}

functions_of "$build"/core/libplumule_*.a "$build"/ui/libplumule_*.a >"$work/defined"
nm --defined-only "$build/plumule" | sed -n 's/^[0-9a-f]* [Tt] //p' | grep '^_ZNK\?7plumule' | sort -u >"$work/kept"
comm -23 "$work/defined" "$work/kept" | c++filt | sort -u >"$work/gone"
c++filt <"$work/kept" | sort -u >"$work/kept_names"
comm -23 "$work/gone" "$work/kept_names" >"$work/unused"
for name in "${allowed[@]}"; do
  grep -vE "$name" "$work/unused" >"$work/rest" || true
  mv "$work/rest" "$work/unused"
done

if [ ! -s "$work/defined" ]; then
  echo "unused.sh: no function was found in $build" >&2
  exit 2
fi
if [ -s "$work/unused" ]; then
  echo "Functions that nothing but tests can reach:"
  sed 's/^/  /' "$work/unused"
  echo "$(wc -l <"$work/unused") in all"
  exit 1
fi
echo "Every function of core and ui is reached by the program."
