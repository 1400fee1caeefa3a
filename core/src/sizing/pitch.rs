//! The pitch: three balances, floor, cap, rounding.

use super::Brief;
use crate::bounds::Field;
use crate::check::{densest, thinner};
use crate::error::{EntryNo, Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::given::{Given, pick};
use crate::joint::{Joint, JointKind, MAX_ROWS};
use crate::math;
use crate::modes::{deducted, rivet_fates};
use crate::proportion::{self, Limit};
use crate::rules::{Balance, Diameter, Entry, Rounding, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Section, Why};

/// What decided the pitch.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Decided {
    /// The user.
    Given,
    /// The balance against the rivets.
    Balance,
    /// The least pitch of the book.
    Floor,
    /// The greatest pitch of the book.
    Cap,
}

/// The pitch of the outer row, mm, and what it was chosen from.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PitchChoice<N = f64> {
    /// Balanced on the outer row against all rivets in shear.
    pub by_shear: N,
    /// Balanced on the outer row against the weaker of shear and bearing, rivet by rivet.
    pub by_weaker: N,
    /// From here on no plate mode is weaker than the rivets.
    pub by_all_modes: N,
    /// Which of the three the book takes; for a thin plate whose hole was rounded up never the first.
    pub balance: Balance,
    /// The least pitch of the book.
    pub least: N,
    /// The greatest pitch of the book.
    pub greatest: Limit<N>,
    /// The pitch taken.
    pub taken: f64,
    /// What decided it.
    pub decided: Decided,
}

impl<N: Num> PitchChoice<N> {
    /// Nothing chosen yet.
    #[inline]
    pub(super) fn blank() -> Self {
        let zero = N::lit(0.0);
        PitchChoice {
            by_shear: zero,
            by_weaker: zero,
            by_all_modes: zero,
            balance: Balance::Shear,
            least: zero,
            greatest: Limit::None,
            taken: 0.0,
            decided: Decided::Given,
        }
    }

    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> PitchChoice {
        PitchChoice {
            by_shear: self.by_shear.value(),
            by_weaker: self.by_weaker.value(),
            by_all_modes: self.by_all_modes.value(),
            balance: self.balance,
            least: self.least.value(),
            greatest: self.greatest.values(),
            taken: self.taken,
            decided: self.decided,
        }
    }
}

/// The rivets of each row, and of all.
struct Rivets<N> {
    shear: N,
    weaker: N,
    by_row: [N; MAX_ROWS],
}

#[inline]
fn rivets<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules) -> Rivets<C::N> {
    let zero = C::N::lit(0.0);
    let mut sum = Rivets { shear: zero, weaker: zero, by_row: [zero; MAX_ROWS] };
    let mut first = true;
    for (row, slot) in (1..=joint.form().row_count()).zip(sum.by_row.iter_mut()) {
        let at = u8::try_from(row).unwrap_or(0);
        let fates = rivet_fates(c, joint, given, rules, row, None, true);
        let (shear, weaker) = fates.full(c, at, joint.form().row(row).planes);
        let n = given.rivets_in(row);
        let add = |sum: C::N, one: C::N, q: Q| {
            let held = formula::row_hold(n, one);
            let total = if first { held } else { formula::cut_strength(sum, held) };
            c.formula(Name(q, at), Formula::CutStrength.no(), total)
        };
        *slot = c.formula(Name(Q::RowRivetsHold, at), Formula::RowHold.no(), formula::row_hold(n, weaker));
        sum.shear = add(sum.shear, shear, Q::ShearAll);
        sum.weaker = add(sum.weaker, weaker, Q::RivetsWeaker);
        first = false;
    }
    sum
}

/// Chooses the pitch and returns the width of the strip, mm. `thin`: the hole came from shear = bearing.
#[inline(never)]
pub(super) fn choose<C: Ctx>(
    c: C,
    brief: &Brief,
    probe: &Joint,
    rules: &Rules,
    thin: bool,
    choice: &mut PitchChoice<C::N>,
) -> Result<f64, Error> {
    let form = probe.form();
    c.section(Section::Pitch);
    // The width of the probe is no result: its steps stay unseen, and nothing here depends on it.
    let strip_seen = if brief.strip.is_some() { c } else { c.quiet() };
    let mut given = Given::blank();
    given.take(c, strip_seen, probe, brief.materials());
    let rivets = rivets(c, probe, &given, rules);
    let outer = f64::from(form.outer_rivets());
    let [by_shear, by_weaker, by_all_modes] = balances(c, probe, &given, rules, &rivets);

    let balance = match rules.balance() {
        // The thin plate's hole came from shear = bearing and was rounded up: bearing is now the weaker.
        Balance::Shear if thin => Balance::Weaker,
        other => other,
    };
    let balanced = match balance {
        Balance::Shear => by_shear,
        Balance::Weaker => by_weaker,
        Balance::AllModes => by_all_modes,
    };
    let d = given.diameter(rules, Entry::DISTANCE_DIAMETER, densest(probe));
    let (least, least_entry) = proportion::pitch_least(c, rules, form, d);
    let greatest = proportion::pitch_greatest(c, rules, form, thinner(c, probe, &given));
    *choice = PitchChoice {
        by_shear,
        by_weaker,
        by_all_modes,
        balance,
        least,
        greatest,
        taken: 0.0,
        decided: Decided::Balance,
    };
    if let Some(strip) = brief.strip {
        let strip = Field::Pitch.check(strip.to_mm())?;
        choice.taken = strip / outer;
        choice.decided = Decided::Given;
        return Ok(strip);
    }
    let name = Name(Q::PitchBalanced, 0);
    let balanced = c.choice(name, Why::Choice(Entry::PITCH_BALANCE.no()), balanced, by_shear);
    if math::below(balanced.value(), least.value()) {
        choice.decided = Decided::Floor;
    }
    let mut pitch = c.greater(name, Why::Floor(least_entry.no()), balanced, least);
    let mut most = (f64::INFINITY, EntryNo::NONE);
    if let Limit::At(cap, entry) = greatest {
        most = (cap.value(), entry.no());
        if math::below(cap.value(), least.value()) {
            return Err(no_pitch(rules, probe, least.value(), most));
        }
        if math::below(cap.value(), pitch.value()) {
            choice.decided = Decided::Cap;
        }
        pitch = c.lesser(name, Why::Cap(entry.no()), pitch, cap);
    }
    let step = rules.get(Entry::PITCH_STEP);
    let name = Name(Q::Pitch, 0);
    let mut taken = match rules.rounding() {
        Rounding::Down => c.down(name, step, pitch),
        Rounding::Nearest => c.nearest(name, step, pitch),
        Rounding::Up => c.up(name, step, pitch),
    }
    .value();
    // Rounding passes neither the cap nor the floor.
    if math::below(most.0, taken) {
        taken = c.down(name, step, pitch).value();
    }
    if math::below(taken, least.value()) {
        taken = c.up(name, step, pitch).value();
        if math::below(most.0, taken) {
            return Err(no_pitch(rules, probe, least.value(), most));
        }
    }
    choice.taken = taken;
    if form.outer_rivets() > 1 {
        let (n, p) = (C::N::lit(outer), c.quiet().given(name, taken));
        c.formula(name, Formula::Times.no(), formula::times(n, p));
    }
    Ok(taken * outer)
}

/// The cap lies below the floor, or no step of the grid between them: both clauses, and the hole that would do.
fn no_pitch(rules: &Rules, joint: &Joint, least: f64, most: (f64, EntryNo)) -> Error {
    let form = joint.form();
    let dense = f64::from(form.densest_rivets()) / f64::from(form.outer_rivets());
    // The largest step of the grid under the cap, given back to the densest row: a smaller hole always does.
    let pitch = math::round_down(most.0, rules.get(Entry::PITCH_STEP));
    let d = (pitch / dense - rules.get(Entry::PITCH_LEAST_ADD)) / rules.get(Entry::PITCH_LEAST);
    let error = Error::new(ErrorKind::NoAdmissiblePitch, Field::Pitch).value(least).limit(most.0);
    let error = error.entry(most.1).other(Entry::PITCH_LEAST.no());
    let field = match rules.diameter(Entry::DISTANCE_DIAMETER) {
        Diameter::Hole => Field::Hole,
        Diameter::Rivet => Field::Rivet,
    };
    if d.is_finite() && d >= field.limits().0 { error.hint(field, d) } else { error }
}

/// The three balanced pitches of the outer row, the greater over the main plates of a lap.
#[inline(never)]
fn balances<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules, rivets: &Rivets<C::N>) -> [C::N; 3] {
    let rows = joint.form().row_count();
    let plates = if joint.form().kind() == JointKind::Lap { 2 } else { 1 };
    let names = [Q::PitchByShear, Q::PitchByWeaker, Q::PitchByAllModes];
    let others = [Q::OtherPitchByShear, Q::OtherPitchByWeaker, Q::OtherPitchByAllModes];
    let zero = C::N::lit(0.0);
    let mut best: [Option<C::N>; 3] = [None; 3];
    for plate in 0..plates {
        let (t, st) = if plate == 0 { (given.plate, given.tension) } else { (given.other, given.other_tension) };
        let mut outside: Option<C::N> = None;
        for step in 1..=rows {
            // Each plate of a lap counts its rows from its own outside.
            let row = if plate == 0 { step } else { rows.wrapping_add(1).wrapping_sub(step) };
            let (n, d) = (given.rivets_in(row), deducted(c, given, rules, row));
            let at = u8::try_from(row).unwrap_or(0);
            let balance = |q: Q, f: C::N, fo: C::N| {
                let p = formula::balanced_pitch(n, d, f, fo, t, st);
                c.formula(Name(q, at), Formula::BalancedPitch.no(), p)
            };
            let fo = outside.unwrap_or(zero);
            let [by_shear, by_weaker, by_all] = if plate == 0 { names } else { others };
            let candidates = [
                (step == 1).then(|| balance(by_shear, rivets.shear, zero)),
                (step == 1).then(|| balance(by_weaker, rivets.weaker, zero)),
                Some(balance(by_all, rivets.weaker, fo)),
            ];
            for ((slot, candidate), q) in best.iter_mut().zip(candidates).zip(names) {
                let why = Why::Greatest(EntryNo::NONE);
                *slot = match (*slot, candidate) {
                    (Some(a), Some(b)) => Some(c.greater(Name(q, 0), why, a, b)),
                    (a, b) => a.or(b),
                };
            }
            let held = pick(&rivets.by_row, row);
            outside = Some(outside.map_or(held, |sum| {
                c.formula(Name(Q::RowRivetsHold, 0), Formula::CutStrength.no(), formula::cut_strength(sum, held))
            }));
        }
    }
    let outer = joint.form().outer_rivets();
    let mut result = [zero; 3];
    for ((slot, found), q) in result.iter_mut().zip(best).zip(names) {
        let strip = found.unwrap_or(zero);
        *slot = if outer == 1 {
            strip
        } else {
            let n = C::N::lit(f64::from(outer));
            c.formula(Name(q, 0), Formula::RowPitch.no(), formula::row_pitch(strip, n))
        };
    }
    result
}
