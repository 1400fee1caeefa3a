//! Rule books as plain data: numbers without a lifetime, texts apart.
//!
//! [`Rules`] is a flat, `Copy` array of numbers, one for each [`Entry`] of the table [`GROUPS`]. Routines take
//! `&Rules`; errors, findings and steps carry the entry's number, and only renderers look up the clause, through
//! [`RuleBook::clause`]. A user makes a book of their own by changing entries of a built-in one
//! ([`Rules::with`]) or by writing the items of a new one ([`RuleBook::from_items`]).

mod book;
mod british_marine;
mod entries;
mod german_1908;
mod indian;
mod items;
mod metric;
mod read;
mod structural;
mod us_code;
mod us_existing;
mod us_states;

pub use book::{BOOKS, RuleBook, Rules, book};
pub use british_marine::BRITISH_MARINE;
pub(crate) use entries::neutral;
pub use entries::{ENTRIES, Entry, EntryInfo, EntryKind, GROUPS, find, info, key};
pub use german_1908::GERMAN_1908;
pub use indian::INDIAN;
pub use items::{Clause, Item, Items, Label, Place};
pub use metric::METRIC;
pub use read::{Balance, CloseRows, Counted, Diameter, HoleTable, Metal, PressureForm, Rounding, Size};
pub use structural::STRUCTURAL;
pub use us_code::US_CODE;
pub use us_existing::US_EXISTING;
pub use us_states::{US_CALIFORNIA, US_LOCOMOTIVE, US_MICHIGAN, US_MONTANA, US_NORTH_CAROLINA};

/// The main form of a joint, as rule books distinguish it.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum JointKind {
    /// One plate laid over the other.
    Lap,
    /// Plates butted, one strap.
    SingleStrap,
    /// Plates butted, a strap on each side.
    DoubleStrap,
}
