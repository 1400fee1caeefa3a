//! Rating an existing joint of a shell.

use pyo3::prelude::*;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{Existing, Governs, KnownLength, Rating, rate as core_rate};
use seamwright::working::write_rate;

use crate::book::Book;
use crate::check::{AnalysisOut, FindingOut, analysis_out};
use crate::error::{entry_key, raise};
use crate::joint::{Form, Joint, Straps, straps};
use crate::shell::{AssumptionOut, ServiceIn, assumptions_out, findings_out};
use crate::words;
use crate::working::{Wishes, style, written};

/// A length in mm and whether it was measured.
type Found = (f64, bool);

/// A joint as found: lengths in mm, stresses and pressures in MPa; `None` where nothing is stated.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct ExistingIn {
    pitch: Found,
    plate: Found,
    inside: f64,
    other_plate: Option<Found>,
    wide_strap: Option<Found>,
    narrow_strap: Option<Found>,
    hole: Option<Found>,
    shell_plate: Option<Found>,
    plate_when_new: Option<f64>,
    back_pitches: Vec<Option<f64>>,
    margin: Option<f64>,
    plates: Option<String>,
    rivets: Option<String>,
    tension: Option<f64>,
    shear: Option<f64>,
    bearing: Option<f64>,
    permissible: bool,
    safety_factor: Option<f64>,
    corrosion: Option<f64>,
    present: Option<f64>,
    wastage_rate: Option<f64>,
    earlier: Option<(f64, f64)>,
    service: ServiceIn,
}

/// A rating: pressures in MPa.
#[derive(IntoPyObject)]
pub struct RatingOut {
    joint: Joint,
    tension: f64,
    shear: f64,
    bearing: Option<f64>,
    analysis: AnalysisOut,
    allowed: f64,
    seam: f64,
    plate: Option<f64>,
    governs: String,
    margin: Option<f64>,
    test: Option<f64>,
    years: Option<f64>,
    assumptions: Vec<AssumptionOut>,
    findings: Vec<FindingOut>,
}

fn figure((mm, measured): Found) -> KnownLength {
    if measured { KnownLength::measured(Length::mm(mm)) } else { KnownLength::given(Length::mm(mm)) }
}

/// The core's record of a joint as found.
pub fn existing(py: Python<'_>, form: &Form, given: &ExistingIn) -> PyResult<Existing> {
    let mut e = Existing::new(form.0, figure(given.pitch), figure(given.plate), Length::mm(given.inside));
    e = e.service(given.service.service());
    // The core's own refusal of straps that do not go together.
    let bare = |found: Option<Found>| found.map(|(mm, _)| mm);
    let stated = straps(None, bare(given.wide_strap), bare(given.narrow_strap)).map_err(|err| raise(py, &err, None))?;
    if let (Some(wide), Straps::One(_) | Straps::Two(..)) = (given.wide_strap, stated) {
        e = e.straps(figure(wide), given.narrow_strap.map(figure));
    }
    if let Some(other) = given.other_plate {
        e = e.other_plate(figure(other));
    }
    if let Some(hole) = given.hole {
        e = e.hole(figure(hole));
    }
    if let Some(plate) = given.shell_plate {
        e = e.shell_plate(figure(plate));
    }
    if let Some(plate) = given.plate_when_new {
        e = e.nominal(Length::mm(plate));
    }
    for (row, gap) in (1..).zip(&given.back_pitches) {
        if let Some(gap) = gap {
            e = e.back_pitch(row, Length::mm(*gap));
        }
    }
    if let Some(margin) = given.margin {
        e = e.margin(Length::mm(margin));
    }
    let metal = |word: &Option<String>| word.as_deref().and_then(words::metal::read);
    if let Some(plates) = metal(&given.plates) {
        e = e.metals(plates, metal(&given.rivets).unwrap_or(plates));
    }
    if let Some(s) = given.tension {
        e = e.tension(Stress::mpa(s));
    }
    if let Some(s) = given.shear {
        e = e.shear(Stress::mpa(s));
    }
    if let Some(s) = given.bearing {
        e = e.bearing(Stress::mpa(s));
    }
    if given.permissible {
        e = e.permissible();
    }
    if let Some(factor) = given.safety_factor {
        e = e.safety(factor);
    }
    if let Some(allowance) = given.corrosion {
        e = e.corrosion(Length::mm(allowance));
    }
    if let Some(p) = given.present {
        e = e.present(Pressure::mpa(p));
    }
    if let Some(rate) = given.wastage_rate {
        e = e.wastage_rate(Length::mm(rate));
    }
    if let Some((plate, years)) = given.earlier {
        e = e.earlier(Length::mm(plate), years);
    }
    Ok(e)
}

fn rating_out(r: &Rating, book: &Book) -> RatingOut {
    let stress = &r.materials.plate;
    RatingOut {
        joint: Joint(r.joint),
        tension: stress.tension.to_mpa(),
        shear: r.materials.rivet_shear.to_mpa(),
        bearing: stress.bearing.map(|b| b.to_mpa()),
        analysis: analysis_out(&r.analysis, &r.joint, book),
        allowed: r.allowed,
        seam: r.seam.pressure,
        plate: r.plate.map(|p| p.pressure),
        governs: match r.governs {
            Governs::Seam => "seam".to_owned(),
            Governs::Plate => "solid plate".to_owned(),
            Governs::Rule(entry) => entry_key(entry),
        },
        margin: r.margin,
        test: r.test,
        years: r.life.map(|life| life.years),
        assumptions: assumptions_out(&r.assumptions, book),
        findings: findings_out(&r.findings, book),
    }
}

/// Rates a joint as found.
#[pyfunction]
pub fn rate(py: Python<'_>, form: &Form, given: ExistingIn, book: &Book) -> PyResult<RatingOut> {
    let existing = existing(py, form, &given)?;
    let rating = core_rate(&existing, book.rules()).map_err(|e| book.raise(py, &e))?;
    Ok(rating_out(&rating, book))
}

/// The working of a rating.
#[pyfunction]
pub fn working_of_rating(
    py: Python<'_>,
    form: &Form,
    given: ExistingIn,
    book: &Book,
    wishes: Wishes,
) -> PyResult<String> {
    let (style, existing) = (style(py, &wishes)?, existing(py, form, &given)?);
    book.view(|view| written(py, book, |out| write_rate(out, style, &existing, view)))
}
