# Shared by packaging/run and packaging/test: system packages and the virtual environment.
# Sourced by bash with `set -euo pipefail` in force; nothing here runs on its own.
# shellcheck shell=bash

checkout=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.." && pwd -P)
venv=$checkout/.venv

# What Qt loads, as "library package": a library is looked for, not a package, because other
# Debian-like systems call the packages slightly differently.
qt_libraries=(
    "libGL.so.1 libgl1"
    "libEGL.so.1 libegl1"
    "libglib-2.0.so.0 libglib2.0-0"
    "libfontconfig.so.1 libfontconfig1"
    "libdbus-1.so.3 libdbus-1-3"
    "libxkbcommon.so.0 libxkbcommon0"
    "libxkbcommon-x11.so.0 libxkbcommon-x11-0"
    "libxcb-cursor.so.0 libxcb-cursor0"
    "libxcb-icccm.so.4 libxcb-icccm4"
    "libxcb-keysyms.so.1 libxcb-keysyms1"
    "libxcb-shape.so.0 libxcb-shape0"
)
if [[ -n ${WAYLAND_DISPLAY:-} ]]; then
    qt_libraries+=("libwayland-cursor.so.0 libwayland-cursor0")
fi

say() { printf '%s\n' "$*" >&2; }

# Prints the packages whose libraries the loader does not know.
missing_qt_packages() {
    local known entry
    known=$(/sbin/ldconfig -p 2>/dev/null || true)
    for entry in "${qt_libraries[@]}"; do
        [[ $known == *"${entry%% *} "* ]] || printf '%s\n' "${entry##* }"
    done
}

# Prints the interpreter to build the environment with: 3.11 or newer, with venv complete.
find_python() {
    local name
    for name in python3 python3.11 python3.12 python3.13 python3.14; do
        if "$name" -c 'import sys, venv, ensurepip; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
            command -v "$name"
            return 0
        fi
    done
    return 1
}

# The one line that a person can type to get these packages.
install_line() { printf 'sudo apt-get update && sudo apt-get install -y --no-install-recommends %s' "$*"; }

# True when apt-get is there and may be used: as root, or through sudo that asks no password or can ask a person.
can_install() {
    command -v apt-get >/dev/null || return 1
    [[ $(id -u) -eq 0 ]] || { command -v sudo >/dev/null && { [[ -t 0 ]] || sudo -n true 2>/dev/null; }; }
}

apt() {
    local as_root=()
    [[ $(id -u) -eq 0 ]] || as_root=(sudo)
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq "$@"
}

# Installs the packages named, or says what to type and fails. The tools' own chatter is shown only on failure.
install_packages() {
    local log
    [[ $# -gt 0 ]] || return 0
    if can_install; then
        say "Installing system packages: $*"
        log=$(mktemp)
        if apt update >"$log" 2>&1 && apt install -y --no-install-recommends "$@" >"$log" 2>&1; then
            rm -f -- "$log"
            return 0
        fi
        tail -n 15 -- "$log" >&2
        rm -f -- "$log"
    fi
    say "These system packages are missing and could not be installed here: $*"
    say "On Debian or Ubuntu, install them with:"
    say "    $(install_line "$@")"
    return 1
}

# True when the environment starts and was made for this very folder (a moved checkout needs a new one).
environment_works() {
    [[ -f $venv/made-for && $(<"$venv/made-for") == "$checkout" ]] && "$venv/bin/python" -c '' 2>/dev/null
}

# ensure_environment REQUIREMENTS PACKAGE...: the environment with exactly these versions, and the system packages that
# are missing. Does next to nothing when all is in place. Sets `qt_packages_missing` to what Qt still lacks.
ensure_environment() {
    local requirements=$1 wanted=()
    shift
    mapfile -t wanted < <(missing_qt_packages)
    wanted+=("$@")
    environment_works || find_python >/dev/null || wanted+=(python3-venv)
    install_packages "${wanted[@]}" || true
    mapfile -t wanted < <(missing_qt_packages)
    qt_packages_missing=${wanted[*]}
    environment_works && is_stamped "$requirements" && return 0
    make_environment "$requirements"
    # What the gate needs includes what the program needs.
    stamp "$checkout/packaging/requirements.txt"
    stamp "$requirements"
}

mark_of() { cat "$checkout/packaging/requirements.txt" "$1" | sha256sum; }
stamp_of() { printf '%s/made-from-%s' "$venv" "$(basename -- "$1")"; }
stamp() { mark_of "$1" >"$(stamp_of "$1")"; }
is_stamped() { [[ -f $(stamp_of "$1") && $(<"$(stamp_of "$1")") == "$(mark_of "$1")" ]]; }

# Makes the virtual environment where there is none that works, and installs the pinned versions in it.
make_environment() {
    local requirements=$1 python packages
    if ! environment_works; then
        if ! python=$(find_python); then
            say "Rigbuilder needs Python 3.11 or newer with its venv module. On Debian or Ubuntu:"
            say "    $(install_line python3-venv)"
            exit 1
        fi
        say "Making the virtual environment $venv"
        "$python" -m venv --clear "$venv"
        printf '%s' "$checkout" >"$venv/made-for"
    fi
    say "Installing pinned Python packages (only when they change)"
    "$venv/bin/python" -m pip install -qq --no-input --disable-pip-version-check \
        --only-binary :all: --requirement "$requirements" >&2
    packages=$("$venv/bin/python" -c 'import sysconfig; print(sysconfig.get_path("purelib"))')
    printf '%s\n' "$checkout" >"$packages/rigbuilder-checkout.pth"
}
