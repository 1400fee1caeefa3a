//! Workings and sheets line by line, for displays that show a few lines and machines without room for the whole text.

use core::ffi::c_char;
use core::fmt;

use seamwright::rules::RuleBook;
use seamwright::sheet::write_sheet;
use seamwright::sizing::Design;
use seamwright::working::{Style, WorkingError, size_as_written, write_check_small, write_size_small};

use crate::books::sw_book;
use crate::border::{self, List, Out, Slot, Text};
use crate::check::{Told, sw_analysis, sw_finding};
use crate::joint::{sw_joint, sw_materials};
use crate::sheet::sw_sheet;
use crate::size::{brief_at, put, sw_brief, sw_design};
use crate::status::{Failure, answer, sw_error};
use crate::working::{failed, sw_style};

/// Lets only some lines of a text through, and counts them all.
struct Window<'a> {
    out: &'a mut dyn fmt::Write,
    /// The first line that is let through, and the first behind them.
    first: u32,
    behind: u32,
    line: u32,
    /// Whether the line has a character yet.
    begun: bool,
}

impl fmt::Write for Window<'_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for piece in text.split_inclusive('\n') {
            if self.line >= self.first && self.line < self.behind {
                self.out.write_str(piece)?;
            }
            self.begun = !piece.ends_with('\n');
            if !self.begun {
                self.line = self.line.saturating_add(1);
            }
        }
        Ok(())
    }
}

/// Writes lines `first` (from 1) to `first + lines - 1` of a text, and its number of lines.
fn put_lines(
    text: &Text,
    total: Option<&Slot<u32>>,
    (first, lines): (u32, u32),
    write: &dyn Fn(&mut dyn fmt::Write) -> Result<(), WorkingError>,
) -> Result<(), Failure> {
    let counted = core::cell::Cell::new(0);
    text.put(|out| {
        let mut window = Window { out, first, behind: first.saturating_add(lines), line: 1, begun: false };
        write(&mut window).map_err(failed)?;
        counted.set(window.line.saturating_sub(u32::from(!window.begun)));
        Ok(())
    })?;
    if let Some(total) = total {
        total.put(counted.get());
    }
    Ok(())
}

/// What all of them are given beside the task.
struct Page {
    text: Text,
    total: Option<Slot<u32>>,
    style: Style,
    book: &'static RuleBook<'static>,
}

impl Page {
    fn new(
        book: *const sw_book,
        style: *const sw_style,
        argument: u32,
        (buf, len, needed): (*mut c_char, usize, *mut usize),
        total: *mut u32,
    ) -> Result<Self, Failure> {
        let book = sw_book::at(book, argument)?;
        let style = sw_style::at(style, argument.wrapping_add(1))?.working(argument.wrapping_add(1))?;
        let text = Text::new(buf, len, needed, argument.wrapping_add(4))?;
        let total = if total.is_null() { None } else { Some(Slot::needed(total, argument.wrapping_add(7))?) };
        Ok(Page { text, total, style, book })
    }
}

/// Some lines of the working of a sizing, the first of all being 1, and how many there are in all (`total` may be
/// NULL). The routine is run for every call: nothing is kept between them.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_size_lines(
    brief: *const sw_brief,
    book: *const sw_book,
    style: *const sw_style,
    first: u32,
    lines: u32,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    total: *mut u32,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let brief = brief_at(brief);
        let brief = brief.as_ref().map_err(|failure| *failure)?;
        let Page { text, total, style, book } = Page::new(book, style, 2, (buf, len, needed), total)?;
        put_lines(&text, total.as_ref(), (first, lines), &|out| write_size_small(out, style, brief, book))
    })
}

/// The joint whose working `sw_working_size_lines` shows: that of `sw_joint_size`, bit for bit, sized by the routine that
/// writes the working. An image that shows the working has it then only once, and it takes some times as long. The book
/// as in `sw_working_size_lines`, all else as in `sw_joint_size`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_size_joint(
    brief: *const sw_brief,
    book: *const sw_book,
    joint: *mut sw_joint,
    design: *mut sw_design,
    analysis: *mut sw_analysis,
    findings: *mut sw_finding,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let brief = brief_at(brief);
        let brief = brief.as_ref().map_err(|failure| *failure)?;
        let rules = &sw_book::at(book, 2)?.rules;
        let joint_out = Out::needed(joint, 3)?;
        let (design_out, analysis_out) = (Out::wanted(design, 4)?, Out::wanted(analysis, 5)?);
        let mut told = Told::new(List::new(findings, capacity, count, 6)?);
        let mut found = Design::blank();
        size_as_written(brief, rules, &mut told, &mut found)?;
        let told = told.room()?;
        put(&found, &told, joint_out, design_out, analysis_out);
        told.list_by(&mut |told| size_as_written(brief, rules, told, &mut found))
    })
}

/// Some lines of the working of a check, as in `sw_working_size_lines`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_check_lines(
    joint: *const sw_joint,
    materials: *const sw_materials,
    book: *const sw_book,
    style: *const sw_style,
    first: u32,
    lines: u32,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    total: *mut u32,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (joint, materials) = (border::read(joint, 1)?.joint(1)?, border::record(materials, 2)?.materials());
        let Page { text, total, style, book } = Page::new(book, style, 3, (buf, len, needed), total)?;
        put_lines(&text, total.as_ref(), (first, lines), &|out| write_check_small(out, style, &joint, &materials, book))
    })
}

/// Some lines of a sheet, as in `sw_working_size_lines`. Errors as in `sw_sheet_text`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sheet_lines(
    sheet: *const sw_sheet,
    book: *const sw_book,
    style: *const sw_style,
    first: u32,
    lines: u32,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    total: *mut u32,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(sheet, 1)?;
        let Page { text, total, style, book } = Page::new(book, style, 2, (buf, len, needed), total)?;
        c.with(&mut |task, particulars| {
            put_lines(&text, total.as_ref(), (first, lines), &|out| write_sheet(out, style, task, particulars, book))
        })
    })
}
