//! Checking a joint: modes, efficiencies, findings.

use pyo3::prelude::*;
use seamwright::check::{self as core_check, Analysis, Finding};
use seamwright::formula;
use seamwright::given::Given;
use seamwright::joint;
use seamwright::materials;
use seamwright::modes::{self as core_modes, Lens, Mode, Strengths};
use seamwright::rules::{RuleBook, Rules};
use seamwright::step::Plain;

use crate::book::Book;
use crate::error::{clause_text, entry_key, figure};
use crate::joint::{Joint, Materials};
use crate::words;

/// One failure mode.
#[derive(IntoPyObject)]
pub struct ModeOut {
    name: String,
    cut: (u8, u8, u8),
    class: &'static str,
    counted: bool,
    fates: Vec<&'static str>,
    strength: f64,
    efficiency: f64,
    zigzag: bool,
}

/// A mode for Python.
pub fn mode_out(mode: &Mode, joint: &joint::Joint, rules: &Rules, efficiency: f64) -> ModeOut {
    let form = joint.form();
    ModeOut {
        name: mode.name(form).to_string(),
        cut: (mode.cut.plate, mode.cut.other, mode.cut.narrow),
        class: words::class::word(mode.cut.class(form.kind(), form.row_count())),
        counted: core_check::counted(rules, joint, &mode.cut),
        fates: mode.fates.iter().take(form.row_count()).map(|f| words::fate::word(*f)).collect(),
        strength: mode.strength,
        efficiency,
        zigzag: mode.zigzag,
    }
}

/// One finding, figures in the unit named.
#[derive(IntoPyObject)]
pub struct FindingOut {
    subject: String,
    row: u8,
    place: &'static str,
    verdict: &'static str,
    sense: &'static str,
    required: Option<f64>,
    provided: Option<f64>,
    unit: &'static str,
    what: &'static str,
    advice: &'static str,
    entry: String,
    clause: String,
    label: &'static str,
}

/// A finding for Python.
pub fn finding_out(finding: &Finding, book: &RuleBook<'_>) -> FindingOut {
    FindingOut {
        subject: words::spaced(&format!("{:?}", finding.subject)),
        row: finding.row,
        place: finding.subject.place(),
        verdict: words::verdict::word(finding.verdict),
        sense: words::required::word(finding.sense),
        required: figure(finding.required),
        provided: figure(finding.provided),
        unit: finding.subject.unit().symbol(),
        what: finding.subject.what(),
        advice: finding.advice(),
        entry: entry_key(finding.entry),
        clause: clause_text(Some(book), finding.entry),
        label: book.clause(finding.entry).map_or("", |c| words::label::word(c.label)),
    }
}

/// What a check finds, forces in N.
#[derive(IntoPyObject)]
pub struct AnalysisOut {
    solid: f64,
    tear_outer: f64,
    shear_all: f64,
    bearing_all: Option<f64>,
    governing: ModeOut,
    runner_up: ModeOut,
    by_book: ModeOut,
    efficiency: f64,
    book_efficiency: f64,
    credited: f64,
    runner_up_ratio: f64,
    classic_efficiencies: (f64, f64, Option<f64>),
    percentages: (f64, f64, Option<f64>),
    findings: Vec<FindingOut>,
}

/// An analysis for Python.
pub fn analysis_out(a: &Analysis, joint: &joint::Joint, book: &Book) -> AnalysisOut {
    let mode = |m: &Mode| mode_out(m, joint, book.rules(), formula::efficiency(m.strength, a.solid));
    AnalysisOut {
        solid: a.solid,
        tear_outer: a.tear_outer,
        shear_all: a.shear_all,
        bearing_all: a.bearing_all,
        governing: mode(&a.governing),
        runner_up: mode(&a.runner_up),
        by_book: mode(&a.by_book),
        efficiency: a.efficiency,
        book_efficiency: a.book_efficiency,
        credited: a.credited,
        runner_up_ratio: a.runner_up_ratio(),
        classic_efficiencies: a.classic_efficiencies(),
        percentages: (a.percentages.plate, a.percentages.rivet, a.percentages.combined),
        findings: book.view(|view| a.findings.iter().map(|f| finding_out(f, view)).collect()),
    }
}

/// Checks a joint.
#[pyfunction]
pub fn check(py: Python<'_>, joint: &Joint, materials: &Materials, book: &Book) -> PyResult<AnalysisOut> {
    let found = core_check::check(&joint.0, &materials.0, book.rules()).map_err(|e| book.raise(py, &e))?;
    Ok(analysis_out(&found, &joint.0, book))
}

fn strengths(joint: &joint::Joint, materials: &materials::Materials, book: &Book) -> (Given<f64>, Strengths<f64>) {
    let given = Given::new(Plain, joint, materials);
    let strengths = Strengths::new(Plain, joint, &given, book.rules(), Lens::Real);
    (given, strengths)
}

/// All failure modes, in the documented order.
#[pyfunction]
pub fn modes(joint: &Joint, materials: &Materials, book: &Book) -> Vec<ModeOut> {
    let (_, strengths) = strengths(&joint.0, &materials.0, book);
    strengths
        .modes()
        .map(|m| mode_out(&m, &joint.0, book.rules(), formula::efficiency(m.strength, strengths.solid)))
        .collect()
}

/// One lettered mode: letter, name, cut, fates of rivets in single and double shear, strength in N.
#[derive(IntoPyObject)]
pub struct LetterOut {
    letter: String,
    name: String,
    cut: Option<(u8, u8, u8)>,
    single: &'static str,
    double: &'static str,
    strength: f64,
}

/// The modes that the early US code letters.
#[pyfunction]
pub fn letters(joint: &Joint, materials: &Materials, book: &Book) -> Vec<LetterOut> {
    let (given, strengths) = strengths(&joint.0, &materials.0, book);
    core_modes::letters(Plain, &joint.0, &given, book.rules(), &strengths)
        .iter()
        .map(|l| LetterOut {
            letter: l.letter.to_string(),
            name: l.name(joint.0.form()).to_string(),
            cut: l.cut.map(|c| (c.plate, c.other, c.narrow)),
            single: words::fate::word(l.single),
            double: words::fate::word(l.double),
            strength: l.strength,
        })
        .collect()
}

/// The row distances that the book prescribes, mm, with their entries.
#[pyfunction]
pub fn prescribed_gaps(joint: &Joint, materials: &Materials, book: &Book) -> Vec<(f64, String)> {
    let given = Given::new(Plain, &joint.0, &materials.0);
    core_modes::prescribed_gaps(Plain, &joint.0, &given, book.rules())
        .iter()
        .take(joint.0.form().row_count().saturating_sub(1))
        .map(|(gap, entry)| (*gap, entry_key(entry.no())))
        .collect()
}
