/* libFuzzer over the C border: bytes become structs, whatever they say; nothing may crash or be half-written. */
#include <seamwright.h>
#include <stdlib.h>
#include <string.h>

static const uint8_t *at;
static size_t left;

static void bytes(void *to, size_t n)
{
    size_t take = n < left ? n : left;
    memset(to, 0, n);
    memcpy(to, at, take);
    at += take, left -= take;
}

static uint32_t number(uint32_t below)
{
    uint8_t b;
    bytes(&b, 1);
    return b == 255 ? 0xffffffff : b % below;
}

/* Mostly a likely figure, sometimes any bits at all. */
static double figure(double about)
{
    uint8_t b;
    double x;
    bytes(&b, 1);
    if (b == 255) {
        bytes(&x, sizeof x);
        return x;
    }
    return b < 90 ? 0 : about * b / 128.0;
}

static void form(sw_form *f)
{
    uint32_t i;
    f->kind = number(3), f->arrangement = number(2), f->row_count = number(9), f->reserved = 0;
    for (i = 0; i < SW_MAX_ROWS; i++)
        f->rivets[i] = number(4), f->planes[i] = number(3);
}

static void materials(sw_materials *m)
{
    m->tension_mpa = figure(80), m->rivet_shear_mpa = figure(60), m->bearing_mpa = figure(120);
    m->shear_out_mpa = figure(60), m->other_tension_mpa = figure(80), m->other_bearing_mpa = figure(120);
    m->other_shear_out_mpa = figure(60);
}

/* The size by its place: arguments are worked out in any order. */
static void text(uint32_t status, const size_t *needed)
{
    if (status == SW_OK && *needed == 0)
        abort();
}

static uint32_t choice(void)
{
    return number(4);
}

static void service(sw_service *s)
{
    s->existing = number(2), s->second_hand = choice(), s->past_age_limit = choice(), s->tested = number(2);
    s->tubular = choice(), s->lap_in_fire = choice(), s->weight_on_seam = choice(), s->riveting = choice();
    s->holes = number(5), s->stripped = number(2), s->lap_length_mm = figure(3000);
}

/* Shells and ratings. */
static void shells(const sw_joint *j, const sw_materials *m, const sw_rules *r, const sw_style *style)
{
    sw_shell shell;
    sw_existing found;
    sw_rating rating;
    sw_allowed allowed;
    sw_factor factor;
    sw_seam seam;
    sw_error e;
    sw_assumption notes[SW_MAX_ASSUMPTIONS];
    char words[40];
    size_t n = 0, i;
    uint32_t status;
    sw_shell_init(&shell), sw_existing_init(&found), sw_rating_init(&rating), sw_error_init(&e);
    shell.footing = number(2), shell.corrosion_stated = number(2), shell.inside_mm = figure(1500);
    shell.corrosion_mm = figure(1), shell.safety_factor = figure(5), service(&shell.service);
    found.form = j->form, found.measured = number(255) * 257, found.plate_metal = number(3), found.rivet_metal = number(3);
    found.footing = number(2), found.inside_mm = shell.inside_mm, found.pitch_mm = j->pitch_mm;
    found.plate_mm = j->plate_mm, found.other_plate_mm = figure(13), found.wide_strap_mm = j->wide_strap_mm;
    found.narrow_strap_mm = j->narrow_strap_mm, found.shell_plate_mm = figure(12), found.margin_mm = j->margin_mm;
    found.plate_when_new_mm = figure(14), found.present_mpa = figure(1), found.wastage_mm_per_year = figure(0.2);
    found.earlier_plate_mm = figure(14), found.earlier_years = figure(10), found.safety_factor = shell.safety_factor;
    found.tension_mpa = m->tension_mpa, found.rivet_shear_mpa = m->rivet_shear_mpa, found.service = shell.service;
    for (i = 0; i < SW_MAX_ROWS; i++)
        found.hole_mm[i] = j->hole_mm[i], found.back_pitch_mm[i] = j->back_pitch_mm[i];
    rating.allowed_mpa = -7;
    status = sw_existing_rate(&found, r, &rating, NULL, NULL, &e);
    if ((status == SW_OK) == (rating.allowed_mpa == -7) || (status == SW_OK && !(rating.allowed_mpa >= 0)))
        abort();
    if (status == SW_OK && sw_existing_assumptions(&found, r, notes, SW_MAX_ASSUMPTIONS, &n, &e) != SW_OK)
        abort(); /* there is always room */
    n = 0, text(sw_working_rate(&found, r, style, words, sizeof words, &n, &e), &n);
    sw_shell_allow(j, m, r, &shell, &allowed, notes, number(48) % 48, &n, &e);
    sw_shell_factor(&shell, &j->form, r, &factor, NULL, 0, &n, &e);
    seam.form = j->form, seam.plate_mm = j->plate_mm, seam.tension_mpa = m->tension_mpa, seam.efficiency = figure(0.7);
    sw_seam_pressure(&seam, r, &shell, &allowed, &e), sw_seam_girth_pressure(&seam, r, &shell, &allowed, &e);
}

/* Searches and vessels over a few plates. */
static void designs(const sw_brief *b, const sw_rules *r)
{
    sw_search s;
    sw_vessel_brief v;
    sw_vessel made;
    sw_shell shell;
    sw_order order;
    sw_ranked best[SW_MAX_BEST];
    sw_candidate front[6];
    sw_front_slot slots[6];
    sw_tally tally;
    sw_error e;
    sw_joint seam;
    sw_girth girth;
    double plates[3], holes[2];
    char words[30];
    size_t n = 99, i;
    uint32_t status;
    sw_search_init(&s), sw_vessel_brief_init(&v), sw_vessel_init(&made), sw_shell_init(&shell), sw_order_init(&order);
    sw_tally_init(&tally), sw_error_init(&e), sw_joint_init(&seam), sw_girth_init(&girth);
    for (i = 0; i < 3; i++)
        plates[i] = figure(12);
    holes[0] = figure(19), holes[1] = figure(23);
    shell.footing = number(2), shell.inside_mm = figure(1500), shell.safety_factor = figure(5), service(&shell.service);
    order.run = SW_RUN_TIE, order.head = number(4);
    s.objective = number(4), s.rows_most = number(9), s.any_finding = number(2), s.materials = b->materials;
    s.plates_mm = plates, s.plate_count = number(3) % 4, s.forms = &b->form, s.form_count = 1;
    s.holes_mm = holes, s.hole_count = number(3) % 3, s.shell = number(2) ? &shell : NULL;
    s.order = number(2) ? &order : NULL, s.rivet_least_mm = figure(10), s.rivet_most_mm = figure(40);
    s.pitch_most_mm = 40 + number(100) % 100, s.efficiency_least = figure(0.5), s.pressure_mpa = figure(0.5);
    status = sw_search_best(&s, r, best, SW_MAX_BEST, &n, &tally, &e);
    if ((status == SW_OK) == (n == 99) || (status == SW_OK && n > 0 && !(best[0].candidate.efficiency > 0)))
        abort();
    sw_search_front(&s, r, slots, front, number(6) % 7, &n, NULL, &e);
    v.form = b->form, v.girth_wanted = number(2), v.girth_place = number(3), v.girth_form = b->form;
    v.materials = b->materials, v.shell = &shell, v.plates_mm = plates, v.plate_count = number(3) % 4;
    v.pressure_mpa = figure(1), v.hole_mm = figure(21), v.rivet_mm = figure(20), v.stock_step_mm = figure(4);
    v.stock_from_mm = figure(8), v.stock_to_mm = figure(20);
    status = sw_vessel_design(&v, r, &made, &seam, NULL, &girth, NULL, &e);
    if (status == SW_OK && made.fits && !(made.allowed.pressure_mpa >= v.pressure_mpa * (1 - 1e-6)))
        abort(); /* what fits carries the pressure */
    n = 0, text(sw_working_vessel(&v, r, NULL, words, sizeof words, &n, &e), &n);
    sw_girth_check(&seam, &b->materials, r, &shell, &seam, number(3), figure(1), &girth, NULL, 0, &n, &e);
}

/* Groups of rivets, some of them without holes. */
static void groups(const sw_rules *r, const sw_style *style, const sw_title *title)
{
    sw_group g;
    sw_group_found found;
    sw_group_rivet rivets[4];
    sw_rivet_load loads[4];
    sw_error e;
    char words[30];
    size_t n = 0, i;
    int bare = number(2);
    sw_group_init(&g), sw_group_found_init(&found), sw_error_init(&e);
    for (i = 0; i < 4; i++) {
        rivets[i].x_mm = figure(60. * (double)(i % 2)), rivets[i].y_mm = figure(60. * (double)(i / 2));
        rivets[i].hole_mm = bare ? 0 : figure(20), rivets[i].rivet_mm = bare ? 0 : figure(19);
    }
    g.rivets = rivets, g.rivet_count = number(5) % 5, g.shear_planes = number(3), g.row_rivets = number(9) ? 0 : 2;
    g.load_x_n = figure(1000), g.load_y_n = figure(-9000), g.load_at_x_mm = figure(300), g.load_at_y_mm = figure(20);
    g.couple_nmm = figure(1e5), g.plate_mm = figure(9), g.shear_mpa = figure(60), g.bearing_mpa = figure(120);
    if ((bare ? sw_group_size : sw_group_check)(&g, r, &found, NULL, 0, NULL, &e) == SW_OK) {
        if (!(found.used >= 0) || found.critical < 1 || found.critical > g.rivet_count)
            abort();
        if (sw_group_rivets(&g, r, loads, 4, &n, &e) != SW_OK || n != g.rivet_count)
            abort();
    }
    n = 0, text(sw_working_group(&g, r, style, words, sizeof words, &n, &e), &n);
    n = 0, text(sw_drawing_group(&g, r, title, NULL, 0, &n, &e), &n);
}

/* Conventions, exercises, sensitivities, comparisons. */
static void studies(const sw_joint *j, const sw_brief *b, const sw_materials *m, const sw_rules *r)
{
    sw_case c;
    sw_figure f[3];
    sw_reconciled answer;
    sw_exercise x;
    sw_asked key[SW_MAX_ASKED];
    sw_mark marks[SW_MAX_ASKED];
    sw_slope slopes[SW_MAX_INPUTS];
    sw_tolerances by;
    sw_worst worst;
    sw_column columns[3];
    sw_compared figures[3];
    sw_letter letters[SW_MAX_LETTERS];
    sw_error e;
    char words[3][12], part[40];
    size_t n = 0, i;
    sw_case_init(&c), sw_reconciled_init(&answer), sw_worst_init(&worst), sw_error_init(&e);
    if (number(2))
        c.joint = j, c.materials = m;
    else
        c.brief = b;
    for (i = 0; i < 3; i++) {
        bytes(words[i], 11), words[i][11] = 0;
        f[i].name.quantity = number(200), f[i].name.row = number(3), f[i].printed = number(2) ? words[i] : NULL;
        f[i].scale = figure(1), f[i].value = figure(30000), f[i].slack = figure(1);
    }
    sw_case_reconcile(&c, r, f, number(3) % 4, &answer, NULL, 0, &n, &e);
    x.form = b->form, x.setting = number(2), x.task = number(2), x.effect = number(6), x.reserved = 0;
    x.seed = number(255);
    if (number(8) == 0 && sw_exercise_key(&x, r, key, SW_MAX_ASKED, &n, &e) == SW_OK) {
        if (n == 0 || sw_exercise_mark(&x, r, f, number(3) % 4, marks, SW_MAX_ASKED, &n, &e) == SW_NO_SPACE)
            abort();
        n = 0, text(sw_exercises_text(&x, 1, r, number(2), NULL, part, sizeof part, &n, &e), &n);
    }
    if (sw_joint_slopes(j, m, r, slopes, SW_MAX_INPUTS, &n, &e) == SW_NO_SPACE)
        abort();
    by.plate_mm = figure(0.5), by.straps_mm = figure(0.5), by.hole_mm = figure(0.5), by.pitch_mm = figure(1);
    if (sw_joint_worst(j, m, r, &by, number(3), &worst, &e) == SW_OK && !(worst.worst <= worst.stated * (1 + 1e-9)))
        abort(); /* the worst is no better than what was stated */
    for (i = 0; i < 3; i++)
        columns[i].brief = b, columns[i].rules = r, columns[i].shell = NULL;
    sw_columns_compare(columns, number(3) % 4, number(7), figures, 3, &n, &e);
    n = 0, text(sw_columns_text(columns, 2, number(7), NULL, part, sizeof part, &n, &e), &n);
    if (sw_letters_list(j, m, r, letters, SW_MAX_LETTERS, &n, &e) == SW_OK && n > 0)
        sw_letter_name(&j->form, &letters[n - 1], part, sizeof part, &n);
    sw_number_fixed(figure(1), number(12), number(3), part, number(40) % 40, &n);
    sw_number_parse(words[0], &by.plate_mm, NULL);
}

/* The sheet that someone signs, of any task, with particulars of any kind; whatever it prints can be hashed. */
static void sheets(const sw_joint *j, const sw_brief *b, const sw_materials *m, const sw_rules *r, const sw_style *style)
{
    static char all[200000];
    sw_sheet s;
    sw_existing found;
    sw_known known[3];
    sw_materials ultimate = *m;
    sw_error e;
    char words[4][18];
    uint64_t hash = 7;
    size_t n = 0, i;
    uint32_t status, tasks = number(10);
    sw_sheet_init(&s), sw_existing_init(&found), sw_error_init(&e);
    found.form = j->form, found.measured = number(255) * 257, found.plate_metal = number(3), found.inside_mm = figure(1500);
    found.pitch_mm = j->pitch_mm, found.plate_mm = j->plate_mm, found.wide_strap_mm = j->wide_strap_mm;
    found.hole_mm[0] = j->hole_mm[0], found.safety_factor = figure(5), found.tension_mpa = m->tension_mpa;
    found.rivet_shear_mpa = m->rivet_shear_mpa, found.bearing_mpa = m->bearing_mpa, found.present_mpa = figure(0.5);
    /* Mostly one task; rarely none, or several. */
    if (tasks == 0 || tasks == 3 || tasks > 5)
        s.joint = j, s.materials = m;
    if (tasks == 1 || tasks == 3)
        s.brief = b;
    if (tasks == 2 || tasks == 3)
        s.existing = &found;
    for (i = 0; i < 4; i++)
        bytes(words[i], 17), words[i][17] = 0;
    for (i = 0; i < 3; i++) {
        known[i].field = number(80), known[i].row = number(10), known[i].basis = number(5), known[i].reserved = 0;
        known[i].source = number(2) ? words[i] : NULL;
    }
    s.lines_per_page = number(3) ? 0 : number(200);
    s.invented = number(2), s.footing = number(3), s.title = number(2) ? words[3] : NULL;
    s.object = number(3) ? NULL : words[0], s.prepared = number(2) ? words[1] : NULL, s.date = words[2];
    s.known = known, s.known_count = number(4) % 4;
    if (number(4) == 0) {
        ultimate.tension_mpa *= 4, ultimate.rivet_shear_mpa *= 4, ultimate.bearing_mpa *= 4, ultimate.shear_out_mpa *= 4;
        ultimate.other_tension_mpa *= 4, ultimate.other_bearing_mpa *= 4, ultimate.other_shear_out_mpa *= 4;
        s.ultimate = &ultimate, s.safety_factor = number(3) ? 4 : figure(4);
    }
    all[0] = 7;
    status = sw_sheet_text(&s, r, style, all, number(4) ? sizeof all : number(100), &n, &e);
    if (status == SW_OK ? n == 0 || all[n - 1] != 0 || n != strlen(all) + 1 : all[0] != 7 || e.status != status)
        abort(); /* half-written */
    if (sw_sheet_lines(&s, sw_book_metric(), style, number(200), number(9), all, sizeof all, &n, NULL, &e) == SW_NO_SPACE)
        abort(); /* there is always room */
    if (sw_sheet_hash(&s, r, &hash, &e) != SW_OK ? status == SW_OK || hash != 7 : hash == 7)
        abort();
    n = 0, text(sw_sheet_inputs(&s, r, NULL, 0, &n, &e), &n);
}

static int same(double a, double b)
{
    return memcmp(&a, &b, sizeof a) == 0;
}

/* A sweep over columns of any kind: each of its rows is a single check. */
static void sweeps(const sw_form *form, const sw_rules *r)
{
    enum { MOST = 20 };
    static const double about[] = {70, 13, 20, 80, 60, 20, 10, 10, 80, 120, 120, 60, 35, 50};
    double in[14][MOST], efficiency[MOST], book[MOST], credited[MOST], strength;
    uint16_t mode[MOST];
    uint8_t status[MOST];
    sw_sweep s;
    sw_sweep_results to;
    sw_joint j;
    sw_materials m;
    sw_analysis a;
    sw_mode named;
    sw_error e;
    sw_sweep_column *columns[] = {&s.pitch_mm, &s.plate_mm, &s.hole_mm, &s.tension_mpa, &s.rivet_shear_mpa,
                                  &s.rivet_mm, &s.other_mm, &s.narrow_mm, &s.other_tension_mpa, &s.bearing_mpa,
                                  &s.other_bearing_mpa, &s.shear_out_mpa, &s.margin_mm, &s.back_pitch_mm};
    size_t count, from, i, k;
    uint32_t said, kind;
    sw_sweep_init(&s), sw_sweep_results_init(&to), sw_joint_init(&j), sw_analysis_init(&a), sw_error_init(&e);
    s.form = *form, s.rows = number(MOST + 1), from = number(4), count = number(MOST + 1) % (MOST + 1);
    for (i = 0; i < 14; i++) {
        kind = number(8);
        if (kind < 5) {
            columns[i]->same = figure(about[i]); /* 0: not given */
            continue;
        }
        for (k = 0; k < MOST; k++)
            in[i][k] = k < 5 ? figure(about[i]) : in[i][k - 5] * 1.1;
        columns[i]->values = in[i], columns[i]->count = s.rows < MOST ? s.rows : MOST;
        if (kind > 5)
            columns[i]->count = number(6) % 6, columns[i]->each = number(4);
    }
    to.efficiency = efficiency, to.book_efficiency = book, to.credited_efficiency = credited;
    to.mode = mode, to.status = status, efficiency[0] = -7, status[0] = 77;
    said = sw_sweep_run(&s, r, from, count, &to, &e);
    if (said != SW_OK && (e.status != said || efficiency[0] != -7 || status[0] != 77))
        abort(); /* half-written */
    for (i = 0; said == SW_OK && i < count; i++) {
        if (sw_sweep_joint(&s, r, from + i, &j, &m, &e) != status[i])
            abort();
        if (status[i] != SW_OK) {
            if (efficiency[i] == efficiency[i] || mode[i] != SW_NO_MODE)
                abort();
            continue;
        }
        if (sw_joint_check(&j, &m, r, &a, NULL, 0, NULL, &e) != SW_OK || !same(a.efficiency, efficiency[i]) ||
            !same(a.book_efficiency, book[i]) || !same(a.credited_efficiency, credited[i]))
            abort();
        if (sw_sweep_strengths(&s, r, &mode[i], 1, from + i, 1, &strength, &e) != SW_OK ||
            !same(strength, a.governing.strength_n))
            abort();
        if (sw_sweep_mode_count(&s.form, s.other_mm.values || s.other_mm.same != 0, &kind, &e) != SW_OK || mode[i] >= kind)
            abort();
        if (sw_sweep_mode(&s.form, s.other_mm.values || s.other_mm.same != 0, mode[i], &named, &e) != SW_OK ||
            named.plate_row != a.governing.plate_row || named.other_row != a.governing.other_row)
            abort();
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    sw_joint j, sized;
    sw_brief b;
    sw_materials m;
    sw_rules r;
    sw_analysis a;
    sw_design d;
    sw_error e;
    sw_order o;
    sw_shop s;
    sw_style style;
    sw_title title;
    sw_mode modes[8];
    sw_finding findings[SW_MAX_FINDINGS];
    char name[64], id[40], words[17];
    size_t n = 0, i;
    uint32_t status;
    at = data, left = size;
    sw_joint_init(&j), sw_joint_init(&sized), sw_brief_init(&b), sw_analysis_init(&a), sw_design_init(&d);
    sw_error_init(&e), sw_order_init(&o), sw_shop_init(&s), sw_style_init(&style), sw_title_init(&title);
    if (sw_book_id(1 + number(7) % 7, id, sizeof id, NULL) != SW_OK || sw_rules_find(id, &r, NULL) != SW_OK)
        sw_rules_init(&r);
    for (i = number(4) % 4; i > 0; i--)
        r.value[number(SW_RULE_ENTRIES) % SW_RULE_ENTRIES] = figure(2);
    form(&j.form), materials(&m);
    j.pitch_mm = figure(70), j.plate_mm = figure(13), j.other_plate_mm = figure(13), j.wide_strap_mm = figure(10);
    j.narrow_strap_mm = figure(10), j.margin_mm = figure(35);
    for (i = 0; i < SW_MAX_ROWS; i++)
        j.hole_mm[i] = figure(23), j.rivet_mm[i] = figure(22), j.back_pitch_mm[i] = figure(50);
    b.form = j.form, b.materials = m, b.plate_mm = j.plate_mm, b.other_plate_mm = figure(13), b.hole_mm = figure(20);
    b.rivet_mm = figure(20), b.pitch_mm = figure(70), b.wide_strap_mm = figure(10), b.narrow_strap_mm = figure(10);
    b.margin_mm = figure(35), b.back_pitch_mm[0] = figure(50);
    o.run = number(3), o.measured = number(3), o.face = number(2), o.head = number(5), o.set_head = number(5);
    o.length_rule = number(7), o.stock_rounding = number(3), o.length_mm = figure(3000), o.first_end_mm = figure(40);
    o.last_end_mm = figure(40), o.diameter_mm = figure(1500), o.stock_step_mm = figure(2), o.density_kg_m3 = figure(7850);
    style.units = number(2), style.mark = number(2), style.dialect = number(5), style.extra_digits = (int32_t)number(12);
    style.forces = number(2), style.ratio_decimals = number(12);
    if (number(3))
        style.ratio_decimals = SW_DECIMALS_USUAL;
    bytes(words, 16), words[16] = 0, title.object = words;
    sw_form_name(&j.form, name, number(64) % 64, &n);
    a.efficiency = -7;
    status = sw_joint_check(&j, &m, &r, &a, findings, number(65) % 65, &n, &e);
    if (status != SW_OK && a.efficiency != -7)
        abort(); /* half-written */
    if (status != SW_OK && e.status != status)
        abort();
    if (sw_error_message(&e, NULL, 0, &n) != SW_OK || n < 2)
        abort();
    sw_error_clause(&e, &r, name, sizeof name, &n);
    sw_modes_list(&j, &m, &r, modes, 8, &n, NULL);
    status = sw_joint_size(&b, &r, &sized, &d, &a, NULL, 0, &n, &e);
    if (status == SW_OK && sw_joint_validate(&sized, NULL) != SW_OK)
        abort(); /* what was sized is a joint */
    if (status == SW_OK)
        j = sized;
    n = 0, text(sw_working_check(&j, &m, &r, &style, NULL, 0, &n, &e), &n);
    n = 0, text(sw_working_size(&b, &r, &style, name, sizeof name, &n, &e), &n);
    n = 0, text(sw_drawing_svg(&j, &title, NULL, 0, &n, &e), &n);
    n = 0, text(sw_drawing_dxf(&j, &title, NULL, 0, &n, &e), &n);
    if (sw_shop_fit(&j, &m, &r, &o, &s, &sized, &e) == SW_OK && s.strips < 2000) {
        n = 0, text(sw_shop_text(&j, &m, &r, &o, &style, NULL, 0, &n, &e), &n);
        n = 0, text(sw_drawing_dxf_seam(&j, &m, &r, &o, &title, NULL, 0, &n, &e), &n);
    }
    sw_length_parse(words, &a.efficiency, NULL);
    switch (number(6) % 6) {
    case 0: shells(&j, &m, &r, &style); break;
    case 1: designs(&b, &r); break;
    case 2: sweeps(&b.form, &r); break;
    case 3: sheets(&j, &b, &m, &r, &style); break;
    case 4: groups(&r, &style, &title); break;
    default: studies(&j, &b, &m, &r);
    }
    return 0;
}
