//! The joint as it lies: rows across the seam, rivets along it, members through the thickness. Millimetres, true size.

use super::Extent;
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::{Arrangement, Joint, JointKind, MAX_ROWS, Row};
use crate::math;
use crate::quantities::Length;

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
        shape.clear_of_each_other()?;
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
        let zigzag = self.joint.form().arrangement() == Arrangement::Zigzag;
        let across = |row: &Row| f64::from(row.rivets);
        let densest = f64::from(self.joint.form().densest_rivets());
        self.shift = self.tie_shift(zigzag, densest);
        let mut out = 0.0; // from the outer row
        let mut before = (0.0, 0.0); // phase and rivets of the row outside
        let mut side = 1.0;
        for ((row, line), number) in self.joint.rows().iter().zip(self.lines.iter_mut()).zip(1..) {
            let n = across(row);
            let step = self.strip / if self.tie { densest } else { n };
            let phase = if self.tie {
                side = -side;
                0.5 * self.strip - 0.5 * (n - 1.0) * step + side * self.shift
            } else if zigzag && number > 1 {
                let (phase, rivets) = before;
                let next = phase + 0.5 * self.strip / math::larger(rivets, n);
                math::larger(next - math::round_down(next, step), 0.0)
            } else {
                0.0
            };
            before = (phase, n);
            // Outer rows of a butt lie furthest from the butt; plate A of a lap comes from the left.
            let x =
                if self.kind == JointKind::Lap { self.margin - self.half + out } else { self.half - self.margin - out };
            *line = RowLine {
                x,
                phase,
                step,
                rivets: u32::from(row.rivets),
                hole: row.hole().to_mm(),
                rivet: row.rivet().to_mm(),
                planes: row.planes,
                number,
            };
            out += self.joint.back_pitch(number).map_or(0.0, Length::to_mm);
        }
    }

    /// Zig-zag rows of a tie interleave by themselves when one is odd and the next even; rows alike are shifted apart.
    fn tie_shift(&self, zigzag: bool, densest: f64) -> f64 {
        let odd = |row: &Row| row.rivets & 1 == 1;
        let rows = self.joint.rows();
        let alike = rows.iter().zip(rows.iter().skip(1)).any(|(a, b)| odd(a) == odd(b));
        if self.tie && zigzag && alike {
            let step = self.strip / densest;
            // Not so far that the edge comes nearer than one hole to the centre.
            let room = 0.5 * step - self.joint.rows().iter().fold(0.0, |d, r| math::larger(d, r.hole().to_mm()));
            math::larger(math::smaller(0.25 * step, room), 0.0)
        } else {
            0.0
        }
    }

    /// Refuses holes that overlap, between any two rows.
    fn clear_of_each_other(&self) -> Result<(), Error> {
        for (a, i) in self.rows().zip(1_u8..) {
            for b in self.rows().skip(a.number) {
                let apart = math::abs(a.x - b.x);
                let touching = 0.5 * (a.hole + b.hole);
                if apart < touching {
                    let across = self.nearest(a, b);
                    if math::at_most(apart * apart + across * across, touching * touching) {
                        let least = math::sqrt(math::larger(touching * touching - across * across, 0.0));
                        let error = Error::new(ErrorKind::RowsOverlap, Field::BackPitch).index(i);
                        return Err(error.value(apart).limit(least));
                    }
                }
            }
        }
        Ok(())
    }

    /// The least distance along the seam between rivets of two rows.
    fn nearest(&self, a: &RowLine, b: &RowLine) -> f64 {
        let mut least = self.strip;
        for i in 0..a.rivets {
            for j in 0..b.rivets {
                let off = math::abs(a.phase + a.step * f64::from(i) - b.phase - b.step * f64::from(j));
                least = math::smaller(least, off);
                if !self.tie {
                    least = math::smaller(least, math::abs(self.strip - off));
                }
            }
        }
        least
    }
}
