//! Marking: right, right by carry-over, a known slip, or wrong.

use super::generate::Problem;
use super::key::{Key, MAX_ASKED};
use crate::error::Error;
use crate::math;
use crate::quantities::Length;
use crate::reconcile::{Case, Convention, Edit, Figure, Work, edited, reconcile};
use crate::rules::{Entry, Rounding};
use crate::step::{Name, Quantity as Q};

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
    let follows =
        |case: &Case| Key::of(case).ok().and_then(|key| key.answer(figure.name)).is_some_and(|x| figure.is(x));
    // The slips kept up, each alone and both together; and the student's own hole and pitch.
    let [first, second] = *slips;
    let slipped = |case: &Case| {
        [[first, None], [second, None], [first, second]]
            .into_iter()
            .filter(|edits| edits.iter().any(Option::is_some))
            .any(|edits| edited(case, edits, figure.name).is_some_and(|x| figure.is(x)))
    };
    if slipped(&problem.case) {
        return true;
    }
    // The hole and the pitch themselves do not follow from themselves.
    let taken = matches!(figure.name, Name(Q::Hole | Q::Rivet, 1) | Name(Q::Pitch | Q::Hole, 0));
    if let Some(own) = own.filter(|_| !taken)
        && (follows(own) || slipped(own))
    {
        return true;
    }
    by_own_figures(problem, answers, figure.name).is_some_and(|x| figure.is(x))
}

/// A figure worked from the student's own earlier figures.
fn by_own_figures(problem: &Problem, answers: &[Figure], name: Name) -> Option<f64> {
    let key = &problem.key;
    let rules = &problem.case.rules;
    let own = |q: Q, row: u8| {
        let stated = answers.iter().find(|f| f.name == Name(q, row)).map(|f| f.value);
        stated.or_else(|| key.answer(Name(q, row)))
    };
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
            let raised = own(Q::PitchLeast, 0).map_or(balance, |least| math::larger(balance, least));
            let pitch = own(Q::PitchGreatest, 0).map_or(raised, |most| math::smaller(raised, most));
            let step = rules.get(Entry::PITCH_STEP);
            Some(match rules.rounding() {
                Rounding::Down => math::round_down(pitch, step),
                Rounding::Nearest => math::round_nearest(pitch, step),
                Rounding::Up => math::round_up(pitch, step),
            })
        }
        // The least of the student's strengths, and that over the student's solid strip.
        Name(Q::ModeStrength, 0) => least_of_own(answers),
        Name(Q::BookEfficiency, 0) => {
            let stated = answers.iter().find(|f| f.name == Name(Q::ModeStrength, 0)).map(|f| f.value);
            Some(stated.or_else(|| least_of_own(answers))? / own(Q::Solid, 0)?)
        }
        _ => None,
    }
}

/// The least of the strengths that the student states.
fn least_of_own(answers: &[Figure]) -> Option<f64> {
    let strengths = answers.iter().filter(|f| matches!(f.name, Name(Q::TearOuter | Q::ShearAll | Q::BearingAll, 0)));
    strengths.map(|f| f.value).fold(None, |least: Option<f64>, x| Some(least.map_or(x, |l| math::smaller(l, x))))
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
