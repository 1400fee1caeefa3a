//! What a drawing is made of: lines by kind, circles, arcs, arrow heads and texts, in millimetres of the sheet.

use core::fmt;

/// Size of the letters (the em), mm: capitals and figures are then 2.5 mm high.
pub const TEXT_SIZE: f64 = 3.5;

/// A point of the sheet, mm: x to the right, y down.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

/// Shorthand.
pub(super) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

/// Kinds of lines (ISO 128).
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
pub enum Line {
    /// Visible outlines: wide, continuous.
    Outline,
    /// Edges of holes: drawn as outlines.
    Hole,
    /// Hidden outlines: narrow, dashed.
    Hidden,
    /// Centre lines: narrow, long dash and dot.
    Centre,
    /// The short axis across a hole: narrow, continuous (too short for dashes).
    Axis,
    /// Dimension, extension and leader lines: narrow, continuous.
    Dimension,
    /// Hatching: narrow, continuous.
    Hatch,
    /// Limits of interrupted views: narrow, continuous, with zigzags.
    Break,
    /// Ends of a cutting plane: extra wide.
    Cut,
    /// The force on a rivet: wide.
    Force,
    /// The force on the critical rivet, and the ring round it: extra wide.
    Critical,
    /// A load or a couple: extra wide.
    Load,
    /// A share of a load at the centroid: narrow, dashed.
    Direct,
    /// A share of a moment: narrow, continuous.
    Turning,
    /// Frame of sheet and title block, and the symbol of the projection: wide.
    Frame,
    /// Lines between the fields of the title block: narrow.
    Rule,
}

/// Where the reference point of a text lies on its base line.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
pub enum Anchor {
    /// At its beginning.
    Start,
    /// In its middle.
    Middle,
    /// At its end.
    End,
}

/// A text of the sheet, [`TEXT_SIZE`] large.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Text<'a> {
    /// The letters, not yet escaped.
    pub content: &'a str,
    /// Reference point on the base line.
    pub at: Point,
    /// What of the text lies there.
    pub anchor: Anchor,
    /// Whether it reads upwards.
    pub upright: bool,
    /// What it tells: the key of a dimension (`pitch`, `back_pitch`), or `note`, `title`, `caption`, `caution`.
    pub key: &'static str,
    /// Number of the row (from 1), 0 where the key has none.
    pub row: usize,
}

/// Something that a drawing can be made on.
pub trait Canvas {
    /// A straight line.
    ///
    /// # Errors
    /// When the canvas takes no more; the drawing stops there.
    fn line(&mut self, kind: Line, from: Point, to: Point) -> fmt::Result;

    /// A circle.
    ///
    /// # Errors
    /// As [`Canvas::line`].
    fn circle(&mut self, kind: Line, centre: Point, radius: f64) -> fmt::Result;

    /// An arc, clockwise to the eye, less than a half circle, whose middle lies `rise` off its chord.
    ///
    /// # Errors
    /// As [`Canvas::line`].
    fn arc(&mut self, kind: Line, from: Point, to: Point, rise: f64) -> fmt::Result;

    /// A filled triangle: arrow heads and marks.
    ///
    /// # Errors
    /// As [`Canvas::line`].
    fn triangle(&mut self, corners: [Point; 3]) -> fmt::Result;

    /// A text.
    ///
    /// # Errors
    /// As [`Canvas::line`].
    fn text(&mut self, text: &Text<'_>) -> fmt::Result;
}

/// Width of a text, mm, on the safe side of the usual sans-serif faces.
pub(super) fn width(text: &str) -> f64 {
    text.chars().fold(0.0, |sum, c| sum + letter(c))
}

/// Width of a letter, mm.
pub(super) fn letter(c: char) -> f64 {
    let em = match c {
        'A'..='Z' | 'm' | 'w' | '%' | '&' | '@' => 0.75,
        c if (c as u32) < 0x1100 || c == '\u{2300}' => 0.62,
        _ => 1.1,
    };
    em * TEXT_SIZE
}
