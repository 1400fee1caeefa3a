//! The only door to `libm`, and the one place where "equal", "at least" and "rounded" are decided.
//!
//! `libm` is used on every target, so a laptop, a wheel and a Cortex-M give the same bits.

/// Relative tolerance of every verdict and every rounding.
///
/// A dimension that is exactly at a limit, or exactly on a step of the shop's grid, must not fail or jump a whole
/// step because the last bit of a product went the other way. 1e-9 of 100 mm is a tenth of a nanometre.
pub const TOLERANCE: f64 = 1e-9;

/// Square root, correctly rounded.
#[must_use]
#[inline(always)]
pub fn sqrt(x: f64) -> f64 {
    libm::sqrt(x)
}

/// Absolute value.
#[must_use]
#[inline(always)]
pub fn abs(x: f64) -> f64 {
    libm::fabs(x)
}

/// The direction of a vector in degrees, from the x axis towards the y axis: above -180, up to 180; 0 for no vector.
#[must_use]
#[inline]
pub fn direction(x: f64, y: f64) -> f64 {
    // A minus that belongs to nothing would turn 180 degrees into -180.
    libm::atan2(y + 0.0, x + 0.0) * (180.0 / core::f64::consts::PI)
}

/// The larger of two numbers (the first when equal).
#[must_use]
#[inline(always)]
pub fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// The smaller of two numbers (the first when equal).
#[must_use]
#[inline(always)]
pub fn smaller(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

/// `a >= b`, up to [`TOLERANCE`].
#[must_use]
#[inline]
pub fn at_least(a: f64, b: f64) -> bool {
    // What is greater needs no tolerance, and most of what is asked is.
    a > b || a >= b - TOLERANCE * larger(abs(a), abs(b))
}

/// `a <= b`, up to [`TOLERANCE`].
#[must_use]
#[inline]
pub fn at_most(a: f64, b: f64) -> bool {
    at_least(b, a)
}

/// `a < b` by more than [`TOLERANCE`].
#[must_use]
#[inline]
pub fn below(a: f64, b: f64) -> bool {
    // What is not less at all needs no tolerance, and most of what is asked is not.
    a < b && a < b - TOLERANCE * larger(abs(a), abs(b))
}

/// [`below`] where neither is negative: the same answer by fewer steps, for chunks of numbers at once.
///
/// Where `a < b` the larger is `b`, and both say the same; where not, neither can be true.
#[must_use]
#[inline(always)]
pub(crate) fn below_positive(a: f64, b: f64) -> bool {
    a < least_equal(b)
}

/// What [`below_positive`] compares with: the least figure that still counts as equal to `b`.
#[must_use]
#[inline(always)]
pub(crate) fn least_equal(b: f64) -> f64 {
    b - TOLERANCE * b
}

/// The greatest multiple of `step` not above `x`; an `x` that is a multiple up to [`TOLERANCE`] stays where it is.
///
/// `step <= 0` means "no grid": `x` comes back unchanged.
#[must_use]
#[inline]
pub fn round_down(x: f64, step: f64) -> f64 {
    if step > 0.0 {
        let steps = x / step;
        let whole = libm::floor(steps);
        let next = whole + 1.0;
        step * if at_least(steps, next) { next } else { whole }
    } else {
        x
    }
}

/// The least multiple of `step` not below `x`; an `x` that is a multiple up to [`TOLERANCE`] stays where it is.
///
/// `step <= 0` means "no grid": `x` comes back unchanged.
#[must_use]
#[inline]
pub fn round_up(x: f64, step: f64) -> f64 {
    if step > 0.0 {
        let down = round_down(x, step);
        if at_least(down, x) { down } else { down + step }
    } else {
        x
    }
}

/// The multiple of `step` nearest to `x`, halves going down (the smaller pitch has the more rivets).
///
/// `step <= 0` means "no grid": `x` comes back unchanged.
#[must_use]
#[inline]
pub fn round_nearest(x: f64, step: f64) -> f64 {
    let down = round_down(x, step);
    if at_most(x - down, 0.5 * step) { down } else { round_up(x, step) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn exact_multiples_stay_and_neighbours_move() {
        // 0.1 + 0.2 is an ulp above 0.3: it must not climb a whole step.
        assert_eq!(round_up(0.1 + 0.2, 0.1), 3.0 * 0.1);
        assert_eq!(round_down(71.0 - 1e-12, 1.0), 71.0);
        assert_eq!(round_down(70.94, 1.0), 70.0);
        assert_eq!(round_up(70.94, 1.0), 71.0);
        assert_eq!(round_up(70.94, 0.0), 70.94);
        assert_eq!(round_nearest(70.5, 1.0), 70.0);
        assert_eq!(round_nearest(70.51, 1.0), 71.0);
    }

    #[test]
    fn below_of_positive_figures_is_below() {
        // Figures a few last bits about the tolerance, and the borders of the range.
        let mut figures = [0.0, f64::MIN_POSITIVE, 5e-324, 1.0, 1.0 + TOLERANCE, 1.0 - TOLERANCE, 1e300, f64::MAX, 3.0];
        for _ in 0..60 {
            for a in figures {
                for b in figures {
                    assert_eq!(below(a, b), below_positive(a, b), "{a} {b}");
                }
            }
            figures = figures.map(f64::next_up);
        }
        assert!(!below_positive(f64::INFINITY, 1.0) && !below_positive(f64::NAN, 1.0));
    }

    #[test]
    fn verdicts_forgive_an_ulp_and_nothing_more() {
        assert!(at_least(1.0 - 1e-12, 1.0) && !at_least(1.0 - 1e-8, 1.0));
        assert!(at_most(1.0 + 1e-12, 1.0) && !at_most(1.0 + 1e-8, 1.0));
        assert!(below(0.999, 1.0) && !below(1.0 - 1e-12, 1.0));
    }
}
