//! Computed against printed and exact.

use seamwright::rules::Rules;

use crate::evaluate::{Evaluated, Value, evaluate};
use crate::schema::{Expect, Vector};
use crate::units::one_of;

/// `exact` values are recomputed in double precision: association and conversions of units are all that may differ.
const EXACT: f64 = 1e-9;

/// Runs a vector under a rule book.
///
/// # Errors
/// One line for each expectation that is not met, or for what the library refuses.
pub fn run(vector: &Vector, rules: &Rules) -> Result<(), Vec<String>> {
    let found = evaluate(vector, rules).map_err(|e| vec![format!("{}: {e}", vector.id)])?;
    let failures: Vec<String> = vector
        .expect
        .iter()
        .filter_map(|expect| compare(&found, expect).err())
        .map(|e| format!("{}: {e}", vector.id))
        .collect();
    if failures.is_empty() { Ok(()) } else { Err(failures) }
}

/// Compares one expectation: the word, the printed and the exact figure, as far as it has them.
///
/// # Errors
/// What differs, or what cannot be found.
pub fn compare(found: &Evaluated, expect: &Expect) -> Result<(), String> {
    if expect.printed.is_none() && expect.exact.is_none() && expect.text.is_none() {
        return Err(format!("{}: nothing is expected of it", expect.quantity));
    }
    if let Some(text) = &expect.text {
        return match found.get(&expect.quantity)? {
            Value::Text(is) if is == *text => Ok(()),
            other => Err(format!("{}: {other:?}, expected {text:?}", expect.quantity)),
        };
    }
    let value = in_unit(found, expect)?;
    compare_printed(value, expect)?;
    compare_exact(value, expect)
}

/// The figure in the unit of the expectation.
fn in_unit(found: &Evaluated, expect: &Expect) -> Result<f64, String> {
    match found.get(&expect.quantity)? {
        Value::Number(x) => Ok(x / one_of(&expect.unit)?),
        Value::Text(text) => Err(format!("{}: {text:?} is not a number", expect.quantity)),
    }
}

/// Compares with the printed figure, where there is one.
///
/// # Errors
/// The difference.
pub fn compare_printed(value: f64, expect: &Expect) -> Result<(), String> {
    let Some(printed) = &expect.printed else { return Ok(()) };
    let (lo, hi) = printed_interval(expect)?;
    let slack = EXACT * value.abs();
    if value >= lo - slack && value <= hi + slack {
        Ok(())
    } else {
        Err(format!("{}: {value} {}, printed {printed}", expect.quantity, expect.unit))
    }
}

/// Compares with the exact figure, where there is one.
///
/// # Errors
/// The difference.
pub fn compare_exact(value: f64, expect: &Expect) -> Result<(), String> {
    match expect.exact {
        Some(exact) if (value - exact).abs() > EXACT * exact.abs() => {
            Err(format!("{}: {value} {}, exact {exact}", expect.quantity, expect.unit))
        }
        _ => Ok(()),
    }
}

/// The values that a printed figure stands for: half a unit of its last digit to either side; one unit upwards where
/// digits were cut off; or what `within` says, with its reason.
///
/// # Errors
/// A figure that is not a decimal, or a wider tolerance without a reason.
pub fn printed_interval(expect: &Expect) -> Result<(f64, f64), String> {
    let printed = expect.printed.as_deref().unwrap_or("");
    let x: f64 = printed.parse().map_err(|_| format!("{}: {printed:?} is not a decimal", expect.quantity))?;
    let (mantissa, exponent) = printed.split_once('e').unwrap_or((printed, "0"));
    let exponent: i32 = exponent.parse().map_err(|_| format!("{printed:?}: exponent"))?;
    let decimals = mantissa.split_once('.').map_or(0, |(_, d)| i32::try_from(d.len()).unwrap_or(0));
    let unit = 10_f64.powi(exponent - decimals);
    match (expect.within, &expect.because) {
        (Some(within), Some(_)) => Ok((x - within, x + within)),
        (Some(_), None) => Err(format!("{}: `within` without `because`", expect.quantity)),
        (None, Some(_)) => Err(format!("{}: `because` without `within`", expect.quantity)),
        (None, None) if expect.truncated => Ok((x, x + unit)),
        (None, None) => Ok((x - unit / 2.0, x + unit / 2.0)),
    }
}
