//! One small error type: what could not be computed, which field, its value, the limit, the clause and the remedy.
//!
//! An [`Error`] means "nothing was computed". A rule that is not met is a [`Finding`](crate::check::Finding).

use core::fmt;

use crate::bounds::{Field, Unit};
use crate::text;

/// Number of a rule-book entry, as carried by errors, findings and steps; its texts live in the book's citations.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, PartialOrd, Ord)]
#[repr(transparent)]
pub struct EntryNo(pub u16);

impl EntryNo {
    /// "No entry": the matter does not come from a rule book.
    pub const NONE: EntryNo = EntryNo(u16::MAX);

    /// Whether this names an entry.
    #[must_use]
    pub const fn is_some(self) -> bool {
        self.0 != u16::MAX
    }
}

macro_rules! kinds {
    ($($id:ident $number:literal $text:literal $remedy:literal;)*) => {
        /// Why nothing was computed. The numbers are stable: Rust, Python and C share them.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum ErrorKind { $(#[doc = $text] $id = $number),* }

        /// All kinds, for tests and bindings.
        pub const KINDS: &[ErrorKind] = &[$(ErrorKind::$id),*];

        impl ErrorKind {
            /// What is wrong, as it stands after the field and its value.
            #[must_use]
            pub const fn text(self) -> &'static str { match self { $(ErrorKind::$id => $text),* } }

            /// What the user can do about it.
            #[must_use]
            pub const fn remedy(self) -> &'static str { match self { $(ErrorKind::$id => $remedy),* } }
        }
    };
}

kinds! {
    NotFinite            1 "is not a finite number" "give a number";
    TooSmall             2 "is below the least value allowed" "raise it to the limit or more";
    TooLarge             3 "is above the greatest value allowed" "lower it to the limit or less";
    Missing              4 "is needed here and was not given" "give it";
    NotForThisForm       5 "does not belong to this form of joint" "leave it out or choose another form";
    Inconsistent         6 "contradicts the form of the joint or another input" "make the two agree";
    HolesFillPitch       7 "is not greater than the holes of a row taken together" "take a larger pitch, a smaller hole or fewer rivets";
    RowsOverlap          8 "is so small that holes of neighbouring rows overlap" "move the rows apart";
    HoleCutsEdge         9 "is so small that the hole cuts the plate edge" "enlarge the margin";
    RivetExceedsHole    10 "is greater than its hole" "take a larger hole or a smaller rivet";
    BeyondTable         11 "lies outside the table of the rule book" "give the dimension itself";
    NoStandardSize      12 "is above the largest size of the series" "give the hole itself or take a longer series";
    NoAdmissiblePitch   13 "leaves no pitch between the least and the greatest pitch of the rule book" "take a smaller hole, a thicker plate, or other rows";
    NoAdmissibleMargin  14 "leaves no margin between the least and the greatest margin of the rule book" "take a finer step or a smaller rivet";
    UnknownKey          15 "is not a key of the table of entries" "look it up in the list of entries";
    WrongChoice         16 "is not one of the choices of this entry" "take one of the listed whole numbers";
    Unreadable          17 "cannot be read as a number with a unit" "write it as 12 mm, 1/2 in or 0.5 in";
    NoSpace             18 "needs more room than the buffer has" "give a buffer of the size stated as the limit";
    BookUnsound         19 "makes the rule book contradict itself" "order series and tables upwards and keep least below greatest";
    NoProblem           20 "yields no problem in which the wanted effect decides" "choose another effect, form or rule book";
    HolesOverlap        21 "is so small that the holes of two rivets overlap" "move the rivets apart or take smaller ones";
    RivetTurns          22 "cannot be held by one rivet, about which the plate turns" "give more rivets or bring the load into line with the rivet";
}

/// What could not be computed, and why. `Copy`, without texts: renderers find those by number.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Error {
    /// What is wrong.
    pub kind: ErrorKind,
    /// Which input.
    pub field: Field,
    /// Number of the row (from 1) or of the table line, 0 when the field has none.
    pub index: u8,
    /// The value, in the unit of the field's table row; not a number when there is none.
    pub value: f64,
    /// The limit that was passed; not a number when there is none.
    pub limit: f64,
    /// The rule-book entry that set the limit.
    pub entry: EntryNo,
    /// A second entry, where two rules contradict each other.
    pub other: EntryNo,
    /// A value of `hint_field` that would do, where one is known; not a number otherwise.
    pub hint: f64,
    /// What the hint is about.
    pub hint_field: Field,
}

impl Error {
    /// An error of a kind, about a field, with nothing else known yet.
    #[must_use]
    pub const fn new(kind: ErrorKind, field: Field) -> Self {
        Error {
            kind,
            field,
            index: 0,
            value: f64::NAN,
            limit: f64::NAN,
            entry: EntryNo::NONE,
            other: EntryNo::NONE,
            hint: f64::NAN,
            hint_field: field,
        }
    }

    /// With the value at fault.
    #[must_use]
    pub const fn value(mut self, value: f64) -> Self {
        self.value = value;
        self
    }

    /// With the limit.
    #[must_use]
    pub const fn limit(mut self, limit: f64) -> Self {
        self.limit = limit;
        self
    }

    /// With the number of the row or table line, from 1.
    #[must_use]
    pub const fn index(mut self, index: u8) -> Self {
        self.index = index;
        self
    }

    /// With the rule-book entry behind the limit.
    #[must_use]
    pub const fn entry(mut self, entry: EntryNo) -> Self {
        self.entry = entry;
        self
    }

    /// With the second of two entries that contradict each other.
    #[must_use]
    pub const fn other(mut self, other: EntryNo) -> Self {
        self.other = other;
        self
    }

    /// With a value of a field that would do.
    #[must_use]
    pub const fn hint(mut self, field: Field, hint: f64) -> Self {
        self.hint_field = field;
        self.hint = hint;
        self
    }
}

/// Writes a value with its unit, or nothing when it is not a number. No float reaches `core::fmt`.
fn write_value(f: &mut fmt::Formatter<'_>, before: &str, value: f64, unit: Unit) -> fmt::Result {
    if value.is_nan() {
        return Ok(());
    }
    f.write_str(before)?;
    if value.is_infinite() {
        f.write_str(if value > 0.0 { "infinity" } else { "-infinity" })?;
    } else if text::write_plain(f, value, 6).is_err() {
        f.write_str("a value too large to print")?;
    }
    match unit.symbol() {
        "" => Ok(()),
        symbol => {
            f.write_str(" ")?;
            f.write_str(symbol)
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let bound = self.field.bound();
        f.write_str(bound.key)?;
        if self.index > 0 {
            write!(f, " (no. {})", self.index)?;
        }
        write_value(f, " = ", self.value, bound.unit)?;
        f.write_str(" ")?;
        f.write_str(self.kind.text())?;
        write_value(f, " (limit ", self.limit, bound.unit)?;
        if !self.limit.is_nan() {
            f.write_str(")")?;
        }
        f.write_str("; ")?;
        f.write_str(self.kind.remedy())?;
        if !self.hint.is_nan() {
            let hinted = self.hint_field.bound();
            f.write_str("; ")?;
            f.write_str(hinted.key)?;
            write_value(f, " = ", self.hint, hinted.unit)?;
            f.write_str(" would do")?;
        }
        Ok(())
    }
}

impl core::error::Error for Error {}
