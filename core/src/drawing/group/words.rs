//! What a group's sheet says in words: title, notes, labels.

use core::fmt::{self, Write};

use heapless::{String, Vec};

use super::super::Units;
use super::super::dimension::{Words, length};
use super::Known;
use super::plan::Plan;
use crate::bounds::Unit;
use crate::group::GroupMode;
use crate::math::{abs, below, direction, sqrt};
use crate::text;
use crate::working::{self, Style};

/// Sizes of rivets that are told apart beside the view; of more than these the notes have a list.
pub(super) const SIZES: usize = 3;

/// Units of forces, moments and stresses that go with those of lengths.
pub(super) fn style(units: Units) -> Style {
    let units = match units {
        Units::Millimetre => working::Units::Metric,
        Units::Inch => working::Units::Inch,
    };
    Style { units, forces: working::Forces::Kilonewton, ..Style::default() }
}

/// Newtons in the unit of forces.
pub(super) fn newtons(units: Units) -> f64 {
    1.0 / style(units).convert(Unit::Newton, 1.0)
}

/// A figure with so many digits, fewer where they are zeros, and its unit.
pub(super) fn figure(out: &mut dyn Write, units: Units, unit: Unit, x: f64, digits: u8) -> fmt::Result {
    bare(out, style(units).convert(unit, x), digits)?;
    write!(out, " {}", style(units).symbol(unit))
}

/// A figure without its unit.
pub(super) fn bare(out: &mut dyn Write, x: f64, digits: u8) -> fmt::Result {
    let mut decimals = digits;
    for power in [1.0, 10.0, 100.0, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8] {
        if abs(x) >= power {
            decimals = decimals.saturating_sub(1);
        }
    }
    text::write_plain(out, x, decimals).map_err(|_| fmt::Error)
}

/// What the title block calls the group.
pub(super) fn form(known: &Known<'_>) -> String<200> {
    let mut words = String::new();
    let n = known.group.count();
    let shear = if known.group.shear_planes() == 2 { "double" } else { "single" };
    // There is room for every group.
    let _ = write!(words, "{n} rivet{}, {shear} shear", if n == 1 { "" } else { "s" });
    if let Some(plate) = known.group.thickness() {
        let _ = words.write_str(", plate ");
        let _ = length(&mut words, known.units, plate);
        let _ = words.write_str(mark(known.units));
    }
    words
}

/// The unit of lengths after a figure.
const fn mark(units: Units) -> &'static str {
    match units {
        Units::Millimetre => " mm",
        Units::Inch => " in",
    }
}

/// What governs: the critical rivet, its stress, how much of what is permitted is used.
pub(super) fn governs(known: &Known<'_>) -> String<120> {
    let found = known.found;
    let (name, stress) = match (found.governs, &found.bearing) {
        (GroupMode::Bearing, Some(bearing)) => ("bearing", bearing.stress),
        _ => ("shear", found.shear.stress),
    };
    let mut words = String::new();
    // There is room for every figure.
    let _ = write!(words, "no. {}: {name} ", found.critical());
    let _ = figure(&mut words, known.units, Unit::Megapascal, stress, 4);
    let _ = words.write_str(", ");
    let _ = text::write_fixed(&mut words, 100.0 * found.used, 1);
    let _ = words.write_str(" % of the permitted");
    if below(1.0, found.used) {
        let _ = words.write_str(". NOT ENOUGH");
    }
    words
}

/// The dimension of the load's arm along x (0) or y (1).
pub(super) fn arm(known: &Known<'_>, axis: usize) -> Result<Words, fmt::Error> {
    let mut words = Words::new();
    let true_arm = known.arm().get(axis).copied().unwrap_or(0.0);
    // Two of them are told apart as in the working.
    let both = known.load.x != 0.0 && known.load.y != 0.0;
    words.write_str(match (both, axis) {
        (false, _) => "e = ",
        (true, 0) => "eX = ",
        (true, _) => "eY = ",
    })?;
    length(&mut words, known.units, abs(true_arm))?;
    let taken = known.found.arm.get(axis).copied().unwrap_or(true_arm);
    if axis == 0 && known.load.is_effective() {
        words.write_str(", taken as ")?;
        length(&mut words, known.units, abs(taken))?;
    }
    Ok(words)
}

/// The load: its size and direction.
pub(super) fn load(known: &Known<'_>) -> Result<Words, fmt::Error> {
    let (x, y) = (known.load.x, known.load.y);
    let mut words = Words::new();
    words.write_str("P = ")?;
    let along = x == 0.0 || y == 0.0;
    // A figure that was given is not shortened; what was put together is.
    figure(&mut words, known.units, Unit::Newton, sqrt(x * x + y * y), if along { 6 } else { 4 })?;
    if along {
        words.write_str(match (x > 0.0, x < 0.0, y > 0.0) {
            (true, _, _) => ", right",
            (_, true, _) => ", left",
            (_, _, true) => ", up",
            _ => ", down",
        })?;
    } else {
        words.write_str(" at ")?;
        text::write_fixed(&mut words, direction(x, y), 1).map_err(|_| fmt::Error)?;
        words.write_str(" deg")?;
    }
    Ok(words)
}

/// The couple.
pub(super) fn couple(known: &Known<'_>) -> Result<Words, fmt::Error> {
    let mut words = Words::new();
    words.write_str("couple ")?;
    figure(&mut words, known.units, Unit::NewtonMillimetre, abs(known.load.couple), 6)?;
    Ok(words)
}

/// A place, in the axes of the input.
pub(super) fn place(out: &mut dyn Write, units: Units, [x, y]: [f64; 2]) -> fmt::Result {
    length(out, units, x)?;
    out.write_str(", ")?;
    length(out, units, y)
}

/// Sizes of the rivets, each once.
pub(super) fn sizes(known: &Known<'_>) -> Vec<(f64, f64), { SIZES + 1 }> {
    let mut list = Vec::new();
    for r in known.found.rivets() {
        if !list.contains(&(r.hole, r.rivet)) {
            // One more than are shown is enough to know.
            let _ = list.push((r.hole, r.rivet));
        }
    }
    list
}

/// The numbers of those that are meant, neighbours as a run.
pub(super) fn runs(out: &mut dyn Write, meant: impl Iterator<Item = bool>) -> fmt::Result {
    let mut first = None;
    let mut before = "nos. ";
    for (is, number) in meant.chain([false]).zip(1_usize..) {
        match (first, is) {
            (None, true) => first = Some(number),
            (Some(from), false) => {
                let last = number.saturating_sub(1);
                write!(out, "{before}{from}")?;
                if last > from {
                    write!(out, "-{last}")?;
                }
                (first, before) = (None, ", ");
            }
            _ => {}
        }
    }
    Ok(())
}

/// A hole and its rivet.
pub(super) fn size(out: &mut dyn Write, units: Units, (hole, rivet): (f64, f64)) -> fmt::Result {
    out.write_str("\u{2300} ")?;
    length(out, units, hole)?;
    out.write_str(" hole")?;
    if rivet != hole {
        out.write_str(", rivet ")?;
        length(out, units, rivet)?;
    }
    Ok(())
}

/// The conventions of this drawing, and what did not find room on it. Before there is a plan, all that may be said.
pub(super) fn notes(out: &mut dyn Write, known: &Known<'_>, plan: Option<&Plan>, listed: bool) -> fmt::Result {
    let units = known.units;
    out.write_str(
        "x to the right, y up, as given. Forces are what the loaded plate puts on the rivets (elastic method)",
    )?;
    if known.shares() {
        out.write_str("; each closes the triangle of its direct and its turning share")?;
    }
    out.write_str(". No edges of the plate are drawn: none are given.")?;
    if known.load.has_force() {
        out.write_str(" The load's arrow is not to the scale of forces.")?;
    }
    let nearer = plan.is_none_or(|p| p.load.is_some_and(|l| l.nearer.0 || l.nearer.1));
    if known.load.has_force() && nearer {
        out.write_str(" The load is drawn nearer than to scale.")?;
    }
    if known.load.is_effective() {
        out.write_str(" Effective eccentricity of an old manual: not for new work.")?;
    }
    if listed {
        let list = known.found.rivets();
        if let Some(first) = list.first() {
            out.write_str(" Rivets from no. 1, x and y: ")?;
            for (r, number) in list.iter().zip(1_usize..).skip(1) {
                let ([x, y], [x1, y1]) = (r.place, first.place);
                write!(out, "{}{number}: ", if number == 2 { "" } else { "; " })?;
                length(out, units, x - x1)?;
                out.write_str(", ")?;
                length(out, units, y - y1)?;
            }
            out.write_str(".")?;
        }
    }
    if sizes(known).len() > SIZES {
        out.write_str(" Holes and rivets:")?;
        for (r, number) in known.found.rivets().iter().zip(1_usize..) {
            write!(out, "{} {number}: ", if number == 1 { "" } else { ";" })?;
            size(out, units, (r.hole, r.rivet))?;
        }
        out.write_str(".")?;
    }
    Ok(())
}
