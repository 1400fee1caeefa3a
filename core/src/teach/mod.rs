//! Teaching: problems for a class in machine design, their keys, and the marking of answers.
//!
//! A problem is drawn from a number: the same number, family and rule book give the same problem on every machine. Its
//! dimensions are stock ones and its stresses round; its key meets every rule of the book; and the effect that it is to
//! teach really decides it, by at least [`MARGIN_OF_EFFECT`].
//!
//! Marking forgives what teachers forgive: a figure is right within its own digits; right by carry-over where it
//! follows from an earlier slip, or from the student's own single rivets, hole or pitch; and an earlier slip that is known
//! by [`reconcile`](crate::reconcile) is named.
//!
//! The scenarios are made up; the joints are for paper, and the usual caution stands on every sheet.

mod family;
mod generate;
mod key;
mod mark;
mod write;

pub use family::{EFFECTS, Effect, Family, Setting, Task};
pub use generate::{MARGIN_OF_EFFECT, Problem, problem};
pub use key::{Key, MAX_ASKED};
pub use mark::{Mark, Marks, mark};
pub use write::{Audience, write_marks, write_problems, write_solution};
