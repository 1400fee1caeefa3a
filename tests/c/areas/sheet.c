/* The sheet that someone signs: published figures on it, names and blanks, how inputs are known, the hash by hand. */
#include <inttypes.h>

#include "../expect.h"

static sw_error error;
static sw_rules rules;
static sw_joint joint;
static sw_materials steel;
static sw_sheet sheet;
static char text[60000];

/* Khurmi and Gupta, Example 9.4: a double-riveted lap of 13 mm plate, hole 23 mm, pitch 71 mm. */
static void begin(void)
{
    sw_error_init(&error), sw_joint_init(&joint), sw_materials_init(&steel), sw_sheet_init(&sheet);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK && sw_form_lap(2, &joint.form, &error) == SW_OK);
    joint.pitch_mm = 71, joint.plate_mm = 13, joint.hole_mm[0] = 23;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    sheet.joint = &joint, sheet.materials = &steel;
}

/* The sheet in one line, blanks once, so that a broken line hides nothing. */
static void write_flat(const sw_style *style)
{
    char *from, *to = text;
    EXPECT(sw_sheet_text(&sheet, &rules, style, text, sizeof text, NULL, &error) == SW_OK);
    for (from = text; *from; from++)
        if (*from != ' ' && *from != '\n')
            *to++ = *from;
        else if (to > text && to[-1] != ' ')
            *to++ = ' ';
    *to = 0;
}

static int has(const char *part)
{
    if (strstr(text, part))
        return 1;
    fprintf(stderr, "no \"%s\" in\n%s\n", part, text);
    return 0;
}

/* Printed in the book: 49 920 N tearing, 71 760 N crushing, 67.5 %. Shearing 2 pi/4 23^2 60 = 49 857 N. */
static void a_published_joint(void)
{
    sw_style style;
    sw_style_init(&style);
    write_flat(&style);
    EXPECT(has("tearing at the outer row 49920 67.61 %") && has("shearing of all rivets 49857 67.52 %"));
    EXPECT(has("crushing of all rivets 71760 97.18 %") && has("eta, efficiency over all modes 67.52 %"));
    EXPECT(has("Object ______") && has("Drawing no. ______") && strstr(text, "INVENTED") == NULL);
    style.forces = SW_FORCES_KILONEWTON, style.mark = SW_MARK_COMMA;
    write_flat(&style);
    EXPECT(has("tearing at the outer row 49,92 67,61 %"));
}

/* Form feeds, lines between them, and the number at each foot. */
static void pages(void)
{
    char foot[40];
    const char *at = text;
    int page, count = 1, lines;
    EXPECT(sw_sheet_text(&sheet, &rules, NULL, text, sizeof text, NULL, &error) == SW_OK);
    for (; *at; at++)
        count += *at == '\f';
    EXPECT(count > 2);
    for (page = 1, at = text; page <= count; page++) {
        const char *end = strchr(at, '\f');
        sprintf(foot, "page %d of %d", page, count);
        EXPECT(strstr(at, foot) && (!end || strstr(at, foot) < end));
        for (lines = 0; *at && at != end; at++)
            lines += *at == '\n';
        EXPECT(lines <= 60);
        at += *at == '\f';
    }
}

/* Permissible stresses of strengths at failure over five: 400/5, 300/5, 600/5. */
static void particulars(void)
{
    static sw_materials ultimate; /* the sheet keeps pointing at them */
    static sw_known known[2];
    sw_materials_init(&ultimate);
    ultimate.tension_mpa = 400, ultimate.rivet_shear_mpa = 300, ultimate.bearing_mpa = 600;
    EXPECT(sw_field_find("pitch", &known[0].field, NULL) == SW_OK);
    EXPECT(sw_field_find("plate", &known[1].field, NULL) == SW_OK);
    known[0].row = known[1].row = known[0].reserved = known[1].reserved = 0;
    known[0].basis = SW_BASIS_MEASURED, known[0].source = "least of five readings";
    known[1].basis = SW_BASIS_ASSUMED, known[1].source = NULL;
    sheet.title = "Seam 2 of the drum", sheet.object = "Mill boiler of an invented works", sheet.drawing_no = "D-7";
    sheet.jurisdiction = "Inspector of the invented county", sheet.prepared = "A. Smithson", sheet.checked = "B. Wright";
    sheet.date = "3 May 2031", sheet.invented = 1, sheet.footing = SW_FOOTING_PERMISSIBLE;
    sheet.ultimate = &ultimate, sheet.safety_factor = 5, sheet.known = known, sheet.known_count = 2;
    write_flat(NULL);
    EXPECT(has("INVENTED SCENARIO") && has("Title Seam 2 of the drum") && has("Object Mill boiler of an invented works"));
    EXPECT(has("Drawing no. D-7") && has("Jurisdiction Inspector of the invented county"));
    EXPECT(has("A. Smithson") && has("B. Wright") && has("3 May 2031"));
    EXPECT(has("measured: least of five readings") && has("assumed") && has("400.00 MPa"));
    /* On pages of sixty lines: feet with their numbers, a form feed between pages, and no page longer. */
    sheet.lines_per_page = 60;
    pages();
    sheet.lines_per_page = 0;
    /* Another factor, and the stresses are no longer those of the task. */
    sheet.safety_factor = 4;
    EXPECT(sw_sheet_text(&sheet, &rules, NULL, text, sizeof text, NULL, &error) == SW_INCONSISTENT);
    EXPECT(sw_error_field(&error, text, sizeof text, NULL) == SW_OK && strcmp(text, "safety_factor") == 0);
    sheet.safety_factor = 5;
}

/* A changed rule is said to be the user's. */
static void a_changed_book(void)
{
    sw_rules before = rules;
    EXPECT(sw_rules_set(&rules, "margin.least.factor", 1.75, &error) == SW_OK);
    write_flat(NULL);
    EXPECT(has("1 entry changed by the user"));
    rules = before;
}

/* FNV-1a, 64 bits, as its authors publish it; the text starts as the library documents it. */
static uint64_t fnv(const char *at)
{
    uint64_t hash = UINT64_C(0xcbf29ce484222325);
    for (; *at; at++)
        hash = (hash ^ (unsigned char)*at) * UINT64_C(0x100000001b3);
    return hash;
}

static void the_hash(void)
{
    char printed[40];
    uint64_t hash = 0, other = 0;
    sw_materials pounds;
    EXPECT(fnv("a") == UINT64_C(0xaf63dc4c8601ec8c)); /* a test vector of its authors */
    EXPECT(sw_sheet_inputs(&sheet, &rules, text, sizeof text, NULL, &error) == SW_OK);
    EXPECT(strncmp(text, "seamwright inputs 1\ntask=check\nbook=metric\nkind=lap\n", 52) == 0);
    EXPECT(strstr(text, "\nstrip=71.000000000\nplate=13.000000000\n") && strstr(text, "\nshear=60.000000000\n"));
    EXPECT(sw_sheet_hash(&sheet, &rules, &hash, &error) == SW_OK && hash == fnv(text));
    /* It stands on the sheet. */
    sprintf(printed, "%016" PRIx64, hash);
    write_flat(NULL);
    EXPECT(has(printed));
    /* The same joint in inches and psi has the same inputs; names change nothing; another pitch does. */
    pounds = steel;
    pounds.tension_mpa = sw_stress_to_mpa(sw_stress_from_mpa(80, SW_STRESS_PSI), SW_STRESS_PSI);
    sheet.materials = &pounds, joint.pitch_mm = 71 / 25.4 * 25.4, sheet.prepared = "C. Other", sheet.date = NULL;
    EXPECT(sw_sheet_hash(&sheet, &rules, &other, &error) == SW_OK && other == hash);
    joint.pitch_mm = 71.5;
    EXPECT(sw_sheet_hash(&sheet, &rules, &other, &error) == SW_OK && other != hash);
    sheet.materials = &steel, joint.pitch_mm = 71;
}

/* A sizing and a rating. The lap of 0.45 in plate allows 144.6 psi by hand: 2 (pi/4) 0.9375^2 44 000/(3.5 24 5). */
static void the_other_tasks(void)
{
    sw_brief brief;
    sw_existing lap;
    sw_style inches;
    uint64_t hash = 0;
    sw_brief_init(&brief), sw_existing_init(&lap), sw_style_init(&inches), sw_sheet_init(&sheet);
    brief.form = joint.form, brief.materials = steel, brief.plate_mm = 13, brief.pitch_mm = 71, brief.hole_mm = 23;
    sheet.brief = &brief;
    write_flat(NULL);
    EXPECT(has("SIZING AND CHECK") && has("eta, efficiency over all modes 67.52 %"));
    EXPECT(sw_rules_find("us-existing", &rules, &error) == SW_OK && sw_form_lap(2, &lap.form, &error) == SW_OK);
    lap.inside_mm = 48 * 25.4, lap.pitch_mm = 3.5 * 25.4, lap.plate_mm = 0.45 * 25.4, lap.hole_mm[0] = 0.9375 * 25.4;
    lap.plate_metal = SW_METAL_STEEL, lap.safety_factor = 5, lap.measured = SW_BY_MEASURE_PLATE;
    sheet.brief = NULL, sheet.existing = &lap, inches.units = SW_UNITS_INCH;
    write_flat(&inches);
    EXPECT(has("RATING OF AN EXISTING JOINT") && has("Working pressure allowed: 144.6 psi"));
    /* Without a factor of safety nothing is rated, signed or hashed, and the error says what is missing. */
    lap.safety_factor = 0;
    EXPECT(sw_sheet_text(&sheet, &rules, NULL, text, sizeof text, NULL, &error) == SW_MISSING);
    EXPECT(sw_sheet_hash(&sheet, &rules, &hash, &error) == SW_MISSING && hash == 0);
    EXPECT(sw_sheet_inputs(&sheet, &rules, text, sizeof text, NULL, &error) == SW_MISSING);
    EXPECT(sw_error_field(&error, text, sizeof text, NULL) == SW_OK && strcmp(text, "safety_factor") == 0);
}

/* Seven lines at a time, for a small display: together they are the whole sheet. */
static void line_by_line(void)
{
    static char some[2000], whole[sizeof text];
    uint32_t first, total = 1;
    size_t at = 0, needed;
    EXPECT(sw_sheet_text(&sheet, &rules, NULL, text, sizeof text, NULL, &error) == SW_OK);
    for (first = 1; first <= total; first += 7) {
        EXPECT(sw_sheet_lines(&sheet, sw_book_metric(), NULL, first, 7, some, sizeof some, &needed, &total, &error) == SW_OK);
        memcpy(whole + at, some, needed);
        at += needed - 1;
    }
    EXPECT(total > 100 && strcmp(whole, text) == 0);
    EXPECT(sw_sheet_lines(&sheet, sw_book_metric(), NULL, total + 1, 7, some, sizeof some, &needed, NULL, &error) == SW_OK);
    EXPECT(needed == 1 && some[0] == 0);
}

int main(void)
{
    begin();
    a_published_joint();
    particulars();
    line_by_line();
    a_changed_book();
    the_hash();
    the_other_tasks();
    return done("sheets in C");
}
