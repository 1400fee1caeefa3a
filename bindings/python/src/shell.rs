//! Shells: what a seam of one allows, girth seams, the least plate, the table of a boiler.

use pyo3::prelude::*;
use seamwright::check;
use seamwright::check::Findings;
use seamwright::quantities::{Length, Pressure};
use seamwright::rating::{
    Allowed, Assumption, Assumptions, Boiler, Seam, Service, Shell, girth_pressure_with, joint_pressure_with,
    least_plate as core_least_plate, pressure_with, test_pressure_with,
};
use seamwright::step::Plain;
use seamwright::vessel::{Girth, Longitudinal, girth_check as core_girth_check};

use crate::book::Book;
use crate::check::{AnalysisOut, FindingOut, analysis_out, finding_out};
use crate::error::{clause_text, entry_key, wrong_choice};
use crate::joint::{Form, Joint, Materials};
use crate::words;

/// Circumstances; `None` where nothing is stated.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct ServiceIn {
    existing: bool,
    second_hand: Option<bool>,
    past_age_limit: Option<bool>,
    tested: bool,
    tubular: Option<bool>,
    lap_length: Option<f64>,
    lap_in_fire: Option<bool>,
    weight_on_seam: Option<bool>,
    riveting: Option<String>,
    holes_made: Option<String>,
    stripped: bool,
}

impl ServiceIn {
    /// The core's record: what is not stated is open in service, and usual in a new shell.
    pub fn service(&self) -> Service {
        let usual = if self.existing { Service::in_service() } else { Service::new_shell() };
        Service {
            existing: self.existing,
            second_hand: self.second_hand.or(usual.second_hand),
            past_age_limit: self.past_age_limit.or(usual.past_age_limit),
            tested: self.tested,
            tubular: self.tubular.or(usual.tubular),
            lap_length: self.lap_length.map(Length::mm),
            lap_in_fire: self.lap_in_fire.or(usual.lap_in_fire),
            weight_on_seam: self.weight_on_seam.or(usual.weight_on_seam),
            riveting: self.riveting.as_deref().and_then(words::riveting::read).or(usual.riveting),
            holes: self.holes_made.as_deref().and_then(words::holes_made::read).or(usual.holes),
            stripped: self.stripped,
        }
    }
}

/// A shell, lengths in mm.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct ShellIn {
    inside: f64,
    footing: String,
    corrosion: Option<f64>,
    safety_factor: Option<f64>,
    service: ServiceIn,
}

impl ShellIn {
    /// The core's shell.
    pub fn shell(&self, py: Python<'_>) -> PyResult<Shell> {
        let footing = words::footing::read(&self.footing).ok_or_else(|| wrong_choice(py, "footing", &self.footing))?;
        let mut shell = Shell::new(Length::mm(self.inside), footing).service(self.service.service());
        if let Some(allowance) = self.corrosion {
            shell = shell.corrosion(Length::mm(allowance));
        }
        if let Some(factor) = self.safety_factor {
            shell = shell.safety(factor);
        }
        Ok(shell)
    }
}

/// What a result rests on.
#[derive(IntoPyObject)]
pub struct AssumptionOut {
    about: &'static str,
    row: u8,
    value: f64,
    unit: &'static str,
    circumstance: bool,
    basis: &'static str,
    entry: String,
    clause: String,
}

fn assumption_out(a: &Assumption, book: &Book) -> AssumptionOut {
    AssumptionOut {
        about: a.about.what(),
        row: a.row,
        value: a.value,
        unit: a.about.unit().symbol(),
        circumstance: a.about.is_circumstance(),
        basis: words::basis::word(a.basis),
        entry: entry_key(a.entry),
        clause: book.view(|b| clause_text(Some(b), a.entry)),
    }
}

/// All that a result rests on.
pub fn assumptions_out(list: &Assumptions, book: &Book) -> Vec<AssumptionOut> {
    list.iter().map(|a| assumption_out(a, book)).collect()
}

/// Findings for Python.
pub fn findings_out(list: &Findings, book: &Book) -> Vec<FindingOut> {
    book.view(|b| list.iter().map(|f| finding_out(f, b)).collect())
}

/// The pressure that a seam allows, MPa; the loss of thickness in mm.
#[derive(IntoPyObject)]
pub struct AllowedOut {
    pressure: f64,
    efficiency: f64,
    safety_factor: f64,
    factor_basis: &'static str,
    entry: String,
    clause: String,
    allowance: f64,
    outside: bool,
    test: Option<f64>,
    assumptions: Vec<AssumptionOut>,
}

/// An allowed pressure for Python.
pub fn allowed_out(a: &Allowed, notes: &Assumptions, book: &Book) -> AllowedOut {
    AllowedOut {
        pressure: a.pressure,
        efficiency: a.efficiency,
        safety_factor: a.factor.value,
        factor_basis: words::factor_basis::word(a.factor.basis),
        entry: entry_key(a.factor.entry),
        clause: book.view(|b| clause_text(Some(b), a.factor.entry)),
        allowance: a.allowance,
        outside: a.outside,
        test: test_pressure_with(Plain, book.rules(), a.pressure),
        assumptions: assumptions_out(notes, book),
    }
}

/// The pressure that a joint along a shell allows.
#[pyfunction]
pub fn joint_pressure(
    py: Python<'_>,
    joint: &Joint,
    materials: &Materials,
    shell: ShellIn,
    book: &Book,
) -> PyResult<AllowedOut> {
    let shell = shell.shell(py)?;
    let mut notes = Assumptions::new();
    let (allowed, _) = along(py, joint, materials, &shell, book, &mut notes)?;
    Ok(allowed_out(&allowed, &notes, book))
}

fn along(
    py: Python<'_>,
    joint: &Joint,
    materials: &Materials,
    shell: &Shell,
    book: &Book,
    notes: &mut Assumptions,
) -> PyResult<(Allowed, f64)> {
    let rules = book.rules();
    let found = check::check(&joint.0, &materials.0, rules).map_err(|e| book.raise(py, &e))?;
    let allowed = joint_pressure_with(Plain, &joint.0, &materials.0, &found, shell, rules, notes)
        .map_err(|e| book.raise(py, &e))?;
    Ok((allowed, found.credited))
}

/// The pressure that a seam of a stated efficiency allows, along the shell or round it.
#[pyfunction]
#[expect(clippy::too_many_arguments, reason = "called by keyword from one place")]
pub fn seam_pressure(
    py: Python<'_>,
    form: &Form,
    plate: f64,
    tension: f64,
    efficiency: f64,
    shell: ShellIn,
    girth: bool,
    book: &Book,
) -> PyResult<AllowedOut> {
    let shell = shell.shell(py)?;
    let mut notes = Assumptions::new();
    let seam = Seam { form: &form.0, plate, tension, efficiency };
    let found = if girth {
        girth_pressure_with(Plain, book.rules(), &shell, &seam, &mut notes)
    } else {
        pressure_with(Plain, book.rules(), &shell, &seam, &mut notes)
    };
    let found = found.map_err(|e| book.raise(py, &e))?;
    Ok(allowed_out(&found, &notes, book))
}

/// A girth seam: pressure in MPa.
#[derive(IntoPyObject)]
pub struct GirthOut {
    joint: Joint,
    analysis: AnalysisOut,
    pressure: f64,
    needed: f64,
    entry: String,
    clause: String,
    strips: u32,
    rivets: u32,
    end_rivets: f64,
    findings: Vec<FindingOut>,
}

/// A girth seam for Python.
pub fn girth_out(g: &Girth, book: &Book) -> GirthOut {
    GirthOut {
        joint: Joint(g.joint),
        analysis: analysis_out(&g.analysis, &g.joint, book),
        pressure: g.pressure,
        needed: g.needed,
        entry: entry_key(g.entry),
        clause: book.view(|b| clause_text(Some(b), g.entry)),
        strips: g.strips,
        rivets: g.rivets,
        end_rivets: g.end_rivets,
        findings: findings_out(&g.findings, book),
    }
}

/// Checks a girth seam beside the seam along the shell.
#[pyfunction]
#[expect(clippy::too_many_arguments, reason = "called by keyword from one place")]
pub fn girth_check(
    py: Python<'_>,
    seam: &Joint,
    materials: &Materials,
    girth: &Joint,
    place: &str,
    pressure: f64,
    shell: ShellIn,
    book: &Book,
) -> PyResult<GirthOut> {
    let shell = shell.shell(py)?;
    let place = words::girth_place::read(place).ok_or_else(|| wrong_choice(py, "place", place))?;
    let (allowed, credited) = along(py, seam, materials, &shell, book, &mut Assumptions::new())?;
    let along = Longitudinal { joint: &seam.0, materials: &materials.0, credited, allowed };
    let found = core_girth_check(book.rules(), &shell, &along, &girth.0, place, Pressure::mpa(pressure));
    Ok(girth_out(&found.map_err(|e| book.raise(py, &e))?, book))
}

/// The least shell plate of a book for a diameter, mm, with its entry and clause.
#[pyfunction]
pub fn least_plate(inside: f64, book: &Book) -> Option<(f64, String, String)> {
    let (entry, plate) = core_least_plate(book.rules(), inside)?;
    Some((plate, entry_key(entry.no()), book.view(|b| clause_text(Some(b), entry.no()))))
}

/// The line of a boiler's table that governs, from 0, and the test pressure, MPa. Lines are part, name, pressure in MPa.
#[pyfunction]
pub fn boiler(
    py: Python<'_>,
    lines: Vec<(String, String, f64)>,
    book: Option<&Book>,
) -> PyResult<(Option<usize>, Option<f64>)> {
    let mut table = Boiler::new();
    for (part, name, pressure) in &lines {
        let part = words::boiler_part::read(part).ok_or_else(|| wrong_choice(py, "part", part))?;
        table.add(part, name, Pressure::mpa(*pressure)).map_err(|e| crate::error::raise(py, &e, None))?;
    }
    let governs = table.governing();
    let at = table.lines().iter().position(|line| governs.is_some_and(|g| core::ptr::eq(g, line)));
    Ok((at, book.and_then(|b| table.test_pressure(b.rules())).map(Pressure::to_mpa)))
}

/// The parts of a boiler, and whether this library computes them.
#[pyfunction]
pub fn boiler_parts() -> Vec<(&'static str, bool)> {
    words::boiler_part::ALL.iter().map(|part| (part.what(), part.computed_here())).collect()
}
