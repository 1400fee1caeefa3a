//! Vessels: a shell plate and its seams from a working pressure.

use pyo3::prelude::*;
use seamwright::quantities::{Length, Pressure};
use seamwright::vessel::{GirthBrief, NothingFits, Outcome, PlateStock, Vessel, VesselBrief, vessel as core_vessel};
use seamwright::working::write_vessel;

use crate::book::Book;
use crate::check::FindingOut;
use crate::error::wrong_choice;
use crate::joint::{Form, Materials};
use crate::shell::{
    AllowedOut, AssumptionOut, GirthOut, ShellIn, allowed_out, assumptions_out, findings_out, girth_out,
};
use crate::size::{DesignOut, design_out};
use crate::words;
use crate::working::{Wishes, style, written};

/// What a vessel is designed for: pressure in MPa, lengths in mm.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct VesselIn {
    pressure: f64,
    shell: ShellIn,
    plates: Vec<f64>,
    step: Option<(f64, f64, f64)>,
    hole: Option<f64>,
    rivet: Option<f64>,
    girth: Option<(Py<Form>, String)>,
}

/// A brief that owns its list of plates.
struct Owned {
    plates: Vec<Length>,
    given: VesselIn,
}

impl Owned {
    fn new(given: VesselIn) -> Self {
        Owned { plates: given.plates.iter().map(|mm| Length::mm(*mm)).collect(), given }
    }

    fn brief(&self, py: Python<'_>, form: &Form, materials: &Materials) -> PyResult<VesselBrief<'_>> {
        let given = &self.given;
        let stock = match given.step {
            Some((step, from, to)) => PlateStock::every(Length::mm(step), Length::mm(from), Length::mm(to)),
            None => PlateStock::list(&self.plates),
        };
        let pressure = Pressure::mpa(given.pressure);
        let mut brief = VesselBrief::new(form.0, pressure, given.shell.shell(py)?, materials.0, stock);
        if let Some(hole) = given.hole {
            brief = brief.hole(Length::mm(hole), given.rivet.map(Length::mm));
        }
        if let Some((form, place)) = &given.girth {
            let place = words::girth_place::read(place).ok_or_else(|| wrong_choice(py, "girth_place", place))?;
            brief = brief.girth(GirthBrief::new(form.get().0, place));
        }
        Ok(brief)
    }
}

/// A shell with its seams, lengths in mm.
#[derive(IntoPyObject)]
pub struct VesselOut {
    plate: f64,
    seam: DesignOut,
    allowed: AllowedOut,
    girth: Option<GirthOut>,
    no_girth: Option<String>,
    tried: u32,
    assumptions: Vec<AssumptionOut>,
    findings: Vec<FindingOut>,
}

/// Why no plate of the stock will do: counts, the plate that carries most in mm and what it carries in MPa.
#[derive(IntoPyObject)]
pub struct NothingOut {
    tried: u32,
    refused: u32,
    refusal: Option<String>,
    too_thin: u32,
    best: Option<(f64, f64)>,
}

fn vessel_out(v: &Vessel, book: &Book) -> VesselOut {
    VesselOut {
        plate: v.plate,
        seam: design_out(&v.seam, book),
        allowed: allowed_out(&v.allowed, &v.assumptions, book),
        girth: v.girth.as_ref().map(|g| girth_out(g, book)),
        no_girth: v.no_girth.as_ref().map(|e| book.said(e)),
        tried: v.tried,
        assumptions: assumptions_out(&v.assumptions, book),
        findings: findings_out(&v.findings, book),
    }
}

fn nothing_out(why: &NothingFits, book: &Book) -> NothingOut {
    NothingOut {
        tried: why.tried,
        refused: why.refused,
        refusal: why.refusal.as_ref().map(|e| book.said(e)),
        too_thin: why.too_thin,
        best: why.best,
    }
}

/// Designs a shell and its seams: the vessel, or why there is none.
#[pyfunction]
pub fn vessel(
    py: Python<'_>,
    form: &Form,
    materials: &Materials,
    given: VesselIn,
    book: &Book,
) -> PyResult<(Option<VesselOut>, Option<NothingOut>)> {
    let owned = Owned::new(given);
    let brief = owned.brief(py, form, materials)?;
    let outcome = py.detach(|| core_vessel(&brief, book.rules())).map_err(|e| book.raise(py, &e))?;
    Ok(match &outcome {
        Outcome::Found(v) => (Some(vessel_out(v, book)), None),
        Outcome::NothingFits(why) => (None, Some(nothing_out(why, book))),
    })
}

/// The working of a vessel.
#[pyfunction]
pub fn working_of_vessel(
    py: Python<'_>,
    form: &Form,
    materials: &Materials,
    given: VesselIn,
    book: &Book,
    wishes: Wishes,
) -> PyResult<String> {
    let (style, owned) = (style(py, &wishes)?, Owned::new(given));
    let brief = owned.brief(py, form, materials)?;
    book.view(|view| written(py, book, |out| write_vessel(out, style, &brief, view)))
}
