//! The recording number, its scratch pad, and the context that hands each step to a sink.
//!
//! The pad holds one line, not the whole working: when a step closes, the line goes to the [`Sink`] and the pad is
//! reset. An expression that outlives its line, or a line longer than the pad, spoils the working: it is then refused
//! as a whole ([`Pad::spoilt`]), never shown short.

use core::cell::Cell;
use core::ops::{Add, Div, Mul, Sub};

use crate::math;
use crate::step::{Ctx, Name, Num, Section, Why};

/// Nodes of the longest line: the largest formula needs 27, a cut through eight rows with even shares more.
const LINE: usize = 64;

/// One place of an expression. Operands stand before their operator, so that walks end.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub enum Node {
    /// Unused.
    #[default]
    Free,
    /// A constant of the formula.
    Literal(f64),
    /// A named value.
    Leaf(Name, f64),
    /// An operation on two earlier places.
    Binary(Op, u8, u8),
    /// The square root of an earlier place.
    Root(u8),
}

/// The four operations.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Op {
    /// Sum.
    Add,
    /// Difference.
    Sub,
    /// Product.
    Mul,
    /// Quotient.
    Div,
}

/// A line of the working, as its sink sees it.
#[derive(Clone, Copy, Debug)]
pub struct Step<'a> {
    /// What it is about.
    pub name: Name,
    /// Why the value is what it is.
    pub why: Why,
    /// The value.
    pub value: f64,
    /// In a choice: the value not taken.
    pub left: Option<f64>,
    line: &'a [Cell<Node>],
    root: u8,
    left_root: u8,
}

impl Step<'_> {
    /// A value from outside as a step.
    pub(super) const fn leaf(name: Name, why: Why, value: f64) -> Self {
        Step { name, why, value, left: None, line: &[], root: 0, left_root: 0 }
    }

    /// Whether an expression of the line names a value.
    pub(super) fn uses(&self, name: Name) -> bool {
        self.names(self.root, name) || self.left_root().is_some_and(|left| self.names(left, name))
    }

    fn names(&self, place: u8, wanted: Name) -> bool {
        match self.node(place) {
            Node::Free | Node::Literal(_) => false,
            Node::Leaf(name, _) => name == wanted,
            Node::Root(x) => self.names(x, wanted),
            Node::Binary(_, a, b) => self.names(a, wanted) || self.names(b, wanted),
        }
    }

    /// A place of the line.
    #[must_use]
    pub fn node(&self, place: u8) -> Node {
        self.line.get(usize::from(place)).map_or(Node::Free, Cell::get)
    }

    /// The place where the expression is put together.
    #[must_use]
    pub const fn root(&self) -> u8 {
        self.root
    }

    /// In a choice: the place of the expression not taken.
    #[must_use]
    pub fn left_root(&self) -> Option<u8> {
        self.left.map(|_| self.left_root)
    }
}

/// Gets each step as it is complete: renders it, counts, pages, collects.
pub trait Sink {
    /// A step.
    fn step(&self, step: &Step<'_>);
    /// A part of the working begins.
    fn section(&self, section: Section);
}

/// Scratch for one line.
pub struct Pad<'s> {
    line: [Cell<Node>; LINE],
    used: Cell<u8>,
    turn: Cell<u16>,
    spoilt: Cell<bool>,
    sink: &'s dyn Sink,
}

impl<'s> Pad<'s> {
    /// An empty pad before a sink.
    #[must_use]
    #[inline(always)]
    pub fn new(sink: &'s dyn Sink) -> Self {
        Pad {
            line: [const { Cell::new(Node::Free) }; LINE],
            used: Cell::new(0),
            turn: Cell::new(0),
            spoilt: Cell::new(false),
            sink,
        }
    }

    /// Whether a line was too long or an expression outlived its line: the working must not be shown. A test over all
    /// routines keeps this from happening.
    #[must_use]
    pub fn spoilt(&self) -> bool {
        self.spoilt.get()
    }

    #[inline(never)]
    fn push(&self, node: Node) -> u8 {
        let at = self.used.get();
        match self.line.get(usize::from(at)) {
            Some(slot) => {
                slot.set(node);
                self.used.set(at.wrapping_add(1));
            }
            None => self.spoilt.set(true),
        }
        at
    }
}

#[derive(Clone, Copy)]
enum At {
    Literal,
    Leaf(Name),
    Node(u8, u16),
}

/// A number that carries its value and remembers where it comes from: the same operations in the same order give the
/// same bits as `f64`.
#[derive(Clone, Copy)]
pub struct Noted<'t> {
    value: f64,
    at: At,
    pad: Option<&'t Pad<'t>>,
}

impl<'t> Noted<'t> {
    #[inline(never)]
    fn put(self, pad: &Pad<'_>) -> u8 {
        match self.at {
            At::Literal => pad.push(Node::Literal(self.value)),
            At::Leaf(name) => pad.push(Node::Leaf(name, self.value)),
            At::Node(place, turn) => {
                if turn != pad.turn.get() {
                    pad.spoilt.set(true);
                }
                place
            }
        }
    }

    #[inline(never)]
    fn binary(op: Op, value: f64, a: Self, b: Self) -> Self {
        let Some(pad) = a.pad.or(b.pad) else { return Self::lit(value) };
        let (x, y) = (a.put(pad), b.put(pad));
        Noted { value, at: At::Node(pad.push(Node::Binary(op, x, y)), pad.turn.get()), pad: Some(pad) }
    }
}

macro_rules! operators {
    ($($trait:ident $method:ident $sign:tt;)*) => {
        $(impl $trait for Noted<'_> {
            type Output = Self;
            fn $method(self, other: Self) -> Self {
                Noted::binary(Op::$trait, self.value $sign other.value, self, other)
            }
        })*
    };
}

operators! { Add add +; Sub sub -; Mul mul *; Div div /; }

impl Num for Noted<'_> {
    fn lit(c: f64) -> Self {
        Noted { value: c, at: At::Literal, pad: None }
    }
    fn value(self) -> f64 {
        self.value
    }
    fn sqrt(self) -> Self {
        let value = math::sqrt(self.value);
        let Some(pad) = self.pad else { return Self::lit(value) };
        let x = self.put(pad);
        Noted { value, at: At::Node(pad.push(Node::Root(x)), pad.turn.get()), pad: Some(pad) }
    }
}

/// The context that records.
#[derive(Clone, Copy)]
pub struct Record<'t> {
    pad: &'t Pad<'t>,
    quiet: bool,
}

impl<'t> Record<'t> {
    /// Records on a pad.
    #[must_use]
    pub const fn new(pad: &'t Pad<'t>) -> Self {
        Record { pad, quiet: false }
    }

    #[inline(never)]
    fn step(self, name: Name, why: Why, taken: Noted<'t>, left: Option<Noted<'t>>) -> Noted<'t> {
        let pad = self.pad;
        if !self.quiet {
            let root = taken.put(pad);
            let left_root = left.map_or(root, |b| b.put(pad));
            let left = left.map(|b| b.value);
            pad.sink.step(&Step { name, why, value: taken.value, left, line: &pad.line, root, left_root });
        }
        pad.used.set(0);
        pad.turn.set(pad.turn.get().wrapping_add(1));
        Noted { value: taken.value, at: At::Leaf(name), pad: Some(pad) }
    }
}

impl<'t> Ctx for Record<'t> {
    type N = Noted<'t>;
    fn leaf(self, name: Name, why: Why, x: f64) -> Noted<'t> {
        self.step(name, why, Noted::lit(x), None)
    }
    fn close(self, name: Name, why: Why, e: Noted<'t>) -> Noted<'t> {
        self.step(name, why, e, None)
    }
    fn choice(self, name: Name, why: Why, taken: Noted<'t>, left: Noted<'t>) -> Noted<'t> {
        self.step(name, why, taken, Some(left))
    }
    fn section(self, section: Section) {
        if !self.quiet {
            self.pad.sink.section(section);
        }
    }
    fn quiet(self) -> Self {
        Record { quiet: true, ..self }
    }
}
