//! The formulas: one body each, generic over [`Num`](crate::step::Num), its equation above it in the trade's symbols.
//!
//! To add a formula: a body in one of the files here, a row in the table below, and a vector in `tests/vectors`.

mod pitch;
mod plate;
mod rivet;
mod spacing;

pub use pitch::{balanced_pitch, greatest_pitch, least_pitch};
pub use plate::{
    combined_percentage, crowded_holes, cut_strength, deducted, efficiency, even_share, gap_ratio, net_section,
    plate_percentage, solid, zigzag_gain, zigzag_net_section,
};
pub use rivet::{
    bearing, double_shear, half, hole_by_bearing, hole_by_root, plane_shear, rivet_percentage, row_hold, safety_ratio,
    shear_out, single_shear,
};
pub use spacing::{
    gauge, margin, mean, row_distance, row_distance_diagonal, row_pitch, strap_share, strap_thickened, times,
};

use crate::step::FormulaNo;

macro_rules! formulas {
    ($($id:ident $equation:literal $source:literal;)*) => {
        /// Every formula of the library.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum Formula { $(#[doc = $equation] $id),* }

        /// All formulas, in the order of the table.
        pub const FORMULAS: &[Formula] = &[$(Formula::$id),*];

        impl Formula {
            /// The number that steps carry.
            #[must_use]
            #[inline(always)]
            pub const fn no(self) -> FormulaNo { FormulaNo(self as u8) }
            /// The equation in the trade's symbols.
            #[must_use]
            pub const fn equation(self) -> &'static str { match self { $(Formula::$id => $equation),* } }
            /// Where it stands.
            #[must_use]
            pub const fn source(self) -> &'static str { match self { $(Formula::$id => $source),* } }
        }
    };
}

formulas! {
    HoleByRoot "d = a sqrt(t) + b" "Unwin's rule, Khurmi & Gupta ch. 9";
    HoleByBearing "d = 4 t sc/(pi ss z)" "shear equals bearing, Khurmi & Gupta Example 9.5";
    SingleShear "Fs = pi/4 d^2 ss" "strength of materials";
    DoubleShear "Fs = z pi/4 d^2 ss" "Reg. 177 Eq. (3), z = C";
    PlaneShear "Fs1 = z/2 pi/4 d^2 ss" "half of double shear, common practice";
    Half "Fs1 = Fs/2" "one of two planes that are both on the cut";
    SafetyRatio "x = F/F1" "Laying Out for Boiler Makers p. 33";
    Bearing "Fb = d t sc" "strength of materials";
    ShearOut "Fm = 2 (m - d/2) t sp" "common practice";
    RowHold "R = n F" "sum over the rivets of a row";
    NetSection "Ft = (p - n d) t st" "strength of materials";
    ZigzagGain "x = j g^2/(4 q)" "s^2/4g, AISC Design Example D.9";
    ZigzagNetSection "Ft = (p - n1 d1 - n2 d2 + x) t st" "AISC Design Example D.9";
    GapRatio "x = g/g min" "Reg. 184(d) Eq. (16)";
    CrowdedHoles "n' = (2 - g/g min) n" "Reg. 184(d) Eq. (16)";
    Deducted "dt = d + c" "AISC practice: hole plus allowance for the net section";
    Solid "F0 = p t st" "strength of materials";
    CutStrength "P = sum of net sections + sum of rows" "least cut";
    EvenShare "P = Ft N/(N - n)" "even share of the load, AISC practice (memory)";
    Efficiency "eta = P/F0" "Reg. 177";
    PlatePercentage "100 (p - n d)/p" "Reg. 177 Eq. (2)";
    RivetPercentage "100 A sum(n C) ss F/(p t st F1)" "Reg. 177 Eq. (3)";
    CombinedPercentage "100 (p - n2 d)/p + rivet % of the outer row" "Reg. 177 Eq. (4)";
    BalancedPitch "p = n d + (F - Fo)/(t st)" "tearing equals the rivets, Khurmi & Gupta ch. 9";
    LeastPitch "p min = (a d + b) n/n1" "boiler rules; the floor belongs to the densest row";
    GreatestPitch "p max = C t + K" "boiler rules";
    RowDistance "g = a (p - k d) + b d + c" "Reg. 184; Par. 182";
    RowDistanceDiagonal "g = sqrt((a p + b d)^2 - q^2)" "Rose, Modern Machine-Shop Practice";
    Gauge "q = p/(2 n)" "geometry of zig-zag rows";
    Margin "m = a d + b" "Reg. 184(e)";
    Times "x = a y" "limit in diameters or thicknesses";
    StrapShare "b = a t + c" "strap rules";
    StrapThickened "b = (a t + c)(p - n1 d1)/(p - nb db)" "strap rules, alternate outer rivets omitted";
    RowPitch "pr = p/n" "geometry";
    Mean "d = (d1 + d2)/2" "Reg. 184(c): mean of the holes of two rows";
}
