//! Inputs in the source's units, and the factors by which results are brought back to them.

use seamwright::quantities::{Force, Length, Stress};
use seamwright::text::parse_number;

/// A number and its unit, as in `5/8 in`; without a unit the unit is empty.
fn split(text: &str) -> Result<(f64, &str), String> {
    let text = text.trim();
    let (number, unit) = match text.rsplit_once(' ') {
        Some((number, unit)) if unit.starts_with(|c: char| c.is_ascii_alphabetic()) => (number, unit),
        _ => (text, ""),
    };
    let number = parse_number(number).map_err(|e| format!("{text:?}: {e:?}"))?;
    Ok((number, unit))
}

/// A length: `12 mm`, `5/8 in`, `6 ft`.
///
/// # Errors
/// Another unit, or no number.
pub fn length(text: &str) -> Result<Length, String> {
    let (x, unit) = split(text)?;
    match unit {
        "mm" => Ok(Length::mm(x)),
        "in" => Ok(Length::inch(x)),
        "ft" => Ok(Length::foot(x)),
        _ => Err(format!("{text:?} is not a length")),
    }
}

/// A stress: `80 MPa`, `55000 psi`, `55 ksi`, `600 kgf/cm2`, `36 kgf/mm2`, `28 tons/in2` (of 2240 lb).
///
/// # Errors
/// Another unit, or no number.
pub fn stress(text: &str) -> Result<Stress, String> {
    let (x, unit) = split(text)?;
    match unit {
        "MPa" => Ok(Stress::mpa(x)),
        "psi" => Ok(Stress::psi(x)),
        "ksi" => Ok(Stress::ksi(x)),
        "kgf/cm2" => Ok(Stress::kgf_cm2(x)),
        "kgf/mm2" => Ok(Stress::kgf_mm2(x)),
        "tons/in2" => Ok(Stress::long_ton_in2(x)),
        _ => Err(format!("{text:?} is not a stress")),
    }
}

/// Anything, in mm, N and MPa; a bare number as it is.
///
/// # Errors
/// An unknown unit, or no number.
pub fn base(text: &str) -> Result<f64, String> {
    let (x, unit) = split(text)?;
    match unit {
        "" => Ok(x),
        "N" => Ok(Force::n(x).to_n()),
        "kN" => Ok(Force::kn(x).to_n()),
        "lbf" => Ok(Force::lbf(x).to_n()),
        "tons" => Ok(Force::long_ton(x).to_n()),
        "kgf" => Ok(Force::kgf(x).to_n()),
        "mm" | "in" | "ft" => length(text).map(Length::to_mm),
        _ => stress(text).map(Stress::to_mpa),
    }
}

/// What one of a unit is in mm, N, MPa or one. From the definitions (inch 25.4 mm, pound 0.453 592 37 kg, standard
/// gravity 9.806 65 m/s2, long ton 2240 lb), typed here a second time: results do not go back through the library.
///
/// # Errors
/// An unknown unit.
pub fn one_of(unit: &str) -> Result<f64, String> {
    let pound = 0.453_592_37 * 9.806_65;
    let square_inch = 25.4 * 25.4;
    Ok(match unit {
        "" | "mm" | "N" | "MPa" => 1.0,
        "%" => 0.01,
        "in" => 25.4,
        "kN" => 1000.0,
        "lbf" => pound,
        "tons" => 2240.0 * pound,
        "kgf" => 9.806_65,
        "mm2" | "N mm" => 1.0,
        "N m" => 1000.0,
        "in2" => square_inch,
        "lbf in" => pound * 25.4,
        "psi" => pound / square_inch,
        "tons/in2" => 2240.0 * pound / square_inch,
        _ => return Err(format!("unknown unit {unit:?}")),
    })
}
