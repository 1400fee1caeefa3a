//! The plan: plates and straps from above, every hole, and the dimensions across and along the seam.

use core::fmt::{self, Write};

use super::Units;
use super::canvas::{Anchor, Canvas, Line, Point, Text, at, width};
use super::dimension::{self, PARTS, Part, Tag, Words, break_line, label};
use super::shape::{RowLine, Shape};
use crate::joint::{JointKind, MAX_ROWS};
use crate::math::{larger, smaller};
use crate::quantities::Length;
use crate::shop::Layout;

/// Plate drawn beyond the straps or the lap, mm of the sheet.
pub(super) const STUB: f64 = 9.0;
/// From the plan to the first dimension along the seam, and from each to the next.
const LANES: (f64, f64) = (13.0, 7.0);
/// From the plan down to its chain of dimensions.
pub(super) const CHAIN: f64 = 9.0;
/// From one line of text to the next.
pub(super) const LEADING: f64 = 5.0;

/// Where the plan lies on the sheet, and how much of the seam it shows.
#[derive(Clone, Copy)]
pub(super) struct PlanView {
    /// Millimetres of the sheet for a millimetre of the joint.
    pub factor: f64,
    /// Middle of the joint, on the sheet.
    pub x: f64,
    /// Upper end of the seam, on the sheet.
    pub top: f64,
    /// From there to the first rivet of the pattern, true size.
    pub first: f64,
    /// Length shown, true size.
    pub length: f64,
    /// Strips shown.
    pub strips: u32,
    /// The holes of a whole seam, by the shop's layout; without it so many strips are shown.
    pub seam: Option<Layout>,
    /// Whether the ends are break lines.
    pub broken: bool,
    /// Whether the length itself is dimensioned.
    pub measured: bool,
}

/// Where its labels may stand.
#[derive(Clone, Copy)]
pub(super) struct Room {
    /// Left and right ends for labels that are spread out.
    pub across: (f64, f64),
    /// Upper end for labels along the seam.
    pub top: f64,
    /// Right of this x, dimensions along the seam do not go.
    pub lanes: f64,
    /// First hole label.
    pub holes: Point,
    /// Width of a hole label.
    pub wide: f64,
    /// Units.
    pub units: Units,
}

/// Room that the dimensions along the seam need, left of the plan.
pub(super) fn lanes_room(shape: &Shape<'_>) -> f64 {
    let lanes = if shape.tie { 2.0 } else { groups(shape).count() as f64 };
    LANES.0 + LANES.1 * larger(lanes - 1.0, 0.0) + 6.0
}

/// The first row of each number of rivets in the strip.
fn groups<'s>(shape: &'s Shape<'_>) -> impl Iterator<Item = &'s RowLine> {
    shape.rows().filter(|row| shape.rows().take(row.number.wrapping_sub(1)).all(|r| r.rivets != row.rivets))
}

impl PlanView {
    fn x(&self, true_x: f64) -> f64 {
        self.x + self.factor * true_x
    }

    fn y(&self, true_y: f64) -> f64 {
        self.top + self.factor * true_y
    }

    /// Left and right end on the sheet.
    pub fn ends(&self, shape: &Shape<'_>) -> (f64, f64) {
        (self.x(-shape.half) - STUB, self.x(shape.half) + STUB)
    }

    /// Lower end on the sheet.
    pub fn bottom(&self) -> f64 {
        self.y(self.length)
    }

    /// Rivet `i` of a row, on the sheet.
    fn rivet(&self, row: &RowLine, i: u32) -> f64 {
        let placed = self.seam.and_then(|layout| layout.place(row.number, i.saturating_add(1)));
        self.y(placed.map_or(self.first + row.phase + row.step * f64::from(i), Length::to_mm))
    }

    /// Rivets of a row that are shown.
    fn shown(&self, row: &RowLine) -> u32 {
        self.seam.map_or(row.rivets.saturating_mul(self.strips), |layout| layout.in_row(row.number))
    }
}

/// Draws the plan with its dimensions.
pub(super) fn draw(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &PlanView, room: &Room) -> fmt::Result {
    outlines(canvas, shape, view)?;
    holes(canvas, shape, view)?;
    section_marks(canvas, shape, view)?;
    along(canvas, shape, view, room)?;
    chain(canvas, shape, view, room)?;
    hole_labels(canvas, shape, view, room)
}

/// The middle of the widest gap between two lines across the plan: its ends, edges and centre lines.
fn widest_gap(shape: &Shape<'_>, view: &PlanView) -> f64 {
    let (x0, x1) = view.ends(shape);
    let (wide, narrow) = (shape.half, shape.half_narrow);
    let edges = [-wide, -narrow, 0.0, narrow, wide].map(|x| view.x(x));
    let mut best = (x0, x0);
    let mut from = x0;
    while from < x1 {
        let columns = shape.columns().map(|(x, _)| view.x(x));
        let next = edges.into_iter().chain(columns).filter(|x| *x > from).fold(x1, smaller);
        if next - from > best.1 - best.0 {
            best = (from, next);
        }
        from = next;
    }
    0.5 * (best.0 + best.1)
}

fn outlines(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &PlanView) -> fmt::Result {
    let (x0, x1) = view.ends(shape);
    let (y0, y1) = (view.top, view.bottom());
    // Break marks stand clear of the centre lines: of the rows, and of a tie.
    let mark = widest_gap(shape, view) - x0;
    let beside = (y1 - y0) / if shape.tie { 4.0 } else { 3.0 };
    for y in [y0, y1] {
        if view.broken {
            break_line(canvas, at(x0, y), at(x1, y), mark)?;
        } else {
            canvas.line(Line::Outline, at(x0, y), at(x1, y))?;
        }
    }
    for x in [x0, x1] {
        break_line(canvas, at(x, y0), at(x, y1), beside)?;
    }
    let mut edge = |kind: Line, x: f64| canvas.line(kind, at(view.x(x), y0), at(view.x(x), y1));
    match shape.kind {
        // Plate A lies on top and ends at the right.
        JointKind::Lap => {
            edge(Line::Outline, shape.half)?;
            edge(Line::Hidden, -shape.half)
        }
        JointKind::SingleStrap => {
            edge(Line::Outline, -shape.half)?;
            edge(Line::Outline, shape.half)?;
            edge(Line::Hidden, 0.0)
        }
        JointKind::DoubleStrap => {
            edge(Line::Outline, -shape.half_narrow)?;
            edge(Line::Outline, shape.half_narrow)?;
            if shape.half > shape.half_narrow {
                edge(Line::Hidden, -shape.half)?;
                edge(Line::Hidden, shape.half)?;
            }
            edge(Line::Hidden, 0.0)
        }
    }
}

fn holes(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &PlanView) -> fmt::Result {
    for (x, row) in shape.columns() {
        let x = view.x(x);
        let radius = 0.5 * row.hole * view.factor;
        let half = radius + 1.2;
        canvas.line(Line::Centre, at(x, view.top - 2.0), at(x, view.bottom() + 2.0))?;
        for i in 0..view.shown(row) {
            let centre = at(x, view.rivet(row, i));
            canvas.circle(Line::Hole, centre, radius)?;
            canvas.line(Line::Axis, at(x - half, centre.y), at(x + half, centre.y))?;
        }
    }
    if shape.tie {
        // The middle of the width.
        let (x0, x1) = view.ends(shape);
        let y = view.y(0.5 * view.length);
        canvas.line(Line::Centre, at(x0 - 1.0, y), at(x1 + 1.0, y))?;
    }
    Ok(())
}

/// The cutting plane A-A, seen upwards: first angle puts that view above the plan.
fn section_marks(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &PlanView) -> fmt::Result {
    let Some(row) = shape.rows().next() else { return Ok(()) };
    // Not through the first two, whose pitch is dimensioned.
    let y = view.rivet(row, view.shown(row).saturating_sub(1));
    let (x0, x1) = view.ends(shape);
    for (inner, outer) in [(x0 - 2.0, x0 - 8.0), (x1 + 2.0, x1 + 8.0)] {
        let x = 0.25 * inner + 0.75 * outer;
        canvas.line(Line::Cut, at(inner, y), at(outer, y))?;
        dimension::leader(canvas, at(x, y + 7.0), at(x, y))?;
        let at = at(x, y + 11.0);
        canvas.text(&Text { content: "A", at, anchor: Anchor::Middle, upright: false, key: "caption", row: 0 })?;
    }
    Ok(())
}

/// Writes `row 2` or `rows 1, 3-5` for a mask of rows, lowest bit first.
fn write_rows(out: &mut dyn Write, mask: u32) -> fmt::Result {
    out.write_str(if mask.count_ones() == 1 { "row " } else { "rows " })?;
    let has = |i: u32| mask.wrapping_shr(i) & 1 == 1;
    let mut first = true;
    for i in 0..MAX_ROWS as u32 {
        let begins = has(i) && (i == 0 || !has(i.wrapping_sub(1)));
        if begins {
            let mut last = i;
            while last < MAX_ROWS as u32 && has(last.wrapping_add(1)) {
                last = last.wrapping_add(1);
            }
            out.write_str(if first { "" } else { ", " })?;
            first = false;
            write!(out, "{}", i.wrapping_add(1))?;
            if last > i {
                write!(out, "-{}", last.wrapping_add(1))?;
            }
        }
    }
    Ok(())
}

/// The mask of the rows that are like one.
fn mask(shape: &Shape<'_>, like: impl Fn(&RowLine) -> bool) -> u32 {
    shape.rows().zip(0_u32..).fold(0, |mask, (row, i)| if like(row) { mask | 1_u32.wrapping_shl(i) } else { mask })
}

/// Dimensions along the seam, each in a lane of its own: inner pitches next to the plan, the pitch outside of them.
fn along(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &PlanView, room: &Room) -> fmt::Result {
    let (x0, _) = view.ends(shape);
    // Below the extension lines of all dimensions but those of the whole length.
    let below = shape.rows().fold(view.top, |y, row| larger(y, view.rivet(row, 1)));
    let below = shape.rows().next().map_or(below, |row| larger(below, view.rivet(row, 1))) + 2.5;
    let limits = (view.top - 2.5, below, (room.top, view.bottom() + 5.0));
    let mut x = smaller(x0, room.lanes) - LANES.0;
    let mut lane = |from: (f64, f64), ys: (f64, f64), words: &str, tag: Tag| {
        let done = dimension::upwards(canvas, x, ys, from, limits, words, tag);
        x -= LANES.1;
        done
    };
    let edge = |row: &RowLine| {
        let left = if shape.butt() { -row.x } else { row.x };
        view.x(left - 0.5 * row.hole) - 1.2
    };
    if shape.tie {
        let densest = shape.rows().fold(None, |best: Option<&RowLine>, row| match best {
            Some(b) if b.rivets >= row.rivets => best,
            _ => Some(row),
        });
        if let Some(row) = densest.filter(|r| r.rivets > 1) {
            let words = label("pitch ", room.units, row.step)?;
            let ys = (view.rivet(row, 0), view.rivet(row, 1));
            lane((edge(row), edge(row)), ys, &words, Tag { key: "pitch", row: 0 })?;
        }
        let words = label("width ", room.units, shape.strip)?;
        return lane((x0 - 1.0, x0 - 1.0), (view.top, view.bottom()), &words, Tag { key: "width", row: 0 });
    }
    let outer = shape.rows().next().map_or(0, |row| row.rivets);
    let most = shape.rows().fold(0, |n, row| if row.rivets > n { row.rivets } else { n });
    // The closest pitch next to the plan.
    for rivets in (1..=most).rev().filter(|n| *n != outer) {
        let Some(row) = shape.rows().find(|row| row.rivets == rivets) else { continue };
        let mut words = Words::new();
        write_rows(&mut words, mask(shape, |r| r.rivets == rivets))?;
        words.write_str(": ")?;
        dimension::length(&mut words, room.units, row.step)?;
        let ys = (view.rivet(row, 0), view.rivet(row, 1));
        lane((edge(row), edge(row)), ys, &words, Tag { key: "row_pitch", row: row.number })?;
    }
    if let Some(row) = shape.rows().next() {
        let words = label("pitch ", room.units, row.step)?;
        lane((edge(row), edge(row)), (view.rivet(row, 0), view.rivet(row, 1)), &words, Tag { key: "pitch", row: 0 })?;
    }
    if view.measured {
        let words = label("seam ", room.units, view.length)?;
        lane((x0 - 1.0, x0 - 1.0), (view.top, view.bottom()), &words, Tag { key: "seam", row: 0 })?;
    }
    Ok(())
}

/// The chain across the seam: margin, row distances, margin; of a butt joint its left half.
fn chain(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &PlanView, room: &Room) -> fmt::Result {
    let mut parts = heapless::Vec::<Part, PARTS>::new();
    let left = if shape.butt() { -1.0 } else { 1.0 };
    let mut before = view.x(-shape.half);
    let mut tag = Tag { key: "margin", row: 0 };
    let mut value = shape.margin;
    for row in shape.rows() {
        let x = view.x(left * row.x);
        let _ = parts.push(Part::new(label("", room.units, value)?, tag, before, x));
        before = x;
        tag = Tag { key: "back_pitch", row: row.number };
        value = shape.joint.back_pitch(row.number).map_or(0.0, |l| l.to_mm());
    }
    let end = view.x(if shape.butt() { 0.0 } else { shape.half });
    let tag = Tag { key: "inner_margin", row: 0 };
    let _ = parts.push(Part::new(label("", room.units, shape.margin)?, tag, before, end));
    let (from, y) = (view.bottom(), view.bottom() + CHAIN);
    dimension::chain(canvas, &mut parts, (from + 1.0, y), room.across)
}

/// The most lines that the hole labels take.
pub(super) fn hole_lines(shape: &Shape<'_>) -> u32 {
    let sizes = shape.rows().filter(|row| {
        shape.rows().take(row.number.wrapping_sub(1)).all(|r| r.hole != row.hole || r.rivet != row.rivet)
    });
    match sizes.count() {
        1 => 1,
        many => u32::try_from(many).unwrap_or(u32::MAX).saturating_mul(2),
    }
}

/// Hole and rivet, once for each size, with a leader to the nearest row of that size.
fn hole_labels(canvas: &mut dyn Canvas, shape: &Shape<'_>, view: &PlanView, room: &Room) -> fmt::Result {
    // From left to right, so that the leaders do not cross; of a butt joint its right half.
    let alike = |a: &RowLine, b: &RowLine| a.hole == b.hole && a.rivet == b.rivet;
    let skip = if shape.butt() { shape.count } else { 0 };
    let mut y = room.holes.y;
    for ((true_x, row), at_column) in shape.columns().zip(0_usize..).skip(skip) {
        if shape.columns().skip(at_column.wrapping_add(1)).any(|(_, other)| alike(other, row)) {
            continue;
        }
        let rows = mask(shape, |other| alike(other, row));
        let mut words = Words::new();
        if rows.count_ones() as usize != shape.count {
            write_rows(&mut words, rows)?;
            words.write_str(": ")?;
        }
        let lead = words.len();
        words.write_str("\u{2300} ")?;
        dimension::length(&mut words, room.units, row.hole)?;
        words.write_str(" hole, rivet ")?;
        dimension::length(&mut words, room.units, row.rivet)?;

        let from = at(room.holes.x - 1.0, y - 1.25);
        // The first rivet whose leader meets no other hole.
        let x = view.x(true_x);
        let mut rivet = 0_u32;
        while rivet < view.shown(row) && !clear(shape, view, from, at(x, view.rivet(row, rivet))) {
            rivet = rivet.wrapping_add(1);
        }
        let centre = at(x, view.rivet(row, if rivet < view.shown(row) { rivet } else { 0 }));
        let (dx, dy) = (from.x - centre.x, from.y - centre.y);
        let share = 0.5 * row.hole * view.factor / crate::math::sqrt(dx * dx + dy * dy);
        dimension::leader(canvas, from, at(centre.x + share * dx, centre.y + share * dy))?;

        let mut line = |content: &str, key: &'static str| {
            let at = at(room.holes.x, y);
            y += LEADING;
            canvas.text(&Text { content, at, anchor: Anchor::Start, upright: false, key, row: row.number })
        };
        match words.split_at_checked(lead) {
            Some((rows, rest)) if width(&words) > room.wide => {
                line(rows.trim_end(), "hole_rows")?;
                line(rest, "hole")?;
            }
            _ => line(&words, "hole")?,
        }
    }
    Ok(())
}

/// Whether a leader from the right to a hole meets no other hole.
fn clear(shape: &Shape<'_>, view: &PlanView, from: Point, to: Point) -> bool {
    let (dx, dy) = (from.x - to.x, from.y - to.y);
    let long = crate::math::sqrt(dx * dx + dy * dy);
    // Of a whole seam only what lies near enough is looked at: leaders fall less steeply than they run.
    shape.columns().filter(|(true_x, _)| view.x(*true_x) >= to.x).all(|(true_x, row)| {
        let (x, radius) = (view.x(true_x) - to.x, 0.5 * row.hole * view.factor + 0.3);
        (0..view.shown(row).min(64)).all(|i| {
            let y = view.rivet(row, i) - to.y;
            let own = x == 0.0 && y == 0.0;
            let off = crate::math::abs(x * dy - y * dx);
            let along = x * dx + y * dy;
            own || along < 0.0 || off > radius * long
        })
    })
}

/// Where the first rivet of so many strips lies in a length: remainders alike at both ends.
pub(super) fn first_of(shape: &Shape<'_>, strips: u32, length: f64) -> f64 {
    if shape.tie { 0.0 } else { 0.5 * (length - shape.reach(strips)) }
}
