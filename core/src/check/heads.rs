//! Whether rivet heads have room: custom of the trade, beyond the rules of any book.

use super::{FindingSink, Required, Subject};
use crate::error::EntryNo;
use crate::given::Given;
use crate::joint::Joint;
use crate::math;
use crate::proportion::{self, SNAP_HEAD_WIDTH};
use crate::step::{Ctx, Num};

/// Heads against the edge of the narrow strap, and against each other.
#[inline(never)]
pub(super) fn heads<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, out: &mut dyn FindingSink) {
    let none = EntryNo::NONE;
    let form = &joint.form;
    let gaps = || (1_usize..).zip(1_u8..).zip(joint.back.iter().copied()).take(form.row_count().wrapping_sub(1));
    for ((row, number), gap) in gaps() {
        if gap > 0.0
            && let Some(least) = proportion::head_beside_strap(c, form, given, given.margin, row)
        {
            out.compare(Subject::HeadAtStrap, number, none, Required::AtLeast, least.value(), gap);
        }
    }
    for (row, number) in joint.rows().iter().zip(1_u8..) {
        let pitch = joint.strip / f64::from(row.rivets);
        let least = SNAP_HEAD_WIDTH * row.rivet;
        if math::below(pitch, least) {
            out.compare(Subject::HeadsInRow, number, none, Required::AtLeast, least, pitch);
        }
    }
    for ((row, number), gap) in gaps() {
        // Told only where they touch, and so is the working.
        let touch = |c: C| proportion::heads_apart(c, form, given, row).filter(|g| math::below(gap, g.value()));
        if gap > 0.0
            && touch(c.quiet()).is_some()
            && let Some(least) = touch(c)
        {
            out.compare(Subject::HeadsOfRows, number, none, Required::AtLeast, least.value(), gap);
        }
    }
}
