#!/usr/bin/env bash
# The step of the gate for firmware; sourced by tests/gate.sh after tests/c/gate.sh, which builds the archives.

FW_FLAGS=(-mcpu=cortex-m4 -mthumb -mfloat-abi=hard -mfpu=fpv4-sp-d16 -Os -ffunction-sections -fdata-sections
    "${C_WARNINGS[@]}" -Iexamples/handheld -Itests/firmware -Ibindings/c/include)

# Double precision in software: gcc's, in assembler, is faster and no larger than what the archive brings for the same
# functions, and rounds alike. Asked for before the archive is looked into, so that none of that is linked.
FW_FLOATS=()
for fw_function in dadd dsub drsub dmul ddiv dcmpeq dcmplt dcmple dcmpge dcmpgt dcmpun d2iz d2uiz i2d ui2d; do
    FW_FLOATS+=("-Wl,-u,__aeabi_$fw_function")
done
FW_FLOATS+=(-lgcc)

# fw_link <program> <sources and flags>: an image for the board, with its own start-up and memory map.
fw_link() {
    arm-none-eabi-gcc "${FW_FLAGS[@]}" -nostartfiles -Texamples/handheld/board.ld \
        -Wl,--gc-sections,--no-warn-rwx-segments,-z,noexecstack "${@:2}" examples/handheld/board.c \
        "${FW_FLOATS[@]}" "$FW_ARCHIVE" -lgcc -o "$FW_WORK/$1.elf"
}

# fw_run <program>: under the emulator, one instruction a nanosecond; the exit code is that of the program.
fw_run() {
    (cd "$FW_WORK" && timeout 300 qemu-system-arm -M mps2-an386 -display none -monitor none -serial stdio \
        -icount shift=0 -semihosting-config enable=on,target=native -kernel "$1.elf" </dev/null 2>&1)
}

# fw_budget <file of measured figures>: each against tests/firmware/budgets.txt, and none left out.
fw_budget() {
    awk '
        NR == FNR { if ($1 !~ /^#/ && NF) { most[$1] = $2; wanted[$1] = $3 } next }
        !($1 in most) { print "no budget for " $1; bad = 1; next }
        $2 !~ /^[0-9]+$/ { print "no figure for " $1; bad = 1; next }
        {
            seen[$1] = 1
            printf "%-29s %9d  most %9d  wanted %9s%s\n", $1, $2, most[$1], wanted[$1], ($2 > most[$1] ? "  OVER" : "")
            if ($2 > most[$1]) bad = 1
        }
        END { for (n in most) if (!(n in seen)) { print "not measured: " n; bad = 1 } exit bad }
    ' tests/firmware/budgets.txt "$1"
}

# fw_symbols <archive> <emulation> [entry]: names in the calculation image linked by rustc's own linker.
fw_symbols() {
    local lld
    lld=$(rustc --print sysroot)/lib/rustlib/$(rustc -vV | sed -n 's/^host: //p')/bin/rust-lld
    "$lld" -flavor gnu --gc-sections -e sw_joint_size -u sw_joint_check -u sw_book_indian ${2:+-u "$2"} -o "$FW_WORK/names.elf" "$1"
    nm "$FW_WORK/names.elf" >"$FW_WORK/names.txt"
    grep -q ' T sw_joint_size$' "$FW_WORK/names.txt" || fail "the calculation image is empty"
}

# Whether those names hold a panic or an allocator.
fw_forbidden() {
    grep -E '9panicking|rust_begin_unwind|__rust_alloc|__rust_realloc|__rustc.*alloc| (malloc|free|realloc|calloc)$' \
        "$FW_WORK/names.txt"
}

# The sheet to sign on the Cortex-M4: what it costs, and its bytes against those of the host.
fw_sheet() {
    SEAMWRIGHT_C_DUMP=$FW_WORK cargo test -q -p seamwright-c --locked --test sheets >&2
    fw_link sheet tests/firmware/sheet.c -nostdlib -Wl,--defsym=flash_size=512K,--defsym=ram_size=128K,--defsym=stack_size=96K
    arm-none-eabi-size "$FW_WORK/sheet.elf" | awk 'NR == 2 {print "flash.sheet", $1 + $2}'
    rm -f "$FW_WORK/sheet.said"
    fw_run sheet || fail "the sheet fails on the Cortex-M"
    cmp "$FW_WORK/sheet.said" "$FW_WORK/sheet.txt" >&2 || fail "the Cortex-M's sheet is not the host's"
}

# Each built-in book in bytes: what the image of a program grows by that names it.
fw_books() {
    local book flash without
    echo 'int main(void) { return 0; }' >"$FW_WORK/none.c"
    fw_link none "$FW_WORK/none.c"
    without=$(arm-none-eabi-size "$FW_WORK/none.elf" | awk 'NR == 2 {print $1 + $2}')
    for book in $(grep -oE 'fn sw_book_[a-z0-9_]+\(\) -> \*const sw_book' bindings/c/src/books.rs | sed 's/fn sw_book_//; s/(.*//'); do
        printf '#include <seamwright.h>\nconst sw_book *volatile at;\nint main(void) { at = sw_book_%s(); return 0; }\n' \
            "$book" >"$FW_WORK/book.c"
        fw_link book "$FW_WORK/book.c"
        flash=$(arm-none-eabi-size "$FW_WORK/book.elf" | awk 'NR == 2 {print $1 + $2}')
        echo "flash.book.$book $((flash - without))"
    done
}

fw_vectors() {
    local flags=("${FW_FLAGS[@]}")
    # The vectors as the host's library answers them.
    SEAMWRIGHT_C_DUMP=$FW_WORK cargo test -q -p seamwright-c --locked --test vectors
    arm-none-eabi-gcc "${flags[@]}" -D__int64_t_defined=1 -Dmain=vectors_main -c tests/c/vectors.c -o "$FW_WORK/cases.o"
    fw_link vectors tests/firmware/vectors.c "$FW_WORK/cases.o" --specs=rdimon.specs \
        -Wl,--defsym=flash_size=4M,--defsym=ram_size=4M,--defsym=stack_size=256K,--defsym=end=board_bss_end
    rm -f "$FW_WORK/said.txt"
    fw_run vectors || fail "the vectors stop on the Cortex-M"
    cmp "$FW_WORK/said.txt" "$FW_WORK/answers.txt" || fail "the Cortex-M's bits are not the host's"
    counted "$(wc -l <"$FW_WORK/answers.txt")" "vectors on the emulated Cortex-M, bit for bit"
}

# fw_play <keys> <screens>: a session of the handheld.
fw_play() {
    (cd "$FW_WORK" && timeout 300 qemu-system-arm -M mps2-an386 -display none -monitor none -serial stdio \
        -semihosting-config enable=on,target=native -kernel handheld.elf <"$1" >"$2") 2>&1 ||
        fail "the session of the handheld stops, or a text ran off its display: $FW_WORK/$2"
}

# Every form, number of rows and book on the handheld, all pages in both units: no text may run off the display.
fw_every_form() {
    local form rows book most=(0 4 3 5 5) joints=0 keys=E pages
    printf -v pages 'N%.0s' {1..16}
    for form in 1 2 3 4; do
        for ((rows = form == 4 ? 2 : 1; rows <= most[form]; rows++)); do
            for book in 1 2 3 4 5 6; do
                keys+=${form}E${rows}E15.5E90E60E130E${book}E${pages}U${pages}UCCCCCCC
                joints=$((joints + 1))
            done
        done
    done
    printf '%sO' "$keys" >"$FW_WORK/forms.keys"
    fw_play forms.keys forms.txt >"$FW_WORK/forms.said"
    # Once in each unit at least; but by the structural book four and five rows of a wide and a narrow strap have no
    # pitch below its 12 inches: refused in words, and back by C to the first question.
    [ "$(grep -c '^|FAILS FIRST' "$FW_WORK/forms.txt")" -ge $((2 * (joints - 2))) ] || fail "not every form was sized"
    [ "$(grep -A1 '^|NOT POSSIBLE' "$FW_WORK/forms.txt" | grep -c '^|pitch = 326 mm')" -ge 2 ] || fail "not two refusals"
    counted "$joints" "forms, rows and books on the handheld"
}

# The handheld: its size, and a session of keys whose every screen is that of the committed transcript.
fw_handheld() {
    local place=examples/handheld
    fw_link handheld $place/handheld.c $place/pages.c $place/display.c -nostdlib -DHANDHELD_MEASURED \
        -Wl,--defsym=flash_size=256K,--defsym=ram_size=64K,--defsym=stack_size=48K
    # The stack of the memory map is in `bss`: what is used of it is told by the program.
    arm-none-eabi-size "$FW_WORK/handheld.elf" |
        awk 'NR == 2 {print "flash.handheld", $1 + $2; print "data.handheld", $2 + $3 - 48 * 1024}'
    (printf E; sed 's/#.*//' $place/session.keys | tr -d ' \n') >"$FW_WORK/keys.txt"
    fw_play keys.txt screens.txt
    diff -u $place/session.txt "$FW_WORK/screens.txt" >&2 || fail "the screens are not those of $place/session.txt"
}

# All memory of the handheld: its data, and the most stack that the session or any form takes. <measured figures>
fw_memory() {
    awk '$1 == "data.handheld" {data = $2} $1 == "stack.handheld" && $2 > stack {stack = $2}
        END {print "memory.handheld", data + stack}' "$1" "$FW_WORK/forms.said"
}

step_firmware() {
    need arm-none-eabi-gcc gcc-arm-none-eabi
    need qemu-system-arm qemu-system-arm
    debian libnewlib-arm-none-eabi
    local target measured
    FW_WORK=$CARGO_TARGET_DIR/firmware
    mkdir -p "$FW_WORK"
    c_bare_metal
    FW_ARCHIVE=$CARGO_TARGET_DIR/bare/thumbv7em-none-eabihf/firmware/libseamwright_c.a

    for target in "${BARE_TARGETS[@]}"; do
        fw_symbols "$CARGO_TARGET_DIR/bare/$target/firmware/libseamwright_c.a"
        if fw_forbidden; then fail "a panic or an allocator is linked for $target"; fi
    done
    counted ${#BARE_TARGETS[@]} "calculation images without panic and allocator"
    CARGO_TARGET_DIR=$CARGO_TARGET_DIR/bare_bite c_bare_metal bite
    [ "$(c_panics "$CARGO_TARGET_DIR/bare_bite/bare/thumbv7em-none-eabihf/firmware/libseamwright_c.a")" != 0 ] ||
        fail "a deliberate panic is not seen in the archive"
    fw_symbols "$CARGO_TARGET_DIR/bare_bite/bare/thumbv7em-none-eabihf/firmware/libseamwright_c.a" seamwright_bite
    fw_forbidden >/dev/null || fail "a deliberate panic is not found: the check of names does not bite"
    counted 1 "a deliberate panic is found"

    measured=$FW_WORK/measured.txt
    fw_link calc tests/firmware/calc.c -nostdlib -Wl,--defsym=ram_size=64K,--defsym=stack_size=32K
    arm-none-eabi-size "$FW_WORK/calc.elf" | awk 'NR == 2 {print "flash.calc", $1 + $2}' >"$measured"
    fw_run calc >>"$measured" || fail "the calculation image fails"
    fw_link search tests/firmware/search.c -nostdlib -Wl,--defsym=flash_size=512K,--defsym=ram_size=128K,--defsym=stack_size=64K
    fw_run search >>"$measured" || fail "the search fails"
    fw_sheet >>"$measured"
    fw_books >>"$measured"
    fw_handheld >>"$measured"
    counted "$(grep -c '^+' examples/handheld/session.txt | awk '{print $1 / 2}')" "screens of the handheld"
    fw_every_form
    fw_memory "$measured" >"$FW_WORK/memory.txt"
    cat "$FW_WORK/memory.txt" >>"$measured"
    fw_budget "$measured" || fail "a budget of tests/firmware/budgets.txt is passed"
    counted "$(wc -l <"$measured")" "budgets of firmware"
    fw_vectors
}
