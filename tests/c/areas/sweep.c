/* Sweeps: by hand, against single checks, and what is refused. */
#include "../expect.h"

enum { ROWS = 200 };

static sw_error error;
static sw_rules metric;
static double pitch[ROWS], plate[ROWS], hole[ROWS];
static double efficiency[ROWS], book[ROWS], credited[ROWS], strengths[2 * ROWS];
static uint16_t mode[ROWS];
static uint8_t status[ROWS];

static void begin(sw_sweep *s, sw_sweep_results *r)
{
    int i;
    sw_error_init(&error), sw_sweep_init(s), sw_sweep_results_init(r);
    EXPECT(sw_rules_find("metric", &metric, &error) == SW_OK);
    EXPECT(sw_form_double_strap(3, &s->form, &error) == SW_OK);
    for (i = 0; i < ROWS; i++) {
        pitch[i] = 60 + i % 37 * 2.5, plate[i] = 7 + i % 11 * 1.3, hole[i] = 15 + i % 7;
        efficiency[i] = book[i] = credited[i] = -1, mode[i] = 7, status[i] = 7;
    }
    pitch[3] = nan(""), pitch[64] = 12, plate[199] = 1e9; /* no number, holes that fill it, too thick */
    s->rows = ROWS;
    s->pitch_mm.values = pitch, s->pitch_mm.count = ROWS;
    s->plate_mm.values = plate, s->plate_mm.count = ROWS;
    s->hole_mm.values = hole, s->hole_mm.count = ROWS;
    s->tension_mpa.same = 80, s->rivet_shear_mpa.same = 60, s->bearing_mpa.same = 120, s->other_mm.same = 9;
    r->efficiency = efficiency, r->book_efficiency = book, r->credited_efficiency = credited;
    r->mode = mode, r->status = status;
}

static int same(double a, double b)
{
    return memcmp(&a, &b, sizeof a) == 0;
}

/* Khurmi & Gupta, Example 9.4: 71 mm pitch, 23 mm holes, 13 mm plates; 67.5 % printed, plates torn by hand
   (71 - 23) 13 80 N. */
static void a_published_joint(void)
{
    sw_sweep s;
    sw_sweep_results r;
    uint16_t outer = 0;
    double torn = 0;
    begin(&s, &r);
    EXPECT(sw_form_lap(2, &s.form, &error) == SW_OK);
    s.other_mm.same = 0, s.rows = 1, s.pitch_mm.count = s.plate_mm.count = s.hole_mm.count = 1;
    pitch[0] = 71, plate[0] = 13, hole[0] = 23;
    EXPECT(sw_sweep_run(&s, &metric, 0, 1, &r, &error) == SW_OK);
    EXPECT(fabs(efficiency[0] - 0.675) < 0.0005 && status[0] == SW_OK && efficiency[1] == -1);
    EXPECT(sw_sweep_strengths(&s, &metric, &outer, 1, 0, 1, &torn, &error) == SW_OK && torn == (71 - 23) * 13 * 80.0);
}

/* Every row against the check of its joint, whole and in pieces of every length. */
static void rows_are_single_checks(void)
{
    sw_sweep s;
    sw_sweep_results r;
    sw_joint joint;
    sw_materials steel;
    sw_analysis a;
    sw_mode named;
    uint32_t modes = 0;
    size_t i, piece;
    begin(&s, &r);
    EXPECT(sw_sweep_run(&s, &metric, 0, ROWS, &r, &error) == SW_OK);
    EXPECT(sw_sweep_mode_count(&s.form, 1, &modes, &error) == SW_OK && modes == 4 * 4 * 4);
    sw_joint_init(&joint), sw_analysis_init(&a);
    for (i = 0; i < ROWS; i++) {
        uint32_t found = sw_sweep_joint(&s, &metric, i, &joint, &steel, &error);
        EXPECT(found == status[i]);
        if (found != SW_OK) {
            EXPECT(efficiency[i] != efficiency[i] && mode[i] == SW_NO_MODE && error.status == found);
            continue;
        }
        EXPECT(joint.pitch_mm == pitch[i] && joint.plate_mm == plate[i] && joint.hole_mm[0] == hole[i]);
        EXPECT(sw_joint_check(&joint, &steel, &metric, &a, NULL, 0, NULL, &error) == SW_OK);
        EXPECT(same(a.efficiency, efficiency[i]) && same(a.book_efficiency, book[i]));
        EXPECT(same(a.credited_efficiency, credited[i]));
        EXPECT(sw_sweep_mode(&s.form, 1, mode[i], &named, &error) == SW_OK);
        EXPECT(named.plate_row == a.governing.plate_row && named.other_row == a.governing.other_row);
        EXPECT(named.narrow_row == a.governing.narrow_row);
        EXPECT(sw_sweep_strengths(&s, &metric, &mode[i], 1, i, 1, strengths, &error) == SW_OK);
        EXPECT(same(strengths[0], a.governing.strength_n));
    }
    EXPECT(status[3] == SW_NOT_FINITE && status[64] == SW_HOLES_FILL_PITCH && status[199] == SW_TOO_LARGE);
    for (piece = 1; piece < 70; piece++) {
        double again[ROWS];
        sw_sweep_results_init(&r);
        r.efficiency = again;
        for (i = 0; i < ROWS; i += piece) {
            size_t n = ROWS - i < piece ? ROWS - i : piece;
            r.efficiency = again + i;
            EXPECT(sw_sweep_run(&s, &metric, i, n, &r, &error) == SW_OK);
        }
        EXPECT(memcmp(again, efficiency, sizeof again) == 0);
    }
}

/* A grid of 4 pitches, 5 plates and 10 holes is the columns that it stands for. */
static void a_grid(void)
{
    sw_sweep s;
    sw_sweep_results r;
    double pitches[4] = {70, 90, 20, 120}, plates[5] = {8, 10, 12, 14, 16}, holes[10], of_columns[ROWS];
    size_t i;
    begin(&s, &r);
    for (i = 0; i < 10; i++)
        holes[i] = 15 + (double)i;
    for (i = 0; i < ROWS; i++)
        pitch[i] = pitches[i / 50], plate[i] = plates[i / 10 % 5], hole[i] = holes[i % 10];
    EXPECT(sw_sweep_run(&s, &metric, 0, ROWS, &r, &error) == SW_OK);
    memcpy(of_columns, efficiency, sizeof of_columns);
    s.pitch_mm.values = pitches, s.pitch_mm.count = 4, s.pitch_mm.each = 50;
    s.plate_mm.values = plates, s.plate_mm.count = 5, s.plate_mm.each = 10;
    s.hole_mm.values = holes, s.hole_mm.count = 10, s.hole_mm.each = 1;
    memset(efficiency, 0, sizeof efficiency);
    EXPECT(sw_sweep_run(&s, &metric, 0, ROWS, &r, &error) == SW_OK);
    EXPECT(memcmp(of_columns, efficiency, sizeof of_columns) == 0);
}

#define REFUSED(call, kind, at)                                                                                        \
    do {                                                                                                               \
        EXPECT((call) == (kind));                                                                                      \
        EXPECT(error.status == (kind) && error.index == (at));                                                         \
    } while (0)

/* Nothing is written where something is refused. */
static void what_is_refused(void)
{
    sw_sweep s, c;
    sw_sweep_results r, o;
    sw_joint joint;
    sw_materials steel;
    sw_mode named;
    uint32_t modes;
    uint16_t stray = 64;
    begin(&s, &r);
    sw_joint_init(&joint);
#define RUN(from, count) sw_sweep_run(&c, &metric, from, count, &o, &error)
#define AFRESH c = s, o = r
    AFRESH, c.pitch_mm.count = 199;
    REFUSED(RUN(0, ROWS), SW_TOO_SMALL, 1);
    AFRESH, c.rows = 199;
    REFUSED(RUN(0, 199), SW_TOO_LARGE, 1);
    AFRESH;
    REFUSED(RUN(1, ROWS), SW_TOO_LARGE, 1);
    AFRESH;
    REFUSED(RUN((size_t)-1, 1), SW_TOO_LARGE, 1);
    AFRESH, c.tension_mpa.same = 0;
    REFUSED(RUN(0, ROWS), SW_TOO_SMALL, 0);
    AFRESH, c.bearing_mpa.same = 0;
    REFUSED(RUN(0, ROWS), SW_MISSING, 0);
    AFRESH, c.other_mm.same = 0, c.narrow_mm.same = 8;
    REFUSED(RUN(0, ROWS), SW_MISSING, 0);
    AFRESH, c.pitch_mm.values = NULL;
    REFUSED(RUN(0, ROWS), SW_BAD_POINTER, 1);
    AFRESH, c.pitch_mm.values = (const double *)((const char *)pitch + 1);
    REFUSED(RUN(0, ROWS), SW_BAD_POINTER, 1);
    AFRESH, c.pitch_mm.count = (size_t)-1;
    REFUSED(RUN(0, ROWS), SW_TOO_MANY, 1);
    AFRESH, o.efficiency = NULL;
    REFUSED(RUN(0, ROWS), SW_BAD_POINTER, 5);
    /* Places that are one to the library. */
    AFRESH, o.efficiency = pitch;
    REFUSED(RUN(0, ROWS), SW_BAD_POINTER, 5);
    AFRESH, o.efficiency = pitch + ROWS - 1;
    REFUSED(RUN(0, ROWS), SW_BAD_POINTER, 5);
    AFRESH, o.credited_efficiency = efficiency + 1;
    REFUSED(RUN(0, ROWS), SW_BAD_POINTER, 5);
    AFRESH, o.status = (uint8_t *)&mode[4];
    REFUSED(RUN(0, ROWS), SW_BAD_POINTER, 5);
    AFRESH, c.struct_size = 12;
    EXPECT(RUN(0, ROWS) == SW_BAD_STRUCT_SIZE);
    AFRESH, o.struct_size = 12;
    EXPECT(RUN(0, ROWS) == SW_BAD_STRUCT_SIZE);
    AFRESH;
    EXPECT(efficiency[0] == -1 && credited[0] == -1 && mode[0] == 7 && status[0] == 7 && book[ROWS - 1] == -1);
    EXPECT(RUN(ROWS, 0) == SW_OK && RUN(0, 0) == SW_OK); /* nothing to do */
    REFUSED(sw_sweep_strengths(&s, &metric, &stray, 1, 0, 1, strengths, &error), SW_NOT_FOR_THIS_FORM, 0);
    REFUSED(sw_sweep_strengths(&s, &metric, mode, 2, 0, 1, pitch, &error), SW_BAD_POINTER, 7);
    REFUSED(sw_sweep_strengths(&s, &metric, NULL, 2, 0, 1, strengths, &error), SW_BAD_POINTER, 3);
    REFUSED(sw_sweep_strengths(&s, &metric, mode, 2, 1, ROWS, strengths, &error), SW_TOO_LARGE, 1);
    REFUSED(sw_sweep_joint(&s, &metric, ROWS, &joint, &steel, &error), SW_BAD_CHOICE, 3);
    REFUSED(sw_sweep_mode_count(&s.form, 2, &modes, &error), SW_BAD_CHOICE, 2);
    REFUSED(sw_sweep_mode(&s.form, 1, 64, &named, &error), SW_BAD_CHOICE, 3);
    REFUSED(sw_sweep_mode(&s.form, 1, 0x10000, &named, &error), SW_BAD_CHOICE, 3);
    EXPECT(sw_sweep_run(NULL, &metric, 0, 1, &r, NULL) == SW_BAD_POINTER);
    EXPECT(sw_sweep_run(&s, NULL, 0, 1, &r, NULL) == SW_BAD_POINTER);
    EXPECT(sw_sweep_run(&s, &metric, 0, 1, NULL, NULL) == SW_BAD_POINTER);
}

int main(void)
{
    a_published_joint();
    rows_are_single_checks();
    a_grid();
    what_is_refused();
    return done("sweeps");
}
