//! The joint: a repeating strip of plates held by rows of rivets.
//!
//! The strip is one pitch of a seam or the whole width of a tie. A row has so many rivets in the strip, with one or
//! two shear planes by the plates it passes through. Rows are counted from the outside of the main plate (of plate A
//! in a lap). Laps, straps equal and unequal, omitted rivets, zig-zags and lozenge ties are all row lists over this
//! one model.

mod form;
mod spec;

pub use crate::rules::JointKind;
pub use form::{Arrangement, Form, MAX_ROWS, RowForm};
pub use spec::{JointSpec, Row};

use crate::quantities::Length;

/// A joint whose dimensions agree with its form. Made by [`JointSpec::build`]; every joint that exists is consistent.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Joint {
    pub(crate) form: Form,
    /// Width of the strip, mm.
    pub(crate) strip: f64,
    /// Main plate; plate A of a lap, mm.
    pub(crate) plate: f64,
    /// Plate B of a lap, the single or the wide strap, mm; 0 when not given.
    pub(crate) other: f64,
    /// The second or narrow strap, mm; 0 when there is none or it is not given.
    pub(crate) narrow: f64,
    /// Holes and rivets by row, mm.
    pub(crate) rows: [Row; MAX_ROWS],
    /// Distance from each row to the next, mm; 0 when not given.
    pub(crate) back: [f64; MAX_ROWS],
    /// Centre of the edge row to the plate edge, mm; 0 when not given.
    pub(crate) margin: f64,
}

impl Joint {
    /// The form.
    #[must_use]
    pub fn form(&self) -> &Form {
        &self.form
    }

    /// Pitch of the outer row.
    #[must_use]
    pub fn pitch(&self) -> Length {
        Length::mm(self.strip / f64::from(self.form.outer_rivets()))
    }

    /// Width of the strip: the pitch where the outer row has one rivet in it, the width of a tie.
    #[must_use]
    pub fn strip(&self) -> Length {
        Length::mm(self.strip)
    }

    /// Thickness of the main plate (plate A of a lap).
    #[must_use]
    pub fn plate(&self) -> Length {
        Length::mm(self.plate)
    }

    /// Thickness of plate B of a lap.
    #[must_use]
    pub fn other_plate(&self) -> Option<Length> {
        known(self.other).filter(|_| self.form.kind() == JointKind::Lap)
    }

    /// Thickness of the single or the wide strap, where there is one and it was given.
    #[must_use]
    pub fn wide_strap(&self) -> Option<Length> {
        known(self.other).filter(|_| self.form.kind() != JointKind::Lap)
    }

    /// Thickness of the second or narrow strap.
    #[must_use]
    pub fn narrow_strap(&self) -> Option<Length> {
        known(self.narrow)
    }

    /// The rows, outside first.
    #[must_use]
    pub fn rows(&self) -> &[Row] {
        self.rows.get(..self.form.row_count()).unwrap_or(&[])
    }

    /// Distance from row `row` (from 1) to the next, where given.
    #[must_use]
    pub fn back_pitch(&self, row: usize) -> Option<Length> {
        self.back.get(row.wrapping_sub(1)).copied().and_then(known)
    }

    /// Centre of the edge row to the plate edge, where given.
    #[must_use]
    pub fn margin(&self) -> Option<Length> {
        known(self.margin)
    }

    /// The thinner of the main plates: the plate of a butt joint, the thinner plate of a lap, mm.
    #[must_use]
    pub(crate) fn thinner(&self) -> f64 {
        if self.form.kind() == JointKind::Lap && self.other > 0.0 {
            crate::math::smaller(self.plate, self.other)
        } else {
            self.plate
        }
    }

    /// Whether rows are known to lie from first to last: all back pitches given.
    #[must_use]
    pub fn rows_placed(&self) -> bool {
        (1..self.form.row_count()).all(|row| self.back_pitch(row).is_some())
    }

    /// How far the joint reaches across the seam: the lap, or the widths of the wide and the narrow strap.
    /// `None` where a back pitch or the margin is not given.
    #[must_use]
    pub fn widths(&self) -> Option<(Length, Option<Length>)> {
        if self.margin <= 0.0 || !self.rows_placed() {
            return None;
        }
        let count = self.form.row_count();
        let span = |from: usize| -> f64 {
            self.back.iter().take(count.saturating_sub(1)).skip(from).fold(0.0, |sum, g| sum + g)
        };
        let wide = span(0) + 2.0 * self.margin;
        Some(match self.form.kind() {
            JointKind::Lap => (Length::mm(wide), None),
            JointKind::SingleStrap => (Length::mm(2.0 * wide), None),
            JointKind::DoubleStrap => {
                let narrow = span(self.form.first_double_row().saturating_sub(1)) + 2.0 * self.margin;
                (Length::mm(2.0 * wide), Some(Length::mm(2.0 * narrow)))
            }
        })
    }
}

/// A dimension that was given.
fn known(mm: f64) -> Option<Length> {
    (mm > 0.0).then(|| Length::mm(mm))
}
