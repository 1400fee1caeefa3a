//! Numbers in and out: texts with units read, and the one place that says with how many digits a quantity is printed.

use seamwright::bounds::Field;
use seamwright::quantities::{Force, Length, Moment, Pressure, Stress};
use seamwright::text::{self, TextError};

use crate::failure::Failure;

/// A blank at which no line is broken. Printed as an ordinary one.
pub const JOIN: char = '\u{a0}';

/// Units of the sheet.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Units {
    /// mm, MPa, kN.
    Mm,
    /// Inches, psi, lbf.
    Inch,
}

/// Runs one of the library's writers into a string.
fn written(write: impl FnOnce(&mut String) -> Result<(), TextError>) -> String {
    let mut out = String::new();
    match write(&mut out) {
        Ok(()) => out,
        Err(error) => error.text().to_string(),
    }
}

/// A number with so many decimals.
pub fn fixed(x: f64, decimals: u8) -> String {
    written(|out| text::write_fixed(out, x, decimals))
}

/// A number without trailing zeros.
pub fn plain(x: f64, decimals: u8) -> String {
    written(|out| text::write_plain(out, x, decimals))
}

/// Keeps the parts of one figure on one line.
fn join(text: String) -> String {
    text.replace(' ', "\u{a0}")
}

/// A ratio as a percentage: two decimals, as the trade quotes efficiencies.
pub fn percent(ratio: f64) -> String {
    join(format!("{} %", fixed(100.0 * ratio, 2)))
}

impl Units {
    /// A dimension that exists or was given: as it is written on a drawing.
    pub fn size(self, mm: f64) -> String {
        join(match self {
            Units::Mm => plain(mm, 4) + " mm",
            Units::Inch => written(|out| text::write_inch_fraction(out, Length::mm(mm).to_inch(), 64)) + " in",
        })
    }

    /// A computed length: always decimals, so that it is never taken for a size.
    pub fn length(self, mm: f64) -> String {
        join(self.decimal(mm) + " " + self.length_unit())
    }

    /// A computed length without its unit.
    pub fn decimal(self, mm: f64) -> String {
        match self {
            Units::Mm => fixed(mm, 2),
            Units::Inch => fixed(Length::mm(mm).to_inch(), 4),
        }
    }

    /// The unit of lengths.
    pub fn length_unit(self) -> &'static str {
        match self {
            Units::Mm => "mm",
            Units::Inch => "in",
        }
    }

    /// A stress.
    pub fn stress(self, stress: Stress) -> String {
        join(match self {
            Units::Mm => fixed(stress.to_mpa(), 2) + " MPa",
            Units::Inch => fixed(stress.to_psi(), 0) + " psi",
        })
    }
}

/// A unit's name and the constructor that takes it.
type Named<Q> = (&'static str, fn(f64) -> Q);

/// Units of length, longest first, with the constructor of each.
const LENGTHS: &[Named<Length>] = &[
    ("inches", Length::inch),
    ("inch", Length::inch),
    ("mm", Length::mm),
    ("cm", |x| Length::mm(10.0 * x)),
    ("in", Length::inch),
    ("\"", Length::inch),
    ("m", Length::m),
];

/// Units of stress, longer before those that they end in.
const STRESSES: &[Named<Stress>] = &[
    ("long tons/in2", Stress::long_ton_in2),
    ("long ton/in2", Stress::long_ton_in2),
    ("tons/in2", Stress::long_ton_in2),
    ("ton/in2", Stress::long_ton_in2),
    ("kgf/cm2", Stress::kgf_cm2),
    ("kgf/mm2", Stress::kgf_mm2),
    ("kg/cm2", Stress::kgf_cm2),
    ("kg/mm2", Stress::kgf_mm2),
    ("lbf/in2", Stress::psi),
    ("lb/in2", Stress::psi),
    ("N/mm2", Stress::mpa),
    ("MPa", Stress::mpa),
    ("psi", Stress::psi),
    ("ksi", Stress::ksi),
];

/// Reads a length given for a field.
pub fn length(field: Field, said: &str) -> Result<Length, Failure> {
    with_unit(&flag_name(field), said, LENGTHS, ["mm", "in"], ["12 mm", "1/2 in"])
}

/// Reads a stress given for a field.
pub fn stress(field: Field, said: &str) -> Result<Stress, Failure> {
    with_unit(&flag_name(field), said, STRESSES, ["MPa", "psi"], ["80 MPa", "11000 psi"])
}

/// Units of pressure.
const PRESSURES: &[Named<Pressure>] = &[
    ("kgf/cm2", Pressure::kgf_cm2),
    ("kg/cm2", Pressure::kgf_cm2),
    ("lbf/in2", Pressure::psi),
    ("lb/in2", Pressure::psi),
    ("N/mm2", Pressure::mpa),
    ("MPa", Pressure::mpa),
    ("psi", Pressure::psi),
    ("bar", Pressure::bar),
];

/// Reads a gauge pressure given by a flag.
pub fn pressure(name: &str, said: &str) -> Result<Pressure, Failure> {
    with_unit(name, said, PRESSURES, ["MPa", "psi"], ["1.2 MPa", "125 psi"])
}

/// Units of force, longer before those that they end in.
const FORCES: &[Named<Force>] = &[
    ("tons", Force::long_ton),
    ("ton", Force::long_ton),
    ("lbf", Force::lbf),
    ("lb", Force::lbf),
    ("kgf", Force::kgf),
    ("kN", Force::kn),
    ("N", Force::n),
];

/// Reads a force given by a flag.
pub fn force(name: &str, said: &str) -> Result<Force, Failure> {
    with_unit(name, said, FORCES, ["kN", "lbf"], ["50 kN", "11000 lbf"])
}

/// Units of moment, longer before those that they end in.
const MOMENTS: &[Named<Moment>] = &[
    ("lbf in", Moment::lbf_inch),
    ("lb in", Moment::lbf_inch),
    ("N mm", Moment::n_mm),
    ("kN m", Moment::kn_m),
    ("N m", Moment::n_m),
];

/// Reads a moment given by a flag.
pub fn moment(name: &str, said: &str) -> Result<Moment, Failure> {
    with_unit(name, said, MOMENTS, ["kN m", "lbf in"], ["2 kN m", "18000 lbf in"])
}

/// Reads a point given by a flag: two lengths.
pub fn point(name: &str, said: &str) -> Result<(Length, Length), Failure> {
    let (x, y) = said.split_once(',').ok_or_else(|| {
        Failure::usage(name, format!("\"{said}\" is not a point"), format!("write --{name} \"0 mm, 80 mm\""))
    })?;
    let part = |text: &str| with_unit(name, text, LENGTHS, ["mm", "in"], ["0 mm, 80 mm", "0 in, 3 in"]);
    Ok((part(x)?, part(y)?))
}

/// Reads a pure number given for a field.
pub fn number(name: &str, said: &str) -> Result<f64, Failure> {
    text::parse_number(said).map_err(|error| {
        Failure::usage(name, format!("\"{said}\" cannot be read: {}", error.text()), "write a plain number such as 5")
    })
}

/// The name of a field as the flags have it.
pub fn flag_name(field: Field) -> String {
    match field {
        Field::BackPitch => "gap".to_string(),
        field => field.bound().key.replace('_', "-"),
    }
}

/// A number and its unit. A bare number is refused: guessing mm or inches is how joints go wrong.
fn with_unit<Q>(
    name: &str,
    said: &str,
    table: &[Named<Q>],
    [first, second]: [&str; 2],
    [like, or_like]: [&str; 2],
) -> Result<Q, Failure> {
    let said = said.trim();
    let remedy = format!("write --{name} \"{like}\" or --{name} \"{or_like}\"");
    let tidy = said.replace("^2", "2").replace('\u{b2}', "2");
    for (unit, make) in table {
        let Some(at) = tidy.len().checked_sub(unit.len()) else { continue };
        let Some((digits, tail)) = tidy.split_at_checked(at) else { continue };
        if tail.eq_ignore_ascii_case(unit) {
            return text::parse_number(digits).map(make).map_err(|error| {
                Failure::usage(name, format!("\"{said}\" cannot be read: {}", error.text()), &remedy)
            });
        }
    }
    match text::parse_number(&tidy) {
        Ok(_) => {
            let fix = format!("write --{name} \"{said} {first}\" or --{name} \"{said} {second}\"");
            Err(Failure::usage(name, format!("\"{said}\" has no unit"), fix))
        }
        Err(_) => {
            let units: Vec<&str> = table.iter().map(|(unit, _)| *unit).collect();
            let fix = format!("{remedy}; units: {}", units.join(", "));
            Err(Failure::usage(name, format!("\"{said}\" is not a number with a unit"), fix))
        }
    }
}
