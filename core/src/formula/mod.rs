//! The formulas: one body each, generic over [`Num`](crate::step::Num), its equation above it in the trade's symbols.
//!
//! To add a formula: a body in one of the files here, a row in the table below, and a vector in `tests/vectors`.

mod group;
mod pitch;
mod plate;
mod rivet;
mod shop;
mod spacing;
mod vessel;

pub(crate) use group::HALF_INCH;
pub use group::{
    area_ratio, area_times, arm_squared, centroid, diameter_by_bearing, diameter_by_shear, diameter_by_shear_double,
    direct_share, direct_share_by_area, distance, eccentricity_allowance, instant_x, instant_y, moment_about,
    moment_sum, resultant, rivet_bearing_stress, rivet_shear_stress, rivet_shear_stress_double, safe_load, share_sum,
    sum, turning_share, turning_share_by_area,
};
pub use pitch::{balanced_pitch, greatest_pitch, least_pitch};
pub use plate::{
    combined_percentage, crowded_holes, cut_strength, deducted, efficiency, even_share, gap_ratio, net_section,
    plate_percentage, solid, strength_per_length, zigzag_gain, zigzag_net_section,
};
pub use rivet::{
    bearing, double_shear, half, hole_by_bearing, hole_by_root, plane_shear, rivet_percentage, row_hold, safety_ratio,
    shear_out, single_shear,
};
pub(crate) use shop::{MM_PER_M, MM3_PER_M3};
pub use shop::{
    allowance_by_table, allowance_in_diameters, allowance_small_machine, circle_inside, circle_outside, cylinder,
    difference, girth, grip_of_three, grip_of_two, hole_angle, hole_place, mass, mass_of_many, mass_per_metre,
    middle_circle, overlap, plate_volume, rivet_length, rivets_in_run, round_head, row_span, seam_mass, straight_run,
    strap_width, strip_of_run, strips_in_run, sunk_head, volume_sum,
};
pub use spacing::{
    gauge, head_beside_strap, heads_apart, margin, mean, row_distance, row_distance_diagonal, row_pitch, strap_share,
    strap_thickened, times,
};
pub use vessel::{
    allowance_sum, end_rivets, girth_demand, half_diameter, outside_radius, plate_for_pressure, pressure_inside,
    pressure_mean, pressure_radius, pressure_thirty_seconds, radius_share, ratio, safety_sum, share_of_plate,
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
    StrengthPerLength "P' = P/p" "geometry: strength of a strip for a millimetre of seam";
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
    Times "x = a y" "so many diameters or thicknesses";
    StrapShare "b = a t + c" "strap rules";
    StrapThickened "b = (a t + c)(p - n1 d1)/(p - nb db)" "strap rules, alternate outer rivets omitted";
    RowPitch "pr = p/n" "geometry";
    Mean "d = (d1 + d2)/2" "Reg. 184(c): mean of the holes of two rows";
    SnapHead "wh = k dr, k = 1.6" "snap heads, custom of the trade: PRACTICE";
    HeadBesideStrap "g = m + wh/2" "geometry: half a head beside the edge of the strap";
    HeadsInLine "g = (w1 + w2)/2" "geometry: heads that touch";
    HeadsApart "g = sqrt(((w1 + w2)/2)^2 - q^2)" "geometry: heads that touch, zig-zag";
    Ratio "x = WP/WPp" "definition";
    TestPressure "WPt = k WP" "hydrostatic test of the rule book";
    GirthPressure "WPg = 2 WPh" "geometry: the end pulls p D/4, the hoop p D/2 on each length";
    SafetyOfConstant "FS = 1.4 C" "what C stands for in (T - 2) S J/(C D)";
    ShareOfEfficiency "Jg = k J" "girth rules of the rule book";
    AlongEfficiency "Jl = Jc" "taken over from the seam along the shell";
    GirthDemand "Jg = J WP/WPg" "load p D/4 on each length of girth";
    PlateForPressure "tf = c + (t - c) WPa/WP" "the formula of the pressure, solved for the plate";
    ShareOfPlate "Jg = k tf/t" "Reg. 104: percentages on the thickness by Eq. (1)";
    EndRivets "Ne = WP D^2 FS/(d^2 ss z)" "Khurmi & Gupta Example 9.10: load on the end over one rivet";
    AllowanceSum "c = c0 + c1" "allowance of the book and the one given";
    HalfDiameter "R = D/2" "geometry";
    RadiusShare "x = t/R" "Oklahoma 380:25-5-7";
    OutsideRadius "Ra = R + t" "geometry";
    SafetySum "FS = f + fa" "classes by maximum, surcharges added";
    PressureInside "WP = 2 st J (t - c)/(FS D)" "Khurmi & Gupta ch. 9; Reichs-Gesetzblatt 1909, Land III.1: p = 200 K z (s - 1)/(D x)";
    PressureThirtySeconds "WP = 2 st J (t - c)/(1.4 C D)" "(T - 2) S J/(C D), T in 1/32 in, S in tons/in2, J in %: Indian Reg. 176 Eq. (1) (memory)";
    PressureRadius "WP = st (t - c) J/(R FS)" "TS t E/(R FS), US state rules";
    PressureMean "WP = 2 st J (t - c)/(FS (D + t - c))" "Indian Reg. 366";
    StraightRun "Lr = Ls - e1 - e2" "geometry";
    MiddleCircle "Dc = Di + t" "geometry: middle of the ring";
    CircleOutside "Do = Dc + t + t2" "geometry: middle of the next ply outside";
    CircleInside "Do = Dc - t - t2" "geometry: middle of the next ply inside";
    Girth "Lr = pi Dc" "geometry";
    StripsInRun "kx = Lr/p" "geometry";
    StripOfRun "p = Lr/ks" "geometry";
    Difference "u = a - b" "geometry";
    RivetsInRun "Nr = s (ks n + e)" "geometry: e = 1 where a last hole closes the row";
    HolePlace "x = x1 + p k" "geometry";
    HoleAngle "a = 360 x/Lr" "geometry";
    GripOfTwo "G = t + t2" "geometry";
    GripOfThree "G = t + t2 + t3" "geometry";
    AllowanceSteelButton "Z = k d, k = 1.5 up to d = 20 mm, 1.6 above" "trainees' handbook, manual riveting: button heads in steel construction";
    AllowanceBoilerButton "Z = k d, k = 1.7 up to d = 20 mm, 1.8 above" "trainees' handbook, manual riveting: button heads in boilers";
    AllowanceCountersunk "Z = 0.5 d" "trainees' handbook, manual riveting: countersunk heads";
    AllowanceHand "Z = 7/4 d" "hand riveting, Roloff/Matek (second-hand)";
    AllowanceSmallMachine "Z = 0.1 G + 1.3 d" "small machine-set rivets, a maker's page: l = 1.1 G + 1.3 d";
    AllowanceBridgeTable "Z = z0 + 0.1 G" "bridge rivets, table of Beuchelt & Co. p. 327; the fit is ours";
    RivetLength "l = G + Z" "rivet length rules";
    RowSpan "s = sum of g" "geometry";
    Overlap "w = s + 2 m" "geometry";
    StrapWidth "w = 2 (s + 2 m)" "geometry";
    Cylinder "V = pi/4 d^2 l" "geometry";
    RoundHead "V = pi h (3/4 w^2 + h^2)/6" "geometry: segment of a sphere";
    SunkHead "V = pi h (w^2 + w d - 2 d^2)/12" "geometry: cone less shank";
    Mass "M = V rho/10^9" "volume by density: 10^9 mm3 in a cubic metre, 1728 in3 in a cubic foot";
    PlateVolume "V = w l b" "geometry";
    VolumeSum "V = V1 + V2" "geometry";
    MassOfMany "M = sum of n m" "geometry";
    SeamMass "M = Mr + Ms + Ml - Mh" "rivets, straps and lap, less the holes: what the seam adds to plates that meet edge to edge";
    MassPerMetre "M1 = 1000 M/L" "mass over length: 1000 mm in a metre, 12 in in a foot";
    Largest "dL = greatest ds" "of the rivets of the group";
    AreaRatio "ka = ds^2/dL^2" "geometry: areas of circles";
    AreaTimes "a = ka x" "weighted by areas";
    GroupSum "S = sum of x" "added up, rivet by rivet";
    Centroid "Xc = SX/Ng" "Khurmi & Gupta Example 9.14; areas in place of numbers where they differ";
    FromCentroid "u = X - Xc" "geometry";
    ArmSquared "r2 = u^2 + v^2" "Pythagoras";
    MomentAbout "MG = Py eX - Px eY" "statics";
    MomentSum "MG = Py eX - Px eY + M0" "statics";
    MomentTaken "MG = M0" "statics: a couple turns alike about every point";
    EccentricityAllowance "er = (1 + nv)/2 inches" "old AISC Manual, Hicks p. 1.83";
    EccentricityLess "ee = eX - er" "old AISC Manual, Hicks p. 1.83";
    EccentricityLessLeft "ee = eX + er" "the same, load on the left";
    InstantX "XI = Xc - Py Ip/(Ng MG)" "elastic group, Hicks p. 1.83: h = Ip/(Ng e)";
    InstantY "YI = Yc + Px Ip/(Ng MG)" "elastic group, Hicks p. 1.83: h = Ip/(Ng e)";
    Distance "h = sqrt((X1 - X2)^2 + (Y1 - Y2)^2)" "Pythagoras";
    DirectShare "D = P/Ng" "Khurmi & Gupta Example 9.14: equal shares";
    DirectShareByArea "D = P ka/Sa" "shares by area";
    TurningShare "T = MG x/Ip" "Khurmi & Gupta Example 9.14: shares as the distances from the centroid";
    TurningShareByArea "T = MG ka x/Ip" "the same, by area";
    ShareSum "F = D + T" "sum of vectors, by components";
    Resultant "F = sqrt(Fx^2 + Fy^2)" "Pythagoras";
    GreatestForce "FM = greatest FR" "of equal ones the first";
    RivetShearStress "s = F/(pi/4 d^2)" "strength of materials";
    RivetShearStressDouble "s = F/(z pi/4 d^2)" "Reg. 177 Eq. (3), z = C";
    RivetBearingStress "s = F/(d t)" "strength of materials";
    GreatestStress "sM = greatest sR" "of equal ones the first";
    Use "U = s/s permitted" "definition";
    SafeLoad "Pa = P/U" "the elastic shares grow with the load";
    DiameterByShear "d = sqrt(4 F/(pi ss))" "Khurmi & Gupta Example 9.14";
    DiameterByShearDouble "d = sqrt(4 F/(pi z ss))" "Reg. 177 Eq. (3), z = C";
    DiameterByBearing "d = F/(t sc)" "strength of materials";
}
