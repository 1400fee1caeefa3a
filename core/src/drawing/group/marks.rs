//! Labels that find their place: a canvas that remembers what is drawn on it, and the freest spot near a point.

use core::fmt;

use heapless::Vec;

use super::super::canvas::{Anchor, Canvas, Line, Point, TEXT_SIZE, Text, at, width};
use super::super::dimension::Tag;
use super::area::Area;
use crate::math::{abs, larger, smaller, sqrt};

/// Strokes and areas that are remembered: of 32 rivets with their forces, dimensions and labels.
const STROKES: usize = 400;
const AREAS: usize = 320;
/// Directions in which a place is looked for, the usual ones first.
const WAYS: [(f64, f64); 16] = [
    (DIAGONAL, -DIAGONAL),
    (-DIAGONAL, -DIAGONAL),
    (DIAGONAL, DIAGONAL),
    (-DIAGONAL, DIAGONAL),
    (1.0, 0.0),
    (-1.0, 0.0),
    (0.0, -1.0),
    (0.0, 1.0),
    (STEEP, -FLAT),
    (-STEEP, -FLAT),
    (STEEP, FLAT),
    (-STEEP, FLAT),
    (FLAT, -STEEP),
    (-FLAT, -STEEP),
    (FLAT, STEEP),
    (-FLAT, STEEP),
];
const DIAGONAL: f64 = core::f64::consts::FRAC_1_SQRT_2;
/// Cosine and sine of 22.5 degrees.
const STEEP: f64 = 0.923_879_532_511_286_7;
const FLAT: f64 = 0.382_683_432_365_089_8;
/// How far off it is looked for, mm of the sheet.
const RINGS: [f64; 13] = [0.5, 1.5, 3.0, 5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0, 30.0, 38.0, 48.0];
/// From this ring on a label has a leader.
const LED: usize = 3;
/// What it costs to lie over a text, over a hole, over a stroke, and to lie a ring further off.
const COSTS: (f64, f64, f64, f64) = (1000.0, 100.0, 30.0, 3.0);

/// Heads of the forces on the rivets: length and half width.
pub(super) const HEAD: (f64, f64) = (2.6, 0.65);
/// Heads of their shares.
pub(super) const SMALL_HEAD: (f64, f64) = (1.6, 0.35);
/// Least room around a label.
const AROUND: f64 = 0.5;

/// A place that was found.
pub(super) struct Spot {
    pub middle: Point,
    /// Where its leader runs, if it has one.
    led: Option<(Point, Point)>,
    cost: f64,
}

/// A canvas that remembers.
pub(super) struct Watch<'c> {
    canvas: &'c mut dyn Canvas,
    strokes: Vec<(Point, Point), STROKES>,
    /// Areas, and what it costs to lie over them.
    areas: Vec<(Area, f64), AREAS>,
    view: Area,
}

impl<'c> Watch<'c> {
    /// A canvas whose labels stay in a view.
    pub fn new(canvas: &'c mut dyn Canvas, view: Area) -> Self {
        Watch { canvas, strokes: Vec::new(), areas: Vec::new(), view }
    }

    /// Keeps an area free as far as that is possible. What there is no room for is not remembered: it may be crossed.
    pub fn keep_free(&mut self, area: Area) {
        let _ = self.areas.push((area, COSTS.1));
    }

    /// What it costs to lie there.
    fn cost(&self, area: Area) -> f64 {
        let over = self.areas.iter().filter(|(a, _)| a.meets(&area)).fold(0.0, |sum, (_, cost)| sum + cost);
        let crossed = self.strokes.iter().filter(|(a, b)| area.crossed(*a, *b)).count();
        over + COSTS.2 * crossed as f64
    }

    /// What a leader costs.
    fn leader_cost(&self, a: Point, b: Point) -> f64 {
        // It begins at what it points to.
        let met = |area: &Area| area.crossed(a, b) && !area.holds(b);
        let over = self.areas.iter().filter(|(area, _)| met(area)).fold(0.0, |sum, (_, cost)| sum + cost);
        let crossed = self.strokes.iter().filter(|(c, d)| meet((a, b), (*c, *d))).count();
        // Whatever it crosses is better than a text over another.
        smaller(over + 0.5 * COSTS.2 * crossed as f64, 0.5 * COSTS.0)
    }

    /// The freest place for something of half a width and half a height near a target, at a distance that is kept.
    pub fn spot(&self, (wide, high): (f64, f64), target: Point, clear: f64) -> Spot {
        let mut best = Spot { middle: target, led: None, cost: f64::INFINITY };
        for (ring, number) in RINGS.into_iter().zip(0_usize..) {
            // Further off it can only cost more.
            let far = COSTS.3 * f64::from(u8::try_from(number).unwrap_or(u8::MAX));
            if far >= best.cost {
                break;
            }
            for ((ux, uy), turn) in WAYS.into_iter().zip(0_u8..) {
                let off = clear + ring;
                // The box touches the ring with the corner or edge that is turned to it.
                let middle = at(target.x + ux * off + side(ux) * wide, target.y + uy * off + side(uy) * high);
                let area = Area::about(middle, wide + AROUND, high + AROUND);
                if !self.view.contains(&area) {
                    continue;
                }
                let led = (number >= LED).then(|| {
                    let tip = at(target.x + ux * clear, target.y + uy * clear);
                    (at(middle.x - side(ux) * (wide + AROUND), middle.y - side(uy) * (high + AROUND)), tip)
                });
                let cost =
                    self.cost(area) + far + 0.1 * f64::from(turn) + led.map_or(0.0, |(a, b)| self.leader_cost(a, b));
                if cost < best.cost {
                    best = Spot { middle, led, cost };
                }
            }
        }
        best
    }

    /// Writes a label at the freest place near one of some targets, the first of equal ones.
    pub fn label(&mut self, words: &str, targets: &[Point], clear: f64, tag: Tag) -> fmt::Result {
        let (wide, high) = (0.5 * width(words), 0.5 * TEXT_SIZE);
        let mut best: Option<Spot> = None;
        for target in targets {
            let spot = self.spot((wide, high), *target, clear);
            if best.as_ref().is_none_or(|b| spot.cost < b.cost) {
                best = Some(spot);
            }
        }
        let Some(Spot { middle, led, .. }) = best else { return Ok(()) };
        if let Some((a, b)) = led {
            self.line(Line::Dimension, a, b)?;
        }
        let base = at(middle.x, middle.y + 0.26 * TEXT_SIZE);
        self.text(&Text {
            content: words,
            at: base,
            anchor: Anchor::Middle,
            upright: false,
            key: tag.key,
            row: tag.row,
        })
    }
}

/// To which side of a target a box lies; nearly level with it, it is centred.
fn side(u: f64) -> f64 {
    if abs(u) < 0.2 {
        0.0
    } else if u > 0.0 {
        1.0
    } else {
        -1.0
    }
}

/// Whether two strokes cross.
fn meet((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let turn = |p: Point, q: Point, r: Point| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0
}

impl Canvas for Watch<'_> {
    fn line(&mut self, kind: Line, from: Point, to: Point) -> fmt::Result {
        let _ = self.strokes.push((from, to));
        self.canvas.line(kind, from, to)
    }

    fn circle(&mut self, kind: Line, centre: Point, radius: f64) -> fmt::Result {
        self.keep_free(Area::about(centre, radius, radius));
        self.canvas.circle(kind, centre, radius)
    }

    fn arc(&mut self, kind: Line, from: Point, to: Point, rise: f64) -> fmt::Result {
        self.canvas.arc(kind, from, to, rise)
    }

    fn triangle(&mut self, corners: [Point; 3]) -> fmt::Result {
        let [a, b, c] = corners;
        let _ = self.areas.push((Area::about(a, 0.0, 0.0).reaching(b).reaching(c), COSTS.2));
        self.canvas.triangle(corners)
    }

    fn text(&mut self, text: &Text<'_>) -> fmt::Result {
        let wide = width(text.content);
        let before = match text.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => 0.5 * wide,
            Anchor::End => wide,
        };
        let (up, down) = (0.76 * TEXT_SIZE, 0.24 * TEXT_SIZE);
        let Point { x, y } = text.at;
        let area = if text.upright {
            Area { x0: x - up, y0: y + before - wide, x1: x + down, y1: y + before }
        } else {
            Area { x0: x - before, y0: y - up, x1: x - before + wide, y1: y + down }
        };
        let _ = self.areas.push((area, COSTS.0));
        self.canvas.text(text)
    }
}

/// An arrow: a stroke of a kind with a head of a length and a half width. Where it is too short for its head, the head
/// shrinks.
pub(super) fn arrow(
    canvas: &mut dyn Canvas,
    kind: Line,
    from: Point,
    tip: Point,
    (long, half): (f64, f64),
) -> fmt::Result {
    let (dx, dy) = (tip.x - from.x, tip.y - from.y);
    let length = sqrt(dx * dx + dy * dy);
    if length < 0.05 {
        return Ok(());
    }
    let (ux, uy) = (dx / length, dy / length);
    let head = smaller(long, 0.6 * length);
    let w = half * larger(head / long, 0.4);
    let neck = at(tip.x - head * ux, tip.y - head * uy);
    canvas.line(kind, from, neck)?;
    canvas.triangle([tip, at(neck.x - w * uy, neck.y + w * ux), at(neck.x + w * uy, neck.y - w * ux)])
}
