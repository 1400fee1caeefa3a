//! The rules, open ones first: what each requires, what is provided, what to do; the cautions; the lines for the names.

use core::fmt;

use super::Scene;
use super::basis::{filled, open_words};
use super::page::Page;
use crate::CAUTION;
use crate::check::{Finding, Required, Subject, Verdict};
use crate::joint::JointKind;
use crate::rules::Entry;
use crate::working::Columns;

/// A date to be filled in by hand.
const DATE: &str = "____________";

/// The columns of the findings.
const COLUMNS: Columns<'static> = Columns::new(&["verdict", "rule"], &[9]);

pub(super) fn write(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    page.leads_to_a_table();
    page.heading("Findings")?;
    page.line(&|w| {
        open_words(w, scene)?;
        w.write_str(".")
    })?;
    page.doc.table_of(COLUMNS)?;
    scene.analysis.findings.iter().try_for_each(|finding| one(page, scene, finding))?;
    page.end()?;
    let Some(rating) = scene.rating else { return Ok(()) };
    page.leads_to_a_table();
    page.line(&|w| w.write_str("Rules on the shell:"))?;
    page.doc.table_of(COLUMNS)?;
    rating.findings.iter().try_for_each(|finding| one(page, scene, finding))?;
    page.end()
}

fn one(page: &mut Page<'_>, scene: &Scene<'_>, finding: &Finding) -> fmt::Result {
    let word = match finding.verdict {
        Verdict::Open => "NOT MET",
        Verdict::Unknown => "unknown",
        Verdict::Note => "note",
        Verdict::Met => "met",
    };
    let (figures, subject) = (page.figures, finding.subject);
    page.doc.row(&[&|w| w.write_str(word), &|w| {
        w.write_str(subject.what())?;
        match (subject, finding.row) {
            (_, 0) => {}
            (Subject::RowDistance | Subject::HeadAtStrap | Subject::HeadsOfRows, row) => {
                write!(w, ", row {row} to {}", row.saturating_add(1))?;
            }
            (_, row) => write!(w, ", from row {row}")?,
        }
        if finding.required.is_finite() {
            w.write_str(match (finding.verdict, finding.sense) {
                // Neither more nor less will do: the series is a list.
                _ if subject == Subject::HoleStandard => ": standard size ",
                (Verdict::Note, _) => ": figure of the rule ",
                (_, Required::AtLeast) => ": required at least ",
                (_, Required::AtMost) => ": required at most ",
            })?;
            figures.required(w, subject, finding.required)?;
            if finding.provided.is_finite() {
                w.write_str(", provided ")?;
                figures.provided(w, subject, finding.provided)?;
            }
        } else if finding.provided.is_finite() {
            w.write_str(": provided ")?;
            figures.provided(w, subject, finding.provided)?;
        }
        if finding.verdict != Verdict::Met {
            write!(w, " -> {}", finding.advice())?;
        }
        if let Some(entry) = Entry::from_no(finding.entry) {
            w.write_str(". Rule: ")?;
            figures.cite(w, scene.book, entry)?;
        }
        Ok(())
    }])
}

/// Cautions, and the lines for the names.
pub(super) fn write_cautions(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    page.heading("Cautions")?;
    page.doc.item(&|w| w.write_str(CAUTION))?;
    if scene.joint.form().kind() == JointKind::Lap {
        page.doc.item(&|w| w.write_str("A lap bends as it is pulled; none of these rules covers that bending."))?;
    }
    if scene.particulars.invented {
        page.doc.item(&|w| w.write_str("Invented scenario: not for any real object."))?;
    }
    // The names stand together, and not alone on a page.
    page.doc.together(8);
    page.heading("Prepared and checked")?;
    let particulars = scene.particulars;
    let style = *page.doc.style();
    page.pairs()?;
    page.pair("Prepared", &|w| filled(w, &style, particulars.prepared))?;
    page.pair("Date", &|w| w.write_str(if particulars.date.is_empty() { DATE } else { particulars.date }))?;
    page.pair("Checked", &|w| filled(w, &style, particulars.checked))?;
    page.pair("Date", &|w| w.write_str(DATE))?;
    page.end()
}
