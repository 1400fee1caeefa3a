//! What a group refuses, with field, value, limit and rivet.

use seamwright::bounds::Field as F;
use seamwright::error::{Error, ErrorKind as K};
use seamwright::group::{Group, GroupLoad, GroupStress, check_group, size_group};
use seamwright::quantities::{Force, Length, Moment, Stress};
use seamwright::rules::METRIC;

use super::cases::mm;

fn at(places: &[(f64, f64)]) -> Result<Group, Error> {
    let places: Vec<_> = places.iter().map(|(x, y)| (mm(*x), mm(*y))).collect();
    Group::at(&places)
}

fn two() -> Group {
    at(&[(0.0, 0.0), (80.0, 0.0)]).unwrap()
}

fn load(x: f64, y: f64) -> GroupLoad {
    GroupLoad::force(Force::n(x), Force::n(y), mm(200.0), mm(0.0))
}

fn checked(group: Group, load: GroupLoad) -> Error {
    check_group(&group, &load, &GroupStress::new(Stress::mpa(60.0)), &METRIC.rules).unwrap_err()
}

fn is(e: Error, kind: K, field: F, value: f64, limit: f64, index: u8) {
    let same = |a: f64, b: f64| (a.is_nan() && b.is_nan()) || (a - b).abs() <= 1e-9 * b.abs() || a == b;
    assert_eq!((e.kind, e.field, e.index), (kind, field, index), "{e}");
    assert!(same(e.value, value) && same(e.limit, limit), "{e}");
    // The text has all of it.
    let text = e.to_string();
    assert!(text.starts_with(field.bound().key) && text.ends_with(kind.remedy()), "{text}");
}

#[test]
fn numbers_of_rivets() {
    is(at(&[]).unwrap_err(), K::TooSmall, F::GroupRivets, 0.0, 1.0, 0);
    let many: Vec<_> = (0..33).map(|i| (80.0 * f64::from(i), 0.0)).collect();
    is(at(&many).unwrap_err(), K::TooLarge, F::GroupRivets, 33.0, 32.0, 0);
    assert!(at(&many[..32]).is_ok());
    is(two().one(3, mm(20.0), None).unwrap_err(), K::TooLarge, F::GroupRivets, 3.0, 2.0, 0);
    is(two().one(0, mm(20.0), None).unwrap_err(), K::TooLarge, F::GroupRivets, 0.0, 2.0, 0);
}

#[test]
fn places_and_sizes() {
    let hang = load(0.0, -1e4);
    let group = two().hole(mm(20.0));
    is(checked(two(), hang), K::Missing, F::Hole, f64::NAN, f64::NAN, 1);
    is(checked(two().one(1, mm(20.0), None).unwrap(), hang), K::Missing, F::Hole, f64::NAN, f64::NAN, 2);
    is(
        checked(at(&[(0.0, 0.0), (f64::NAN, 0.0)]).unwrap().hole(mm(20.0)), hang),
        K::NotFinite,
        F::RivetX,
        f64::NAN,
        f64::NAN,
        2,
    );
    is(checked(at(&[(0.0, 2e5)]).unwrap().hole(mm(20.0)), hang), K::TooLarge, F::RivetY, 2e5, 1e5, 1);
    is(checked(group.hole(mm(-20.0)), hang), K::TooSmall, F::Hole, -20.0, 1.0, 1);
    is(checked(group.rivet(mm(f64::INFINITY)), hang), K::NotFinite, F::Rivet, f64::INFINITY, f64::NAN, 1);
    is(checked(group.rivet(mm(21.0)), hang), K::RivetExceedsHole, F::Rivet, 21.0, 20.0, 1);
    is(checked(group.planes(3), hang), K::TooLarge, F::ShearPlanes, 3.0, 2.0, 0);
    is(checked(group.planes(0), hang), K::TooSmall, F::ShearPlanes, 0.0, 1.0, 0);
    is(checked(group.plate(mm(0.0)), hang), K::TooSmall, F::Plate, 0.0, 0.5, 0);
    // 80 mm apart, holes of 100 and 70: their mean is 85.
    let wide = two().hole(mm(100.0)).one(2, mm(70.0), None).unwrap();
    is(checked(wide, hang), K::HolesOverlap, F::RivetDistance, 80.0, 85.0, 2);
    // Below, at and above the distance at which two holes of 80 touch.
    for (apart, refused) in [(79.9, true), (80.0, true), (80.1, false)] {
        let pair = at(&[(0.0, 0.0), (apart, 0.0)]).unwrap().hole(mm(80.0));
        assert_eq!(pair.validate().is_err(), refused, "{apart}");
        if refused {
            is(checked(pair, hang), K::HolesOverlap, F::RivetDistance, apart, 80.0, 2);
        }
    }
    // Rivets without holes yet: 1 mm is just enough for two places.
    for (apart, refused) in [(0.9, true), (1.0, false), (1.1, false)] {
        assert_eq!(at(&[(0.0, 0.0), (apart, 0.0)]).unwrap().validate().is_err(), refused, "{apart}");
    }
    let same = at(&[(0.0, 0.0), (50.0, 0.0), (0.0, 0.0)]).unwrap();
    is(checked(same.hole(mm(20.0)), hang), K::HolesOverlap, F::RivetDistance, 0.0, 20.0, 3);
    let error = size_group(&same, &hang, &GroupStress::new(Stress::mpa(60.0)), &METRIC.rules).unwrap_err();
    is(error, K::HolesOverlap, F::RivetDistance, 0.0, 1.0, 3);
}

#[test]
fn loads() {
    let group = two().hole(mm(20.0));
    is(checked(group, load(0.0, 0.0)), K::TooSmall, F::Load, 0.0, 0.001, 0);
    is(checked(group, GroupLoad::couple(Moment::n_mm(0.0))), K::TooSmall, F::Load, 0.0, 0.001, 0);
    is(checked(group, load(f64::NAN, 0.0)), K::NotFinite, F::LoadX, f64::NAN, f64::NAN, 0);
    is(checked(group, load(0.0, 2e9)), K::TooLarge, F::LoadY, 2e9, 1e9, 0);
    let far = GroupLoad::force(Force::n(1.0), Force::n(1.0), mm(2e6), mm(0.0));
    is(checked(group, far), K::TooLarge, F::LoadAtX, 2e6, 1e6, 0);
    let far = GroupLoad::force(Force::n(1.0), Force::n(1.0), mm(0.0), mm(-2e6));
    is(checked(group, far), K::TooSmall, F::LoadAtY, -2e6, -1e6, 0);
    is(
        checked(group, GroupLoad::couple(Moment::n_mm(f64::INFINITY))),
        K::NotFinite,
        F::Couple,
        f64::INFINITY,
        f64::NAN,
        0,
    );
    // One rivet, and 10 kN that pass it 200 mm away: 2 kN m that nothing holds.
    let one = at(&[(0.0, 0.0)]).unwrap().hole(mm(20.0));
    is(checked(one, load(0.0, -1e4)), K::RivetTurns, F::Couple, -2e6, 0.0, 0);
    is(checked(one, GroupLoad::couple(Moment::n_mm(5.0))), K::RivetTurns, F::Couple, 5.0, 0.0, 0);
    assert!(check_group(&one, &load(-1e4, 0.0), &GroupStress::new(Stress::mpa(60.0)), &METRIC.rules).is_ok());
}

#[test]
fn stresses() {
    let refused =
        |stress: GroupStress| check_group(&two().hole(mm(20.0)), &load(0.0, -1e4), &stress, &METRIC.rules).unwrap_err();
    is(refused(GroupStress::new(Stress::mpa(0.0))), K::TooSmall, F::Shear, 0.0, 0.01, 0);
    let bad = GroupStress::new(Stress::mpa(60.0)).bearing(Stress::mpa(f64::NAN));
    is(refused(bad), K::NotFinite, F::Bearing, f64::NAN, f64::NAN, 0);
}

#[test]
fn sizing() {
    let stress = GroupStress::new(Stress::mpa(60.0));
    let hang = load(0.0, -1e4);
    let refused = |group: Group, load: GroupLoad| size_group(&group, &load, &stress, &METRIC.rules).unwrap_err();
    is(refused(two().hole(mm(20.0)), hang), K::Inconsistent, F::Hole, 20.0, f64::NAN, 1);
    is(refused(two().rivet(mm(20.0)), hang), K::Inconsistent, F::Rivet, 20.0, f64::NAN, 1);
    // Two rivets in line with 1000 kN: 500 kN each, sqrt(4 x 500000/(pi 60)) = 103.006 mm; the series ends at 50.
    let e = refused(two(), load(1e6, 0.0));
    assert_eq!((e.kind, e.field, e.limit), (K::NoStandardSize, F::Hole, 50.0), "{e}");
    assert!((e.value - (4.0 * 5e5 / (std::f64::consts::PI * 60.0)).sqrt()).abs() < 1e-9);
    // Two rivets 12 mm apart need more than that.
    let close = at(&[(0.0, 0.0), (12.0, 0.0)]).unwrap();
    let e = refused(close, load(3e4, 0.0));
    assert_eq!((e.kind, e.field, e.value, e.index), (K::HolesOverlap, F::RivetDistance, 12.0, 2), "{e}");
}

/// The old allowance belongs to a vertical load that passes farther away than the allowance reaches.
#[test]
fn effective_eccentricity() {
    let group = two().hole(mm(20.0));
    is(checked(group, load(5.0, -1e4).effective(3)), K::Inconsistent, F::LoadX, 5.0, 0.0, 0);
    is(checked(group, load(5.0, 0.0).effective(3)), K::Inconsistent, F::LoadX, 5.0, 0.0, 0);
    is(checked(group, load(0.0, -1e4).effective(0)), K::TooSmall, F::RowRivets, 0.0, 1.0, 0);
    // The load lies 160 mm from the middle; 12 rivets in a row would take 6.5 in off, 165.1 mm.
    is(checked(group, load(0.0, -1e4).effective(12)), K::TooSmall, F::Eccentricity, 160.0, 165.1, 0);
    // Below, at and above that allowance: the middle lies at 40 mm.
    for (beside, refused) in [(165.0, true), (165.1, true), (165.2, false)] {
        let load = GroupLoad::force(Force::n(0.0), Force::n(-1e4), mm(40.0 + beside), mm(0.0)).effective(12);
        let stress = GroupStress::new(Stress::mpa(60.0));
        assert_eq!(check_group(&group, &load, &stress, &METRIC.rules).is_err(), refused, "{beside}");
    }
    // On the other side as on this one: 160 - 2 x 25.4 = 109.2 mm.
    let stress = GroupStress::new(Stress::mpa(60.0));
    for (at, side) in [(200.0, 1.0), (-120.0, -1.0)] {
        let load = GroupLoad::force(Force::n(0.0), Force::n(-1e4), Length::mm(at), mm(0.0)).effective(3);
        let found = check_group(&group, &load, &stress, &METRIC.rules).unwrap();
        assert!((found.arm[0] - side * 109.2).abs() < 1e-9 && (found.moment + side * 1.092e6).abs() < 1e-6);
    }
}

/// The permitted stress, the least distance and the standard size: below, at and above each of them.
#[test]
fn at_the_limits() {
    use seamwright::check::{Subject, Verdict};
    // 20 000 N on a hole of 20 mm in a plate of 10: 100 MPa in bearing; two of them side by side share 40 000 N.
    let check = |bearing: f64, hole: f64, apart: f64| {
        let group = at(&[(0.0, 0.0), (apart, 0.0)]).unwrap().hole(mm(hole)).plate(mm(10.0));
        let load = GroupLoad::force(Force::n(4e4), Force::n(0.0), mm(0.0), mm(0.0));
        let stress = GroupStress::new(Stress::mpa(200.0)).bearing(Stress::mpa(bearing));
        check_group(&group, &load, &stress, &METRIC.rules).unwrap()
    };
    let verdict = |found: &seamwright::group::GroupCheck, subject| {
        found.findings.iter().find(|f| f.subject == subject).map(|f| f.verdict)
    };
    for (permitted, wanted) in [(99.9, Verdict::Open), (100.0, Verdict::Met), (100.1, Verdict::Met)] {
        assert_eq!(verdict(&check(permitted, 20.0, 80.0), Subject::GroupBearing), Some(wanted), "{permitted}");
    }
    // The metric book asks for a pitch of two holes: 40 mm.
    for (apart, wanted) in [(39.9, Verdict::Open), (40.0, Verdict::Met), (40.1, Verdict::Met)] {
        assert_eq!(verdict(&check(200.0, 20.0, apart), Subject::RivetsApart), Some(wanted), "{apart}");
    }
    // A hole of 21 mm of the series, in shear: what it holds, a little less, a little more.
    let holds = std::f64::consts::PI / 4.0 * 21.0 * 21.0 * 60.0;
    for (force, hole) in [(0.999 * holds, 21.0), (holds, 21.0), (1.001 * holds, 23.0)] {
        let load = GroupLoad::force(Force::n(2.0 * force), Force::n(0.0), mm(0.0), mm(0.0));
        let stress = GroupStress::new(Stress::mpa(60.0));
        assert_eq!(size_group(&two(), &load, &stress, &METRIC.rules).unwrap().hole, hole, "{force}");
    }
}
