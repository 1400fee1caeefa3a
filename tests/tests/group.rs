//! Groups of rivets under eccentric load: by hand, against springs under a rigid plate, and what must hold of any group.

#[path = "group/cases.rs"]
mod cases;
mod dialects;
mod generate;
#[path = "group/refused.rs"]
mod refused;
#[path = "group/sheet.rs"]
mod sheet;
#[allow(dead_code, reason = "another test uses the rest")]
mod working_support;

use cases::{Case, case, mm, spun};
use generate::{config, near};
use proptest::prelude::*;
use seamwright::check::{Subject, Verdict};
use seamwright::group::{Group, GroupCheck, GroupLoad, GroupMode, GroupStress, check_group, size_group};
use seamwright::quantities::{Force, Length, Moment, Stress};
use seamwright::rules::{Entry, METRIC, Rules, STRUCTURAL};
use seamwright_reference::group::{Spring, hold};

fn close(a: f64, b: f64, scale: f64) -> bool {
    (a - b).abs() <= 1e-9 * scale
}

/// A measure of the forces of a case: what no share can exceed by much.
fn scale(found: &GroupCheck) -> f64 {
    found.rivets().iter().map(|r| r.resultant).fold(1e-3, f64::max)
}

proptest! {
    #![proptest_config(config())]

    /// The reference knows no centroid: three equations of equilibrium about the origin.
    #[test]
    fn springs_under_a_rigid_plate(case in case()) {
        let found = case.check();
        let springs: Vec<Spring> = case.rivets.iter().map(|r| Spring { x: r[0], y: r[1], d: r[2] }).collect();
        let held = hold(&springs, case.force, case.at, case.couple).unwrap();
        let s = scale(&found);
        for (mine, theirs) in found.rivets().iter().zip(&held.forces) {
            prop_assert!((mine.force[0] - theirs[0]).abs() <= 1e-7 * s && (mine.force[1] - theirs[1]).abs() <= 1e-7 * s,
                "{:?} {theirs:?}", mine.force);
        }
        // The most stressed by the reference has the stress that the library found.
        let area = |d: f64| std::f64::consts::PI / 4.0 * d * d;
        let most = held.forces.iter().zip(&springs).map(|(f, r)| f[0].hypot(f[1]) / area(r.d)).fold(0.0, f64::max);
        prop_assert!(near(found.shear.stress, most, 1e-6));
        if let (Some(mine), Some(theirs)) = (found.centre, held.still) {
            let far = theirs[0].hypot(theirs[1]).max(1e4);
            prop_assert!((mine[0] - theirs[0]).hypot(mine[1] - theirs[1]) <= 1e-6 * far * (1.0 + far / 1e4));
        }
    }

    /// The forces on the rivets are together the load: both sums of forces, and the moment about any point.
    #[test]
    fn equilibrium(case in case(), about in [-500.0..500.0_f64, -500.0..500.0]) {
        let found = case.check();
        let turn = |f: [f64; 2], at: [f64; 2]| (at[0] - about[0]) * f[1] - (at[1] - about[1]) * f[0];
        let sum = |i: usize| found.rivets().iter().map(|r| r.force[i]).sum::<f64>();
        let s = 32.0 * scale(&found);
        prop_assert!(close(sum(0), case.force[0], s) && close(sum(1), case.force[1], s));
        let moment: f64 = found.rivets().iter().map(|r| turn(r.force, r.place)).sum();
        prop_assert!(close(moment, turn(case.force, case.at) + case.couple, 2e3 * s));
        // The shares of the load do not turn, those of the moment do not push.
        let turning = |i: usize| found.rivets().iter().map(|r| r.turning[i]).sum::<f64>();
        prop_assert!(close(turning(0), 0.0, s) && close(turning(1), 0.0, s));
    }

    #[test]
    fn rotating_the_group_with_its_load_rotates_the_forces(case in case(), angle in 0.0..std::f64::consts::TAU) {
        let (before, after) = (case.check(), case.turned(angle).check());
        let s = scale(&before);
        for (a, b) in before.rivets().iter().zip(after.rivets()) {
            let turned = spun(a.force, angle);
            prop_assert!(close(turned[0], b.force[0], 10.0 * s) && close(turned[1], b.force[1], 10.0 * s));
            prop_assert!(near(a.resultant, b.resultant, 1e-6) || a.resultant < 1e-6 * s);
        }
        prop_assert!(near(before.polar, after.polar, 1e-9) && near(before.used, after.used, 1e-8));
    }

    #[test]
    fn moving_the_group_with_its_load_changes_nothing(case in case(), by in [-900.0..900.0_f64, -900.0..900.0]) {
        let (before, after) = (case.check(), case.moved(by).check());
        let s = 10.0 * scale(&before);
        for (a, b) in before.rivets().iter().zip(after.rivets()) {
            prop_assert!(close(a.force[0], b.force[0], s) && close(a.force[1], b.force[1], s));
        }
        prop_assert!(close(before.centroid[0] + by[0], after.centroid[0], 1e3));
        prop_assert!(near(before.used, after.used, 1e-8));
    }

    /// Places and arms so many times as wide, forces as before: the same shares. The couple grows with the arms.
    #[test]
    fn scaling(case in case(), k in 1.0..4.0_f64, load in 0.1..9.0_f64) {
        let before = case.check();
        let wide = case.scaled(k, 1.0).check();
        let heavy = case.scaled(1.0, load).check();
        for ((a, b), c) in before.rivets().iter().zip(wide.rivets()).zip(heavy.rivets()) {
            prop_assert!(near(a.resultant, b.resultant, 1e-7) || a.resultant < 1e-6 * scale(&before));
            prop_assert!(near(load * a.resultant, c.resultant, 1e-7) || a.resultant < 1e-6 * scale(&before));
        }
        prop_assert!(near(load * before.used, heavy.used, 1e-8));
        // The load that is allowed does not depend on the one that was asked about.
        match (before.safe_load, heavy.safe_load) {
            (Some(a), Some(b)) => prop_assert!(near(a, b, 1e-8)),
            (a, b) => prop_assert_eq!(a.is_some(), b.is_some()),
        }
    }

    /// Shares of two loads together are the shares of each, added up.
    #[test]
    fn loads_are_superposed(case in case(), other in [-9e4..9e4_f64, -9e4..9e4], couple in -9e6..9e6_f64) {
        let second = Case { force: other, couple, ..case.clone() };
        let both = Case {
            force: [case.force[0] + other[0], case.force[1] + other[1]],
            couple: case.couple + couple,
            ..case.clone()
        };
        let (a, b, sum) = (case.check(), second.check(), both.check());
        let s = 10.0 * (scale(&a) + scale(&b));
        for ((a, b), sum) in a.rivets().iter().zip(b.rivets()).zip(sum.rivets()) {
            for i in 0..2 {
                prop_assert!(close(a.force[i] + b.force[i], sum.force[i], s));
            }
        }
    }

    #[test]
    fn the_order_of_rivets_does_not_matter(case in case()) {
        let mut back = case.clone();
        back.rivets.reverse();
        let (a, b) = (case.check(), back.check());
        let s = scale(&a);
        for (a, b) in a.rivets().iter().zip(b.rivets().iter().rev()) {
            prop_assert!(close(a.force[0], b.force[0], s) && close(a.force[1], b.force[1], s));
        }
        prop_assert!(near(a.used, b.used, 1e-9) && near(a.polar, b.polar, 1e-9) && near(a.areas, b.areas, 1e-12));
    }

    /// The load that is allowed uses just what is permitted.
    #[test]
    fn the_load_allowed_uses_all(case in case()) {
        let found = case.check();
        let at_limit = case.scaled(1.0, 1.0 / found.used).check();
        prop_assert!(near(at_limit.used, 1.0, 1e-9));
        prop_assert!(at_limit.findings.iter().all(|f| f.subject != Subject::GroupShear || f.verdict == Verdict::Met));
        if let Some(load) = found.safe_load {
            prop_assert!(near(load, case.force[0].hypot(case.force[1]) / found.used, 1e-12));
        }
        if let Some(couple) = found.safe_couple {
            prop_assert!(near(couple, case.couple / found.used, 1e-12));
        }
    }

    /// A sized group passes its check, and with the size before in the series it would not.
    #[test]
    fn a_sized_group_is_the_least_that_passes(case in case(), structural in any::<bool>()) {
        let book = if structural { &STRUCTURAL } else { &METRIC };
        let (group, load, stress) = case.unsized_group();
        let Ok(made) = size_group(&group, &load, &stress, &book.rules) else { return Ok(()) };
        prop_assert!(made.check.used <= 1.0 + 1e-9);
        let with = group.hole(mm(made.hole)).rivet(mm(made.rivet));
        let again = check_group(&with, &load, &stress, &book.rules).unwrap();
        prop_assert_eq!(format!("{:?}", again), format!("{:?}", made.check));
        let before = book.rules.series().take_while(|s| s.hole < made.hole).last();
        if let Some(smaller) = before {
            let small = group.hole(mm(smaller.hole)).rivet(mm(smaller.rivet));
            prop_assert!(check_group(&small, &load, &stress, &book.rules).unwrap().used > 1.0);
        }
    }
}

/// Three rivets of two sizes by hand: holes of 20, 20 and 10 mm at (0, 0), (0, 90) and (60, 45); 9 kN down at x = 70.
///
/// Areas over the largest: 1, 1 and 100/400 = 1/4; together 9/4. Centroid: x = (60/4)/(9/4) = 20/3, y = 45 (by the two,
/// and the third lies there). Arms: u = -20/3, -20/3, 160/3; v = -45, 45, 0. Ip = 2 (400/9 + 2025) + (25600/9)/4 =
/// 800/9 + 4050 + 6400/9 = 4850 mm2. Arm of the load 70 - 20/3 = 190/3; MG = -9000 x 190/3 = -570 000 N mm.
/// Direct: 4000, 4000 and 1000 N down. Turning, rivet 1: x = MG (Yc - Y)/Ip = -570000 x 45/4850, y = MG u/Ip =
/// 570000 x 20/3/4850 up; rivet 3: y = 570000/4 x 160/3/4850 down.
#[test]
fn unequal_areas_by_hand() {
    let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(0.0), mm(90.0)), (mm(60.0), mm(45.0))]).unwrap();
    let group = group.hole(mm(20.0)).one(3, mm(10.0), None).unwrap().plate(mm(8.0));
    let load = GroupLoad::force(Force::n(0.0), Force::kn(-9.0), mm(70.0), mm(0.0));
    let permitted = GroupStress::new(Stress::mpa(40.0)).bearing(Stress::mpa(160.0));
    let found = check_group(&group, &load, &permitted, &METRIC.rules).unwrap();
    let same = |a: f64, b: f64| assert!(near(a, b, 1e-12), "{a} is not {b}");
    same(found.areas, 2.25);
    same(found.centroid[0], 20.0 / 3.0);
    same(found.centroid[1], 45.0);
    same(found.polar, 4850.0);
    same(found.arm[0], 190.0 / 3.0);
    same(found.moment, -570_000.0);
    let [one, two, three] = found.rivets() else { panic!("three rivets") };
    same(one.direct[1], -4000.0);
    same(three.direct[1], -1000.0);
    same(one.turning[0], -570_000.0 * 45.0 / 4850.0);
    same(one.turning[1], 570_000.0 * (20.0 / 3.0) / 4850.0);
    same(two.turning[0], 570_000.0 * 45.0 / 4850.0);
    same(three.turning[1], -570_000.0 / 4.0 * (160.0 / 3.0) / 4850.0);
    // The large rivets have the greatest force, the small one the greatest stress: 2567.01 N on 78.54 mm2, 32.68 MPa,
    // against hypot(5288.66, 3216.49) = 6189.84 N on 314.16 mm2, 19.70 MPa.
    assert!(one.resultant > 2.0 * three.resultant);
    same(three.resultant, 1000.0 + 570_000.0 / 4.0 * (160.0 / 3.0) / 4850.0);
    same(three.shear, three.resultant / (std::f64::consts::PI * 25.0));
    assert_eq!((found.shear.rivet, found.critical(), found.governs), (3, 3, GroupMode::Shear));
    // Bearing: 6189.84/(20 x 8) = 38.69 MPa against 2567.01/(10 x 8) = 32.09: the first large rivet.
    let bearing = found.bearing.unwrap();
    assert_eq!(bearing.rivet, 1);
    same(bearing.stress, one.resultant / 160.0);
    same(found.used, three.shear / 40.0);
    same(found.safe_load.unwrap(), 9000.0 / found.used);
    // At rest: above the centroid nothing, beside it h = Ip/(Sa e) = 4850/(9/4 x 190/3).
    let [x, y] = found.centre.unwrap();
    same(x, 20.0 / 3.0 - 4850.0 / (2.25 * 190.0 / 3.0));
    same(y, 45.0);
}

/// Bearing governs where the plate is thin: two rivets, 10 kN at their middle, 5 kN each on 20 x 2 mm, 125 MPa of 100.
#[test]
fn bearing_can_govern() {
    let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(80.0), mm(0.0))]).unwrap().hole(mm(20.0)).plate(mm(2.0));
    let load = GroupLoad::force(Force::kn(10.0), Force::n(0.0), mm(-30.0), mm(0.0));
    let permitted = GroupStress::new(Stress::mpa(60.0)).bearing(Stress::mpa(100.0));
    let found = check_group(&group, &load, &permitted, &METRIC.rules).unwrap();
    assert_eq!((found.governs, found.critical()), (GroupMode::Bearing, 1));
    assert!(near(found.used, 1.25, 1e-12) && near(found.safe_load.unwrap(), 8000.0, 1e-12));
    assert_eq!(found.centre, None);
    let open = found.findings.iter().next().unwrap();
    assert_eq!((open.subject, open.verdict, open.row), (Subject::GroupBearing, Verdict::Open, 1));
    assert!(near(open.provided, 125.0, 1e-12) && near(open.required, 100.0, 1e-12));
    // Without a plate nothing is said of bearing, and the sheet says so.
    let bare = Group::at(&[(mm(0.0), mm(0.0)), (mm(80.0), mm(0.0))]).unwrap().hole(mm(20.0));
    let found = check_group(&bare, &load, &permitted, &METRIC.rules).unwrap();
    assert!(found.bearing.is_none());
    assert_eq!(found.findings.find(Subject::GroupBearingUnknown, 0).unwrap().verdict, Verdict::Unknown);
    // With a plate and no permitted stress the figure is there and is not judged.
    let found = check_group(&group, &load, &GroupStress::new(Stress::mpa(60.0)), &METRIC.rules).unwrap();
    assert!(near(found.bearing.unwrap().stress, 125.0, 1e-12) && found.bearing.unwrap().used.is_none());
}

/// The book says which diameter counts, and what a second plane is worth.
#[test]
fn the_book_counts_diameters_and_planes() {
    let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(80.0), mm(0.0))]).unwrap().hole(mm(21.0)).rivet(mm(20.0));
    let group = group.plate(mm(10.0));
    let load = GroupLoad::force(Force::kn(40.0), Force::n(0.0), mm(0.0), mm(0.0));
    let permitted = GroupStress::new(Stress::mpa(80.0));
    let stresses = |group: &Group, rules: &Rules| {
        let found = check_group(group, &load, &permitted, rules).unwrap();
        (found.shear.stress, found.bearing.unwrap().stress)
    };
    let area = |d: f64| std::f64::consts::PI / 4.0 * d * d;
    let (shear, bearing) = stresses(&group, &METRIC.rules);
    assert!(near(shear, 20_000.0 / area(21.0), 1e-12) && near(bearing, 20_000.0 / 210.0, 1e-12));
    let rules = METRIC.rules.with(Entry::SHEAR_DIAMETER, 1.0).unwrap();
    let (shear, bearing) = stresses(&group, &rules);
    assert!(near(shear, 20_000.0 / area(20.0), 1e-12) && near(bearing, 20_000.0 / 210.0, 1e-12));
    let (shear, bearing) = stresses(&group, &rules.with(Entry::BEARING_DIAMETER, 1.0).unwrap());
    assert!(near(shear, 20_000.0 / area(20.0), 1e-12) && near(bearing, 20_000.0 / 200.0, 1e-12));
    let (shear, _) = stresses(&group.planes(2), &rules.with(Entry::DOUBLE_SHEAR, 1.75).unwrap());
    assert!(near(shear, 20_000.0 / (1.75 * area(20.0)), 1e-12));
}

/// Sizing takes hole and rivet as far as each counts. 40 kN on two rivets of 80 MPa: 20 000 N need sqrt(4 x 20000/(pi 80))
/// = 17.841 mm; as a hole that is 19.5 of the structural series (rivet 18), as a rivet 18 as well; in bearing on 4 mm at
/// 240 MPa 20000/960 = 20.833 mm: hole 21.5 with rivet 20; as a rivet 22 in a hole of 23.5.
#[test]
fn sizes_by_hole_or_by_rivet() {
    let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(120.0), mm(0.0))]).unwrap();
    let load = GroupLoad::force(Force::kn(40.0), Force::n(0.0), mm(0.0), mm(0.0));
    let shear = GroupStress::new(Stress::mpa(80.0));
    let both = shear.bearing(Stress::mpa(240.0));
    let sized = |group: Group, stress: &GroupStress, rules| {
        let made = size_group(&group, &load, stress, rules).unwrap();
        (made.needed, made.hole, made.rivet)
    };
    let rules = STRUCTURAL.rules;
    let by_rivet = rules.with(Entry::SHEAR_DIAMETER, 1.0).unwrap().with(Entry::BEARING_DIAMETER, 1.0).unwrap();
    let needed = (4.0 * 20_000.0 / (std::f64::consts::PI * 80.0)).sqrt();
    let (d, hole, rivet) = sized(group, &shear, &rules);
    assert!(near(d, needed, 1e-12));
    assert_eq!((hole, rivet), (19.5, 18.0));
    assert_eq!(sized(group, &shear, &by_rivet).1, 19.5);
    let (d, hole, rivet) = sized(group.plate(mm(4.0)), &both, &rules);
    assert!(near(d, 20_000.0 / 960.0, 1e-12));
    assert_eq!((hole, rivet), (21.5, 20.0));
    let (_, hole, rivet) = sized(group.plate(mm(4.0)), &both, &by_rivet);
    assert_eq!((hole, rivet), (23.5, 22.0));
    // A book that rounds the hole instead: up to whole millimetres.
    let round = rules.with(Entry::HOLE_ROUND, 1.0).unwrap().with(Entry::HOLE_STEP, 1.0).unwrap();
    assert_eq!(sized(group, &shear, &round).1, 18.0);
    assert_eq!(sized(group.plate(mm(4.0)), &both, &round).1, 21.0);
}

/// Books that ask for room between rivets are heard: 3 d + 5 of the structural book, 68 mm for 21 mm holes.
#[test]
fn rivets_too_close() {
    let places = [(mm(0.0), mm(0.0)), (mm(70.0), mm(0.0)), (mm(70.0), mm(60.0))];
    let group = Group::at(&places).unwrap().hole(mm(21.0));
    let load = GroupLoad::couple(Moment::n_m(300.0));
    let found = check_group(&group, &load, &GroupStress::new(Stress::mpa(60.0)), &STRUCTURAL.rules).unwrap();
    let close = found.findings.find(Subject::RivetsApart, 3).unwrap();
    assert_eq!((close.verdict, close.entry), (Verdict::Open, Entry::PITCH_LEAST.no()));
    assert!(near(close.required, 68.0, 1e-12) && near(close.provided, 60.0, 1e-12));
}

/// A couple alone: the group turns about its centroid, and all forces are at right angles to the line from there.
#[test]
fn a_couple_alone() {
    let group = Group::at(&[(mm(-60.0), mm(0.0)), (mm(60.0), mm(0.0)), (mm(0.0), mm(80.0))]).unwrap().hole(mm(17.0));
    let found =
        check_group(&group, &GroupLoad::couple(Moment::kn_m(1.0)), &GroupStress::new(Stress::mpa(60.0)), &METRIC.rules)
            .unwrap();
    assert_eq!(found.centre.unwrap(), found.centroid);
    assert!(found.safe_load.is_none() && found.safe_couple.unwrap() > 0.0);
    for r in found.rivets() {
        let arm = [r.place[0] - found.centroid[0], r.place[1] - found.centroid[1]];
        assert!((arm[0] * r.force[0] + arm[1] * r.force[1]).abs() < 1e-6, "{r:?}");
        assert!(arm[0] * r.force[1] - arm[1] * r.force[0] > 0.0, "turns the way of the couple");
    }
}

/// Directions of forces: along the axes and the diagonals.
#[test]
fn directions_in_degrees() {
    let one = |x: f64, y: f64| {
        let group = Group::at(&[(Length::mm(5.0), Length::mm(7.0))]).unwrap().hole(mm(20.0));
        let load = GroupLoad::force(Force::n(x), Force::n(y), mm(5.0), mm(7.0));
        check_group(&group, &load, &GroupStress::new(Stress::mpa(60.0)), &METRIC.rules).unwrap().rivets()[0].direction()
    };
    for (x, y, degrees) in [
        (1.0, 0.0, 0.0),
        (1.0, 1.0, 45.0),
        (0.0, 1.0, 90.0),
        (-1.0, 0.0, 180.0),
        (-1.0, -1.0, -135.0),
        (0.0, -1.0, -90.0),
    ] {
        assert!(near(one(x, y), degrees, 1e-12), "{x} {y}: {}", one(x, y));
    }
}
