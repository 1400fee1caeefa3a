/* A pocket calculator for riveted seams: asks for a joint, sizes it by a rule book, shows what the shop needs and every
   step of the working. Keys: digits, point, and
     E take it    C clear, or back    N next page    P page before    U mm or inch    R the last joint
     W working    O off
   A design aid only; it says so at power-on. */
#include "board.h"
#include "display.h"
#include "pages.h"
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
static struct sized joint;
static sw_design design;
static sw_error error;

static const sw_book *book(uint32_t n)
{
    static const sw_book *(*const at[])(void) = {sw_book_metric,         sw_book_indian,      sw_book_us_code,
                                                 sw_book_british_marine, sw_book_german_1908, sw_book_structural};
    return at[n - 1]();
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
        display_text(1, 0, form_name(now.form));
        display_text(2, 0, most[now.form]);
        break;
    case PLATE:
        display_row(0, "PLATE, thickness", inch ? "in" : "mm");
        break;
    case TENSION:
        display_row(0, "STRESS tension", inch ? "psi" : "MPa");
        display_text(1, 0, "of the plate");
        break;
    case SHEAR:
        display_row(0, "STRESS shear", inch ? "psi" : "MPa");
        display_text(1, 0, "of a rivet, single");
        break;
    case BEARING:
        display_row(0, "STRESS bearing", inch ? "psi" : "MPa");
        display_text(1, 0, "of the plate");
        display_text(2, 0, "0: is not known");
        break;
    default:
        display_text(0, 0, "RULE BOOK  1 metric");
        display_text(1, 0, "2 Indian   3 US code");
        display_text(2, 0, "4 British  5 German");
        display_text(3, 0, "6 structural");
    }
    /* The keys stand beside what is typed as long as there is room for both. */
    if (q != FORM && q != BOOK)
        display_text(3, 0, typed[0] && typed[1] && typed[2] ? "E take" : "E take   C clear");
    display_right(3, typed[0] ? typed : "_");
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
        display_title(head, page, pages);
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

/* The library's own words. */
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
        if (whole != x || whole < 1 || whole > FORMS) {
            explain("NO SUCH FORM", "There are the forms 1 to 4.");
            return 0;
        }
        now.form = whole;
        return 1;
    case ROWS:
        now.rows = whole;
        if (whole != x || make_form(&now) != SW_OK) {
            explain("ROWS", now.form == WIDE_AND_NARROW ? "With a wide and a narrow strap there are 2 to 5 rows on a side."
                            : now.form == EQUAL_STRAPS ? "With two equal straps there are 1 to 5 rows on a side."
                            : now.form == ONE_STRAP ? "With one strap there are 1 to 3 rows on a side."
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
        if (whole != x || whole < 1 || whole > BOOKS) {
            explain("NO SUCH BOOK", "There are the books 1 to 6.");
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

/* The working, four lines at a time. */
static void show_working(void)
{
    static char words[LINES * (COLUMNS + 1) + 1];
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
        pages = show_page(&joint, inch, page);
        /* In the other unit a text may have fewer pages. */
        if (page >= pages)
            page = pages - 1;
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
    sw_joint_init(&joint.joint), sw_design_init(&design), sw_analysis_init(&joint.found), sw_error_init(&error);
    joint.form = now.form, joint.book = now.book;
    return sw_working_size_joint(&now.brief, book(now.book), &joint.joint, &design, &joint.found, joint.findings,
                                 SW_MAX_FINDINGS, &joint.finding_count, &error) == SW_OK;
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
