//! Title block, notes and caution.

use core::fmt::{self, Write};

use heapless::String;

use super::canvas::{Anchor, Canvas, Line, Point, Text, at, letter};
use super::{Extent, TitleBlock, Units};
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::{Arrangement, Joint, JointKind};
use crate::shop::{Run, ShopSheet};
use crate::{CAUTION, VERSION};

/// Width of the block, and where its values begin.
pub(super) const WIDE: f64 = 80.0;
const VALUES: f64 = 26.0;
/// Width of a value.
const VALUE_WIDE: f64 = WIDE - VALUES - 1.5;
/// From one line of text to the next, and what a field needs beside its lines.
pub(super) const LEADING: f64 = 4.4;
const PADDING: f64 = 1.2;
/// Height of the field with the projection symbol.
const SYMBOL: f64 = 9.0;

/// Letters of the notes: places and sizes of all rivets of a group.
const NOTES: usize = 2560;

/// What stands on the sheet besides the views.
pub(super) struct Block<'a> {
    pub title: &'a TitleBlock<'a>,
    /// What is drawn, under its name.
    name: &'static str,
    form: String<200>,
    notes: String<NOTES>,
    /// What governs; of a group.
    governs: Option<String<120>>,
}

impl<'a> Block<'a> {
    /// Takes the texts over; refuses those that do not fit.
    pub fn new(joint: &Joint, title: &'a TitleBlock<'a>) -> Result<Self, Error> {
        let mut block = Block::of(title)?;
        // Both texts have room for every form.
        let _ = write!(block.form, "{}", joint.form());
        let _ = notes(&mut block.notes, joint, title);
        Ok(block)
    }

    /// Takes the texts of a group over; refuses those that do not fit.
    pub fn of_group(title: &'a TitleBlock<'a>, form: String<200>, governs: String<120>) -> Result<Self, Error> {
        Ok(Block { name: "Group", form, governs: Some(governs), ..Block::of(title)? })
    }

    /// The same with other notes.
    pub fn set_notes(&mut self, write: &dyn Fn(&mut dyn Write) -> fmt::Result) {
        self.notes.clear();
        // There is room for the notes of every group.
        let _ = write(&mut self.notes);
    }

    /// A block without anything but its title.
    fn of(title: &'a TitleBlock<'a>) -> Result<Self, Error> {
        let fields = [
            (title.object, 3),
            (title.drawing_no, 2),
            (title.rule_book, 3),
            (title.date, 1),
            (title.prepared, 1),
            (title.checked, 1),
        ];
        for ((text, most), number) in fields.into_iter().zip(1_u8..) {
            let lines = lines(text, VALUE_WIDE);
            if lines > most {
                let error = Error::new(ErrorKind::TooLarge, Field::Text).index(number);
                return Err(error.value(f64::from(lines)).limit(f64::from(most)));
            }
        }
        Ok(Block { title, name: "Joint", form: String::new(), notes: String::new(), governs: None })
    }

    /// The same with the run of a shop sheet among the notes.
    pub fn with_run(mut self, sheet: &ShopSheet) -> Self {
        // There is room for every run.
        let _ = run(&mut self.notes, sheet, self.title.units);
        self
    }

    /// Lines of caution and notes in a width.
    pub fn note_lines(&self, wide: f64) -> u32 {
        lines(CAUTION, wide).saturating_add(lines(&self.notes, wide))
    }

    /// Draws caution and notes, the first base line at `from`.
    pub fn draw_notes(&self, canvas: &mut dyn Canvas, from: Point, wide: f64) -> fmt::Result {
        let mut y = from.y;
        for (text, key) in [(CAUTION, "caution"), (&*self.notes, "note")] {
            wrap(text, wide, &mut |line| {
                let at = at(from.x, y);
                y += LEADING;
                canvas.text(&Text { content: line, at, anchor: Anchor::Start, upright: false, key, row: 0 })
            })?;
        }
        Ok(())
    }

    /// The fields from top to bottom.
    fn fields<'s>(&'s self, scale: &'s str) -> [(&'static str, &'s str); 11] {
        let t = self.title;
        // A group is seen from one side only.
        let seen = self.governs.as_ref().map_or(("Projection", "first angle"), |words| ("Critical", words));
        [
            ("Object", t.object),
            (self.name, &self.form),
            ("Drawing no.", t.drawing_no),
            ("Rule book", t.rule_book),
            ("Scale", scale),
            ("Dimensions", if t.units == Units::Inch { "inches; do not scale" } else { "mm; do not scale" }),
            seen,
            ("Drawn by", concat!("seamwright ", env!("CARGO_PKG_VERSION"))),
            ("Date", t.date),
            ("Prepared", t.prepared),
            ("Checked", t.checked),
        ]
    }

    /// Height of the block.
    pub fn height(&self, scale: &str) -> f64 {
        self.fields(scale).iter().fold(0.0, |sum, &(name, value)| sum + field_height(name, value))
    }

    /// Draws the block, its lower left corner at `corner`.
    pub fn draw(&self, canvas: &mut dyn Canvas, corner: Point, scale: &str) -> fmt::Result {
        let mut y = corner.y - self.height(scale);
        canvas.line(Line::Frame, at(corner.x, y), at(corner.x, corner.y))?;
        canvas.line(Line::Frame, at(corner.x + WIDE, y), at(corner.x + WIDE, corner.y))?;
        canvas.line(Line::Frame, at(corner.x, y), at(corner.x + WIDE, y))?;
        for (name, value) in self.fields(scale) {
            let high = field_height(name, value);
            let mut base = y + LEADING - 0.4;
            if name == "Projection" {
                base = y + 0.5 * SYMBOL + 1.25;
                symbol(canvas, at(corner.x + WIDE - 21.0, y + 0.5 * SYMBOL))?;
            }
            let mut line = |x: f64, y: f64, content: &str| {
                let at = at(corner.x + x, y);
                canvas.text(&Text { content, at, anchor: Anchor::Start, upright: false, key: "title", row: 0 })
            };
            line(1.0, base, name)?;
            wrap(value, VALUE_WIDE, &mut |words| {
                let done = line(VALUES, base, words);
                base += LEADING;
                done
            })?;
            y += high;
            canvas.line(Line::Rule, at(corner.x, y), at(corner.x + WIDE, y))?;
        }
        Ok(())
    }
}

/// Height of a field.
fn field_height(name: &str, value: &str) -> f64 {
    let lines = lines(value, VALUE_WIDE);
    if name == "Projection" { SYMBOL } else { LEADING * f64::from(if lines > 0 { lines } else { 1 }) + PADDING }
}

/// The symbol of first-angle projection: the truncated cone from the side, and to its right as seen from its left.
fn symbol(canvas: &mut dyn Canvas, from: Point) -> fmt::Result {
    let (x, y) = (from.x, from.y);
    let cone = [at(x, y - 1.5), at(x + 7.0, y - 3.0), at(x + 7.0, y + 3.0), at(x, y + 1.5)];
    let [a, b, c, d] = cone;
    for (p, q) in [(a, b), (b, c), (c, d), (d, a)] {
        canvas.line(Line::Frame, p, q)?;
    }
    let centre = at(x + 14.0, y);
    canvas.circle(Line::Frame, centre, 3.0)?;
    canvas.circle(Line::Frame, centre, 1.5)?;
    canvas.line(Line::Axis, at(x - 1.0, y), at(x + 8.0, y))?;
    canvas.line(Line::Axis, at(x + 10.0, y), at(x + 18.0, y))?;
    canvas.line(Line::Axis, at(centre.x, y - 4.0), at(centre.x, y + 4.0))
}

/// The conventions of this drawing.
fn notes(out: &mut dyn Write, joint: &Joint, title: &TitleBlock<'_>) -> fmt::Result {
    out.write_str(
        "Driven rivets fill their holes. Snap heads 1.6 d wide, 0.7 d high (d: cold rivet; common practice), left out in \
the plan. Section A-A: all rows turned into its plane.",
    )?;
    let form = joint.form();
    let zigzag = form.arrangement() == Arrangement::Zigzag;
    match (title.extent, form.row_count() > 1, zigzag) {
        (Extent::Tie, _, _) => {
            out.write_str(" Rows are centred on the width")?;
            let shape = super::shape::Shape::new(joint, title.extent).map_err(|_| fmt::Error)?;
            if shape.shift > 0.0 {
                out.write_str(", shifted by ")?;
                super::dimension::length(out, title.units, shape.shift)?;
                out.write_str(" to alternate sides")?;
            }
            out.write_str(".")?;
        }
        (Extent::Seam, true, true) => {
            out.write_str(" Zig-zag: neighbouring rows offset by half the pitch of the denser one.")?;
        }
        (Extent::Seam, true, false) => out.write_str(" Chain: rivets of all rows behind each other.")?,
        (Extent::Seam, false, _) => {}
    }
    if title.extent == Extent::Seam {
        out.write_str(" Solid triangles at edges: caulked.")?;
    }
    if form.kind() != JointKind::Lap {
        out.write_str(" Symmetrical about the butt.")?;
    }
    Ok(())
}

/// Length, number of pitches and ends of a run.
fn run(out: &mut dyn Write, sheet: &ShopSheet, units: Units) -> fmt::Result {
    let length = |out: &mut dyn Write, mm: f64| {
        super::dimension::length(out, units, mm)?;
        out.write_str(if units == Units::Inch { " in" } else { " mm" })
    };
    let taken = &sheet.pitch.taken;
    match sheet.order.run() {
        Run::Tie => return Ok(()),
        Run::Straight { .. } => out.write_str(" Seam ")?,
        Run::Girth { .. } => out.write_str(" Girth seam, round the circle of holes ")?,
    }
    length(out, sheet.along.seam)?;
    // A strip holds so many pitches of the outer row.
    let pitches = taken.strips.saturating_mul(u32::from(sheet.joint.form().outer_rivets()));
    write!(out, ": {pitches} pitch{} of ", if pitches == 1 { "" } else { "es" })?;
    length(out, taken.pitch)?;
    if let Run::Straight { first_end, last_end, .. } = sheet.order.run() {
        out.write_str("; row 1: first hole ")?;
        length(out, first_end.to_mm())?;
        out.write_str(" from the end of the plate, last hole ")?;
        length(out, last_end.to_mm())?;
        out.write_str(" from the other end")?;
    }
    out.write_str(". Places of all holes: shop sheet.")
}

/// How many lines a text takes.
fn lines(text: &str, wide: f64) -> u32 {
    let mut count = 0_u32;
    let _ = wrap(text, wide, &mut |_| {
        count = count.saturating_add(1);
        Ok(())
    });
    count
}

/// Breaks a text at its blanks (a word longer than a line anywhere).
pub(super) fn wrap(text: &str, wide: f64, each: &mut dyn FnMut(&str) -> fmt::Result) -> fmt::Result {
    let mut rest = text.trim();
    while !rest.is_empty() {
        let (mut sum, mut blank, mut end) = (0.0, 0, rest.len());
        for (i, c) in rest.char_indices() {
            if c == ' ' {
                blank = i;
            }
            sum += letter(c);
            if sum > wide {
                end = if blank > 0 {
                    blank
                } else if i > 0 {
                    i
                } else {
                    c.len_utf8()
                };
                break;
            }
        }
        let Some((line, tail)) = rest.split_at_checked(end) else { return Ok(()) };
        each(line.trim_end())?;
        rest = tail.trim_start();
    }
    Ok(())
}

/// So that the version printed is the library's.
const _: () = assert!(VERSION.len() == env!("CARGO_PKG_VERSION").len());
