//! Published checks as data: a harness that reads worked examples and holds the library to them.
//!
//! A vector says what a source starts from, by which rule book, and what it prints. `vectors/README.md` describes the
//! files. [`load`] reads them, [`rules_of`] makes a vector's rule book, [`run`] compares under any rule book, so that a
//! test can run all vectors again under a perturbed one.

mod calls;
mod compare;
mod evaluate;
mod schema;
mod stated;
pub mod units;

pub use compare::{compare, compare_exact, compare_printed, printed_interval, run};
pub use evaluate::{Checked, Evaluated, Value, cut_name, evaluate, parse_cut, strengths};
pub use schema::{Expect, FormulaCall, Source, Stated, StatedGroup, Vector, Vectors, load, load_file, rules_of};
pub use stated::{brief_of, form_of, group_of, joint_of, materials_of};

use std::path::PathBuf;

/// The folder of the vector files.
#[must_use]
pub fn vectors_dir() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("vectors")
}
