//! Forms of joints.

use core::ffi::c_char;

use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::joint::{Arrangement, Form, JointKind, MAX_ROWS};

use crate::border::{self, Slot, Text};
use crate::status::{Failure, SW_BAD_CHOICE, answer, sw_error};

/// Greatest number of rows on one side of a joint.
pub const SW_MAX_ROWS: usize = 8;

const _: () = assert!(SW_MAX_ROWS == MAX_ROWS, "the header's rows are the library's");

/// One plate laid over the other.
pub const SW_LAP: u32 = 0;
/// Plates butted, one strap.
pub const SW_SINGLE_STRAP: u32 = 1;
/// Plates butted, a strap on each side.
pub const SW_DOUBLE_STRAP: u32 = 2;
/// Rows behind each other.
pub const SW_CHAIN: u32 = 0;
/// Rows in the gaps of each other.
pub const SW_ZIGZAG: u32 = 1;

/// The form of a joint. A record: filled by `sw_form_lap` and its like, or field by field.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_form {
    /// `SW_LAP`, `SW_SINGLE_STRAP` or `SW_DOUBLE_STRAP`.
    pub kind: u32,
    /// `SW_CHAIN` or `SW_ZIGZAG`.
    pub arrangement: u32,
    /// Number of rows, 1 to 8, on one side of the butt.
    pub row_count: u32,
    /// Not used.
    pub reserved: u32,
    /// Rivets of each row in the strip, outside first, 1 to 60.
    pub rivets: [u32; SW_MAX_ROWS],
    /// Shear planes of the rivets of each row: 1, or 2 through both straps.
    pub planes: [u32; SW_MAX_ROWS],
}

impl sw_form {
    pub(crate) fn of(form: &Form) -> Self {
        let mut c = sw_form {
            kind: form.kind() as u32,
            arrangement: form.arrangement() as u32,
            row_count: form.row_count() as u32,
            reserved: 0,
            rivets: [0; SW_MAX_ROWS],
            planes: [0; SW_MAX_ROWS],
        };
        for (row, (rivets, planes)) in form.rows().zip(c.rivets.iter_mut().zip(c.planes.iter_mut())) {
            (*rivets, *planes) = (u32::from(row.rivets), u32::from(row.planes));
        }
        c
    }

    pub(crate) const fn none() -> Self {
        let (rivets, planes) = ([0; SW_MAX_ROWS], [0; SW_MAX_ROWS]);
        sw_form { kind: SW_LAP, arrangement: SW_CHAIN, row_count: 0, reserved: 0, rivets, planes }
    }

    pub(crate) fn form(&self, argument: u32) -> Result<Form, Failure> {
        let bad = || Failure::border(SW_BAD_CHOICE, argument);
        let kind = match self.kind {
            SW_LAP => JointKind::Lap,
            SW_SINGLE_STRAP => JointKind::SingleStrap,
            SW_DOUBLE_STRAP => JointKind::DoubleStrap,
            _ => return Err(bad()),
        };
        let arrangement = match self.arrangement {
            SW_CHAIN => Arrangement::Chain,
            SW_ZIGZAG => Arrangement::Zigzag,
            _ => return Err(bad()),
        };
        if self.row_count as usize > MAX_ROWS {
            let error = Error::new(ErrorKind::TooLarge, Field::Rows);
            return Err(error.value(f64::from(self.row_count)).limit(MAX_ROWS as f64).into());
        }
        let mut rows = [(0, 0); MAX_ROWS];
        for ((slot, (rivets, planes)), number) in rows.iter_mut().zip(self.rivets.iter().zip(self.planes)).zip(1..) {
            if number > self.row_count {
                break;
            }
            let row = u8::try_from(number).unwrap_or(0);
            // Held to the range here, so that the error names what was given and not what fits a byte.
            let small = |field: Field, n: u32| -> Result<u8, Failure> {
                field.check(f64::from(n)).map_err(|e| e.index(row))?;
                Ok(u8::try_from(n).unwrap_or(u8::MAX))
            };
            *slot = (small(Field::RowRivets, *rivets)?, small(Field::ShearPlanes, planes)?);
        }
        let given = rows.get(..self.row_count as usize).unwrap_or(&[]);
        Ok(Form::from_rows(kind, arrangement, given)?)
    }
}

/// A number of rows as the library takes it; what does not fit a byte is out of range in any case.
fn rows(n: u32) -> u8 {
    u8::try_from(n).unwrap_or(u8::MAX)
}

fn make(form: *mut sw_form, error: *mut sw_error, made: Result<Form, Error>) -> u32 {
    answer(error, || {
        let out = Slot::needed(form, 2)?;
        out.put(sw_form::of(&made?));
        Ok(())
    })
}

/// A lap joint of 1 to 4 equal rows, zig-zag. Other numbers are refused (`SW_TOO_SMALL`, `SW_TOO_LARGE`), here and
/// below.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_lap(row_count: u32, form: *mut sw_form, error: *mut sw_error) -> u32 {
    make(form, error, Form::lap(rows(row_count)))
}

/// A butt joint with a single strap, 1 to 3 equal rows on each side, zig-zag.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_single_strap(row_count: u32, form: *mut sw_form, error: *mut sw_error) -> u32 {
    make(form, error, Form::single_strap(rows(row_count)))
}

/// A butt joint with two straps of equal width, 1 to 5 equal rows on each side, zig-zag.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_double_strap(row_count: u32, form: *mut sw_form, error: *mut sw_error) -> u32 {
    make(form, error, Form::double_strap(rows(row_count)))
}

/// A butt joint with a wide and a narrow strap, 2 to 5 rows on each side, zig-zag; rivets by row 1-2, 1-2-2, 1-2-4-4
/// or 1-2-4-4-4.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_unequal_straps(row_count: u32, form: *mut sw_form, error: *mut sw_error) -> u32 {
    make(form, error, Form::unequal_straps(rows(row_count)))
}

/// The same form with every other rivet of the outer row left out (of both outer rows in a lap).
/// `SW_INCONSISTENT` for a form of one row, or where it has fewer rivets outside already.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_omit_alternate(form: *const sw_form, thinned: *mut sw_form, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(thinned, 2)?;
        out.put(sw_form::of(&border::record(form, 1)?.form(1)?.omit_alternate()?));
        Ok(())
    })
}

/// Whether a form that was filled field by field is one.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_validate(form: *const sw_form, error: *mut sw_error) -> u32 {
    answer(error, || border::record(form, 1)?.form(1).map(|_| ()))
}

/// The form in the trade's words.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_name(form: *const sw_form, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let form = border::record(form, 1)?.form(1)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(write!(out, "{form}")?))
    })
}
