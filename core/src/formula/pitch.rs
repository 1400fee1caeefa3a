//! The pitch: balanced, least, greatest.
#![allow(clippy::arithmetic_side_effects, reason = "formula bodies are arithmetic on a generic number")]

use crate::step::Num;

/// `p = n d + (F - Fo)/(t st)`: the pitch at which the net section of a row of `n` holes, with the rivets outside it
/// (`Fo`), is as strong as all rivets (`F`).
#[inline(always)]
pub fn balanced_pitch<N: Num>(n: N, d: N, f: N, fo: N, t: N, st: N) -> N {
    n * d + (f - fo) / (t * st)
}

/// `p min = (a d + b) n/n1`: the least pitch of the densest row (`n` rivets in the strip), as pitch of the outer row.
#[inline(always)]
pub fn least_pitch<N: Num>(a: N, d: N, b: N, n: N, n1: N) -> N {
    (a * d + b) * n / n1
}

/// `p max = C t + K`
#[inline(always)]
pub fn greatest_pitch<N: Num>(c: N, t: N, k: N) -> N {
    c * t + k
}
