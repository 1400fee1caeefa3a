//! Invented joints that catch shortcuts: straps as one, an inner row forgotten, iron beside steel, worn plates.
//!
//! Figures from an independent least-cut engine, checked by brute force outside this code base; the data is
//! `vectors/tricky.toml`.

use seamwright::check::{Subject, Verdict};
use seamwright::error::ErrorKind;
use seamwright::joint::JointKind;
use seamwright::modes::Cut;
use seamwright::rules::{Entry, Rules};
use seamwright::sizing::{Brief, Decided, Design, size};
use seamwright_tests::{
    Evaluated, Value, Vector, brief_of, cut_name, evaluate, load_file, parse_cut, rules_of, run, strengths, vectors_dir,
};

fn all() -> Vec<Vector> {
    load_file(&vectors_dir().join("tricky.toml"))
}

fn vector(id: &str) -> Vector {
    all().into_iter().find(|v| v.id == id).unwrap_or_else(|| panic!("no {id}"))
}

fn evaluated(id: &str) -> Evaluated {
    let vector = vector(id);
    evaluate(&vector, &rules_of(&vector)).unwrap_or_else(|e| panic!("{id}: {e}"))
}

fn number(found: &Evaluated, quantity: &str) -> f64 {
    match found.get(quantity) {
        Ok(Value::Number(x)) => x,
        other => panic!("{quantity}: {other:?}"),
    }
}

#[track_caller]
fn near(x: f64, printed: f64, half_unit: f64) {
    assert!((x - printed).abs() <= half_unit * (1.0 + 1e-9), "{x} is not {printed} within {half_unit}");
}

#[test]
fn every_case_is_here() {
    let ids: Vec<String> = all().into_iter().map(|v| v.id).collect();
    let t = (1..=10).map(|n| format!("T{n}"));
    let x = ["X1", "X2", "X3a", "X3b", "X5", "X7", "X4/close-0", "X4/close-1", "X4/close-2", "X6"];
    let more = ["X8/0.50", "X8/0.45", "X8/0.40", "X8/0.3725", "X5/46"];
    let expected: Vec<String> = t.chain(x.iter().chain(&more).map(|s| (*s).to_owned())).collect();
    assert_eq!(ids, expected);
}

#[test]
fn modes_governing_mode_efficiency_and_runner_up() {
    let cases = all();
    let failures: Vec<String> =
        cases.iter().filter(|v| v.check.is_some()).filter_map(|v| run(v, &rules_of(v)).err()).flatten().collect();
    assert!(failures.is_empty(), "{}", failures.join("\n"));
}

/// The listed modes of a case: cut and strength, N.
fn listed(vector: &Vector) -> Vec<(Cut, f64)> {
    let modes = vector.expect.iter().filter_map(|e| e.quantity.strip_prefix("mode ").map(|cut| (cut, e)));
    let strength = |printed: Option<&String>| printed.and_then(|p| p.parse().ok()).expect("a strength");
    modes.map(|(cut, e)| (parse_cut(cut).expect("a cut"), strength(e.printed.as_ref()))).collect()
}

#[test]
fn no_unlisted_cut_is_weaker_than_the_last_listed_one() {
    let mut cases = 0;
    for vector in all() {
        let listed = listed(&vector);
        let Some(last) = listed.iter().map(|(_, f)| *f).reduce(f64::max) else { continue };
        let first = listed.iter().map(|(_, f)| *f).fold(f64::INFINITY, f64::min);
        let found = evaluate(&vector, &rules_of(&vector)).unwrap_or_else(|e| panic!("{}: {e}", vector.id));
        let checked = found.check.as_ref().expect("a check");
        let lap = checked.joint.form().kind() == JointKind::Lap;
        let all = strengths(&checked.joint, &checked.materials, &found.rules);
        let mut unlisted = 0;
        for mode in all.modes().filter(|m| listed.iter().all(|(cut, _)| *cut != m.cut)) {
            // Of laps only the tears of one plate are listed: both plates torn must not govern.
            let floor = if lap && mode.cut.plate > 0 && mode.cut.other > 0 { first } else { last };
            let name = cut_name(&mode.cut);
            assert!(mode.strength >= floor - 0.001, "{}: {name} holds {} only", vector.id, mode.strength);
            unlisted += 1;
        }
        // Every cut there is: each member at each of its rows or whole.
        let rows = checked.joint.rows().len();
        let narrow = checked.joint.rows().iter().filter(|r| r.planes == 2).count();
        let cuts = (rows + 1) * (rows + 1) * if checked.joint.narrow_strap().is_some() { narrow + 1 } else { 1 };
        assert_eq!(listed.len() + unlisted, cuts, "{}", vector.id);
        cases += 1;
    }
    assert_eq!(cases, 16);
}

/// X3: the pitch that balances the outer row with the rivets is not the best one.
#[test]
fn x3_the_best_pitch_is_not_the_balanced_one() {
    let at = vector("X3b");
    let rules = rules_of(&at);
    let mut stated = at.check.expect("a joint");
    stated.pitch = None;
    let brief: Brief = brief_of(&stated).expect("a brief");
    let sized = |balance: f64, rules: Rules| -> Design {
        size(&brief, &rules.with(Entry::PITCH_BALANCE, balance).expect("a choice")).expect("a joint")
    };
    let book = sized(1.0, rules);
    // 28.5 + 181 812.803/(20*90) = 129.507; the cap is 4.63*20 + 41.28 = 133.88.
    near(book.pitch.by_weaker, 28.5 + 181_812.803 / 1800.0, 1e-5);
    assert_eq!((book.pitch.taken, book.pitch.decided), (129.0, Decided::Balance));
    let best = sized(2.0, rules);
    // The inner row with the outer rivet's single shear: 57 + (181 812.803 - pi/4*28.5^2*60)/1800 = 136.742.
    let outer = std::f64::consts::FRAC_PI_4 * 28.5 * 28.5 * 60.0;
    near(best.pitch.by_all_modes, 57.0 + (181_812.803 - outer) / 1800.0, 1e-5);
    assert_eq!((best.pitch.taken, best.pitch.decided), (133.0, Decided::Cap));
    near(book.analysis.efficiency, 0.722_981_824, 0.5e-9);
    near(best.analysis.efficiency, 0.731_313_198, 0.5e-9);
    // And no other whole pitch under the cap is better.
    for pitch in 90..133 {
        let other = Brief::pitch(brief, seamwright::quantities::Length::mm(f64::from(pitch)));
        let other = size(&other, &rules).expect("a joint");
        assert!(other.analysis.efficiency < best.analysis.efficiency, "{pitch}");
    }
}

/// X4: rows closer than prescribed, by the three choices of a book; the bare diagonal is never used.
#[test]
fn x4_close_rows() {
    let mut tears = Vec::new();
    for (choice, id) in ["X4/close-0", "X4/close-1", "X4/close-2"].into_iter().enumerate() {
        let found = evaluated(id);
        let checked = found.check.as_ref().expect("a check");
        let finding = checked.analysis.findings.find(Subject::RowDistance, 1).expect("a finding");
        assert_eq!(finding.verdict, Verdict::Open, "{id}");
        near(finding.required, 34.86, 0.005);
        assert_eq!(checked.analysis.governing.zigzag, choice == 2, "{id}");
        let tear = number(&found, "mode plate 1");
        // Twice the diagonal less a hole: 2 (sqrt(30^2 + 31.5^2) - 21) = 45.0 mm, more than the straight 42 mm.
        let diagonal = 2.0 * (f64::hypot(30.0, 31.5) - 21.0);
        near(diagonal, 45.0, 0.05);
        assert!((tear - diagonal * 12.0 * 80.0).abs() > 1000.0, "{id}: the bare diagonal");
        assert!(tear <= 42.0 * 12.0 * 80.0, "{id}: never more than straight across");
        tears.push(tear);
    }
    assert!(tears.windows(2).all(|w| w[1] < w[0]), "{tears:?}");
}

/// X6: the floor of the hole taken lies above the cap of the plate.
#[test]
fn x6_no_admissible_pitch() {
    let case = vector("X6");
    let rules = rules_of(&case);
    let stated = case.size.expect("a brief");
    let brief = brief_of(&stated).expect("a brief");
    let error = size(&brief, &rules).expect_err("no pitch");
    assert_eq!(error.kind, ErrorKind::NoAdmissiblePitch);
    // Floor 2 * 28.5, cap 1.31 * 7 + 41.28.
    near(error.value, 57.0, 1e-9);
    near(error.limit, 50.45, 1e-9);
    assert_eq!(Entry::from_no(error.entry), Some(Entry::PITCH_MAX_LAP));
    assert_eq!(Entry::from_no(error.other), Some(Entry::PITCH_LEAST));
    assert_eq!(error.hint_field, seamwright::bounds::Field::Hole);
    // At most 25.2 by the case; on whole millimetres the pitch is 50, and the hole 25.
    near(error.hint, 25.0, 1e-9);
    // The hole behind it: 4*7*160/(pi*56) = 25.46, of the series 28.5. With the pitch given it can be seen.
    let design = size(&brief.pitch(seamwright::quantities::Length::mm(57.0)), &rules).expect("a joint");
    near(design.hole.computed.expect("a rule").0, 25.46, 0.005);
    assert_eq!(design.hole.hole, 28.5);
    // And the hint is true: a hole of 25 has a pitch, on a grid fine enough.
    let hole = seamwright::quantities::Length::mm(25.0);
    let design = size(&brief.hole(hole, None), &rules).expect("a joint");
    assert!(design.pitch.taken >= 50.0 && design.pitch.taken <= 50.45);
}

/// X8: every mode again at the measured thickness. psi = TS t E/(R FS), 55 000 psi, 24 in, 5.
#[test]
fn x8_worn_plates() {
    let psi = |t: f64, e: f64| 55_000.0 * t * e / (24.0 * 5.0);
    let e = |id: &str| number(&evaluated(id), "efficiency");
    let (new, worn, thin, old) = (e("X8/0.50"), e("X8/0.45"), e("X8/0.40"), e("X8/0.3725"));
    near(psi(0.50, new), 144.6, 0.05);
    near(psi(0.45, worn), 144.6, 0.05);
    near(psi(0.40, thin), 134.2, 0.05);
    // What it would be with a figure of the new plate kept by mistake.
    near(psi(0.45, new), 130.2, 0.05);
    near(psi(0.50, thin), 167.8, 0.05);
    // 0.45 in less 15.5 years of 0.005 in: down to 125 psi.
    near(psi(0.3725, old), 125.0, 0.05);
}
