/* The border of sensitivities, tolerances and comparisons: NULL, wrong sizes, short buffers and arrays, NaN. */
#include <stddef.h>

#include "expect.h"

static sw_rules rules[2];
static sw_joint joint;
static sw_materials steel;
static sw_tolerances by;
static sw_brief brief;
static sw_shell shell;
static sw_column columns[17];
static size_t column_count = 2;
static sw_error error;

static void begin(void)
{
    size_t i;
    sw_error_init(&error), sw_joint_init(&joint), sw_materials_init(&steel), sw_brief_init(&brief);
    sw_shell_init(&shell), sw_tolerances_init(&by);
    EXPECT(sw_rules_find("metric", &rules[0], &error) == SW_OK && sw_rules_find("indian", &rules[1], &error) == SW_OK);
    EXPECT(sw_form_lap(2, &joint.form, &error) == SW_OK);
    joint.pitch_mm = 70, joint.plate_mm = 13, joint.hole_mm[0] = 23, joint.back_pitch_mm[0] = 50;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    by.plate_mm = 0.3, by.hole_mm = 0.5, by.pitch_mm = 1;
    brief.form = joint.form, brief.materials = steel, brief.plate_mm = 13, shell.inside_mm = 1000;
    for (i = 0; i < 17; i++)
        columns[i].brief = &brief, columns[i].rules = &rules[i % 2], columns[i].shell = &shell;
}

static uint32_t text(int which, char *b, size_t n, size_t *s)
{
    switch (which) {
    case 0: return sw_section_heading(0, b, n, s);
    case 1: return sw_joint_slopes_text(&joint, &steel, rules, b, n, s, NULL);
    case 2: return sw_columns_text(columns, 2, SW_SORT_GIVEN, NULL, b, n, s, NULL);
    default: return SW_END;
    }
}

static uint32_t list(int which, void *a, size_t n, size_t *count, size_t *size)
{
    *size = which == 0 ? sizeof(sw_slope) : sizeof(sw_compared);
    switch (which) {
    case 0: return sw_joint_slopes(&joint, &steel, rules, a, n, count, NULL);
    case 1: return sw_columns_compare(columns, 2, SW_SORT_CREDITED, a, n, count, NULL);
    default: return SW_END;
    }
}

static uint32_t worst(void)
{
    sw_worst w;
    uint32_t status;
    sw_worst_init(&w), w.stated = -7;
    status = sw_joint_worst(&joint, &steel, rules, &by, SW_TARGET_BOOK_EFFICIENCY, &w, &error);
    EXPECT((status == SW_OK) == (w.stated != -7) && (status == SW_OK || error.status == status));
    return status;
}

static uint32_t compares(void)
{
    sw_compared f[16];
    size_t n = 999;
    uint32_t status;
    memset(f, 0x55, sizeof f);
    status = sw_columns_compare(columns, column_count, SW_SORT_PRESSURE, f, 16, &n, &error);
    EXPECT((status == SW_OK) == (n != 999) && (status == SW_OK) == (f[0].column != 0x55555555));
    return status;
}

static void bad_calls(void)
{
    sw_worst w;
    sw_parting p;
    size_t n = 0;
    sw_worst_init(&w), memset(&p, 0x55, sizeof p);
    EXPECT(sw_joint_slopes(NULL, &steel, rules, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_joint_slopes(&joint, NULL, rules, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_joint_slopes(&joint, &steel, NULL, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_joint_worst(&joint, &steel, rules, NULL, 0, &w, &error) == SW_BAD_POINTER && error.index == 4);
    EXPECT(sw_joint_worst(&joint, &steel, rules, &by, 3, &w, &error) == SW_BAD_CHOICE && error.index == 5);
    EXPECT(sw_joint_worst(&joint, &steel, rules, &by, 0, NULL, &error) == SW_BAD_POINTER && error.index == 6);
    by.hole_mm = NAN;
    EXPECT(worst() == SW_NOT_FINITE);
    by.hole_mm = -1;
    EXPECT(worst() == SW_TOO_SMALL);
    by.hole_mm = 0.5;
    EXPECT(sw_columns_compare(NULL, 2, 0, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_columns_compare(columns, 0, 0, NULL, 0, &n, NULL) == SW_TOO_SMALL);
    EXPECT(sw_columns_compare(columns, 16, 0, NULL, 0, &n, NULL) == SW_OK && n == 16);
    EXPECT(sw_columns_compare(columns, 17, 0, NULL, 0, &n, NULL) == SW_TOO_MANY);
    EXPECT(sw_columns_compare(columns, (size_t)-1, 0, NULL, 0, &n, NULL) == SW_TOO_MANY);
    EXPECT(sw_columns_compare(columns, 2, 7, NULL, 0, &n, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_columns_parting(columns, 2, 2, 0, &p, NULL) == SW_BAD_CHOICE && p.by_rule == 0x55555555);
    EXPECT(sw_columns_parting(columns, 2, 1, 99, &p, NULL) == SW_BAD_CHOICE && p.by_rule == 0x55555555);
    EXPECT(sw_columns_parting(columns, 2, 1, 2, NULL, NULL) == SW_BAD_POINTER);
    columns[1].brief = NULL;
    EXPECT(compares() == SW_BAD_POINTER);
    columns[1].brief = &brief, columns[1].rules = NULL;
    EXPECT(compares() == SW_BAD_POINTER);
    columns[1].rules = &rules[1];
    EXPECT(sw_section_heading(0xffffffff, NULL, 0, &n) == SW_BAD_CHOICE);
    sw_worst_init(NULL), sw_tolerances_init(NULL);
}

int main(void)
{
    begin();
    EXPECT(short_buffers(text) == 3);
    EXPECT(short_arrays(list) == 2);
    bad_calls();
    wrong_struct_sizes(&joint, worst);
    wrong_struct_sizes(&brief, compares);
    wrong_struct_sizes(&shell, compares);
    wrong_struct_sizes(&rules[1], compares);
    EXPECT(careless_words(&by, 0, sizeof by, worst) > 12);
    EXPECT(careless_words(&joint, 4, sizeof joint, worst) > 50);
    EXPECT(careless_words(&shell, 4, sizeof shell, compares) > 10);
    careless_words(&brief, 8 + sizeof(sw_form), sizeof brief, compares); /* these stand in the columns */
    return done("the C border of sensitivities, tolerances and comparisons");
}
