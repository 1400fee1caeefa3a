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
    const auto got = [](auto value) { return value; };
#else
    const auto got = [](auto value) { return *value; };
#endif
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
    const sw_rules us = got(sw::rules("us-existing"));
    const sw::rated rated = got(sw::rate(lap, us));
    const std::string sheet = got(sw::working(lap, us, sw::style()));
    // By hand 60 744 lb/(3.5 x 24 x 5), see tests/c/areas/rating.c.
    if (std::abs(sw_pressure_from_mpa(rated.rating.allowed_mpa, SW_PRESSURE_PSI) - 144.63) > 0.005 || sheet.size() < 1000)
        return 5;
    if (rated.assumptions.empty() || rated.findings.size() != rated.rating.findings + rated.analysis.findings)
        return 6;
    // Figures by hand, see tests/c/areas: 47 mm is the best pitch, 28/47; a drill 0.5 mm too small; 1.875 for 2.
    const double plate = 6, hole = 19;
    sw_form single = got(sw::lap(1));
    sw_search grid = sw::searching();
    grid.materials = steel, grid.plates_mm = &plate, grid.plate_count = 1, grid.holes_mm = &hole, grid.hole_count = 1;
    grid.forms = &single, grid.form_count = 1, grid.any_finding = 1;
    const sw::searched best = got(sw::search(grid, rules));
    if (best.best.size() != 1 || best.best[0].candidate.pitch_mm != 47 || best.tally.grid == 0)
        return 7;
    sw_order order = sw::order();
    order.run = SW_RUN_TIE, grid.order = &order;
    if (got(sw::front(grid, rules)).empty())
        return 8;
    sw_shell shell = sw::shell();
    sw_vessel_brief drum = sw::vessel_brief();
    shell.inside_mm = 1500, drum.shell = &shell, drum.pressure_mpa = 1, drum.form = got(sw::double_strap(2));
    drum.materials = steel, drum.stock_from_mm = 5, drum.stock_to_mm = 40;
    const sw::designed made = got(sw::design(drum, rules));
    if (made.vessel.fits != 1 || made.vessel.allowed.pressure_mpa < 1 || made.seam.plate_mm != made.vessel.plate_mm)
        return 9;
    // Two rivets, the load through the second: it takes all of it.
    const sw_group_rivet rivets[] = {{0, 0, 0, 0}, {100, 0, 0, 0}};
    sw_group bracket = sw::group();
    bracket.rivets = rivets, bracket.rivet_count = 2, bracket.load_y_n = -15000, bracket.load_at_x_mm = 100;
    bracket.shear_mpa = 60;
    const sw::grouped held = got(sw::size_group(bracket, rules));
    if (held.found.critical != 2 || held.rivets.size() != 2 || std::abs(held.rivets[1].force_n - 15000) > 1e-9)
        return 90;
    joint.form = single, joint.pitch_mm = 50, joint.plate_mm = 6, joint.hole_mm[0] = 18;
    steel.tension_mpa = 120, steel.rivet_shear_mpa = 90, steel.bearing_mpa = 300;
    sw_tolerances drill = sw::tolerances();
    drill.hole_mm = 0.5;
    const double share = 17.5 / 18;
    if (std::abs(got(sw::worst(joint, steel, rules, drill)).ratio - share * share) > 1e-12)
        return 10;
    if (got(sw::slopes(joint, steel, rules)).size() < 6)
        return 11;
    joint.form = got(sw::double_strap(1)), joint.pitch_mm = 60, joint.plate_mm = 10, joint.hole_mm[0] = 19;
    steel.tension_mpa = 80, steel.rivet_shear_mpa = 60, steel.bearing_mpa = 120;
    const std::vector<sw_figure> stated{got(sw::figure("Ps", 0, "31897"))};
    const sw_rules two = got(sw::changed(rules, "shear.double", 2));
    if (got(sw::reconcile(sw::checked_case(joint, steel), two, stated)).empty())
        return 12;
    sw_brief brief = sw::brief();
    brief.form = joint.form, brief.materials = steel, brief.plate_mm = 10;
    const std::vector<sw_column> columns{{&brief, &rules, nullptr}, {&brief, &two, &shell}};
    if (got(sw::compare(columns)).size() != 2)
        return 13;
    const sw_exercise exercise{single, SW_SETTING_BOILER, SW_TASK_CHECK, SW_EFFECT_SHEARING, 0, 7};
    // Solid strip, tearing, one rivet and all rivets in shear, the same crushing, the least, its share.
    if (got(sw::key(exercise, rules)).size() != 8)
        return 14;
    // Plates torn, (71 - 23)/71; the holes of the second row fill its pitch.
    const double pitches[] = {71, 20};
    sw_sweep two_rows = sw::sweeping();
    two_rows.form = single, two_rows.rows = 2, two_rows.pitch_mm.values = pitches, two_rows.pitch_mm.count = 2;
    two_rows.plate_mm.same = 5, two_rows.hole_mm.same = 23, two_rows.tension_mpa.same = 30;
    two_rows.rivet_shear_mpa.same = 60, two_rows.bearing_mpa.same = 120;
    const sw::swept rows = got(sw::sweep(two_rows, rules));
    if (std::abs(rows.efficiency[0] - 48.0 / 71) > 1e-12 || rows.status[0] != SW_OK)
        return 15;
    if (sw::known(rows.efficiency[1]) || rows.status[1] != SW_HOLES_FILL_PITCH || rows.mode[1] != SW_NO_MODE)
        return 16;
    // The sheet has the printed 67.5 % of the first joint, and is refused as a whole where its joint is.
    joint.form = got(sw::lap(2)), joint.plate_mm = 13, joint.hole_mm[0] = 23, joint.pitch_mm = 71;
    sw_sheet to_sign = sw::sheet();
    to_sign.joint = &joint, to_sign.materials = &steel, to_sign.prepared = "A. Smithson", to_sign.invented = 1;
    const std::string signed_by = got(sw::sheet(to_sign, rules, sw::style()));
    if (signed_by.find("67.52 %") == std::string::npos || signed_by.find("A. Smithson") == std::string::npos)
        return 17;
    const std::string inputs = got(sw::sheet_inputs(to_sign, rules));
    std::uint64_t hash = 0xcbf29ce484222325; // FNV-1a, 64 bits
    for (const char c : inputs)
        hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3;
    if (got(sw::sheet_hash(to_sign, rules)) != hash)
        return 18;
    std::printf("efficiency %.1f %%, governing: %s\n", 100 * found.analysis.efficiency,
                sw::name(joint.form, found.analysis.governing).c_str());
    return found.findings.empty() || !sw::known(found.analysis.bearing_all_n);
}
