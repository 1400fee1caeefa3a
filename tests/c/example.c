/* From the header to a checked joint: Khurmi and Gupta, Example 9.4, a double-riveted lap of 13 mm plate. */
#include <seamwright.h>
#include <stdio.h>

int main(void)
{
    sw_error error;
    sw_rules rules;
    sw_joint joint;
    sw_materials steel;
    sw_analysis found;
    char text[200];

    sw_error_init(&error), sw_joint_init(&joint), sw_materials_init(&steel), sw_analysis_init(&found);
    sw_form_lap(2, &joint.form, NULL);
    joint.plate_mm = 13, joint.hole_mm[0] = 23, joint.pitch_mm = 71;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    sw_rules_find("metric", &rules, NULL);
    if (sw_joint_check(&joint, &steel, &rules, &found, NULL, 0, NULL, &error) != SW_OK)
        return sw_error_message(&error, text, sizeof text, NULL), puts(text), 1;
    sw_mode_name(&joint.form, &found.governing, text, sizeof text, NULL);
    printf("efficiency %.1f %%, governing: %s\n", 100 * found.efficiency, text);
    return 0;
}
