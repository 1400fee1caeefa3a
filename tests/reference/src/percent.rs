//! The percentages of the Indian Boiler Regulations 1950, Reg. 177 and 184(d).

use crate::model::Row;
use std::f64::consts::PI;

/// The percentages of one joint, %.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Percentages {
    /// Eq. 2, or Eq. 16 where rows are closer than prescribed: the plate at the outer row, %.
    pub plate: f64,
    /// Eq. 3: the rivets, %.
    pub rivets: f64,
    /// Eq. 4: the next row with the outer rivets, only where every inner row has twice the outer row's rivets, %.
    pub combined: Option<f64>,
    /// J, the lowest, %.
    pub lowest: f64,
}

/// The percentages of a strip. `strip` and `t` in mm; `plate_strength` S and `rivet_strength` S1 in like units;
/// `double` is C of a double-shear rivet. `closest` is the least of actual over prescribed row distance, ratio; none,
/// or one and above, leaves Eq. 2 as it is.
pub fn ibr_percentages(
    strip: f64,
    t: f64,
    rows: &[Row],
    plate_strength: f64,
    rivet_strength: f64,
    double: f64,
    closest: Option<f64>,
) -> Percentages {
    let area = |row: &Row| PI / 4.0 * row.hole * row.hole;
    let c = |row: &Row| if row.planes >= 2 { double } else { 1.0 };
    let outer = &rows[0];
    let n = f64::from(outer.rivets);

    // Eq. 2: 100 (P - D)/P. Eq. 16: 100 [P - (2 - actual/prescribed) D]/P.
    let widened = match closest {
        Some(ratio) if ratio < 1.0 => 2.0 - ratio,
        _ => 1.0,
    };
    let plate = 100.0 * (strip - widened * n * outer.hole) / strip;

    // Eq. 3: 100 A N C S1/(P T S), rivet by rivet.
    let mut rivets = 0.0;
    for row in rows {
        rivets += 100.0 * area(row) * f64::from(row.rivets) * c(row) * rivet_strength / (strip * t * plate_strength);
    }

    // Eq. 4: 100 (P - 2D)/P + 100 A C S1/(P T S), D of the next row, A and C of the outer one.
    let mut combined = None;
    if rows.len() > 1 && rows[1..].iter().all(|r| r.rivets == 2 * outer.rivets) {
        let next = &rows[1];
        combined = Some(
            100.0 * (strip - f64::from(next.rivets) * next.hole) / strip
                + 100.0 * n * area(outer) * c(outer) * rivet_strength / (strip * t * plate_strength),
        );
    }

    let mut lowest = plate.min(rivets);
    if let Some(combined) = combined {
        lowest = lowest.min(combined);
    }
    Percentages { plate, rivets, combined, lowest }
}
