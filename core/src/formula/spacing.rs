//! Row distances, margins and straps.
#![allow(clippy::arithmetic_side_effects, reason = "formula bodies are arithmetic on a generic number")]

use crate::step::Num;

/// `g = a (p - k d) + b d + c`, the first term never below nothing: `p` is the pitch that the rule refers to.
#[inline(always)]
pub fn row_distance<N: Num>(a: N, p: N, k: N, b: N, d: N, c: N) -> N {
    let free = p - k * d;
    if free.value() > 0.0 { a * free + b * d + c } else { b * d + c }
}

/// `g = sqrt((a p + b d)^2 - q^2)`: the row distance that gives the diagonal pitch `a p + b d` between holes that lie
/// `q` across.
#[inline(always)]
pub fn row_distance_diagonal<N: Num>(a: N, p: N, b: N, d: N, q: N) -> N {
    let diagonal = a * p + b * d;
    let square = diagonal * diagonal - q * q;
    // A diagonal shorter than the holes lie across asks for no distance at all.
    if square.value() > 0.0 { square.sqrt() } else { N::lit(0.0) }
}

/// `q = p/(2 n)`: how far across holes of neighbouring zig-zag rows lie, `n` the rivets of the denser row.
#[inline(always)]
pub fn gauge<N: Num>(p: N, n: N) -> N {
    p / (N::lit(2.0) * n)
}

/// `m = a d + b`
#[inline(always)]
pub fn margin<N: Num>(a: N, d: N, b: N) -> N {
    a * d + b
}

/// `x = a y`
#[inline(always)]
pub fn times<N: Num>(a: N, y: N) -> N {
    a * y
}

/// `b = a t + c`
#[inline(always)]
pub fn strap_share<N: Num>(a: N, t: N, c: N) -> N {
    a * t + c
}

/// `b = (a t + c)(p - n1 d1)/(p - nb db)`: thickened where the row at the butt has more holes (`nb`) than the outer
/// row (`n1`). For one outer rivet against two it is the books' `(p - d)/(p - 2 d)`.
#[inline(always)]
pub fn strap_thickened<N: Num>(share: N, p: N, n1: N, d1: N, nb: N, db: N) -> N {
    share * (p - n1 * d1) / (p - nb * db)
}

/// `pr = p/n`: pitch of a row of `n` rivets in the strip.
#[inline(always)]
pub fn row_pitch<N: Num>(p: N, n: N) -> N {
    p / n
}

/// `d = (d1 + d2)/2`
#[inline(always)]
pub fn mean<N: Num>(d1: N, d2: N) -> N {
    (d1 + d2) / N::lit(2.0)
}

/// `g = m + wh/2`: from the row at the edge of a strap to the row outside it, whose heads of width `wh` stand beside that
/// edge.
#[inline(always)]
pub fn head_beside_strap<N: Num>(m: N, wh: N) -> N {
    m + wh / N::lit(2.0)
}

/// `g = sqrt(((w1 + w2)/2)^2 - q^2)`: the row distance at which heads of widths `w1` and `w2` touch that lie `q` across.
#[inline(always)]
pub fn heads_apart<N: Num>(w1: N, w2: N, q: N) -> N {
    let between = (w1 + w2) / N::lit(2.0);
    let square = between * between - q * q;
    // Heads that lie further across than they are wide clear each other whatever the distance.
    if square.value() > 0.0 { square.sqrt() } else { N::lit(0.0) }
}
