/* Reads the cases of the golden vectors as text (hexadecimal bits) and prints what the library makes of them. */
#include <inttypes.h>
#include <seamwright.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static double take(void)
{
    uint64_t bits;
    double x;
    if (scanf("%" SCNx64, &bits) != 1)
        exit(2);
    memcpy(&x, &bits, sizeof x);
    return x;
}

static uint32_t take_number(void)
{
    uint32_t n;
    if (scanf("%" SCNu32, &n) != 1)
        exit(2);
    return n;
}

/* The bits of a figure; every "not a number" alike. */
static void show(double x)
{
    uint64_t bits;
    memcpy(&bits, &x, sizeof bits);
    if (x != x)
        bits = UINT64_C(0x7ff8000000000000);
    printf(" %016" PRIx64, bits);
}

static void show_error(const sw_error *e)
{
    printf(" %" PRIu32 " %" PRIu32 " %" PRIu32 " %" PRIu32, e->status, e->field, e->index, e->entry);
    show(e->value), show(e->limit);
}

static void show_analysis(const sw_analysis *a, const sw_finding *f, size_t n)
{
    size_t i;
    show(a->solid_n), show(a->tear_outer_n), show(a->shear_all_n), show(a->bearing_all_n);
    show(a->governing.strength_n), show(a->runner_up.strength_n), show(a->by_book.strength_n);
    show(a->runner_up_ratio), show(a->efficiency), show(a->book_efficiency), show(a->credited_efficiency);
    show(a->plate_percentage), show(a->rivet_percentage), show(a->combined_percentage);
    printf(" %zu", n);
    for (i = 0; i < n; i++) {
        printf(" %" PRIu32 " %" PRIu32 " %" PRIu32 " %" PRIu32, f[i].subject, f[i].row, f[i].entry, f[i].verdict);
        show(f[i].required), show(f[i].provided);
    }
}

static void check(const sw_form *form, const sw_materials *steel, const sw_rules *rules)
{
    sw_joint j;
    sw_analysis a;
    sw_error e;
    sw_finding findings[SW_MAX_FINDINGS];
    sw_mode modes[200];
    char name[300];
    size_t i, n;
    sw_joint_init(&j), sw_analysis_init(&a), sw_error_init(&e);
    j.form = *form;
    j.pitch_mm = take(), j.plate_mm = take(), j.other_plate_mm = take();
    j.wide_strap_mm = take(), j.narrow_strap_mm = take(), j.margin_mm = take();
    for (i = 0; i < SW_MAX_ROWS; i++)
        j.hole_mm[i] = take(), j.rivet_mm[i] = take(), j.back_pitch_mm[i] = take();
    if (sw_joint_check(&j, steel, rules, &a, findings, SW_MAX_FINDINGS, &n, &e) != SW_OK) {
        show_error(&e);
        return;
    }
    printf(" 0");
    show_analysis(&a, findings, n);
    if (sw_modes_list(&j, steel, rules, modes, 200, &n, &e) != SW_OK)
        exit(3);
    printf(" %zu", n);
    for (i = 0; i < n; i++) {
        printf(" %" PRIu32 " %" PRIu32 " %" PRIu32, modes[i].plate_row, modes[i].other_row, modes[i].narrow_row);
        show(modes[i].strength_n);
        if (sw_mode_name(&j.form, &modes[i], name, sizeof name, NULL) != SW_OK)
            exit(4);
        printf(" [%s]", name);
    }
}

static void size(const sw_form *form, const sw_materials *steel, const sw_rules *rules)
{
    sw_brief b;
    sw_joint j;
    sw_design d;
    sw_analysis a;
    sw_error e;
    sw_finding findings[SW_MAX_FINDINGS];
    size_t i, n;
    sw_brief_init(&b), sw_joint_init(&j), sw_design_init(&d), sw_analysis_init(&a), sw_error_init(&e);
    b.form = *form, b.materials = *steel;
    b.plate_mm = take(), b.other_plate_mm = take(), b.hole_mm = take(), b.rivet_mm = take(), b.pitch_mm = take();
    b.wide_strap_mm = take(), b.narrow_strap_mm = take(), b.margin_mm = take();
    for (i = 0; i < SW_MAX_ROWS; i++)
        b.back_pitch_mm[i] = take();
    if (sw_joint_size(&b, rules, &j, &d, &a, findings, SW_MAX_FINDINGS, &n, &e) != SW_OK) {
        show_error(&e);
        return;
    }
    printf(" 0");
    show(d.hole_computed_mm), show(d.hole_mm), show(d.rivet_mm), show(d.pitch_by_shear_mm);
    show(d.pitch_by_weaker_mm), show(d.pitch_by_all_modes_mm), show(d.pitch_least_mm), show(d.pitch_greatest_mm);
    show(d.pitch_mm), show(d.margin_least_mm), show(d.wide_strap_least_mm), show(d.narrow_strap_least_mm);
    show(j.pitch_mm), show(j.wide_strap_mm), show(j.narrow_strap_mm), show(j.margin_mm);
    for (i = 0; i < SW_MAX_ROWS; i++)
        show(j.back_pitch_mm[i]);
    show_analysis(&a, findings, n);
}

int main(void)
{
    char what[16], book[40], key[60];
    while (scanf("%15s %39s", what, book) == 2) {
        sw_rules rules;
        sw_form form;
        sw_materials steel;
        uint32_t edits, i;
        if (sw_rules_find(book, &rules, NULL) != SW_OK)
            return 5;
        for (edits = take_number(); edits > 0; edits--)
            if (scanf("%59s", key) != 1 || sw_rules_set(&rules, key, take(), NULL) != SW_OK)
                return 6;
        memset(&form, 0, sizeof form);
        form.kind = take_number(), form.arrangement = take_number(), form.row_count = take_number();
        for (i = 0; i < SW_MAX_ROWS; i++)
            form.rivets[i] = take_number(), form.planes[i] = take_number();
        sw_materials_init(&steel);
        steel.tension_mpa = take(), steel.rivet_shear_mpa = take(), steel.bearing_mpa = take();
        steel.other_tension_mpa = take(), steel.other_bearing_mpa = take();
        printf("%s", what);
        if (strcmp(what, "check") == 0)
            check(&form, &steel, &rules);
        else
            size(&form, &steel, &rules);
        printf("\n");
    }
    return 0;
}
