//! How a reader wants numbers: units, decimal mark, digits.

use core::fmt;

use crate::bounds::Unit;
use crate::quantities::{Area, Force, Length, Moment, Stress};
use crate::text::{self, DecimalMark};

/// The units of a sheet.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
#[repr(u8)]
pub enum Units {
    /// Millimetre, megapascal, newton.
    #[default]
    Metric,
    /// Inch, pound per square inch, pound-force.
    Inch,
}

/// The dialect of a text.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
#[repr(u8)]
pub enum Dialect {
    /// Plain text of 80 columns.
    #[default]
    Plain,
    /// Plain text of 20 columns, for a small display.
    Narrow,
    /// Markdown.
    Markdown,
    /// LaTeX, for a plain article class.
    Latex,
    /// HTML, self-contained.
    Html,
}

/// All dialects.
pub const DIALECTS: &[Dialect] = &[Dialect::Plain, Dialect::Narrow, Dialect::Markdown, Dialect::Latex, Dialect::Html];

/// The unit of forces on a metric text.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
#[repr(u8)]
pub enum Forces {
    /// Newton.
    #[default]
    Newton,
    /// Kilonewton. Lines of mathematics then carry the thousand that lies between kN and mm with MPa.
    Kilonewton,
}

/// Decimals by the kind of quantity; where there is none, the usual number is printed. More than nine are taken as nine.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Decimals {
    /// Of lengths.
    pub length: Option<u8>,
    /// Of stresses and pressures.
    pub stress: Option<u8>,
    /// Of forces.
    pub force: Option<u8>,
    /// Of pure numbers: ratios, constants, percentages.
    pub ratio: Option<u8>,
}

/// A reader's wishes.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Style {
    /// Units.
    pub units: Units,
    /// Unit of forces where the units are metric.
    pub forces: Forces,
    /// Decimal point or comma.
    pub mark: DecimalMark,
    /// Dialect.
    pub dialect: Dialect,
    /// Decimals by the kind of quantity.
    pub decimals: Decimals,
    /// Decimals more (or, negative, fewer) than those, for every kind.
    pub extra_digits: i8,
}

impl Style {
    /// A value in the reader's units.
    #[must_use]
    pub fn convert(&self, unit: Unit, value: f64) -> f64 {
        match (self.units, unit) {
            (Units::Metric, Unit::Newton | Unit::NewtonMillimetre) if self.forces == Forces::Kilonewton => {
                Force::n(value).to_kn()
            }
            (Units::Metric, _) | (_, Unit::One | Unit::Count) => value,
            (Units::Inch, Unit::Millimetre) => Length::mm(value).to_inch(),
            (Units::Inch, Unit::SquareMillimetre) => Area::mm2(value).to_inch2(),
            (Units::Inch, Unit::Megapascal) => Stress::mpa(value).to_psi(),
            (Units::Inch, Unit::Newton) => Force::n(value).to_lbf(),
            (Units::Inch, Unit::NewtonMillimetre) => Moment::n_mm(value).to_lbf_inch(),
            // a sqrt(t): the constant carries the root of the length.
            (Units::Inch, Unit::RootMillimetre) => value / crate::math::sqrt(Length::inch(1.0).to_mm()),
            (Units::Inch, Unit::CubicMillimetre) => Length::mm(Area::mm2(value).to_inch2()).to_inch(),
            // A kilogram weighs a kilogram-force, and a pound a pound-force.
            (Units::Inch, Unit::Kilogram) => Force::kgf(value).to_lbf(),
            (Units::Inch, Unit::KilogramPerMetre) => Force::kgf(value).to_lbf() * Length::foot(1.0).to_m(),
            (Units::Inch, Unit::KilogramPerCubicMetre) => {
                let foot = Length::foot(1.0).to_m();
                Force::kgf(value).to_lbf() * foot * foot * foot
            }
        }
    }

    /// The symbol of a unit, empty for pure numbers.
    #[must_use]
    pub fn symbol(&self, unit: Unit) -> &'static str {
        match (self.units, unit) {
            (Units::Metric, Unit::Newton) if self.forces == Forces::Kilonewton => "kN",
            (Units::Metric, Unit::NewtonMillimetre) if self.forces == Forces::Kilonewton => "kN mm",
            (Units::Metric, _) | (_, Unit::One | Unit::Count) => unit.symbol(),
            (Units::Inch, Unit::Millimetre) => "in",
            (Units::Inch, Unit::SquareMillimetre) => "in2",
            (Units::Inch, Unit::Megapascal) => "psi",
            (Units::Inch, Unit::Newton) => "lbf",
            (Units::Inch, Unit::NewtonMillimetre) => "lbf in",
            (Units::Inch, Unit::RootMillimetre) => "in^0.5",
            (Units::Inch, Unit::CubicMillimetre) => "in3",
            (Units::Inch, Unit::Kilogram) => "lb",
            (Units::Inch, Unit::KilogramPerMetre) => "lb/ft",
            (Units::Inch, Unit::KilogramPerCubicMetre) => "lb/ft3",
        }
    }

    /// How many thousands lie between a unit's figure and the one that mm and MPa give: 1 for forces in kN.
    pub(super) fn thousands(&self, unit: Unit) -> i8 {
        let force = matches!(unit, Unit::Newton | Unit::NewtonMillimetre);
        i8::from(force && self.units == Units::Metric && self.forces == Forces::Kilonewton)
    }

    /// Decimals printed for a unit: where nothing else is asked for, enough that each line can be worked again from the
    /// line above it.
    #[must_use]
    pub fn decimals(&self, unit: Unit) -> u8 {
        let asked = match unit {
            Unit::Millimetre => self.decimals.length,
            Unit::Megapascal => self.decimals.stress,
            Unit::Newton => self.decimals.force,
            Unit::One => self.decimals.ratio,
            Unit::Count
            | Unit::RootMillimetre
            | Unit::SquareMillimetre
            | Unit::NewtonMillimetre
            | Unit::CubicMillimetre
            | Unit::Kilogram
            | Unit::KilogramPerMetre
            | Unit::KilogramPerCubicMetre => None,
        };
        let usual: i8 = match (self.units, unit) {
            (_, Unit::Count) => 0,
            (_, Unit::One | Unit::Kilogram | Unit::KilogramPerMetre | Unit::KilogramPerCubicMetre) => 6,
            (Units::Metric, Unit::CubicMillimetre) => 2,
            (Units::Inch, Unit::CubicMillimetre) => 6,
            (Units::Metric, Unit::Newton | Unit::NewtonMillimetre) if self.forces == Forces::Kilonewton => 4,
            (Units::Metric, Unit::Newton | Unit::NewtonMillimetre) => 1,
            (Units::Metric, Unit::Megapascal | Unit::Millimetre | Unit::SquareMillimetre) => 4,
            (_, Unit::RootMillimetre) => 6,
            (Units::Inch, Unit::Millimetre | Unit::SquareMillimetre) => 6,
            (Units::Inch, Unit::Megapascal | Unit::Newton | Unit::NewtonMillimetre) => 1,
        };
        let taken = asked.map_or(usual, |n| i8::try_from(n).unwrap_or(i8::MAX).clamp(0, 9));
        u8::try_from(taken.saturating_add(self.extra_digits).clamp(0, 9)).unwrap_or(0)
    }

    /// Writes a value, kept in the library's unit, in the reader's, without the symbol.
    ///
    /// # Errors
    /// Those of the sink, and numbers that cannot be printed.
    pub fn value(&self, out: &mut dyn fmt::Write, unit: Unit, value: f64) -> fmt::Result {
        let mark = if self.dialect == Dialect::Latex { DecimalMark::Point } else { self.mark };
        let x = self.convert(unit, value);
        // LaTeX sets a bare comma as punctuation: a decimal comma goes into braces.
        if self.dialect == Dialect::Latex && self.mark == DecimalMark::Comma {
            let mut braces = Braces { out };
            return text::write_plain(&mut braces, x, self.decimals(unit)).map_err(|_| fmt::Error);
        }
        text::write_plain_with(out, x, self.decimals(unit), mark).map_err(|_| fmt::Error)
    }
}

/// Turns a decimal point into LaTeX's comma in braces.
struct Braces<'a> {
    out: &'a mut dyn fmt::Write,
}

impl fmt::Write for Braces<'_> {
    fn write_str(&mut self, s: &str) -> fmt::Result {
        match text::split_once(s, b'.') {
            Some((whole, decimals)) => {
                self.out.write_str(whole)?;
                self.out.write_str("{,}")?;
                self.out.write_str(decimals)
            }
            None => self.out.write_str(s),
        }
    }
}
