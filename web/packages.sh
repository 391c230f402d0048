# Sourced by web/run and tests/run: need WHAT PACKAGE notes a package whose command or file is missing (need_library: whose
# library),
# install_needed installs what was noted, or says in one line what is missing where it may not.
missing_packages=()

need() {
    if [[ $1 == /* ]]; then [[ -e $1 ]] && return; else command -v "$1" >/dev/null && return; fi
    missing_packages+=("$2")
}

need_library() {
    [[ $(/sbin/ldconfig -p) == *"$1 "* ]] || missing_packages+=("$2")
}

need_for_page() {
    need cmake cmake
    need ninja ninja-build
    need emcc emscripten
    need node nodejs
    need /usr/share/nodejs/acorn/package.json node-acorn
    need /usr/include/nlohmann/json.hpp nlohmann-json3-dev
    need pyftsubset fonttools
    need xz xz-utils
    need esbuild esbuild
    need /usr/share/fonts/truetype/open-sans/OpenSans-Regular.ttf fonts-open-sans
}

need_for_tests() {
    need_for_page
    need g++ g++
    need npm npm
    need /usr/include/doctest/doctest.h doctest-dev
    need /usr/include/glpk.h libglpk-dev
    need_library libzbar.so.0 libzbar0
    need chromium chromium
    need firefox-esr firefox-esr
    need WebKitWebDriver webkit2gtk-driver
    need Xvfb xvfb
    need_library libEGL.so.1 libegl1  # with the drawing in software that comes along
    need_library libGL.so.1 libgl1
    need /usr/share/fonts/truetype/dejavu/DejaVuSans.ttf fonts-dejavu-core            # Arabic, Hebrew, Greek, Cyrillic
    need /usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf fonts-droid-fallback  # ideographs, kana
    need clang-format clang-format
    need clang-tidy clang-tidy
}

install_needed() {
    [[ ${#missing_packages[@]} -eq 0 ]] && return
    if [[ $(id -u) -ne 0 ]]; then
        echo "Missing packages; as root: apt-get install ${missing_packages[*]}" >&2
        exit 1
    fi
    echo "Installing ${missing_packages[*]}"
    export DEBIAN_FRONTEND=noninteractive
    mkdir -p "$root/build"
    local log=$root/build/install.log
    if ! { apt-get -q update && apt-get -q -y --no-install-recommends install "${missing_packages[@]}"; } \
        > >(tee "$log" | sed -un 's/^Setting up \([^ :]*\).*/  \1/p; s/^Need to get.*/  &/p') 2>&1; then
        echo "Could not install ${missing_packages[*]}: $(grep -m1 '^E:' "$log")" >&2
        exit 1
    fi
    missing_packages=()
}
