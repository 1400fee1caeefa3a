//! Contexts of a caller's own: one that hides every value, and one whose number carries a derivative.

use core::hint::black_box;
use core::ops::{Add, Div, Mul, Sub};

use seamwright::step::{Ctx, Name, Num, Why};

/// Plain numbers that the compiler cannot see through.
#[derive(Clone, Copy)]
pub struct Hidden;

impl Ctx for Hidden {
    type N = f64;
    fn leaf(self, name: Name, why: Why, x: f64) -> f64 {
        black_box((name, why, x)).2
    }
    fn close(self, name: Name, why: Why, e: f64) -> f64 {
        black_box((name, why, e)).2
    }
    fn choice(self, name: Name, why: Why, taken: f64, left: f64) -> f64 {
        black_box((name, why, taken, left)).2
    }
}

/// A value with its derivative.
#[derive(Clone, Copy)]
pub struct Dual(f64, f64);

impl Add for Dual {
    type Output = Dual;
    fn add(self, y: Dual) -> Dual {
        Dual(self.0 + y.0, self.1 + y.1)
    }
}

impl Sub for Dual {
    type Output = Dual;
    fn sub(self, y: Dual) -> Dual {
        Dual(self.0 - y.0, self.1 - y.1)
    }
}

impl Mul for Dual {
    type Output = Dual;
    fn mul(self, y: Dual) -> Dual {
        Dual(self.0 * y.0, self.1 * y.0 + self.0 * y.1)
    }
}

impl Div for Dual {
    type Output = Dual;
    fn div(self, y: Dual) -> Dual {
        Dual(self.0 / y.0, (self.1 * y.0 - self.0 * y.1) / (y.0 * y.0))
    }
}

impl Num for Dual {
    fn lit(c: f64) -> Dual {
        Dual(c, 0.0)
    }
    fn value(self) -> f64 {
        self.0
    }
    fn sqrt(self) -> Dual {
        let root = seamwright::math::sqrt(self.0);
        Dual(root, self.1 / (2.0 * root))
    }
}

/// Derivatives by one named value.
#[derive(Clone, Copy)]
pub struct By(pub Name);

impl Ctx for By {
    type N = Dual;
    fn leaf(self, name: Name, _: Why, x: f64) -> Dual {
        Dual(x, if name == self.0 { 1.0 } else { 0.0 })
    }
    fn close(self, _: Name, _: Why, e: Dual) -> Dual {
        e
    }
    fn choice(self, _: Name, _: Why, taken: Dual, _: Dual) -> Dual {
        taken
    }
}
