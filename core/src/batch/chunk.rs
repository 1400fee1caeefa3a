//! A chunk of rows: its columns and their bounds, what is the same in all of them, and what they give.
#![allow(
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    clippy::needless_range_loop,
    reason = "arrays and loops of constant length: nothing is out of bounds, and the compiler knows it"
)]

use super::kernel::MARGIN;
use super::shape::SLOTS;
use crate::joint::MAX_ROWS;
use crate::math;

/// Columns that a chunk has, in the order of [`Inputs`](super::Inputs); at the end a bearing stress of straps that are
/// not there, which only has to be within its bounds.
pub const READ: usize = 15;

/// Places of the columns that no compiled kernel reads.
pub const PLATE_SHEAR: usize = 11;
pub const MARGIN_COLUMN: usize = 12;
pub const BACK: usize = 13;

/// So many figures side by side are looked at at once: the compiler keeps their order where one follows the other.
const SIDES: usize = 8;

/// Bounds of a column, both positive.
#[derive(Clone, Copy, Debug)]
pub struct Span {
    least: f64,
    greatest: f64,
}

impl Span {
    pub const fn new(least: f64, greatest: f64) -> Self {
        Span { least, greatest }
    }

    /// Whether a figure lies within.
    pub fn has(self, x: f64) -> bool {
        x >= self.least && x <= self.greatest
    }

    /// Whether all figures of a chunk lie within. What is not a number is neither the least nor the greatest, but stays
    /// in the sum.
    #[inline(always)]
    pub fn holds<const W: usize>(self, chunk: &[f64; W]) -> bool {
        let (mut least, mut greatest, mut sum) = ([f64::INFINITY; SIDES], [0.0; SIDES], [0.0; SIDES]);
        for side in chunk.as_chunks::<SIDES>().0 {
            for i in 0..SIDES {
                least[i] = math::smaller(least[i], side[i]);
                greatest[i] = math::larger(greatest[i], side[i]);
                sum[i] += side[i];
            }
        }
        let mut within = true;
        for i in 0..SIDES {
            within &= (least[i] >= self.least) & (greatest[i] <= self.greatest) & (sum[i] < f64::INFINITY);
        }
        within
    }
}

/// Whether all efficiencies of a chunk are above [`MARGIN`]. They are numbers, for rows within their bounds.
#[inline(always)]
pub fn above_margin<const W: usize>(efficiencies: &[f64; W]) -> bool {
    let mut least = [f64::INFINITY; SIDES];
    for side in efficiencies.as_chunks::<SIDES>().0 {
        for i in 0..SIDES {
            least[i] = math::smaller(least[i], side[i]);
        }
    }
    least.iter().fold(true, |all, least| all & (*least > MARGIN))
}

/// What is the same in all rows.
#[derive(Clone, Copy, Debug)]
pub struct Fixed {
    /// Rivets by row.
    pub rivets: [f64; MAX_ROWS],
    /// Rivets of the densest row.
    pub densest: f64,
    /// Double shear over single shear, by the book.
    pub double: f64,
    /// The same, as it enters one plane that fails alone; 2 makes it the single shear.
    pub lone: f64,
    /// Added to the diameter that tears.
    pub allowance: f64,
    /// Whether cold rivets count in tearing, shear and bearing.
    pub by_rivet: [bool; 3],
    /// Greatest efficiency credited.
    pub cap: f64,
    /// The book's factor on the rivets.
    pub seam: f64,
    /// Whether the book sees bearing.
    pub crush: bool,
    /// Whether the book's own eyes have to look at all.
    pub twice: bool,
    /// Nothing for cuts that there are and that the book counts, infinity for others: added to their strengths.
    pub bars: [[f64; SLOTS]; 2],
    /// Numbers of the slots' modes.
    pub numbers: [u64; SLOTS],
    /// Number of the wide strap torn at the first row in double shear.
    pub tied: u64,
}

impl Fixed {
    /// Whether every diameter that counts is the hole's, and one plane that fails alone is half of two.
    pub fn plain(&self) -> bool {
        self.by_rivet == [false; 3] && self.allowance <= 0.0 && self.lone == self.double
    }
}

/// A chunk of each column.
pub type Chunk<'c, const W: usize> = [&'c [f64; W]; READ];

/// The columns of a chunk, and the diameters that count: found once, so that the loop over the lanes is without
/// choices.
#[derive(Clone, Copy)]
pub struct View<'c, const W: usize> {
    pub columns: Chunk<'c, W>,
    pub tear: &'c [f64; W],
    pub sheared: &'c [f64; W],
    pub borne: &'c [f64; W],
    pub allowance: f64,
}

impl<'c, const W: usize> View<'c, W> {
    #[inline(always)]
    pub fn new(fixed: &Fixed, columns: &Chunk<'c, W>) -> Self {
        let [_, _, hole, _, _, rivet, ..] = *columns;
        let [tear, sheared, borne] = fixed.by_rivet.map(|by_rivet| if by_rivet { rivet } else { hole });
        View { columns: *columns, tear, sheared, borne, allowance: fixed.allowance }
    }

    /// A block of the chunk, the one at place `at` among blocks of as many rows.
    #[inline(always)]
    pub fn block<const B: usize>(&self, at: usize) -> View<'c, B> {
        // There are so many: the other arm is for the compiler, which then keeps no panic.
        let block = |rows: &'c [f64; W]| rows.as_chunks().0.get(at).unwrap_or(&[0.0; B]);
        // Written out: the compiler does not put `map` of so many in place.
        let [pitch, plate, hole, tension, shear, rivet, other, narrow, other_tension, bearing, other_bearing, ..] =
            self.columns;
        let [.., plate_shear, margin, back, stray] = self.columns;
        View {
            columns: [
                block(pitch),
                block(plate),
                block(hole),
                block(tension),
                block(shear),
                block(rivet),
                block(other),
                block(narrow),
                block(other_tension),
                block(bearing),
                block(other_bearing),
                block(plate_shear),
                block(margin),
                block(back),
                block(stray),
            ],
            tear: block(self.tear),
            sheared: block(self.sheared),
            borne: block(self.borne),
            allowance: self.allowance,
        }
    }
}

/// Room for what a chunk of rows gives.
pub struct Found<const W: usize> {
    pub efficiency: [f64; W],
    pub book: [f64; W],
    pub credited: [f64; W],
    pub mode: [u16; W],
}

impl<const W: usize> Found<W> {
    #[inline(always)]
    pub(super) fn new() -> Self {
        Found { efficiency: [0.0; W], book: [0.0; W], credited: [0.0; W], mode: [0; W] }
    }
}

/// Where a kernel writes what a chunk of rows gives; nowhere what is not asked for.
pub struct Finds<'o, const W: usize> {
    /// Efficiencies over all modes.
    pub efficiency: &'o mut [f64; W],
    /// Efficiencies by the book.
    pub book: Option<&'o mut [f64; W]>,
    /// Efficiencies credited.
    pub credited: Option<&'o mut [f64; W]>,
    /// Numbers of the governing modes; [`NO_MODE`](super::NO_MODE) where the row is to be checked by itself. So is every
    /// row with an efficiency that is not above [`MARGIN`], or an input that is not within its bounds.
    pub mode: &'o mut [u16; W],
}

impl<const W: usize> Finds<'_, W> {
    /// Writes a block of rows, the one that stands at place `at` among blocks of as many.
    #[inline(always)]
    pub fn put<const B: usize>(
        &mut self,
        fixed: &Fixed,
        at: usize,
        (efficiency, book, mode): ([f64; B], [f64; B], [u16; B]),
    ) {
        put(self.efficiency, at, efficiency);
        put(self.mode, at, mode);
        if let Some(rows) = self.book.as_deref_mut() {
            put(rows, at, book);
        }
        if let Some(rows) = self.credited.as_deref_mut() {
            let mut credited = [0.0; B];
            for i in 0..B {
                // The lesser of the two, the first when equal, under the cap.
                credited[i] = math::smaller(math::smaller(book[i], efficiency[i]), fixed.cap);
            }
            put(rows, at, credited);
        }
    }
}

#[inline(always)]
fn put<T: Copy, const B: usize, const W: usize>(rows: &mut [T; W], at: usize, block: [T; B]) {
    if let Some(rows) = rows.as_chunks_mut().0.get_mut(at) {
        *rows = block;
    }
}
