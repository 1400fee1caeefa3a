/* The same joint with other pitches, a column of any length at once. */
#include <seamwright.h>
#include <stdio.h>

int main(void)
{
    const double pitches[] = {60, 71, 80, 20};
    double efficiency[4];
    uint8_t status[4];
    char why[100];
    sw_rules rules;
    sw_sweep sweep;
    sw_sweep_results to;
    size_t i;

    sw_sweep_init(&sweep), sw_sweep_results_init(&to);
    sw_rules_find("metric", &rules, NULL), sw_form_lap(2, &sweep.form, NULL);
    sweep.rows = 4, sweep.pitch_mm.values = pitches, sweep.pitch_mm.count = 4;
    sweep.plate_mm.same = 13, sweep.hole_mm.same = 23;
    sweep.tension_mpa.same = 80, sweep.rivet_shear_mpa.same = 60, sweep.bearing_mpa.same = 120;
    to.efficiency = efficiency, to.status = status;
    if (sw_sweep_run(&sweep, &rules, 0, sweep.rows, &to, NULL) != SW_OK)
        return 1;
    for (i = 0; i < 4; i++)
        if (status[i] == SW_OK)
            printf("pitch %.0f mm: %.1f %%\n", pitches[i], 100 * efficiency[i]);
        else
            sw_status_text(status[i], why, sizeof why, NULL), printf("pitch %.0f mm: %s\n", pitches[i], why);
    return 0;
}
