//! Which entries of the rule book a computation looked at: the library's own routines, run in a context that notes the
//! number of every entry they read.

use core::cell::RefCell;
use std::collections::BTreeSet;

use seamwright::error::EntryNo;
use seamwright::rules::Entry;
use seamwright::step::{Ctx, Name, Why};

/// Bare numbers, and a list of the entries read.
#[derive(Clone, Copy, Debug)]
pub struct Trace<'a>(pub &'a RefCell<BTreeSet<Entry>>);

impl Trace<'_> {
    fn note(self, why: Why) {
        let no = match why {
            Why::Table(no)
            | Why::Least(no)
            | Why::Greatest(no)
            | Why::Cap(no)
            | Why::Floor(no)
            | Why::Series(no)
            | Why::Choice(no) => no,
            _ => EntryNo::NONE,
        };
        if let Some(entry) = Entry::from_no(no) {
            self.0.borrow_mut().insert(entry);
        }
    }
}

impl Ctx for Trace<'_> {
    type N = f64;

    fn leaf(self, _: Name, why: Why, x: f64) -> f64 {
        self.note(why);
        x
    }

    fn close(self, _: Name, _: Why, e: f64) -> f64 {
        e
    }

    fn choice(self, _: Name, why: Why, taken: f64, _: f64) -> f64 {
        self.note(why);
        taken
    }
}
