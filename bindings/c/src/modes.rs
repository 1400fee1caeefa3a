//! Failure modes.

use core::ffi::c_char;

use seamwright::given::Given;
use seamwright::joint::{Form, Joint};
use seamwright::materials::Materials;
use seamwright::modes::{Cut, Fate, Lens, Mode, Strengths};
use seamwright::rules::Rules;
use seamwright::step::Plain;

use crate::border::{self, List, Slot, Text};
use crate::form::{SW_MAX_ROWS, sw_form};
use crate::joint::{sw_joint, sw_materials};
use crate::rules::{book_of, sw_rules};
use crate::status::{Failure, SW_BAD_CHOICE, SW_END, answer, sw_error};

/// The rivets of a row hold.
pub const SW_FATE_WHOLE: u32 = 0;
/// The rivets of a row shear.
pub const SW_FATE_SHEAR: u32 = 1;
/// The rivets of a row crush the plate (plate A).
pub const SW_FATE_BEARING: u32 = 2;
/// The rivets of a row crush the straps or plate B.
pub const SW_FATE_OTHER_BEARING: u32 = 3;
/// The rivets of a row shear in one plane and crush a strap in the other.
pub const SW_FATE_MIXED: u32 = 4;
/// The rivets of a row shear out the plate at the margin.
pub const SW_FATE_SHEAR_OUT: u32 = 5;
/// The rivets of a row shear out the straps or plate B.
pub const SW_FATE_OTHER_SHEAR_OUT: u32 = 6;

const FATES: [Fate; 7] =
    [Fate::Whole, Fate::Shear, Fate::Bearing, Fate::OtherBearing, Fate::Mixed, Fate::ShearOut, Fate::OtherShearOut];

pub(crate) fn fate(number: u32, argument: u32) -> Result<Fate, Failure> {
    FATES.get(number as usize).copied().ok_or(Failure::border(SW_BAD_CHOICE, argument))
}

/// One way in which a joint fails. A record. Name: `sw_mode_name`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_mode {
    /// Row at which the plate (plate A) tears, from 1; 0: it does not.
    pub plate_row: u32,
    /// Row at which plate B or the single, wide or first strap tears; 0: it does not.
    pub other_row: u32,
    /// Row at which the narrow or second strap tears; 0: it does not.
    pub narrow_row: u32,
    /// 1 where a torn section follows the zig-zag; otherwise 0.
    pub zigzag: u32,
    /// What the rivets of each row do: `SW_FATE_*`.
    pub fate: [u32; SW_MAX_ROWS],
    /// Strength of the strip in this mode, N.
    pub strength_n: f64,
}

impl sw_mode {
    pub(crate) const fn none() -> Self {
        let fate = [0; SW_MAX_ROWS];
        sw_mode { plate_row: 0, other_row: 0, narrow_row: 0, zigzag: 0, fate, strength_n: 0.0 }
    }

    pub(crate) fn of(mode: &Mode) -> Self {
        sw_mode {
            plate_row: u32::from(mode.cut.plate),
            other_row: u32::from(mode.cut.other),
            narrow_row: u32::from(mode.cut.narrow),
            zigzag: u32::from(mode.zigzag),
            fate: mode.fates.map(|f| f as u32),
            strength_n: mode.strength,
        }
    }

    fn mode(&self, form: &Form) -> Result<Mode, Failure> {
        let bad = || Failure::border(SW_BAD_CHOICE, 2);
        let row = |n: u32| {
            let row = u8::try_from(n).ok().filter(|n| usize::from(*n) <= form.row_count());
            row.ok_or_else(bad)
        };
        let cut = Cut { plate: row(self.plate_row)?, other: row(self.other_row)?, narrow: row(self.narrow_row)? };
        let mut fates = [Fate::Whole; SW_MAX_ROWS];
        for (slot, number) in fates.iter_mut().zip(self.fate) {
            *slot = fate(number, 2)?;
        }
        Ok(Mode { cut, fates, strength: self.strength_n, zigzag: self.zigzag != 0 })
    }
}

/// A joint, its stresses and the numbers of a book, as most functions take them.
pub(crate) struct Asked {
    pub(crate) joint: Joint,
    pub(crate) materials: Materials,
    pub(crate) rules: Rules,
}

impl Asked {
    pub(crate) fn new(
        joint: *const sw_joint,
        materials: *const sw_materials,
        rules: *const sw_rules,
    ) -> Result<Self, Failure> {
        let (joint, materials, rules) =
            (border::read(joint, 1)?, border::record(materials, 2)?, border::read(rules, 3)?);
        let (book, _) = book_of(&rules)?;
        Ok(Asked { joint: joint.joint(1)?, materials: materials.materials(), rules: book.rules })
    }

    pub(crate) fn strengths(&self) -> Result<Strengths<f64>, Failure> {
        self.materials.validate()?;
        let given = Given::new(Plain, &self.joint, &self.materials);
        Ok(Strengths::new(Plain, &self.joint, &given, &self.rules, Lens::Real))
    }
}

/// One mode after the other: set the cursor to 0, call until `SW_END`. The cursor moves on only with success. Each call
/// works the joint out anew; `sw_modes_list` does it once.
#[unsafe(no_mangle)]
pub extern "C" fn sw_modes_next(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    cursor: *mut u32,
    mode: *mut sw_mode,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let asked = Asked::new(joint, materials, rules)?;
        let (next, out) = (Slot::needed(cursor, 4)?, Slot::needed(mode, 5)?);
        let at = border::record(cursor.cast_const(), 4)?;
        let strengths = asked.strengths()?;
        // There are fewer than a thousand modes: no need to count to an absurd cursor.
        let found = strengths.modes().nth((at as usize).min(1000)).ok_or(Failure::border(SW_END, 4))?;
        out.put(sw_mode::of(&found));
        next.put(at.wrapping_add(1));
        Ok(())
    })
}

/// All modes into an array of the caller's: the plate alone from the outside row in, all rivets, then with plate B or
/// the wide strap torn as well, then with the narrow one; at most 729. NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_modes_list(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    modes: *mut sw_mode,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let asked = Asked::new(joint, materials, rules)?;
        let list = List::new(modes, capacity, count, 4)?;
        let strengths = asked.strengths()?;
        list.room(strengths.modes().count())?.fill(strengths.modes().map(|m| sw_mode::of(&m)));
        Ok(())
    })
}

/// A mode in words, as in `plate tears at row 2, row 1 shears`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_mode_name(
    form: *const sw_form,
    mode: *const sw_mode,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
) -> u32 {
    answer(core::ptr::null_mut(), || {
        let form = border::record(form, 1)?.form(1)?;
        let mode = border::record(mode, 2)?.mode(&form)?;
        Text::new(buf, len, needed, 3)?.put(|out| Ok(write!(out, "{}", mode.name(&form))?))
    })
}
