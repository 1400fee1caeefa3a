//! Rule books: by id, by entry, and the user's own.

use core::ffi::c_char;
use core::fmt::Write as _;

use seamwright::error::EntryNo;
use seamwright::rules::{BOOKS, ENTRIES, Entry, EntryKind, Metal, RuleBook, Rules, find, info};
use seamwright::text::Slice;

use crate::border::{self, Out, Slot, Text};
use crate::joint::sw_materials;
use crate::status::{Failure, SW_BAD_CHOICE, SW_UNKNOWN_KEY, answer, entry_no, sw_error};

/// Number of entries of a rule book.
pub const SW_RULE_ENTRIES: usize = 256;

const _: () = assert!(SW_RULE_ENTRIES == ENTRIES, "set SW_RULE_ENTRIES to seamwright::rules::ENTRIES");

/// A book that stands for itself: the user's own.
pub const SW_BOOK_OWN: u32 = 0;
/// An entry holds a number with a unit.
pub const SW_ENTRY_NUMBER: u32 = 0;
/// An entry holds 0 or 1.
pub const SW_ENTRY_SWITCH: u32 = 1;
/// An entry holds the number of one of several ways, from 0.
pub const SW_ENTRY_CHOICE: u32 = 2;
/// Mild steel.
pub const SW_METAL_STEEL: u32 = 0;
/// Wrought iron.
pub const SW_METAL_IRON: u32 = 1;

/// The numbers of a rule book. A copy of a built-in book, or all of your own.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_rules {
    /// Size of this struct, set by `sw_rules_init` and `sw_rules_find`.
    pub struct_size: u32,
    /// The built-in book that clauses are quoted from, from 1; `SW_BOOK_OWN` for a book of your own.
    pub book: u32,
    /// The values by entry, in mm, MPa or 1. Change them by `sw_rules_set`, or in place.
    pub value: [f64; SW_RULE_ENTRIES],
}

impl sw_rules {
    pub(crate) fn fresh() -> Self {
        sw_rules::of(SW_BOOK_OWN, &Rules::SILENT)
    }

    pub(crate) const fn of(book: u32, rules: &Rules) -> Self {
        sw_rules { struct_size: size_of::<sw_rules>() as u32, book, value: *rules.values() }
    }
}

/// What the table of entries says of one entry. Texts: `sw_entry_key`, `sw_entry_what`, `sw_entry_choice`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_entry_info {
    /// Size of this struct, set by `sw_entry_info_init`.
    pub struct_size: u32,
    /// `SW_ENTRY_NUMBER`, `SW_ENTRY_SWITCH` or `SW_ENTRY_CHOICE`.
    pub kind: u32,
    /// Line of the list, from 1; 0 for a single value.
    pub line: u32,
    /// Number of the ways of a choice; 0 otherwise.
    pub choices: u32,
    /// Least value.
    pub least: f64,
    /// Greatest value.
    pub greatest: f64,
    /// The value of a book that is silent on the matter.
    pub neutral: f64,
}

impl sw_entry_info {
    pub(crate) fn fresh() -> Self {
        let struct_size = size_of::<sw_entry_info>() as u32;
        sw_entry_info { struct_size, kind: 0, line: 0, choices: 0, least: 0.0, greatest: 0.0, neutral: 0.0 }
    }
}

pub(crate) const OWN: RuleBook<'static> = RuleBook::from_items("own", "The user's own rule book", &[], &[]);

fn base(number: u32) -> Result<&'static RuleBook<'static>, Failure> {
    if number == SW_BOOK_OWN {
        return Ok(&OWN);
    }
    let at = (number as usize).wrapping_sub(1);
    BOOKS.get(at).copied().ok_or(Failure::border(SW_BAD_CHOICE, 0))
}

/// Whether there is a book of this number, without naming one: whoever only computes links none of their texts.
pub(crate) fn known(number: u32) -> Result<(), Failure> {
    if number as usize <= BOOKS.len() { Ok(()) } else { Err(Failure::border(SW_BAD_CHOICE, 0)) }
}

/// The book of a struct, every value held to its range, and whether it differs from the built-in one.
pub(crate) fn book_of(c: &sw_rules) -> Result<(RuleBook<'static>, bool), Failure> {
    let mut book = *base(c.book)?;
    let mut changed = false;
    for (entry, value) in Entry::all().zip(c.value) {
        if value.to_bits() != book.rules.get(entry).to_bits() {
            book.rules = book.rules.with(entry, value)?;
            changed = true;
        }
    }
    Ok((book, changed))
}

/// Room for a title that says what was changed.
pub(crate) const TITLE_ROOM: usize = 200;

/// The title of a book, which says so where entries were changed.
pub(crate) fn title_of<'a>(
    c: &sw_rules,
    book: &RuleBook<'a>,
    changed: bool,
    room: &'a mut [u8; TITLE_ROOM],
) -> Result<&'a str, Failure> {
    if !changed || c.book == SW_BOOK_OWN {
        return Ok(book.title);
    }
    let mut title = Slice::new(room);
    write!(title, "{}, with entries changed by the user", book.title)?;
    Ok(title.finish().unwrap_or(book.title))
}

/// Runs a body with a book whose title says so where entries were changed.
pub(crate) fn titled<T>(c: &sw_rules, body: impl FnOnce(&RuleBook<'_>) -> Result<T, Failure>) -> Result<T, Failure> {
    let (book, changed) = book_of(c)?;
    let mut room = [0_u8; TITLE_ROOM];
    body(&RuleBook { title: title_of(c, &book, changed, &mut room)?, ..book })
}

/// The clause of an entry, its label and source; a value that the user changed is not quoted as the book's.
pub(crate) fn write_clause(out: &mut dyn core::fmt::Write, book: &RuleBook<'_>, no: EntryNo) -> Result<(), Failure> {
    let (Some(entry), Some(clause)) = (Entry::from_no(no), book.clause(no)) else { return Ok(()) };
    let own = BOOKS.iter().find(|b| b.id == book.id);
    if own.is_some_and(|b| b.rules.get(entry).to_bits() != book.rules.get(entry).to_bits()) {
        out.write_str("changed by the user from: ")?;
    }
    write!(out, "{}, {}", clause.number, clause.label.word())?;
    let source = book.source(&clause);
    if !source.is_empty() {
        write!(out, "; {source}")?;
    }
    Ok(())
}

fn entry_at(number: u32, argument: u32) -> Result<Entry, Failure> {
    Entry::from_no(entry_no(number)).ok_or(Failure::border(SW_BAD_CHOICE, argument))
}

/// Fills a rule book with the values of a book that is silent on everything.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_init(rules: *mut sw_rules) {
    border::init(rules);
}

/// How many built-in books there are.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_count() -> u32 {
    BOOKS.len() as u32
}

/// The id of a built-in book, by its number from 1 to `sw_book_count()`; 0 is a book of your own.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_id(book: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let found = base(book)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(found.id)?))
    })
}

/// The title of a built-in book, by its number as in `sw_book_id`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_title(book: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let found = base(book)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(found.title)?))
    })
}

/// Copies the built-in book of an id (`metric`, `indian`, `us-code`, ...) into a struct, which needs no init before.
/// `SW_BAD_CHOICE` where there is no such book.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_find(id: *const c_char, rules: *mut sw_rules, error: *mut sw_error) -> u32 {
    answer(error, || {
        let id = border::text(id, 1)?;
        let slot = (1_u32..).zip(BOOKS).find(|(_, b)| b.id == id);
        let (number, found) = slot.ok_or(Failure::border(SW_BAD_CHOICE, 1))?;
        border::place(rules, 2, sw_rules::of(number, &found.rules))
    })
}

/// The number of the entry of a key, as in `shear.double` or `series.hole.3`; `SW_UNKNOWN_KEY` where there is none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_entry_find(key: *const c_char, entry: *mut u32, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(entry, 2)?;
        let found = find(border::text(key, 1)?).ok_or(Failure::border(SW_UNKNOWN_KEY, 1))?;
        out.put(u32::from(found.no().0));
        Ok(())
    })
}

/// Fills an entry's description with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_entry_info_init(info: *mut sw_entry_info) {
    border::init(info);
}

/// Kind, line and range of an entry, by its number from 0 to `SW_RULE_ENTRIES - 1`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_entry_describe(entry: u32, info: *mut sw_entry_info, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Out::needed(info, 2)?;
        let row = seamwright::rules::info(entry_at(entry, 1)?);
        let (kind, choices) = match row.kind {
            EntryKind::Number(_) => (SW_ENTRY_NUMBER, 0),
            EntryKind::Switch => (SW_ENTRY_SWITCH, 0),
            EntryKind::Choice(ways) => (SW_ENTRY_CHOICE, ways.len() as u32),
        };
        out.put(sw_entry_info {
            kind,
            choices,
            line: u32::from(row.line),
            least: row.lo,
            greatest: row.hi,
            neutral: row.default,
            ..sw_entry_info::fresh()
        });
        Ok(())
    })
}

/// The key of an entry, with its line where it is one of a list.
#[unsafe(no_mangle)]
pub extern "C" fn sw_entry_key(entry: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let row = info(entry_at(entry, 1)?);
        Text::new(buf, len, needed, 2)?.put(|out| {
            out.write_str(row.key)?;
            if row.line > 0 {
                write!(out, ".{}", row.line)?;
            }
            Ok(())
        })
    })
}

/// What an entry says, in words.
#[unsafe(no_mangle)]
pub extern "C" fn sw_entry_what(entry: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let row = info(entry_at(entry, 1)?);
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(row.what)?))
    })
}

/// The unit of an entry (`mm`, `MPa`, ...); empty for pure numbers, switches and choices.
#[unsafe(no_mangle)]
pub extern "C" fn sw_entry_unit(entry: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let unit = match info(entry_at(entry, 1)?).kind {
            EntryKind::Number(unit) => unit.symbol(),
            _ => "",
        };
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(unit)?))
    })
}

/// One way of a choice, from 0, in words.
#[unsafe(no_mangle)]
pub extern "C" fn sw_entry_choice(entry: u32, choice: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let way = match info(entry_at(entry, 1)?).kind {
            EntryKind::Choice(ways) => ways.get(choice as usize).copied(),
            _ => None,
        };
        let way = way.ok_or(Failure::border(SW_BAD_CHOICE, 2))?;
        Text::new(buf, len, needed, 3)?.put(|out| Ok(out.write_str(way)?))
    })
}

/// The value of the entry of a key; `SW_UNKNOWN_KEY` where there is none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_get(
    rules: *const sw_rules,
    key: *const c_char,
    value: *mut f64,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let out = Slot::needed(value, 3)?;
        let (book, _) = book_of(&border::read(rules, 1)?)?;
        let entry = find(border::text(key, 2)?).ok_or(Failure::border(SW_UNKNOWN_KEY, 2))?;
        out.put(book.rules.get(entry));
        Ok(())
    })
}

/// Changes the entry of a key; the value is held to the entry's range, and nothing changes where it does not fit
/// (`SW_TOO_SMALL`, `SW_TOO_LARGE`, `SW_WRONG_CHOICE`) or where there is no such key (`SW_UNKNOWN_KEY`).
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_set(rules: *mut sw_rules, key: *const c_char, value: f64, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Out::needed(rules, 1)?;
        let c = border::read(rules.cast_const(), 1)?;
        let (book, _) = book_of(&c)?;
        out.put(sw_rules::of(c.book, &book.rules.with_key(border::text(key, 2)?, value)?));
        Ok(())
    })
}

/// Whether a book agrees with itself: series and tables rise, least stays below greatest. `SW_BOOK_UNSOUND` names the
/// entries that do not.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_validate(rules: *const sw_rules, error: *mut sw_error) -> u32 {
    answer(error, || {
        let (book, _) = book_of(&border::read(rules, 1)?)?;
        Ok(book.rules.validate()?)
    })
}

/// The clause that an entry stands on, with its label (READ, MEM, PRACTICE, OWN) and source; empty where it has none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_clause(
    rules: *const sw_rules,
    entry: u32,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
) -> u32 {
    answer(core::ptr::null_mut(), || {
        let (book, _) = book_of(&border::read(rules, 1)?)?;
        let entry = entry_at(entry, 2)?;
        Text::new(buf, len, needed, 3)?.put(|out| write_clause(out, &book, entry.no()))
    })
}

/// The ultimate strengths that a book lets one assume of plate and rivets (`SW_METAL_*`) of unknown make. `SW_MISSING`
/// where the book has none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_assume(
    rules: *const sw_rules,
    plate: u32,
    rivets: u32,
    materials: *mut sw_materials,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let metal = |number: u32, argument: u32| match number {
            SW_METAL_STEEL => Ok(Metal::Steel),
            SW_METAL_IRON => Ok(Metal::Iron),
            _ => Err(Failure::border(SW_BAD_CHOICE, argument)),
        };
        let (book, _) = book_of(&border::read(rules, 1)?)?;
        let out = Slot::needed(materials, 4)?;
        out.put(sw_materials::of(&book.rules.assumed_materials(metal(plate, 2)?, metal(rivets, 3)?)?));
        Ok(())
    })
}
