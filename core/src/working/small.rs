//! The working on a machine with little memory: the same text, and nothing kept for it.
//!
//! No list of findings stands on the stack, and no second design: the check is run again for each kind of verdict, and
//! all of it in the recording context, so that an image that shows the working has the routines only once.

use core::fmt;

use super::doc::Doc;
use super::pad::{Pad, Record, Sink, Step};
use super::style::Style;
use super::verdict::{RULES, Verdicts, write_told};
use super::{CHECK, SIZING, WorkingError, begin, steps};
use crate::check::{Analysis, Finding, FindingSink, Verdict, check_telling};
use crate::error::Error;
use crate::joint::Joint;
use crate::materials::Materials;
use crate::rules::{RuleBook, Rules};
use crate::sizing::{Brief, Design, size_telling};
use crate::step::{Ctx, Section};

/// Hears nothing.
struct Deaf;

impl Sink for Deaf {
    fn step(&self, _: &Step<'_>) {}
    fn section(&self, _: Section) {}
}

impl FindingSink for Deaf {
    fn take(&mut self, _: Finding) {}
}

/// [`write_check`](super::write_check), word for word, with a tenth of its memory.
///
/// # Errors
/// As [`write_check`](super::write_check).
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::working::{Style, write_check, write_check_small};
/// let joint = JointSpec::new(Form::lap(1)?, Length::mm(50.0), Length::mm(6.0), Length::mm(20.0)).build()?;
/// let steel = Materials::new(Stress::mpa(120.0), Stress::mpa(90.0)).bearing(Stress::mpa(180.0));
/// let (mut whole, mut small) = (String::new(), String::new());
/// assert!(write_check(&mut whole, Style::default(), &joint, &steel, &METRIC).is_ok());
/// assert!(write_check_small(&mut small, Style::default(), &joint, &steel, &METRIC).is_ok());
/// assert_eq!(whole, small);
/// let bad = Materials::new(Stress::mpa(-1.0), Stress::mpa(90.0));
/// assert!(write_check_small(&mut small, Style::default(), &joint, &bad, &METRIC).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn write_check_small(
    out: &mut dyn fmt::Write,
    style: Style,
    joint: &Joint,
    materials: &Materials,
    book: &RuleBook<'_>,
) -> Result<(), WorkingError> {
    let mut doc = Doc::new(out, style);
    begin(&mut doc, book, CHECK)?;
    check_steps(&mut doc, joint, materials, book)?;
    conclude(&mut doc, book, joint, materials)
}

#[inline(never)]
fn check_steps(
    doc: &mut Doc<'_>,
    joint: &Joint,
    materials: &Materials,
    book: &RuleBook<'_>,
) -> Result<(), WorkingError> {
    steps(doc, book, |c| {
        let mut analysis = Analysis::blank();
        check_telling(c, joint, materials, &book.rules, &mut Deaf, &mut analysis)
    })
}

/// [`write_size`](super::write_size), word for word, with a third of its memory.
///
/// # Errors
/// As [`write_size`](super::write_size).
///
/// ```
/// use seamwright::{joint::Form, materials::Materials, quantities::{Length, Stress}, rules::INDIAN, sizing::Brief};
/// use seamwright::working::{Style, write_size, write_size_small};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let brief = Brief::new(Form::lap(2)?, Length::mm(13.0), steel);
/// let (mut whole, mut small) = (String::new(), String::new());
/// assert!(write_size(&mut whole, Style::default(), &brief, &INDIAN).is_ok());
/// assert!(write_size_small(&mut small, Style::default(), &brief, &INDIAN).is_ok());
/// assert_eq!(whole, small);
/// let none = Brief::new(Form::lap(2)?, Length::mm(0.0), steel);
/// assert!(write_size_small(&mut small, Style::default(), &none, &INDIAN).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn write_size_small(
    out: &mut dyn fmt::Write,
    style: Style,
    brief: &Brief,
    book: &RuleBook<'_>,
) -> Result<(), WorkingError> {
    let mut doc = Doc::new(out, style);
    begin(&mut doc, book, SIZING)?;
    let mut joint = Joint::SIMPLEST;
    size_steps(&mut doc, brief, book, &mut joint)?;
    conclude(&mut doc, book, &joint, brief.materials())
}

#[inline(never)]
fn size_steps(doc: &mut Doc<'_>, brief: &Brief, book: &RuleBook<'_>, joint: &mut Joint) -> Result<(), WorkingError> {
    steps(doc, book, |c| {
        let mut design = Design::blank();
        size_telling(c, brief, &book.rules, &mut Deaf, &mut design)?;
        *joint = design.joint;
        Ok(())
    })
}

/// [`size_into`](crate::sizing::size_into), bit for bit, by the routine that the working runs: an image that shows the
/// working has it then only once. It takes some times as long.
///
/// # Errors
/// As [`size_into`](crate::sizing::size_into).
///
/// ```
/// use seamwright::{check::Findings, joint::Form, materials::Materials, quantities::{Length, Stress}};
/// use seamwright::{rules::METRIC, sizing::{Brief, Design, size}, working::size_as_written};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let brief = Brief::new(Form::lap(2)?, Length::mm(13.0), steel);
/// let (mut design, mut findings) = (Design::blank(), Findings::new());
/// size_as_written(&brief, &METRIC.rules, &mut findings, &mut design)?;
/// let whole = size(&brief, &METRIC.rules)?;
/// assert_eq!((design.joint, findings.len()), (whole.joint, whole.analysis.findings.len()));
/// let none = Brief::new(Form::lap(2)?, Length::mm(0.0), steel);
/// assert!(size_as_written(&none, &METRIC.rules, &mut findings, &mut design).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn size_as_written(
    brief: &Brief,
    rules: &Rules,
    out: &mut dyn FindingSink,
    design: &mut Design<f64, ()>,
) -> Result<(), Error> {
    *design = Design::blank();
    let pad = Pad::new(&Deaf);
    let mut found = Design::blank();
    size_telling(Record::new(&pad).quiet(), brief, rules, out, &mut found)?;
    *design = found.values();
    Ok(())
}

/// Lets the findings of one verdict through.
struct Told<'a, 'd> {
    doc: &'a mut Doc<'d>,
    book: &'a RuleBook<'a>,
    verdict: Verdict,
    told: fmt::Result,
}

impl FindingSink for Told<'_, '_> {
    fn take(&mut self, finding: Finding) {
        if finding.verdict == self.verdict && self.told.is_ok() {
            self.told = write_told(self.doc, self.book, &finding);
        }
    }
}

/// What comes of it, found by checking the joint again.
fn conclude(doc: &mut Doc<'_>, book: &RuleBook<'_>, joint: &Joint, materials: &Materials) -> Result<(), WorkingError> {
    write_modes(doc, book, joint, materials)?;
    write_rules(doc, book, joint, materials)?;
    Ok(doc.end()?)
}

/// The modes that govern, and all of them.
#[inline(never)]
fn write_modes(
    doc: &mut Doc<'_>,
    book: &RuleBook<'_>,
    joint: &Joint,
    materials: &Materials,
) -> Result<(), WorkingError> {
    let pad = Pad::new(&Deaf);
    let c = Record::new(&pad).quiet();
    let mut analysis = Analysis::blank();
    check_telling(c, joint, materials, &book.rules, &mut Deaf, &mut analysis)?;
    let verdicts = Verdicts { book, joint, materials, analysis: &analysis.values() };
    verdicts.governs(doc)?;
    Ok(verdicts.modes(doc, c)?)
}

/// The findings: open ones first, then unknown, notes, met; within each the order of the check.
#[inline(never)]
fn write_rules(
    doc: &mut Doc<'_>,
    book: &RuleBook<'_>,
    joint: &Joint,
    materials: &Materials,
) -> Result<(), WorkingError> {
    doc.heading(RULES)?;
    let pad = Pad::new(&Deaf);
    let c = Record::new(&pad).quiet();
    let mut analysis = Analysis::blank();
    for verdict in [Verdict::Open, Verdict::Unknown, Verdict::Note, Verdict::Met] {
        let mut told = Told { doc: &mut *doc, book, verdict, told: Ok(()) };
        check_telling(c, joint, materials, &book.rules, &mut told, &mut analysis)?;
        told.told?;
    }
    Ok(())
}
