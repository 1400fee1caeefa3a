//! A group of rivets under a load that does not pass through its centroid: elastic shares.
#![allow(clippy::arithmetic_side_effects, reason = "formula bodies are arithmetic on a generic number")]

use core::f64::consts::PI;

use crate::step::Num;

/// Half an inch in millimetres: the old AISC allowance is in inches. A sheet in inches shows 0.5.
pub(crate) const HALF_INCH: f64 = 12.7;

/// `ka = d^2/dm^2`: the area of a rivet over that of the largest.
#[inline(always)]
pub fn area_ratio<N: Num>(d: N, largest: N) -> N {
    d * d / (largest * largest)
}

/// `a = ka x`
#[inline(always)]
pub fn area_times<N: Num>(k: N, x: N) -> N {
    k * x
}

/// `S = sum of x`, one addition of it.
#[inline(always)]
pub fn sum<N: Num>(so_far: N, x: N) -> N {
    so_far + x
}

/// `Xc = SX/Ng`, with areas in place of numbers where they differ.
#[inline(always)]
pub fn centroid<N: Num>(sum: N, areas: N) -> N {
    sum / areas
}

/// `r2 = u^2 + v^2`
#[inline(always)]
pub fn arm_squared<N: Num>(u: N, v: N) -> N {
    u * u + v * v
}

/// `MG = Py eX - Px eY`, anticlockwise.
#[inline(always)]
pub fn moment_about<N: Num>(py: N, ex: N, px: N, ey: N) -> N {
    py * ex - px * ey
}

/// `MG = Py eX - Px eY + M0`
#[inline(always)]
pub fn moment_sum<N: Num>(py: N, ex: N, px: N, ey: N, couple: N) -> N {
    py * ex - px * ey + couple
}

/// `er = (1 + n)/2` inches: what an old AISC Manual takes off the eccentricity of a vertical load, for `n` rivets in a
/// vertical row.
#[inline(always)]
pub fn eccentricity_allowance<N: Num>(n: N) -> N {
    N::lit(HALF_INCH) * (N::lit(1.0) + n)
}

/// `XI = Xc - Py Ip/(Ng MG)`: where the shares of load and moment cancel.
#[inline(always)]
pub fn instant_x<N: Num>(xc: N, py: N, polar: N, areas: N, moment: N) -> N {
    xc - py * polar / (areas * moment)
}

/// `YI = Yc + Px Ip/(Ng MG)`
#[inline(always)]
pub fn instant_y<N: Num>(yc: N, px: N, polar: N, areas: N, moment: N) -> N {
    yc + px * polar / (areas * moment)
}

/// `h = sqrt((X1 - X2)^2 + (Y1 - Y2)^2)`
#[inline(always)]
pub fn distance<N: Num>(x1: N, x2: N, y1: N, y2: N) -> N {
    ((x1 - x2) * (x1 - x2) + (y1 - y2) * (y1 - y2)).sqrt()
}

/// `D = P/Ng`
#[inline(always)]
pub fn direct_share<N: Num>(p: N, rivets: N) -> N {
    p / rivets
}

/// `D = P ka/Sa`
#[inline(always)]
pub fn direct_share_by_area<N: Num>(p: N, k: N, areas: N) -> N {
    p * k / areas
}

/// `T = MG (a - b)/Ip`: along x with `a - b = Yc - Y`, along y with `X - Xc`.
#[inline(always)]
pub fn turning_share<N: Num>(moment: N, a: N, b: N, polar: N) -> N {
    moment * (a - b) / polar
}

/// `T = MG ka (a - b)/Ip`
#[inline(always)]
pub fn turning_share_by_area<N: Num>(moment: N, k: N, a: N, b: N, polar: N) -> N {
    moment * k * (a - b) / polar
}

/// `F = D + T`
#[inline(always)]
pub fn share_sum<N: Num>(direct: N, turning: N) -> N {
    direct + turning
}

/// `F = sqrt(Fx^2 + Fy^2)`
#[inline(always)]
pub fn resultant<N: Num>(x: N, y: N) -> N {
    (x * x + y * y).sqrt()
}

/// `s = F/(pi/4 d^2)`
#[inline(always)]
pub fn rivet_shear_stress<N: Num>(f: N, d: N) -> N {
    f / (N::lit(PI / 4.0) * d * d)
}

/// `s = F/(z pi/4 d^2)`
#[inline(always)]
pub fn rivet_shear_stress_double<N: Num>(f: N, z: N, d: N) -> N {
    f / (z * N::lit(PI / 4.0) * d * d)
}

/// `s = F/(d t)`
#[inline(always)]
pub fn rivet_bearing_stress<N: Num>(f: N, d: N, t: N) -> N {
    f / (d * t)
}

/// `Pa = P/U`
#[inline(always)]
pub fn safe_load<N: Num>(p: N, used: N) -> N {
    p / used
}

/// `d = sqrt(4 F/(pi ss))`
#[inline(always)]
pub fn diameter_by_shear<N: Num>(f: N, ss: N) -> N {
    (N::lit(4.0) * f / (N::lit(PI) * ss)).sqrt()
}

/// `d = sqrt(4 F/(pi z ss))`
#[inline(always)]
pub fn diameter_by_shear_double<N: Num>(f: N, z: N, ss: N) -> N {
    (N::lit(4.0) * f / (N::lit(PI) * z * ss)).sqrt()
}

/// `d = F/(t sc)`
#[inline(always)]
pub fn diameter_by_bearing<N: Num>(f: N, t: N, sc: N) -> N {
    f / (t * sc)
}
