//! A number with its derivative to either side, and the context that seeds it.
#![allow(
    clippy::arithmetic_side_effects,
    clippy::suspicious_arithmetic_impl,
    reason = "the arithmetic of derivatives is this number's own: products have sums in them"
)]

use core::ops::{Add, Div, Mul, Sub};

use super::inputs::Input;
use crate::math;
use crate::step::{Ctx, Name, Num, Why};

/// The derivatives of a figure to the left and to the right of where it stands.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Sided {
    /// For less of the input.
    pub left: f64,
    /// For more of the input.
    pub right: f64,
}

impl Sided {
    /// Whether the figure has a kink here: the two sides differ.
    #[must_use]
    pub fn has_kink(&self) -> bool {
        // Both sides come from the same arithmetic and differ by more than its rounding, or not at all.
        math::abs(self.left - self.right) > 1e-7 * math::larger(math::abs(self.left), math::abs(self.right))
    }

    /// Both sides times a factor.
    #[must_use]
    pub fn times(&self, factor: f64) -> Sided {
        Sided { left: self.left * factor, right: self.right * factor }
    }
}

/// A value with its derivatives to both sides. All formula bodies are smooth, so each side follows the ordinary rules;
/// only a choice between equals bends.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bent {
    pub(super) value: f64,
    pub(super) slope: Sided,
}

impl Bent {
    fn both(self, other: Bent, value: f64, of: impl Fn(f64, f64) -> f64) -> Bent {
        let slope =
            Sided { left: of(self.slope.left, other.slope.left), right: of(self.slope.right, other.slope.right) };
        Bent { value, slope }
    }

    /// The least of two: where they are equal, the lower one on each side. `first` is the one taken for its value.
    pub(super) fn least(first: Bent, second: Bent) -> Bent {
        if !equal(first.value, second.value) {
            return first;
        }
        // To the right the lower is the one that rises less; to the left the one that rises more.
        first.both(second, first.value, f64::min).with_left(math::larger(first.slope.left, second.slope.left))
    }

    /// The greatest of two, likewise.
    fn greatest(first: Bent, second: Bent) -> Bent {
        if !equal(first.value, second.value) {
            return first;
        }
        first.both(second, first.value, f64::max).with_left(math::smaller(first.slope.left, second.slope.left))
    }

    const fn with_left(mut self, left: f64) -> Bent {
        self.slope.left = left;
        self
    }
}

/// Equal for a reader: within the library's tolerance.
pub(super) fn equal(a: f64, b: f64) -> bool {
    math::at_least(a, b) && math::at_most(a, b)
}

impl Add for Bent {
    type Output = Bent;
    fn add(self, y: Bent) -> Bent {
        self.both(y, self.value + y.value, |a, b| a + b)
    }
}

impl Sub for Bent {
    type Output = Bent;
    fn sub(self, y: Bent) -> Bent {
        self.both(y, self.value - y.value, |a, b| a - b)
    }
}

impl Mul for Bent {
    type Output = Bent;
    fn mul(self, y: Bent) -> Bent {
        self.both(y, self.value * y.value, |a, b| a * y.value + self.value * b)
    }
}

impl Div for Bent {
    type Output = Bent;
    fn div(self, y: Bent) -> Bent {
        self.both(y, self.value / y.value, |a, b| (a * y.value - self.value * b) / (y.value * y.value))
    }
}

impl Num for Bent {
    fn lit(c: f64) -> Bent {
        Bent { value: c, slope: Sided::default() }
    }
    fn value(self) -> f64 {
        self.value
    }
    fn sqrt(self) -> Bent {
        let root = math::sqrt(self.value);
        self.both(self, root, |a, _| a / (2.0 * root))
    }
}

/// The context in which one input moves.
#[derive(Clone, Copy, Debug)]
pub(super) struct Toward(pub(super) Input);

impl Ctx for Toward {
    type N = Bent;

    fn leaf(self, name: Name, why: Why, x: f64) -> Bent {
        let moves = match (self.0, why) {
            (Input::Given(moved), Why::Given) => moved == name,
            (Input::Rule(entry), Why::Table(read)) => entry == read,
            _ => false,
        };
        let one = f64::from(u8::from(moves));
        Bent { value: x, slope: Sided { left: one, right: one } }
    }

    fn close(self, _: Name, _: Why, e: Bent) -> Bent {
        e
    }

    fn choice(self, _: Name, _: Why, taken: Bent, _: Bent) -> Bent {
        taken
    }

    fn lesser(self, _: Name, _: Why, a: Bent, b: Bent) -> Bent {
        if b.value < a.value { Bent::least(b, a) } else { Bent::least(a, b) }
    }

    fn greater(self, _: Name, _: Why, a: Bent, b: Bent) -> Bent {
        if b.value > a.value { Bent::greatest(b, a) } else { Bent::greatest(a, b) }
    }
}
