//! What a group's sheet says in words: title, notes, sizes, scale of forces, forces on the rivets.

use core::fmt::{self, Write};

use heapless::{String, Vec};

use super::super::Units;
use super::super::canvas::{Anchor, Canvas, Line, Point, Text, at};
use super::super::dimension::{Words, length};
use super::super::title::{LEADING, WIDE, wrap};
use super::Known;
use super::marks::arrow;
use super::plan::Plan;
use crate::bounds::Unit;
use crate::group::GroupMode;
use crate::math::{abs, below, direction, sqrt};
use crate::text;
use crate::working::{self, Style};

/// Sizes of rivets that are told apart beside the view; of more than these the notes have a list.
const SIZES: usize = 3;
/// Heads of the forces on the rivets: length and half width.
pub(super) const HEAD: (f64, f64) = (2.6, 0.65);
/// Heads of their shares.
pub(super) const SMALL_HEAD: (f64, f64) = (1.6, 0.35);
/// Columns of the list of forces.
const ABREAST: usize = 3;

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
fn bare(out: &mut dyn Write, x: f64, digits: u8) -> fmt::Result {
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
fn place(out: &mut dyn Write, units: Units, [x, y]: [f64; 2]) -> fmt::Result {
    length(out, units, x)?;
    out.write_str(", ")?;
    length(out, units, y)
}

/// Sizes of the rivets, each once.
fn sizes(known: &Known<'_>) -> Vec<(f64, f64), { SIZES + 1 }> {
    let mut list = Vec::new();
    for r in known.found.rivets() {
        if !list.contains(&(r.hole, r.rivet)) {
            // One more than are shown is enough to know.
            let _ = list.push((r.hole, r.rivet));
        }
    }
    list
}

/// A hole and its rivet.
fn size(out: &mut dyn Write, units: Units, (hole, rivet): (f64, f64)) -> fmt::Result {
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

/// The column beside the view: sizes, centres, scale of forces, forces.
pub(super) struct Column<'c> {
    canvas: &'c mut dyn Canvas,
    x: f64,
    y: f64,
}

impl<'c> Column<'c> {
    /// Begins at the top.
    pub fn new(canvas: &'c mut dyn Canvas, top: Point) -> Self {
        Column { canvas, x: top.x, y: top.y }
    }

    fn text(&mut self, dx: f64, content: &str, key: &'static str, row: usize) -> fmt::Result {
        let at = at(self.x + dx, self.y);
        self.canvas.text(&Text { content, at, anchor: Anchor::Start, upright: false, key, row })
    }

    /// A line of text, wrapped.
    fn line(&mut self, words: &str, key: &'static str) -> fmt::Result {
        wrap(words, WIDE - 4.0, &mut |part| {
            let done = self.text(0.0, part, key, 0);
            self.y += LEADING;
            done
        })
    }

    /// Sizes of the rivets.
    fn sizes(&mut self, known: &Known<'_>) -> fmt::Result {
        let sizes = sizes(known);
        if sizes.len() > SIZES {
            return self.line("Holes and rivets: see the notes", "hole");
        }
        for one in &sizes {
            let mut words: String<240> = String::new();
            if sizes.len() > 1 {
                let same = known.found.rivets().iter().zip(1_usize..).filter(|(r, _)| (r.hole, r.rivet) == *one);
                for ((_, number), at) in same.zip(0_usize..) {
                    write!(words, "{}{number}", if at == 0 { "nos. " } else { ", " })?;
                }
                words.write_str(": ")?;
            }
            size(&mut words, known.units, *one)?;
            self.line(&words, "hole")?;
        }
        Ok(())
    }

    /// Centroid, instantaneous centre, moment.
    fn centres(&mut self, known: &Known<'_>) -> fmt::Result {
        let mut words = Words::new();
        words.write_str("G, centroid, x, y: ")?;
        place(&mut words, known.units, known.found.centroid)?;
        self.line(&words, "centroid")?;
        words.clear();
        match known.found.centre {
            Some(centre) => {
                words.write_str("C, instant. centre: ")?;
                place(&mut words, known.units, centre)?;
            }
            None => words.write_str("The load passes through G: no turning")?,
        }
        self.line(&words, "centre")?;
        if known.found.centre.is_some() {
            words.clear();
            words.write_str("Moment about G: ")?;
            figure(&mut words, known.units, Unit::NewtonMillimetre, known.found.moment, 6)?;
            self.line(&words, "moment")?;
        }
        Ok(())
    }

    /// The scale of forces, with the lines that show them.
    fn scale(&mut self, known: &Known<'_>, plan: &Plan) -> fmt::Result {
        self.y += 1.5;
        let mut words = Words::new();
        words.write_str("Forces: 10 mm drawn = ")?;
        bare(&mut words, plan.per_ten, 3)?;
        write!(words, " {}", style(known.units).symbol(Unit::Newton))?;
        self.line(&words, "force_scale")?;
        let shares = known.shares();
        let samples = [
            (Line::Force, "force on a rivet", HEAD, true),
            (Line::Critical, "force on the critical rivet", HEAD, true),
            (Line::Direct, "direct share", SMALL_HEAD, shares),
            (Line::Turning, "turning share", SMALL_HEAD, shares),
        ];
        for (kind, name, head, shown) in samples {
            if shown {
                let y = self.y - 1.2;
                arrow(self.canvas, kind, at(self.x, y), at(self.x + 10.0, y), head)?;
                self.text(13.0, name, "note", 0)?;
                self.y += LEADING;
            }
        }
        Ok(())
    }

    /// The force on each rivet, as far down as `end`.
    fn forces(&mut self, known: &Known<'_>, end: f64) -> fmt::Result {
        self.y += 1.5;
        let rivets = known.found.rivets();
        let high = rivets.len().div_ceil(ABREAST);
        let rows = u32::try_from(high).map_or(0.0, f64::from);
        if self.y + LEADING * rows > end {
            return self.line("Force on each rivet: see the working", "note");
        }
        let mut words = Words::new();
        write!(words, "Force on each rivet, {}:", style(known.units).symbol(Unit::Newton))?;
        self.line(&words, "note")?;
        let top = self.y;
        for (column, dx) in
            rivets.chunks(high.max(1)).zip([0.0, 26.0, 52.0]).zip(0_usize..).map(|((c, dx), i)| ((c, i), dx))
        {
            let (list, i) = column;
            self.y = top;
            for (r, row) in list.iter().zip(1_usize..) {
                let number = i.saturating_mul(high).saturating_add(row);
                words.clear();
                write!(words, "{number}: ")?;
                bare(&mut words, style(known.units).convert(Unit::Newton, r.resultant), 4)?;
                self.text(dx, &words, "rivet_force", number)?;
                self.y += LEADING;
            }
        }
        Ok(())
    }

    /// All of it, as far down as `end`.
    pub fn write(mut self, known: &Known<'_>, plan: &Plan, end: f64) -> fmt::Result {
        self.sizes(known)?;
        self.centres(known)?;
        self.scale(known, plan)?;
        self.forces(known, end)
    }
}
