//! Plate, rivet and combined percentages, as the British and Indian rules state them.

use crate::formula::{self, Formula};
use crate::given::Given;
use crate::joint::{Joint, JointKind};
use crate::modes::{closest, deducted};
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

/// Works the percentages out on the weaker main plate, by thickness times tension; where the two plates of a lap are
/// alike in that, each from its own outer row, and the lesser percentage counts.
#[inline(never)]
pub(super) fn percentages<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules) -> Percentages<C::N> {
    let form = &joint.form;
    let rows = form.row_count();
    let weight = |t: C::N, st: C::N| t.value() * st.value();
    let (a, b) = (weight(given.plate, given.tension), weight(given.other, given.other_tension));
    let lap = form.kind() == JointKind::Lap;
    let counts_a = !lap || !math::below(b, a);
    // Plates alike, with rows alike from either side: one of them says all.
    let row = |r: usize| joint.rows().get(r.wrapping_sub(1));
    let mirrored = (1..=rows).all(|r| row(r) == row(rows.wrapping_add(1).wrapping_sub(r)));
    let counts_b = lap && !math::below(a, b) && !(counts_a && mirrored);
    let (t, st) = if counts_a { (given.plate, given.tension) } else { (given.other, given.other_tension) };
    // The outer row and the next one, of each plate that counts.
    let plates = [(counts_a, 1, 2), (counts_b, rows, rows.wrapping_sub(1))];

    let p = given.strip;
    let crowded = match rules.close_rows() {
        CloseRows::ModifiedPercentage => closest(c, joint, given, rules),
        _ => None,
    };
    let table = |q: Q, entry: Entry| c.table(Name(q, 0), entry.no(), rules.get(entry));
    let (f, f1) = (table(Q::SeamSafety, Entry::SEAM_SAFETY), table(Q::SeamDivisor, Entry::SEAM_DIVISOR));
    let one = C::N::lit(1.0);
    let double = form.rows().any(|row| row.planes == 2);
    let z = if double { table(Q::DoubleShear, Entry::DOUBLE_SHEAR) } else { one };
    let share = |c: C, row: usize| {
        let nc = formula::row_hold(given.rivets_in(row), if form.row(row).planes == 2 { z } else { one });
        let d = given.diameter(rules, Entry::SHEAR_DIAMETER, row);
        let at = u8::try_from(row).unwrap_or(0);
        let share = formula::rivet_percentage(d, nc, given.shear, f, f1, p, t, st);
        c.formula(Name(Q::RivetPercent, at), Formula::RivetPercentage.no(), share)
    };
    let mut rivet = share(c, 1);
    for row in 2..=rows {
        let more = share(c, row);
        let sum = formula::cut_strength(rivet, more);
        rivet = c.formula(Name(Q::RivetPercent, 0), Formula::CutStrength.no(), sum);
    }
    let lesser = |q: Q, least: Option<C::N>, next: C::N| match least {
        Some(least) => Some(c.lesser(Name(q, 0), Why::Least(EntryNo::NONE), least, next)),
        None => Some(next),
    };
    let (mut plate, mut combined) = (None, None);
    for (_, outer, next) in plates.into_iter().filter(|(counts, ..)| *counts) {
        let at = u8::try_from(outer).unwrap_or(0);
        let d = deducted(c, given, rules, outer);
        let mut n = given.rivets_in(outer);
        if let Some(ratio) = crowded {
            n = c.formula(Name(Q::HolesCounted, at), Formula::CrowdedHoles.no(), formula::crowded_holes(ratio, n));
        }
        let which = if counts_a && counts_b { at } else { 0 };
        let name = Name(Q::PlatePercent, which);
        let mut of_plate = c.formula(name, Formula::PlatePercentage.no(), formula::plate_percentage(p, n, d));
        if of_plate.value() < 0.0 {
            of_plate = c.greater(name, Why::Floor(EntryNo::NONE), of_plate, C::N::lit(0.0));
        }
        plate = lesser(Q::PlatePercent, plate, of_plate);
        if form.inner_doubled() {
            let d = deducted(c, given, rules, next);
            let outer_rivets = share(c.quiet(), outer);
            let both = formula::combined_percentage(p, given.rivets_in(next), d, outer_rivets);
            let both = c.formula(Name(Q::CombinedPercent, which), Formula::CombinedPercentage.no(), both);
            combined = lesser(Q::CombinedPercent, combined, both);
        }
    }
    // One of the two plates always counts.
    Percentages { plate: plate.unwrap_or(C::N::lit(0.0)), rivet, combined }
}
