//! The search against full enumeration on the independent reference model, and what each answer must be by itself.
//!
//! Figures are compared in whole numbers (billionths of an efficiency, millionths of rivets and of kilograms in a
//! metre): the two models add up in different orders, so that their last bits differ.

mod generate;

use generate::pairs::{Pair, pairs, sized_forms};
use proptest::prelude::*;
use proptest::sample::{select, subsequence};
use seamwright::check::{Subject, Verdict, check};
use seamwright::joint::{Arrangement, Form, JointKind};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{Footing, Shell};
use seamwright::rules::{Counted, Entry, Rounding, Rules};
use seamwright::search::{
    Beside, Candidate, Constraint, Objective, Outcome, SearchBrief, Tally, front, search, search_with,
};
use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock};
use seamwright_reference as reference;
use seamwright_reference::search::{Hit, Inner, Meeting, Miss, Plan, Sight, Task, Wanted};

const STOCK: f64 = 2.0;

/// A brief for both models.
#[derive(Clone, Debug)]
struct Asked {
    pair: Pair,
    objective: Objective,
    forms: Vec<Form>,
    plates: Vec<f64>,
    holes: Vec<(f64, f64)>,
    tension: f64,
    shear: f64,
    bearing: Option<f64>,
    pitch_most: f64,
    efficiency: Option<f64>,
    any_finding: bool,
    mass: bool,
}

fn sizes(rules: &Rules) -> Vec<(f64, f64)> {
    rules.series().map(|s| (s.rivet, s.hole)).collect()
}

/// Forms that the reference's books have clauses for; the code's paragraph on chain rows is not among them.
fn forms(us: bool) -> Vec<Form> {
    let list = sized_forms();
    list.into_iter().filter(|f| !us || f.row_count() == 1 || f.arrangement() == Arrangement::Zigzag).collect()
}

fn asked() -> impl Strategy<Value = Asked> {
    let pair = select(pairs().into_iter().enumerate().collect::<Vec<_>>());
    pair.prop_flat_map(|(at, pair)| {
        let objective = select(vec![Objective::Efficiency, Objective::Mass, Objective::Rivets, Objective::Thickness]);
        let plate = (12..60_u32).prop_map(|halves| f64::from(halves) / 2.0);
        let what = (
            objective,
            subsequence(forms(at == 3), 1..=4),
            prop::collection::vec(plate, 1..=2),
            subsequence(sizes(&pair.ours), 1..=3),
        );
        // Round stresses make equal efficiencies, which the key has to decide.
        // A book that checks bearing gets it, in what a failure is shrunk to, too.
        let bearing = 8..60_u32;
        let bearing =
            if at == 0 { prop::option::weighted(0.7, bearing).boxed() } else { bearing.prop_map(Some).boxed() };
        let stresses = (6..30_u32, 4..30_u32, bearing);
        let limits = (80.0..400.0, prop::option::of(0.3..0.95), any::<bool>(), any::<bool>());
        (what, stresses, limits).prop_map(move |(what, (tension, shear, bearing), limits)| {
            let (objective, forms, plates, holes) = what;
            let (pitch_most, efficiency, any_finding, mass) = limits;
            Asked {
                pair,
                objective,
                forms,
                plates,
                holes,
                tension: 10.0 * f64::from(tension),
                shear: 10.0 * f64::from(shear),
                bearing: bearing.map(|b| 10.0 * f64::from(b)),
                pitch_most,
                efficiency,
                any_finding,
                mass: mass || objective == Objective::Mass,
            }
        })
    })
}

fn order() -> Order {
    let stock = Stock::every(Length::mm(STOCK), Rounding::Up);
    Order::steel(Run::Tie, HeadForm::Button, LengthRule::Hand, stock)
}

impl Asked {
    fn materials(&self) -> Materials {
        let materials = Materials::new(Stress::mpa(self.tension), Stress::mpa(self.shear));
        match self.bearing {
            Some(bearing) => materials.bearing(Stress::mpa(bearing)),
            None => materials,
        }
    }

    /// Calls with the library's brief.
    fn with<T>(&self, call: impl FnOnce(&SearchBrief<'_>) -> T) -> T {
        let plates: Vec<Length> = self.plates.iter().map(|t| Length::mm(*t)).collect();
        let holes: Vec<Length> = self.holes.iter().map(|h| Length::mm(h.1)).collect();
        let mut brief = SearchBrief::new(self.objective, &plates, self.materials())
            .forms(&self.forms)
            .holes(&holes)
            .pitch_most(Length::mm(self.pitch_most));
        if let Some(least) = self.efficiency {
            brief = brief.efficiency(least);
        }
        if self.any_finding {
            brief = brief.any_finding();
        }
        if self.mass {
            brief = brief.mass(order());
        }
        call(&brief)
    }

    /// All joints of the grid by the reference.
    fn enumerated(&self) -> Vec<Result<Hit, Miss>> {
        let rules = &self.pair.ours;
        let plans: Vec<Plan> = self.forms.iter().map(plan).collect();
        let stresses = reference::Stresses {
            plate_tension: self.tension,
            other_tension: self.tension,
            shear: self.shear,
            plate_bearing: self.bearing,
            other_bearing: self.bearing,
        };
        let sight = Sight {
            bearing: rules.on(Entry::BEARING_CHECKED),
            inner: if rules.counts_inner() == Counted::Doubled { Inner::Doubled } else { Inner::All },
            credit: rules.get(Entry::EFFICIENCY_CAP),
            plate_least: rules.get(Entry::PLATE_LEAST),
            margin_most: rules.get(Entry::MARGIN_GREATEST),
        };
        reference::search::all(&Task {
            wanted: match self.objective {
                Objective::Efficiency => Wanted::Efficiency,
                Objective::Mass => Wanted::Mass,
                Objective::Rivets => Wanted::Rivets,
                Objective::Thickness => Wanted::Thickness,
            },
            plans: &plans,
            plates: &self.plates,
            sizes: &self.holes,
            stresses: &stresses,
            book: &self.pair.theirs,
            sight,
            pitch_most: self.pitch_most,
            efficiency: self.efficiency.map_or(0, |e| (e * 1e9).round() as u64),
            rules_met: !self.any_finding,
            stock: self.mass.then_some(STOCK),
        })
    }

    /// A candidate of the library is a hit of the reference.
    fn same(&self, ours: &Candidate, theirs: &Hit) -> Result<(), TestCaseError> {
        prop_assert_eq!(ours.form, self.forms[theirs.plan], "{:?} {:?} {:?}", self.objective, ours, theirs);
        prop_assert_eq!(ours.plate.to_mm(), self.plates[theirs.plate]);
        prop_assert_eq!(ours.hole.to_mm(), self.holes[theirs.size].1);
        prop_assert_eq!(ours.rivet.to_mm(), self.holes[theirs.size].0);
        prop_assert!((ours.pitch.to_mm() - theirs.pitch).abs() < 1e-9);
        let m = ours.measures;
        prop_assert_eq!((m.rivets, m.mass), (theirs.rivets, theirs.mass));
        // Half-way between two whole numbers of a billionth, the last bit of a sum decides.
        let half_way = ((ours.efficiency * 1e9).fract() - 0.5).abs() < 1e-4;
        let apart = m.efficiency.abs_diff(theirs.efficiency);
        prop_assert!(apart == 0 || (half_way && apart == 1), "{} {}", m.efficiency, theirs.efficiency);
        Ok(())
    }
}

fn plan(form: &Form) -> Plan {
    Plan {
        meeting: match form.kind() {
            JointKind::Lap => Meeting::Lap,
            JointKind::SingleStrap => Meeting::Single,
            JointKind::DoubleStrap => Meeting::Double,
        },
        arrangement: match form.arrangement() {
            Arrangement::Chain => reference::Arrangement::Chain,
            Arrangement::Zigzag => reference::Arrangement::Zigzag,
        },
        rows: form.rows().map(|r| (u32::from(r.rivets), u32::from(r.planes))).collect(),
    }
}

fn excluded(tally: &Tally, of: impl Fn(Constraint) -> bool) -> u64 {
    tally.excluded().filter(|(c, _)| of(*c)).map(|(_, n)| n).sum()
}

/// What holds of every search.
fn adds_up(tally: &Tally) -> Result<(), TestCaseError> {
    prop_assert_eq!(tally.grid, tally.fitting + tally.by_bound + excluded(tally, |_| true));
    prop_assert!(tally.examined <= tally.grid);
    Ok(())
}

fn agree(asked: &Asked) -> Result<(), TestCaseError> {
    let hits = asked.enumerated();
    let fail = |e: seamwright::Error| TestCaseError::fail(e.to_string());
    let outcome = asked.with(|brief| search(brief, &asked.pair.ours)).map_err(fail)?;
    let tally = outcome.tally();
    adds_up(tally)?;
    prop_assert_eq!(tally.grid - excluded(tally, |c| c == Constraint::Pitch), hits.len() as u64);
    let best = reference::search::best(&hits);
    match &outcome {
        Outcome::Found(found) => {
            prop_assert_eq!(found.best.len(), best.len().min(5));
            for (ours, theirs) in found.best.iter().zip(&best) {
                asked.same(&ours.candidate, theirs)?;
            }
            by_itself(asked, found)?;
        }
        Outcome::NothingFits(tally) => {
            prop_assert!(best.is_empty(), "{best:?}");
            let missed = |miss: Miss| hits.iter().filter(|h| **h == Err(miss)).count() as u64;
            prop_assert_eq!(tally.by_bound, 0);
            let (efficiency, making) = (missed(Miss::Efficiency), missed(Miss::Making));
            // What cannot be sized may be known by its bound to be too weak, which is asked first.
            let ours = excluded(tally, |c| c == Constraint::Efficiency);
            prop_assert!(ours >= efficiency && ours <= efficiency + making);
            prop_assert_eq!(excluded(tally, |c| matches!(c, Constraint::Rule(_))), missed(Miss::Rule));
            let most = tally.most().map_or(0, |(_, n)| n);
            prop_assert!(tally.excluded().all(|(_, n)| n <= most));
        }
    }
    if asked.mass {
        let theirs = reference::search::front(&hits);
        let mut slots = vec![None; theirs.len()];
        // Room for what the front holds on the way, too.
        slots.resize(theirs.len() * 2 + 400, None);
        let (count, tally) = asked.with(|brief| front(brief, &asked.pair.ours, &mut slots)).map_err(fail)?;
        adds_up(&tally)?;
        prop_assert_eq!(count, theirs.len());
        for (ours, theirs) in slots.iter().flatten().zip(&theirs) {
            asked.same(ours, theirs)?;
        }
    }
    Ok(())
}

/// The answer is a joint that passes the check, meets every constraint, and has no better neighbour.
fn by_itself(asked: &Asked, found: &seamwright::search::Found) -> Result<(), TestCaseError> {
    let fail = |e: seamwright::Error| TestCaseError::fail(e.to_string());
    let checked = check(&found.design.joint, &asked.materials(), &asked.pair.ours).map_err(fail)?;
    if !asked.any_finding {
        prop_assert!(checked.findings.iter().all(|f| f.verdict != Verdict::Open));
    }
    let first = &found.best[0];
    prop_assert_eq!(checked.credited.to_bits(), first.candidate.efficiency.to_bits());
    prop_assert!(first.behind.is_none());
    if let Some(least) = asked.efficiency {
        prop_assert!(checked.credited >= least - 1e-9);
    }
    for ranked in &found.best {
        for (neighbour, by) in ranked.neighbours.iter().zip([-1.0, 1.0]) {
            let pitch = ranked.candidate.pitch.to_mm() + by * asked.pair.ours.get(Entry::PITCH_STEP);
            let strip = Length::mm(pitch * f64::from(ranked.candidate.form.outer_rivets()));
            let brief = asked.with(|brief| ranked.candidate.brief(brief)).pitch(strip);
            let there = seamwright::sizing::size(&brief, &asked.pair.ours);
            match neighbour {
                Beside::Worse(_) => prop_assert!(there.is_ok()),
                Beside::Excluded(Constraint::Making) => {}
                Beside::Excluded(Constraint::Rule(_)) => {
                    prop_assert!(there.is_ok_and(|d| d.analysis.findings.open() > 0));
                }
                Beside::Excluded(Constraint::Efficiency) => {
                    let least = asked.efficiency.unwrap_or(0.0);
                    prop_assert!(there.is_ok_and(|d| d.analysis.credited < least));
                }
                Beside::Excluded(other) => prop_assert!(false, "{:?}", other),
                Beside::OffGrid => {
                    let off = |d: seamwright::sizing::Design| d.analysis.findings.open() > 0;
                    prop_assert!(pitch > asked.pitch_most - 1e-9 || there.map_or(true, off));
                }
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: generate::config().cases.clamp(2000, 4000), ..generate::config() })]

    #[test]
    fn search_equals_enumeration(asked in asked()) {
        agree(&asked)?;
    }
}

/// The thinnest plate for a pressure, or the best joint for it: by `2 st J (t - c)/D`, the formula of the metric
/// textbooks (Khurmi & Gupta, Machine Design, Example 9.4 and others), worked out here.
fn for_pressure(plates: &[f64], objective: Objective, pressure: f64, tension: f64) -> Result<(), TestCaseError> {
    let fail = |e: seamwright::Error| TestCaseError::fail(e.to_string());
    let (inside, corrosion) = (1500.0, 1.0);
    let pair = pairs()[1];
    let all = sizes(&pair.ours);
    let mut asked = Asked {
        pair,
        objective,
        forms: forms(false).into_iter().take(9).collect(),
        plates: plates.to_vec(),
        holes: all[3..6].to_vec(),
        tension,
        shear: 60.0,
        bearing: Some(130.0),
        pitch_most: 200.0,
        efficiency: None,
        any_finding: false,
        mass: false,
    };
    asked.plates.sort_by(f64::total_cmp);
    let shell = Shell::new(Length::mm(inside), Footing::Permissible).corrosion(Length::mm(corrosion));
    let outcome = asked.with(|brief| search(&brief.pressure(Pressure::mpa(pressure), shell), &pair.ours));
    let outcome = outcome.map_err(fail)?;
    adds_up(outcome.tally())?;
    let mut hits = asked.enumerated();
    hits.retain(|hit| {
        let Ok(hit) = hit else { return false };
        let j = hit.efficiency as f64 / 1e9;
        2.0 * tension * j * (asked.plates[hit.plate] - corrosion) / inside >= pressure
    });
    let best = reference::search::best(&hits);
    match &outcome {
        Outcome::Found(found) => {
            prop_assert_eq!(found.best.len(), best.len().min(5));
            for (ours, theirs) in found.best.iter().zip(&best) {
                asked.same(&ours.candidate, theirs)?;
                prop_assert!(ours.candidate.pressure.is_some_and(|p| p.to_mpa() >= pressure * (1.0 - 1e-9)));
            }
        }
        Outcome::NothingFits(tally) => {
            prop_assert!(best.is_empty());
            // Nothing but the pressure was asked for, and the book.
            prop_assert_eq!(tally.by_bound, 0);
            prop_assert!(excluded(tally, |c| c == Constraint::Pressure) > 0);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: generate::config().cases.min(64), ..generate::config() })]

    #[test]
    fn pressure_equals_enumeration(
        plates in prop::collection::btree_set(8..40_u32, 1..=4),
        thinnest in any::<bool>(),
        pressure in 0.3..3.0,
        tension in 60.0..120.0,
    ) {
        let plates: Vec<f64> = plates.iter().map(|t| f64::from(*t)).collect();
        let objective = if thinnest { Objective::Thickness } else { Objective::Efficiency };
        for_pressure(&plates, objective, pressure, tension)?;
    }
}

/// Constraints that exclude everything are named.
#[test]
fn what_excludes_most_is_named() -> Result<(), seamwright::Error> {
    let plates = [Length::mm(12.0)];
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    let rules = &pairs()[1].ours;
    let brief = SearchBrief::new(Objective::Efficiency, &plates, steel);
    let most = |brief: SearchBrief<'_>| search(&brief, rules).map(|o| o.tally().most().map(|(c, _)| c));
    assert_eq!(most(brief.efficiency(0.99))?, Some(Constraint::Efficiency));
    assert_eq!(most(brief.rivet_least(Length::mm(60.0)))?, Some(Constraint::RivetSize));
    assert_eq!(most(brief.pitch_most(Length::mm(2.0)))?, Some(Constraint::Pitch));
    let shell = Shell::new(Length::m(3.0), Footing::Permissible);
    assert_eq!(most(brief.pressure(Pressure::mpa(20.0), shell))?, Some(Constraint::Pressure));
    let forms = [Form::double_strap(4)?, Form::double_strap(5)?];
    assert_eq!(most(brief.forms(&forms).rows_most(3))?, Some(Constraint::Rows));
    // A plate thinner than the least of the Indian regulations (1/4 in, Reg. 366) breaks a rule whatever the joint.
    let thin = [Length::mm(6.0)];
    let brief = SearchBrief::new(Objective::Efficiency, &thin, steel);
    let outcome = search(&brief, &pairs()[0].ours)?;
    assert_eq!(outcome.tally().most().map(|(c, _)| c), Some(Constraint::Rule(Subject::PlateThickness)));
    // More rivets in the pitch than the table of greatest pitches knows: no end of the grid, unless it is named.
    let forms = [Form::unequal_straps(4)?];
    let brief = SearchBrief::new(Objective::Efficiency, &plates, steel).forms(&forms);
    assert_eq!(most(brief)?, Some(Constraint::CapUnknown));
    assert!(search(&brief.pitch_most(Length::mm(300.0)), rules)?.found().is_some());
    let named = outcome.tally().most().map_or("", |(c, _)| c.what());
    assert_eq!(named, "plate thickness");
    assert!(outcome.found().is_none());
    Ok(())
}

/// The winner in a recording context or with derivatives is the winner on bare numbers, bit for bit.
#[test]
fn the_winner_in_any_context() -> Result<(), seamwright::Error> {
    let plates = [Length::mm(14.0)];
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    let rules = &pairs()[1].ours;
    let brief = SearchBrief::new(Objective::Efficiency, &plates, steel).mass(order());
    let plain = search(&brief, rules)?;
    struct Nothing;
    impl seamwright::working::Sink for Nothing {
        fn step(&self, _: &seamwright::working::Step<'_>) {}
        fn section(&self, _: seamwright::step::Section) {}
    }
    let pad = seamwright::working::Pad::new(&Nothing);
    let recorded = search_with(seamwright::working::Record::new(&pad), &brief, rules)?;
    let (Outcome::Found(plain), Outcome::Found(recorded)) = (plain, recorded) else {
        panic!("a brief that has an answer");
    };
    let recorded = recorded.values();
    assert_eq!(plain.best, recorded.best);
    assert_eq!(plain.design.joint, recorded.design.joint);
    assert_eq!(plain.design.analysis.credited.to_bits(), recorded.design.analysis.credited.to_bits());
    assert!(!pad.spoilt());
    Ok(())
}

/// All forms and sizes at once, for every book and objective.
#[test]
fn whole_grids() -> Result<(), TestCaseError> {
    for (at, pair) in pairs().into_iter().enumerate() {
        for objective in [Objective::Efficiency, Objective::Mass, Objective::Rivets, Objective::Thickness] {
            agree(&Asked {
                pair,
                objective,
                forms: forms(at == 3),
                plates: vec![12.5, 16.0],
                holes: sizes(&pair.ours),
                tension: 80.0,
                shear: 60.0,
                bearing: Some(130.0),
                pitch_most: 220.0,
                efficiency: Some(0.7),
                any_finding: false,
                mass: true,
            })?;
        }
    }
    Ok(())
}

/// Three rivets crush the strap at `3 x 33.3375 x 11.1125 x 120/(152.4 x 12 x 140)` of the solid plate: 0.5208984375
/// exactly, half-way between two whole numbers of a billionth. The models add up otherwise, and land on either side.
#[test]
fn an_efficiency_half_way_between_two_keys() -> Result<(), TestCaseError> {
    let form = Form::from_rows(JointKind::SingleStrap, Arrangement::Zigzag, &[(1, 1), (2, 1)]).expect("a form");
    agree(&Asked {
        pair: pairs().into_iter().nth(3).expect("the US code"),
        objective: Objective::Efficiency,
        forms: vec![form],
        plates: vec![12.0],
        holes: vec![(31.75, 33.3375)],
        tension: 140.0,
        shear: 60.0,
        bearing: Some(120.0),
        pitch_most: 350.0,
        efficiency: None,
        any_finding: false,
        mass: false,
    })
}
