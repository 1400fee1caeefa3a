//! Numbers as texts and from texts, correctly rounded, without `printf`.

use core::ffi::c_char;
use core::fmt;

use seamwright::quantities::Length;
use seamwright::text::{
    DecimalMark, TextError, parse_number, write_fixed_with, write_inch_fraction, write_plain_with,
    write_significant_with,
};

use crate::border::{self, Slot, Text};
use crate::status::{
    Failure, SW_BAD_CHOICE, SW_NO_SPACE, SW_NOT_FINITE, SW_TOO_LARGE, SW_UNREADABLE, answer, sw_error,
};
use crate::working::decimal_mark;

fn failed(error: TextError) -> Failure {
    Failure::border(
        match error {
            TextError::NotFinite => SW_NOT_FINITE,
            TextError::TooLarge => SW_TOO_LARGE,
            TextError::TooManyDigits => SW_BAD_CHOICE,
            TextError::Sink => SW_NO_SPACE,
            _ => SW_UNREADABLE,
        },
        0,
    )
}

/// Digits as the library takes them; what does not fit a byte is too many in any case.
fn digits(n: u32) -> u8 {
    u8::try_from(n).unwrap_or(u8::MAX)
}

/// A number in one of the ways below, with the decimal mark of argument 3 and the buffer behind it.
fn printed(
    mark: u32,
    (buf, len, needed): (*mut c_char, usize, *mut usize),
    write: impl Fn(&mut dyn fmt::Write, DecimalMark) -> Result<(), TextError>,
) -> u32 {
    answer(core::ptr::null_mut(), || {
        let mark = decimal_mark(mark, 3)?;
        Text::new(buf, len, needed, 4)?.put(|out| write(out, mark).map_err(failed))
    })
}

/// Reads a number as people write it: `12.5`, `12,5`, `1 5/8`, `3e4`; `SW_UNREADABLE` where it is none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_number_parse(text: *const c_char, value: *mut f64, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(value, 2)?;
        out.put(parse_number(border::text(text, 1)?).map_err(failed)?);
        Ok(())
    })
}

/// A number with exactly so many decimals (0 to 9), as in `2.50`; `mark` is one of `SW_MARK_*`. `SW_NOT_FINITE` and
/// `SW_TOO_LARGE` (more digits than are certain) where there is nothing to print, here and below.
#[unsafe(no_mangle)]
pub extern "C" fn sw_number_fixed(
    value: f64,
    decimals: u32,
    mark: u32,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
) -> u32 {
    printed(mark, (buf, len, needed), |out, mark| write_fixed_with(out, value, digits(decimals), mark))
}

/// A number with at most so many decimals (0 to 9), without zeros at the end: 2.50 is `2.5`, 3.00 is `3`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_number_plain(
    value: f64,
    decimals: u32,
    mark: u32,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
) -> u32 {
    printed(mark, (buf, len, needed), |out, mark| write_plain_with(out, value, digits(decimals), mark))
}

/// A number to so many significant figures (1 to 15), in plain notation: 152578.1 to 4 figures is `152600`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_number_significant(
    value: f64,
    figures: u32,
    mark: u32,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
) -> u32 {
    printed(mark, (buf, len, needed), |out, mark| write_significant_with(out, value, digits(figures), mark))
}

/// A length in millimetres as inches with a fraction, as in `1 5/8`; in four decimals where it is none of that
/// denominator (a power of two up to 128).
#[unsafe(no_mangle)]
pub extern "C" fn sw_length_fraction(
    mm: f64,
    denominator: u32,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
) -> u32 {
    answer(core::ptr::null_mut(), || {
        let inches = Length::mm(mm).to_inch();
        Text::new(buf, len, needed, 3)?.put(|out| write_inch_fraction(out, inches, denominator).map_err(failed))
    })
}
