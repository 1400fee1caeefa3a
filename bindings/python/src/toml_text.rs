//! TOML for rule books, read and written by the `toml` crate.

use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList};
use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use toml::{Table, Value};

use crate::error::raise_about;

fn to_python<'py>(py: Python<'py>, value: &Value) -> PyResult<Bound<'py, PyAny>> {
    Ok(match value {
        Value::String(s) => s.into_pyobject(py)?.into_any(),
        Value::Integer(i) => i.into_pyobject(py)?.into_any(),
        Value::Float(x) => x.into_pyobject(py)?.into_any(),
        Value::Boolean(b) => b.into_pyobject(py)?.to_owned().into_any(),
        Value::Datetime(d) => d.to_string().into_pyobject(py)?.into_any(),
        Value::Array(list) => {
            let out = PyList::empty(py);
            for x in list {
                out.append(to_python(py, x)?)?;
            }
            out.into_any()
        }
        Value::Table(table) => table_to_python(py, table)?.into_any(),
    })
}

fn table_to_python<'py>(py: Python<'py>, table: &Table) -> PyResult<Bound<'py, PyDict>> {
    let out = PyDict::new(py);
    for (key, x) in table {
        out.set_item(key, to_python(py, x)?)?;
    }
    Ok(out)
}

/// A TOML text as a dict.
#[pyfunction]
pub fn toml_read<'py>(py: Python<'py>, text: &str) -> PyResult<Bound<'py, PyDict>> {
    match text.parse::<Table>() {
        Ok(table) => table_to_python(py, &table),
        Err(e) => Err(raise_about(py, &format!("TOML: {e}"), &Error::new(ErrorKind::Unreadable, Field::Text), None)),
    }
}

/// A text, a number, or texts; tried in this order.
#[derive(FromPyObject)]
pub enum Leaf {
    /// A text.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// A number.
    Number(f64),
    /// Texts.
    Texts(Vec<String>),
}

fn value(x: Leaf) -> Value {
    match x {
        Leaf::Text(s) => Value::String(s),
        Leaf::Whole(n) => Value::Integer(n),
        Leaf::Number(n) => Value::Float(n),
        Leaf::Texts(list) => Value::Array(list.into_iter().map(Value::String).collect()),
    }
}

/// A value as TOML, on one line.
#[pyfunction]
pub fn toml_value(x: Leaf) -> String {
    value(x).to_string()
}

/// Pairs as an inline table of TOML.
#[pyfunction]
pub fn toml_inline(pairs: Vec<(String, Leaf)>) -> String {
    Value::Table(pairs.into_iter().map(|(key, x)| (key, value(x))).collect()).to_string()
}
