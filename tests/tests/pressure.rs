//! The working pressure of shells against worked figures from outside, and each switch of the formulas at its limit.

mod support;

use seamwright::check::check;
use seamwright::error::ErrorKind;
use seamwright::joint::Form;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{
    Allowed, Assumed, Assumptions, Basis, FactorBasis, Footing, HoleMaking, Riveting, Seam, Service, Shell,
    joint_pressure, pressure_with,
};
use seamwright::rules::{BRITISH_MARINE, Entry, GERMAN_1908, INDIAN, METRIC, Rules, US_CODE, US_EXISTING};
use seamwright::step::Plain;
use support::{form, joint, materials, symbols};

const IN: f64 = 25.4;

fn allowed(rules: &Rules, shell: &Shell, form: &Form, t: f64, st: Stress, j: f64) -> (Allowed, Assumptions) {
    let mut notes = Assumptions::new();
    let seam = Seam { form, plate: t, tension: st.to_mpa(), efficiency: j };
    let found = pressure_with(Plain, rules, shell, &seam, &mut notes).unwrap();
    (found, notes)
}

fn close(a: f64, b: f64, within: f64) {
    assert!((a - b).abs() <= within, "{a} is not {b}");
}

/// Applied Science for Metal Workers, s. 348 (read): 1/2 in, 60 000 psi, half credited, R = 20 in, FS 6: 125 psi.
#[test]
fn the_massachusetts_example() {
    let shell = Shell::new(Length::inch(40.0), Footing::Ultimate).safety(6.0);
    let (p, _) = allowed(&US_EXISTING.rules, &shell, &form("lap 1"), 0.5 * IN, Stress::psi(60_000.0), 0.5);
    close(Pressure::mpa(p.pressure).to_psi(), 125.0, 1e-9);
    assert_eq!(p.factor.basis, FactorBasis::Given);
}

/// Reichs-Gesetzblatt 1909 p. 30, III.1 (formula and constants read, the figures derived from it by hand): D 2000 mm,
/// 12 atm, K 36, x 4, z 0.85 want s = 16.6863 mm: 2000 x 12 x 4/(200 x 36 x 0.85) + 1.
#[test]
fn the_german_law() {
    let s = 2000.0 * 12.0 * 4.0 / (200.0 * 36.0 * 0.85) + 1.0;
    close(s, 16.6863, 5e-5);
    let made = Service { riveting: Some(Riveting::Machine), ..Service::new_shell() };
    let shell = Shell::new(Length::mm(2000.0), Footing::Ultimate).service(made);
    let (p, _) = allowed(&GERMAN_1908.rules, &shell, &form("double 2"), s, Stress::kgf_mm2(36.0), 0.85);
    close(Pressure::mpa(p.pressure).to_kgf_cm2(), 12.0, 1e-9);
    // III.1 and III.9 (read): the whole table of x, hand and machine, and the surcharges on it.
    for (name, machine) in
        [("lap 2", 4.5), ("single 1", 4.5), ("unequal 2", 4.1), ("unequal 3", 4.0), ("double 2", 4.0)]
    {
        for (holes, more) in [(HoleMaking::Drilled, 0.0), (HoleMaking::Reamed, 0.1), (HoleMaking::Punched, 0.25)] {
            for (riveting, hand) in [(Some(Riveting::Machine), 0.0), (Some(Riveting::Hand), 0.25), (None, 0.25)] {
                let made = Service { riveting, holes: Some(holes), ..Service::new_shell() };
                let shell = Shell::new(Length::mm(2000.0), Footing::Ultimate).service(made);
                let (p, notes) = allowed(&GERMAN_1908.rules, &shell, &form(name), s, Stress::kgf_mm2(36.0), 0.85);
                close(p.factor.value, machine + more + hand, 1e-12);
                let said = notes.find(Assumed::HandRiveted, 0).unwrap().basis;
                assert_eq!(said, if riveting.is_some() { Basis::Given } else { Basis::Assumed });
            }
        }
    }
}

/// (T - 2) S J/(C D) with T = 16, S = 28, J = 75, D = 60, C = 2.75: 14 x 28 x 75/(2.75 x 60) = 178.18 lb/in2 (by hand).
#[test]
fn thirty_seconds_and_tons() {
    let shell = Shell::new(Length::inch(60.0), Footing::Ultimate);
    let tons = Stress::long_ton_in2(28.0);
    for rules in [&INDIAN.rules, &BRITISH_MARINE.rules] {
        for (name, c) in [("double 2", 2.75), ("lap 1", 3.0), ("lap 2", 2.9), ("lap 3", 2.83)] {
            let (p, _) = allowed(rules, &shell, &form(name), 0.5 * IN, tons, 0.75);
            close(Pressure::mpa(p.pressure).to_psi(), 14.0 * 28.0 * 75.0 / (c * 60.0), 1e-9);
        }
        // The books have no C for these.
        for name in ["lap 4", "single 2"] {
            let form = form(name);
            let seam = Seam { form: &form, plate: 12.7, tension: 400.0, efficiency: 0.7 };
            let e = pressure_with(Plain, rules, &shell, &seam, &mut Assumptions::new()).unwrap_err();
            assert_eq!(e.kind, ErrorKind::Missing, "{name}");
        }
        // A corrosion allowance comes on top: 1/32 in more leaves T - 3.
        let worn = shell.corrosion(Length::inch(1.0 / 32.0));
        let (p, _) = allowed(rules, &worn, &form("double 2"), 0.5 * IN, tons, 0.75);
        close(Pressure::mpa(p.pressure).to_psi(), 13.0 * 28.0 * 75.0 / (2.75 * 60.0), 1e-9);
    }
}

/// Reg. 366 (read): 2 f E (T - 0.03)/(D + T - 0.03), here 2 x 12 000 x 0.7 x 0.47/(60.47) psi, by hand.
#[test]
fn the_mean_diameter() {
    let rules = INDIAN.rules.with(Entry::PRESSURE_FORM, 4.0).unwrap();
    let rules = rules.with(Entry::PRESSURE_ALLOWANCE, 0.03 * IN).unwrap();
    let shell = Shell::new(Length::inch(60.0), Footing::Permissible);
    let (p, _) = allowed(&rules, &shell, &form("double 2"), 0.5 * IN, Stress::psi(12_000.0), 0.7);
    close(Pressure::mpa(p.pressure).to_psi(), 2.0 * 12_000.0 * 0.7 * 0.47 / 60.47, 1e-9);
}

/// Oklahoma 380:25-5-7 (read): the outside radius where t is more than a tenth of R. R = 10 in, so at 1 in.
#[test]
fn the_outside_radius_below_at_and_above_its_limit() {
    let shell = Shell::new(Length::inch(20.0), Footing::Ultimate).safety(5.0);
    for (t, r) in [(0.999, 10.0), (1.0, 10.0), (1.0 + 1e-12, 10.0), (1.001, 11.001)] {
        let (p, _) = allowed(&US_EXISTING.rules, &shell, &form("lap 2"), t * IN, Stress::psi(55_000.0), 0.7);
        close(Pressure::mpa(p.pressure).to_psi(), 55_000.0 * t * 0.7 / (r * 5.0), 1e-8);
        assert_eq!(p.outside, r > 10.0);
    }
}

/// Metric textbooks (Khurmi 9.8 to 9.10, read): t = p D/(2 st eta) + 1, backwards; an allowance given takes its place.
#[test]
fn the_textbook_shell() {
    let shell = Shell::new(Length::mm(1200.0), Footing::Permissible);
    let t = 2.5 * 1200.0 / (2.0 * 80.0 * 0.75) + 1.0;
    let (p, _) = allowed(&METRIC.rules, &shell, &form("double 3"), t, Stress::mpa(80.0), 0.75);
    close(p.pressure, 2.5, 1e-12);
    let two = shell.corrosion(Length::mm(2.0));
    let (p, _) = allowed(&METRIC.rules, &two, &form("double 3"), t + 1.0, Stress::mpa(80.0), 0.75);
    close(p.pressure, 2.5, 1e-12);
    // An allowance as thick as the plate leaves nothing, and never less.
    for t in [1.0, 0.6] {
        let (p, _) = allowed(&METRIC.rules, &shell, &form("double 3"), t, Stress::mpa(80.0), 0.75);
        assert_eq!(p.pressure, 0.0);
    }
}

/// Double-riveted lap, 3 1/2 in pitch, 15/16 hole, 55 000/44 000/95 000 psi, R 24 in, FS 5 (worked in a review of the
/// rules, recomputed by hand): thinning from 1/2 to 0.45 in does not lower the pressure, for the rivets govern.
#[test]
fn thinning_that_does_not_lower_the_pressure() {
    let shell = Shell::new(Length::inch(48.0), Footing::Ultimate).safety(5.0);
    for (t, psi) in [(0.50, 144.6), (0.45, 144.6), (0.40, 134.2)] {
        let psi_ = Stress::psi(1.0).to_mpa();
        let s = symbols(&[
            ("p", 3.5 * IN),
            ("t", t * IN),
            ("d", 0.9375 * IN),
            ("st", 55_000.0 * psi_),
            ("ss", 44_000.0 * psi_),
            ("sc", 95_000.0 * psi_),
        ]);
        let (j, m) = (joint(form("lap 2"), &s).unwrap(), materials(&s));
        let a = check(&j, &m, &US_EXISTING.rules).unwrap();
        let p = joint_pressure(&j, &m, &a, &shell, &US_EXISTING.rules).unwrap();
        close(p.to_psi(), psi, 0.05);
    }
}

/// The early code's factor 5 (memory), and a state book that gives none: nobody's factor is taken by silence.
#[test]
fn a_factor_of_safety_is_never_invented() {
    let shell = Shell::new(Length::inch(48.0), Footing::Ultimate);
    let f = form("lap 2");
    let (p, _) = allowed(&US_CODE.rules, &shell, &f, 0.5 * IN, Stress::psi(55_000.0), 0.7);
    assert_eq!((p.factor.value, p.factor.basis), (5.0, FactorBasis::Book));
    let seam = Seam { form: &f, plate: 12.7, tension: 379.0, efficiency: 0.7 };
    for rules in [&US_EXISTING.rules, &METRIC.rules] {
        let e = pressure_with(Plain, rules, &shell, &seam, &mut Assumptions::new()).unwrap_err();
        assert_eq!(e.kind, ErrorKind::Missing);
        assert_eq!(e.field, seamwright::bounds::Field::SafetyFactor);
    }
}
