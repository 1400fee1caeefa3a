//! Briefs, books and forms side by side, and where the results part.

use core::ffi::c_char;

use seamwright::comparison::{Column, Comparison, Figures, Parting, SECTIONS, SortBy, Stage};
use seamwright::error::{EntryNo, Error};
use seamwright::joint::Form;
use seamwright::quantities::Length;
use seamwright::rules::RuleBook;
use seamwright::sizing::Brief;
use seamwright::step::Section;

use crate::border::{self, List, Slot, Text};
use crate::joint::sw_materials;
use crate::modes::sw_mode;
use crate::reconcile::sw_name;
use crate::rules::{OWN, TITLE_ROOM, book_of, sw_rules, title_of};
use crate::shell::sw_shell;
use crate::size::sw_brief;
use crate::status::{Failure, SW_BAD_CHOICE, SW_END, SW_OK, SW_TOO_MANY, answer, sw_error};
use crate::working::{styled, sw_style};

/// Most columns of one comparison.
pub const SW_MAX_COLUMNS: usize = 16;
/// In the order given.
pub const SW_SORT_GIVEN: u32 = 0;
/// By efficiency credited, the highest first.
pub const SW_SORT_CREDITED: u32 = 1;
/// By efficiency over all modes, the highest first.
pub const SW_SORT_EFFICIENCY: u32 = 2;
/// By working pressure, the highest first.
pub const SW_SORT_PRESSURE: u32 = 3;
/// By pitch, the largest first.
pub const SW_SORT_PITCH: u32 = 4;
/// By hole, the smallest first.
pub const SW_SORT_HOLE: u32 = 5;
/// By rules that are not met, the fewest first.
pub const SW_SORT_OPEN: u32 = 6;

const _: () = assert!(SW_MAX_COLUMNS == seamwright::comparison::MAX_COLUMNS, "as in the library");

/// One alternative: a brief under a book. A record: fill every member. The structs are the caller's and are not kept.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_column {
    /// What is sized.
    pub brief: *const sw_brief,
    /// By which book.
    pub rules: *const sw_rules,
    /// The shell whose working pressure is asked for; NULL: none is.
    pub shell: *const sw_shell,
}

/// What a column comes to. A record. Its joint: `sw_joint_size` of the same brief and book.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_compared {
    /// The column, from 0, in the order given.
    pub column: u32,
    /// `SW_OK`, or why it cannot be sized; then nothing else counts.
    pub status: u32,
    /// Rules that are not met.
    pub open: u32,
    /// `SW_OK`, or why there is no working pressure although a shell was given.
    pub pressure_status: u32,
    /// The pitch of the outer row, mm.
    pub pitch_mm: f64,
    /// The hole of the outer row, mm.
    pub hole_mm: f64,
    /// Efficiency by the modes that the book counts.
    pub book_efficiency: f64,
    /// Efficiency over all modes.
    pub efficiency: f64,
    /// Efficiency credited.
    pub credited_efficiency: f64,
    /// The working pressure, MPa; not a number: there is none.
    pub pressure_mpa: f64,
    /// The governing mode.
    pub governing: sw_mode,
}

impl sw_compared {
    fn of(column: u32, figures: &Result<Figures, Error>) -> Self {
        let nothing = f64::NAN;
        let none = sw_compared {
            column,
            status: SW_OK,
            open: 0,
            pressure_status: SW_OK,
            pitch_mm: nothing,
            hole_mm: nothing,
            book_efficiency: nothing,
            efficiency: nothing,
            credited_efficiency: nothing,
            pressure_mpa: nothing,
            governing: sw_mode::none(),
        };
        match figures {
            Err(error) => sw_compared { status: error.kind as u32, ..none },
            Ok(f) => sw_compared {
                open: f.open as u32,
                pressure_status: f.pressure.and_then(Result::err).map_or(SW_OK, |e| e.kind as u32),
                pitch_mm: f.joint.pitch().to_mm(),
                hole_mm: f.joint.rows().first().map_or(nothing, |row| row.hole().to_mm()),
                book_efficiency: f.book_efficiency,
                efficiency: f.efficiency,
                credited_efficiency: f.credited,
                pressure_mpa: f.pressure.and_then(Result::ok).map_or(nothing, |p| p.to_mpa()),
                governing: sw_mode::of(&f.governing),
                ..none
            },
        }
    }
}

/// One step of a sizing, where two columns part. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_stage {
    /// 1: there is such a step; 0: the steps of this column have ended.
    pub there: u32,
    /// The entry of the rule book behind it; `SW_NO_ENTRY`: none.
    pub entry: u32,
    /// What it is about.
    pub name: sw_name,
    /// The value, in the unit of the quantity.
    pub value: f64,
}

/// Where a column parts from the first one in a section. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_parting {
    /// 1: the books part here; 0: it only follows from what differs before, or was given differently.
    pub by_rule: u32,
    /// Not used.
    pub reserved: u32,
    /// The step of the first column.
    pub first: sw_stage,
    /// The step of the other one.
    pub other: sw_stage,
}

impl sw_stage {
    fn of(stage: Option<&Stage>) -> Self {
        match stage {
            Some(s) => sw_stage { there: 1, entry: u32::from(s.entry().0), name: sw_name::of(s.name), value: s.value },
            None => {
                let name = sw_name { quantity: 0, row: 0 };
                sw_stage { there: 0, entry: u32::from(EntryNo::NONE.0), name, value: f64::NAN }
            }
        }
    }
}

impl sw_parting {
    fn of(p: &Parting) -> Self {
        let [first, other] = &p.steps;
        let (first, other) = (sw_stage::of(first.as_ref()), sw_stage::of(other.as_ref()));
        sw_parting { by_rule: u32::from(p.by_rule), reserved: 0, first, other }
    }
}

fn sort_by(number: u32, argument: u32) -> Result<SortBy, Failure> {
    Ok(match number {
        SW_SORT_GIVEN => SortBy::Given,
        SW_SORT_CREDITED => SortBy::Credited,
        SW_SORT_EFFICIENCY => SortBy::Efficiency,
        SW_SORT_PRESSURE => SortBy::Pressure,
        SW_SORT_PITCH => SortBy::Pitch,
        SW_SORT_HOLE => SortBy::Hole,
        SW_SORT_OPEN => SortBy::Open,
        _ => return Err(Failure::border(SW_BAD_CHOICE, argument)),
    })
}

/// Runs a body with the columns compared.
fn compared<T>(
    columns: *const sw_column,
    count: usize,
    body: impl FnOnce(&Comparison<'_>) -> Result<T, Failure>,
) -> Result<T, Failure> {
    let given = border::array(columns, count, 1)?;
    if given.len() > SW_MAX_COLUMNS {
        return Err(Failure::border(SW_TOO_MANY, 1));
    }
    let mut rooms = [[0_u8; TITLE_ROOM]; SW_MAX_COLUMNS];
    let mut books: [RuleBook<'_>; SW_MAX_COLUMNS] = [OWN; SW_MAX_COLUMNS];
    for ((slot, room), column) in books.iter_mut().zip(&mut rooms).zip(given) {
        let rules = border::read(column.rules, 1)?;
        let (book, changed) = book_of(&rules)?;
        *slot = RuleBook { title: title_of(&rules, &book, changed, room)?, ..book };
    }
    let nothing = Brief::new(Form::lap(1)?, Length::mm(0.0), sw_materials::none().materials());
    let mut made = [Column::new(nothing, &OWN); SW_MAX_COLUMNS];
    for ((slot, book), column) in made.iter_mut().zip(&books).zip(given) {
        *slot = Column::new(border::read(column.brief, 1)?.brief(1)?, book);
        if !column.shell.is_null() {
            *slot = slot.shell(sw_shell::at(column.shell, 1)?);
        }
    }
    body(&Comparison::new(made.get(..given.len()).unwrap_or(&[]))?)
}

/// Sizes all columns, at most `SW_MAX_COLUMNS`, and puts what they come to in order (`SW_SORT_*`). One that cannot be
/// sized keeps its status and is part of the comparison. NULL and 0 ask for the number. Needs about 60 KiB of stack.
#[unsafe(no_mangle)]
pub extern "C" fn sw_columns_compare(
    columns: *const sw_column,
    column_count: usize,
    sort: u32,
    figures: *mut sw_compared,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let by = sort_by(sort, 3)?;
        let list = List::new(figures, capacity, count, 4)?;
        compared(columns, column_count, |found| {
            let list = list.room(found.figures().len())?;
            let order = found.sorted(by);
            let line = |at: &usize| found.figures().get(*at).map(|f| sw_compared::of(*at as u32, f));
            list.fill(order.iter().filter_map(line));
            Ok(())
        })
    })
}

/// The comparison as a document: the columns, the table, what governs, and where and by which clause each column parts
/// from the first one.
#[unsafe(no_mangle)]
pub extern "C" fn sw_columns_text(
    columns: *const sw_column,
    column_count: usize,
    sort: u32,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let by = sort_by(sort, 3)?;
        let (style, text) = styled(style, 4, (buf, len, needed))?;
        compared(columns, column_count, |found| text.put(|out| Ok(found.write(out, style, by)?)))
    })
}

fn section_of(number: u32, argument: u32) -> Result<Section, Failure> {
    SECTIONS.get(number as usize).copied().ok_or(Failure::border(SW_BAD_CHOICE, argument))
}

/// Where a column (from 0) parts from the first one in a section of the sizing, from 0 (`sw_section_heading`). `SW_END`
/// where it does not.
#[unsafe(no_mangle)]
pub extern "C" fn sw_columns_parting(
    columns: *const sw_column,
    column_count: usize,
    column: u32,
    section: u32,
    parting: *mut sw_parting,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        if column as usize >= column_count {
            return Err(Failure::border(SW_BAD_CHOICE, 3));
        }
        let section = section_of(section, 4)?;
        let out = Slot::needed(parting, 5)?;
        compared(columns, column_count, |found| {
            let parting = found.parting(column as usize, section).ok_or(Failure::border(SW_END, 3))?;
            out.put(sw_parting::of(&parting));
            Ok(())
        })
    })
}

/// The heading of a section in which columns may part, from 0; `SW_BAD_CHOICE` beyond the last.
#[unsafe(no_mangle)]
pub extern "C" fn sw_section_heading(section: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let section = section_of(section, 1)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(section.heading())?))
    })
}
