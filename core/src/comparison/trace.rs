//! Steps of a sizing, read piece by piece by running it again.

use core::cell::Cell;

use super::Column;
use crate::error::EntryNo;
use crate::rules::Entry;
use crate::sizing::size_with;
use crate::step::{Ctx, Name, Quantity, Section, Why};

/// Steps that are read in one run.
const WINDOW: usize = 32;

/// One step: its name, why it has its value, and the value.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Stage {
    /// The name.
    pub name: Name,
    /// Where it comes from.
    pub why: Why,
    /// The value, in the unit of the quantity.
    pub value: f64,
}

impl Stage {
    /// The entry of the rule book behind it.
    #[must_use]
    pub const fn entry(&self) -> EntryNo {
        match self.why {
            Why::Table(e)
            | Why::Least(e)
            | Why::Greatest(e)
            | Why::Cap(e)
            | Why::Floor(e)
            | Why::Series(e)
            | Why::Choice(e) => e,
            _ => EntryNo::NONE,
        }
    }
}

/// The first step after the view of the book.
const BOOKS_MODE: Name = Name(Quantity::ModeStrength, 2);

/// What is wanted of a run, and what it gave.
struct Window {
    section: Cell<Option<Section>>,
    wanted: Section,
    skip: Cell<usize>,
    steps: [Cell<Option<Stage>>; WINDOW],
    count: Cell<usize>,
}

impl Window {
    fn take(&self, name: Name, why: Why, value: f64) {
        // Where a book sees the joint as it is there is no view of its own; the mode that it counts belongs to the modes.
        if name == BOOKS_MODE {
            self.section.set(Some(Section::Modes));
        }
        if self.section.get() != Some(self.wanted) {
            return;
        }
        match self.skip.get().checked_sub(1) {
            Some(left) => self.skip.set(left),
            None => {
                if let Some(slot) = self.steps.get(self.count.get()) {
                    slot.set(Some(Stage { name, why, value }));
                    self.count.set(self.count.get().saturating_add(1));
                }
            }
        }
    }
}

/// A context of bare numbers that notes the steps of one section.
#[derive(Clone, Copy)]
struct Trace<'w> {
    window: &'w Window,
    seen: bool,
}

impl Ctx for Trace<'_> {
    type N = f64;

    fn leaf(self, name: Name, why: Why, x: f64) -> f64 {
        if self.seen {
            self.window.take(name, why, x);
        }
        x
    }

    fn close(self, name: Name, why: Why, e: f64) -> f64 {
        self.leaf(name, why, e)
    }

    fn choice(self, name: Name, why: Why, taken: f64, _: f64) -> f64 {
        self.leaf(name, why, taken)
    }

    fn section(self, section: Section) {
        if self.seen {
            self.window.section.set(Some(section));
        }
    }

    fn quiet(self) -> Self {
        Trace { seen: false, ..self }
    }
}

/// The steps of one section of one column, in order. A sizing that ends early gives those up to its end.
struct Steps<'c, 'a> {
    column: &'c Column<'a>,
    window: Window,
    at: usize,
    before: usize,
}

impl<'c, 'a> Steps<'c, 'a> {
    fn new(column: &'c Column<'a>, section: Section) -> Self {
        let window = Window {
            section: Cell::new(None),
            wanted: section,
            skip: Cell::new(0),
            steps: [const { Cell::new(None) }; WINDOW],
            count: Cell::new(0),
        };
        let steps = Steps { column, window, at: 0, before: 0 };
        steps.run();
        steps
    }

    fn run(&self) {
        self.window.section.set(None);
        self.window.skip.set(self.before);
        self.window.count.set(0);
        // What it comes to is known already; here only its steps are read.
        let _ = size_with(Trace { window: &self.window, seen: true }, &self.column.brief, &self.column.book.rules);
    }
}

impl Iterator for Steps<'_, '_> {
    type Item = Stage;

    fn next(&mut self) -> Option<Stage> {
        if self.at == WINDOW {
            self.before = self.before.saturating_add(WINDOW);
            self.at = 0;
            self.run();
        }
        if self.at >= self.window.count.get() {
            return None;
        }
        let found = self.window.steps.get(self.at).and_then(Cell::get);
        self.at = self.at.saturating_add(1);
        found
    }
}

/// Where two columns part in one section.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Parting {
    /// The section.
    pub section: Section,
    /// The step of the first column, and of the other one. `None` where its steps have ended.
    pub steps: [Option<Stage>; 2],
    /// Whether the books part here: they give an entry different values, or go by different entries. Else it only
    /// follows from what differs before, or was given differently.
    pub by_rule: bool,
}

/// The first step at which the books part; where they do not, the first step that differs.
///
/// Steps with a rule-book entry behind them are compared one by one. One and the same entry with the same value in both
/// books is no cause, whatever was made of it; where the entries themselves differ the two have gone different ways.
pub(super) fn parting(first: &Column<'_>, other: &Column<'_>, section: Section) -> Option<Parting> {
    let ruled = |column| Steps::new(column, section).filter(|s| s.entry().is_some());
    let (mut ours, mut theirs) = (ruled(first), ruled(other));
    loop {
        let steps = [ours.next(), theirs.next()];
        let apart = match steps {
            [None, None] => break,
            [Some(a), Some(b)] if a.name == b.name && a.entry() == b.entry() => {
                let stated = |column: &Column<'_>| {
                    Entry::from_no(a.entry()).map_or(0, |entry| column.book.rules.get(entry).to_bits())
                };
                a.value.to_bits() != b.value.to_bits() && stated(first) != stated(other)
            }
            _ => true,
        };
        if apart {
            return Some(Parting { section, steps, by_rule: true });
        }
    }
    let (mut ours, mut theirs) = (Steps::new(first, section), Steps::new(other, section));
    loop {
        let steps = [ours.next(), theirs.next()];
        match steps {
            [None, None] => return None,
            [Some(a), Some(b)] if a.name == b.name && a.value.to_bits() == b.value.to_bits() => {}
            _ => return Some(Parting { section, steps, by_rule: false }),
        }
    }
}
