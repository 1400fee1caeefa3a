//! What can move: the dimensions and stresses that a joint was given, and the figures that were read from its book.

use heapless::Vec;

use crate::error::EntryNo;
use crate::joint::{Joint, JointKind};
use crate::materials::Materials;
use crate::rules::{Entry, EntryKind, Rules, info};
use crate::step::{Name, Quantity as Q};

/// Most inputs of one study: the dimensions of eight rows that all differ, the stresses, and the figures of a book that
/// strengths are made of.
pub const MAX_INPUTS: usize = 48;

/// One input of a joint.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Input {
    /// A dimension or a stress that was given. Rows alike share the hole of the first of them; plates of a lap that are
    /// alike move together, and so do straps of the plate's material with the plate.
    Given(Name),
    /// A figure of the rule book.
    Rule(EntryNo),
}

/// The inputs of a joint, with their values: dimensions first, then stresses, then the book's figures.
pub(super) fn inputs(joint: &Joint, materials: &Materials, rules: &Rules) -> Vec<(Input, f64), MAX_INPUTS> {
    let mut found = Vec::new();
    // A full list cannot happen: 5 + 16 + 7 + 9 + the book's few. A test builds the fullest joint.
    let mut add = |input: Input, value: f64| {
        let _ = found.push((input, value));
    };
    let mut length = |q: Q, row: u8, mm: f64| {
        if mm > 0.0 {
            add(Input::Given(Name(q, row)), mm);
        }
    };
    let lap = joint.form().kind() == JointKind::Lap;
    length(Q::Plate, 0, joint.plate);
    if !(lap && joint.other == joint.plate) {
        length(Q::OtherPlate, 0, joint.other);
    }
    length(Q::Narrow, 0, joint.narrow);
    length(Q::Pitch, 0, joint.strip);
    let mut before = None;
    for (number, row) in (1_u8..).zip(joint.rows()) {
        if before != Some((row.hole, row.rivet)) {
            length(Q::Hole, number, row.hole);
            // A rivet as large as its hole is that hole, driven.
            if row.rivet != row.hole {
                length(Q::Rivet, number, row.rivet);
            }
        }
        before = Some((row.hole, row.rivet));
    }
    for (number, gap) in (1_u8..).zip(joint.back) {
        length(Q::RowGap, number, gap);
    }
    length(Q::Margin, 0, joint.margin);
    let mut stress = |q: Q, mpa: Option<f64>| {
        if let Some(mpa) = mpa {
            add(Input::Given(Name(q, 0)), mpa);
        }
    };
    let (plate, other) = (materials.plate, materials.other);
    stress(Q::Tension, Some(plate.tension.to_mpa()));
    stress(Q::Shear, Some(materials.rivet_shear.to_mpa()));
    stress(Q::Bearing, plate.bearing.map(|s| s.to_mpa()));
    stress(Q::PlateShear, plate.shear_out.map(|s| s.to_mpa()));
    if other != plate {
        stress(Q::OtherTension, Some(other.tension.to_mpa()));
        stress(Q::OtherBearing, other.bearing.map(|s| s.to_mpa()));
        stress(Q::OtherPlateShear, other.shear_out.map(|s| s.to_mpa()));
    }
    for entry in
        [Entry::DOUBLE_SHEAR, Entry::TEAR_ALLOWANCE, Entry::SEAM_SAFETY, Entry::SEAM_DIVISOR, Entry::EFFICIENCY_CAP]
    {
        if matches!(info(entry).kind, EntryKind::Number(_)) {
            add(Input::Rule(entry.no()), rules.get(entry));
        }
    }
    found
}
