//! What a book says, statement by statement, and where each stands.

use super::book::Rules;
use super::entries::{ENTRIES, Entry};

/// How far a figure of a rule book can be trusted.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Label {
    /// Seen in a text of the source.
    Read,
    /// From memory; not seen. Check it before relying on it.
    Memory,
    /// Common practice of the trade, without a source.
    Practice,
    /// Set by the user, or by this library where the source is silent.
    Own,
}

impl Label {
    /// The word printed on sheets.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Label::Read => "READ",
            Label::Memory => "MEM",
            Label::Practice => "PRACTICE",
            Label::Own => "OWN",
        }
    }
}

/// Where a figure stands.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Clause<'a> {
    /// Number of the clause, equation, table or page.
    pub number: &'a str,
    /// Position in the book's list of sources.
    pub source: u8,
    /// How far it can be trusted.
    pub label: Label,
}

impl<'a> Clause<'a> {
    /// A clause seen in the book's source number `source`.
    #[must_use]
    pub const fn read(source: u8, number: &'a str) -> Self {
        Clause { number, source, label: Label::Read }
    }

    /// A clause of source number `source` cited from memory.
    #[must_use]
    pub const fn memory(source: u8, number: &'a str) -> Self {
        Clause { number, source, label: Label::Memory }
    }

    /// Common practice, in words.
    #[must_use]
    pub const fn practice(number: &'a str) -> Self {
        Clause { number, source: u8::MAX, label: Label::Practice }
    }

    /// This library's or the user's own choice, in words.
    #[must_use]
    pub const fn own(number: &'a str) -> Self {
        Clause { number, source: u8::MAX, label: Label::Own }
    }
}

/// One statement of a book: an entry (or the head of a list), its value or values, and the clause.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Item<'a> {
    /// The entry, or the first line of a list.
    pub entry: Entry,
    /// Its value, or the values of consecutive lines.
    pub values: &'a [f64],
    /// Where it stands.
    pub clause: Clause<'a>,
}

impl<'a> Item<'a> {
    /// A statement.
    #[must_use]
    pub const fn new(entry: Entry, values: &'a [f64], clause: Clause<'a>) -> Self {
        Item { entry, values, clause }
    }

    /// The value that it gives an entry.
    fn of(&self, entry: Entry) -> Option<f64> {
        self.values.get(entry.index().checked_sub(self.entry.index())?).copied()
    }
}

/// The statements of a book, in their order.
///
/// ```
/// use seamwright::rules::{Entry, METRIC};
/// let first = METRIC.items.iter().next().ok_or("a book without statements")?;
/// assert_eq!((first.entry, first.values), (Entry::HOLE_RULE, &[0.0][..]));
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Items<'a>(Kept<'a>);

/// How they are kept.
#[derive(Clone, Copy, Debug)]
enum Kept<'a> {
    /// As they were written down.
    Listed(&'a [Item<'a>]),
    /// Their places alone.
    Packed { numbers: &'a Rules, places: &'a [Place], clauses: &'a [Clause<'a>] },
}

/// A statement whose value is in the numbers of its book, and its clause in a list: four bytes of a firmware image.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Place {
    /// The entry, or the first line of a list.
    pub entry: Entry,
    /// How many lines of it.
    pub lines: u8,
    /// Position of the clause in the list of them.
    pub clause: u8,
}

impl<'a> Items<'a> {
    /// Statements as they were written down. A later one on the same entry gives its value, an earlier one its clause.
    #[must_use]
    pub const fn listed(items: &'a [Item<'a>]) -> Self {
        Items(Kept::Listed(items))
    }

    /// Statements by their places in `numbers`, which has to hold what the book says, and in `clauses`. One that lies
    /// outside of either is none.
    #[must_use]
    pub const fn packed(numbers: &'a Rules, places: &'a [Place], clauses: &'a [Clause<'a>]) -> Self {
        Items(Kept::Packed { numbers, places, clauses })
    }

    /// How many there are.
    #[must_use]
    pub const fn len(&self) -> usize {
        match self.0 {
            Kept::Listed(items) => items.len(),
            Kept::Packed { places, .. } => places.len(),
        }
    }

    /// Whether there is none: a silent book.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The statement of a position as it was written down; none in what was packed.
    #[must_use]
    pub const fn written(&self, at: usize) -> Option<&'a Item<'a>> {
        match self.0 {
            Kept::Listed(items) if at < items.len() => items.split_at(at).1.first(),
            _ => None,
        }
    }

    /// The statement of a position.
    #[must_use]
    pub fn get(&self, at: usize) -> Option<Item<'a>> {
        match self.0 {
            Kept::Listed(items) => items.get(at).copied(),
            Kept::Packed { numbers, places, clauses } => {
                let place = places.get(at)?;
                let from = place.entry.index();
                let values = numbers.values().get(from..from.wrapping_add(usize::from(place.lines)))?;
                Some(Item { entry: place.entry, values, clause: *clauses.get(usize::from(place.clause))? })
            }
        }
    }

    /// All of them.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = Item<'a>> + use<'a> {
        let items = *self;
        (0..items.len()).filter_map(move |at| items.get(at))
    }

    /// The value that a statement gives an entry: the last one that names it.
    pub(super) fn value(&self, entry: Entry) -> Option<f64> {
        match self.0 {
            Kept::Listed(items) => items.iter().rev().find_map(|item| item.of(entry)),
            Kept::Packed { numbers, places, clauses } => {
                places.iter().rev().find(|place| place.clause_of(entry, clauses).is_some()).map(|_| numbers.get(entry))
            }
        }
    }

    /// The clause of the first statement that names an entry.
    pub(super) fn clause(&self, entry: Entry) -> Option<Clause<'a>> {
        match self.0 {
            Kept::Listed(items) => items.iter().find(|item| item.of(entry).is_some()).map(|item| item.clause),
            Kept::Packed { places, clauses, .. } => {
                places.iter().find_map(|place| place.clause_of(entry, clauses)).copied()
            }
        }
    }
}

impl Place {
    /// The clause of an entry that the statement names.
    #[inline]
    fn clause_of<'c, 'a>(self, entry: Entry, clauses: &'c [Clause<'a>]) -> Option<&'c Clause<'a>> {
        let (from, lines) = (self.entry.index(), usize::from(self.lines));
        let named = entry.index().wrapping_sub(from) < lines && from.wrapping_add(lines) <= ENTRIES;
        if named { clauses.get(usize::from(self.clause)) } else { None }
    }
}

impl PartialEq for Items<'_> {
    /// Whether they say the same, however they are kept.
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}
