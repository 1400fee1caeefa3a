#include "pages.h"
#include "display.h"

static char words[320], figure[24];

const char *form_name(uint32_t form)
{
    static const char *const names[] = {"", "lap", "one strap", "equal straps", "wide+narrow"};
    return names[form];
}

/* --- Figures ------------------------------------------------------------------------------------------------------ */

/* A length; a plate of 5/16 in is 7.94 mm, a hole of 21 mm is written as no more than that. */
static const char *length(double mm, int inch)
{
    char digits[16];
    if (inch)
        return join(figure, sizeof figure, number_text(digits, mm / 25.4, 3), " in", "");
    return join(figure, sizeof figure, short_text(digits, mm, 2), " mm", "");
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

/* A figure of a finding, in its unit. */
static const char *finding_figure(const sw_finding *f, double x, int inch)
{
    char digits[16], unit[8];
    sw_finding_unit(f->subject, unit, sizeof unit, NULL);
    if (unit[0] == 'm' && unit[1] == 'm' && !unit[2])
        return length(x, inch);
    return join(figure, sizeof figure, number_text(digits, x, 3), unit[0] ? " " : "", unit);
}

/* --- Words -------------------------------------------------------------------------------------------------------- */

/* A rule that is not met: what is asked for, and what there is. Any other finding: what there is to know. */
static const char *finding_text(const sw_finding *f, int inch)
{
    char digits[16], advice[160];
    sw_finding_what(f->subject, words, sizeof words, NULL);
    if (f->row)
        join(words, sizeof words, words, ", from row ", number_text(digits, f->row, 0));
    if (f->verdict != SW_VERDICT_OPEN) {
        sw_finding_advice(f->subject, advice, sizeof advice, NULL);
        join(words, sizeof words, words, ": ", advice);
    } else {
        join(words, sizeof words, words, f->sense == SW_AT_LEAST ? ": at least " : ": at most ",
             finding_figure(f, f->required, inch));
        join(words, sizeof words, words, ", is ", finding_figure(f, f->provided, inch));
    }
    return join(words, sizeof words, words, ".", "");
}

/* What fails first. */
static const char *mode_text(const struct sized *j)
{
    if (sw_mode_name(&j->joint.form, &j->found.governing, words, sizeof words, NULL) != SW_OK)
        join(words, sizeof words, "--", "", "");
    return words;
}

/* --- Pages -------------------------------------------------------------------------------------------------------- */

/* Three rows of figures on a page. */
enum { EACH = LINES - 1, FORM_PAGE = 0, RIVET_PAGE, EDGE_PAGE, ROW_PAGES };

/* What is told of the rows: the pitches of inner rows with more rivets than the outer one, and the distances. */
static int row_lines(const sw_form *form)
{
    int lines = (int)form->row_count - 1;
    for (uint32_t i = 1; i < form->row_count; i++)
        lines += form->rivets[i] != form->rivets[0];
    return lines;
}

static void show_rows(const sw_joint *joint, int inch, int first)
{
    const sw_form *form = &joint->form;
    char text[24], digits[16];
    int at = 0;
    for (int distances = 0; distances < 2; distances++)
        for (uint32_t i = 1; i < form->row_count; i++) {
            double x = joint->back_pitch_mm[i - 1];
            if (distances) {
                join(text, sizeof text, "row ", number_text(digits, i, 0), " to ");
                join(text, sizeof text, text, number_text(digits, i + 1, 0), "");
            } else if (form->rivets[i] != form->rivets[0]) {
                join(text, sizeof text, "pitch r. ", number_text(digits, i + 1, 0), "");
                x = joint->pitch_mm * form->rivets[0] / form->rivets[i];
            } else
                continue;
            if (at >= first && at < first + EACH)
                display_row(1 + at - first, text, length(x, inch));
            at++;
        }
}

static void show_figures(const struct sized *j, int inch, int page, int efficiency_page)
{
    static const char *const books[] = {"",        "metric",      "Indian 1950", "US code", "British marine",
                                        "German 1908", "structural"};
    const sw_joint *joint = &j->joint;
    char text[24], digits[16];
    if (page == efficiency_page) {
        display_row(1, "efficiency", percent(j->found.efficiency));
        display_row(2, "by the book", percent(j->found.book_efficiency));
        display_row(3, "credited", percent(j->found.credited_efficiency));
    } else if (page == FORM_PAGE) {
        const uint32_t rows = joint->form.row_count;
        join(text, sizeof text, number_text(digits, rows, 0), rows == 1 ? " row" : " rows", "");
        display_row(1, form_name(j->form), text);
        display_row(2, "plate", length(joint->plate_mm, inch));
        display_row(3, "book", books[j->book]);
    } else if (page == RIVET_PAGE) {
        display_row(1, "hole", length(joint->hole_mm[0], inch));
        display_row(2, "rivet", length(joint->rivet_mm[0], inch));
        display_row(3, "pitch", length(joint->pitch_mm, inch));
    } else if (page == EDGE_PAGE) {
        display_row(1, "margin", length(joint->margin_mm, inch));
        if (joint->form.kind == SW_LAP)
            display_row(2, "straps", "none");
        else
            display_row(2, j->form == WIDE_AND_NARROW ? "wide strap" : "strap", length(joint->wide_strap_mm, inch));
        if (joint->form.kind == SW_DOUBLE_STRAP)
            display_row(3, j->form == WIDE_AND_NARROW ? "narrow one" : "other strap",
                        length(joint->narrow_strap_mm, inch));
    } else
        show_rows(joint, inch, (page - ROW_PAGES) * EACH);
}

/* The page of a finding, as its title has it. */
static const char *finding_title(const sw_finding *f)
{
    return f->verdict == SW_VERDICT_OPEN ? "RULE NOT MET" : f->verdict == SW_VERDICT_UNKNOWN ? "NOT KNOWN" : "NOTE";
}

int show_page(const struct sized *j, int inch, int page)
{
    const int efficiency_page = ROW_PAGES + (row_lines(&j->joint.form) + EACH - 1) / EACH;
    const uint32_t open = j->found.open;
    const char *head = "RULES";
    char text[24], digits[16];
    uint32_t met = 0;
    int pages = efficiency_page + 1;

    /* Every text is written on the page that is wanted, if it reaches there, and its pages are counted. */
    display_clear();
    if (page < pages) {
        join(text, sizeof text, number_text(digits, open, 0), open == 1 ? " RULE" : " RULES", " NOT MET");
        head = open ? text : "JOINT";
        show_figures(j, inch, page, efficiency_page);
    }
    const int after = pages + display_page(1, mode_text(j), page - pages);
    if (page >= pages && page < after)
        head = "FAILS FIRST";
    pages = after;
    for (size_t i = 0; i < j->finding_count; i++) {
        const sw_finding *f = &j->findings[i];
        if (f->verdict == SW_VERDICT_MET) {
            met++;
            continue;
        }
        const int end = pages + display_page(1, finding_text(f, inch), page - pages);
        if (page >= pages && page < end)
            head = finding_title(f);
        pages = end;
    }
    if (page == pages) {
        display_row(1, "not met", count_text(open));
        display_row(2, "met", count_text(met));
        display_row(3, "not known, notes", count_text((uint32_t)j->finding_count - met - open));
    }
    pages++;
    display_title(head, page, pages);
    return pages;
}
