#!/usr/bin/env bash
# The steps of the gate that are about the C library; sourced by tests/gate.sh, which has `fail`, `counted`, `need`.

C_WARNINGS=(-Wall -Wextra -Wpedantic -Werror)
# Every careless call: tests/c/border.c and those of the later areas.
C_BORDERS=()
for c_border in tests/c/border*.c; do C_BORDERS+=("$(basename "$c_border" .c)"); done

# Builds and installs the library below the target folder; sets C_ROOT (DESTDIR) and C_LIB.
c_install() {
    need gcc gcc
    need g++ g++
    C_ROOT=$CARGO_TARGET_DIR/c-root
    rm -rf "$C_ROOT"
    DESTDIR=$C_ROOT bindings/c/install.sh --prefix=/opt/seamwright
    C_PREFIX=$C_ROOT/opt/seamwright C_LIB=$C_ROOT/opt/seamwright/lib C_WORK=$CARGO_TARGET_DIR/c-work
    mkdir -p "$C_WORK"
}

# c_build <compiler> <program> <source> [flags]: against the installed library, found where it was put.
c_build() {
    "$1" "${C_WARNINGS[@]}" "${@:4}" -I"$C_PREFIX/include" "$3" -o "$C_WORK/$2" -L"$C_LIB" -Wl,-rpath,"$C_LIB" \
        -lseamwright -lm
}

# c_headers <C compiler> <C++ compiler>: every standard, the header alone.
c_headers() {
    local standard header=$C_PREFIX/include/seamwright.h newest=c2x
    "$1" -std=c23 -x c -fsyntax-only /dev/null 2>/dev/null && newest=c23
    for standard in c99 c11 c17 $newest; do
        "$1" -std=$standard "${C_WARNINGS[@]}" -fsyntax-only -x c "$header" || fail "$1 -std=$standard refuses the header"
    done
    "$2" -std=c++17 "${C_WARNINGS[@]}" -fsyntax-only -x c++ "$header" || fail "$2 refuses the header"
    "$2" -std=c++17 "${C_WARNINGS[@]}" -fsyntax-only -x c++ "$C_PREFIX/include/seamwright.hpp" || fail "$2: the wrapper"
    "$2" -std=c++17 "${C_WARNINGS[@]}" -fno-exceptions -DSEAMWRIGHT_NO_EXCEPTIONS -fsyntax-only -x c++ \
        "$C_PREFIX/include/seamwright.hpp" || fail "$2 refuses the wrapper without exceptions"
    counted 7 "headers by $1 and $2"
}

# The symbols that the shared library offers, against the committed list.
c_symbols() {
    need nm binutils
    nm -D --defined-only "$C_LIB/libseamwright.so" | awk '$2 == "T" {print $3}' | LC_ALL=C sort >"$C_WORK/symbols.txt"
    diff tests/c/symbols.txt "$C_WORK/symbols.txt" || fail "the symbols are not those of tests/c/symbols.txt"
    local name
    while read -r name; do
        grep -qw "$name" tests/c/border*.c || fail "no tests/c/border*.c calls $name with what nobody means"
    done <tests/c/symbols.txt
    [[ $(readelf -d "$C_LIB/libseamwright.so") == *SONAME*"[libseamwright.so.0]"* ]] || fail "the soname is wrong"
    counted 3 "symbols, each with careless calls, and soname"
}

# The golden vectors by a C program, bit for bit; then every careless call.
c_programs() {
    mkdir -p "$C_WORK/dump"
    SEAMWRIGHT_C_DUMP=$C_WORK/dump cargo test -p seamwright-c --locked --test vectors --test rule_vectors
    cat "$C_WORK/dump/rule_cases.txt" >>"$C_WORK/dump/cases.txt"
    cat "$C_WORK/dump/rule_answers.txt" >>"$C_WORK/dump/answers.txt"
    c_build gcc vectors tests/c/vectors.c -std=c99 "$@"
    "$C_WORK/vectors" <"$C_WORK/dump/cases.txt" >"$C_WORK/dump/said.txt"
    cmp "$C_WORK/dump/said.txt" "$C_WORK/dump/answers.txt" || fail "the C program's bits are not the library's"
    counted "$(wc -l <"$C_WORK/dump/answers.txt")" "vectors by a C program"
    local program
    for program in "${C_BORDERS[@]}"; do
        c_build gcc "$program" "tests/c/$program.c" -std=c99 "$@"
        "$C_WORK/$program"
    done
    # One program for each area, its figures by hand or from published examples.
    for program in tests/c/areas/*.c; do
        c_build gcc "area_$(basename "$program" .c)" "$program" -std=c99 "$@"
        "$C_WORK/area_$(basename "$program" .c)"
    done
    c_build g++ wrapper tests/c/wrapper.cpp -std=c++17
    c_build g++ wrapper_plain tests/c/wrapper.cpp -std=c++17 -DSEAMWRIGHT_NO_EXCEPTIONS
    "$C_WORK/wrapper" && "$C_WORK/wrapper_plain"
    counted 2 "the C++ wrapper, with exceptions and without"
}

# The programs of the README, and that the README has them word for word.
c_readme() {
    c_build gcc example tests/c/example.c -std=c99
    "$C_WORK/example" | tee "$C_WORK/example.said"
    grep -qx 'efficiency 67.5 %, governing: .*' "$C_WORK/example.said" || fail "not the printed 67.5 %"
    # Twenty lines from the header to a rated joint; 60 744 lb/(3.5 x 24 x 5) by hand.
    c_build gcc rated tests/c/rated.c -std=c99
    [ "$("$C_WORK/rated")" = '144.6 psi, 15.5 years' ] || fail "not the 144.6 psi and 15.5 years worked by hand"
    [ "$(wc -l <tests/c/rated.c)" -le 20 ] || fail "tests/c/rated.c has more than twenty lines"
    # A sheet to sign with the printed 67.5 %, in 25 lines; of the sweep 37/60, 67.5 % again, and 49 857 N of 83 200 N.
    c_build gcc signed tests/c/signed.c -std=c99
    "$C_WORK/signed" >"$C_WORK/signed.said" || fail "no sheet to sign"
    grep -qx 'Efficiency 67.52 % over all modes; 67.52 % may be credited.' "$C_WORK/signed.said" || fail "not 67.5 %"
    grep -qx 'Prepared        A. Smithson' "$C_WORK/signed.said" || fail "the name is not on the sheet"
    c_build gcc swept tests/c/swept.c -std=c99
    "$C_WORK/swept" | tee "$C_WORK/swept.said"
    printf 'pitch %s\n' '60 mm: 61.7 %' '71 mm: 67.5 %' '80 mm: 59.9 %' \
        '20 mm: is not greater than the holes of a row taken together' | cmp - "$C_WORK/swept.said" ||
        fail "not the efficiencies worked by hand"
    local page
    for page in README.md:example bindings/c/README.md:{example,rated,signed,swept}; do
        python - "${page%:*}" "tests/c/${page#*:}.c" <<'PY' || fail "$page is not there word for word"
import sys
sys.exit(open(sys.argv[2]).read() not in open(sys.argv[1]).read())
PY
    done
    python - <<'PY' || fail "the conventions of bindings/c/README.md are not those of the header"
import sys
rules = open("bindings/c/conventions.txt").read()
rules = "\n".join(line[3:] for line in rules[rules.index(" *  1."):].splitlines())
sys.exit(rules not in open("bindings/c/README.md").read())
PY
    counted 10 "the C programs and conventions of the README"
}

# A project of a stranger, outside of the workspace, finds the library by pkg-config and by find_package.
c_stranger() {
    need pkg-config pkg-config
    need cmake cmake
    need make make
    local place how flags
    place=$(mktemp -d)
    cp tests/c/example.c tests/c/stranger/CMakeLists.txt "$place/"
    # Installed where it will stay: pkg-config's prefix is true there.
    bindings/c/install.sh --no-build --prefix="$place/root"
    export PKG_CONFIG_PATH=$place/root/lib/pkgconfig
    [ "$(pkg-config --modversion seamwright)" = "0.1.0" ] || fail "pkg-config says another version"
    read -ra flags <<<"$(pkg-config --cflags --libs seamwright)"
    gcc -o "$place/shared" "$place/example.c" "${flags[@]}"
    LD_LIBRARY_PATH=$place/root/lib "$place/shared" | cmp - "$C_WORK/example.said"
    # Taken whole: a pipe into `grep -q` may break before `ldd` has said all.
    [[ $(LD_LIBRARY_PATH=$place/root/lib ldd "$place/shared") == *libseamwright.so.0* ]] || fail "not linked with the soname"
    read -ra flags <<<"$(pkg-config --static --cflags --libs seamwright)"
    # The archive by its name: the linker prefers the shared library where both are.
    flags=("${flags[@]/#-lseamwright/-l:libseamwright.a}")
    gcc -o "$place/static" "$place/example.c" "${flags[@]}"
    "$place/static" | cmp - "$C_WORK/example.said"
    [[ $(ldd "$place/static") != *libseamwright* ]] || fail "the static program wants the shared library"
    cmake -S "$place" -B "$place/build" -DCMAKE_PREFIX_PATH="$place/root" >"$place/cmake.said"
    cmake --build "$place/build" >>"$place/cmake.said"
    for how in shared static; do "$place/build/example_$how" | cmp - "$C_WORK/example.said"; done
    rm -rf "$place"
    counted 4 "a stranger's project by pkg-config and CMake, shared and static"
}

# c_panics <archive>: how many symbols of the panic machinery it has.
c_panics() {
    [ -s "$1" ] || fail "no archive $1"
    llvm-nm "$1" 2>/dev/null | grep -c panicking || true
}

# c_bare_metal [feature]: the library without an operating system, one static archive per target; Debian's compiler
# where rustup's has not the target. With a feature beyond the usual ones only the first target, panics and all.
c_bare_metal() {
    need llvm-nm llvm
    local target sysroot="" targets=("${BARE_TARGETS[@]}")
    [ $# -eq 0 ] || targets=("${BARE_TARGETS[0]}")
    sysroot=$(rustc --print sysroot)
    for target in "${targets[@]}"; do
        local build=(rustc -p seamwright-c --profile firmware --locked --lib --crate-type staticlib --target "$target"
            --no-default-features --features "panic-handler${1:+,$1}")
        if [ -d "$sysroot/lib/rustlib/$target/lib" ]; then
            CARGO_TARGET_DIR=$CARGO_TARGET_DIR/bare cargo "${build[@]}"
        else
            debian rustc-web cargo-web rust-web-src
            CARGO_TARGET_DIR=$CARGO_TARGET_DIR/bare RUSTC_BOOTSTRAP=1 RUSTC=/usr/bin/rustc RUSTUP_TOOLCHAIN='' \
                /usr/bin/cargo "${build[@]}" -Zbuild-std=core
        fi
        [ -n "${1:-}" ] || [ "$(c_panics "$CARGO_TARGET_DIR/bare/$target/firmware/libseamwright_c.a")" = 0 ] ||
            fail "the archive for $target has a panic path: arm-none-eabi-objdump -dr says where"
    done
    counted ${#targets[@]} "C archives for bare metal, free of panics"
}

step_c() {
    python tests/c/check_parity.py
    c_install
    c_headers gcc g++
    c_symbols
    c_programs
    c_readme
    c_stranger
    c_bare_metal
}

# The library itself with address checks and coverage; the run-time part comes from clang.
c_instrumented() {
    local passes=(-Zsanitizer=address -Zexternal-clangrt -Cpasses=sancov-module
        -Cllvm-args=-sanitizer-coverage-level=3 -Cllvm-args=-sanitizer-coverage-inline-8bit-counters
        -Cllvm-args=-sanitizer-coverage-pc-table)
    C_HOST=$(rustc -vV | sed -n 's/^host: //p')
    RUSTC_BOOTSTRAP=1 RUSTFLAGS="${passes[*]}" CARGO_TARGET_DIR=$CARGO_TARGET_DIR/c-instrumented \
        cargo rustc -p seamwright-c --release --locked --lib --crate-type staticlib --target "$C_HOST"
}

# c_sanitized <program> <sanitizers>: against that library.
c_sanitized() {
    clang -std=c99 "${C_WARNINGS[@]}" -g -O1 -fsanitize="$2" -fno-sanitize-recover=all -I"$C_PREFIX/include" \
        "tests/c/$1.c" "$CARGO_TARGET_DIR/c-instrumented/$C_HOST/release/libseamwright_c.a" -lm -lpthread -ldl \
        -o "$C_WORK/$1_sanitized"
}

# Sanitizers, valgrind, clang, and a bounded run of the fuzzer.
step_c_full() {
    need valgrind valgrind
    need clang clang
    debian libclang-rt-14-dev
    c_install
    c_headers clang clang++
    c_programs -g -fsanitize=address,undefined -fno-sanitize-recover=all
    local program
    for program in "${C_BORDERS[@]}" vectors; do
        c_build gcc "${program}_plain" "tests/c/$program.c" -std=c99 -g
        valgrind -q --error-exitcode=9 --leak-check=full "$C_WORK/${program}_plain" <"$C_WORK/dump/cases.txt" \
            >"$C_WORK/valgrind.said" || fail "valgrind complains about $program"
    done
    counted $((${#C_BORDERS[@]} + 1)) "programs clean under valgrind"
    c_instrumented
    for program in "${C_BORDERS[@]}" vectors; do c_sanitized "$program" address,undefined; done
    for program in "${C_BORDERS[@]}"; do "$C_WORK/${program}_sanitized"; done
    "$C_WORK/vectors_sanitized" <"$C_WORK/dump/cases.txt" | cmp - "$C_WORK/dump/answers.txt"
    counted 1 "vectors by an instrumented library"
    c_sanitized fuzz fuzzer,address,undefined
    mkdir -p "$C_WORK/corpus"
    "$C_WORK/fuzz_sanitized" -seed=1 -max_len=1024 -len_control=0 -max_total_time="${C_FUZZ_SECONDS:-120}" "$C_WORK/corpus" >"$C_WORK/fuzz.said" 2>&1 ||
        { tail -40 "$C_WORK/fuzz.said"; fail "the fuzzer found something"; }
    tail -1 "$C_WORK/fuzz.said"
    counted 1 "a bounded run of fuzzing over the C border"
}
