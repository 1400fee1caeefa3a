/* What the handheld shows of a sized joint, page by page. */
#ifndef PAGES_H
#define PAGES_H
#include <seamwright.h>

/* The forms and the books as the keypad numbers them, from 1: the books that size joints. */
enum { LAP = 1, ONE_STRAP, EQUAL_STRAPS, WIDE_AND_NARROW, FORMS = WIDE_AND_NARROW };
enum { BOOKS = 6 };

/* A joint as it was sized, and what its check found. */
struct sized {
    uint32_t form, book;
    sw_joint joint;
    sw_analysis found;
    sw_finding findings[SW_MAX_FINDINGS];
    size_t finding_count;
};

/* A form in at most 12 letters. */
const char *form_name(uint32_t form);
/* Writes page `page` (from 0) on the display: the figures, what fails first, each rule that is not met, what is not
   known or to be noted, how many rules are met. While a rule is not met, every page of figures says so. Returns the
   number of pages, which the unit may change: for a page that is not there nothing but a title is written. */
int show_page(const struct sized *joint, int inch, int page);
#endif
