//! The modes that the early US boiler code letters one by one.

use core::ffi::c_char;

use seamwright::given::Given;
use seamwright::joint::Form;
use seamwright::modes::{Cut, Lettered, letters};
use seamwright::step::Plain;

use crate::border::{self, List, Text};
use crate::form::sw_form;
use crate::joint::{sw_joint, sw_materials};
use crate::modes::{Asked, fate};
use crate::rules::sw_rules;
use crate::status::{Failure, SW_BAD_CHOICE, answer, sw_error};

/// Most letters of a joint.
pub const SW_MAX_LETTERS: usize = 20;

const _: () = assert!(SW_MAX_LETTERS == seamwright::modes::MAX_LETTERS, "as in the library");

/// A lettered mode. A record. Name: `sw_letter_name`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_letter {
    /// The letter, `'A'` and on, as a character code.
    pub letter: u32,
    /// 1 for the solid strip, which is no failure of the joint; its rows are 0.
    pub solid: u32,
    /// Row at which the plate (plate A) tears, from 1; 0: it does not.
    pub plate_row: u32,
    /// Row at which plate B or the strap tears; 0: it does not.
    pub other_row: u32,
    /// Row at which the narrow or second strap tears; 0: it does not.
    pub narrow_row: u32,
    /// `SW_FATE_*` of rivets in single shear, where they fail.
    pub single_fate: u32,
    /// `SW_FATE_*` of rivets in double shear, where they fail.
    pub double_fate: u32,
    /// Not used.
    pub reserved: u32,
    /// Strength of the strip, N.
    pub strength_n: f64,
}

impl sw_letter {
    fn of(l: &Lettered) -> Self {
        let cut = l.cut.unwrap_or_default();
        sw_letter {
            letter: l.letter as u32,
            solid: u32::from(l.cut.is_none()),
            plate_row: u32::from(cut.plate),
            other_row: u32::from(cut.other),
            narrow_row: u32::from(cut.narrow),
            single_fate: l.single as u32,
            double_fate: l.double as u32,
            reserved: 0,
            strength_n: l.strength,
        }
    }

    fn lettered(&self, form: &Form) -> Result<Lettered, Failure> {
        let bad = || Failure::border(SW_BAD_CHOICE, 2);
        let row = |n: u32| u8::try_from(n).ok().filter(|n| usize::from(*n) <= form.row_count()).ok_or_else(bad);
        let cut = Cut { plate: row(self.plate_row)?, other: row(self.other_row)?, narrow: row(self.narrow_row)? };
        Ok(Lettered {
            letter: char::from_u32(self.letter).ok_or_else(bad)?,
            cut: (self.solid == 0).then_some(cut),
            single: fate(self.single_fate, 2)?,
            double: fate(self.double_fate, 2)?,
            strength: self.strength_n,
        })
    }
}

/// The lettered modes of a joint into an array of the caller's (`SW_MAX_LETTERS` is always enough): A the solid strip,
/// B tearing at the outer row, C all rivets in shear, then as the code goes on. What needs a bearing stress or a strap
/// that was not given is left out. NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_letters_list(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    list: *mut sw_letter,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let asked = Asked::new(joint, materials, rules)?;
        let list = List::new(list, capacity, count, 4)?;
        let strengths = asked.strengths()?;
        let given = Given::new(Plain, &asked.joint, &asked.materials);
        let found = letters(Plain, &asked.joint, &given, &asked.rules, &strengths);
        list.room(found.len())?.fill(found.iter().map(sw_letter::of));
        Ok(())
    })
}

/// A lettered mode in words.
#[unsafe(no_mangle)]
pub extern "C" fn sw_letter_name(
    form: *const sw_form,
    letter: *const sw_letter,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
) -> u32 {
    answer(core::ptr::null_mut(), || {
        let form = border::record(form, 1)?.form(1)?;
        let lettered = border::record(letter, 2)?.lettered(&form)?;
        Text::new(buf, len, needed, 3)?.put(|out| Ok(write!(out, "{}", lettered.name(&form))?))
    })
}
