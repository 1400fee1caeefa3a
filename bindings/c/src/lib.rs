//! The C border of seamwright. What C sees is described in `include/seamwright.h`, which is made from these files.
//!
//! For C programs only: a Rust program uses the crate `seamwright` itself. The functions take raw pointers on the word
//! of the header; `border.rs` holds every unsafe block and the one policy for NULL, sizes and texts.
#![cfg_attr(not(feature = "std"), no_std)]
#![allow(non_camel_case_types, reason = "the names of the C header")]
#![allow(clippy::too_many_arguments, reason = "C has no other way to hand over an array and its sizes")]
#![deny(unsafe_op_in_unsafe_fn)]

mod assumption;
mod boiler;
mod books;
mod border;
mod candidate;
mod check;
mod comparison;
mod drawing;
mod existing;
mod fields;
mod form;
mod girth;
mod group;
mod joint;
mod letters;
mod masses;
mod modes;
mod numbers;
mod pack;
mod pages;
mod quantities;
mod reconcile;
mod rules;
mod search;
mod sensitivity;
mod sheet;
mod shell;
mod shop;
mod size;
mod status;
mod sweep;
mod teach;
mod version;
mod vessel;
mod working;

pub use assumption::*;
pub use boiler::*;
pub use books::*;
pub use candidate::*;
pub use check::*;
pub use comparison::*;
pub use drawing::*;
pub use existing::*;
pub use fields::*;
pub use form::*;
pub use girth::*;
pub use group::*;
pub use joint::*;
pub use letters::*;
pub use masses::*;
pub use modes::*;
pub use numbers::*;
pub use pages::*;
pub use quantities::*;
pub use reconcile::*;
pub use rules::*;
pub use search::*;
pub use sensitivity::*;
pub use sheet::*;
pub use shell::*;
pub use shop::*;
pub use size::*;
pub use status::*;
pub use sweep::*;
pub use teach::*;
pub use version::*;
pub use vessel::*;
pub use working::*;

#[cfg(all(feature = "panic-handler", not(feature = "std"), not(test)))]
#[panic_handler]
fn stop(_: &core::panic::PanicInfo<'_>) -> ! {
    loop {
        core::hint::spin_loop();
    }
}

/// Panics where `n` is not below 3. No part of the library: see the feature `bite`.
#[cfg(feature = "bite")]
#[unsafe(no_mangle)]
#[expect(clippy::indexing_slicing, reason = "deliberate")]
pub extern "C" fn seamwright_bite(n: usize) -> u32 {
    [1, 2, 3][n]
}
