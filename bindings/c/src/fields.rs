//! Inputs and their ranges: what `sw_error.field` counts, and what a form may offer before anything is computed.

use core::ffi::c_char;

use seamwright::bounds::{FIELDS, Field};

use crate::border::{self, Slot, Text};
use crate::status::{Failure, SW_BAD_CHOICE, SW_UNKNOWN_KEY, answer, sw_error};

pub(crate) fn field(number: u32) -> Result<Field, Failure> {
    FIELDS.get(number as usize).copied().ok_or(Failure::border(SW_BAD_CHOICE, 1))
}

/// The number of an input by its key, as in `pitch` or `safety_factor`; the same as in `sw_error.field`.
/// `SW_UNKNOWN_KEY` where there is none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_field_find(key: *const c_char, number: *mut u32, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(number, 2)?;
        let key = border::text(key, 1)?;
        let found = (0_u32..).zip(FIELDS).find(|(_, field)| field.bound().key == key);
        out.put(found.ok_or(Failure::border(SW_UNKNOWN_KEY, 1))?.0);
        Ok(())
    })
}

/// The least and the greatest value of an input, in its unit (`sw_field_unit`). Both 0: it is no number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_field_bounds(number: u32, least: *mut f64, greatest: *mut f64, error: *mut sw_error) -> u32 {
    answer(error, || {
        let (low, high) = (Slot::needed(least, 2)?, Slot::needed(greatest, 3)?);
        let bound = field(number)?.bound();
        low.put(bound.lo);
        high.put(bound.hi);
        Ok(())
    })
}

/// An input in words, by its number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_field_what(number: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let bound = field(number)?.bound();
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(bound.what)?))
    })
}

/// The unit of an input, by its number; empty for pure numbers.
#[unsafe(no_mangle)]
pub extern "C" fn sw_field_unit(number: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let bound = field(number)?.bound();
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(bound.unit.symbol())?))
    })
}
