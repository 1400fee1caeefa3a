//! The figures every textbook quotes.

use crate::cuts::weakest;
use crate::model::{Convention, Form, Joint, Stresses};

/// Thickness, mm, and tension, MPa, of the main plates: A and B of a lap, the plate alone of a butt.
fn main_plates(joint: &Joint, s: &Stresses) -> Vec<(f64, f64)> {
    match joint.form {
        Form::Lap { plates } => vec![(plates[0], s.plate_tension), (plates[1], s.other_tension)],
        Form::Butt { plate, .. } => vec![(plate, s.plate_tension)],
    }
}

/// Strength of the strip without holes, N: the least of thickness times tension over the main plates.
pub fn solid(joint: &Joint, s: &Stresses) -> f64 {
    let mut least = f64::INFINITY;
    for (thickness, tension) in main_plates(joint, s) {
        least = least.min(joint.strip * thickness * tension);
    }
    least
}

/// The weakest cut over the solid strip, ratio.
pub fn efficiency(joint: &Joint, s: &Stresses, c: &Convention) -> f64 {
    weakest(joint, s, c) / solid(joint, s)
}

/// The main plates torn, each at its own outer row: the least, N.
pub fn tearing_outer(joint: &Joint, s: &Stresses, c: &Convention) -> f64 {
    let last = joint.rows.len() - 1;
    let mut least = f64::INFINITY;
    for (i, (thickness, tension)) in main_plates(joint, s).into_iter().enumerate() {
        let row = if i == 0 { 0 } else { last };
        least = least.min(joint.tear(row, thickness, tension, c));
    }
    least
}

/// Every rivet sheared through all its planes, N.
pub fn shear_all(joint: &Joint, s: &Stresses, c: &Convention) -> f64 {
    let mut sum = 0.0;
    for (i, row) in joint.rows.iter().enumerate() {
        let factor = if joint.is_double(i) { c.double } else { 1.0 };
        sum += f64::from(row.rivets) * factor * joint.single_shear(i, s, c);
    }
    sum
}

/// Every rivet crushed, N: each by the lesser of its plate's bearing and the bearings of all its straps together.
/// Infinite where neither side's bearing is counted.
pub fn bearing_all(joint: &Joint, s: &Stresses, c: &Convention) -> f64 {
    let mut sum = 0.0;
    for (i, row) in joint.rows.iter().enumerate() {
        let mut straps = 0.0;
        for other in 0..joint.others().len() {
            if joint.reaches(i, other) {
                straps += joint.other_bearing(i, other, s, c);
            }
        }
        sum += f64::from(row.rivets) * joint.plate_bearing(i, s, c).min(straps);
    }
    sum
}
