//! The working of a check or a sizing, in every dialect.

use core::fmt;

use pyo3::exceptions::PyRuntimeError;
use pyo3::prelude::*;
use seamwright::working::{DIALECTS, Decimals, Style, WorkingError, write_check, write_size};

use crate::book::Book;
use crate::error::wrong_choice;
use crate::joint::{Form, Joint, Materials};
use crate::size::{BriefIn, brief};
use crate::words;

/// Decimals of lengths, stresses, forces and pure numbers; `None` leaves the usual number.
pub type DecimalsIn = (Option<u8>, Option<u8>, Option<u8>, Option<u8>);

/// The reader's wishes: dialect, units, decimal mark, decimals more than usual, forces, decimals.
pub type Wishes = (String, String, String, i8, String, DecimalsIn);

/// The reader's style.
pub fn style(py: Python<'_>, (dialect, units, mark, extra_digits, forces, decimals): &Wishes) -> PyResult<Style> {
    let wanted = DIALECTS.iter().copied().find(|d| words::spaced(&format!("{d:?}")) == *dialect);
    let (length, stress, force, ratio) = *decimals;
    Ok(Style {
        units: words::units::read(units).ok_or_else(|| wrong_choice(py, "units", units))?,
        mark: words::mark::read(mark).ok_or_else(|| wrong_choice(py, "mark", mark))?,
        dialect: wanted.ok_or_else(|| wrong_choice(py, "dialect", dialect))?,
        forces: words::forces::read(forces).ok_or_else(|| wrong_choice(py, "forces", forces))?,
        decimals: Decimals { length, stress, force, ratio },
        extra_digits: *extra_digits,
    })
}

/// A whole text, or the exception.
pub fn written<T>(
    py: Python<'_>,
    book: &Book,
    write: impl FnOnce(&mut dyn fmt::Write) -> Result<T, WorkingError>,
) -> PyResult<String> {
    let mut out = String::new();
    match write(&mut out) {
        Ok(_) => Ok(out),
        Err(WorkingError::Routine(e)) => Err(book.raise(py, &e)),
        // A string takes every text, and the pad's size is proved by the core's tests.
        Err(other) => Err(PyRuntimeError::new_err(other.to_string())),
    }
}

/// The working of a check.
#[pyfunction]
pub fn working_of_check(
    py: Python<'_>,
    joint: &Joint,
    materials: &Materials,
    book: &Book,
    wishes: Wishes,
) -> PyResult<String> {
    let style = style(py, &wishes)?;
    book.view(|view| written(py, book, |out| write_check(out, style, &joint.0, &materials.0, view)))
}

/// The working of a sizing.
#[pyfunction]
pub fn working_of_size(
    py: Python<'_>,
    form: &Form,
    materials: &Materials,
    given: BriefIn,
    book: &Book,
    wishes: Wishes,
) -> PyResult<String> {
    let (style, brief) = (style(py, &wishes)?, brief(py, form, materials, &given)?);
    book.view(|view| written(py, book, |out| write_size(out, style, &brief, view)))
}
