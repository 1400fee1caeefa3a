/* The border of shells and ratings: NULL, wrong sizes, short buffers and arrays, NaN, absurd numbers. */
#include <stddef.h>

#include "expect.h"

static sw_joint joint;
static sw_brief brief;
static sw_rules rules;
static sw_shell shell;
static sw_existing lap;
static sw_error error;

static void begin(void)
{
    sw_error_init(&error), sw_joint_init(&joint), sw_brief_init(&brief), sw_shell_init(&shell), sw_existing_init(&lap);
    EXPECT(sw_form_lap(2, &brief.form, &error) == SW_OK && sw_rules_find("metric", &rules, &error) == SW_OK);
    brief.materials.tension_mpa = 380, brief.materials.rivet_shear_mpa = 300, brief.materials.bearing_mpa = 650;
    brief.plate_mm = 11.43;
    EXPECT(sw_joint_size(&brief, &rules, &joint, NULL, NULL, NULL, 0, NULL, &error) == SW_OK);
    EXPECT(sw_rules_find("us-michigan", &rules, &error) == SW_OK);
    shell.inside_mm = 1219.2, shell.footing = SW_FOOTING_ULTIMATE, shell.corrosion_mm = 1;
    sw_service_in_service(&shell.service);
    lap.form = brief.form, lap.inside_mm = 1219.2, lap.pitch_mm = 88.9, lap.plate_mm = 11.43, lap.hole_mm[0] = 23.8;
    lap.hole_mm[1] = 23.9, lap.plate_metal = SW_METAL_STEEL, lap.shell_plate_mm = 9, lap.present_mpa = 0.3;
    lap.tension_mpa = 380, lap.bearing_mpa = 650, lap.plate_when_new_mm = 12.7, lap.margin_mm = 38, lap.back_pitch_mm[0] = 50;
    lap.wastage_mm_per_year = 0.1;
}

static uint32_t text(int which, char *b, size_t n, size_t *s)
{
    switch (which) {
    case 0: return sw_assumption_what(0, b, n, s);
    case 1: return sw_assumption_unit(0, b, n, s);
    case 2: return sw_basis_word(SW_BASIS_ASSUMED, b, n, s);
    case 3: return sw_working_rate(&lap, &rules, NULL, b, n, s, NULL);
    default: return SW_END;
    }
}

static uint32_t list(int which, void *a, size_t n, size_t *count, size_t *size)
{
    sw_allowed allowed;
    sw_factor factor;
    *size = sizeof(sw_assumption);
    switch (which) {
    case 0: return sw_existing_assumptions(&lap, &rules, a, n, count, NULL);
    case 1: return sw_shell_allow(&joint, &brief.materials, &rules, &shell, &allowed, a, n, count, NULL);
    case 2: return sw_shell_factor(&shell, &brief.form, &rules, &factor, a, n, count, NULL);
    case 3: *size = sizeof(sw_finding); return sw_existing_findings(&lap, &rules, a, n, count, NULL);
    default: return SW_END;
    }
}

/* A rating into structs that show whether they were written to. */
static uint32_t rates(void)
{
    sw_rating r;
    sw_joint j;
    sw_analysis a;
    uint32_t status;
    sw_rating_init(&r), sw_joint_init(&j), sw_analysis_init(&a);
    r.allowed_mpa = -7, j.pitch_mm = -7, a.efficiency = -7;
    status = sw_existing_rate(&lap, &rules, &r, &j, &a, &error);
    EXPECT((status == SW_OK) == (r.allowed_mpa != -7) && (status == SW_OK) == (j.pitch_mm != -7));
    EXPECT((status == SW_OK) == (a.efficiency != -7) && (status == SW_OK || error.status == status));
    return status;
}

static uint32_t allows(void)
{
    sw_allowed found;
    sw_assumption notes[SW_MAX_ASSUMPTIONS];
    size_t n = 999;
    uint32_t status;
    found.pressure_mpa = -7, notes[0].value = -7;
    status = sw_shell_allow(&joint, &brief.materials, &rules, &shell, &found, notes, SW_MAX_ASSUMPTIONS, &n, &error);
    EXPECT((status == SW_OK) == (found.pressure_mpa != -7) && (status == SW_OK) == (n != 999));
    EXPECT(status == SW_OK || notes[0].value == -7);
    return status;
}

static void null_pointers(void)
{
    sw_rating r;
    sw_allowed found;
    sw_factor factor;
    sw_seam seam;
    double value = -7;
    sw_rating_init(&r), memset(&seam, 0, sizeof seam);
    EXPECT(sw_existing_rate(NULL, &rules, &r, NULL, NULL, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_existing_rate(&lap, NULL, &r, NULL, NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_existing_rate(&lap, &rules, NULL, NULL, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_existing_rate(&lap, &rules, &r, NULL, NULL, NULL) == SW_OK);
    EXPECT(sw_existing_findings(NULL, &rules, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_existing_assumptions(&lap, NULL, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_shell_allow(&joint, &brief.materials, &rules, NULL, &found, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_shell_allow(&joint, &brief.materials, &rules, &shell, NULL, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_shell_factor(&shell, NULL, &rules, &factor, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_seam_pressure(NULL, &rules, &shell, &found, NULL) == SW_BAD_POINTER);
    EXPECT(sw_seam_pressure(&seam, &rules, &shell, &found, NULL) != SW_OK); /* no form, no plate */
    EXPECT(sw_seam_girth_pressure(&seam, &rules, &shell, NULL, NULL) != SW_OK);
    EXPECT(sw_rules_test_pressure(&rules, 1, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_rules_test_pressure(&rules, NAN, &value, NULL) == SW_NOT_FINITE && value == -7);
    EXPECT(sw_rules_least_plate(&rules, 1000, NULL, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_shell_validate(NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_assumption_what(0xffffffff, NULL, 0, NULL) == SW_BAD_CHOICE);
    sw_shell_init(NULL), sw_existing_init(NULL), sw_rating_init(NULL), sw_service_new_shell(NULL);
    sw_service_in_service(NULL);
}

static void bad_numbers(void)
{
    static const size_t figures[] = {
        offsetof(sw_existing, inside_mm), offsetof(sw_existing, pitch_mm), offsetof(sw_existing, plate_mm),
        offsetof(sw_existing, other_plate_mm), offsetof(sw_existing, shell_plate_mm), offsetof(sw_existing, margin_mm),
        offsetof(sw_existing, plate_when_new_mm), offsetof(sw_existing, hole_mm), offsetof(sw_existing, back_pitch_mm),
        offsetof(sw_existing, tension_mpa), offsetof(sw_existing, rivet_shear_mpa), offsetof(sw_existing, bearing_mpa),
        offsetof(sw_existing, safety_factor), offsetof(sw_existing, corrosion_mm), offsetof(sw_existing, present_mpa),
        offsetof(sw_existing, wastage_mm_per_year)};
    size_t i;
    lap.hole_mm[0] = 0; /* the table of driven rivets, so that the thickness when new counts */
    for (i = 0; i < sizeof figures / sizeof *figures; i++) {
        double before, nan = NAN;
        memcpy(&before, (char *)&lap + figures[i], sizeof before);
        memcpy((char *)&lap + figures[i], &nan, sizeof nan);
        EXPECT(rates() == SW_NOT_FINITE);
        memcpy((char *)&lap + figures[i], &before, sizeof before);
    }
    lap.hole_mm[5] = 20;
    EXPECT(rates() == SW_NOT_FOR_THIS_FORM && error.value == 6);
    lap.hole_mm[5] = 0, lap.narrow_strap_mm = 9;
    EXPECT(rates() != SW_OK);
    lap.narrow_strap_mm = 0, lap.plate_metal = 2;
    EXPECT(rates() == SW_BAD_CHOICE);
    lap.plate_metal = SW_METAL_STEEL;
}

int main(void)
{
    begin();
    EXPECT(short_buffers(text) == 4);
    EXPECT(short_arrays(list) == 4);
    null_pointers();
    wrong_struct_sizes(&lap, rates);
    wrong_struct_sizes(&rules, rates);
    wrong_struct_sizes(&shell, allows);
    EXPECT(careless_words(&lap, 4, sizeof lap, rates) > 200);
    EXPECT(careless_words(&shell, 4, sizeof shell, allows) > 50);
    bad_numbers();
    return done("the C border of shells and ratings");
}
