//! Search: the best joints of a grid, and the front of efficiency against mass.

use seamwright::error::ErrorKind;
use seamwright::joint::Form;
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Pressure};
use seamwright::rating::Shell;
use seamwright::search::{Candidate, Objective, SearchBrief, front};
use seamwright::shop::Order;

use crate::border::{self, List, Out, Slot};
use crate::candidate::{sw_candidate, sw_front_slot, sw_ranked, sw_tally};
use crate::form::sw_form;
use crate::joint::{length, sw_materials};
use crate::rules::sw_rules;
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
const _: () = assert!(SW_MAX_FORMS >= seamwright::search::FORM_COUNT, "all named forms fit");

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
    /// Greatest pitch of the outer row, mm. Without it a form that the book's table of greatest pitches does not reach
    /// is left out.
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

/// Fills a search with its defaults: the highest efficiency, everything open.
#[unsafe(no_mangle)]
pub extern "C" fn sw_search_init(search: *mut sw_search) {
    border::init(search);
}

/// The best joint of the grid, and behind it the best of the next best forms, into an array of the caller's
/// (`SW_MAX_BEST` is always enough). Where nothing fits, the count is 0 with `SW_OK`, and `tally` says which constraint
/// excluded most. `tally` may be NULL. NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_search_best(
    search: *const sw_search,
    rules: *const sw_rules,
    best: *mut sw_ranked,
    capacity: usize,
    count: *mut usize,
    tally: *mut sw_tally,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(search, 1)?;
        // The book where it stands, the grid and the outcome where they were made: each is a thousand bytes or two.
        border::with_rules(rules, 2, &mut |rules| {
            let list = List::new(best, capacity, count, 3)?;
            let tally = Out::wanted(tally, 6)?;
            let grid = c.grid(1);
            let grid = grid.as_ref().map_err(|failure| *failure)?;
            let outcome = seamwright::search::search(&c.brief(grid), rules);
            let outcome = outcome.as_ref().map_err(|error| Failure::from(*error))?;
            let found = outcome.found().map_or(&[][..], |found| found.best.as_slice());
            let list = list.room(found.len())?;
            if let Some(out) = tally {
                out.put(sw_tally::of(outcome.tally()));
            }
            list.fill(found.iter().map(sw_ranked::of));
            Ok(())
        })
    })
}

/// The front of efficiency against mass into an array of the caller's: every joint of the grid that no other one
/// betters in one without being worse in the other, lightest first. Needs `order`; the objective is not used. `slots`
/// is memory for `capacity` of them, apart from `candidates`, and holds nothing afterwards. Where they do not do:
/// `SW_NO_SPACE`, and `*count` is a number that is at least needed. `tally` may be NULL.
#[unsafe(no_mangle)]
pub extern "C" fn sw_search_front(
    search: *const sw_search,
    rules: *const sw_rules,
    slots: *mut sw_front_slot,
    candidates: *mut sw_candidate,
    capacity: usize,
    count: *mut usize,
    tally: *mut sw_tally,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(search, 1)?;
        border::with_rules(rules, 2, &mut |rules| {
            let memory = border::scratch::<Candidate>(slots, capacity, 3)?;
            let list = List::new(candidates, capacity, count, 4)?;
            let tally = Out::wanted(tally, 7)?;
            let grid = c.grid(1);
            let grid = grid.as_ref().map_err(|failure| *failure)?;
            let (found, counts) = match front(&c.brief(grid), rules, memory) {
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

/// A named form by its number, from 0: laps, single straps, double straps, unequal straps, with alternate rivets
/// omitted as well, each in zig-zag and in chain rows.
#[unsafe(no_mangle)]
pub extern "C" fn sw_form_named(number: u32, form: *mut sw_form, error: *mut sw_error) -> u32 {
    answer(error, || {
        let out = Slot::needed(form, 2)?;
        let all = seamwright::search::all_forms();
        out.put(sw_form::of(all.get(number as usize).ok_or(Failure::border(SW_BAD_CHOICE, 1))?));
        Ok(())
    })
}
