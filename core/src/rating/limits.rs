//! Limits of the book on a shell, whatever its joint holds.

use super::{Assumed, Assumptions, Footing, Shell, factor_with};
use crate::check::{Findings, Required, Subject};
use crate::error::Error;
use crate::joint::{Form, JointKind};
use crate::math;
use crate::rules::{Entry, Rules};
use crate::step::Plain;

/// The greatest working pressures of a shell with a lap along it, MPa, each with its entry.
pub(super) fn lap_limits(rules: &Rules, shell: &Shell, notes: &mut Assumptions) -> [Option<(Entry, f64)>; 4] {
    let service = &shell.service;
    let d = shell.inside.to_mm();
    let limit = |entry: Entry, scale: f64| {
        let value = rules.get(entry);
        (value > 0.0).then_some((entry, value / scale))
    };
    let mut ask = |entry: Entry, about: Assumed, stated: Option<bool>| {
        rules.get(entry) > 0.0 && notes.circumstance(about, stated, entry.no(), true)
    };
    let second = Entry::LAP_SECOND_PRESSURE;
    let second_applies =
        ask(second, Assumed::Tubular, service.tubular) && ask(second, Assumed::SecondHand, service.second_hand);
    let wide = Entry::LAP_WIDE_PRESSURE;
    let wide_applies = math::below(rules.get(Entry::LAP_WIDE_ABOVE), d)
        && ask(wide, Assumed::Tubular, service.tubular)
        && !ask(wide, Assumed::Stripped, Some(service.stripped));
    [
        limit(Entry::LAP_PRESSURE, 1.0),
        limit(Entry::LAP_PRODUCT, d),
        limit(second, 1.0).filter(|_| second_applies),
        limit(wide, 1.0).filter(|_| wide_applies),
    ]
}

/// The least shell plate for a diameter, mm, and its entry.
#[must_use]
pub fn least_plate(rules: &Rules, inside: f64) -> Option<(Entry, f64)> {
    let lines = (0..4).map(|i| (Entry::SHELL_DIAMETER.at(i), Entry::SHELL_PLATE.at(i)));
    for (diameter, plate) in lines {
        let most = rules.get(diameter);
        if most <= 0.0 {
            break;
        }
        if math::at_most(inside, most) {
            return Some((plate, rules.get(plate)));
        }
    }
    Some((Entry::SHELL_ABOVE, rules.get(Entry::SHELL_ABOVE))).filter(|(_, t)| *t > 0.0)
}

/// The book's rules on a shell of a plate, with a joint of a form along it, at a working pressure (MPa).
pub(crate) fn findings(
    rules: &Rules,
    shell: &Shell,
    form: &Form,
    plate: f64,
    pressure: f64,
    out: &mut Findings,
) -> Result<(), Error> {
    let d = shell.inside.to_mm();
    if let Some((entry, least)) = least_plate(rules, d) {
        out.compare(Subject::ShellPlate, 0, entry.no(), Required::AtLeast, least, plate);
    }
    if let Some(given) = shell.safety.filter(|_| shell.footing == Footing::Ultimate) {
        let mut book = *shell;
        book.safety = None;
        // A book without a factor has nothing to compare with.
        if let Ok(factor) = factor_with(Plain, rules, &book, form, &mut Assumptions::new()) {
            let least = match factor.basis {
                super::FactorBasis::Constant => 1.4 * factor.value,
                _ => factor.value,
            };
            out.compare(Subject::SafetyFactor, 0, factor.entry, Required::AtLeast, least, given);
        }
    }
    if form.kind() == JointKind::Lap {
        let most = rules.get(Entry::LAP_DIAMETER);
        if most > 0.0 {
            out.compare(Subject::LapDiameter, 0, Entry::LAP_DIAMETER.no(), Required::AtMost, most, d);
        }
        for (entry, most) in lap_limits(rules, shell, &mut Assumptions::new()).into_iter().flatten() {
            let subject = match entry {
                Entry::LAP_SECOND_PRESSURE => Subject::SecondHandLap,
                Entry::LAP_WIDE_PRESSURE => Subject::WideLap,
                _ => Subject::LapPressure,
            };
            out.compare(subject, 0, entry.no(), Required::AtMost, most, pressure);
        }
    }
    if rules.on(Entry::SEAMS_STAGGERED) {
        out.note_of(Subject::Staggered, Entry::SEAMS_STAGGERED.no(), f64::NAN, f64::NAN);
    }
    Ok(())
}
