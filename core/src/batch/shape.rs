//! Which forms the kernel is compiled for, and which cuts of them can govern.
//!
//! All rows of a sweep have one hole, so most cuts of a usual form are never below another one. A cut is left out where
//! an earlier one of the documented order is not above it, or where a later one is lower by a margin that the kernel
//! checks lane by lane ([`MARGIN`](super::kernel::MARGIN)). Write P, O, N for the net sections of plate, other plate or
//! wide strap, and narrow strap; `R` for the last row; `f` for the first row in double shear. Net sections depend on
//! the number of holes alone, and more holes leave less.
//!
//! - A plate torn at an inner row with as many holes as a row outside it: the outer row is earlier and no stronger.
//! - A strap (or plate B) torn at another than its weakest row: tearing it there takes away rivets to fail.
//! - A strap torn at `j < R` with more planes left than at `R`: if a plane less makes a difference, `R` is lower; if
//!   it makes none (or the plane alone bears more than both), then neither do the straps, and all rivets failing is
//!   earlier and no stronger. Where outer rows reach one strap only, the tie remains; the kernel then gives the number
//!   of row `f`.
//! - Plate and strap torn together: above the strap alone, except where the plate tears inside an outer row that is
//!   thinned out, or at row `f`.
//! - All three torn: above both straps torn.

use crate::joint::{Form, JointKind, MAX_ROWS};
use crate::modes::Cut;

/// Most cuts that are left.
pub const SLOTS: usize = 10;

/// The plate torn at row 1.
pub const OUTER: usize = 0;
/// The plate torn at row 2.
pub const SECOND: usize = 1;
/// The plate torn at row 3.
pub const THIRD: usize = 2;
/// All rivets.
pub const RIVETS: usize = 3;
/// The plate torn at its weakest row, and the other plate or wide strap with it.
pub const WITH_OTHER: usize = 4;
/// Plate B of a lap torn at the row before its outer one.
pub const B_SECOND: usize = 5;
/// Plate B at its outer row, or the single or wide strap at the butt.
pub const OTHER: usize = 6;
/// The plate torn at its weakest row, and the narrow strap with it.
pub const WITH_NARROW: usize = 7;
/// The narrow strap at the butt.
pub const NARROW: usize = 8;
/// Both straps at the butt.
pub const STRAPS: usize = 9;

/// A usual form, as the kernel is compiled for it.
pub trait Shape {
    /// Lap, single strap or double straps.
    const KIND: JointKind;
    /// Number of rows.
    const ROWS: usize;
    /// Rows outside that pass through one of two straps only.
    const SINGLE: usize;
    /// Whether the outer row has fewer rivets than the inner rows, which are alike; in a lap both outer rows.
    const THINNED: bool;
    /// Whether both straps are one column of the inputs.
    const ALIKE: bool;

    /// Which of the slots it has.
    const HAS: [bool; SLOTS] = {
        let lap = matches!(Self::KIND, JointKind::Lap);
        let double = matches!(Self::KIND, JointKind::DoubleStrap);
        let inner = Self::THINNED || Self::SINGLE > 0;
        let apart = double && !Self::ALIKE;
        [
            true,
            inner,
            Self::SINGLE > 1,
            true,
            (inner && !matches!(Self::KIND, JointKind::SingleStrap)),
            lap && Self::THINNED,
            true,
            apart && Self::THINNED,
            apart,
            double,
        ]
    };

    /// Rivets of its densest row, of the rivets of all rows.
    #[inline(always)]
    #[must_use]
    fn densest(rivets: &[f64; MAX_ROWS]) -> f64 {
        const { assert!(Self::ROWS >= 1 && Self::ROWS <= MAX_ROWS) };
        // The rows from here on are the densest, but for the last of a lap.
        let inner = if Self::SINGLE > 0 { Self::SINGLE } else { usize::from(Self::THINNED) };
        rivets.get(inner).copied().unwrap_or(f64::NAN)
    }

    /// Rivets by row, with those of rows that are alike taken from one of them: the compiler then sees that they are.
    #[inline(always)]
    #[must_use]
    fn counts(rivets: &[f64; MAX_ROWS]) -> [f64; MAX_ROWS] {
        let [outer, ..] = *rivets;
        let mut counts = [Self::densest(rivets); MAX_ROWS];
        let lap = matches!(Self::KIND, JointKind::Lap);
        for ((slot, rivets), row) in counts.iter_mut().zip(rivets).zip(1..=Self::ROWS) {
            if row <= Self::SINGLE {
                *slot = *rivets;
            } else if Self::THINNED && (row == 1 || (lap && row == Self::ROWS)) {
                *slot = outer;
            }
        }
        counts
    }

    /// The cut of a slot.
    #[must_use]
    fn cut(slot: usize) -> Cut {
        let byte = |n: usize| u8::try_from(n).unwrap_or(0);
        let (last, before) = (byte(Self::ROWS), byte(Self::ROWS.wrapping_sub(1)));
        let weakest = if Self::SINGLE > 0 { byte(Self::SINGLE.wrapping_add(1)) } else { 2 };
        let (plate, other, narrow) = match slot {
            OUTER => (1, 0, 0),
            SECOND => (2, 0, 0),
            THIRD => (3, 0, 0),
            WITH_OTHER => (weakest, weakest, 0),
            B_SECOND => (0, before, 0),
            OTHER => (0, last, 0),
            WITH_NARROW => (weakest, 0, weakest),
            NARROW => (0, 0, last),
            STRAPS => (0, last, last),
            _ => (0, 0, 0),
        };
        Cut { plate, other, narrow }
    }
}

/// A lap of rows alike, or with both outer rows thinned out.
pub struct Lap<const ROWS: usize, const THINNED: bool>;
/// A single strap, with rows alike or the outer row thinned out.
pub struct Single<const ROWS: usize, const THINNED: bool>;
/// Two straps of equal width.
pub struct Double<const ROWS: usize, const THINNED: bool, const ALIKE: bool>;
/// A wide and a narrow strap.
pub struct Unequal<const ROWS: usize, const SINGLE: usize>;

impl<const ROWS: usize, const THINNED: bool> Shape for Lap<ROWS, THINNED> {
    const KIND: JointKind = JointKind::Lap;
    const ROWS: usize = ROWS;
    const SINGLE: usize = 0;
    const THINNED: bool = THINNED;
    const ALIKE: bool = false;
}

impl<const ROWS: usize, const THINNED: bool> Shape for Single<ROWS, THINNED> {
    const KIND: JointKind = JointKind::SingleStrap;
    const ROWS: usize = ROWS;
    const SINGLE: usize = 0;
    const THINNED: bool = THINNED;
    const ALIKE: bool = false;
}

impl<const ROWS: usize, const THINNED: bool, const ALIKE: bool> Shape for Double<ROWS, THINNED, ALIKE> {
    const KIND: JointKind = JointKind::DoubleStrap;
    const ROWS: usize = ROWS;
    const SINGLE: usize = 0;
    const THINNED: bool = THINNED;
    const ALIKE: bool = ALIKE;
}

impl<const ROWS: usize, const SINGLE: usize> Shape for Unequal<ROWS, SINGLE> {
    const KIND: JointKind = JointKind::DoubleStrap;
    const ROWS: usize = ROWS;
    const SINGLE: usize = SINGLE;
    const THINNED: bool = false;
    const ALIKE: bool = false;
}

/// What a form is to the kernel.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Pattern {
    /// Rows alike.
    Even,
    /// The outer row thinned out (both outer rows of a lap), inner rows alike.
    Thinned,
    /// So many rows outside through the wide strap only, each with fewer rivets than the rows at the butt, which are
    /// alike.
    Unequal(usize),
    /// None of these.
    Other,
}

impl Pattern {
    /// The pattern of a form's rows.
    pub fn of(form: &Form) -> Pattern {
        let single = form.first_double_row().wrapping_sub(1);
        let rows = form.row_count();
        let n = |row: usize| form.row(row).rivets;
        if form.kind() == JointKind::DoubleStrap && single > 0 {
            let butt = n(rows);
            let alike = (single.wrapping_add(1)..=rows).all(|row| n(row) == butt);
            let rising = (1..single).all(|row| n(row) <= n(row.wrapping_add(1))) && n(single) < butt;
            return if alike && rising { Pattern::Unequal(single) } else { Pattern::Other };
        }
        let lap = form.kind() == JointKind::Lap;
        let last = if lap { rows.wrapping_sub(1) } else { rows };
        let inner = n(2);
        if (1..=rows).all(|row| n(row) == n(1)) {
            Pattern::Even
        } else if (2..=last).all(|row| n(row) == inner) && n(1) < inner && (!lap || n(rows) == n(1)) && last >= 2 {
            Pattern::Thinned
        } else {
            Pattern::Other
        }
    }
}
