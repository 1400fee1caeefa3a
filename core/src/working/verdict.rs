//! What comes of it: the modes in words, and the rules that are met or not.

use core::fmt;

use super::doc::Doc;
use super::line::write_value;
use super::steps::write_clause;
use super::style::{Dialect, Style};
use crate::check::{Analysis, Finding, Required, Verdict};
use crate::joint::Form;
use crate::rules::RuleBook;

/// Writes the modes in words and the findings, open ones first.
pub(super) fn write_verdicts(
    doc: &mut Doc<'_>,
    book: &RuleBook<'_>,
    form: &Form,
    analysis: &Analysis,
) -> Result<(), fmt::Error> {
    // The words are escaped as text: values are written as such, whatever the dialect.
    let style = Style { dialect: Dialect::Plain, ..*doc.style() };
    doc.heading("What governs")?;
    doc.paragraph(&|w| write!(w, "Weakest mode, P: {}.", analysis.governing.name(form)))?;
    doc.paragraph(&|w| write!(w, "Next weakest mode, P.1: {}.", analysis.runner_up.name(form)))?;
    doc.paragraph(&|w| write!(w, "Weakest mode that the rule book counts, P.2: {}.", analysis.by_book.name(form)))?;
    doc.heading("Rules met and not met")?;
    for finding in analysis.findings.iter() {
        doc.paragraph(&|w| write_finding(w, &style, book, finding))?;
    }
    Ok(())
}

pub(super) fn write_finding(
    out: &mut dyn fmt::Write,
    style: &Style,
    book: &RuleBook<'_>,
    finding: &Finding,
) -> fmt::Result {
    let verdict = match finding.verdict {
        Verdict::Open => "NOT MET",
        Verdict::Unknown => "NOT CHECKED",
        Verdict::Note => "Note",
        Verdict::Met => "Met",
    };
    write!(out, "{verdict}: {}", finding.subject.what())?;
    if finding.row > 0 {
        write!(out, ", row {}", finding.row)?;
    }
    let figure = |out: &mut dyn fmt::Write, words: &str, value: f64| {
        if !value.is_finite() {
            return Ok(());
        }
        out.write_str(words)?;
        write_value(out, style, finding.subject.unit(), value)
    };
    let required = match (finding.verdict, finding.sense) {
        (Verdict::Note | Verdict::Unknown, _) => "; figure of the rule book ",
        (_, Required::AtLeast) => "; at least ",
        (_, Required::AtMost) => "; at most ",
    };
    figure(out, required, finding.required)?;
    figure(out, "; is ", finding.provided)?;
    if finding.entry.is_some() {
        out.write_str(" (")?;
        write_clause(out, book, finding.entry)?;
        out.write_str(")")?;
    }
    if finding.verdict == Verdict::Met {
        return out.write_str(".");
    }
    write!(out, ": {}.", finding.subject.advice())
}
