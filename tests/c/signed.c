/* The sheet that someone signs, of the joint above in an invented scenario: inputs, rules, modes, lines for names. */
#include <seamwright.h>
#include <stdio.h>

int main(void)
{
    static char text[20000];
    sw_error error;
    sw_rules rules;
    sw_joint joint;
    sw_materials steel;
    sw_sheet sheet;

    sw_error_init(&error), sw_joint_init(&joint), sw_materials_init(&steel), sw_sheet_init(&sheet);
    sw_rules_find("metric", &rules, NULL), sw_form_lap(2, &joint.form, NULL);
    joint.plate_mm = 13, joint.hole_mm[0] = 23, joint.pitch_mm = 71;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    sheet.joint = &joint, sheet.materials = &steel, sheet.footing = SW_FOOTING_PERMISSIBLE;
    sheet.object = "Feed tank of an invented mill", sheet.drawing_no = "T-7", sheet.invented = 1;
    sheet.prepared = "A. Smithson", sheet.date = "3 May 2031";
    if (sw_sheet_text(&sheet, &rules, NULL, text, sizeof text, NULL, &error) != SW_OK)
        sw_error_message(&error, text, sizeof text, NULL);
    return puts(text) < 0 || error.status != SW_OK;
}
