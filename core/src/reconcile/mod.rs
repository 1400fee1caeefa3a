//! Reconciling: which conventions reproduce the figures that someone states?
//!
//! Data books, teachers and old drawing offices differ in what they count: 2 or 1.875 for double shear, the hole or the
//! shank, a cap that was not applied, 22/7 for pi. Because a rule book is data, each such habit is an edit of the book
//! or of the reading of the joint. [`reconcile`] tries every single edit of the [`CATALOGUE`], and then every pair,
//! works the same routines with each, and says which of them give the stated figures within their printed digits.
//!
//! **Complete.** The catalogue is finite and small, so nothing is sampled: an answer "not reproduced" means that no edit
//! and no pair of edits in the catalogue does it.
//!
//! **Not deceived by chance.** A figure of three digits is hit by some pair of edits more often than not. Each
//! hypothesis tried is therefore charged with the chance that it hits the open figures (those that the book as it stands
//! does not give) if they were drawn anywhere within half to one and a half of what is stated. Hypotheses are tried in
//! the catalogue's order, the commonest habits first; what is found after the account passes [`CHANCE`] is listed as
//! "may be chance" and does not count as reproduced. More figures, or more digits, make the search deeper.
//!
//! The efficiency that people state is the book's, `J` ([`Quantity::BookEfficiency`](crate::step::Quantity)), because
//! habits differ in what is counted.

mod apply;
mod catalogue;
mod collect;
mod figure;
mod search;
mod write;

pub(crate) use apply::worked_on;
pub use apply::{edited, worked};
pub use catalogue::{CATALOGUE, Convention, Digits, Edit, Loaded, Midway, Pi, Share, WrongLine};
pub(crate) use collect::Own;
pub use figure::{Figure, MAX_FIGURES};
pub use search::{Answer, CHANCE, Explanation, MAX_ANSWERS, reconcile};

use crate::joint::Joint;
use crate::materials::Materials;
use crate::rules::Rules;
use crate::sizing::Brief;

/// What the figures were stated about.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Work {
    /// A joint that was checked.
    Check(Joint, Materials),
    /// A brief that was sized.
    Size(Brief),
}

/// A case: the work, and the rule book that is taken as the starting point.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Case {
    /// The work.
    pub work: Work,
    /// The book as it stands, before any edit.
    pub rules: Rules,
}
