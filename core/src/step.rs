//! Numbers, steps and contexts: one text of every routine serves plain numbers, shown working and derivatives.
//!
//! A formula body is generic over [`Num`]. A routine is generic over [`Ctx`]: it holds no arithmetic of its own, it
//! names what it takes from the user ([`Ctx::given`]) and from the rule book ([`Ctx::table`]), closes each formula
//! under a name ([`Ctx::formula`]), and makes choices and roundings by methods that keep the value not taken.
//! [`Plain`] has `f64` for its number and inlines to nothing.

mod quantity;

use core::ops::{Add, Div, Mul, Sub};

pub use quantity::{QUANTITIES, Quantity};

use crate::error::EntryNo;
use crate::math;

/// What a formula body may do. [`Num::value`] serves decisions only, never results.
pub trait Num: Copy + Add<Output = Self> + Sub<Output = Self> + Mul<Output = Self> + Div<Output = Self> {
    /// A constant of the formula itself, such as a 4 or a pi.
    fn lit(c: f64) -> Self;
    /// The bare value.
    fn value(self) -> f64;
    /// Square root.
    fn sqrt(self) -> Self;
}

impl Num for f64 {
    #[inline(always)]
    fn lit(c: f64) -> f64 {
        c
    }
    #[inline(always)]
    fn value(self) -> f64 {
        self
    }
    #[inline(always)]
    fn sqrt(self) -> f64 {
        math::sqrt(self)
    }
}

/// A quantity and the row it belongs to (from 1; 0 when it belongs to the joint).
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Name(pub Quantity, pub u8);

/// Number of a formula in the table of [`formula`](crate::formula).
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(transparent)]
pub struct FormulaNo(pub u8);

/// The parts of a working, in their order.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Section {
    /// What is given.
    Given,
    /// The hole.
    Hole,
    /// The pitch.
    Pitch,
    /// Distances between rows.
    Rows,
    /// The margin.
    Margin,
    /// The straps.
    Straps,
    /// Room for the rivet heads between the rows.
    Heads,
    /// The run of a seam and the pitches in it.
    Run,
    /// Rivets to make: grip, length, heads, numbers.
    ShopRivets,
    /// What is cut.
    Cuts,
    /// Masses.
    Masses,
    /// The joint as it stands: dimensions and stresses that are checked.
    Joint,
    /// One rivet, and the rivets of each row.
    Rivets,
    /// Net sections.
    NetSections,
    /// The same with the eyes of the rule book, where they see differently.
    BookView,
    /// Modes and efficiencies.
    Modes,
    /// Percentages.
    Percentages,
    /// Factor of safety.
    Safety,
    /// The shell under pressure.
    Shell,
    /// The solid plate away from the seam.
    SolidPlate,
    /// A girth seam.
    Girth,
    /// Limits of the rule book on the dimensions.
    Limits,
    /// A group of rivets: places, centroid, polar moment.
    Group,
    /// The load on a group.
    GroupLoad,
    /// What each rivet of a group takes.
    GroupForces,
    /// The diameter that a group needs.
    GroupSize,
    /// Stresses of a group, and the load allowed.
    GroupStresses,
}

impl Section {
    /// The heading.
    #[must_use]
    pub const fn heading(self) -> &'static str {
        match self {
            Section::Given => "Given",
            Section::Hole => "Hole and rivet",
            Section::Pitch => "Pitch",
            Section::Rows => "Distances between rows",
            Section::Margin => "Margin",
            Section::Straps => "Straps",
            Section::Heads => "Room for the rivet heads",
            Section::Run => "Run of the seam and pitches in it",
            Section::ShopRivets => "Rivets to make, row by row",
            Section::Cuts => "What is cut",
            Section::Masses => "Masses",
            Section::Joint => "The joint as checked",
            Section::Rivets => "Rivets, row by row",
            Section::NetSections => "Net sections, row by row",
            Section::BookView => "The same as the rule book counts it",
            Section::Modes => "Failure modes and efficiency",
            Section::Percentages => "Percentages",
            Section::Safety => "Factor of safety",
            Section::Shell => "The shell under pressure",
            Section::SolidPlate => "The solid plate away from the seam",
            Section::Girth => "The girth seam",
            Section::Limits => "Limits of the rule book",
            Section::Group => "The group: centroid and polar moment",
            Section::GroupLoad => "The load",
            Section::GroupForces => "What each rivet takes",
            Section::GroupSize => "The diameter",
            Section::GroupStresses => "Stresses, and the load allowed",
        }
    }
}

/// Why a value is what it is.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Why {
    /// The user said so.
    Given,
    /// Looked up elsewhere: where it stands.
    Stated(&'static str),
    /// Looked up in the rule book.
    Table(EntryNo),
    /// A formula's result.
    Formula(FormulaNo),
    /// The least of those compared; the entry is the rule that asks for it, if any.
    Least(EntryNo),
    /// The greatest of those compared.
    Greatest(EntryNo),
    /// Lowered to a limit.
    Cap(EntryNo),
    /// Raised to a limit.
    Floor(EntryNo),
    /// Rounded down to a multiple of the step.
    RoundDown(f64),
    /// Rounded up to a multiple of the step.
    RoundUp(f64),
    /// Rounded to the nearest multiple of the step.
    RoundNearest(f64),
    /// Taken up to the next standard size.
    Series(EntryNo),
    /// One of several ways, chosen by an entry of the rule book; without one, what goes with a choice made before.
    Choice(EntryNo),
    /// The nearer of two to what was asked for.
    Nearer,
}

/// The reading of a routine: bare numbers, a record of steps, or numbers with derivatives.
///
/// Three methods are required; everything else is provided. `Copy` and passed by value.
pub trait Ctx: Copy {
    /// The number that formulas run on.
    type N: Num;
    /// A value from outside.
    fn leaf(self, name: Name, why: Why, x: f64) -> Self::N;
    /// Ends an expression: a fresh named value comes back.
    fn close(self, name: Name, why: Why, e: Self::N) -> Self::N;
    /// One of two taken; both are kept for the reader. `left` is the one not taken.
    fn choice(self, name: Name, why: Why, taken: Self::N, left: Self::N) -> Self::N;

    /// A new part of the working begins.
    #[inline(always)]
    fn section(self, _: Section) {}
    /// The same context, keeping its steps to itself: for values that the reader has seen already.
    #[inline(always)]
    #[must_use]
    fn quiet(self) -> Self {
        self
    }
    /// A value that the user gave.
    #[inline(always)]
    fn given(self, name: Name, x: f64) -> Self::N {
        self.leaf(name, Why::Given, x)
    }
    /// A value that stands somewhere else than in the rule book.
    #[inline(always)]
    fn stated(self, name: Name, place: &'static str, x: f64) -> Self::N {
        self.leaf(name, Why::Stated(place), x)
    }
    /// A value that the rule book gives.
    #[inline(always)]
    fn table(self, name: Name, entry: EntryNo, x: f64) -> Self::N {
        self.leaf(name, Why::Table(entry), x)
    }
    /// The result of a formula.
    #[inline(always)]
    fn formula(self, name: Name, formula: FormulaNo, e: Self::N) -> Self::N {
        self.close(name, Why::Formula(formula), e)
    }
    /// The lesser of two, the first when equal.
    #[inline(always)]
    fn lesser(self, name: Name, why: Why, a: Self::N, b: Self::N) -> Self::N {
        if b.value() < a.value() { self.choice(name, why, b, a) } else { self.choice(name, why, a, b) }
    }
    /// The greater of two, the first when equal.
    #[inline(always)]
    fn greater(self, name: Name, why: Why, a: Self::N, b: Self::N) -> Self::N {
        if b.value() > a.value() { self.choice(name, why, b, a) } else { self.choice(name, why, a, b) }
    }
    /// Down to a multiple of `step`. Rounding loses the derivative: a constant is taken, the unrounded value stays
    /// beside it.
    #[inline(always)]
    fn down(self, name: Name, step: f64, x: Self::N) -> Self::N {
        self.rounded(name, Why::RoundDown(step), math::round_down(x.value(), step), x)
    }
    /// Up to a multiple of `step`.
    #[inline(always)]
    fn up(self, name: Name, step: f64, x: Self::N) -> Self::N {
        self.rounded(name, Why::RoundUp(step), math::round_up(x.value(), step), x)
    }
    /// To the nearest multiple of `step`.
    #[inline(always)]
    fn nearest(self, name: Name, step: f64, x: Self::N) -> Self::N {
        self.rounded(name, Why::RoundNearest(step), math::round_nearest(x.value(), step), x)
    }
    /// A constant taken in the place of a computed value, which stays beside it.
    #[inline(always)]
    fn rounded(self, name: Name, why: Why, taken: f64, x: Self::N) -> Self::N {
        self.choice(name, why, Self::N::lit(taken), x)
    }
}

/// Bare numbers: nothing is recorded and nothing is paid for it.
#[derive(Clone, Copy, Debug)]
pub struct Plain;

impl Ctx for Plain {
    type N = f64;
    #[inline(always)]
    fn leaf(self, _: Name, _: Why, x: f64) -> f64 {
        x
    }
    #[inline(always)]
    fn close(self, _: Name, _: Why, e: f64) -> f64 {
        e
    }
    #[inline(always)]
    fn choice(self, _: Name, _: Why, taken: f64, _: f64) -> f64 {
        taken
    }
}
