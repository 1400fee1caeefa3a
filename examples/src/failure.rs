//! Why there is no sheet: what was said wrongly (exit code 2), or what cannot be computed (exit code 1).

use core::fmt;

use seamwright::Error;
use seamwright::bounds::{Field, Unit};
use seamwright::error::{EntryNo, ErrorKind};
use seamwright::rules::{Entry, info};

use crate::task::Book;
use crate::units::{JOIN, Units};

/// A message for the standard error stream.
#[derive(Debug)]
pub enum Failure {
    /// The flags themselves.
    Usage(String),
    /// The library refused.
    Refused(String),
}

impl Failure {
    /// What was said wrongly about a field, and how to say it.
    pub fn usage(field: &str, wrong: impl fmt::Display, remedy: impl fmt::Display) -> Failure {
        Failure::Usage(format!("{field}: {wrong}; {remedy}"))
    }

    /// An error of the library, with the clauses of its entries and the flag that mends it.
    pub fn refused(error: &Error, book: &Book, units: Units) -> Failure {
        let mut text = error.to_string();
        if error.field.bound().unit == Unit::Millimetre && units == Units::Inch {
            for (what, mm) in [("value", error.value), ("limit", error.limit)] {
                if mm.is_finite() {
                    text.push_str(&format!("\n  in inches: {what} {}", units.length(mm)));
                }
            }
            if error.hint.is_finite() {
                text.push_str(&format!("\n  in inches: {} {}", error.hint_field.bound().key, units.length(error.hint)));
            }
        }
        for no in [error.entry, error.other] {
            if let Some(rule) = rule_line(no, book) {
                text.push_str(&format!("\n  rule {rule}"));
            }
        }
        if let Some(flag) = flag_of(error) {
            text.push_str(&format!("\n  set by {flag}"));
        }
        Failure::Refused(text)
    }

    /// The exit code.
    pub fn code(&self) -> u8 {
        match self {
            Failure::Usage(_) => 2,
            Failure::Refused(_) => 1,
        }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Failure::Usage(text) => {
                write!(f, "error: {}\nFor more information, try '--help'.", text.replace(JOIN, " "))
            }
            Failure::Refused(text) => write!(f, "not computable: {}", text.replace(JOIN, " ")),
        }
    }
}

/// Key, clause and label of an entry; `None` where the number names none.
fn rule_line(no: EntryNo, book: &Book) -> Option<String> {
    let entry = Entry::from_no(no)?;
    let clause = match book.clause(entry) {
        Some(clause) => format!("{} ({})", clause.words, clause.label.word()),
        None => format!("the book {} is silent on it", book.id()),
    };
    Some(format!("{}: {clause}", key(entry)))
}

/// The key of an entry, with its line where it is one of a list.
pub fn key(entry: Entry) -> String {
    let row = info(entry);
    if row.line > 0 { format!("{}.{}", row.key, row.line) } else { row.key.to_string() }
}

/// The flag by which the field of an error is given.
fn flag_of(error: &Error) -> Option<String> {
    Some(match error.field {
        Field::RuleEntry => "--set".to_string(),
        Field::Text => return None,
        Field::RowRivets | Field::ShearPlanes => "--row-list".to_string(),
        Field::BackPitch => "--gap".to_string(),
        Field::GroupRivets | Field::RivetX | Field::RivetY | Field::RivetDistance => "--rivet-at".to_string(),
        Field::LoadAtX | Field::LoadAtY | Field::Eccentricity => "--load-at".to_string(),
        Field::Load => "--load-x, --load-y or --couple".to_string(),
        Field::Tension | Field::Shear if error.kind == ErrorKind::Missing => {
            format!("--{} (the book gives none to assume)", error.field.bound().key)
        }
        field => format!("--{}", field.bound().key.replace('_', "-")),
    })
}
