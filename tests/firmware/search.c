/* The search over all named forms and the book's whole series of holes, one plate: what it costs. */
#include "board.h"
#include "measure.h"
#include <seamwright.h>

static sw_search task;
static sw_ranked best[SW_MAX_BEST];
static size_t count;

int main(void)
{
    const double plate = 12;
    uint32_t status;

    sw_search_init(&task);
    sw_materials_init(&task.materials);
    task.materials.tension_mpa = 90, task.materials.rivet_shear_mpa = 56, task.materials.bearing_mpa = 140;
    task.plates_mm = &plate, task.plate_count = 1;
    MEASURE("search", status = sw_search_best(&task, sw_book_numbers(sw_book_indian()), best, SW_MAX_BEST, &count, NULL,
                                              NULL));
    return status == SW_OK && count > 0 ? 0 : 1;
}
