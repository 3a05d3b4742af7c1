#!/usr/bin/env bash
# Lists the functions of core/ and ui/ that the program never reaches, so that only tests can call them:
# what the rooms' libraries define, less what is left in the linked program. Rooms are compiled with a
# section a function and the program is linked with --gc-sections, so what nothing calls is gone from it.
#
#   tests/unused.sh [BUILD]     a finished build; build/ unless told otherwise
#
# Exits non-zero when the list is not empty. Templates, inline functions and functions of one file are
# not seen; the compiler itself warns of the last. A function that the compiler takes into each of its
# callers is gone from the program too: within core/stats, which is optimised, one counts as reached
# where a source of core/stats calls it.
set -euo pipefail
export LC_ALL=C
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
build=${1:-$root/build}

# Names that may be unreached, each with its reason, as an extended regular expression.
allowed=(
  # The words of an enum, one expression each: taken into the repository or the fromText() beside them.
  '^plumule::toText\(plumule::(Grouping|ReadFrom|UnitSystem)\)$'
  # What a widget shows and no other widget asks, as its tests read it.
  '^plumule::ui::(LayoutGrid::chosen|MessageBar::text|PageHead::subtitle|WeighQuestion::(title|words))\(\) const$'
  # Whether a page is built yet, which is to be seen by nobody.
  '^plumule::ui::MainWindow::isBuilt\('
  # A test's own clock: a burst of keys is told by its milliseconds.
  '^plumule::ui::BurstReader::setTimeSource\('
)

# Whether a source of core/stats calls the function: bodies are indented, definitions are not.
is_called_in_stats() {
  local name=${1%%(*}
  name=${name##*::}
  grep -rqE "^ .*\b$name\(" --include='*.cpp' "$root/core/stats"
}

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

while IFS= read -r function; do
  if [[ $function != plumule::stats::* ]] || ! is_called_in_stats "$function"; then
    echo "$function"
  fi
done <"$work/unused" >"$work/rest"
mv "$work/rest" "$work/unused"

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
