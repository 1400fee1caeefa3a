//! What a search finds: candidates, the best of them, counts.

use core::ffi::c_char;

use seamwright::check::SUBJECTS;
use seamwright::quantities::Pressure;
use seamwright::search::{Beside, Candidate, Constraint, Measure, Ranked, Tally};

use crate::border::{self, Text};
use crate::form::sw_form;
use crate::status::{Failure, SW_BAD_CHOICE, answer};

/// How many of the best a search returns, each of another form.
pub const SW_MAX_BEST: usize = 5;
/// No measure: it is the best itself.
pub const SW_MEASURE_NONE: u32 = 0xFFFF_FFFF;
/// Efficiency credited.
pub const SW_MEASURE_EFFICIENCY: u32 = 0;
/// Rivets in a metre.
pub const SW_MEASURE_RIVETS: u32 = 1;
/// Mass of a metre.
pub const SW_MEASURE_MASS: u32 = 2;
/// Plate.
pub const SW_MEASURE_PLATE: u32 = 3;
/// Pitch: the larger one is taken.
pub const SW_MEASURE_PITCH: u32 = 4;
/// Equal in all: the earlier in the order of plates, forms and sizes is taken.
pub const SW_MEASURE_ORDER: u32 = 5;
/// A step of the pitch further lies beyond the least or greatest pitch.
pub const SW_BESIDE_OFF_GRID: u32 = 0;
/// A step of the pitch further a constraint is not met; its number stands beside.
pub const SW_BESIDE_EXCLUDED: u32 = 1;
/// A step of the pitch further the joint is worse; the number of the first measure in which it is stands beside.
pub const SW_BESIDE_WORSE: u32 = 2;
/// The constraint that a rule be met has this number plus that of the finding's subject; below are the others.
pub const SW_CONSTRAINT_RULE: u32 = 16;
/// Room for the counts of all constraints.
pub const SW_MAX_CONSTRAINTS: usize = 80;

const _: () = assert!(SW_CONSTRAINT_RULE as usize + SUBJECTS.len() <= SW_MAX_CONSTRAINTS, "room for all subjects");
const _: () = assert!(SW_MAX_BEST == seamwright::search::BEST, "as in the library");

/// Constraints other than rules, by their numbers.
const CONSTRAINTS: [Constraint; 7] = [
    Constraint::Rows,
    Constraint::RivetSize,
    Constraint::CapUnknown,
    Constraint::Pitch,
    Constraint::Efficiency,
    Constraint::Pressure,
    Constraint::Making,
];
const MEASURES: [Measure; 6] =
    [Measure::Efficiency, Measure::Rivets, Measure::Mass, Measure::Plate, Measure::Pitch, Measure::Order];

/// A joint of the grid that meets all constraints. A record. `sw_search_brief` makes the brief that sizes it.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_candidate {
    /// The form.
    pub form: sw_form,
    /// What governs: row at which the plate tears, from 1; 0: it does not.
    pub plate_row: u32,
    /// Row at which plate B or the single, wide or first strap tears; 0: it does not.
    pub other_row: u32,
    /// Row at which the narrow or second strap tears; 0: it does not.
    pub narrow_row: u32,
    /// Not used.
    pub reserved: u32,
    /// The plate, mm.
    pub plate_mm: f64,
    /// The hole, mm.
    pub hole_mm: f64,
    /// The cold rivet, mm.
    pub rivet_mm: f64,
    /// Pitch of the outer row, mm.
    pub pitch_mm: f64,
    /// Efficiency credited.
    pub efficiency: f64,
    /// Rivets in a metre of seam, both sides of a butt.
    pub rivets_per_m: f64,
    /// Mass that a metre of seam adds, kg; not a number where it was not asked for.
    pub kg_per_m: f64,
    /// Working pressure, MPa; not a number where it was not asked for.
    pub pressure_mpa: f64,
}

impl sw_candidate {
    pub(crate) fn of(c: &Candidate) -> Self {
        sw_candidate {
            form: sw_form::of(&c.form),
            plate_row: u32::from(c.governing.plate),
            other_row: u32::from(c.governing.other),
            narrow_row: u32::from(c.governing.narrow),
            reserved: 0,
            plate_mm: c.plate.to_mm(),
            hole_mm: c.hole.to_mm(),
            rivet_mm: c.rivet.to_mm(),
            pitch_mm: c.pitch.to_mm(),
            efficiency: c.efficiency,
            rivets_per_m: c.rivets_per_metre,
            kg_per_m: c.mass_per_metre.unwrap_or(f64::NAN),
            pressure_mpa: c.pressure.map_or(f64::NAN, Pressure::to_mpa),
        }
    }
}

/// Memory for one joint of a front while it is looked for. Its bytes mean nothing to the caller.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_front_slot {
    /// Not to be read.
    pub memory: [u64; 32],
}

/// One of the best, and why it stands where it stands. A record. Texts: `sw_measure_what`, `sw_constraint_what`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_ranked {
    /// The joint.
    pub candidate: sw_candidate,
    /// `SW_MEASURE_*`: the first measure in which it is behind the best.
    pub behind: u32,
    /// `SW_BESIDE_*`: what lies a step of the pitch lower.
    pub lower: u32,
    /// Number of the constraint or of the measure there.
    pub lower_why: u32,
    /// `SW_BESIDE_*`: what lies a step of the pitch higher.
    pub higher: u32,
    /// Number of the constraint or of the measure there.
    pub higher_why: u32,
    /// Not used.
    pub reserved: u32,
}

fn constraint_no(c: Constraint) -> u32 {
    match c {
        Constraint::Rows => 0,
        Constraint::RivetSize => 1,
        Constraint::CapUnknown => 2,
        Constraint::Pitch => 3,
        Constraint::Efficiency => 4,
        Constraint::Pressure => 5,
        Constraint::Making => 6,
        Constraint::Rule(subject) => SW_CONSTRAINT_RULE.wrapping_add(subject as u32),
    }
}

fn measure_no(m: Measure) -> u32 {
    match m {
        Measure::Efficiency => SW_MEASURE_EFFICIENCY,
        Measure::Rivets => SW_MEASURE_RIVETS,
        Measure::Mass => SW_MEASURE_MASS,
        Measure::Plate => SW_MEASURE_PLATE,
        Measure::Pitch => SW_MEASURE_PITCH,
        Measure::Order => SW_MEASURE_ORDER,
    }
}

impl sw_ranked {
    pub(crate) fn of(r: &Ranked) -> Self {
        let beside = |b: &Beside| match b {
            Beside::OffGrid => (SW_BESIDE_OFF_GRID, 0),
            Beside::Excluded(constraint) => (SW_BESIDE_EXCLUDED, constraint_no(*constraint)),
            Beside::Worse(measure) => (SW_BESIDE_WORSE, measure_no(*measure)),
        };
        let [lower, higher] = &r.neighbours;
        let ((lower, lower_why), (higher, higher_why)) = (beside(lower), beside(higher));
        let behind = r.behind.map_or(SW_MEASURE_NONE, measure_no);
        let candidate = sw_candidate::of(&r.candidate);
        sw_ranked { candidate, behind, lower, lower_why, higher, higher_why, reserved: 0 }
    }
}

/// How many candidates there were, and what became of them: `grid` is `fitting`, `by_bound` and all `excluded`
/// together.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_tally {
    /// Size of this struct, set by `sw_tally_init`.
    pub struct_size: u32,
    /// Number of the constraint that excluded most; of equals the one that is asked first.
    pub most: u32,
    /// All candidates of the grid; a form and size without any pitch counts as one.
    pub grid: u64,
    /// Sized, checked and weighed in full.
    pub examined: u64,
    /// Of those, the ones that meet all constraints.
    pub fitting: u64,
    /// Left out because a bound shows that they cannot win.
    pub by_bound: u64,
    /// Excluded, by the number of the constraint (`sw_constraint_what`).
    pub excluded: [u64; SW_MAX_CONSTRAINTS],
}

impl sw_tally {
    pub(crate) fn fresh() -> Self {
        sw_tally {
            struct_size: size_of::<sw_tally>() as u32,
            most: 0,
            grid: 0,
            examined: 0,
            fitting: 0,
            by_bound: 0,
            excluded: [0; SW_MAX_CONSTRAINTS],
        }
    }

    pub(crate) fn of(t: &Tally) -> Self {
        let mut c = sw_tally {
            most: t.most().map_or(0, |(constraint, _)| constraint_no(constraint)),
            grid: t.grid,
            examined: t.examined,
            fitting: t.fitting,
            by_bound: t.by_bound,
            ..sw_tally::fresh()
        };
        for (constraint, count) in t.excluded() {
            if let Some(slot) = c.excluded.get_mut(constraint_no(constraint) as usize) {
                *slot = count;
            }
        }
        c
    }
}

/// Fills counts with 0.
#[unsafe(no_mangle)]
pub extern "C" fn sw_tally_init(tally: *mut sw_tally) {
    border::init(tally);
}

/// A measure in words (`SW_MEASURE_*`), as in `lower efficiency`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_measure_what(measure: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let measure = MEASURES.get(measure as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(measure.what())?))
    })
}

/// A constraint in words, as it stands after "excluded by". There are those from 0 to 6, and those of rules.
#[unsafe(no_mangle)]
pub extern "C" fn sw_constraint_what(constraint: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let rule = constraint.checked_sub(SW_CONSTRAINT_RULE).and_then(|n| SUBJECTS.get(n as usize));
        let other = CONSTRAINTS.get(constraint as usize).copied();
        let found = rule.map(|subject| Constraint::Rule(*subject)).or(other);
        let found = found.ok_or(Failure::border(SW_BAD_CHOICE, 1))?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(found.what())?))
    })
}
