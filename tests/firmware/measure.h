/* Stack and instructions of one call, told as `stack.<name> <bytes>` and `instructions.<name> <number>`. Under
   `qemu -icount shift=0` an instruction takes a nanosecond and the counter of the 25 MHz board ticks every 40. */
#ifndef MEASURE_H
#define MEASURE_H
#include "board.h"

static void tell(const char *what, const char *name, uint32_t n)
{
    char digits[12];
    char *at = digits + 11;
    *at = 0, *--at = '\n';
    do
        *--at = (char)('0' + n % 10);
    while (n /= 10);
    board_say(what), board_say(name), board_say(" "), board_say(at);
}

#define MEASURE(name, call)                                                                                           \
    do {                                                                                                              \
        uint32_t ticks;                                                                                               \
        size_t bytes;                                                                                                 \
        board_paint_stack();                                                                                          \
        board_count_from_here();                                                                                      \
        call;                                                                                                         \
        ticks = board_counted();                                                                                      \
        bytes = board_stack_used();                                                                                   \
        tell("instructions.", name, ticks * 40);                                                                      \
        tell("stack.", name, (uint32_t)bytes);                                                                        \
    } while (0)
#endif
