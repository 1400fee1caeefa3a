//! The working of a check, a sizing or a shop sheet, in all dialects.

use core::ffi::c_char;
use core::fmt;

use seamwright::rules::RuleBook;
use seamwright::text::DecimalMark;
use seamwright::working::{
    DIALECTS, Decimals, Forces, Style, Units, WorkingError, write_check, write_shop, write_size,
};

use crate::border::{self, Text};
use crate::joint::{sw_joint, sw_materials};
use crate::rules::{sw_rules, titled};
use crate::shop::sw_order;
use crate::size::sw_brief;
use crate::status::{Failure, SW_BAD_CHOICE, SW_INCOMPLETE, SW_NO_SPACE, answer, sw_error};

/// Millimetres, newtons, megapascals.
pub const SW_UNITS_METRIC: u32 = 0;
/// Inches, pounds-force, pounds per square inch.
pub const SW_UNITS_INCH: u32 = 1;
/// A decimal point.
pub const SW_MARK_POINT: u32 = 0;
/// A decimal comma.
pub const SW_MARK_COMMA: u32 = 1;
/// Forces of a metric text in newtons.
pub const SW_FORCES_NEWTON: u32 = 0;
/// Forces of a metric text in kilonewtons.
pub const SW_FORCES_KILONEWTON: u32 = 1;
/// As many decimals as are usual for the quantity and its unit.
pub const SW_DECIMALS_USUAL: u32 = 0xFFFF_FFFF;
/// Plain text of 80 columns.
pub const SW_DIALECT_PLAIN: u32 = 0;
/// Plain text of 20 columns.
pub const SW_DIALECT_NARROW: u32 = 1;
/// Markdown.
pub const SW_DIALECT_MARKDOWN: u32 = 2;
/// LaTeX.
pub const SW_DIALECT_LATEX: u32 = 3;
/// HTML.
pub const SW_DIALECT_HTML: u32 = 4;

/// How a text is written. A NULL in its place means all defaults.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_style {
    /// Size of this struct, set by `sw_style_init`.
    pub struct_size: u32,
    /// `SW_UNITS_*`.
    pub units: u32,
    /// `SW_MARK_*`.
    pub mark: u32,
    /// `SW_DIALECT_*`; the shop sheet knows plain and Markdown.
    pub dialect: u32,
    /// Decimals more (or fewer) than usual, -9 to 9.
    pub extra_digits: i32,
    /// First hole of the shop sheet's table, from 1.
    pub first_hole: u32,
    /// How many holes that table lists at most.
    pub hole_count: u32,
    /// `SW_FORCES_*`: what forces are printed in where the units are metric.
    pub forces: u32,
    /// Decimals of lengths, 0 to 9, or `SW_DECIMALS_USUAL`; `extra_digits` comes on top of it, here and below.
    pub length_decimals: u32,
    /// Decimals of stresses and pressures, in the same way.
    pub stress_decimals: u32,
    /// Decimals of forces, in the same way.
    pub force_decimals: u32,
    /// Decimals of ratios, constants and percentages, in the same way.
    pub ratio_decimals: u32,
}

impl sw_style {
    pub(crate) fn fresh() -> Self {
        sw_style {
            struct_size: size_of::<sw_style>() as u32,
            units: SW_UNITS_METRIC,
            mark: SW_MARK_POINT,
            dialect: SW_DIALECT_PLAIN,
            extra_digits: 0,
            first_hole: 1,
            hole_count: u32::MAX,
            forces: SW_FORCES_NEWTON,
            length_decimals: SW_DECIMALS_USUAL,
            stress_decimals: SW_DECIMALS_USUAL,
            force_decimals: SW_DECIMALS_USUAL,
            ratio_decimals: SW_DECIMALS_USUAL,
        }
    }

    /// The style behind a pointer, or the default one.
    pub(crate) fn at(style: *const sw_style, argument: u32) -> Result<Self, Failure> {
        if style.is_null() { Ok(sw_style::fresh()) } else { border::read(style, argument) }
    }

    pub(crate) fn working(&self, argument: u32) -> Result<Style, Failure> {
        let bad = || Failure::border(SW_BAD_CHOICE, argument);
        let units = match self.units {
            SW_UNITS_METRIC => Units::Metric,
            SW_UNITS_INCH => Units::Inch,
            _ => return Err(bad()),
        };
        let dialect = *DIALECTS.get(self.dialect as usize).ok_or_else(bad)?;
        let extra_digits = i8::try_from(self.extra_digits).ok().filter(|n| (-9..=9).contains(n)).ok_or_else(bad)?;
        let forces = match self.forces {
            SW_FORCES_NEWTON => Forces::Newton,
            SW_FORCES_KILONEWTON => Forces::Kilonewton,
            _ => return Err(bad()),
        };
        let decimals = |n: u32| match n {
            SW_DECIMALS_USUAL => Ok(None),
            _ => u8::try_from(n).ok().filter(|n| *n <= 9).map(Some).ok_or_else(bad),
        };
        let decimals = Decimals {
            length: decimals(self.length_decimals)?,
            stress: decimals(self.stress_decimals)?,
            force: decimals(self.force_decimals)?,
            ratio: decimals(self.ratio_decimals)?,
        };
        Ok(Style { units, forces, mark: decimal_mark(self.mark, argument)?, dialect, decimals, extra_digits })
    }
}

/// A decimal mark by its number.
pub(crate) fn decimal_mark(mark: u32, argument: u32) -> Result<DecimalMark, Failure> {
    match mark {
        SW_MARK_POINT => Ok(DecimalMark::Point),
        SW_MARK_COMMA => Ok(DecimalMark::Comma),
        _ => Err(Failure::border(SW_BAD_CHOICE, argument)),
    }
}

pub(crate) fn failed(error: WorkingError) -> Failure {
    match error {
        WorkingError::Routine(error) => error.into(),
        WorkingError::Sink => Failure::border(SW_NO_SPACE, 0),
        WorkingError::Spoilt => Failure::border(SW_INCOMPLETE, 0),
    }
}

/// The style of a text and the buffer for it, whose argument follows that of the style.
pub(crate) fn styled(
    style: *const sw_style,
    argument: u32,
    (buf, len, needed): (*mut c_char, usize, *mut usize),
) -> Result<(Style, Text), Failure> {
    let style = sw_style::at(style, argument)?.working(argument)?;
    Ok((style, Text::new(buf, len, needed, argument.wrapping_add(1))?))
}

/// Writes a working under a book and in a style, each with the number of its argument; the buffer follows the style.
pub(crate) fn written<T>(
    (rules, rules_argument): (*const sw_rules, u32),
    (style, style_argument): (*const sw_style, u32),
    (buf, len, needed): (*mut c_char, usize, *mut usize),
    write: impl Fn(&mut dyn fmt::Write, Style, &RuleBook<'_>) -> Result<T, WorkingError>,
) -> Result<(), Failure> {
    let rules = border::read(rules, rules_argument)?;
    let (style, text) = styled(style, style_argument, (buf, len, needed))?;
    titled(&rules, |book| text.put(|out| write(out, style, book).map(|_| ()).map_err(failed)))
}

/// Fills a style with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_style_init(style: *mut sw_style) {
    border::init(style);
}

/// The working of a check: every step in symbols, in numbers, with its clause.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_check(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (joint, materials) = (border::read(joint, 1)?.joint(1)?, border::record(materials, 2)?.materials());
        written((rules, 3), (style, 4), (buf, len, needed), |out, style, book| {
            write_check(out, style, &joint, &materials, book)
        })
    })
}

/// The working of a sizing: every step in symbols, in numbers, with its clause.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_size(
    brief: *const sw_brief,
    rules: *const sw_rules,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let brief = border::read(brief, 1)?.brief(1)?;
        written((rules, 2), (style, 3), (buf, len, needed), |out, style, book| write_size(out, style, &brief, book))
    })
}

/// The working of a shop sheet: the run and its pitches, the check with the fitted pitch, rivets, cuts and masses.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_shop(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    order: *const sw_order,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (joint, materials) = (border::read(joint, 1)?.joint(1)?, border::record(materials, 2)?.materials());
        let order = border::read(order, 4)?.order(4)?;
        written((rules, 3), (style, 5), (buf, len, needed), |out, style, book| {
            write_shop(out, style, &joint, &materials, book, &order)
        })
    })
}
