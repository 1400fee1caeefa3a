//! Slopes of a joint to its inputs, and worst cases over tolerances.

use pyo3::prelude::*;
use seamwright::modes::Cut;
use seamwright::quantities::Length;
use seamwright::rules::{Entry, info};
use seamwright::sensitivity::tolerance::worst_case as core_worst_case;
use seamwright::sensitivity::{Input, Sided, Slope, Tolerances, slopes as core_slopes};
use seamwright::step::Name;

use crate::book::Book;
use crate::error::{entry_key, wrong_choice};
use crate::joint::{Joint, Materials};
use crate::words;

/// A cut: rows that tear in plate, second plate or strap, narrow strap.
type CutOut = (u8, u8, u8);

/// One input: its symbol or entry, words, value, unit; slopes to the left and to the right.
#[derive(IntoPyObject)]
pub struct SlopeOut {
    name: String,
    what: String,
    rule: bool,
    value: f64,
    unit: &'static str,
    efficiency: (f64, f64),
    book_efficiency: (f64, f64),
    credited: (f64, f64),
    strength: (f64, f64),
    governs: (CutOut, CutOut),
}

/// The slopes of a joint; its strength in N for a millimetre of seam.
#[derive(IntoPyObject)]
pub struct SlopesOut {
    efficiencies: (f64, f64, f64),
    strength: f64,
    lines: Vec<SlopeOut>,
    table: String,
}

const fn sides(s: &Sided) -> (f64, f64) {
    (s.left, s.right)
}

const fn cut(c: &Cut) -> CutOut {
    (c.plate, c.other, c.narrow)
}

fn slope_out(line: &Slope) -> SlopeOut {
    let (name, what, rule, unit) = match line.input {
        Input::Given(Name(quantity, row)) => {
            let (dot, at) = if row > 0 { (format!(".{row}"), format!(", row {row}")) } else { Default::default() };
            let (name, what) = (quantity.symbol().to_owned() + &dot, quantity.what().to_owned() + &at);
            (name, what, false, quantity.unit().symbol())
        }
        Input::Rule(entry) => {
            let what = Entry::from_no(entry).map_or("", |entry| info(entry).what);
            (entry_key(entry), what.to_owned(), true, "")
        }
    };
    let [left, right] = &line.governs;
    SlopeOut {
        name,
        what,
        rule,
        value: line.value,
        unit,
        efficiency: sides(&line.efficiency),
        book_efficiency: sides(&line.book_efficiency),
        credited: sides(&line.credited),
        strength: sides(&line.strength),
        governs: (cut(left), cut(right)),
    }
}

/// The exact slopes of a joint.
#[pyfunction]
pub fn slopes(py: Python<'_>, joint: &Joint, materials: &Materials, book: &Book) -> PyResult<SlopesOut> {
    let found = core_slopes(&joint.0, &materials.0, book.rules()).map_err(|e| book.raise(py, &e))?;
    let [all, by_book, credited] = found.efficiencies;
    let mut table = String::new();
    // A string takes every text.
    let _ = found.write_table(&mut table);
    Ok(SlopesOut {
        efficiencies: (all, by_book, credited),
        strength: found.strength,
        lines: found.lines.iter().map(slope_out).collect(),
        table,
    })
}

/// A worst case; deviations in mm, in the order plate, other plate or wide strap, narrow strap, hole, pitch.
#[derive(IntoPyObject)]
pub struct WorstOut {
    stated: f64,
    value: f64,
    ratio: f64,
    deviation: [f64; 5],
    alone: [f64; 5],
    cut: CutOut,
    exact: bool,
    hole_inside: bool,
}

/// The worst case over tolerances (plate, straps, hole, pitch; mm, 0 for none).
#[pyfunction]
pub fn worst_case(
    py: Python<'_>,
    joint: &Joint,
    materials: &Materials,
    book: &Book,
    spans: [f64; 4],
    target: &str,
) -> PyResult<WorstOut> {
    let target = words::target::read(target).ok_or_else(|| wrong_choice(py, "target", target))?;
    let [plate, straps, hole, pitch] = spans.map(Length::mm);
    let tolerances = Tolerances::none().plate(plate).straps(straps).hole(hole).pitch(pitch);
    let found = py
        .detach(|| core_worst_case(&joint.0, &materials.0, book.rules(), &tolerances, target))
        .map_err(|e| book.raise(py, &e))?;
    Ok(WorstOut {
        stated: found.stated,
        value: found.worst.value,
        ratio: found.ratio(),
        deviation: found.worst.deviation,
        alone: found.alone,
        cut: cut(&found.worst.cut),
        exact: found.exact,
        hole_inside: found.hole_inside(&tolerances),
    })
}
