//! Decimals by integer arithmetic: the mantissa times a power of ten in `u128`, shifted down, rounded half to even.

use core::fmt::Write;

use super::{Backwards, DecimalMark, TextError};

/// First magnitude that is not printed. Below 2^53, so that no printed value has a positive binary exponent.
const LIMIT: f64 = 9e15;
/// Most decimals of [`write_fixed`].
const MOST_FIXED: u8 = 9;
/// Most figures of [`write_significant`].
const MOST_FIGURES: u8 = 15;
/// Most decimals of [`write_significant`]: 2^53 * 10^22 is the last that fits into `u128`.
const MOST_DECIMALS: u32 = 22;

/// Ten to the power of `n`, for `n` up to 22 (any larger `n` gives the value of 22).
fn ten_to(n: u32) -> u128 {
    let mut power = 1_u128;
    for _ in 0..n.min(MOST_DECIMALS) {
        power = power.wrapping_mul(10);
    }
    power
}

/// Decimal digits of a whole number; 0 for 0.
fn digits(mut number: u64) -> u32 {
    let mut count = 0_u32;
    while number > 0 {
        number /= 10;
        count = count.wrapping_add(1);
    }
    count
}

/// The magnitude of a printable value, exactly: `whole + part / 2^shift`, with `part < 2^53` and `part < 2^shift`.
#[derive(Clone, Copy)]
pub(super) struct Exact {
    whole: u64,
    part: u64,
    shift: u32,
}

impl Exact {
    /// Takes |x| apart, or says why it cannot be printed.
    pub(super) fn of(x: f64) -> Result<Self, TextError> {
        if !x.is_finite() {
            return Err(TextError::NotFinite);
        }
        if x.abs() >= LIMIT {
            return Err(TextError::TooLarge);
        }
        let bits = x.to_bits();
        // Eleven bits: no bits are lost.
        let exponent = ((bits >> 52) & 0x7ff) as u32;
        let fraction = bits & 0x000f_ffff_ffff_ffff;
        // |x| = mantissa / 2^shift. |x| < 2^53 keeps the exponent at or below 1075, so the shift is 0 to 1074.
        let (mantissa, shift) = match exponent {
            0 => (fraction, 1074),
            _ => (fraction | 0x0010_0000_0000_0000, 1075_u32.saturating_sub(exponent)),
        };
        let whole = mantissa.checked_shr(shift).unwrap_or(0);
        let below = 1_u64.checked_shl(shift).map_or(u64::MAX, |one| one.wrapping_sub(1));
        Ok(Self { whole, part: mantissa & below, shift })
    }

    /// Rounded half to even to so many decimals: whole number and decimals as a number.
    ///
    /// The decimals must be few enough for `part * 10^decimals / 2^shift` to fit into `u64`: up to 19, or a value below
    /// 10^(19 - decimals).
    fn rounded(self, decimals: u32) -> (u64, u64) {
        let power = ten_to(decimals);
        // Below 2^53 * 10^22 < 2^127.
        let scaled = u128::from(self.part).wrapping_mul(power);
        let (mut floor, up) = if self.shift == 0 {
            (scaled, false)
        } else if self.shift > 127 {
            (0, false) // below 2^127 / 2^128: less than a half
        } else {
            let floor = scaled.wrapping_shr(self.shift);
            let rest = scaled & 1_u128.wrapping_shl(self.shift).wrapping_sub(1);
            let half = 1_u128.wrapping_shl(self.shift.wrapping_sub(1));
            // Without decimals the last digit is that of the whole number.
            let odd = if decimals == 0 { self.whole & 1 == 1 } else { floor & 1 == 1 };
            (floor, rest > half || (rest == half && odd))
        };
        if up {
            floor = floor.wrapping_add(1);
        }
        if floor == power {
            return (self.whole.wrapping_add(1), 0);
        }
        // Fits, see above.
        (self.whole, floor as u64)
    }

    /// Rounded half to even to a multiple of 10^zeros, for `zeros` from 1 to 16.
    fn rounded_to_ten(self, zeros: u32) -> u64 {
        let power = ten_to(zeros) as u64;
        // `power` is never zero; the checked forms keep the panic path of a division away.
        let count = self.whole.checked_div(power).unwrap_or(0);
        let rest = self.whole.wrapping_sub(count.wrapping_mul(power));
        let half = power / 2;
        let up = rest > half || (rest == half && (self.part > 0 || count & 1 == 1));
        count.wrapping_add(u64::from(up)).wrapping_mul(power)
    }

    fn is_zero(self) -> bool {
        self.whole == 0 && self.part == 0
    }
}

/// Puts a decimal together and hands it over.
fn send(
    out: &mut dyn Write,
    minus: bool,
    whole: u64,
    decimals: Option<(u64, u32)>,
    mark: DecimalMark,
) -> Result<(), TextError> {
    let mut text = Backwards::new();
    if let Some((number, width)) = decimals
        && width > 0
    {
        text.number(number, width);
        text.byte(mark.byte());
    }
    text.number(whole, 1);
    if minus {
        text.byte(b'-');
    }
    text.send(out)
}

/// Writes `x` (any unit) with exactly so many decimals, rounded half to even on its exact binary value.
///
/// The text is that of `format!("{:.n$}", x)` of the standard library in every digit, `-0.00` for a negative zero
/// included. Range: |x| < 9e15, `decimals` 0 to 9.
///
/// # Errors
/// [`NotFinite`](TextError::NotFinite), [`TooLarge`](TextError::TooLarge),
/// [`TooManyDigits`](TextError::TooManyDigits) (more than 9 decimals), [`Sink`](TextError::Sink).
///
/// ```
/// use seamwright::text::{Slice, TextError, write_fixed};
/// let mut buffer = [0_u8; 16];
/// let mut sink = Slice::new(&mut buffer);
/// write_fixed(&mut sink, 2.675, 2).unwrap(); // in binary a little below 2.675
/// assert_eq!(sink.finish(), Ok("2.67"));
///
/// let mut sink = Slice::new(&mut buffer);
/// assert_eq!(write_fixed(&mut sink, 1e16, 2), Err(TextError::TooLarge));
/// ```
pub fn write_fixed(out: &mut dyn Write, x: f64, decimals: u8) -> Result<(), TextError> {
    write_fixed_with(out, x, decimals, DecimalMark::Point)
}

/// [`write_fixed`] with a decimal mark of choice. Same units, range and errors.
///
/// # Errors
/// As [`write_fixed`].
///
/// ```
/// use seamwright::text::{DecimalMark, Slice, TextError, write_fixed_with};
/// let mut buffer = [0_u8; 16];
/// let mut sink = Slice::new(&mut buffer);
/// write_fixed_with(&mut sink, 12.5, 1, DecimalMark::Comma).unwrap();
/// assert_eq!(sink.finish(), Ok("12,5"));
///
/// let mut sink = Slice::new(&mut buffer);
/// let refused = write_fixed_with(&mut sink, 12.5, 10, DecimalMark::Comma);
/// assert_eq!(refused, Err(TextError::TooManyDigits));
/// ```
pub fn write_fixed_with(out: &mut dyn Write, x: f64, decimals: u8, mark: DecimalMark) -> Result<(), TextError> {
    let exact = Exact::of(x)?;
    if decimals > MOST_FIXED {
        return Err(TextError::TooManyDigits);
    }
    let decimals = u32::from(decimals);
    let (whole, part) = exact.rounded(decimals);
    send(out, x.is_sign_negative(), whole, Some((part, decimals)), mark)
}

/// Writes `x` (any unit) rounded to at most so many decimals, without trailing zeros: 2.50 is `2.5`, 3.00 is `3`.
///
/// Rounded as by [`write_fixed`]; what rounds to zero is `0` without a sign. Range: |x| < 9e15, `decimals` 0 to 9.
///
/// # Errors
/// As [`write_fixed`].
///
/// ```
/// use seamwright::text::{Slice, TextError, write_plain};
/// let mut buffer = [0_u8; 16];
/// let mut sink = Slice::new(&mut buffer);
/// write_plain(&mut sink, 20.5, 6).unwrap();
/// assert_eq!(sink.finish(), Ok("20.5"));
///
/// let mut sink = Slice::new(&mut buffer);
/// assert_eq!(write_plain(&mut sink, f64::INFINITY, 6), Err(TextError::NotFinite));
/// ```
pub fn write_plain(out: &mut dyn Write, x: f64, decimals: u8) -> Result<(), TextError> {
    write_plain_with(out, x, decimals, DecimalMark::Point)
}

/// [`write_plain`] with a decimal mark of choice. Same units, range and errors.
///
/// # Errors
/// As [`write_fixed`].
///
/// ```
/// use seamwright::text::{DecimalMark, Slice, TextError, write_plain_with};
/// let mut buffer = [0_u8; 16];
/// let mut sink = Slice::new(&mut buffer);
/// write_plain_with(&mut sink, 20.5, 6, DecimalMark::Comma).unwrap();
/// assert_eq!(sink.finish(), Ok("20,5"));
///
/// let mut sink = Slice::new(&mut buffer);
/// assert_eq!(write_plain_with(&mut sink, -9e15, 6, DecimalMark::Comma), Err(TextError::TooLarge));
/// ```
pub fn write_plain_with(out: &mut dyn Write, x: f64, decimals: u8, mark: DecimalMark) -> Result<(), TextError> {
    let exact = Exact::of(x)?;
    if decimals > MOST_FIXED {
        return Err(TextError::TooManyDigits);
    }
    let mut decimals = u32::from(decimals);
    let (whole, mut part) = exact.rounded(decimals);
    while decimals > 0 && part % 10 == 0 {
        part /= 10;
        decimals = decimals.wrapping_sub(1);
    }
    let minus = x.is_sign_negative() && (whole > 0 || part > 0);
    send(out, minus, whole, Some((part, decimals)), mark)
}

/// Writes `x` (any unit) to so many significant figures, in plain notation without exponent.
///
/// Digits of the whole number beyond the figures are rounded away and filled with zeros: 152578.1 to 4 figures is
/// `152600`. Trailing zeros that are significant are kept: 2 to 3 figures is `2.00`. Zero of either sign is `0`.
/// Rounded half to even on the exact binary value, always.
///
/// Range: |x| < 9e15, `figures` 1 to 15, and no more than 22 decimals: |x| > 1e-8 prints with every number of
/// figures, |x| > 1e-19 with up to 4.
///
/// # Errors
/// [`NotFinite`](TextError::NotFinite), [`TooLarge`](TextError::TooLarge),
/// [`TooManyDigits`](TextError::TooManyDigits) (figures out of range, or more than 22 decimals),
/// [`Sink`](TextError::Sink).
///
/// ```
/// use seamwright::text::{Slice, TextError, write_significant};
/// let mut buffer = [0_u8; 16];
/// let mut sink = Slice::new(&mut buffer);
/// write_significant(&mut sink, 152578.1, 4).unwrap();
/// assert_eq!(sink.finish(), Ok("152600"));
///
/// let mut sink = Slice::new(&mut buffer);
/// assert_eq!(write_significant(&mut sink, 1.0, 16), Err(TextError::TooManyDigits));
/// ```
pub fn write_significant(out: &mut dyn Write, x: f64, figures: u8) -> Result<(), TextError> {
    write_significant_with(out, x, figures, DecimalMark::Point)
}

/// [`write_significant`] with a decimal mark of choice. Same units, range and errors.
///
/// # Errors
/// As [`write_significant`].
///
/// ```
/// use seamwright::text::{DecimalMark, Slice, TextError, write_significant_with};
/// let mut buffer = [0_u8; 16];
/// let mut sink = Slice::new(&mut buffer);
/// write_significant_with(&mut sink, 0.09996, 3, DecimalMark::Comma).unwrap();
/// assert_eq!(sink.finish(), Ok("0,100"));
///
/// let mut sink = Slice::new(&mut buffer);
/// let refused = write_significant_with(&mut sink, 1e-30, 3, DecimalMark::Comma);
/// assert_eq!(refused, Err(TextError::TooManyDigits));
/// ```
pub fn write_significant_with(out: &mut dyn Write, x: f64, figures: u8, mark: DecimalMark) -> Result<(), TextError> {
    let exact = Exact::of(x)?;
    if figures == 0 || figures > MOST_FIGURES {
        return Err(TextError::TooManyDigits);
    }
    if exact.is_zero() {
        return send(out, false, 0, None, mark);
    }
    let minus = x.is_sign_negative();
    let figures = u32::from(figures);
    let whole_digits = digits(exact.whole);
    if whole_digits >= figures {
        let zeros = whole_digits.wrapping_sub(figures);
        let whole = if zeros == 0 { exact.rounded(0).0 } else { exact.rounded_to_ten(zeros) };
        return send(out, minus, whole, None, mark);
    }
    // Zeros between the mark and the first figure; none when the whole number has figures.
    let leading = if whole_digits > 0 { 0 } else { leading_zeros(exact)? };
    let mut decimals = figures.wrapping_sub(whole_digits).wrapping_add(leading);
    if decimals > MOST_DECIMALS {
        return Err(TextError::TooManyDigits);
    }
    let (whole, mut part) = exact.rounded(decimals);
    // Rounded up into the next decade: 9.996 to 3 figures is 10.0, not 10.00.
    if digits(whole) > whole_digits || (whole == 0 && digits(part) > figures) {
        part /= 10; // a power of ten, or zero
        decimals = decimals.wrapping_sub(1);
    }
    send(out, minus, whole, Some((part, decimals)), mark)
}

/// Zeros after the mark before the first figure of a value below 1.
fn leading_zeros(exact: Exact) -> Result<u32, TextError> {
    let mut scaled = u128::from(exact.part);
    for zeros in 0..MOST_DECIMALS {
        scaled = scaled.wrapping_mul(10);
        if scaled.checked_shr(exact.shift).unwrap_or(0) > 0 {
            return Ok(zeros);
        }
    }
    Err(TextError::TooManyDigits)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "tests may panic")]
mod tests;
