/* tests/c/vectors.c on the emulated Cortex-M4: the same program, its two files opened through semihosting. */
#include "board.h"
#include <stdio.h>

void initialise_monitor_handles(void);
int vectors_main(void);
void *_sbrk(ptrdiff_t more);
/* What the C library's exit would call; nothing of it is used. */
void _init(void);
void _fini(void);
void _init(void) {}
void _fini(void) {}

/* Memory for the buffers of the C library's files. Its own function wants the stack above the heap. */
void *_sbrk(ptrdiff_t more)
{
    static char heap[65536];
    static size_t used;
    if (used + (size_t)more > sizeof heap)
        return (void *)-1;
    used += (size_t)more;
    return heap + used - more;
}

int main(void)
{
    int result;
    initialise_monitor_handles();
    if (!freopen("cases.txt", "r", stdin) || !freopen("said.txt", "w", stdout))
        return 90;
    result = vectors_main();
    return fclose(stdout) == 0 ? result : 91;
}
