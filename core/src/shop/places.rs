//! Where the rivets of each row stand along the strip: the one place that table, drawing and hole pattern take it from.

use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::{Arrangement, Form, Joint, JointKind, MAX_ROWS};
use crate::math;
use crate::quantities::Length;

/// A phase this close to nothing is nothing: phases are sums of a few fractions with small denominators.
const NOTHING: f64 = 1e-9;

/// From the centre of a hole to the edge along the width of a tie, in holes, that staggering leaves: PRACTICE, the
/// edge distance that the trade gives margins.
pub const SIDE_MARGIN: f64 = 1.5;

/// A row along the strip.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub(crate) struct Place {
    /// First hole, mm: from the first hole of a seam, from the edge of a tie.
    pub first: f64,
    /// Hole to hole, mm.
    pub step: f64,
    /// Holes in the strip.
    pub rivets: u8,
    /// How far the row of a tie is shifted off the middle of the width, mm.
    pub shift: f64,
}

/// Every row of a joint along its strip.
pub(crate) fn places(joint: &Joint, tie: bool) -> [Place; MAX_ROWS] {
    if tie { tie_places(joint) } else { seam_places(joint.form(), joint.strip().to_mm()) }
}

/// Rows of a seam: row 1 at its first hole, rows in chain behind it, each zig-zag row in the middle of the gaps of the
/// row before.
fn seam_places(form: &Form, strip: f64) -> [Place; MAX_ROWS] {
    let mut places = [Place::default(); MAX_ROWS];
    let zigzag = form.arrangement() == Arrangement::Zigzag;
    let mut before: Option<(f64, u8)> = None;
    for (slot, row) in places.iter_mut().zip(form.rows()) {
        let n = f64::from(row.rivets);
        let mut phase = 0.0;
        if let Some((last, rivets)) = before.filter(|_| zigzag) {
            let dense = f64::from(if rivets > row.rivets { rivets } else { row.rivets });
            let steps = (last + 0.5 / dense) * n;
            let rest = steps - math::round_down(steps, 1.0);
            phase = if rest < NOTHING { 0.0 } else { rest / n };
        }
        before = Some((phase, row.rivets));
        *slot = Place { first: phase * strip, step: strip / n, rivets: row.rivets, shift: 0.0 };
    }
    places
}

/// Rows of a tie stand on common gauge lines, as punches and templates of structural work are set (PRACTICE): their
/// distance is the width over the rivets of the densest row, so that this row has half a gauge at either edge, and each
/// row is centred on the width, so that the pull stays in the middle. Rows of a lozenge that differ by one rivet come
/// to lie in each other's gaps by themselves. Neighbouring zig-zag rows of as many rivets are shifted apart (OWN): by a
/// quarter of the gauge to either side, or by less where the hole would come nearer to the edge than [`SIDE_MARGIN`].
/// Rows that differ by an even number stay in line.
fn tie_places(joint: &Joint) -> [Place; MAX_ROWS] {
    let form = joint.form();
    let strip = joint.strip().to_mm();
    let mut places = [Place::default(); MAX_ROWS];
    let zigzag = form.arrangement() == Arrangement::Zigzag;
    let gauge = strip / f64::from(form.densest_rivets());
    let hole = joint.rows().iter().fold(0.0, |d, row| math::larger(d, row.hole().to_mm()));
    let mut before: Option<(u8, f64)> = None;
    for ((slot, row), number) in places.iter_mut().zip(form.rows()).zip(1_usize..) {
        let n = row.rivets;
        let edge = 0.5 * (strip - gauge * (f64::from(n) - 1.0));
        let alike_before = before.is_some_and(|(rivets, _)| rivets == n);
        let alike_after = number < form.row_count() && form.row(number.wrapping_add(1)).rivets == n;
        let mut shift = 0.0;
        if zigzag && (alike_before || alike_after) {
            let room = math::larger(edge - SIDE_MARGIN * hole, 0.0);
            let side = if before.is_some_and(|(_, shift)| alike_before && shift < 0.0) { 1.0 } else { -1.0 };
            shift = side * math::smaller(0.25 * gauge, room);
        }
        *slot = Place { first: edge + shift, step: gauge, rivets: n, shift };
        before = Some((n, shift));
    }
    places
}

/// The least distance of a hole's centre from an edge along the width of a tie, in diameters of that hole.
pub(super) fn side_margin(joint: &Joint) -> f64 {
    let strip = joint.strip().to_mm();
    places(joint, true).iter().zip(joint.rows()).fold(f64::INFINITY, |least, (place, row)| {
        let reach = place.first + place.step * (f64::from(place.rivets) - 1.0);
        math::smaller(least, math::smaller(place.first, strip - reach) / row.hole().to_mm())
    })
}

/// How far a row (from 1) lies across: from the butt line, in a lap from the edge of plate B, mm. Row distances that
/// are not known count as nothing.
pub(crate) fn across(joint: &Joint, row: usize) -> f64 {
    let gaps = joint.form().row_count().saturating_sub(1);
    let gap = |number: usize| joint.back_pitch(number).map_or(0.0, Length::to_mm);
    let margin = joint.margin().map_or(0.0, Length::to_mm);
    if joint.form().kind() == JointKind::Lap {
        (1..row).fold(margin, |sum, number| crate::formula::row_span(sum, gap(number)))
    } else {
        (row..gaps.saturating_add(1)).fold(margin, |sum, number| crate::formula::row_span(sum, gap(number)))
    }
}

/// Refuses holes that overlap, between any two rows.
pub(crate) fn clear_of_each_other(joint: &Joint, tie: bool) -> Result<(), Error> {
    let places = places(joint, tie);
    let rows = || places.iter().zip(joint.rows()).zip(1_u8..);
    for ((place, row), number) in rows() {
        for ((other, next), at) in rows().skip(usize::from(number)) {
            let apart = math::abs(across(joint, usize::from(number)) - across(joint, usize::from(at)));
            let touching = 0.5 * (row.hole().to_mm() + next.hole().to_mm());
            if apart < touching {
                let along = nearest(place, other, joint.strip().to_mm(), tie);
                if math::at_most(apart * apart + along * along, touching * touching) {
                    let least = math::sqrt(math::larger(touching * touching - along * along, 0.0));
                    let error = Error::new(ErrorKind::RowsOverlap, Field::BackPitch).index(number);
                    return Err(error.value(apart).limit(least));
                }
            }
        }
    }
    Ok(())
}

/// The least distance along the strip between holes of two rows, mm.
fn nearest(a: &Place, b: &Place, strip: f64, tie: bool) -> f64 {
    let mut least = strip;
    for i in 0..a.rivets {
        for j in 0..b.rivets {
            let off = math::abs(a.first + a.step * f64::from(i) - b.first - b.step * f64::from(j));
            least = math::smaller(least, off);
            if !tie {
                least = math::smaller(least, math::abs(strip - off));
            }
        }
    }
    least
}
