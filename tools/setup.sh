# Sourced by run, test and bench: installs what is missing on Debian 12, builds one preset, shows progress.

cd "$(dirname "${BASH_SOURCE[0]}")/.."
project=$PWD
# Precompiled headers are kept by ccache only under this.
export CCACHE_SLOPPINESS=pch_defines,time_macros
export CCACHE_BASEDIR=$project DEBIAN_FRONTEND=noninteractive

started=$(date +%s)
say() { printf '[%4ds] %s\n' $(($(date +%s) - started)) "$*"; }
stop() {
  printf '%s: %s\n' "$(basename "$0")" "$*" >&2
  exit 1
}

# What each command needs, beyond the ones before it.
program_packages=(
  g++ cmake ninja-build ccache pkg-config
  libtomlplusplus-dev nlohmann-json3-dev libcli11-dev libboost1.81-dev libeigen3-dev
  libcairo2-dev libpng-dev libpango1.0-dev libqrencode-dev libicu-dev libcsv-dev
  libsqlite3-dev libsodium-dev libpq-dev libssl-dev zlib1g-dev libarchive-dev john-data
  fonts-b612 fonts-dejavu-core fonts-noto-core fonts-wqy-microhei
)
phone_packages=(emscripten)
test_packages=(
  "${phone_packages[@]}" libgtest-dev librapidcheck-dev
  clang-14 clang-tidy clang-format libclang-rt-14-dev
  poppler-utils zbar-tools coinor-cbc libical-dev libxml2-dev chromium faketime postgresql sqlite3 openssl
)
reference_packages=(r-base-core r-cran-lme4 r-cran-glmmtmb r-cran-mass r-cran-epitools)
bench_packages=(libbenchmark-dev coinor-cbc r-base-core r-cran-glmmtmb postgresql)

as_root() {
  if [ "$(id -u)" -eq 0 ]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo --preserve-env=DEBIAN_FRONTEND "$@"
  else
    stop "needs root or sudo to install: ${missing[*]}"
  fi
}

# Installs only what is missing and never removes anything.
install_packages() {
  missing=()
  local package
  for package in "$@"; do
    dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  if [[ " ${missing[*]} " == *" libboost1.81-dev "* ]] && dpkg-query -W -f='${db:Status-Status}' libboost1.74-dev 2>/dev/null | grep -qx installed; then
    stop 'libboost1.74-dev is installed and excludes libboost1.81-dev, which Lanework needs; nothing is removed here: remove it yourself (apt-get remove libboost1.74-dev) and start again'
  fi
  command -v apt-get >/dev/null || stop "needs Debian 12's apt-get to install: ${missing[*]}"
  say "installing ${#missing[@]} packages: ${missing[*]}"
  local log=build/install.log
  mkdir -p build
  : >"$log"
  if ! apt-cache show "${missing[@]}" >/dev/null 2>&1; then
    as_root apt-get update -q >>"$log" 2>&1 || stop "the package lists cannot be fetched: $(grep -m1 '^E:' "$log"), see $log"
  fi
  if ! as_root apt-get install -y -q --no-install-recommends --no-remove "${missing[@]}" >>"$log" 2>&1; then
    # Lists that are too old name packages that are gone; fetch them anew, once.
    as_root apt-get update -q >>"$log" 2>&1 || true
    as_root apt-get install -y -q --no-install-recommends --no-remove "${missing[@]}" >>"$log" 2>&1 ||
      stop "packages cannot be installed: $(grep -m1 '^E:' "$log"), see $log"
  fi
  say 'packages are there'
}

# A newer Node that is already there is used; else Debian's.
install_node() {
  if command -v node >/dev/null && [ "$(node -p 'process.versions.node.split(".")[0]' 2>/dev/null || echo 0)" -ge 18 ]; then
    return 0
  fi
  install_packages nodejs
}

install_npm_packages() {
  install_node
  command -v npm >/dev/null || install_packages npm
  [ node_modules/.package-lock.json -nt package-lock.json ] && return 0
  say 'installing npm packages'
  mkdir -p build
  npm ci --no-audit --no-fund --loglevel=error >build/npm.log 2>&1 || stop "npm packages cannot be installed: $(tail -1 build/npm.log), see build/npm.log"
}

# build_preset PRESET [TARGET...]: configures and builds into build/PRESET; a line every quarter of the way.
build_preset() {
  local preset=$1 log=build/$1.log
  shift
  mkdir -p build
  say "building $preset"
  if ! cmake --preset "$preset" >"$log" 2>&1; then
    grep -A8 -m1 'CMake Error' "$log" >&2 || tail -20 "$log" >&2
    stop "the build cannot be configured, see $log"
  fi
  if ! NINJA_STATUS='%f %t ' ninja -C "build/$preset" "$@" 2>&1 | tee -a "$log" | show_progress; then
    grep -E -A6 -m5 'FAILED|error:' "$log" >&2
    stop "the build failed, see $log"
  fi
}

# Reads 'done total ...' lines and says each quarter once.
show_progress() {
  local done_count total rest next=25
  while read -r done_count total rest; do
    [[ $done_count =~ ^[0-9]+$ && $total =~ ^[0-9]+$ ]] || continue
    while [ $total -ge 20 ] && [ $next -le 75 ] && [ $((100 * done_count)) -ge $((next * total)) ]; do
      say "  $next % of $total steps"
      next=$((next + 25))
    done
  done
}
