//! Tables of the core: units, bounds, kinds of errors; and texts read as quantities.

use pyo3::prelude::*;
use seamwright::bounds::{FIELDS, Field};
use seamwright::error::{Error, ErrorKind, KINDS};
use seamwright::quantities::{Area, Force, Length, Moment, Pressure, Stress};

use crate::error::{field, raise, raise_about};

macro_rules! table {
    ($($type:ident $to:ident { $($unit:ident $name:literal),* })*) => {
        vec![$((stringify!($type), vec![$(($name, $type::$unit(1.0).$to())),*])),*]
    };
}

/// The units of each quantity, with the factor that makes the core's unit of one of them.
#[pyfunction]
pub fn units() -> Vec<(&'static str, Vec<(&'static str, f64)>)> {
    table! {
        Length to_mm { mm "mm", inch "inch", m "m", foot "foot" }
        Area to_mm2 { mm2 "mm2", inch2 "inch2", m2 "m2" }
        Force to_n { n "N", kn "kN", lbf "lbf", kgf "kgf", long_ton "long_ton" }
        Moment to_n_mm { n_mm "N_mm", n_m "N_m", kn_m "kN_m", lbf_inch "lbf_inch" }
        Stress to_mpa {
            mpa "MPa", psi "psi", ksi "ksi", kgf_cm2 "kgf_cm2", kgf_mm2 "kgf_mm2", long_ton_in2 "long_ton_in2"
        }
        Pressure to_mpa { mpa "MPa", bar "bar", psi "psi", kgf_cm2 "kgf_cm2" }
    }
}

/// One bounded input.
#[derive(IntoPyObject)]
pub struct BoundRow {
    key: &'static str,
    unit: &'static str,
    lo: f64,
    hi: f64,
    what: &'static str,
}

/// Every bounded input.
#[pyfunction]
pub fn bounds() -> Vec<BoundRow> {
    let row = |f: &Field| {
        let b = f.bound();
        BoundRow { key: b.key, unit: b.unit.symbol(), lo: b.lo, hi: b.hi, what: b.what }
    };
    FIELDS.iter().map(row).collect()
}

/// Passes a value that is inside the range of a field.
#[pyfunction]
pub fn check_bound(py: Python<'_>, key: &str, value: f64) -> PyResult<f64> {
    field(key).check(value).map_err(|e| raise(py, &e, None))
}

/// The kinds of errors: number, text, remedy.
#[pyfunction]
pub fn error_kinds() -> Vec<(u8, &'static str, &'static str)> {
    KINDS.iter().map(|k| (*k as u8, k.text(), k.remedy())).collect()
}

/// Raises the error of a kind about a field, with a text before it.
#[pyfunction]
pub fn refuse(py: Python<'_>, kind: u8, key: &str, about: &str) -> PyResult<()> {
    let kind = KINDS.iter().copied().find(|k| *k as u8 == kind).unwrap_or(ErrorKind::Unreadable);
    Err(raise_about(py, about, &Error::new(kind, field(key)), None))
}

/// A length in mm from a text such as `13/16 in`.
#[pyfunction]
pub fn parse_length(py: Python<'_>, text: &str) -> PyResult<f64> {
    Length::parse(text).map(Length::to_mm).map_err(|e| raise_about(py, &format!("{text:?}"), &e, None))
}

/// A stress in MPa from a text such as `11 ksi`.
#[pyfunction]
pub fn parse_stress(py: Python<'_>, text: &str) -> PyResult<f64> {
    Stress::parse(text).map(Stress::to_mpa).map_err(|e| raise_about(py, &format!("{text:?}"), &e, None))
}

/// Inches as a fraction with a power of two below it.
#[pyfunction]
pub fn write_inch_fraction(py: Python<'_>, inches: f64, denominator: u32) -> PyResult<String> {
    let mut out = String::new();
    seamwright::text::write_inch_fraction(&mut out, inches, denominator).map_err(|e| {
        raise_about(py, &e.to_string(), &Error::new(ErrorKind::Unreadable, Field::Text).value(inches), None)
    })?;
    Ok(out)
}

/// The caution that goes with every result.
#[pyfunction]
pub const fn caution() -> &'static str {
    seamwright::CAUTION
}

/// Version of the core.
#[pyfunction]
pub const fn version() -> &'static str {
    seamwright::VERSION
}
