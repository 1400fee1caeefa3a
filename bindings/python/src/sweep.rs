//! Sweeps over columns, piece by piece.
//!
//! Columns cross the border as the bytes of their float64 values, results as bytes too: the stable interface of Python
//! 3.10 has no buffers, and a copy of a piece that fits the cache is a small part of the work.

use pyo3::prelude::*;
use pyo3::pybacked::PyBackedBytes;
use pyo3::types::PyBytes;
use seamwright::batch::{self, InputColumn, Inputs, ModeTable, Outputs};
use seamwright::error::Error;
use seamwright_lanes::Lanes;

use crate::book::Book;
use crate::error::raise;
use crate::joint::{Form, Joint, Materials};

/// One column: the same in all rows, the bytes of one value for each row, or those of an axis with the number of rows
/// for which each value stands.
#[derive(FromPyObject)]
pub enum ColumnIn {
    Constant(f64),
    Values(PyBackedBytes),
    Axis(PyBackedBytes, usize),
}

/// The columns by name, lengths in mm, stresses in MPa.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct ColumnsIn {
    pitch: ColumnIn,
    plate: ColumnIn,
    hole: ColumnIn,
    tension: ColumnIn,
    rivet_shear: ColumnIn,
    rivet: Option<ColumnIn>,
    other: Option<ColumnIn>,
    narrow: Option<ColumnIn>,
    other_tension: Option<ColumnIn>,
    bearing: Option<ColumnIn>,
    other_bearing: Option<ColumnIn>,
    shear_out: Option<ColumnIn>,
    margin: Option<ColumnIn>,
    back_pitch: Option<ColumnIn>,
}

/// A column that owns its values.
enum Owned {
    Constant(f64),
    Values(Vec<f64>),
    Axis(Vec<f64>, usize),
}

impl Owned {
    fn new(column: &ColumnIn) -> Self {
        let values = |bytes: &[u8]| bytes.as_chunks().0.iter().map(|b| f64::from_ne_bytes(*b)).collect();
        match column {
            ColumnIn::Constant(x) => Owned::Constant(*x),
            ColumnIn::Values(bytes) => Owned::Values(values(bytes)),
            ColumnIn::Axis(bytes, each) => Owned::Axis(values(bytes), *each),
        }
    }

    fn column(&self) -> InputColumn<'_> {
        match self {
            Owned::Constant(x) => InputColumn::Constant(*x),
            Owned::Values(values) => InputColumn::Values(values),
            Owned::Axis(values, each) => InputColumn::Axis { values, each: *each },
        }
    }
}

/// All columns, owned.
struct OwnedColumns {
    needed: [Owned; 5],
    others: [Option<Owned>; 9],
}

impl OwnedColumns {
    fn new(given: &ColumnsIn) -> Self {
        let ColumnsIn { pitch, plate, hole, tension, rivet_shear, .. } = given;
        let others = [
            &given.rivet,
            &given.other,
            &given.narrow,
            &given.other_tension,
            &given.bearing,
            &given.other_bearing,
            &given.shear_out,
            &given.margin,
            &given.back_pitch,
        ];
        OwnedColumns {
            needed: [pitch, plate, hole, tension, rivet_shear].map(Owned::new),
            others: others.map(|column| column.as_ref().map(Owned::new)),
        }
    }

    fn inputs(&self) -> Inputs<'_> {
        let [pitch, plate, hole, tension, shear] = self.needed.each_ref().map(Owned::column);
        let others = self.others.each_ref().map(|column| column.as_ref().map(Owned::column));
        let [rivet, other, narrow, other_tension, bearing, other_bearing, plate_shear, margin, back_pitch] = others;
        Inputs {
            rivet,
            other,
            narrow,
            other_tension,
            bearing,
            other_bearing,
            plate_shear,
            margin,
            back_pitch,
            ..Inputs::new(pitch, plate, hole, tension, shear)
        }
    }
}

/// Results of a piece, as bytes: float64, uint16 and uint8; the strengths of each mode asked for, one after the other.
#[derive(IntoPyObject)]
pub struct PieceOut {
    efficiency: Py<PyBytes>,
    book_efficiency: Py<PyBytes>,
    credited: Py<PyBytes>,
    mode: Py<PyBytes>,
    status: Py<PyBytes>,
    strengths: Py<PyBytes>,
}

/// Results of a piece.
struct Piece {
    figures: [Vec<f64>; 3],
    mode: Vec<u16>,
    status: Vec<u8>,
    strengths: Vec<f64>,
}

impl Piece {
    fn new(rows: usize, modes: usize) -> Self {
        let zeros = || vec![0.0; rows];
        Piece {
            figures: [zeros(), zeros(), zeros()],
            mode: vec![0; rows],
            status: vec![0; rows],
            strengths: vec![0.0; rows.saturating_mul(modes)],
        }
    }

    fn run(&mut self, sweep: &batch::Sweep<'_>, from: usize, modes: &[u16]) -> Result<(), Error> {
        let [efficiency, book, credited] = &mut self.figures;
        let outputs = Outputs {
            mode: Some(&mut self.mode),
            book_efficiency: Some(book),
            credited: Some(credited),
            status: Some(&mut self.status),
            ..Outputs::new(efficiency)
        };
        Lanes::best().run_sweep(sweep, from, outputs)?;
        sweep.mode_strengths(modes, from, &mut self.strengths)
    }
}

fn bytes<const SIZE: usize, T: Copy>(py: Python<'_>, values: &[T], put: fn(T) -> [u8; SIZE]) -> PyResult<Py<PyBytes>> {
    let made = PyBytes::new_with(py, size_of_val(values), |room| {
        for (slot, value) in room.as_chunks_mut().0.iter_mut().zip(values) {
            *slot = put(*value);
        }
        Ok(())
    })?;
    Ok(made.unbind())
}

/// Works out so many rows of a sweep, from one on. Other Python threads run meanwhile.
#[pyfunction]
#[expect(clippy::too_many_arguments, reason = "called from one place")]
pub fn sweep(
    py: Python<'_>,
    form: &Form,
    book: &Book,
    columns: ColumnsIn,
    rows: usize,
    first: usize,
    count: usize,
    modes: Vec<u16>,
) -> PyResult<PieceOut> {
    let (mut piece, rules) = (Piece::new(count, modes.len()), book.rules());
    let ran = py.detach(|| {
        let owned = OwnedColumns::new(&columns);
        let sweep = batch::Sweep::new(&form.0, rules, owned.inputs(), rows)?;
        piece.run(&sweep, first, &modes)
    });
    ran.map_err(|e| book.raise(py, &e))?;
    let [efficiency, book_efficiency, credited] = &piece.figures;
    Ok(PieceOut {
        efficiency: bytes(py, efficiency, f64::to_ne_bytes)?,
        book_efficiency: bytes(py, book_efficiency, f64::to_ne_bytes)?,
        credited: bytes(py, credited, f64::to_ne_bytes)?,
        mode: bytes(py, &piece.mode, u16::to_ne_bytes)?,
        status: bytes(py, &piece.status, u8::to_ne_bytes)?,
        strengths: bytes(py, &piece.strengths, f64::to_ne_bytes)?,
    })
}

/// The joint and the stresses of a row, or the error that its status stands for.
#[pyfunction]
pub fn sweep_joint(
    py: Python<'_>,
    form: &Form,
    book: &Book,
    columns: ColumnsIn,
    rows: usize,
    row: usize,
) -> PyResult<(Joint, Materials)> {
    let owned = OwnedColumns::new(&columns);
    let found = batch::Sweep::new(&form.0, book.rules(), owned.inputs(), rows).and_then(|sweep| sweep.joint(row));
    let (joint, materials) = found.map_err(|e| book.raise(py, &e))?;
    materials.validate().map_err(|e| raise(py, &e, None))?;
    Ok((Joint(joint), Materials(materials)))
}

/// The modes of a form by number: plate, other plate or wide strap, narrow strap (rows that tear), and the name.
#[pyfunction]
pub fn sweep_modes(form: &Form, straps: bool) -> Vec<((u8, u8, u8), String)> {
    let table = ModeTable::new(&form.0, straps);
    let mode = |number| {
        let mode = table.mode(number)?;
        let cut = mode.cut;
        Some(((cut.plate, cut.other, cut.narrow), mode.name(&form.0).to_string()))
    };
    (0..table.len()).filter_map(mode).collect()
}

/// The levels of the processor that sweeps know here, the one in use first.
#[pyfunction]
pub fn sweep_levels() -> Vec<&'static str> {
    Lanes::available().map(Lanes::name).collect()
}
