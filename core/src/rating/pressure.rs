//! The working pressure that a seam allows.

use super::{Assumptions, Factor, FactorBasis, Shell, factor_with};
use crate::bounds::Field;
use crate::check::Analysis;
use crate::error::{Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::joint::{Form, Joint, JointKind};
use crate::materials::Materials;
use crate::math;
use crate::quantities::Pressure;
use crate::rules::{Entry, PressureForm, Rules};
use crate::step::{Ctx, Name, Num, Plain, Quantity as Q, Section, Why};

/// What a seam along the shell brings to the pressure.
#[derive(Clone, Copy, Debug)]
pub struct Seam<'f, N = f64> {
    /// Form of the joint, which decides on constants and factors of safety.
    pub form: &'f Form,
    /// Thickness of the main plate, of the weaker one in a lap, mm.
    pub plate: N,
    /// Its tensile stress, on the footing of the shell, MPa.
    pub tension: N,
    /// Efficiency credited; 1 for the solid plate.
    pub efficiency: N,
}

/// The pressure that is allowed, and what it rests on.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Allowed<N = f64> {
    /// Working pressure, MPa.
    pub pressure: N,
    /// Efficiency that was credited.
    pub efficiency: N,
    /// The factor of safety.
    pub factor: Factor<N>,
    /// Taken off the plate, mm.
    pub allowance: N,
    /// Whether the outside radius counted.
    pub outside: bool,
}

impl<N: Num> Allowed<N> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Allowed {
        Allowed {
            pressure: self.pressure.value(),
            efficiency: self.efficiency.value(),
            factor: Factor { value: self.factor.value.value(), basis: self.factor.basis, entry: self.factor.entry },
            allowance: self.allowance.value(),
            outside: self.outside,
        }
    }
}

/// What the formula takes off the plate.
#[inline]
fn allowance<C: Ctx>(c: C, rules: &Rules, shell: &Shell) -> C::N {
    let name = Name(Q::PlateLoss, 0);
    let book = rules.get(Entry::PRESSURE_ALLOWANCE);
    let Some(given) = shell.corrosion else {
        return c.table(name, Entry::PRESSURE_ALLOWANCE.no(), book);
    };
    let given = given.to_mm();
    if rules.on(Entry::PRESSURE_ALLOWANCE_GIVEN) {
        return c.given(name, given);
    }
    let book = c.table(Name(Q::Allowance, 0), Entry::PRESSURE_ALLOWANCE.no(), book);
    let given = c.given(Name(Q::Corrosion, 0), given);
    c.formula(name, Formula::AllowanceSum.no(), formula::allowance_sum(book, given))
}

/// The working pressure that a seam of a shell allows, by the book's formula, MPa. A plate that the allowance uses up
/// allows none.
///
/// # Errors
/// A figure outside its range; [`ErrorKind::Missing`] where the book has no formula or nobody gives a factor of safety.
///
/// ```
/// use seamwright::{error::ErrorKind, joint::Form, quantities::{Length, Pressure, Stress}, step::Plain};
/// use seamwright::rating::{Assumptions, Footing, Seam, Shell, pressure_with};
/// use seamwright::rules::{STRUCTURAL, US_EXISTING};
/// // Applied Science for Metal Workers, s. 348: 1/2 in plate of 60 000 psi, half credited, R = 20 in, FS 6: 125 psi.
/// let form = Form::lap(2)?;
/// let (t, st) = (Length::inch(0.5).to_mm(), Stress::psi(60_000.0).to_mpa());
/// let seam = Seam { form: &form, plate: t, tension: st, efficiency: 0.5 };
/// let shell = Shell::new(Length::inch(40.0), Footing::Ultimate).safety(6.0);
/// let mut notes = Assumptions::new();
/// let found = pressure_with(Plain, &US_EXISTING.rules, &shell, &seam, &mut notes)?;
/// assert!((Pressure::mpa(found.pressure).to_psi() - 125.0).abs() < 1e-9);
/// let none = pressure_with(Plain, &STRUCTURAL.rules, &shell, &seam, &mut notes);
/// assert_eq!(none.unwrap_err().kind, ErrorKind::Missing);
/// # Ok::<(), seamwright::Error>(())
/// ```
#[inline]
pub fn pressure_with<C: Ctx>(
    c: C,
    rules: &Rules,
    shell: &Shell,
    seam: &Seam<'_, C::N>,
    notes: &mut Assumptions,
) -> Result<Allowed<C::N>, Error> {
    shell.validate()?;
    let factor = factor_with(c, rules, shell, seam.form, notes)?;
    pressure_named(c, rules, shell, seam, factor, Q::AllowedPressure)
}

/// [`pressure_with`] with a factor that is known, the pressure under a name of its own.
#[inline]
pub(crate) fn pressure_named<C: Ctx>(
    c: C,
    rules: &Rules,
    shell: &Shell,
    seam: &Seam<'_, C::N>,
    factor: Factor<C::N>,
    under: Q,
) -> Result<Allowed<C::N>, Error> {
    shell.validate()?;
    Field::Plate.check(seam.plate.value())?;
    Field::Tension.check(seam.tension.value())?;
    Field::SeamEfficiency.check(seam.efficiency.value())?;
    let form = rules.pressure_form();
    if form == PressureForm::None {
        return Err(Error::new(ErrorKind::Missing, Field::Pressure).entry(Entry::PRESSURE_FORM.no()));
    }
    c.section(Section::Shell);
    let d = c.given(Name(Q::ShellDiameter, 0), shell.inside.to_mm());
    let loss = allowance(c, rules, shell);
    let (st, j, t, f) = (seam.tension, seam.efficiency, seam.plate, factor.value);
    let name = Name(under, 0);
    let mut outside = false;
    let inside = |c: C| c.formula(name, Formula::PressureInside.no(), formula::pressure_inside(st, j, t, loss, d, f));
    let pressure = match form {
        PressureForm::None | PressureForm::Inside => inside(c),
        PressureForm::ThirtySeconds if factor.basis != FactorBasis::Constant => inside(c),
        PressureForm::ThirtySeconds => {
            let p = formula::pressure_thirty_seconds(st, j, t, loss, d, f);
            c.formula(name, Formula::PressureThirtySeconds.no(), p)
        }
        PressureForm::Radius => {
            let mut r = c.formula(Name(Q::ShellRadius, 0), Formula::HalfDiameter.no(), formula::half_diameter(d));
            let above = rules.get(Entry::PRESSURE_OUTSIDE);
            if above > 0.0 {
                let x = formula::radius_share(t, r);
                let x = c.formula(Name(Q::RadiusShare, 0), Formula::RadiusShare.no(), x);
                if math::below(above, x.value()) {
                    let ra = formula::outside_radius(r, t);
                    r = c.formula(Name(Q::OutsideRadius, 0), Formula::OutsideRadius.no(), ra);
                    outside = true;
                }
            }
            c.formula(name, Formula::PressureRadius.no(), formula::pressure_radius(st, j, t, loss, r, f))
        }
        PressureForm::Mean => c.formula(name, Formula::PressureMean.no(), formula::pressure_mean(st, j, t, loss, d, f)),
    };
    let pressure = if pressure.value() > 0.0 {
        pressure
    } else {
        c.greater(name, Why::Floor(Entry::PRESSURE_ALLOWANCE.no()), pressure, C::N::lit(0.0))
    };
    Ok(Allowed { pressure, efficiency: j, factor, allowance: loss, outside })
}

/// The working pressure that a joint along a shell allows: its credited efficiency on the main plate, on the weaker
/// one of a lap.
///
/// # Errors
/// As [`pressure_with`].
pub fn joint_pressure(
    joint: &Joint,
    materials: &Materials,
    analysis: &Analysis,
    shell: &Shell,
    rules: &Rules,
) -> Result<Pressure, Error> {
    let found = joint_pressure_with(Plain, joint, materials, analysis, shell, rules, &mut Assumptions::new())?;
    Ok(Pressure::mpa(found.pressure))
}

/// [`joint_pressure`] in any context, with all that it rests on.
///
/// # Errors
/// As [`pressure_with`].
#[inline]
pub fn joint_pressure_with<C: Ctx>(
    c: C,
    joint: &Joint,
    materials: &Materials,
    analysis: &Analysis<C::N>,
    shell: &Shell,
    rules: &Rules,
    notes: &mut Assumptions,
) -> Result<Allowed<C::N>, Error> {
    pressure_with(c, rules, shell, &seam_of(c, joint, materials, analysis), notes)
}

/// What a joint brings to the pressure of a shell: the weaker plate of a lap, by thickness times tension.
#[inline]
pub(crate) fn seam_of<'j, C: Ctx>(
    c: C,
    joint: &'j Joint,
    materials: &Materials,
    analysis: &Analysis<C::N>,
) -> Seam<'j, C::N> {
    let form = joint.form();
    let plate = joint.plate().to_mm();
    let tension = materials.plate.tension.to_mpa();
    let weaker = match joint.other_plate() {
        Some(other) if form.kind() == JointKind::Lap => {
            let (t, st) = (other.to_mm(), materials.other.tension.to_mpa());
            (t * st < plate * tension).then_some((t, st))
        }
        _ => None,
    };
    let q = c.quiet();
    let (plate, tension) = match weaker {
        Some((t, st)) => {
            // The check has named these for the reader: one stress for both plates is one name.
            let alike = materials.other == materials.plate;
            let tension = if alike { Q::Tension } else { Q::OtherTension };
            let thickness = if t == plate { Q::Plate } else { Q::OtherPlate };
            (q.given(Name(thickness, 0), t), q.given(Name(tension, 0), st))
        }
        None => (q.given(Name(Q::Plate, 0), plate), q.given(Name(Q::Tension, 0), tension)),
    };
    Seam { form, plate, tension, efficiency: analysis.credited }
}
