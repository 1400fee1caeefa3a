//! Contexts that pick the stated quantities out of a routine and round on the way, and numbers with another pi.
#![allow(clippy::arithmetic_side_effects, reason = "a number type passes arithmetic through")]

use core::cell::Cell;
use core::f64::consts::PI;
use core::marker::PhantomData;
use core::ops::{Add, Div, Mul, Sub};

use super::catalogue::{Digits, Midway, Pi};
use super::figure::{Figure, MAX_FIGURES, ten_to};
use crate::joint::MAX_ROWS;
use crate::math;
use crate::step::{Ctx, Name, Num, Quantity as Q, Section, Why};

/// A number that can be made of a bare value without being taken for a constant of a formula.
pub(super) trait Raw: Num {
    fn raw(x: f64) -> Self;
    /// The area of a circle that the number has for a factor, mm2, where it knows.
    fn area(self) -> Option<f64>;
}

impl Raw for f64 {
    #[inline(always)]
    fn raw(x: f64) -> f64 {
        x
    }
    #[inline(always)]
    fn area(self) -> Option<f64> {
        None
    }
}

/// The number of the true pi among those of [`Alt`].
pub(super) const EXACT: u8 = u8::MAX;

/// A bare number for which pi, wherever a formula has it, may be another one, and which remembers an area.
#[derive(Clone, Copy, Debug)]
pub(super) struct Alt<const PI_NO: u8> {
    value: f64,
    circle: Circle,
}

/// How much of `pi/4 d^2` a product has so far.
#[derive(Clone, Copy, Debug)]
enum Circle {
    Nothing,
    Quarter(f64),
    Once(f64),
    Area(f64),
}

#[expect(clippy::approx_constant, reason = "the approximations that people took")]
impl<const PI_NO: u8> Alt<PI_NO> {
    const PI: f64 = match PI_NO {
        n if n == Pi::TwoDecimals as u8 => 3.14,
        n if n == Pi::TwentyTwoSevenths as u8 => 22.0 / 7.0,
        n if n == Pi::ThreeDecimals as u8 => 3.142,
        n if n == Pi::FourDecimals as u8 => 3.1416,
        n if n == Pi::QuarterThree as u8 => 4.0 * 0.785,
        n if n == Pi::QuarterFour as u8 => 4.0 * 0.7854,
        n if n == Pi::QuarterUp as u8 => 4.0 * 0.7855,
        _ => PI,
    };
}

impl<const PI_NO: u8> Num for Alt<PI_NO> {
    #[inline(always)]
    fn lit(c: f64) -> Self {
        if c == PI {
            Self::raw(Self::PI)
        } else if c == PI / 4.0 {
            let value = Self::PI / 4.0;
            Alt { value, circle: Circle::Quarter(value) }
        } else {
            Self::raw(c)
        }
    }
    #[inline(always)]
    fn value(self) -> f64 {
        self.value
    }
    #[inline(always)]
    fn sqrt(self) -> Self {
        Self::raw(math::sqrt(self.value))
    }
}

impl<const PI_NO: u8> Raw for Alt<PI_NO> {
    #[inline(always)]
    fn raw(x: f64) -> Self {
        Alt { value: x, circle: Circle::Nothing }
    }
    #[inline(always)]
    fn area(self) -> Option<f64> {
        match self.circle {
            Circle::Area(a) => Some(a),
            _ => None,
        }
    }
}

impl<const PI_NO: u8> Mul for Alt<PI_NO> {
    type Output = Self;
    #[inline(always)]
    fn mul(self, other: Self) -> Self {
        let circle = match (self.circle, other.circle) {
            // A formula has the two diameters behind the quarter of pi, and further factors before and after them.
            (Circle::Quarter(q), Circle::Nothing) => Circle::Once(q * other.value),
            (Circle::Once(half), Circle::Nothing) => Circle::Area(half * other.value),
            (had @ Circle::Area(_), Circle::Nothing) => had,
            (Circle::Nothing, come) => come,
            _ => Circle::Nothing,
        };
        Alt { value: self.value * other.value, circle }
    }
}

impl<const PI_NO: u8> Div for Alt<PI_NO> {
    type Output = Self;
    #[inline(always)]
    fn div(self, other: Self) -> Self {
        Alt { value: self.value / other.value, circle: self.circle }
    }
}

impl<const PI_NO: u8> Add for Alt<PI_NO> {
    type Output = Self;
    #[inline(always)]
    fn add(self, other: Self) -> Self {
        Self::raw(self.value + other.value)
    }
}

impl<const PI_NO: u8> Sub for Alt<PI_NO> {
    type Output = Self;
    #[inline(always)]
    fn sub(self, other: Self) -> Self {
        Self::raw(self.value - other.value)
    }
}

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

/// What becomes of results before they are used.
#[derive(Clone, Copy)]
pub(super) struct Habits {
    /// Figures to which every result is rounded; 0 for none.
    pub(super) rounded: u8,
    /// What is rounded by itself, by [`Midway`].
    pub(super) midway: [Option<Digits>; Midway::COUNT],
    /// Figures of someone's own that are worked on from.
    pub(super) own: Own,
}

impl Habits {
    /// Results as they are.
    pub(super) const NONE: Habits = Habits { rounded: 0, midway: [None; Midway::COUNT], own: Own::NONE };

    pub(super) const fn to(&self, which: Midway) -> Option<Digits> {
        let [rivet, area, net] = self.midway;
        match which {
            Midway::OneRivet => rivet,
            Midway::RivetArea => area,
            Midway::NetSection => net,
        }
    }
}

/// Someone's own figures over those of the case: the strengths of single rivets by row, and tearing at the outer row.
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct Own {
    /// One rivet in shear.
    pub(crate) shear: [f64; MAX_ROWS],
    /// One rivet in bearing.
    pub(crate) bearing: [f64; MAX_ROWS],
    /// The plate at its outer row.
    pub(crate) tear: f64,
}

impl Own {
    /// No figures but those of the case.
    pub(crate) const NONE: Own = Own { shear: [1.0; MAX_ROWS], bearing: [1.0; MAX_ROWS], tear: 1.0 };

    /// The factor of a step; `last` is the outer row of plate B of a lap.
    fn factor(&self, Name(quantity, row): Name, last: Option<u8>) -> f64 {
        let by_row = match quantity {
            // One plane of a rivet follows from the rivet.
            Q::RivetShear | Q::LoneShear => &self.shear,
            Q::RivetBearing | Q::RivetBearingOther | Q::RivetBearingNarrow => &self.bearing,
            Q::PlateTear if row == 1 => return self.tear,
            Q::OtherTear if last == Some(row) => return self.tear,
            _ => return 1.0,
        };
        by_row.get(usize::from(row).wrapping_sub(1)).copied().unwrap_or(1.0)
    }
}

/// The collecting context.
pub(super) struct Collect<'a, N> {
    pub(super) figures: &'a [Figure],
    pub(super) found: &'a Found,
    pub(super) habits: &'a Habits,
    /// The last row of a lap.
    pub(super) lap: Option<u8>,
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
                Name(Q::TearOuter, 0) if self.lap.is_none() => name == Name(Q::PlateTear, 1) && !by_book,
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
        let mut x = e.value();
        if matches!(why, Why::Formula(_)) {
            x *= self.habits.own.factor(name, self.lap);
            if let (Some(digits), Some(area)) = (self.habits.to(Midway::RivetArea), e.area()) {
                x = x * digits.round(area) / area;
            }
            if let Some(digits) = Midway::closed_as(name.0).and_then(|which| self.habits.to(which)) {
                x = digits.round(x);
            }
            if self.habits.rounded > 0 {
                x = to_figures(x, self.habits.rounded);
            }
        }
        // A closed step is a number of its own: the area that went into it is no factor of what comes after.
        self.note(name, N::raw(x))
    }
    fn choice(self, name: Name, _: Why, taken: N, _: N) -> N {
        self.note(name, taken)
    }
    fn section(self, section: Section) {
        self.found.section.set(section);
    }
}

impl Digits {
    fn round(self, x: f64) -> f64 {
        match self {
            Digits::Figures(figures) => to_figures(x, figures),
            Digits::Step(step) => half_up(x, step),
        }
    }
}

/// To the nearest multiple; a half goes up, as people round by hand.
fn half_up(x: f64, step: f64) -> f64 {
    let up = math::round_up(x, step);
    if math::at_most(up - x, 0.5 * step) { up } else { math::round_down(x, step) }
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
    let whole = half_up(size / step, 1.0) * step;
    if x < 0.0 { -whole } else { whole }
}

#[cfg(test)]
mod tests {
    use super::{half_up, to_figures};

    #[test]
    fn figures_are_counted_from_the_first() {
        for (x, n, wanted) in [(49_857.07, 4, 49_860.0), (0.067_52, 3, 0.0675), (-71.94, 3, -71.9), (9.996, 3, 10.0)] {
            assert!((to_figures(x, n) - wanted).abs() < 1e-9 * wanted.abs(), "{x}");
        }
        assert_eq!(to_figures(0.0, 3), 0.0);
        assert_eq!([half_up(62.5, 1.0), half_up(62.4, 1.0), half_up(17_013.9, 5.0)], [63.0, 62.0, 17_015.0]);
    }
}
