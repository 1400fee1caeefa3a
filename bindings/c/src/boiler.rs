//! The table of a boiler: courses, girths and the limits that come from elsewhere; the least governs.

use core::ffi::c_char;

use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::quantities::Pressure;
use seamwright::rating::{Boiler, BoilerPart};
use seamwright::rules::Rules;

use crate::border::{self, Slot, Text};
use crate::rules::{book_of, sw_rules};
use crate::status::{Failure, SW_BAD_CHOICE, answer, sw_error};

/// A course of the shell, with its seam along it.
pub const SW_PART_COURSE: u32 = 0;
/// A girth seam.
pub const SW_PART_GIRTH: u32 = 1;
/// A head, computed elsewhere.
pub const SW_PART_HEAD: u32 = 2;
/// Tubes, computed elsewhere.
pub const SW_PART_TUBES: u32 = 3;
/// Stays, computed elsewhere.
pub const SW_PART_STAYS: u32 = 4;
/// A furnace or firebox, computed elsewhere.
pub const SW_PART_FURNACE: u32 = 5;
/// Anything else, computed elsewhere.
pub const SW_PART_OTHER: u32 = 6;
/// Most lines of a boiler's table.
pub const SW_MAX_LINES: usize = 32;

const _: () = assert!(SW_MAX_LINES == seamwright::rating::MAX_LINES, "as in the library");

const PARTS: [BoilerPart; 7] = [
    BoilerPart::Course,
    BoilerPart::Girth,
    BoilerPart::Head,
    BoilerPart::Tubes,
    BoilerPart::Stays,
    BoilerPart::Furnace,
    BoilerPart::Other,
];

/// One line of a boiler's table: a part and the pressure that it allows. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_boiler_line {
    /// `SW_PART_*`.
    pub part: u32,
    /// Not used.
    pub reserved: u32,
    /// Allowed pressure, MPa; 0: it allows none.
    pub pressure_mpa: f64,
}

fn table<'a>(lines: &[sw_boiler_line], argument: u32) -> Result<Boiler<'a>, Failure> {
    let mut boiler = Boiler::new();
    for line in lines {
        let part = *PARTS.get(line.part as usize).ok_or(Failure::border(SW_BAD_CHOICE, argument))?;
        boiler.add(part, "", Pressure::mpa(line.pressure_mpa))?;
    }
    Ok(boiler)
}

/// The line of a boiler's table that governs: the least, the first of equals, counted from 0; and the hydrostatic test
/// pressure of the boiler by the book, not a number where the book has no factor. `test_mpa` may be NULL. At most
/// `SW_MAX_LINES` lines; `SW_MISSING` where there are none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_boiler_governing(
    lines: *const sw_boiler_line,
    line_count: usize,
    rules: *const sw_rules,
    line: *mut u32,
    test_mpa: *mut f64,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let lines = border::array(lines, line_count, 1)?;
        let (book, _) = book_of(&border::read(rules, 3)?)?;
        let out = Slot::needed(line, 4)?;
        let test = if test_mpa.is_null() { None } else { Some(Slot::needed(test_mpa, 5)?) };
        let boiler = table(lines, 1)?;
        let least = governing(&boiler)?;
        out.put(least);
        if let Some(slot) = test {
            slot.put(test_of(&boiler, &book.rules));
        }
        Ok(())
    })
}

fn governing(boiler: &Boiler<'_>) -> Result<u32, Failure> {
    let least = boiler.governing().ok_or(Error::new(ErrorKind::Missing, Field::Pressure))?;
    let at = (0_u32..).zip(boiler.lines()).find(|(_, line)| line.pressure == least.pressure);
    Ok(at.map_or(0, |(number, _)| number))
}

fn test_of(boiler: &Boiler<'_>, rules: &Rules) -> f64 {
    boiler.test_pressure(rules).map_or(f64::NAN, Pressure::to_mpa)
}

/// A part of a boiler in words (`SW_PART_*`).
#[unsafe(no_mangle)]
pub extern "C" fn sw_part_what(part: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let part = PARTS.get(part as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(part.what())?))
    })
}
