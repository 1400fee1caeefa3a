//! The section A-A: plates and straps, hatched apart, and the rivets of all rows with their heads.

use core::fmt::{self, Write};

use super::Units;
use super::canvas::{Anchor, Canvas, Line, Point, Text, at};
use super::dimension::{self, Tag, Words, break_line};
use super::plan::STUB;
use super::shape::{RowLine, Shape};
use crate::joint::JointKind;
use crate::math::{larger, round_up, smaller};

/// Gap drawn at the butt, mm of the sheet.
const GAP: f64 = 1.0;
/// From the section to the dimension of a width, above and below.
pub(super) const WIDTHS: f64 = 4.0;

/// Where the section lies on the sheet.
#[derive(Clone, Copy)]
pub(super) struct SectionView {
    /// Millimetres of the sheet for a millimetre of the joint.
    pub factor: f64,
    /// Middle of the joint, on the sheet.
    pub x: f64,
    /// Top of the highest head, on the sheet.
    pub top: f64,
    /// First label of a thickness.
    pub labels: Point,
    /// Units.
    pub units: Units,
}

/// Height of heads and members, true size.
pub(super) fn height(shape: &Shape<'_>) -> f64 {
    let [a, b, c] = shape.thick;
    a + b + c + 2.0 * shape.highest_head()
}

/// One plate or strap as it is cut.
#[derive(Clone, Copy)]
struct Member {
    x0: f64,
    x1: f64,
    /// Upper and lower face.
    y0: f64,
    y1: f64,
    /// Which ends are broken off rather than edges.
    broken: (bool, bool),
    /// Hatching: rising to the right or falling, and how far apart.
    rising: bool,
    apart: f64,
    /// Whether only rows in double shear pass through.
    double_only: bool,
    /// Whether the ends are caulked.
    caulked: (bool, bool),
}

/// The members from top to bottom; two for the main plates of a butt joint.
struct Stack {
    members: [Option<Member>; 4],
    /// Upper face of the stack without and with the narrow strap; lower face.
    faces: (f64, f64, f64),
}

fn stack(shape: &Shape<'_>, view: &SectionView) -> Stack {
    let [plate, other, narrow] = shape.thick;
    let s = view.factor;
    let highest = view.top + s * shape.highest_head();
    let left = view.x - s * shape.half - STUB;
    let right = view.x + s * shape.half + STUB;
    let (a, b) = (view.x - s * shape.half, view.x + s * shape.half);
    let caulked = !shape.tie;
    let member = |x0: f64, x1: f64, y0: f64, thick: f64| Member {
        x0,
        x1,
        y0,
        y1: y0 + s * thick,
        broken: (false, false),
        rising: true,
        apart: 2.4,
        double_only: false,
        caulked: (false, false),
    };
    let plates = |y0: f64| {
        let first = Member { broken: (true, false), rising: false, ..member(left, view.x - 0.5 * GAP, y0, plate) };
        let second = Member { broken: (false, true), ..member(view.x + 0.5 * GAP, right, y0, plate) };
        (Some(first), Some(second))
    };
    let y1 = |m: Option<Member>| m.map_or(highest, |m| m.y1);
    match shape.kind {
        JointKind::Lap => {
            let upper = Member { broken: (true, false), caulked: (false, caulked), ..member(left, b, highest, plate) };
            let lower = Member {
                broken: (false, true),
                rising: false,
                caulked: (caulked, false),
                ..member(a, right, upper.y1, other)
            };
            Stack { members: [Some(upper), Some(lower), None, None], faces: (highest, highest, lower.y1) }
        }
        JointKind::SingleStrap => {
            let strap = Member { apart: 1.2, caulked: (caulked, caulked), ..member(a, b, highest, other) };
            let (first, second) = plates(strap.y1);
            Stack { members: [Some(strap), first, second, None], faces: (highest, highest, y1(first)) }
        }
        JointKind::DoubleStrap => {
            let half = s * shape.half_narrow;
            let upper = Member {
                rising: false,
                apart: 1.2,
                double_only: true,
                caulked: (caulked, caulked),
                ..member(view.x - half, view.x + half, highest, narrow)
            };
            let (first, second) = plates(upper.y1);
            let lower = Member { apart: 1.2, caulked: (caulked, caulked), ..member(a, b, y1(first), other) };
            Stack { members: [Some(upper), first, second, Some(lower)], faces: (upper.y1, highest, lower.y1) }
        }
    }
}

/// Draws the section with the thicknesses and the widths.
pub(super) fn draw(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &SectionView) -> fmt::Result {
    let stack = stack(shape, view);
    for member in stack.members.iter().flatten() {
        draw_member(canvas, shape, view, member)?;
    }
    for (x, row) in shape.columns() {
        let upper = if row.planes > 1 { stack.faces.1 } else { stack.faces.0 };
        draw_rivet(canvas, row, view.x + view.factor * x, (upper, stack.faces.2), view.factor)?;
    }
    if shape.butt() {
        let y1 = view.top + view.factor * height(shape);
        canvas.line(Line::Centre, at(view.x, view.top - 1.0), at(view.x, y1 + 1.0))?;
    }
    widths(canvas, shape, view)?;
    thicknesses(canvas, shape, view, &stack)
}

fn draw_member(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &SectionView, m: &Member) -> fmt::Result {
    for (x, broken, caulked, out) in [(m.x0, m.broken.0, m.caulked.0, -1.0), (m.x1, m.broken.1, m.caulked.1, 1.0)] {
        if broken {
            break_line(canvas, at(x, m.y0 - 1.5), at(x, m.y1 + 1.5), (m.y1 - m.y0 + 3.0) / 3.0)?;
        } else {
            canvas.line(Line::Outline, at(x, m.y0), at(x, m.y1))?;
        }
        if caulked {
            // A caulked edge is marked at the face it is driven against.
            let lower = m.y0 > view.top + view.factor * shape.thick.iter().fold(0.0, |a, b| a + b) * 0.5
                && shape.kind != JointKind::SingleStrap;
            let (y, away) = if lower { (m.y0, 1.0) } else { (m.y1, -1.0) };
            canvas.triangle([at(x, y), at(x + 1.8 * out, y), at(x, y + 1.8 * away)])?;
        }
    }
    // Between the rivets; a rivet is never hatched and hides what lies behind it.
    let mut from = m.x0;
    for (x, row) in shape.columns() {
        let (x, half) = (view.x + view.factor * x, 0.5 * view.factor * row.hole);
        if (m.double_only && row.planes < 2) || x < m.x0 || x > m.x1 {
            continue;
        }
        piece(canvas, m, from, x - half)?;
        from = larger(from, x + half);
    }
    piece(canvas, m, from, m.x1)
}

/// A piece of a member between two rivets: its faces and its hatching.
fn piece(canvas: &mut dyn Canvas, m: &Member, x0: f64, x1: f64) -> fmt::Result {
    if x1 <= x0 {
        return Ok(());
    }
    let (y0, y1) = (m.y0, m.y1);
    canvas.line(Line::Outline, at(x0, y0), at(x1, y0))?;
    canvas.line(Line::Outline, at(x0, y1), at(x1, y1))?;
    let thick = y1 - y0;
    if thick < 0.9 {
        return Ok(()); // too thin to be hatched between two outlines
    }
    // Parts that touch differ in spacing at every thickness, and in direction where they can.
    let apart = m.apart * larger(smaller(1.0, 0.25 * thick), 0.6);
    if m.rising {
        let mut c = round_up(x0 + y0, apart);
        while c < x1 + y1 {
            let (a, b) = (larger(x0, c - y1), smaller(x1, c - y0));
            canvas.line(Line::Hatch, at(a, c - a), at(b, c - b))?;
            c += apart;
        }
    } else {
        let mut c = round_up(x0 - y1, apart);
        while c < x1 - y0 {
            let (a, b) = (larger(x0, c + y0), smaller(x1, c + y1));
            canvas.line(Line::Hatch, at(a, a - c), at(b, b - c))?;
            c += apart;
        }
    }
    Ok(())
}

/// Shank and snap heads, with the centre line.
fn draw_rivet(canvas: &mut dyn Canvas, row: &RowLine, x: f64, (y0, y1): (f64, f64), s: f64) -> fmt::Result {
    let (half, rise, shank) = (0.5 * row.head.0 * s, row.head.1 * s, 0.5 * row.hole * s);
    canvas.line(Line::Outline, at(x - shank, y0), at(x - shank, y1))?;
    canvas.line(Line::Outline, at(x + shank, y0), at(x + shank, y1))?;
    canvas.line(Line::Outline, at(x - half, y0), at(x + half, y0))?;
    canvas.line(Line::Outline, at(x - half, y1), at(x + half, y1))?;
    canvas.arc(Line::Outline, at(x - half, y0), at(x + half, y0), rise)?;
    canvas.arc(Line::Outline, at(x + half, y1), at(x - half, y1), rise)?;
    canvas.line(Line::Centre, at(x, y0 - rise - 1.0), at(x, y1 + rise + 1.0))
}

/// Overlap or strap widths: above the section, and of a second strap below it.
fn widths(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &SectionView) -> fmt::Result {
    let s = view.factor;
    let ends = |half: f64| (view.x - s * half, view.x + s * half);
    let above = view.top - WIDTHS;
    let head = s * shape.highest_head();
    let (name, key, half) = match shape.kind {
        JointKind::Lap => ("overlap ", "overlap", shape.half),
        JointKind::SingleStrap => ("strap width ", "strap_width", shape.half),
        JointKind::DoubleStrap => (
            if shape.joint.form().unequal() { "narrow strap width " } else { "upper strap width " },
            "narrow_width",
            shape.half_narrow,
        ),
    };
    let words = dimension::label(name, view.units, 2.0 * half)?;
    dimension::across(canvas, ends(half), above, view.top + head - 0.5, &words, Tag { key, row: 0 })?;
    if shape.kind == JointKind::DoubleStrap {
        let bottom = view.top + s * height(shape);
        let name = if shape.joint.form().unequal() { "wide strap width " } else { "lower strap width " };
        let words = dimension::label(name, view.units, 2.0 * shape.half)?;
        let tag = Tag { key: "wide_width", row: 0 };
        dimension::across(canvas, ends(shape.half), bottom + 2.0 * WIDTHS, bottom - head + 0.5, &words, tag)?;
    }
    Ok(())
}

/// The thickness of each member, at the end of a leader that begins in it.
fn thicknesses(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &SectionView, stack: &Stack) -> fmt::Result {
    let [plate, other, narrow] = shape.thick;
    let unequal = shape.joint.form().unequal();
    let [first, second, third, fourth] = stack.members;
    let list: [(Option<Member>, &str, &'static str, f64); 3] = match shape.kind {
        JointKind::Lap => [
            (first, "plate A, t = ", "plate", plate),
            (second, "plate B, t = ", "other_plate", other),
            (None, "", "", 0.0),
        ],
        JointKind::SingleStrap => {
            [(first, "strap, t = ", "strap", other), (third, "plates, t = ", "plate", plate), (None, "", "", 0.0)]
        }
        JointKind::DoubleStrap => [
            (first, if unequal { "narrow strap, t = " } else { "upper strap, t = " }, "narrow_strap", narrow),
            (third, "plates, t = ", "plate", plate),
            (fourth, if unequal { "wide strap, t = " } else { "lower strap, t = " }, "wide_strap", other),
        ],
    };
    // Beside the outermost rivet, where no head is in the way. A narrow strap ends within it: its leader rises above the
    // heads first.
    let inset = smaller(1.5, 0.25 * view.factor * shape.margin);
    let right = view.x + view.factor * shape.half - inset;
    let mut y = view.labels.y;
    for (member, name, key, value) in list {
        let Some(m) = member else { continue };
        let mut words = Words::new();
        words.write_str(name)?;
        dimension::length(&mut words, view.units, value)?;
        let own = smaller(right, m.x1 - inset);
        let end = at(own, 0.5 * (m.y0 + m.y1));
        if own < right {
            y = smaller(view.top - 2.0 + 1.25, y);
            let bend = at(own, view.top - 2.0);
            canvas.line(Line::Dimension, at(view.labels.x - 1.0, y - 1.25), bend)?;
            dimension::dotted_leader(canvas, bend, end)?;
        } else {
            dimension::dotted_leader(canvas, at(view.labels.x - 1.0, y - 1.25), end)?;
        }
        let at = at(view.labels.x, y);
        y = larger(y + 6.0, view.labels.y);
        canvas.text(&Text { content: &words, at, anchor: Anchor::Start, upright: false, key, row: 0 })?;
    }
    Ok(())
}
