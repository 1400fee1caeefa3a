//! What a result rests on.

use core::ffi::c_char;

use seamwright::rating::{ASSUMED, Assumption, Assumptions, Basis};

use crate::border::{List, Text};
use crate::status::{Failure, SW_BAD_CHOICE, answer};

/// Measured on the boiler.
pub const SW_BASIS_MEASURED: u32 = 0;
/// Stated by the user: from a drawing, a certificate, a stamp.
pub const SW_BASIS_GIVEN: u32 = 1;
/// Taken from the rule book because it is not known.
pub const SW_BASIS_TABULATED: u32 = 2;
/// Not stated: taken on the safe side, or as the sheet says.
pub const SW_BASIS_ASSUMED: u32 = 3;
/// Most assumptions of one result.
pub const SW_MAX_ASSUMPTIONS: usize = 48;

const _: () = assert!(SW_MAX_ASSUMPTIONS == seamwright::rating::MAX_ASSUMPTIONS, "as in the library");

const BASES: [Basis; 4] = [Basis::Measured, Basis::Given, Basis::Tabulated, Basis::Assumed];

/// One thing that a result rests on. A record. Texts: `sw_assumption_what`, `sw_assumption_unit`, `sw_basis_word`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_assumption {
    /// Number of what it is about.
    pub about: u32,
    /// Row, from 1; 0 for the whole.
    pub row: u32,
    /// `SW_BASIS_*`: how it is known.
    pub basis: u32,
    /// The entry of the rule book behind it; `SW_NO_ENTRY`: none.
    pub entry: u32,
    /// 1 where it is a circumstance and no figure.
    pub circumstance: u32,
    /// Not used.
    pub reserved: u32,
    /// The figure in its unit; of a circumstance 1 for yes, 0 for no.
    pub value: f64,
}

/// How something is known, by its number.
pub(crate) fn basis(number: u32) -> Result<Basis, Failure> {
    BASES.get(number as usize).copied().ok_or(Failure::border(SW_BAD_CHOICE, 1))
}

impl sw_assumption {
    fn of(a: &Assumption) -> Self {
        sw_assumption {
            about: a.about as u32,
            row: u32::from(a.row),
            basis: a.basis as u32,
            entry: u32::from(a.entry.0),
            circumstance: u32::from(a.about.is_circumstance()),
            reserved: 0,
            value: a.value,
        }
    }
}

/// Writes a list of assumptions where there is room for it, and everything else just before.
pub(crate) fn fill_assumptions(
    list: List<sw_assumption>,
    notes: &Assumptions,
    put: impl FnOnce(),
) -> Result<(), Failure> {
    let list = list.room(notes.len())?;
    put();
    list.fill(notes.iter().map(sw_assumption::of));
    Ok(())
}

/// What an assumption is about, by its number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_assumption_what(about: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let about = ASSUMED.get(about as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(about.what())?))
    })
}

/// The unit of an assumption's figure, by its number; empty for pure numbers and circumstances.
#[unsafe(no_mangle)]
pub extern "C" fn sw_assumption_unit(about: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let about = ASSUMED.get(about as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(about.unit().symbol())?))
    })
}

/// How something is known (`SW_BASIS_*`), in one word as printed on sheets.
#[unsafe(no_mangle)]
pub extern "C" fn sw_basis_word(basis: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let word = crate::assumption::basis(basis)?.word();
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(word)?))
    })
}
