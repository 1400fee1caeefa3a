/* Searches, by hand and by trying all pitches. */
#include "../expect.h"

static sw_error error;
static sw_rules metric;
static const double plate[] = {6};
static const double hole[] = {19};

static void begin(sw_search *s, sw_form *form)
{
    sw_search_init(s);
    EXPECT(sw_form_lap(1, form, &error) == SW_OK && sw_rules_find("metric", &metric, &error) == SW_OK);
    s->materials.tension_mpa = 80, s->materials.rivet_shear_mpa = 60, s->materials.bearing_mpa = 120;
    s->plates_mm = plate, s->plate_count = 1, s->forms = form, s->form_count = 1, s->holes_mm = hole, s->hole_count = 1;
}

/* One rivet of 19 mm in 6 mm plate: shear pi/4 19^2 60 = 17 012 N, bearing 19 6 120 = 13 680 N. The plate holds
   (p - 19) 6 80: as much at 47.5 mm. At 47 mm 28/47 = 0.595745, at 48 mm 13 680/(48 6 80) = 0.593750: 47 mm is best. */
static void the_best_by_hand(void)
{
    sw_search s;
    sw_form form;
    sw_ranked best[SW_MAX_BEST];
    sw_tally tally;
    sw_brief brief;
    sw_joint joint;
    sw_analysis a;
    char words[100];
    size_t n = 0, i;
    uint64_t all;
    sw_tally_init(&tally), sw_brief_init(&brief), sw_joint_init(&joint), sw_analysis_init(&a);
    begin(&s, &form);
    s.any_finding = 1;
    EXPECT(sw_search_best(&s, &metric, best, SW_MAX_BEST, &n, &tally, &error) == SW_OK && n == 1);
    EXPECT(best[0].candidate.pitch_mm == 47 && best[0].candidate.plate_mm == 6 && best[0].candidate.hole_mm == 19);
    NEAR(best[0].candidate.efficiency, 28.0 / 47, 1e-12);
    NEAR(best[0].candidate.rivets_per_m, 1000.0 / 47, 1e-12);
    EXPECT(best[0].candidate.plate_row == 1 && best[0].behind == SW_MEASURE_NONE);
    EXPECT(best[0].lower == SW_BESIDE_WORSE && best[0].lower_why == SW_MEASURE_EFFICIENCY);
    EXPECT(best[0].higher == SW_BESIDE_WORSE && best[0].higher_why == SW_MEASURE_EFFICIENCY);
    EXPECT(best[0].candidate.kg_per_m != best[0].candidate.kg_per_m); /* was not asked for */
    EXPECT(sw_measure_what(best[0].lower_why, words, sizeof words, NULL) == SW_OK);
    EXPECT(strcmp(words, "lower efficiency") == 0);
    for (all = tally.fitting + tally.by_bound, i = 0; i < SW_MAX_CONSTRAINTS; i++)
        all += tally.excluded[i];
    EXPECT(all == tally.grid && tally.examined >= 1 && tally.grid > 1);
    /* The brief that sizes it once more gives the same joint. */
    EXPECT(sw_search_brief(&s, &best[0].candidate, &brief, &error) == SW_OK);
    EXPECT(sw_joint_size(&brief, &metric, &joint, NULL, &a, NULL, 0, NULL, &error) == SW_OK);
    EXPECT(joint.pitch_mm == 47 && a.credited_efficiency == best[0].candidate.efficiency);
}

/* p = 2 st J (t - 1)/D by the metric book: 2 80 0.595745 5/1000 = 0.47660 MPa is carried, and no more than that. */
static void a_pressure_to_be_carried(void)
{
    static const double stock[] = {6, 7, 8, 9, 10};
    sw_search s;
    sw_form form;
    sw_shell shell;
    sw_ranked best[SW_MAX_BEST];
    sw_tally tally;
    char words[100];
    size_t n = 77;
    begin(&s, &form), sw_shell_init(&shell), sw_tally_init(&tally);
    s.any_finding = 1, s.shell = &shell, shell.inside_mm = 1000, s.pressure_mpa = 0.4765;
    EXPECT(sw_search_best(&s, &metric, best, SW_MAX_BEST, &n, &tally, &error) == SW_OK && n == 1);
    NEAR(best[0].candidate.pressure_mpa, 2 * 80 * (28.0 / 47) * 5 / 1000, 1e-12);
    s.pressure_mpa = 0.4767;
    EXPECT(sw_search_best(&s, &metric, best, SW_MAX_BEST, &n, &tally, &error) == SW_OK && n == 0);
    EXPECT(tally.fitting == 0 && tally.most == 5 && tally.excluded[5] > 0);
    EXPECT(sw_constraint_what(tally.most, words, sizeof words, NULL) == SW_OK);
    EXPECT(strcmp(words, "the pressure required") == 0);
    /* The thinnest plate of the stock that carries it: 7 mm does, 28/47 or better times 2 80 6/1000 > 0.5. */
    s.objective = SW_OBJECTIVE_THICKNESS, s.plates_mm = stock, s.plate_count = 5;
    EXPECT(sw_search_best(&s, &metric, best, SW_MAX_BEST, &n, &tally, &error) == SW_OK && n == 1);
    EXPECT(best[0].candidate.plate_mm == 7 && best[0].candidate.pressure_mpa >= 0.4767);
}

/* Over all forms: no other joint that is sized with any pitch of the grid is better than what the search says. */
static void no_pitch_is_better(void)
{
    sw_search s;
    sw_form form;
    sw_ranked best[SW_MAX_BEST];
    size_t n = 0, i;
    double p;
    begin(&s, &form);
    s.forms = NULL, s.form_count = 0, s.holes_mm = NULL, s.hole_count = 0, s.rows_most = 3;
    EXPECT(sw_search_best(&s, &metric, best, SW_MAX_BEST, &n, NULL, &error) == SW_OK && n == SW_MAX_BEST);
    for (i = 0; i + 1 < n; i++)
        EXPECT(best[i].candidate.efficiency >= best[i + 1].candidate.efficiency);
    for (i = 0; i < n; i++) {
        EXPECT(best[i].candidate.form.row_count <= 3 && best[i].candidate.efficiency <= best[0].candidate.efficiency);
        for (p = 20; p <= 200; p++) {
            sw_brief brief;
            sw_joint joint;
            sw_analysis a;
            sw_brief_init(&brief), sw_joint_init(&joint), sw_analysis_init(&a);
            EXPECT(sw_search_brief(&s, &best[i].candidate, &brief, &error) == SW_OK);
            brief.pitch_mm = p;
            if (sw_joint_size(&brief, &metric, &joint, NULL, &a, NULL, 0, NULL, &error) == SW_OK && a.open == 0)
                EXPECT(a.credited_efficiency <= best[i].candidate.efficiency * (1 + 1e-9));
        }
    }
}

/* The front: lightest first, each next one heavier and better; a slot too few is said. */
static void a_front(void)
{
    static sw_front_slot slots[300];
    static sw_candidate front[300];
    sw_form forms[3];
    sw_search s;
    sw_form form;
    sw_order order;
    sw_tally tally;
    size_t n = 0, i, again = 0;
    uint32_t rows;
    begin(&s, &form), sw_order_init(&order), sw_tally_init(&tally);
    for (rows = 1; rows <= 3; rows++)
        EXPECT(sw_form_lap(rows, &forms[rows - 1], &error) == SW_OK);
    s.forms = forms, s.form_count = 3, s.holes_mm = NULL, s.hole_count = 0, order.run = SW_RUN_TIE;
    EXPECT(sw_search_front(&s, &metric, slots, front, 300, &n, &tally, &error) == SW_MISSING); /* no order, no mass */
    s.order = &order;
    EXPECT(sw_search_front(&s, &metric, slots, front, 300, &n, &tally, &error) == SW_OK && n > 3 && n < 300);
    for (i = 0; i + 1 < n; i++)
        EXPECT(front[i].kg_per_m < front[i + 1].kg_per_m && front[i].efficiency < front[i + 1].efficiency);
    front[0].efficiency = -7;
    EXPECT(sw_search_front(&s, &metric, slots, front, 1, &again, &tally, &error) == SW_NO_SPACE && again > 1);
    EXPECT(front[0].efficiency == -7);
    EXPECT(sw_search_front(&s, &metric, slots, front, n, &again, NULL, &error) == SW_OK && again == n);
}

static void named_forms(void)
{
    sw_form form;
    uint32_t i;
    EXPECT(sw_form_count() == 45);
    for (i = 0; i < sw_form_count(); i++)
        EXPECT(sw_form_named(i, &form, &error) == SW_OK && sw_form_validate(&form, &error) == SW_OK);
    EXPECT(sw_form_named(i, &form, &error) == SW_BAD_CHOICE);
}

int main(void)
{
    sw_error_init(&error);
    the_best_by_hand();
    a_pressure_to_be_carried();
    no_pitch_is_better();
    a_front();
    named_forms();
    return done("searches from C");
}
