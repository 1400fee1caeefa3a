//! Dimensions: arrows, labels above their lines, labels spread out where they do not fit, leaders.

use core::fmt::{self, Write};

use heapless::String;

use super::Units;
use super::canvas::{Anchor, Canvas, Line, Point, TEXT_SIZE, Text, at, width};
use crate::math::{abs, larger, smaller, sqrt};
use crate::text;

/// A text being put together.
pub(super) type Words = String<96>;

/// Length and half width of an arrow head, mm.
const ARROW: (f64, f64) = (3.0, 0.5);
/// Least room between two arrow heads that point outwards.
const ROOM: f64 = 7.0;
/// From a line to the base line of the text above it.
pub(super) const ABOVE: f64 = 1.0;

/// Writes a length in the units of the sheet.
pub(super) fn length(out: &mut dyn Write, units: Units, mm: f64) -> fmt::Result {
    match units {
        Units::Millimetre => text::write_plain(out, mm, 2),
        Units::Inch => text::write_inch_fraction(out, mm / 25.4, 64),
    }
    .map_err(|_| fmt::Error)
}

/// Words and a length.
pub(super) fn label(before: &str, units: Units, mm: f64) -> Result<Words, fmt::Error> {
    let mut words = Words::new();
    words.write_str(before)?;
    length(&mut words, units, mm)?;
    Ok(words)
}

/// An arrow head at `tip`, coming from `from`.
pub(super) fn arrow(canvas: &mut dyn Canvas, tip: Point, from: Point) -> fmt::Result {
    let (dx, dy) = (from.x - tip.x, from.y - tip.y);
    let long = sqrt(dx * dx + dy * dy);
    if long <= 0.0 {
        return Ok(());
    }
    let (ux, uy) = (dx / long, dy / long);
    let (l, w) = ARROW;
    let (bx, by) = (tip.x + l * ux, tip.y + l * uy);
    canvas.triangle([tip, at(bx - w * uy, by + w * ux), at(bx + w * uy, by - w * ux)])
}

/// An oblique stroke: the end of a dimension too short for arrows.
fn stroke(canvas: &mut dyn Canvas, p: Point) -> fmt::Result {
    canvas.line(Line::Dimension, at(p.x - 0.9, p.y + 0.9), at(p.x + 0.9, p.y - 0.9))
}

/// A leader with an arrow head at `tip`.
pub(super) fn leader(canvas: &mut dyn Canvas, from: Point, tip: Point) -> fmt::Result {
    canvas.line(Line::Dimension, from, tip)?;
    arrow(canvas, tip, from)
}

/// A leader that ends in a dot within an outline.
pub(super) fn dotted_leader(canvas: &mut dyn Canvas, from: Point, end: Point) -> fmt::Result {
    canvas.line(Line::Dimension, from, end)?;
    for r in [0.2, 0.45] {
        canvas.circle(Line::Dimension, end, r)?;
    }
    Ok(())
}

/// What a dimension is called.
#[derive(Clone, Copy)]
pub(super) struct Tag {
    pub key: &'static str,
    pub row: usize,
}

/// The line of a dimension; with a zigzag where it is shorter than to scale.
fn measure(canvas: &mut dyn Canvas, a: Point, b: Point, broken: bool) -> fmt::Result {
    if broken {
        break_line(canvas, a, b, 0.75 * (abs(b.x - a.x) + abs(b.y - a.y)))
    } else {
        canvas.line(Line::Dimension, a, b)
    }
}

/// A single dimension across the sheet, its line at `y`, extension lines from `from`; its text stands above the line.
pub(super) fn across(
    canvas: &mut dyn Canvas,
    (x0, x1): (f64, f64),
    y: f64,
    from: f64,
    words: &str,
    tag: Tag,
) -> fmt::Result {
    across_broken(canvas, (x0, x1), (y, false), from, words, tag)
}

/// The same, with a zigzag in a line that is shorter than to scale.
pub(super) fn across_broken(
    canvas: &mut dyn Canvas,
    (x0, x1): (f64, f64),
    (y, broken): (f64, bool),
    from: f64,
    words: &str,
    tag: Tag,
) -> fmt::Result {
    // A text that is wider than its dimension stands beyond the line, where no extension line crosses it.
    let wider = width(words) > x1 - x0;
    let past = if wider { 0.4 } else { 1.5 };
    let past = if from < y { past } else { -past };
    for x in [x0, x1] {
        canvas.line(Line::Dimension, at(x, from), at(x, y + past))?;
    }
    let (a, b) = (at(x0, y), at(x1, y));
    let short = x1 - x0 < ROOM;
    let out = if short { 6.0 } else { 0.0 };
    measure(canvas, at(x0 - out, y), at(x1 + out, y), broken)?;
    arrow(canvas, a, if short { at(x0 - 9.0, y) } else { b })?;
    arrow(canvas, b, if short { at(x1 + 9.0, y) } else { a })?;
    let base = if wider && from < y { y + ABOVE + 0.8 * TEXT_SIZE } else { y - ABOVE };
    let at = at(0.5 * (x0 + x1), base);
    canvas.text(&Text { content: words, at, anchor: Anchor::Middle, upright: false, key: tag.key, row: tag.row })
}

/// A single dimension up the sheet, its line at `x`, extension lines from the right; its text reads upwards, left of
/// the line. A text too long for it moves down, past `below`, or up, past `above`, where no extension line of another
/// dimension crosses it, but stays in `limits`.
pub(super) fn upwards(
    canvas: &mut dyn Canvas,
    x: f64,
    ends: (f64, f64),
    from: (f64, f64),
    room: (f64, f64, (f64, f64)),
    words: &str,
    tag: Tag,
) -> fmt::Result {
    upwards_broken(canvas, (x, false), ends, from, room, words, tag)
}

/// The same, with a zigzag in a line that is shorter than to scale; extension lines from the right or the left.
pub(super) fn upwards_broken(
    canvas: &mut dyn Canvas,
    (x, broken): (f64, bool),
    (y0, y1): (f64, f64),
    (from0, from1): (f64, f64),
    (above, below, limits): (f64, f64, (f64, f64)),
    words: &str,
    tag: Tag,
) -> fmt::Result {
    let (a, b) = (at(x, y0), at(x, y1));
    let short = y1 - y0 < ROOM;
    let wide = width(words);
    // Extension lines do not run into a text that reaches beyond them.
    let past = if wide > y1 - y0 { 0.3 } else { 0.9 };
    let past = if from0 < x { -past } else { past };
    canvas.line(Line::Dimension, at(from0, y0), at(x - past, y0))?;
    canvas.line(Line::Dimension, at(from1, y1), at(x - past, y1))?;
    let (mut top, mut bottom) = if short { (y0 - 6.0, y1 + 6.0) } else { (y0, y1) };
    let mut middle = 0.5 * (y0 + y1);
    let outside = wide > y1 - y0 + 3.0;
    if outside {
        let clear = if short { 5.0 } else { 1.5 };
        let under = larger(y1 + clear, below);
        middle = if under + wide <= limits.1 { under + 0.5 * wide } else { smaller(y0 - clear, above) - 0.5 * wide };
    }
    middle = larger(smaller(middle, limits.1 - 0.5 * wide), limits.0 + 0.5 * wide);
    if outside {
        top = smaller(top, middle - 0.5 * wide);
        bottom = larger(bottom, middle + 0.5 * wide);
    }
    measure(canvas, at(x, smaller(top, y0)), at(x, larger(bottom, y1)), broken)?;
    arrow(canvas, a, if short { at(x, y0 - 9.0) } else { b })?;
    arrow(canvas, b, if short { at(x, y1 + 9.0) } else { a })?;
    let at = at(x - ABOVE, middle);
    canvas.text(&Text { content: words, at, anchor: Anchor::Middle, upright: true, key: tag.key, row: tag.row })
}

/// Most parts of a chain: a margin at each end and the distances of eight rows.
pub(super) const PARTS: usize = 9;

/// One part of a chain of dimensions.
#[derive(Clone)]
pub(super) struct Part {
    pub words: Words,
    pub tag: Tag,
    pub x0: f64,
    pub x1: f64,
    /// Middle of the label, where it does not fit into its part.
    place: Option<f64>,
}

impl Part {
    /// A part from `x0` to `x1`.
    pub fn new(words: Words, tag: Tag, x0: f64, x1: f64) -> Self {
        Part { words, tag, x0, x1, place: None }
    }

    fn middle(&self) -> f64 {
        0.5 * (self.x0 + self.x1)
    }
}

/// A chain of dimensions on a line at `y`, with extension lines from `from`. Labels that do not fit into their part are spread out below the line, in
/// their order, each with a leader: neither labels nor leaders can cross.
pub(super) fn chain(
    canvas: &mut dyn Canvas,
    parts: &mut heapless::Vec<Part, PARTS>,
    (from, y): (f64, f64),
    limits: (f64, f64),
) -> fmt::Result {
    spread(parts, limits);
    // Extension lines, from `from`: no further than the line where leaders go on from there.
    let past = if parts.iter().any(|part| part.place.is_some()) { 0.0 } else { 1.5 };
    let ends = parts.iter().map(|part| part.x0).chain(parts.last().map(|part| part.x1));
    for x in ends {
        canvas.line(Line::Dimension, at(x, from), at(x, y + past))?;
    }
    let below = y + 3.0;
    for part in parts.iter() {
        let (a, b) = (at(part.x0, y), at(part.x1, y));
        canvas.line(Line::Dimension, a, b)?;
        if part.x1 - part.x0 < ROOM {
            stroke(canvas, a)?;
            stroke(canvas, b)?;
        } else {
            arrow(canvas, a, b)?;
            arrow(canvas, b, a)?;
        }
        let place = match part.place {
            None => at(part.middle(), y - ABOVE),
            Some(x) => {
                canvas.line(Line::Dimension, at(part.middle(), y), at(x, below))?;
                at(x, below + 0.5 + 0.75 * TEXT_SIZE)
            }
        };
        canvas.text(&Text {
            content: &part.words,
            at: place,
            anchor: Anchor::Middle,
            upright: false,
            key: part.tag.key,
            row: part.tag.row,
        })?;
    }
    Ok(())
}

/// Finds places for the labels that do not fit: none over another, all between the limits.
fn spread(parts: &mut heapless::Vec<Part, PARTS>, (left, right): (f64, f64)) {
    let gap = 2.0;
    let (mut end, mut pushed, mut count) = (f64::NEG_INFINITY, 0.0, 0.0);
    for part in parts.iter_mut() {
        let (wide, wish) = (width(&part.words), part.middle());
        let span = part.x1 - part.x0;
        // The strokes at the ends of short parts take room of their own.
        if wide + 2.4 > span {
            let place = larger(wish, end + gap + 0.5 * wide);
            part.place = Some(place);
            end = place + 0.5 * wide;
            pushed += place - wish;
            count += 1.0;
        }
    }
    // Back by what they were pushed on the whole; then off the left limit, then off the right one.
    let back = if count > 0.0 { pushed / count } else { 0.0 };
    end = left - gap;
    for part in parts.iter_mut() {
        let half = 0.5 * width(&part.words);
        if let Some(place) = &mut part.place {
            *place = larger(*place - back, end + gap + half);
            end = *place + half;
        }
    }
    let mut start = right + gap;
    for part in parts.iter_mut().rev() {
        let half = 0.5 * width(&part.words);
        if let Some(place) = &mut part.place {
            *place = smaller(*place, start - gap - half);
            start = *place - half;
        }
    }
}

/// A break line between two points along one axis, with a zigzag `mark` mm from the first.
pub(super) fn break_line(canvas: &mut dyn Canvas, from: Point, to: Point, mark: f64) -> fmt::Result {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let long = abs(dx) + abs(dy);
    if long <= 0.0 {
        return Ok(());
    }
    let (ux, uy) = (dx / long, dy / long);
    let high = smaller(2.0, 0.25 * long);
    let step = 0.25 * high;
    let on = |along: f64, off: f64| at(from.x + along * ux - off * uy, from.y + along * uy + off * ux);
    let m = mark;
    let mut last = from;
    for next in [on(m - 2.0 * step, 0.0), on(m - step, high), on(m + step, -high), on(m + 2.0 * step, 0.0), to] {
        canvas.line(Line::Break, last, next)?;
        last = next;
    }
    Ok(())
}
