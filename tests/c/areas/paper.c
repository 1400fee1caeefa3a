/* Letters, masses, numbers as texts, and the sheets of a seam of known length. */
#include "../expect.h"

static sw_error error;
static sw_rules rules;

static char *room_for(uint32_t status, const size_t *needed)
{
    char *text = malloc(*needed + 1);
    EXPECT(status == SW_OK && *needed > 0 && text != NULL);
    return text;
}

/* 640 mm with 40 mm to each end leave 560 mm: ten pitches of 56 mm. Ten and one rivets. */
static void a_seam_of_known_length(void)
{
    sw_joint joint;
    sw_materials steel;
    sw_order order;
    sw_title title;
    char *text;
    size_t n = 0;
    sw_joint_init(&joint), sw_materials_init(&steel), sw_order_init(&order), sw_title_init(&title);
    EXPECT(sw_form_lap(1, &joint.form, &error) == SW_OK && sw_rules_find("metric", &rules, &error) == SW_OK);
    joint.pitch_mm = 56, joint.plate_mm = 12, joint.hole_mm[0] = 23, joint.rivet_mm[0] = 22, joint.margin_mm = 35;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    order.length_mm = 640, order.first_end_mm = 40, order.last_end_mm = 40;
    title.object = "Feed tank (invented)", title.drawing_no = "T-7";
    text = room_for(sw_drawing_svg_seam(&joint, &steel, &rules, &order, &title, NULL, 0, &n, &error), &n);
    EXPECT(sw_drawing_svg_seam(&joint, &steel, &rules, &order, &title, text, n, NULL, &error) == SW_OK);
    EXPECT(strstr(text, "10 pitches of 56") && strstr(text, "</svg>"));
    free(text);
    text = room_for(sw_working_shop(&joint, &steel, &rules, &order, NULL, NULL, 0, &n, &error), &n);
    EXPECT(sw_working_shop(&joint, &steel, &rules, &order, NULL, text, n, NULL, &error) == SW_OK);
    EXPECT(strstr(text, "Run of the seam and pitches in it") && strstr(text, "560"));
    free(text);
}

/* A lap of 10 mm plate, 60 mm wide, of which a pitch of 50 mm weighs 60 x 50 x 10 mm3 of 7850 kg/m3; a hole of 20 mm
   through both plates takes pi/4 20^2 20 mm3 out. */
static void masses_by_hand(void)
{
    sw_joint joint;
    sw_materials steel;
    sw_order order;
    sw_masses m;
    sw_joint_init(&joint), sw_materials_init(&steel), sw_order_init(&order);
    EXPECT(sw_form_lap(1, &joint.form, &error) == SW_OK);
    joint.pitch_mm = 50, joint.plate_mm = 10, joint.hole_mm[0] = 20, joint.margin_mm = 30;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60;
    EXPECT(sw_joint_masses(&joint, &steel, &order, &m, &error) == SW_OK);
    NEAR(m.overlap_kg, 60 * 50 * 10 * 7850e-9, 1e-12);
    NEAR(m.holes_kg, 3.14159265358979 / 4 * 20 * 20 * 20 * 7850e-9, 1e-12);
    EXPECT(m.straps_kg == 0 && m.rivets_kg > 0);
    NEAR(m.total_kg, m.rivets_kg + m.overlap_kg - m.holes_kg, 1e-12);
    NEAR(m.kg_per_m, m.total_kg * 20, 1e-12); /* twenty pitches in a metre */
    joint.margin_mm = 0;
    EXPECT(sw_joint_masses(&joint, &steel, &order, &m, &error) == SW_MISSING);
}

/* The letters of a double-riveted lap by hand: A the solid strip, B tearing at the outer row, C shear, D bearing. */
static void letters_by_hand(void)
{
    sw_joint joint;
    sw_materials steel;
    sw_letter list[SW_MAX_LETTERS];
    char words[60];
    size_t n = 0;
    sw_joint_init(&joint), sw_materials_init(&steel);
    EXPECT(sw_form_lap(2, &joint.form, &error) == SW_OK && sw_rules_find("us-code", &rules, &error) == SW_OK);
    joint.pitch_mm = 73.025, joint.plate_mm = 7.9375, joint.hole_mm[0] = 19.05;
    steel.tension_mpa = 379.2, steel.rivet_shear_mpa = 303.4, steel.bearing_mpa = 655;
    EXPECT(sw_letters_list(&joint, &steel, &rules, list, SW_MAX_LETTERS, &n, &error) == SW_OK && n == 4);
    EXPECT(list[0].letter == 'A' && list[0].solid == 1 && list[1].letter == 'B' && list[3].letter == 'D');
    NEAR(list[0].strength_n, 73.025 * 7.9375 * 379.2, 1e-12);
    NEAR(list[1].strength_n, (73.025 - 19.05) * 7.9375 * 379.2, 1e-12);
    NEAR(list[2].strength_n, 2 * 3.14159265358979 / 4 * 19.05 * 19.05 * 303.4, 1e-12);
    NEAR(list[3].strength_n, 2 * 19.05 * 7.9375 * 655, 1e-12);
    EXPECT(sw_letter_name(&joint.form, &list[1], words, sizeof words, NULL) == SW_OK);
    EXPECT(strcmp(words, "plate tears at the outer row") == 0 && list[1].plate_row == 1);
    EXPECT(sw_letter_name(&joint.form, &list[0], words, sizeof words, NULL) == SW_OK && strcmp(words, "solid strip") == 0);
}

/* Numbers as texts: the exact binary value decides, 2.675 lies below. */
static void numbers(void)
{
    char t[40];
    double x = 0;
    EXPECT(sw_number_fixed(2.675, 2, SW_MARK_POINT, t, sizeof t, NULL) == SW_OK && strcmp(t, "2.67") == 0);
    EXPECT(sw_number_fixed(12.5, 1, SW_MARK_COMMA, t, sizeof t, NULL) == SW_OK && strcmp(t, "12,5") == 0);
    EXPECT(sw_number_plain(3.0, 2, SW_MARK_POINT, t, sizeof t, NULL) == SW_OK && strcmp(t, "3") == 0);
    EXPECT(sw_number_significant(152578.1, 4, SW_MARK_POINT, t, sizeof t, NULL) == SW_OK && strcmp(t, "152600") == 0);
    EXPECT(sw_length_fraction(25.4 * 1.625, 64, t, sizeof t, NULL) == SW_OK && strcmp(t, "1 5/8") == 0);
    EXPECT(sw_number_parse("1 5/8", &x, &error) == SW_OK && x == 1.625);
    EXPECT(sw_number_parse("12,5", &x, &error) == SW_OK && x == 12.5);
    EXPECT(sw_number_parse("twelve", &x, &error) == SW_UNREADABLE && x == 12.5);
    EXPECT(sw_number_parse("", &x, &error) == SW_UNREADABLE && sw_number_parse(NULL, &x, &error) == SW_BAD_POINTER);
    EXPECT(sw_number_fixed(NAN, 2, SW_MARK_POINT, t, sizeof t, NULL) == SW_NOT_FINITE);
    EXPECT(sw_number_fixed(1e16, 2, SW_MARK_POINT, t, sizeof t, NULL) == SW_TOO_LARGE);
    EXPECT(sw_number_fixed(1, 10, SW_MARK_POINT, t, sizeof t, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_number_fixed(1, 2, 2, t, sizeof t, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_number_significant(1, 0xffffffff, SW_MARK_POINT, t, sizeof t, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_length_fraction(25.4, 10, t, sizeof t, NULL) == SW_BAD_CHOICE);
}

/* The range of an input, and that a value beyond it is refused with just this limit and number. */
static void ranges(void)
{
    sw_joint joint;
    double least = 0, greatest = 0;
    uint32_t number = 99;
    char unit[8];
    sw_joint_init(&joint);
    EXPECT(sw_field_find("plate", &number, &error) == SW_OK);
    EXPECT(sw_field_bounds(number, &least, &greatest, &error) == SW_OK && least < greatest && least > 0);
    EXPECT(sw_field_unit(number, unit, sizeof unit, NULL) == SW_OK && strcmp(unit, "mm") == 0);
    EXPECT(sw_form_lap(1, &joint.form, &error) == SW_OK);
    joint.pitch_mm = 60, joint.hole_mm[0] = 20, joint.plate_mm = greatest;
    EXPECT(sw_joint_validate(&joint, &error) == SW_OK);
    joint.plate_mm = greatest * 1.001;
    EXPECT(sw_joint_validate(&joint, &error) == SW_TOO_LARGE && error.limit == greatest && error.field == number);
    joint.plate_mm = least * 0.999;
    EXPECT(sw_joint_validate(&joint, &error) == SW_TOO_SMALL && error.limit == least);
}

int main(void)
{
    sw_error_init(&error);
    a_seam_of_known_length();
    masses_by_hand();
    letters_by_hand();
    numbers();
    ranges();
    return done("letters, masses, numbers, ranges and sheets from C");
}
