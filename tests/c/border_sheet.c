/* The border of the sheet that someone signs: NULL, wrong sizes, buffers of every size, NaN, no task and several. */
#include <stddef.h>

#include "expect.h"

static sw_joint joint;
static sw_materials steel, ultimate;
static sw_brief brief;
static sw_existing lap;
static sw_rules rules, existing_rules;
static sw_style narrow;
static sw_sheet sheet;
static sw_known known[SW_MAX_KNOWN + 1];
static sw_error error;
static char room[60000];

static void begin(void)
{
    size_t i;
    sw_error_init(&error), sw_joint_init(&joint), sw_materials_init(&steel), sw_brief_init(&brief);
    sw_existing_init(&lap), sw_style_init(&narrow), sw_sheet_init(&sheet);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    EXPECT(sw_rules_find("us-existing", &existing_rules, &error) == SW_OK);
    EXPECT(sw_form_lap(1, &joint.form, &error) == SW_OK);
    joint.pitch_mm = 50, joint.plate_mm = 6, joint.hole_mm[0] = 18;
    steel.tension_mpa = 120, steel.rivet_shear_mpa = 90, steel.bearing_mpa = 180, ultimate = steel;
    ultimate.tension_mpa = 480, ultimate.rivet_shear_mpa = 360, ultimate.bearing_mpa = 720;
    brief.form = joint.form, brief.materials = steel, brief.plate_mm = 6;
    lap.form = joint.form, lap.inside_mm = 1219.2, lap.pitch_mm = 88.9, lap.plate_mm = 11.43, lap.hole_mm[0] = 23.8;
    lap.plate_metal = SW_METAL_STEEL, lap.safety_factor = 5;
    narrow.dialect = SW_DIALECT_NARROW;
    EXPECT(sw_field_find("pitch", &known[0].field, NULL) == SW_OK);
    for (i = 0; i < SW_MAX_KNOWN + 1; i++)
        known[i].field = known[0].field, known[i].source = "a drawing";
    sheet.joint = &joint, sheet.materials = &steel, sheet.ultimate = &ultimate, sheet.safety_factor = 4;
    sheet.known = known, sheet.known_count = 2, sheet.object = "an invented tank";
}

static uint32_t text(int which, char *b, size_t n, size_t *s)
{
    switch (which) {
    case 0: return sw_sheet_text(&sheet, &rules, NULL, b, n, s, NULL);
    case 1: return sw_sheet_inputs(&sheet, &rules, b, n, s, NULL);
    case 2: return sw_sheet_lines(&sheet, sw_book_metric(), NULL, 1, 4, b, n, s, NULL, NULL);
    default: return SW_END;
    }
}

/* Buffers of every size, from nothing to one more than needed: all or nothing, and the size every time. Here it is the
   whole range, where `short_buffers` looks at both ends. */
static void every_size(void)
{
    size_t needed = 0, again, n;
    EXPECT(sw_sheet_text(&sheet, &rules, &narrow, NULL, 0, &needed, &error) == SW_OK && needed > 1000);
    EXPECT(needed + 2 < sizeof room);
    memset(room, 0x55, sizeof room);
    for (n = 0; n < needed; n++) {
        again = 0;
        if (sw_sheet_text(&sheet, &rules, &narrow, room, n, &again, &error) != SW_NO_SPACE || again != needed ||
            error.limit != (double)needed || error.value != (double)n || room[0] != 0x55 || room[n] != 0x55) {
            fprintf(stderr, "a buffer of %lu bytes\n", (unsigned long)n);
            exit(1);
        }
    }
    passed++;
    for (; n <= needed + 1; n++) {
        memset(room, 0x55, sizeof room);
        EXPECT(sw_sheet_text(&sheet, &rules, &narrow, room, n, &again, &error) == SW_OK && again == needed);
        EXPECT(strlen(room) == needed - 1 && room[needed] == 0x55);
    }
}

/* A sheet, its inputs and their hash into places that show whether they were written to. */
static uint32_t writes(const sw_rules *by)
{
    size_t needed = 999;
    uint64_t hash = 999;
    uint32_t status;
    room[0] = 0x55;
    error.status = SW_OK;
    status = sw_sheet_text(&sheet, by, NULL, room, sizeof room, &needed, &error);
    EXPECT((status == SW_OK) == (room[0] != 0x55) && (status == SW_OK) == (needed != 999) && error.status == status);
    room[0] = 0x55;
    /* Whatever can stand on a sheet can be hashed; the hash does not look at names. */
    if (sw_sheet_hash(&sheet, by, &hash, NULL) == SW_OK)
        EXPECT(hash != 999 && sw_sheet_inputs(&sheet, by, room, sizeof room, NULL, NULL) == SW_OK && room[0] == 's');
    else
        EXPECT(hash == 999 && status != SW_OK && sw_sheet_inputs(&sheet, by, room, sizeof room, NULL, NULL) != SW_OK &&
               room[0] == 0x55);
    return status;
}

static uint32_t call(void)
{
    return writes(&rules);
}

static uint32_t call_rating(void)
{
    return writes(&existing_rules);
}

static void bad_calls(void)
{
    static char endless[4097];
    size_t n = 0;
    uint64_t hash = 999;
    const sw_sheet good = sheet;
    EXPECT(sw_sheet_text(NULL, &rules, NULL, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_sheet_text(&sheet, NULL, NULL, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_sheet_text(&sheet, &rules, NULL, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 4);
    EXPECT(sw_sheet_text(&sheet, &rules, NULL, NULL, 5, &n, &error) == SW_BAD_POINTER && error.index == 4);
    EXPECT(sw_sheet_text(&sheet, &rules, (sw_style *)((char *)&narrow + 1), NULL, 0, &n, &error) == SW_BAD_POINTER);
    EXPECT(error.index == 3 && n == 0);
    EXPECT(sw_sheet_hash(NULL, &rules, &hash, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_sheet_hash(&sheet, NULL, &hash, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_sheet_hash(&sheet, &rules, NULL, &error) == SW_BAD_POINTER && error.index == 3 && hash == 999);
    EXPECT(sw_sheet_inputs(NULL, &rules, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_sheet_inputs(&sheet, NULL, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_sheet_inputs(&sheet, &rules, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_sheet_lines(NULL, sw_book_metric(), NULL, 1, 1, NULL, 0, &n, NULL, &error) == SW_BAD_POINTER);
    EXPECT(error.index == 1);
    EXPECT(sw_sheet_lines(&sheet, NULL, NULL, 1, 1, NULL, 0, &n, NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_sheet_lines(&sheet, sw_book_metric(), NULL, 1, 1, NULL, 0, NULL, NULL, &error) == SW_BAD_POINTER);
    EXPECT(error.index == 6);
    EXPECT(sw_sheet_lines(&sheet, sw_book_metric(), NULL, 0, 0xffffffff, NULL, 0, &n, NULL, &error) == SW_OK && n > 1000);
    /* Of nothing, of several things, of a joint without stresses. */
    sheet.joint = NULL;
    EXPECT(call() == SW_BAD_POINTER);
    sheet.joint = &joint, sheet.brief = &brief;
    EXPECT(call() == SW_BAD_POINTER);
    sheet.brief = NULL, sheet.existing = &lap;
    EXPECT(call() == SW_BAD_POINTER);
    sheet.joint = NULL, sheet.brief = &brief;
    EXPECT(call() == SW_BAD_POINTER);
    sheet = good, sheet.materials = NULL;
    EXPECT(call() == SW_BAD_POINTER);
    /* Choices and switches that there are none of. */
    sheet = good, sheet.invented = 2;
    EXPECT(call() == SW_BAD_CHOICE);
    sheet = good, sheet.footing = 2;
    EXPECT(call() == SW_BAD_CHOICE);
    /* Pages of too few and of too many lines. */
    sheet = good, sheet.lines_per_page = 29;
    EXPECT(call() == SW_TOO_SMALL);
    sheet.lines_per_page = 301;
    EXPECT(call() == SW_TOO_LARGE);
    sheet.lines_per_page = 65536 + 60;
    EXPECT(call() == SW_TOO_LARGE);
    sheet.lines_per_page = 30;
    EXPECT(call() == SW_OK);
    /* Strengths without a factor, a factor without strengths, a factor that is none. */
    sheet = good, sheet.safety_factor = 0;
    EXPECT(call() == SW_TOO_SMALL);
    sheet = good, sheet.ultimate = NULL;
    EXPECT(call() == SW_BAD_POINTER);
    sheet = good, sheet.safety_factor = NAN;
    EXPECT(call() == SW_NOT_FINITE);
    sheet = good, sheet.safety_factor = 4.1;
    EXPECT(call() == SW_INCONSISTENT);
    ultimate.bearing_mpa = NAN, sheet = good;
    EXPECT(call() == SW_NOT_FINITE);
    ultimate.bearing_mpa = 720;
    /* How inputs are known: no list, too many, no such input, row or basis, a text that is none. */
    sheet = good, sheet.known = NULL;
    EXPECT(call() == SW_BAD_POINTER);
    sheet = good, sheet.known_count = SW_MAX_KNOWN;
    EXPECT(call() == SW_OK);
    sheet.known_count = SW_MAX_KNOWN + 1;
    EXPECT(call() == SW_TOO_MANY);
    sheet.known_count = (size_t)-1;
    EXPECT(call() == SW_TOO_MANY);
    sheet = good, known[1].field = 9999;
    EXPECT(call() == SW_BAD_CHOICE);
    known[1].field = known[0].field, known[1].row = 256;
    EXPECT(call() == SW_BAD_CHOICE);
    known[1].row = 0, known[1].basis = 4;
    EXPECT(call() == SW_BAD_CHOICE);
    known[1].basis = SW_BASIS_MEASURED, known[1].source = "\xff";
    EXPECT(call() == SW_BAD_TEXT);
    known[1].source = NULL;
    /* Every text: not UTF-8, and one byte longer than what is read. */
    memset(endless, 'x', 4096);
    for (n = offsetof(sw_sheet, title); n <= offsetof(sw_sheet, date); n += sizeof(char *)) {
        const char *wrong = "\xc3";
        memcpy((char *)&sheet + n, &wrong, sizeof wrong);
        EXPECT(call() == SW_BAD_TEXT);
        wrong = endless;
        memcpy((char *)&sheet + n, &wrong, sizeof wrong);
        EXPECT(call() == SW_BAD_TEXT);
        endless[4095] = 0;
        EXPECT(call() == SW_OK);
        endless[4095] = 'x', sheet = good;
    }
    /* A joint and a book that are none. */
    joint.pitch_mm = 18;
    EXPECT(call() == SW_HOLES_FILL_PITCH);
    joint.pitch_mm = 50, rules.value[3] = NAN;
    EXPECT(call() == SW_NOT_FINITE);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK && call() == SW_OK);
    sw_sheet_init(NULL);
}

/* Styles of the sheet that there are none of. */
static uint32_t styled(void)
{
    size_t needed = 999;
    uint32_t status = sw_sheet_text(&sheet, &rules, &narrow, NULL, 0, &needed, &error);
    EXPECT((status == SW_OK) == (needed != 999));
    return status;
}

int main(void)
{
    begin();
    EXPECT(short_buffers(text) == 3);
    every_size();
    bad_calls();
    wrong_struct_sizes(&sheet, call);
    wrong_struct_sizes(&joint, call);
    wrong_struct_sizes(&rules, call);
    wrong_struct_sizes(&narrow, styled);
    EXPECT(careless_words(&narrow, offsetof(sw_style, units), sizeof narrow, styled) > 40);
    EXPECT(careless_words(&sheet, 4, offsetof(sw_sheet, joint), call) > 25);
    EXPECT(careless_words(&ultimate, 0, sizeof ultimate, call) > 50);
    EXPECT(careless_words(&joint, 4, sizeof joint, call) > 50);
    sheet.ultimate = NULL, sheet.safety_factor = 0;
    EXPECT(careless_words(&steel, 0, sizeof steel, call) > 20);
    sheet.joint = NULL, sheet.materials = NULL, sheet.brief = &brief;
    wrong_struct_sizes(&brief, call);
    careless_words(&brief, 4 + sizeof brief.reserved, sizeof brief, call);
    sheet.brief = NULL, sheet.existing = &lap;
    wrong_struct_sizes(&lap, call_rating);
    EXPECT(careless_words(&lap, 4, sizeof lap, call_rating) > 100);
    return done("the C border of sheets");
}
