//! The walk over all candidates: group by group, each group by halves of its pitches.

use core::ops::ControlFlow;

use super::brief::{Constraint, SearchBrief};
use super::candidate::Group;
use super::keep::Keeper;
use super::measures::{BILLION, whole};
use super::weight::Weights;
use super::{Objective, Tally};
use crate::error::Error;
use crate::joint::Form;
use crate::quantities::Length;
use crate::rules::Rules;

/// Asked before every stretch whether to go on.
pub(super) type GoOn<'g> = &'g mut dyn FnMut() -> ControlFlow<()>;

/// Why a walk ended early.
pub(super) enum Ended {
    /// Something is wrong.
    Error(Error),
    /// Whoever was asked said so.
    Stopped,
}

impl From<Error> for Ended {
    fn from(error: Error) -> Self {
        Ended::Error(error)
    }
}

impl Ended {
    /// What a caller is told.
    pub(super) fn told<T>(self) -> Result<ControlFlow<(), T>, Error> {
        match self {
            Ended::Error(error) => Err(error),
            Ended::Stopped => Ok(ControlFlow::Break(())),
        }
    }
}

/// Stretches that wait while another is halved: one for each halving of the longest grid.
const WAITING: usize = 64;

/// Calls `visit` with every group, in the documented order: forms, plates, sizes.
pub(super) fn groups<'s, 'a>(
    search: &'s SearchBrief<'a>,
    rules: &'s Rules,
    forms: &[Form],
    mut visit: impl FnMut(Option<Group<'s, 'a>>) -> Result<(), Ended>,
) -> Result<(), Ended> {
    for form in forms {
        for plate in search.plates {
            match search.holes {
                Some(holes) => {
                    for hole in holes {
                        let rivet = rules.size_of_hole(hole.to_mm()).map_or(*hole, |s| Length::mm(s.rivet));
                        visit(Some(Group::new(search, rules, *form, *plate, (*hole, rivet))))?;
                    }
                }
                None => {
                    for size in rules.series() {
                        let size = (Length::mm(size.hole), Length::mm(size.rivet));
                        visit(Some(Group::new(search, rules, *form, *plate, size)))?;
                    }
                }
            }
        }
        visit(None)?;
    }
    Ok(())
}

/// Walks over all candidates.
pub(super) fn walk<K: Keeper>(
    search: &SearchBrief<'_>,
    rules: &Rules,
    forms: &[Form],
    keeper: &mut K,
    weighs: bool,
    go_on: GoOn<'_>,
) -> Result<Tally, Ended> {
    let mut tally = Tally::default();
    groups(search, rules, forms, |group| match group {
        Some(group) => one(&group, keeper, &mut tally, weighs, go_on),
        None => {
            keeper.next_form();
            Ok(())
        }
    })?;
    Ok(tally)
}

/// What excludes a whole group.
fn excluded(group: &Group<'_, '_>) -> Option<Constraint> {
    let (search, rivet) = (group.search, group.rivet.to_mm());
    if search.rows_most.is_some_and(|most| group.form.row_count() > usize::from(most)) {
        return Some(Constraint::Rows);
    }
    let small = search.rivet_least.is_some_and(|least| crate::math::below(rivet, least.to_mm()));
    let large = search.rivet_most.is_some_and(|most| crate::math::below(most.to_mm(), rivet));
    if small || large {
        return Some(Constraint::RivetSize);
    }
    if group.cap_unknown {
        return Some(Constraint::CapUnknown);
    }
    (group.len() == 0).then_some(Constraint::Pitch)
}

/// The steps of a stretch at which the bound reaches an efficiency; one step more on both sides, so that no rounding
/// loses one.
fn narrowed(group: &Group<'_, '_>, (from, to): (f64, f64), (first, last): (u32, u32)) -> Option<(u32, u32)> {
    if from > to {
        return None;
    }
    let strip = group.strip(1);
    let low = ((from / strip) as u32).saturating_sub(1);
    let high = ((to / strip) as u32).saturating_add(2);
    let (low, high) = (low.max(first), high.min(last));
    (low <= high).then_some((low, high))
}

fn count((first, last): (u32, u32)) -> u64 {
    u64::from(last.wrapping_sub(first)).saturating_add(1)
}

/// One group.
fn one<K: Keeper>(
    group: &Group<'_, '_>,
    keeper: &mut K,
    tally: &mut Tally,
    weighs: bool,
    go_on: &mut dyn FnMut() -> ControlFlow<()>,
) -> Result<(), Ended> {
    // A group without a pitch, or without a last one, is one candidate that cannot be.
    let size = if group.cap_unknown { 1 } else { u64::from(group.len()).max(1) };
    tally.grid = tally.grid.saturating_add(size);
    if let Some(constraint) = excluded(group) {
        tally.exclude(constraint, size);
        return Ok(());
    }
    let pieces = group.pieces();
    let mut range = group.range;
    let required = group.search.efficiency.map_or(0, |least| whole(least, BILLION));
    let for_pressure = group.efficiency_for_pressure();
    for (least, constraint) in [(parts(required), Constraint::Efficiency), (for_pressure, Constraint::Pressure)] {
        let reaching = if least > 0.0 { pieces.reaching(least) } else { (0.0, f64::INFINITY) };
        let Some(left) = narrowed(group, reaching, range) else {
            tally.exclude(constraint, count(range));
            return Ok(());
        };
        tally.exclude(constraint, count(range).saturating_sub(count(left)));
        range = left;
    }
    let mut weights: Option<Weights> = None;
    let mut waiting: heapless::Vec<(u32, u32), WAITING> = heapless::Vec::new();
    let _ = waiting.push(range);
    while let Some(stretch) = waiting.pop() {
        if go_on().is_break() {
            return Err(Ended::Stopped);
        }
        let floor = parts(keeper.efficiency_floor());
        let reaching = if floor > 0.0 { pieces.reaching(floor) } else { (0.0, f64::INFINITY) };
        let Some(left) = narrowed(group, reaching, stretch) else {
            tally.by_bound = tally.by_bound.saturating_add(count(stretch));
            continue;
        };
        tally.by_bound = tally.by_bound.saturating_add(count(stretch).saturating_sub(count(left)));
        let (first, last) = left;
        let bound = group.bound(&pieces, weights.as_ref(), left);
        if bound.efficiency < required {
            tally.exclude(Constraint::Efficiency, count(left));
            continue;
        }
        if pieces.over(group.strip(first), group.strip(last)) < for_pressure {
            tally.exclude(Constraint::Pressure, count(left));
            continue;
        }
        if keeper.hopeless(&bound) {
            tally.by_bound = tally.by_bound.saturating_add(count(left));
            continue;
        }
        if first == last {
            tally.examined = tally.examined.saturating_add(1);
            match group.examine(first) {
                Ok((candidate, design)) => {
                    tally.fitting = tally.fitting.saturating_add(1);
                    keeper.offer(&candidate)?;
                    if weighs && weights.is_none() {
                        weights = group.search.mass.as_ref().and_then(|order| Weights::new(order, &design));
                    }
                }
                Err(constraint) => tally.exclude(constraint, 1),
            }
            continue;
        }
        let middle = first.wrapping_add(last.wrapping_sub(first) / 2);
        let after = middle.saturating_add(1);
        // The bound rises to its only summit and falls: the half with the summit goes first, the later one of equals.
        let later = pieces.at(group.strip(after)) >= pieces.at(group.strip(middle));
        let (now, then) = if later { ((after, last), (first, middle)) } else { ((first, middle), (after, last)) };
        let _ = waiting.push(then);
        let _ = waiting.push(now);
    }
    Ok(())
}

/// The least efficiency that comes to so many billionths or more, and a little less.
fn parts(billionths: u64) -> f64 {
    if billionths == 0 { 0.0 } else { (billionths as f64 - 1.0) / BILLION }
}

/// Whether mass decides early enough to be bounded.
pub(super) fn weighs(objective: Objective) -> bool {
    objective == Objective::Mass
}
