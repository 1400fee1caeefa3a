//! One row by itself: the joint of its columns, checked as any other.

use super::{COMPUTED, NO_MODE, Outputs, Sweep};
use crate::check::check;
use crate::error::Error;
use crate::given::Given;
use crate::joint::{Joint, JointKind, JointSpec};
use crate::materials::{Materials, PlateStress};
use crate::modes::{Lens, Strengths};
use crate::quantities::{Length, Stress};
use crate::step::Plain;

impl Sweep<'_> {
    /// The joint of a row (from 0) with its stresses, to look closer at it.
    ///
    /// # Errors
    /// What [`JointSpec::build`] refuses; a row beyond the last has dimensions that are not numbers.
    pub fn joint(&self, row: usize) -> Result<(Joint, Materials), Error> {
        let inputs = &self.inputs;
        let mm = |column: &super::InputColumn<'_>| Length::mm(column.at(row));
        let mpa = |column: &super::InputColumn<'_>| Stress::mpa(column.at(row));
        let mut spec = JointSpec::new(*self.form, mm(&inputs.pitch), mm(&inputs.plate), mm(&inputs.hole));
        if let Some(rivet) = &inputs.rivet {
            spec = spec.rivet(mm(rivet));
        }
        spec = match (&inputs.other, &inputs.narrow) {
            (Some(other), _) if self.form.kind() == JointKind::Lap => spec.other_plate(mm(other)),
            (Some(other), Some(narrow)) => spec.straps(mm(other), mm(narrow)),
            (Some(other), None) => spec.strap(mm(other)),
            (None, _) => spec,
        };
        if let Some(margin) = &inputs.margin {
            spec = spec.margin(mm(margin));
        }
        if let Some(back) = &inputs.back_pitch {
            for row in 1..self.form.row_count() {
                spec = spec.back_pitch(row, mm(back));
            }
        }
        let (bearing, shear_out) = (inputs.bearing.as_ref().map(mpa), inputs.plate_shear.as_ref().map(mpa));
        let plate = PlateStress { tension: mpa(&inputs.tension), bearing, shear_out };
        let other = PlateStress {
            tension: inputs.other_tension.as_ref().map_or(plate.tension, mpa),
            bearing: inputs.other_bearing.as_ref().map(mpa).or(bearing),
            shear_out,
        };
        Ok((spec.build()?, Materials { plate, other, rivet_shear: mpa(&inputs.shear) }))
    }
}

/// Results of one row.
pub struct Row {
    pub efficiency: f64,
    pub book: f64,
    pub credited: f64,
    pub mode: u16,
    pub status: u8,
}

/// Checks one row.
#[inline(never)]
pub(super) fn row(sweep: &Sweep<'_>, row: usize) -> Row {
    let found = sweep.joint(row).and_then(|(joint, materials)| check(&joint, &materials, sweep.rules));
    match found {
        Ok(found) => Row {
            efficiency: found.efficiency,
            book: found.book_efficiency,
            credited: found.credited,
            mode: sweep.modes.number(found.governing.cut).unwrap_or(NO_MODE),
            status: COMPUTED,
        },
        Err(e) => Row { efficiency: f64::NAN, book: f64::NAN, credited: f64::NAN, mode: NO_MODE, status: e.kind as u8 },
    }
}

fn put<T>(slot: Option<&mut [T]>, at: usize, value: T) {
    if let Some(slot) = slot.and_then(|s| s.get_mut(at)) {
        *slot = value;
    }
}

/// Checks the row that stands at place `at` of outputs from row `from` on.
#[inline(never)]
pub(super) fn place(sweep: &Sweep<'_>, from: usize, at: usize, outputs: &mut Outputs<'_>) {
    let row = row(sweep, from.wrapping_add(at));
    put(Some(&mut *outputs.efficiency), at, row.efficiency);
    put(outputs.mode.as_deref_mut(), at, row.mode);
    put(outputs.book_efficiency.as_deref_mut(), at, row.book);
    put(outputs.credited.as_deref_mut(), at, row.credited);
    put(outputs.status.as_deref_mut(), at, row.status);
}

/// Strengths of modes, row by row.
pub(super) fn strengths(sweep: &Sweep<'_>, modes: &[u16], from: usize, rows: usize, out: &mut [f64]) {
    for row in 0..rows {
        let joint = sweep.joint(from.wrapping_add(row));
        let found = joint.and_then(|(joint, materials)| {
            materials.validate()?;
            let given = Given::new(Plain, &joint, &materials);
            Ok(Strengths::new(Plain, &joint, &given, sweep.rules, Lens::Real))
        });
        let slots = out.iter_mut().skip(row).step_by(if rows > 0 { rows } else { 1 });
        for (slot, number) in slots.zip(modes) {
            *slot = match (&found, sweep.modes.cut(*number)) {
                (Ok(found), Some(cut)) => found.mode(cut).strength,
                _ => f64::NAN,
            };
        }
    }
}
