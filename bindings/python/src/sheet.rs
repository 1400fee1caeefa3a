//! The sheet that someone signs.

use pyo3::prelude::*;
use seamwright::sheet::{Divided, Known, Particulars, Task, input_hash, write_inputs, write_sheet};
use seamwright::working::WorkingError;

use crate::book::Book;
use crate::error::{field, wrong_choice};
use crate::joint::{Form, Joint, Materials};
use crate::rating::{ExistingIn, existing};
use crate::size::{BriefIn, brief};
use crate::words;
use crate::working::{Wishes, style, written};

/// What the sheet is of: form and what was found of an existing joint; form, stresses and brief; or joint and stresses.
#[derive(FromPyObject)]
#[expect(clippy::large_enum_variant, reason = "one at a time, as it came from Python")]
pub enum TaskIn {
    /// A brief to be sized.
    Size(Py<Form>, Py<Materials>, BriefIn),
    /// A joint to be checked.
    Check(Py<Joint>, Py<Materials>),
    /// An existing joint to be rated.
    Rate(Py<Form>, ExistingIn),
}

/// What stands on the sheet besides the figures.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct ParticularsIn {
    title: String,
    object: String,
    drawing_no: String,
    jurisdiction: String,
    prepared: String,
    checked: String,
    date: String,
    invented: bool,
    footing: Option<String>,
    divided: Option<(Py<Materials>, f64)>,
    known: Vec<(String, u8, String, String)>,
    lines_per_page: Option<u16>,
}

/// The task of the core, for as long as it is looked at.
fn with_task<T>(py: Python<'_>, task: &TaskIn, see: impl FnOnce(&Task<'_>) -> PyResult<T>) -> PyResult<T> {
    match task {
        TaskIn::Size(form, materials, given) => see(&Task::Size(&brief(py, form.get(), materials.get(), given)?)),
        TaskIn::Check(joint, materials) => see(&Task::Check(&joint.get().0, &materials.get().0)),
        TaskIn::Rate(form, given) => see(&Task::Rate(&existing(py, form.get(), given)?)),
    }
}

/// The sheet as a document.
#[pyfunction]
pub fn sheet(py: Python<'_>, task: TaskIn, said: ParticularsIn, book: &Book, wishes: Wishes) -> PyResult<String> {
    let style = style(py, &wishes)?;
    let known = |(key, row, basis, source): &'_ (String, u8, String, String)| {
        Ok((
            field(key),
            *row,
            words::basis::read(basis).ok_or_else(|| wrong_choice(py, "basis", basis))?,
            source.clone(),
        ))
    };
    let listed = said.known.iter().map(known).collect::<PyResult<Vec<_>>>()?;
    let known: Vec<Known<'_>> = listed
        .iter()
        .map(|(field, row, basis, source)| Known { field: *field, row: *row, basis: *basis, source })
        .collect();
    let footing = said.footing.as_deref();
    let footing = footing.map(|word| words::footing::read(word).ok_or_else(|| wrong_choice(py, "footing", word)));
    let particulars = Particulars {
        title: &said.title,
        object: &said.object,
        drawing_no: &said.drawing_no,
        jurisdiction: &said.jurisdiction,
        prepared: &said.prepared,
        checked: &said.checked,
        date: &said.date,
        invented: said.invented,
        footing: footing.transpose()?,
        divided: said.divided.as_ref().map(|(m, factor)| Divided { ultimate: m.get().0, factor: *factor }),
        known: &known,
        lines_per_page: said.lines_per_page,
    };
    with_task(py, &task, |task| {
        book.view(|view| written(py, book, |out| write_sheet(out, style, task, &particulars, view)))
    })
}

/// The inputs as the hash reads them, and the hash.
#[pyfunction]
pub fn sheet_inputs(py: Python<'_>, task: TaskIn, book: &Book) -> PyResult<(String, u64)> {
    with_task(py, &task, |task| {
        let hash = book.view(|view| input_hash(task, view)).map_err(|e| book.raise(py, &e))?;
        let inputs =
            book.view(|view| written(py, book, |out| write_inputs(out, task, view).map_err(WorkingError::from)))?;
        Ok((inputs, hash))
    })
}
