//! The whole boiler: courses, girths and the limits that come from elsewhere; the least governs.

use super::Rating;
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::quantities::Pressure;
use crate::rules::{Entry, Rules};

/// The most lines of a boiler's table.
pub const MAX_LINES: usize = 32;

/// What a line of the table is.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum BoilerPart {
    /// A course of the shell, with its seam along it.
    Course,
    /// A girth seam.
    Girth,
    /// A head, computed elsewhere.
    Head,
    /// Tubes, computed elsewhere.
    Tubes,
    /// Stays, computed elsewhere.
    Stays,
    /// A furnace or firebox, computed elsewhere.
    Furnace,
    /// Anything else, computed elsewhere.
    Other,
}

impl BoilerPart {
    /// In words.
    #[must_use]
    pub const fn what(self) -> &'static str {
        match self {
            BoilerPart::Course => "course",
            BoilerPart::Girth => "girth seam",
            BoilerPart::Head => "head",
            BoilerPart::Tubes => "tubes",
            BoilerPart::Stays => "stays",
            BoilerPart::Furnace => "furnace",
            BoilerPart::Other => "other limit",
        }
    }

    /// Whether this library computes it.
    #[must_use]
    pub const fn computed_here(self) -> bool {
        matches!(self, BoilerPart::Course | BoilerPart::Girth)
    }
}

/// One line: a part, its name, and the pressure that it allows.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct BoilerLine<'a> {
    /// What it is.
    pub part: BoilerPart,
    /// Its name, as the user calls it.
    pub name: &'a str,
    /// Allowed pressure.
    pub pressure: Pressure,
}

/// The table of a boiler.
///
/// ```
/// use seamwright::{quantities::Pressure, rating::{Boiler, BoilerPart}};
/// let mut boiler = Boiler::new();
/// boiler.add(BoilerPart::Head, "front head", Pressure::psi(160.0))?;
/// boiler.add(BoilerPart::Stays, "crown stays", Pressure::psi(140.0))?;
/// assert_eq!(boiler.governing().map(|l| l.name), Some("crown stays"));
/// assert!(boiler.add(BoilerPart::Tubes, "tubes", Pressure::psi(-1.0)).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Boiler<'a> {
    lines: heapless::Vec<BoilerLine<'a>, MAX_LINES>,
}

impl<'a> Boiler<'a> {
    /// An empty table.
    #[must_use]
    pub const fn new() -> Self {
        Boiler { lines: heapless::Vec::new() }
    }

    /// Adds a line. A part that allows no pressure at all is a line like any other.
    ///
    /// # Errors
    /// A pressure that is negative, not finite or too large; [`ErrorKind::NoSpace`] beyond [`MAX_LINES`] lines.
    pub fn add(&mut self, part: BoilerPart, name: &'a str, pressure: Pressure) -> Result<(), Error> {
        if pressure.to_mpa() != 0.0 {
            Field::Pressure.check(pressure.to_mpa())?;
        }
        let full = Error::new(ErrorKind::NoSpace, Field::Rows).limit(u32::try_from(MAX_LINES).map_or(0.0, f64::from));
        self.lines.push(BoilerLine { part, name, pressure }).map_err(|_| full)
    }

    /// Adds a rated course.
    ///
    /// # Errors
    /// As [`Boiler::add`].
    pub fn course(&mut self, name: &'a str, rating: &Rating) -> Result<(), Error> {
        self.add(BoilerPart::Course, name, Pressure::mpa(rating.allowed))
    }

    /// The lines in order.
    #[must_use]
    pub fn lines(&self) -> &[BoilerLine<'a>] {
        &self.lines
    }

    /// The line that governs: the least, the first of equals.
    #[must_use]
    pub fn governing(&self) -> Option<&BoilerLine<'a>> {
        let mut least: Option<&BoilerLine<'a>> = None;
        for line in &self.lines {
            if least.is_none_or(|l| line.pressure < l.pressure) {
                least = Some(line);
            }
        }
        least
    }

    /// The hydrostatic test pressure of the boiler, where there is a line and the book has a factor.
    #[must_use]
    pub fn test_pressure(&self, rules: &Rules) -> Option<Pressure> {
        let factor = rules.get(Entry::TEST_FACTOR);
        let line = self.governing().filter(|_| factor > 0.0)?;
        Some(Pressure::mpa(factor * line.pressure.to_mpa()))
    }
}
