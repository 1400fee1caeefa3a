/* Groups of rivets under eccentric load, by published examples and by hand. */
#include "../expect.h"

static sw_error error;
static sw_rules rules;

/* Khurmi and Gupta, Example 9.14 (an open transcription; the printed page was not seen): seven rivets, 50 kN hanging
   400 mm beside their centroid. Printed: centroid 100 and 114.3 mm, 7143 N each, hole 25.5 mm with a rivet of 24,
   51.95 MPa in bearing on 25 mm. By hand: Ip = 60 000 + 140 000 - 640 000/7 mm2; rivet 5 lies (100, -800/7) from it. */
static void khurmi_9_14(void)
{
    sw_group_rivet rivets[] = {{0, 200, 0, 0}, {100, 200, 0, 0}, {200, 200, 0, 0}, {200, 100, 0, 0},
                               {200, 0, 0, 0}, {0, 0, 0, 0},     {0, 100, 0, 0}};
    const double polar = 60000 + 140000 - 640000. / 7, pi = 3.14159265358979323846;
    const double x = 50000 * 400 * (800. / 7) / polar, y = 50000. / 7 + 50000 * 400 * 100 / polar;
    const double most = sqrt(x * x + y * y);
    sw_group group;
    sw_group_found found;
    sw_rivet_load loads[SW_MAX_GROUP];
    sw_finding findings[SW_MAX_FINDINGS];
    sw_title title;
    size_t n = 0, i;
    double down = 0;
    char *text;
    sw_group_init(&group), sw_group_found_init(&found);
    EXPECT(sw_rules_find("structural", &rules, &error) == SW_OK);
    group.rivets = rivets, group.rivet_count = 7, group.load_y_n = -50000, group.load_at_x_mm = 500;
    group.shear_mpa = 65, group.bearing_mpa = 120;
    EXPECT(sw_group_size(&group, &rules, &found, NULL, 0, NULL, &error) == SW_OK);
    EXPECT(found.critical == 5 && found.hole_mm == 25.5 && found.rivet_mm == 24 && found.bearing_rivet == 0);
    NEAR(found.centroid_x_mm, 100, 1e-12);
    NEAR(found.centroid_y_mm, 800. / 7, 1e-12);
    NEAR(found.polar_mm2, polar, 1e-12);
    NEAR(found.moment_nmm, -50000. * 400, 1e-12);
    NEAR(found.by_shear_mm, sqrt(4 * most / (pi * 65)), 1e-12);
    EXPECT(isnan(found.by_bearing_mm) && isnan(found.safe_couple_nmm) && isnan(found.bearing_mpa));
    /* Beside the centroid by Ip/(7 e) towards the side away from the load. */
    NEAR(found.centre_x_mm, 100 - polar / (7 * 400), 1e-12);
    NEAR(found.centre_y_mm, 800. / 7, 1e-12);
    EXPECT(sw_group_rivets(&group, &rules, loads, SW_MAX_GROUP, &n, &error) == SW_OK && n == 7);
    for (i = 0; i < n; i++)
        down += loads[i].force_y_n;
    NEAR(down, -50000, 1e-12);
    NEAR(loads[4].direct_y_n, -50000. / 7, 1e-12);
    NEAR(loads[4].force_n, most, 1e-12);
    NEAR(loads[4].degrees, -180 + 180 / pi * atan2(y, x), 1e-12);
    EXPECT(loads[4].hole_mm == 25.5 && isnan(loads[4].bearing_mpa));
    /* The same with its holes, on the plate. */
    for (i = 0; i < 7; i++)
        rivets[i].hole_mm = 25.5;
    group.plate_mm = 25;
    EXPECT(sw_group_check(&group, &rules, &found, findings, SW_MAX_FINDINGS, &n, &error) == SW_OK);
    EXPECT(found.governs == SW_GROUP_SHEAR && found.open == 0 && found.findings == n && isnan(found.hole_mm));
    NEAR(found.bearing_mpa, 51.95, 1e-4);
    NEAR(found.bearing_mpa, most / (25.5 * 25), 1e-12);
    NEAR(found.shear_used, most / (pi / 4 * 25.5 * 25.5) / 65, 1e-12);
    NEAR(found.safe_load_n, 50000 / found.shear_used, 1e-12);
    EXPECT(findings[0].row == 5 && findings[0].verdict == SW_VERDICT_MET && findings[0].required == 65);
    EXPECT(sw_working_group(&group, &rules, NULL, NULL, 0, &n, &error) == SW_OK);
    text = malloc(n);
    EXPECT(text && sw_working_group(&group, &rules, NULL, text, n, NULL, &error) == SW_OK);
    EXPECT(strstr(text, "Critical rivet: no. 5") && strstr(text, "Ip = 108571.4286 mm2"));
    free(text);
    /* The drawing of it; without holes with the size that is found. */
    sw_title_init(&title), title.object = "Bracket (invented)";
    for (i = 0; i < 7; i++)
        rivets[i].hole_mm = 0;
    EXPECT(sw_drawing_group(&group, &rules, &title, NULL, 0, &n, &error) == SW_OK);
    text = malloc(n);
    EXPECT(text && sw_drawing_group(&group, &rules, &title, text, n, NULL, &error) == SW_OK);
    EXPECT(strstr(text, ">5 critical<") && strstr(text, ">P = 50 kN, down<") && strstr(text, ">e = 400<"));
    EXPECT(strstr(text, " 25.5 hole, rivet 24<") && strstr(text, "</svg>"));
    free(text);
}

/* Hicks, p. 1.83 (read): six rivets, 15 000 lb at 8 in, effectively at 6 in. Printed 5680 lb and 3.28 in. */
static void hicks(void)
{
    sw_group_rivet rivets[6];
    sw_group group;
    sw_group_found found;
    sw_rivet_load loads[6];
    size_t n = 0, i;
    for (i = 0; i < 6; i++) {
        rivets[i].x_mm = sw_length_to_mm(i < 3 ? 3 : -3, SW_LENGTH_INCH);
        rivets[i].y_mm = sw_length_to_mm(4 - 4. * (i % 3), SW_LENGTH_INCH);
        rivets[i].hole_mm = sw_length_to_mm(0.875, SW_LENGTH_INCH), rivets[i].rivet_mm = 0;
    }
    sw_group_init(&group), sw_group_found_init(&found);
    group.rivets = rivets, group.rivet_count = 6, group.row_rivets = 3;
    group.load_y_n = -sw_force_to_n(15000, SW_FORCE_LBF), group.load_at_x_mm = sw_length_to_mm(8, SW_LENGTH_INCH);
    group.shear_mpa = sw_stress_to_mpa(15000, SW_STRESS_PSI);
    EXPECT(sw_group_check(&group, &rules, &found, NULL, 0, NULL, &error) == SW_OK && found.critical == 1);
    NEAR(sw_length_from_mm(found.arm_x_mm, SW_LENGTH_INCH), 6, 1e-12);
    NEAR(sw_moment_from_nmm(found.moment_nmm, SW_MOMENT_LBF_INCH), -90000, 1e-12);
    NEAR(sw_moment_to_nmm(-90000, SW_MOMENT_LBF_INCH), found.moment_nmm, 1e-12);
    NEAR(found.polar_mm2, 118 * 645.16, 1e-12);
    NEAR(sw_length_from_mm(found.centre_x_mm, SW_LENGTH_INCH), -118. / 36, 1e-12);
    EXPECT(sw_group_rivets(&group, &rules, loads, 6, &n, &error) == SW_OK && n == 6);
    NEAR(sw_force_from_n(loads[0].force_n, SW_FORCE_LBF), 5680, 1e-3);
}

/* By hand: two rivets 80 mm apart, holes of 20 and 10 mm, in double shear of 2; a couple of 60 N m and nothing else.
   Areas 1 and 1/4: centroid at 80/5 = 16 mm, Ip = 256 + 4096/4 = 1280 mm2; each takes 60 000 x 16/1280 = 750 N, crosswise:
   the small one, of a quarter of the area, has four times the stress. */
static void a_couple(void)
{
    sw_group_rivet rivets[] = {{0, 0, 20, 0}, {80, 0, 10, 0}};
    const double pi = 3.14159265358979323846;
    sw_group group;
    sw_group_found found;
    sw_rivet_load loads[2];
    size_t n = 0;
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    sw_group_init(&group), sw_group_found_init(&found);
    group.rivets = rivets, group.rivet_count = 2, group.shear_planes = 2, group.couple_nmm = 60000, group.shear_mpa = 60;
    EXPECT(sw_group_check(&group, &rules, &found, NULL, 0, NULL, &error) == SW_OK && found.critical == 2);
    NEAR(found.areas, 1.25, 1e-12);
    NEAR(found.centroid_x_mm, 16, 1e-12);
    NEAR(found.polar_mm2, 1280, 1e-12);
    EXPECT(found.centre_x_mm == found.centroid_x_mm && isnan(found.safe_load_n));
    NEAR(found.shear_mpa, 750 / (2 * pi / 4 * 100), 1e-12);
    NEAR(found.safe_couple_nmm, 60000 * 60 / found.shear_mpa, 1e-12);
    EXPECT(sw_group_rivets(&group, &rules, loads, 2, &n, &error) == SW_OK && n == 2);
    NEAR(loads[0].force_y_n, -750, 1e-12);
    NEAR(loads[1].force_y_n, 750, 1e-12);
    NEAR(sw_moment_to_nmm(0.06, SW_MOMENT_KNM), sw_moment_to_nmm(60, SW_MOMENT_NM), 1e-12);
    /* One rivet holds no couple. */
    group.rivet_count = 1;
    EXPECT(sw_group_check(&group, &rules, &found, NULL, 0, NULL, &error) == SW_RIVET_TURNS && error.value == 60000);
    rivets[1].x_mm = 14, group.rivet_count = 2;
    EXPECT(sw_group_check(&group, &rules, &found, NULL, 0, NULL, &error) == SW_HOLES_OVERLAP && error.index == 2);
    EXPECT(error.value == 14 && error.limit == 15);
}

int main(void)
{
    sw_error_init(&error);
    khurmi_9_14();
    hicks();
    a_couple();
    return done("groups of rivets from C");
}
