//! The pressure that a girth seam allows: the load on the end, `p D/4` for each length of girth.

use super::{Allowed, Assumptions, Seam, Shell, pressure_with};
use crate::error::Error;
use crate::formula::{self, Formula};
use crate::rules::Rules;
use crate::step::{Ctx, Name, Num, Quantity as Q, Section};

/// The working pressure that a girth seam allows: twice that of a seam along the shell, for the end pulls half as hard
/// as the hoop.
///
/// # Errors
/// As [`pressure_with`].
///
/// ```
/// use seamwright::{joint::Form, quantities::Length, rules::METRIC, step::Plain};
/// use seamwright::rating::{Assumptions, Footing, Seam, Shell, girth_pressure_with};
/// let form = Form::lap(1)?;
/// let seam = Seam { form: &form, plate: 11.0, tension: 80.0, efficiency: 0.5 };
/// let shell = Shell::new(Length::mm(1000.0), Footing::Permissible);
/// let found = girth_pressure_with(Plain, &METRIC.rules, &shell, &seam, &mut Assumptions::new())?;
/// assert!((found.pressure - 4.0 * 80.0 * 0.5 * (11.0 - 1.0) / 1000.0).abs() < 1e-12);
/// let worn = Seam { plate: -1.0, ..seam };
/// assert!(girth_pressure_with(Plain, &METRIC.rules, &shell, &worn, &mut Assumptions::new()).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
#[inline]
pub fn girth_pressure_with<C: Ctx>(
    c: C,
    rules: &Rules,
    shell: &Shell,
    seam: &Seam<'_, C::N>,
    notes: &mut Assumptions,
) -> Result<Allowed<C::N>, Error> {
    let hoop = pressure_with(c, rules, shell, seam, notes)?;
    c.section(Section::Girth);
    let twice = c.formula(
        Name(Q::GirthPressure, 0),
        Formula::GirthPressure.no(),
        formula::times(C::N::lit(2.0), hoop.pressure),
    );
    Ok(Allowed { pressure: twice, ..hoop })
}
