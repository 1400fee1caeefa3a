//! Every cut of a joint, by enumeration.
//!
//! The plate is pulled away from outside; each strap (or plate B) is held at its far side. A cut chooses, for the
//! plate and for each strap on its own, whether it tears and at which row. What is then still joined must shear or
//! crush.

use crate::model::{Convention, Joint, Stresses};

/// One way for the joint to part. Rows are counted from 1; `None` means that part does not tear.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Row at which plate A or the butt plate tears.
    pub plate: Option<usize>,
    /// Row at which plate B or the wide strap tears.
    pub first: Option<usize>,
    /// Row at which the narrow strap tears.
    pub second: Option<usize>,
    /// Strength of the strip against this cut, N.
    pub strength: f64,
}

/// Every cut of the joint with its strength, N.
pub fn cuts(joint: &Joint, s: &Stresses, c: &Convention) -> Vec<Cut> {
    let n = joint.rows.len();
    let others = joint.others();
    let mut plate_choices = vec![None];
    let mut first_choices = vec![None];
    let mut second_choices = vec![None];
    for row in 1..=n {
        plate_choices.push(Some(row));
        if joint.reaches(row - 1, 0) {
            first_choices.push(Some(row));
        }
        if joint.reaches(row - 1, 1) {
            second_choices.push(Some(row));
        }
    }
    let mut all = Vec::new();
    for &plate in &plate_choices {
        for &first in &first_choices {
            for &second in &second_choices {
                let mut strength = 0.0;
                if let Some(row) = plate {
                    strength += joint.tear(row - 1, joint.plate(), s.plate_tension, c);
                }
                if let Some(row) = first {
                    strength += joint.tear(row - 1, others[0], s.other_tension, c);
                }
                if let Some(row) = second {
                    strength += joint.tear(row - 1, others[1], s.other_tension, c);
                }
                for row in 1..=n {
                    strength += row_cost(joint, s, c, row, plate, [first, second]);
                }
                all.push(Cut { plate, first, second, strength });
            }
        }
    }
    all
}

/// What the rivets of a row (from 1) cost in the cut in which the parts tear at the given rows, N.
fn row_cost(
    joint: &Joint,
    s: &Stresses,
    c: &Convention,
    row: usize,
    plate: Option<usize>,
    torn: [Option<usize>; 2],
) -> f64 {
    // Rows outside the plate's tear stay with the loaded side.
    let loaded = match plate {
        None => true,
        Some(at) => row < at,
    };
    if !loaded {
        return 0.0;
    }
    // Rows inside a strap's tear stay with the far side.
    let mut held = [false; 2];
    for other in 0..2 {
        held[other] = joint.reaches(row - 1, other)
            && match torn[other] {
                None => true,
                Some(at) => row > at,
            };
    }
    let single = joint.single_shear(row - 1, s, c);
    let plane = if !joint.is_double(row - 1) {
        single
    } else if held[0] && held[1] {
        c.double / 2.0 * single
    } else {
        c.one_plane * single
    };
    let mut passed_on = 0.0;
    for (other, &is_held) in held.iter().enumerate() {
        if is_held {
            passed_on += plane.min(joint.other_bearing(row - 1, other, s, c));
        }
    }
    let one = passed_on.min(joint.plate_bearing(row - 1, s, c));
    f64::from(joint.rows[row - 1].rivets) * one
}

/// The strength of the weakest cut, N.
pub fn weakest(joint: &Joint, s: &Stresses, c: &Convention) -> f64 {
    let mut least = f64::INFINITY;
    for cut in cuts(joint, s, c) {
        least = least.min(cut.strength);
    }
    least
}
