//! The shop sheet.

use core::ffi::c_char;

use seamwright::quantities::Length;
use seamwright::rules::Rounding;
use seamwright::shop::{
    Density, Face, Fitted, HEAD_FORMS, Hole, LENGTH_RULES, Measured, Order, PlateCut, RivetLine, Run, ShopSheet, Side,
    Stock, Style, Units, shop_sheet,
};

use crate::border::{self, List, Out, Text};
use crate::joint::{sw_joint, sw_materials};
use crate::modes::Asked;
use crate::rules::{sw_rules, titled};
use crate::status::{Failure, SW_BAD_CHOICE, answer, sw_error};
use crate::working::{SW_DIALECT_MARKDOWN, SW_DIALECT_PLAIN, SW_UNITS_INCH, SW_UNITS_METRIC, decimal_mark, sw_style};

/// A straight seam.
pub const SW_RUN_STRAIGHT: u32 = 0;
/// A seam round a ring.
pub const SW_RUN_GIRTH: u32 = 1;
/// A tie: one strip.
pub const SW_RUN_TIE: u32 = 2;
/// The diameter is that of the circle of the seam.
pub const SW_MEASURED_CIRCLE: u32 = 0;
/// The diameter is the inside of the ring of the plate (plate A).
pub const SW_MEASURED_INSIDE_PLATE: u32 = 1;
/// The diameter is the inside of the ring of plate B of a lap.
pub const SW_MEASURED_INSIDE_OTHER: u32 = 2;
/// The other plate or the wide strap lies inside.
pub const SW_FACE_INSIDE: u32 = 0;
/// The other plate or the wide strap lies outside.
pub const SW_FACE_OUTSIDE: u32 = 1;
/// Rounded down.
pub const SW_ROUND_DOWN: u32 = 0;
/// Rounded to the nearest.
pub const SW_ROUND_NEAREST: u32 = 1;
/// Rounded up.
pub const SW_ROUND_UP: u32 = 2;
/// The pitch was fitted to a tie: one strip.
pub const SW_FITTED_TIE: u32 = 0;
/// The pitch divides the run already.
pub const SW_FITTED_WHOLE: u32 = 1;
/// The nearer whole number of pitches was taken.
pub const SW_FITTED_NEARER: u32 = 2;
/// The other number was taken, because of the greatest pitch.
pub const SW_FITTED_CAP: u32 = 3;
/// The other number was taken, because of the least pitch.
pub const SW_FITTED_FLOOR: u32 = 4;
/// A hole of a lap.
pub const SW_SIDE_LAP: u32 = 0;
/// A hole left of the butt.
pub const SW_SIDE_LEFT: u32 = 1;
/// A hole right of the butt.
pub const SW_SIDE_RIGHT: u32 = 2;

/// What a shop is asked for.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_order {
    /// Size of this struct, set by `sw_order_init`.
    pub struct_size: u32,
    /// `SW_RUN_*`.
    pub run: u32,
    /// `SW_MEASURED_*`, for a girth.
    pub measured: u32,
    /// `SW_FACE_*`, for a girth.
    pub face: u32,
    /// Number of the closing head, from 0 (`sw_head_name`).
    pub head: u32,
    /// Number of the set head, from 0.
    pub set_head: u32,
    /// Number of the rule for rivet lengths, from 0 (`sw_length_rule_name`).
    pub length_rule: u32,
    /// `SW_ROUND_*`: how lengths are brought to the step of the stock.
    pub stock_rounding: u32,
    /// Length of a straight seam, mm.
    pub length_mm: f64,
    /// First hole to the end of the plate, mm.
    pub first_end_mm: f64,
    /// Last hole to the end of the plate, mm.
    pub last_end_mm: f64,
    /// Diameter of a girth, mm.
    pub diameter_mm: f64,
    /// Step of rivet lengths in stock, mm; 0: cut to length.
    pub stock_step_mm: f64,
    /// Density, kg/m3; 0: steel, 7850 kg/m3.
    pub density_kg_m3: f64,
}

impl sw_order {
    pub(crate) fn fresh() -> Self {
        sw_order {
            struct_size: size_of::<sw_order>() as u32,
            run: SW_RUN_STRAIGHT,
            measured: SW_MEASURED_CIRCLE,
            face: SW_FACE_INSIDE,
            head: 0,
            set_head: 0,
            length_rule: 0,
            stock_rounding: SW_ROUND_UP,
            length_mm: 0.0,
            first_end_mm: 0.0,
            last_end_mm: 0.0,
            diameter_mm: 0.0,
            stock_step_mm: 0.0,
            density_kg_m3: 0.0,
        }
    }

    pub(crate) fn order(&self, argument: u32) -> Result<Order, Failure> {
        let bad = || Failure::border(SW_BAD_CHOICE, argument);
        let run = match self.run {
            SW_RUN_STRAIGHT => Run::Straight {
                length: Length::mm(self.length_mm),
                first_end: Length::mm(self.first_end_mm),
                last_end: Length::mm(self.last_end_mm),
            },
            SW_RUN_GIRTH => Run::Girth {
                diameter: Length::mm(self.diameter_mm),
                measured: match self.measured {
                    SW_MEASURED_CIRCLE => Measured::Circle,
                    SW_MEASURED_INSIDE_PLATE => Measured::InsidePlate,
                    SW_MEASURED_INSIDE_OTHER => Measured::InsideOther,
                    _ => return Err(bad()),
                },
                other: match self.face {
                    SW_FACE_INSIDE => Face::Inside,
                    SW_FACE_OUTSIDE => Face::Outside,
                    _ => return Err(bad()),
                },
            },
            SW_RUN_TIE => Run::Tie,
            _ => return Err(bad()),
        };
        let rounding = match self.stock_rounding {
            SW_ROUND_DOWN => Rounding::Down,
            SW_ROUND_NEAREST => Rounding::Nearest,
            SW_ROUND_UP => Rounding::Up,
            _ => return Err(bad()),
        };
        let stock = if self.stock_step_mm == 0.0 {
            Stock::cut_to_length()
        } else {
            Stock::every(Length::mm(self.stock_step_mm), rounding)
        };
        let head = |n: u32| HEAD_FORMS.get(n as usize).copied().ok_or_else(bad);
        let rule = *LENGTH_RULES.get(self.length_rule as usize).ok_or_else(bad)?;
        let closing = head(self.head)?;
        let order = if self.density_kg_m3 == 0.0 {
            Order::steel(run, closing, rule, stock)
        } else {
            Order::new(run, closing, rule, stock, Density::kg_m3(self.density_kg_m3))
        };
        Ok(order.set_head(head(self.set_head)?))
    }
}

/// A seam as the shop makes it. Cut sizes that do not exist are not numbers.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_shop {
    /// Size of this struct, set by `sw_shop_init`.
    pub struct_size: u32,
    /// `SW_FITTED_*`.
    pub fitted: u32,
    /// Whole number of pitches (strips) in the run.
    pub strips: u32,
    /// Number of rivets.
    pub rivets: u32,
    /// Number of holes, on both sides of a butt.
    pub holes: u32,
    /// Not used.
    pub reserved: u32,
    /// Pitch (strip) that was asked for, mm.
    pub asked_mm: f64,
    /// Pitch (strip) that follows, mm.
    pub strip_mm: f64,
    /// Length of the seam, mm.
    pub seam_mm: f64,
    /// Width of the part of plate B under a lap, mm.
    pub overlap_width_mm: f64,
    /// Width of the single or wide strap, mm.
    pub wide_width_mm: f64,
    /// Length of the single or wide strap, mm.
    pub wide_length_mm: f64,
    /// Width of the narrow or second strap, mm.
    pub narrow_width_mm: f64,
    /// Length of the narrow or second strap, mm.
    pub narrow_length_mm: f64,
    /// Mass of all rivets as bought, kg.
    pub rivets_kg: f64,
    /// Mass of the straps before drilling, kg.
    pub straps_kg: f64,
    /// Mass of one plate over the lap before drilling, kg.
    pub overlap_kg: f64,
    /// Mass drilled out of all plies, kg.
    pub holes_kg: f64,
    /// What the seam adds to plates that meet edge to edge, kg.
    pub total_kg: f64,
    /// Least efficiency of all modes with the fitted pitch.
    pub efficiency: f64,
}

impl sw_shop {
    pub(crate) fn fresh() -> Self {
        let nothing = f64::NAN;
        sw_shop {
            struct_size: size_of::<sw_shop>() as u32,
            fitted: SW_FITTED_WHOLE,
            strips: 0,
            rivets: 0,
            holes: 0,
            reserved: 0,
            asked_mm: nothing,
            strip_mm: nothing,
            seam_mm: nothing,
            overlap_width_mm: nothing,
            wide_width_mm: nothing,
            wide_length_mm: nothing,
            narrow_width_mm: nothing,
            narrow_length_mm: nothing,
            rivets_kg: nothing,
            straps_kg: nothing,
            overlap_kg: nothing,
            holes_kg: nothing,
            total_kg: nothing,
            efficiency: nothing,
        }
    }

    fn of(s: &ShopSheet) -> Self {
        let width = |c: Option<PlateCut>| c.map_or(f64::NAN, |c| c.width);
        let length = |c: Option<PlateCut>| c.map_or(f64::NAN, |c| c.length);
        sw_shop {
            fitted: match s.pitch.fitted {
                Fitted::Tie => SW_FITTED_TIE,
                Fitted::Whole => SW_FITTED_WHOLE,
                Fitted::Nearer => SW_FITTED_NEARER,
                Fitted::Cap => SW_FITTED_CAP,
                Fitted::Floor => SW_FITTED_FLOOR,
            },
            strips: s.pitch.taken.strips,
            rivets: s.rivet_count(),
            holes: s.layout().total(),
            asked_mm: s.pitch.asked,
            strip_mm: s.pitch.taken.strip,
            seam_mm: s.along.seam,
            overlap_width_mm: width(s.cuts.overlap),
            wide_width_mm: width(s.cuts.wide),
            wide_length_mm: length(s.cuts.wide),
            narrow_width_mm: width(s.cuts.narrow),
            narrow_length_mm: length(s.cuts.narrow),
            rivets_kg: s.masses.rivets,
            straps_kg: s.masses.straps,
            overlap_kg: s.masses.overlap,
            holes_kg: s.masses.holes,
            total_kg: s.masses.total,
            efficiency: s.analysis.efficiency,
            ..sw_shop::fresh()
        }
    }
}

/// The rivets of one row. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_rivet_line {
    /// The row, from 1.
    pub row: u32,
    /// How many rivets.
    pub count: u32,
    /// Cold rivet, mm.
    pub rivet_mm: f64,
    /// Hole, mm.
    pub hole_mm: f64,
    /// Grip, mm.
    pub grip_mm: f64,
    /// Allowance for the closing head by the length rule, mm.
    pub allowance_mm: f64,
    /// Length of the shank by the rule, mm.
    pub length_mm: f64,
    /// Length to order, mm.
    pub stock_mm: f64,
    /// Mass of all rivets of the row, kg.
    pub mass_kg: f64,
}

/// One hole. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_hole {
    /// Number of the hole, from 1.
    pub number: u32,
    /// `SW_SIDE_*`.
    pub side: u32,
    /// The row, from 1.
    pub row: u32,
    /// Number in the row, from 1.
    pub in_row: u32,
    /// Along the seam from the datum, mm.
    pub x_mm: f64,
    /// Across the seam from the middle of the joint, mm.
    pub y_mm: f64,
    /// Angle of a girth, degrees; not a number on a straight seam.
    pub angle_deg: f64,
}

fn hole_of(h: &Hole) -> sw_hole {
    sw_hole {
        number: h.number,
        side: match h.side {
            Side::Lap => SW_SIDE_LAP,
            Side::Left => SW_SIDE_LEFT,
            Side::Right => SW_SIDE_RIGHT,
        },
        row: u32::from(h.row),
        in_row: h.in_row,
        x_mm: h.x.to_mm(),
        y_mm: h.y.to_mm(),
        angle_deg: h.angle.unwrap_or(f64::NAN),
    }
}

fn line_of(l: &RivetLine) -> sw_rivet_line {
    sw_rivet_line {
        row: u32::from(l.row),
        count: l.count,
        rivet_mm: l.rivet.to_mm(),
        hole_mm: l.hole.to_mm(),
        grip_mm: l.grip,
        allowance_mm: l.allowance,
        length_mm: l.length,
        stock_mm: l.stock,
        mass_kg: l.mass,
    }
}

/// The shop sheet of the four first arguments.
pub(crate) fn sheet_of(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    order: *const sw_order,
) -> Result<ShopSheet, Failure> {
    let asked = Asked::new(joint, materials, rules)?;
    let order = border::read(order, 4)?.order(4)?;
    Ok(shop_sheet(&asked.joint, &asked.materials, &asked.rules, &order)?)
}

/// Fills an order with its defaults: a straight seam of steel, the first head and length rule, cut to length.
#[unsafe(no_mangle)]
pub extern "C" fn sw_order_init(order: *mut sw_order) {
    border::init(order);
}

/// Fills a shop result with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shop_init(shop: *mut sw_shop) {
    border::init(shop);
}

/// Fits a joint to a run: pitch, numbers, cut sizes, masses. `fitted`, the joint with that pitch, may be NULL.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shop_fit(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    order: *const sw_order,
    shop: *mut sw_shop,
    fitted: *mut sw_joint,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (out, joint_out) = (Out::needed(shop, 5)?, Out::wanted(fitted, 6)?);
        let sheet = sheet_of(joint, materials, rules, order)?;
        out.put(sw_shop::of(&sheet));
        if let Some(out) = joint_out {
            out.put(sw_joint::of(&sheet.joint));
        }
        Ok(())
    })
}

/// The rivets row by row into an array of the caller's. NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shop_rivets(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    order: *const sw_order,
    lines: *mut sw_rivet_line,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let list = List::new(lines, capacity, count, 5)?;
        let sheet = sheet_of(joint, materials, rules, order)?;
        list.room(sheet.rivets().len())?.fill(sheet.rivets().iter().map(line_of));
        Ok(())
    })
}

/// Every hole from the datum into an array of the caller's. NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shop_holes(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    order: *const sw_order,
    holes: *mut sw_hole,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let list = List::new(holes, capacity, count, 5)?;
        let sheet = sheet_of(joint, materials, rules, order)?;
        list.room(sheet.layout().total() as usize)?.fill(sheet.layout().holes().map(|h| hole_of(&h)));
        Ok(())
    })
}

/// The whole shop sheet as plain text of 80 columns or as Markdown; `SW_BAD_CHOICE` for other dialects.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shop_text(
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
        let bad = || Failure::border(SW_BAD_CHOICE, 5);
        let given = sw_style::at(style, 5)?;
        let units = match given.units {
            SW_UNITS_METRIC => Units::Millimetre,
            SW_UNITS_INCH => Units::Inch,
            _ => return Err(bad()),
        };
        let markdown = match given.dialect {
            SW_DIALECT_PLAIN => false,
            SW_DIALECT_MARKDOWN => true,
            _ => return Err(bad()),
        };
        let page =
            Style { units, mark: decimal_mark(given.mark, 5)?, first: given.first_hole, count: given.hole_count };
        let text = Text::new(buf, len, needed, 6)?;
        let sheet = sheet_of(joint, materials, rules, order)?;
        titled(&border::read(rules, 3)?, |book| {
            text.put(|out| {
                let written =
                    if markdown { sheet.write_markdown(out, book, &page) } else { sheet.write_text(out, book, &page) };
                Ok(written?)
            })
        })
    })
}

/// A head form in words, from 0.
#[unsafe(no_mangle)]
pub extern "C" fn sw_head_name(head: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let head = HEAD_FORMS.get(head as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(head.name())?))
    })
}

/// A rule for rivet lengths in words, from 0.
#[unsafe(no_mangle)]
pub extern "C" fn sw_length_rule_name(rule: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let rule = LENGTH_RULES.get(rule as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(rule.name())?))
    })
}
