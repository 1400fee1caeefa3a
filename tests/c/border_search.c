/* The border of searches: NULL, wrong sizes, short arrays, NaN, absurd numbers. */
#include <stddef.h>

#include "expect.h"

static sw_rules rules;
static sw_search s;
static sw_shell shell;
static sw_order order;
static sw_form forms[SW_MAX_FORMS + 1];
static sw_error error;
static double plates[] = {8, 10};
static double holes[] = {19, 21};
static sw_front_slot slots[200];
static size_t slot_count = 200;

static void begin(void)
{
    size_t i;
    sw_error_init(&error), sw_search_init(&s), sw_shell_init(&shell), sw_order_init(&order);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    EXPECT(sw_form_lap(1, &forms[0], &error) == SW_OK && sw_form_lap(2, &forms[1], &error) == SW_OK);
    for (i = 2; i <= SW_MAX_FORMS; i++)
        forms[i] = forms[0];
    s.materials.tension_mpa = 80, s.materials.rivet_shear_mpa = 60, s.materials.bearing_mpa = 120;
    s.plates_mm = plates, s.plate_count = 2, s.forms = forms, s.form_count = 2, s.holes_mm = holes, s.hole_count = 2;
    s.shell = &shell, s.order = &order, shell.inside_mm = 600, order.run = SW_RUN_TIE;
    s.rivet_least_mm = 10, s.rivet_most_mm = 30, s.pitch_most_mm = 90, s.efficiency_least = 0.1, s.pressure_mpa = 0.1;
    s.rows_most = 3, s.any_finding = 1;
}

static uint32_t text(int which, char *b, size_t n, size_t *size)
{
    switch (which) {
    case 0: return sw_measure_what(SW_MEASURE_ORDER, b, n, size);
    case 1: return sw_constraint_what(6, b, n, size);
    case 2: return sw_constraint_what(SW_CONSTRAINT_RULE, b, n, size);
    default: return SW_END;
    }
}

static uint32_t list(int which, void *a, size_t n, size_t *count, size_t *size)
{
    *size = sizeof(sw_ranked);
    return which == 0 ? sw_search_best(&s, &rules, a, n, count, NULL, NULL) : SW_END;
}

static uint32_t searches(void)
{
    sw_ranked best[SW_MAX_BEST];
    sw_tally tally;
    size_t n = 999;
    uint32_t status;
    sw_tally_init(&tally);
    best[0].candidate.pitch_mm = -7, tally.grid = 12345;
    status = sw_search_best(&s, &rules, best, SW_MAX_BEST, &n, &tally, &error);
    EXPECT((status == SW_OK) == (n != 999) && (status == SW_OK) == (tally.grid != 12345));
    EXPECT(status == SW_OK || (best[0].candidate.pitch_mm == -7 && error.status == status));
    return status;
}

static void null_pointers(void)
{
    sw_ranked best[SW_MAX_BEST];
    sw_candidate front[200];
    sw_brief brief;
    size_t n = 0, count;
    sw_brief_init(&brief);
    EXPECT(sw_search_best(NULL, &rules, best, 5, &n, NULL, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_search_best(&s, NULL, best, 5, &n, NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_search_best(&s, &rules, NULL, 5, &n, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_search_best(&s, &rules, NULL, 0, NULL, NULL, NULL) == SW_OK);
    EXPECT(sw_search_front(&s, &rules, NULL, front, 200, &n, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_search_front(&s, &rules, slots, NULL, 200, &n, NULL, &error) == SW_BAD_POINTER && error.index == 4);
    n = 0;
    EXPECT(sw_search_front(&s, &rules, NULL, NULL, 0, &n, NULL, NULL) == SW_NO_SPACE && n >= 1);
    EXPECT(sw_search_front(&s, &rules, slots, front, slot_count, &count, NULL, NULL) == SW_OK && count >= 1);
    for (n = 0; n <= count + 1; n++) {
        size_t found = 0;
        uint32_t status;
        memset(front, 0x55, sizeof front);
        status = sw_search_front(&s, &rules, slots, front, n, &found, NULL, NULL);
        EXPECT(status == (n < count ? SW_NO_SPACE : SW_OK) && found >= (n < count ? n + 1 : count));
        EXPECT(((unsigned char *)&front[n])[0] == 0x55 && (n >= count || ((unsigned char *)front)[0] == 0x55));
    }
    EXPECT(sw_search_front(&s, &rules, slots, front, 0xffffffff, &n, NULL, NULL) == SW_TOO_MANY);
    EXPECT(sw_search_brief(&s, NULL, &brief, NULL) == SW_BAD_POINTER);
    EXPECT(sw_search_brief(&s, front, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_form_named(0, NULL, NULL) == SW_BAD_POINTER && sw_form_named(0xffffffff, forms, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_measure_what(0xffffffff, NULL, 0, &n) == SW_BAD_CHOICE);
    EXPECT(sw_constraint_what(7, NULL, 0, &n) == SW_BAD_CHOICE && sw_constraint_what(0xffffffff, NULL, 0, &n) == SW_BAD_CHOICE);
    s.plates_mm = NULL;
    EXPECT(searches() == SW_BAD_POINTER && error.index == 1);
    s.plates_mm = plates, s.plate_count = 0;
    EXPECT(searches() == SW_MISSING);
    s.plate_count = (size_t)-1;
    EXPECT(searches() == SW_TOO_MANY);
    s.plate_count = 2, s.forms = NULL;
    EXPECT(searches() == SW_BAD_POINTER);
    s.forms = forms, s.form_count = SW_MAX_FORMS + 1;
    EXPECT(searches() == SW_TOO_MANY);
    s.form_count = SW_MAX_FORMS;
    EXPECT(searches() == SW_OK);
    s.form_count = 0x7fffffff;
    EXPECT(searches() == SW_TOO_MANY);
    s.form_count = 0;
    EXPECT(searches() == SW_MISSING);
    s.form_count = 2, s.holes_mm = (const double *)(const void *)((const char *)holes + 1);
    EXPECT(searches() == SW_BAD_POINTER);
    s.holes_mm = holes;
    sw_search_init(NULL), sw_tally_init(NULL);
}

int main(void)
{
    begin();
    EXPECT(short_buffers(text) == 3);
    EXPECT(short_arrays(list) == 1);
    null_pointers();
    wrong_struct_sizes(&s, searches);
    wrong_struct_sizes(&shell, searches);
    wrong_struct_sizes(&order, searches);
    EXPECT(careless_words(&s, 4, offsetof(sw_search, plates_mm), searches) > 30);
    EXPECT(careless_words(&s, offsetof(sw_search, rivet_least_mm), sizeof s, searches) > 20);
    EXPECT(careless_words(plates, 0, sizeof plates, searches) > 10);
    EXPECT(careless_words(holes, 0, sizeof holes, searches) > 10);
    EXPECT(careless_words(forms, 0, 2 * sizeof *forms, searches) > 30);
    plates[1] = NAN;
    EXPECT(searches() == SW_NOT_FINITE);
    return done("the C border of searches");
}
