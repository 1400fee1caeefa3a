//! Plates and straps: net sections, shares and percentages.
#![allow(clippy::arithmetic_side_effects, reason = "formula bodies are arithmetic on a generic number")]

use crate::step::Num;

/// `n' = (2 - g/g min) n`: the holes that count in a row whose neighbour lies closer than prescribed (Reg. 184(d)).
#[inline(always)]
pub fn crowded_holes<N: Num>(ratio: N, n: N) -> N {
    (N::lit(2.0) - ratio) * n
}

/// `g/g min`
#[inline(always)]
pub fn gap_ratio<N: Num>(g: N, least: N) -> N {
    g / least
}

/// `dt = d + c`: the diameter deducted from the net section, with the book's allowance.
#[inline(always)]
pub fn deducted<N: Num>(d: N, c: N) -> N {
    d + c
}

/// `Ft = (p - n d) t st`
#[inline(always)]
pub fn net_section<N: Num>(p: N, n: N, d: N, t: N, st: N) -> N {
    (p - n * d) * t * st
}

/// `x = j g^2/(4 q)`: what `j` diagonals, of rows `g` apart and holes `q` across, give back to the net width.
#[inline(always)]
pub fn zigzag_gain<N: Num>(j: N, g: N, q: N) -> N {
    j * g * g / (N::lit(4.0) * q)
}

/// `Ft = (p - n1 d1 - n2 d2 + x) t st`
#[inline(always)]
#[expect(clippy::too_many_arguments, reason = "the symbols of the equation")]
pub fn zigzag_net_section<N: Num>(p: N, n1: N, d1: N, n2: N, d2: N, x: N, t: N, st: N) -> N {
    (p - n1 * d1 - n2 * d2 + x) * t * st
}

/// `F0 = p t st`
#[inline(always)]
pub fn solid<N: Num>(p: N, t: N, st: N) -> N {
    p * t * st
}

/// `P = sum of the net sections + sum of the rows`, one addition of it.
#[inline(always)]
pub fn cut_strength<N: Num>(so_far: N, more: N) -> N {
    so_far + more
}

/// `P = Ft N/(N - n)`: the load at which a net section tears when the `n` of `N` rivets outside it have taken an even
/// share.
#[inline(always)]
pub fn even_share<N: Num>(ft: N, all: N, outside: N) -> N {
    ft * all / (all - outside)
}

/// `eta = P/F0`
#[inline(always)]
pub fn efficiency<N: Num>(p: N, solid: N) -> N {
    p / solid
}

/// `P' = P/p`: the strength of a strip for a millimetre of seam.
#[inline(always)]
pub fn strength_per_length<N: Num>(strength: N, p: N) -> N {
    strength / p
}

/// `100 (p - n d)/p`
#[inline(always)]
pub fn plate_percentage<N: Num>(p: N, n: N, d: N) -> N {
    N::lit(100.0) * (p - n * d) / p
}

/// `100 (p - n2 d)/p + rivet percentage of the outer row`
#[inline(always)]
pub fn combined_percentage<N: Num>(p: N, n2: N, d: N, outer_rivets: N) -> N {
    plate_percentage(p, n2, d) + outer_rivets
}
