/* The border of sweeps: NULL, wrong sizes, columns too short, too long and in each other's place, numbers of rows that
   overflow, NaN. Nothing is written where something is refused, and nothing behind the last row. */
#include <stddef.h>

#include "expect.h"

/* More than a chunk of the kernel, and no whole number of them. */
enum { ROWS = 70 };

static sw_rules rules;
static sw_sweep s;
static sw_sweep_results r;
static sw_error error;
static double pitch[ROWS], plate[ROWS], holes[] = {17, 19, 21, 23, 25, 27, 29};
static double figures[3][ROWS + 1];
static uint16_t mode[ROWS + 1];
static uint8_t status[ROWS + 1];
static size_t from, count = ROWS;

static void begin(void)
{
    size_t i;
    sw_error_init(&error), sw_sweep_init(&s), sw_sweep_results_init(&r);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK && sw_form_double_strap(2, &s.form, &error) == SW_OK);
    for (i = 0; i < ROWS; i++)
        pitch[i] = 60 + (double)(i % 13) * 3, plate[i] = 8 + (double)(i % 5);
    s.rows = ROWS;
    s.pitch_mm.values = pitch, s.pitch_mm.count = ROWS;
    s.plate_mm.values = plate, s.plate_mm.count = ROWS;
    s.hole_mm.values = holes, s.hole_mm.count = 7, s.hole_mm.each = 1;
    s.tension_mpa.same = 80, s.rivet_shear_mpa.same = 60, s.bearing_mpa.same = 120;
    s.rivet_mm.same = 16, s.other_mm.same = 9, s.narrow_mm.same = 8;
    s.other_tension_mpa.same = 75, s.other_bearing_mpa.same = 110;
    r.efficiency = figures[0], r.book_efficiency = figures[1], r.credited_efficiency = figures[2];
    r.mode = mode, r.status = status;
}

static int untouched(const void *of, size_t size)
{
    size_t i;
    for (i = 0; i < size; i++)
        if (((const unsigned char *)of)[i] != 0x55)
            return 0;
    return 1;
}

/* One call; all rows or none are written, and nothing behind them. */
static uint32_t run(void)
{
    size_t i, wrote = 0;
    uint32_t said;
    memset(figures, 0x55, sizeof figures), memset(mode, 0x55, sizeof mode), memset(status, 0x55, sizeof status);
    said = sw_sweep_run(&s, &rules, from, count, &r, &error);
    EXPECT(said == SW_OK || error.status == said);
    if (said == SW_OK)
        wrote = count;
    for (i = 0; i < 3; i++)
        EXPECT(untouched(figures[i] + wrote, (ROWS + 1 - wrote) * sizeof(double)));
    EXPECT(untouched(mode + wrote, (ROWS + 1 - wrote) * sizeof *mode));
    EXPECT(untouched(status + wrote, ROWS + 1 - wrote));
    for (i = 0; i < wrote; i++) {
        EXPECT(status[i] == SW_OK ? figures[0][i] > 0 && figures[0][i] < 1 : figures[0][i] != figures[0][i]);
        EXPECT((status[i] == SW_OK) == (mode[i] != SW_NO_MODE));
    }
    return said;
}

static sw_sweep_column *column(int n)
{
    sw_sweep_column *all[] = {&s.pitch_mm, &s.plate_mm, &s.hole_mm, &s.tension_mpa, &s.rivet_shear_mpa, &s.rivet_mm,
                              &s.other_mm, &s.narrow_mm, &s.other_tension_mpa, &s.bearing_mpa, &s.other_bearing_mpa,
                              &s.shear_out_mpa, &s.margin_mm, &s.back_pitch_mm};
    return all[n];
}

/* Each column in the place of each other kind: too short, too long, absurdly long, NULL, not aligned, empty. */
static void wrong_columns(void)
{
    static const size_t counts[] = {1, ROWS - 1, ROWS + 1, (size_t)-1 / 16, (size_t)-1 / 8, (size_t)-1 / 8 + 1, (size_t)-1};
    size_t i;
    int n;
    for (n = 0; n < 14; n++) {
        const sw_sweep_column before = *column(n);
        sw_sweep_column c = {NULL, 0, 0, 0};
        for (i = 0; i < sizeof counts / sizeof *counts; i++) {
            c.values = pitch, c.count = counts[i], *column(n) = c;
            EXPECT(run() == (counts[i] > (size_t)-1 / 16 ? SW_TOO_MANY : counts[i] < ROWS ? SW_TOO_SMALL : SW_TOO_LARGE));
            EXPECT(error.index == (counts[i] > (size_t)-1 / 16 ? 1 : (uint32_t)n + 1));
        }
        c.values = NULL, c.count = ROWS, *column(n) = c;
        EXPECT(run() == SW_BAD_POINTER && error.index == 1);
        c.count = 0, c.each = 3, c.same = before.same == 0 ? 9 : before.same, *column(n) = c; /* no array: `same` */
        EXPECT(run() == SW_OK);
        c.values = (const double *)(const void *)((const char *)pitch + 1), c.count = ROWS, c.each = 0, *column(n) = c;
        EXPECT(run() == SW_BAD_POINTER && error.index == 1);
        c.values = pitch, c.count = 0, *column(n) = c; /* an array of nothing, and an axis of nothing */
        EXPECT(run() == SW_TOO_SMALL && error.index == (uint32_t)n + 1);
        c.each = 1, *column(n) = c;
        EXPECT(run() == SW_TOO_SMALL && error.index == (uint32_t)n + 1);
        *column(n) = before;
        EXPECT(run() == SW_OK);
    }
}

/* Rows that are not there, whatever overflows. */
static void absurd_rows(void)
{
    static const size_t absurd[] = {ROWS + 1, (size_t)-1 / 8, (size_t)-1 / 8 + 1, (size_t)-1 / 2 + 1, (size_t)-1};
    uint16_t both[2] = {0, 1}, many[4096] = {0};
    double place[2 * ROWS];
    size_t i, left;
    for (i = 0; i < sizeof absurd / sizeof *absurd; i++) {
        from = 0, count = absurd[i];
        EXPECT(run() == SW_TOO_LARGE && error.limit == ROWS);
        from = absurd[i], count = 1;
        EXPECT(run() == SW_TOO_LARGE && error.limit == 0);
        from = (size_t)0 - absurd[i], count = absurd[i];
        EXPECT(run() == SW_TOO_LARGE);
        memset(place, 0x55, sizeof place);
        EXPECT(sw_sweep_strengths(&s, &rules, both, 2, 0, absurd[i], place, &error) == SW_TOO_LARGE);
        EXPECT(sw_sweep_strengths(&s, &rules, both, 2, absurd[i], 1, place, &error) == SW_TOO_LARGE);
        EXPECT(sw_sweep_strengths(&s, &rules, both, absurd[i] / 2 + 4097, 0, 1, place, &error) != SW_OK);
        EXPECT(untouched(place, sizeof place));
        s.rows = absurd[i], from = 0, count = ROWS; /* the columns are shorter */
        EXPECT(run() == SW_TOO_SMALL && error.index == 1);
        s.rows = ROWS;
    }
    for (left = 0; left <= ROWS; left++) {
        from = ROWS - left, count = left;
        EXPECT(run() == SW_OK);
        count = left + 1;
        EXPECT(run() == SW_TOO_LARGE && error.limit == (double)left);
    }
    from = 0, count = ROWS;
    EXPECT(sw_sweep_strengths(&s, &rules, many, 4097, 0, 1, place, &error) == SW_TOO_MANY && error.index == 3);
    EXPECT(sw_sweep_strengths(&s, &rules, many, 4096, 0, 0, NULL, &error) == SW_OK); /* nothing asked for */
    EXPECT(sw_sweep_strengths(&s, &rules, NULL, 0, 0, ROWS, NULL, &error) == SW_OK);
    /* As many rows as there are numbers, by constants and an axis: the last are those of the same hole at the front. */
    {
        const sw_sweep before = s;
        double end[7], front[7];
        s.pitch_mm.values = s.plate_mm.values = NULL, s.pitch_mm.count = s.plate_mm.count = 0;
        s.pitch_mm.same = 75, s.plate_mm.same = 10, s.rows = (size_t)-1;
        r.efficiency = front, r.book_efficiency = r.credited_efficiency = NULL, r.mode = NULL, r.status = NULL;
        EXPECT(sw_sweep_run(&s, &rules, ((size_t)-1 - 7) % 7, 7, &r, &error) == SW_OK);
        r.efficiency = end;
        EXPECT(sw_sweep_run(&s, &rules, (size_t)-1 - 7, 7, &r, &error) == SW_OK);
        EXPECT(memcmp(end, front, sizeof end) == 0 && end[0] > 0 && end[0] != end[1]);
        EXPECT(sw_sweep_run(&s, &rules, (size_t)-1 - 7, 8, &r, &error) == SW_TOO_LARGE);
        EXPECT(sw_sweep_run(&s, &rules, 0, (size_t)-1, &r, &error) != SW_OK); /* longer than any array can be */
        EXPECT(sw_sweep_strengths(&s, &rules, many, 4096, 0, (size_t)-1 / 4096 + 1, place, &error) != SW_OK);
        s = before, begin();
    }
}

/* Results in the place of a column or of each other, by their first or last element; side by side they may lie. */
static void shared_places(void)
{
    static double shared[4 * ROWS];
    double *const middle = shared + 2 * ROWS;
    uint16_t modes[4] = {0};
    size_t i, n;
    double **const written[] = {&r.efficiency, &r.book_efficiency, &r.credited_efficiency};
    for (n = 0; n < 3; n++) {
        double *const before = *written[n];
        for (i = 0; i < 14; i++) {
            const sw_sweep_column was = *column((int)i);
            memcpy(middle, pitch, ROWS * sizeof *middle);
            column((int)i)->values = middle, column((int)i)->count = ROWS, column((int)i)->each = 1;
            *written[n] = middle;
            EXPECT(run() == SW_BAD_POINTER && error.index == 5);
            *written[n] = middle + ROWS - 1;
            EXPECT(run() == SW_BAD_POINTER && error.index == 5);
            *written[n] = middle - ROWS + 1;
            EXPECT(run() == SW_BAD_POINTER && error.index == 5);
            EXPECT(memcmp(middle, pitch, sizeof pitch) == 0);
            *column((int)i) = was;
        }
        column(0)->values = middle;
        *written[n] = middle - ROWS;
        EXPECT(sw_sweep_run(&s, &rules, 0, ROWS, &r, &error) == SW_OK && memcmp(middle, pitch, sizeof pitch) == 0);
        *written[n] = middle + ROWS;
        EXPECT(sw_sweep_run(&s, &rules, 0, ROWS, &r, &error) == SW_OK && memcmp(middle, pitch, sizeof pitch) == 0);
        column(0)->values = pitch, *written[n] = before;
        for (i = 0; i < 3; i++) {
            if (i == n)
                continue;
            *written[n] = *written[i];
            EXPECT(run() == SW_BAD_POINTER && error.index == 5);
            *written[n] = *written[i] + (i < n ? ROWS - 1 : 1);
            EXPECT(run() == SW_BAD_POINTER && error.index == 5);
            *written[n] = before;
        }
        r.mode = (uint16_t *)(void *)(before + ROWS - 1);
        EXPECT(run() == SW_BAD_POINTER && error.index == 5);
        r.mode = mode, r.status = (uint8_t *)before;
        EXPECT(run() == SW_BAD_POINTER && error.index == 5);
        r.status = status;
    }
    r.status = (uint8_t *)mode + 2 * ROWS - 1;
    EXPECT(run() == SW_BAD_POINTER && error.index == 5);
    r.status = (uint8_t *)pitch;
    EXPECT(run() == SW_BAD_POINTER && error.index == 5);
    r.status = status;
    EXPECT(sw_sweep_strengths(&s, &rules, modes, 4, 0, 1, pitch, &error) == SW_BAD_POINTER && error.index == 7);
    EXPECT(sw_sweep_strengths(&s, &rules, (const uint16_t *)(const void *)middle, 4, 0, 1, middle, &error) ==
           SW_BAD_POINTER);
    EXPECT(error.index == 7 && run() == SW_OK);
}

/* Arrays that end where the last row does, of every number of rows: a sanitizer sees an element too many. */
static void tight_arrays(void)
{
    size_t n;
    for (n = 1; n <= ROWS; n++) {
        double *e = malloc(n * sizeof *e), *p = malloc(n * sizeof *p);
        uint16_t *m = malloc(n * sizeof *m);
        uint8_t *st = malloc(n);
        EXPECT(e && p && m && st && run() == SW_OK);
        memcpy(p, pitch, n * sizeof *p);
        s.rows = s.pitch_mm.count = s.plate_mm.count = n, s.pitch_mm.values = p;
        r.efficiency = e, r.mode = m, r.status = st, r.book_efficiency = r.credited_efficiency = NULL;
        EXPECT(sw_sweep_run(&s, &rules, 0, n, &r, &error) == SW_OK);
        EXPECT(memcmp(e, figures[0], n * sizeof *e) == 0 && memcmp(m, mode, n * sizeof *m) == 0);
        free(e), free(p), free(m), free(st);
        begin();
    }
}

static void bad_calls(void)
{
    sw_joint joint;
    sw_materials steel;
    sw_mode named;
    uint32_t modes = 77;
    uint16_t first = 0;
    double place[ROWS];
    sw_joint_init(&joint), joint.pitch_mm = -7, memset(&steel, 0x55, sizeof steel), memset(&named, 0x55, sizeof named);
    EXPECT(sw_sweep_run(NULL, &rules, 0, 1, &r, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_sweep_run(&s, NULL, 0, 1, &r, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_sweep_run(&s, &rules, 0, 1, NULL, &error) == SW_BAD_POINTER && error.index == 5);
    EXPECT(sw_sweep_strengths(NULL, &rules, &first, 1, 0, 1, place, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_sweep_strengths(&s, NULL, &first, 1, 0, 1, place, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_sweep_strengths(&s, &rules, NULL, 1, 0, 1, place, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_sweep_strengths(&s, &rules, &first, 1, 0, 1, NULL, &error) == SW_BAD_POINTER && error.index == 7);
    EXPECT(sw_sweep_strengths(&s, &rules, &first, 1, 0, 1, (double *)(void *)((char *)place + 4), &error) ==
           SW_BAD_POINTER);
    EXPECT(sw_sweep_joint(NULL, &rules, 0, &joint, &steel, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_sweep_joint(&s, NULL, 0, &joint, &steel, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_sweep_joint(&s, &rules, 0, NULL, &steel, &error) == SW_BAD_POINTER && error.index == 4);
    EXPECT(sw_sweep_joint(&s, &rules, 0, &joint, NULL, &error) == SW_BAD_POINTER && error.index == 5);
    EXPECT(sw_sweep_joint(&s, &rules, ROWS, &joint, &steel, &error) == SW_BAD_CHOICE && error.index == 3);
    EXPECT(sw_sweep_joint(&s, &rules, (size_t)-1, &joint, &steel, &error) == SW_BAD_CHOICE);
    EXPECT(joint.pitch_mm == -7 && untouched(&steel, sizeof steel));
    EXPECT(sw_sweep_joint(&s, &rules, ROWS - 1, &joint, &steel, &error) == SW_OK && joint.pitch_mm == pitch[ROWS - 1]);
    EXPECT(sw_sweep_mode_count(NULL, 1, &modes, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_sweep_mode_count(&s.form, 1, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_sweep_mode_count(&s.form, 2, &modes, &error) == SW_BAD_CHOICE && error.index == 2 && modes == 77);
    EXPECT(sw_sweep_mode_count(&s.form, 1, &modes, &error) == SW_OK);
    EXPECT(sw_sweep_mode(NULL, 1, 0, &named, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_sweep_mode(&s.form, 1, 0, NULL, &error) == SW_BAD_POINTER && error.index == 4);
    EXPECT(sw_sweep_mode(&s.form, 1, modes, &named, &error) == SW_BAD_CHOICE && error.index == 3);
    EXPECT(sw_sweep_mode(&s.form, 1, SW_NO_MODE, &named, &error) == SW_BAD_CHOICE && untouched(&named, sizeof named));
    EXPECT(sw_sweep_mode(&s.form, 1, modes - 1, &named, &error) == SW_OK);
    sw_sweep_init(NULL), sw_sweep_results_init(NULL);
}

int main(void)
{
    int n;
    begin();
    EXPECT(run() == SW_OK);
    wrong_columns();
    absurd_rows();
    shared_places();
    tight_arrays();
    bad_calls();
    wrong_struct_sizes(&s, run);
    wrong_struct_sizes(&r, run);
    wrong_struct_sizes(&rules, run);
    EXPECT(careless_words(&s, offsetof(sw_sweep, reserved), offsetof(sw_sweep, form), run) == 0); /* not looked at */
    EXPECT(careless_words(&s, offsetof(sw_sweep, form), offsetof(sw_sweep, rows), run) > 30);
    EXPECT(careless_words(&s, offsetof(sw_sweep, rows), offsetof(sw_sweep, pitch_mm), run) > 10);
    for (n = 3; n < 11; n++) {
        size_t at = (size_t)((char *)&column(n)->same - (char *)&s);
        EXPECT(careless_words(&s, at, at + sizeof(double), run) > 3);
    }
    /* However long a value of an axis stands it is no error. */
    EXPECT(careless_words(&s, offsetof(sw_sweep, hole_mm) + offsetof(sw_sweep_column, each),
                          offsetof(sw_sweep, hole_mm) + offsetof(sw_sweep_column, same), run) == 0);
    /* What stands in the arrays is a matter of its row: the call is well, and the row has its status. */
    EXPECT(careless_words(pitch, 0, 4 * sizeof *pitch, run) == 0);
    EXPECT(careless_words(holes, 0, sizeof holes, run) == 0);
    return done("the C border of sweeps");
}
