//! The comparison as a document, in every dialect of the working.

use core::fmt::{self, Write};

use super::{Comparison, Figures, Parting, SECTIONS, SortBy, Stage};
use crate::bounds::Unit;
use crate::error::{EntryNo, Error};
use crate::quantities::Length;
use crate::rules::{Entry, RuleBook, key};
use crate::text;
use crate::working::{Doc, Piece, Style, write_clause, write_symbol, write_value};
use crate::{CAUTION, VERSION};

/// Names of the columns, in the order given.
const LETTERS: [&str; super::MAX_COLUMNS] =
    ["A", "B", "C", "D", "E", "F", "G", "H", "I", "J", "K", "L", "M", "N", "O", "P"];
/// Columns of one table: as many as 80 characters hold.
const SIDE_BY_SIDE: usize = 4;
const WIDTHS: &[u8] = &[26, 12, 12, 12, 12];

/// One line of the table.
#[derive(Clone, Copy)]
enum Line {
    Hole,
    Rivet,
    Pitch,
    FirstStrap,
    SecondStrap,
    Margin,
    Book,
    All,
    Credited,
    Open,
    Pressure,
}

/// The lines, their names and units.
const LINES: &[(Line, &str, Unit)] = &[
    (Line::Hole, "hole", Unit::Millimetre),
    (Line::Rivet, "cold rivet", Unit::Millimetre),
    (Line::Pitch, "pitch", Unit::Millimetre),
    (Line::FirstStrap, "first strap", Unit::Millimetre),
    (Line::SecondStrap, "second strap", Unit::Millimetre),
    (Line::Margin, "margin", Unit::Millimetre),
    (Line::Book, "efficiency by the book, %", Unit::One),
    (Line::All, "efficiency, all modes, %", Unit::One),
    (Line::Credited, "efficiency credited, %", Unit::One),
    (Line::Open, "rules not met", Unit::Count),
    (Line::Pressure, "working pressure", Unit::Megapascal),
];

impl Line {
    fn value(self, f: &Figures) -> Option<f64> {
        let mm = |l: Option<Length>| l.map(Length::to_mm);
        let row = f.joint.rows().first();
        match self {
            Line::Hole => mm(row.map(crate::joint::Row::hole)),
            Line::Rivet => mm(row.map(crate::joint::Row::rivet)),
            Line::Pitch => Some(f.joint.pitch().to_mm()),
            Line::FirstStrap => mm(f.joint.wide_strap()),
            Line::SecondStrap => mm(f.joint.narrow_strap()),
            Line::Margin => mm(f.joint.margin()),
            Line::Book => Some(100.0 * f.book_efficiency),
            Line::All => Some(100.0 * f.efficiency),
            Line::Credited => Some(100.0 * f.credited),
            Line::Open => u32::try_from(f.open).ok().map(f64::from),
            Line::Pressure => f.pressure.and_then(Result::ok).map(crate::quantities::Pressure::to_mpa),
        }
    }
}

/// A figure of the table: rounded for the eye, the working has all digits.
fn cell(out: &mut dyn Write, style: &Style, unit: Unit, value: f64) -> fmt::Result {
    let decimals = match (unit, style.convert(Unit::Millimetre, 1.0) == 1.0) {
        (Unit::One, _) => 2,
        (Unit::Count, _) => 0,
        (Unit::Megapascal, true) => 3,
        (Unit::Megapascal, false) => 1,
        (_, true) => 2,
        (_, false) => 4,
    };
    text::write_plain_with(out, style.convert(unit, value), decimals, style.mark).map_err(|_| fmt::Error)
}

impl Comparison<'_> {
    fn book(&self, at: usize) -> Option<&RuleBook<'_>> {
        self.columns.get(at).map(|c| c.book)
    }

    /// Writes the comparison: what the columns are, the table, what governs, and where each column parts from the first
    /// one. Columns keep their letters whatever the order.
    ///
    /// # Errors
    /// Those of the sink; it may then have a part of the text. For all or nothing into a buffer see
    /// [`into_buffer`](crate::working::into_buffer).
    pub fn write(&self, out: &mut dyn Write, style: Style, by: SortBy) -> fmt::Result {
        let order = self.sorted(by);
        let mut doc = Doc::new(out, style);
        doc.begin(&|w| w.write_str("Comparison of riveted joints"))?;
        doc.paragraph(&|w| write!(w, "seamwright {VERSION}."))?;
        doc.paragraph(&|w| w.write_str(CAUTION))?;
        doc.heading("Columns")?;
        for (at, letter) in order.iter().filter_map(|at| Some((*at, LETTERS.get(*at)?))) {
            let Some(column) = self.columns.get(at) else { continue };
            doc.paragraph(&|w| write!(w, "{letter}: {}; {}.", column.book.title, column.brief.form()))?;
        }
        doc.heading("Results")?;
        self.tables(out, style, &order)?;
        let mut doc = Doc::new(out, style);
        doc.heading("What governs")?;
        for (at, letter) in order.iter().filter_map(|at| Some((*at, LETTERS.get(*at)?))) {
            match self.figures.get(at) {
                Some(Ok(f)) => {
                    doc.paragraph(&|w| write!(w, "{letter}: {}.", f.governing.name(f.joint.form())))?;
                    if let Some(Err(e)) = f.pressure {
                        doc.paragraph(&|w| write!(w, "{letter}: no working pressure: {e}."))?;
                    }
                }
                Some(Err(e)) => doc.paragraph(&|w| self.refused(w, letter, at, e))?,
                None => {}
            }
        }
        doc.heading("Where they part")?;
        for (at, letter) in order.iter().filter_map(|at| Some((*at, LETTERS.get(*at)?))).filter(|(at, _)| *at > 0) {
            self.partings(&mut doc, letter, at)?;
        }
        if self.columns.len() == 1 {
            doc.paragraph(&|w| w.write_str("There is nothing to compare with."))?;
        }
        doc.end()
    }

    /// All partings of a column, each entry once, and the sections that only follow.
    fn partings(&self, doc: &mut Doc<'_>, letter: &str, at: usize) -> fmt::Result {
        let style = *doc.style();
        let refused = self.figures.get(at).is_some_and(Result::is_err);
        let mut told: heapless::Vec<EntryNo, 32> = heapless::Vec::new();
        let mut follow: heapless::Vec<&str, 16> = heapless::Vec::new();
        let mut alike = true;
        for section in SECTIONS {
            let Some(parting) = self.parting(at, *section) else { continue };
            let [ours, theirs] = &parting.steps;
            if refused && (ours.is_none() || theirs.is_none()) {
                // Its sizing ended before: there is nothing there to compare.
                continue;
            }
            alike = false;
            let entry = theirs.as_ref().or(ours.as_ref()).map_or(EntryNo::NONE, Stage::entry);
            if !parting.by_rule || told.contains(&entry) {
                let _ = follow.push(section.heading());
                continue;
            }
            let _ = told.push(entry);
            doc.paragraph(&|w| self.parted(w, &style, letter, at, &parting))?;
        }
        if alike {
            let first = LETTERS.first().copied().unwrap_or("");
            doc.paragraph(&|w| write!(w, "{letter} does not part from {first}."))?;
        }
        if !follow.is_empty() {
            doc.paragraph(&|w| {
                write!(w, "{letter}, by what differs before or was given: ")?;
                for (place, heading) in follow.iter().enumerate() {
                    w.write_str(if place > 0 { "; " } else { "" })?;
                    w.write_str(heading)?;
                }
                w.write_str(".")
            })?;
        }
        Ok(())
    }

    fn tables(&self, out: &mut dyn Write, style: Style, order: &[usize]) -> fmt::Result {
        for block in order.chunks(SIDE_BY_SIDE) {
            let mut head: heapless::Vec<&str, 5> = heapless::Vec::new();
            let _ = head.push("");
            for at in block {
                let _ = head.push(LETTERS.get(*at).copied().unwrap_or(""));
            }
            let mut doc = Doc::new(out, style);
            doc.table(&head, WIDTHS.get(..head.len()).unwrap_or(&[]))?;
            for (line, what, unit) in LINES {
                let value = |at: usize| {
                    let figures = block.get(at).and_then(|at| self.figures.get(*at));
                    figures.and_then(|f| f.as_ref().ok()).and_then(|f| line.value(f))
                };
                if (0..block.len()).all(|at| value(at).is_none()) {
                    continue;
                }
                let name = |w: &mut dyn Write| match style.symbol(*unit) {
                    "" => w.write_str(what),
                    symbol => write!(w, "{what}, {symbol}"),
                };
                let figure = |at: usize, w: &mut dyn Write| match value(at) {
                    Some(x) => cell(w, &style, *unit, x),
                    None => w.write_str("-"),
                };
                let cells: [Piece<'_>; 5] = [
                    &name,
                    &|w: &mut dyn Write| figure(0, w),
                    &|w: &mut dyn Write| figure(1, w),
                    &|w: &mut dyn Write| figure(2, w),
                    &|w: &mut dyn Write| figure(3, w),
                ];
                doc.row(cells.get(..head.len()).unwrap_or(&[]))?;
            }
            doc.end_table()?;
        }
        Ok(())
    }

    /// A column that could not be sized, with the clause behind it.
    fn refused(&self, out: &mut dyn Write, letter: &str, at: usize, error: &Error) -> fmt::Result {
        write!(out, "{letter} cannot be sized: {error}")?;
        if let Some(book) = self.book(at).filter(|_| error.entry.is_some()) {
            out.write_str(" (")?;
            write_clause(out, book, error.entry)?;
            out.write_str(")")?;
        }
        out.write_str(".")
    }

    /// One parting in a sentence.
    fn parted(&self, out: &mut dyn Write, style: &Style, letter: &str, at: usize, parting: &Parting) -> fmt::Result {
        let [ours, theirs] = &parting.steps;
        write!(out, "{letter} from A, {}: ", parting.section.heading())?;
        match (ours, theirs) {
            (Some(a), Some(b)) if a.name == b.name => write!(out, "{}. ", a.name.0.what())?,
            _ => out.write_str("different rules. ")?,
        }
        self.stage(out, style, "A", 0, ours.as_ref())?;
        out.write_str("; ")?;
        self.stage(out, style, letter, at, theirs.as_ref())?;
        out.write_str(".")
    }

    fn stage(&self, out: &mut dyn Write, style: &Style, letter: &str, at: usize, stage: Option<&Stage>) -> fmt::Result {
        write!(out, "{letter}: ")?;
        let Some(stage) = stage else { return out.write_str("no such step") };
        write_symbol(out, crate::working::Dialect::Plain, stage.name)?;
        out.write_str(" = ")?;
        write_value(out, style, stage.name.0.unit(), stage.value)?;
        let entry = stage.entry();
        if let (Some(book), Some(known)) = (self.book(at), Entry::from_no(entry)) {
            write!(out, " ({}, entry {}; ", key(known), entry.0)?;
            write_clause(out, book, entry)?;
            out.write_str(")")?;
        }
        Ok(())
    }
}
