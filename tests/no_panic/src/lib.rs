//! The link proof of the library: no panic path survives.
//!
//! The panic handler calls a function that exists nowhere. This crate calls every public function of the library with
//! inputs that the compiler cannot know; after link-time optimization the linker finds that function missing exactly
//! when some call can still panic. `tests/public_items.py` proves that no public function is left out, so every call
//! is written under its qualified name.
//!
//! Derived `Debug` is not part of the proof: it prints floats by `core::fmt`, which keeps panic paths.
#![no_std]
#![deny(unsafe_op_in_unsafe_fn)]

mod batch;
mod check;
mod comparison;
mod context;
mod drawing;
mod formula;
mod group;
mod input;
mod joint;
mod modes;
mod proportion;
mod quantities;
mod rating;
mod reconcile;
mod rules;
mod search;
mod sensitivity;
mod sheet;
mod shop;
mod sizing;
mod tables;
mod teach;
mod text;
mod vessel;
mod working;

use input::Input;

#[cfg(feature = "handler")]
#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    unsafe extern "C" {
        fn seamwright_link_proof_a_panic_path_survived() -> !;
    }
    // SAFETY: never linked; that is the proof.
    unsafe { seamwright_link_proof_a_panic_path_survived() }
}

macro_rules! exports {
    ($($name:ident $body:path;)*) => {$(
        /// Calls its part of the library.
        ///
        /// # Safety
        /// `words` points to as many words as are read.
        #[unsafe(no_mangle)]
        pub unsafe extern "C" fn $name(words: *const u64) {
            // SAFETY: as the caller promises.
            $body(&mut unsafe { Input::new(words) });
        }
    )*};
}

exports! {
    seamwright_proof_quantities quantities::quantities;
    seamwright_proof_math quantities::math;
    seamwright_proof_write text::write;
    seamwright_proof_parse text::parse;
    seamwright_proof_sinks text::sinks;
    seamwright_proof_errors tables::errors;
    seamwright_proof_tables tables::tables;
    seamwright_proof_materials tables::materials;
    seamwright_proof_entries rules::entries;
    seamwright_proof_rules rules::rules;
    seamwright_proof_books rules::books;
    seamwright_proof_forms joint::forms;
    seamwright_proof_joint joint::joint;
    seamwright_proof_formula_rivet formula::rivet;
    seamwright_proof_formula_plate formula::plate;
    seamwright_proof_formula_shop formula::shop;
    seamwright_proof_formula_vessel formula::vessel;
    seamwright_proof_formula_group formula::group;
    seamwright_proof_proportion proportion::proportion;
    seamwright_proof_given modes::given;
    seamwright_proof_modes modes::modes;
    seamwright_proof_letters modes::letters;
    seamwright_proof_check check::check;
    seamwright_proof_check_with check::check_with;
    seamwright_proof_check_into check::check_into;
    seamwright_proof_findings check::findings;
    seamwright_proof_batch_run batch::run;
    seamwright_proof_batch_rows batch::rows;
    seamwright_proof_brief sizing::brief;
    seamwright_proof_size sizing::size;
    seamwright_proof_size_with sizing::size_with;
    seamwright_proof_size_into sizing::size_into;
    seamwright_proof_reconcile_figures reconcile::figures;
    seamwright_proof_reconcile reconcile::answer;
    seamwright_proof_slopes sensitivity::slopes;
    seamwright_proof_worst_case sensitivity::worst_case;
    seamwright_proof_rating_shells rating::shells;
    seamwright_proof_rating_joints rating::joints;
    seamwright_proof_rating_rate rating::rate;
    seamwright_proof_rating_rate_with rating::rate_with;
    seamwright_proof_rating_boiler rating::boiler;
    seamwright_proof_vessel_design vessel::design;
    seamwright_proof_vessel_design_with vessel::design_with;
    seamwright_proof_vessel_girth vessel::girth;
    seamwright_proof_group group::plain;
    seamwright_proof_group_with group::with;
    seamwright_proof_group_written group::written;
    seamwright_proof_search search::search;
    seamwright_proof_search_with search::search_with;
    seamwright_proof_search_front search::front;
    seamwright_proof_search_stopped search::stopped;
    seamwright_proof_shop_strip search::strip;
    seamwright_proof_shop_orders shop::orders;
    seamwright_proof_shop_sheet shop::sheet;
    seamwright_proof_shop_sheet_with shop::sheet_with;
    seamwright_proof_drawing_sheet drawing::sheet;
    seamwright_proof_drawing_svg drawing::svg;
    seamwright_proof_drawing_dxf drawing::dxf;
    seamwright_proof_drawing_group drawing::group;
    seamwright_proof_sheet_size sheet::size;
    seamwright_proof_sheet_check sheet::check;
    seamwright_proof_sheet_rate sheet::rate;
    seamwright_proof_working_check working::check;
    seamwright_proof_working_shop working::shop;
    seamwright_proof_working_size working::size_joint;
    seamwright_proof_working_rate working::rate;
    seamwright_proof_working_vessel working::vessel;
    seamwright_proof_working_record working::record;
    seamwright_proof_working_values working::values;
    seamwright_proof_teach_problems teach::problems;
    seamwright_proof_teach_marks teach::marks;
    seamwright_proof_working_document working::document;
    seamwright_proof_comparison comparison::comparison;
}

/// A deliberate panic: an index that the compiler cannot know.
///
/// # Safety
/// `words` points to two words.
#[cfg(feature = "bite")]
#[unsafe(no_mangle)]
pub unsafe extern "C" fn seamwright_proof_bite(words: *const u64) {
    // SAFETY: as the caller promises.
    let mut i = unsafe { Input::new(words) };
    let books = seamwright::rules::BOOKS;
    input::keep(books[i.index()].rules);
}
