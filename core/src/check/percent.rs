//! Plate, rivet and combined percentages, as the British and Indian rules state them.

use crate::formula::{self, Formula};
use crate::given::Given;
use crate::joint::{Joint, JointKind};
use crate::modes::prescribed_gaps;
use crate::rules::{CloseRows, Entry, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Why};
use crate::{error::EntryNo, math};

/// The percentages of Reg. 177 (Eq. 2, 3, 4) and of the Board of Trade form, by the book's diameters and factors.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Percentages<N = f64> {
    /// Plate percentage; modified by Reg. 184(d) where the book says so and rows are too close.
    pub plate: N,
    /// Rivet percentage.
    pub rivet: N,
    /// Combined percentage, only where the row next to the outer row has twice its rivets.
    pub combined: Option<N>,
}

impl<N: Num> Percentages<N> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Percentages {
        Percentages { plate: self.plate.value(), rivet: self.rivet.value(), combined: self.combined.map(Num::value) }
    }
}

/// Works the percentages out on the thinner plate.
#[inline]
pub(super) fn percentages<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules) -> Percentages<C::N> {
    let form = &joint.form;
    let thin_b = form.kind() == JointKind::Lap && joint.other < joint.plate;
    let (t, st) = if thin_b { (given.other, given.other_tension) } else { (given.plate, given.tension) };
    let p = given.strip;
    let mut n = given.rivets_in(1);
    let d = given.diameter(rules, Entry::TEAR_DIAMETER, 1);
    if rules.close_rows() == CloseRows::ModifiedPercentage {
        let mut worst: Option<C::N> = None;
        let gaps = prescribed_gaps(c, joint, given, rules);
        for (((least, _), actual), row) in
            gaps.into_iter().zip(joint.back).zip(1_u8..).take(form.row_count().wrapping_sub(1))
        {
            if actual > 0.0 && math::below(actual, least.value()) {
                let ratio = formula::gap_ratio(c.given(Name(Q::RowGap, row), actual), least);
                let ratio = c.formula(Name(Q::RowGapRatio, row), Formula::GapRatio.no(), ratio);
                worst = Some(
                    worst.map_or(ratio, |w| c.lesser(Name(Q::RowGapRatio, 0), Why::Least(EntryNo::NONE), w, ratio)),
                );
            }
        }
        if let Some(ratio) = worst {
            n = c.formula(Name(Q::HolesCounted, 1), Formula::CrowdedHoles.no(), formula::crowded_holes(ratio, n));
        }
    }
    let name = Name(Q::PlatePercent, 0);
    let mut plate = c.formula(name, Formula::PlatePercentage.no(), formula::plate_percentage(p, n, d));
    if plate.value() < 0.0 {
        plate = c.greater(name, Why::Floor(EntryNo::NONE), plate, C::N::lit(0.0));
    }
    let table = |q: Q, entry: Entry| c.table(Name(q, 0), entry.no(), rules.get(entry));
    let (f, f1) = (table(Q::SeamSafety, Entry::SEAM_SAFETY), table(Q::SeamDivisor, Entry::SEAM_DIVISOR));
    let one = C::N::lit(1.0);
    let double = form.rows().any(|row| row.planes == 2);
    let z = if double { table(Q::DoubleShear, Entry::DOUBLE_SHEAR) } else { one };
    let row_percentage = |row: usize| {
        let nc = formula::row_hold(given.rivets_in(row), if form.row(row).planes == 2 { z } else { one });
        let d = given.diameter(rules, Entry::SHEAR_DIAMETER, row);
        let at = u8::try_from(row).unwrap_or(0);
        let share = formula::rivet_percentage(d, nc, given.shear, f, f1, p, t, st);
        c.formula(Name(Q::RivetPercent, at), Formula::RivetPercentage.no(), share)
    };
    let outer = row_percentage(1);
    let mut rivet = outer;
    for row in 2..=form.row_count() {
        rivet = c.formula(
            Name(Q::RivetPercent, 0),
            Formula::CutStrength.no(),
            formula::cut_strength(rivet, row_percentage(row)),
        );
    }
    let combined = form.inner_doubled().then(|| {
        let d = given.diameter(rules, Entry::TEAR_DIAMETER, 2);
        let both = formula::combined_percentage(p, given.rivets_in(2), d, outer);
        c.formula(Name(Q::CombinedPercent, 0), Formula::CombinedPercentage.no(), both)
    });
    Percentages { plate, rivet, combined }
}
