//! The rules, open ones first: what each requires, what is provided, and what to do.

use seamwright::bounds::Unit;
use seamwright::check::{Finding, Required, Subject, Verdict};
use seamwright::rules::Entry;

use super::page::Page;
use super::{Scene, cite, strength};
use crate::units::{Units, fixed, percent};

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    page.heading("FINDINGS");
    let analysis = &scene.answer.analysis;
    page.wrap("  ", 2, &format!("{}.", strength::open_words(analysis)));
    for finding in analysis.findings.iter() {
        one(page, scene, finding);
    }
}

fn one(page: &mut Page, scene: &Scene<'_>, finding: &Finding) {
    let word = match finding.verdict {
        Verdict::Open => "NOT MET",
        Verdict::Unknown => "unknown",
        Verdict::Note => "note",
        Verdict::Met => "met",
    };
    let place = match (finding.subject, finding.row) {
        (_, 0) => String::new(),
        (Subject::RowDistance | Subject::HeadAtStrap | Subject::HeadsOfRows, row) => {
            format!(", row {row} to {}", row + 1)
        }
        (_, row) => format!(", from row {row}"),
    };
    let units = scene.task.units;
    let mut text = format!("{}{place}", finding.subject.what());
    if finding.required.is_finite() {
        let sense = match (finding.verdict, finding.sense) {
            // Neither more nor less will do: the series is a list.
            _ if finding.subject == Subject::HoleStandard => "standard size",
            (Verdict::Note, _) => "figure of the rule",
            (_, Required::AtLeast) => "required at least",
            (_, Required::AtMost) => "required at most",
        };
        text += &format!(": {sense} {}", required(units, finding.subject, finding.required));
        if finding.provided.is_finite() {
            text += &format!(", provided {}", provided(units, finding.subject, finding.provided));
        }
    } else if finding.provided.is_finite() {
        text += &format!(": provided {}", provided(units, finding.subject, finding.provided));
    }
    page.wrap(&format!("  {word:<9}"), 11, &text);
    if finding.verdict != Verdict::Met {
        page.wrap("", 11, &format!("-> {}", finding.subject.advice()));
    }
    if let Some(entry) = Entry::from_no(finding.entry) {
        page.wrap("", 11, &format!("rule: {}", cite(&scene.task.book, entry)));
    }
}

/// A figure that a rule computes: decimals.
fn required(units: Units, subject: Subject, x: f64) -> String {
    match (subject, subject.unit()) {
        (Subject::AllModes | Subject::CreditCap, _) => percent(x),
        (_, Unit::One) => fixed(x, 2),
        (_, unit) => units.value(x, unit),
    }
}

/// A dimension that is there: as on the drawing.
fn provided(units: Units, subject: Subject, x: f64) -> String {
    match subject.unit() {
        Unit::Millimetre => units.size(x),
        _ => required(units, subject, x),
    }
}
