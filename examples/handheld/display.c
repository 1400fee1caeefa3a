#include "display.h"
#include "board.h"

static char shown[LINES][COLUMNS];
static int cut;

void display_clear(void)
{
    for (int i = 0; i < LINES * COLUMNS; i++)
        shown[i / COLUMNS][i % COLUMNS] = ' ';
}

static int length(const char *text)
{
    int n = 0;
    while (text[n])
        n++;
    return n;
}

void display_text(int line, int column, const char *text)
{
    for (; *text; text++, column++) {
        if (line < 0 || line >= LINES || column < 0 || column >= COLUMNS)
            cut = 1;
        else
            shown[line][column] = *text;
    }
}

void display_right(int line, const char *text)
{
    display_text(line, COLUMNS - length(text), text);
}

void display_row(int line, const char *what, const char *value)
{
    display_text(line, 0, what);
    display_right(line, value);
}

void display_title(const char *what, int page, int pages)
{
    char digits[16], text[24];
    join(text, sizeof text, number_text(digits, page + 1, 0), "/", "");
    join(text, sizeof text, text, number_text(digits, pages, 0), "");
    display_row(0, what, text);
}

/* The end of the line that begins at `at`: after the last word that fits, or in the middle of a word too long. */
static const char *line_end(const char *at)
{
    const char *end = at, *word = at;
    while (*end && *end != '\n' && end - at < COLUMNS) {
        end++;
        if (*end == ' ' || *end == '\n' || !*end)
            word = end;
    }
    return word > at ? word : end;
}

int display_page(int first, const char *text, int page)
{
    int line = 0;
    const int lines = LINES - first;
    while (*text == ' ' || *text == '\n')
        text++;
    while (*text) {
        const char *end = line_end(text);
        if (line / lines == page)
            for (int i = 0; text + i < end; i++)
                shown[first + line % lines][i] = text[i];
        text = end;
        while (*text == ' ' || *text == '\n')
            text++;
        line++;
    }
    return line ? (line + lines - 1) / lines : 1;
}

static void frame(void)
{
    board_put('+');
    for (int i = 0; i < COLUMNS; i++)
        board_put('-');
    board_put('+'), board_put('\n');
}

void display_show(void)
{
    frame();
    for (int line = 0; line < LINES; line++) {
        board_put('|');
        for (int i = 0; i < COLUMNS; i++)
            board_put(shown[line][i]);
        board_put('|'), board_put('\n');
    }
    frame();
}

int display_cut(void)
{
    return cut;
}

char *number_text(char *to, double x, int decimals)
{
    char digits[16];
    uint32_t scale = 1, whole;
    int n = 0, at = 0;
    for (int i = 0; i < decimals; i++)
        scale *= 10;
    if (x != x || x > 4e9 / scale || x < -4e9 / scale) {
        to[0] = '-', to[1] = '-', to[2] = 0;
        return to;
    }
    if (x < 0)
        to[at++] = '-', x = -x;
    whole = (uint32_t)(x * scale + 0.5);
    do {
        digits[n++] = (char)('0' + whole % 10), whole /= 10;
        if (n == decimals)
            digits[n++] = '.';
    } while (whole || n < decimals + (decimals ? 2 : 1));
    while (n)
        to[at++] = digits[--n];
    to[at] = 0;
    return to;
}

char *short_text(char *to, double x, int decimals)
{
    int end = length(number_text(to, x, decimals));
    if (decimals > 0 && to[end - 1] != '-') {
        while (to[end - 1] == '0')
            end--;
        if (to[end - 1] == '.')
            end--;
        to[end] = 0;
    }
    return to;
}

char *join(char *to, size_t size, const char *a, const char *b, const char *c)
{
    const char *parts[3] = {a, b, c};
    size_t at = 0;
    /* The first part may be `to` itself: then each byte is written over by itself. */
    for (int i = 0; i < 3; i++)
        for (const char *from = parts[i]; *from && at + 1 < size; from++)
            to[at++] = *from;
    to[at] = 0;
    return to;
}
