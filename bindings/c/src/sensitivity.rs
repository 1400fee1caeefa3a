//! What a millimetre or a megapascal more does to a joint, and what tolerances can do at worst.

use core::ffi::c_char;

use seamwright::modes::Cut;
use seamwright::quantities::Length;
use seamwright::sensitivity::{Input, Sided, Slope, Target, Tolerances, WorstCase, slopes, tolerance::worst_case};

use crate::border::{self, List, Out, Slot, Text};
use crate::joint::{sw_joint, sw_materials};
use crate::modes::Asked;
use crate::reconcile::sw_name;
use crate::rules::sw_rules;
use crate::status::{Failure, SW_BAD_CHOICE, SW_NO_ENTRY, answer, sw_error};

/// The efficiency over all modes is to be at its worst.
pub const SW_TARGET_EFFICIENCY: u32 = 0;
/// The efficiency by the book is to be at its worst.
pub const SW_TARGET_BOOK_EFFICIENCY: u32 = 1;
/// The strength for a millimetre of seam is to be at its worst: what a shell's pressure follows.
pub const SW_TARGET_STRENGTH: u32 = 2;
/// Most inputs of one study.
pub const SW_MAX_INPUTS: usize = 48;
/// Dimensions that have a tolerance: plate, other plate or wide strap, narrow strap, hole, pitch.
pub const SW_TOLERANCES: usize = 5;

const _: () = assert!(SW_MAX_INPUTS == seamwright::sensitivity::MAX_INPUTS, "as in the library");

/// Two derivatives: towards less of the input, and towards more. They differ where another mode begins to govern.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_sided {
    /// Towards less.
    pub left: f64,
    /// Towards more.
    pub right: f64,
}

impl sw_sided {
    fn of(s: &Sided) -> Self {
        sw_sided { left: s.left, right: s.right }
    }
}

/// What one input does, each for one unit more of it: mm, MPa, or one. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_slope {
    /// The dimension or stress that was given (`sw_quantity_what`); counts where `entry` is `SW_NO_ENTRY`.
    pub name: sw_name,
    /// The figure of the rule book; `SW_NO_ENTRY`: a dimension or stress.
    pub entry: u32,
    /// 1 where another mode governs towards more than towards less.
    pub mode_changes: u32,
    /// The mode that governs towards less: row at which the plate, the other plate or wide strap, and the narrow strap
    /// tear, from 1; 0: it does not.
    pub left_row: [u32; 3],
    /// The mode that governs towards more.
    pub right_row: [u32; 3],
    /// The value of the input.
    pub value: f64,
    /// Of the efficiency over all modes.
    pub efficiency: sw_sided,
    /// Of the efficiency by the book.
    pub book_efficiency: sw_sided,
    /// Of the efficiency credited.
    pub credited: sw_sided,
    /// Of the strength of the weakest mode for a millimetre of seam, N/mm. A thin shell's pressure moves with it.
    pub strength: sw_sided,
}

fn rows(cut: &Cut) -> [u32; 3] {
    [cut.plate, cut.other, cut.narrow].map(u32::from)
}

impl sw_slope {
    fn of(s: &Slope) -> Self {
        let [left, right] = &s.governs;
        let (name, entry) = match s.input {
            Input::Given(name) => (sw_name::of(name), SW_NO_ENTRY),
            Input::Rule(entry) => (sw_name { quantity: 0, row: 0 }, u32::from(entry.0)),
        };
        sw_slope {
            name,
            entry,
            mode_changes: u32::from(s.mode_changes()),
            left_row: rows(left),
            right_row: rows(right),
            value: s.value,
            efficiency: sw_sided::of(&s.efficiency),
            book_efficiency: sw_sided::of(&s.book_efficiency),
            credited: sw_sided::of(&s.credited),
            strength: sw_sided::of(&s.strength),
        }
    }
}

/// Tolerances, each to either side, mm; 0 for a dimension that is exact. A record: fill every member.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_tolerances {
    /// Of the plate; in a lap of each plate for itself.
    pub plate_mm: f64,
    /// Of each strap for itself.
    pub straps_mm: f64,
    /// Of the holes, which move together.
    pub hole_mm: f64,
    /// Of the pitch (the width of the strip where the outer row has several rivets in it).
    pub pitch_mm: f64,
}

impl sw_tolerances {
    fn tolerances(&self) -> Tolerances {
        let [plate, straps, hole, pitch] = [self.plate_mm, self.straps_mm, self.hole_mm, self.pitch_mm].map(Length::mm);
        Tolerances::none().plate(plate).straps(straps).hole(hole).pitch(pitch)
    }
}

/// A worst case, and what each tolerance alone contributes. Arrays: plate, other plate or wide strap, narrow strap,
/// hole, pitch.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_worst {
    /// Size of this struct, set by `sw_worst_init`.
    pub struct_size: u32,
    /// 1 where the worst case is proved; 0: it is the worst that a grid found.
    pub exact: u32,
    /// 1 where the worst lies inside the tolerance of the hole and not at an end of it.
    pub hole_inside: u32,
    /// The mode that governs there: rows as in `sw_slope.left_row`.
    pub row: [u32; 3],
    /// The measure of the joint as stated.
    pub stated: f64,
    /// The worst over all tolerances together.
    pub worst: f64,
    /// The worst over the stated: 0.98 for two per cent lost.
    pub ratio: f64,
    /// Deviations from what was stated at which it is reached, mm.
    pub deviation_mm: [f64; SW_TOLERANCES],
    /// The worst with one tolerance alone. The dimension with the lowest one matters most.
    pub alone: [f64; SW_TOLERANCES],
}

impl sw_worst {
    pub(crate) fn fresh() -> Self {
        let nothing = f64::NAN;
        sw_worst {
            struct_size: size_of::<sw_worst>() as u32,
            exact: 0,
            hole_inside: 0,
            row: [0; 3],
            stated: nothing,
            worst: nothing,
            ratio: nothing,
            deviation_mm: [nothing; SW_TOLERANCES],
            alone: [nothing; SW_TOLERANCES],
        }
    }

    fn of(w: &WorstCase, tolerances: &Tolerances) -> Self {
        sw_worst {
            exact: u32::from(w.exact),
            hole_inside: u32::from(w.hole_inside(tolerances)),
            row: rows(&w.worst.cut),
            stated: w.stated,
            worst: w.worst.value,
            ratio: w.ratio(),
            deviation_mm: w.worst.deviation,
            alone: w.alone,
            ..sw_worst::fresh()
        }
    }
}

/// Fills tolerances with 0: all dimensions exact.
#[unsafe(no_mangle)]
pub extern "C" fn sw_tolerances_init(tolerances: *mut sw_tolerances) {
    if let Ok(out) = Slot::needed(tolerances, 1) {
        out.put(sw_tolerances { plate_mm: 0.0, straps_mm: 0.0, hole_mm: 0.0, pitch_mm: 0.0 });
    }
}

/// Fills a worst case with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_worst_init(worst: *mut sw_worst) {
    border::init(worst);
}

/// The exact derivatives of a joint's efficiencies and strength to each of its inputs, into an array of the caller's
/// (`SW_MAX_INPUTS` is always enough). NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_joint_slopes(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    lines: *mut sw_slope,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let asked = Asked::new(joint, materials, rules)?;
        let list = List::new(lines, capacity, count, 4)?;
        let found = slopes(&asked.joint, &asked.materials, &asked.rules)?;
        list.room(found.lines.len())?.fill(found.lines.iter().map(sw_slope::of));
        Ok(())
    })
}

/// The same as a Markdown table, which reads as plain text too: what one per cent more of each input does to the
/// efficiencies and to the strength, in per cent. Inputs that do nothing are left out.
#[unsafe(no_mangle)]
pub extern "C" fn sw_joint_slopes_text(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let asked = Asked::new(joint, materials, rules)?;
        let text = Text::new(buf, len, needed, 4)?;
        let found = slopes(&asked.joint, &asked.materials, &asked.rules)?;
        text.put(|out| Ok(found.write_table(out)?))
    })
}

/// The worst case of a measure (`SW_TARGET_*`) when each dimension may lie anywhere within its tolerance.
#[unsafe(no_mangle)]
pub extern "C" fn sw_joint_worst(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    tolerances: *const sw_tolerances,
    target: u32,
    worst: *mut sw_worst,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let asked = Asked::new(joint, materials, rules)?;
        let tolerances = border::record(tolerances, 4)?.tolerances();
        let target = match target {
            SW_TARGET_EFFICIENCY => Target::Efficiency,
            SW_TARGET_BOOK_EFFICIENCY => Target::BookEfficiency,
            SW_TARGET_STRENGTH => Target::Strength,
            _ => return Err(Failure::border(SW_BAD_CHOICE, 5)),
        };
        let out = Out::needed(worst, 6)?;
        let found = worst_case(&asked.joint, &asked.materials, &asked.rules, &tolerances, target)?;
        out.put(sw_worst::of(&found, &tolerances));
        Ok(())
    })
}
