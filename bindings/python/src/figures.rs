//! Stated figures, reconciled with the conventions behind them.

use pyo3::prelude::*;
use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::reconcile::{
    Answer, CATALOGUE, Case, Convention, Explanation, Figure, Work, edited as core_edited, reconcile as core_reconcile,
    worked as core_worked,
};
use seamwright::rules::Rules;
use seamwright::step::{Name, QUANTITIES};

use crate::book::Book;
use crate::error::{figure as known, raise_about};
use crate::joint::{Form, Joint, Materials};
use crate::size::{BriefIn, brief};

/// Symbol, LaTeX, unit and words of every quantity of the working; of equal symbols the first counts.
#[pyfunction]
pub fn symbols() -> Vec<(&'static str, &'static str, &'static str, &'static str)> {
    QUANTITIES.iter().map(|q| (q.symbol(), q.latex(), q.unit().symbol(), q.what())).collect()
}

/// The row of a convention in the catalogue, from 0.
pub fn number_of(convention: &Convention) -> usize {
    CATALOGUE.iter().position(|row| row == convention).unwrap_or(CATALOGUE.len())
}

/// Words of every convention of the catalogue, and whether it is a slip.
#[pyfunction]
pub fn conventions() -> Vec<(&'static str, bool)> {
    CATALOGUE.iter().map(|row| (row.words, row.slip)).collect()
}

/// A stated figure: symbol, row, printed digits or else value and slack, and the printed unit in the core's unit.
pub type FigureIn = (String, u8, Option<String>, Option<(f64, f64)>, f64);

/// A symbol of the working, and its row.
fn name(py: Python<'_>, symbol: &str, row: u8) -> PyResult<Name> {
    let unknown = || raise_about(py, symbol, &Error::new(ErrorKind::UnknownKey, Field::Figure), None);
    QUANTITIES.iter().find(|q| q.symbol() == symbol).map(|q| Name(*q, row)).ok_or_else(unknown)
}

/// The figures of the core.
pub fn figures(py: Python<'_>, stated: &[FigureIn]) -> PyResult<Vec<Figure>> {
    let read = |(symbol, row, printed, within, scale): &FigureIn| {
        let name = name(py, symbol, *row)?;
        let about = |e: Error| raise_about(py, symbol, &e, None);
        match (printed, within) {
            (Some(digits), _) => Figure::printed(name, digits, *scale).map_err(about),
            (None, Some((value, slack))) => Figure::within(name, *value, *slack).map_err(about),
            (None, None) => Err(about(Error::new(ErrorKind::Missing, Field::Figure))),
        }
    };
    stated.iter().map(read).collect()
}

/// What was worked: a joint that was checked, or a brief that was sized.
#[derive(FromPyObject)]
pub enum WorkIn {
    /// Joint and stresses.
    Check(Py<Joint>, Py<Materials>),
    /// Form, stresses, brief.
    Size(Py<Form>, Py<Materials>, BriefIn),
}

/// The case of a work under a book.
pub fn case(py: Python<'_>, work: &WorkIn, rules: &Rules) -> PyResult<Case> {
    let work = match work {
        WorkIn::Check(joint, materials) => Work::Check(joint.get().0, materials.get().0),
        WorkIn::Size(form, materials, given) => Work::Size(brief(py, form.get(), materials.get(), given)?),
    };
    Ok(Case { work, rules: *rules })
}

/// Conventions by number; values in the core's units, `None` where the routine has none; figures not met; the worst miss.
#[derive(IntoPyObject)]
pub struct ExplanationOut {
    conventions: Vec<usize>,
    values: Vec<Option<f64>>,
    met: Vec<bool>,
    miss: f64,
}

fn explanation(e: &Explanation, count: usize) -> ExplanationOut {
    let bits = (0..32).map(|bit| (e.out >> bit) & 1 == 0);
    ExplanationOut {
        conventions: e.edits().map(number_of).collect(),
        values: e.values.iter().take(count).map(|x| known(*x)).collect(),
        met: bits.take(count).collect(),
        miss: e.miss,
    }
}

/// What reproduces the figures, and what is nearest.
#[derive(IntoPyObject)]
pub struct AnswerOut {
    explanations: Vec<ExplanationOut>,
    by_chance: Vec<ExplanationOut>,
    as_it_stands: ExplanationOut,
    nearest: ExplanationOut,
    tried: u32,
    words: String,
}

fn answer_out(answer: &Answer, figures: &[Figure]) -> AnswerOut {
    let count = figures.len();
    let mut words = String::new();
    // A string takes every text.
    let _ = answer.write(&mut words, figures);
    AnswerOut {
        explanations: answer.explanations.iter().map(|e| explanation(e, count)).collect(),
        by_chance: answer.by_chance.iter().map(|e| explanation(e, count)).collect(),
        as_it_stands: explanation(&answer.as_it_stands, count),
        nearest: explanation(&answer.nearest, count),
        tried: answer.tried,
        words,
    }
}

/// Finds the conventions behind stated figures. Other Python threads run meanwhile.
#[pyfunction]
pub fn reconcile(py: Python<'_>, work: WorkIn, stated: Vec<FigureIn>, book: &Book) -> PyResult<AnswerOut> {
    let (case, figures) = (case(py, &work, book.rules())?, figures(py, &stated)?);
    let answer = py.detach(|| core_reconcile(&case, &figures)).map_err(|e| book.raise(py, &e))?;
    Ok(answer_out(&answer, &figures))
}

/// Quantities of the working as the book stands, in the core's units; `None` where the routine has none.
#[pyfunction]
pub fn worked(py: Python<'_>, work: WorkIn, names: Vec<(String, u8)>, book: &Book) -> PyResult<Vec<Option<f64>>> {
    let case = case(py, &work, book.rules())?;
    let names = names.iter().map(|(symbol, row)| name(py, symbol, *row)).collect::<PyResult<Vec<_>>>()?;
    let values = core_worked(&case, &names).map_err(|e| book.raise(py, &e))?;
    Ok(values.iter().take(names.len()).map(|x| known(*x)).collect())
}

/// One quantity of the working with one or two conventions of the catalogue; `None` where they mean nothing for it.
#[pyfunction]
pub fn edited(
    py: Python<'_>,
    work: WorkIn,
    symbol: &str,
    row: u8,
    numbers: Vec<usize>,
    book: &Book,
) -> PyResult<Option<f64>> {
    let (case, name) = (case(py, &work, book.rules())?, name(py, symbol, row)?);
    // The core's own words for a case that cannot be worked at all.
    core_worked(&case, &[name]).map_err(|e| book.raise(py, &e))?;
    let edit = |at: usize| numbers.get(at).and_then(|n| CATALOGUE.get(*n)).map(|row| row.edit);
    Ok(core_edited(&case, [edit(0), edit(1)], name))
}
