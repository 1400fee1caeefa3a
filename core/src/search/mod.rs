//! Search: the best joint of a whole grid, with a certificate.
//!
//! **The grid.** Forms, plates, sizes and pitches: every form ([`all_forms`], or those named), every plate named,
//! every hole of the book's series (or those named), and every multiple of the book's pitch step from the least to the
//! greatest pitch. A book without a cap is searched up to the pitch named, else up to the greatest strip of the table
//! of bounds; below, down to where the holes of a row fill the strip. A form that a book's table of caps does not reach
//! is left out unless a greatest pitch is named. A candidate is what [`size`](crate::sizing::size) makes of a form, a
//! plate, a hole and a pitch: straps, row distances and margin are those of the book, the rows apart for their heads.
//!
//! **The order.** Candidates are compared by whole numbers ([`Measures`]): efficiency credited in billionths, rivets in
//! a metre in millionths, mass of a metre in milligrams, pitch in nanometres. First comes the measure of the objective;
//! then the higher efficiency, fewer rivets, less mass, the larger pitch, the thinner plate; of equals in all the first
//! in the order of forms, plates and sizes. (For the thinnest plate that measure stands first and is not repeated.)
//!
//! # Why the answer is the best of the grid
//!
//! Fix form, plate and size, and let `p` be the strip.
//!
//! 1. *Bound of the efficiency.* Take the joint without straps, row distances and margin. Each of its modes is a net
//!    section, a constant times `p - n d`, plus rivets that do not depend on `p`: an affine function of `p`. Over the
//!    solid strip that is `b + a/p`, affine in `u = 1/p`. The efficiency of the finished joint is the least over *more*
//!    modes: straps that may tear, bearing and shear-out that they and the margin add, the zig-zag that row distances
//!    add. A further mode, or a further fate of a rivet, can only lower a least. So `U(p) = min(b + a/p)`, under the
//!    cap of the book, is at least the efficiency credited. What is *not* concave in `u`, that is strap thicknesses in
//!    steps, `s^2/4g`, rows closer than prescribed and margins, appears in no bound: it is handled by leaving it out.
//! 2. *Superlevel sets.* `U` is a least of affine functions of `u`, so concave in `u`, and `U(p) >= e` holds on one
//!    interval of `p`, the intersection of one half-line for each piece, in closed form. Pitches outside cannot reach
//!    `e`.
//! 3. *Stretches.* Each piece is monotone in `p`: over a stretch it is greatest at an end, so the least of those
//!    greatest is at least `U` all over the stretch.
//! 4. *Rivets* in a metre are `N/p`: over a stretch fewest at its last pitch, exactly.
//! 5. *Mass.* The book's row distances do not shrink with `p` (the diagonal rule is the root of a quadratic that rises,
//!    or is concave; either way least at an end). What heads need does not grow with `p`: `m + w/2` beside a strap and
//!    `w` in chain are constant, `sqrt(w^2 - p^2/4n^2)` in zig-zag falls. Straps are thickened by
//!    `(p - n1 d)/(p - nb d)`, monotone, and rounding up keeps order. So each of these is least at an end of the stretch,
//!    perhaps not the same one; a distance, the greater of the book's and the heads', is at least the greater of their
//!    leasts. Plates weigh at least what these give, and rivets less holes, which are constant for a strip, weigh least
//!    for a metre at an end. Where a rule asks for nothing, no bound is used.
//! 6. *Exclusion.* A stretch is left out only if its bounds, widened by 1e-9 (their own roundings are below 1e-12) and
//!    then taken to whole numbers, are already behind the key of the incumbent: the key of every candidate in it is no
//!    better in each place, and lexicographic order respects that. Equals are never left out.
//! 7. *Completeness.* A stretch that is not left out is halved; one pitch alone is sized, checked and weighed in full.
//!    Every candidate is thus examined or excluded, and [`Tally`] adds up to the grid.
//!
//! The best few are one of each form. For those the incumbent of point 6 is the better one of the best of this form and
//! the last of a full list: nothing behind either can enter.
//!
//! The search runs on bare numbers. Only the winner is sized once more in the context of the caller.

mod bound;
mod brief;
mod candidate;
mod forms;
mod keep;
mod measures;
mod walk;
mod weight;

pub use brief::{Constraint, Objective, SearchBrief};
pub use candidate::Candidate;
pub use forms::{FORM_COUNT, all_forms};
pub use measures::{Measure, Measures};

use crate::check::SUBJECTS;
use crate::error::Error;
use crate::joint::Form;
use crate::rules::Rules;
use crate::sizing::{Design, size_with};
use crate::step::{Ctx, Num, Plain};
use candidate::Group;
use core::ops::ControlFlow;
use keep::{Front, Ranking};
use walk::{Ended, GoOn};

/// How many of the best are returned, each of another form.
pub const BEST: usize = 5;

/// Constraints other than rules.
const OTHERS: usize = 7;

/// How many candidates there were, and what became of them. `grid = fitting + by_bound + the sum of excluded`.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Tally {
    /// All candidates of the grid; a form and size without any pitch counts as one.
    pub grid: u64,
    /// Sized, checked and weighed in full.
    pub examined: u64,
    /// Of those, the ones that meet all constraints.
    pub fitting: u64,
    /// Left out because a bound shows that they cannot win.
    pub by_bound: u64,
    excluded: [u64; OTHERS],
    rules: [u64; SUBJECTS.len()],
}

impl Default for Tally {
    fn default() -> Self {
        Tally { grid: 0, examined: 0, fitting: 0, by_bound: 0, excluded: [0; OTHERS], rules: [0; SUBJECTS.len()] }
    }
}

/// The constraints other than rules, in the order in which they are asked.
const ORDER: [Constraint; OTHERS] = [
    Constraint::Rows,
    Constraint::RivetSize,
    Constraint::CapUnknown,
    Constraint::Pitch,
    Constraint::Efficiency,
    Constraint::Pressure,
    Constraint::Making,
];

impl Tally {
    fn exclude(&mut self, constraint: Constraint, count: u64) {
        let slot = match constraint {
            Constraint::Rule(subject) => self.rules.get_mut(subject as usize),
            other => self.excluded.iter_mut().zip(ORDER).find(|(_, c)| *c == other).map(|(slot, _)| slot),
        };
        if let Some(slot) = slot {
            *slot = slot.saturating_add(count);
        }
    }

    /// The constraints that excluded candidates, with how many; those that bounds exclude because others are better
    /// are not among them.
    pub fn excluded(&self) -> impl Iterator<Item = (Constraint, u64)> + '_ {
        let rules = SUBJECTS.iter().map(|s| Constraint::Rule(*s)).zip(self.rules);
        ORDER.into_iter().zip(self.excluded).chain(rules).filter(|(_, count)| *count > 0)
    }

    /// The constraint that excluded most; of equals the one that is asked first.
    #[must_use]
    pub fn most(&self) -> Option<(Constraint, u64)> {
        self.excluded().fold(None, |best, next| match best {
            Some((_, most)) if most >= next.1 => best,
            _ => Some(next),
        })
    }
}

/// What lies one step of the pitch beside a candidate.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Beside {
    /// Beyond the least or greatest pitch.
    OffGrid,
    /// It does not meet a constraint.
    Excluded(Constraint),
    /// It is worse: the first measure in which it is.
    Worse(Measure),
}

/// One of the best, and why it stands where it stands.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Ranked {
    /// The candidate.
    pub candidate: Candidate,
    /// The first measure in which it is behind the best; `None` for the best.
    pub behind: Option<Measure>,
    /// One step of the pitch less, and one more.
    pub neighbours: [Beside; 2],
}

/// What a search found.
#[derive(Clone, Debug)]
pub struct Found<N = f64> {
    /// The best joint, sized in the caller's context.
    pub design: Design<N>,
    /// The best of the best few forms, the best first.
    pub best: heapless::Vec<Ranked, BEST>,
    /// Counts.
    pub tally: Tally,
}

/// How a search ended.
#[derive(Clone, Debug)]
#[expect(clippy::large_enum_variant, reason = "there is no allocation to put the larger one into")]
pub enum Outcome<N = f64> {
    /// With the best joint of the grid.
    Found(Found<N>),
    /// No candidate meets all constraints; [`Tally::most`] says which excluded most.
    NothingFits(Tally),
}

impl<N> Outcome<N> {
    /// What was found.
    #[must_use]
    pub const fn found(&self) -> Option<&Found<N>> {
        match self {
            Outcome::Found(found) => Some(found),
            Outcome::NothingFits(_) => None,
        }
    }

    /// The counts.
    #[must_use]
    pub const fn tally(&self) -> &Tally {
        match self {
            Outcome::Found(found) => &found.tally,
            Outcome::NothingFits(tally) => tally,
        }
    }
}

/// The best joint of the grid.
///
/// # Errors
/// A brief that is not sound: a figure outside its range, no plate, no form, no size, a pitch step finer than 0.01 mm,
/// an order missing where mass is the objective.
///
/// ```
/// use seamwright::{materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::search::{Objective, Outcome, SearchBrief, search};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let plates = [Length::mm(13.0)];
/// let brief = SearchBrief::new(Objective::Efficiency, &plates, steel);
/// let outcome = search(&brief, &METRIC.rules)?;
/// let found = outcome.found().ok_or(seamwright::Error::new(seamwright::ErrorKind::Missing, seamwright::bounds::Field::Form))?;
/// assert!(found.design.analysis.credited > 0.85 && found.design.analysis.findings.open() == 0);
///
/// let outcome = search(&brief.efficiency(0.99), &METRIC.rules)?;
/// assert!(matches!(outcome, Outcome::NothingFits(tally) if tally.most().is_some()));
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn search(brief: &SearchBrief<'_>, rules: &Rules) -> Result<Outcome, Error> {
    search_with(Plain, brief, rules)
}

/// [`search`], the winner sized in any context. The search itself runs on bare numbers.
///
/// # Errors
/// As [`search`].
#[inline]
pub fn search_with<C: Ctx>(c: C, brief: &SearchBrief<'_>, rules: &Rules) -> Result<Outcome<C::N>, Error> {
    match ranked(brief, rules, &mut || ControlFlow::Continue(())) {
        Ok(found) => outcome(c, brief, rules, found),
        Err(Ended::Error(error)) => Err(error),
        // Cannot be: the answer above is always to go on.
        Err(Ended::Stopped) => Ok(Outcome::NothingFits(Tally::default())),
    }
}

/// [`search`], asking before every stretch of pitches whether to go on: some thousand instructions lie between two
/// questions. `Break` comes back where the answer was `Break`; nothing is found then, for nothing is proved.
///
/// # Errors
/// As [`search`].
///
/// ```
/// use core::ops::ControlFlow;
/// use seamwright::{materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::search::{Objective, SearchBrief, search_while};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let plates = [Length::mm(13.0)];
/// let brief = SearchBrief::new(Objective::Efficiency, &plates, steel);
/// let mut questions = 0;
/// let found = search_while(&brief, &METRIC.rules, &mut || { questions += 1; ControlFlow::Continue(()) })?;
/// assert!(matches!(found, ControlFlow::Continue(outcome) if outcome.found().is_some()) && questions > 100);
/// let stopped = search_while(&brief, &METRIC.rules, &mut || ControlFlow::Break(()))?;
/// assert!(stopped.is_break());
/// let nothing = SearchBrief::new(Objective::Efficiency, &[], steel);
/// assert!(search_while(&nothing, &METRIC.rules, &mut || ControlFlow::Break(())).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn search_while(
    brief: &SearchBrief<'_>,
    rules: &Rules,
    go_on: &mut dyn FnMut() -> ControlFlow<()>,
) -> Result<ControlFlow<(), Outcome>, Error> {
    match ranked(brief, rules, go_on) {
        Ok(found) => outcome(Plain, brief, rules, found).map(ControlFlow::Continue),
        Err(ended) => ended.told(),
    }
}

/// The best of each of the best few forms, and the counts.
type RankedBest = (heapless::Vec<Ranked, BEST>, Tally);

/// What is told of the best.
#[inline]
fn outcome<C: Ctx>(
    c: C,
    brief: &SearchBrief<'_>,
    rules: &Rules,
    (best, tally): RankedBest,
) -> Result<Outcome<C::N>, Error> {
    let Some(first) = best.first() else { return Ok(Outcome::NothingFits(tally)) };
    let design = size_with(c, &first.candidate.brief(brief), rules)?;
    Ok(Outcome::Found(Found { design, best, tally }))
}

/// The search itself.
fn ranked(brief: &SearchBrief<'_>, rules: &Rules, go_on: GoOn<'_>) -> Result<RankedBest, Ended> {
    let objective = brief.objective;
    brief.validate(rules, objective == Objective::Mass)?;
    let named = all_forms();
    let forms: &[Form] = brief.forms.unwrap_or(&named);
    let mut ranking = Ranking::new(objective);
    let tally = walk::walk(brief, rules, forms, &mut ranking, walk::weighs(objective), go_on)?;
    let mut best = heapless::Vec::new();
    let first = ranking.best.first().map(|(key, _)| *key).unwrap_or_default();
    for (place, (key, candidate)) in ranking.best.iter().enumerate() {
        let group = Group::new(brief, rules, candidate.form, candidate.plate, (candidate.hole, candidate.rivet));
        let k = (candidate.pitch.to_mm() / group.step + 0.5) as u32;
        let beside = |k: u32| {
            let (least, most) = group.range;
            if k < least || k > most {
                return Beside::OffGrid;
            }
            match group.examine(k) {
                Ok((other, _)) => Beside::Worse(Measure::deciding(objective, key, &other.measures.key(objective))),
                Err(constraint) => Beside::Excluded(constraint),
            }
        };
        let behind = (place > 0).then(|| Measure::deciding(objective, &first, key));
        let neighbours = [beside(k.wrapping_sub(1)), beside(k.saturating_add(1))];
        let _ = best.push(Ranked { candidate: *candidate, behind, neighbours });
    }
    Ok((best, tally))
}

/// The front of efficiency against mass: every candidate that no other one betters in one without being worse in the
/// other, lightest first, into the slots of the caller. Of equals in both the one with fewer rivets, then with the
/// larger pitch, then the first in order. Returns how many there are, and the counts. The objective is not used.
///
/// # Errors
/// As [`search`]; [`ErrorKind::NoSpace`](crate::ErrorKind::NoSpace) where the front does not fit, with a number of slots
/// that is at least needed. The slots then hold a part that means nothing.
///
/// ```
/// use seamwright::{ErrorKind, joint::Form, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::search::{Objective, SearchBrief, front};
/// use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let plates = [Length::mm(13.0)];
/// let order = Order::steel(Run::Tie, HeadForm::Button, LengthRule::BoilerButton, Stock::cut_to_length());
/// let forms = [Form::lap(1)?, Form::lap(2)?, Form::lap(3)?];
/// let brief = SearchBrief::new(Objective::Mass, &plates, steel).forms(&forms).mass(order);
/// let mut slots = [None; 200];
/// let (count, _) = front(&brief, &METRIC.rules, &mut slots)?;
/// let listed: Vec<_> = slots.iter().flatten().collect();
/// assert_eq!(listed.len(), count);
/// assert!(listed.windows(2).all(|w| w[0].measures.mass < w[1].measures.mass && w[0].efficiency < w[1].efficiency));
/// assert_eq!(front(&brief, &METRIC.rules, &mut slots[..1]).unwrap_err().kind, ErrorKind::NoSpace);
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn front(brief: &SearchBrief<'_>, rules: &Rules, slots: &mut [Option<Candidate>]) -> Result<(usize, Tally), Error> {
    match walk_front(brief, rules, slots, &mut || ControlFlow::Continue(())) {
        Ok(found) => Ok(found),
        Err(Ended::Error(error)) => Err(error),
        // Cannot be: the answer above is always to go on.
        Err(Ended::Stopped) => Ok((0, Tally::default())),
    }
}

/// [`front`], asking as [`search_while`] does whether to go on.
///
/// # Errors
/// As [`front`].
///
/// ```
/// use core::ops::ControlFlow;
/// use seamwright::{materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::search::{Objective, SearchBrief, front_while};
/// use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let plates = [Length::mm(13.0)];
/// let order = Order::steel(Run::Tie, HeadForm::Button, LengthRule::BoilerButton, Stock::cut_to_length());
/// let brief = SearchBrief::new(Objective::Mass, &plates, steel).mass(order);
/// let mut slots = [None; 8];
/// assert!(front_while(&brief, &METRIC.rules, &mut slots, &mut || ControlFlow::Break(()))?.is_break());
/// let go_on = &mut || ControlFlow::Continue(());
/// assert!(front_while(&brief, &METRIC.rules, &mut slots[..1], go_on).is_err()); // no room
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn front_while(
    brief: &SearchBrief<'_>,
    rules: &Rules,
    slots: &mut [Option<Candidate>],
    go_on: &mut dyn FnMut() -> ControlFlow<()>,
) -> Result<ControlFlow<(), (usize, Tally)>, Error> {
    walk_front(brief, rules, slots, go_on).map(ControlFlow::Continue).or_else(Ended::told)
}

fn walk_front(
    brief: &SearchBrief<'_>,
    rules: &Rules,
    slots: &mut [Option<Candidate>],
    go_on: GoOn<'_>,
) -> Result<(usize, Tally), Ended> {
    brief.validate(rules, true)?;
    let named = all_forms();
    let forms: &[Form] = brief.forms.unwrap_or(&named);
    let mut front = Front::new(slots);
    let tally = walk::walk(brief, rules, forms, &mut front, true, go_on)?;
    Ok((front.count, tally))
}

impl<N: Num> Found<N> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Found {
        Found { design: self.design.values(), best: self.best, tally: self.tally }
    }
}
