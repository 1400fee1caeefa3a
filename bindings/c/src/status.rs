//! Statuses and errors.

use core::ffi::c_char;
use core::fmt;

use seamwright::bounds::{FIELDS, Field};
use seamwright::error::{EntryNo, Error, ErrorKind, KINDS};

use crate::border::{self, Out, Text};
use crate::rules::{book_of, sw_rules};

/// All went well. Other statuses below 256 are kinds of errors of the library, from 256 on they concern the call.
pub const SW_OK: u32 = 0;
/// A number is not finite.
pub const SW_NOT_FINITE: u32 = 1;
/// A value is below the least value allowed.
pub const SW_TOO_SMALL: u32 = 2;
/// A value is above the greatest value allowed.
pub const SW_TOO_LARGE: u32 = 3;
/// A value is needed here and was not given.
pub const SW_MISSING: u32 = 4;
/// A value does not belong to this form of joint.
pub const SW_NOT_FOR_THIS_FORM: u32 = 5;
/// A value contradicts the form of the joint or another input.
pub const SW_INCONSISTENT: u32 = 6;
/// The holes of a row fill the pitch.
pub const SW_HOLES_FILL_PITCH: u32 = 7;
/// Holes of neighbouring rows overlap.
pub const SW_ROWS_OVERLAP: u32 = 8;
/// A hole cuts the plate edge.
pub const SW_HOLE_CUTS_EDGE: u32 = 9;
/// A rivet is greater than its hole.
pub const SW_RIVET_EXCEEDS_HOLE: u32 = 10;
/// A value lies outside a table of the rule book.
pub const SW_BEYOND_TABLE: u32 = 11;
/// A hole is above the largest size of the series.
pub const SW_NO_STANDARD_SIZE: u32 = 12;
/// No pitch lies between the least and the greatest pitch of the rule book.
pub const SW_NO_ADMISSIBLE_PITCH: u32 = 13;
/// No margin lies between the least and the greatest margin of the rule book.
pub const SW_NO_ADMISSIBLE_MARGIN: u32 = 14;
/// There is no entry, no input or no quantity of this key or symbol.
pub const SW_UNKNOWN_KEY: u32 = 15;
/// A value is not one of the choices of its entry.
pub const SW_WRONG_CHOICE: u32 = 16;
/// A text cannot be read as a number, or has no unit where one is needed.
pub const SW_UNREADABLE: u32 = 17;
/// A buffer or an array is too short; the size needed was written, nothing else. `value` of the error is the size that
/// there is, `limit` the one needed.
pub const SW_NO_SPACE: u32 = 18;
/// The rule book contradicts itself.
pub const SW_BOOK_UNSOUND: u32 = 19;
/// No problem could be made in which the wanted effect decides.
pub const SW_NO_PROBLEM: u32 = 20;
/// The holes of two rivets of a group overlap.
pub const SW_HOLES_OVERLAP: u32 = 21;
/// One rivet alone cannot hold a moment.
pub const SW_RIVET_TURNS: u32 = 22;
/// A pointer is NULL or not aligned; `index` of the error is the number of the argument, from 1.
pub const SW_BAD_POINTER: u32 = 256;
/// `struct_size` is not one that this library knows; `index` of the error is the number of the argument.
pub const SW_BAD_STRUCT_SIZE: u32 = 257;
/// A text is not UTF-8, or longer than 4095 bytes; `index` of the error is the number of the argument.
pub const SW_BAD_TEXT: u32 = 258;
/// A number or an id is none of those that there are; `index` of the error is the number of the argument.
pub const SW_BAD_CHOICE: u32 = 259;
/// There are no more elements, or there is nothing to tell of.
pub const SW_END: u32 = 260;
/// A working or a sheet could not be written completely and was refused.
pub const SW_INCOMPLETE: u32 = 261;
/// An array has more elements than the library takes (4096 where nothing else is said).
pub const SW_TOO_MANY: u32 = 262;
/// "No entry": the matter does not come from a rule book.
pub const SW_NO_ENTRY: u32 = 0xFFFF;
/// "No field": the error concerns the call and no value.
pub const SW_NO_FIELD: u32 = 0xFFFF_FFFF;

/// Why a function failed. Texts: `sw_error_message`, `sw_error_field`, `sw_error_clause`.
#[derive(Clone, Copy)]
#[repr(C)]
#[allow(non_camel_case_types)]
pub struct sw_error {
    /// Size of this struct, set by `sw_error_init`.
    pub struct_size: u32,
    /// The status that the function returned.
    pub status: u32,
    /// Number of the field at fault (see `sw_error_field`), `SW_NO_FIELD` where the call itself was wrong.
    pub field: u32,
    /// Number of the row, line or argument, from 1; 0 when there is none.
    pub index: u32,
    /// Entry of the rule book that set the limit; `SW_NO_ENTRY` when there is none.
    pub entry: u32,
    /// A second entry, where two rules contradict each other; `SW_NO_ENTRY` when there is none.
    pub other_entry: u32,
    /// Number of the field that the hint is about; counts where `hint` is a number.
    pub hint_field: u32,
    /// Not used.
    pub reserved: u32,
    /// The value at fault in the unit of its field (mm, MPa, N, 1); not a number when there is none.
    pub value: f64,
    /// The limit that it passed; not a number when there is none.
    pub limit: f64,
    /// A value of the hint's field that would do; not a number when none is known.
    pub hint: f64,
}

impl sw_error {
    pub(crate) fn fresh() -> Self {
        sw_error {
            struct_size: size_of::<sw_error>() as u32,
            status: SW_OK,
            field: SW_NO_FIELD,
            index: 0,
            entry: SW_NO_ENTRY,
            other_entry: SW_NO_ENTRY,
            hint_field: SW_NO_FIELD,
            reserved: 0,
            value: f64::NAN,
            limit: f64::NAN,
            hint: f64::NAN,
        }
    }

    pub(crate) fn of(failure: &Failure) -> Self {
        let mut c = sw_error { status: failure.status, index: failure.argument, ..sw_error::fresh() };
        if let Some(e) = &failure.error {
            c.field = e.field as u32;
            c.index = u32::from(e.index);
            c.entry = u32::from(e.entry.0);
            c.other_entry = u32::from(e.other.0);
            c.hint_field = e.hint_field as u32;
            (c.value, c.limit, c.hint) = (e.value, e.limit, e.hint);
        }
        c
    }
}

/// A failure on its way out.
#[derive(Clone, Copy)]
pub struct Failure {
    pub(crate) status: u32,
    argument: u32,
    error: Option<Error>,
}

impl Failure {
    /// The call was wrong.
    pub(crate) const fn border(status: u32, argument: u32) -> Self {
        Failure { status, argument, error: None }
    }

    /// A number of elements or bytes that does not fit.
    pub(crate) fn space(has: usize, needs: usize) -> Self {
        let number = |n: usize| n as f64;
        Error::new(ErrorKind::NoSpace, Field::Text).value(number(has)).limit(number(needs)).into()
    }

    /// The same about element number `number`, from 1, of a list.
    pub(crate) fn numbered(mut self, number: u8) -> Self {
        self.error = self.error.map(|e| e.index(number));
        self
    }

    fn put(&self, to: *mut sw_error) {
        // An error struct that cannot be used is left alone: the status says the same.
        let Ok(out) = Out::needed(to, 0) else { return };
        out.put(sw_error::of(self));
    }
}

impl From<Error> for Failure {
    fn from(error: Error) -> Self {
        Failure { status: error.kind as u32, argument: 0, error: Some(error) }
    }
}

impl From<fmt::Error> for Failure {
    fn from(_: fmt::Error) -> Self {
        Failure::border(SW_NO_SPACE, 0)
    }
}

/// Runs a body and turns its failure into a status and an error struct.
pub(crate) fn answer(error: *mut sw_error, body: impl FnOnce() -> Result<(), Failure>) -> u32 {
    match body() {
        Ok(()) => SW_OK,
        Err(failure) => {
            failure.put(error);
            failure.status
        }
    }
}

fn error_of(c: &sw_error) -> Option<Error> {
    let kind = *KINDS.iter().find(|k| **k as u32 == c.status)?;
    let field = *FIELDS.get(c.field as usize)?;
    let mut error = Error::new(kind, field).value(c.value).limit(c.limit);
    error.index = u8::try_from(c.index).unwrap_or(u8::MAX);
    error.entry = entry_no(c.entry);
    error.other = entry_no(c.other_entry);
    if let Some(hinted) = FIELDS.get(c.hint_field as usize) {
        error = error.hint(*hinted, c.hint);
    }
    Some(error)
}

pub(crate) fn entry_no(number: u32) -> EntryNo {
    u16::try_from(number).map_or(EntryNo::NONE, EntryNo)
}

/// What a status means where the call itself was wrong.
fn words(status: u32) -> &'static str {
    match status {
        SW_OK => "no error",
        SW_BAD_POINTER => "a pointer is NULL or not aligned",
        SW_BAD_STRUCT_SIZE => {
            "struct_size is not one that this library knows; call the init function of the struct first"
        }
        SW_BAD_TEXT => "a text is not UTF-8 or is longer than 4095 bytes",
        SW_BAD_CHOICE => "a number or an id is none of those that there are",
        SW_END => "there are no more elements",
        SW_TOO_MANY => "an array has more elements than the library takes",
        SW_UNKNOWN_KEY => "a key or a symbol is none of those that there are",
        SW_UNREADABLE => "a text cannot be read as a number, or has no unit where one is needed",
        SW_INCOMPLETE => "the working or sheet could not be written completely and was refused",
        _ => KINDS.iter().find(|k| **k as u32 == status).map_or("unknown status", |k| k.text()),
    }
}

/// Fills an error struct with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_error_init(error: *mut sw_error) {
    border::init(error);
}

/// The whole error in words: field, value, what is wrong, limit, remedy. The figures are in mm, MPa and N.
#[unsafe(no_mangle)]
pub extern "C" fn sw_error_message(error: *const sw_error, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let c = border::read(error, 1)?;
        Text::new(buf, len, needed, 2)?.put(|out| {
            match error_of(&c) {
                Some(error) => write!(out, "{error}")?,
                None => {
                    out.write_str(words(c.status))?;
                    if c.index > 0 {
                        write!(out, " (argument no. {})", c.index)?;
                    }
                }
            }
            Ok(())
        })
    })
}

/// The key of the field at fault, as in `pitch`; empty where the call itself was wrong.
#[unsafe(no_mangle)]
pub extern "C" fn sw_error_field(error: *const sw_error, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let c = border::read(error, 1)?;
        let key = FIELDS.get(c.field as usize).map_or("", |field| field.bound().key);
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(key)?))
    })
}

/// The clause behind the limit with its label, by the rule book that was used; empty where there is none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_error_clause(
    error: *const sw_error,
    rules: *const sw_rules,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
) -> u32 {
    answer(core::ptr::null_mut(), || {
        let c = border::read(error, 1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        Text::new(buf, len, needed, 3)?.put(|out| crate::rules::write_clause(out, &book, entry_no(c.entry)))
    })
}

/// What a status means, in a few words; `unknown status` for any other number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_status_text(status: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(words(status))?)))
}
