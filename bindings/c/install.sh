#!/usr/bin/env bash
# Builds the C library and installs it like one: library, headers, pkg-config and CMake files.
#
#   bindings/c/install.sh [--prefix=/usr/local] [--libdir=lib] [--no-build]
#
# DESTDIR is put before every path, as packagers expect. Nothing outside DESTDIR/prefix is touched.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
prefix=/usr/local libdir=lib build=yes
for argument in "$@"; do
    case $argument in
        --prefix=*) prefix=${argument#*=} ;;
        --libdir=*) libdir=${argument#*=} ;;
        --no-build) build=no ;;
        *) echo "install.sh: unknown argument $argument" >&2; exit 2 ;;
    esac
done
case $prefix in /*) ;; *) echo "install.sh: the prefix must be absolute" >&2; exit 2 ;; esac
target=${CARGO_TARGET_DIR:-$here/../../target}/c-library
version=$(sed -n '/^\[workspace.package\]/,/^\[/s/^version = "\(.*\)"/\1/p' "$here/../../Cargo.toml")
major=${version%%.*}
if [ "$build" = yes ]; then
    # One kind at a time: together with an rlib, link-time optimisation would be off.
    for kind in staticlib cdylib; do
        CARGO_TARGET_DIR=$target cargo rustc --manifest-path "$here/Cargo.toml" --release --locked --lib --crate-type $kind
    done
fi
root=${DESTDIR:-}$prefix
mkdir -p "$root/include" "$root/$libdir/pkgconfig" "$root/$libdir/cmake/seamwright"
install -m 644 "$here/include/seamwright.h" "$here/include/seamwright.hpp" "$root/include/"
install -m 644 "$target/release/libseamwright_c.a" "$root/$libdir/libseamwright.a"
install -m 755 "$target/release/libseamwright_c.so" "$root/$libdir/libseamwright.so.$version"
ln -sf "libseamwright.so.$version" "$root/$libdir/libseamwright.so.$major"
ln -sf "libseamwright.so.$major" "$root/$libdir/libseamwright.so"
# What a program needs besides the archive.
private="-lpthread -ldl -lm"
fill() {
    sed -e "s|@PREFIX@|$prefix|g" -e "s|@LIBDIR@|$libdir|g" -e "s|@VERSION@|$version|g" -e "s|@MAJOR@|$major|g" \
        -e "s|@PRIVATE@|$private|g" "$here/install/$1" >"$2"
}
fill seamwright.pc.in "$root/$libdir/pkgconfig/seamwright.pc"
fill seamwrightConfig.cmake.in "$root/$libdir/cmake/seamwright/seamwrightConfig.cmake"
fill seamwrightConfigVersion.cmake.in "$root/$libdir/cmake/seamwright/seamwrightConfigVersion.cmake"
echo "seamwright $version installed in $root"
