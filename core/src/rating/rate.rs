//! Rating of an existing joint: the pressure that it allows, what governs, and for how long.

use super::pressure::pressure_named;
use super::{
    Allowed, Assumed, Assumptions, Basis, Existing, Footing, KnownLength, Life, Seam, joint_pressure_with, life, limits,
};
use crate::bounds::Field;
use crate::check::{Analysis, Findings, Required, Subject, check_with};
use crate::error::{EntryNo, Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::joint::{Joint, JointKind, JointSpec};
use crate::materials::Materials;
use crate::math;
use crate::quantities::{Length, Stress};
use crate::rules::{Entry, Metal, Rules};
use crate::step::{Ctx, Name, Num, Plain, Quantity as Q, Section, Why};

/// What sets the pressure of a course.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Governs {
    /// The seam, in its weakest mode.
    Seam,
    /// The solid plate away from the seam.
    Plate,
    /// A limit of the book on shells with laps.
    Rule(EntryNo),
}

/// A rated joint. Pressures in MPa.
#[derive(Clone, Debug)]
pub struct Rating<N = f64> {
    /// The joint as found.
    pub joint: Joint,
    /// The strengths that were taken.
    pub materials: Materials,
    /// All modes, efficiencies and findings of the joint as found.
    pub analysis: Analysis<N>,
    /// What the seam allows.
    pub seam: Allowed<N>,
    /// What the solid plate away from the seam allows, where its thickness is known.
    pub plate: Option<Allowed<N>>,
    /// The allowable working pressure: the least of all.
    pub allowed: N,
    /// What sets it.
    pub governs: Governs,
    /// Allowed over present pressure, where that was stated.
    pub margin: Option<N>,
    /// Hydrostatic test pressure, where the book has a factor for it: on the allowed pressure.
    pub test: Option<N>,
    /// How long the present pressure is allowed at the rate of wastage, where both are known.
    pub life: Option<Life>,
    /// What all this rests on.
    pub assumptions: Assumptions,
    /// The book's rules on the shell, open ones first. Those on the joint are in the analysis.
    pub findings: Findings,
}

impl<N: Num> Rating<N> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Rating {
        Rating {
            joint: self.joint,
            materials: self.materials,
            analysis: self.analysis.values(),
            seam: self.seam.values(),
            plate: self.plate.map(Allowed::values),
            allowed: self.allowed.value(),
            governs: self.governs,
            margin: self.margin.map(Num::value),
            test: self.test.map(Num::value),
            life: self.life,
            assumptions: self.assumptions,
            findings: self.findings,
        }
    }
}

/// Rates an existing joint.
///
/// # Errors
/// A figure outside its range or against the form; [`ErrorKind::Missing`] for a strength, a factor of safety or a
/// driven rivet that neither the user nor the book gives, and where the book has no formula of the pressure.
pub fn rate(existing: &Existing, rules: &Rules) -> Result<Rating, Error> {
    rate_with(Plain, existing, rules)
}

/// [`rate`] in any context: bare numbers, a record of steps, or numbers with derivatives. The years are solved for on
/// bare numbers.
///
/// # Errors
/// As [`rate`].
#[inline]
pub fn rate_with<C: Ctx>(c: C, existing: &Existing, rules: &Rules) -> Result<Rating<C::N>, Error> {
    rules.validate()?;
    existing.shell.validate()?;
    if let Some(p) = existing.present {
        Field::Pressure.check(p.to_mpa())?;
    }
    let mut notes = Assumptions::new();
    let materials = strengths(existing, rules, &mut notes)?;
    let joint = joint_of(existing, rules, &mut notes)?;
    if let Some(plate) = existing.shell_plate {
        Field::Plate.check(plate.length.to_mm())?;
        notes.put(Assumed::ShellPlate, 0, plate.basis, EntryNo::NONE, plate.length.to_mm());
    }
    let found = loads(c, existing, rules, &joint, &materials, &mut notes)?;
    let shell = &existing.shell;
    let mut findings = Findings::new();
    let present = existing.present.map(|p| p.to_mpa());
    let working = present.unwrap_or(found.allowed.value());
    if let Some(present) = present {
        let required = Required::AtLeast;
        findings.compare(Subject::PressureMargin, 0, found.entry(), required, present, found.allowed.value());
    }
    if let Some(plate) = &found.plate {
        let entry = EntryNo::NONE;
        let (solid, seam) = (plate.pressure.value(), found.seam.pressure.value());
        findings.compare(Subject::SolidPlate, 0, entry, Required::AtLeast, seam, solid);
    }
    limits::findings(rules, shell, joint.form(), joint.thinner(), working, &mut findings)?;
    findings.open_first();
    let margin = present.map(|p| {
        let p = c.given(Name(Q::PresentPressure, 0), p);
        c.formula(Name(Q::PressureRatio, 0), Formula::Ratio.no(), formula::ratio(found.allowed, p))
    });
    let test = test_pressure_with(c, rules, found.allowed);
    let life = life::life(existing, rules, &joint, &materials, &mut notes)?;
    notes.put(Assumed::RivetsSound, 0, Basis::Assumed, EntryNo::NONE, 1.0);
    Ok(Rating {
        joint,
        materials,
        analysis: found.analysis,
        seam: found.seam,
        plate: found.plate,
        allowed: found.allowed,
        governs: found.governs,
        margin,
        test,
        life,
        assumptions: notes,
        findings,
    })
}

/// The hydrostatic test pressure of a working pressure, MPa; `None` where the book has no factor.
#[inline]
pub fn test_pressure_with<C: Ctx>(c: C, rules: &Rules, pressure: C::N) -> Option<C::N> {
    let factor = rules.get(Entry::TEST_FACTOR);
    (factor > 0.0).then(|| {
        let factor = c.table(Name(Q::Coefficient, 0), Entry::TEST_FACTOR.no(), factor);
        c.formula(Name(Q::TestPressure, 0), Formula::TestPressure.no(), formula::times(factor, pressure))
    })
}

/// What a joint and its shell allow.
pub(super) struct Loads<N> {
    pub analysis: Analysis<N>,
    pub seam: Allowed<N>,
    pub plate: Option<Allowed<N>>,
    pub allowed: N,
    pub governs: Governs,
}

impl<N: Num> Loads<N> {
    fn entry(&self) -> EntryNo {
        match self.governs {
            Governs::Rule(entry) => entry,
            Governs::Seam | Governs::Plate => self.seam.factor.entry,
        }
    }
}

/// The seam, the solid plate and the limits on laps; the least of them.
#[inline]
pub(super) fn loads<C: Ctx>(
    c: C,
    existing: &Existing,
    rules: &Rules,
    joint: &Joint,
    materials: &Materials,
    notes: &mut Assumptions,
) -> Result<Loads<C::N>, Error> {
    let shell = &existing.shell;
    let analysis = check_with(c, joint, materials, rules)?;
    let seam = joint_pressure_with(c, joint, materials, &analysis, shell, rules, notes)?;
    let name = Name(Q::LeastPressure, 0);
    let (mut allowed, mut governs) = (seam.pressure, Governs::Seam);
    let mut plate = None;
    if let Some(reading) = existing.shell_plate {
        c.section(Section::SolidPlate);
        let t = c.given(Name(Q::ShellPlate, 0), reading.length.to_mm());
        let tension = c.quiet().given(Name(Q::Tension, 0), materials.plate.tension.to_mpa());
        let solid = Seam { form: joint.form(), plate: t, tension, efficiency: C::N::lit(1.0) };
        let found = pressure_named(c, rules, shell, &solid, seam.factor, Q::SolidPressure)?;
        if found.pressure.value() < allowed.value() {
            governs = Governs::Plate;
        }
        allowed = c.lesser(name, Why::Least(EntryNo::NONE), allowed, found.pressure);
        plate = Some(found);
    }
    if joint.form().kind() == JointKind::Lap {
        for (entry, most) in limits::lap_limits(rules, shell, notes).into_iter().flatten() {
            let limit = c.table(Name(Q::PressureLimit, 0), entry.no(), most);
            if limit.value() < allowed.value() {
                governs = Governs::Rule(entry.no());
            }
            allowed = c.lesser(name, Why::Cap(entry.no()), allowed, limit);
        }
    }
    Ok(Loads { analysis, seam, plate, allowed, governs })
}

/// The strengths: given, or the book's for the metals stated.
fn strengths(existing: &Existing, rules: &Rules, notes: &mut Assumptions) -> Result<Materials, Error> {
    let missing = |field: Field, entry: Entry| Error::new(ErrorKind::Missing, field).entry(entry.no());
    let footing = existing.shell.footing;
    let (tension, shear, bearing) = match (existing.metals, footing) {
        (Some((plates, rivets)), Footing::Ultimate) => {
            let (tension, shear) = match (plates, rivets) {
                (Metal::Steel, Metal::Steel) => (Entry::STEEL_TENSION, Entry::STEEL_SHEAR),
                (Metal::Steel, Metal::Iron) => (Entry::STEEL_TENSION, Entry::IRON_SHEAR),
                (Metal::Iron, Metal::Steel) => (Entry::IRON_TENSION, Entry::STEEL_SHEAR),
                (Metal::Iron, Metal::Iron) => (Entry::IRON_TENSION, Entry::IRON_SHEAR),
            };
            (Some(tension), Some(shear), Some(Entry::PLATE_BEARING))
        }
        // The book's figures are strengths at failure: they do not stand in for permissible stresses.
        _ => (None, None, None),
    };
    let mut take = |about: Assumed, field: Field, stated: Option<Stress>, entry: Option<Entry>, silent: Entry| {
        if let Some(stress) = stated {
            notes.put(about, 0, Basis::Given, EntryNo::NONE, field.check(stress.to_mpa())?);
            return Ok(Some(stress));
        }
        let Some((entry, value)) = entry.map(|e| (e, rules.get(e))).filter(|(_, v)| *v > 0.0) else {
            return if field == Field::Bearing { Ok(None) } else { Err(missing(field, silent)) };
        };
        notes.put(about, 0, Basis::Tabulated, entry.no(), value);
        Ok(Some(Stress::mpa(value)))
    };
    let tension = take(Assumed::Tension, Field::Tension, existing.tension, tension, Entry::STEEL_TENSION)?;
    let shear = take(Assumed::Shear, Field::Shear, existing.shear, shear, Entry::STEEL_SHEAR)?;
    let bearing = take(Assumed::Bearing, Field::Bearing, existing.bearing, bearing, Entry::PLATE_BEARING)?;
    let (Some(tension), Some(shear)) = (tension, shear) else {
        return Err(missing(Field::Tension, Entry::STEEL_TENSION));
    };
    let materials = Materials::new(tension, shear);
    Ok(bearing.map_or(materials, |b| materials.bearing(b)))
}

/// The joint as found: holes measured, or by the book's table of driven rivets.
fn joint_of(existing: &Existing, rules: &Rules, notes: &mut Assumptions) -> Result<Joint, Error> {
    let form = existing.form;
    if existing.stray_row > 0 {
        let error = Error::new(ErrorKind::NotForThisForm, Field::Rows).value(f64::from(existing.stray_row));
        return Err(error.limit(f64::from(u8::try_from(form.row_count()).unwrap_or(0))));
    }
    let mut note = |about: Assumed, r: &KnownLength| notes.put(about, 0, r.basis, EntryNo::NONE, r.length.to_mm());
    note(Assumed::Plate, &existing.plate);
    if let Some(r) = &existing.other_plate {
        note(Assumed::OtherPlate, r);
    }
    if let Some((wide, narrow)) = &existing.straps {
        note(Assumed::WideStrap, wide);
        if let Some(r) = narrow {
            note(Assumed::NarrowStrap, r);
        }
    }
    let plate = Field::Plate.check(existing.plate.length.to_mm())?;
    if form.kind() == JointKind::Lap && existing.other_plate.is_none() {
        notes.put(Assumed::OtherPlate, 0, Basis::Assumed, EntryNo::NONE, plate);
    }
    // Tables of driven rivets go by the plate as it was when new; a plate that is thinner now may fall a line lower.
    let nominal = match existing.nominal {
        Some(t) => Field::Plate.check(t.to_mm())?,
        None => plate,
    };
    let mut holes = [Length::mm(0.0); crate::joint::MAX_ROWS];
    for ((slot, stated), row) in holes.iter_mut().zip(existing.holes).zip(1_u8..).take(form.row_count()) {
        *slot = match stated {
            Some(r) => {
                notes.put(Assumed::Hole, row, r.basis, EntryNo::NONE, r.length.to_mm());
                r.length
            }
            None => {
                let Some((entry, hole)) = rules.table_hole(nominal) else {
                    let known = rules.get(Entry::HOLE_TABLE_PLATE) > 0.0;
                    let kind = if known { ErrorKind::BeyondTable } else { ErrorKind::Missing };
                    let error = Error::new(kind, if known { Field::Plate } else { Field::Hole });
                    let error = error.entry(Entry::HOLE_TABLE_PLATE.no());
                    return Err(if known { error.value(nominal) } else { error.index(row) });
                };
                notes.put(Assumed::Hole, row, Basis::Tabulated, entry.no(), hole);
                if existing.nominal.is_none() {
                    notes.put(Assumed::PlateWhenNew, 0, Basis::Assumed, Entry::HOLE_TABLE_PLATE.no(), plate);
                }
                Length::mm(hole)
            }
        };
    }
    spec(existing, &holes, 0.0).build()
}

/// The joint with its plies thinned by `loss`, mm.
fn spec(existing: &Existing, holes: &[Length; crate::joint::MAX_ROWS], loss: f64) -> JointSpec {
    let left = |r: KnownLength| Length::mm(r.length.to_mm() - loss);
    let form = existing.form;
    let first = holes.first().copied().unwrap_or_default();
    let mut spec = JointSpec::new(form, existing.pitch.length, left(existing.plate), first);
    for ((hole, back), row) in holes.iter().zip(existing.back).zip(1_usize..).take(form.row_count()) {
        spec = spec.row(row, *hole, None);
        if let Some(distance) = back {
            spec = spec.back_pitch(row, distance);
        }
    }
    if let Some(r) = existing.other_plate {
        spec = spec.other_plate(left(r));
    }
    if let Some(margin) = existing.margin {
        spec = spec.margin(margin);
    }
    match existing.straps {
        Some((wide, Some(narrow))) => spec.straps(left(wide), left(narrow)),
        Some((strap, None)) => spec.strap(left(strap)),
        None => spec,
    }
}

/// What the shell allows when every ply has lost `loss` mm; nothing where no joint is left.
pub(super) fn allowed_after(
    existing: &Existing,
    rules: &Rules,
    joint: &Joint,
    materials: &Materials,
    loss: f64,
) -> Result<f64, Error> {
    let mut holes = [Length::mm(0.0); crate::joint::MAX_ROWS];
    for (slot, row) in holes.iter_mut().zip(joint.rows()) {
        *slot = row.hole();
    }
    let Ok(thinned) = spec(existing, &holes, loss).build() else {
        return Ok(0.0);
    };
    let mut later = *existing;
    if let Some(r) = &mut later.shell_plate {
        let left = r.length.to_mm() - loss;
        if math::below(left, Field::Plate.bound().lo) {
            return Ok(0.0);
        }
        r.length = Length::mm(left);
    }
    Ok(loads(Plain, &later, rules, &thinned, materials, &mut Assumptions::new())?.allowed)
}
