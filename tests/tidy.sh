#!/usr/bin/env bash
# Runs clang-tidy with the checks of .clang-tidy, and exits non-zero on any finding.
#
#   tests/tidy.sh           the rooms with a source that differs from the branch this one left; on that
#                           branch itself, from the commit before (PLUMULE_TIDY_BASE names another)
#   tests/tidy.sh --all     every room; a quarter of an hour on two cores
#   tests/tidy.sh core/tray ui/tray …   these
#
# A room is compiled as one unit, and looked at as one: its headers are read once instead of once a file.
# Needs Debian's clang-tidy and git, and a finished build in build/ (BUILD names another), for what moc makes.
# In tests/run.sh with the first.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
build=${BUILD:-$root/build}
cd "$root"

base() {
  local left
  if [ -n "${PLUMULE_TIDY_BASE:-}" ]; then
    echo "$PLUMULE_TIDY_BASE"
    return
  fi
  left=$(git merge-base HEAD origin/HEAD 2>/dev/null || git merge-base HEAD main 2>/dev/null || true)
  if [ -n "$left" ] && [ "$left" != "$(git rev-parse HEAD)" ]; then
    echo "$left"
  else
    git rev-parse -q --verify HEAD~1 || git rev-parse HEAD
  fi
}

rooms_of_files() { sed -n 's,^\(\(core\|ui\|app\)/.*\)/[^/]*\.\(h\|cpp\)$,\1,p; s,^app/[^/]*\.\(h\|cpp\)$,app,p' | sort -u; }

case "${1:-}" in
--all) rooms=$(git ls-files core ui app | rooms_of_files) ;;
"") rooms=$({ git diff --name-only --diff-filter=d "$(base)"; git ls-files -o --exclude-standard; } | rooms_of_files) ;;
*) rooms=$(printf '%s\n' "$@") ;;
esac

# The units that the rooms are compiled as: core/tray is …/core/CMakeFiles/plumule_tray.dir/Unity/….
# clang can't read headers that another compiler precompiled; without them each room has to include what it
# uses.
units=$(ROOMS=$rooms python3 - "$build/compile_commands.json" "$root" <<'PYTHON'
import json, os, re, sys
source = re.compile(r'#include "' + re.escape(sys.argv[2]) + r'/((?:core|ui|app)(?:/[^"/]+)*)/[^"/]+\.cpp"')
rooms = set(os.environ["ROOMS"].split())
commands = json.load(open(sys.argv[1]))
precompiled = re.compile(r" -fpch-preprocess| -Winvalid-pch -include \S+/cmake_pch\.hxx")
for unit in commands:
    unit["command"] = precompiled.sub("", unit["command"])
folder = os.path.join(os.path.dirname(sys.argv[1]), "tidy")
os.makedirs(folder, exist_ok=True)
json.dump(commands, open(os.path.join(folder, "compile_commands.json"), "w"))
for unit in commands:
    path = unit["file"]
    if "/Unity/" not in path:
        continue
    if rooms & set(source.findall(open(path).read())):
        print(path)
PYTHON
)
[ -n "$units" ] || { echo "No room has changed that clang-tidy could look at."; exit 0; }

echo "clang-tidy looks at $(wc -l <<<"$units") units of $(wc -w <<<"$rooms") rooms"
# What moc makes, and that a unit includes sources, is nobody's handwriting; warnings are the compiler's.
findings=$(xargs -P "$(nproc)" -n 1 clang-tidy -p "$build/tidy" --quiet \
  --header-filter="^$root/(app|core|ui)/" --checks=-bugprone-suspicious-include \
  --extra-arg=-w <<<"$units" 2>&1 | grep -v 'warnings\? \(and [0-9]* errors\? \)\?generated\.$' || true)
if [ -n "$findings" ]; then
  echo "$findings"
  exit 1
fi
