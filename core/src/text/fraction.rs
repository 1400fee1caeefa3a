//! Inches as a shop reads them: mixed fractions with a power of two below the line.

use core::fmt::Write;

use super::decimal::{Exact, write_fixed};
use super::{Backwards, TextError};

/// A value counts as a multiple within this share of itself ...
const RELATIVE: f64 = 1e-9;
/// ... and never when it is further away than this, in inches (which begins to matter above 1000 inches).
const ABSOLUTE: f64 = 1e-6;
/// Decimals of a value that is no multiple.
const DECIMALS: u8 = 4;

/// Writes a length in inches as a reduced mixed fraction: 1.625 is `1 5/8`, 0.8125 is `13/16`, 2 is `2`, 0 is `0`.
///
/// A value that is not a multiple of 1/`denominator` within 1e-9 of itself (and within 1e-6 inch) is written with four
/// decimals instead, so that no rounding is hidden. A negative value has a leading minus; negative zero is `0`.
/// Range: |inches| < 9e15; `denominator` 1, 2, 4, 8, 16, 32, 64 or 128.
///
/// # Errors
/// [`NotFinite`](TextError::NotFinite), [`TooLarge`](TextError::TooLarge),
/// [`TooManyDigits`](TextError::TooManyDigits) (any other denominator), [`Sink`](TextError::Sink).
///
/// ```
/// use seamwright::text::{Slice, TextError, write_inch_fraction};
/// let mut buffer = [0_u8; 16];
/// let mut sink = Slice::new(&mut buffer);
/// write_inch_fraction(&mut sink, 1.625, 64).unwrap();
/// assert_eq!(sink.finish(), Ok("1 5/8"));
///
/// let mut sink = Slice::new(&mut buffer);
/// write_inch_fraction(&mut sink, 1.63, 64).unwrap();
/// assert_eq!(sink.finish(), Ok("1.6300"));
///
/// let mut sink = Slice::new(&mut buffer);
/// assert_eq!(write_inch_fraction(&mut sink, 1.625, 10), Err(TextError::TooManyDigits));
/// ```
pub fn write_inch_fraction(out: &mut dyn Write, inches: f64, denominator: u32) -> Result<(), TextError> {
    Exact::of(inches)?; // the range
    if denominator > 128 || !denominator.is_power_of_two() {
        return Err(TextError::TooManyDigits);
    }
    // Exact: a power of two. Below 9e15 * 128, so it fits into `u64`.
    let scaled = inches.abs() * f64::from(denominator);
    let floor = scaled as u64;
    let nearest = if scaled - (floor as f64) < 0.5 { floor } else { floor.wrapping_add(1) };
    let off = (scaled - nearest as f64).abs();
    if off > RELATIVE * scaled || off > ABSOLUTE * f64::from(denominator) {
        return write_fixed(out, inches, DECIMALS);
    }
    let power = denominator.trailing_zeros();
    let whole = nearest.checked_shr(power).unwrap_or(0);
    let over = nearest & u64::from(denominator.wrapping_sub(1));
    let mut text = Backwards::new();
    if over == 0 {
        text.number(whole, 1);
    } else {
        // Both are shifted by the zeros of `over`, which is below `denominator`.
        let common = over.trailing_zeros();
        text.number(u64::from(denominator.checked_shr(common).unwrap_or(1)), 1);
        text.byte(b'/');
        text.number(over.checked_shr(common).unwrap_or(0), 1);
        if whole > 0 {
            text.byte(b' ');
            text.number(whole, 1);
        }
    }
    if inches < 0.0 {
        text.byte(b'-');
    }
    text.send(out)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "tests may panic")]
mod tests {
    extern crate std;
    use super::super::parse_number;
    use super::*;
    use std::format;
    use std::string::String;

    fn inch(x: f64, denominator: u32) -> Result<String, TextError> {
        let mut out = String::new();
        write_inch_fraction(&mut out, x, denominator).map(|()| out)
    }

    #[test]
    fn examples() {
        for (x, denominator, text) in [
            (1.625, 64, "1 5/8"),
            (0.8125, 64, "13/16"),
            (2.0, 64, "2"),
            (0.0, 64, "0"),
            (-0.0, 64, "0"),
            (-1.625, 8, "-1 5/8"),
            (-0.5, 2, "-1/2"),
            (-3.0, 1, "-3"),
            (1.625, 4, "1.6250"),
            (0.5, 1, "0.5000"),
            (0.3, 128, "0.3000"),
            (-0.3, 64, "-0.3000"),
            (127.0 / 128.0, 128, "127/128"),
            (1e-5, 64, "0.0000"),
            (1.0 / 128.0, 64, "0.0078"),
            (2.0 + 1e-9, 64, "2"),
            (2.0 - 1e-9, 64, "2"),
            (2.0 + 3e-9, 64, "2.0000"),
            (0.875 - 1e-10, 16, "7/8"),
            (25.4 / 25.4, 64, "1"),
            (30.1625 / 25.4, 64, "1 3/16"),
            (1e6 + 1e-4, 64, "1000000.0001"),
            (1e6, 64, "1000000"),
            (8999999999999999.0, 128, "8999999999999999"),
            (4503599627370495.5, 128, "4503599627370495 1/2"),
            (70368744177663.0 + 127.0 / 128.0, 128, "70368744177663 127/128"),
        ] {
            assert_eq!(inch(x, denominator).as_deref(), Ok(text), "{x} {denominator}");
        }
        for denominator in [0, 3, 10, 63, 256, u32::MAX, 1 << 31] {
            assert_eq!(inch(1.0, denominator), Err(TextError::TooManyDigits));
        }
        assert_eq!(inch(f64::NAN, 64), Err(TextError::NotFinite));
        assert_eq!(inch(f64::INFINITY, 64), Err(TextError::NotFinite));
        assert_eq!(inch(9e15, 64), Err(TextError::TooLarge));
    }

    #[test]
    fn every_multiple_comes_back() {
        for power in 0..=7_u32 {
            let denominator = 1_u32 << power;
            for count in 0..=40 * denominator {
                let x = f64::from(count) / f64::from(denominator);
                let text = inch(x, denominator).unwrap();
                assert!(!text.contains('.'), "{text}");
                assert_eq!(parse_number(&text), Ok(x));
                // Reduced: the number below is the least that will do.
                if let Some((_, below)) = text.split_once('/') {
                    let below: u32 = below.parse().unwrap();
                    assert_eq!((x * f64::from(below)).fract(), 0.0);
                    assert_ne!((x * f64::from(below / 2)).fract(), 0.0);
                }
                // A thousandth off a multiple is shown as decimals.
                let near = x + 0.001;
                assert_eq!(inch(near, denominator).unwrap(), format!("{near:.4}"));
                assert_eq!(inch(-near, denominator).unwrap(), format!("-{near:.4}"));
            }
        }
    }
}
