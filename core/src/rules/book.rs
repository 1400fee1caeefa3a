//! Books: the numbers, the citations, and the ways to make a book of one's own.

use super::entries::{ENTRIES, Entry, GROUPS, Range, find, line, neutral, range};
use super::items::{Clause, Item, Items};
use super::{
    BRITISH_MARINE, GERMAN_1908, INDIAN, METRIC, STRUCTURAL, US_CALIFORNIA, US_CODE, US_EXISTING, US_LOCOMOTIVE,
    US_MICHIGAN, US_MONTANA, US_NORTH_CAROLINA,
};
use crate::bounds::Field;
use crate::error::{EntryNo, Error, ErrorKind};
use crate::math;

/// The numbers of a rule book. `Copy`, without texts and without lifetime.
#[derive(Clone, Copy, PartialEq, Debug)]
#[repr(C)]
pub struct Rules {
    values: [f64; ENTRIES],
}

impl Rules {
    /// A book that is silent on everything: every entry has its neutral value.
    pub const SILENT: Rules = silent();

    /// The value of an entry.
    #[must_use]
    #[inline(always)]
    pub fn get(&self, entry: Entry) -> f64 {
        self.values.get(entry.index()).copied().unwrap_or(0.0)
    }

    /// The values of all entries, in the order of the table.
    #[must_use]
    pub const fn values(&self) -> &[f64; ENTRIES] {
        &self.values
    }

    /// The entry as a small whole number: a switch or a choice.
    #[must_use]
    #[inline]
    pub fn choice(&self, entry: Entry) -> u8 {
        // Nearly all are 0 or 1, told by their bits: a machine without double precision reads some hundred of them.
        match self.get(entry).to_bits() {
            0 => 0,
            ONE => 1,
            bits => nearest_choice(f64::from_bits(bits)),
        }
    }

    /// This book with one entry changed.
    ///
    /// # Errors
    /// A value that is not finite, outside the entry's range, or not one of its choices.
    ///
    /// ```
    /// use seamwright::{error::ErrorKind, rules::{Entry, METRIC}};
    /// let mine = METRIC.rules.with(Entry::DOUBLE_SHEAR, 1.75)?;
    /// assert_eq!(mine.get(Entry::DOUBLE_SHEAR), 1.75);
    /// assert_eq!(mine.with(Entry::DOUBLE_SHEAR, 2.5).unwrap_err().kind, ErrorKind::TooLarge);
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn with(mut self, entry: Entry, value: f64) -> Result<Self, Error> {
        held(entry, value)?;
        if let Some(slot) = self.values.get_mut(entry.index()) {
            *slot = value;
        }
        Ok(self)
    }

    /// This book with the entry of a key changed.
    ///
    /// # Errors
    /// An unknown key, or what [`Rules::with`] refuses.
    ///
    /// ```
    /// use seamwright::{error::ErrorKind, rules::METRIC};
    /// assert!(METRIC.rules.with_key("hole.sqrt", 6.05).is_ok());
    /// assert_eq!(METRIC.rules.with_key("hole.root", 6.05).unwrap_err().kind, ErrorKind::UnknownKey);
    /// ```
    pub fn with_key(self, key: &str, value: f64) -> Result<Self, Error> {
        let entry = find(key).ok_or(Error::new(ErrorKind::UnknownKey, Field::RuleEntry).value(value))?;
        self.with(entry, value)
    }

    /// Whether every entry lies in its range, as [`Rules::with`] holds them: for numbers that came from outside.
    ///
    /// # Errors
    /// As [`Rules::with`], of the first entry that does not.
    ///
    /// ```
    /// assert!(seamwright::rules::METRIC.rules.within_ranges().is_ok());
    /// ```
    pub fn within_ranges(&self) -> Result<(), Error> {
        Entry::all().zip(&self.values).try_for_each(|(entry, value)| held(entry, *value))
    }

    /// Whether the book contradicts itself: series and tables must rise, a hole must not be smaller than its rivet,
    /// and the least must not pass the greatest.
    ///
    /// # Errors
    /// [`ErrorKind::BookUnsound`] with the entry at fault.
    pub fn validate(&self) -> Result<(), Error> {
        let unsound =
            |e: Entry| Err(Error::new(ErrorKind::BookUnsound, Field::RuleEntry).entry(e.no()).value(self.get(e)));
        let rises = |head: Entry, lines: usize| {
            (1..lines).map(|i| head.at(i)).find(|e| {
                let before = Entry::from_no(EntryNo(e.no().0.wrapping_sub(1))).map_or(0.0, |b| self.get(b));
                let here = self.get(*e);
                here != 0.0 && (here <= before || before == 0.0)
            })
        };
        for (head, lines) in [
            (Entry::SERIES_RIVET, 24),
            (Entry::SERIES_HOLE, 24),
            (Entry::HOLE_TABLE_PLATE, 12),
            (Entry::STRAP_TABLE_PLATE, 20),
        ] {
            if let Some(e) = rises(head, lines) {
                return unsound(e);
            }
        }
        for line in 0..24 {
            let hole = Entry::SERIES_HOLE.at(line);
            if self.get(hole) < self.get(Entry::SERIES_RIVET.at(line)) {
                return unsound(hole);
            }
        }
        for (keys, values, lines) in [
            (Entry::HOLE_TABLE_PLATE, Entry::HOLE_TABLE_HOLE, 12),
            (Entry::STRAP_TABLE_PLATE, Entry::STRAP_TABLE_STRAP, 20),
        ] {
            let unfinished = |i: &usize| (self.get(keys.at(*i)) > 0.0) != (self.get(values.at(*i)) > 0.0);
            if let Some(i) = (0..lines).find(unfinished) {
                return unsound(values.at(i));
            }
        }
        for (least, greatest) in [
            (Entry::HOLE_PER_PLATE_LEAST, Entry::HOLE_PER_PLATE_GREATEST),
            (Entry::MARGIN_LEAST, Entry::MARGIN_GREATEST),
        ] {
            if self.get(greatest) != 0.0 && self.get(greatest) < self.get(least) {
                return unsound(greatest);
            }
        }
        Ok(())
    }
}

/// The bits of 1.
const ONE: u64 = 1.0_f64.to_bits();

/// To the nearest, below 5; the cast takes what is no number, or below nothing, for 0.
#[inline(never)]
fn nearest_choice(value: f64) -> u8 {
    math::smaller(value + 0.5, 4.0) as u8
}

/// 0, 1, 2 or 3, by their bits.
#[inline]
fn small_whole(bits: u64) -> bool {
    const TWO: u64 = 2.0_f64.to_bits();
    const THREE: u64 = 3.0_f64.to_bits();
    matches!(bits, 0 | ONE | TWO | THREE)
}

/// Holds a value to the range of its entry.
#[inline]
fn held(entry: Entry, value: f64) -> Result<(), Error> {
    let (range, bits) = (range(entry), value.to_bits());
    // Numbers that are not negative are in the order of their bits, which costs a machine without double precision a
    // tenth. What this does not settle (a value outside, anything negative, not a number) is looked at again.
    let inside = range.lo.to_bits() <= bits && bits <= range.hi.to_bits();
    if inside && (!range.whole || small_whole(bits)) { Ok(()) } else { held_by_value(entry, range, value) }
}

/// Holds a value to a range that its bits alone do not put it into.
#[inline(never)]
fn held_by_value(entry: Entry, range: &Range, value: f64) -> Result<(), Error> {
    let kind = if !value.is_finite() {
        ErrorKind::NotFinite
    } else if value < range.lo {
        ErrorKind::TooSmall
    } else if value > range.hi {
        ErrorKind::TooLarge
    } else if range.whole && math::round_nearest(value, 1.0) != value {
        ErrorKind::WrongChoice
    } else {
        return Ok(());
    };
    let error = Error::new(kind, Field::RuleEntry).value(value).entry(entry.no()).index(line(entry));
    Err(match kind {
        ErrorKind::NotFinite => error,
        ErrorKind::TooSmall => error.limit(range.lo),
        _ => error.limit(range.hi),
    })
}

/// Every entry at its neutral value.
#[expect(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "evaluated by the compiler")]
const fn silent() -> Rules {
    let mut values = [0.0; ENTRIES];
    let mut g = 0;
    while g < GROUPS.len() {
        let (first, len, row) = &GROUPS[g];
        let mut i = 0;
        while i < *len as usize {
            values[first.index() + i] = row.default;
            i += 1;
        }
        g += 1;
    }
    Rules { values }
}

/// A rule book: the numbers, and what they are cited from. The numbers stand first, for the C library.
#[derive(Clone, Copy, PartialEq, Debug)]
#[repr(C)]
pub struct RuleBook<'a> {
    /// The numbers, which is all that routines take.
    pub rules: Rules,
    /// Short name for flags and files.
    pub id: &'a str,
    /// Title and edition.
    pub title: &'a str,
    /// The sources that clauses point to.
    pub sources: &'a [&'a str],
    /// What the book says, with clauses; entries not listed are silent.
    pub items: Items<'a>,
    /// Whether readers of the book know its failure modes by letters, so that a sheet lists them so too
    /// ([`letters`](crate::modes::letters)).
    pub lettered: bool,
}

impl<'a> RuleBook<'a> {
    /// A book from its items, on top of a silent book. Evaluated by the compiler for the built-in books; a value
    /// outside its entry's range is kept, and found by [`Rules::with`]'s check in the tests of the built-in books.
    #[must_use]
    #[expect(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "guarded by the loop conditions")]
    pub const fn from_items(id: &'a str, title: &'a str, sources: &'a [&'a str], items: &'a [Item<'a>]) -> Self {
        let mut values = Rules::SILENT.values;
        let mut n = 0;
        while n < items.len() {
            let item = &items[n];
            let mut i = 0;
            while i < item.values.len() && item.entry.index() + i < ENTRIES {
                values[item.entry.index() + i] = item.values[i];
                i += 1;
            }
            n += 1;
        }
        RuleBook { rules: Rules { values }, id, title, sources, items: Items::listed(items), lettered: false }
    }

    /// The book, with failure modes known by letters.
    #[must_use]
    pub const fn lettered(mut self) -> Self {
        self.lettered = true;
        self
    }

    /// The clause behind an entry; a silent entry has none.
    #[must_use]
    pub fn clause(&self, entry: EntryNo) -> Option<Clause<'a>> {
        self.items.clause(Entry::from_no(entry)?)
    }

    /// What the book's items say of an entry: the neutral value where they are silent. Where [`RuleBook::rules`] has
    /// another value, somebody changed it.
    #[must_use]
    pub fn stated(&self, entry: Entry) -> f64 {
        self.items.value(entry).unwrap_or_else(|| neutral(entry))
    }

    /// Whether the value in force is another one than the book's own.
    #[must_use]
    pub fn is_changed(&self, entry: Entry) -> bool {
        self.rules.get(entry) != self.stated(entry)
    }

    /// The title of the source of a clause; empty for practice and own choices.
    #[must_use]
    pub fn source(&self, clause: &Clause<'_>) -> &'a str {
        self.sources.get(usize::from(clause.source)).copied().unwrap_or("")
    }
}

/// The built-in books.
pub const BOOKS: &[&RuleBook<'static>] = &[
    &METRIC,
    &INDIAN,
    &US_CODE,
    &US_EXISTING,
    &BRITISH_MARINE,
    &GERMAN_1908,
    &STRUCTURAL,
    &US_MICHIGAN,
    &US_NORTH_CAROLINA,
    &US_MONTANA,
    &US_CALIFORNIA,
    &US_LOCOMOTIVE,
];

/// A built-in book by its short name.
///
/// ```
/// assert_eq!(seamwright::rules::book("indian").map(|b| b.id), Some("indian"));
/// assert!(seamwright::rules::book("unheard of").is_none());
/// ```
#[must_use]
pub fn book(id: &str) -> Option<&'static RuleBook<'static>> {
    BOOKS.iter().find(|b| b.id == id).copied()
}
