/* Start-up, serial line and semihosting for the board mps2-an386 (Cortex-M4 with a single-precision FPU). */
#include "board.h"

#define REGISTER(address) (*(volatile uint32_t *)(address))
#define UART_DATA REGISTER(0x40004000)
#define UART_STATE REGISTER(0x40004004)
#define UART_CONTROL REGISTER(0x40004008)
#define UART_DIVISOR REGISTER(0x40004010)
#define SYSTICK_CONTROL REGISTER(0xE000E010)
#define SYSTICK_RELOAD REGISTER(0xE000E014)
#define SYSTICK_NOW REGISTER(0xE000E018)
#define COPROCESSORS REGISTER(0xE000ED88)
#define PATTERN UINT32_C(0x5EA3A19E)

extern uint32_t board_stack_end[], board_stack_top[], board_data[], board_data_end[], board_data_image[], board_bss[],
    board_bss_end[];

/* Semihosting: the emulator, or a debugger, does what register 0 asks for. */
static int ask(int what, const void *with)
{
    register int r0 __asm__("r0") = what;
    register const void *r1 __asm__("r1") = with;
    __asm__ volatile("bkpt 0xab" : "+r"(r0) : "r"(r1) : "memory");
    return r0;
}

enum { OPEN = 1, WRITE0 = 4, WRITE = 5, READ = 6, EXIT_EXTENDED = 0x20 };

void board_say(const char *text)
{
    ask(WRITE0, text);
}

_Noreturn void board_exit(int code)
{
    const uint32_t block[2] = {0x20026, (uint32_t)code};
    for (;;)
        ask(EXIT_EXTENDED, block);
}

int board_open(const char *name, int writing)
{
    uint32_t length = 0;
    while (name[length])
        length++;
    const uint32_t block[3] = {(uint32_t)name, writing ? 5 : 1, length};
    return ask(OPEN, block);
}

size_t board_read(int file, char *to, size_t size)
{
    const uint32_t block[3] = {(uint32_t)file, (uint32_t)to, size};
    return size - (size_t)ask(READ, block);
}

int board_write(int file, const char *from, size_t size)
{
    const uint32_t block[3] = {(uint32_t)file, (uint32_t)from, size};
    return ask(WRITE, block);
}

int board_get(void)
{
    while (!(UART_STATE & 2))
        ;
    return (int)(UART_DATA & 0xff);
}

void board_put(char c)
{
    while (UART_STATE & 1)
        ;
    UART_DATA = (unsigned char)c;
}

void board_paint_stack(void)
{
    uint32_t *here;
    __asm__ volatile("mov %0, sp" : "=r"(here));
    /* Volatile, so that no call of memset writes into what is being painted. */
    for (volatile uint32_t *at = board_stack_end; (uint32_t *)at < here; at++)
        *at = PATTERN;
}

size_t board_stack_used(void)
{
    uint32_t *here, *at = board_stack_end;
    __asm__ volatile("mov %0, sp" : "=r"(here));
    while (at < here && *at == PATTERN)
        at++;
    return (size_t)((char *)here - (char *)at);
}

void board_count_from_here(void)
{
    SYSTICK_RELOAD = 0xFFFFFF;
    SYSTICK_NOW = 0;
    SYSTICK_CONTROL = 5;
}

uint32_t board_counted(void)
{
    const uint32_t ticks = 0xFFFFFF - SYSTICK_NOW;
    /* The counter has been at 0: nobody knows how often. */
    return SYSTICK_CONTROL & 0x10000 ? UINT32_MAX / 40 : ticks;
}

/* Its loops stay loops: no memory has its contents yet that memcpy might want. */
__attribute__((optimize("no-tree-loop-distribute-patterns"))) static void board_reset(void)
{
    /* The floating-point unit first: the compiler may use its registers anywhere below. */
    COPROCESSORS |= 0xFu << 20;
    __asm__ volatile("dsb\n isb");
    for (uint32_t *to = board_data, *from = board_data_image; to < board_data_end;)
        *to++ = *from++;
    for (uint32_t *to = board_bss; to < board_bss_end;)
        *to++ = 0;
    UART_DIVISOR = 16;
    UART_CONTROL = 3;
    board_exit(main());
}

/* A fault, which no program here may have. */
static void fault(void)
{
    board_say("FAULT\n");
    board_exit(99);
}

struct vectors {
    const uint32_t *stack;
    void (*at[15])(void);
};

__attribute__((section(".vectors"), used)) static const struct vectors vectors = {
    board_stack_top,
    {board_reset, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault},
};
