//! The program as its users meet it: the built binary, its flags, its sheet.
#![allow(missing_docs, reason = "tests")]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    dead_code,
    reason = "tests may panic; not all of the support is used here"
)]

mod support;

use std::collections::BTreeSet;

use support::case::{Case, Shape, bases};
use support::expected::Expected;
use support::sheet::{Figures, Printed, figures};
use support::sheet_of;

use seamwright_reference::Arrangement;
use seamwright_reference::book::{INCH, PSI};

#[test]
fn the_default_run_prints_every_section() {
    let sheet = sheet_of::<&str>(&[]);
    for part in [
        "INVENTED SCENARIO",
        "Title",
        "Object",
        "Drawing no.",
        "Rule book       Indian Boiler Regulations 1950 (id indian)",
        "seamwright 0.",
        "Input hash",
        "1. Basis of inputs",
        "2. Form",
        "X a caulked edge",
        "3. Dimensions",
        "4. Stresses and factor of safety",
        "5. Pitch of the outer row",
        "6. One rivet of each row",
        "7. Strength of one pitch",
        "plate percentage",
        "8. Failure modes",
        "9. Result",
        "Governing",
        "Runner-up",
        "J, efficiency by the book",
        "eta, efficiency over all modes",
        "credited efficiency",
        "10. Load, pressure, and other limits",
        "11. Findings",
        "12. Figures from memory",
        "[MEM]",
        "13. Sources of the rule book",
        "14. Cautions",
        "15. Prepared and checked",
        "Design aid only.",
        "inspecting authority",
        "old shells need inspection",
        "Prepared",
        "Checked",
        "Date",
        "Page",
    ] {
        assert!(sheet.contains(part), "{part} is missing in\n{sheet}");
    }
    // In the scenario the answer is not the obvious one.
    assert!(sheet.contains("Governing: plate tears at row 2, row 1 shears."));
}

#[test]
fn no_sheet_is_wider_than_the_page() {
    let cases = bases().into_iter().map(|case| case.args());
    let more = [["--units", "inch"].map(String::from).to_vec(), Vec::new()];
    for args in cases.chain(more) {
        for line in sheet_of(&args).lines() {
            assert!(line.chars().count() <= 80 && line.is_ascii(), "{line}");
        }
    }
}

#[test]
fn a_sheet_in_every_dialect() {
    for (dialect, part) in [
        ("narrow", "* 1. Basis of inputs"),
        ("markdown", "## 1. Basis of inputs"),
        ("latex", "\\subsection*{1. Basis of inputs}"),
        ("html", "<h2>1. Basis of inputs</h2>"),
    ] {
        let sheet = sheet_of(&["--dialect", dialect]);
        assert!(sheet.contains(part) && sheet.contains("80.79"), "{dialect}");
    }
    let lap = bases().swap_remove(0).args();
    let refused =
        support::run(&[&["sensitivity".to_string()], &lap[1..], &["--dialect".into(), "html".into()]].concat());
    assert_eq!(refused.status.code(), Some(2), "a dialect that a command cannot write");
}

/// Printed figures against the independent model's: the same names, and each to its last printed place.
fn agree(case: &Case) -> (Figures, Figures) {
    let args = case.args();
    let printed = figures(&sheet_of(&args));
    let expected = Expected::of(case);
    let names: BTreeSet<&String> = printed.keys().collect();
    let known: BTreeSet<&String> = expected.0.keys().collect();
    let apart: Vec<_> = names.symmetric_difference(&known).collect();
    assert!(apart.is_empty(), "{apart:?} on one side only\n{args:?}");
    let mut model = Figures::new();
    for (name, figure) in &expected.0 {
        let seen = &printed[name];
        let value = figure.printed(case.inch);
        let slack = seen.half * (1.0 + 1e-6) + 1e-9 * value.abs();
        assert!((seen.value - value).abs() <= slack, "{name}: {} printed, {value} by the model\n{args:?}", seen.text);
        // As the model would print it: to the same place.
        let places = (seen.half * 2.0).log10().abs().round().clamp(0.0, 9.0) as usize;
        let text = format!("{value:.places$}");
        model.insert(name.clone(), Printed { value: text.parse().unwrap(), text, half: seen.half });
    }
    (printed, model)
}

/// Names whose figures differ, or that only one of the two has.
fn changed(a: &Figures, b: &Figures) -> BTreeSet<String> {
    let differs = |name: &&String| match (a.get(*name), b.get(*name)) {
        (Some(x), Some(y)) => (x.value - y.value).abs() > 1e-9 * x.value.abs(),
        _ => true,
    };
    a.keys().chain(b.keys()).filter(differs).cloned().collect()
}

/// Every flag: how it changes a case (`None` where it does not apply), and a figure that must move.
fn variations(base: &Case) -> Vec<(&'static str, Case, &'static str)> {
    let lap = base.shape == Shape::Lap;
    let two = matches!(base.shape, Shape::Equal | Shape::Unequal);
    let given = base.assume.is_none();
    // On the grid of the book, so that inches stay fractions.
    let unit = if base.inch { INCH / 16.0 } else { 1.0 };
    let on_grid = |mm: f64| (mm / unit).round() * unit;
    let half_more = |x: f64| x * 1.5;
    let mut out: Vec<(&'static str, Case, &'static str)> = Vec::new();
    let mut vary = |flag, moved, applies: bool, change: &dyn Fn(Case) -> Case| {
        if applies {
            out.push((flag, change(base.clone()), moved));
        }
    };
    let c = || base.clone();
    vary("--plate", "solid plate", true, &|b| Case { plate: on_grid(b.plate * 1.25), ..b });
    vary("--plate, thin", "solid plate", !base.inch && !base.check && base.bearing.is_some(), &|b| Case {
        plate: 7.0,
        ..b
    });
    vary("--other-plate", "t2 provided", lap, &|b| Case { other_plate: Some(on_grid(b.plate * 0.8)), ..b });
    let moved = if given { "stress st" } else { "solid plate" };
    vary("--tension", moved, given, &|b| Case { tension: 70.0, ..b });
    vary("--shear", "stress ss", given, &|b| Case { shear: 52.0, ..b });
    vary("--bearing", "stress sc", given && base.bearing.is_some(), &|b| Case { bearing: Some(95.0), ..b });
    vary("--other-tension", "stress st2", true, &|b| Case { other_tension: Some(half_more(b.tension)), ..b });
    vary("--other-bearing", "stress sc2", base.bearing.is_some(), &|b| Case {
        other_bearing: b.bearing.map(half_more),
        ..b
    });
    vary("--safety-factor", "governing", true, &|b| Case { factor: Some(4.5), ..b });
    vary("--hole", "d provided", true, &|b| Case {
        hole: Some(if b.inch { 0.875 * INCH } else { 31.5 }),
        rivet: None,
        ..b
    });
    vary("--hole --rivet", "dr provided", true, &|b| Case {
        hole: Some(if b.inch { 0.875 * INCH } else { 31.5 }),
        rivet: Some(if b.inch { 0.8125 * INCH } else { 30.5 }),
        ..b
    });
    let pitch = if base.inch { 5.25 * INCH } else { 111.0 };
    vary("--pitch", "p provided", true, &|b| Case { pitch: Some(pitch), ..b });
    vary("--wide-strap", "b1 provided", !lap, &|b| Case {
        wide: Some(if b.inch { 0.5 * INCH } else { 22.0 }),
        narrow: two.then_some(if b.inch { 0.4375 * INCH } else { 21.0 }),
        ..b
    });
    vary("--margin", "m provided", true, &|b| Case { margin: Some(if b.inch { 1.5 * INCH } else { 51.0 }), ..b });
    vary("--gap", "g1 provided", true, &|b| Case {
        gaps: (1..b.rows.len()).map(|k| if b.inch { 2.5 * INCH } else { 90.0 + k as f64 }).collect(),
        ..b
    });
    vary("--rows", "modes", base.rows.len() < 3 && !base.check, &|b| b.rows(3));
    vary("--chain", "g1 provided", !base.check && base.id != "us-code", &|b| Case {
        arrangement: Arrangement::Chain,
        ..b
    });
    vary("--omit-alternate", "p/k provided", base.shape == Shape::Equal && base.rows.iter().all(|r| r.0 == 1), &|b| {
        b.omit()
    });
    vary("--row-list", "modes", base.shape == Shape::Unequal && base.id == "indian", &|b| {
        b.row_list(&[(1, 1), (2, 2)])
    });
    vary("--row-list, wide strip", "B provided", lap && !base.check, &|b| b.row_list(&[(2, 1), (2, 1)]));
    let double = if base.id == "us-code" { 1.9 } else { 1.6 };
    let entry: &'static str = if base.id == "us-code" { "shear.double=1.9" } else { "shear.double=1.6" };
    vary("--set shear.double", "shearing of all rivets", two, &|b| {
        b.set(entry, |book| (book.double, book.one_plane) = (double, double / 2.0))
    });
    vary("--set margin.least.factor", "m required", true, &|b| {
        b.set("margin.least.factor=1.6", |book| book.margin_factor = 1.6)
    });
    vary("--set pitch.least.factor", "floor (least pitch)", true, &|b| {
        b.set("pitch.least.factor=2.1", |book| book.floor_factor = 2.1)
    });
    vary("--set hole.sqrt", "d required", !base.inch && !base.check, &|b| {
        b.set("hole.sqrt=6.3", |book| book.hole_a = 6.3)
    });
    vary("--assume", "stress ss", !given, &|_| Case {
        assume: Some("iron"),
        tension: 45_000.0 * PSI,
        shear: 38_000.0 * PSI,
        ..c()
    });
    let books = base.id != "us-code" && base.bearing.is_some();
    vary("--book", "plate percentage", books && base.shape == Shape::Unequal, &|b| {
        let metric = bases().swap_remove(0);
        Case { id: metric.id, book: metric.book, ..b }
    });
    out
}

#[test]
fn changing_any_one_flag_changes_every_number_that_depends_on_it() {
    let (mut tried, mut count) = (BTreeSet::new(), 0);
    for base in bases() {
        let (sheet, model) = agree(&base);
        for (flag, case, moved) in variations(&base) {
            let (new_sheet, new_model) = agree(&case);
            let seen = changed(&sheet, &new_sheet);
            let known = changed(&model, &new_model);
            assert_eq!(seen, known, "{flag} on {base:?}");
            assert!(seen.contains(moved), "{flag} did not move {moved} on {base:?}");
            count += 1;
            tried.insert(flag.split([' ', ',']).next().unwrap().to_string());
        }
    }
    let all = "--plate --other-plate --tension --shear --bearing --other-tension --other-bearing --safety-factor --hole \
               --pitch --wide-strap --margin --gap --rows --chain --omit-alternate --row-list --set --assume --book";
    for flag in all.split_whitespace() {
        assert!(tried.contains(flag), "{flag} was never varied");
    }
    assert!(count > 100, "only {count} variations");
}

/// Flags that must leave every figure alone.
#[test]
fn texts_and_the_default_arrangement_change_no_number() {
    for base in bases() {
        let plain = figures(&sheet_of(&base.args()));
        for (flag, value) in
            [("--title", "T"), ("--object", "O"), ("--drawing", "D-1"), ("--jurisdiction", "J"), ("--zigzag", "")]
        {
            let mut args = base.args();
            args.push(flag.to_string());
            if !value.is_empty() {
                args.push(value.to_string());
            }
            let sheet = sheet_of(&args);
            assert_eq!(figures(&sheet), plain, "{flag}");
            assert!(value.is_empty() || sheet.contains(value));
        }
    }
}

/// Shear-out is not in the independent model: by hand, for a lap of one row.
#[test]
fn plate_shear_brings_shear_out_at_the_margin() {
    let base = "check --book metric --form lap --rows 1 --plate 10mm --hole 20mm --pitch 60mm --margin 30mm \
                --tension 80MPa --shear 100MPa --bearing 200MPa";
    let mut args: Vec<&str> = base.split_whitespace().collect();
    let before = figures(&sheet_of(&args));
    // Tearing: (60 - 20) 10 80 = 32 kN; rivet in shear pi/4 400 100 = 31.42 kN.
    assert_eq!(before["governing"].text, "31.42 kN");
    args.extend(["--plate-shear", "60 MPa"]);
    let sheet = sheet_of(&args);
    let after = figures(&sheet);
    // Two planes of 30 - 20/2 = 20 mm by 10 mm: 400 mm2 at 60 MPa = 24 kN.
    assert_eq!(after["governing"].text, "24.00 kN");
    assert!(sheet.contains("row 1 shears out plate"), "{sheet}");
    assert_eq!(after["shearing of all rivets"], before["shearing of all rivets"]);
}

#[test]
fn inch_and_millimetre_sheets_of_one_joint_agree() {
    for base in bases() {
        let other = Case { inch: !base.inch, ..base.clone() };
        // Both agree with the same model to their printed places, name by name.
        let (a, _) = agree(&base);
        let (b, _) = agree(&other);
        assert!(a.keys().eq(b.keys()));
        let both = changed(&a, &b);
        // A figure halfway between two last places may go either way.
        let apart = |name: &&String| name.ends_with('%') && (a[*name].value - b[*name].value).abs() > 0.0101;
        let shares: Vec<_> = both.iter().filter(apart).map(|n| (n, &a[n], &b[n])).collect();
        assert!(both.contains("d provided") && shares.is_empty(), "{shares:?}");
    }
}
