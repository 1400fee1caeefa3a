//! How long a pressure is allowed while the plates waste.

use super::rate::allowed_after;
use super::{Assumed, Assumptions, Basis, Existing};
use crate::bounds::Field;
use crate::error::{EntryNo, Error, ErrorKind};
use crate::joint::Joint;
use crate::materials::Materials;
use crate::math;
use crate::rules::{Entry, Rules};

/// Steps of the search along the wastage before it is halved.
const STEPS: u16 = 256;
/// Halvings: a relative 1e-15 of the way.
const HALVINGS: u16 = 60;

/// How long the present pressure is allowed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Life {
    /// Loss of thickness in a year, mm.
    pub rate: f64,
    /// Years until the allowed pressure has come down to the present one: 0 where it is below it already, infinite
    /// where nothing wastes.
    pub years: f64,
    /// Thickness of the plate at the seam then, mm.
    pub plate: f64,
    /// Pressure allowed then, MPa.
    pub pressure: f64,
}

/// The rate: stated, or what was lost since an earlier inspection.
fn rate_of(existing: &Existing) -> Result<Option<f64>, Error> {
    if let Some(rate) = existing.rate {
        return Field::WastageRate.check(rate.to_mm()).map(Some);
    }
    let Some((before, years)) = existing.earlier else { return Ok(None) };
    let before = Field::Plate.check(before.to_mm())?;
    let years = Field::Years.check(years)?;
    let now = existing.plate.length.to_mm();
    if years <= 0.0 {
        return Err(Error::new(ErrorKind::TooSmall, Field::Years).value(years).limit(0.0));
    }
    if math::below(before, now) {
        return Err(Error::new(ErrorKind::Inconsistent, Field::Plate).value(now).limit(before));
    }
    Field::WastageRate.check(math::larger(before - now, 0.0) / years).map(Some)
}

/// Solves for the years by checking the joint again along the wastage: rivets that govern keep the pressure up until
/// the plate governs, so no proportion holds. The first loss at which the pressure is no longer allowed counts: by the
/// outside radius the pressure may rise again as a very thick plate thins.
pub(super) fn life(
    existing: &Existing,
    rules: &Rules,
    joint: &Joint,
    materials: &Materials,
    notes: &mut Assumptions,
) -> Result<Option<Life>, Error> {
    let Some(rate) = rate_of(existing)? else { return Ok(None) };
    let Some(present) = existing.present.map(|p| p.to_mpa()) else { return Ok(None) };
    notes.put(Assumed::ThinningTogether, 0, Basis::Assumed, EntryNo::NONE, 1.0);
    let t = existing.plate.length.to_mm();
    let after = |loss: f64| allowed_after(existing, rules, joint, materials, loss);
    let now = after(0.0)?;
    if !math::at_least(now, present) {
        return Ok(Some(Life { rate, years: 0.0, plate: t, pressure: now }));
    }
    if rate <= 0.0 {
        return Ok(Some(Life { rate, years: f64::INFINITY, plate: t, pressure: now }));
    }
    // The losses just before an outside radius stops to count are looked at by themselves: there the pressure dips.
    let share = rules.get(Entry::PRESSURE_OUTSIDE);
    let thick = share * existing.shell.inside.to_mm() / 2.0;
    let before = |t: f64| if share > 0.0 { (t - thick) * (1.0 - 1e-6) } else { 0.0 };
    let seam = before(joint.thinner());
    let solid = existing.shell_plate.map_or(0.0, |r| before(r.length.to_mm()));
    let dips = if seam < solid { [seam, solid] } else { [solid, seam] };
    let (mut held, mut failed) = (0.0, t);
    'along: for step in 1..=STEPS {
        let (from, loss) = (held, t * f64::from(step) / f64::from(STEPS));
        for stop in dips.into_iter().filter(|dip| *dip > from && *dip < loss).chain([loss]) {
            if !math::at_least(after(stop)?, present) {
                failed = stop;
                break 'along;
            }
            held = stop;
        }
    }
    for _ in 0..HALVINGS {
        let middle = 0.5 * (held + failed);
        if math::at_least(after(middle)?, present) {
            held = middle;
        } else {
            failed = middle;
        }
    }
    Ok(Some(Life { rate, years: held / rate, plate: t - held, pressure: after(held)? }))
}
