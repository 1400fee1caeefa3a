/* What a careless program hands over: NULL, wrong sizes, short buffers, NaN, absurd numbers. A status, never a crash,
   and nothing half-written. */
#include "expect.h"

static sw_joint joint;
static sw_materials steel;
static sw_rules rules;
static sw_brief brief;
static sw_order order;
static sw_title title;
static sw_style style;
static sw_error error;

static void begin(void)
{
    sw_error_init(&error), sw_joint_init(&joint), sw_materials_init(&steel), sw_brief_init(&brief);
    sw_order_init(&order), sw_title_init(&title), sw_style_init(&style);
    EXPECT(sw_form_lap(2, &brief.form, &error) == SW_OK);
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    brief.materials = steel, brief.plate_mm = 13;
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    EXPECT(sw_joint_size(&brief, &rules, &joint, NULL, NULL, NULL, 0, NULL, &error) == SW_OK);
    EXPECT(joint.pitch_mm == 70 && joint.hole_mm[0] == 23); /* Khurmi, Example 9.4: 23 mm; 70.94 mm, rounded down */
    order.length_mm = 3000, order.first_end_mm = 40, order.last_end_mm = 40;
}

static uint32_t letter_name(char *b, size_t n, size_t *s)
{
    sw_letter letters[SW_MAX_LETTERS];
    sw_letters_list(&joint, &steel, &rules, letters, SW_MAX_LETTERS, NULL, NULL);
    return sw_letter_name(&joint.form, &letters[1], b, n, s);
}

/* All texts by number. */
static uint32_t text(int which, char *b, size_t n, size_t *s)
{
    sw_analysis a;
    sw_analysis_init(&a);
    sw_joint_check(&joint, &steel, &rules, &a, NULL, 0, NULL, NULL);
    switch (which) {
    case 0: return sw_version_text(b, n, s);
    case 1: return sw_caution_text(b, n, s);
    case 2: return sw_error_message(&error, b, n, s);
    case 3: return sw_error_field(&error, b, n, s);
    case 4: return sw_error_clause(&error, &rules, b, n, s);
    case 5: return sw_status_text(SW_BAD_POINTER, b, n, s);
    case 6: return sw_book_id(1, b, n, s);
    case 7: return sw_book_title(1, b, n, s);
    case 8: return sw_entry_key(3, b, n, s);
    case 9: return sw_entry_what(3, b, n, s);
    case 10: return sw_entry_unit(3, b, n, s);
    case 11: return sw_rules_clause(&rules, 3, b, n, s);
    case 12: return sw_form_name(&joint.form, b, n, s);
    case 13: return sw_mode_name(&joint.form, &a.governing, b, n, s);
    case 14: return sw_finding_what(0, b, n, s);
    case 15: return sw_finding_advice(0, b, n, s);
    case 16: return sw_finding_unit(0, b, n, s);
    case 17: return sw_head_name(0, b, n, s);
    case 18: return sw_length_rule_name(0, b, n, s);
    case 19: return sw_working_check(&joint, &steel, &rules, NULL, b, n, s, NULL);
    case 20: return sw_working_size(&brief, &rules, &style, b, n, s, NULL);
    case 21: return sw_drawing_svg(&joint, &title, b, n, s, NULL);
    case 22: return sw_drawing_dxf(&joint, &title, b, n, s, NULL);
    case 23: return sw_drawing_dxf_seam(&joint, &steel, &rules, &order, &title, b, n, s, NULL);
    case 24: return sw_shop_text(&joint, &steel, &rules, &order, NULL, b, n, s, NULL);
    case 25: return sw_working_shop(&joint, &steel, &rules, &order, NULL, b, n, s, NULL);
    case 26: return sw_drawing_svg_seam(&joint, &steel, &rules, &order, &title, b, n, s, NULL);
    case 27: return sw_number_fixed(2.5, 2, SW_MARK_POINT, b, n, s);
    case 28: return sw_number_plain(2.5, 2, SW_MARK_POINT, b, n, s);
    case 29: return sw_number_significant(2.5, 3, SW_MARK_COMMA, b, n, s);
    case 30: return sw_length_fraction(12.7, 8, b, n, s);
    case 31: return letter_name(b, n, s);
    case 32: return sw_field_what(0, b, n, s);
    case 33: return sw_field_unit(0, b, n, s);
    default: return SW_END;
    }
}

static uint32_t list(int which, void *a, size_t n, size_t *count, size_t *size)
{
    sw_analysis found;
    sw_analysis_init(&found);
    switch (which) {
    case 0: *size = sizeof(sw_letter); return sw_letters_list(&joint, &steel, &rules, a, n, count, NULL);
    case 1: *size = sizeof(sw_mode); return sw_modes_list(&joint, &steel, &rules, a, n, count, NULL);
    case 2: *size = sizeof(sw_finding); return sw_joint_check(&joint, &steel, &rules, &found, a, n, count, NULL);
    case 3: *size = sizeof(sw_rivet_line); return sw_shop_rivets(&joint, &steel, &rules, &order, a, n, count, NULL);
    default: return SW_END;
    }
}

static void null_pointers(void)
{
    sw_analysis a;
    sw_mode mode;
    size_t n = 77;
    uint32_t cursor = 0;
    sw_analysis_init(&a);
    EXPECT(sw_joint_check(NULL, &steel, &rules, &a, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_joint_check(&joint, NULL, &rules, &a, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_joint_check(&joint, &steel, NULL, &a, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_joint_check(&joint, &steel, &rules, NULL, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 4);
    EXPECT(sw_joint_check(&joint, &steel, &rules, &a, NULL, 3, NULL, &error) == SW_BAD_POINTER && error.index == 5);
    EXPECT(sw_joint_check(NULL, NULL, NULL, NULL, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_joint_check(&joint, &steel, &rules, &a, NULL, 0, &n, NULL) == SW_OK && n == a.findings && n > 0);
    EXPECT(sw_joint_size(NULL, &rules, &joint, NULL, NULL, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_joint_size(&brief, &rules, NULL, NULL, NULL, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_modes_next(&joint, &steel, &rules, NULL, &mode, NULL) == SW_BAD_POINTER);
    EXPECT(sw_modes_next(&joint, &steel, &rules, &cursor, NULL, NULL) == SW_BAD_POINTER && cursor == 0);
    EXPECT(sw_rules_find(NULL, &rules, NULL) == SW_BAD_POINTER && sw_rules_find("metric", NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_rules_set(&rules, NULL, 1, NULL) == SW_BAD_POINTER && sw_form_lap(1, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_length_parse("1 mm", NULL, NULL) == SW_BAD_POINTER && sw_error_message(NULL, NULL, 0, &n) == SW_BAD_POINTER);
    EXPECT(sw_shop_fit(&joint, &steel, &rules, NULL, NULL, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_drawing_svg(&joint, NULL, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_drawing_svg_seam(&joint, &steel, &rules, NULL, &title, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_working_shop(&joint, &steel, &rules, NULL, NULL, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_joint_masses(&joint, &steel, NULL, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_joint_masses(&joint, &steel, &order, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_letter_name(&joint.form, NULL, NULL, 0, &n) == SW_BAD_POINTER);
    EXPECT(sw_field_find("pitch", NULL, NULL) == SW_BAD_POINTER && sw_field_find("fitch", &cursor, NULL) == SW_UNKNOWN_KEY);
    EXPECT(sw_field_bounds(0, NULL, NULL, NULL) == SW_BAD_POINTER && sw_field_what(999, NULL, 0, &n) == SW_BAD_CHOICE);
    EXPECT(sw_joint_check((const sw_joint *)((const char *)&joint + 1), &steel, &rules, &a, NULL, 0, NULL, NULL) ==
           SW_BAD_POINTER);
    sw_joint_init(NULL), sw_rules_init(NULL), sw_error_init(NULL), sw_analysis_init(NULL), sw_materials_init(NULL);
}

static void wrong_sizes(void)
{
    static const uint32_t wrong[] = {0, 1, 4, 15, 21, 0x7fffffff, 0xffffffff};
    sw_analysis a;
    size_t i;
    for (i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        sw_joint j = joint;
        sw_rules r = rules;
        sw_error e = error;
        j.struct_size = wrong[i], r.struct_size = wrong[i];
        sw_analysis_init(&a);
        EXPECT(sw_joint_check(&j, &steel, &rules, &a, NULL, 0, NULL, &error) == SW_BAD_STRUCT_SIZE && error.index == 1);
        EXPECT(sw_joint_check(&joint, &steel, &r, &a, NULL, 0, NULL, &error) == SW_BAD_STRUCT_SIZE && error.index == 3);
        a.struct_size = wrong[i], a.efficiency = -7;
        EXPECT(sw_joint_check(&joint, &steel, &rules, &a, NULL, 0, NULL, &error) == SW_BAD_STRUCT_SIZE);
        EXPECT(a.efficiency == -7 && a.struct_size == wrong[i]);
        e.struct_size = wrong[i], e.value = -9;
        EXPECT(sw_joint_check(NULL, &steel, &rules, &a, NULL, 0, NULL, &e) == SW_BAD_POINTER && e.value == -9);
    }
    {
        /* A book that ends after its first entries, of an older header: the rest is silent. */
        struct { uint32_t size, book; double value[3]; } old;
        double value = -1;
        old.size = sizeof old, old.book = SW_BOOK_OWN;
        memcpy(old.value, rules.value, sizeof old.value);
        EXPECT(sw_rules_get((const sw_rules *)(const void *)&old, "margin.least.factor", &value, NULL) == SW_OK);
        EXPECT(value == 0);
        /* It is worked with as well: the plate of this lap, (pitch - hole)/pitch, governs in any book. */
        sw_analysis_init(&a);
        EXPECT(sw_joint_check(&joint, &steel, (const sw_rules *)(const void *)&old, &a, NULL, 0, NULL, &error) == SW_OK);
        EXPECT(a.tear_outer_n == (joint.pitch_mm - joint.hole_mm[0]) * joint.plate_mm * steel.tension_mpa);
    }
}

static void bad_numbers(void)
{
    static const double bad[] = {-1, 0, 1e300, -1e300, 1e-300};
    sw_analysis a;
    sw_joint j;
    sw_form form;
    sw_rules r = rules;
    sw_mode mode;
    sw_hole *holes;
    char words[4097];
    size_t i, n = 0;
    uint32_t cursor = 0xffffffff;
    sw_analysis_init(&a), a.efficiency = -7;
    for (i = 0; i < sizeof bad / sizeof *bad + 2; i++) {
        j = joint;
        j.pitch_mm = i < 5 ? bad[i] : i == 5 ? NAN : INFINITY;
        EXPECT(sw_joint_check(&j, &steel, &rules, &a, NULL, 0, NULL, &error) != SW_OK && a.efficiency == -7);
        EXPECT(error.status == (i < 2 || i == 3 || i == 4 ? SW_TOO_SMALL : i == 2 ? SW_TOO_LARGE : SW_NOT_FINITE));
    }
    j = joint, j.margin_mm = NAN;
    EXPECT(sw_joint_check(&j, &steel, &rules, &a, NULL, 0, NULL, NULL) == SW_NOT_FINITE);
    j = joint, j.form.row_count = 0xffffffff;
    EXPECT(sw_joint_check(&j, &steel, &rules, &a, NULL, 0, NULL, NULL) == SW_TOO_LARGE);
    j = joint, j.form.rivets[0] = 0x10001;
    EXPECT(sw_joint_check(&j, &steel, &rules, &a, NULL, 0, NULL, &error) == SW_TOO_LARGE && error.value == 65537);
    j = joint, j.form.kind = 3;
    EXPECT(sw_joint_check(&j, &steel, &rules, &a, NULL, 0, NULL, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_form_lap(0, &form, NULL) == SW_TOO_SMALL && sw_form_lap(0xffffffff, &form, NULL) == SW_TOO_LARGE);
    r.value[0] = NAN;
    EXPECT(sw_rules_validate(&r, &error) == SW_NOT_FINITE && error.entry == 0);
    r = rules, r.book = 1000;
    EXPECT(sw_rules_validate(&r, NULL) == SW_BAD_CHOICE);
    r = rules;
    EXPECT(sw_rules_set(&r, "shear.double", 99, NULL) == SW_TOO_LARGE && memcmp(&r, &rules, sizeof r) == 0);
    EXPECT(sw_rules_set(&r, "no.such.key", 1, NULL) == SW_UNKNOWN_KEY && sw_rules_find("none", &r, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_modes_next(&joint, &steel, &rules, &cursor, &mode, NULL) == SW_END && cursor == 0xffffffff);
    EXPECT(sw_modes_list(&joint, &steel, &rules, &mode, 1, &n, NULL) == SW_NO_SPACE && n > 1);
    EXPECT(sw_entry_describe(0xffffffff, NULL, NULL) == SW_BAD_POINTER && sw_book_id(99, NULL, 0, &n) == SW_BAD_CHOICE);
    EXPECT(sw_length_parse("12", &a.efficiency, NULL) == SW_UNREADABLE && a.efficiency == -7);
    EXPECT(sw_length_parse("\xff\xfe", &a.efficiency, NULL) == SW_BAD_TEXT);
    memset(words, 'x', 4096), words[4096] = 0;
    EXPECT(sw_rules_find(words, &r, NULL) == SW_BAD_TEXT);
    words[4095] = 0; /* the longest text that is read: no book has this name */
    EXPECT(sw_rules_find(words, &r, NULL) == SW_BAD_CHOICE);
    EXPECT(isnan(sw_length_to_mm(1, 99)) && sw_length_to_mm(1, SW_LENGTH_INCH) == 25.4);
    order.length_mm = 1e9;
    EXPECT(sw_shop_holes(&joint, &steel, &rules, &order, NULL, 0, &n, NULL) == SW_TOO_LARGE);
    order.length_mm = 3000;
    EXPECT(sw_shop_holes(&joint, &steel, &rules, &order, NULL, 0, &n, NULL) == SW_OK && n > 80);
    holes = malloc(n * sizeof *holes);
    EXPECT(sw_shop_holes(&joint, &steel, &rules, &order, holes, n - 1, &n, NULL) == SW_NO_SPACE);
    EXPECT(sw_shop_holes(&joint, &steel, &rules, &order, holes, n, &n, NULL) == SW_OK && holes[n - 1].number == n);
    free(holes);
}

/* Findings are put straight into an array that holds the most of them, and counted first for a shorter one: both ways
   give the same list. Where nothing is found, no array and no number is touched. */
static void findings_either_way(void)
{
    sw_finding whole[SW_MAX_FINDINGS], exact[SW_MAX_FINDINGS], sized[SW_MAX_FINDINGS], same[SW_MAX_FINDINGS];
    sw_analysis a, b;
    sw_joint j = joint, found;
    sw_brief wanted = brief;
    sw_materials soft = steel;
    size_t n = 0, again = 0, i;
    sw_analysis_init(&a), sw_analysis_init(&b), sw_joint_init(&found);
    memset(whole, 0x55, sizeof whole), memset(exact, 0x55, sizeof exact), memset(same, 0x55, sizeof same);
    memset(sized, 0x55, sizeof sized);
    j.margin_mm = 20; /* open by hand: 1.5 holes of 23 mm are 34.5 mm */
    EXPECT(sw_joint_check(&j, &steel, &rules, &a, whole, SW_MAX_FINDINGS, &n, NULL) == SW_OK);
    EXPECT(n == a.findings && a.open > 0 && n > a.open && n < SW_MAX_FINDINGS);
    EXPECT(sw_joint_check(&j, &steel, &rules, &b, exact, n, &again, NULL) == SW_OK && again == n);
    EXPECT(memcmp(whole, exact, sizeof whole) == 0 && memcmp(&a, &b, sizeof a) == 0);
    for (i = 0; i < n; i++)
        EXPECT((whole[i].verdict == SW_VERDICT_OPEN) == (i < a.open));
    for (i = 1; i < n; i++)
        EXPECT(whole[i - 1].verdict <= whole[i].verdict);
    wanted.margin_mm = 20;
    EXPECT(sw_joint_size(&wanted, &rules, &found, NULL, &b, sized, SW_MAX_FINDINGS, &again, NULL) == SW_OK);
    EXPECT(again == b.findings && b.open > 0);
    memset(exact, 0x55, sizeof exact);
    EXPECT(sw_joint_size(&wanted, &rules, &found, NULL, &b, exact, again, &n, NULL) == SW_OK && n == again);
    EXPECT(memcmp(sized, exact, sizeof sized) == 0);

    soft.bearing_mpa = 0, wanted.materials = soft, wanted.plate_mm = 13; /* the book checks bearing */
    memset(whole, 0x55, sizeof whole), n = 12345;
    EXPECT(sw_joint_check(&j, &soft, &rules, &b, whole, SW_MAX_FINDINGS, &n, NULL) == SW_MISSING && n == 12345);
    EXPECT(sw_joint_size(&wanted, &rules, &found, NULL, &b, whole, SW_MAX_FINDINGS, &n, NULL) == SW_MISSING);
    EXPECT(n == 12345);
    EXPECT(memcmp(whole, same, sizeof whole) == 0);
}

int main(void)
{
    EXPECT(sw_version_number() == (SW_VERSION_MAJOR << 16 | SW_VERSION_MINOR << 8 | SW_VERSION_PATCH));
    begin();
    EXPECT(short_buffers(text) == 34);
    EXPECT(short_arrays(list) == 4);
    null_pointers();
    wrong_sizes();
    bad_numbers();
    findings_either_way();
    return done("the C border");
}
