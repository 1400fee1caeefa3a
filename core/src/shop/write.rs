//! The shop sheet in words and tables, as plain text of 80 columns or as Markdown.

use core::fmt::{self, Write};

use super::ShopSheet;
use super::fit::{Fitted, Neighbour};
use super::order::{Face, Measured, Run};
use super::table::Pen;
use crate::bounds::{Field, Unit};
use crate::check::{Finding, Required, Verdict};
use crate::error::{EntryNo, Error, ErrorKind};
use crate::joint::JointKind;
use crate::proportion::Limit;
use crate::quantities::Length;
use crate::rules::{Entry, RuleBook, key};
use crate::step::Num;
use crate::text::{Count, DecimalMark, Slice};

/// Units of a sheet.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Units {
    /// Millimetres and kilograms.
    Millimetre,
    /// Inches and pounds.
    Inch,
}

/// How a sheet is written. `first` and `count` choose the holes that its table lists: a page of them.
///
/// ```
/// use seamwright::shop::{Style, Units};
/// let page = Style { first: 41, count: 40, ..Style::new(Units::Millimetre) };
/// assert_eq!(Style::new(Units::Inch).count, u32::MAX); // all holes
/// assert!(page.first > 1);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Style {
    /// The units.
    pub units: Units,
    /// Decimal point or comma.
    pub mark: DecimalMark,
    /// First hole of the table, from 1.
    pub first: u32,
    /// How many holes the table lists at most.
    pub count: u32,
}

impl Style {
    /// All holes, with a decimal point.
    #[must_use]
    pub const fn new(units: Units) -> Self {
        Style { units, mark: DecimalMark::Point, first: 1, count: u32::MAX }
    }
}

impl<N: Num> ShopSheet<N> {
    /// Writes the sheet as plain text of 80 columns. `book` is the rule book that the sheet was made by.
    ///
    /// # Errors
    /// What the sink refuses.
    pub fn write_text(&self, out: &mut dyn Write, book: &RuleBook<'_>, style: &Style) -> fmt::Result {
        self.write(&mut Pen::new(out, style, false), book)
    }

    /// Writes the sheet as Markdown.
    ///
    /// # Errors
    /// What the sink refuses.
    pub fn write_markdown(&self, out: &mut dyn Write, book: &RuleBook<'_>, style: &Style) -> fmt::Result {
        self.write(&mut Pen::new(out, style, true), book)
    }

    /// The sheet as plain text in a buffer: all of it, or the buffer stays as it is.
    ///
    /// # Errors
    /// [`ErrorKind::NoSpace`], with the size of the buffer as its value and the size needed as its limit.
    pub fn text_in<'b>(&self, buffer: &'b mut [u8], book: &RuleBook<'_>, style: &Style) -> Result<&'b str, Error> {
        whole(buffer, |out| self.write_text(out, book, style))
    }

    /// The sheet as Markdown in a buffer: all of it, or the buffer stays as it is.
    ///
    /// # Errors
    /// As [`ShopSheet::text_in`].
    pub fn markdown_in<'b>(&self, buffer: &'b mut [u8], book: &RuleBook<'_>, style: &Style) -> Result<&'b str, Error> {
        whole(buffer, |out| self.write_markdown(out, book, style))
    }

    fn write(&self, pen: &mut Pen<'_>, book: &RuleBook<'_>) -> fmt::Result {
        pen.title("Shop sheet")?;
        pen.line("Joint", |p| write!(p, "{}", self.joint.form()))?;
        pen.line("Rule book", |p| p.write_str(book.title))?;
        pen.line("Made by", |p| {
            p.write_str("seamwright ")?;
            p.write_str(crate::VERSION)
        })?;
        pen.line("Units of the tables", |p| {
            p.write_str(match p.style.units {
                Units::Millimetre => "lengths in mm, angles in degrees",
                Units::Inch => "lengths in inches, angles in degrees",
            })
        })?;
        self.plates(pen)?;
        self.seam(pen)?;
        self.pitches(pen, book)?;
        self.recheck(pen, book)?;
        self.rivet_table(pen)?;
        self.cut_sizes(pen)?;
        self.weights(pen)?;
        self.hole_table(pen)?;
        pen.heading("Notes")?;
        for note in self.notes() {
            pen.line("", |p| p.write_str(note.text()))?;
        }
        pen.line("Caution", |p| p.write_str(crate::CAUTION))
    }

    fn plates(&self, pen: &mut Pen<'_>) -> fmt::Result {
        let joint = &self.joint;
        let lap = joint.form().kind() == JointKind::Lap;
        let mut part = |label: &str, mm: f64| if mm > 0.0 { pen.line(label, |p| p.length(mm)) } else { Ok(()) };
        part(if lap { "Plate A" } else { "Plate" }, joint.plate)?;
        let other = match joint.form().kind() {
            JointKind::Lap => "Plate B",
            JointKind::SingleStrap => "Strap",
            JointKind::DoubleStrap if joint.form().unequal() => "Wide strap",
            JointKind::DoubleStrap => "First strap",
        };
        part(other, joint.other)?;
        part(if joint.form().unequal() { "Narrow strap" } else { "Second strap" }, joint.narrow)?;
        part("Margin", joint.margin)?;
        if joint.form().row_count() > 1 {
            pen.line("Row distances from row 1", |p| {
                for row in 1..joint.form().row_count() {
                    if row > 1 {
                        p.write_str(", ")?;
                    }
                    p.length(joint.back_pitch(row).map_or(0.0, Length::to_mm))?;
                }
                Ok(())
            })?;
        }
        Ok(())
    }

    fn seam(&self, pen: &mut Pen<'_>) -> fmt::Result {
        pen.heading("Seam")?;
        match *self.order.run() {
            Run::Tie => pen.line("Tie", |p| {
                p.length(self.joint.strip)?;
                p.write_str(" wide, one strip")
            }),
            Run::Straight { length, first_end, last_end } => {
                pen.line("Straight", |p| p.length(length.to_mm()))?;
                pen.line("End of the plate to the first hole, last hole to the end", |p| {
                    p.length(first_end.to_mm())?;
                    p.write_str(", ")?;
                    p.length(last_end.to_mm())
                })
            }
            Run::Girth { diameter, measured, other } => {
                pen.line("Girth", |p| {
                    p.length(diameter.to_mm())?;
                    p.write_str(match measured {
                        Measured::Circle => " diameter of the circle of holes, middle of the plate",
                        Measured::InsidePlate => " inside diameter of the ring of the plate (plate A of a lap)",
                        Measured::InsideOther => " inside diameter of the ring of plate B",
                    })
                })?;
                pen.line("Circle of holes", |p| {
                    p.length(self.along.circle.map_or(0.0, Num::value))?;
                    p.write_str(" diameter, ")?;
                    p.length(self.along.seam.value())?;
                    p.write_str(" round")
                })?;
                let lap = self.joint.form().kind() == JointKind::Lap;
                pen.line(if lap { "Ring of plate B" } else { "Single, wide or first strap" }, |p| {
                    p.write_str(match other {
                        Face::Inside => "inside, ",
                        Face::Outside => "outside, ",
                    })?;
                    p.length(self.along.other.value())?;
                    p.write_str(" round, a pitch there is ")?;
                    p.length(self.along.other.value() / f64::from(self.pitches_round()))
                })
            }
        }?;
        pen.line("Length to be divided", |p| p.length(self.along.run.unwrap_or(self.along.seam).value()))
    }

    /// Pitches of the outer row in the seam, one at least.
    fn pitches_round(&self) -> u32 {
        let outer = u32::from(self.joint.form().outer_rivets());
        self.pitch.taken.strips.saturating_mul(outer).max(1)
    }

    fn pitches(&self, pen: &mut Pen<'_>, book: &RuleBook<'_>) -> fmt::Result {
        let fit = &self.pitch;
        pen.heading("Number and pitch")?;
        pen.line("Pitch asked for", |p| {
            p.length(fit.asked)?;
            p.write_str(", which divides the seam into ")?;
            p.plain(fit.exact.value(), 3)
        })?;
        pen.line("Least pitch", |p| {
            p.length(fit.least.value())?;
            cited(p, book, Entry::PITCH_LEAST.no())
        })?;
        pen.line("Greatest pitch", |p| match fit.greatest {
            Limit::None => p.write_str("no rule in this book"),
            Limit::Unknown(entry) => {
                p.write_str("the book's table does not reach this joint")?;
                cited(p, book, entry.no())
            }
            Limit::At(most, entry) => {
                p.length(most.value())?;
                cited(p, book, entry.no())
            }
        })?;
        let outer = u32::from(self.joint.form().outer_rivets());
        let mut tried = |n: &Neighbour<N>| {
            pen.line("Tried", |p| {
                p.count(n.strips.saturating_mul(outer))?;
                p.write_str(" pitches of ")?;
                p.length(n.pitch.value())?;
                p.write_str(if n.admissible { ", admissible" } else { ", outside the limits" })
            })
        };
        if let Some(fewer) = fit.fewer.filter(|f| f.strips != fit.more.strips) {
            tried(&fewer)?;
        }
        tried(&fit.more)?;
        pen.line("Taken", |p| {
            p.count(fit.taken.strips.saturating_mul(outer))?;
            p.write_str(" pitches of ")?;
            p.length(fit.taken.pitch.value())?;
            p.write_str(match fit.fitted {
                Fitted::Tie => ": the tie as it is",
                Fitted::Whole => ": the pitch asked for divides the seam",
                Fitted::Nearer => ": the nearer to the pitch asked for",
                Fitted::Cap => ": fewer would pass the greatest pitch",
                Fitted::Floor => ": the other would pass the least pitch, or there is no other",
            })
        })?;
        pen.line("Rivets", |p| {
            p.count(self.rivet_count())?;
            if self.layout().sides() > 1 {
                p.write_str(", both sides of the butt together")?;
            }
            Ok(())
        })
    }

    fn recheck(&self, pen: &mut Pen<'_>, book: &RuleBook<'_>) -> fmt::Result {
        pen.heading("Checked again with this pitch")?;
        let found = &self.analysis;
        pen.line("Efficiency over all modes", |p| percent(p, found.efficiency.value()))?;
        pen.line("Efficiency by the rule book", |p| percent(p, found.book_efficiency.value()))?;
        pen.line("Governs", |p| write!(p, "{}", found.governing.name(self.joint.form())))?;
        let mut shown = false;
        for finding in found.findings.iter().filter(|f| matches!(f.verdict, Verdict::Open | Verdict::Unknown)) {
            shown = true;
            self.finding(pen, book, finding)?;
        }
        if shown { Ok(()) } else { pen.line("Rules", |p| p.write_str("all met")) }
    }

    fn finding(&self, pen: &mut Pen<'_>, book: &RuleBook<'_>, finding: &Finding) -> fmt::Result {
        let subject = finding.subject;
        pen.line(if finding.verdict == Verdict::Open { "NOT MET" } else { "NOT KNOWN" }, |p| {
            p.write_str(subject.what())?;
            if finding.row > 0 {
                p.write_str(" no. ")?;
                p.count(u32::from(finding.row))?;
            }
            let figure = |p: &mut Pen<'_>, x: f64| match subject.unit() {
                Unit::Millimetre => p.length(x),
                _ => p.plain(x, 4),
            };
            if finding.required.is_finite() {
                p.write_str(match finding.sense {
                    Required::AtLeast => ", at least ",
                    Required::AtMost => ", at most ",
                })?;
                figure(p, finding.required)?;
            }
            if finding.provided.is_finite() {
                p.write_str(", provided ")?;
                figure(p, finding.provided)?;
            }
            cited(p, book, finding.entry)?;
            p.write_str(": ")?;
            p.write_str(finding.advice())
        })
    }
}

fn percent(p: &mut Pen<'_>, x: f64) -> fmt::Result {
    p.fixed(100.0 * x, 2)?;
    p.unit("%")
}

/// The rule behind a figure: its key, its clause and how far that can be trusted.
fn cited(p: &mut Pen<'_>, book: &RuleBook<'_>, entry: EntryNo) -> fmt::Result {
    let Some(known) = Entry::from_no(entry).filter(|_| entry.is_some()) else { return Ok(()) };
    p.write_str(" (")?;
    p.write_str(key(known))?;
    match book.clause(entry) {
        Some(clause) => write!(p, ": {}, {})", clause.number, clause.label.word()),
        None => p.write_str(": the library's own figure)"),
    }
}

/// All of a text in a buffer, or nothing and the size needed: a counting pass, then a writing pass.
fn whole(buffer: &mut [u8], write: impl Fn(&mut dyn Write) -> fmt::Result) -> Result<&str, Error> {
    let size = |n: usize| u32::try_from(n).map_or(f64::INFINITY, f64::from);
    let mut count = Count::new();
    let held = size(buffer.len());
    let no_space = |needed: usize| Error::new(ErrorKind::NoSpace, Field::Text).value(held).limit(size(needed));
    write(&mut count).map_err(|_| no_space(count.needed()))?;
    if count.needed() > buffer.len() {
        return Err(no_space(count.needed()));
    }
    let mut slice = Slice::new(buffer);
    let written = write(&mut slice);
    let needed = slice.needed();
    written.map_err(|_| no_space(needed))?;
    slice.finish().map_err(no_space)
}
