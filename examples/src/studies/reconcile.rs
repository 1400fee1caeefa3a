//! `seamwright reconcile`: which conventions reproduce the figures that someone states.

use seamwright::bounds::Unit;
use seamwright::quantities::{Force, Length, Stress};
use seamwright::reconcile::{Case, Figure, Work, reconcile};
use seamwright::step::{Name, QUANTITIES};

use super::{brief_of, folded, solved, title};
use crate::failure::Failure;
use crate::flags::Flags;
use crate::task::Task;

/// Runs the study.
pub fn run(flags: &Flags, stated: &[String]) -> Result<String, Failure> {
    super::shell::plain_only(flags)?;
    let (task, answer) = solved(flags)?;
    if stated.is_empty() {
        return Err(Failure::usage("figure", "is needed and was not given", "write --figure \"J=66.5 %\""));
    }
    let figures = stated.iter().map(|text| figure(text)).collect::<Result<Vec<Figure>, Failure>>()?;
    let work = match brief_of(&task) {
        Some(brief) => Work::Size(brief),
        None => Work::Check(answer.joint, task.materials),
    };
    let case = Case { work, rules: task.book.rules };
    let found = reconcile(&case, &figures).map_err(|e| Failure::refused(&e, &task.book, task.units))?;
    let mut out = title("STATED FIGURES, AND THE CONVENTIONS THAT GIVE THEM", &task);
    // A string takes everything.
    let _ = found.write(&mut out, &figures);
    out.push_str(&tail(&task, found.tried));
    Ok(folded(&out))
}

fn tail(task: &Task, tried: u32) -> String {
    let kind = if task.action == crate::flags::Action::Check { "checked" } else { "sized" };
    match tried {
        1 => format!("\nThe joint was {kind} once, as it stands.\n"),
        n => format!(
            "\nThe joint was {kind} {n} times, with every edit of the catalogue and, where needed, every pair.\n"
        ),
    }
}

/// `NAME=VALUE UNIT`, as in `Ps=31897 N`, `J=66.5 %`, `g.1=38.8 mm`.
fn figure(text: &str) -> Result<Figure, Failure> {
    let wrong = |what: &str, remedy: &str| Failure::usage("figure", format!("\"{text}\" {what}"), remedy);
    let (name, value) = text
        .split_once('=')
        .ok_or_else(|| wrong("has no value", "write --figure \"Ps=31897 N\", with a symbol of the working"))?;
    let name = quantity(name.trim()).ok_or_else(|| {
        wrong(
            "names no quantity of the working",
            "take a symbol such as F0, Pt, Ps, Pc, P, J, plate%, pmax, ps, gmin.1",
        )
    })?;
    let value = value.trim();
    let at = value.find(|c: char| c.is_ascii_alphabetic() && c != 'e' && c != 'E' || c == '%').unwrap_or(value.len());
    let (digits, unit) = value.split_at(at);
    let scale = scale(unit.trim(), name.0.unit())
        .ok_or_else(|| wrong("has a unit that does not go with it", "write mm, in, N, kN, lbf, MPa, psi or %"))?;
    Figure::printed(name, digits.trim(), scale)
        .map_err(|_| wrong("cannot be read", "write a number and its unit, as in \"Ps=31897 N\""))
}

/// A symbol of the working with its row, as in `gmin.1`.
fn quantity(symbol: &str) -> Option<Name> {
    let of = |symbol: &str, row: u8| QUANTITIES.iter().find(|q| q.symbol() == symbol).map(|q| Name(*q, row));
    let rowed = symbol.rsplit_once('.').and_then(|(stem, row)| of(stem, row.parse().ok()?));
    of(symbol, 0).or(rowed)
}

/// What one of a unit is in the unit of a quantity.
fn scale(unit: &str, of: Unit) -> Option<f64> {
    match (of, unit) {
        (Unit::Millimetre, "mm") | (Unit::Newton, "N") | (Unit::Megapascal, "MPa" | "N/mm2") => Some(1.0),
        (Unit::One | Unit::Count, "") => Some(1.0),
        (Unit::One, "%") => Some(0.01),
        (Unit::Millimetre, "in") => Some(Length::inch(1.0).to_mm()),
        (Unit::Newton, "kN") => Some(Force::kn(1.0).to_n()),
        (Unit::Newton, "lbf" | "lb") => Some(Force::lbf(1.0).to_n()),
        (Unit::Newton, "kgf" | "kg") => Some(Force::kgf(1.0).to_n()),
        (Unit::Newton, "tons" | "ton") => Some(Force::long_ton(1.0).to_n()),
        (Unit::Megapascal, "psi") => Some(Stress::psi(1.0).to_mpa()),
        _ => None,
    }
}
