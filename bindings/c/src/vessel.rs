//! Vessels: the shell plate and its seams found together.

use core::ffi::c_char;

use seamwright::error::Error;
use seamwright::quantities::{Length, Pressure};
use seamwright::vessel::{GirthBrief, Outcome, PlateStock, Vessel, VesselBrief, vessel};
use seamwright::working::write_vessel;

use crate::assumption::{fill_assumptions, sw_assumption};
use crate::border::{self, List, Out};
use crate::check::sw_finding;
use crate::form::sw_form;
use crate::girth::{SW_GIRTH_MIDDLE, place_of, sw_girth};
use crate::joint::{length, sw_joint, sw_materials};
use crate::rules::{book_of, sw_rules};
use crate::shell::{sw_allowed, sw_shell, switch};
use crate::status::{Failure, SW_END, SW_OK, answer, sw_error};
use crate::working::{sw_style, written};

/// What a vessel is to be designed for. Arrays and structs behind pointers are the caller's and are not kept.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_vessel_brief {
    /// Size of this struct, set by `sw_vessel_brief_init`.
    pub struct_size: u32,
    /// 1: a girth seam is wanted as well.
    pub girth_wanted: u32,
    /// `SW_GIRTH_*`: where it lies.
    pub girth_place: u32,
    /// Not used.
    pub reserved: u32,
    /// Form of the seam along the shell.
    pub form: sw_form,
    /// Form of the girth seam; more rows are taken where those do not do.
    pub girth_form: sw_form,
    /// The stresses, on the footing of the shell.
    pub materials: sw_materials,
    /// The shell.
    pub shell: *const sw_shell,
    /// Plates of the stock, mm, rising. NULL: multiples of a step.
    pub plates_mm: *const f64,
    /// How many plates.
    pub plate_count: usize,
    /// Step of the stock, mm; counts where no plates are given, as the next two.
    pub stock_step_mm: f64,
    /// The thinnest plate of the stock, mm.
    pub stock_from_mm: f64,
    /// The thickest plate of the stock, mm.
    pub stock_to_mm: f64,
    /// Working pressure, MPa.
    pub pressure_mpa: f64,
    /// Hole of the seam along the shell, mm; 0: by the book.
    pub hole_mm: f64,
    /// Its cold rivet, mm; 0: by the book. Counts only where the hole is given.
    pub rivet_mm: f64,
}

impl sw_vessel_brief {
    pub(crate) fn fresh() -> Self {
        sw_vessel_brief {
            struct_size: size_of::<sw_vessel_brief>() as u32,
            girth_wanted: 0,
            girth_place: SW_GIRTH_MIDDLE,
            reserved: 0,
            form: sw_form::none(),
            girth_form: sw_form::none(),
            materials: sw_materials::none(),
            shell: core::ptr::null(),
            plates_mm: core::ptr::null(),
            plate_count: 0,
            stock_step_mm: 1.0,
            stock_from_mm: 0.0,
            stock_to_mm: 0.0,
            pressure_mpa: 0.0,
            hole_mm: 0.0,
            rivet_mm: 0.0,
        }
    }

    fn brief(&self, argument: u32) -> Result<VesselBrief<'_>, Failure> {
        let shell = sw_shell::at(self.shell, argument)?;
        let stock = if self.plates_mm.is_null() && self.plate_count == 0 {
            let [step, from, to] = [self.stock_step_mm, self.stock_from_mm, self.stock_to_mm].map(Length::mm);
            PlateStock::every(step, from, to)
        } else {
            PlateStock::list(border::lengths(self.plates_mm, self.plate_count, argument)?)
        };
        let (form, pressure) = (self.form.form(argument)?, Pressure::mpa(self.pressure_mpa));
        let mut brief = VesselBrief::new(form, pressure, shell, self.materials.materials(), stock);
        if let Some(hole) = length(self.hole_mm) {
            brief = brief.hole(hole, length(self.rivet_mm));
        }
        if switch(self.girth_wanted, argument)? {
            let form = self.girth_form.form(argument)?;
            brief = brief.girth(GirthBrief::new(form, place_of(self.girth_place, argument)?));
        }
        Ok(brief)
    }
}

/// A shell with its seams, or why no stock thickness will do.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_vessel {
    /// Size of this struct, set by `sw_vessel_init`.
    pub struct_size: u32,
    /// 1: a plate of the stock carries the pressure. 0: none does, and only what follows up to `best_mpa` counts.
    pub fits: u32,
    /// Thicknesses that were tried, the one taken included.
    pub tried: u32,
    /// Those of which no joint could be made; `why` says why the last of them.
    pub refused: u32,
    /// Those below the least plate of the book.
    pub too_thin: u32,
    /// 1: there is a girth seam.
    pub girth: u32,
    /// Findings on the shell (`sw_vessel_findings`); those on the joints are found by `sw_joint_check`.
    pub findings: u32,
    /// Rules on the shell that are not met.
    pub open: u32,
    /// Where nothing fits: the plate of the joint that carries most, mm; not a number: there is no joint.
    pub best_plate_mm: f64,
    /// Where nothing fits: the pressure that it allows, MPa.
    pub best_mpa: f64,
    /// Shell plate, a stock thickness, mm.
    pub plate_mm: f64,
    /// What the seam along the shell allows.
    pub allowed: sw_allowed,
}

impl sw_vessel {
    pub(crate) fn fresh() -> Self {
        let nothing = f64::NAN;
        sw_vessel {
            struct_size: size_of::<sw_vessel>() as u32,
            fits: 0,
            tried: 0,
            refused: 0,
            too_thin: 0,
            girth: 0,
            findings: 0,
            open: 0,
            best_plate_mm: nothing,
            best_mpa: nothing,
            plate_mm: nothing,
            allowed: sw_allowed::none(),
        }
    }

    fn of(outcome: &Outcome) -> Self {
        match outcome {
            Outcome::Found(v) => sw_vessel {
                fits: 1,
                tried: v.tried,
                girth: u32::from(v.girth.is_some()),
                findings: v.findings.len() as u32,
                open: v.findings.open() as u32,
                plate_mm: v.plate,
                allowed: sw_allowed::of(&v.allowed),
                ..sw_vessel::fresh()
            },
            Outcome::NothingFits(n) => sw_vessel {
                tried: n.tried,
                refused: n.refused,
                too_thin: n.too_thin,
                best_plate_mm: n.best.map_or(f64::NAN, |b| b.0),
                best_mpa: n.best.map_or(f64::NAN, |b| b.1),
                ..sw_vessel::fresh()
            },
        }
    }
}

/// Fills a brief with its defaults: plates of whole millimetres, no girth seam.
#[unsafe(no_mangle)]
pub extern "C" fn sw_vessel_brief_init(brief: *mut sw_vessel_brief) {
    border::init(brief);
}

/// Fills a vessel with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_vessel_init(vessel: *mut sw_vessel) {
    border::init(vessel);
}

fn designed(brief: *const sw_vessel_brief, rules: *const sw_rules) -> Result<Outcome, Failure> {
    let brief = border::read(brief, 1)?;
    let (book, _) = book_of(&border::read(rules, 2)?)?;
    Ok(vessel(&brief.brief(1)?, &book.rules)?)
}

/// The vessel of a brief, or `SW_END` where no plate fits.
fn vessel_of(brief: *const sw_vessel_brief, rules: *const sw_rules) -> Result<Vessel, Failure> {
    match designed(brief, rules)? {
        Outcome::Found(vessel) => Ok(vessel),
        Outcome::NothingFits(_) => Err(Failure::border(SW_END, 1)),
    }
}

/// Designs a shell and its seams: stock thicknesses upwards, for each the joint along the shell is sized and rated, the
/// first that carries the pressure is taken. That nothing fits is `SW_OK` with `fits` 0. `seam`, `girth_joint` and
/// `girth` may be NULL, and are written where there is such a joint. `why` may be NULL; it says why there is no girth
/// seam although one was asked for, or why a plate was refused where nothing fits, and has the status `SW_OK`
/// otherwise.
#[unsafe(no_mangle)]
pub extern "C" fn sw_vessel_design(
    brief: *const sw_vessel_brief,
    rules: *const sw_rules,
    found: *mut sw_vessel,
    seam: *mut sw_joint,
    girth_joint: *mut sw_joint,
    girth: *mut sw_girth,
    why: *mut sw_error,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let out = Out::needed(found, 3)?;
        let (seam_out, joint_out) = (Out::wanted(seam, 4)?, Out::wanted(girth_joint, 5)?);
        let (girth_out, why_out) = (Out::wanted(girth, 6)?, Out::wanted(why, 7)?);
        let outcome = designed(brief, rules)?;
        out.put(sw_vessel::of(&outcome));
        if let Some(out) = why_out {
            let refused: Option<Error> = match &outcome {
                Outcome::Found(v) => v.no_girth,
                Outcome::NothingFits(n) => n.refusal,
            };
            out.put(refused.map_or(sw_error { status: SW_OK, ..sw_error::fresh() }, |e| sw_error::of(&e.into())));
        }
        let Outcome::Found(v) = &outcome else { return Ok(()) };
        if let Some(out) = seam_out {
            out.put(sw_joint::of(&v.seam.joint));
        }
        if let Some(g) = &v.girth {
            if let Some(out) = joint_out {
                out.put(sw_joint::of(&g.joint));
            }
            if let Some(out) = girth_out {
                out.put(sw_girth::of(g));
            }
        }
        Ok(())
    })
}

/// The findings on the shell of a vessel, open ones first, then those on its girth seam, into an array of the caller's.
/// `SW_END` where no plate fits. NULL and 0 ask for the number; twice `SW_MAX_FINDINGS` is always enough.
#[unsafe(no_mangle)]
pub extern "C" fn sw_vessel_findings(
    brief: *const sw_vessel_brief,
    rules: *const sw_rules,
    findings: *mut sw_finding,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let list = List::new(findings, capacity, count, 3)?;
        let found = vessel_of(brief, rules)?;
        let all = || found.findings.iter().chain(found.girth.iter().flat_map(|g| g.findings.iter()));
        list.room(all().count())?.fill(all().map(sw_finding::of));
        Ok(())
    })
}

/// What a vessel rests on, into an array of the caller's. `SW_END` where no plate fits. NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_vessel_assumptions(
    brief: *const sw_vessel_brief,
    rules: *const sw_rules,
    assumptions: *mut sw_assumption,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let list = List::new(assumptions, capacity, count, 3)?;
        fill_assumptions(list, &vessel_of(brief, rules)?.assumptions, || {})
    })
}

/// The working of a vessel: the plate taken and its seams step by step; where nothing fits, why.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_vessel(
    brief: *const sw_vessel_brief,
    rules: *const sw_rules,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(brief, 1)?;
        let brief = c.brief(1)?;
        written((rules, 2), (style, 3), (buf, len, needed), |out, style, book| write_vessel(out, style, &brief, book))
    })
}
