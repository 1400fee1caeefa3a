#!/usr/bin/env bash
# The step of the gate for what the working costs where nobody asks for it; sourced by tests/gate.sh.

# inst_count <program> plain|noting size|check: instructions of the routine, by callgrind. What it printed goes to a log.
inst_count() {
    valgrind --tool=callgrind --callgrind-out-file=/dev/null --toggle-collect="*counted_$3*" "$1" "$2" "$3" \
        2>"$LOGS/callgrind.said" >"$LOGS/$(basename "$(dirname "$1")").$2.$3"
    awk '/Collected :/ {print $4}' "$LOGS/callgrind.said"
}

# The library against a copy whose formulas and choices are called as one would by hand, without a context to tell: the
# same results, and as many instructions. That the count would see a recorder is seen from one that only takes notes.
step_instructions() {
    need valgrind valgrind
    need python3 python3
    local work=$CARGO_TARGET_DIR/instructions copy=$CARGO_TARGET_DIR/instructions/copy place what plain by_hand noting
    mkdir -p "$copy"
    python3 tests/instructions/strip.py . "$copy"
    cargo build --release -q --locked --manifest-path tests/instructions/Cargo.toml --target-dir "$work/library"
    cargo build --release -q --locked --manifest-path "$copy/tests/instructions/Cargo.toml" --target-dir "$work/by_hand"
    for place in library by_hand; do
        cp "$work/$place/release/seamwright-instructions" "$work/$place/"
    done
    for what in size check; do
        plain=$(inst_count "$work/library/seamwright-instructions" plain $what)
        noting=$(inst_count "$work/library/seamwright-instructions" noting $what)
        by_hand=$(inst_count "$work/by_hand/seamwright-instructions" plain $what)
        [ -n "$plain" ] && [ -n "$noting" ] && [ -n "$by_hand" ] || fail "callgrind counted nothing"
        echo "$what, three joints: $plain instructions, $by_hand without a context, $noting with one that takes notes"
        cmp "$LOGS/library.plain.$what" "$LOGS/by_hand.plain.$what" || fail "$what: the copy has other results"
        [ "$by_hand" -gt 10000 ] || fail "$what: $by_hand instructions are no sizing of three joints"
        # 0.19 and 0.14 per cent by rustc 1.95: where the compiler lays out code otherwise.
        [ $((plain * 100)) -le $((by_hand * 101)) ] || fail "$what: the context costs more than one per cent"
        [ $((noting * 100)) -gt $((plain * 101)) ] || fail "$what: the count does not see a recorder"
    done
    counted 6 "instructions of the plain path"
}
