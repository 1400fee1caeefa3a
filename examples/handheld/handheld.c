/* A pocket calculator for riveted seams: asks for a joint, sizes it by a rule book, shows what the shop needs and every
   step of the working. Keys: digits, point, and
     E take it    C clear, or back    N next page    P page before    U mm or inch    R the last joint
     W working    O off
   A design aid only; it says so at power-on. */
#include "board.h"
#include "display.h"
#include <seamwright.h>
#ifdef HANDHELD_MEASURED
#include "measure.h"
#endif

enum question { FORM, ROWS, PLATE, TENSION, SHEAR, BEARING, BOOK, QUESTIONS };

/* What was answered, in mm and MPa. */
struct task {
    sw_brief brief;
    uint32_t form, rows, book;
};

static struct task now, last;
static int known, inch;
static sw_joint joint;
static sw_design design;
static sw_analysis found;
static sw_finding findings[SW_MAX_FINDINGS];
static size_t finding_count;
static sw_error error;
static char words[512];

static const sw_book *book(uint32_t n)
{
    return n == 1 ? sw_book_metric() : n == 2 ? sw_book_indian() : sw_book_us_code();
}

static const char *const book_names[] = {"", "metric", "Indian 1950", "US code"};
static const char *const form_names[] = {"", "lap", "one strap", "equal straps", "wide+narrow"};

/* --- Figures ------------------------------------------------------------------------------------------------------ */

static char figure[24];

/* A length in the unit of the moment. */
static const char *mm(double x)
{
    char digits[16];
    if (inch)
        return join(figure, sizeof figure, number_text(digits, x / 25.4, 3), " in", "");
    return join(figure, sizeof figure, number_text(digits, x, 1), " mm", "");
}

static const char *percent(double x)
{
    char digits[16];
    return join(figure, sizeof figure, number_text(digits, 100 * x, 1), " %", "");
}

static const char *count_text(uint32_t n)
{
    return number_text(figure, n, 0);
}

static void row(int line, const char *what, const char *value)
{
    display_text(line, 0, what);
    display_right(line, value);
}

static void title(const char *what, int page, int pages)
{
    char digits[16], text[24];
    display_text(0, 0, what);
    join(text, sizeof text, number_text(digits, page + 1, 0), "/", "");
    join(text, sizeof text, text, number_text(digits, pages, 0), "");
    display_right(0, text);
}

/* --- Asking --------------------------------------------------------------------------------------------------------*/

static uint32_t make_form(struct task *t)
{
    static uint32_t (*const make[])(uint32_t, sw_form *, sw_error *) = {
        sw_form_lap, sw_form_single_strap, sw_form_double_strap, sw_form_unequal_straps};
    return make[t->form - 1](t->rows, &t->brief.form, &error);
}

static void ask(enum question q, const char *typed)
{
    static const char *const most[] = {"", "1 to 4 rows", "1 to 3 on each side", "1 to 5 on each side",
                                       "2 to 5 on each side"};
    display_clear();
    switch (q) {
    case FORM:
        display_text(0, 0, "FORM OF JOINT");
        display_text(1, 0, "1 lap    2 one strap");
        display_text(2, 0, "3 two equal straps");
        display_text(3, 0, "4 wide+narrow");
        break;
    case ROWS:
        display_text(0, 0, "ROWS OF RIVETS");
        display_text(1, 0, form_names[now.form]);
        display_text(2, 0, most[now.form]);
        break;
    case PLATE:
        row(0, "PLATE, thickness", inch ? "in" : "mm");
        break;
    case TENSION:
        row(0, "STRESS tension", inch ? "psi" : "MPa");
        display_text(1, 0, "of the plate");
        break;
    case SHEAR:
        row(0, "STRESS shear", inch ? "psi" : "MPa");
        display_text(1, 0, "of a rivet, single");
        break;
    case BEARING:
        row(0, "STRESS bearing", inch ? "psi" : "MPa");
        display_text(1, 0, "of the plate");
        display_text(2, 0, "0: is not known");
        break;
    default:
        display_text(0, 0, "RULE BOOK");
        display_text(1, 0, "1 metric");
        display_text(2, 0, "2 Indian 1950");
        display_text(3, 0, "3 US code");
    }
    if (q == FORM || q == BOOK)
        display_right(3, typed[0] ? typed : "_");
    else
        row(3, "E take   C clear", typed[0] ? typed : "_");
}

/* What was typed as a number; 0 where it is none. */
static int read_number(const char *typed, double *x)
{
    double value = 0, unit = 1;
    int point = 0, digits = 0;
    for (; *typed; typed++) {
        if (*typed == '.') {
            if (point++)
                return 0;
            continue;
        }
        value = 10 * value + (*typed - '0'), digits++;
        if (point)
            unit *= 10;
    }
    *x = value / unit;
    return digits > 0;
}

/* A message of several pages, until C. */
static void explain(const char *head, const char *text)
{
    int page = 0, key;
    for (;;) {
        display_clear();
        int pages = display_page(1, text, page);
        title(head, page, pages);
        display_show();
        key = board_get();
        if (key == 'N' && page + 1 < pages)
            page++;
        else if (key == 'P' && page > 0)
            page--;
        else if (key == 'C' || key == 'E')
            return;
    }
}

/* The library's own words, without the key of the field. */
static void explain_error(void)
{
    char text[256];
    const char *at = text;
    if (sw_error_message(&error, text, sizeof text, NULL) != SW_OK)
        at = "The library gave no reason.";
    explain("NOT POSSIBLE", at);
}

/* Takes an answer; 0 with an explanation where it will not do. */
static int answer(enum question q, const char *typed)
{
    double x;
    if (!read_number(typed, &x)) {
        explain("NO NUMBER", "Type digits and at most one point, then E.");
        return 0;
    }
    const uint32_t whole = x < 100 ? (uint32_t)x : 100;
    sw_error_init(&error);
    switch (q) {
    case FORM:
        if (whole != x || whole < 1 || whole > 4) {
            explain("NO SUCH FORM", "There are the forms 1 to 4.");
            return 0;
        }
        now.form = whole;
        return 1;
    case ROWS:
        now.rows = whole;
        if (whole != x || make_form(&now) != SW_OK) {
            explain("ROWS", now.form == 4 ? "With a wide and a narrow strap there are 2 to 5 rows on a side."
                            : now.form == 3 ? "With two equal straps there are 1 to 5 rows on a side."
                            : now.form == 2 ? "With one strap there are 1 to 3 rows on a side."
                                            : "A lap has 1 to 4 rows.");
            return 0;
        }
        return 1;
    case PLATE: {
        /* Any joint with this plate: the library says whether it is within its range. */
        sw_joint trial;
        sw_joint_init(&trial);
        sw_form_lap(1, &trial.form, NULL);
        trial.plate_mm = now.brief.plate_mm = inch ? 25.4 * x : x, trial.hole_mm[0] = 10, trial.pitch_mm = 100;
        if (sw_joint_validate(&trial, &error) == SW_OK)
            return 1;
        explain_error();
        return 0;
    }
    case BOOK:
        if (whole != x || whole < 1 || whole > 3) {
            explain("NO SUCH BOOK", "There are the books 1 to 3.");
            return 0;
        }
        now.book = whole;
        return 1;
    default: {
        /* 1 psi is 4.4482216152605 N on 645.16 square millimetres. */
        const double mpa = inch ? x * 4.4482216152605 / 645.16 : x;
        sw_materials trial;
        sw_materials_init(&trial);
        trial.tension_mpa = trial.rivet_shear_mpa = trial.bearing_mpa = 100;
        *(q == TENSION ? &trial.tension_mpa : q == SHEAR ? &trial.rivet_shear_mpa : &trial.bearing_mpa) = mpa;
        if (sw_materials_validate(&trial, &error) != SW_OK) {
            explain_error();
            return 0;
        }
        *(q == TENSION ? &now.brief.materials.tension_mpa
                       : q == SHEAR ? &now.brief.materials.rivet_shear_mpa : &now.brief.materials.bearing_mpa) = mpa;
        return 1;
    }
    }
}

/* --- Showing -------------------------------------------------------------------------------------------------------*/

enum { FIGURES = 4 };

static char rules[400];

/* The rules that are not met: what is asked for, and what there is. */
static void write_open(void)
{
    char digits[16], unit[8];
    rules[0] = 0;
    for (uint32_t i = 0; i < found.open; i++) {
        const sw_finding *f = &findings[i];
        sw_finding_what(f->subject, words, sizeof words, NULL);
        join(rules, sizeof rules, rules, words, "");
        sw_finding_unit(f->subject, unit, sizeof unit, NULL);
        const int long_one = unit[0] == 'm' && unit[1] == 'm';
        if (f->required == f->required) {
            join(rules, sizeof rules, rules, f->sense == SW_AT_LEAST ? ": at least " : ": at most ",
                 long_one ? mm(f->required) : number_text(digits, f->required, 3));
            join(rules, sizeof rules, rules, ", is ", long_one ? mm(f->provided) : number_text(digits, f->provided, 3));
        }
        join(rules, sizeof rules, rules, ".\n", "");
    }
}

/* The pages of a joint: figures, what fails first, the rules; returns how many there are. */
static int show_result(int page)
{
    const sw_form *form = &now.brief.form;
    int mode_pages, rule_pages, pages;
    char text[24], digits[16];

    display_clear();
    /* Before the name of the mode: both use the same buffer. */
    if (found.open)
        write_open();
    if (sw_mode_name(form, &found.governing, words, sizeof words, NULL) != SW_OK)
        join(words, sizeof words, "--", "", "");
    /* Counted on the display that is cleared again. */
    mode_pages = display_page(1, words, 0);
    display_clear();
    rule_pages = found.open ? display_page(1, rules, 0) : 1;
    display_clear();
    pages = FIGURES + mode_pages + rule_pages;
    if (page < FIGURES)
        title("JOINT", page, pages);
    else if (page < FIGURES + mode_pages)
        title("FAILS FIRST", page, pages);
    else
        title(found.open ? "RULES NOT MET" : "RULES", page, pages);
    switch (page) {
    case 0:
        row(1, form_names[now.form], join(text, sizeof text, number_text(digits, now.rows, 0),
                                          now.rows == 1 ? " row" : " rows", ""));
        row(2, "plate", mm(joint.plate_mm));
        row(3, "book", book_names[now.book]);
        break;
    case 1:
        row(1, "hole", mm(joint.hole_mm[0]));
        row(2, "rivet", mm(joint.rivet_mm[0]));
        row(3, "pitch", mm(joint.pitch_mm));
        break;
    case 2:
        row(1, "margin", mm(joint.margin_mm));
        if (now.rows > 1)
            row(2, "row 1 to 2", mm(joint.back_pitch_mm[0]));
        if (joint.narrow_strap_mm != 0) {
            if (joint.narrow_strap_mm == joint.wide_strap_mm)
                row(3, "straps", mm(joint.wide_strap_mm));
            else {
                number_text(digits, inch ? joint.wide_strap_mm / 25.4 : joint.wide_strap_mm, inch ? 3 : 1);
                row(3, "strap", join(text, sizeof text, digits, "/", mm(joint.narrow_strap_mm)));
            }
        } else if (joint.wide_strap_mm != 0)
            row(3, "strap", mm(joint.wide_strap_mm));
        else
            row(3, "straps", "none");
        break;
    case 3:
        row(1, "efficiency", percent(found.efficiency));
        row(2, "by the book", percent(found.book_efficiency));
        row(3, "credited", percent(found.credited_efficiency));
        break;
    default:
        if (page < FIGURES + mode_pages)
            display_page(1, words, page - FIGURES);
        else if (found.open)
            display_page(1, rules, page - FIGURES - mode_pages);
        else {
            uint32_t met = 0;
            for (size_t i = 0; i < finding_count; i++)
                met += findings[i].verdict == SW_VERDICT_MET;
            row(1, "not met", count_text(0));
            row(2, "met", count_text(met));
            row(3, "not known, notes", count_text((uint32_t)finding_count - met));
        }
    }
    return pages;
}

/* The working, four lines at a time. */
static void show_working(void)
{
    uint32_t first = 1, total = 0, key;
    sw_style style;
    for (;;) {
        sw_style_init(&style);
        style.dialect = SW_DIALECT_NARROW, style.units = inch ? SW_UNITS_INCH : SW_UNITS_METRIC;
        sw_error_init(&error);
        if (sw_working_size_lines(&now.brief, book(now.book), &style, first, LINES, words, sizeof words, NULL, &total,
                                  &error) != SW_OK) {
            explain_error();
            return;
        }
        display_clear();
        const char *at = words;
        for (int line = 0; line < LINES && *at; line++) {
            char text[COLUMNS + 8];
            int n = 0;
            while (*at && *at != '\n' && n < (int)sizeof text - 1)
                text[n++] = *at++;
            text[n] = 0;
            if (*at)
                at++;
            display_text(line, 0, text);
        }
        display_show();
        key = (uint32_t)board_get();
        if (key == 'N' && first + LINES <= total)
            first += LINES;
        else if (key == 'P' && first > LINES)
            first -= LINES;
        else if (key == 'U')
            inch = !inch, first = 1;
        else if (key == 'C' || key == 'E')
            return;
    }
}

/* Shows the joint until C; returns the key that ended it. */
static int review(void)
{
    int page = 0, pages, key;
    for (;;) {
        pages = show_result(page);
        display_show();
        key = board_get();
        if (key == 'N')
            page = page + 1 < pages ? page + 1 : 0;
        else if (key == 'P')
            page = page > 0 ? page - 1 : pages - 1;
        else if (key == 'U')
            inch = !inch;
        else if (key == 'W')
            show_working();
        else if (key == 'C' || key == 'O')
            return key;
    }
}

static int compute(void)
{
    sw_joint_init(&joint), sw_design_init(&design), sw_analysis_init(&found), sw_error_init(&error);
    return sw_joint_size(&now.brief, sw_book_numbers(book(now.book)), &joint, &design, &found, findings,
                         SW_MAX_FINDINGS, &finding_count, &error) == SW_OK;
}

/* One joint: all questions, then its pages. Returns the key that ended it. */
static int one_joint(void)
{
    char typed[9] = "";
    int n = 0, key;
    enum question q = FORM;
    sw_brief_init(&now.brief), sw_materials_init(&now.brief.materials);
    for (;;) {
        ask(q, typed);
        display_show();
        key = board_get();
        if (((key >= '0' && key <= '9') || key == '.') && n < 8) {
            typed[n++] = (char)key, typed[n] = 0;
        } else if (key == 'C') {
            /* Clears what was typed; once more, back to the question before. */
            if (n == 0 && q > FORM)
                q--;
            n = 0, typed[0] = 0;
        } else if (key == 'U') {
            inch = !inch, n = 0, typed[0] = 0;
        } else if (key == 'R') {
            if (!known)
                explain("NO JOINT YET", "Answer the questions first; R then shows the last joint.");
            else {
                now = last;
                compute();
                return review();
            }
        } else if (key == 'O') {
            return key;
        } else if (key == 'E') {
            const int taken = answer(q, typed);
            n = 0, typed[0] = 0;
            if (!taken)
                continue;
            if (q != BOOK) {
                q++;
                continue;
            }
            if (!compute()) {
                explain_error();
                continue;
            }
            last = now, known = 1;
            return review();
        }
    }
}

int main(void)
{
#ifdef HANDHELD_MEASURED
    board_paint_stack();
#endif
    display_clear();
    display_text(0, 0, "DESIGN AID ONLY.");
    display_text(1, 0, "Codes and inspector");
    display_text(2, 0, "govern. Old shells");
    display_text(3, 0, "need inspection.  E");
    display_show();
    while (board_get() != 'E')
        ;
    while (one_joint() != 'O')
        ;
    display_clear();
    display_text(1, 0, "off");
    display_show();
#ifdef HANDHELD_MEASURED
    tell("stack.", "handheld", (uint32_t)board_stack_used());
#endif
    return display_cut();
}
