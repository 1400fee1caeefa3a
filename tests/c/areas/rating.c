/* Pressures of shells and of existing joints, by hand and by published examples. */
#include "../expect.h"

static sw_error error;
static sw_rules rules;

static double psi(double mpa) { return sw_pressure_from_mpa(mpa, SW_PRESSURE_PSI); }

/* Applied Science for Metal Workers, s. 348 (as in the library's own vectors): 1/2 in plate of 60 000 psi, half
   credited, radius 20 in, factor of safety 6: 60 000 x 0.5 x 0.5 / (20 x 6) = 125 psi. */
static void a_seam_of_known_efficiency(void)
{
    sw_shell shell;
    sw_seam seam;
    sw_allowed found, girth;
    sw_shell_init(&shell);
    EXPECT(sw_rules_find("us-existing", &rules, &error) == SW_OK);
    EXPECT(sw_form_lap(2, &seam.form, &error) == SW_OK);
    seam.plate_mm = 12.7, seam.tension_mpa = sw_stress_to_mpa(60000, SW_STRESS_PSI), seam.efficiency = 0.5;
    shell.inside_mm = 40 * 25.4, shell.footing = SW_FOOTING_ULTIMATE, shell.safety_factor = 6;
    EXPECT(sw_seam_pressure(&seam, &rules, &shell, &found, &error) == SW_OK);
    NEAR(psi(found.pressure_mpa), 125, 1e-9);
    EXPECT(found.factor.basis == SW_FACTOR_GIVEN && found.factor.value == 6 && found.factor.entry == SW_NO_ENTRY);
    /* The end pulls half as hard as the hoop. */
    EXPECT(sw_seam_girth_pressure(&seam, &rules, &shell, &girth, &error) == SW_OK);
    NEAR(psi(girth.pressure_mpa), 250, 1e-9);
}

/* Two rivets of 15/16 in at 44 000 psi hold 2 (pi/4) 0.9375^2 44 000 = 60 744 lb of the 3.5 in strip; over 24 in and a
   factor of 5 that is 60 744/(3.5 x 24 x 5) = 144.63 psi. The plate holds (3.5 - 0.9375) t 55 000: less than the rivets
   below t = 0.4310 in; 125 psi are reached at t = 125 x 3.5 x 24 x 5/(2.5625 x 55 000) = 0.37251 in, after
   (0.45 - 0.37251)/0.005 = 15.5 years. */
static void an_existing_lap(void)
{
    sw_existing lap;
    sw_rating r;
    sw_joint joint;
    sw_analysis a;
    sw_assumption notes[SW_MAX_ASSUMPTIONS];
    sw_finding findings[2 * SW_MAX_FINDINGS];
    char text[100];
    size_t n = 0, i, assumed = 0;
    double rivets = 2 * 3.14159265358979 / 4 * 0.9375 * 0.9375 * 44000;
    sw_existing_init(&lap), sw_rating_init(&r), sw_joint_init(&joint), sw_analysis_init(&a);
    EXPECT(sw_form_lap(2, &lap.form, &error) == SW_OK);
    lap.inside_mm = 48 * 25.4, lap.pitch_mm = 3.5 * 25.4, lap.plate_mm = 0.45 * 25.4, lap.hole_mm[0] = 0.9375 * 25.4;
    lap.plate_metal = SW_METAL_STEEL, lap.measured = SW_BY_MEASURE_PLATE | SW_BY_MEASURE_HOLES;
    /* No factor of safety, neither from the user nor from this book: nothing is rated. */
    EXPECT(sw_existing_rate(&lap, &rules, &r, NULL, NULL, &error) == SW_MISSING);
    EXPECT(sw_error_field(&error, text, sizeof text, NULL) == SW_OK && strcmp(text, "safety_factor") == 0);
    EXPECT(r.allowed_mpa != r.allowed_mpa);
    lap.safety_factor = 5, lap.present_mpa = sw_pressure_to_mpa(125, SW_PRESSURE_PSI);
    lap.wastage_mm_per_year = 0.005 * 25.4;
    EXPECT(sw_existing_rate(&lap, &rules, &r, &joint, &a, &error) == SW_OK);
    NEAR(psi(r.allowed_mpa), rivets / (3.5 * 24 * 5), 1e-9);
    NEAR(r.margin, rivets / (3.5 * 24 * 5) / 125, 1e-9);
    NEAR(r.plate_then_mm, 0.37251 * 25.4, 1e-4);
    NEAR(r.years, (0.45 - 0.37251) / 0.005, 1e-3);
    NEAR(psi(r.allowed_then_mpa), 125, 1e-6);
    EXPECT(r.governs == SW_GOVERNS_SEAM && r.governs_entry == SW_NO_ENTRY && a.governing.plate_row == 0);
    EXPECT(r.plate.pressure_mpa != r.plate.pressure_mpa); /* no plate away from the seam was looked at */
    NEAR(r.materials.tension_mpa, sw_stress_to_mpa(55000, SW_STRESS_PSI), 1e-12);
    EXPECT(joint.hole_mm[1] == lap.hole_mm[0] && joint.pitch_mm == lap.pitch_mm);
    /* Every figure and how it is known: the plate measured, the pitch from a drawing, the second plate assumed. */
    EXPECT(sw_existing_assumptions(&lap, &rules, notes, SW_MAX_ASSUMPTIONS, &n, &error) == SW_OK && n > 8);
    for (i = 0; i < n; i++) {
        EXPECT(sw_assumption_what(notes[i].about, text, sizeof text, NULL) == SW_OK);
        if (strcmp(text, "thickness of the plate at the seam") == 0)
            EXPECT(notes[i].basis == SW_BASIS_MEASURED && notes[i].value == lap.plate_mm && !notes[i].circumstance);
        assumed += notes[i].basis == SW_BASIS_ASSUMED;
    }
    EXPECT(assumed >= 2);
    EXPECT(sw_existing_findings(&lap, &rules, findings, 2 * SW_MAX_FINDINGS, &n, &error) == SW_OK);
    EXPECT(n == r.findings + a.findings);
    /* The plate away from the seam as a solid plate, E = 1: 55 000 t/(24 x 5); at 0.3 in 137.5 psi, and it governs. */
    lap.shell_plate_mm = 0.3 * 25.4;
    EXPECT(sw_existing_rate(&lap, &rules, &r, NULL, NULL, &error) == SW_OK && r.governs == SW_GOVERNS_PLATE);
    NEAR(psi(r.allowed_mpa), 55000 * 0.3 / (24 * 5), 1e-9);
    /* Worn below what the rivets hold, the plate of the seam governs: (3.5 - 0.9375) 0.4 55 000/(3.5 x 24 x 5). */
    lap.shell_plate_mm = 0, lap.plate_mm = 0.4 * 25.4;
    EXPECT(sw_existing_rate(&lap, &rules, &r, NULL, &a, &error) == SW_OK && a.governing.plate_row == 1);
    NEAR(psi(r.allowed_mpa), (3.5 - 0.9375) * 0.4 * 55000 / (3.5 * 24 * 5), 1e-9);
}

/* R 408.4207 of Michigan (read): a second-hand lap 6; a lap of a tubular boiler above 12 ft 8; 0.5 more past the age
   limit. What is not stated is taken on the safe side: 8.5. Stated new enough and short enough: the 6 of a lap. */
static void circumstances(void)
{
    sw_shell shell;
    sw_form lap;
    sw_factor found;
    sw_rules michigan;
    size_t n = 0;
    sw_shell_init(&shell);
    EXPECT(sw_rules_find("us-michigan", &michigan, &error) == SW_OK && sw_form_lap(2, &lap, &error) == SW_OK);
    shell.inside_mm = 48 * 25.4, shell.footing = SW_FOOTING_ULTIMATE;
    sw_service_in_service(&shell.service);
    EXPECT(sw_shell_factor(&shell, &lap, &michigan, &found, NULL, 0, &n, &error) == SW_OK && n > 0);
    EXPECT(found.basis == SW_FACTOR_BOOK && found.entry != SW_NO_ENTRY);
    NEAR(found.value, 8.5, 1e-12);
    shell.service.tubular = SW_NO, shell.service.past_age_limit = SW_NO, shell.service.second_hand = SW_YES;
    EXPECT(sw_shell_factor(&shell, &lap, &michigan, &found, NULL, 0, NULL, &error) == SW_OK);
    NEAR(found.value, 6, 1e-12);
    shell.service.tubular = 7;
    EXPECT(sw_shell_factor(&shell, &lap, &michigan, &found, NULL, 0, NULL, &error) == SW_BAD_CHOICE);
    EXPECT(error.index == 1);
}

/* A sized joint on its shell: J t st (t - 1)/t .. as the metric book has it: p = 2 st J (t - 1)/D. */
static void a_joint_on_a_shell(void)
{
    sw_brief brief;
    sw_joint joint;
    sw_analysis a;
    sw_shell shell;
    sw_allowed found;
    sw_rules metric;
    double test = 0, least = 0;
    uint32_t entry = 0;
    sw_brief_init(&brief), sw_joint_init(&joint), sw_analysis_init(&a), sw_shell_init(&shell);
    EXPECT(sw_rules_find("metric", &metric, &error) == SW_OK && sw_form_double_strap(2, &brief.form, &error) == SW_OK);
    brief.plate_mm = 12, brief.materials.tension_mpa = 80, brief.materials.rivet_shear_mpa = 60;
    brief.materials.bearing_mpa = 120, shell.inside_mm = 1200;
    EXPECT(sw_joint_size(&brief, &metric, &joint, NULL, &a, NULL, 0, NULL, &error) == SW_OK);
    EXPECT(sw_shell_allow(&joint, &brief.materials, &metric, &shell, &found, NULL, 0, NULL, &error) == SW_OK);
    NEAR(found.pressure_mpa, 2 * 80 * a.credited_efficiency * (12 - 1) / 1200, 1e-12);
    EXPECT(found.factor.basis == SW_FACTOR_IN_STRESSES && found.allowance_mm == 1 && !found.outside);
    /* Michigan's hydrostatic test is one and a half of the working pressure; the metric book has no factor for it. */
    EXPECT(sw_rules_find("us-michigan", &rules, &error) == SW_OK);
    EXPECT(sw_rules_test_pressure(&rules, 0.8, &test, &error) == SW_OK);
    NEAR(test, 1.2, 1e-12);
    EXPECT(sw_rules_test_pressure(&metric, 0.8, &test, &error) == SW_OK && test != test);
    /* Par. 18 of the early US code, from memory (MEM): 5/16 in above 36 and up to 54 in. */
    EXPECT(sw_rules_find("us-code", &rules, &error) == SW_OK);
    EXPECT(sw_rules_least_plate(&rules, 48 * 25.4, &least, &entry, &error) == SW_OK && entry != SW_NO_ENTRY);
    NEAR(least, 25.4 * 5 / 16, 1e-12);
    EXPECT(sw_rules_least_plate(&metric, 1200, &least, &entry, &error) == SW_MISSING && least > 7);
    EXPECT(sw_rules_least_plate(&rules, -1, &least, NULL, &error) == SW_TOO_SMALL);
}

int main(void)
{
    sw_error_init(&error);
    a_seam_of_known_efficiency();
    an_existing_lap();
    circumstances();
    a_joint_on_a_shell();
    return done("ratings from C");
}
