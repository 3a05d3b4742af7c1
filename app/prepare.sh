# Sourced by start.sh and tests/run.sh: what must be installed, and how the program is built.

build_packages=(
  build-essential cmake ninja-build ccache mold
  qt6-base-dev libqt6opengl6-dev libgl-dev libopengl-dev libxkbcommon-dev qt6-charts-dev
  qt6-svg-dev
  libqt6svg6 qt6-qpa-plugins
  libsqlite3-dev zlib1g-dev libeigen3-dev libboost-dev libboost-math-dev libexpected-dev libfmt-dev
  nlohmann-json3-dev libqrencode-dev libgtest-dev libgmock-dev
  fonts-inter fonts-dejavu-core
)
test_packages=(
  libbenchmark-dev clang-format clang-tidy python3 qt6-l10n-tools util-linux libzbar-dev libical-dev poppler-utils
)

# Installs those of the named packages that are missing; on another system says which are needed.
install_missing() {
  local missing=() name
  if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    echo "This script installs Debian 12's packages. Here, please install by hand what these hold:" >&2
    printf '  %s\n' "$@" >&2
    exit 1
  fi
  for name in "$@"; do
    dpkg-query -W -f '${Status}' "$name" 2>/dev/null | grep -q '^install ok installed$' || missing+=("$name")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
      echo "These packages are missing, and only root may install them: ${missing[*]}" >&2
      exit 1
    fi
    as_root=(sudo)
  fi
  echo "Installing: ${missing[*]}"
  "${as_root[@]}" apt-get update -q
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "${missing[@]}"
}

# configure DIR [cmake options…]: only when it was not done before; CMake sees later changes itself.
configure() {
  local folder=$1
  shift
  [ -f "$folder/build.ninja" ] || cmake -S "$root" -B "$folder" -G Ninja "$@" >/dev/null
}

build() {
  cmake --build "$1" --parallel "$(nproc)" "${@:2}"
}
