/* The sheet that someone signs on the small machine, of a checked joint, one rule book: what it costs, and its bytes,
   which the gate holds against those of the host. Twenty lines at a time, as there is no room for the whole text. */
#include "board.h"
#include "measure.h"
#include <seamwright.h>

static sw_joint joint;
static sw_materials steel;
static sw_sheet sheet;
static char lines[2000];

int main(void)
{
    uint32_t first, total = 1, status = SW_OK;
    size_t needed = 1;
    const int file = board_open("sheet.said", 1);

    sw_joint_init(&joint), sw_materials_init(&steel), sw_sheet_init(&sheet);
    if (file < 0 || sw_form_lap(2, &joint.form, NULL) != SW_OK)
        return 1;
    /* Khurmi and Gupta, Example 9.4, in an invented scenario, as in bindings/c/tests/sheets.rs. */
    joint.plate_mm = 13, joint.hole_mm[0] = 23, joint.pitch_mm = 71;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    sheet.joint = &joint, sheet.materials = &steel;
    sheet.object = "Feed tank of an invented mill", sheet.invented = 1;
    MEASURE("sheet", status = sw_sheet_lines(&sheet, sw_book_metric(), NULL, 1, 20, lines, sizeof lines, &needed, &total,
                                             NULL));
    for (first = 1; status == SW_OK && first <= total; first += 20) {
        status = sw_sheet_lines(&sheet, sw_book_metric(), NULL, first, 20, lines, sizeof lines, &needed, &total, NULL);
        if (status == SW_OK && board_write(file, lines, needed - 1) != 0)
            return 2;
    }
    return status == SW_OK ? 0 : 3;
}
