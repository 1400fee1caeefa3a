//! The view of a group: rivets, forces, load, centres, dimensions, labels.

use core::fmt::{self, Write};

use super::super::canvas::{Anchor, Canvas, Line, Point, Text, at};
use super::super::dimension::{self, PARTS, Part, Tag, Words, label};
use super::Known;
use super::area::Area;
use super::marks::{HEAD, SMALL_HEAD, Watch, arrow};
use super::plan::{Plan, RowWords, gaps};
use super::words;
use crate::group::RivetLoad;
use crate::math::{larger, smaller};

/// Beyond a hole: its centre lines, and the ring of the critical rivet.
const AXIS: f64 = 1.2;
const RING: f64 = 1.1;
/// Half the cross at a centre.
const CROSS: f64 = 2.6;
/// Radius of the arrow of a couple, and half the room that it takes.
const COUPLE: (f64, f64) = (5.5, 7.0);
/// Least length of a dimension with arrow heads.
const ARROWS: f64 = 7.0;
/// Head of a load.
const LOAD_HEAD: (f64, f64) = (4.5, 1.3);

/// Draws the view.
pub(super) fn draw(canvas: &mut dyn Canvas, known: &Known<'_>, plan: &Plan, view: Area) -> fmt::Result {
    let room = Area { x0: view.x0 - 1.0, y0: view.y0 - 2.0, x1: view.x1 + 1.0, y1: view.y1 + 1.5 };
    let mut watch = Watch::new(canvas, room);
    let w = &mut watch;
    for (r, number) in known.found.rivets().iter().zip(1_u8..) {
        hole(w, known, plan, r, number)?;
    }
    arms(w, known, plan, view)?;
    chains(w, known, plan, view)?;
    for (r, number) in known.found.rivets().iter().zip(1_u8..) {
        force(w, known, plan, r, number)?;
    }
    load(w, known, plan)?;
    centres(w, known, plan, room)?;
    couple(w, known, plan)?;
    numbers(w, known, plan)
}

fn hole(w: &mut Watch<'_>, known: &Known<'_>, plan: &Plan, r: &RivetLoad, number: u8) -> fmt::Result {
    let (p, radius) = (plan.at(r.place), 0.5 * plan.scale.factor * r.hole);
    w.circle(Line::Hole, p, radius)?;
    if number == known.found.critical() {
        w.circle(Line::Critical, p, radius + RING)?;
    }
    let out = radius + AXIS + if number == known.found.critical() { RING } else { 0.0 };
    w.line(Line::Axis, at(p.x - out, p.y), at(p.x + out, p.y))?;
    w.line(Line::Axis, at(p.x, p.y - out), at(p.x, p.y + out))
}

/// The force on a rivet with its shares: the direct one from the rivet, the turning one from its end.
fn force(w: &mut Watch<'_>, known: &Known<'_>, plan: &Plan, r: &RivetLoad, number: u8) -> fmt::Result {
    let p = plan.at(r.place);
    let to = |[x, y]: [f64; 2]| at(p.x + x / plan.per, p.y - y / plan.per);
    let tip = to(r.force);
    if known.shares() {
        let corner = to(r.direct);
        arrow(w, Line::Direct, p, corner, SMALL_HEAD)?;
        arrow(w, Line::Turning, corner, tip, SMALL_HEAD)?;
    }
    let kind = if number == known.found.critical() { Line::Critical } else { Line::Force };
    arrow(w, kind, p, tip, HEAD)
}

/// The arms of the load, with the centre lines that they go from.
fn arms(w: &mut Watch<'_>, known: &Known<'_>, plan: &Plan, view: Area) -> fmt::Result {
    let Some(load) = plan.load else { return Ok(()) };
    let g = plan.at(known.found.centroid);
    let all = plan.reach;
    if let Some(y) = plan.arm_y {
        w.line(Line::Centre, at(g.x, larger(plan.holes.y1 + 2.5, g.y + CROSS)), at(g.x, all.y0))?;
        let top = smaller(load.point.y, smaller(load.from.y, load.tip.y)) - 1.0;
        if top > all.y0 {
            w.line(Line::Dimension, at(load.point.x, top), at(load.point.x, all.y0))?;
        }
        let ends = (smaller(g.x, load.point.x), larger(g.x, load.point.x));
        let tag = Tag { key: "eccentricity", row: 1 };
        dimension::across_broken(w, ends, (y, load.nearer.0), all.y0, &words::arm(known, 0)?, tag)?;
    }
    if let Some(x) = plan.arm_x {
        w.line(Line::Centre, at(smaller(plan.holes.x0 - 2.5, g.x - CROSS), g.y), at(all.x1, g.y))?;
        let right = larger(load.point.x, larger(load.from.x, load.tip.x)) + 1.0;
        if right < all.x1 {
            w.line(Line::Dimension, at(right, load.point.y), at(all.x1, load.point.y))?;
        }
        let ends = (smaller(g.y, load.point.y), larger(g.y, load.point.y));
        let tag = Tag { key: "eccentricity", row: 2 };
        // Labels of the columns that stand below their dimensions may reach as far to the right as this one.
        let columns = plan.chains.as_ref().is_some_and(|(columns, ..)| columns.len() > 1);
        let lowest = if columns { smaller(view.y1, plan.columns_y + 2.5) } else { view.y1 };
        let room = (ends.0, ends.1, (view.y0, lowest));
        let broken = (x, load.nearer.1);
        dimension::upwards_broken(w, broken, ends, (all.x1, all.x1), room, &words::arm(known, 1)?, tag)?;
    }
    Ok(())
}

/// Distances between columns and rows.
fn chains(w: &mut Watch<'_>, known: &Known<'_>, plan: &Plan, view: Area) -> fmt::Result {
    let Some((columns, rows, row_words)) = &plan.chains else { return Ok(()) };
    if columns.len() > 1 {
        let mut parts: heapless::Vec<Part, PARTS> = heapless::Vec::new();
        for ((a, b), row) in gaps(columns).zip(1_usize..) {
            let ends = (plan.at([a, 0.0]).x, plan.at([b, 0.0]).x);
            let part = Part::new(label("", known.units, b - a)?, Tag { key: "column", row }, ends.0, ends.1);
            // A chain has no more columns than parts.
            let _ = parts.push(part);
        }
        dimension::chain(w, &mut parts, (plan.holes.y1 + 2.5, plan.columns_y), (view.x0, view.x1))?;
    }
    let x = plan.rows_x;
    let (from, past) = if plan.rows_right { (plan.holes.x1 + 2.5, 0.9) } else { (plan.holes.x0 - 2.5, -0.9) };
    for y in rows.iter().map(|row| plan.at([0.0, *row]).y).filter(|_| rows.len() > 1) {
        w.line(Line::Dimension, at(from, y), at(x + past, y))?;
    }
    for ((a, b), row) in gaps(rows).zip(1_usize..) {
        let (low, high) = (plan.at([0.0, a]).y, plan.at([0.0, b]).y);
        let words = label("", known.units, b - a)?;
        between(w, (x, plan.rows_right), (high, low), (&words, Tag { key: "row", row }, *row_words))?;
    }
    Ok(())
}

/// A part of a chain up the sheet: its text upright, or level and outside.
fn between(
    w: &mut Watch<'_>,
    (x, right): (f64, bool),
    (y0, y1): (f64, f64),
    (words, tag, how): (&str, Tag, RowWords),
) -> fmt::Result {
    let (a, b) = (at(x, y0), at(x, y1));
    w.line(Line::Dimension, a, b)?;
    if y1 - y0 >= ARROWS {
        dimension::arrow(w, a, b)?;
        dimension::arrow(w, b, a)?;
    } else {
        for y in [y0, y1] {
            w.line(Line::Dimension, at(x - 0.9, y + 0.9), at(x + 0.9, y - 0.9))?;
        }
    }
    let middle = 0.5 * (y0 + y1);
    let (at, anchor, upright) = match how {
        RowWords::Upright => (at(x - dimension::ABOVE, middle), Anchor::Middle, true),
        RowWords::Level if right => (at(x + 1.5, middle + 1.25), Anchor::Start, false),
        RowWords::Level => (at(x - 1.5, middle + 1.25), Anchor::End, false),
    };
    w.text(&Text { content: words, at, anchor, upright, key: tag.key, row: tag.row })
}

fn load(w: &mut Watch<'_>, known: &Known<'_>, plan: &Plan) -> fmt::Result {
    let Some(load) = plan.load else { return Ok(()) };
    arrow(w, Line::Load, load.from, load.tip, LOAD_HEAD)?;
    for r in [0.3, 0.7] {
        w.circle(Line::Load, load.point, r)?;
    }
    let on = |t: f64| at(load.from.x + t * (load.tip.x - load.from.x), load.from.y + t * (load.tip.y - load.from.y));
    w.label(&words::load(known)?, &[on(0.5), on(0.25), on(0.75), on(1.0)], 1.5, Tag { key: "load", row: 0 })
}

/// The centroid, and the centre of turning where it lies in reach.
fn centres(w: &mut Watch<'_>, known: &Known<'_>, plan: &Plan, room: Area) -> fmt::Result {
    let cross = |w: &mut Watch<'_>, p: Point| {
        w.line(Line::Outline, at(p.x - CROSS, p.y), at(p.x + CROSS, p.y))?;
        w.line(Line::Outline, at(p.x, p.y - CROSS), at(p.x, p.y + CROSS))
    };
    let g = plan.at(known.found.centroid);
    cross(w, g)?;
    let centre = known.found.centre.map(|c| plan.at(c));
    let inner = Area { x0: room.x0 + 4.0, y0: room.y0 + 4.0, x1: room.x1 - 4.0, y1: room.y1 - 4.0 };
    let centre = centre.filter(|c| inner.holds(*c));
    // Under a couple alone both are one.
    let near = |c: &Point| (c.x - g.x) * (c.x - g.x) + (c.y - g.y) * (c.y - g.y) < 0.01;
    let one = centre.as_ref().is_some_and(near);
    if let Some(c) = centre.filter(|_| !one) {
        for (dx, dy) in [(1.0, 1.0), (1.0, -1.0)] {
            let d = 0.6 * CROSS;
            w.line(Line::Outline, at(c.x - d * dx, c.y - d * dy), at(c.x + d * dx, c.y + d * dy))?;
        }
        w.label("C", &[c], 1.6, Tag { key: "centre_mark", row: 0 })?;
    }
    w.label(if one { "G, C" } else { "G" }, &[g], 1.6, Tag { key: "centroid_mark", row: 0 })
}

/// The arrow of a couple, three quarters of a circle open below.
fn couple(w: &mut Watch<'_>, known: &Known<'_>, plan: &Plan) -> fmt::Result {
    if known.load.couple == 0.0 {
        return Ok(());
    }
    let (r, room) = COUPLE;
    let near = plan.load.map_or(plan.at(known.found.centroid), |load| load.point);
    let c = w.spot((room, room), near, 2.0).middle;
    let half = core::f64::consts::FRAC_1_SQRT_2 * r;
    let (left, right, top) = (at(c.x - half, c.y + half), at(c.x + half, c.y + half), at(c.x, c.y - r));
    // Each arc takes 135 degrees: its middle lies r (1 - cos 67.5) off its chord.
    let rise = 0.617_316_567_634_910_2 * r;
    w.arc(Line::Load, left, top, rise)?;
    w.arc(Line::Load, top, right, rise)?;
    let (tip, out) = if known.load.couple > 0.0 { (left, -1.0) } else { (right, 1.0) };
    // Along the arc at its end; the head bends inwards with it.
    let end = at(tip.x - 0.35 * LOAD_HEAD.0 * out, tip.y + 0.9 * LOAD_HEAD.0 * 0.55);
    arrow(w, Line::Load, at(tip.x + 0.9 * out, tip.y - 1.6), end, LOAD_HEAD)?;
    w.keep_free(Area::about(c, room, room));
    w.label(&words::couple(known)?, &[c], room + 0.5, Tag { key: "couple", row: 0 })
}

/// The numbers of the rivets, that of the critical one first.
fn numbers(w: &mut Watch<'_>, known: &Known<'_>, plan: &Plan) -> fmt::Result {
    let critical = known.found.critical();
    for critical_only in [true, false] {
        for (r, number) in known.found.rivets().iter().zip(1_u8..) {
            if (number == critical) != critical_only {
                continue;
            }
            let mut words = Words::new();
            write!(words, "{number}{}", if number == critical { " critical" } else { "" })?;
            let clear = 0.5 * plan.scale.factor * r.hole + if number == critical { RING + 0.3 } else { 0.0 };
            w.label(&words, &[plan.at(r.place)], clear, Tag { key: "rivet", row: usize::from(number) })?;
        }
    }
    Ok(())
}
