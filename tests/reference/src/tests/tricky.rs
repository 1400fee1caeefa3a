//! Invented joints with the strengths of their weakest modes, computed by another least-cut engine.

use super::near;
use crate::{Convention, Cut, Diameter, Form, Joint, Row, Stresses, cuts, min_cut, solid};

struct Case {
    id: &'static str,
    lap: bool,
    strip: f64,
    thick: [f64; 3],
    rows: &'static [(u32, f64, u32)],
    stress: [f64; 4],
    factors: [f64; 2],
    modes: &'static [(&'static str, f64)],
    solid: f64,
    governs: &'static str,
    efficiency: f64,
    runner_up: f64,
}

#[rustfmt::skip]
const CASES: &[Case] = include!("tricky_table.in");

fn build(case: &Case) -> (Joint, Stresses, Convention) {
    let form = if case.lap {
        Form::Lap { plates: [case.thick[0], case.thick[1]] }
    } else {
        Form::Butt { plate: case.thick[0], wide: case.thick[1], narrow: (case.thick[2] > 0.0).then_some(case.thick[2]) }
    };
    let rows = case.rows.iter().map(|&(rivets, hole, planes)| Row { rivets, hole, rivet: hole - 1.0, planes });
    let joint = Joint { form, strip: case.strip, rows: rows.collect() };
    let stresses = Stresses {
        plate_tension: case.stress[0],
        other_tension: case.stress[1],
        shear: case.stress[2],
        plate_bearing: Some(case.stress[3]),
        other_bearing: Some(case.stress[3]),
    };
    let convention = Convention {
        double: case.factors[0],
        one_plane: case.factors[1],
        tear: Diameter::Hole,
        tear_allowance: 0.0,
        shear: Diameter::Hole,
        bearing: Diameter::Hole,
    };
    (joint, stresses, convention)
}

fn name(cut: &Cut, lap: bool) -> String {
    let words = if lap {
        ["A tears row", "B tears row", ""]
    } else {
        ["plate tears row", "wide strap tears row", "narrow strap tears row"]
    };
    let mut parts = Vec::new();
    for (word, torn) in words.iter().zip([cut.plate, cut.first, cut.second]) {
        if let Some(row) = torn {
            parts.push(format!("{word} {row}"));
        }
    }
    if parts.is_empty() { "all rivets".to_string() } else { parts.join(" + ") }
}

#[test]
fn every_listed_mode_and_no_weaker_one() {
    assert_eq!(CASES.len(), 16);
    for case in CASES {
        let (joint, stresses, convention) = build(case);
        let mut all = cuts(&joint, &stresses, &convention);
        if case.lap {
            // The list has a lap's single tears only.
            all.retain(|cut| cut.plate.is_none() || cut.first.is_none());
        }
        all.sort_by(|a, b| a.strength.total_cmp(&b.strength));
        for &(mode, strength) in case.modes {
            let found = all.iter().find(|cut| name(cut, case.lap) == mode);
            let found = found.unwrap_or_else(|| panic!("{}: no cut named {mode}", case.id));
            near(found.strength, strength, 6e-4);
        }
        // Nothing weaker was left out: the listed strengths are the weakest ones, in order.
        for (cut, &(_, strength)) in all.iter().zip(case.modes) {
            near(cut.strength, strength, 6e-4);
        }
        if case.lap {
            assert_eq!(all.len(), case.modes.len(), "{}", case.id);
        }
        let whole = solid(&joint, &stresses);
        near(whole, case.solid, 1e-6);
        near(all[0].strength / whole, case.efficiency, 6e-10);
        near(all[1].strength / all[0].strength, case.runner_up, 6e-7);
        let named = all.iter().find(|cut| name(cut, case.lap) == case.governs);
        near(named.map_or(0.0, |c| c.strength), all[0].strength, 1e-9 * whole);
        near(min_cut(&joint, &stresses, &convention), all[0].strength, 1e-9 * all[0].strength);
    }
}
