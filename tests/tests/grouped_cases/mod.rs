//! Groups of rivets in many circumstances.

use seamwright::check::Findings;
use seamwright::group::{Group, GroupLoad, GroupStress, check_group, check_group_with, size_group, size_group_with};
use seamwright::quantities::{Force, Moment, Stress};
use seamwright::rules::Rules;
use seamwright::step::Ctx;

use super::support::mm;

/// Groups of rivets with their loads, and whether their size is asked for: alike and of two sizes, close and apart, in
/// one and two planes, under forces and couples.
fn groups() -> Vec<(Group, GroupLoad, bool)> {
    let square = Group::at(&[(mm(0.0), mm(0.0)), (mm(90.0), mm(0.0)), (mm(0.0), mm(90.0))]).unwrap();
    let close = Group::at(&[(mm(0.0), mm(0.0)), (mm(22.0), mm(0.0))]).unwrap().hole(mm(21.0));
    let alike = square.hole(mm(21.0)).rivet(mm(20.0)).plate(mm(3.0));
    let thick = square.hole(mm(21.0)).plate(mm(30.0)).planes(2);
    let two = alike.one(2, mm(15.0), Some(mm(14.0))).unwrap();
    let hang = GroupLoad::force(Force::n(0.0), Force::kn(-9.0), mm(400.0), mm(0.0));
    let left = GroupLoad::force(Force::n(0.0), Force::kn(-9.0), mm(-400.0), mm(0.0));
    let turn = GroupLoad::couple(Moment::n_m(900.0));
    vec![
        (alike, hang, false),
        (thick, hang.and_couple(Moment::n_m(50.0)), false),
        (two, turn, false),
        (two, hang, false),
        (close, hang.effective(2), false),
        (close, left.effective(2), false),
        (square.plate(mm(2.0)), hang, true),
        (square.planes(2), hang, true),
    ]
}

/// Checks and sizes all groups in a context that listens; nobody's figures change for being listened to.
pub fn watch_groups<C: Ctx<N = f64>>(c: C, rules: &Rules, found: impl Fn(&Findings)) {
    for (group, load, sized) in groups() {
        for stress in [GroupStress::new(Stress::mpa(60.0)), GroupStress::new(Stress::mpa(600.0))] {
            for stress in [stress, stress.bearing(Stress::mpa(150.0))] {
                if sized {
                    let heard = size_group_with(c, &group, &load, &stress, rules);
                    assert_eq!(format!("{heard:?}"), format!("{:?}", size_group(&group, &load, &stress, rules)));
                } else {
                    let heard = check_group_with(c, &group, &load, &stress, rules).unwrap();
                    found(&heard.findings);
                    let plain = check_group(&group, &load, &stress, rules).unwrap();
                    assert_eq!(format!("{heard:?}"), format!("{plain:?}"));
                }
            }
        }
    }
}
