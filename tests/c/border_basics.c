/* The border of what everything else stands on: units, numbers, books one by one, forms, stresses, workings by lines. */
#include "expect.h"

static sw_error error;
static sw_rules rules;
static sw_joint joint;
static sw_materials steel;
static sw_brief brief;

static void begin(void)
{
    sw_error_init(&error), sw_joint_init(&joint), sw_materials_init(&steel), sw_brief_init(&brief);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK && sw_form_lap(1, &joint.form, &error) == SW_OK);
    joint.pitch_mm = 50, joint.plate_mm = 6, joint.hole_mm[0] = 18;
    steel.tension_mpa = 120, steel.rivet_shear_mpa = 90, steel.bearing_mpa = 180;
    brief.form = joint.form, brief.materials = steel, brief.plate_mm = 6;
}

/* Units: one that there is not gives no number; NaN and infinity go through as they are. */
static void units(void)
{
    static double (*const all[])(double, uint32_t) = {sw_length_to_mm, sw_length_from_mm,  sw_area_to_mm2,
                                                      sw_area_from_mm2, sw_force_to_n,     sw_force_from_n,
                                                      sw_stress_to_mpa, sw_stress_from_mpa, sw_pressure_to_mpa,
                                                      sw_pressure_from_mpa, sw_moment_to_nmm, sw_moment_from_nmm};
    static const uint32_t known[] = {4, 4, 3, 3, 5, 5, 6, 6, 4, 4, 4, 4};
    size_t i;
    uint32_t unit;
    for (i = 0; i < sizeof all / sizeof *all; i++) {
        for (unit = 0; unit < known[i]; unit++)
            EXPECT(all[i](1, unit) > 0 && isnan(all[i](NAN, unit)) && isinf(all[i](INFINITY, unit)) && all[i](0, unit) == 0);
        EXPECT(isnan(all[i](1, known[i])) && isnan(all[i](1, 0xffffffff)));
    }
}

static void texts(void)
{
    double x = 7;
    uint32_t entry = 7;
    EXPECT(sw_stress_parse(NULL, &x, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_stress_parse("80 MPa", NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_stress_parse("80", &x, &error) == SW_UNREADABLE && sw_stress_parse("", &x, NULL) == SW_UNREADABLE);
    EXPECT(sw_stress_parse("\xff MPa", &x, &error) == SW_BAD_TEXT && error.index == 1 && x == 7);
    EXPECT(sw_stress_parse("80 MPa", &x, &error) == SW_OK && x == 80);
    EXPECT(sw_number_parse(NULL, &x, &error) == SW_BAD_POINTER && sw_number_parse("1", NULL, &error) == SW_BAD_POINTER);
    EXPECT(sw_number_parse("1e", &x, &error) == SW_UNREADABLE && sw_number_parse("\xc3", &x, &error) == SW_BAD_TEXT);
    EXPECT(x == 80);
    EXPECT(sw_entry_find(NULL, &entry, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_entry_find("shear.double", NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_entry_find("shear.treble", &entry, &error) == SW_UNKNOWN_KEY && error.index == 1);
    EXPECT(sw_entry_find("series.hole.0", &entry, &error) == SW_UNKNOWN_KEY);
    EXPECT(sw_entry_find("", &entry, NULL) == SW_UNKNOWN_KEY && entry == 7);
}

/* Each book by its own function is the one of its id. */
static void books(void)
{
    static const sw_book *(*const all[])(void) = {
        sw_book_metric,      sw_book_indian,            sw_book_us_code,    sw_book_us_existing,
        sw_book_british_marine, sw_book_german_1908,    sw_book_structural, sw_book_us_michigan,
        sw_book_us_north_carolina, sw_book_us_montana, sw_book_us_california, sw_book_us_locomotive};
    sw_rules found;
    char id[40];
    uint32_t i;
    EXPECT(sw_book_count() == sizeof all / sizeof *all && sw_book_numbers(NULL) == NULL);
    for (i = 0; i < sw_book_count(); i++) {
        EXPECT(sw_book_id(i + 1, id, sizeof id, NULL) == SW_OK && sw_rules_find(id, &found, NULL) == SW_OK);
        EXPECT(memcmp(sw_book_numbers(all[i]()), &found, sizeof found) == 0 && found.book == i + 1);
    }
    EXPECT(sw_book_id(i + 1, id, sizeof id, NULL) == SW_BAD_CHOICE);
}

static void forms(void)
{
    static uint32_t (*const all[])(uint32_t, sw_form *, sw_error *) = {sw_form_lap, sw_form_single_strap,
                                                                       sw_form_double_strap, sw_form_unequal_straps};
    static const uint32_t least[] = {1, 1, 1, 2}, most[] = {4, 3, 5, 5};
    sw_form form, same, thinned;
    size_t i;
    uint32_t rows;
    memset(&form, 0x55, sizeof form), memset(&same, 0x55, sizeof same), memset(&thinned, 0x55, sizeof thinned);
    for (i = 0; i < 4; i++) {
        EXPECT(all[i](2, NULL, &error) == SW_BAD_POINTER && error.index == 2);
        EXPECT(all[i](least[i] - 1, &form, &error) == SW_TOO_SMALL && all[i](most[i] + 1, &form, &error) == SW_TOO_LARGE);
        EXPECT(all[i](256 + least[i], &form, &error) == SW_TOO_LARGE && all[i](0xffffffff, &form, NULL) == SW_TOO_LARGE);
        EXPECT(memcmp(&form, &same, sizeof form) == 0);
        for (rows = least[i]; rows <= most[i]; rows++)
            EXPECT(all[i](rows, &form, &error) == SW_OK && sw_form_validate(&form, &error) == SW_OK);
        memset(&form, 0x55, sizeof form);
    }
    EXPECT(sw_form_validate(NULL, &error) == SW_BAD_POINTER && sw_form_validate(&form, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_form_omit_alternate(NULL, &thinned, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_form_omit_alternate(&form, &thinned, &error) == SW_BAD_CHOICE);
    EXPECT(sw_form_lap(1, &form, NULL) == SW_OK && sw_form_omit_alternate(&form, &thinned, &error) == SW_INCONSISTENT);
    EXPECT(sw_form_lap(3, &form, NULL) == SW_OK && sw_form_omit_alternate(&form, NULL, &error) == SW_BAD_POINTER);
    EXPECT(error.index == 2 && memcmp(&thinned, &same, sizeof same) == 0);
    EXPECT(sw_form_omit_alternate(&form, &form, &error) == SW_OK && form.rivets[1] == 2); /* in its own place */
    EXPECT(sw_form_count() > 10 && sw_form_named(sw_form_count(), &thinned, NULL) == SW_BAD_CHOICE);
}

static uint32_t stresses(void)
{
    sw_materials divided, same;
    uint32_t status;
    memset(&divided, 0x55, sizeof divided), memset(&same, 0x55, sizeof same);
    status = sw_materials_divide(&steel, 2, &divided, &error);
    EXPECT((status == SW_OK) == (memcmp(&divided, &same, sizeof same) != 0));
    return sw_materials_validate(&steel, &error);
}

static uint32_t valid(void)
{
    return sw_joint_validate(&joint, &error);
}

static uint32_t rule_book(void)
{
    sw_materials assumed, same;
    uint32_t status;
    memset(&assumed, 0x55, sizeof assumed), memset(&same, 0x55, sizeof same);
    status = sw_rules_assume(&rules, SW_METAL_IRON, SW_METAL_STEEL, &assumed, &error);
    EXPECT((status == SW_OK) == (memcmp(&assumed, &same, sizeof same) != 0));
    return status;
}

static void bad_calls(void)
{
    sw_materials out;
    sw_entry_info info;
    EXPECT(sw_materials_validate(NULL, &error) == SW_BAD_POINTER && sw_joint_validate(NULL, &error) == SW_BAD_POINTER);
    EXPECT(sw_materials_divide(NULL, 2, &out, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_materials_divide(&steel, 2, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_materials_divide(&steel, NAN, &out, &error) == SW_NOT_FINITE);
    EXPECT(sw_materials_divide(&steel, 0.9, &out, &error) == SW_TOO_SMALL);
    EXPECT(sw_materials_divide(&steel, 20.1, &out, &error) == SW_TOO_LARGE);
    EXPECT(sw_rules_assume(NULL, 0, 0, &out, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_rules_assume(&rules, 0, 0, &out, &error) == SW_MISSING); /* this book assumes nothing */
    EXPECT(sw_rules_find("us-existing", &rules, NULL) == SW_OK);
    EXPECT(sw_rules_assume(&rules, 2, 0, &out, &error) == SW_BAD_CHOICE && error.index == 2);
    EXPECT(sw_rules_assume(&rules, 0, 2, &out, &error) == SW_BAD_CHOICE && error.index == 3);
    EXPECT(sw_rules_assume(&rules, 0, 0, NULL, &error) == SW_BAD_POINTER && error.index == 4);
    sw_materials_init(NULL), sw_entry_info_init(NULL), sw_design_init(NULL), sw_shop_init(NULL);
    sw_entry_info_init(&info);
    EXPECT(info.struct_size == sizeof info);
}

static uint32_t text(int which, char *b, size_t n, size_t *s)
{
    uint32_t entry = 0;
    switch (which) {
    case 0: return sw_working_check_lines(&joint, &steel, sw_book_metric(), NULL, 3, 5, b, n, s, NULL, NULL);
    case 1: return sw_working_size_lines(&brief, sw_book_metric(), NULL, 1, 4, b, n, s, NULL, NULL);
    case 2:
        if (sw_entry_find("hole.rule", &entry, NULL) != SW_OK)
            return SW_UNKNOWN_KEY;
        return sw_entry_choice(entry, 0, b, n, s);
    default: return SW_END;
    }
}

static void bad_lines(void)
{
    const sw_book *book = sw_book_metric();
    size_t n = 0;
    uint32_t total = 77;
    EXPECT(sw_working_check_lines(NULL, &steel, book, NULL, 1, 1, NULL, 0, &n, &total, &error) == SW_BAD_POINTER);
    EXPECT(sw_working_check_lines(&joint, NULL, book, NULL, 1, 1, NULL, 0, &n, &total, &error) == SW_BAD_POINTER);
    EXPECT(sw_working_check_lines(&joint, &steel, NULL, NULL, 1, 1, NULL, 0, &n, &total, &error) == SW_BAD_POINTER);
    EXPECT(error.index == 3);
    EXPECT(sw_working_check_lines(&joint, &steel, book, NULL, 1, 1, NULL, 0, NULL, &total, &error) == SW_BAD_POINTER);
    EXPECT(error.index == 7);
    EXPECT(sw_working_size_lines(NULL, book, NULL, 1, 1, NULL, 0, &n, &total, &error) == SW_BAD_POINTER);
    EXPECT(sw_working_size_lines(&brief, NULL, NULL, 1, 1, NULL, 0, &n, &total, &error) == SW_BAD_POINTER);
    EXPECT(error.index == 2 && total == 77 && n == 0);
    brief.plate_mm = NAN;
    EXPECT(sw_working_size_lines(&brief, book, NULL, 1, 1, NULL, 0, &n, &total, &error) == SW_NOT_FINITE && total == 77);
    brief.plate_mm = 6;
    EXPECT(sw_working_size_lines(&brief, book, NULL, 0, 0, NULL, 0, &n, &total, &error) == SW_OK && n == 1 && total > 20);
    EXPECT(sw_working_size_lines(&brief, book, NULL, 0xffffffff, 0xffffffff, NULL, 0, &n, NULL, &error) == SW_OK && n == 1);
    EXPECT(sw_entry_choice(0xffff, 0, NULL, 0, &n) == SW_BAD_CHOICE);
}

/* The joint of the working: careless calls, and that of sw_joint_size to the last bit. */
static void bad_written(void)
{
    static sw_finding found[SW_MAX_FINDINGS], again[SW_MAX_FINDINGS], exact[SW_MAX_FINDINGS];
    const sw_book *book = sw_book_metric();
    sw_joint sized, written;
    sw_design d, e;
    sw_analysis a, b;
    size_t n = 77, m = 0;
    sw_joint_init(&sized), sw_joint_init(&written), sw_design_init(&d), sw_design_init(&e);
    sw_analysis_init(&a), sw_analysis_init(&b);
    EXPECT(sw_working_size_joint(NULL, book, &written, &e, &b, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_working_size_joint(&brief, NULL, &written, &e, &b, NULL, 0, &n, &error) == SW_BAD_POINTER);
    EXPECT(error.index == 2);
    EXPECT(sw_working_size_joint(&brief, book, NULL, &e, &b, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_working_size_joint(&brief, book, &written, &e, &b, NULL, 3, &n, &error) == SW_BAD_POINTER && error.index == 6);
    brief.plate_mm = NAN;
    EXPECT(sw_working_size_joint(&brief, book, &written, &e, &b, NULL, 0, &n, &error) == SW_NOT_FINITE && n == 77);
    brief.plate_mm = 6, brief.margin_mm = 12;
    memset(found, 0, sizeof found), memset(again, 0, sizeof again), memset(exact, 0, sizeof exact);
    EXPECT(sw_joint_size(&brief, sw_book_numbers(book), &sized, &d, &a, found, SW_MAX_FINDINGS, &n, &error) == SW_OK);
    EXPECT(sw_working_size_joint(&brief, book, &written, &e, &b, again, SW_MAX_FINDINGS, &m, &error) == SW_OK);
    EXPECT(n == m && n > 2 && memcmp(found, again, sizeof found) == 0 && memcmp(&a, &b, sizeof a) == 0);
    EXPECT(memcmp(&sized, &written, sizeof sized) == 0 && memcmp(&d, &e, sizeof d) == 0);
    EXPECT(sw_working_size_joint(&brief, book, &written, NULL, NULL, exact, n, &m, &error) == SW_OK && m == n);
    EXPECT(memcmp(found, exact, sizeof found) == 0);
    EXPECT(sw_working_size_joint(&brief, book, &written, NULL, NULL, exact, n - 1, &m, &error) == SW_NO_SPACE && m == n);
    brief.margin_mm = 0;
}

int main(void)
{
    begin();
    units();
    texts();
    books();
    forms();
    EXPECT(short_buffers(text) == 3);
    bad_lines();
    bad_written();
    bad_calls();
    wrong_struct_sizes(&joint, valid);
    EXPECT(careless_words(&joint, 4, sizeof joint, valid) > 50);
    EXPECT(careless_words(&steel, 0, sizeof steel, stresses) > 30);
    EXPECT(careless_words(&rules, 4, 8, rule_book) > 5);
    wrong_struct_sizes(&rules, rule_book);
    return done("the C border of units, books and forms");
}
