/* The border of groups of rivets: NULL, wrong sizes, short buffers and arrays, NaN, absurd numbers. */
#include <stddef.h>

#include "expect.h"

static sw_rules rules;
static sw_group group;
static sw_group_rivet rivets[3];
static sw_error error;
static int sizes;

static void begin(void)
{
    size_t i;
    sw_error_init(&error), sw_group_init(&group);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    for (i = 0; i < 3; i++)
        rivets[i].x_mm = i == 2 ? 60 : 0, rivets[i].y_mm = 80. * (double)i, rivets[i].hole_mm = 21, rivets[i].rivet_mm = 20;
    group.rivets = rivets, group.rivet_count = 3, group.load_y_n = -9000, group.load_at_x_mm = 300;
    group.plate_mm = 9, group.shear_mpa = 60, group.bearing_mpa = 120;
}

static uint32_t text(int which, char *b, size_t n, size_t *s)
{
    sw_title title;
    sw_title_init(&title), title.object = "Bracket of an invented hoist";
    switch (which) {
    case 0: return sw_working_group(&group, &rules, NULL, b, n, s, NULL);
    case 1: return sw_drawing_group(&group, &rules, &title, b, n, s, NULL);
    default: return SW_END;
    }
}

static uint32_t list(int which, void *a, size_t n, size_t *count, size_t *size)
{
    sw_group_found found;
    sw_group_found_init(&found);
    *size = sizeof(sw_finding);
    switch (which) {
    case 0: return sw_group_check(&group, &rules, &found, a, n, count, NULL);
    case 1: *size = sizeof(sw_rivet_load); return sw_group_rivets(&group, &rules, a, n, count, NULL);
    default: return SW_END;
    }
}

static uint32_t checks(void)
{
    sw_group_found found;
    uint32_t status;
    sw_group_found_init(&found), found.critical = 99;
    status = (sizes ? sw_group_size : sw_group_check)(&group, &rules, &found, NULL, 0, NULL, &error);
    EXPECT((status == SW_OK) == (found.critical != 99));
    EXPECT(status != SW_OK || (found.critical >= 1 && found.critical <= 3 && found.used >= 0));
    EXPECT(status == SW_OK || error.status == status);
    return status;
}

static void null_pointers(void)
{
    sw_group_found found;
    sw_title title;
    size_t n = 7;
    sw_group_found_init(&found), sw_title_init(&title);
    EXPECT(sw_group_check(NULL, &rules, &found, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_group_check(&group, NULL, &found, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_group_check(&group, &rules, NULL, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_group_check(&group, &rules, &found, NULL, 0, NULL, NULL) == SW_OK);
    EXPECT(sw_group_size(NULL, &rules, &found, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_group_size(&group, NULL, &found, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_group_size(&group, &rules, NULL, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    /* Holes are given: there is nothing to find. */
    EXPECT(sw_group_size(&group, &rules, &found, NULL, 0, NULL, &error) == SW_INCONSISTENT && error.index == 1);
    EXPECT(sw_group_rivets(NULL, &rules, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_group_rivets(&group, NULL, NULL, 0, &n, NULL) == SW_BAD_POINTER && n == 7);
    EXPECT(sw_working_group(NULL, &rules, NULL, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_working_group(&group, NULL, NULL, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_drawing_group(NULL, &rules, &title, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 1);
    EXPECT(sw_drawing_group(&group, NULL, &title, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 2);
    EXPECT(sw_drawing_group(&group, &rules, NULL, NULL, 0, &n, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_drawing_group(&group, &rules, &title, NULL, 9, &n, &error) == SW_BAD_POINTER && error.index == 4);
    title.units = 7;
    EXPECT(sw_drawing_group(&group, &rules, &title, NULL, 0, &n, &error) == SW_BAD_CHOICE && error.index == 3);
    title.units = SW_UNITS_METRIC, title.struct_size = 3;
    EXPECT(sw_drawing_group(&group, &rules, &title, NULL, 0, &n, &error) == SW_BAD_STRUCT_SIZE && error.index == 3);
    group.rivets = NULL;
    EXPECT(checks() == SW_BAD_POINTER && error.index == 1);
    group.rivet_count = 0;
    EXPECT(checks() == SW_TOO_SMALL);
    group.rivets = rivets, group.rivet_count = SW_MAX_GROUP + 1; /* refused by its number alone */
    EXPECT(checks() == SW_TOO_MANY);
    group.rivet_count = (size_t)-1;
    EXPECT(checks() == SW_TOO_MANY);
    group.rivet_count = 3, group.shear_planes = 256 + 1;
    EXPECT(checks() == SW_BAD_CHOICE);
    group.shear_planes = 3;
    EXPECT(checks() == SW_TOO_LARGE);
    group.shear_planes = 1, group.row_rivets = 61;
    EXPECT(checks() == SW_TOO_LARGE);
    group.row_rivets = 0;
    EXPECT(isnan(sw_moment_to_nmm(1, 9)) && isnan(sw_moment_from_nmm(1, 9)));
    sw_group_init(NULL), sw_group_found_init(NULL);
}

int main(void)
{
    size_t i;
    begin();
    EXPECT(short_buffers(text) == 2);
    EXPECT(short_arrays(list) == 2);
    null_pointers();
    wrong_struct_sizes(&group, checks);
    EXPECT(careless_words(&group, offsetof(sw_group, shear_planes), offsetof(sw_group, reserved), checks) > 5);
    EXPECT(careless_words(&group, offsetof(sw_group, plate_mm), sizeof group, checks) > 30);
    EXPECT(careless_words(rivets, 0, sizeof rivets, checks) > 30);
    for (i = 0; i < 3; i++)
        rivets[i].hole_mm = rivets[i].rivet_mm = 0;
    sizes = 1;
    EXPECT(short_buffers(text) == 2);
    EXPECT(careless_words(&group, offsetof(sw_group, plate_mm), sizeof group, checks) > 30);
    EXPECT(careless_words(rivets, 0, sizeof rivets, checks) > 30);
    return done("the C border of groups of rivets");
}
