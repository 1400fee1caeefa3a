//! The sink that writes each step as it closes.

use core::cell::RefCell;
use core::fmt;

use super::doc::Doc;
use super::line::{Reading, write_expression, write_symbol, write_value};
use super::pad::{Sink, Step};
use super::style::{Dialect, Style};
use crate::bounds::Unit;
use crate::error::EntryNo;
use crate::formula::FORMULAS;
use crate::rules::{Entry, RuleBook, info};
use crate::step::{Name, Section, Why};

/// Writes steps into a document. A sink that fails is remembered and nothing more is written.
pub(super) struct Steps<'d, 'o, 'b> {
    doc: RefCell<&'d mut Doc<'o>>,
    book: &'b RuleBook<'b>,
    state: RefCell<State>,
}

struct State {
    number: u16,
    failed: bool,
}

impl<'d, 'o, 'b> Steps<'d, 'o, 'b> {
    pub(super) fn new(doc: &'d mut Doc<'o>, book: &'b RuleBook<'b>) -> Self {
        Steps { doc: RefCell::new(doc), book, state: RefCell::new(State { number: 0, failed: false }) }
    }

    /// Whether the sink refused something.
    pub(super) fn failed(&self) -> bool {
        self.state.try_borrow().map_or(true, |s| s.failed)
    }

    fn with(&self, write: impl FnOnce(&mut Doc<'_>, u16) -> fmt::Result) {
        if let (Ok(mut doc), Ok(mut state)) = (self.doc.try_borrow_mut(), self.state.try_borrow_mut())
            && !state.failed
        {
            state.number = state.number.saturating_add(1);
            state.failed = write(&mut doc, state.number).is_err();
        }
    }
}

impl Sink for Steps<'_, '_, '_> {
    fn step(&self, step: &Step<'_>) {
        self.with(|doc, number| write_step(doc, self.book, step, number));
    }

    fn section(&self, section: Section) {
        if let (Ok(mut doc), Ok(mut state)) = (self.doc.try_borrow_mut(), self.state.try_borrow_mut()) {
            state.failed = state.failed || doc.heading(section.heading()).is_err();
        }
    }
}

/// Writes where an entry stands: clause and label, or that the book is silent.
///
/// # Errors
/// Those of the sink.
pub fn write_clause(out: &mut dyn fmt::Write, book: &RuleBook<'_>, entry: EntryNo) -> fmt::Result {
    match (book.clause(entry), Entry::from_no(entry)) {
        (Some(clause), _) => write!(out, "{}, {}", clause.number, clause.label.word()),
        (None, Some(entry)) => write!(out, "{}: the book is silent, neutral value", info(entry).key),
        (None, None) => Ok(()),
    }
}

/// The words of a step: its number, the quantity, the row.
fn write_words(out: &mut dyn fmt::Write, number: u16, name: Name) -> fmt::Result {
    write!(out, "{number}. {}", name.0.what())?;
    if name.1 > 0 { write!(out, ", {}", name.1) } else { Ok(()) }
}

/// Writes a line of mathematics: `symbol = ...`.
fn equation(doc: &mut Doc<'_>, name: Name, right: &dyn Fn(&mut dyn fmt::Write, &Style) -> fmt::Result) -> fmt::Result {
    let style = *doc.style();
    doc.formula(&|w| {
        write_symbol(w, style.dialect, name)?;
        w.write_str(" = ")?;
        right(w, &style)
    })
}

/// One step: its words, then the line or lines.
fn write_step(doc: &mut Doc<'_>, book: &RuleBook<'_>, step: &Step<'_>, number: u16) -> fmt::Result {
    let name = step.name;
    let unit = name.0.unit();
    let value = step.value;
    let words = |w: &mut dyn fmt::Write| write_words(w, number, name);
    let result = |w: &mut dyn fmt::Write, style: &Style| write_value(w, style, unit, value);
    match step.why {
        Why::Given => {
            doc.paragraph(&|w| {
                words(w)?;
                w.write_str(" (given)")
            })?;
            equation(doc, name, &result)
        }
        Why::Table(entry) => {
            doc.paragraph(&|w| {
                words(w)?;
                w.write_str(" (rule book: ")?;
                write_clause(w, book, entry)?;
                w.write_str(")")
            })?;
            equation(doc, name, &result)
        }
        Why::Formula(no) => {
            let source = FORMULAS.get(usize::from(no.0)).map_or("", |f| f.source());
            doc.paragraph(&|w| {
                words(w)?;
                write!(w, " ({source})")
            })?;
            equation(doc, name, &|w, style| write_expression(w, style, step, step.root(), Reading::Symbolic))?;
            equation(doc, name, &|w, style| write_expression(w, style, step, step.root(), Reading::Substituted))?;
            equation(doc, name, &result)
        }
        why => {
            let style = *doc.style();
            doc.paragraph(&|w| {
                words(w)?;
                w.write_str(", ")?;
                write_reason(w, style, book, why)
            })?;
            equation(doc, name, &|w, style| choice(w, style, step))
        }
    }
}

/// Why a choice fell as it did.
fn write_reason(out: &mut dyn fmt::Write, style: Style, book: &RuleBook<'_>, why: Why) -> fmt::Result {
    let by = |out: &mut dyn fmt::Write, what: &str, entry: EntryNo| {
        out.write_str(what)?;
        if entry.is_some() {
            out.write_str(" (")?;
            write_clause(out, book, entry)?;
            out.write_str(")")?;
        }
        Ok(())
    };
    let step = |out: &mut dyn fmt::Write, what: &str, step: f64| {
        out.write_str(what)?;
        // The words are escaped as text: the value is written as such, whatever the dialect.
        let style = Style { dialect: Dialect::Plain, ..style };
        write_value(out, &style, Unit::Millimetre, step)
    };
    match why {
        Why::Least(e) => by(out, "the least governs", e),
        Why::Greatest(e) => by(out, "the greatest governs", e),
        Why::Cap(e) => by(out, "not above the cap", e),
        Why::Floor(e) => by(out, "not below the floor", e),
        Why::Series(e) => by(out, "up to the next standard size", e),
        Why::Choice(e) => by(out, "as the rule book chooses", e),
        Why::RoundDown(s) => step(out, "rounded down to a multiple of ", s),
        Why::RoundUp(s) => step(out, "rounded up to a multiple of ", s),
        Why::RoundNearest(s) => step(out, "rounded to the nearest multiple of ", s),
        Why::Given | Why::Table(_) | Why::Formula(_) => Ok(()),
    }
}

/// Both candidates of a choice, and the one taken.
fn choice(out: &mut dyn fmt::Write, style: &Style, step: &Step<'_>) -> fmt::Result {
    let unit = step.name.0.unit();
    let left = step.left.unwrap_or(step.value);
    let (word, both) = match step.why {
        Why::Least(_) | Why::Cap(_) => ("min", true),
        Why::Greatest(_) | Why::Floor(_) => ("max", true),
        _ => ("", false),
    };
    if both {
        let latex = style.dialect == Dialect::Latex;
        if latex {
            out.write_str("\\")?;
        }
        write!(out, "{word}(")?;
        style.value(out, unit, left)?;
        out.write_str("; ")?;
        style.value(out, unit, step.value)?;
        out.write_str(") = ")?;
    } else {
        style.value(out, unit, left)?;
        out.write_str(if style.dialect == Dialect::Latex { r" \rightarrow " } else { " -> " })?;
    }
    write_value(out, style, unit, step.value)
}
