// The C++ wrapper: the same joint by value types.
#include <seamwright.hpp>

#include <cstdio>

int main()
{
    sw_joint joint = sw::joint();
    sw_materials steel = sw::materials();
    joint.plate_mm = 13, joint.hole_mm[0] = 23, joint.pitch_mm = 71;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
#ifndef SEAMWRIGHT_NO_EXCEPTIONS
    joint.form = sw::lap(2);
    const sw_rules rules = sw::rules("metric");
    const sw::checked found = sw::check(joint, steel, rules);
    if (sw::modes(joint, steel, rules).size() < 4 || sw::working(joint, steel, rules, sw::style()).size() < 1000)
        return 1;
    try {
        joint.pitch_mm = 20;
        sw::check(joint, steel, rules);
        return 2;
    } catch (const sw::failure &e) {
        if (e.error().status != SW_HOLES_FILL_PITCH || std::string(e.what()).find("pitch") == std::string::npos)
            return 3;
    }
#else
    joint.form = *sw::lap(2);
    const sw_rules rules = *sw::rules("metric");
    const sw::checked found = *sw::check(joint, steel, rules);
    sw_error error;
    sw_error_init(&error);
    joint.pitch_mm = 20;
    if (sw::check(joint, steel, rules, &error) || error.status != SW_HOLES_FILL_PITCH)
        return 4;
#endif
    std::printf("efficiency %.1f %%, governing: %s\n", 100 * found.analysis.efficiency,
                sw::name(joint.form, found.analysis.governing).c_str());
    return found.findings.empty() || !sw::known(found.analysis.bearing_all_n);
}
