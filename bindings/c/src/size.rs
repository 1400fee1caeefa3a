//! Sizing a joint.

use seamwright::proportion::{HoleBasis, Limit};
use seamwright::quantities::Length;
use seamwright::rules::Balance;
use seamwright::sizing::{Brief, Decided, Design, size_into};

use crate::border::{self, List, Out};
use crate::check::{Told, sw_analysis, sw_finding};
use crate::form::{SW_MAX_ROWS, sw_form};
use crate::joint::{length, sw_joint, sw_materials};
use crate::rules::sw_rules;
use crate::status::{Failure, SW_NO_ENTRY, answer, sw_error};

/// The hole was given.
pub const SW_HOLE_GIVEN: u32 = 0;
/// The hole follows from the square-root rule.
pub const SW_HOLE_ROOT: u32 = 1;
/// Shear equals bearing: the plate is thin.
pub const SW_HOLE_THIN: u32 = 2;
/// The hole follows from the book's table by thickness.
pub const SW_HOLE_TABLE: u32 = 3;
/// The pitch was given.
pub const SW_PITCH_GIVEN: u32 = 0;
/// The pitch follows from the balance.
pub const SW_PITCH_BALANCE: u32 = 1;
/// The pitch follows from the least pitch.
pub const SW_PITCH_FLOOR: u32 = 2;
/// The pitch follows from the greatest pitch.
pub const SW_PITCH_CAP: u32 = 3;
/// Balance of the outer row against the rivets in shear.
pub const SW_BALANCE_SHEAR: u32 = 0;
/// Balance of the outer row against the weaker of shear and bearing.
pub const SW_BALANCE_WEAKER: u32 = 1;
/// Balance of all plate modes against the rivets.
pub const SW_BALANCE_ALL_MODES: u32 = 2;

/// What a joint is to be sized from; what is 0 is found by the rule book.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_brief {
    /// Size of this struct, set by `sw_brief_init`.
    pub struct_size: u32,
    /// Not used.
    pub reserved: u32,
    /// The form.
    pub form: sw_form,
    /// The stresses.
    pub materials: sw_materials,
    /// Thickness of the plate (plate A of a lap), mm.
    pub plate_mm: f64,
    /// Thickness of plate B of a lap, mm; 0: as plate A.
    pub other_plate_mm: f64,
    /// Hole, mm; 0: by the book.
    pub hole_mm: f64,
    /// Cold rivet for a given hole, mm; 0: by the book. Counts only where `hole_mm` is given.
    pub rivet_mm: f64,
    /// Pitch of the outer row, or width of the strip, mm; 0: by the book.
    pub pitch_mm: f64,
    /// Single or wide strap, mm; 0: by the book.
    pub wide_strap_mm: f64,
    /// Narrow or second strap, mm; 0: as the wide one where that is given, otherwise by the book.
    pub narrow_strap_mm: f64,
    /// Margin, mm; 0: by the book.
    pub margin_mm: f64,
    /// Distance from each row to the next, mm; 0: by the book.
    pub back_pitch_mm: [f64; SW_MAX_ROWS],
}

impl sw_brief {
    pub(crate) fn fresh() -> Self {
        sw_brief {
            struct_size: size_of::<sw_brief>() as u32,
            reserved: 0,
            form: sw_form::none(),
            materials: sw_materials::none(),
            plate_mm: 0.0,
            other_plate_mm: 0.0,
            hole_mm: 0.0,
            rivet_mm: 0.0,
            pitch_mm: 0.0,
            wide_strap_mm: 0.0,
            narrow_strap_mm: 0.0,
            margin_mm: 0.0,
            back_pitch_mm: [0.0; SW_MAX_ROWS],
        }
    }

    pub(crate) fn brief(&self, argument: u32) -> Result<Brief, Failure> {
        let form = self.form.form(argument)?;
        let mut brief = Brief::new(form, Length::mm(self.plate_mm), self.materials.materials());
        if let Some(b) = length(self.other_plate_mm) {
            brief = brief.other_plate(b);
        }
        if let Some(hole) = length(self.hole_mm) {
            brief = brief.hole(hole, length(self.rivet_mm));
        }
        if let Some(pitch) = length(self.pitch_mm) {
            brief = brief.pitch(pitch);
        }
        match (length(self.wide_strap_mm), length(self.narrow_strap_mm)) {
            (Some(wide), narrow) => brief = brief.straps(wide, narrow),
            // A narrow strap alone: 0 for the wide one, which the library refuses by name.
            (None, Some(narrow)) => brief = brief.straps(Length::mm(0.0), Some(narrow)),
            (None, None) => {}
        }
        for (gap, row) in self.back_pitch_mm.iter().zip(1_usize..) {
            if let Some(gap) = length(*gap) {
                brief = brief.back_pitch(row, gap);
            }
        }
        if let Some(margin) = length(self.margin_mm) {
            brief = brief.margin(margin);
        }
        Ok(brief)
    }
}

/// How a design came about: what the book asked for, before rounding.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_design {
    /// Size of this struct, set by `sw_design_init`.
    pub struct_size: u32,
    /// `SW_HOLE_*`.
    pub hole_basis: u32,
    /// `SW_PITCH_*`: what decided the pitch.
    pub pitch_decided: u32,
    /// `SW_BALANCE_*`: the balance that the book takes.
    pub pitch_balance: u32,
    /// Entry that sets the greatest pitch; `SW_NO_ENTRY` where the book has none.
    pub pitch_greatest_entry: u32,
    /// Entry that sets the least single, wide or first strap; `SW_NO_ENTRY`: none.
    pub wide_strap_entry: u32,
    /// Entry that sets the least narrow or second strap; `SW_NO_ENTRY`: none.
    pub narrow_strap_entry: u32,
    /// Not used.
    pub reserved: u32,
    /// Hole before it became a standard size, mm; not a number where it was given.
    pub hole_computed_mm: f64,
    /// Hole taken, mm.
    pub hole_mm: f64,
    /// Cold rivet taken, mm.
    pub rivet_mm: f64,
    /// Pitch at which the outer row balances all rivets in shear, mm.
    pub pitch_by_shear_mm: f64,
    /// Pitch at which the outer row balances the weaker of shear and bearing, mm.
    pub pitch_by_weaker_mm: f64,
    /// Pitch from which no plate mode is weaker than the rivets, mm.
    pub pitch_by_all_modes_mm: f64,
    /// Least pitch, mm.
    pub pitch_least_mm: f64,
    /// Greatest pitch, mm; not a number where the book has none or its table does not reach.
    pub pitch_greatest_mm: f64,
    /// Pitch taken, mm.
    pub pitch_mm: f64,
    /// Least margin, mm.
    pub margin_least_mm: f64,
    /// Least single, wide or first strap, mm; not a number: none.
    pub wide_strap_least_mm: f64,
    /// Least narrow or second strap, mm; not a number: none.
    pub narrow_strap_least_mm: f64,
    /// Least distance from each row to the next, mm.
    pub back_pitch_least_mm: [f64; SW_MAX_ROWS],
    /// Entry that sets each of them; `SW_NO_ENTRY`: none.
    pub back_pitch_entry: [u32; SW_MAX_ROWS],
    /// Distance from each row to the next that its heads, 1.6 rivets wide, need beside the edge of the narrow strap, mm
    /// (common practice); not a number where that edge lies elsewhere or the distance was given.
    pub heads_at_strap_mm: [f64; SW_MAX_ROWS],
    /// Distance at which the heads of the two rows touch, mm (common practice); 0 where they lie far enough across, not a
    /// number where the rows have no such rule or the distance was given.
    pub heads_of_rows_mm: [f64; SW_MAX_ROWS],
}

fn limit(limit: &Limit<f64>) -> (f64, u32) {
    match limit {
        Limit::None => (f64::NAN, SW_NO_ENTRY),
        Limit::Unknown(entry) => (f64::NAN, u32::from(entry.no().0)),
        Limit::At(value, entry) => (*value, u32::from(entry.no().0)),
    }
}

impl sw_design {
    pub(crate) fn fresh() -> Self {
        let nothing = f64::NAN;
        sw_design {
            struct_size: size_of::<sw_design>() as u32,
            hole_basis: SW_HOLE_GIVEN,
            pitch_decided: SW_PITCH_GIVEN,
            pitch_balance: SW_BALANCE_SHEAR,
            pitch_greatest_entry: SW_NO_ENTRY,
            wide_strap_entry: SW_NO_ENTRY,
            narrow_strap_entry: SW_NO_ENTRY,
            reserved: 0,
            hole_computed_mm: nothing,
            hole_mm: nothing,
            rivet_mm: nothing,
            pitch_by_shear_mm: nothing,
            pitch_by_weaker_mm: nothing,
            pitch_by_all_modes_mm: nothing,
            pitch_least_mm: nothing,
            pitch_greatest_mm: nothing,
            pitch_mm: nothing,
            margin_least_mm: nothing,
            wide_strap_least_mm: nothing,
            narrow_strap_least_mm: nothing,
            back_pitch_least_mm: [nothing; SW_MAX_ROWS],
            back_pitch_entry: [SW_NO_ENTRY; SW_MAX_ROWS],
            heads_at_strap_mm: [nothing; SW_MAX_ROWS],
            heads_of_rows_mm: [nothing; SW_MAX_ROWS],
        }
    }

    fn of(d: &Design<f64, ()>) -> Self {
        let [wide, narrow] = &d.straps;
        let (pitch, wide, narrow) = (limit(&d.pitch.greatest), limit(wide), limit(narrow));
        let mut c = sw_design {
            hole_basis: match d.hole.computed {
                Some((_, HoleBasis::Thin)) => SW_HOLE_THIN,
                Some((_, HoleBasis::Table(_))) => SW_HOLE_TABLE,
                Some(_) => SW_HOLE_ROOT,
                None => SW_HOLE_GIVEN,
            },
            pitch_decided: match d.pitch.decided {
                Decided::Given => SW_PITCH_GIVEN,
                Decided::Balance => SW_PITCH_BALANCE,
                Decided::Floor => SW_PITCH_FLOOR,
                Decided::Cap => SW_PITCH_CAP,
            },
            pitch_balance: match d.pitch.balance {
                Balance::Shear => SW_BALANCE_SHEAR,
                Balance::Weaker => SW_BALANCE_WEAKER,
                Balance::AllModes => SW_BALANCE_ALL_MODES,
            },
            pitch_greatest_entry: pitch.1,
            wide_strap_entry: wide.1,
            narrow_strap_entry: narrow.1,
            hole_computed_mm: d.hole.computed.map_or(f64::NAN, |(d, _)| d),
            hole_mm: d.hole.hole,
            rivet_mm: d.hole.rivet,
            pitch_by_shear_mm: d.pitch.by_shear,
            pitch_by_weaker_mm: d.pitch.by_weaker,
            pitch_by_all_modes_mm: d.pitch.by_all_modes,
            pitch_least_mm: d.pitch.least,
            pitch_greatest_mm: pitch.0,
            pitch_mm: d.pitch.taken,
            margin_least_mm: d.margin,
            wide_strap_least_mm: wide.0,
            narrow_strap_least_mm: narrow.0,
            ..sw_design::fresh()
        };
        let rows = c.back_pitch_least_mm.iter_mut().zip(c.back_pitch_entry.iter_mut());
        for ((least, no), (gap, entry)) in rows.zip(d.gaps).take(d.joint.form().row_count().saturating_sub(1)) {
            (*least, *no) = (gap, u32::from(entry.no().0));
        }
        let rooms = c.heads_at_strap_mm.iter_mut().zip(c.heads_of_rows_mm.iter_mut());
        for ((at_strap, of_rows), room) in rooms.zip(d.heads) {
            (*at_strap, *of_rows) = (room.at_strap.unwrap_or(f64::NAN), room.of_rows.unwrap_or(f64::NAN));
        }
        c
    }
}

/// The brief behind a pointer. By itself: the copies that it makes leave the stack again.
#[inline(never)]
pub(crate) fn brief_at(brief: *const sw_brief) -> Result<Brief, Failure> {
    border::read(brief, 1)?.brief(1)
}

/// What was sized into the caller's memory.
#[inline(never)]
pub(crate) fn put(
    found: &Design<f64, ()>,
    told: &Told,
    joint: Out<sw_joint>,
    design: Option<Out<sw_design>>,
    analysis: Option<Out<sw_analysis>>,
) {
    joint.put(sw_joint::of(&found.joint));
    if let Some(out) = design {
        out.put(sw_design::of(found));
    }
    if let Some(out) = analysis {
        out.put(sw_analysis::counted(&found.analysis, told.total(), told.open()));
    }
}

/// Fills a brief with 0: nothing given.
#[unsafe(no_mangle)]
pub extern "C" fn sw_brief_init(brief: *mut sw_brief) {
    border::init(brief);
}

/// Fills a design with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_design_init(design: *mut sw_design) {
    border::init(design);
}

/// Sizes a joint by a rule book and checks it. `design` and `analysis` may be NULL; `findings` as in `sw_joint_check`.
/// Where the book finds no joint: `SW_BEYOND_TABLE`, `SW_NO_STANDARD_SIZE`, `SW_NO_ADMISSIBLE_PITCH`,
/// `SW_NO_ADMISSIBLE_MARGIN`; where what was given makes none, the errors of `sw_joint_validate`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_joint_size(
    brief: *const sw_brief,
    rules: *const sw_rules,
    joint: *mut sw_joint,
    design: *mut sw_design,
    analysis: *mut sw_analysis,
    findings: *mut sw_finding,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        // Looked at where it was made: a small machine has no room for a second brief.
        let brief = brief_at(brief);
        let brief = brief.as_ref().map_err(|failure| *failure)?;
        border::with_rules(rules, 2, &mut |rules| {
            let joint_out = Out::needed(joint, 3)?;
            let (design_out, analysis_out) = (Out::wanted(design, 4)?, Out::wanted(analysis, 5)?);
            let mut told = Told::new(List::new(findings, capacity, count, 6)?);
            let mut found = Design::blank();
            size_into(brief, rules, &mut told, &mut found)?;
            let told = told.room()?;
            put(&found, &told, joint_out, design_out, analysis_out);
            told.list(&found.joint, brief.materials(), rules)
        })
    })
}
