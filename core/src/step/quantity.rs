//! The table of quantities: symbol, how LaTeX sets it, unit, words.

use crate::bounds::Unit;

macro_rules! quantities {
    ($($id:ident $symbol:literal $latex:literal $unit:ident $what:literal;)*) => {
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
            /// The symbol as LaTeX sets it, in mathematics mode.
            #[must_use]
            pub const fn latex(self) -> &'static str { match self { $(Quantity::$id => $latex),* } }
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
    Plate "t" "t" Millimetre "thickness of the plate";
    OtherPlate "t2" "t_2" Millimetre "thickness of the second plate, or of the single or wide strap";
    ThinnerPlate "tmin" "t_{\\min}" Millimetre "thickness of the thinner plate";
    Narrow "t3" "t_3" Millimetre "thickness of the narrow or second strap";
    Pitch "p" "p" Millimetre "pitch of the outer row, or width of the strip";
    Hole "d" "d" Millimetre "hole diameter";
    MeanHole "dm" "d_m" Millimetre "mean diameter of two rows";
    Rivet "dr" "d_r" Millimetre "rivet diameter";
    TearDiameter "dt" "d_t" Millimetre "diameter deducted in tearing";
    ShearDiameter "ds" "d_s" Millimetre "diameter that counts in shear";
    BearingDiameter "db" "d_b" Millimetre "diameter that counts in bearing";
    Tension "st" "\\sigma_t" Megapascal "tensile stress of the plate";
    OtherTension "st2" "\\sigma_{t2}" Megapascal "tensile stress of the second plate or of the straps";
    Shear "ss" "\\tau" Megapascal "shear stress of the rivets";
    Bearing "sc" "\\sigma_c" Megapascal "bearing stress of the plate";
    OtherBearing "sc2" "\\sigma_{c2}" Megapascal "bearing stress of the second plate or of the straps";
    PlateShear "sp" "\\tau_p" Megapascal "shear stress of the plate at the margin";
    OtherPlateShear "sp2" "\\tau_{p2}" Megapascal "shear stress of the second plate or of the straps at their margin";
    RivetsInRow "n" "n" Count "rivets of the row in the strip";
    RivetsInAll "N" "N" Count "rivets in the strip";
    Coefficient "k" "k" One "constant of the rule book";
    PitchShare "kp" "k_p" One "share of the pitch, by the rule book";
    HolesOff "kn" "k_n" One "holes taken off the pitch, by the rule book";
    DiameterShare "kd" "k_d" One "share of the diameter, by the rule book";
    SeamSafety "f" "f" One "factor of safety of the seam";
    SeamDivisor "f1" "f_1" One "divisor of the rule book";
    SeamRatio "kF" "k_F" One "factor of safety of the seam over the divisor of the rule book";
    RootCoefficient "a" "a" RootMillimetre "constant of the square-root rule";
    Allowance "c" "c" Millimetre "allowance of the rule book";
    DoubleShear "z" "z" One "strength of a rivet in double shear over single shear";
    Planes "z" "z" One "shear areas that count for one rivet";
    RivetShear "Fs" "F_s" Newton "one rivet in shear";
    LoneShear "Fs1" "F_{s1}" Newton "one plane of a rivet in double shear";
    HalfShear "Fsh" "F_{sh}" Newton "half of a rivet in double shear";
    RivetBearing "Fb" "F_b" Newton "one rivet bearing on the plate";
    RivetBearingOther "Fb2" "F_{b2}" Newton "one rivet bearing on the second plate or the wide strap";
    RivetBearingNarrow "Fb3" "F_{b3}" Newton "one rivet bearing on the narrow strap";
    RivetShearOut "Fm" "F_m" Newton "one rivet shearing out the plate at the margin";
    RivetShearOutOther "Fm2" "F_{m2}" Newton "one rivet shearing out the second plate or the wide strap";
    RivetShearOutNarrow "Fm3" "F_{m3}" Newton "one rivet shearing out the narrow strap";
    PlateTear "Ft" "F_t" Newton "net section of the plate at the row";
    OtherTear "Ft2" "F_{t2}" Newton "net section of the second plate or wide strap at the row";
    ZigzagTear "Fz" "F_z" Newton "net section along the zig-zag from the row to its neighbour";
    NarrowTear "Ft3" "F_{t3}" Newton "net section of the narrow strap at the row";
    Solid "F0" "F_0" Newton "solid strip";
    OtherSolid "F02" "F_{02}" Newton "solid strip of the second plate";
    RowRivetsHold "R" "R" Newton "rivets of the row";
    RowHoldOther "Rw" "R_w" Newton "rivets of the row, plane of the wide strap alone";
    RowHoldNarrow "Rn" "R_n" Newton "rivets of the row, plane of the narrow strap alone";
    RivetLeast "F" "F" Newton "one rivet, its weakest fate";
    RivetLeastOther "Fw" "F_w" Newton "one rivet, plane of the wide strap alone, its weakest fate";
    RivetLeastNarrow "Fn" "F_n" Newton "one rivet, plane of the narrow strap alone, its weakest fate";
    TearOuter "Pt" "P_t" Newton "tearing at the outer row";
    ShearAll "Ps" "P_s" Newton "all rivets in shear";
    RivetsWeaker "Pw" "P_w" Newton "all rivets, each by the weaker of shear and bearing";
    BearingAll "Pc" "P_c" Newton "all rivets in bearing";
    ModeStrength "P" "P" Newton "strength of the mode";
    StrengthPerLength "P'" "P'" One "strength for a millimetre of seam, N/mm";
    Efficiency "eta" "\\eta" One "efficiency over all modes";
    BookEfficiency "J" "J" One "efficiency by the modes that the rule book counts";
    CreditCap "Jmax" "J_{\\max}" One "greatest efficiency credited";
    Credited "Jc" "J_c" One "efficiency credited";
    ShellDiameter "D" "D" Millimetre "inside diameter of the shell";
    ShellRadius "Ri" "R_i" Millimetre "inside radius of the shell";
    OutsideRadius "Ra" "R_a" Millimetre "outside radius of the shell";
    RadiusShare "xr" "x_r" One "plate over inside radius";
    Corrosion "c1" "c_1" Millimetre "corrosion allowance";
    PlateLoss "cp" "c_p" Millimetre "taken off the plate by the formula of the pressure";
    PressureConstant "C" "C" One "constant of the formula of the pressure";
    SafetyClass "fk" "f_k" One "factor of safety of a class";
    SafetyAdded "fa" "f_a" One "surcharge on the factor of safety";
    Safety "FS" "F_S" One "factor of safety";
    AllowedPressure "WP" "W_P" Megapascal "working pressure by the formula of the rule book";
    SolidPressure "WPs" "W_{Ps}" Megapascal "working pressure that the solid plate allows";
    LeastPressure "WPm" "W_{Pm}" Megapascal "working pressure allowed";
    ShellPlate "ts" "t_s" Millimetre "least plate of the shell away from the seam";
    PressureLimit "WPl" "W_{Pl}" Megapascal "greatest working pressure of the rule book";
    PresentPressure "WPp" "W_{Pp}" Megapascal "present working pressure";
    PressureRatio "xp" "x_p" One "pressure allowed over the present one";
    TestPressure "WPt" "W_{Pt}" Megapascal "hydrostatic test pressure";
    GirthPressure "WPg" "W_{Pg}" Megapascal "working pressure that the girth seam allows";
    GirthAsHoop "WPh" "W_{Ph}" Megapascal "working pressure of the girth joint if it lay along the shell";
    GirthSolid "WPgs" "W_{Pgs}" Megapascal "the same of a solid plate";
    WorkingPressure "WPa" "W_{Pa}" Megapascal "working pressure asked for";
    AlongEfficiency "Jl" "J_l" One "efficiency credited of the seam along the shell";
    GirthByLoad "Jgl" "J_{gl}" One "efficiency that the load on the end needs of the girth seam";
    GirthByPercent "Jgp" "J_{gp}" One "efficiency that the rule book asks of the girth seam";
    GirthByShare "Jgs" "J_{gs}" One "efficiency that the seam along the shell asks of the girth seam";
    GirthNeeded "Jg" "J_g" One "efficiency that the girth seam needs";
    PlateByFormula "tf" "t_f" Millimetre "plate that the formula of the pressure asks for";
    EndRivets "Ne" "N_e" One "rivets that the load on the end needs";
    PlatePercent "plate%" "\\%_p" One "plate percentage";
    RivetPercent "rivet%" "\\%_r" One "rivet percentage";
    CombinedPercent "comb%" "\\%_c" One "combined percentage";
    RowGap "g" "g" Millimetre "distance between rows";
    RowGapRatio "xg" "x_g" One "distance between rows over the least";
    HolesCounted "n'" "n'" One "holes that count in the row";
    ZigzagGain "x" "x" Millimetre "net width given back by the diagonals";
    RowGapThinned "gh" "g_h" Millimetre "distance between rows by the rule for thinned-out rows";
    RowGapEqual "ge" "g_e" Millimetre "distance between rows by the rule for equal rows";
    RowGapLeast "gmin" "g_{\\min}" Millimetre "least distance between rows";
    RowGapBeside "gs" "g_s" Millimetre "least distance between rows for heads beside the edge of the narrow strap";
    RowGapApart "gr" "g_r" Millimetre "least distance between rows for heads clear of each other";
    Margin "m" "m" Millimetre "margin";
    MarginLeast "mmin" "m_{\\min}" Millimetre "least margin";
    MarginByPlate "mt" "m_t" Millimetre "greatest margin in thicknesses of the plate";
    MarginLimit "ml" "m_l" Millimetre "greatest margin of any plate";
    MarginGreatest "mmax" "m_{\\max}" Millimetre "greatest margin";
    PitchLeast "pmin" "p_{\\min}" Millimetre "least pitch";
    PitchByPlate "pe" "p_e" Millimetre "greatest pitch in thicknesses of the plate";
    PitchLimit "pl" "p_l" Millimetre "greatest pitch of any plate";
    PitchGreatest "pmax" "p_{\\max}" Millimetre "greatest pitch";
    PitchByShear "ps" "p_s" Millimetre "pitch balanced on the outer row against the rivets in shear";
    PitchByWeaker "pw" "p_w" Millimetre "pitch balanced on the outer row against the weaker of shear and bearing";
    PitchByAllModes "pa" "p_a" Millimetre "pitch at which all plate modes balance the rivets";
    OtherPitchByShear "ps2" "p_{s2}" Millimetre "plate B: pitch balanced on its outer row against the rivets in shear";
    OtherPitchByWeaker "pw2" "p_{w2}" Millimetre "plate B: pitch balanced on its outer row against the weaker of shear and bearing";
    OtherPitchByAllModes "pa2" "p_{a2}" Millimetre "plate B: pitch at which its modes balance the rivets";
    PitchBalanced "p0" "p_0" Millimetre "balanced pitch taken by the rule book";
    StrapShare "b0" "b_0" Millimetre "thickness of the strap by the share of the plate";
    StrapThick "bt" "b_t" Millimetre "thickness of the strap, thickened for the rivets left out";
    StrapFloor "b1" "b_1" Millimetre "least thickness of any strap";
    StrapLeast "bmin" "b_{\\min}" Millimetre "least thickness of the strap";
    Gauge "q" "q" Millimetre "distance across between holes of neighbouring rows";
    Load "L" "L" Newton "load on the strip";
    Limit "lim" "\\lim" Millimetre "limit of the rule book";
    Grip "G" "G" Millimetre "grip of the rivets";
    SeamLength "Ls" "L_s" Millimetre "length of the seam";
    EndDistance "e" "e" Millimetre "end of the plate to the first or the last hole";
    Run "Lr" "L_r" Millimetre "length that the pitches divide: from the first hole to the last, or the girth";
    InsideDiameter "Di" "D_i" Millimetre "inside diameter of the ring";
    Circle "Dc" "D_c" Millimetre "circle of holes";
    OtherCircle "Do" "D_o" Millimetre "middle circle of the second ring, the single or the wide strap";
    NarrowCircle "Dn" "D_n" Millimetre "middle circle of the narrow or second strap";
    OtherGirth "Lo" "L_o" Millimetre "girth of the second ring, the single or the wide strap";
    NarrowGirth "Ln" "L_n" Millimetre "girth of the narrow or second strap";
    Strips "ks" "k_s" Count "whole strips in the run";
    StripsFewer "kf" "k_f" Count "whole strips in the run, the fewer and wider";
    StripsMore "km" "k_m" Count "whole strips in the run, the more and narrower";
    PitchFewer "pf" "p_f" Millimetre "pitch of the outer row, or width of the strip, with the fewer strips";
    PitchMore "pm" "p_m" Millimetre "pitch of the outer row, or width of the strip, with the more strips";
    PitchOver "uf" "u_f" Millimetre "the wider pitch above the one asked for";
    PitchUnder "um" "u_m" Millimetre "the narrower pitch below the one asked for";
    StripsExact "kx" "k_x" One "strips in the run before they are made whole";
    FirstHole "x1" "x_1" Millimetre "first hole from the datum";
    Sides "s" "s" Count "sides of the butt";
    LastHoles "e1" "e_1" Count "last hole that closes the row";
    RowRivets "Nr" "N_r" Count "rivets of the row in the seam";
    LengthAllowance "Z" "Z" Millimetre "length of the rivet beyond the grip";
    LengthShare "kz" "k_z" One "length of the rivet beyond the grip, in diameters of the rivet";
    AllowanceBase "z0" "z_0" Millimetre "allowance of the table, by the diameter";
    RivetLength "l" "l" Millimetre "length of the rivet under the head";
    HeadWidth "wh" "w_h" Millimetre "width of the head";
    SetWidth "ws" "w_s" Millimetre "width of the set head";
    HeadHeight "h" "h" Millimetre "height of the set head";
    HeadWidthShare "kw" "k_w" One "width of the head in diameters of the rivet";
    HeadHeightShare "kh" "k_h" One "height of the head in diameters of the rivet";
    ClosingWidth "wc" "w_c" Millimetre "width of the closing head";
    ClosingHeight "hc" "h_c" Millimetre "height of the closing head";
    RowSpan "sg" "s_g" Millimetre "first row to last row";
    WideWidth "w" "w" Millimetre "overlap, or width of the single or wide strap";
    NarrowWidth "wn" "w_n" Millimetre "width of the narrow or second strap";
    Density "rho" "\\rho" KilogramPerCubicMetre "density of plates and rivets";
    ShankVolume "Vs" "V_s" CubicMillimetre "volume of the shank";
    HeadVolume "Vh" "V_h" CubicMillimetre "volume of the set head beyond the shank";
    ClosingVolume "Vc" "V_c" CubicMillimetre "volume of the closing head beyond the shank";
    RivetVolume "Vr" "V_r" CubicMillimetre "volume of one rivet as bought, shank and set head";
    HoleVolume "Vo" "V_o" CubicMillimetre "volume drilled out for one rivet";
    PlateVolume "Vp" "V_p" CubicMillimetre "volume of a strap or of the overlap";
    RivetMass "mr" "m_r" Kilogram "mass of one rivet";
    HoleMass "mo" "m_o" Kilogram "mass drilled out for one rivet";
    RivetsMass "Mr" "M_r" Kilogram "mass of the rivets";
    WideMass "Mw" "M_w" Kilogram "mass of the single or wide strap";
    NarrowMass "Mn" "M_n" Kilogram "mass of the narrow or second strap";
    StrapsMass "Ms" "M_s" Kilogram "mass of the straps";
    OverlapMass "Ml" "M_l" Kilogram "mass of one plate over the lap";
    HolesMass "Mh" "M_h" Kilogram "mass drilled out";
    SeamMass "M" "M" Kilogram "mass that the seam adds";
    MetreMass "M1" "M_1" KilogramPerMetre "the same for a unit of length";
    GroupRivets "Ng" "N_g" Count "rivets of the group";
    RivetX "X" "X" Millimetre "place of the rivet, along x";
    RivetY "Y" "Y" Millimetre "place of the rivet, along y";
    LargestDiameter "dL" "d_L" Millimetre "largest diameter that counts in shear";
    AreaRatio "ka" "k_a" One "area of the rivet over that of the largest";
    AreaSum "Sa" "S_a" One "areas of all rivets over that of the largest";
    AreaX "aX" "a_X" Millimetre "the same times its place, along x";
    AreaY "aY" "a_Y" Millimetre "the same times its place, along y";
    SumX "SX" "S_X" Millimetre "sum over the rivets, along x";
    SumY "SY" "S_Y" Millimetre "sum over the rivets, along y";
    CentroidX "Xc" "X_c" Millimetre "centroid of the group, along x";
    CentroidY "Yc" "Y_c" Millimetre "centroid of the group, along y";
    RivetArmX "u" "u" Millimetre "rivet from the centroid, along x";
    RivetArmY "v" "v" Millimetre "rivet from the centroid, along y";
    ArmSquared "r2" "r^2" SquareMillimetre "square of the distance from the centroid";
    AreaArm "ar" "a_r" SquareMillimetre "the same times the share of the area";
    PolarMoment "Ip" "I_p" SquareMillimetre "polar moment of the group, for an area of one";
    LoadX "Px" "P_x" Newton "load along x";
    LoadY "Py" "P_y" Newton "load along y";
    LoadInAll "PL" "P_L" Newton "load, whatever its direction";
    LoadAtX "XP" "X_P" Millimetre "point of the load, along x";
    LoadAtY "YP" "Y_P" Millimetre "point of the load, along y";
    EccentricX "eX" "e_X" Millimetre "load from the centroid, along x";
    EccentricY "eY" "e_Y" Millimetre "load from the centroid, along y";
    RowOfGroup "nv" "n_v" Count "rivets of the group in one vertical row";
    EccentricityOff "er" "e_r" Millimetre "allowance on the eccentricity";
    EccentricityLeft "ee" "e_e" Millimetre "effective eccentricity";
    Couple "M0" "M_0" NewtonMillimetre "couple on the group, anticlockwise";
    GroupMoment "MG" "M_G" NewtonMillimetre "moment about the centroid, anticlockwise";
    CentreX "XI" "X_I" Millimetre "instantaneous centre, about which the group turns, along x";
    CentreY "YI" "Y_I" Millimetre "instantaneous centre, about which the group turns, along y";
    CentreDistance "hI" "h_I" Millimetre "instantaneous centre from the centroid";
    DirectX "DX" "D_X" Newton "direct share of a rivet, along x";
    DirectY "DY" "D_Y" Newton "direct share of a rivet, along y";
    TurningX "TX" "T_X" Newton "share of the moment, along x";
    TurningY "TY" "T_Y" Newton "share of the moment, along y";
    ForceX "FX" "F_X" Newton "force on the rivet, along x";
    ForceY "FY" "F_Y" Newton "force on the rivet, along y";
    RivetForce "FR" "F_R" Newton "force on the rivet";
    GreatestForce "FM" "F_M" Newton "force on the rivet that bears most";
    RivetShearStress "sR" "\\tau_R" Megapascal "shear stress in the rivet";
    RivetBearingStress "cR" "\\sigma_R" Megapascal "bearing stress at the rivet";
    GreatestShear "sM" "\\tau_M" Megapascal "greatest shear stress in a rivet";
    GreatestBearing "cM" "\\sigma_M" Megapascal "greatest bearing stress at a rivet";
    ShearUse "Us" "U_s" One "shear stress over the one permitted";
    BearingUse "Ub" "U_b" One "bearing stress over the one permitted";
    Use "U" "U" One "stress over the one permitted, the greater of both";
    SafeLoad "Pa" "P_a" Newton "load allowed along the same line";
    SafeCouple "Ma" "M_a" NewtonMillimetre "couple allowed";
    DiameterByShear "dF" "d_F" Millimetre "diameter needed in shear";
    DiameterByBearing "dC" "d_C" Millimetre "diameter needed in bearing";
    DiameterNeeded "dN" "d_N" Millimetre "diameter needed";
}
