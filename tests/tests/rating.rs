//! Rating: thinned joints, what is assumed, how long it lasts, and the table of a boiler.

mod support;

use seamwright::bounds::Field;
use seamwright::check::{Subject, Verdict};
use seamwright::error::ErrorKind;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{
    Assumed, Basis, Boiler, BoilerPart, Existing, Governs, HoleMaking, KnownLength, Life, Riveting, Service, rate,
};
use seamwright::rules::{
    Entry, GERMAN_1908, Metal, Rules, STRUCTURAL, US_CALIFORNIA, US_CODE, US_EXISTING, US_LOCOMOTIVE, US_MICHIGAN,
};
use support::form;

fn inch(x: f64) -> KnownLength {
    KnownLength::measured(Length::inch(x))
}

fn psi(x: f64) -> Pressure {
    Pressure::psi(x)
}

/// The double-riveted lap of the review of the rules: 3 1/2 in pitch, 15/16 hole, 48 in inside, FS 5.
fn lap(t: f64) -> Existing {
    Existing::new(form("lap 2"), KnownLength::given(Length::inch(3.5)), inch(t), Length::inch(48.0))
        .hole(inch(0.9375))
        .metals(Metal::Steel, Metal::Steel)
        .safety(5.0)
        .service(Service::new_shell())
}

fn allowed(old: &Existing, rules: &Rules) -> f64 {
    Pressure::mpa(rate(old, rules).unwrap().allowed).to_psi()
}

fn life(old: Existing, rules: &Rules) -> Life {
    rate(&old, rules).unwrap().life.unwrap()
}

/// By hand: rivets hold 2 x pi/4 x 0.9375^2 x 44 000 = 60 744 lb of the 3.5 in strip, 144.63 psi, at any thickness at
/// which the plate holds more; the plate holds (3.5 - 0.9375) t x 55 000, so it governs below t = 0.4310 in.
#[test]
fn years_are_solved_for_along_the_wastage() {
    let rules = &US_EXISTING.rules;
    let rivets = 2.0 * std::f64::consts::PI / 4.0 * 0.9375 * 0.9375 * 44_000.0 / (3.5 * 24.0 * 5.0);
    for t in [0.5, 0.45, 0.432] {
        assert!((allowed(&lap(t), rules) - rivets).abs() < 1e-9, "{t}");
    }
    let plate = |t: f64| (3.5 - 0.9375) * t * 55_000.0 / (3.5 * 24.0 * 5.0);
    for t in [0.43, 0.4, 0.3] {
        assert!((allowed(&lap(t), rules) - plate(t)).abs() < 1e-9, "{t}");
    }
    // Down to 125 psi: t = 125/plate(1), 15.5 years from 0.45 in at 0.005 in a year.
    let gone = 125.0 / plate(1.0);
    let years = (0.45 - gone) / 0.005;
    let worn = lap(0.45).present(psi(125.0)).wastage_rate(Length::inch(0.005));
    let found = life(worn, rules);
    assert!((years - 15.5).abs() < 0.05);
    assert!((found.years - years).abs() < 1e-6, "{} {years}", found.years);
    assert!((Length::mm(found.plate).to_inch() - gone).abs() < 1e-8);
    // The same rate from what was lost in ten years, and a proportion would have said otherwise.
    let since = lap(0.45).present(psi(125.0)).earlier(Length::inch(0.5), 10.0);
    assert!((life(since, rules).years - years).abs() < 1e-6);
    let proportion = 0.45 * (1.0 - 125.0 / rivets) / 0.005;
    assert!((found.years - proportion).abs() > 2.0);
    // Exactly at the present pressure: no years left, and none below it; nothing wastes for ever.
    let at = lap(0.4).present(psi(plate(0.4))).wastage_rate(Length::inch(0.005));
    assert!(life(at, rules).years < 1e-6);
    assert_eq!(life(at.present(psi(plate(0.4) * 1.001)), rules).years, 0.0);
    assert!(life(lap(0.45).present(psi(125.0)).wastage_rate(Length::inch(0.0)), rules).years.is_infinite());
}

/// The outside radius counts above a tenth of R = 10 in (Oklahoma, read): p is 55 000 (2/3) t/((10 + t) 5) down to
/// t = 1 in, where it leaps from 666.7 to 733.3 psi. The first time that the pressure is not allowed counts, before it.
#[test]
fn the_dip_before_the_outside_radius_is_not_missed() {
    let old = Existing::new(form("lap 1"), inch(3.0), inch(1.05), Length::inch(20.0))
        .hole(inch(1.0))
        .tension(Stress::psi(55_000.0))
        .shear(Stress::psi(440_000.0))
        .bearing(Stress::psi(950_000.0))
        .safety(5.0);
    let outside = |t: f64| 55_000.0 * 2.0 / 3.0 * t / ((10.0 + t) * 5.0);
    assert!((allowed(&old, &US_EXISTING.rules) - outside(1.05)).abs() < 1e-9);
    for t in [1.02, 1.001, 1.0002] {
        let worn = old.present(psi(outside(t))).wastage_rate(Length::inch(0.01));
        let years = life(worn, &US_EXISTING.rules).years;
        assert!((years - (1.05 - t) / 0.01).abs() < 1e-4, "{t}: {years}");
    }
    // Below the dip the leap carries it on: t = 0.9 in by the inside radius.
    let worn = old.present(psi(55_000.0 * 2.0 / 3.0 * 0.9 / 50.0)).wastage_rate(Length::inch(0.01));
    assert!((life(worn, &US_EXISTING.rules).years - 15.0).abs() < 1e-4);
}

/// Thinning away from the seam is a solid plate with E = 1, never the seam's efficiency: 55 000 t/(24 x 5) by hand.
#[test]
fn the_solid_plate_is_a_check_of_its_own() {
    let rules = &US_EXISTING.rules;
    for (t, governs) in [(0.33, Governs::Seam), (0.31, Governs::Plate)] {
        let rated = rate(&lap(0.5).shell_plate(inch(t)), rules).unwrap();
        let solid = Pressure::mpa(rated.plate.unwrap().pressure).to_psi();
        assert!((solid - 55_000.0 * t / 120.0).abs() < 1e-9);
        assert_eq!(rated.governs, governs);
        assert_eq!(Pressure::mpa(rated.allowed).to_psi() < 144.0, governs == Governs::Plate);
    }
}

/// A present pressure exactly at the allowed one is met; a shade over it is not.
#[test]
fn an_exact_limit_does_not_fail_by_an_ulp() {
    let rules = &US_EXISTING.rules;
    let exact = rate(&lap(0.4), rules).unwrap().allowed;
    for (present, met) in [(exact * (1.0 + 1e-12), true), (exact, true), (exact * 1.000_001, false)] {
        let rated = rate(&lap(0.4).present(Pressure::mpa(present)), rules).unwrap();
        let verdict = rated.findings.find(Subject::PressureMargin, 0).unwrap().verdict;
        assert_eq!(verdict == Verdict::Met, met);
        assert!((rated.margin.unwrap() - exact / present).abs() < 1e-12);
    }
}

/// What nobody stated stands on the list: Michigan, driven rivet by the table, shear by the book, circumstances on the
/// safe side. R 408.4207 (read): second-hand lap 6, long lap of a tubular boiler 8, age 0.5 more.
#[test]
fn every_assumption_is_listed_with_its_basis() {
    let bare = Existing::new(form("lap 2"), inch(3.5), inch(0.45), Length::inch(48.0))
        .metals(Metal::Steel, Metal::Iron)
        .tension(Stress::psi(55_000.0))
        .bearing(Stress::psi(95_000.0));
    let rated = rate(&bare, &US_MICHIGAN.rules).unwrap();
    assert_eq!(rated.seam.factor.value, 8.5);
    let basis = |about: Assumed, row: u8| rated.assumptions.find(about, row).map(|a| (a.basis, a.entry));
    let none = seamwright::error::EntryNo::NONE;
    assert_eq!(basis(Assumed::Plate, 0), Some((Basis::Measured, none)));
    assert_eq!(basis(Assumed::OtherPlate, 0), Some((Basis::Assumed, none)));
    assert_eq!(basis(Assumed::Tension, 0), Some((Basis::Given, none)));
    assert_eq!(basis(Assumed::Shear, 0), Some((Basis::Tabulated, Entry::IRON_SHEAR.no())));
    // 0.45 in falls to the line of 15/32: 15/16.
    for row in [1, 2] {
        assert_eq!(basis(Assumed::Hole, row), Some((Basis::Tabulated, Entry::HOLE_TABLE_HOLE.at(7).no())));
    }
    for about in [Assumed::SecondHand, Assumed::Tubular, Assumed::LongLap, Assumed::PastAge] {
        let found = rated.assumptions.find(about, 0).unwrap();
        assert_eq!((found.basis, found.value), (Basis::Assumed, 1.0), "{about:?}");
    }
    assert!(!rated.assumptions.lost());
    // Stated, they are given, and 4.5 is left.
    let known = Service { existing: true, ..Service::new_shell() };
    let rated = rate(&bare.service(known), &US_MICHIGAN.rules).unwrap();
    assert_eq!(rated.seam.factor.value, 4.5);
    assert_eq!(rated.assumptions.find(Assumed::SecondHand, 0).unwrap().basis, Basis::Given);
}

/// The table of driven rivets goes by the plate when new: 1/2 in was 15/16, worn to 0.36 it would be 13/16.
#[test]
fn driven_rivets_by_the_plate_when_new() {
    let worn = Existing::new(form("lap 2"), inch(3.5), inch(0.36), Length::inch(48.0))
        .metals(Metal::Steel, Metal::Steel)
        .safety(5.0);
    let hole = |old: &Existing| rate(old, &US_EXISTING.rules).unwrap().joint.rows()[0].hole().to_inch();
    assert!((hole(&worn) - 0.8125).abs() < 1e-12);
    let about =
        |old: &Existing| rate(old, &US_EXISTING.rules).unwrap().assumptions.find(Assumed::PlateWhenNew, 0).copied();
    assert!(about(&worn).is_some_and(|a| a.basis == Basis::Assumed));
    assert!(about(&worn.nominal(Length::inch(0.5))).is_none());
    assert!((hole(&worn.nominal(Length::inch(0.5))) - 0.9375).abs() < 1e-12);
}

/// 55 000 psi in the state rules, 50 000 on locomotives (both read), and none where none was read.
#[test]
fn no_default_strength_without_a_jurisdiction() {
    let old = lap(0.4);
    let tension = |rules: &Rules| rate(&old, rules).unwrap().materials.plate.tension.to_psi();
    assert!((tension(&US_EXISTING.rules) - 55_000.0).abs() < 1e-6);
    // The locomotive rules give no crushing strength: it is asked for.
    let e = rate(&old, &US_LOCOMOTIVE.rules).unwrap_err();
    assert_eq!((e.kind, e.field), (ErrorKind::Missing, Field::Bearing));
    let rated = rate(&old.bearing(Stress::psi(95_000.0)), &US_LOCOMOTIVE.rules).unwrap();
    assert!((rated.materials.plate.tension.to_psi() - 50_000.0).abs() < 1e-6);
    for rules in [&US_MICHIGAN.rules, &US_CALIFORNIA.rules] {
        let e = rate(&old, rules).unwrap_err();
        assert_eq!((e.kind, e.field), (ErrorKind::Missing, Field::Tension));
    }
}

/// California s.776 (read): wide tubular boilers with laps at 50 psi; the limit governs and is named.
#[test]
fn a_limit_of_the_book_governs_by_name() {
    let known = lap(0.4).tension(Stress::psi(55_000.0)).shear(Stress::psi(44_000.0)).bearing(Stress::psi(95_000.0));
    let tubular = Service { tubular: Some(true), existing: true, ..Service::new_shell() };
    let rated = rate(&known.service(tubular).present(psi(60.0)), &US_CALIFORNIA.rules).unwrap();
    assert!((Pressure::mpa(rated.allowed).to_psi() - 50.0).abs() < 1e-9);
    assert_eq!(rated.governs, Governs::Rule(Entry::LAP_WIDE_PRESSURE.no()));
    assert_eq!(rated.findings.find(Subject::WideLap, 0).unwrap().verdict, Verdict::Open);
    assert!((Pressure::mpa(rated.test.unwrap()).to_psi() - 75.0).abs() < 1e-9);
    let looked_at = Service { stripped: true, ..tubular };
    let rated = rate(&known.service(looked_at).present(psi(60.0)), &US_CALIFORNIA.rules).unwrap();
    assert_eq!(rated.governs, Governs::Seam);
}

/// A factor given below the book's is a finding, not a refusal: the authority may set it.
#[test]
fn a_factor_below_the_book_is_flagged() {
    for (factor, met) in [(4.9, false), (5.0, true), (5.1, true)] {
        let rated = rate(&lap(0.4).safety(factor), &US_CODE.rules).unwrap();
        let found = rated.findings.find(Subject::SafetyFactor, 0).unwrap();
        assert_eq!((found.verdict == Verdict::Met, found.required), (met, 5.0), "{factor}");
    }
    let made = Service { riveting: Some(Riveting::Hand), holes: Some(HoleMaking::Punched), ..Service::new_shell() };
    let rated = rate(&lap(0.4).safety(4.9).service(made), &GERMAN_1908.rules).unwrap();
    assert_eq!(rated.findings.find(Subject::SafetyFactor, 0).unwrap().required, 5.0);
}

/// Several courses and girths, and limits from elsewhere: the least governs, the first of equals.
#[test]
fn the_table_of_a_boiler() {
    let rules = &US_MICHIGAN.rules;
    let course = |t: f64| {
        let old = lap(t).tension(Stress::psi(55_000.0)).bearing(Stress::psi(95_000.0));
        rate(&old, rules).unwrap()
    };
    let mut boiler = Boiler::new();
    assert!(boiler.governing().is_none() && boiler.test_pressure(rules).is_none());
    boiler.course("first course", &course(0.5)).unwrap();
    boiler.course("second course", &course(0.4)).unwrap();
    boiler.add(BoilerPart::Girth, "girth 1", psi(200.0)).unwrap();
    boiler.add(BoilerPart::Head, "front head", psi(150.0)).unwrap();
    assert_eq!(boiler.governing().unwrap().name, "second course");
    boiler.add(BoilerPart::Stays, "crown stays", psi(120.0)).unwrap();
    boiler.add(BoilerPart::Tubes, "tubes", psi(120.0)).unwrap();
    assert_eq!(boiler.governing().unwrap().name, "crown stays");
    assert!((boiler.test_pressure(rules).unwrap().to_psi() - 180.0).abs() < 1e-9);
    assert!(boiler.test_pressure(&US_CODE.rules).is_none());
    for bad in [-1.0, f64::NAN, f64::INFINITY, 1e9] {
        assert!(boiler.add(BoilerPart::Other, "bad", psi(bad)).is_err());
    }
    while boiler.lines().len() < seamwright::rating::MAX_LINES {
        boiler.add(BoilerPart::Other, "more", psi(300.0)).unwrap();
    }
    assert_eq!(boiler.add(BoilerPart::Other, "one too many", psi(300.0)).unwrap_err().kind, ErrorKind::NoSpace);
}

/// Each bad figure by name.
#[test]
fn errors_name_the_field() {
    let rules = &US_EXISTING.rules;
    let about = |old: Existing, rules: &Rules| {
        let e = rate(&old, rules).unwrap_err();
        (e.kind, e.field)
    };
    let mm = Length::mm;
    use ErrorKind::{BeyondTable, Inconsistent, Missing, NotFinite, NotForThisForm, TooLarge, TooSmall};
    let bare = |t: f64| {
        Existing::new(form("lap 2"), inch(3.5), inch(t), Length::inch(48.0))
            .metals(Metal::Steel, Metal::Steel)
            .safety(5.0)
    };
    let cases = [
        (about(lap(-1.0), rules), (TooSmall, Field::Plate)),
        (about(lap(f64::NAN), rules), (NotFinite, Field::Plate)),
        (about(lap(0.4).safety(0.5), rules), (TooSmall, Field::SafetyFactor)),
        (about(lap(0.4).present(psi(-3.0)), rules), (TooSmall, Field::Pressure)),
        (about(lap(0.4).corrosion(mm(-1.0)), rules), (TooSmall, Field::Corrosion)),
        (about(lap(0.4).shell_plate(inch(0.0)), rules), (TooSmall, Field::Plate)),
        (about(lap(0.4).row(3, inch(0.9)), rules), (NotForThisForm, Field::Rows)),
        (about(lap(0.4).straps(inch(0.3), None), rules), (NotForThisForm, Field::WideStrap)),
        (about(lap(0.4).present(psi(90.0)).wastage_rate(mm(-0.1)), rules), (TooSmall, Field::WastageRate)),
        (about(lap(0.4).present(psi(90.0)).earlier(mm(12.0), 0.0), rules), (TooSmall, Field::Years)),
        (about(lap(0.4).present(psi(90.0)).earlier(mm(12.0), 501.0), rules), (TooLarge, Field::Years)),
        (about(lap(0.4).present(psi(90.0)).earlier(mm(9.0), 5.0), rules), (Inconsistent, Field::Plate)),
        (about(bare(0.7), rules), (BeyondTable, Field::Plate)),
        (about(bare(0.4).tension(Stress::psi(-1.0)), rules), (TooSmall, Field::Tension)),
        (about(lap(0.4), &STRUCTURAL.rules), (Missing, Field::Tension)),
        (about(bare(0.4).permissible(), rules), (Missing, Field::Tension)),
    ];
    for (found, expected) in cases {
        assert_eq!(found, expected);
    }
}
