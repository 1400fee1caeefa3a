//! # seamwright
//!
//! Riveted joints: the form, every dimension, every way they can fail, and the rules they are held to.
//!
//! One model carries everything: a repeating strip of plates held by rows of rivets ([`joint`]). Rule books are plain
//! data ([`rules`]). [`check`](mod@check) finds every failure mode of a joint and the rules it does not meet;
//! [`sizing`] finds the dimensions.
//!
//! The library allocates nothing and panics nowhere; it runs on a Cortex-M as it runs on a laptop, bit for bit.
//!
//! **Cautions.** A design aid. Boilers and pressure vessels can kill: local codes, the inspecting authority and
//! licensed practice govern, and an old shell needs inspection before any figure here means anything.
#![no_std]
#![forbid(unsafe_code)]
#![deny(missing_docs)]

pub mod batch;
pub mod bounds;
pub mod check;
pub mod comparison;
pub mod drawing;
pub mod error;
pub mod formula;
pub mod given;
pub mod group;
pub mod joint;
pub mod materials;
pub mod math;
pub mod modes;
pub mod proportion;
pub mod quantities;
pub mod rating;
pub mod reconcile;
pub mod rules;
pub mod search;
pub mod sensitivity;
pub mod sheet;
pub mod shop;
pub mod sizing;
pub mod step;
pub mod teach;
pub mod text;
pub mod vessel;
pub mod working;

pub use error::{Error, ErrorKind};

/// Version of the library, as printed on every sheet.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The caution that goes with every result.
pub const CAUTION: &str = "Design aid only. Local codes, the inspecting authority and licensed practice govern; \
old shells need inspection before any rating.";
