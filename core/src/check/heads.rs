//! Whether rivet heads have room: custom of the trade, beyond the rules of any book.

use super::{FindingSink, Required, Subject};
use crate::error::EntryNo;
use crate::joint::{Arrangement, Joint};
use crate::math;
use crate::proportion::SNAP_HEAD_WIDTH;

/// Heads against the edge of the narrow strap, and against each other.
pub(super) fn heads(joint: &Joint, out: &mut dyn FindingSink) {
    let none = EntryNo::NONE;
    let radius = |rivet: f64| 0.5 * SNAP_HEAD_WIDTH * rivet;
    let neighbours = || joint.rows().iter().zip(joint.rows().iter().skip(1)).zip(joint.back).zip(1_u8..);
    for (((row, next), gap), number) in neighbours() {
        // Rivets of the row outside the narrow strap stand beside its edge, which lies a margin beyond the next row.
        if row.planes < next.planes && gap > 0.0 && joint.margin > 0.0 {
            let room = gap - joint.margin;
            out.compare(Subject::HeadAtStrap, number, none, Required::AtLeast, radius(row.rivet), room);
        }
    }
    for (row, number) in joint.rows().iter().zip(1_u8..) {
        let pitch = joint.strip / f64::from(row.rivets);
        let least = SNAP_HEAD_WIDTH * row.rivet;
        if math::below(pitch, least) {
            out.compare(Subject::HeadsInRow, number, none, Required::AtLeast, least, pitch);
        }
    }
    for (((row, next), gap), number) in neighbours() {
        let (few, many) = if row.rivets < next.rivets { (row.rivets, next.rivets) } else { (next.rivets, row.rivets) };
        let doubled = u32::from(many) == u32::from(few).wrapping_mul(2);
        // Other rows (a lozenge's 2 and 3) stand differently at each rivet.
        if gap <= 0.0 || !(many == few || doubled) {
            continue;
        }
        let along = match joint.form.arrangement() {
            Arrangement::Zigzag => 0.5 * joint.strip / f64::from(many),
            Arrangement::Chain => 0.0,
        };
        let apart = math::sqrt(gap * gap + along * along);
        let least = radius(row.rivet) + radius(next.rivet);
        if math::below(apart, least) {
            out.compare(Subject::HeadsOfRows, number, none, Required::AtLeast, least, apart);
        }
    }
}
