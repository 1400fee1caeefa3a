//! What a result rests on: each figure and each circumstance, and how it is known.

use crate::bounds::Unit;
use crate::error::EntryNo;

/// The most assumptions of one rating: eight rows of rivets and some thirty single ones.
pub const MAX_ASSUMPTIONS: usize = 48;

/// How something is known.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Basis {
    /// Measured on the boiler.
    Measured,
    /// Stated by the user: from a drawing, a certificate, a stamp.
    Given,
    /// Taken from the rule book because it is not known.
    Tabulated,
    /// Not stated: taken on the safe side, or as the sheet says.
    Assumed,
}

impl Basis {
    /// The word printed on sheets.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Basis::Measured => "measured",
            Basis::Given => "given",
            Basis::Tabulated => "tabulated",
            Basis::Assumed => "assumed",
        }
    }
}

macro_rules! assumed {
    ($($id:ident $unit:ident $what:literal;)*) => {
        /// What an assumption is about.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum Assumed { $(#[doc = $what] $id),* }

        /// All of them, for tests and bindings.
        pub const ASSUMED: &[Assumed] = &[$(Assumed::$id),*];

        impl Assumed {
            /// In words.
            #[must_use]
            pub const fn what(self) -> &'static str { match self { $(Assumed::$id => $what),* } }
            /// Whether it is a circumstance, yes or no, and not a figure.
            #[must_use]
            pub const fn is_circumstance(self) -> bool {
                self as u8 >= Assumed::SecondHand as u8
            }
            /// Unit of the figure; pure numbers where it is a circumstance: 1 for yes, 0 for no.
            #[must_use]
            pub const fn unit(self) -> Unit { match self { $(Assumed::$id => Unit::$unit),* } }
        }
    };
}

assumed! {
    Plate Millimetre "thickness of the plate at the seam";
    OtherPlate Millimetre "thickness of the second plate at the seam";
    WideStrap Millimetre "thickness of the single, wide or first strap";
    NarrowStrap Millimetre "thickness of the narrow or second strap";
    PlateWhenNew Millimetre "thickness of the plate when new, by which driven rivets are tabulated: as it is now";
    ShellPlate Millimetre "least thickness of the shell away from the seam";
    Hole Millimetre "driven rivet, which is the hole";
    Tension Megapascal "tensile strength of the plates";
    Bearing Megapascal "crushing strength of the plates";
    Shear Megapascal "shear strength of the rivets";
    SafetyFactor One "factor of safety";
    SecondHand One "boiler bought second-hand";
    PastAge One "boiler past its age limit";
    Tubular One "horizontal return tubular boiler";
    LongLap One "continuous lap longer than the rule book's limit";
    LapInFire One "lap exposed to fire";
    WeightOnSeam One "weight of the boiler pulls on the seam";
    HandRiveted One "riveted by hand";
    HolesPunched One "holes punched, not reamed";
    Stripped One "inspected stripped down";
    ThinningTogether One "plates and straps thin at the same rate, rivets stay as they are";
    RivetsSound One "rivets as sound as the plate holds them";
}

/// One thing that a result rests on.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Assumption {
    /// What it is about.
    pub about: Assumed,
    /// Row (from 1), 0 for the whole.
    pub row: u8,
    /// How it is known.
    pub basis: Basis,
    /// The rule-book entry behind it.
    pub entry: EntryNo,
    /// The figure, in the unit of [`Assumed::unit`].
    pub value: f64,
}

/// All that a result rests on, in the order in which it was needed.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Assumptions {
    list: heapless::Vec<Assumption, MAX_ASSUMPTIONS>,
    lost: bool,
}

impl Assumptions {
    /// None yet.
    #[must_use]
    pub const fn new() -> Self {
        Assumptions { list: heapless::Vec::new(), lost: false }
    }

    /// The assumptions in order.
    pub fn iter(&self) -> impl Iterator<Item = &Assumption> {
        self.list.iter()
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.list.len()
    }

    /// Whether there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.list.is_empty()
    }

    /// Whether one did not fit. The capacity covers every rating, and a test keeps it so.
    #[must_use]
    pub const fn lost(&self) -> bool {
        self.lost
    }

    /// The assumption about something at a row.
    #[must_use]
    pub fn find(&self, about: Assumed, row: u8) -> Option<&Assumption> {
        self.list.iter().find(|a| a.about == about && a.row == row)
    }

    /// Adds one, if it does not stand there already.
    pub(crate) fn put(&mut self, about: Assumed, row: u8, basis: Basis, entry: EntryNo, value: f64) {
        let new = Assumption { about, row, basis, entry, value };
        if self.find(about, row) != Some(&new) && self.list.push(new).is_err() {
            self.lost = true;
        }
    }

    /// A circumstance that may be stated; where it is not, it is taken as `safe`.
    pub(crate) fn circumstance(&mut self, about: Assumed, stated: Option<bool>, entry: EntryNo, safe: bool) -> bool {
        let basis = if stated.is_some() { Basis::Given } else { Basis::Assumed };
        let taken = stated.unwrap_or(safe);
        self.put(about, 0, basis, entry, if taken { 1.0 } else { 0.0 });
        taken
    }
}
