/* Sensitivities, tolerances and comparisons, by hand. */
#include "../expect.h"

static sw_error error;
static sw_rules metric;
static sw_joint joint;
static sw_materials steel;

static int is(sw_name name, const char *symbol, uint32_t row)
{
    char text[20];
    return sw_quantity_symbol(name.quantity, text, sizeof text, NULL) == SW_OK && strcmp(text, symbol) == 0 &&
           name.row == row;
}

/* A single-riveted lap of 6 mm plate, pitch 50 mm, hole 18 mm, where shear governs: eta = pi/4 d^2 ss/(p t st). One
   per cent more of the hole is two per cent more of the joint; of pitch, plate and its stress, one per cent less. */
static void slopes_by_hand(void)
{
    sw_analysis a;
    sw_slope lines[SW_MAX_INPUTS];
    size_t n = 0, i;
    int seen = 0;
    double eta = 3.14159265358979 / 4 * 18 * 18 * 90 / (50 * 6 * 120);
    sw_analysis_init(&a);
    EXPECT(sw_joint_check(&joint, &steel, &metric, &a, NULL, 0, NULL, &error) == SW_OK);
    NEAR(a.efficiency, eta, 1e-12);
    EXPECT(sw_joint_slopes(&joint, &steel, &metric, lines, SW_MAX_INPUTS, &n, &error) == SW_OK);
    for (i = 0; i < n; i++) {
        double relative = lines[i].efficiency.right * lines[i].value / eta;
        if (lines[i].entry != SW_NO_ENTRY)
            continue;
        EXPECT(lines[i].mode_changes == 0 && lines[i].efficiency.left == lines[i].efficiency.right);
        if (is(lines[i].name, "d", 1)) {
            NEAR(relative, 2, 1e-12);
            /* N/mm for a millimetre more of the hole: 2 (pi/4) 18 90/50. */
            NEAR(lines[i].strength.right, 2 * 3.14159265358979 / 4 * 18 * 90 / 50, 1e-12);
            seen++;
        } else if (is(lines[i].name, "p", 0) || is(lines[i].name, "t", 0) || is(lines[i].name, "st", 0)) {
            NEAR(relative, -1, 1e-12);
            seen++;
        } else if (is(lines[i].name, "ss", 0)) {
            NEAR(relative, 1, 1e-12);
            seen++;
        }
    }
    EXPECT(seen == 5);
    /* Where tearing and shear are equal there is a kink: a larger pitch leaves the rivets, a smaller one the plate. */
    joint.pitch_mm = 18 + 3.14159265358979323846 / 4 * 18 * 18 * 90 / (6 * 120);
    EXPECT(sw_joint_slopes(&joint, &steel, &metric, lines, SW_MAX_INPUTS, &n, &error) == SW_OK);
    for (i = 0; i < n; i++)
        if (lines[i].entry == SW_NO_ENTRY && is(lines[i].name, "p", 0)) {
            /* (p - d)/p grows by d/p^2; the rivets' share falls by eta/p. */
            NEAR(lines[i].efficiency.left, 18 / (joint.pitch_mm * joint.pitch_mm), 1e-9);
            NEAR(lines[i].efficiency.right, -(joint.pitch_mm - 18) / (joint.pitch_mm * joint.pitch_mm), 1e-9);
            EXPECT(lines[i].mode_changes == 1 && lines[i].left_row[0] + lines[i].left_row[1] > 0);
            EXPECT(lines[i].right_row[0] + lines[i].right_row[1] == 0);
            seen = 99;
        }
    EXPECT(seen == 99);
    joint.pitch_mm = 50;
}

/* A drill that may be half a millimetre too small: (17.5/18)^2 of the strength is left. */
static void tolerances_by_hand(void)
{
    sw_tolerances t;
    sw_worst w;
    sw_tolerances_init(&t), sw_worst_init(&w);
    t.hole_mm = 0.5;
    EXPECT(sw_joint_worst(&joint, &steel, &metric, &t, SW_TARGET_EFFICIENCY, &w, &error) == SW_OK && w.exact == 1);
    NEAR(w.ratio, (17.5 / 18) * (17.5 / 18), 1e-12);
    EXPECT(w.deviation_mm[3] == -0.5 && w.hole_inside == 0 && w.row[0] == 0 && w.alone[3] == w.worst);
    NEAR(w.worst, w.stated * w.ratio, 1e-12);
    /* With a pitch of half a millimetre more as well: 50/50.5 of that; for the strength too, in N/mm. */
    t.pitch_mm = 0.5;
    EXPECT(sw_joint_worst(&joint, &steel, &metric, &t, SW_TARGET_STRENGTH, &w, &error) == SW_OK);
    NEAR(w.stated, 3.14159265358979 / 4 * 18 * 18 * 90 / 50, 1e-12);
    NEAR(w.worst, 3.14159265358979 / 4 * 17.5 * 17.5 * 90 / 50.5, 1e-12);
    t.hole_mm = 18;
    EXPECT(sw_joint_worst(&joint, &steel, &metric, &t, SW_TARGET_EFFICIENCY, &w, &error) == SW_TOO_LARGE);
}

/* Metric practice takes 2 for double shear, the Indian regulations 1.875 (Reg. 177 Eq. (3), read): there they part. */
static void books_part(void)
{
    static const char *const ids[] = {"metric", "indian", "us-code"};
    sw_rules books[3];
    sw_brief brief;
    sw_shell shell;
    sw_column columns[3];
    sw_compared figures[3];
    sw_parting p;
    sw_joint j;
    sw_analysis a;
    char heading[60], *text;
    size_t i, n = 0, needed = 0;
    uint32_t section;
    sw_brief_init(&brief), sw_shell_init(&shell), sw_joint_init(&j), sw_analysis_init(&a);
    EXPECT(sw_form_double_strap(2, &brief.form, &error) == SW_OK);
    brief.plate_mm = 12, shell.inside_mm = 1200, brief.materials.tension_mpa = 80;
    brief.materials.rivet_shear_mpa = 60, brief.materials.bearing_mpa = 120;
    for (i = 0; i < 3; i++) {
        EXPECT(sw_rules_find(ids[i], &books[i], &error) == SW_OK);
        columns[i].brief = &brief, columns[i].rules = &books[i], columns[i].shell = i == 0 ? &shell : NULL;
    }
    EXPECT(sw_columns_compare(columns, 3, SW_SORT_GIVEN, figures, 3, &n, &error) == SW_OK && n == 3);
    for (i = 0; i < 3; i++) {
        EXPECT(figures[i].column == i && figures[i].status == SW_OK);
        EXPECT(sw_joint_size(&brief, &books[i], &j, NULL, &a, NULL, 0, NULL, &error) == SW_OK);
        EXPECT(figures[i].credited_efficiency == a.credited_efficiency && figures[i].pitch_mm == j.pitch_mm);
        EXPECT(figures[i].governing.strength_n == a.governing.strength_n && figures[i].open == a.open);
    }
    /* 2 st J (t - 1)/D by the metric book. */
    NEAR(figures[0].pressure_mpa, 2 * 80 * figures[0].credited_efficiency * 11 / 1200, 1e-12);
    EXPECT(figures[1].pressure_mpa != figures[1].pressure_mpa && figures[1].pressure_status == SW_OK);
    EXPECT(sw_columns_compare(columns, 3, SW_SORT_CREDITED, figures, 3, &n, &error) == SW_OK);
    EXPECT(figures[0].credited_efficiency >= figures[1].credited_efficiency);
    EXPECT(figures[1].credited_efficiency >= figures[2].credited_efficiency);
    for (section = 0; sw_section_heading(section, heading, sizeof heading, NULL) == SW_OK; section++)
        if (strcmp(heading, "Pitch") == 0)
            break;
    EXPECT(sw_columns_parting(columns, 3, 1, section, &p, &error) == SW_OK && p.by_rule == 1 && p.other.there == 1);
    EXPECT(p.first.value == 2 && p.other.value == 1.875 && is(p.other.name, "z", p.other.name.row));
    EXPECT(p.other.entry != SW_NO_ENTRY);
    EXPECT(sw_columns_parting(columns, 3, 0, section, &p, &error) == SW_END); /* the first does not part from itself */
    EXPECT(sw_columns_text(columns, 3, SW_SORT_GIVEN, NULL, NULL, 0, &needed, &error) == SW_OK);
    text = malloc(needed);
    EXPECT(sw_columns_text(columns, 3, SW_SORT_GIVEN, NULL, text, needed, NULL, &error) == SW_OK);
    EXPECT(strstr(text, "Reg. 177 Eq. (3)") != NULL);
    free(text);
    /* A book that was changed is called so; a column that cannot be sized keeps its status. */
    EXPECT(sw_rules_set(&books[1], "shear.double", 1.75, &error) == SW_OK);
    EXPECT(sw_columns_text(columns, 3, SW_SORT_GIVEN, NULL, NULL, 0, &needed, &error) == SW_OK);
    text = malloc(needed);
    EXPECT(sw_columns_text(columns, 3, SW_SORT_GIVEN, NULL, text, needed, NULL, &error) == SW_OK);
    EXPECT(strstr(text, "changed by the") != NULL);
    free(text);
    brief.plate_mm = -1;
    EXPECT(sw_columns_compare(columns, 3, SW_SORT_PITCH, figures, 3, &n, &error) == SW_OK && n == 3);
    EXPECT(figures[0].status == SW_TOO_SMALL && figures[0].pitch_mm != figures[0].pitch_mm);
}

int main(void)
{
    sw_error_init(&error), sw_joint_init(&joint), sw_materials_init(&steel);
    EXPECT(sw_rules_find("metric", &metric, &error) == SW_OK && sw_form_lap(1, &joint.form, &error) == SW_OK);
    joint.pitch_mm = 50, joint.plate_mm = 6, joint.hole_mm[0] = 18;
    steel.tension_mpa = 120, steel.rivet_shear_mpa = 90, steel.bearing_mpa = 300;
    slopes_by_hand();
    tolerances_by_hand();
    books_part();
    return done("sensitivities, tolerances and comparisons from C");
}
