//! Contexts that pick the stated quantities out of a routine, and numbers with another pi.
#![allow(clippy::arithmetic_side_effects, reason = "a number type passes arithmetic through")]

use core::cell::Cell;
use core::f64::consts::PI;
use core::marker::PhantomData;
use core::ops::{Add, Div, Mul, Sub};

use super::catalogue::Pi;
use super::figure::{Figure, MAX_FIGURES, ten_to};
use crate::math;
use crate::step::{Ctx, Name, Num, Quantity as Q, Section, Why};

/// A number that can be made of a bare value without being taken for a constant of a formula.
pub(super) trait Raw: Num {
    fn raw(x: f64) -> Self;
}

impl Raw for f64 {
    #[inline(always)]
    fn raw(x: f64) -> f64 {
        x
    }
}

/// A bare number for which pi, wherever a formula has it, is another one.
#[derive(Clone, Copy, Debug)]
pub(super) struct Alt<const PI_NO: u8>(f64);

#[expect(clippy::approx_constant, reason = "the approximations that people took")]
impl<const PI_NO: u8> Alt<PI_NO> {
    const PI: f64 = match PI_NO {
        n if n == Pi::TwoDecimals as u8 => 3.14,
        n if n == Pi::TwentyTwoSevenths as u8 => 22.0 / 7.0,
        n if n == Pi::ThreeDecimals as u8 => 3.142,
        n if n == Pi::FourDecimals as u8 => 3.1416,
        n if n == Pi::QuarterThree as u8 => 4.0 * 0.785,
        n if n == Pi::QuarterFour as u8 => 4.0 * 0.7854,
        _ => 4.0 * 0.7855,
    };
}

impl<const PI_NO: u8> Num for Alt<PI_NO> {
    #[inline(always)]
    fn lit(c: f64) -> Self {
        if c == PI {
            Alt(Self::PI)
        } else if c == PI / 4.0 {
            Alt(Self::PI / 4.0)
        } else {
            Alt(c)
        }
    }
    #[inline(always)]
    fn value(self) -> f64 {
        self.0
    }
    #[inline(always)]
    fn sqrt(self) -> Self {
        Alt(math::sqrt(self.0))
    }
}

impl<const PI_NO: u8> Raw for Alt<PI_NO> {
    #[inline(always)]
    fn raw(x: f64) -> Self {
        Alt(x)
    }
}

macro_rules! pass_through {
    ($($trait:ident $method:ident $op:tt;)*) => {$(
        impl<const PI_NO: u8> $trait for Alt<PI_NO> {
            type Output = Self;
            #[inline(always)]
            fn $method(self, other: Self) -> Self { Alt(self.0 $op other.0) }
        }
    )*};
}

pass_through! { Add add +; Sub sub -; Mul mul *; Div div /; }

/// What a routine said of the stated quantities; not a number where it said nothing.
pub(super) struct Found {
    values: [Cell<f64>; MAX_FIGURES],
    section: Cell<Section>,
}

impl Found {
    pub(super) fn new() -> Self {
        Found { values: [const { Cell::new(f64::NAN) }; MAX_FIGURES], section: Cell::new(Section::Given) }
    }

    pub(super) fn values(&self) -> [f64; MAX_FIGURES] {
        let mut values = [f64::NAN; MAX_FIGURES];
        for (slot, cell) in values.iter_mut().zip(&self.values) {
            *slot = cell.get();
        }
        values
    }
}

/// The collecting context.
pub(super) struct Collect<'a, N> {
    pub(super) figures: &'a [Figure],
    pub(super) found: &'a Found,
    /// Figures to which every result is rounded; 0 for none.
    pub(super) rounded: u8,
    pub(super) lap: bool,
    pub(super) number: PhantomData<N>,
}

impl<N> Clone for Collect<'_, N> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<N> Copy for Collect<'_, N> {}

impl<N: Raw> Collect<'_, N> {
    fn note(self, name: Name, x: N) -> N {
        let by_book = self.found.section.get() == Section::BookView;
        for (figure, cell) in self.figures.iter().zip(&self.found.values) {
            let meant = match figure.name {
                // Sums over rows: the last one closed is that of all rows. The book's own view of them is not stated.
                Name(q @ (Q::ShearAll | Q::BearingAll), 0) => name.0 == q && !by_book,
                // The balances of the plates, then the greater of them: the last one stands.
                Name(q @ (Q::PitchByShear | Q::PitchByWeaker | Q::PitchByAllModes), 0) => name.0 == q,
                Name(Q::TearOuter, 0) if !self.lap => name == Name(Q::PlateTear, 1) && !by_book,
                Name(Q::ModeStrength | Q::BookEfficiency | Q::Efficiency | Q::Credited, _) => name == figure.name,
                _ => name == figure.name && !by_book,
            };
            if meant {
                cell.set(x.value());
            }
        }
        x
    }
}

impl<N: Raw> Ctx for Collect<'_, N> {
    type N = N;
    fn leaf(self, name: Name, _: Why, x: f64) -> N {
        self.note(name, N::raw(x))
    }
    fn close(self, name: Name, why: Why, e: N) -> N {
        let rounds = self.rounded > 0 && matches!(why, Why::Formula(_));
        self.note(name, if rounds { N::raw(to_figures(e.value(), self.rounded)) } else { e })
    }
    fn choice(self, name: Name, _: Why, taken: N, _: N) -> N {
        self.note(name, taken)
    }
    fn section(self, section: Section) {
        self.found.section.set(section);
    }
}

/// Rounded to so many figures.
fn to_figures(x: f64, figures: u8) -> f64 {
    let size = math::abs(x);
    // Not for zero, and not for what is no number.
    if !(size > 1e-30 && size < 1e30) {
        return x;
    }
    let mut place = 0_i32;
    while place < 31 && size >= ten_to(place.saturating_add(1)) {
        place = place.saturating_add(1);
    }
    while place > -31 && size < ten_to(place) {
        place = place.saturating_sub(1);
    }
    let step = ten_to(place.saturating_add(1).saturating_sub(i32::from(figures)));
    let whole = math::round_nearest(size / step, 1.0) * step;
    if x < 0.0 { -whole } else { whole }
}

#[cfg(test)]
mod tests {
    use super::to_figures;

    #[test]
    fn figures_are_counted_from_the_first() {
        for (x, n, wanted) in [(49_857.07, 4, 49_860.0), (0.067_52, 3, 0.0675), (-71.94, 3, -71.9), (9.996, 3, 10.0)] {
            assert!((to_figures(x, n) - wanted).abs() < 1e-9 * wanted.abs(), "{x}");
        }
        assert_eq!(to_figures(0.0, 3), 0.0);
    }
}
