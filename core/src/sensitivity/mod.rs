//! Sensitivity: what a millimetre or a megapascal more does to a joint, and what given tolerances can do at worst.
//!
//! **Slopes** ([`slopes`]) are exact derivatives: the same formula bodies run on a number that carries its derivative.
//! The strength of a joint is the least of many figures, and such a least has a kink where two of them are equal: there
//! the number carries two derivatives, one to each side, and the study names the mode that governs on each side.
//!
//! **Tolerances** ([`tolerance`]) are worst cases over a box of dimensions, exact up to rounding; the module
//! [`tolerance`](mod@tolerance) says why a finite set of candidates suffices.

mod inputs;
mod one_sided;
mod slopes;
pub mod tolerance;
mod write;

pub use inputs::{Input, MAX_INPUTS};
pub use one_sided::Sided;
pub use slopes::{Slope, Slopes, slopes};
pub use tolerance::{Target, Tolerances, Worst, WorstCase};
