//! Errors of the core as exceptions of the Python package.

use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::PyType;
use seamwright::bounds::{FIELDS, Field};
use seamwright::error::{EntryNo, Error, ErrorKind};
use seamwright::rules::{Entry, RuleBook};
use seamwright::working::write_clause;

static CLASS: PyOnceLock<Py<PyType>> = PyOnceLock::new();

/// What the exception carries besides its message.
#[derive(IntoPyObject)]
struct Details {
    kind: u8,
    field: &'static str,
    index: u8,
    value: Option<f64>,
    limit: Option<f64>,
    unit: &'static str,
    entry: String,
    clause: String,
    hint: Option<f64>,
    hint_field: &'static str,
}

/// A figure, unless there is none.
pub fn figure(x: f64) -> Option<f64> {
    (!x.is_nan()).then_some(x)
}

/// The clause behind an entry in words; empty where the book has none.
pub fn clause_text(book: Option<&RuleBook<'_>>, entry: EntryNo) -> String {
    let mut text = String::new();
    // A string takes every text; an entry without a clause writes nothing.
    if let Some(book) = book.filter(|b| b.clause(entry).is_some()) {
        let _ = write_clause(&mut text, book, entry);
    }
    text.trim().to_owned()
}

/// The key of an entry; empty for none.
pub fn entry_key(entry: EntryNo) -> String {
    Entry::from_no(entry).map(crate::book::full_key).unwrap_or_default()
}

/// An error in words, with the rule behind it.
pub fn message(error: &Error, book: Option<&RuleBook<'_>>) -> String {
    let (entry, clause) = (entry_key(error.entry), clause_text(book, error.entry));
    match (entry.as_str(), clause.as_str()) {
        ("", _) => error.to_string(),
        (entry, "") => format!("{error} [{entry}: silent]"),
        (entry, clause) => format!("{error} [{entry}: {clause}]"),
    }
}

/// The exception for an error. `about` stands before the message where the error does not carry its subject.
pub fn raise_about(py: Python<'_>, about: &str, error: &Error, book: Option<&RuleBook<'_>>) -> PyErr {
    let bound = error.field.bound();
    let hinted = !error.hint.is_nan();
    let details = Details {
        kind: error.kind as u8,
        field: bound.key,
        index: error.index,
        value: figure(error.value),
        limit: figure(error.limit),
        unit: bound.unit.symbol(),
        entry: entry_key(error.entry),
        clause: clause_text(book, error.entry),
        hint: figure(error.hint),
        hint_field: if hinted { error.hint_field.bound().key } else { "" },
    };
    let message = if about.is_empty() { message(error, book) } else { format!("{about}: {error}") };
    let made = || -> PyResult<PyErr> {
        let class = CLASS.import(py, "seamwright._errors", "SeamwrightError")?;
        let details = details.into_pyobject(py)?;
        Ok(PyErr::from_value(class.call((message,), Some(&details))?))
    };
    made().unwrap_or_else(|e| e)
}

/// The exception for an error.
pub fn raise(py: Python<'_>, error: &Error, book: Option<&RuleBook<'_>>) -> PyErr {
    raise_about(py, "", error, book)
}

/// The field of a key.
pub fn field(key: &str) -> Field {
    FIELDS.iter().copied().find(|f| f.bound().key == key).unwrap_or(Field::Text)
}

/// The exception for a word that is none of the choices.
pub fn wrong_choice(py: Python<'_>, what: &str, word: &str) -> PyErr {
    raise_about(py, &format!("{what} = {word:?}"), &Error::new(ErrorKind::WrongChoice, Field::Text), None)
}
