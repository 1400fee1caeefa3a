//! The factor of safety: classes by maximum, surcharges added.

use super::{Assumed, Assumptions, Basis, Footing, HoleMaking, Riveting, Shell};
use crate::bounds::Field;
use crate::error::{EntryNo, Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::joint::{Form, JointKind};
use crate::math;
use crate::rules::{Entry, PressureForm, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Section, Why};

/// Where a factor of safety comes from.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum FactorBasis {
    /// Given by the user.
    Given,
    /// From the rule book.
    Book,
    /// In the constant `C` of the book's formula.
    Constant,
    /// In the permissible stresses.
    InStresses,
}

/// A factor of safety and where it comes from.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Factor<N = f64> {
    /// The factor; the constant `C` where the basis says so.
    pub value: N,
    /// Where it comes from.
    pub basis: FactorBasis,
    /// The entry of the class that governs.
    pub entry: EntryNo,
}

/// The constant `C` of the formula in thirty-seconds and tons.
fn constant(rules: &Rules, form: &Form) -> (Entry, f64) {
    let entry = match form.kind() {
        JointKind::Lap => Entry::PRESSURE_LAP.at(form.row_count().wrapping_sub(1).min(3)),
        JointKind::SingleStrap => Entry::PRESSURE_SINGLE,
        JointKind::DoubleStrap => Entry::PRESSURE_DOUBLE,
    };
    // The list ends with four rows.
    if form.kind() == JointKind::Lap && form.row_count() > 4 {
        (Entry::PRESSURE_LAP, 0.0)
    } else {
        (entry, rules.get(entry))
    }
}

/// The class of a joint by its kind alone.
fn class_of(rules: &Rules, form: &Form) -> Entry {
    match form.kind() {
        JointKind::Lap => Entry::SAFETY_LAP,
        JointKind::SingleStrap => Entry::SAFETY_SINGLE,
        JointKind::DoubleStrap => {
            let lesser = form.unequal() && form.row_count() == 2 && rules.get(Entry::SAFETY_DOUBLE_UNEQUAL) > 0.0;
            if lesser { Entry::SAFETY_DOUBLE_UNEQUAL } else { Entry::SAFETY_DOUBLE }
        }
    }
}

/// The classes that a shell falls under, and whether it does, in the order of the table.
fn classes(rules: &Rules, shell: &Shell, form: &Form, notes: &mut Assumptions) -> [(Entry, bool); 6] {
    let s = &shell.service;
    let lap = form.kind() == JointKind::Lap;
    let has = |entry: Entry| rules.get(entry) > 0.0;
    let mut ask = |entry: Entry, about: Assumed, stated: Option<bool>, applies: bool| {
        (entry, applies && has(entry) && notes.circumstance(about, stated, entry.no(), true))
    };
    let second = if lap { Entry::SAFETY_SECOND_LAP } else { Entry::SAFETY_SECOND_BUTT };
    let second = ask(second, Assumed::SecondHand, s.second_hand, true);
    let long = s.lap_length.map(|l| math::below(rules.get(Entry::SAFETY_LONG_LAP_ABOVE), l.to_mm()));
    let tubular = ask(Entry::SAFETY_LONG_LAP, Assumed::Tubular, s.tubular, lap);
    let long = (tubular.0, tubular.1 && ask(tubular.0, Assumed::LongLap, long, lap).1);
    [
        (class_of(rules, form), true),
        (Entry::SAFETY_EXISTING, s.existing),
        second,
        long,
        ask(Entry::SAFETY_FIRE_LAP, Assumed::LapInFire, s.lap_in_fire, lap),
        ask(Entry::SAFETY_WEIGHT, Assumed::WeightOnSeam, s.weight_on_seam, true),
    ]
}

/// The factor of safety of a shell with a longitudinal joint of a form, by the book and the circumstances; what was
/// not stated is noted.
///
/// # Errors
/// [`ErrorKind::Missing`] where neither the user nor the book gives a factor.
#[inline]
pub fn factor_with<C: Ctx>(
    c: C,
    rules: &Rules,
    shell: &Shell,
    form: &Form,
    notes: &mut Assumptions,
) -> Result<Factor<C::N>, Error> {
    shell.validate()?;
    c.section(Section::Safety);
    let name = Name(Q::Safety, 0);
    if shell.footing == Footing::Permissible {
        let value = c.given(name, shell.safety.unwrap_or(1.0));
        notes.put(Assumed::SafetyFactor, 0, Basis::Given, EntryNo::NONE, value.value());
        return Ok(Factor { value, basis: FactorBasis::InStresses, entry: EntryNo::NONE });
    }
    if let Some(given) = shell.safety {
        notes.put(Assumed::SafetyFactor, 0, Basis::Given, EntryNo::NONE, given);
        return Ok(Factor { value: c.given(name, given), basis: FactorBasis::Given, entry: EntryNo::NONE });
    }
    if rules.pressure_form() == PressureForm::ThirtySeconds {
        let (entry, value) = constant(rules, form);
        if value <= 0.0 {
            return Err(Error::new(ErrorKind::Missing, Field::SafetyFactor).entry(entry.no()));
        }
        notes.put(Assumed::SafetyFactor, 0, Basis::Tabulated, entry.no(), 1.4 * value);
        let value = c.table(Name(Q::PressureConstant, 0), entry.no(), value);
        return Ok(Factor { value, basis: FactorBasis::Constant, entry: entry.no() });
    }
    let mut found: Option<(C::N, Entry)> = None;
    for (entry, applies) in classes(rules, shell, form, notes) {
        let value = rules.get(entry);
        if !applies || value <= 0.0 {
            continue;
        }
        let class = c.table(Name(Q::SafetyClass, 0), entry.no(), value);
        found = Some(match found {
            Some((old, by)) => {
                let by = if value > old.value() { entry } else { by };
                (c.greater(name, Why::Greatest(by.no()), old, class), by)
            }
            None => (class, entry),
        });
    }
    let Some((mut value, entry)) = found else {
        return Err(Error::new(ErrorKind::Missing, Field::SafetyFactor).entry(class_of(rules, form).no()));
    };
    let add = |value: C::N, entry: Entry, applies: bool| {
        if !applies || rules.get(entry) <= 0.0 {
            return value;
        }
        let more = c.table(Name(Q::SafetyAdded, 0), entry.no(), rules.get(entry));
        c.formula(name, Formula::SafetySum.no(), formula::safety_sum(value, more))
    };
    let s = &shell.service;
    let has = |entry: Entry| rules.get(entry) > 0.0;
    if has(Entry::SAFETY_AGE_ADD) {
        let entry = Entry::SAFETY_AGE_ADD;
        let old = notes.circumstance(Assumed::PastAge, s.past_age_limit, entry.no(), true);
        let class = value;
        value = add(value, entry, old);
        // After inspection and test the surcharge stops there; it never takes away from the class.
        let ceiling = rules.get(Entry::SAFETY_AGE_TESTED);
        if old && s.tested && ceiling > 0.0 && value.value() > ceiling {
            let ceiling = c.table(Name(Q::SafetyClass, 0), Entry::SAFETY_AGE_TESTED.no(), ceiling);
            value = c.greater(name, Why::Cap(Entry::SAFETY_AGE_TESTED.no()), ceiling, class);
        }
    }
    if has(Entry::SAFETY_HAND_ADD) {
        let entry = Entry::SAFETY_HAND_ADD;
        let hand = s.riveting.map(|r| r == Riveting::Hand);
        value = add(value, entry, notes.circumstance(Assumed::HandRiveted, hand, entry.no(), true));
    }
    if has(Entry::SAFETY_PUNCHED_ADD) || has(Entry::SAFETY_REAMED_ADD) {
        let punched = s.holes.map(|h| h == HoleMaking::Punched);
        let entry = Entry::SAFETY_PUNCHED_ADD;
        let punched = notes.circumstance(Assumed::HolesPunched, punched, entry.no(), true);
        value = add(value, entry, punched);
        value = add(value, Entry::SAFETY_REAMED_ADD, s.holes == Some(HoleMaking::Reamed));
    }
    notes.put(Assumed::SafetyFactor, 0, Basis::Tabulated, entry.no(), value.value());
    Ok(Factor { value, basis: FactorBasis::Book, entry: entry.no() })
}
