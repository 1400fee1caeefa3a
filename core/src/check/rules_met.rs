//! The rules of a book, one by one, against a joint.

use super::{Analysis, FindingSink, Required, Subject, same};
use crate::given::Given;
use crate::joint::{Joint, JointKind};
use crate::materials::Materials;
use crate::math;
use crate::modes::prescribed_gap;
use crate::proportion::{self, Covered, Limit, Strap};
use crate::rules::{Entry, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Why};

/// Dimensions against the book.
#[inline]
pub(super) fn dimensions<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules, out: &mut dyn FindingSink) {
    plate_and_hole(joint, rules, out);
    pitch(c, joint, given, rules, out);
    rows_and_margin(c, joint, given, rules, out);
    straps(c, joint, given, rules, out);
    grip(joint, rules, out);
    super::heads::heads(c, joint, given, out);
}

#[inline(never)]
fn plate_and_hole(joint: &Joint, rules: &Rules, out: &mut dyn FindingSink) {
    let t = joint.thinner();
    let least = rules.get(Entry::PLATE_LEAST);
    if least > 0.0 {
        out.compare(Subject::PlateThickness, 0, Entry::PLATE_LEAST.no(), Required::AtLeast, least, t);
    }
    let limit = rules.get(Entry::HOLE_THIN_BELOW);
    if rules.on(Entry::HOLE_THIN_RULE) && same(t, limit) {
        out.note_of(Subject::ThinPlateJump, Entry::HOLE_THIN_AT.no(), limit, t);
    }
    let mut before = None;
    for (row, number) in joint.rows().iter().zip(1_u8..) {
        if before == Some((row.hole, row.rivet)) {
            continue;
        }
        before = Some((row.hole, row.rivet));
        match (rules.next_size(row.hole), rules.series().next()) {
            // The next size is the figure: a standard hole is its own next size.
            (Some(next), _) => {
                out.compare(Subject::HoleStandard, number, next.entry.no(), Required::AtLeast, next.hole, row.hole);
            }
            (None, Some(_)) => out.unknown(Subject::HoleStandard, Entry::SERIES_HOLE.no(), row.hole),
            (None, None) => {}
        }
        for (entry, subject, sense) in [
            (Entry::HOLE_PER_PLATE_LEAST, Subject::HoleLeast, Required::AtLeast),
            (Entry::HOLE_PER_PLATE_GREATEST, Subject::HoleGreatest, Required::AtMost),
        ] {
            let factor = rules.get(entry);
            if factor > 0.0 {
                out.compare(subject, number, entry.no(), sense, factor * t, row.hole);
            }
        }
        let clearance = rules.get(Entry::HOLE_CLEARANCE_GREATEST);
        if clearance > 0.0 {
            let entry = Entry::HOLE_CLEARANCE_GREATEST.no();
            out.compare(Subject::Clearance, number, entry, Required::AtMost, clearance, row.hole - row.rivet);
        }
    }
}

/// The row with the most rivets, the larger hole where rows are alike.
pub(crate) fn densest(joint: &Joint) -> usize {
    let mut best = (1, 0, 0.0);
    for (row, number) in joint.rows().iter().zip(1..) {
        if row.rivets > best.1 || (row.rivets == best.1 && row.hole > best.2) {
            best = (number, row.rivets, row.hole);
        }
    }
    best.0
}

#[inline(never)]
fn pitch<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules, out: &mut dyn FindingSink) {
    let form = &joint.form;
    let provided = joint.pitch().to_mm();
    let d = given.diameter(rules, Entry::DISTANCE_DIAMETER, densest(joint));
    let (least, entry) = proportion::pitch_least(c, rules, form, d);
    if least.value() > 0.0 {
        out.compare(Subject::PitchLeast, 0, entry.no(), Required::AtLeast, least.value(), provided);
    }
    match proportion::pitch_greatest(c, rules, form, thinner(c, joint, given)) {
        Limit::At(most, entry) => {
            out.compare(Subject::PitchGreatest, 0, entry.no(), Required::AtMost, most.value(), provided);
        }
        Limit::Unknown(entry) => out.unknown(Subject::PitchGreatest, entry.no(), provided),
        Limit::None => {}
    }
    let scallop = rules.get(Entry::PITCH_SCALLOP);
    if scallop > 0.0 && form.kind() != JointKind::Lap {
        // The caulked edge is that of the narrower strap, where there is one.
        let strap = if joint.narrow > 0.0 { joint.narrow } else { joint.other };
        let t = if strap > 0.0 { math::smaller(strap, joint.plate) } else { joint.plate };
        let entry = Entry::PITCH_SCALLOP.no();
        out.compare(Subject::Scallop, 0, entry, Required::AtMost, scallop * t, provided);
    }
}

/// The thinner of the main plates, as a number of the context.
#[inline]
pub(crate) fn thinner<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>) -> C::N {
    if joint.form.kind() == JointKind::Lap && joint.other != joint.plate {
        c.lesser(Name(Q::ThinnerPlate, 0), Why::Least(crate::error::EntryNo::NONE), given.plate, given.other)
    } else {
        given.plate
    }
}

#[inline(never)]
fn rows_and_margin<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules, out: &mut dyn FindingSink) {
    for ((row, gap), actual) in (1..joint.form.row_count()).zip(1_u8..).zip(&joint.back) {
        let ((least, entry), actual) = (prescribed_gap(c, joint, given, rules, row), *actual);
        if actual > 0.0 && least.value() > 0.0 {
            out.compare(Subject::RowDistance, gap, entry.no(), Required::AtLeast, least.value(), actual);
        }
    }
    if !joint.rows_placed() {
        out.unknown(Subject::RowsUnknown, Entry::BACK_ZIGZAG.no(), f64::NAN);
    }
    if joint.margin <= 0.0 {
        out.unknown(Subject::MarginUnknown, Entry::MARGIN_LEAST.no(), f64::NAN);
        return;
    }
    let (largest, smallest) = extremes(joint, given, rules);
    let least = proportion::margin_least(c, rules, largest);
    let entry = Entry::MARGIN_LEAST.no();
    if least.value() > 0.0 {
        out.compare(Subject::MarginLeast, 0, entry, Required::AtLeast, least.value(), joint.margin);
    }
    if let Limit::At(most, entry) = proportion::margin_greatest(c, rules, smallest, thinner(c, joint, given)) {
        out.compare(Subject::MarginGreatest, 0, entry.no(), Required::AtMost, most.value(), joint.margin);
    }
}

/// The largest and the smallest of the diameters that count in distances.
#[inline]
pub(crate) fn extremes<N: Num>(joint: &Joint, given: &Given<N>, rules: &Rules) -> (N, N) {
    let first = given.diameter(rules, Entry::DISTANCE_DIAMETER, 1);
    let mut found = (first, first);
    for row in 2..=joint.form.row_count() {
        let d = given.diameter(rules, Entry::DISTANCE_DIAMETER, row);
        if d.value() > found.0.value() {
            found.0 = d;
        }
        if d.value() < found.1.value() {
            found.1 = d;
        }
    }
    found
}

#[inline(never)]
fn straps<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules, out: &mut dyn FindingSink) {
    let form = &joint.form;
    if form.kind() == JointKind::Lap {
        return;
    }
    let double = form.kind() == JointKind::DoubleStrap;
    if joint.other <= 0.0 || (double && joint.narrow <= 0.0) {
        out.unknown(Subject::StrapsUnknown, Entry::STRAP_EQUAL.no(), f64::NAN);
    }
    let covered = Covered::new(form, given, rules);
    for (strap, subject, provided) in
        [(Strap::Wide, Subject::WideStrap, joint.other), (Strap::Narrow, Subject::NarrowStrap, joint.narrow)]
    {
        if provided <= 0.0 {
            continue;
        }
        match proportion::strap_least(c, rules, form, strap, &covered) {
            Limit::At(least, entry) => {
                out.compare(subject, 0, entry.no(), Required::AtLeast, least.value(), provided);
            }
            Limit::Unknown(entry) => out.unknown(subject, entry.no(), provided),
            Limit::None => {}
        }
    }
}

fn grip(joint: &Joint, rules: &Rules, out: &mut dyn FindingSink) {
    let factor = rules.get(Entry::GRIP_GREATEST);
    if factor <= 0.0 {
        return;
    }
    let thickness = joint.plate + joint.other + joint.narrow;
    let smallest = joint.rows().iter().fold(f64::INFINITY, |d, row| math::smaller(d, row.rivet));
    out.compare(Subject::Grip, 0, Entry::GRIP_GREATEST.no(), Required::AtMost, factor * smallest, thickness);
}

/// Figures of strength against each other and against the book.
#[inline(never)]
pub(super) fn strengths<N: Num>(
    materials: &Materials,
    rules: &Rules,
    analysis: &Analysis<N, ()>,
    out: &mut dyn FindingSink,
) {
    let (eta, j) = (analysis.efficiency.value(), analysis.book_efficiency.value());
    out.compare(Subject::AllModes, 0, Entry::COUNT_INNER.no(), Required::AtLeast, j, eta);
    let cap = rules.get(Entry::EFFICIENCY_CAP);
    if cap < 1.0 {
        let least = math::smaller(eta, j);
        if math::below(cap, least) {
            out.note_of(Subject::CreditCap, Entry::EFFICIENCY_CAP.no(), cap, least);
        }
    }
    let rivets = analysis
        .bearing_all
        .map_or(analysis.shear_all.value(), |b| math::smaller(b.value(), analysis.shear_all.value()));
    let room = rules.get(Entry::ROOM);
    let plate = analysis.tear_outer.value();
    let least = analysis.governing.strength.value();
    if least <= 0.0 {
        out.compare(Subject::NetSection, 0, Entry::CLOSE_ROWS.no(), Required::AtLeast, f64::MIN_POSITIVE, least);
    }
    let ratio = if plate > 0.0 { rivets / plate } else { 0.0 };
    if math::at_least(ratio, room) {
        out.note_of(Subject::Room, Entry::ROOM.no(), room, ratio);
    }
    if materials.plate.bearing.is_none() || materials.other.bearing.is_none() {
        out.unknown(Subject::BearingUnknown, Entry::BEARING_CHECKED.no(), f64::NAN);
    }
}
