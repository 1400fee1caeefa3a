//! The shop sheet: runs, circles of holes, rivet lengths, cut sizes and masses.
#![allow(clippy::arithmetic_side_effects, reason = "formula bodies are arithmetic on a generic number")]

use core::f64::consts::PI;

use crate::step::Num;

/// Cubic millimetres in a cubic metre. A sheet in inches shows the cubic inches of a cubic foot in its place.
pub(crate) const MM3_PER_M3: f64 = 1e9;
/// Millimetres in a metre. A sheet in inches shows the inches of a foot in its place.
pub(crate) const MM_PER_M: f64 = 1000.0;

/// `Lr = Ls - e1 - e2`: from the first hole of a straight seam to the last.
#[inline(always)]
pub fn straight_run<N: Num>(length: N, e1: N, e2: N) -> N {
    length - e1 - e2
}

/// `Dc = Di + t`: the circle through the middle of a ring's thickness.
#[inline(always)]
pub fn middle_circle<N: Num>(inside: N, t: N) -> N {
    inside + t
}

/// `Do = Dc + t + t2`: the middle of the next ply outside.
#[inline(always)]
pub fn circle_outside<N: Num>(dc: N, t: N, t2: N) -> N {
    dc + t + t2
}

/// `Do = Dc - t - t2`: the middle of the next ply inside.
#[inline(always)]
pub fn circle_inside<N: Num>(dc: N, t: N, t2: N) -> N {
    dc - t - t2
}

/// `Lr = pi Dc`
#[inline(always)]
pub fn girth<N: Num>(dc: N) -> N {
    N::lit(PI) * dc
}

/// `kx = Lr/p`: strips in the run.
#[inline(always)]
pub fn strips_in_run<N: Num>(run: N, p: N) -> N {
    run / p
}

/// `p = Lr/ks`: the strip that divides the run into `ks`.
#[inline(always)]
pub fn strip_of_run<N: Num>(run: N, k: N) -> N {
    run / k
}

/// `u = a - b`: how far two pitches lie apart.
#[inline(always)]
pub fn difference<N: Num>(a: N, b: N) -> N {
    a - b
}

/// `Nr = s (ks n + e)`: rivets of a row in the run, on `s` sides, with `e` one where a last hole closes the row.
#[inline(always)]
pub fn rivets_in_run<N: Num>(s: N, k: N, n: N, e: N) -> N {
    s * (k * n + e)
}

/// `x = x1 + p k`: a hole `k` strips from the first.
#[inline(always)]
pub fn hole_place<N: Num>(first: N, p: N, k: N) -> N {
    first + p * k
}

/// `a = 360 x/Lr`, in degrees.
#[inline(always)]
pub fn hole_angle<N: Num>(x: N, run: N) -> N {
    N::lit(360.0) * x / run
}

/// `G = t + t2`
#[inline(always)]
pub fn grip_of_two<N: Num>(t: N, t2: N) -> N {
    t + t2
}

/// `G = t + t2 + t3`
#[inline(always)]
pub fn grip_of_three<N: Num>(t: N, t2: N, t3: N) -> N {
    t + t2 + t3
}

/// `Z = k d`: the allowance for the closing head in diameters.
#[inline(always)]
pub fn allowance_in_diameters<N: Num>(k: N, d: N) -> N {
    k * d
}

/// `Z = 0.1 G + 1.3 d`, which makes `l = 1.1 G + 1.3 d`.
#[inline(always)]
pub fn allowance_small_machine<N: Num>(g: N, d: N) -> N {
    N::lit(0.1) * g + N::lit(1.3) * d
}

/// `Z = z0 + 0.1 G`, with `z0` from a table by the diameter.
#[inline(always)]
pub fn allowance_by_table<N: Num>(z0: N, g: N) -> N {
    z0 + N::lit(0.1) * g
}

/// `l = G + Z`
#[inline(always)]
pub fn rivet_length<N: Num>(g: N, z: N) -> N {
    g + z
}

/// `s = sum of g`, one addition of it.
#[inline(always)]
pub fn row_span<N: Num>(so_far: N, g: N) -> N {
    so_far + g
}

/// `w = s + 2 m`: overlap of a lap.
#[inline(always)]
pub fn overlap<N: Num>(s: N, m: N) -> N {
    s + N::lit(2.0) * m
}

/// `w = 2 (s + 2 m)`: width of a strap over rows on both sides of the butt.
#[inline(always)]
pub fn strap_width<N: Num>(s: N, m: N) -> N {
    N::lit(2.0) * (s + N::lit(2.0) * m)
}

/// `V = pi/4 d^2 l`
#[inline(always)]
pub fn cylinder<N: Num>(d: N, l: N) -> N {
    N::lit(PI / 4.0) * d * d * l
}

/// `V = pi h (3/4 w^2 + h^2)/6`: a button head as a segment of a sphere, `w` wide and `h` high.
#[inline(always)]
pub fn round_head<N: Num>(w: N, h: N) -> N {
    N::lit(PI / 6.0) * h * (N::lit(0.75) * w * w + h * h)
}

/// `V = pi h (w^2 + w d - 2 d^2)/12`: what a countersunk head, `w` wide and `h` deep, has more than its shank of
/// diameter `d`.
#[inline(always)]
pub fn sunk_head<N: Num>(w: N, h: N, d: N) -> N {
    N::lit(PI / 12.0) * h * (w * w + w * d - N::lit(2.0) * d * d)
}

/// `M = V rho/10^9`, from mm3 and kg/m3 to kg.
#[inline(always)]
pub fn mass<N: Num>(v: N, rho: N) -> N {
    v * rho / N::lit(MM3_PER_M3)
}

/// `V = w l b`: a plate.
#[inline(always)]
pub fn plate_volume<N: Num>(w: N, l: N, b: N) -> N {
    w * l * b
}

/// `V = V1 + V2`
#[inline(always)]
pub fn volume_sum<N: Num>(v1: N, v2: N) -> N {
    v1 + v2
}

/// `M = sum of n m`, one addition of it.
#[inline(always)]
pub fn mass_of_many<N: Num>(so_far: N, n: N, m: N) -> N {
    so_far + n * m
}

/// `M = Mr + Ms + Ml - Mh`: rivets, straps and overlap, less what was drilled out.
#[inline(always)]
pub fn seam_mass<N: Num>(rivets: N, straps: N, overlap: N, holes: N) -> N {
    rivets + straps + overlap - holes
}

/// `M1 = 1000 M/L`: kg over mm to kg over m.
#[inline(always)]
pub fn mass_per_metre<N: Num>(m: N, l: N) -> N {
    N::lit(MM_PER_M) * m / l
}
