//! Marking: right, right by carry-over, a known slip, or wrong.

use super::generate::Problem;
use super::key::{MAX_ASKED, RIVET_NAMES, first_alike, single_rivets};
use crate::error::Error;
use crate::formula;
use crate::given::Given;
use crate::math;
use crate::modes::{Class, Cut, Lens, Strengths};
use crate::proportion::SNAP_HEAD_WIDTH;
use crate::quantities::Length;
use crate::reconcile::{Case, Convention, Edit, Figure, Own, Work, reconcile, worked_on};
use crate::rules::{Entry, Rounding};
use crate::step::{Name, Plain, Quantity as Q};

/// The verdict on one answer.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Mark {
    /// Right within the digits that are given.
    Right,
    /// Right after an earlier slip of the student's own: to be credited.
    CarriedOver,
    /// Wrong by a slip or habit that is known; later answers that keep to it are carried over. `sure` where chance is
    /// ruled out by the digits.
    Slip {
        /// The row of the catalogue.
        convention: &'static Convention,
        /// Whether the digits rule out chance.
        sure: bool,
    },
    /// Wrong, and not explained.
    Wrong,
    /// Not answered.
    Missing,
}

/// The marks of a problem, in the order of its key.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Marks {
    marks: [Option<(Name, Mark)>; MAX_ASKED],
}

impl Marks {
    /// The marks, in the order of the key.
    pub fn iter(&self) -> impl Iterator<Item = (Name, Mark)> + '_ {
        self.marks.iter().flatten().copied()
    }

    /// The mark of one answer.
    #[must_use]
    pub fn of(&self, name: Name) -> Option<Mark> {
        self.iter().find(|(asked, _)| *asked == name).map(|(_, mark)| mark)
    }

    /// Answers that are right or carried over, and answers asked for.
    #[must_use]
    pub fn credit(&self) -> (usize, usize) {
        let credited = self.iter().filter(|(_, m)| matches!(m, Mark::Right | Mark::CarriedOver)).count();
        (credited, self.iter().count())
    }
}

/// Marks a student's answers, in any order; figures that were not asked for are left out of account.
///
/// # Errors
/// Those of the routines on the problem itself.
pub fn mark(problem: &Problem, answers: &[Figure]) -> Result<Marks, Error> {
    let mut marks = Marks { marks: [None; MAX_ASKED] };
    let mut slips: [Option<Edit>; 2] = [None; 2];
    let own = stated_dimensions(problem, answers);
    for (slot, (name, right)) in marks.marks.iter_mut().zip(problem.key.iter()) {
        let found = answers.iter().find(|figure| figure.name == name);
        let mark = match found {
            None => Mark::Missing,
            Some(figure) if figure.is(right) => Mark::Right,
            Some(figure) if carried(problem, answers, figure, &slips, own.as_ref()) => Mark::CarriedOver,
            Some(figure) => match known_slip(problem, figure, &slips) {
                Some((convention, sure)) => {
                    if let Some(free) = slips.iter_mut().find(|s| s.is_none()) {
                        *free = Some(convention.edit);
                    }
                    Mark::Slip { convention, sure }
                }
                None => Mark::Wrong,
            },
        };
        *slot = Some((name, mark));
    }
    Ok(marks)
}

/// The case with the hole and the pitch that the student took, where they differ from the key's.
fn stated_dimensions(problem: &Problem, answers: &[Figure]) -> Option<Case> {
    let Work::Size(mut brief) = problem.case.work else { return None };
    let stated = |name: Name| answers.iter().find(|f| f.name == name).map(|f| f.value);
    if let Some(hole) = stated(Name(Q::Hole, 1)) {
        brief = brief.hole(Length::mm(hole), stated(Name(Q::Rivet, 1)).map(Length::mm));
    }
    if let Some(pitch) = stated(Name(Q::Pitch, 0)) {
        brief = brief.pitch(Length::mm(pitch));
    }
    Some(Case { work: Work::Size(brief), rules: problem.case.rules })
}

/// Whether a figure follows from what the student had before.
fn carried(
    problem: &Problem,
    answers: &[Figure],
    figure: &Figure,
    slips: &[Option<Edit>; 2],
    own: Option<&Case>,
) -> bool {
    let [first, second] = *slips;
    let slipped = [[first, None], [second, None], [first, second]];
    let slipped = slipped.into_iter().filter(|edits| edits.iter().any(Option::is_some));
    // The hole and the pitch themselves do not follow from themselves.
    let taken = matches!(figure.name, Name(Q::Hole | Q::Rivet, 1) | Name(Q::Pitch | Q::Hole, 0));
    let cases = [Some(&problem.case), own.filter(|_| !taken)];
    // The slips kept up, each alone and both together; the student's own hole and pitch; and, with each of these, the
    // student's own strengths of single rivets and of the outer row.
    for case in cases.into_iter().flatten() {
        for edits in [[None; 2]].into_iter().chain(slipped.clone()) {
            let gives = |own: &Own| {
                let found = worked_on(case, edits, own, &[figure.name]);
                found.is_some_and(|[x, ..]| figure.is(x))
            };
            if gives(&Own::NONE) {
                return true;
            }
            // What is right may have been worked on from as it is printed, or with all its digits.
            let printed = own_strengths(case, edits, answers, figure.name, Right::AsPrinted);
            let exact = own_strengths(case, edits, answers, figure.name, Right::Exact);
            let tried = [printed, exact, exact.map(|own| Own { tear: 1.0, ..own })];
            if tried.iter().flatten().any(gives) {
                return true;
            }
        }
    }
    if figure.name == Name(Q::ModeStrength, 0)
        && let (Some(own), Some(torn)) = (least_of_own(answers), least_torn(&problem.case))
        && figure.is(math::smaller(own, torn))
    {
        return true;
    }
    // From the least to the greatest that the digits of the student's figures stand for.
    let [least, middle, most] = [-1.0, 0.0, 1.0].map(|end| by_own_figures(problem, answers, figure.name, end));
    let between = |least: f64, most: f64| figure.value + figure.above >= least && figure.value - figure.below <= most;
    middle.is_some_and(|x| figure.is(x)) || least.zip(most).is_some_and(|(least, most)| between(least, most))
}

/// With which digits a right figure was worked on from.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Right {
    /// With those that are printed.
    AsPrinted,
    /// With all of them.
    Exact,
}

/// The student's strengths of single rivets and of the outer row, over those of a case, as far as they stand before
/// the figure that is marked; `None` where there are none.
fn own_strengths(case: &Case, edits: [Option<Edit>; 2], answers: &[Figure], marked: Name, right: Right) -> Option<Own> {
    let over = |name: Name, of_case: f64| {
        let stated = answers.iter().find(|f| f.name == name)?;
        let factor = if right == Right::Exact && stated.is(of_case) { 1.0 } else { stated.value / of_case };
        Some(factor).filter(|x| x.is_finite())
    };
    let of_case = single_rivets(&worked_on(case, edits, &Own::NONE, &RIVET_NAMES)?);
    let mut own = Own::NONE;
    for ((quantity, by_row), factors) in
        [Q::RivetShear, Q::RivetBearing].into_iter().zip(&of_case).zip([&mut own.shear, &mut own.bearing])
    {
        let before = |row: u8| marked.0 != quantity || row < marked.1;
        let stated = |row: u8| {
            let strength = by_row.get(usize::from(row).checked_sub(1)?)?;
            let figure = answers.iter().find(|f| f.name == Name(quantity, row)).filter(|_| before(row))?;
            Some((figure, *strength))
        };
        // The error that came first, as it is printed.
        let first = (1_u8..).zip(by_row).find_map(|(row, _)| {
            let (figure, strength) = stated(row)?;
            Some(figure.value / strength).filter(|_| !figure.is(strength))
        });
        let factor = |row: u8| {
            let (figure, strength) = stated(row)?;
            let as_first = first.filter(|f| right == Right::Exact && figure.is(f * strength));
            as_first.or_else(|| over(Name(quantity, row), strength))
        };
        // Where a row was not stated it goes by one that is alike, and a second kind by the first error: the same slip
        // is likely in both.
        let kept = first.filter(|_| marked.0 == quantity);
        for (row, slot) in (1_u8..).zip(factors.iter_mut()) {
            let alike = first_alike(by_row, row).and_then(factor);
            *slot = factor(row).or(alike).or(kept).unwrap_or(1.0);
        }
    }
    let tear = Name(Q::TearOuter, 0);
    if marked != tear
        && let Some([of_case, ..]) = worked_on(case, edits, &Own::NONE, &[tear])
    {
        own.tear = over(tear, of_case).unwrap_or(1.0);
    }
    (own != Own::NONE).then_some(own)
}

/// A figure worked from the student's own earlier figures: as they are printed (`end` 0), or at the end of what their
/// digits stand for that makes it least (-1) or greatest (1).
fn by_own_figures(problem: &Problem, answers: &[Figure], name: Name, end: f64) -> Option<f64> {
    let key = &problem.key;
    let rules = &problem.case.rules;
    let stated_at = |q: Q, row: u8, end: f64| {
        let stated = answers.iter().find(|f| f.name == Name(q, row))?;
        Some(if end < 0.0 { stated.value + end * stated.below } else { stated.value + end * stated.above })
    };
    let own = |q: Q, row: u8| stated_at(q, row, end).or_else(|| key.answer(Name(q, row)));
    match name {
        // The next standard size above the hole that was worked out.
        Name(Q::Hole, 1) if !rules.on(Entry::HOLE_ROUND) => rules.next_size(own(Q::Hole, 0)?).map(|s| s.hole),
        Name(Q::Hole, 1) => Some(math::round_up(own(Q::Hole, 0)?, rules.get(Entry::HOLE_STEP))),
        Name(Q::Rivet, 1) => rules.size_of_hole(own(Q::Hole, 1)?).map(|s| s.rivet),
        // The pitch between floor and cap.
        Name(Q::Pitch, 0) => {
            let balance = match rules.balance() {
                crate::rules::Balance::Shear => own(Q::PitchByShear, 0)?,
                _ => own(Q::PitchByWeaker, 0)?,
            };
            let (least, most) = (own(Q::PitchLeast, 0), own(Q::PitchGreatest, 0));
            let raised = least.map_or(balance, |least| math::larger(balance, least));
            let pitch = most.map_or(raised, |most| math::smaller(raised, most));
            let step = rules.get(Entry::PITCH_STEP);
            let mut taken = match rules.rounding() {
                Rounding::Down => math::round_down(pitch, step),
                Rounding::Nearest => math::round_nearest(pitch, step),
                Rounding::Up => math::round_up(pitch, step),
            };
            // Rounding passes neither the cap nor the floor.
            if most.is_some_and(|most| math::below(most, taken)) {
                taken = math::round_down(pitch, step);
            }
            if least.is_some_and(|least| math::below(taken, least)) {
                taken = math::round_up(pitch, step);
            }
            Some(taken)
        }
        // Half a head beside the edge of the narrow strap, which lies at the margin as it was taken.
        Name(Q::RowGapBeside, _) => {
            let margin = math::round_up(own(Q::MarginLeast, 0)?, rules.get(Entry::MARGIN_STEP));
            let head = formula::times(SNAP_HEAD_WIDTH, own(Q::Rivet, 1)?);
            Some(formula::head_beside_strap(margin, head))
        }
        // The least of the student's strengths, and that over the student's solid strip.
        Name(Q::ModeStrength, 0) => least_of_own(answers),
        Name(Q::BookEfficiency, 0) => {
            let strength = stated_at(Q::ModeStrength, 0, end).or_else(|| least_of_own(answers))?;
            // The greater the solid strip, the less the efficiency.
            Some(strength / stated_at(Q::Solid, 0, -end).or_else(|| key.answer(Name(Q::Solid, 0)))?)
        }
        _ => None,
    }
}

/// The least of the strengths that the student states.
fn least_of_own(answers: &[Figure]) -> Option<f64> {
    let strengths = answers.iter().filter(|f| matches!(f.name, Name(Q::TearOuter | Q::ShearAll | Q::BearingAll, 0)));
    strengths.map(|f| f.value).fold(None, |least: Option<f64>, x| Some(least.map_or(x, |l| math::smaller(l, x))))
}

/// The least of the modes of which a student states no strength: a member torn further in, with the rivets that then
/// have to fail.
fn least_torn(case: &Case) -> Option<f64> {
    let Work::Check(joint, materials) = &case.work else { return None };
    let (kind, rows) = (joint.form().kind(), joint.form().row_count());
    let strengths = Strengths::new(Plain, joint, &Given::new(Plain, joint, materials), &case.rules, Lens::Real);
    let stated = |cut: &Cut| matches!(cut.class(kind, rows), Class::Rivets | Class::PlateOuter);
    let others = strengths.modes().filter(|mode| !stated(&mode.cut)).map(|mode| mode.strength);
    others.fold(None, |least: Option<f64>, x| Some(least.map_or(x, |l| math::smaller(l, x))))
}

/// A single edit of the catalogue that gives just this figure.
fn known_slip(problem: &Problem, figure: &Figure, slips: &[Option<Edit>]) -> Option<(&'static Convention, bool)> {
    let answer = reconcile(&problem.case, core::slice::from_ref(figure)).ok()?;
    let single = |list: &mut dyn Iterator<Item = &crate::reconcile::Explanation>| {
        list.filter(|x| x.count() == 1).find_map(|x| x.edits().find(|c| !slips.contains(&Some(c.edit))))
    };
    if let Some(convention) = single(&mut answer.explanations.iter()) {
        return Some((convention, true));
    }
    single(&mut answer.by_chance.iter()).map(|convention| (convention, false))
}
