/* The border of vessels and boilers: NULL, wrong sizes, short buffers and arrays, NaN, absurd numbers. */
#include <stddef.h>

#include "expect.h"

static sw_rules rules;
static sw_vessel_brief brief;
static sw_shell shell;
static sw_joint along, lap;
static sw_materials steel;
static sw_error error;
static double plates[] = {8, 12, 16, 20};

static void begin(void)
{
    sw_vessel v;
    sw_error_init(&error), sw_vessel_brief_init(&brief), sw_shell_init(&shell), sw_joint_init(&along);
    sw_joint_init(&lap), sw_vessel_init(&v);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    EXPECT(sw_form_double_strap(2, &brief.form, &error) == SW_OK && sw_form_lap(1, &brief.girth_form, &error) == SW_OK);
    brief.materials.tension_mpa = 90, brief.materials.rivet_shear_mpa = 75, brief.materials.bearing_mpa = 150;
    brief.shell = &shell, shell.inside_mm = 1500, brief.pressure_mpa = 1.0, brief.girth_wanted = 1;
    brief.plates_mm = plates, brief.plate_count = 4, brief.hole_mm = 21, brief.rivet_mm = 20;
    steel = brief.materials;
    EXPECT(sw_vessel_design(&brief, &rules, &v, &along, &lap, NULL, NULL, &error) == SW_OK && v.fits && v.girth);
}

static uint32_t text(int which, char *b, size_t n, size_t *s)
{
    switch (which) {
    case 0: return sw_part_what(SW_PART_FURNACE, b, n, s);
    case 1: return sw_working_vessel(&brief, &rules, NULL, b, n, s, NULL);
    default: return SW_END;
    }
}

static uint32_t list(int which, void *a, size_t n, size_t *count, size_t *size)
{
    sw_girth girth;
    sw_girth_init(&girth);
    *size = sizeof(sw_finding);
    switch (which) {
    case 0: return sw_vessel_findings(&brief, &rules, a, n, count, NULL);
    case 1: *size = sizeof(sw_assumption); return sw_vessel_assumptions(&brief, &rules, a, n, count, NULL);
    case 2: return sw_girth_check(&along, &steel, &rules, &shell, &lap, SW_GIRTH_END, 1, &girth, a, n, count, NULL);
    default: return SW_END;
    }
}

static uint32_t designs(void)
{
    sw_vessel v;
    sw_joint a, b;
    sw_girth g;
    sw_error why;
    uint32_t status;
    sw_vessel_init(&v), sw_joint_init(&a), sw_joint_init(&b), sw_girth_init(&g), sw_error_init(&why);
    v.tried = 99, a.pitch_mm = -7, b.pitch_mm = -7, g.needed = -7, why.status = 99;
    status = sw_vessel_design(&brief, &rules, &v, &a, &b, &g, &why, &error);
    EXPECT((status == SW_OK) == (v.tried != 99) && (status == SW_OK) == (why.status != 99));
    EXPECT((status == SW_OK && v.fits) == (a.pitch_mm != -7));
    EXPECT((status == SW_OK && v.fits && v.girth) == (b.pitch_mm != -7) && (b.pitch_mm == -7) == (g.needed == -7));
    EXPECT(status == SW_OK || error.status == status);
    return status;
}

static uint32_t girths(void)
{
    sw_girth g;
    uint32_t status;
    sw_girth_init(&g), g.needed = -7;
    status = sw_girth_check(&along, &steel, &rules, &shell, &lap, SW_GIRTH_END, 1, &g, NULL, 0, NULL, &error);
    EXPECT((status == SW_OK) == (g.needed != -7));
    return status;
}

static void null_pointers(void)
{
    sw_vessel v;
    sw_girth g;
    sw_boiler_line lines[40];
    uint32_t line = 99;
    size_t n;
    sw_vessel_init(&v), sw_girth_init(&g), memset(lines, 0, sizeof lines);
    EXPECT(sw_vessel_design(NULL, &rules, &v, NULL, NULL, NULL, NULL, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_vessel_design(&brief, NULL, &v, NULL, NULL, NULL, NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_vessel_design(&brief, &rules, NULL, NULL, NULL, NULL, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_vessel_design(&brief, &rules, &v, NULL, NULL, NULL, NULL, NULL) == SW_OK);
    brief.shell = NULL;
    EXPECT(designs() == SW_BAD_POINTER && error.index == 1);
    brief.shell = &shell, brief.plate_count = 0x7fffffff;
    EXPECT(designs() == SW_TOO_MANY);
    brief.plate_count = 4;
    EXPECT(sw_girth_check(&along, &steel, &rules, NULL, &lap, 0, 1, &g, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_girth_check(&along, &steel, &rules, &shell, NULL, 0, 1, &g, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_girth_check(&along, &steel, &rules, &shell, &lap, 0, 1, NULL, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_girth_check(&along, &steel, &rules, &shell, &lap, 9, 1, &g, NULL, 0, NULL, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_girth_check(&along, &steel, &rules, &shell, &lap, 0, NAN, &g, NULL, 0, NULL, NULL) == SW_NOT_FINITE);
    EXPECT(sw_boiler_governing(NULL, 3, &rules, &line, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_boiler_governing(lines, 3, NULL, &line, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_boiler_governing(lines, 3, &rules, NULL, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_boiler_governing(lines, SW_MAX_LINES, &rules, &line, NULL, NULL) == SW_OK && line == 0);
    line = 99;
    EXPECT(sw_boiler_governing(lines, SW_MAX_LINES + 1, &rules, &line, NULL, NULL) == SW_NO_SPACE && line == 99);
    EXPECT(sw_boiler_governing(lines, 40, &rules, &line, NULL, NULL) == SW_NO_SPACE && line == 99);
    EXPECT(sw_boiler_governing(lines, (size_t)-1, &rules, &line, NULL, NULL) == SW_TOO_MANY && line == 99);
    lines[1].part = 7;
    EXPECT(sw_boiler_governing(lines, 3, &rules, &line, NULL, NULL) == SW_BAD_CHOICE && line == 99);
    lines[1].part = 0, lines[1].pressure_mpa = NAN;
    EXPECT(sw_boiler_governing(lines, 3, &rules, &line, NULL, NULL) == SW_NOT_FINITE && line == 99);
    EXPECT(sw_part_what(7, NULL, 0, &n) == SW_BAD_CHOICE);
    sw_vessel_brief_init(NULL), sw_vessel_init(NULL), sw_girth_init(NULL);
}

int main(void)
{
    begin();
    EXPECT(short_buffers(text) == 2);
    EXPECT(short_arrays(list) == 3);
    null_pointers();
    wrong_struct_sizes(&brief, designs);
    wrong_struct_sizes(&shell, designs);
    wrong_struct_sizes(&along, girths);
    wrong_struct_sizes(&lap, girths);
    EXPECT(careless_words(&brief, 4, offsetof(sw_vessel_brief, shell), designs) > 100);
    EXPECT(careless_words(&brief, offsetof(sw_vessel_brief, pressure_mpa), sizeof brief, designs) > 10);
    EXPECT(careless_words(plates, 0, sizeof plates, designs) > 10);
    brief.plates_mm = NULL, brief.plate_count = 0, brief.stock_from_mm = 6, brief.stock_to_mm = 30;
    EXPECT(careless_words(&brief, offsetof(sw_vessel_brief, stock_step_mm), sizeof brief, designs) > 20);
    brief.stock_step_mm = 1e-300;
    EXPECT(designs() == SW_TOO_SMALL);
    return done("the C border of vessels and boilers");
}
