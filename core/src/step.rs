//! Numbers, steps and contexts: one text of every routine serves plain numbers, shown working and derivatives.
//!
//! A formula body is generic over [`Num`]. A routine is generic over [`Ctx`]: it holds no arithmetic of its own, it
//! names what it takes from the user ([`Ctx::given`]) and from the rule book ([`Ctx::table`]), closes each formula
//! under a name ([`Ctx::formula`]), and makes choices and roundings by methods that keep the value not taken.
//! [`Plain`] has `f64` for its number and inlines to nothing.

use core::ops::{Add, Div, Mul, Sub};

use crate::bounds::Unit;
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

macro_rules! quantities {
    ($($id:ident $symbol:literal $unit:ident $what:literal;)*) => {
        /// Everything that a step of the working can be about.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum Quantity { $(#[doc = $what] $id),* }

        /// All quantities, in the order of the table.
        pub const QUANTITIES: &[Quantity] = &[$(Quantity::$id),*];

        impl Quantity {
            /// The trade's symbol.
            #[must_use]
            pub const fn symbol(self) -> &'static str { match self { $(Quantity::$id => $symbol),* } }
            /// The unit in which the value is kept.
            #[must_use]
            pub const fn unit(self) -> Unit { match self { $(Quantity::$id => Unit::$unit),* } }
            /// The quantity in words.
            #[must_use]
            pub const fn what(self) -> &'static str { match self { $(Quantity::$id => $what),* } }
        }
    };
}

quantities! {
    Plate "t" Millimetre "thickness of the plate";
    OtherPlate "t2" Millimetre "thickness of the second plate, or of the single or wide strap";
    Narrow "t3" Millimetre "thickness of the narrow or second strap";
    Pitch "p" Millimetre "pitch of the outer row, or width of the strip";
    Hole "d" Millimetre "hole diameter";
    Rivet "dr" Millimetre "rivet diameter";
    TearDiameter "dt" Millimetre "diameter deducted in tearing";
    ShearDiameter "ds" Millimetre "diameter that counts in shear";
    BearingDiameter "db" Millimetre "diameter that counts in bearing";
    Tension "st" Megapascal "tensile stress of the plate";
    OtherTension "st2" Megapascal "tensile stress of the second plate or of the straps";
    Shear "ss" Megapascal "shear stress of the rivets";
    Bearing "sc" Megapascal "bearing stress of the plate";
    OtherBearing "sc2" Megapascal "bearing stress of the second plate or of the straps";
    PlateShear "sp" Megapascal "shear stress of the plate at the margin";
    RivetsInRow "n" Count "rivets of the row in the strip";
    RivetsInAll "N" Count "rivets in the strip";
    Coefficient "k" One "constant of the rule book";
    RootCoefficient "k" RootMillimetre "constant of the square-root rule";
    Allowance "c" Millimetre "allowance of the rule book";
    DoubleShear "z" One "strength of a rivet in double shear over single shear";
    Planes "z" One "shear areas that count for one rivet";
    RivetShear "Fs" Newton "one rivet in shear";
    RivetBearing "Fb" Newton "one rivet bearing on the plate";
    RivetBearingOther "Fb2" Newton "one rivet bearing on the second plate or the wide strap";
    RivetBearingNarrow "Fb3" Newton "one rivet bearing on the narrow strap";
    RivetShearOut "Fm" Newton "one rivet shearing out the plate at the margin";
    RivetShearOutOther "Fm2" Newton "one rivet shearing out the second plate or the wide strap";
    RivetShearOutNarrow "Fm3" Newton "one rivet shearing out the narrow strap";
    PlateTear "Ft" Newton "net section of the plate at the row";
    OtherTear "Ft2" Newton "net section of the second plate or wide strap at the row";
    NarrowTear "Ft3" Newton "net section of the narrow strap at the row";
    Solid "F0" Newton "solid strip";
    OtherSolid "F02" Newton "solid strip of the second plate";
    RowRivetsHold "R" Newton "rivets of the row";
    TearOuter "Pt" Newton "tearing at the outer row";
    ShearAll "Ps" Newton "all rivets in shear";
    RivetsWeaker "Pw" Newton "all rivets, each by the weaker of shear and bearing";
    BearingAll "Pc" Newton "all rivets in bearing";
    ModeStrength "P" Newton "strength of the mode";
    Efficiency "eta" One "efficiency over all modes";
    BookEfficiency "J" One "efficiency by the modes that the rule book counts";
    Credited "Jc" One "efficiency credited";
    PlatePercent "plate %" One "plate percentage";
    RivetPercent "rivet %" One "rivet percentage";
    CombinedPercent "comb. %" One "combined percentage";
    RowGap "g" Millimetre "distance between rows";
    RowGapRatio "g/g min" One "distance between rows over the least";
    HolesCounted "n'" One "holes that count in the row";
    ZigzagGain "x" Millimetre "net width given back by the diagonals";
    RowGapLeast "g min" Millimetre "least distance between rows";
    Margin "m" Millimetre "margin";
    MarginLeast "m min" Millimetre "least margin";
    MarginGreatest "m max" Millimetre "greatest margin";
    PitchLeast "p min" Millimetre "least pitch";
    PitchGreatest "p max" Millimetre "greatest pitch";
    PitchByShear "p1" Millimetre "pitch balanced on the outer row against the rivets in shear";
    PitchByWeaker "p2" Millimetre "pitch balanced on the outer row against the weaker of shear and bearing";
    PitchByAllModes "p3" Millimetre "pitch at which all plate modes balance the rivets";
    PitchBalanced "p0" Millimetre "balanced pitch taken by the rule book";
    StrapLeast "b min" Millimetre "least thickness of the strap";
    Gauge "q" Millimetre "distance across between holes of neighbouring rows";
    Load "L" Newton "load on the strip";
}

/// A quantity and the row it belongs to (from 1; 0 when it belongs to the joint).
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Name(pub Quantity, pub u8);

/// Number of a formula in the table of [`formula`](crate::formula).
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(transparent)]
pub struct FormulaNo(pub u8);

/// Why a value is what it is.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Why {
    /// The user said so.
    Given,
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
    /// One of several ways, chosen by an entry of the rule book.
    Choice(EntryNo),
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

    /// A value that the user gave.
    #[inline(always)]
    fn given(self, name: Name, x: f64) -> Self::N {
        self.leaf(name, Why::Given, x)
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
