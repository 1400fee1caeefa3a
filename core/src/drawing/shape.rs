//! The joint as it lies: rows across the seam, rivets along it, members through the thickness. Millimetres, true size.

use super::Extent;
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::{Joint, JointKind, MAX_ROWS};
use crate::math;
use crate::quantities::Length;
use crate::shop::HeadForm;
use crate::shop::places::{across, clear_of_each_other, places};

/// The heads that are drawn, with the proportions of the shop sheet.
const HEAD: HeadForm = HeadForm::Button;

/// Pitches that a plan shows of a seam without a length.
const SHOWN: u32 = 3;

/// Where the rivets of a row lie.
#[derive(Clone, Copy, Default)]
pub(super) struct RowLine {
    /// From the butt; from the middle of a lap, to the right.
    pub x: f64,
    /// First rivet from the first rivet of the pattern (seam), from the edge (tie).
    pub phase: f64,
    /// Rivet to rivet.
    pub step: f64,
    /// Rivets in the strip.
    pub rivets: u32,
    /// Hole.
    pub hole: f64,
    /// Cold rivet.
    pub rivet: f64,
    /// Width and height of its snap heads.
    pub head: (f64, f64),
    /// Shear planes.
    pub planes: u8,
    /// Number of the row, from 1.
    pub number: usize,
}

/// The joint as it lies.
pub(super) struct Shape<'a> {
    pub joint: &'a Joint,
    pub kind: JointKind,
    pub tie: bool,
    pub lines: [RowLine; MAX_ROWS],
    pub count: usize,
    /// Width of the strip.
    pub strip: f64,
    pub margin: f64,
    /// Half the overlap, half the single or wide strap.
    pub half: f64,
    /// Half the narrow strap; 0 without one.
    pub half_narrow: f64,
    /// Plate, other plate or strap, narrow strap (0 without one).
    pub thick: [f64; 3],
    /// How far rows of a tie are shifted off its middle, to alternate sides.
    pub shift: f64,
}

impl<'a> Shape<'a> {
    /// Takes a joint over.
    pub fn new(joint: &'a Joint, extent: Extent) -> Result<Self, Error> {
        let missing = |field: Field| Error::new(ErrorKind::Missing, field);
        let form = joint.form();
        let (kind, count) = (form.kind(), form.row_count());
        let margin = joint.margin().ok_or(missing(Field::Margin))?.to_mm();
        for (row, number) in (1..count).zip(1_u8..) {
            if joint.back_pitch(row).is_none() {
                return Err(missing(Field::BackPitch).index(number));
            }
        }
        let mm = |l: Option<Length>, field: Field| l.ok_or(missing(field)).map(Length::to_mm);
        let other = match kind {
            JointKind::Lap => mm(joint.other_plate(), Field::OtherPlate)?,
            _ => mm(joint.wide_strap(), Field::WideStrap)?,
        };
        let narrow = match kind {
            JointKind::DoubleStrap => mm(joint.narrow_strap(), Field::NarrowStrap)?,
            _ => 0.0,
        };
        let (wide_width, narrow_width) = joint.widths().ok_or(missing(Field::BackPitch))?;
        let mut shape = Shape {
            joint,
            kind,
            tie: extent == Extent::Tie,
            lines: [RowLine::default(); MAX_ROWS],
            count,
            strip: joint.strip().to_mm(),
            margin,
            half: 0.5 * wide_width.to_mm(),
            half_narrow: narrow_width.map_or(0.0, |w| 0.5 * w.to_mm()),
            thick: [joint.plate().to_mm(), other, narrow],
            shift: 0.0,
        };
        shape.place();
        clear_of_each_other(joint, shape.tie)?;
        Ok(shape)
    }

    /// Whether the main plates meet at a butt.
    pub fn butt(&self) -> bool {
        self.kind != JointKind::Lap
    }

    /// The rows, outside first.
    pub fn rows(&self) -> impl DoubleEndedIterator<Item = &RowLine> + '_ {
        self.lines.iter().take(self.count)
    }

    /// All rows from left to right with their true x: in a butt joint each lies on both sides.
    pub fn columns(&self) -> impl Iterator<Item = (f64, &RowLine)> + '_ {
        let (butt, left) = (self.butt(), if self.butt() { -1.0 } else { 1.0 });
        let mirrored = self.rows().rev().take(if butt { self.count } else { 0 });
        self.rows().map(move |row| (left * row.x, row)).chain(mirrored.map(|row| (row.x, row)))
    }

    /// The largest hole.
    pub fn largest_hole(&self) -> f64 {
        self.rows().fold(0.0, |d, row| math::larger(d, row.hole))
    }

    /// Height of the highest head.
    pub fn highest_head(&self) -> f64 {
        self.rows().fold(0.0, |h, row| math::larger(h, row.head.1))
    }

    /// From the first to the last rivet along so many strips.
    pub fn reach(&self, strips: u32) -> f64 {
        self.rows().fold(0.0, |most, row| {
            let rivets = row.rivets.saturating_mul(strips);
            math::larger(most, row.phase + row.step * f64::from(rivets.saturating_sub(1)))
        })
    }

    /// How many strips a plan shows of a seam without a length, and of a tie.
    pub fn shown(&self) -> u32 {
        if self.tie { 1 } else { SHOWN }
    }

    /// Lays the rows out.
    fn place(&mut self) {
        let placed = places(self.joint, self.tie);
        let rows = self.joint.rows().iter().zip(placed).zip(1_usize..);
        for (line, ((row, place), number)) in self.lines.iter_mut().zip(rows) {
            // Outer rows of a butt lie furthest from the butt; plate A of a lap comes from the left.
            let y = across(self.joint, number);
            *line = RowLine {
                x: if self.kind == JointKind::Lap { y - self.half } else { y },
                phase: place.first,
                step: place.step,
                rivets: u32::from(row.rivets),
                hole: row.hole().to_mm(),
                rivet: row.rivet().to_mm(),
                head: (HEAD.width() * row.rivet().to_mm(), HEAD.height() * row.rivet().to_mm()),
                planes: row.planes,
                number,
            };
            self.shift = math::larger(self.shift, math::abs(place.shift));
        }
    }
}
