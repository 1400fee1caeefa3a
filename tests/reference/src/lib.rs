//! An independent, slow reference model of riveted joints, for tests only.
//!
//! Everything is in N, mm, MPa and `f64`. The code is plain on purpose: loops over every combination, one
//! allocation after another, nothing clever. It shares no line with the library it is compared with.
//!
//! - [`model`]: what a joint is, what its materials bear, and by which conventions it is counted;
//! - [`mod@cuts`]: every way to cut the joint in two, by plain enumeration;
//! - [`flow`]: the least of those cuts once more, as a maximum flow;
//! - [`textbook`]: the solid strip and the three classic figures;
//! - [`book`]: three rule books as plain data;
//! - [`sizing`]: hole, pitch, back pitch, margin and straps by a book;
//! - [`group`]: rivets under an eccentric load, as springs under a rigid plate;
//! - [`search`]: the best of a grid by plain enumeration;
//! - [`percent`]: the percentages of the Indian Boiler Regulations.

#![forbid(unsafe_code)]
#![warn(missing_docs)]

pub mod book;
pub mod cuts;
pub mod flow;
pub mod group;
pub mod model;
pub mod percent;
pub mod search;
pub mod sizing;
pub mod textbook;

pub use book::{BackRule, Book, GENERAL_METRIC, INDIAN_BOILER, StrapRule, US_BOILER_1918};
pub use cuts::{Cut, cuts, weakest};
pub use flow::min_cut;
pub use model::{Convention, Diameter, Form, Joint, Row, Stresses};
pub use percent::{Percentages, ibr_percentages};
pub use sizing::{
    Arrangement, Cap, Kind, admissible_pitch, back_pitches, balanced_pitches, cap, floor, head_room, margin, raw_hole,
    round_down, round_up, row_distance, size_hole, straps,
};
pub use textbook::{bearing_all, efficiency, shear_all, solid, tearing_outer};

#[cfg(test)]
mod tests;
