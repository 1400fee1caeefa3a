/* What the C tests share: expectations that are counted, and careless buffers and arrays of every size. */
#ifndef EXPECT_H
#define EXPECT_H

#include <math.h>
#include <seamwright.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int passed;

#define EXPECT(what)                                                                                                   \
    do {                                                                                                               \
        if (!(what)) {                                                                                                 \
            fprintf(stderr, "%s:%d: %s\n", __FILE__, __LINE__, #what);                                                 \
            exit(1);                                                                                                   \
        }                                                                                                              \
        passed++;                                                                                                      \
    } while (0)

/* A figure within a relative tolerance of what was worked out by hand. */
#define NEAR(found, by_hand, tolerance)                                                                                \
    do {                                                                                                               \
        double near_found = (found), near_hand = (by_hand);                                                            \
        if (!(fabs(near_found - near_hand) <= (tolerance) * fabs(near_hand))) {                                        \
            fprintf(stderr, "%s:%d: %s is %.12g, not %.12g\n", __FILE__, __LINE__, #found, near_found, near_hand);      \
            exit(1);                                                                                                   \
        }                                                                                                              \
        passed++;                                                                                                      \
    } while (0)

/* The last line of a program. */
static int done(const char *what)
{
    printf("test result: ok. %d passed; 0 failed; 0 ignored (%s)\n", passed, what);
    return 0;
}

typedef uint32_t text_function(int which, char *b, size_t n, size_t *s);
typedef uint32_t list_function(int which, void *a, size_t n, size_t *count, size_t *size);

/* Texts into buffers of every size from nothing to one more than needed (long texts: the first and last hundred).
   `text` gives SW_END for a number beyond its last. Returns how many texts there were. */
static inline int short_buffers(text_function *text)
{
    int which;
    for (which = 0; text(which, NULL, 0, NULL) != SW_END; which++) {
        size_t needed = 0, again = 0, n;
        char *b;
        EXPECT(text(which, NULL, 0, NULL) == SW_BAD_POINTER);
        EXPECT(text(which, NULL, 0, &needed) == SW_OK && needed > 0);
        EXPECT(text(which, NULL, 5, &again) == SW_BAD_POINTER);
        for (n = 0; n <= needed + 1; n++) {
            if (n == 20 && needed > 2000)
                n = needed - 20; /* these are worked anew for each size */
            if (n == 100 && needed > 300)
                n = needed - 100;
            b = malloc(n + 1); /* so that a sanitizer sees a byte too many */
            EXPECT(b != NULL);
            memset(b, 0x55, n + 1);
            again = 0;
            if (n < needed) {
                EXPECT(text(which, b, n, &again) == SW_NO_SPACE && again == needed);
                EXPECT(b[0] == 0x55 && b[n] == 0x55);
            } else {
                EXPECT(text(which, b, n, NULL) == SW_OK && strlen(b) == needed - 1 && b[n] == 0x55);
            }
            free(b);
        }
        b = malloc(needed);
        EXPECT(text(which, b, (size_t)-1, NULL) == SW_OK); /* an absurd length: only what is needed is written */
        free(b);
    }
    return which;
}

/* Arrays of every capacity from nothing to one more than needed. `size` gets the size of an element. */
static inline int short_arrays(list_function *list)
{
    int which;
    size_t count = 0, size = 0;
    for (which = 0; list(which, NULL, 0, &count, &size) != SW_END; which++) {
        size_t needed = 0, n;
        EXPECT(list(which, NULL, 0, &needed, &size) == SW_OK && size > 0);
        EXPECT(list(which, NULL, 3, &count, &size) == SW_BAD_POINTER);
        for (n = 0; n <= needed + 1; n++) {
            unsigned char *a = malloc((n + 1) * size), *same = malloc((n + 1) * size);
            EXPECT(a != NULL && same != NULL);
            memset(a, 0x55, (n + 1) * size), memset(same, 0x55, (n + 1) * size);
            count = 12345;
            if (n < needed) {
                EXPECT(list(which, a, n, &count, &size) == SW_NO_SPACE && count == needed);
                EXPECT(memcmp(a, same, (n + 1) * size) == 0); /* nothing half-written */
            } else {
                EXPECT(list(which, a, n, &count, &size) == SW_OK && count == needed);
                EXPECT(memcmp(a + needed * size, same, size) == 0); /* nothing behind the last */
            }
            free(a), free(same);
        }
    }
    return which;
}

/* Every word of a struct between two offsets set to what nobody means: NaN, infinities, absurd numbers and choices.
   `call` sees to it that nothing is half-written; here nothing may crash, and NaN in the place of a figure is refused
   where it counts. Returns how many of the calls were refused. */
static inline int careless_words(void *of, size_t from, size_t to, uint32_t (*call)(void))
{
    static const uint32_t words[] = {0xffffffff, 0x7ff00000, 0xfff00000, 0x7fefffff, 0x80000000, 0xbff00000, 3, 0xff};
    size_t at, i;
    int refused = 0;
    for (at = from; at + 4 <= to; at += 4) {
        uint32_t before, after;
        memcpy(&before, (char *)of + at, 4);
        for (i = 0; i < sizeof words / sizeof *words; i++) {
            memcpy((char *)of + at, &words[i], 4);
            refused += call() != SW_OK;
            memcpy(&after, (char *)of + at, 4);
            EXPECT(after == words[i]); /* inputs are not written to */
        }
        memcpy((char *)of + at, &before, 4);
    }
    EXPECT(call() == SW_OK);
    return refused;
}

/* `struct_size` of a struct set to sizes that the library does not know. */
static inline void wrong_struct_sizes(void *of, uint32_t (*call)(void))
{
    static const uint32_t wrong[] = {0, 1, 4, 8, 15, 0x7fffffff, 0xffffffff};
    uint32_t before, i;
    memcpy(&before, of, 4);
    for (i = 0; i < sizeof wrong / sizeof *wrong + 1; i++) {
        uint32_t size = i < sizeof wrong / sizeof *wrong ? wrong[i] : before + 1;
        memcpy(of, &size, 4);
        EXPECT(call() == SW_BAD_STRUCT_SIZE);
        memcpy(&size, of, 4);
        EXPECT(size == (i < sizeof wrong / sizeof *wrong ? wrong[i] : before + 1));
    }
    memcpy(of, &before, 4);
    EXPECT(call() == SW_OK);
}

#endif
