//! One table of every bounded input. Checks, error texts, test generators and (later) the bindings all read it.

use crate::error::{Error, ErrorKind};

/// The unit in which a bounded value is kept inside the library.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub enum Unit {
    /// A pure number.
    One,
    /// Millimetre.
    Millimetre,
    /// Newton per square millimetre.
    Megapascal,
    /// Newton.
    Newton,
    /// Square root of a millimetre (the constant of a square-root rule).
    RootMillimetre,
    /// A whole number.
    Count,
    /// Square millimetre.
    SquareMillimetre,
    /// Kilogram per cubic metre.
    KilogramPerCubicMetre,
    /// Cubic millimetre.
    CubicMillimetre,
    /// Kilogram.
    Kilogram,
    /// Kilogram for a metre of seam.
    KilogramPerMetre,
    /// Newton-millimetre.
    NewtonMillimetre,
}

impl Unit {
    /// The unit's symbol; empty for pure numbers and counts.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Unit::One | Unit::Count => "",
            Unit::Millimetre => "mm",
            Unit::Megapascal => "MPa",
            Unit::Newton => "N",
            Unit::RootMillimetre => "mm^0.5",
            Unit::SquareMillimetre => "mm2",
            Unit::KilogramPerCubicMetre => "kg/m3",
            Unit::CubicMillimetre => "mm3",
            Unit::Kilogram => "kg",
            Unit::KilogramPerMetre => "kg/m",
            Unit::NewtonMillimetre => "N mm",
        }
    }
}

/// What the table says of one input.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Bound {
    /// The name used in errors, flags and bindings.
    pub key: &'static str,
    /// Unit of `lo`, `hi` and of the value.
    pub unit: Unit,
    /// Least value allowed.
    pub lo: f64,
    /// Greatest value allowed.
    pub hi: f64,
    /// What the value is, in words.
    pub what: &'static str,
}

macro_rules! fields {
    ($($id:ident $key:literal $unit:ident $lo:literal ..= $hi:literal $what:literal;)*) => {
        /// Every input that the library bounds, and the few that it can only call inconsistent.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum Field { $(#[doc = $what] $id),* }

        /// All fields, in the order of the table.
        pub const FIELDS: &[Field] = &[$(Field::$id),*];

        /// Least and greatest value of each field, apart from the words: that is all a check needs.
        static LIMITS: [(f64, f64); FIELDS.len()] = [$(($lo, $hi)),*];

        impl Field {
            /// This field's row of the table.
            #[must_use]
            pub const fn bound(self) -> Bound {
                match self { $(Field::$id => Bound { key: $key, unit: Unit::$unit, lo: $lo, hi: $hi, what: $what }),* }
            }
        }
    };
}

fields! {
    Plate          "plate"            Millimetre 0.5 ..= 200.0    "thickness of the plate";
    OtherPlate     "other_plate"      Millimetre 0.5 ..= 200.0    "thickness of the second plate of a lap";
    WideStrap      "wide_strap"       Millimetre 0.5 ..= 200.0    "thickness of the single or the wide strap";
    NarrowStrap    "narrow_strap"     Millimetre 0.5 ..= 200.0    "thickness of the second or the narrow strap";
    Pitch          "pitch"            Millimetre 2.0 ..= 20000.0  "pitch of the seam, or width of the tie";
    Hole           "hole"             Millimetre 1.0 ..= 150.0    "diameter of the rivet hole";
    Rivet          "rivet"            Millimetre 1.0 ..= 150.0    "diameter of the cold rivet";
    BackPitch      "back_pitch"       Millimetre 1.0 ..= 2000.0   "distance between two rows";
    Margin         "margin"           Millimetre 1.0 ..= 1000.0   "distance from the centre of the edge row to the plate edge";
    Tension        "tension"          Megapascal 0.01 ..= 5000.0  "tensile stress of the plate";
    OtherTension   "other_tension"    Megapascal 0.01 ..= 5000.0  "tensile stress of the second plate or of the straps";
    Shear          "shear"            Megapascal 0.01 ..= 5000.0  "shear stress of the rivets, single shear";
    Bearing        "bearing"          Megapascal 0.01 ..= 10000.0 "bearing stress of the plate";
    OtherBearing   "other_bearing"    Megapascal 0.01 ..= 10000.0 "bearing stress of the second plate or of the straps";
    PlateShear     "plate_shear"      Megapascal 0.01 ..= 5000.0  "shear stress of the plate, for shear-out at the margin";
    SafetyFactor   "safety_factor"    One        1.0 ..= 20.0     "factor of safety";
    Rows           "rows"             Count      1.0 ..= 8.0      "number of rows";
    RowRivets      "row_rivets"       Count      1.0 ..= 60.0     "rivets of one row in the strip";
    ShearPlanes    "shear_planes"     Count      1.0 ..= 2.0      "shear planes of the rivets of one row";
    RunLength      "run_length"       Millimetre 2.0 ..= 500000.0 "length of the seam";
    RingDiameter   "ring_diameter"    Millimetre 20.0 ..= 100000.0 "diameter of the ring";
    Pressure       "pressure"         Megapascal 0.0001 ..= 200.0  "working pressure, gauge";
    Corrosion      "corrosion"        Millimetre 0.0 ..= 50.0     "corrosion allowance";
    WastageRate    "wastage_rate"     Millimetre 0.0 ..= 50.0     "loss of thickness in a year";
    Years          "years"            One        0.0 ..= 500.0    "years";
    LapLength      "lap_length"       Millimetre 2.0 ..= 100000.0 "length of a continuous lap along the shell";
    SeamEfficiency "seam_efficiency"  One        0.0 ..= 1.0      "efficiency of a seam";
    EndDistance    "end_distance"     Millimetre 1.0 ..= 1000.0   "distance from the first or last rivet to the end of the seam";
    StockStep      "stock_step"       Millimetre 0.1 ..= 100.0    "step of rivet lengths in stock";
    Density        "density"          KilogramPerCubicMetre 500.0 ..= 25000.0 "density of plate and rivets";
    Tolerance      "tolerance"        Millimetre 0.0 ..= 200.0    "tolerance of a dimension, to either side";
    Figure         "figure"           One        0.0 ..= 0.0      "stated figure";
    BatchRows      "batch_rows"       Count      0.0 ..= 0.0      "rows of a column of a batch";
    Form           "form"             One        0.0 ..= 0.0      "form of the joint";
    RuleEntry      "rule"             One        0.0 ..= 0.0      "entry of the rule book";
    Text           "text"             One        0.0 ..= 0.0      "text given for a number";
    LinesPerPage   "lines_per_page"   Count      30.0 ..= 300.0   "lines of a page of plain text";
    GroupRivets    "group_rivets"     Count      1.0 ..= 32.0     "rivets of a group";
    RivetX         "rivet_x"          Millimetre -100000.0 ..= 100000.0 "place of a rivet of a group, along x";
    RivetY         "rivet_y"          Millimetre -100000.0 ..= 100000.0 "place of a rivet of a group, along y";
    RivetDistance  "rivet_distance"   Millimetre 1.0 ..= 300000.0 "distance between two rivets of a group";
    LoadX          "load_x"           Newton     -1000000000.0 ..= 1000000000.0 "load on a group, along x";
    LoadY          "load_y"           Newton     -1000000000.0 ..= 1000000000.0 "load on a group, along y";
    Load           "load"             Newton     0.001 ..= 2000000000.0 "load on a group, whatever its direction";
    LoadAtX        "load_at_x"        Millimetre -1000000.0 ..= 1000000.0 "point of the load, along x";
    LoadAtY        "load_at_y"        Millimetre -1000000.0 ..= 1000000.0 "point of the load, along y";
    Couple         "couple"           NewtonMillimetre -1000000000000.0 ..= 1000000000000.0 "couple on a group";
    Eccentricity   "eccentricity"     Millimetre 0.0 ..= 1200000.0 "distance of a load from the centroid of a group";
}

impl Field {
    /// Least and greatest value, without the words.
    pub(crate) fn limits(self) -> (f64, f64) {
        LIMITS.get(self as usize).copied().unwrap_or((0.0, 0.0))
    }

    /// Passes a value that is finite and inside the table's range.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::TooSmall`] or [`ErrorKind::TooLarge`], with the value and the limit.
    ///
    /// ```
    /// use seamwright::{bounds::Field, error::ErrorKind};
    /// assert_eq!(Field::Plate.check(12.0), Ok(12.0));
    /// assert_eq!(Field::Plate.check(-1.0).unwrap_err().kind, ErrorKind::TooSmall);
    /// ```
    #[inline(never)]
    pub fn check(self, value: f64) -> Result<f64, Error> {
        let (lo, hi) = self.limits();
        if !value.is_finite() {
            Err(Error::new(ErrorKind::NotFinite, self).value(value))
        } else if value < lo {
            Err(Error::new(ErrorKind::TooSmall, self).value(value).limit(lo))
        } else if value > hi {
            Err(Error::new(ErrorKind::TooLarge, self).value(value).limit(hi))
        } else {
            Ok(value)
        }
    }
}
