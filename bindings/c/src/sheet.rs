//! The sheet that someone signs: what it is of, what stands on it besides the figures, and the hash of its inputs.

use core::ffi::c_char;

use seamwright::bounds::Field;
use seamwright::rating::Basis;
use seamwright::sheet::{Divided, Known, Particulars, Task, input_hash, write_inputs, write_sheet};

use crate::assumption::basis;
use crate::border::{self, Slot, Text};
use crate::existing::sw_existing;
use crate::fields::field;
use crate::joint::{sw_joint, sw_materials};
use crate::rules::{book_of, sw_rules};
use crate::shell::{footing, switch};
use crate::size::sw_brief;
use crate::status::{Failure, SW_BAD_CHOICE, SW_BAD_POINTER, SW_TOO_MANY, answer, sw_error};
use crate::working::{failed, styled, sw_style};

/// It is not said whether the stresses are permissible ones or those at failure.
pub const SW_FOOTING_NOT_SAID: u32 = 0xFFFF_FFFF;
/// Most inputs of which one sheet says how they are known.
pub const SW_MAX_KNOWN: usize = 64;

/// How an input is known. A record: fill every member.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_known {
    /// Number of the input (`sw_field_find`, as in `pitch`).
    pub field: u32,
    /// Its row or gap, from 1 to 255; 0 where it belongs to the joint.
    pub row: u32,
    /// `SW_BASIS_*`: how it is known.
    pub basis: u32,
    /// Not used.
    pub reserved: u32,
    /// From where: a drawing, a certificate, the least of so many readings. NULL: not said.
    pub source: *const c_char,
}

impl sw_known {
    fn known<'a>(&self) -> Result<Known<'a>, Failure> {
        let row = u8::try_from(self.row).map_err(|_| Failure::border(SW_BAD_CHOICE, 1))?;
        let source = border::text_or_none(self.source, 1)?;
        Ok(Known { field: field(self.field)?, row, basis: basis(self.basis)?, source })
    }
}

/// A sheet to be written: what it is of, and what stands on it besides the figures. It is of a check (`joint` with
/// `materials`), of a sizing (`brief`) or of a rating (`existing`): set that one and leave the others NULL. A text that
/// is NULL or empty is a line to be filled in by hand. Structs and texts are the caller's and are not kept.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_sheet {
    /// Size of this struct, set by `sw_sheet_init`.
    pub struct_size: u32,
    /// 1: object, drawing and data are made up, and the sheet says so.
    pub invented: u32,
    /// `SW_FOOTING_*`: what the stresses are; `SW_FOOTING_NOT_SAID`. A rating says it itself.
    pub footing: u32,
    /// Lines of a page of plain text, 30 to 300, its foot included: caution, input hash and page x of y stand at the foot
    /// of each page, a form feed between pages; 60 print well on A4. 0: a text without pages. Other dialects take none.
    pub lines_per_page: u32,
    /// The factor of safety that made the stresses out of those behind `ultimate`; 0 without those.
    pub safety_factor: f64,
    /// The joint to be checked, or NULL.
    pub joint: *const sw_joint,
    /// Its stresses; not looked at without `joint`.
    pub materials: *const sw_materials,
    /// The brief to be sized and checked, or NULL.
    pub brief: *const sw_brief,
    /// The existing joint to be rated, or NULL.
    pub existing: *const sw_existing,
    /// What the sheet is about, in a line.
    pub title: *const c_char,
    /// The object that the joint belongs to.
    pub object: *const c_char,
    /// Number of the drawing.
    pub drawing_no: *const c_char,
    /// Jurisdiction, or the authority that inspects.
    pub jurisdiction: *const c_char,
    /// Who prepared the sheet.
    pub prepared: *const c_char,
    /// Who checked it.
    pub checked: *const c_char,
    /// Date, as it is to be printed.
    pub date: *const c_char,
    /// The stresses at failure that were divided by `safety_factor`; NULL: there was no division. `SW_INCONSISTENT`
    /// where the quotient is not the stresses of the task.
    pub ultimate: *const sw_materials,
    /// How inputs are known; what is not listed was given, what has no line on the sheet is left out. A rating keeps
    /// its own list.
    pub known: *const sw_known,
    /// How many, at most `SW_MAX_KNOWN`.
    pub known_count: usize,
}

/// 0: no pages. More than the core counts is refused there by name, as too many.
fn lines_per_page(lines: u32) -> Option<u16> {
    if lines == 0 { None } else { Some(u16::try_from(lines).unwrap_or(u16::MAX)) }
}

impl sw_sheet {
    pub(crate) fn fresh() -> Self {
        let none = core::ptr::null();
        sw_sheet {
            struct_size: size_of::<sw_sheet>() as u32,
            invented: 0,
            footing: SW_FOOTING_NOT_SAID,
            lines_per_page: 0,
            safety_factor: 0.0,
            joint: core::ptr::null(),
            materials: core::ptr::null(),
            brief: core::ptr::null(),
            existing: core::ptr::null(),
            title: none,
            object: none,
            drawing_no: none,
            jurisdiction: none,
            prepared: none,
            checked: none,
            date: none,
            ultimate: core::ptr::null(),
            known: core::ptr::null(),
            known_count: 0,
        }
    }

    /// The task, for as long as it is looked at.
    fn with_task(&self, see: &mut dyn FnMut(&Task<'_>) -> Result<(), Failure>) -> Result<(), Failure> {
        match (self.joint.is_null(), self.brief.is_null(), self.existing.is_null()) {
            (false, true, true) => {
                let joint = border::read(self.joint, 1)?.joint(1)?;
                see(&Task::Check(&joint, &border::record(self.materials, 1)?.materials()))
            }
            (true, false, true) => see(&Task::Size(&border::read(self.brief, 1)?.brief(1)?)),
            (true, true, false) => see(&Task::Rate(&border::read(self.existing, 1)?.existing(1)?)),
            // None, or several: which of them is meant nobody knows.
            _ => Err(Failure::border(SW_BAD_POINTER, 1)),
        }
    }

    fn divided(&self) -> Result<Option<Divided>, Failure> {
        if self.ultimate.is_null() && self.safety_factor == 0.0 {
            return Ok(None);
        }
        // A factor of nothing is as careless as stresses without one, which the library refuses by name.
        let ultimate = border::record(self.ultimate, 1)?.materials();
        Ok(Some(Divided { ultimate, factor: self.safety_factor }))
    }

    /// Task and particulars, for as long as they are looked at.
    pub(crate) fn with(
        &self,
        see: &mut dyn FnMut(&Task<'_>, &Particulars<'_>) -> Result<(), Failure>,
    ) -> Result<(), Failure> {
        let given = border::array(self.known, self.known_count, 1)?;
        let mut room = [Known { field: Field::Pitch, row: 0, basis: Basis::Given, source: "" }; SW_MAX_KNOWN];
        let known = room.get_mut(..given.len()).ok_or(Failure::border(SW_TOO_MANY, 1))?;
        for (slot, known) in known.iter_mut().zip(given) {
            *slot = known.known()?;
        }
        let text = |at| border::text_or_none(at, 1);
        let particulars = Particulars {
            title: text(self.title)?,
            object: text(self.object)?,
            drawing_no: text(self.drawing_no)?,
            jurisdiction: text(self.jurisdiction)?,
            prepared: text(self.prepared)?,
            checked: text(self.checked)?,
            date: text(self.date)?,
            invented: switch(self.invented, 1)?,
            footing: if self.footing == SW_FOOTING_NOT_SAID { None } else { Some(footing(self.footing, 1)?) },
            divided: self.divided()?,
            lines_per_page: lines_per_page(self.lines_per_page),
            known,
        };
        self.with_task(&mut |task| see(task, &particulars))
    }
}

/// Fills a sheet with its defaults: of nothing yet, all lines left to be filled in.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sheet_init(sheet: *mut sw_sheet) {
    border::init(sheet);
}

/// The sheet that someone signs: who and what, the answer in short, inputs and how they are known, the joint, every
/// dimension with its rule, all failure modes, findings, figures from memory, cautions, lines for names. It is complete
/// or refused: errors of the routine (`sw_joint_check`, `sw_joint_size`, `sw_existing_rate`), `SW_BAD_POINTER` where
/// it is of nothing or of several things, `SW_INCONSISTENT` (see `ultimate`), `SW_TOO_MANY` (see `known_count`). Needs
/// about 50 KiB of stack.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sheet_text(
    sheet: *const sw_sheet,
    rules: *const sw_rules,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(sheet, 1)?;
        // The title of the book as it is: how many of its entries were changed the sheet says by itself.
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let (style, text) = styled(style, 3, (buf, len, needed))?;
        c.with(&mut |task, particulars| {
            text.put(|out| write_sheet(out, style, task, particulars, &book).map_err(failed))
        })
    })
}

/// The hash of a sheet's inputs, which it prints as 16 hexadecimal digits: FNV-1a over the text of `sw_sheet_inputs`.
/// Equal inputs have an equal hash, in every language and unit; names, date and style are not in it. Errors as in
/// `sw_sheet_text`, for inputs outside their range and for a rating that cannot be computed.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sheet_hash(
    sheet: *const sw_sheet,
    rules: *const sw_rules,
    hash: *mut u64,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(sheet, 1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let out = Slot::needed(hash, 3)?;
        let mut found = 0;
        c.with_task(&mut |task| {
            found = input_hash(task, &book)?;
            Ok(())
        })?;
        out.put(found);
        Ok(())
    })
}

/// The text that `sw_sheet_hash` reads, for those who want to hash or to compare it themselves: a line for each input
/// and for each entry of the book that is not silent, in mm and MPa with nine decimals.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sheet_inputs(
    sheet: *const sw_sheet,
    rules: *const sw_rules,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(sheet, 1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let text = Text::new(buf, len, needed, 3)?;
        c.with_task(&mut |task| {
            // What cannot be hashed has no text either; the text alone could not say why.
            input_hash(task, &book)?;
            text.put(|out| Ok(write_inputs(out, task, &book)?))
        })
    })
}
