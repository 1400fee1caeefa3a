//! Quantities of a working by name, and the conventions behind stated figures.

use core::ffi::c_char;

use seamwright::reconcile::{
    Answer, CATALOGUE, Case, Convention, Explanation, Figure, MAX_FIGURES, Work, reconcile, worked,
};
use seamwright::step::{Name, QUANTITIES, Quantity};

use crate::border::{self, List, Out, Slot, Text};
use crate::joint::{sw_joint, sw_materials};
use crate::rules::{book_of, sw_rules};
use crate::size::sw_brief;
use crate::status::{Failure, SW_BAD_CHOICE, SW_BAD_POINTER, SW_TOO_MANY, SW_UNKNOWN_KEY, answer, sw_error};

/// Most figures of one case.
pub const SW_MAX_FIGURES: usize = 24;
/// Most explanations that reproduce the figures, and most that may be chance.
pub const SW_MAX_EXPLANATIONS: usize = 8;
/// No convention.
pub const SW_NO_CONVENTION: u32 = 0xFFFF_FFFF;

const _: () = assert!(SW_MAX_FIGURES == MAX_FIGURES, "as in the library");
const _: () = assert!(SW_MAX_EXPLANATIONS == seamwright::reconcile::MAX_ANSWERS, "as in the library");

/// What figures are about: a joint that was checked, or a brief that was sized. The structs are the caller's and are
/// not kept.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_case {
    /// Size of this struct, set by `sw_case_init`.
    pub struct_size: u32,
    /// Not used.
    pub reserved: u32,
    /// The joint, and its stresses behind `materials`; NULL where a brief is given.
    pub joint: *const sw_joint,
    /// The stresses of the joint; NULL where a brief is given.
    pub materials: *const sw_materials,
    /// The brief; NULL where a joint is given.
    pub brief: *const sw_brief,
}

impl sw_case {
    pub(crate) fn fresh() -> Self {
        let (joint, materials, brief) = (core::ptr::null(), core::ptr::null(), core::ptr::null());
        sw_case { struct_size: size_of::<sw_case>() as u32, reserved: 0, joint, materials, brief }
    }
}

fn case_of(case: *const sw_case, rules: *const sw_rules) -> Result<Case, Failure> {
    let c = border::read(case, 1)?;
    let (book, _) = book_of(&border::read(rules, 2)?)?;
    let work = match (c.joint.is_null(), c.brief.is_null()) {
        (false, true) => Work::Check(border::read(c.joint, 1)?.joint(1)?, border::record(c.materials, 1)?.materials()),
        (true, false) => Work::Size(border::read(c.brief, 1)?.brief(1)?),
        // Neither, or both: which of them is meant nobody knows.
        _ => return Err(Failure::border(SW_BAD_POINTER, 1)),
    };
    Ok(Case { work, rules: book.rules })
}

/// A quantity of the working and the row that it belongs to. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_name {
    /// Number of the quantity (`sw_quantity_find`).
    pub quantity: u32,
    /// The row, from 1; 0 where it belongs to the joint.
    pub row: u32,
}

impl sw_name {
    pub(crate) fn of(Name(quantity, row): Name) -> Self {
        sw_name { quantity: quantity as u32, row: u32::from(row) }
    }

    fn name(&self, argument: u32) -> Result<Name, Failure> {
        let row = u8::try_from(self.row).map_err(|_| Failure::border(SW_BAD_CHOICE, argument))?;
        Ok(Name(quantity(self.quantity, argument)?, row))
    }
}

fn quantity(number: u32, argument: u32) -> Result<Quantity, Failure> {
    QUANTITIES.get(number as usize).copied().ok_or(Failure::border(SW_BAD_CHOICE, argument))
}

/// One stated figure. A record: as it is printed, or a value and how far it is open.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_figure {
    /// What it is about. `Ps` and `Pc` of row 0 are those of all rivets, `Pt` is the plate's weaker outer row.
    pub name: sw_name,
    /// The figure as printed, as in `67.5`: half a unit of its last digit is left open. NULL: `value` and `slack`
    /// count.
    pub printed: *const c_char,
    /// The printed unit in the unit of the quantity: 1 for N and mm, 1000 for kN, 0.01 for per cent, 25.4 for inches.
    pub scale: f64,
    /// The value in the unit of the quantity.
    pub value: f64,
    /// How far it is open either way.
    pub slack: f64,
}

impl sw_figure {
    fn figure(&self, argument: u32) -> Result<Figure, Failure> {
        let name = self.name.name(argument)?;
        Ok(if self.printed.is_null() {
            Figure::within(name, self.value, self.slack)?
        } else {
            Figure::printed(name, border::text(self.printed, argument)?, self.scale)?
        })
    }
}

/// Figures of the caller's in the library's terms.
pub(crate) struct Figures {
    list: [Figure; SW_MAX_FIGURES],
    count: usize,
}

impl Figures {
    pub(crate) fn read(figures: *const sw_figure, count: usize, argument: u32) -> Result<Self, Failure> {
        let given = border::array(figures, count, argument)?;
        if given.len() > SW_MAX_FIGURES {
            return Err(Failure::border(SW_TOO_MANY, argument));
        }
        let mut list = [Figure::within(Name(Quantity::Solid, 0), 0.0, 1.0)?; SW_MAX_FIGURES];
        for ((slot, figure), number) in list.iter_mut().zip(given).zip(1_u8..) {
            *slot = figure.figure(argument).map_err(|failure| failure.numbered(number))?;
        }
        Ok(Figures { list, count: given.len() })
    }

    pub(crate) fn list(&self) -> &[Figure] {
        self.list.get(..self.count).unwrap_or(&[])
    }
}

/// The number of a convention in the catalogue.
pub(crate) fn convention_no(convention: &'static Convention) -> u32 {
    let found = (0_u32..).zip(CATALOGUE).find(|(_, row)| *row == convention);
    found.map_or(SW_NO_CONVENTION, |(number, _)| number)
}

/// Edits of the catalogue that together give the stated figures, or come near them. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_explanation {
    /// Numbers of the conventions (`sw_convention_words`); `SW_NO_CONVENTION`: none.
    pub convention: [u32; 2],
    /// The figures that are not met, one bit each, the first figure the lowest bit.
    pub out: u32,
    /// 1 where it may reproduce the figures by chance only.
    pub by_chance: u32,
    /// The worst miss, in widths of what a figure leaves open; at most 1 where all are met.
    pub miss: f64,
    /// The figures as they come out, in the units of their quantities; not a number where the routine has none.
    pub value: [f64; SW_MAX_FIGURES],
}

impl sw_explanation {
    const fn none() -> Self {
        sw_explanation {
            convention: [SW_NO_CONVENTION; 2],
            out: 0,
            by_chance: 0,
            miss: f64::NAN,
            value: [f64::NAN; SW_MAX_FIGURES],
        }
    }

    fn of(e: &Explanation, by_chance: bool) -> Self {
        let mut c = sw_explanation {
            out: e.out,
            by_chance: u32::from(by_chance),
            miss: e.miss,
            value: e.values,
            ..sw_explanation::none()
        };
        for (slot, convention) in c.convention.iter_mut().zip(e.edits()) {
            *slot = convention_no(convention);
        }
        c
    }
}

/// What a search over the conventions found.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_reconciled {
    /// Size of this struct, set by `sw_reconciled_init`.
    pub struct_size: u32,
    /// Explanations that reproduce the figures; 0: not reproduced.
    pub explanations: u32,
    /// Explanations that would, but may do so by chance.
    pub by_chance: u32,
    /// Edits and pairs of edits that were worked.
    pub tried: u32,
    /// The case as it stands.
    pub as_it_stands: sw_explanation,
    /// The nearest of the single edits, or the case as it stands.
    pub nearest: sw_explanation,
}

impl sw_reconciled {
    pub(crate) fn fresh() -> Self {
        sw_reconciled {
            struct_size: size_of::<sw_reconciled>() as u32,
            explanations: 0,
            by_chance: 0,
            tried: 0,
            as_it_stands: sw_explanation::none(),
            nearest: sw_explanation::none(),
        }
    }

    fn of(a: &Answer) -> Self {
        sw_reconciled {
            explanations: a.explanations.len() as u32,
            by_chance: a.by_chance.len() as u32,
            tried: a.tried,
            as_it_stands: sw_explanation::of(&a.as_it_stands, false),
            nearest: sw_explanation::of(&a.nearest, false),
            ..sw_reconciled::fresh()
        }
    }
}

/// Fills a case with its defaults: nothing given.
#[unsafe(no_mangle)]
pub extern "C" fn sw_case_init(case: *mut sw_case) {
    border::init(case);
}

/// Fills what a search found with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_reconciled_init(reconciled: *mut sw_reconciled) {
    border::init(reconciled);
}

/// Quantities of a case by name, as the routine works them, in the unit of each (`sw_quantity_unit`); not a number
/// where it has none. `values` is an array of `name_count` elements, at most `SW_MAX_FIGURES`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_case_values(
    case: *const sw_case,
    rules: *const sw_rules,
    names: *const sw_name,
    name_count: usize,
    values: *mut f64,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let case = case_of(case, rules)?;
        let given = border::array(names, name_count, 3)?;
        let list = List::new(values, given.len(), core::ptr::null_mut(), 5)?;
        let mut named = [Name(Quantity::Solid, 0); SW_MAX_FIGURES];
        let some = named.get_mut(..given.len()).ok_or(Failure::border(SW_TOO_MANY, 3))?;
        for (slot, name) in some.iter_mut().zip(given) {
            *slot = name.name(3)?;
        }
        let found = worked(&case, some)?;
        list.fill(found.iter().copied().take(given.len()));
        Ok(())
    })
}

/// Finds the conventions that reproduce stated figures: every single edit of the catalogue, then every pair. Those that
/// do come first in the array, then those that may do so by chance (`2 * SW_MAX_EXPLANATIONS` are always enough). NULL
/// and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_case_reconcile(
    case: *const sw_case,
    rules: *const sw_rules,
    figures: *const sw_figure,
    figure_count: usize,
    reconciled: *mut sw_reconciled,
    explanations: *mut sw_explanation,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let case = case_of(case, rules)?;
        let figures = Figures::read(figures, figure_count, 3)?;
        let out = Out::needed(reconciled, 5)?;
        let list = List::new(explanations, capacity, count, 6)?;
        let found = reconcile(&case, figures.list())?;
        let list = list.room(found.explanations.len().saturating_add(found.by_chance.len()))?;
        out.put(sw_reconciled::of(&found));
        let sure = found.explanations.iter().map(|e| sw_explanation::of(e, false));
        list.fill(sure.chain(found.by_chance.iter().map(|e| sw_explanation::of(e, true))));
        Ok(())
    })
}

/// The same in words: what reproduces the figures, what each would be as the book stands, and, where nothing does, what
/// comes nearest.
#[unsafe(no_mangle)]
pub extern "C" fn sw_case_reconcile_text(
    case: *const sw_case,
    rules: *const sw_rules,
    figures: *const sw_figure,
    figure_count: usize,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let case = case_of(case, rules)?;
        let figures = Figures::read(figures, figure_count, 3)?;
        let text = Text::new(buf, len, needed, 5)?;
        let found = reconcile(&case, figures.list())?;
        text.put(|out| Ok(found.write(out, figures.list())?))
    })
}

/// How many conventions the catalogue has.
#[unsafe(no_mangle)]
pub extern "C" fn sw_convention_count() -> u32 {
    CATALOGUE.len() as u32
}

fn convention(number: u32) -> Result<&'static Convention, Failure> {
    CATALOGUE.get(number as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))
}

/// A convention in words, by its number, as they follow "reproduced with".
#[unsafe(no_mangle)]
pub extern "C" fn sw_convention_words(number: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let row = convention(number)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(row.words)?))
    })
}

/// Whether a convention is a slip, which nobody would defend (1), or a habit (0).
#[unsafe(no_mangle)]
pub extern "C" fn sw_convention_is_slip(number: u32, slip: *mut u32, error: *mut sw_error) -> u32 {
    answer(error, || {
        let row = convention(number)?;
        Slot::needed(slip, 2)?.put(u32::from(row.slip));
        Ok(())
    })
}

/// The number of a quantity by its symbol, as in `Ps`, `J` or `d`: the first of that symbol. Numbers may change with
/// the version of the library, symbols do not. `SW_UNKNOWN_KEY` where there is none.
#[unsafe(no_mangle)]
pub extern "C" fn sw_quantity_find(symbol: *const c_char, quantity: *mut u32, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(quantity, 2)?;
        let symbol = border::text(symbol, 1)?;
        let found = (0_u32..).zip(QUANTITIES).find(|(_, q)| q.symbol() == symbol);
        out.put(found.ok_or(Failure::border(SW_UNKNOWN_KEY, 1))?.0);
        Ok(())
    })
}

/// The symbol of a quantity, by its number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_quantity_symbol(number: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let quantity = quantity(number, 1)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(quantity.symbol())?))
    })
}

/// A quantity in words, by its number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_quantity_what(number: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let quantity = quantity(number, 1)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(quantity.what())?))
    })
}

/// The unit of a quantity, by its number; empty for pure numbers.
#[unsafe(no_mangle)]
pub extern "C" fn sw_quantity_unit(number: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let quantity = quantity(number, 1)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(quantity.unit().symbol())?))
    })
}
