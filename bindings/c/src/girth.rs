//! Girth seams.

use seamwright::check::check;
use seamwright::quantities::Pressure;
use seamwright::rating::{Assumptions, joint_pressure_with};
use seamwright::step::Plain;
use seamwright::vessel::{Girth, GirthPlace, Longitudinal, girth_check};

use crate::border::{self, List, Out};
use crate::check::sw_finding;
use crate::joint::{sw_joint, sw_materials};
use crate::modes::Asked;
use crate::rules::sw_rules;
use crate::shell::sw_shell;
use crate::status::{Failure, SW_BAD_CHOICE, SW_NO_ENTRY, answer, sw_error};

/// A girth seam between two rings.
pub const SW_GIRTH_MIDDLE: u32 = 0;
/// A girth seam at an end plate.
pub const SW_GIRTH_END: u32 = 1;
/// A girth seam at an end plate, or between rings, of a shell whose heads tubes or through stays carry.
pub const SW_GIRTH_STAYED: u32 = 2;

pub(crate) fn place_of(number: u32, argument: u32) -> Result<GirthPlace, Failure> {
    match number {
        SW_GIRTH_MIDDLE => Ok(GirthPlace::Middle),
        SW_GIRTH_END => Ok(GirthPlace::End),
        SW_GIRTH_STAYED => Ok(GirthPlace::Stayed),
        _ => Err(Failure::border(SW_BAD_CHOICE, argument)),
    }
}

/// A girth seam against what is asked of it.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_girth {
    /// Size of this struct, set by `sw_girth_init`.
    pub struct_size: u32,
    /// The entry that asks for the efficiency needed; `SW_NO_ENTRY`: the load does.
    pub entry: u32,
    /// Strips in the girth.
    pub strips: u32,
    /// Rivets in the girth.
    pub rivets: u32,
    /// Findings on the girth seam.
    pub findings: u32,
    /// Rules on it that are not met.
    pub open: u32,
    /// The working pressure that it allows, MPa.
    pub pressure_mpa: f64,
    /// Its efficiency credited.
    pub efficiency: f64,
    /// The efficiency that it needs: by the load on the end and by the book, the greater.
    pub needed: f64,
    /// Rivets that the load on the end needs, by shear alone; not a whole number.
    pub end_rivets: f64,
}

impl sw_girth {
    pub(crate) fn fresh() -> Self {
        let nothing = f64::NAN;
        sw_girth {
            struct_size: size_of::<sw_girth>() as u32,
            entry: SW_NO_ENTRY,
            strips: 0,
            rivets: 0,
            findings: 0,
            open: 0,
            pressure_mpa: nothing,
            efficiency: nothing,
            needed: nothing,
            end_rivets: nothing,
        }
    }

    pub(crate) fn of(g: &Girth) -> Self {
        sw_girth {
            entry: u32::from(g.entry.0),
            strips: g.strips,
            rivets: g.rivets,
            findings: g.findings.len() as u32,
            open: g.findings.open() as u32,
            pressure_mpa: g.pressure,
            efficiency: g.analysis.credited,
            needed: g.needed,
            end_rivets: g.end_rivets,
            ..sw_girth::fresh()
        }
    }
}

/// Fills a girth seam with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_girth_init(girth: *mut sw_girth) {
    border::init(girth);
}

/// Checks a girth seam of a shell: the load on the end, the book's least efficiency and rows, and whether its pitch
/// goes into the girth. `along` is the seam along the shell, `materials` the stresses of both, `place` one of
/// `SW_GIRTH_*`, `pressure_mpa` the working pressure that is to be carried. `findings` as in `sw_joint_check`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_girth_check(
    along: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    shell: *const sw_shell,
    girth_joint: *const sw_joint,
    place: u32,
    pressure_mpa: f64,
    girth: *mut sw_girth,
    findings: *mut sw_finding,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let asked = Asked::new(along, materials, rules)?;
        let shell = sw_shell::at(shell, 4)?;
        let joint = border::read(girth_joint, 5)?.joint(5)?;
        let at = place_of(place, 6)?;
        let out = Out::needed(girth, 8)?;
        let list = List::new(findings, capacity, count, 9)?;
        let (along, materials, rules) = (&asked.joint, &asked.materials, &asked.rules);
        let analysis = check(along, materials, rules)?;
        let notes = &mut Assumptions::new();
        let allowed = joint_pressure_with(Plain, along, materials, &analysis, &shell, rules, notes)?;
        let along = Longitudinal { joint: along, materials, credited: analysis.credited, allowed };
        let found = girth_check(rules, &shell, &along, &joint, at, Pressure::mpa(pressure_mpa))?;
        let list = list.room(found.findings.len())?;
        out.put(sw_girth::of(&found));
        list.fill(found.findings.iter().map(sw_finding::of));
        Ok(())
    })
}
