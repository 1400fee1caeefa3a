/* What the programs here need of the board mps2-an386: a serial line, a counter, a way to stop. */
#ifndef BOARD_H
#define BOARD_H
#include <stddef.h>
#include <stdint.h>

/* One byte of the serial line; waits for it. */
int board_get(void);
void board_put(char c);
/* A text to the emulator's own output; and the end of the run, with its exit code. */
void board_say(const char *text);
_Noreturn void board_exit(int code);
/* The stack below the caller is filled with a pattern, and how much of it has been written over since, in bytes. */
void board_paint_stack(void);
size_t board_stack_used(void);
/* Ticks of the system counter between the two calls; of more than 2^24 a number beyond every budget. */
void board_count_from_here(void);
uint32_t board_counted(void);
/* A file of the host, through semihosting: -1 on failure. */
int board_open(const char *name, int writing);
size_t board_read(int file, char *to, size_t size);
int board_write(int file, const char *from, size_t size);
int main(void);
#endif
