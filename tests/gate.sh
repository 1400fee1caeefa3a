#!/usr/bin/env bash
# Everything that a change must pass, the same at home and in CI.
#
#   tests/gate.sh quick    formatting, lints, source checks, tests            about four minutes
#   tests/gate.sh          all that a change needs                            about twenty minutes
#   tests/gate.sh full     also emulators, fuzzing, site, more random cases    up to an hour
#   tests/gate.sh only docs bare_metal    the named steps, while working on them
#
# Each step is a function `step_<name>`; the levels at the end list them. The gate stops at the first failure. Nothing
# is skipped: a tool that is missing is installed, or the step fails. The last line is the number of tests run, added up
# from the `test result:` lines of all steps; an ignored or filtered-out test counts as a failure.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

LEVEL=${1:-change}
# rustup's cargo before any of the system.
export PATH="${CARGO_HOME:-${HOME:-/root}/.cargo}/bin:$PATH"
export CARGO_TARGET_DIR=${CARGO_TARGET_DIR:-$PWD/target}
export CARGO_TERM_COLOR=never
unset RUSTFLAGS RUSTC_WRAPPER PROPTEST_CASES 2>/dev/null || true
LOGS=$CARGO_TARGET_DIR/gate
BARE_TARGETS=(thumbv7em-none-eabihf thumbv6m-none-eabi riscv32imc-unknown-none-elf)
# The panic handler of tests/no_panic calls this; it exists nowhere.
NO_PANIC_SYMBOL=seamwright_link_proof_a_panic_path_survived
# Random cases of each property in the release run of the full level (proptest's own default otherwise).
FULL_CASES=4000

# --- Tools -----------------------------------------------------------------------------------------------------------

fail() {
    echo "gate: $*" >&2
    exit 1
}

# A check of the gate itself that has passed, in the words of `cargo test`.
counted() {
    echo "test result: ok. $1 passed; 0 failed; 0 ignored ($2)"
}

# Debian packages, installed where they are missing.
debian() {
    local package missing=()
    command -v dpkg-query >/dev/null || fail "needs the packages $*; this is no Debian, install them by hand"
    for package in "$@"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q '^install ok installed$' || missing+=("$package")
    done
    [ ${#missing[@]} -eq 0 ] && return
    [ "$(id -u)" -eq 0 ] || fail "needs Debian packages: apt-get install ${missing[*]}"
    echo "installing ${missing[*]}"
    local apt=(apt-get -y -q -o DPkg::Lock::Timeout=300)
    export DEBIAN_FRONTEND=noninteractive
    "${apt[@]}" update || echo "apt-get update failed; trying with the lists that are there"
    "${apt[@]}" install --no-install-recommends "${missing[@]}" || fail "could not install ${missing[*]}"
}

# A program, from the Debian package that has it.
need() {
    command -v "$1" >/dev/null || debian "$2"
    command -v "$1" >/dev/null || fail "needs the program $1"
}

# A cargo subcommand that rustup brings.
component() {
    cargo "$1" --version >/dev/null 2>&1 && return
    rustup component add "$2" || fail "needs the rustup component $2"
}

python() {
    need python3 python3
    PYTHONDONTWRITEBYTECODE=1 python3 "$@"
}

# The Python of the tests' outside readers, in a virtual environment under target/, at pinned versions.
venv() {
    local place=$CARGO_TARGET_DIR/gate-venv wanted=("ezdxf==1.4.5")
    # What the reference model needs, at its own pins.
    mapfile -t -O ${#wanted[@]} wanted <tests/reference/python/requirements.txt
    if [ "$(cat "$place/wanted" 2>/dev/null)" != "${wanted[*]}" ] || ! "$place/bin/python" -c '' 2>/dev/null; then
        need python3 python3
        python3 -c 'import ensurepip' 2>/dev/null || debian python3-venv
        rm -rf "$place"
        python3 -m venv "$place"
        "$place/bin/pip" -q --disable-pip-version-check install "${wanted[@]}" || fail "pip could not install ${wanted[*]}"
        echo "${wanted[*]}" >"$place/wanted"
    fi
    # tests/tests/drawing_dxf.rs leaves its outside reader out where it finds none; here it always finds one.
    export SEAMWRIGHT_PYTHON=$place/bin/python
    "$SEAMWRIGHT_PYTHON" -c 'import ezdxf' || fail "the virtual environment in $place is broken"
}

# --- Steps -----------------------------------------------------------------------------------------------------------

step_format() {
    component fmt rustfmt
    cargo fmt --all -- --check
    cargo fmt --manifest-path tests/no_panic/Cargo.toml -- --check
    cargo fmt --manifest-path tests/instructions/Cargo.toml -- --check
    counted 3 "formatting of the workspace, the link proof and the counter of instructions"
}

step_lint() {
    component clippy clippy
    cargo clippy --workspace --all-targets --locked -- -D warnings
    CARGO_TARGET_DIR=$CARGO_TARGET_DIR/no_panic \
        cargo clippy --manifest-path tests/no_panic/Cargo.toml --release --locked -- -D warnings
    CARGO_TARGET_DIR=$CARGO_TARGET_DIR/instructions/library \
        cargo clippy --manifest-path tests/instructions/Cargo.toml --release --locked -- -D warnings
    counted 3 "lints of the workspace, the link proof and the counter of instructions"
}

step_sources() {
    python tests/source_size.py
    python tests/layers.py
    python tests/public_items.py
}

step_test_debug() {
    venv
    cargo test --workspace --locked
}

step_test_release() {
    venv
    cargo test --workspace --locked --release
}

step_test_release_many_cases() {
    venv
    PROPTEST_CASES=$FULL_CASES cargo test --workspace --locked --release
}

# The reference model of joints in Python, against published examples.
step_reference() {
    local log=$LOGS/reference.pytest passed
    venv
    (cd tests/reference/python && PYTHONDONTWRITEBYTECODE=1 "$SEAMWRIGHT_PYTHON" -m pytest -q -p no:cacheprovider) |
        tee "$log"
    if grep -qE '[0-9]+ (failed|errors?|skipped|xfailed|xpassed|deselected)' "$log"; then
        fail "not every test of the reference model ran and passed"
    fi
    passed=$(grep -oE '^[0-9]+ passed' "$log" | grep -oE '[0-9]+')
    echo "test result: ok. $passed passed; 0 failed; 0 ignored"
}

step_docs() {
    RUSTDOCFLAGS="-D warnings" cargo doc --no-deps --workspace --locked 2>&1 | tee "$LOGS/docs.said"
    # Cargo's own warnings too: two crates of one name would overwrite each other's pages.
    if grep '^warning' "$LOGS/docs.said"; then fail "the documentation has warnings"; fi
    counted 1 "documentation without warnings"
}

step_benches() {
    local log=$LOGS/benches.once targets
    targets=$(find benches/benches -name '*.rs' | wc -l)
    [ "$targets" -gt 0 ] || fail "there are no benches in benches/benches"
    # Each bench once, as a test; criterion says "Testing <name>" and "Success".
    cargo bench -p seamwright-benches --locked -- --test 2>&1 | tee "$log"
    local begun passed
    begun=$(grep -c '^Testing ' "$log" || true)
    passed=$(grep -c 'Success$' "$log" || true)
    [ "$passed" -gt 0 ] && [ "$begun" -eq "$passed" ] || fail "$begun benches began, $passed succeeded"
    counted "$passed" "benches run once"
}

# Instructions of a sweep for one row (callgrind knows AVX2, not AVX-512): those of many rows less those of few. They are
# of the compiler's making, hence some room; what is counted here does not depend on who else uses the machine.
step_sweep_instructions() {
    need valgrind valgrind
    local program=$CARGO_TARGET_DIR/release/examples/sweep_rows seam outputs most few many each seams
    cargo build --release -q -p seamwright-benches --example sweep_rows --locked
    count() {
        valgrind --tool=callgrind --callgrind-out-file=/dev/null "$program" "$@" 2>&1 | tee "$LOGS/callgrind.said" |
            awk '/Collected :/ {print $4}'
    }
    # What each seam may take, in tenths; measured by rustc 1.95, with AVX2, it is a tenth less.
    seams=("even mode 295" "even all 315" "own all 670" "placed all 450" "out all 2750" "crowded all 2770" "zigzag all 2470"
        "shared all 2420" "lozenge mode 2470" "lozenge all 2870" "uneven all 1350")
    for seam in "${seams[@]}"; do
        read -r seam outputs most <<<"$seam"
        few=$(count 10016 "$outputs" "$seam") many=$(count 50016 "$outputs" "$seam")
        [ -n "$few" ] && [ -n "$many" ] || { cat "$LOGS/callgrind.said"; fail "callgrind counted nothing"; }
        each=$(((many - few) / 4000))
        echo "sweep, $seam, $outputs: $((each / 10)).$((each % 10)) instructions for a row, at most $((most / 10)).$((most % 10))"
        [ "$each" -gt 50 ] && [ "$each" -le "$most" ] || fail "a row of a sweep takes $each tenths of an instruction"
    done
    counted ${#seams[@]} "counts of instructions of sweeps"
}

# The library alone for processors without an operating system. Where rustup has no such target, Debian's compiler
# builds `core` from the sources that come with it.
step_bare_metal() {
    local target sysroot=""
    if command -v rustc >/dev/null; then sysroot=$(rustc --print sysroot); fi
    for target in "${BARE_TARGETS[@]}"; do
        echo "-- $target"
        if [ -d "$sysroot/lib/rustlib/$target/lib" ]; then
            CARGO_TARGET_DIR=$CARGO_TARGET_DIR/bare \
                cargo build -p seamwright --release --locked --target "$target"
        else
            debian rustc-web cargo-web rust-web-src
            [ -d "$(/usr/bin/rustc --print sysroot)/lib/rustlib/src/rust/library/core" ] ||
                fail "rust-web-src did not bring the sources of the core library"
            CARGO_TARGET_DIR=$CARGO_TARGET_DIR/bare RUSTC_BOOTSTRAP=1 RUSTC=/usr/bin/rustc RUSTUP_TOOLCHAIN='' \
                /usr/bin/cargo build -p seamwright --release --locked --target "$target" -Zbuild-std=core
        fi
        find "$CARGO_TARGET_DIR/bare/$target/release" -maxdepth 1 -name 'libseamwright.rlib' | grep -q . ||
            fail "no library was built for $target"
    done
    counted ${#BARE_TARGETS[@]} "builds for bare metal"
}

# Links every public function with a panic handler that cannot be linked; then shows that a deliberate panic is found.
step_no_panic() {
    need nm binutils
    local profile exports library log=$LOGS/no_panic.bite
    local build=(cargo build --manifest-path tests/no_panic/Cargo.toml --locked)
    for profile in release firmware; do
        echo "-- profile $profile"
        library=$CARGO_TARGET_DIR/no_panic/$profile/libseamwright_no_panic.so
        rm -f "$library"
        CARGO_TARGET_DIR=$CARGO_TARGET_DIR/no_panic "${build[@]}" --profile "$profile" ||
            fail "a panic path survived in profile $profile (or the link proof does not build): see above"
        exports=$(nm -D --defined-only "$library" | grep -c ' T seamwright_proof_' || true)
        [ "$exports" -gt 0 ] && [ "$exports" -eq "$(grep -cE '^    seamwright_proof_\w+ ' tests/no_panic/src/lib.rs)" ] ||
            fail "the link proof has $exports exports, not those of tests/no_panic/src/lib.rs"
        if nm "$library" | grep "$NO_PANIC_SYMBOL"; then fail "the missing symbol was linked after all"; fi
        counted "$exports" "parts of the library linked without a panic path, profile $profile"
        if CARGO_TARGET_DIR=$CARGO_TARGET_DIR/no_panic_bite "${build[@]}" --profile "$profile" --features bite \
            >"$log" 2>&1; then
            fail "the link proof does not bite: a deliberate panic was linked in profile $profile"
        fi
        grep -E "undefined (symbol|reference).*$NO_PANIC_SYMBOL" "$log" ||
            { cat "$log"; fail "the deliberate panic failed otherwise than by the missing symbol"; }
        counted 1 "the link proof bites, profile $profile"
    done
}

# `cargo run --release` in the root does the main job.
step_main_program() {
    local said=$LOGS/main_program.said
    cargo run --release --locked | tee "$said"
    grep -q 'Governing' "$said" || fail "the main program does not name the governing mode"
    counted 1 "the main program"
}

# The working and the signed sheet in LaTeX, compiled by a LaTeX in each unit; twice, so that "page x of y" is known.
step_latex() {
    local place=$LOGS/latex unit name
    need pdflatex texlive-latex-base
    rm -rf "$place"
    mkdir -p "$place"
    for unit in mm inch; do
        cargo run --release --locked -q -p seamwright-examples --bin working -- latex ${unit#mm} >"$place/working-$unit.tex"
        cargo run --release --locked -q -- --units $unit --dialect latex >"$place/sheet-$unit.tex"
        for name in working sheet; do
            for _ in once again; do
                (cd "$place" && pdflatex -interaction=batchmode -halt-on-error "$name-$unit.tex") \
                    >"$place/said-$name-$unit" 2>&1 || fail "LaTeX refuses the $name: see $place/$name-$unit.log"
            done
            [ -s "$place/$name-$unit.pdf" ] || fail "LaTeX made no page of the $name"
            if grep -q 'undefined references' "$place/$name-$unit.log"; then fail "the $name does not know its pages"; fi
        done
    done
    counted 4 "LaTeX compiles workings and sheets"
}

# shellcheck source=c/gate.sh
. tests/c/gate.sh
# shellcheck source=firmware/gate.sh
. tests/firmware/gate.sh
# shellcheck source=instructions/gate.sh
. tests/instructions/gate.sh

# The Python package: its wheel in a virtual environment under target/, at pinned versions; formatting, lints, types; the
# stub compared with the binary and with what maturin makes; the tests, with every vector compared with Rust.
PYTHON_WANTS=(maturin==1.16.0 pytest==9.2.0 hypothesis==6.170.17 mpmath==1.3.0 numpy==2.4.6 pint==0.25.3
    matplotlib==3.11.2 mypy==2.4.1 "pyright[nodejs]==1.1.414" ruff==0.14.14)

step_python() {
    local place=$CARGO_TARGET_DIR/gate-python package=bindings/python made at_fault
    if [ "$(cat "$place/wanted" 2>/dev/null)" != "${PYTHON_WANTS[*]}" ] || ! "$place/bin/python" -c '' 2>/dev/null; then
        need python3 python3
        python3 -c 'import sys; sys.exit(sys.version_info < (3, 11))' || fail "the tests of the package need Python 3.11"
        python3 -c 'import ensurepip' 2>/dev/null || debian python3-venv
        rm -rf "$place"
        python3 -m venv "$place"
        "$place/bin/pip" -q --disable-pip-version-check install "${PYTHON_WANTS[@]}" || fail "pip could not install"
        echo "${PYTHON_WANTS[*]}" >"$place/wanted"
    fi
    "$place/bin/ruff" format --config "$package/ruff.toml" --check "$package/python" tests/python
    "$place/bin/ruff" check --config "$package/ruff.toml" "$package/python" tests/python
    counted 2 "formatting and lints of the Python package"

    rm -rf "$place/wheel" "$place/stub"
    "$place/bin/maturin" build -q --release --locked -m "$package/Cargo.toml" -i "$place/bin/python" -o "$place/wheel"
    "$place/bin/pip" -q --disable-pip-version-check install --force-reinstall --no-deps "$place"/wheel/*.whl
    "$place/bin/maturin" generate-stubs -q --locked -m "$package/Cargo.toml" -i "$place/bin/python" -o "$place/stub"
    made=$place/stub/seamwright/_native.pyi
    diff -u "$package/python/seamwright/_native.pyi" "$made" ||
        fail "the stub is stale: cp $made $package/python/seamwright/"
    # From elsewhere, so that the wheel is read and not the sources.
    (cd "$place/wheel" && "$place/bin/python" -m mypy.stubtest seamwright._native)
    (cd "$place/wheel" && "$place/bin/python" -m mypy -p seamwright)
    "$place/bin/pyright" --pythonpath "$place/bin/python" -p tests/python/pyrightconfig.json
    at_fault=$(sed '/ignore\[/d; s/inch(0.5).mm, float/inch(0.5).mm, str/' tests/python/typing_check.py)
    echo "$at_fault" >"$place/wheel/at_fault.py"
    if "$place/bin/pyright" --pythonpath "$place/bin/python" "$place/wheel/at_fault.py"; then
        fail "pyright takes a float for a text: the typing test does not bite"
    fi
    counted 5 "stub and types of the Python package"

    cargo run -q --locked -p seamwright-tests --example dump >"$place/dump.tsv"
    SEAMWRIGHT_DUMP=$place/dump.tsv PYTHONDONTWRITEBYTECODE=1 "$place/bin/python" -m pytest -q tests/python
}

# Many more random cases through Python.
step_python_many_cases() {
    SEAMWRIGHT_CASES=2000 PYTHONDONTWRITEBYTECODE=1 \
        "$CARGO_TARGET_DIR/gate-python/bin/python" -m pytest -q tests/python/test_errors.py
}

# Sweeps in the libraries that take them, at pinned versions; after the step python, whose wheel it takes.
PYTHON_LIBRARIES=(pytest==9.2.0 hypothesis==6.170.17 numpy==2.4.6 pandas==3.1.1 polars==2.1.0 xarray==2026.9.0
    pyarrow==26.0.1 "dask[array,distributed]==2026.8.0" distributed==2026.8.0 tqdm==4.70.1)

step_python_libraries() {
    local place=$CARGO_TARGET_DIR/gate-libraries wheels=("$CARGO_TARGET_DIR"/gate-python/wheel/*.whl)
    [ -f "${wheels[0]}" ] || fail "there is no wheel: run the step python first"
    if [ "$(cat "$place/wanted" 2>/dev/null)" != "${PYTHON_LIBRARIES[*]}" ] || ! "$place/bin/python" -c '' 2>/dev/null; then
        rm -rf "$place"
        python3 -m venv "$place"
        "$place/bin/pip" -q --disable-pip-version-check install "${PYTHON_LIBRARIES[@]}" || fail "pip could not install"
        echo "${PYTHON_LIBRARIES[*]}" >"$place/wanted"
    fi
    "$place/bin/pip" -q --disable-pip-version-check install --force-reinstall --no-deps "${wheels[@]}"
    PYTHONDONTWRITEBYTECODE=1 "$place/bin/python" -m pytest -q tests/python/libraries
}

# The source distribution of the Python package, built and used in an empty virtual environment.
step_python_sdist() {
    local place=$CARGO_TARGET_DIR/gate-sdist
    rm -rf "$place"
    mkdir -p "$place"
    "$CARGO_TARGET_DIR/gate-python/bin/maturin" sdist -m bindings/python/Cargo.toml -o "$place"
    python3 -m venv "$place/empty"
    (cd "$place" && CARGO_TARGET_DIR=$place/target empty/bin/pip -q --disable-pip-version-check install ./*.tar.gz)
    [ "$("$place/empty/bin/pip" --disable-pip-version-check list --format=freeze | grep -vc '^pip\|^setuptools')" -eq 1 ] ||
        fail "the package brought other packages with it"
    (cd "$place" && empty/bin/python -W error -c '
import pickle, seamwright as sw
steel = sw.Materials(tension=sw.MPa(80), rivet_shear=sw.MPa(60), bearing=sw.MPa(120))
design = sw.size(form=sw.Form.lap(2), plate=sw.mm(13), materials=steel, book="metric")
assert design.joint.rows[0].hole == sw.mm(23), design  # Khurmi and Gupta, Example 9.4
assert pickle.loads(pickle.dumps(design)) == design
try:
    sw.mm([1, 2])
except sw.SeamwrightError as error:
    assert "NumPy" in str(error)
')
    counted 1 "source distribution in an empty environment"
    python_without_lock "$place/free"
}

# The package in each Python without the global lock that is on the machine (from 3.14 on: PyO3 knows no earlier one).
python_without_lock() {
    local place=$1 python none="no Python without the global lock on this machine"
    for python in python3.14t python3.15t python3.16t; do
        command -v "$python" >/dev/null || continue
        rm -rf "$place"
        "$CARGO_TARGET_DIR/gate-python/bin/maturin" build -q --release --locked -m bindings/python/Cargo.toml -i "$python" -o "$place"
        "$python" -m zipfile -e "$place"/*.whl "$place/site"
        PYTHONPATH=$place/site "$python" -W error tests/python/test_threads.py || fail "many threads at once in $python"
        counted 2 "many threads at once in $python, without the global lock"
        none=
    done
    [ -z "$none" ] || echo "$none"
}

# shellcheck source=docs/gate.sh
. tests/docs/gate.sh

# --- Levels: add a step by writing its function and naming it here ---------------------------------------------------

QUICK=(format lint sources test_debug)
CHANGE=("${QUICK[@]}" reference docs test_release benches instructions sweep_instructions bare_metal no_panic
    main_program c python)
# What takes long: more random cases, fuzzing, emulators, other languages.
FULL=("${CHANGE[@]}" firmware c_full python_many_cases python_libraries python_sdist python_notebooks python_site latex
    test_release_many_cases)

case $LEVEL in
    quick) STEPS=("${QUICK[@]}") ;;
    change) STEPS=("${CHANGE[@]}") ;;
    full) STEPS=("${FULL[@]}") ;;
    only) STEPS=("${@:2}") ;;
    *) fail "levels: quick, none (a change), full, only <steps> of ${FULL[*]}" ;;
esac

# Adds up the `test result:` lines of a log: passed, then failed, ignored and filtered out together.
tally() {
    awk '/test result:/ {
        for (i = 2; i <= NF; i++) {
            if ($i ~ /^passed/) passed += $(i - 1)
            if ($i ~ /^(failed|ignored)/) bad += $(i - 1)
            if ($i == "filtered" && $(i + 1) ~ /^out/) bad += $(i - 1)
        }
        if ($0 ~ /test result: FAILED/ && bad == 0) bad = 1
    } END { printf "%d %d\n", passed, bad }' "$1"
}

run() {
    local name=$1 log=$LOGS/$1.log began=$SECONDS code passed bad
    declare -F "step_$name" >/dev/null || fail "there is no step $name; steps are ${FULL[*]}"
    printf '\n== %d/%d %s ==\n' "$2" ${#STEPS[@]} "$name"
    set +e
    (
        set -euo pipefail
        "step_$name"
    ) 2>&1 | tee "$log"
    code=${PIPESTATUS[0]}
    set -e
    TIMES+=("$(printf '%-24s %5d s' "$name" $((SECONDS - began)))")
    [ "$code" -eq 0 ] || fail "step $name FAILED after $((SECONDS - began)) s (log: $log)"
    read -r passed bad < <(tally "$log")
    [ "$bad" -eq 0 ] || fail "step $name: $bad tests failed, ignored or filtered out (log: $log)"
    [ "$passed" -gt 0 ] || fail "step $name ran no tests at all (log: $log)"
    TOTAL=$((TOTAL + passed))
    echo "== $name: $passed passed, $((SECONDS - began)) s =="
}

# The tally is itself tested.
self_test() {
    local lines=$LOGS/self_test
    printf '%s\n' 'test result: ok. 12 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.1s' \
        'x: test result: ok. 3 passed; 0 failed; 0 ignored (y)' >"$lines"
    [ "$(tally "$lines")" = "15 0" ] || fail "the tally cannot add"
    echo 'test result: FAILED. 1 passed; 2 failed; 3 ignored; 0 measured; 4 filtered out; finished in 0.1s' >>"$lines"
    [ "$(tally "$lines")" = "16 9" ] || fail "the tally misses failures"
}

command -v cargo >/dev/null || fail "needs cargo, from rustup"
mkdir -p "$LOGS"
TOTAL=0 TIMES=()
self_test
for at in "${!STEPS[@]}"; do
    run "${STEPS[$at]}" $((at + 1))
done

printf '\n== level %s: %d s ==\n' "$LEVEL" $SECONDS
printf '%s\n' "${TIMES[@]}"
[ "$TOTAL" -gt 0 ] || fail "no tests were run: steps are ${FULL[*]}"
echo "$TOTAL passed, 0 failed"
