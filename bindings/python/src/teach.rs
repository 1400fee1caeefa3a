//! Problems for a class, their keys, and marks.

use pyo3::prelude::*;
use seamwright::reconcile::Work;
use seamwright::step::Name;
use seamwright::teach::{self, Family, Mark, problem as core_problem, write_marks, write_problems, write_solution};

use crate::book::Book;
use crate::check::{AnalysisOut, analysis_out};
use crate::error::wrong_choice;
use crate::figures::{FigureIn, figures, number_of};
use crate::joint::{Form, Joint, Materials};
use crate::size::{DesignOut, design_out};
use crate::words;
use crate::working::{Wishes, style, written};

/// A problem of the core, with the book it was drawn under.
#[pyclass(frozen, module = "seamwright._native")]
pub struct Problem {
    problem: Box<teach::Problem>,
    book: Book,
}

/// What a problem is about: the joint behind it, its stresses, row distances that are given (mm), and the design of a
/// sizing; the key is symbol, row, value in the core's unit, unit, words.
#[derive(IntoPyObject)]
pub struct ProblemOut {
    joint: Joint,
    materials: Materials,
    plate: f64,
    back_pitches: Vec<Option<f64>>,
    design: Option<DesignOut>,
    analysis: AnalysisOut,
    key: Vec<(&'static str, u8, f64, &'static str, &'static str)>,
}

/// One mark: symbol, row, mark, number of its convention, whether chance is ruled out.
type MarkOut = (&'static str, u8, &'static str, Option<usize>, bool);

const fn word(mark: &Mark) -> &'static str {
    match mark {
        Mark::Right => "right",
        Mark::CarriedOver => "carried over",
        Mark::Slip { .. } => "slip",
        Mark::Wrong => "wrong",
        Mark::Missing => "missing",
    }
}

#[pymethods]
impl Problem {
    /// What the problem is about.
    fn facts(&self) -> ProblemOut {
        let p = &self.problem;
        let (materials, plate, design, back_pitches) = match &p.case.work {
            Work::Check(joint, materials) => (*materials, joint.plate(), None, Vec::new()),
            Work::Size(brief) => {
                let gaps = (1..p.family.form.row_count()).map(|row| brief.stated_back_pitch(row).map(|g| g.to_mm()));
                (*brief.materials(), brief.plate(), Some(design_out(&p.design, &self.book)), gaps.collect())
            }
        };
        let asked = |(Name(q, row), x)| (q.symbol(), row, x, q.unit().symbol(), q.what());
        ProblemOut {
            joint: Joint(p.design.joint),
            materials: Materials(materials),
            plate: plate.to_mm(),
            back_pitches,
            design,
            analysis: analysis_out(&p.design.analysis, &p.design.joint, &self.book),
            key: p.key.iter().map(asked).collect(),
        }
    }

    /// The marks of answers, answers credited, answers asked for, and the marks as a text.
    fn mark(
        &self,
        py: Python<'_>,
        answers: Vec<FigureIn>,
        wishes: Wishes,
    ) -> PyResult<(Vec<MarkOut>, usize, usize, String)> {
        let (style, answers) = (style(py, &wishes)?, figures(py, &answers)?);
        let marks = py.detach(|| teach::mark(&self.problem, &answers)).map_err(|e| self.book.raise(py, &e))?;
        let out = |(Name(q, row), mark): (Name, Mark)| {
            let (convention, sure) = match &mark {
                Mark::Slip { convention, sure } => (Some(number_of(convention)), *sure),
                _ => (None, false),
            };
            (q.symbol(), row, word(&mark), convention, sure)
        };
        let (credited, asked) = marks.credit();
        let text = written(py, &self.book, |to| write_marks(to, style, &self.problem, &marks))?;
        Ok((marks.iter().map(out).collect(), credited, asked, text))
    }

    /// The full working.
    fn solution(&self, py: Python<'_>, wishes: Wishes) -> PyResult<String> {
        let style = style(py, &wishes)?;
        self.book.view(|view| written(py, &self.book, |out| write_solution(out, style, &self.problem, view)))
    }
}

/// Draws a problem. Other Python threads run meanwhile.
#[pyfunction]
pub fn problem(
    py: Python<'_>,
    seed: u64,
    form: &Form,
    setting: &str,
    task: &str,
    effect: &str,
    book: &Book,
) -> PyResult<Problem> {
    let family = Family {
        form: form.0,
        setting: words::setting::read(setting).ok_or_else(|| wrong_choice(py, "setting", setting))?,
        task: words::task::read(task).ok_or_else(|| wrong_choice(py, "task", task))?,
        effect: words::effect::read(effect).ok_or_else(|| wrong_choice(py, "effect", effect))?,
    };
    let drawn = py.detach(|| core_problem(seed, &family, book.rules())).map_err(|e| book.raise(py, &e))?;
    Ok(Problem { problem: Box::new(drawn), book: book.clone() })
}

/// A sheet of problems, all of one book, with the answers or without.
#[pyfunction]
pub fn problem_sheet(
    py: Python<'_>,
    problems: Vec<Py<Problem>>,
    audience: &str,
    book: &Book,
    wishes: Wishes,
) -> PyResult<String> {
    let style = style(py, &wishes)?;
    let audience = words::audience::read(audience).ok_or_else(|| wrong_choice(py, "audience", audience))?;
    let problems: Vec<&teach::Problem> = problems.iter().map(|p| &*p.get().problem).collect();
    book.view(|view| written(py, book, |out| write_problems(out, style, problems, audience, view)))
}
