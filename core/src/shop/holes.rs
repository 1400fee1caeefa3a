//! The holes of a seam: computed one by one from a datum, never stored.

use super::order::Run;
use super::places::{across, clear_of_each_other, places};
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::formula;
use crate::joint::{Joint, JointKind, MAX_ROWS};
use crate::math;
use crate::quantities::Length;

/// The side of the seam on which a hole lies.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Side {
    /// A lap has one pattern through both plates.
    Lap,
    /// Left of the butt line, seen from the datum along the seam: `y` above nothing.
    Left,
    /// Right of the butt line: `y` below nothing.
    Right,
}

impl Side {
    /// The word on the sheet.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Side::Lap => "lap",
            Side::Left => "left",
            Side::Right => "right",
        }
    }
}

/// One hole.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Hole {
    /// Its number in the table, from 1.
    pub number: u32,
    /// Side of the seam.
    pub side: Side,
    /// Row, from 1, as in the joint.
    pub row: u8,
    /// Its number in the row, from 1.
    pub in_row: u32,
    /// Along the seam from the datum: the end of the plate, the edge of a tie, the mark of a girth.
    pub x: Length,
    /// Across the seam: from the butt line, in a lap from the edge of plate B.
    pub y: Length,
    /// Degrees round the shell from the mark, the same in all plies; `None` in a straight seam.
    pub angle: Option<f64>,
}

/// The holes of one row on one side.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
struct RowHoles {
    count: u32,
    rivets: u8,
    /// First hole, mm from the first hole of the seam, from the edge of a tie.
    first: f64,
    /// Hole to hole, mm.
    step: f64,
    /// Across, mm, without the side's sign.
    y: f64,
}

/// Where the holes of a seam are.
///
/// Order: by side (left, then right), by row from the outside, and along the seam from the datum. The datum of `x` is
/// the end of the plate, the edge of a tie, or a mark on the girth at which row 1 has a hole; of `y` the butt line, in
/// a lap the edge of plate B, which is the one next to row 1.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Layout {
    rows: [RowHoles; MAX_ROWS],
    row_count: usize,
    butt: bool,
    start: f64,
    strips: u32,
    girth: Option<f64>,
}

impl Layout {
    /// The holes of a joint along a run. All row distances and the margin are known; the strip is the fitted one.
    pub(super) fn new(joint: &Joint, run: &Run, strips: u32) -> Result<Self, Error> {
        let form = joint.form();
        let (start, end, girth) = match run {
            Run::Straight { first_end, last_end, .. } => (first_end.to_mm(), last_end.to_mm(), None),
            Run::Girth { .. } => (0.0, 0.0, Some(joint.strip * f64::from(strips))),
            Run::Tie => (0.0, 0.0, None),
        };
        let straight = matches!(run, Run::Straight { .. });
        let tie = matches!(run, Run::Tie);
        clear_of_each_other(joint, tie)?;
        let butt = form.kind() != JointKind::Lap;
        let row_count = form.row_count();
        let mut layout = Layout { rows: [RowHoles::default(); MAX_ROWS], row_count, butt, start, strips, girth };
        let holes = layout.rows.iter_mut().zip(places(joint, tie)).zip(joint.rows());
        for (((slot, place), made), number) in holes.zip(1_u8..) {
            let closing = straight && place.first == 0.0;
            let count = strips.saturating_mul(u32::from(place.rivets)).saturating_add(u32::from(closing));
            let y = across(joint, usize::from(number));
            *slot = RowHoles { count, rivets: place.rivets, first: place.first, step: place.step, y };
            // The row must stay inside its plate at both ends.
            if girth.is_none() {
                let reach = place.first + place.step * (f64::from(place.rivets) - 1.0);
                let last = if closing { 0.0 } else { joint.strip - reach };
                let closest = math::smaller(start + place.first, end + last);
                if math::at_most(closest, 0.5 * made.hole) {
                    let error = Error::new(ErrorKind::HoleCutsEdge, Field::Margin).index(number);
                    return Err(error.value(closest).limit(0.5 * made.hole));
                }
            }
        }
        Ok(layout)
    }

    /// Holes of a row (from 1) on one side.
    #[must_use]
    pub fn in_row(&self, row: usize) -> u32 {
        self.rows.get(row.wrapping_sub(1)).map_or(0, |r| r.count)
    }

    /// Where hole `in_row` (from 1) of row `row` (from 1) lies along the seam, from the datum.
    #[must_use]
    pub fn place(&self, row: usize, in_row: u32) -> Option<Length> {
        let row = self.rows.get(row.wrapping_sub(1))?;
        let at = in_row.checked_sub(1).filter(|_| in_row <= row.count)?;
        Some(Length::mm(self.along(row, at)))
    }

    /// Hole `at` (from 0) of a row, mm from the datum.
    fn along(&self, row: &RowHoles, at: u32) -> f64 {
        formula::hole_place(self.start + row.first, row.step, f64::from(at))
    }

    /// Strips along the seam.
    #[must_use]
    pub const fn strips(&self) -> u32 {
        self.strips
    }

    /// Last holes that close a row (from 1): one where a straight row begins with the first hole of the seam.
    #[must_use]
    pub fn closing(&self, row: usize) -> u32 {
        let row = self.rows.get(row.wrapping_sub(1)).copied().unwrap_or_default();
        row.count.saturating_sub(self.strips.saturating_mul(u32::from(row.rivets)))
    }

    /// Sides of the seam: two of a butt, one of a lap.
    #[must_use]
    pub const fn sides(&self) -> u32 {
        if self.butt { 2 } else { 1 }
    }

    /// Holes of one side.
    #[must_use]
    pub fn on_one_side(&self) -> u32 {
        self.rows.iter().fold(0, |n, row| n.saturating_add(row.count))
    }

    /// All holes.
    #[must_use]
    pub fn total(&self) -> u32 {
        self.on_one_side().saturating_mul(self.sides())
    }

    /// Whether the seam closes on itself.
    #[must_use]
    pub const fn closed(&self) -> bool {
        self.girth.is_some()
    }

    /// The hole of a number, from 1, in the order of the table.
    #[must_use]
    pub fn hole(&self, number: u32) -> Option<Hole> {
        let mut left = number.checked_sub(1).filter(|_| number <= self.total())?;
        let one = self.on_one_side();
        let side = match (self.butt, left < one) {
            (false, _) => Side::Lap,
            (true, true) => Side::Left,
            (true, false) => {
                left = left.wrapping_sub(one);
                Side::Right
            }
        };
        for (row, at) in self.rows.iter().zip(1_u8..).take(self.row_count) {
            if left < row.count {
                let x = self.along(row, left);
                let y = if side == Side::Right { -row.y } else { row.y };
                let angle = self.girth.map(|g| formula::hole_angle(x, g));
                let in_row = left.wrapping_add(1);
                return Some(Hole { number, side, row: at, in_row, x: Length::mm(x), y: Length::mm(y), angle });
            }
            left = left.wrapping_sub(row.count);
        }
        None
    }

    /// All holes in order.
    #[must_use]
    pub fn holes(&self) -> Holes {
        self.page(1, u32::MAX)
    }

    /// `count` holes from number `first` (from 1) on, or as many as there are.
    #[must_use]
    pub fn page(&self, first: u32, count: u32) -> Holes {
        let next = if first > 0 { first } else { 1 };
        let end = next.saturating_add(count);
        let past = self.total().saturating_add(1);
        Holes { layout: *self, next, end: if end < past { end } else { past } }
    }
}

/// Holes in the order of the table.
#[derive(Clone, Debug)]
pub struct Holes {
    layout: Layout,
    next: u32,
    end: u32,
}

impl Iterator for Holes {
    type Item = Hole;

    fn next(&mut self) -> Option<Hole> {
        if self.next >= self.end {
            return None;
        }
        let hole = self.layout.hole(self.next);
        self.next = self.next.saturating_add(1);
        hole
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        let left = usize::try_from(self.end.saturating_sub(self.next)).unwrap_or(usize::MAX);
        (left, Some(left))
    }
}

impl ExactSizeIterator for Holes {}
