//! Every digit against the standard library's exact formatting.

extern crate std;
use super::*;
use crate::text::Slice;
use std::format;
use std::string::{String, ToString};

fn fixed(x: f64, decimals: u8) -> Result<String, TextError> {
    let mut out = String::new();
    write_fixed(&mut out, x, decimals).map(|()| out)
}
fn significant(x: f64, figures: u8) -> Result<String, TextError> {
    let mut out = String::new();
    write_significant(&mut out, x, figures).map(|()| out)
}
fn plain(x: f64, decimals: u8) -> String {
    let mut out = String::new();
    write_plain(&mut out, x, decimals).unwrap();
    out
}

/// SplitMix64.
struct Random(core::cell::Cell<u64>);
impl Random {
    fn new(seed: u64) -> Self {
        Self(core::cell::Cell::new(seed))
    }
    fn next(&self) -> u64 {
        let mut z = self.0.get().wrapping_add(0x9e37_79b9_7f4a_7c15);
        self.0.set(z);
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }
    fn below(&self, n: u64) -> u64 {
        self.next() % n
    }
}
const ROUNDS: u64 = if cfg!(debug_assertions) { 60_000 } else { 3_000_000 };

/// A value below 9e15 of one of several kinds that are hard to round.
fn value(random: &Random) -> f64 {
    let x = match random.below(8) {
        // Any bits whose exponent is in range; the exponents near 1 more often.
        0 => f64::from_bits(random.next() & 0x800f_ffff_ffff_ffff | random.below(1076) << 52),
        1 | 2 => f64::from_bits(random.next() & 0x800f_ffff_ffff_ffff | (random.below(100) + 976) << 52),
        // The nearest double to a decimal, and its neighbours.
        3 => {
            let d = random.below(23) as i32;
            (random.below(10_u64.pow(random.below(16) as u32 + 1)) as f64) / 10_f64.powi(d)
        }
        4 => {
            let half = (random.below(10_u64.pow(random.below(14) as u32 + 1)) * 10 + 5) as f64;
            let x = half / 10_f64.powi(random.below(12) as i32);
            f64::from_bits(x.to_bits().wrapping_add(random.below(5)).wrapping_sub(2))
        }
        // Exact ties: odd multiples of a small power of two.
        5 => (random.below(1 << (random.below(40) + 1)) * 2 + 1) as f64 / 2_f64.powi(random.below(12) as i32 + 1),
        // Powers of two, and next to them.
        6 => {
            let bits = random.below(1076) << 52;
            f64::from_bits(bits.wrapping_add(random.below(3)).saturating_sub(1))
        }
        // Nines.
        _ => {
            (10_f64.powi(random.below(16) as i32) - 10_f64.powi(-(random.below(10) as i32)))
                / 10_f64.powi(random.below(8) as i32)
        }
    };
    if random.below(2) == 0 { x } else { -x }
}

fn compare(x: f64, buffer: &mut [u8], reference: &mut String) {
    use core::fmt::Write;
    for decimals in 0..=9_u8 {
        reference.clear();
        write!(reference, "{:.*}", usize::from(decimals), x).unwrap();
        let mut sink = Slice::new(buffer);
        write_fixed(&mut sink, x, decimals).unwrap();
        assert_eq!(sink.finish(), Ok(reference.as_str()), "{x:e} {decimals}");
    }
}

#[test]
fn as_the_standard_library() {
    let random = Random::new(1);
    let (mut buffer, mut reference) = ([0_u8; 40], String::new());
    let mut done = 0_u64;
    while done < ROUNDS {
        let x = value(&random);
        if x.abs() < LIMIT {
            compare(x, &mut buffer, &mut reference);
            done += 1;
        }
    }
}

#[test]
fn boundaries() {
    let (mut buffer, mut reference) = ([0_u8; 40], String::new());
    let last = f64::from_bits(LIMIT.to_bits() - 1);
    let subnormal = f64::from_bits(1);
    for x in [
        0.0,
        0.5,
        1.5,
        2.5,
        0.25,
        0.75,
        0.125,
        0.375,
        2.675,
        1.005,
        0.05,
        0.15,
        0.45,
        0.95,
        9.5,
        99.5,
        0.999_999_999_5,
        last,
        last - 1.0,
        4_503_599_627_370_496.0,
        4_503_599_627_370_495.5,
        4_503_599_627_370_494.5,
        2_251_799_813_685_247.8,
        f64::MIN_POSITIVE,
        f64::MIN_POSITIVE - subnormal,
        subnormal,
        f64::EPSILON,
        1e-9,
        5e-10,
        4.999_999e-10,
        0.000_976_562_5,
        0.001_953_125,
        0.000_000_001_5,
        1e15,
        123_456_789.123_456_79,
    ] {
        compare(x, &mut buffer, &mut reference);
        compare(-x, &mut buffer, &mut reference);
    }
    // Every power of two and its neighbours.
    for exponent in 0..1076_u64 {
        for bits in [exponent << 52, (exponent << 52).saturating_sub(1), (exponent << 52) + 1] {
            compare(f64::from_bits(bits), &mut buffer, &mut reference);
        }
    }
    assert_eq!(fixed(-0.0, 2).as_deref(), Ok("-0.00"));
    assert_eq!(fixed(LIMIT, 0), Err(TextError::TooLarge));
    assert_eq!(fixed(-LIMIT, 0), Err(TextError::TooLarge));
    assert_eq!(fixed(f64::MAX, 0), Err(TextError::TooLarge));
    assert_eq!(fixed(f64::NAN, 0), Err(TextError::NotFinite));
    assert_eq!(fixed(f64::NEG_INFINITY, 0), Err(TextError::NotFinite));
    assert_eq!(fixed(1.0, 10), Err(TextError::TooManyDigits));
    assert_eq!(fixed(1.0, 255), Err(TextError::TooManyDigits));
}

/// Plain notation from the standard library's exponent notation, which rounds to significant figures.
fn reference_significant(x: f64, figures: u8) -> (String, i32) {
    let text = format!("{:.*e}", usize::from(figures) - 1, x.abs());
    let (mantissa, exponent) = text.split_once('e').unwrap();
    let exponent: i32 = exponent.parse().unwrap();
    let digits = mantissa.replace('.', "");
    let decimals = i32::from(figures) - 1 - exponent;
    let mut plain = if exponent < 0 {
        format!("0.{}{digits}", "0".repeat(usize::try_from(-exponent - 1).unwrap()))
    } else if decimals <= 0 {
        format!("{digits}{}", "0".repeat(usize::try_from(-decimals).unwrap()))
    } else {
        let (whole, part) = digits.split_at(usize::try_from(exponent + 1).unwrap());
        format!("{whole}.{part}")
    };
    if x < 0.0 {
        plain.insert(0, '-');
    }
    (plain, decimals)
}

#[test]
fn significant_as_the_standard_library() {
    let random = Random::new(2);
    let mut printed = 0_u64;
    for _ in 0..ROUNDS {
        let x = value(&random);
        let figures = random.below(15) as u8 + 1;
        if x == 0.0 || x.abs() >= LIMIT {
            continue;
        }
        let (reference, decimals) = reference_significant(x, figures);
        match significant(x, figures) {
            Ok(text) => {
                assert_eq!(text, reference, "{x:e} {figures}");
                printed += 1;
            }
            Err(error) => {
                assert_eq!(error, TextError::TooManyDigits);
                // A value that rounds up into the next decade loses one decimal.
                assert!(decimals >= 22, "{x:e} {figures}");
                assert!(x.abs() < 1e-8);
            }
        }
    }
    assert!(printed > ROUNDS / 2);
    for (x, figures, text) in [
        (152578.1, 4, "152600"),
        (9.996, 3, "10.0"),
        (9996.0, 3, "10000"),
        (9999.7, 4, "10000"),
        (0.9996, 3, "1.00"),
        (0.09996, 3, "0.100"),
        (0.5, 1, "0.5"),
        (2.5, 1, "2"),
        (3.5, 1, "4"),
        (25.0, 1, "20"),
        (35.0, 1, "40"),
        (25.000001, 1, "30"),
        (0.0, 3, "0"),
        (-0.0, 3, "0"),
        (-1.25, 2, "-1.2"),
        (8999999999999999.0, 1, "9000000000000000"),
        (8999999999999999.0, 15, "9000000000000000"),
        (1e-8, 15, "0.0000000100000000000000"),
        (1.0, 15, "1.00000000000000"),
        (9.9e15 / 2.0, 15, "4950000000000000"),
        (1.0001e-19, 4, "0.0000000000000000001000"),
    ] {
        assert_eq!(significant(x, figures).as_deref(), Ok(text), "{x:e} {figures}");
    }
    assert_eq!(significant(1.0, 0), Err(TextError::TooManyDigits));
    assert_eq!(significant(1e-20, 4), Err(TextError::TooManyDigits));
    assert_eq!(significant(f64::from_bits(1), 1), Err(TextError::TooManyDigits));
    assert_eq!(significant(f64::NAN, 4), Err(TextError::NotFinite));
    assert_eq!(significant(-LIMIT, 4), Err(TextError::TooLarge));
}

#[test]
fn plain_is_fixed_without_trailing_zeros() {
    for (x, text) in
        [(2.50, "2.5"), (3.0, "3"), (100.0, "100"), (-0.0, "0"), (-1e-9, "0"), (-0.25, "-0.25"), (0.1 + 0.2, "0.3")]
    {
        assert_eq!(plain(x, 6), text);
    }
    assert_eq!(plain(120.0, 0), "120");
    let random = Random::new(3);
    for _ in 0..ROUNDS / 8 {
        let x = value(&random);
        if x.abs() < LIMIT {
            let mut reference = format!("{x:.6}").trim_end_matches('0').trim_end_matches('.').to_string();
            if reference == "-0" {
                reference.remove(0);
            }
            assert_eq!(plain(x, 6), reference);
        }
    }
}

#[test]
fn comma() {
    for (decimals, text) in [(0, "1235"), (2, "1234,50")] {
        let mut out = String::new();
        write_fixed_with(&mut out, 1234.5001, decimals, DecimalMark::Comma).unwrap();
        assert_eq!(out, text);
    }
}
