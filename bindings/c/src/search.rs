//! Search: the best joints of a grid, and the front of efficiency against mass.

use core::ffi::c_char;

use seamwright::check::SUBJECTS;
use seamwright::error::ErrorKind;
use seamwright::joint::Form;
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Pressure};
use seamwright::rating::Shell;
use seamwright::search::{
    Beside, Candidate, Constraint, Measure, Objective, Ranked, SearchBrief, Tally, front, search,
};
use seamwright::shop::Order;

use crate::border::{self, List, Out, Slot, Text};
use crate::form::sw_form;
use crate::joint::{length, sw_materials};
use crate::rules::{book_of, sw_rules};
use crate::shell::{sw_shell, switch};
use crate::shop::sw_order;
use crate::size::sw_brief;
use crate::status::{Failure, SW_BAD_CHOICE, SW_TOO_MANY, answer, sw_error};

/// The highest efficiency that may be credited.
pub const SW_OBJECTIVE_EFFICIENCY: u32 = 0;
/// The least mass that a metre of seam adds.
pub const SW_OBJECTIVE_MASS: u32 = 1;
/// The fewest rivets in a metre of seam.
pub const SW_OBJECTIVE_RIVETS: u32 = 2;
/// The thinnest plate.
pub const SW_OBJECTIVE_THICKNESS: u32 = 3;
/// Most forms that a search is given.
pub const SW_MAX_FORMS: usize = 64;
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
const _: () = assert!(SW_MAX_FORMS >= seamwright::search::FORM_COUNT, "all named forms fit");

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

/// What is searched for, over which candidates, under which constraints; what is 0 or NULL is open. Arrays and structs
/// behind pointers are the caller's and are not kept.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_search {
    /// Size of this struct, set by `sw_search_init`.
    pub struct_size: u32,
    /// `SW_OBJECTIVE_*`.
    pub objective: u32,
    /// Most rows on one side; 0: any.
    pub rows_most: u32,
    /// 1: joints of open findings as well, those that break a rule of the book or have no room for their heads.
    pub any_finding: u32,
    /// The stresses. Both plates of a lap are alike.
    pub materials: sw_materials,
    /// The plates to choose from, mm: one, or the stock.
    pub plates_mm: *const f64,
    /// How many plates.
    pub plate_count: usize,
    /// The forms to choose from; of equals the first wins. NULL: all named forms.
    pub forms: *const sw_form,
    /// How many forms, at most `SW_MAX_FORMS`.
    pub form_count: usize,
    /// The holes to choose from, mm. NULL: the book's series.
    pub holes_mm: *const f64,
    /// How many holes.
    pub hole_count: usize,
    /// The shell that has to carry `pressure_mpa`; NULL: no pressure is asked for.
    pub shell: *const sw_shell,
    /// Rivets, their lengths and the density by which a metre of seam is weighed; its run is not used. NULL: no mass is
    /// known, and none decides between equals.
    pub order: *const sw_order,
    /// Least cold rivet, mm.
    pub rivet_least_mm: f64,
    /// Greatest cold rivet, mm.
    pub rivet_most_mm: f64,
    /// Greatest pitch of the outer row, mm. Without it a form that the book's table of greatest pitches does not reach is
    /// left out.
    pub pitch_most_mm: f64,
    /// Least efficiency credited, as a fraction.
    pub efficiency_least: f64,
    /// Working pressure to be carried, MPa; counts only where a shell is given.
    pub pressure_mpa: f64,
}

/// The same in the library's terms, as far as it does not borrow.
struct Grid<'a> {
    forms: Option<([Form; SW_MAX_FORMS], usize)>,
    plates: &'a [Length],
    holes: Option<&'a [Length]>,
    shell: Option<Shell>,
    order: Option<Order>,
    materials: Materials,
    objective: Objective,
}

impl sw_search {
    pub(crate) fn fresh() -> Self {
        sw_search {
            struct_size: size_of::<sw_search>() as u32,
            objective: SW_OBJECTIVE_EFFICIENCY,
            rows_most: 0,
            any_finding: 0,
            materials: sw_materials::none(),
            plates_mm: core::ptr::null(),
            plate_count: 0,
            forms: core::ptr::null(),
            form_count: 0,
            holes_mm: core::ptr::null(),
            hole_count: 0,
            shell: core::ptr::null(),
            order: core::ptr::null(),
            rivet_least_mm: 0.0,
            rivet_most_mm: 0.0,
            pitch_most_mm: 0.0,
            efficiency_least: 0.0,
            pressure_mpa: 0.0,
        }
    }

    fn grid(&self, argument: u32) -> Result<Grid<'_>, Failure> {
        let objective = match self.objective {
            SW_OBJECTIVE_EFFICIENCY => Objective::Efficiency,
            SW_OBJECTIVE_MASS => Objective::Mass,
            SW_OBJECTIVE_RIVETS => Objective::Rivets,
            SW_OBJECTIVE_THICKNESS => Objective::Thickness,
            _ => return Err(Failure::border(SW_BAD_CHOICE, argument)),
        };
        let mut forms = None;
        if !self.forms.is_null() || self.form_count != 0 {
            let given = border::array(self.forms, self.form_count, argument)?;
            if given.len() > SW_MAX_FORMS {
                return Err(Failure::border(SW_TOO_MANY, argument));
            }
            let mut made = [Form::lap(1)?; SW_MAX_FORMS];
            for (slot, form) in made.iter_mut().zip(given) {
                *slot = form.form(argument)?;
            }
            forms = Some((made, given.len()));
        }
        let list = !self.holes_mm.is_null() || self.hole_count != 0;
        let holes = if list { Some(border::lengths(self.holes_mm, self.hole_count, argument)?) } else { None };
        let shell = if self.shell.is_null() { None } else { Some(sw_shell::at(self.shell, argument)?) };
        let order =
            if self.order.is_null() { None } else { Some(border::read(self.order, argument)?.order(argument)?) };
        let plates = border::lengths(self.plates_mm, self.plate_count, argument)?;
        switch(self.any_finding, argument)?;
        Ok(Grid { forms, plates, holes, shell, order, materials: self.materials.materials(), objective })
    }

    fn brief<'g>(&self, grid: &'g Grid<'_>) -> SearchBrief<'g> {
        let mut brief = SearchBrief::new(grid.objective, grid.plates, grid.materials);
        if let Some((forms, count)) = &grid.forms {
            brief = brief.forms(forms.get(..*count).unwrap_or(&[]));
        }
        if let Some(holes) = grid.holes {
            brief = brief.holes(holes);
        }
        if self.rows_most != 0 {
            // What does not fit a byte is out of range in any case.
            brief = brief.rows_most(u8::try_from(self.rows_most).unwrap_or(u8::MAX));
        }
        if let Some(rivet) = length(self.rivet_least_mm) {
            brief = brief.rivet_least(rivet);
        }
        if let Some(rivet) = length(self.rivet_most_mm) {
            brief = brief.rivet_most(rivet);
        }
        if let Some(pitch) = length(self.pitch_most_mm) {
            brief = brief.pitch_most(pitch);
        }
        if self.efficiency_least != 0.0 {
            brief = brief.efficiency(self.efficiency_least);
        }
        if let Some(shell) = grid.shell {
            brief = brief.pressure(Pressure::mpa(self.pressure_mpa), shell);
        }
        if let Some(order) = grid.order {
            brief = brief.mass(order);
        }
        if self.any_finding != 0 {
            brief = brief.any_finding();
        }
        brief
    }
}

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
    fn of(c: &Candidate) -> Self {
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
    fn of(r: &Ranked) -> Self {
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

/// How many candidates there were, and what became of them: `grid` is `fitting`, `by_bound` and all `excluded` together.
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

    fn of(t: &Tally) -> Self {
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

/// Fills a search with its defaults: the highest efficiency, everything open.
#[unsafe(no_mangle)]
pub extern "C" fn sw_search_init(search: *mut sw_search) {
    border::init(search);
}

/// Fills counts with 0.
#[unsafe(no_mangle)]
pub extern "C" fn sw_tally_init(tally: *mut sw_tally) {
    border::init(tally);
}

/// The best joint of the grid, and behind it the best of the next best forms, into an array of the caller's
/// (`SW_MAX_BEST` is always enough). Where nothing fits, the count is 0 with `SW_OK`, and `tally` says which constraint
/// excluded most. `tally` may be NULL. NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_search_best(
    brief: *const sw_search,
    rules: *const sw_rules,
    best: *mut sw_ranked,
    capacity: usize,
    count: *mut usize,
    tally: *mut sw_tally,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(brief, 1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let list = List::new(best, capacity, count, 3)?;
        let tally = Out::wanted(tally, 6)?;
        let grid = c.grid(1)?;
        let outcome = search(&c.brief(&grid), &book.rules)?;
        let found = outcome.found().map_or(&[][..], |found| found.best.as_slice());
        let list = list.room(found.len())?;
        if let Some(out) = tally {
            out.put(sw_tally::of(outcome.tally()));
        }
        list.fill(found.iter().map(sw_ranked::of));
        Ok(())
    })
}

/// The front of efficiency against mass into an array of the caller's: every joint of the grid that no other one betters
/// in one without being worse in the other, lightest first. Needs `order`; the objective is not used. `slots` is memory
/// for `capacity` of them, apart from `candidates`, and holds nothing afterwards. Where they do not do: `SW_NO_SPACE`,
/// and `*count` is a number that is at least needed. `tally` may be NULL.
#[unsafe(no_mangle)]
pub extern "C" fn sw_search_front(
    brief: *const sw_search,
    rules: *const sw_rules,
    slots: *mut sw_front_slot,
    candidates: *mut sw_candidate,
    capacity: usize,
    count: *mut usize,
    tally: *mut sw_tally,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(brief, 1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let memory = border::scratch::<Candidate>(slots, capacity, 3)?;
        let list = List::new(candidates, capacity, count, 4)?;
        let tally = Out::wanted(tally, 7)?;
        let grid = c.grid(1)?;
        let (found, counts) = match front(&c.brief(&grid), &book.rules, memory) {
            Ok(found) => found,
            Err(e) if e.kind == ErrorKind::NoSpace => return Err(list.lacking(e.limit as usize)),
            Err(e) => return Err(e.into()),
        };
        let list = list.room(found)?;
        if let Some(out) = tally {
            out.put(sw_tally::of(&counts));
        }
        list.fill(memory.iter().flatten().map(sw_candidate::of));
        Ok(())
    })
}

/// The brief that sizes a candidate once more: to `sw_joint_size` and `sw_working_size`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_search_brief(
    search: *const sw_search,
    candidate: *const sw_candidate,
    brief: *mut sw_brief,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (c, candidate) = (border::read(search, 1)?, border::record(candidate, 2)?);
        let out = Out::needed(brief, 3)?;
        let form = candidate.form.form(2)?;
        out.put(sw_brief {
            form: candidate.form,
            materials: c.materials,
            plate_mm: candidate.plate_mm,
            hole_mm: candidate.hole_mm,
            rivet_mm: candidate.rivet_mm,
            pitch_mm: candidate.pitch_mm * f64::from(form.outer_rivets()),
            ..sw_brief::fresh()
        });
        Ok(())
    })
}

/// The number of named forms, over which a search goes where none are given.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_count() -> u32 {
    seamwright::search::FORM_COUNT as u32
}

/// A named form by its number, from 0: laps, single straps, double straps, unequal straps, with alternate rivets omitted
/// as well, each in zig-zag and in chain rows.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_named(number: u32, form: *mut sw_form, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(form, 2)?;
        let all = seamwright::search::all_forms();
        out.put(sw_form::of(all.get(number as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))?));
        Ok(())
    })
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
