#!/usr/bin/env bash
# Installs what is missing, builds Plumule and opens it on a fresh copy of the invented sample room.
# Without a display it prints today's round and the season's answer, and draws every page into a folder.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
source "$root/app/prepare.sh"

install_missing "${build_packages[@]}"
configure "$root/build"
build "$root/build" --target plumule
plumule=$root/build/plumule

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  exec "$plumule" --sample
fi

folder=$(mktemp -d "${TMPDIR:-/tmp}/plumule-XXXXXX")
"$plumule" sample "$folder/sample.plumule"
echo
"$plumule" round "$folder/sample.plumule"
echo
"$plumule" season "$folder/sample.plumule"
echo
"$plumule" pictures "$folder/sample.plumule" "$folder/pictures"
echo "There is no display here. The pages are drawn in $folder/pictures"
