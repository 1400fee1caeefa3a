//! What stands on the sheet already.

use super::pad::{Node, Step};
use crate::step::{Name, Quantity as Q, Why};

/// Names that are remembered. A sheet with more of them repeats itself, and is as right as before.
const NAMES: usize = 160;

/// How a step is to be shown.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Shown {
    /// In full.
    Full,
    /// Not at all: it stands on the sheet.
    Already,
    /// As an earlier row's over again.
    AsRow(u8),
}

/// The last step of one name. Small: there are many of them, and a handheld has little memory.
struct Seen {
    name: Name,
    value: Mark,
    /// The line with its names, and with the quantities and values alone.
    exact: Mark,
    alike: Mark,
}

/// Two halves of a word: the whole then has no gaps.
type Mark = [u16; 2];

/// A hash in a word.
fn short(hash: u64) -> Mark {
    let word = hash ^ hash.wrapping_shr(32);
    [word.wrapping_shr(16) as u16, word as u16]
}

/// A mark of a value.
fn value_mark(value: f64) -> Mark {
    short(mix(BASIS, value.to_bits()))
}

/// The last step of each name.
pub(super) struct Memory {
    seen: heapless::Vec<Seen, NAMES>,
}

impl Memory {
    #[inline(always)]
    pub(super) const fn new() -> Self {
        Memory { seen: heapless::Vec::new() }
    }

    /// Takes note of a step and says how it is to be shown.
    pub(super) fn take(&mut self, step: &Step<'_>) -> Shown {
        let new =
            Seen { name: step.name, value: value_mark(step.value), exact: mark(step, true), alike: mark(step, false) };
        let given = step.why == Why::Given;
        if let Some(old) = self.seen.iter_mut().find(|s| s.name == new.name) {
            let same = old.value == new.value;
            // What is taken over from an earlier part needs no line of its own.
            if same && (given || old.exact == new.exact) {
                return Shown::Already;
            }
            *old = new;
            return if given { Shown::Full } else { self.as_row(step) };
        }
        let shown = if given { Shown::Full } else { self.as_row(step) };
        // Where the memory is full the step is forgotten, and shown again when it comes again.
        let _ = self.seen.push(new);
        shown
    }

    fn as_row(&self, step: &Step<'_>) -> Shown {
        let Name(quantity, row) = step.name;
        if row < 2 || matches!(quantity, Q::ModeStrength | Q::StrapShare | Q::StrapThick | Q::StrapLeast) {
            return Shown::Full;
        }
        let (value, alike) = (value_mark(step.value), mark(step, false));
        let earlier = self
            .seen
            .iter()
            .find(|s| s.name.0 == quantity && s.name.1 > 0 && s.name.1 < row && s.value == value && s.alike == alike);
        earlier.map_or(Shown::Full, |s| Shown::AsRow(s.name.1))
    }
}

/// A mark of all that a line says: why, and each place of its expressions.
fn mark(step: &Step<'_>, rows: bool) -> Mark {
    short(whole_mark(step, rows))
}

fn whole_mark(step: &Step<'_>, rows: bool) -> u64 {
    let (kind, detail) = match step.why {
        Why::Given => (0, 0),
        Why::Table(e) => (1, u64::from(e.0)),
        Why::Formula(f) => (2, u64::from(f.0)),
        Why::Least(e) => (3, u64::from(e.0)),
        Why::Greatest(e) => (4, u64::from(e.0)),
        Why::Cap(e) => (5, u64::from(e.0)),
        Why::Floor(e) => (6, u64::from(e.0)),
        Why::RoundDown(x) => (7, x.to_bits()),
        Why::RoundUp(x) => (8, x.to_bits()),
        Why::RoundNearest(x) => (9, x.to_bits()),
        Why::Series(e) => (10, u64::from(e.0)),
        Why::Choice(e) => (11, u64::from(e.0)),
        Why::Nearer => (12, 0),
        // The same name with the same value has the same source.
        Why::Stated(_) => (13, 0),
    };
    // A leaf of the step's own kind names nothing: its value is in the step.
    let mut hash = mix(mix(BASIS, kind), detail);
    if matches!(step.why, Why::Given | Why::Stated(_) | Why::Table(_)) {
        return mix(hash, step.value.to_bits());
    }
    hash = expression(step, step.root(), rows, hash);
    match step.left_root() {
        Some(left) => expression(step, left, rows, mix(hash, 99)),
        None => hash,
    }
}

fn expression(step: &Step<'_>, place: u8, rows: bool, hash: u64) -> u64 {
    match step.node(place) {
        Node::Free => mix(hash, 20),
        Node::Literal(x) => mix(mix(hash, 21), x.to_bits()),
        Node::Leaf(Name(quantity, row), value) => {
            let name = if rows { u64::from(row) } else { 0 };
            mix(mix(mix(mix(hash, 22), quantity as u64), name), value.to_bits())
        }
        Node::Root(x) => expression(step, x, rows, mix(hash, 23)),
        Node::Binary(op, a, b) => {
            let hash = expression(step, a, rows, mix(mix(hash, 24), op as u64));
            expression(step, b, rows, mix(hash, 25))
        }
    }
}

/// Where FNV-1a begins.
const BASIS: u64 = 0xcbf2_9ce4_8422_2325;

/// FNV-1a over words.
fn mix(hash: u64, word: u64) -> u64 {
    let h = (hash ^ word).wrapping_mul(0x0000_0100_0000_01b3);
    h ^ h.wrapping_shr(29)
}
