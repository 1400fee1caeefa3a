//! Vessels: the shell plate and its seams found together.
//!
//! Stock thicknesses are tried upwards. For each the joint along the shell is sized and its pressure worked out with
//! the efficiency that it really has; the first that carries the working pressure is taken. No efficiency is guessed
//! and then kept, so the finished joint carries the pressure whatever was rounded on the way.

mod brief;
mod girth;

pub use brief::{GirthBrief, GirthPlace, PlateStock, VesselBrief};
pub use girth::{Girth, Longitudinal, girth_check, girth_check_with};

use crate::bounds::Field;
use crate::check::{Findings, Required, Subject};
use crate::error::{EntryNo, Error, ErrorKind};
use crate::math;
use crate::quantities::Length;
use crate::rating::{Allowed, Assumptions, joint_pressure_with, least_plate, shell_findings};
use crate::rules::{Entry, Rules};
use crate::sizing::{Brief, Design, size_with};
use crate::step::{Ctx, Name, Num, Plain, Quantity as Q, Section};

/// A shell with its seams.
#[derive(Clone, Debug)]
pub struct Vessel<N = f64> {
    /// Shell plate, a stock thickness, mm.
    pub plate: f64,
    /// The seam along the shell.
    pub seam: Design<N>,
    /// The pressure that it allows.
    pub allowed: Allowed<N>,
    /// The girth seam, where one was asked for and one does.
    pub girth: Option<Girth<N>>,
    /// Why there is no girth seam although one was asked for.
    pub no_girth: Option<Error>,
    /// Thicknesses that were tried, the one taken included.
    pub tried: u32,
    /// What all this rests on.
    pub assumptions: Assumptions,
    /// The book's rules on the shell, open ones first. Those on the joints are in their analyses.
    pub findings: Findings,
}

/// Why no stock thickness will do.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct NothingFits {
    /// Thicknesses that were tried.
    pub tried: u32,
    /// Those of which no joint could be made.
    pub refused: u32,
    /// Why the last of those was refused.
    pub refusal: Option<Error>,
    /// Those below the least plate of the book.
    pub too_thin: u32,
    /// The joint that carries most: its plate, mm, and the pressure that it allows, MPa.
    pub best: Option<(f64, f64)>,
}

/// What comes of a brief.
#[derive(Clone, Debug)]
#[expect(clippy::large_enum_variant, reason = "without allocation a vessel lies where it is")]
pub enum Outcome<N = f64> {
    /// A vessel.
    Found(Vessel<N>),
    /// No thickness of the stock carries the pressure.
    NothingFits(NothingFits),
}

impl<N> Outcome<N> {
    /// The vessel, where there is one.
    #[must_use]
    pub fn found(&self) -> Option<&Vessel<N>> {
        match self {
            Outcome::Found(vessel) => Some(vessel),
            Outcome::NothingFits(_) => None,
        }
    }
}

impl<N: Num> Outcome<N> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Outcome {
        match self {
            Outcome::NothingFits(why) => Outcome::NothingFits(why),
            Outcome::Found(v) => Outcome::Found(Vessel {
                plate: v.plate,
                seam: v.seam.values(),
                allowed: v.allowed.values(),
                girth: v.girth.map(Girth::values),
                no_girth: v.no_girth,
                tried: v.tried,
                assumptions: v.assumptions,
                findings: v.findings,
            }),
        }
    }
}

/// Designs a shell and its seams.
///
/// # Errors
/// A figure outside its range; a book without a formula of the pressure; no factor of safety; a stress that the book
/// needs and that is not given.
///
/// ```
/// use seamwright::{joint::Form, materials::Materials, quantities::{Length, Pressure, Stress}, rules::METRIC};
/// use seamwright::{rating::{Footing, Shell}, vessel::{PlateStock, VesselBrief, vessel}};
/// let steel = Materials::new(Stress::mpa(90.0), Stress::mpa(75.0)).bearing(Stress::mpa(150.0));
/// let shell = Shell::new(Length::mm(1000.0), Footing::Permissible);
/// let stock = PlateStock::every(Length::mm(1.0), Length::mm(5.0), Length::mm(40.0));
/// let brief = VesselBrief::new(Form::double_strap(2)?, Pressure::mpa(1.5), shell, steel, stock);
/// let outcome = vessel(&brief, &METRIC.rules)?;
/// let made = outcome.found().unwrap();
/// assert!(made.allowed.pressure >= 1.5);
/// assert!(vessel(&brief.pressure(Pressure::mpa(-1.0)), &METRIC.rules).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn vessel(brief: &VesselBrief<'_>, rules: &Rules) -> Result<Outcome, Error> {
    vessel_with(Plain, brief, rules)
}

/// [`vessel`] in any context: bare numbers, a record of steps, or numbers with derivatives. The plates that do not do
/// are tried on bare numbers; only the one taken is worked out in the context.
///
/// # Errors
/// As [`vessel`].
#[inline]
pub fn vessel_with<C: Ctx>(c: C, brief: &VesselBrief<'_>, rules: &Rules) -> Result<Outcome<C::N>, Error> {
    rules.validate()?;
    brief.validate()?;
    let pressure = brief.pressure.to_mpa();
    let inside = brief.shell.inside().to_mm();
    let least = least_plate(rules, inside).map_or(0.0, |(_, t)| t);
    let least = math::larger(least, rules.get(Entry::PLATE_LEAST));
    let mut none = NothingFits { tried: 0, refused: 0, refusal: None, too_thin: 0, best: None };
    let mut index = 0;
    while let Some(plate) = brief.stock.thickness(index)? {
        index = index.saturating_add(1);
        none.tried = index;
        if math::below(plate, least) {
            none.too_thin = none.too_thin.saturating_add(1);
            continue;
        }
        let allowed = match tried(Plain, brief, rules, plate, &mut Assumptions::new()) {
            Ok(made) => made.allowed.pressure,
            Err(error) if depends_on_plate(&error) => {
                none.refused = none.refused.saturating_add(1);
                none.refusal = Some(error);
                continue;
            }
            Err(error) => return Err(error),
        };
        if none.best.is_none_or(|(_, best)| allowed > best) {
            none.best = Some((plate, allowed));
        }
        if math::at_least(allowed, pressure) {
            return finished(c, brief, rules, plate, index).map(Outcome::Found);
        }
    }
    Ok(Outcome::NothingFits(none))
}

/// Whether another plate may get rid of an error.
const fn depends_on_plate(error: &Error) -> bool {
    matches!(
        error.kind,
        ErrorKind::TooSmall
            | ErrorKind::TooLarge
            | ErrorKind::BeyondTable
            | ErrorKind::NoStandardSize
            | ErrorKind::NoAdmissiblePitch
            | ErrorKind::NoAdmissibleMargin
            | ErrorKind::HolesFillPitch
            | ErrorKind::RowsOverlap
            | ErrorKind::HoleCutsEdge
            | ErrorKind::RivetExceedsHole
    )
}

/// A joint on one plate of the stock.
struct Tried<N> {
    design: Design<N>,
    allowed: Allowed<N>,
}

/// A joint on one plate, and the pressure that it allows.
#[inline]
fn tried<C: Ctx>(
    c: C,
    brief: &VesselBrief<'_>,
    rules: &Rules,
    plate: f64,
    notes: &mut Assumptions,
) -> Result<Tried<C::N>, Error> {
    let mut seam = Brief::new(brief.form, Length::mm(plate), brief.materials);
    if let Some((hole, rivet)) = brief.hole {
        seam = seam.hole(hole, rivet);
    }
    let design = size_with(c, &seam, rules)?;
    let materials = &brief.materials;
    let allowed = joint_pressure_with(c, &design.joint, materials, &design.analysis, &brief.shell, rules, notes)?;
    Ok(Tried { design, allowed })
}

/// The vessel on the plate taken.
#[inline]
fn finished<C: Ctx>(
    c: C,
    brief: &VesselBrief<'_>,
    rules: &Rules,
    plate: f64,
    tried_plates: u32,
) -> Result<Vessel<C::N>, Error> {
    let mut assumptions = Assumptions::new();
    let Tried { design: seam, allowed } = tried(c, brief, rules, plate, &mut assumptions)?;
    let mut findings = Findings::new();
    c.section(Section::Shell);
    let pressure = c.given(Name(Q::WorkingPressure, 0), brief.pressure.to_mpa());
    let required = Required::AtLeast;
    let (asked, carries) = (pressure.value(), allowed.pressure.value());
    findings.compare(Subject::PressureMargin, 0, EntryNo::NONE, required, asked, carries);
    shell_findings(rules, &brief.shell, &brief.form, plate, asked, &mut findings)?;
    let (mut girth, mut no_girth) = (None, None);
    if let Some(asked) = &brief.girth {
        let along =
            Longitudinal { joint: &seam.joint, materials: &brief.materials, credited: seam.analysis.credited, allowed };
        match girth::design(c, brief, asked, rules, &along, pressure) {
            Ok(found) => girth = Some(found),
            Err(error) => no_girth = Some(error),
        }
    }
    findings.open_first();
    Ok(Vessel { plate, seam, allowed, girth, no_girth, tried: tried_plates, assumptions, findings })
}

/// A plate of the stock against the table of bounds.
fn stocked(plate: f64, number: u32) -> Result<f64, Error> {
    Field::Plate.check(plate).map_err(|e| e.index(u8::try_from(number).unwrap_or(0)))
}
