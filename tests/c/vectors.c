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

static void show_findings(const sw_finding *f, size_t n)
{
    size_t i;
    printf(" %lu", (unsigned long)n);
    for (i = 0; i < n; i++) {
        printf(" %" PRIu32 " %" PRIu32 " %" PRIu32 " %" PRIu32, f[i].subject, f[i].row, f[i].entry, f[i].verdict);
        show(f[i].required), show(f[i].provided);
    }
}

static void show_analysis(const sw_analysis *a, const sw_finding *f, size_t n)
{
    show(a->solid_n), show(a->tear_outer_n), show(a->shear_all_n), show(a->bearing_all_n);
    show(a->governing.strength_n), show(a->runner_up.strength_n), show(a->by_book.strength_n);
    show(a->runner_up_ratio), show(a->efficiency), show(a->book_efficiency), show(a->credited_efficiency);
    show(a->plate_percentage), show(a->rivet_percentage), show(a->combined_percentage);
    show_findings(f, n);
}

static void take_joint(sw_joint *j, const sw_form *form)
{
    size_t i;
    sw_joint_init(j);
    j->form = *form;
    j->pitch_mm = take(), j->plate_mm = take(), j->other_plate_mm = take();
    j->wide_strap_mm = take(), j->narrow_strap_mm = take(), j->margin_mm = take();
    for (i = 0; i < SW_MAX_ROWS; i++)
        j->hole_mm[i] = take(), j->rivet_mm[i] = take(), j->back_pitch_mm[i] = take();
}

static void take_shell(sw_shell *shell)
{
    sw_service *s = &shell->service;
    sw_shell_init(shell);
    shell->footing = take_number(), shell->corrosion_stated = take_number();
    s->existing = take_number(), s->second_hand = take_number(), s->past_age_limit = take_number();
    s->tested = take_number(), s->tubular = take_number(), s->lap_in_fire = take_number();
    s->weight_on_seam = take_number(), s->riveting = take_number(), s->holes = take_number(), s->stripped = take_number();
    s->lap_length_mm = take(), shell->inside_mm = take(), shell->corrosion_mm = take(), shell->safety_factor = take();
}

static void show_allowed(const sw_allowed *a)
{
    printf(" 0 %" PRIu32 " %" PRIu32 " %" PRIu32, a->outside, a->factor.basis, a->factor.entry);
    show(a->pressure_mpa), show(a->efficiency), show(a->allowance_mm), show(a->factor.value);
}

static void pressure(const sw_form *form, const sw_rules *rules)
{
    sw_shell shell;
    sw_seam seam;
    sw_allowed a;
    sw_error e;
    take_shell(&shell), sw_error_init(&e);
    seam.form = *form, seam.plate_mm = take(), seam.tension_mpa = take(), seam.efficiency = take();
    if (sw_seam_pressure(&seam, rules, &shell, &a, &e) == SW_OK)
        show_allowed(&a);
    else
        show_error(&e);
}

static void girth(const sw_form *form, const sw_materials *steel, const sw_rules *rules)
{
    sw_joint along, lap;
    sw_shell shell;
    sw_girth g;
    sw_finding f[SW_MAX_FINDINGS];
    uint32_t place;
    size_t n;
    take_joint(&along, form), take_shell(&shell), sw_joint_init(&lap), sw_girth_init(&g);
    if (sw_form_lap(take_number(), &lap.form, NULL) != SW_OK)
        exit(7);
    place = take_number(), lap.pitch_mm = take(), lap.plate_mm = take(), lap.hole_mm[0] = take();
    if (sw_girth_check(&along, steel, rules, &shell, &lap, place, take(), &g, f, SW_MAX_FINDINGS, &n, NULL) != SW_OK)
        exit(8);
    printf(" 0 %" PRIu32 " %" PRIu32 " %" PRIu32, g.entry, g.strips, g.rivets);
    show(g.pressure_mpa), show(g.efficiency), show(g.needed), show(g.end_rivets);
    show_findings(f, n);
}

static void rating(const sw_form *form, const sw_rules *rules)
{
    sw_shell shell;
    sw_existing old;
    sw_rating r;
    sw_analysis a;
    sw_assumption notes[SW_MAX_ASSUMPTIONS];
    sw_finding f[2 * SW_MAX_FINDINGS];
    size_t n, i;
    take_shell(&shell), sw_existing_init(&old), sw_rating_init(&r), sw_analysis_init(&a);
    old.form = *form, old.service = shell.service, old.footing = shell.footing, old.inside_mm = shell.inside_mm;
    old.safety_factor = shell.safety_factor, old.pitch_mm = take(), old.plate_mm = take(), old.hole_mm[0] = take();
    old.tension_mpa = take(), old.rivet_shear_mpa = take(), old.bearing_mpa = take(), old.present_mpa = take();
    if (sw_existing_rate(&old, rules, &r, NULL, &a, NULL) != SW_OK)
        exit(9);
    printf(" 0"), show(r.allowed_mpa), show(r.margin), show(r.test_mpa), show_allowed(&r.seam), show(a.efficiency);
    if (sw_existing_assumptions(&old, rules, notes, SW_MAX_ASSUMPTIONS, &n, NULL) != SW_OK)
        exit(10);
    printf(" %lu", (unsigned long)n);
    for (i = 0; i < n; i++) {
        const sw_assumption *x = &notes[i];
        printf(" %" PRIu32 " %" PRIu32 " %" PRIu32 " %" PRIu32, x->about, x->row, x->basis, x->entry);
        show(x->value);
    }
    if (sw_existing_findings(&old, rules, f, 2 * SW_MAX_FINDINGS, &n, NULL) != SW_OK)
        exit(11);
    show_findings(f, r.findings);
}

static void strengths(const sw_rules *rules)
{
    static const uint32_t metals[] = {SW_METAL_STEEL, SW_METAL_IRON};
    size_t i;
    for (i = 0; i < 2; i++) {
        sw_materials m;
        uint32_t status;
        sw_materials_init(&m);
        status = sw_rules_assume(rules, metals[i], metals[i], &m, NULL);
        if (status != SW_OK)
            printf(" %" PRIu32, status);
        else
            show(m.tension_mpa), show(m.rivet_shear_mpa), show(m.bearing_mpa);
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
    sw_analysis_init(&a), sw_error_init(&e);
    take_joint(&j, form);
    if (sw_joint_check(&j, steel, rules, &a, findings, SW_MAX_FINDINGS, &n, &e) != SW_OK) {
        show_error(&e);
        return;
    }
    printf(" 0");
    show_analysis(&a, findings, n);
    if (sw_modes_list(&j, steel, rules, modes, 200, &n, &e) != SW_OK)
        exit(3);
    printf(" %lu", (unsigned long)n);
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
    for (i = 0; i < SW_MAX_ROWS; i++)
        show(d.heads_at_strap_mm[i]), show(d.heads_of_rows_mm[i]);
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
        steel.shear_out_mpa = take(), steel.other_tension_mpa = take(), steel.other_bearing_mpa = take();
        steel.other_shear_out_mpa = take();
        printf("%s", what);
        if (strcmp(what, "check") == 0)
            check(&form, &steel, &rules);
        else if (strcmp(what, "size") == 0)
            size(&form, &steel, &rules);
        else if (strcmp(what, "pressure") == 0)
            pressure(&form, &rules);
        else if (strcmp(what, "girth") == 0)
            girth(&form, &steel, &rules);
        else if (strcmp(what, "rate") == 0)
            rating(&form, &rules);
        else if (strcmp(what, "strengths") == 0)
            strengths(&rules);
        else
            return 12;
        printf("\n");
    }
    return 0;
}
