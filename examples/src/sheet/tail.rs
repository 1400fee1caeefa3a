//! Figures from memory that touched the answer, cautions, and the lines for the names.

use std::collections::BTreeSet;

use seamwright::CAUTION;
use seamwright::joint::JointKind;
use seamwright::rules::{Entry, EntryKind, Label, info};

use super::Scene;
use super::page::Page;
use crate::failure::key;
use crate::task::Answer;
use crate::units::plain;

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    memory(page, scene);
    page.heading("CAUTIONS");
    page.wrap("  -", 4, CAUTION);
    page.wrap(
        "  -",
        4,
        "Not checked here: pressure, temperature, fatigue, corrosion, caulking and leakage, quality of holes and \
         heads, plate away from the seam.",
    );
    if scene.answer.joint.form().kind() == JointKind::Lap {
        page.wrap("  -", 4, "A lap bends as it is pulled; none of these rules covers that bending.");
    }
    if scene.task.scenario {
        page.wrap("  -", 4, "Invented scenario: not for any real object.");
    }
    page.line("");
    page.rule('-');
    page.line("  Prepared ______________________________  Date ____________");
    page.line("  Checked  ______________________________  Date ____________  Page ____ of ____");
    page.rule('=');
}

/// Entries labelled MEM that the computation read, that a finding names, or whose other choices would change it.
fn memory(page: &mut Page, scene: &Scene<'_>) {
    page.heading("FIGURES FROM MEMORY IN THIS ANSWER");
    let book = &scene.task.book;
    let from_memory = |entry: &Entry| book.clause(*entry).is_some_and(|c| c.label == Label::Memory);
    let mut touched: BTreeSet<Entry> = scene.answer.read.iter().copied().filter(from_memory).collect();
    touched.extend(Entry::all().filter(from_memory).filter(|entry| choice_matters(scene, *entry)));
    if touched.is_empty() {
        page.wrap("  ", 2, "None: every figure used was seen in its source, is practice of the trade, or is your own.");
        return;
    }
    page.wrap("  ", 2, "Not seen in the source: compare each with it before relying on this sheet.");
    for entry in touched {
        let clause = book.clause(entry).map_or(String::new(), |c| c.words);
        let unit = match info(entry).kind {
            EntryKind::Number(unit) => unit.symbol(),
            _ => "",
        };
        let value = format!("{} = {} {unit}", key(entry), plain(book.rules.get(entry), 4));
        page.wrap("  -", 4, &format!("{}: {clause} [MEM]", value.trim_end()));
    }
}

/// Whether another choice of an entry would give another answer: choices are taken without being read as a figure.
fn choice_matters(scene: &Scene<'_>, entry: Entry) -> bool {
    let others = match info(entry).kind {
        EntryKind::Number(_) => return false,
        EntryKind::Switch => 2,
        EntryKind::Choice(ways) => u32::try_from(ways.len()).unwrap_or(0),
    };
    let rules = &scene.task.book.rules;
    (0..others).map(f64::from).filter(|way| *way != rules.get(entry)).any(|way| {
        let other = rules.with(entry, way).ok().and_then(|rules| scene.task.with(&rules).ok());
        other.is_none_or(|other| !same(&other, scene.answer))
    })
}

/// Whether two answers agree in dimensions and strengths.
fn same(a: &Answer, b: &Answer) -> bool {
    a.joint == b.joint
        && a.analysis.governing == b.analysis.governing
        && a.analysis.by_book == b.analysis.by_book
        && a.analysis.credited == b.analysis.credited
}
