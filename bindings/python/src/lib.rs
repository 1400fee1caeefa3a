//! The native module of the Python package `seamwright`: it converts, calls the core and converts back.
//!
//! It is private (`seamwright._native`). Numbers cross the border as floats in the core's units (mm, N, MPa), choices
//! as words, results as dicts; quantities, enums, errors and results are classes of the Python package. One file for
//! each area of the core: to add one, write its file, list its functions in the module below, and run the stub step of
//! the gate.

mod book;
mod check;
mod compare;
mod drawing;
mod error;
mod figures;
mod formulas;
mod group;
mod joint;
mod rating;
mod search;
mod sensitivity;
mod sheet;
mod shell;
mod shop;
mod size;
mod sweep;
mod tables;
mod teach;
mod toml_text;
mod vessel;
mod words;
mod working;

use pyo3::prelude::*;

/// The native part of seamwright.
#[pymodule]
mod _native {
    #[pymodule_export]
    use crate::book::{Book, built_in_books, entry_table};
    #[pymodule_export]
    use crate::check::{check, letters, modes, prescribed_gaps};
    #[pymodule_export]
    use crate::compare::{compare, working_of_comparison};
    #[pymodule_export]
    use crate::drawing::{dxf, dxf_seam, svg, svg_group, svg_seam};
    #[pymodule_export]
    use crate::figures::{conventions, edited, reconcile, symbols, worked};
    #[pymodule_export]
    use crate::formulas::{formula_signatures, formula_table, formula_value};
    #[pymodule_export]
    use crate::group::{check_group, size_group, working_of_group};
    #[pymodule_export]
    use crate::joint::{Form, Joint, Materials};
    #[pymodule_export]
    use crate::rating::{rate, working_of_rating};
    #[pymodule_export]
    use crate::search::{all_forms, front, search};
    #[pymodule_export]
    use crate::sensitivity::{slopes, worst_case};
    #[pymodule_export]
    use crate::sheet::{sheet, sheet_inputs};
    #[pymodule_export]
    use crate::shell::{boiler, boiler_parts, girth_check, joint_pressure, least_plate, seam_pressure};
    #[pymodule_export]
    use crate::shop::{Sheet, allowance, heads, length_rules, shop_sheet, strip_masses, working_of_shop};
    #[pymodule_export]
    use crate::size::size;
    #[pymodule_export]
    use crate::sweep::{sweep, sweep_joint, sweep_levels, sweep_modes};
    #[pymodule_export]
    use crate::tables::{
        bounds, caution, check_bound, error_kinds, parse_length, parse_stress, refuse, units, version,
        write_inch_fraction,
    };
    #[pymodule_export]
    use crate::teach::{Problem, problem, problem_sheet};
    #[pymodule_export]
    use crate::toml_text::{toml_inline, toml_read, toml_value};
    #[pymodule_export]
    use crate::vessel::{vessel, working_of_vessel};
    #[pymodule_export]
    use crate::words::words;
    #[pymodule_export]
    use crate::working::{working_of_check, working_of_size};
}
