//! Where everything goes on the sheet, and to which scale.

use core::fmt::{self, Write};

use super::canvas::{Anchor, Canvas, Line, Text, at};
use super::dimension::Words;
use super::plan::{self, PlanView, Room, STUB};
use super::section::{self, SectionView, WIDTHS};
use super::shape::Shape;
use super::title::{self, Block};
use crate::joint::JointKind;
use crate::math::{larger, smaller};
use crate::quantities::Length;
use crate::shop::Layout;

/// The frame of the sheet: left, top, right, bottom. The filing margin is on the left.
pub(super) const FRAME: (f64, f64, f64, f64) = (20.0, 10.0, 287.0, 200.0);
/// Left end of the column with labels and title block.
pub(super) const COLUMN: f64 = FRAME.2 - title::WIDE;
/// Width of the notes.
pub(super) const NOTES: f64 = COLUMN - FRAME.0 - 4.0;
/// Right end of the views with the marks of the cutting plane.
pub(super) const VIEWS_END: f64 = COLUMN - 2.0;
/// Room for a mark of the cutting plane beside the plan.
const MARK: f64 = 10.0;
/// From the frame to the section: caption, width of the upper strap.
const ABOVE_SECTION: f64 = 20.0;
/// From section to plan: caption, and the width of a lower strap.
const CAPTION: f64 = 9.0;
/// Below the plan: the chain and its spread labels.
const BELOW_PLAN: f64 = 20.0;
/// Half the longest width of a strap in words.
const WIDTH_LABEL: f64 = 34.0;
/// Thinnest member that is left at the scale of the plan, mm of the sheet.
const THIN: f64 = 2.5;
/// Base line of the first hole label.
const HOLES: f64 = 52.0;
/// Room beyond the last holes of a broken-off plan, mm of the sheet.
const BEYOND: f64 = 3.0;

/// A scale.
#[derive(Clone, Copy)]
pub(super) struct Scale {
    pub factor: f64,
    pub name: &'static str,
}

macro_rules! scales {
    ($($name:literal $of:literal $to:literal;)*) => {
        /// Scales of ISO 5455, and 1:2.5, from large to small.
        pub(super) const SCALES: &[Scale] = &[$(Scale { factor: $of / $to, name: $name }),*];
    };
}

scales! {
    "50:1" 50.0 1.0; "20:1" 20.0 1.0; "10:1" 10.0 1.0; "5:1" 5.0 1.0; "2:1" 2.0 1.0; "1:1" 1.0 1.0;
    "1:2" 1.0 2.0; "1:2.5" 1.0 2.5; "1:5" 1.0 5.0; "1:10" 1.0 10.0; "1:20" 1.0 20.0; "1:50" 1.0 50.0;
    "1:100" 1.0 100.0; "1:200" 1.0 200.0; "1:500" 1.0 500.0; "1:1000" 1.0 1000.0; "1:2000" 1.0 2000.0;
    "1:5000" 1.0 5000.0; "1:10000" 1.0 10000.0;
}

/// The scales of plan and section.
pub(super) struct Scales {
    pub plan: Scale,
    pub section: Scale,
}

/// Lower strap's width below the section.
fn below_section(shape: &Shape<'_>) -> f64 {
    if shape.kind == JointKind::DoubleStrap { 3.0 * WIDTHS } else { 2.0 }
}

/// Length of the seam shown on the sheet, on the sheet.
fn plan_height(shape: &Shape<'_>, s: f64) -> f64 {
    if shape.tie { s * shape.strip } else { s * (shape.reach(3) + shape.largest_hole()) + 2.0 * BEYOND }
}

/// Height that section and plan have together.
fn height_for_views(shape: &Shape<'_>, block: &Block<'_>) -> f64 {
    notes_top(block) - FRAME.1 - ABOVE_SECTION - below_section(shape) - CAPTION - BELOW_PLAN
}

/// Base line of the first note.
pub(super) fn notes_top(block: &Block<'_>) -> f64 {
    FRAME.3 - 1.5 - 4.4 * f64::from(block.note_lines(NOTES)) + 3.0
}

impl Scales {
    /// The largest scales that fit: one for both views, unless that draws a member too thin.
    pub fn choose(shape: &Shape<'_>, block: &Block<'_>) -> Scales {
        let wide = VIEWS_END - MARK - FRAME.0 - 1.0 - plan::lanes_room(shape) - 2.0 * STUB;
        let high = height_for_views(shape, block);
        let deep = section::height(shape);
        let smallest = Scale { factor: 1.0 / 5000.0, name: "1:5000" };
        let across = |s: f64| s * 2.0 * shape.half <= wide;
        let largest = |fits: &dyn Fn(f64) -> bool| SCALES.iter().find(|s| fits(s.factor)).copied().unwrap_or(smallest);
        let both = largest(&|s| across(s) && plan_height(shape, s) + s * deep <= high);
        let thinnest = shape.thick.iter().fold(f64::INFINITY, |t, &x| if x > 0.0 { smaller(t, x) } else { t });
        let left = high - plan_height(shape, both.factor);
        let section = largest(&|s| across(s) && s * deep <= left);
        if both.factor * thinnest < THIN && section.factor > both.factor {
            Scales { plan: both, section }
        } else {
            Scales { plan: both, section: both }
        }
    }

    /// What the title block says.
    fn words(&self) -> Words {
        let mut words = Words::new();
        // Both names are short.
        let _ = if self.plan.factor == self.section.factor {
            words.write_str(self.plan.name)
        } else {
            write!(words, "plan {}, section {}", self.plan.name, self.section.name)
        };
        words
    }
}

pub(super) fn caption(canvas: &mut dyn Canvas, x: f64, y: f64, name: &str, scale: &str) -> fmt::Result {
    let mut words = Words::new();
    write!(words, "{name} ({scale})")?;
    let at = at(x, y);
    canvas.text(&Text { content: &words, at, anchor: Anchor::Start, upright: false, key: "caption", row: 0 })
}

/// Draws the frame of the sheet.
pub(super) fn frame(canvas: &mut dyn Canvas) -> fmt::Result {
    let (l, t, r, b) = FRAME;
    for (p, q) in [((l, t), (r, t)), ((r, t), (r, b)), ((r, b), (l, b)), ((l, b), (l, t))] {
        canvas.line(Line::Frame, at(p.0, p.1), at(q.0, q.1))?;
    }
    Ok(())
}

/// Draws the A4 sheet.
pub(super) fn sheet(canvas: &mut dyn Canvas, shape: &Shape<'_>, block: &Block<'_>) -> fmt::Result {
    let scales = Scales::choose(shape, block);
    let (l, t, _, b) = FRAME;
    frame(canvas)?;
    let words = scales.words();
    block.draw(canvas, at(COLUMN, b), &words)?;
    block.draw_notes(canvas, at(l + 2.0, notes_top(block)), NOTES)?;

    let s = scales.plan.factor;
    let high = plan_height(shape, s);
    let deep = scales.section.factor * section::height(shape);
    // What is left over stands above, between and below the views.
    let spare = larger(height_for_views(shape, block) - high - deep, 0.0) / 3.0;
    let lanes = l + 1.0 + plan::lanes_room(shape);
    let x = 0.5 * (lanes + VIEWS_END - MARK);
    let widest = larger(s, scales.section.factor) * shape.half;
    // Left of the widest view and of the longest width written over it.
    let left = x - larger(widest + STUB, WIDTH_LABEL);
    let units = block.title.units;

    let top = t + ABOVE_SECTION + 0.5 * spare;
    let middle = top + 0.5 * deep;
    let labels = at(COLUMN + 2.0, larger(smaller(middle - 6.0, HOLES - 20.0), 17.0));
    section::draw(canvas, shape, &SectionView { factor: scales.section.factor, x, top, labels, units })?;
    caption(canvas, left, t + 5.5 + 0.5 * spare, "SECTION A-A", scales.section.name)?;

    let plan_top = top + deep + below_section(shape) + CAPTION + spare;
    caption(canvas, left, plan_top - 3.5, "PLAN", scales.plan.name)?;
    let length = if shape.tie { shape.strip } else { high / s };
    let strips = shape.shown();
    let view = PlanView {
        factor: s,
        x,
        top: plan_top,
        first: plan::first_of(shape, strips, length),
        length,
        strips,
        seam: None,
        broken: !shape.tie,
        measured: false,
    };
    // Beside the plan, so that their leaders stay clear of the section; above the title block.
    let lowest = b - block.height(&words) - plan::LEADING * f64::from(plan::hole_lines(shape));
    let hole_label = larger(smaller(plan_top + 4.0, lowest), HOLES);
    let room = Room {
        across: (l + 2.0, VIEWS_END),
        top: t + 2.0,
        lanes: left,
        holes: at(COLUMN + 2.0, hole_label),
        wide: title::WIDE - 3.0,
        units,
    };
    plan::draw(canvas, shape, &view, &room)
}

/// Draws section and plan at full size for a drawing that is scaled up by the inverse of `s`; the datum is at (0, 0).
/// A seam is drawn over its length, each hole where the shop's layout has it.
pub(super) fn full_size(
    canvas: &mut dyn Canvas,
    shape: &Shape<'_>,
    block: &Block<'_>,
    s: f64,
    seam: Option<(Length, &Layout)>,
) -> fmt::Result {
    let strips = shape.shown();
    let length = seam.map_or(shape.strip * f64::from(strips), |(length, _)| length.to_mm());
    let view = PlanView {
        factor: s,
        x: 0.0,
        top: 0.0,
        first: plan::first_of(shape, strips, length),
        length,
        strips,
        seam: seam.map(|(_, layout)| *layout),
        broken: !shape.tie && seam.is_none(),
        measured: seam.is_some(),
    };
    let (x0, x1) = view.ends(shape);
    let units = block.title.units;
    let column = x1 + 20.0;
    let room = Room {
        across: (smaller(x0, -120.0), larger(x1, 120.0)),
        top: -1000.0,
        lanes: smaller(x0, -WIDTH_LABEL),
        holes: at(column, 4.0),
        wide: title::WIDE,
        units,
    };
    plan::draw(canvas, shape, &view, &room)?;
    caption(canvas, x0, -5.0, "PLAN", "1:1")?;

    let deep = s * section::height(shape);
    let top = -CAPTION - 3.0 * WIDTHS - deep - 6.0;
    let labels = at(column, top);
    section::draw(canvas, shape, &SectionView { factor: s, x: 0.0, top, labels, units })?;
    caption(canvas, x0, top - 14.0, "SECTION A-A", "1:1")?;

    let below = view.bottom() + BELOW_PLAN + 10.0;
    block.draw_notes(canvas, at(x0, below), NOTES)?;
    let words = "1:1, drawn at full size";
    block.draw(canvas, at(column, 60.0 + block.height(words)), words)
}
