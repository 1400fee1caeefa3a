// The C++ wrapper: the same joint by value types.
#include <seamwright.hpp>

#include <cmath>
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
    sw_existing lap = sw::existing();
    lap.form = joint.form, lap.inside_mm = 48 * 25.4, lap.pitch_mm = 3.5 * 25.4, lap.plate_mm = 0.45 * 25.4;
    lap.hole_mm[0] = 0.9375 * 25.4, lap.plate_metal = SW_METAL_STEEL, lap.safety_factor = 5;
#ifndef SEAMWRIGHT_NO_EXCEPTIONS
    const sw::rated rated = sw::rate(lap, sw::rules("us-existing"));
    const std::string sheet = sw::working(lap, sw::rules("us-existing"), sw::style());
#else
    const sw::rated rated = *sw::rate(lap, *sw::rules("us-existing"));
    const std::string sheet = *sw::working(lap, *sw::rules("us-existing"), sw::style());
#endif
    // By hand 60 744 lb/(3.5 x 24 x 5), see tests/c/areas/rating.c.
    if (std::abs(sw_pressure_from_mpa(rated.rating.allowed_mpa, SW_PRESSURE_PSI) - 144.63) > 0.005 || sheet.size() < 1000)
        return 5;
    if (rated.assumptions.empty() || rated.findings.size() != rated.rating.findings + rated.analysis.findings)
        return 6;
    std::printf("efficiency %.1f %%, governing: %s\n", 100 * found.analysis.efficiency,
                sw::name(joint.form, found.analysis.governing).c_str());
    return found.findings.empty() || !sw::known(found.analysis.bearing_all_n);
}
