//! The figures of a sheet: the one place that says with how many digits and in which form a quantity is printed.

use core::fmt::{self, Write};

use crate::bounds::Unit;
use crate::check::Subject;
use crate::quantities::Length;
use crate::rules::{Entry, Label, RuleBook, info};
use crate::text;
use crate::working::{Decimals, Dialect, Forces, Style, Units};

/// A blank at which no line is broken.
pub(super) const JOIN: &str = "\u{a0}";

/// Writes figures as the reader wants them.
#[derive(Clone, Copy, Debug)]
pub(super) struct FigureStyle {
    style: Style,
    percent: u8,
}

impl FigureStyle {
    /// Fewer decimals than in a working, unless the reader asks for others. Texts are escaped by the document.
    pub fn new(style: Style) -> Self {
        let inch = style.units == Units::Inch;
        let newtons = inch || style.forces == Forces::Newton;
        let asked = style.decimals;
        let or = |asked: Option<u8>, usual: u8| Some(asked.unwrap_or(usual));
        let decimals = Decimals {
            length: or(asked.length, if inch { 4 } else { 2 }),
            stress: or(asked.stress, if inch { 0 } else { 2 }),
            force: or(asked.force, if newtons { 0 } else { 2 }),
            ratio: or(asked.ratio, 2),
        };
        let style = Style { dialect: Dialect::Plain, decimals, ..style };
        FigureStyle { style, percent: style.decimals(Unit::One) }
    }

    /// A number with so many decimals.
    pub fn fixed(&self, out: &mut dyn Write, x: f64, decimals: u8) -> fmt::Result {
        if !x.is_finite() {
            return out.write_str("-");
        }
        text::write_fixed_with(out, x, decimals, self.style.mark).map_err(|_| fmt::Error)
    }

    /// A number without trailing zeros.
    pub fn plain(&self, out: &mut dyn Write, x: f64, decimals: u8) -> fmt::Result {
        text::write_plain_with(out, x, decimals, self.style.mark).map_err(|_| fmt::Error)
    }

    fn unit(&self, out: &mut dyn Write, unit: Unit) -> fmt::Result {
        match self.style.symbol(unit) {
            "" => Ok(()),
            symbol => write!(out, "{JOIN}{symbol}"),
        }
    }

    /// The symbol of a unit.
    pub fn symbol(&self, unit: Unit) -> &'static str {
        self.style.symbol(unit)
    }

    /// A computed value without its unit.
    pub fn bare(&self, out: &mut dyn Write, unit: Unit, x: f64) -> fmt::Result {
        self.fixed(out, self.style.convert(unit, x), self.style.decimals(unit))
    }

    /// A computed length: always decimals, so that it is never taken for a size.
    pub fn length(&self, out: &mut dyn Write, mm: f64) -> fmt::Result {
        self.bare(out, Unit::Millimetre, mm)?;
        self.unit(out, Unit::Millimetre)
    }

    /// A dimension that is there or was given: as it is written on a drawing.
    pub fn size(&self, out: &mut dyn Write, mm: f64) -> fmt::Result {
        match self.style.units {
            Units::Metric => self.plain(out, mm, 4)?,
            Units::Inch => {
                // A fraction where there is an exact one, joined to its whole number.
                let mut fraction: heapless::String<40> = heapless::String::new();
                text::write_inch_fraction(&mut fraction, Length::mm(mm).to_inch(), 64).map_err(|_| fmt::Error)?;
                for c in fraction.chars() {
                    match c {
                        ' ' => out.write_str(JOIN)?,
                        '.' if self.style.mark == text::DecimalMark::Comma => out.write_str(",")?,
                        c => out.write_char(c)?,
                    }
                }
            }
        }
        self.unit(out, Unit::Millimetre)
    }

    /// A stress or a pressure.
    pub fn stress(&self, out: &mut dyn Write, mpa: f64) -> fmt::Result {
        self.bare(out, Unit::Megapascal, mpa)?;
        self.unit(out, Unit::Megapascal)
    }

    /// A force without its unit, for tables whose head names it.
    pub fn force(&self, out: &mut dyn Write, newtons: f64) -> fmt::Result {
        self.bare(out, Unit::Newton, newtons)
    }

    /// A ratio as a percentage.
    pub fn percent(&self, out: &mut dyn Write, ratio: f64) -> fmt::Result {
        self.fixed(out, 100.0 * ratio, self.percent)?;
        write!(out, "{JOIN}%")
    }

    /// A percentage that comes as such.
    pub fn hundredths(&self, out: &mut dyn Write, percent: f64) -> fmt::Result {
        self.percent(out, percent / 100.0)
    }

    /// What a length of seam carries: N/mm or lbf/in, whatever the forces elsewhere.
    pub fn per_length(&self, out: &mut dyn Write, newtons: f64, mm: f64) -> fmt::Result {
        let style = Style { forces: Forces::Newton, ..self.style };
        let force = style.convert(Unit::Newton, newtons) / style.convert(Unit::Millimetre, mm);
        self.fixed(out, force, if style.units == Units::Inch { 0 } else { 1 })?;
        write!(out, "{JOIN}{}/{}", style.symbol(Unit::Newton), style.symbol(Unit::Millimetre))
    }

    /// A value in the unit of a table: of an entry of a rule book, or an input.
    pub fn value(&self, out: &mut dyn Write, unit: Unit, x: f64) -> fmt::Result {
        match unit {
            Unit::Millimetre => self.size(out, x),
            Unit::Megapascal => self.stress(out, x),
            Unit::Newton => {
                self.force(out, x)?;
                self.unit(out, unit)
            }
            _ => {
                self.plain(out, self.style.convert(unit, x), 6)?;
                self.unit(out, unit)
            }
        }
    }

    /// What a rule requires.
    pub fn required(&self, out: &mut dyn Write, subject: Subject, x: f64) -> fmt::Result {
        match (subject, subject.unit()) {
            (Subject::AllModes | Subject::CreditCap | Subject::GirthEfficiency, _) => self.percent(out, x),
            (_, Unit::One) => self.fixed(out, x, 2),
            (_, Unit::Millimetre) => self.length(out, x),
            (_, unit) => self.value(out, unit, x),
        }
    }

    /// What is there: dimensions as on the drawing.
    pub fn provided(&self, out: &mut dyn Write, subject: Subject, x: f64) -> fmt::Result {
        match subject.unit() {
            Unit::Millimetre => self.size(out, x),
            _ => self.required(out, subject, x),
        }
    }

    /// Clause, label and key of an entry: where it stands, that the user changed it, or that the book is silent.
    pub fn cite(&self, out: &mut dyn Write, book: &RuleBook<'_>, entry: Entry) -> fmt::Result {
        if book.is_changed(entry) {
            out.write_str("set by the user; the book's own value is ")?;
            self.plain(out, book.stated(entry), 6)?;
            write!(out, " [{}]", Label::Own.word())?;
        } else if let Some(clause) = book.clause(entry.no()) {
            write!(out, "{} [{}]", clause.number, clause.label.word())?;
        } else {
            out.write_str("the book is silent; neutral value")?;
        }
        out.write_str(" (")?;
        key(out, entry)?;
        out.write_str(")")
    }
}

/// The key of an entry, with its line where it is one of a list.
pub(super) fn key(out: &mut dyn Write, entry: Entry) -> fmt::Result {
    let row = info(entry);
    out.write_str(row.key)?;
    if row.line > 0 { write!(out, ".{}", row.line) } else { Ok(()) }
}
