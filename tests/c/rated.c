/* From the header to a rated joint: a worn lap in an invented boiler, 144.6 psi by hand (2 rivets of 44 000 psi). */
#include <seamwright.h>
#include <stdio.h>
int main(void)
{
    sw_error error;
    sw_rules rules;
    sw_existing lap;
    sw_rating rated;
    char text[200];
    sw_error_init(&error), sw_existing_init(&lap), sw_rating_init(&rated);
    sw_rules_find("us-existing", &rules, NULL), sw_form_lap(2, &lap.form, NULL);
    lap.inside_mm = 48 * 25.4, lap.pitch_mm = 3.5 * 25.4, lap.plate_mm = 0.45 * 25.4, lap.hole_mm[0] = 0.9375 * 25.4;
    lap.plate_metal = SW_METAL_STEEL, lap.safety_factor = 5, lap.measured = SW_BY_MEASURE_PLATE;
    lap.present_mpa = sw_pressure_to_mpa(125, SW_PRESSURE_PSI), lap.wastage_mm_per_year = 0.005 * 25.4;
    if (sw_existing_rate(&lap, &rules, &rated, NULL, NULL, &error) != SW_OK)
        return sw_error_message(&error, text, sizeof text, NULL), puts(text), 1;
    printf("%.1f psi, %.1f years\n", sw_pressure_from_mpa(rated.allowed_mpa, SW_PRESSURE_PSI), rated.years);
    return 0;
}
