//! Which entries of the book an answer looked at, and those of them that are from memory.

use core::cell::Cell;
use core::fmt;

use super::figures::key;
use super::page::Page;
use super::{Scene, Task};
use crate::bounds::Unit;
use crate::check::{Analysis, Findings, check};
use crate::error::{EntryNo, Error};
use crate::joint::Joint;
use crate::rating::rate;
use crate::rules::{ENTRIES, Entry, EntryKind, Label, Rules, info};
use crate::sizing::size;
use crate::step::{Section, Why};
use crate::working::{Sink, Step};

const WORDS: usize = ENTRIES.div_ceil(64);

/// A set of entries, filled by the steps of a routine.
pub(super) struct Touched {
    bits: [Cell<u64>; WORDS],
}

impl Touched {
    pub const fn new() -> Self {
        Touched { bits: [const { Cell::new(0) }; WORDS] }
    }

    fn note(&self, no: EntryNo) {
        let (word, bit) = (usize::from(no.0.wrapping_shr(6)), u32::from(no.0 & 63));
        if let Some(cell) = self.bits.get(word) {
            cell.set(cell.get() | 1_u64.wrapping_shl(bit));
        }
    }

    /// Entries that findings name.
    pub fn findings(&self, findings: &Findings) {
        findings.iter().filter(|f| f.entry.is_some()).for_each(|f| self.note(f.entry));
    }

    /// Whether an entry was looked at.
    pub fn has(&self, entry: Entry) -> bool {
        let no = entry.no().0;
        let word = self.bits.get(usize::from(no.wrapping_shr(6))).map_or(0, Cell::get);
        word.wrapping_shr(u32::from(no & 63)) & 1 == 1
    }
}

impl Sink for Touched {
    fn step(&self, step: &Step<'_>) {
        match step.why {
            Why::Table(no)
            | Why::Least(no)
            | Why::Greatest(no)
            | Why::Cap(no)
            | Why::Floor(no)
            | Why::Series(no)
            | Why::Choice(no) => {
                if no.is_some() {
                    self.note(no);
                }
            }
            Why::Given
            | Why::Stated(_)
            | Why::Nearer
            | Why::Formula(_)
            | Why::RoundDown(_)
            | Why::RoundUp(_)
            | Why::RoundNearest(_) => {}
        }
    }

    fn section(&self, _: Section) {}
}

/// Figures from memory that touched the answer, and the sources that the book points to.
pub(super) fn write(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    page.heading("Figures from memory in this answer")?;
    let book = scene.book;
    let mut any = false;
    for entry in Entry::all() {
        let clause = match book.clause(entry.no()) {
            Some(clause) if clause.label == Label::Memory && !book.is_changed(entry) => clause,
            _ => continue,
        };
        if !scene.touched.has(entry) && !choice_matters(scene, entry) {
            continue;
        }
        if !any {
            any = true;
            page.line(&|w| w.write_str("Not seen in the source: compare each with it before relying on this sheet."))?;
        }
        let unit = match info(entry).kind {
            EntryKind::Number(unit) => unit,
            EntryKind::Switch | EntryKind::Choice(_) => Unit::One,
        };
        let figures = page.figures;
        page.doc.item(&|w| {
            key(w, entry)?;
            w.write_str(" = ")?;
            figures.value(w, unit, book.rules.get(entry))?;
            write!(w, ": {} [{}]", clause.number, clause.label.word())
        })?;
    }
    if !any {
        page.line(&|w| {
            w.write_str("None: every figure used was seen in its source, is practice of the trade, or is your own.")
        })?;
    }
    page.heading("Sources of the rule book")?;
    for source in book.sources {
        page.doc.item(&|w| w.write_str(source))?;
    }
    page.line(&|w| {
        w.write_str(
            "Labels: READ, seen in a text of the source; MEM, from memory; PRACTICE, custom of the trade; OWN, set by \
             the user or by this library.",
        )
    })
}

/// Whether another choice of an entry would give another answer: choices are taken without being read as a figure.
fn choice_matters(scene: &Scene<'_>, entry: Entry) -> bool {
    let others = match info(entry).kind {
        EntryKind::Number(_) => return false,
        EntryKind::Switch => 2,
        EntryKind::Choice(ways) => u32::try_from(ways.len()).unwrap_or(0),
    };
    let rules = &scene.book.rules;
    (0..others)
        .map(f64::from)
        .filter(|way| *way != rules.get(entry))
        .any(|way| rules.with(entry, way).and_then(|rules| differs(scene, &rules)).unwrap_or(true))
}

/// Whether the answer under other rules differs in dimensions, strengths or pressure.
fn differs(scene: &Scene<'_>, rules: &Rules) -> Result<bool, Error> {
    let apart = |joint: &Joint, a: &Analysis| {
        let b = scene.analysis;
        *joint != *scene.joint || a.governing != b.governing || a.by_book != b.by_book || a.credited != b.credited
    };
    Ok(match scene.task {
        Task::Size(brief) => {
            let design = size(brief, rules)?;
            apart(&design.joint, &design.analysis)
        }
        Task::Check(joint, materials) => apart(joint, &check(joint, materials, rules)?),
        Task::Rate(existing) => {
            let rated = rate(existing, rules)?;
            apart(&rated.joint, &rated.analysis) || scene.rating.is_none_or(|r| r.allowed != rated.allowed)
        }
    })
}
