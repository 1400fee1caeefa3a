//! Drawings of a joint.

use core::ffi::c_char;
use core::fmt;

use seamwright::drawing::{DrawError, Extent, TitleBlock, Units, dxf, dxf_seam, svg, svg_group, svg_seam};
use seamwright::group::size_group;
use seamwright::joint::Joint;
use seamwright::quantities::Length;
use seamwright::shop::ShopSheet;

use crate::border::{self, Text};
use crate::group::{Stated, sw_group};
use crate::joint::{sw_joint, sw_materials};
use crate::rules::{book_of, sw_rules};
use crate::shop::{sheet_of, sw_order};
use crate::status::{Failure, SW_BAD_CHOICE, SW_NO_SPACE, answer, sw_error};
use crate::working::{SW_UNITS_INCH, SW_UNITS_METRIC};

/// A piece of a seam.
pub const SW_EXTENT_SEAM: u32 = 0;
/// The whole width of a tie.
pub const SW_EXTENT_TIE: u32 = 1;

/// The words of a title block; NULL is empty. The texts are the caller's and are not kept.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_title {
    /// Size of this struct, set by `sw_title_init`.
    pub struct_size: u32,
    /// `SW_UNITS_*`: what the dimensions are in.
    pub units: u32,
    /// `SW_EXTENT_*`; means nothing for a group.
    pub extent: u32,
    /// Not used.
    pub reserved: u32,
    /// What the joint belongs to.
    pub object: *const c_char,
    /// Number of the drawing.
    pub drawing_no: *const c_char,
    /// Rule book.
    pub rule_book: *const c_char,
    /// Date.
    pub date: *const c_char,
    /// Who prepared it.
    pub prepared: *const c_char,
    /// Who checked it.
    pub checked: *const c_char,
}

impl sw_title {
    pub(crate) fn fresh() -> Self {
        let none = core::ptr::null();
        sw_title {
            struct_size: size_of::<sw_title>() as u32,
            units: SW_UNITS_METRIC,
            extent: SW_EXTENT_SEAM,
            reserved: 0,
            object: none,
            drawing_no: none,
            rule_book: none,
            date: none,
            prepared: none,
            checked: none,
        }
    }

    fn block(&self, argument: u32) -> Result<TitleBlock<'_>, Failure> {
        let bad = || Failure::border(SW_BAD_CHOICE, argument);
        let text = |at| border::text_or_none(at, argument);
        Ok(TitleBlock {
            object: text(self.object)?,
            drawing_no: text(self.drawing_no)?,
            rule_book: text(self.rule_book)?,
            date: text(self.date)?,
            prepared: text(self.prepared)?,
            checked: text(self.checked)?,
            units: match self.units {
                SW_UNITS_METRIC => Units::Millimetre,
                SW_UNITS_INCH => Units::Inch,
                _ => return Err(bad()),
            },
            extent: match self.extent {
                SW_EXTENT_SEAM => Extent::Seam,
                SW_EXTENT_TIE => Extent::Tie,
                _ => return Err(bad()),
            },
        })
    }
}

fn failed(error: DrawError) -> Failure {
    match error {
        DrawError::Input(error) => error.into(),
        DrawError::Sink => Failure::border(SW_NO_SPACE, 0),
    }
}

/// Draws a joint under a title block.
fn draw(
    joint: *const sw_joint,
    title: *const sw_title,
    (buf, len, needed): (*mut c_char, usize, *mut usize),
    by: fn(&mut dyn fmt::Write, &Joint, &TitleBlock<'_>) -> Result<(), DrawError>,
) -> Result<(), Failure> {
    let (joint, title) = (border::read(joint, 1)?.joint(1)?, border::read(title, 2)?);
    let block = title.block(2)?;
    Text::new(buf, len, needed, 3)?.put(|out| by(out, &joint, &block).map_err(failed))
}

/// Draws the seam of a shop sheet under a title block.
fn draw_seam(
    sheet: &ShopSheet,
    title: *const sw_title,
    (buf, len, needed): (*mut c_char, usize, *mut usize),
    by: fn(&mut dyn fmt::Write, &ShopSheet, &TitleBlock<'_>) -> Result<(), DrawError>,
) -> Result<(), Failure> {
    let title = border::read(title, 5)?;
    let block = title.block(5)?;
    Text::new(buf, len, needed, 6)?.put(|out| by(out, sheet, &block).map_err(failed))
}

/// Fills a title block with its defaults: metric, a seam, no words.
#[unsafe(no_mangle)]
pub extern "C" fn sw_title_init(title: *mut sw_title) {
    border::init(title);
}

/// Plan and section on an A4 sheet, as SVG. Needs row distances and margin (`SW_MISSING`),
/// here and below.
#[unsafe(no_mangle)]
pub extern "C" fn sw_drawing_svg(
    joint: *const sw_joint,
    title: *const sw_title,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || draw(joint, title, (buf, len, needed), svg))
}

/// Plan and section at full size, one unit a millimetre, as DXF (R12). Three pitches, or the whole width of a tie.
#[unsafe(no_mangle)]
pub extern "C" fn sw_drawing_dxf(
    joint: *const sw_joint,
    title: *const sw_title,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || draw(joint, title, (buf, len, needed), dxf))
}

/// Plan and section of a seam of known length as SVG: a piece of it, with the number of pitches and the end distances
/// of the shop sheet of the same order.
#[unsafe(no_mangle)]
pub extern "C" fn sw_drawing_svg_seam(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    order: *const sw_order,
    title: *const sw_title,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || draw_seam(&sheet_of(joint, materials, rules, order)?, title, (buf, len, needed), svg_seam))
}

/// The hole pattern of a whole seam as DXF: every hole where the shop sheet of the same order has it.
#[unsafe(no_mangle)]
pub extern "C" fn sw_drawing_dxf_seam(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    order: *const sw_order,
    title: *const sw_title,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || draw_seam(&sheet_of(joint, materials, rules, order)?, title, (buf, len, needed), dxf_seam))
}

/// A group of rivets under its load on an A4 sheet, as SVG: rivets to scale with their numbers, the force on each, the
/// load, centroid and instantaneous centre. Where no rivet has a hole, with the size that `sw_group_size` finds.
#[unsafe(no_mangle)]
pub extern "C" fn sw_drawing_group(
    group: *const sw_group,
    rules: *const sw_rules,
    title: *const sw_title,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let Stated { group, load, stress, bare } = border::read(group, 1)?.stated(1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let title = border::read(title, 3)?;
        let block = title.block(3)?;
        let text = Text::new(buf, len, needed, 4)?;
        let group = if bare {
            let made = size_group(&group, &load, &stress, &book.rules)?;
            group.hole(Length::mm(made.hole)).rivet(Length::mm(made.rivet))
        } else {
            group
        };
        text.put(|out| svg_group(out, &group, &load, &stress, &book.rules, &block).map_err(failed))
    })
}
