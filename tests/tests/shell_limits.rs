//! Limits of a book on shells and their seams: below, exactly at, a rounding error away from, and above each.
//!
//! The sources of the rules stand beside them in `core/src/rules` and in `tests/vectors/rules-*.toml`.

mod support;

use seamwright::check::{Subject, Verdict, check};
use seamwright::joint::{Form, Joint, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{
    Assumptions, Existing, Footing, Governs, KnownLength, Service, Shell, factor_with, joint_pressure_with, rate,
};
use seamwright::rules::{
    BRITISH_MARINE, Entry, GERMAN_1908, INDIAN, METRIC, Rules, US_CALIFORNIA, US_CODE, US_MICHIGAN, US_NORTH_CAROLINA,
};
use seamwright::step::Plain;
use seamwright::vessel::{Girth, GirthPlace, Longitudinal, girth_check};
use support::form;

/// What a rounding error may be, and what is more than one.
const HAIR: f64 = 1e-12;
const MORE: f64 = 1e-6;

/// A rule that changes above a limit: what holds at it holds a hair above; more than a hair above, the other.
fn above<T: PartialEq + core::fmt::Debug>(what: &str, limit: f64, (to, over): (T, T), found: impl Fn(f64) -> T) {
    for x in [limit * (1.0 - MORE), limit * (1.0 - HAIR), limit, limit * (1.0 + HAIR)] {
        assert_eq!(found(x), to, "{what} at {x} of {limit}");
    }
    assert_eq!(found(limit * (1.0 + MORE)), over, "{what} above {limit}");
}

/// A rule that changes from a limit on.
fn from<T: PartialEq + core::fmt::Debug>(what: &str, limit: f64, (under, at): (T, T), found: impl Fn(f64) -> T) {
    assert_eq!(found(limit * (1.0 - MORE)), under, "{what} under {limit}");
    for x in [limit * (1.0 - HAIR), limit, limit * (1.0 + HAIR), limit * (1.0 + MORE)] {
        assert_eq!(found(x), at, "{what} at {x} of {limit}");
    }
}

fn inch(x: f64) -> f64 {
    25.4 * x
}

/// Pounds on a square inch in MPa, from their definitions.
fn psi(x: f64) -> f64 {
    x * 0.453_592_37 * 9.806_65 / (25.4 * 25.4)
}

/// A strong double-riveted lap of half an inch that stands, so that the rules alone decide.
fn lap(inside: f64) -> Existing {
    Existing::new(form("lap 2"), known(inch(3.5)), known(inch(0.5)), Length::mm(inside))
        .hole(known(inch(0.9375)))
        .tension(Stress::psi(55_000.0))
        .shear(Stress::psi(44_000.0))
        .bearing(Stress::psi(95_000.0))
        .safety(5.0)
}

fn known(mm: f64) -> KnownLength {
    KnownLength::given(Length::mm(mm))
}

fn verdict(old: &Existing, rules: &Rules, subject: Subject) -> Option<Verdict> {
    rate(old, rules).unwrap().findings.find(subject, 0).map(|f| f.verdict)
}

/// Reg. 365F: a lap up to 130 lb/in2, and up to P D = 9500 lb/in2 inches; on 95 in the second comes first, at 100.
#[test]
fn pressures_of_laps() {
    use Verdict::{Met, Open};
    let about = |inside: f64| {
        move |p: f64| {
            let old = lap(inside).present(Pressure::mpa(p)).service(Service::new_shell());
            verdict(&old, &INDIAN.rules, Subject::LapPressure)
        }
    };
    // Two findings bear the name; the first is the pressure's.
    above("pressure of a lap", psi(130.0), (Some(Met), Some(Open)), about(inch(40.0)));
    let product = |p: f64| {
        let old = lap(inch(95.0)).present(Pressure::mpa(p)).service(Service::new_shell());
        let rated = rate(&old, &INDIAN.rules).unwrap();
        let found = rated.findings.iter().find(|f| f.entry == Entry::LAP_PRODUCT.no()).unwrap();
        assert!((found.required - psi(100.0)).abs() < 1e-9);
        found.verdict
    };
    above("pressure times diameter", psi(100.0), (Met, Open), product);
}

/// California s.776: second-hand tubular boilers with laps, and wide ones, at 50 psi; wide is above 36 in.
#[test]
fn tubular_boilers_with_laps() {
    let rules = &US_CALIFORNIA.rules;
    let tubular = Service { tubular: Some(true), second_hand: Some(false), existing: true, ..Service::new_shell() };
    let wide = |inside: f64| {
        let rated = rate(&lap(inside).service(tubular), rules).unwrap();
        rated.governs == Governs::Rule(Entry::LAP_WIDE_PRESSURE.no())
    };
    above("a wide shell", inch(36.0), (false, true), wide);
    let second = Service { second_hand: Some(true), ..tubular };
    for (service, subject) in [(tubular, Subject::WideLap), (second, Subject::SecondHandLap)] {
        let at = |p: f64| verdict(&lap(inch(40.0)).service(service).present(Pressure::mpa(p)), rules, subject);
        above("50 psi", psi(50.0), (Some(Verdict::Met), Some(Verdict::Open)), at);
    }
}

/// Michigan R 408.4207 and 13 NCAC 13 .0504: 8 for a continuous lap longer than 12 ft.
#[test]
fn long_laps() {
    let factor = |rules: &Rules, service: Service| {
        let shell = Shell::new(Length::inch(48.0), Footing::Ultimate).service(service);
        factor_with(Plain, rules, &shell, &form("lap 2"), &mut Assumptions::new()).unwrap().value
    };
    for (rules, short) in [(&US_MICHIGAN.rules, 4.5), (&US_NORTH_CAROLINA.rules, 6.0)] {
        let long = |mm: f64| {
            let lap_length = Some(Length::mm(mm));
            let service = Service { existing: true, tubular: Some(true), lap_length, ..Service::new_shell() };
            factor(rules, service)
        };
        above("length of a lap", 12.0 * inch(12.0), (short, 8.0), long);
    }
    // Michigan: the half for age stops at 5.5 after inspection and test, and takes nothing from a class above it.
    let rules = &US_MICHIGAN.rules;
    let aged = |tested: bool, second_hand: Option<bool>| {
        factor(
            rules,
            Service { existing: true, past_age_limit: Some(true), tested, second_hand, ..Service::new_shell() },
        )
    };
    assert_eq!([aged(false, None), aged(true, Some(false))], [6.5, 5.0], "unstated counts as second-hand: 6 and 0.5");
    assert_eq!([aged(true, Some(true)), aged(false, Some(true))], [6.0, 6.5]);
    for (class, to) in [(4.9, 5.4), (5.0, 5.5), (5.1, 5.5), (5.5, 5.5), (5.6, 5.6)] {
        let rules = rules.with(Entry::SAFETY_EXISTING, class).unwrap();
        let service = Service { existing: true, past_age_limit: Some(true), tested: true, ..Service::new_shell() };
        assert!((factor(&rules, service) - to).abs() < 1e-12, "{class}");
    }
}

/// A double-riveted girth under a strong longitudinal seam, on a plate, at a pressure.
fn girth(rules: &Rules, pitch: f64, plate: f64, pressure: f64, place: GirthPlace) -> Girth {
    let seam = |f: Form, p: f64| -> Joint {
        JointSpec::new(f, Length::mm(p), Length::mm(plate), Length::mm(20.0)).build().unwrap()
    };
    let steel = Materials::new(Stress::mpa(430.0), Stress::mpa(430.0)).bearing(Stress::mpa(2000.0));
    let shell = Shell::new(Length::mm(1500.0), Footing::Ultimate).safety(5.0);
    let along = seam(form("lap 2"), 80.0);
    let analysis = check(&along, &steel, rules).unwrap();
    let notes = &mut Assumptions::new();
    let allowed = joint_pressure_with(Plain, &along, &steel, &analysis, &shell, rules, notes).unwrap();
    let long = Longitudinal { joint: &along, materials: &steel, credited: analysis.credited, allowed };
    girth_check(rules, &shell, &long, &seam(form("lap 1"), pitch), place, Pressure::mpa(pressure)).unwrap()
}

/// Rows of a girth seam: Reg. 104 (double above 11/16 in), marine rules III.9 (double above 12.5 mm, treble from 25 mm).
#[test]
fn rows_of_girth_seams() {
    let rows = |rules: &'static Rules, place: GirthPlace| {
        move |plate: f64| {
            let found = girth(rules, 80.0, plate, 0.01, place);
            found.findings.iter().filter(|f| f.subject == Subject::GirthRows).map(|f| f.required).fold(1.0, f64::max)
        }
    };
    above("between rings", inch(11.0 / 16.0), (1.0, 2.0), rows(&INDIAN.rules, GirthPlace::Middle));
    for place in [GirthPlace::Middle, GirthPlace::End, GirthPlace::Stayed] {
        above("marine rules", 12.5, (1.0, 2.0), rows(&GERMAN_1908.rules, place));
    }
    from("marine rules, between rings", 25.0, (2.0, 3.0), rows(&GERMAN_1908.rules, GirthPlace::Middle));
    from("marine rules, at an end", 25.0, (2.0, 2.0), rows(&GERMAN_1908.rules, GirthPlace::End));
}

/// Efficiencies of a girth seam, moved past what the rule asks for by its share: Par. 184 asks 50 and 35 per cent of
/// the longitudinal seam; Reg. 104 38 and 42 per cent of the plate that the formula asks for.
#[test]
fn efficiencies_of_girth_seams() {
    // The seam along the shell, tearing along a row of 20 mm holes: 75 per cent of its pitch of 80 mm.
    let verdict = |found: &Girth| found.findings.find(Subject::GirthEfficiency, 0).unwrap().verdict;
    for (place, share, entry) in [
        (GirthPlace::Middle, 0.5, Entry::GIRTH_SHARE_MIDDLE),
        (GirthPlace::End, 0.5, Entry::GIRTH_SHARE_END),
        (GirthPlace::Stayed, 0.35, Entry::GIRTH_SHARE_STAYED),
    ] {
        let at = |efficiency: f64| {
            let found = girth(&US_CODE.rules, 20.0 / (1.0 - efficiency), 10.0, 0.01, place);
            assert!((found.needed - share * 0.75).abs() < 1e-12 && found.entry == entry.no(), "{place:?}");
            verdict(&found)
        };
        from("share of the longitudinal seam", share * 0.75, (Verdict::Open, Verdict::Met), at);
    }
    // Reg. 104 at the pressure that the longitudinal seam carries: the formula asks for the plate there is.
    let full = girth(&INDIAN.rules, 80.0, 10.0, 0.01, GirthPlace::End);
    let carried = 2.0 * 430.0 * 0.75 * (10.0 - inch(2.0 / 32.0)) / (1500.0 * 5.0);
    assert!(full.pressure > carried);
    let at =
        |efficiency: f64| verdict(&girth(&INDIAN.rules, 20.0 / (1.0 - efficiency), 10.0, carried, GirthPlace::End));
    from("percentage of the plate", 0.38, (Verdict::Open, Verdict::Met), at);
    for rules in [&METRIC.rules, &BRITISH_MARINE.rules] {
        // Without a rule of the book the load on the end alone asks.
        assert_eq!(girth(rules, 80.0, 10.0, 0.01, GirthPlace::Middle).entry, seamwright::error::EntryNo::NONE);
    }
}
