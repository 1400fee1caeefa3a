//! Room for the rivet heads: rows that the book sets too close for snap heads stand further apart.

use super::Brief;
use crate::error::EntryNo;
use crate::given::Given;
use crate::joint::MAX_ROWS;
use crate::math;
use crate::proportion;
use crate::quantities::Length;
use crate::rules::{Entry, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Section, Why};

/// What rivet heads ask of the distance from a row to the next, mm: PRACTICE, snap heads of 1.6 cold rivets.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct HeadRoom<N = f64> {
    /// Beside the edge of the narrow strap, where it lies between the two rows.
    pub at_strap: Option<N>,
    /// Clear of the heads of the next row; 0 where those lie far enough across, `None` where rivets stand differently to
    /// each other along the rows (a lozenge's 2 and 3).
    pub of_rows: Option<N>,
}

impl<N: Num> HeadRoom<N> {
    /// Nothing asked for.
    pub(super) const NONE: Self = HeadRoom { at_strap: None, of_rows: None };

    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> HeadRoom {
        HeadRoom { at_strap: self.at_strap.map(N::value), of_rows: self.of_rows.map(N::value) }
    }
}

/// Moves rows apart that stand too close for their heads, on the grid of the row distances. Distances that the brief
/// gives stay as they are: [`check`](crate::check::check) says whether they will do.
#[inline]
pub(super) fn room<C: Ctx>(
    c: C,
    brief: &Brief,
    given: &Given<C::N>,
    rules: &Rules,
    margin: f64,
    back: &mut [Length; MAX_ROWS],
    found: &mut [HeadRoom<C::N>; MAX_ROWS],
) {
    c.section(Section::Heads);
    // A margin that the brief gives has no line of its own yet.
    let margin = if brief.form.unequal() { c.given(Name(Q::Margin, 0), margin) } else { C::N::lit(0.0) };
    let gaps = found.iter_mut().zip(back.iter_mut()).zip(&brief.back).zip(1_u8..);
    for (((slot, gap), stated), row) in gaps.take(brief.form.row_count().wrapping_sub(1)) {
        if stated.is_none() {
            *slot = between(c, brief, given, rules, margin, row, gap);
        }
    }
}

/// The room between row `row` and the next; moves them apart where the book's distance will not do.
#[inline]
fn between<C: Ctx>(
    c: C,
    brief: &Brief,
    given: &Given<C::N>,
    rules: &Rules,
    margin: C::N,
    row: u8,
    gap: &mut Length,
) -> HeadRoom<C::N> {
    let (form, at) = (&brief.form, usize::from(row));
    let name = Name(Q::RowGap, row);
    let floor = Why::Floor(EntryNo::NONE);
    let by_book = gap.to_mm();
    let mut wanted = c.quiet().given(name, by_book);
    let at_strap = proportion::head_beside_strap(c, form, given, margin, at);
    if let Some(least) = at_strap {
        wanted = c.greater(name, floor, wanted, least);
    }
    // Rows whose heads are clear of each other, which is nearly all, need no lines.
    let mut of_rows = proportion::heads_apart(c.quiet(), form, given, at);
    if of_rows.is_some_and(|least| math::below(wanted.value(), least.value())) {
        of_rows = proportion::heads_apart(c, form, given, at);
        if let Some(least) = of_rows {
            wanted = c.greater(name, floor, wanted, least);
        }
    }
    if math::below(by_book, wanted.value()) {
        *gap = Length::mm(c.up(name, rules.get(Entry::BACK_STEP), wanted).value());
    }
    HeadRoom { at_strap, of_rows }
}
