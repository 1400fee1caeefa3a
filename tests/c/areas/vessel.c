/* Vessels, girth seams and the table of a boiler, by published examples and by hand. */
#include "../expect.h"

static sw_error error;
static sw_rules rules;

/* Metric practice with 1.875 for double shear, as Khurmi and Gupta take it. */
static void khurmi(void)
{
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    EXPECT(sw_rules_set(&rules, "shear.double", 1.875, &error) == SW_OK);
}

/* The joint of Khurmi Example 9.10 (read in a transcription): five rivets in the strip, the outer in single shear. */
static void example_9_10(sw_joint *joint, sw_materials *steel)
{
    static const uint32_t rivets[] = {1, 2, 2}, planes[] = {1, 2, 2};
    sw_joint_init(joint), sw_materials_init(steel);
    joint->form.kind = SW_DOUBLE_STRAP, joint->form.arrangement = SW_ZIGZAG, joint->form.row_count = 3;
    memcpy(joint->form.rivets, rivets, sizeof rivets), memcpy(joint->form.planes, planes, sizeof planes);
    joint->pitch_mm = 220, joint->plate_mm = 28, joint->hole_mm[0] = 34.5, joint->rivet_mm[0] = 33;
    joint->wide_strap_mm = 21, joint->narrow_strap_mm = 17.5;
    steel->tension_mpa = 75, steel->rivet_shear_mpa = 60, steel->bearing_mpa = 125;
}

/* Printed 373 196 N of a strip of 220 x 28 x 75 = 462 000 N; exact, the second row torn and the outer rivet sheared,
   (220 - 2 x 34.5) 28 75 + pi/4 34.5^2 60 = 373 189 N: 2 x 75 x 0.80777 x 27/1600 = 2.0447 MPa by hand, where 2.5 MPa are
   asked for. Printed 89.6 rivets for the end, 2.5 1600^2/(34.5^2 60) = 89.617, and a pitch of 140 mm with room for 74. */
static void girth_of_9_10(void)
{
    sw_joint along, lap;
    sw_materials steel;
    sw_shell shell;
    sw_allowed allowed;
    sw_girth girth;
    sw_finding f[SW_MAX_FINDINGS];
    size_t n = 0, i, open = 0;
    double weakest;
    example_9_10(&along, &steel), sw_shell_init(&shell), sw_girth_init(&girth), sw_joint_init(&lap), khurmi();
    shell.inside_mm = 1600;
    EXPECT(sw_shell_allow(&along, &steel, &rules, &shell, &allowed, NULL, 0, NULL, &error) == SW_OK);
    weakest = (220 - 2 * 34.5) * 28 * 75 + 3.14159265358979 / 4 * 34.5 * 34.5 * 60;
    NEAR(allowed.pressure_mpa, 2 * 75 * (weakest / 462000) * 27 / 1600, 1e-12);
    EXPECT(sw_form_lap(2, &lap.form, &error) == SW_OK);
    lap.pitch_mm = 140, lap.plate_mm = 28, lap.hole_mm[0] = 34.5;
    EXPECT(sw_girth_check(&along, &steel, &rules, &shell, &lap, SW_GIRTH_MIDDLE, 2.5, &girth, f, SW_MAX_FINDINGS, &n,
                          &error) == SW_OK);
    NEAR(girth.end_rivets, 2.5 * 1600 * 1600 / (34.5 * 34.5 * 60), 1e-12);
    EXPECT(girth.rivets == 74 && girth.open > 0 && girth.findings == n);
    for (i = 0; i < n; i++)
        open += f[i].verdict == SW_VERDICT_OPEN;
    EXPECT(open == girth.open);
    /* At the 113.66 mm that 90 rivets leave they do: pi 1628/113.66 = 45 strips of two. */
    lap.pitch_mm = 113.66;
    EXPECT(sw_girth_check(&along, &steel, &rules, &shell, &lap, SW_GIRTH_MIDDLE, 2.5, &girth, NULL, 0, NULL, &error) ==
           SW_OK);
    EXPECT(girth.rivets == 90 && girth.strips == 45);
    /* Twice the pressure of the same seam along the shell: 4 st J (t - 1)/D. */
    NEAR(girth.pressure_mpa, 4 * 75 * girth.efficiency * 27 / 1600, 1e-12);
}

/* Stock of whole millimetres: the plate taken carries the pressure, and the next thinner one does not. */
static void a_vessel(void)
{
    sw_vessel_brief brief;
    sw_vessel v;
    sw_joint seam, round;
    sw_girth girth;
    sw_shell shell;
    sw_analysis a;
    sw_error why;
    sw_assumption notes[SW_MAX_ASSUMPTIONS];
    size_t n = 0;
    double strips;
    const double pi = 3.14159265358979323846;
    static const double thinner[] = {8, 9};
    sw_vessel_brief_init(&brief), sw_vessel_init(&v), sw_joint_init(&seam), sw_joint_init(&round);
    sw_girth_init(&girth), sw_shell_init(&shell), sw_analysis_init(&a), sw_error_init(&why);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    EXPECT(sw_form_double_strap(2, &brief.form, &error) == SW_OK && sw_form_lap(1, &brief.girth_form, &error) == SW_OK);
    brief.materials.tension_mpa = 90, brief.materials.rivet_shear_mpa = 75, brief.materials.bearing_mpa = 150;
    brief.shell = &shell, shell.inside_mm = 1500, brief.pressure_mpa = 1.2, brief.girth_wanted = 1;
    brief.stock_step_mm = 1, brief.stock_from_mm = 5, brief.stock_to_mm = 40;
    EXPECT(sw_vessel_design(&brief, &rules, &v, &seam, &round, &girth, &why, &error) == SW_OK);
    EXPECT(v.fits == 1 && v.tried == (uint32_t)v.plate_mm - 4 && v.girth == 1 && why.status == SW_OK);
    /* By hand from the seam's own efficiency: 2 st J (t - 1)/D. */
    EXPECT(sw_joint_check(&seam, &brief.materials, &rules, &a, NULL, 0, NULL, &error) == SW_OK);
    NEAR(v.allowed.pressure_mpa, 2 * 90 * a.credited_efficiency * (v.plate_mm - 1) / 1500, 1e-12);
    EXPECT(v.allowed.pressure_mpa >= 1.2 && seam.plate_mm == v.plate_mm);
    /* The girth seam closes, and its rivets in shear hold the end. */
    strips = pi * (1500 + v.plate_mm) / round.pitch_mm;
    EXPECT(fabs(strips - girth.strips) < 1e-6 && girth.open == 0 && girth.pressure_mpa >= 1.2);
    EXPECT(girth.rivets * pi / 4 * round.hole_mm[0] * round.hole_mm[0] * 75 >= pi / 4 * 1500 * 1500 * 1.2);
    NEAR(girth.end_rivets, 1500 * 1500 * 1.2 / (round.hole_mm[0] * round.hole_mm[0] * 75), 1e-12);
    EXPECT(sw_vessel_assumptions(&brief, &rules, notes, SW_MAX_ASSUMPTIONS, &n, &error) == SW_OK && n >= 1);
    EXPECT(sw_vessel_findings(&brief, &rules, NULL, 0, &n, &error) == SW_OK && n == v.findings + girth.findings);
    /* From a stock that ends below it nothing fits, and what comes nearest is said; the seam is left as it was. */
    brief.plates_mm = thinner, brief.plate_count = 2, brief.pressure_mpa = 9, seam.pitch_mm = -7;
    EXPECT(sw_vessel_design(&brief, &rules, &v, &seam, NULL, NULL, &why, &error) == SW_OK && v.fits == 0);
    EXPECT(v.tried == 2 && v.best_mpa > 0 && v.best_mpa < 9 && v.best_plate_mm == 9 && seam.pitch_mm == -7);
    EXPECT(v.plate_mm != v.plate_mm && sw_vessel_findings(&brief, &rules, NULL, 0, &n, &error) == SW_END);
}

/* Courses and girths of an invented boiler, and limits that others computed: the least governs, the first of equals. */
static void a_boiler(void)
{
    sw_boiler_line lines[] = {{SW_PART_COURSE, 0, 0.9},  {SW_PART_HEAD, 0, 1.1}, {SW_PART_STAYS, 0, 0.85},
                              {SW_PART_GIRTH, 0, 1.4}, {SW_PART_TUBES, 0, 0.85}};
    uint32_t line = 99;
    double test = 0;
    EXPECT(sw_rules_find("us-michigan", &rules, &error) == SW_OK);
    EXPECT(sw_boiler_governing(lines, 5, &rules, &line, &test, &error) == SW_OK && line == 2);
    NEAR(test, 1.5 * 0.85, 1e-12); /* R 408: one and a half of the working pressure */
    lines[4].pressure_mpa = 0; /* a part that allows no pressure at all is a line like any other */
    EXPECT(sw_boiler_governing(lines, 5, &rules, &line, NULL, &error) == SW_OK && line == 4);
    EXPECT(sw_boiler_governing(lines, 0, &rules, &line, NULL, &error) == SW_MISSING);
    lines[0].pressure_mpa = -1;
    EXPECT(sw_boiler_governing(lines, 5, &rules, &line, NULL, &error) == SW_TOO_SMALL && line == 4);
}

int main(void)
{
    sw_error_init(&error);
    girth_of_9_10();
    a_vessel();
    a_boiler();
    return done("vessels from C");
}
