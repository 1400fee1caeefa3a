/* A character display of 4 lines of 20, and the few ways of writing on it. No heap, no printf. */
#ifndef DISPLAY_H
#define DISPLAY_H
#include <stddef.h>

enum { LINES = 4, COLUMNS = 20 };

/* Blanks the display, and what was left out of it. */
void display_clear(void);
/* Writes from a column (0 to 19) of a line (0 to 3); what does not fit is left out, and remembered as such. */
void display_text(int line, int column, const char *text);
/* The same, ending at the right edge. */
void display_right(int line, const char *text);
/* A word at the left edge and a figure at the right one. */
void display_row(int line, const char *what, const char *value);
/* The first line: what the page is about, and which of how many it is; `page` from 0. */
void display_title(const char *what, int page, int pages);
/* Page `page` (from 0; -1: none, only counted) of a text, wrapped at words into the lines from `first` on; returns the
   number of pages. */
int display_page(int first, const char *text, int page);
/* Sends the display to the serial line, framed. */
void display_show(void);
/* Whether something was left out since the start: a fault of the program, which the test of the session looks for. */
int display_cut(void);
/* A number with so many decimals (0 to 4), rounded half away from zero; returns `to`, at least 16 long. */
char *number_text(char *to, double x, int decimals);
/* The same without the zeros at the end of its decimals: 12, not 12.00. */
char *short_text(char *to, double x, int decimals);
/* Joins texts, as far as they fit into `size`; returns `to`. */
char *join(char *to, size_t size, const char *a, const char *b, const char *c);
#endif
