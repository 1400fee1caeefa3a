/* The calculation alone: one rule book, a sizing and a check with all findings, no texts asked for. Its flash is what
   `size` says of this image; its stack and its instructions are told through semihosting. */
#include "board.h"
#include "measure.h"
#include <seamwright.h>

static sw_brief brief;
static sw_joint joint;
static sw_design design;
static sw_analysis found;
static sw_finding findings[SW_MAX_FINDINGS];
static size_t count;

int main(void)
{
    const sw_rules *rules = sw_book_numbers(sw_book_indian());
    uint32_t status;

    sw_brief_init(&brief), sw_joint_init(&joint), sw_design_init(&design), sw_analysis_init(&found);
    sw_materials_init(&brief.materials);
    /* Khurmi and Gupta, Example 9.7: a double-riveted butt joint with two straps, 12 mm plate; hole 21 mm there. */
    if (sw_form_double_strap(2, &brief.form, NULL) != SW_OK)
        return 1;
    brief.plate_mm = 12;
    brief.materials.tension_mpa = 90, brief.materials.rivet_shear_mpa = 56, brief.materials.bearing_mpa = 140;

    MEASURE("size", status = sw_joint_size(&brief, rules, &joint, &design, &found, findings, SW_MAX_FINDINGS, &count,
                                           NULL));
    if (status != SW_OK || joint.hole_mm[0] != 21)
        return 2;
    MEASURE("check", status = sw_joint_check(&joint, &brief.materials, rules, &found, findings, SW_MAX_FINDINGS,
                                             &count, NULL));
    return status == SW_OK && count > 5 ? 0 : 3;
}
