//! Books and forms side by side.

use pyo3::prelude::*;
use seamwright::comparison::{Column, Comparison, Figures, Parting, SECTIONS, SortBy, Stage};
use seamwright::error::Error;
use seamwright::quantities::Pressure;
use seamwright::rules::RuleBook;
use seamwright::step::Name;
use seamwright::working::{Style, WorkingError};

use crate::book::{Book, Parts};
use crate::check::{ModeOut, mode_out};
use crate::error::{clause_text, entry_key, message, raise, wrong_choice};
use crate::joint::{Form, Joint, Materials};
use crate::shell::ShellIn;
use crate::size::{BriefIn, brief};
use crate::words;
use crate::working::{Wishes, style, written};

/// One alternative: form, stresses, brief, book, shell.
pub type ColumnIn = (Py<Form>, Py<Materials>, BriefIn, Py<Book>, Option<ShellIn>);

/// What a column comes to.
#[derive(IntoPyObject)]
pub struct FiguresOut {
    joint: Joint,
    book_efficiency: f64,
    efficiency: f64,
    credited: f64,
    governing: ModeOut,
    open_rules: usize,
    pressure: Option<f64>,
    no_pressure: Option<String>,
}

/// One step: symbol, row, words, value in the core's unit, unit, entry and clause behind it.
#[derive(IntoPyObject)]
pub struct StageOut {
    symbol: &'static str,
    row: u8,
    what: &'static str,
    value: f64,
    unit: &'static str,
    entry: String,
    clause: String,
}

/// Where a column parts from the first one.
#[derive(IntoPyObject)]
pub struct PartingOut {
    section: &'static str,
    by_rule: bool,
    first: Option<StageOut>,
    other: Option<StageOut>,
}

/// A column: its figures, or why it could not be sized; and where it parts from the first.
#[derive(IntoPyObject)]
pub struct ComparedOut {
    figures: Option<FiguresOut>,
    refused: Option<String>,
    partings: Vec<PartingOut>,
}

/// Columns side by side, with their order.
#[derive(IntoPyObject)]
pub struct ComparisonOut {
    columns: Vec<ComparedOut>,
    order: Vec<usize>,
}

fn sort_by(py: Python<'_>, word: &str) -> PyResult<SortBy> {
    words::sort_by::read(word).ok_or_else(|| wrong_choice(py, "sort_by", word))
}

/// The columns of the core, for as long as their books are looked at.
fn with_columns<T>(py: Python<'_>, given: &[ColumnIn], see: impl FnOnce(&[Column<'_>]) -> PyResult<T>) -> PyResult<T> {
    let parts: Vec<Parts<'_>> = given.iter().map(|(_, _, _, book, _)| book.get().parts()).collect();
    let books: Vec<RuleBook<'_>> = given.iter().zip(&parts).map(|(c, parts)| c.3.get().whole(parts)).collect();
    let column = |((form, materials, stated, _, shell), book): (&ColumnIn, _)| {
        let column = Column::new(brief(py, form.get(), materials.get(), stated)?, book);
        Ok(match shell {
            Some(shell) => column.shell(shell.shell(py)?),
            None => column,
        })
    };
    let columns = given.iter().zip(&books).map(column).collect::<PyResult<Vec<Column<'_>>>>()?;
    see(&columns)
}

fn stage_out(stage: &Stage, book: &RuleBook<'_>) -> StageOut {
    let Name(quantity, row) = stage.name;
    StageOut {
        symbol: quantity.symbol(),
        row,
        what: quantity.what(),
        value: stage.value,
        unit: quantity.unit().symbol(),
        entry: entry_key(stage.entry()),
        clause: clause_text(Some(book), stage.entry()),
    }
}

fn figures_out(f: &Figures, column: &Column<'_>) -> FiguresOut {
    FiguresOut {
        joint: Joint(f.joint),
        book_efficiency: f.book_efficiency,
        efficiency: f.efficiency,
        credited: f.credited,
        governing: mode_out(&f.governing, &f.joint, &column.book.rules, f.efficiency),
        open_rules: f.open,
        pressure: f.pressure.and_then(Result::ok).map(Pressure::to_mpa),
        no_pressure: f.pressure.and_then(Result::err).map(|e| message(&e, Some(column.book))),
    }
}

fn parting_out(parting: &Parting, first: &RuleBook<'_>, other: &RuleBook<'_>) -> PartingOut {
    let [ours, theirs] = &parting.steps;
    PartingOut {
        section: parting.section.heading(),
        by_rule: parting.by_rule,
        first: ours.as_ref().map(|stage| stage_out(stage, first)),
        other: theirs.as_ref().map(|stage| stage_out(stage, other)),
    }
}

fn compared_out(comparison: &Comparison<'_>, at: usize, column: &Column<'_>) -> ComparedOut {
    let figures = comparison.figures().get(at);
    let refusal: Option<&Error> = figures.and_then(|f| f.as_ref().err());
    let first = comparison.columns().first().map_or(column.book, |c| c.book);
    let parts = SECTIONS.iter().filter(|_| at > 0).filter_map(|section| comparison.parting(at, *section));
    ComparedOut {
        figures: figures.and_then(|f| f.as_ref().ok()).map(|f| figures_out(f, column)),
        refused: refusal.map(|e| message(e, Some(column.book))),
        partings: parts.map(|parting| parting_out(&parting, first, column.book)).collect(),
    }
}

/// Sizes all columns and compares them.
#[pyfunction]
pub fn compare(py: Python<'_>, columns: Vec<ColumnIn>, sort: &str) -> PyResult<ComparisonOut> {
    let sort = sort_by(py, sort)?;
    with_columns(py, &columns, |columns| {
        let made = Comparison::new(columns).map_err(|e| raise(py, &e, None))?;
        let out = columns.iter().enumerate().map(|(at, column)| compared_out(&made, at, column)).collect();
        Ok(ComparisonOut { columns: out, order: made.sorted(sort).to_vec() })
    })
}

/// The comparison as a document.
#[pyfunction]
pub fn working_of_comparison(py: Python<'_>, columns: Vec<ColumnIn>, sort: &str, wishes: Wishes) -> PyResult<String> {
    let (style, sort): (Style, SortBy) = (style(py, &wishes)?, sort_by(py, sort)?);
    with_columns(py, &columns, |listed| {
        let made = Comparison::new(listed).map_err(|e| raise(py, &e, None))?;
        let Some((_, _, _, book, _)) = columns.first() else { return Ok(String::new()) };
        written(py, book.get(), |out| made.write(out, style, sort).map_err(|_| WorkingError::from(core::fmt::Error)))
    })
}
