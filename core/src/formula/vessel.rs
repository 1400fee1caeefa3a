//! Shells under pressure.
#![allow(clippy::arithmetic_side_effects, reason = "formula bodies are arithmetic on a generic number")]

use crate::step::Num;

/// `c = c0 + c1`: the book's allowance and the one given.
#[inline(always)]
pub fn allowance_sum<N: Num>(book: N, given: N) -> N {
    book + given
}

/// `R = D/2`
#[inline(always)]
pub fn half_diameter<N: Num>(d: N) -> N {
    d / N::lit(2.0)
}

/// `x = t/R`
#[inline(always)]
pub fn radius_share<N: Num>(t: N, r: N) -> N {
    t / r
}

/// `Ra = R + t`
#[inline(always)]
pub fn outside_radius<N: Num>(r: N, t: N) -> N {
    r + t
}

/// `FS = f + fa`: one surcharge on a factor of safety.
#[inline(always)]
pub fn safety_sum<N: Num>(f: N, added: N) -> N {
    f + added
}

/// `p = 2 st J (t - c)/(FS D)`. The German law's `p = 200 K z (s - 1)/(D x)` is the same: 1 kg/mm2 is 100 kg/cm2.
#[inline(always)]
pub fn pressure_inside<N: Num>(st: N, j: N, t: N, c: N, d: N, fs: N) -> N {
    N::lit(2.0) * st * j * (t - c) / (fs * d)
}

/// `p = 2 st J (t - c)/(1.4 C D)`: the British and Indian `(T - 2) S J/(C D)` in one set of units. With `T = 32 t`,
/// `S = st/2240` and `J` in per cent, `32 x 100/2240 = 2/1.4` exactly; the 2 thirty-seconds are the book's `c`.
#[inline(always)]
pub fn pressure_thirty_seconds<N: Num>(st: N, j: N, t: N, c: N, d: N, constant: N) -> N {
    N::lit(2.0) * st * j * (t - c) / (N::lit(1.4) * constant * d)
}

/// `p = st (t - c) J/(R FS)`
#[inline(always)]
pub fn pressure_radius<N: Num>(st: N, j: N, t: N, c: N, r: N, fs: N) -> N {
    st * (t - c) * j / (r * fs)
}

/// `p = 2 st J (t - c)/(FS (D + t - c))`
#[inline(always)]
pub fn pressure_mean<N: Num>(st: N, j: N, t: N, c: N, d: N, fs: N) -> N {
    N::lit(2.0) * st * j * (t - c) / (fs * (d + t - c))
}

/// `x = p/pp`
#[inline(always)]
pub fn ratio<N: Num>(p: N, present: N) -> N {
    p / present
}

/// `Jg = J p/pg`: the efficiency that carries `p` where the efficiency `J` carries `pg`.
#[inline(always)]
pub fn girth_demand<N: Num>(j: N, p: N, pg: N) -> N {
    j * p / pg
}

/// `Ne = p D^2 FS/(d^2 ss z)`: the load on the end, `pi/4 D^2 p`, over what one rivet bears, `z pi/4 d^2 ss/FS`.
#[inline(always)]
pub fn end_rivets<N: Num>(p: N, inside: N, fs: N, d: N, ss: N, z: N) -> N {
    p * inside * inside * fs / (d * d * ss * z)
}

/// `tf = c + (t - c) p/pa`: the plate that carries `p` where `t` carries `pa` at the same efficiency.
#[inline(always)]
pub fn plate_for_pressure<N: Num>(c: N, t: N, p: N, pa: N) -> N {
    c + (t - c) * p / pa
}

/// `Jg = k tf/t`: a percentage of one plate as an efficiency on another.
#[inline(always)]
pub fn share_of_plate<N: Num>(k: N, tf: N, t: N) -> N {
    k * tf / t
}
