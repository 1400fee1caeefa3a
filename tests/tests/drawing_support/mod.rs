//! A canvas that collects boxes, and what a drawing owes its reader.
#![allow(dead_code, reason = "each test file uses its part")]

use std::fmt;

use seamwright::drawing::{Anchor, Canvas, DrawError, Extent, Line, Point, TEXT_SIZE, Text, TitleBlock, sheet};
use seamwright::error::{Error, ErrorKind};
use seamwright::joint::{Form, Joint, JointKind, JointSpec};
use seamwright::quantities::Length;

pub const TITLE: TitleBlock<'static> = TitleBlock::new("Steam drum, longitudinal seam", "D-104");

/// A sheet as it is drawn: holes, texts with their boxes, and how far strokes reach.
#[derive(Default)]
pub struct Seen {
    pub holes: Vec<(f64, f64, f64)>,
    pub hidden: Vec<(f64, f64)>,
    pub texts: Vec<(String, String, usize, [f64; 4])>,
    pub strokes: Vec<(Line, Point, Point)>,
    /// Circles of all kinds.
    pub circles: Vec<(Line, Point, f64)>,
    /// First corners of filled triangles: the tips of arrow heads.
    pub tips: Vec<Point>,
    pub arcs: Vec<(Point, Point)>,
    /// Boxes of rivet heads in the section.
    pub heads: Vec<[f64; 4]>,
    reach: [f64; 4],
}

impl Seen {
    pub fn of(joint: &Joint, title: &TitleBlock<'_>) -> Result<Self, DrawError> {
        Seen::drawn(|canvas| sheet(canvas, joint, title))
    }

    pub fn drawn(draw: impl FnOnce(&mut Seen) -> Result<(), DrawError>) -> Result<Self, DrawError> {
        let mut seen =
            Seen { reach: [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY], ..Seen::default() };
        draw(&mut seen).map(|()| seen)
    }

    fn stretch(&mut self, p: Point) -> fmt::Result {
        assert!(p.x.is_finite() && p.y.is_finite());
        let [x0, y0, x1, y1] = self.reach;
        self.reach = [x0.min(p.x), y0.min(p.y), x1.max(p.x), y1.max(p.y)];
        Ok(())
    }

    pub fn keyed(&self) -> Vec<(String, usize)> {
        let words = ["title", "note", "caution", "caption", "hole_rows"];
        let mut keys: Vec<_> = self.texts.iter().map(|t| (t.1.clone(), t.2)).collect();
        keys.retain(|(key, _)| !words.contains(&key.as_str()));
        keys.sort();
        keys
    }

    pub fn joined(&self, key: &str) -> String {
        self.texts.iter().filter(|t| t.1 == key).map(|t| t.0.as_str()).collect::<Vec<_>>().join(" ")
    }
}

/// The box of a text: 0.62 of the letter size for each letter, from a quarter below the base line to three quarters above.
fn text_box(text: &Text<'_>) -> [f64; 4] {
    let wide = 0.62 * TEXT_SIZE * text.content.chars().count() as f64;
    let before = match text.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => 0.5 * wide,
        Anchor::End => wide,
    };
    let (up, down) = (0.75 * TEXT_SIZE, 0.22 * TEXT_SIZE);
    let Point { x, y } = text.at;
    if text.upright {
        [x - up, y + before - wide, x + down, y + before]
    } else {
        [x - before, y - up, x - before + wide, y + down]
    }
}

impl Canvas for Seen {
    fn line(&mut self, kind: Line, from: Point, to: Point) -> fmt::Result {
        if kind == Line::Hidden {
            self.hidden.push((from.x, to.x));
        }
        self.strokes.push((kind, from, to));
        self.stretch(from)?;
        self.stretch(to)
    }

    fn circle(&mut self, kind: Line, centre: Point, radius: f64) -> fmt::Result {
        self.circles.push((kind, centre, radius));
        if kind == Line::Hole {
            self.holes.push((centre.x, centre.y, radius));
        }
        self.stretch(Point { x: centre.x - radius, y: centre.y - radius })?;
        self.stretch(Point { x: centre.x + radius, y: centre.y + radius })
    }

    fn arc(&mut self, _: Line, from: Point, to: Point, rise: f64) -> fmt::Result {
        let off = if to.x > from.x { -rise } else { rise };
        let (y0, y1) = (from.y.min(from.y + off), from.y.max(from.y + off));
        self.arcs.push((from, to));
        self.heads.push([from.x.min(to.x), y0, from.x.max(to.x), y1]);
        self.stretch(Point { x: from.x, y: from.y + off })?;
        self.stretch(to)
    }

    fn triangle(&mut self, corners: [Point; 3]) -> fmt::Result {
        self.tips.push(corners[0]);
        corners.into_iter().try_for_each(|p| self.stretch(p))
    }

    fn text(&mut self, text: &Text<'_>) -> fmt::Result {
        self.texts.push((text.content.to_string(), text.key.to_string(), text.row, text_box(text)));
        Ok(())
    }
}

/// Every dimension that the drawing of a joint owes its reader.
pub fn owed(joint: &Joint, extent: Extent) -> Vec<(String, usize)> {
    let form = joint.form();
    let mut keys = vec!["margin", "inner_margin", "plate"];
    keys.extend(match form.kind() {
        JointKind::Lap => &["overlap", "other_plate"][..],
        JointKind::SingleStrap => &["strap_width", "strap"],
        JointKind::DoubleStrap => &["narrow_width", "wide_width", "narrow_strap", "wide_strap"],
    });
    if extent == Extent::Tie {
        keys.push("width");
    }
    if extent == Extent::Seam || form.densest_rivets() > 1 {
        keys.push("pitch");
    }
    let mut keys: Vec<_> = keys.into_iter().map(|k| (k.to_string(), 0)).collect();
    keys.extend((1..form.row_count()).map(|i| ("back_pitch".to_string(), i)));
    for (i, row) in form.rows().enumerate() {
        if extent == Extent::Seam && form.rows().take(i).all(|r| r.rivets != row.rivets) && i > 0 {
            keys.push(("row_pitch".to_string(), i + 1));
        }
    }
    // Holes: the row nearest to the label names its size.
    let rows = joint.rows();
    let same = |a: usize, b: usize| rows[a].hole() == rows[b].hole() && rows[a].rivet() == rows[b].rivet();
    for i in 0..rows.len() {
        let mut nearer = if form.kind() == JointKind::Lap { i + 1..rows.len() } else { 0..i };
        if nearer.all(|j| !same(i, j)) {
            keys.push(("hole".to_string(), i + 1));
        }
    }
    keys.sort();
    keys
}

/// No label over another, and everything inside the frame.
pub fn legible(seen: &Seen) -> Result<(), String> {
    for (i, a) in seen.texts.iter().enumerate() {
        let [x0, y0, x1, y1] = a.3;
        if x0 < 20.0 || y0 < 10.0 || x1 > 287.0 || y1 > 200.3 {
            return Err(format!("outside the frame: {a:?}"));
        }
        for b in &seen.texts[i + 1..] {
            let [u0, v0, u1, v1] = b.3;
            if x0 < u1 && u0 < x1 && y0 < v1 && v0 < y1 {
                return Err(format!("{a:?} overlaps {b:?}"));
            }
        }
    }
    let [x0, y0, x1, y1] = seen.reach;
    if x0 < 20.0 || y0 < 10.0 || x1 > 287.0 + 1e-9 || y1 > 200.0 + 1e-9 {
        return Err(format!("strokes outside the frame: {:?}", seen.reach));
    }
    Ok(())
}

pub fn mm(x: f64) -> Length {
    Length::mm(x)
}

/// A joint of rivets 1 mm smaller than their holes.
pub fn joint(
    form: Form,
    pitch: f64,
    plate: f64,
    hole: f64,
    gaps: &[f64],
    margin: f64,
    straps: Option<(f64, f64)>,
) -> Joint {
    let mut spec = JointSpec::new(form, mm(pitch), mm(plate), mm(hole)).rivet(mm(hole - 1.0)).margin(mm(margin));
    for (i, &gap) in gaps.iter().enumerate() {
        spec = spec.back_pitch(i + 1, mm(gap));
    }
    spec = match straps {
        Some((wide, narrow)) if form.kind() == JointKind::DoubleStrap => spec.straps(mm(wide), mm(narrow)),
        Some((strap, _)) => spec.strap(mm(strap)),
        None => spec,
    };
    spec.build().unwrap()
}

/// The share of a stroke from where it enters a box to where it leaves it; `None` where it passes by.
fn within([x0, y0, x1, y1]: [f64; 4], a: Point, b: Point) -> Option<(f64, f64)> {
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (from, to, low, high) in [(a.x, b.x, x0, x1), (a.y, b.y, y0, y1)] {
        if from == to {
            if from <= low || from >= high {
                return None;
            }
            continue;
        }
        let (s, t) = ((low - from) / (to - from), (high - from) / (to - from));
        enter = enter.max(s.min(t));
        leave = leave.min(s.max(t));
    }
    (enter < leave).then_some((enter, leave))
}

/// No stroke of a kind through a label.
pub fn struck(seen: &Seen, kinds: &[Line]) -> Vec<String> {
    let mut wrong = Vec::new();
    for text in &seen.texts {
        let [x0, y0, x1, y1] = text.3;
        let inner = [x0 + 0.3, y0 + 0.3, x1 - 0.3, y1 - 0.3];
        for (kind, a, b) in seen.strokes.iter().filter(|s| kinds.contains(&s.0)) {
            if within(inner, *a, *b).is_some() {
                wrong.push(format!("{kind:?} {a:?} {b:?} through {text:?}"));
            }
        }
    }
    wrong
}

/// No stroke through a label; no leader through a hole of the plan, a head of the section or a dimension line.
pub fn crossed(seen: &Seen) -> Vec<String> {
    let mut wrong = struck(seen, &[Line::Outline, Line::Dimension, Line::Centre, Line::Cut, Line::Frame]);
    let lines = |kinds: &'static [Line]| seen.strokes.iter().filter(move |s| kinds.contains(&s.0));
    // Leaders are the oblique ones that reach far; strokes at the ends of dimensions are short.
    let far = |a: &Point, b: &Point| (a.x - b.x).hypot(a.y - b.y) > 4.0;
    let leaders: Vec<_> = lines(&[Line::Dimension]).filter(|(_, a, b)| a.x != b.x && a.y != b.y && far(a, b)).collect();
    for (_, a, b) in leaders {
        let holes = seen.holes.iter().map(|(x, y, r)| [x - 0.7 * r, y - 0.7 * r, x + 0.7 * r, y + 0.7 * r]);
        for part in holes.chain(seen.heads.iter().copied()) {
            if within(part, *a, *b).is_some() {
                wrong.push(format!("leader {a:?} {b:?} through {part:?}"));
            }
        }
        // A leader to the column of labels may cross the extension lines of a width, never the dimension itself.
        let labelled = a.x.max(b.x) > 205.0;
        let meets = |c: &Point, d: &Point| far(c, d) && (c.y == d.y || (c.x == d.x && !labelled));
        for (_, c, d) in lines(&[Line::Dimension]).filter(|(_, c, d)| meets(c, d)) {
            let thin = [c.x.min(d.x) - 0.01, c.y.min(d.y) - 0.01, c.x.max(d.x) + 0.01, c.y.max(d.y) + 0.01];
            if within(thin, *a, *b).is_some_and(|(enter, leave)| enter > 0.02 && leave < 0.98) {
                wrong.push(format!("leader {a:?} {b:?} through the dimension {c:?} {d:?}"));
            }
        }
    }
    wrong
}

/// A sink with room for so many bytes.
pub struct Room(pub usize);

impl fmt::Write for Room {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        self.0 = self.0.checked_sub(text.len()).ok_or(fmt::Error)?;
        Ok(())
    }
}

/// Buffers of every size up to one more than needed: the whole drawing, or the length that is needed.
pub fn every_size(whole: &str, write: impl Fn(&mut [u8]) -> Result<usize, Error>) {
    let mut buffer = vec![0; whole.len() + 1];
    for size in 0..=whole.len() + 1 {
        match write(&mut buffer[..size]) {
            Ok(written) => assert!(size >= whole.len() && buffer[..written] == *whole.as_bytes()),
            Err(e) => {
                assert!(size < whole.len());
                assert_eq!((e.kind, e.value, e.limit), (ErrorKind::NoSpace, size as f64, whole.len() as f64));
            }
        }
    }
}
