//! Drawings as SVG and DXF.

use pyo3::exceptions::PyRuntimeError;
use pyo3::prelude::*;
use seamwright::drawing::{self as core_drawing, DrawError, TitleBlock, Units};
use seamwright::group as core_group;

use crate::book::Book;
use crate::error::{raise, wrong_choice};
use crate::group::{GroupIn, stated};
use crate::joint::Joint;
use crate::shop::Sheet;
use crate::words;

/// What stands in the title block, and how it is drawn.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct TitleIn {
    object: String,
    drawing_no: String,
    rule_book: String,
    date: String,
    prepared: String,
    checked: String,
    units: String,
    extent: String,
}

fn title<'a>(py: Python<'_>, t: &'a TitleIn) -> PyResult<TitleBlock<'a>> {
    let units = match t.units.as_str() {
        "metric" => Units::Millimetre,
        "inch" => Units::Inch,
        other => return Err(wrong_choice(py, "units", other)),
    };
    Ok(TitleBlock {
        object: &t.object,
        drawing_no: &t.drawing_no,
        rule_book: &t.rule_book,
        date: &t.date,
        prepared: &t.prepared,
        checked: &t.checked,
        units,
        extent: words::extent::read(&t.extent).ok_or_else(|| wrong_choice(py, "extent", &t.extent))?,
    })
}

fn drawn(py: Python<'_>, write: impl FnOnce(&mut String) -> Result<(), DrawError>) -> PyResult<String> {
    let mut out = String::new();
    match write(&mut out) {
        Ok(()) => Ok(out),
        Err(DrawError::Input(e)) => Err(raise(py, &e, None)),
        Err(DrawError::Sink) => Err(PyRuntimeError::new_err("the drawing could not be written")),
    }
}

/// The A4 sheet as SVG.
#[pyfunction]
pub fn svg(py: Python<'_>, joint: &Joint, block: TitleIn) -> PyResult<String> {
    let block = title(py, &block)?;
    drawn(py, |out| core_drawing::svg(out, &joint.0, &block))
}

/// Plan and section at full size as DXF.
#[pyfunction]
pub fn dxf(py: Python<'_>, joint: &Joint, block: TitleIn) -> PyResult<String> {
    let block = title(py, &block)?;
    drawn(py, |out| core_drawing::dxf(out, &joint.0, &block))
}

/// A whole seam at full size as DXF.
#[pyfunction]
pub fn dxf_seam(py: Python<'_>, sheet: &Sheet, block: TitleIn) -> PyResult<String> {
    let block = title(py, &block)?;
    drawn(py, |out| core_drawing::dxf_seam(out, sheet.inner(), &block))
}

/// The A4 sheet of a shop sheet as SVG, with the length of its seam, the number of pitches and the ends.
#[pyfunction]
pub fn svg_seam(py: Python<'_>, sheet: &Sheet, block: TitleIn) -> PyResult<String> {
    let block = title(py, &block)?;
    drawn(py, |out| core_drawing::svg_seam(out, sheet.inner(), &block))
}

/// The A4 sheet of a group of rivets under its load as SVG.
#[pyfunction]
pub fn svg_group(py: Python<'_>, given: GroupIn, book: &Book, block: TitleIn) -> PyResult<String> {
    let (block, (group, load, stress)) = (title(py, &block)?, stated(py, &given, book)?);
    // What the group or the book is at fault for is told with the book's words.
    core_group::check_group(&group, &load, &stress, book.rules()).map_err(|e| book.raise(py, &e))?;
    drawn(py, |out| core_drawing::svg_group(out, &group, &load, &stress, book.rules(), &block))
}
