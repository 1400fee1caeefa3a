//! Numbers as people type them, read exactly rounded: one multiplication or one division of two exact doubles.

use super::TextError;

/// Powers of ten that a double holds exactly.
const EXACT_TENS: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20,
    1e21, 1e22,
];
/// Most significant figures of a decimal: below 2^53 as a whole number.
const MOST_FIGURES: u64 = 15;
/// Largest exponent that may be typed, either way.
const MOST_EXPONENT: u64 = 15;
/// 2^53: up to here every whole number is a double.
const MOST_WHOLE: u64 = 9_007_199_254_740_992;

/// Reads a number, in whatever unit the caller means; the nearest double to what is written, ties to even.
///
/// Accepted, with an optional sign and with blanks around:
/// * decimals: `12`, `0.5`, `-3`, `.5`, `5.`, `1e-3`, and with a decimal comma `12,5`. A comma is always the decimal mark:
///   `1,234` is 1.234. No marks between thousands.
/// * fractions: `13/16`, `-5/8`, `18/16`.
/// * mixed numbers: `1 5/8` and `1-5/8` (1.625), `-1 5/8` (-1.625); their fraction must be below 1.
///
/// Range: at most 15 significant figures (zeros at either end do not count), an exponent within 15 and a power of ten
/// after the last figure within 22; the whole numbers of a fraction, and a mixed number times its denominator, up to
/// 2^53.
///
/// # Errors
/// [`Empty`](TextError::Empty), [`Syntax`](TextError::Syntax) (a denominator of zero included),
/// [`TooManyFigures`](TextError::TooManyFigures) (out of the range above).
///
/// ```
/// use seamwright::text::{TextError, parse_number};
/// assert_eq!(parse_number("12,5"), Ok(12.5));
/// assert_eq!(parse_number("1-5/8"), Ok(1.625));
/// assert_eq!(parse_number("1.2.3"), Err(TextError::Syntax));
/// assert_eq!(parse_number("0.1234567890123456"), Err(TextError::TooManyFigures));
/// ```
pub fn parse_number(s: &str) -> Result<f64, TextError> {
    let text = s.as_bytes().trim_ascii();
    if text.is_empty() {
        return Err(TextError::Empty);
    }
    let (minus, text) = match text {
        [b'-', rest @ ..] => (true, rest),
        [b'+', rest @ ..] => (false, rest),
        _ => (false, text),
    };
    let magnitude = if text.contains(&b'/') { fraction(text)? } else { decimal(text)? };
    Ok(if minus { -magnitude } else { magnitude })
}

/// `13/16`, `1 5/8`, `1-5/8`.
fn fraction(text: &[u8]) -> Result<f64, TextError> {
    let (first, mut rest) = whole(text)?;
    let (mut units, mut over) = (0, first);
    let mut mixed = false;
    match rest {
        [b'-', after @ ..] => {
            (mixed, rest) = (true, after);
        }
        [b' ' | b'\t', ..] => {
            (mixed, rest) = (true, rest.trim_ascii_start());
        }
        _ => {}
    }
    if mixed {
        units = first;
        (over, rest) = whole(rest)?;
    }
    let [b'/', rest @ ..] = rest else { return Err(TextError::Syntax) };
    let (under, rest) = whole(rest)?;
    // `5 13/8` is more likely a slip than a number.
    if !rest.is_empty() || under == 0 || (mixed && over >= under) {
        return Err(TextError::Syntax);
    }
    let total = units.checked_mul(under).and_then(|units| units.checked_add(over));
    let total = total.filter(|&total| total <= MOST_WHOLE).ok_or(TextError::TooManyFigures)?;
    // Both are exact, so the one division is the one rounding.
    Ok(total as f64 / under as f64)
}

/// A whole number of at least one digit and at most 2^53, and what follows it.
fn whole(mut text: &[u8]) -> Result<(u64, &[u8]), TextError> {
    let mut number = None;
    let mut fits = true;
    while let [byte @ b'0'..=b'9', rest @ ..] = text {
        let next = number.unwrap_or(0_u64).saturating_mul(10).saturating_add(digit(*byte));
        fits &= next <= MOST_WHOLE;
        (number, text) = (Some(next), rest);
    }
    match number {
        None => Err(TextError::Syntax),
        Some(_) if !fits => Err(TextError::TooManyFigures),
        Some(number) => Ok((number, text)),
    }
}

/// `12`, `.5`, `12,5`, `1e-3`.
fn decimal(mut text: &[u8]) -> Result<f64, TextError> {
    let mut mantissa = 0_u64; // of the figures up to the last that is not zero
    let mut figures = 0_u64;
    let mut zeros = 0_u64; // seen since
    let mut decimals = 0_i64;
    let (mut any, mut marked) = (false, false);
    loop {
        match text {
            [byte @ b'0'..=b'9', rest @ ..] => {
                any = true;
                decimals = decimals.saturating_add(i64::from(marked));
                if *byte != b'0' {
                    figures = figures.saturating_add(zeros).saturating_add(1);
                    // More than 15 figures are refused below; until then the mantissa may become anything.
                    for _ in 0..zeros.min(MOST_FIGURES) {
                        mantissa = mantissa.wrapping_mul(10);
                    }
                    mantissa = mantissa.wrapping_mul(10).wrapping_add(digit(*byte));
                    zeros = 0;
                } else if figures > 0 {
                    zeros = zeros.saturating_add(1);
                }
                text = rest;
            }
            [b'.' | b',', rest @ ..] if !marked => {
                marked = true;
                text = rest;
            }
            _ => break,
        }
    }
    if !any {
        return Err(TextError::Syntax);
    }
    let exponent = match text {
        [] => 0,
        [b'e' | b'E', rest @ ..] => exponent(rest)?,
        _ => return Err(TextError::Syntax),
    };
    if figures == 0 {
        return if exponent.unsigned_abs() > MOST_EXPONENT { Err(TextError::TooManyFigures) } else { Ok(0.0) };
    }
    let power = exponent.saturating_sub(decimals).saturating_add_unsigned(zeros);
    // Past the end of the table, the power is too large.
    let ten = usize::try_from(power.unsigned_abs()).ok().and_then(|power| EXACT_TENS.get(power));
    match ten {
        Some(&ten) if figures <= MOST_FIGURES && exponent.unsigned_abs() <= MOST_EXPONENT => {
            // Both are exact, so the one operation is the one rounding.
            let mantissa = mantissa as f64;
            Ok(if power < 0 { mantissa / ten } else { mantissa * ten })
        }
        _ => Err(TextError::TooManyFigures),
    }
}

/// What follows the `e`: an optional sign and at least one digit, to the end.
fn exponent(text: &[u8]) -> Result<i64, TextError> {
    let (minus, mut text) = match text {
        [b'-', rest @ ..] => (true, rest),
        [b'+', rest @ ..] => (false, rest),
        _ => (false, text),
    };
    if text.is_empty() {
        return Err(TextError::Syntax);
    }
    let mut number = 0_i64;
    while let [byte @ b'0'..=b'9', rest @ ..] = text {
        number = number.saturating_mul(10).saturating_add_unsigned(digit(*byte));
        text = rest;
    }
    if !text.is_empty() {
        return Err(TextError::Syntax);
    }
    Ok(if minus { number.saturating_neg() } else { number })
}

/// The value of an ASCII digit.
fn digit(byte: u8) -> u64 {
    u64::from(byte.wrapping_sub(b'0'))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "tests may panic")]
mod tests {
    extern crate std;
    use super::*;
    use std::format;
    use std::string::String;

    #[test]
    fn accepted() {
        for (text, x) in [
            ("12", 12.0),
            ("0.5", 0.5),
            ("-3", -3.0),
            (".5", 0.5),
            ("5.", 5.0),
            ("+5", 5.0),
            ("1e-3", 1e-3),
            ("1E3", 1e3),
            ("12,5", 12.5),
            ("-,5", -0.5),
            ("1,5e2", 150.0),
            ("  7 \t", 7.0),
            ("1,234", 1.234),
            ("13/16", 0.8125),
            ("1 5/8", 1.625),
            ("1-5/8", 1.625),
            ("-1 5/8", -1.625),
            ("-1-5/8", -1.625),
            ("-5/8", -0.625),
            ("+5/8", 0.625),
            ("1   5/8", 1.625),
            ("18/16", 1.125),
            ("0 1/2", 0.5),
            ("0/5", 0.0),
            ("1/3", 1.0 / 3.0),
            ("2 1/3", 7.0 / 3.0),
            ("00012", 12.0),
            ("100000000000000000000", 1e20),
            ("0.50000000000000000000000000000", 0.5),
            ("1e15", 1e15),
            ("1e-15", 1e-15),
            ("1e+0000000015", 1e15),
            ("0.0000001e-15", 1e-22),
            ("10000000e15", 1e22),
            ("999999999999999", 999_999_999_999_999.0),
            ("100000000000001", 100_000_000_000_001.0),
            ("9007199254740992/9007199254740992", 1.0),
            ("0e5", 0.0),
            ("0.000000000000000000000000000000000", 0.0),
            ("1234567890123450000000", 1.234_567_890_123_45e21),
        ] {
            assert_eq!(parse_number(text), Ok(x), "{text}");
        }
        assert_eq!(parse_number("-0").map(f64::to_bits), Ok((-0.0_f64).to_bits()));
    }

    #[test]
    fn refused() {
        for text in ["", " ", "\t\n"] {
            assert_eq!(parse_number(text), Err(TextError::Empty));
        }
        for text in [
            ".",
            ",",
            "-",
            "+",
            "--1",
            "+-1",
            "- 1",
            "1.2.3",
            "1,2,3",
            "1.2,3",
            "1,234.5",
            "e5",
            ".e5",
            "1e",
            "1e+",
            "1e-",
            "1e1.5",
            "1e5x",
            "x",
            "1x",
            "0x10",
            "inf",
            "NaN",
            "1 2",
            "1/",
            "/2",
            "1/0",
            "0/0",
            "1 1/0",
            "1 /2",
            "1/ 2",
            "1//2",
            "1/2/3",
            "1 2 3/4",
            "1-2-3/4",
            "1.5/2",
            "1/2.5",
            "1e2/3",
            "1 8/8",
            "1 13/8",
            "1--5/8",
            "1- 5/8",
            "1 -5/8",
            "1 - 5/8",
            "-5/-8",
            "5/8 in",
            "1+5/8",
            "\u{bd}",
            "1\u{a0}5/8",
            "\u{2212}1",
            "1_000",
            "1'000",
            "/",
            "1-",
            "1-5",
            "5/8e2",
        ] {
            assert_eq!(parse_number(text), Err(TextError::Syntax), "{text}");
        }
        let long_zeros = format!("0.{}1", "0".repeat(10_000));
        let long_nines = "9".repeat(10_000);
        let long_fraction = format!("1/{long_nines}");
        for text in [
            "1234567890123456",
            "0.1234567890123456",
            "1000000000000001",
            "1e16",
            "1e-16",
            "0e16",
            "1e99999999999999999999",
            "1e-99999999999999999999",
            "0.00000001e-15",
            "100000000e15",
            "9007199254740993/1",
            "1/9007199254740993",
            "9007199254740992 1/2",
            "4503599627370496 1/3",
            "18446744073709551616/3",
            &long_zeros,
            &long_nines,
            &long_fraction,
        ] {
            assert_eq!(parse_number(text), Err(TextError::TooManyFigures), "{text}");
        }
    }

    struct Random(u64);
    impl Random {
        fn below(&mut self, n: u64) -> u64 {
            self.0 ^= self.0 << 13;
            self.0 ^= self.0 >> 7;
            self.0 ^= self.0 << 17;
            (self.0 >> 11) % n
        }
    }

    #[test]
    fn as_the_standard_library() {
        let mut random = Random(0x1234_5678_9abc_def1);
        let rounds = if cfg!(debug_assertions) { 1_000_000 } else { 20_000_000 };
        let (mut read, mut text) = (0_u64, String::new());
        for _ in 0..rounds {
            text.clear();
            if random.below(3) == 0 {
                text.push('-');
            }
            let length = random.below(18) + 1;
            let mark = random.below(length + 6);
            for at in 0..length {
                if at == mark {
                    text.push('.');
                }
                // Zeros more often than the rest.
                text.push(char::from(b"0001234567899"[random.below(13) as usize]));
            }
            if random.below(3) == 0 {
                text.push_str(["e", "e-", "E+"][random.below(3) as usize]);
                text.push_str(["0", "1", "3", "7", "12", "15"][random.below(6) as usize]);
            }
            let reference: f64 = text.parse().unwrap();
            match parse_number(&text) {
                Ok(x) => {
                    assert_eq!(x.to_bits(), reference.to_bits(), "{text}");
                    read += 1;
                }
                Err(error) => {
                    assert_eq!(error, TextError::TooManyFigures, "{text}");
                    assert!(text.len() > 8, "{text}");
                }
            }
        }
        assert!(read > rounds / 2);
    }

    #[test]
    fn random_bytes_do_no_harm() {
        let mut random = Random(99);
        let mut text = String::new();
        for _ in 0..300_000 {
            text.clear();
            for _ in 0..random.below(12) {
                text.push(char::from(b"0123456789.,eE+-/ \tx"[random.below(20) as usize]));
            }
            // What is read without fraction or comma, the standard library reads alike.
            if let Ok(x) = parse_number(&text)
                && !text.contains(['/', ','])
            {
                assert_eq!(text.trim().parse::<f64>(), Ok(x), "{text}");
            }
        }
    }
}
