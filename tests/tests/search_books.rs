//! The pruning of the search under every book, changed ones too: against the enumeration of the same grid by `size`.
//!
//! The reference model of `search.rs` has no zig-zag net sections, no diagonal pitches and no shear-out; here they are
//! in, with the library's own evaluator, so that winner and front are compared bit for bit: what is tested is that
//! nothing was left out that should have been looked at.

mod generate;

use proptest::prelude::*;
use proptest::sample::{select, subsequence};
use seamwright::joint::{Form, JointKind};
use seamwright::materials::Materials;
use seamwright::proportion::{Limit, pitch_greatest, pitch_least};
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, Diameter, Entry, Rounding, Rules};
use seamwright::search::{Candidate, Objective, Outcome, SearchBrief, all_forms, front, search};
use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock, strip_masses};
use seamwright::sizing::{Brief, size};
use seamwright::step::Plain;

const PITCH_MOST: f64 = 260.0;

#[derive(Clone, Debug)]
struct Asked {
    rules: Rules,
    objective: Objective,
    forms: Vec<Form>,
    plates: Vec<Length>,
    holes: Vec<Length>,
    materials: Materials,
    any_finding: bool,
    sunk: bool,
}

/// A book, with some entries that bear on bounds changed.
fn rules() -> impl Strategy<Value = Rules> {
    let changes: &[(Entry, f64)] = &[
        (Entry::CLOSE_ROWS, 2.0),
        (Entry::TEAR_ALLOWANCE, 1.5),
        (Entry::INNER_SHARE, 1.0),
        (Entry::LONE_PLANE, 1.0),
        (Entry::COUNT_STRAP, 1.0),
        (Entry::BACK_ZIGZAG_RULE, 1.0),
        (Entry::DIAGONAL_PITCH, 0.3),
        (Entry::STRAP_OMITTED, 2.0),
        (Entry::TEAR_DIAMETER, 1.0),
        (Entry::SHEAR_DIAMETER, 1.0),
        (Entry::STRAP_STEP, 5.0),
        (Entry::BACK_STEP, 7.0),
        (Entry::EFFICIENCY_CAP, 0.6),
        (Entry::PITCH_LEAST, 0.0),
    ];
    (select(BOOKS.to_vec()), subsequence(changes.to_vec(), 0..=4)).prop_map(|(book, changes)| {
        let changed = changes.into_iter().try_fold(book.rules, |rules, (entry, value)| rules.with(entry, value));
        changed.ok().filter(|rules| rules.validate().is_ok()).unwrap_or(book.rules)
    })
}

fn asked() -> impl Strategy<Value = Asked> {
    rules().prop_flat_map(|rules| {
        let objective = select(vec![Objective::Efficiency, Objective::Mass, Objective::Rivets, Objective::Thickness]);
        let holes: Vec<Length> = rules.series().map(|s| Length::mm(s.hole)).collect();
        let holes = if holes.is_empty() { [17.0, 21.0, 25.0].map(Length::mm).to_vec() } else { holes };
        let grid = (
            objective,
            subsequence(all_forms().to_vec(), 1..=4),
            prop::collection::vec((5.0..32.0).prop_map(Length::mm), 1..=2),
            subsequence(holes, 1..=3),
        );
        let stresses = (60.0..300.0, 40.0..250.0, 80.0..500.0, prop::option::of(30.0..200.0));
        (grid, stresses, any::<bool>(), any::<bool>()).prop_map(move |(grid, stresses, any_finding, sunk)| {
            let (objective, forms, plates, holes) = grid;
            let (tension, shear, bearing, out) = stresses;
            let mut materials = Materials::new(Stress::mpa(tension), Stress::mpa(shear)).bearing(Stress::mpa(bearing));
            if let Some(out) = out {
                materials = materials.shear_out(Stress::mpa(out));
            }
            Asked { rules, objective, forms, plates, holes, materials, any_finding, sunk }
        })
    })
}

impl Asked {
    fn order(&self) -> Order {
        let head = if self.sunk { HeadForm::Countersunk } else { HeadForm::Button };
        Order::steel(Run::Tie, head, LengthRule::Hand, Stock::every(Length::mm(3.0), Rounding::Nearest))
    }

    /// Every candidate that is allowed: its place, pitch, efficiency, rivets in a metre and mass of a metre.
    fn enumerated(&self) -> Vec<([usize; 3], f64, [f64; 3])> {
        let mut list = Vec::new();
        let step = self.rules.get(Entry::PITCH_STEP);
        for (f, form) in self.forms.iter().enumerate() {
            let outer = f64::from(form.outer_rivets());
            for (t, plate) in self.plates.iter().enumerate() {
                for (h, hole) in self.holes.iter().enumerate() {
                    let rivet = self.rules.size_of_hole(hole.to_mm()).map_or(hole.to_mm(), |s| s.rivet);
                    let d = match self.rules.diameter(Entry::DISTANCE_DIAMETER) {
                        Diameter::Hole => hole.to_mm(),
                        Diameter::Rivet => rivet,
                    };
                    let (least, _) = pitch_least(Plain, &self.rules, form, d);
                    let most = match pitch_greatest(Plain, &self.rules, form, plate.to_mm()) {
                        Limit::At(cap, _) => cap.min(PITCH_MOST),
                        _ => PITCH_MOST,
                    };
                    for k in 1..10_000 {
                        let pitch = f64::from(k) * step;
                        if pitch > most * (1.0 + 1e-9) {
                            break;
                        }
                        if pitch < least * (1.0 - 1e-9) {
                            continue;
                        }
                        let brief = Brief::new(*form, *plate, self.materials)
                            .hole(*hole, Some(Length::mm(rivet)))
                            .pitch(Length::mm(pitch * outer));
                        let Ok(design) = size(&brief, &self.rules) else { continue };
                        if !self.any_finding && design.analysis.findings.open() > 0 {
                            continue;
                        }
                        let Ok(m) = strip_masses(Plain, &design.joint, &self.materials, &self.order()) else {
                            continue;
                        };
                        let sides = if form.kind() == JointKind::Lap { 1.0 } else { 2.0 };
                        let rivets = 1000.0 * sides * f64::from(form.rivets()) / (pitch * outer);
                        list.push(([f, t, h], pitch, [design.analysis.credited, rivets, m.per_metre]));
                    }
                }
            }
        }
        list
    }

    /// The documented key: the lesser is the better one.
    fn key(&self, (place, pitch, [efficiency, rivets, mass]): &([usize; 3], f64, [f64; 3])) -> [i64; 5] {
        let whole = |x: f64, parts: f64| (x * parts).round() as i64;
        let (e, r, m) = (-whole(*efficiency, 1e9), whole(*rivets, 1e6), whole(mass.max(0.0), 1e6));
        let (p, t) = (-whole(*pitch, 1e6), whole(self.plates[place[1]].to_mm(), 1e6));
        match self.objective {
            Objective::Efficiency => [e, r, m, p, t],
            Objective::Mass => [m, e, r, p, t],
            Objective::Rivets => [r, e, m, p, t],
            Objective::Thickness => [t, e, r, m, p],
        }
    }

    fn same(&self, ours: &Candidate, theirs: &([usize; 3], f64, [f64; 3])) -> Result<(), TestCaseError> {
        let (place, pitch, [efficiency, rivets, mass]) = theirs;
        prop_assert_eq!(ours.form, self.forms[place[0]], "{:?} {:?}", ours, theirs);
        prop_assert_eq!((ours.plate, ours.hole), (self.plates[place[1]], self.holes[place[2]]));
        prop_assert_eq!(ours.pitch.to_mm().to_bits(), pitch.to_bits());
        prop_assert_eq!(ours.efficiency.to_bits(), efficiency.to_bits());
        prop_assert!((ours.rivets_per_metre - rivets).abs() <= 1e-12 * rivets);
        prop_assert_eq!(ours.mass_per_metre.map(f64::to_bits), Some(mass.to_bits()));
        Ok(())
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: generate::config().cases.min(1000), ..generate::config() })]

    #[test]
    fn nothing_is_left_out(asked in asked()) {
        let list = asked.enumerated();
        let brief = SearchBrief::new(asked.objective, &asked.plates, asked.materials)
            .forms(&asked.forms)
            .holes(&asked.holes)
            .pitch_most(Length::mm(PITCH_MOST))
            .mass(asked.order());
        let brief = if asked.any_finding { brief.any_finding() } else { brief };
        let fail = |e: seamwright::Error| TestCaseError::fail(e.to_string());
        let outcome = search(&brief, &asked.rules).map_err(fail)?;
        let mut sorted: Vec<_> = list.iter().collect();
        sorted.sort_by_key(|c| (asked.key(c), c.0));
        let mut best: Vec<&_> = Vec::new();
        for candidate in sorted {
            if best.iter().all(|b: &&([usize; 3], f64, [f64; 3])| b.0[0] != candidate.0[0]) {
                best.push(candidate);
            }
        }
        match &outcome {
            Outcome::Found(found) => {
                prop_assert_eq!(found.best.len(), best.len().min(5));
                for (ours, theirs) in found.best.iter().zip(best) {
                    asked.same(&ours.candidate, theirs)?;
                }
            }
            Outcome::NothingFits(_) => prop_assert!(list.is_empty()),
        }

        let mut slots = vec![None; list.len() + 1];
        let (count, _) = front(&brief, &asked.rules, &mut slots).map_err(fail)?;
        let by_mass = Asked { objective: Objective::Mass, ..asked.clone() };
        let mut lightest: Vec<_> = list.iter().collect();
        lightest.sort_by_key(|c| (by_mass.key(c), c.0));
        let mut highest = -1;
        lightest.retain(|c| {
            let efficiency = -by_mass.key(c)[1];
            let better = efficiency > highest;
            highest = highest.max(efficiency);
            better
        });
        prop_assert_eq!(count, lightest.len());
        for (ours, theirs) in slots.iter().flatten().zip(lightest) {
            asked.same(ours, theirs)?;
        }
    }
}
