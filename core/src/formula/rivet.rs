//! One rivet: its hole, its shear, its bearing.
#![allow(clippy::arithmetic_side_effects, reason = "formula bodies are arithmetic on a generic number")]

use core::f64::consts::PI;

use crate::step::Num;

/// `d = a sqrt(t) + b`, the square-root rule (Unwin: a = 6 with t and d in mm).
#[inline(always)]
pub fn hole_by_root<N: Num>(a: N, t: N, b: N) -> N {
    a * t.sqrt() + b
}

/// `d = 4 t sc/(pi ss z)`: the hole at which a rivet of `z` single shears is as strong in shear as in bearing.
#[inline(always)]
pub fn hole_by_bearing<N: Num>(t: N, sc: N, ss: N, z: N) -> N {
    N::lit(4.0) * t * sc / (N::lit(PI) * ss * z)
}

/// `Fs = pi/4 d^2 ss`
#[inline(always)]
pub fn single_shear<N: Num>(d: N, ss: N) -> N {
    N::lit(PI / 4.0) * d * d * ss
}

/// `Fs = z pi/4 d^2 ss`
#[inline(always)]
pub fn double_shear<N: Num>(z: N, d: N, ss: N) -> N {
    z * N::lit(PI / 4.0) * d * d * ss
}

/// `Fs1 = z/2 pi/4 d^2 ss`
#[inline(always)]
pub fn plane_shear<N: Num>(z: N, d: N, ss: N) -> N {
    z / N::lit(2.0) * N::lit(PI / 4.0) * d * d * ss
}

/// `Fs1 = Fs/2`: one plane of two that are both on the cut.
#[inline(always)]
pub fn half<N: Num>(fs: N) -> N {
    fs / N::lit(2.0)
}

/// `x = F/F1`: the seam's factor of safety over the book's divisor.
#[inline(always)]
pub fn safety_ratio<N: Num>(f: N, f1: N) -> N {
    f / f1
}

/// `Fb = d t sc`
#[inline(always)]
pub fn bearing<N: Num>(d: N, t: N, sc: N) -> N {
    d * t * sc
}

/// `Fm = 2 (m - d/2) t sp`: the two faces by which a rivet shears out the plate in front of it.
#[inline(always)]
pub fn shear_out<N: Num>(m: N, d: N, t: N, sp: N) -> N {
    N::lit(2.0) * (m - d / N::lit(2.0)) * t * sp
}

/// `R = n F`
#[inline(always)]
pub fn row_hold<N: Num>(n: N, f: N) -> N {
    n * f
}

/// `100 A sum(n C) ss F/(p t st F1)`: rivet percentage, with `A = pi/4 d^2`, `nc` the shear areas counted over all
/// rivets of the pitch, and `F/F1` the seam's factor of safety over the book's divisor.
#[inline(always)]
#[expect(clippy::too_many_arguments, reason = "the symbols of the equation")]
pub fn rivet_percentage<N: Num>(d: N, nc: N, ss: N, f: N, f1: N, p: N, t: N, st: N) -> N {
    N::lit(100.0) * (N::lit(PI / 4.0) * d * d) * nc * ss * f / (p * t * st * f1)
}
