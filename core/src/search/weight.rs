//! The least mass of a metre of seam over a stretch of pitches.

use super::candidate::Group;
use crate::formula;
use crate::given::Given;
use crate::joint::{JointKind, MAX_ROWS};
use crate::math;
use crate::modes::prescribed_gaps;
use crate::proportion::{self, Covered, Limit, Strap};
use crate::rules::Entry;
use crate::shop::{Order, strip_masses};
use crate::sizing::Design;
use crate::step::Plain;

/// What all candidates of a group share that bears on their mass.
pub(super) struct Weights {
    order: Order,
    margin: f64,
}

/// Row distances and straps of a strip, before anything is bounded, mm.
struct Taken {
    /// By the book.
    gaps: [f64; MAX_ROWS],
    /// For the rivet heads; 0 where they ask for nothing.
    heads: [f64; MAX_ROWS],
    straps: [f64; 2],
}

impl Weights {
    /// From one design of the group: margins depend on the size alone.
    pub(super) fn new(order: &Order, design: &Design) -> Option<Self> {
        Some(Weights { order: *order, margin: design.joint.margin()?.to_mm() })
    }

    /// What sizing takes at a strip.
    fn taken(&self, group: &Group<'_, '_>, strip: f64) -> Option<Taken> {
        let rules = group.rules;
        let bare =
            crate::joint::JointSpec::new(group.form, crate::quantities::Length::mm(strip), group.plate, group.hole)
                .rivet(group.rivet)
                .build()
                .ok()?;
        let given: Given<f64> = group.given(&bare);
        let mut taken = Taken { gaps: [0.0; MAX_ROWS], heads: [0.0; MAX_ROWS], straps: [0.0; 2] };
        let step = rules.get(Entry::BACK_STEP);
        let found = prescribed_gaps(Plain, &bare, &given, rules);
        for ((least, _), slot) in found.iter().zip(taken.gaps.iter_mut()) {
            *slot = math::round_up(*least, step);
        }
        for (row, slot) in (1..group.form.row_count()).zip(taken.heads.iter_mut()) {
            let beside = proportion::head_beside_strap(Plain, &group.form, &given, self.margin, row);
            let apart = proportion::heads_apart(Plain, &group.form, &given, row);
            let least = math::larger(beside.unwrap_or(0.0), apart.unwrap_or(0.0));
            // Sizing lets a distance stand that is short by its tolerance.
            *slot = math::round_up(least, step) * (1.0 - 2.0 * math::TOLERANCE);
        }
        if group.form.kind() == JointKind::Lap {
            return Some(taken);
        }
        let covered = Covered::new(&group.form, &given, rules);
        for (strap, slot) in [Strap::Wide, Strap::Narrow].into_iter().zip(taken.straps.iter_mut()) {
            match proportion::strap_least(Plain, rules, &group.form, strap, &covered) {
                Limit::At(least, _) => *slot = math::round_up(least, rules.get(Entry::STRAP_STEP)),
                _ => return None,
            }
        }
        Some(taken)
    }

    /// A mass that no candidate with a strip from `low` to `high` mm goes below, kg for a metre; 0 where none is known.
    pub(super) fn least(&self, group: &Group<'_, '_>, low: f64, high: f64) -> f64 {
        self.bound(group, low, high).unwrap_or(0.0)
    }

    fn bound(&self, group: &Group<'_, '_>, low: f64, high: f64) -> Option<f64> {
        let (a, b) = (self.taken(group, low)?, self.taken(group, high)?);
        // A rule that asks for nothing gives way to another distance: nothing is known of what lies between.
        let count = group.form.row_count().saturating_sub(1);
        if a.gaps.iter().zip(b.gaps).take(count).any(|(x, y)| math::smaller(*x, y) <= 0.0) {
            return None;
        }
        // The book's distance and that for the heads are each least at an end, perhaps not at the same one.
        let by_book = a.gaps.iter().zip(b.gaps).map(|(x, y)| math::smaller(*x, y));
        let for_heads = a.heads.iter().zip(b.heads).map(|(x, y)| math::smaller(*x, y));
        let gaps = || by_book.clone().zip(for_heads.clone()).map(|(x, y)| math::larger(x, y));
        let [a_wide, a_narrow] = a.straps;
        let [b_wide, b_narrow] = b.straps;
        let thin = [math::smaller(a_wide, b_wide), math::smaller(a_narrow, b_narrow)];
        let thick = [math::larger(a_wide, b_wide), math::larger(a_narrow, b_narrow)];
        let materials = &group.search.materials;
        let weigh = |straps: [f64; 2]| {
            let joint = group.joint(low, straps, gaps(), self.margin).ok()?;
            strip_masses(Plain, &joint, materials, &self.order).ok()
        };
        let (light, heavy) = (weigh(thin)?, weigh(thick)?);
        // Plates grow with the strip, rivets and holes do not: for a metre the first stay and the second shrink.
        let plates = formula::mass_per_metre(light.straps + light.overlap, low);
        let rivets = light.rivets - heavy.holes;
        let (x, y) = (formula::mass_per_metre(rivets, low), formula::mass_per_metre(rivets, high));
        // The roundings of this are of 1e-15.
        Some((plates + math::smaller(x, y)) * (1.0 - 1e-9))
    }
}
