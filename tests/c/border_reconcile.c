/* The border of conventions and exercises: NULL, wrong sizes, short buffers and arrays, NaN, absurd numbers. */
#include <stddef.h>

#include "expect.h"

static sw_rules rules;
static sw_case c;
static sw_joint joint;
static sw_materials steel;
static sw_brief brief;
static sw_figure figures[2];
static sw_exercise exercise;
static sw_error error;

static void begin(void)
{
    sw_error_init(&error), sw_case_init(&c), sw_joint_init(&joint), sw_materials_init(&steel), sw_brief_init(&brief);
    EXPECT(sw_rules_find("metric", &rules, &error) == SW_OK);
    EXPECT(sw_form_double_strap(1, &joint.form, &error) == SW_OK && sw_form_lap(1, &exercise.form, &error) == SW_OK);
    joint.pitch_mm = 60, joint.plate_mm = 10, joint.hole_mm[0] = 19;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    brief.form = joint.form, brief.materials = steel, brief.plate_mm = 10;
    c.joint = &joint, c.materials = &steel;
    memset(figures, 0, sizeof figures);
    EXPECT(sw_quantity_find("Ps", &figures[0].name.quantity, &error) == SW_OK);
    EXPECT(sw_quantity_find("J", &figures[1].name.quantity, &error) == SW_OK);
    figures[0].printed = "34023", figures[0].scale = 1, figures[1].value = 0.475, figures[1].slack = 0.3;
    exercise.setting = SW_SETTING_BOILER, exercise.task = SW_TASK_CHECK, exercise.effect = SW_EFFECT_SHEARING;
    exercise.seed = 3;
}

static uint32_t text(int which, char *b, size_t n, size_t *s)
{
    switch (which) {
    case 0: return sw_convention_words(0, b, n, s);
    case 1: return sw_quantity_symbol(0, b, n, s);
    case 2: return sw_quantity_what(0, b, n, s);
    case 3: return sw_quantity_unit(0, b, n, s);
    case 4: return sw_case_reconcile_text(&c, &rules, figures, 2, b, n, s, NULL);
    case 5: return sw_exercises_text(&exercise, 1, &rules, SW_FOR_TEACHER, NULL, b, n, s, NULL);
    case 6: return sw_exercise_marks_text(&exercise, &rules, figures, 1, NULL, b, n, s, NULL);
    case 7: return sw_exercise_solution(&exercise, &rules, NULL, b, n, s, NULL);
    default: return SW_END;
    }
}

static uint32_t list(int which, void *a, size_t n, size_t *count, size_t *size)
{
    sw_reconciled r;
    sw_reconciled_init(&r);
    switch (which) {
    case 0: *size = sizeof(sw_explanation);
            return sw_case_reconcile(&c, &rules, figures, 2, &r, a, n, count, NULL);
    case 1: *size = sizeof(sw_asked); return sw_exercise_key(&exercise, &rules, a, n, count, NULL);
    case 2: *size = sizeof(sw_mark); return sw_exercise_mark(&exercise, &rules, figures, 1, a, n, count, NULL);
    default: return SW_END;
    }
}

static uint32_t reconciles(void)
{
    sw_reconciled r;
    sw_explanation e[2 * SW_MAX_EXPLANATIONS];
    size_t n = 999;
    uint32_t status;
    sw_reconciled_init(&r);
    r.tried = 0, e[0].miss = -7;
    status = sw_case_reconcile(&c, &rules, figures, 2, &r, e, 2 * SW_MAX_EXPLANATIONS, &n, &error);
    EXPECT((status == SW_OK) == (r.tried != 0) && (status == SW_OK) == (n != 999));
    EXPECT(status == SW_OK || (e[0].miss == -7 && error.status == status));
    return status;
}

static uint32_t draws(void)
{
    sw_materials m;
    sw_joint j;
    sw_brief b;
    uint32_t status;
    sw_joint_init(&j), sw_brief_init(&b);
    m.tension_mpa = -7, j.pitch_mm = -7, b.plate_mm = -7;
    status = sw_exercise_draw(&exercise, &rules, &m, &j, &b, &error);
    EXPECT((status == SW_OK) == (m.tension_mpa != -7) && (status == SW_OK) == (j.pitch_mm != -7));
    EXPECT((status == SW_OK && exercise.task == SW_TASK_SIZE) == (b.plate_mm != -7));
    return status;
}

static void bad_calls(void)
{
    sw_reconciled r;
    sw_materials m;
    sw_name name = figures[0].name;
    sw_figure many[30];
    double value = -7;
    uint32_t number = 99;
    size_t n = 0, i;
    sw_reconciled_init(&r);
    EXPECT(sw_case_reconcile(NULL, &rules, figures, 2, &r, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_case_reconcile(&c, NULL, figures, 2, &r, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_case_reconcile(&c, &rules, NULL, 2, &r, NULL, 0, NULL, &error) == SW_BAD_POINTER && error.index == 3);
    EXPECT(sw_case_reconcile(&c, &rules, figures, 2, NULL, NULL, 0, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_case_reconcile(&c, &rules, figures, 0, &r, NULL, 0, NULL, &error) == SW_MISSING);
    for (i = 0; i < 30; i++)
        many[i] = figures[0];
    EXPECT(sw_case_reconcile(&c, &rules, many, 25, &r, NULL, 0, NULL, &error) == SW_TOO_MANY && error.index == 3);
    EXPECT(sw_case_reconcile(&c, &rules, many, (size_t)-1, &r, NULL, 0, NULL, NULL) == SW_TOO_MANY);
    EXPECT(sw_case_reconcile(&c, &rules, many, 24, &r, NULL, 0, NULL, NULL) == SW_OK);
    EXPECT(sw_case_values(&c, &rules, &name, 1, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_case_values(&c, &rules, NULL, 1, &value, NULL) == SW_BAD_POINTER && value == -7);
    EXPECT(sw_case_values(&c, &rules, &name, 25, &value, NULL) == SW_TOO_MANY && value == -7);
    name.quantity = 0xffffffff;
    EXPECT(sw_case_values(&c, &rules, &name, 1, &value, NULL) == SW_BAD_CHOICE && value == -7);
    name = figures[0].name, name.row = 300;
    EXPECT(sw_case_values(&c, &rules, &name, 1, &value, NULL) == SW_BAD_CHOICE && value == -7);
    many[1].printed = "six", many[1].scale = 1;
    EXPECT(sw_case_reconcile(&c, &rules, many, 2, &r, NULL, 0, NULL, &error) == SW_UNREADABLE && error.index == 2);
    many[1].printed = "\xff";
    EXPECT(sw_case_reconcile(&c, &rules, many, 2, &r, NULL, 0, NULL, &error) == SW_BAD_TEXT);
    many[1].printed = "34", many[1].scale = NAN;
    EXPECT(sw_case_reconcile(&c, &rules, many, 2, &r, NULL, 0, NULL, &error) != SW_OK);
    /* A joint and a brief at once, or neither: nobody knows which is meant. */
    c.brief = &brief;
    EXPECT(reconciles() == SW_BAD_POINTER);
    c.joint = NULL;
    EXPECT(reconciles() == SW_OK);
    c.brief = NULL;
    EXPECT(reconciles() == SW_BAD_POINTER);
    c.joint = &joint, c.materials = NULL;
    EXPECT(reconciles() == SW_BAD_POINTER);
    c.materials = &steel;
    EXPECT(sw_quantity_find("no such", &number, NULL) == SW_UNKNOWN_KEY && number == 99);
    EXPECT(sw_quantity_find(NULL, &number, NULL) == SW_BAD_POINTER && sw_quantity_find("J", NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_quantity_what(0xffffffff, NULL, 0, &n) == SW_BAD_CHOICE);
    EXPECT(sw_convention_is_slip(sw_convention_count(), &number, NULL) == SW_BAD_CHOICE && number == 99);
    EXPECT(sw_convention_words(sw_convention_count(), NULL, 0, &n) == SW_BAD_CHOICE);
    EXPECT(sw_exercise_draw(NULL, &rules, &m, NULL, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_exercise_draw(&exercise, NULL, &m, NULL, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_exercise_draw(&exercise, &rules, NULL, NULL, NULL, NULL) == SW_BAD_POINTER);
    EXPECT(sw_exercise_draw(&exercise, &rules, &m, NULL, NULL, NULL) == SW_OK);
    EXPECT(sw_exercises_text(NULL, 2, &rules, SW_FOR_CLASS, NULL, NULL, 0, &n, NULL) == SW_BAD_POINTER);
    EXPECT(sw_exercises_text(NULL, 0, &rules, SW_FOR_CLASS, NULL, NULL, 0, &n, NULL) == SW_OK);
    EXPECT(sw_exercises_text(&exercise, 1, &rules, 2, NULL, NULL, 0, &n, NULL) == SW_BAD_CHOICE);
    EXPECT(sw_exercises_text(&exercise, 0x7fffffff, &rules, 0, NULL, NULL, 0, &n, NULL) == SW_TOO_MANY);
    EXPECT(sw_exercise_mark(&exercise, &rules, figures, 25, NULL, 0, &n, NULL) == SW_TOO_MANY);
    EXPECT(sw_exercise_mark(&exercise, &rules, NULL, 0, NULL, 0, &n, NULL) == SW_OK && n > 3); /* nothing answered */
    sw_case_init(NULL), sw_reconciled_init(NULL);
}

int main(void)
{
    begin();
    EXPECT(short_buffers(text) == 8);
    EXPECT(short_arrays(list) == 3);
    bad_calls();
    wrong_struct_sizes(&c, reconciles);
    wrong_struct_sizes(&joint, reconciles);
    EXPECT(careless_words(&figures[1], offsetof(sw_figure, value), sizeof figures[1], reconciles) > 4);
    EXPECT(careless_words(&figures[0], 0, sizeof(sw_name), reconciles) > 4);
    EXPECT(careless_words(&exercise, offsetof(sw_exercise, setting), offsetof(sw_exercise, seed), draws) > 15);
    EXPECT(careless_words(&exercise.form, 0, sizeof exercise.form, draws) > 20);
    exercise.task = SW_TASK_SIZE;
    EXPECT(draws() == SW_OK || error.status == SW_NO_PROBLEM);
    return done("the C border of conventions and exercises");
}
