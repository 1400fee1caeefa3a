//! What the program refuses, and how it reads and writes units.
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

use support::sheet::figures;
use support::{run, sheet_of};

/// A lap that sizes, as separate flags: tests leave some out and put others in.
const LAP: &[(&str, &str)] = &[
    ("--book", "metric"),
    ("--form", "lap"),
    ("--rows", "2"),
    ("--plate", "12 mm"),
    ("--tension", "80 MPa"),
    ("--shear", "60 MPa"),
    ("--bearing", "120 MPa"),
];

/// The lap with some flags replaced, added, or (value `-`) left out; a flag with an empty value stands alone.
fn lap(changes: &[(&str, &str)]) -> Vec<String> {
    let mut flags: Vec<(&str, &str)> = LAP.to_vec();
    for (flag, value) in changes {
        match flags.iter_mut().find(|(known, _)| known == flag) {
            Some(slot) => slot.1 = value,
            None => flags.push((flag, value)),
        }
    }
    let kept = flags.into_iter().filter(|(_, value)| *value != "-");
    kept.flat_map(|(flag, value)| [flag, value]).filter(|s| !s.is_empty()).map(String::from).collect()
}

#[test]
fn bad_flags_are_refused_with_the_field_and_the_remedy() {
    type Bad = (&'static [(&'static str, &'static str)], i32, &'static [&'static str]);
    let table: &[Bad] = &[
        // Missing.
        (&[("--book", "-")], 2, &["book", "is needed", "--book metric"]),
        (&[("--form", "-")], 2, &["form", "is needed", "--form lap"]),
        (&[("--rows", "-")], 2, &["rows", "is needed", "--row-list 1x1,2x2"]),
        (&[("--plate", "-")], 2, &["plate", "is needed", "--plate \"12 mm\""]),
        (&[("--tension", "-")], 2, &["tension", "is needed", "--tension \"80 MPa\"", "--assume steel"]),
        (&[("--shear", "-")], 2, &["shear", "is needed", "--shear \"80 MPa\""]),
        (&[("--bearing", "-")], 1, &["bearing", "is needed", "bearing.checked", "READ", "--bearing"]),
        // Unreadable.
        (&[("--plate", "12")], 2, &["plate", "has no unit", "--plate \"12 mm\" or --plate \"12 in\""]),
        (&[("--plate", "1 5/8")], 2, &["plate", "has no unit", "\"1 5/8 in\""]),
        (&[("--plate", "twelve")], 2, &["plate", "is not a number with a unit", "mm, cm"]),
        (&[("--plate", "12 furlongs")], 2, &["plate", "is not a number with a unit", "units:"]),
        (&[("--plate", "5/0 in")], 2, &["plate", "cannot be read", "\"1/2 in\""]),
        (&[("--plate", "mm")], 2, &["plate", "nothing was given", "\"12 mm\""]),
        (&[("--plate", "12 MPa")], 2, &["plate", "is not a number with a unit"]),
        (&[("--tension", "80")], 2, &["tension", "has no unit", "\"80 MPa\" or --tension \"80 psi\""]),
        (&[("--tension", "80 mm")], 2, &["tension", "is not a number with a unit", "kgf/cm2", "tons/in2"]),
        (&[("--rows", "two")], 2, &["rows", "whole number", "--rows 2"]),
        (&[("--safety-factor", "four")], 2, &["safety-factor", "cannot be read", "plain number"]),
        (&[("--gap", "40")], 2, &["gap", "has no unit", "\"40 mm\""]),
        (&[("--rows", "-"), ("--row-list", "1-1")], 2, &["row-list", "rivets x planes", "1x1,2x2"]),
        (&[("--set", "shear.double")], 2, &["set", "has no value", "key=value"]),
        (&[("--set", "shear.dubble=2")], 2, &["set", "shear.dubble", "--list-rules metric"]),
        (&[("--set", "shear.double=two")], 2, &["set", "cannot be read", "write a number"]),
        // Not one of the choices, or at odds with each other.
        (&[("--book", "almanac")], 2, &["book", "is not a rule book", "metric, indian"]),
        (&[("--form", "weld")], 2, &["--form", "lap, single-strap"]),
        (&[("--units", "ells")], 2, &["--units", "mm, inch"]),
        (&[("--assume", "tin")], 2, &["--assume", "steel, iron"]),
        (&[("--chain", ""), ("--zigzag", "")], 2, &["--chain", "--zigzag", "cannot be used with"]),
        (&[("--row-list", "1x1")], 2, &["--row-list", "--rows"]),
        (&[("--frobnicate", "1 mm")], 2, &["--frobnicate"]),
        (&[("--plate", "")], 2, &["--plate", "value is required"]),
        (&[("--rivet", "20 mm")], 2, &["rivet", "without its hole", "--hole"]),
        (&[("--narrow-strap", "10 mm")], 2, &["narrow-strap", "without the wide strap", "--wide-strap"]),
        (&[("--form", "unequal-straps"), ("--wide-strap", "9 mm")], 2, &["wide-strap", "--narrow-strap"]),
        (
            &[("--form", "double-strap"), ("--rows", "-"), ("--row-list", "1x1,2x2")],
            2,
            &["row-list", "--form unequal-straps"],
        ),
        (
            &[("--form", "unequal-straps"), ("--rows", "-"), ("--row-list", "1x2,2x2")],
            2,
            &["row-list", "--form double-strap"],
        ),
        // Read, and not computable.
        (&[("--plate", "-3 mm")], 1, &["plate", "-3 mm", "limit 0.5 mm", "raise it", "--plate"]),
        (&[("--plate", "0 mm")], 1, &["plate", "limit 0.5 mm"]),
        (&[("--plate", "3 m")], 1, &["plate", "3000 mm", "limit 200 mm", "lower it"]),
        (&[("--tension", "0 MPa")], 1, &["tension", "limit 0.01 MPa"]),
        (&[("--rows", "9")], 1, &["rows = 9", "limit 4", "lower it"]),
        (&[("--rows", "0")], 1, &["rows = 0", "limit 1", "raise it"]),
        (&[("--safety-factor", "0.5")], 1, &["safety_factor", "limit 1", "--safety-factor"]),
        (&[("--omit-alternate", "")], 1, &["form", "make the two agree"]),
        (&[("--rows", "-"), ("--row-list", "1x2")], 1, &["shear_planes", "--row-list"]),
        (&[("--rows", "-"), ("--row-list", "99x1")], 1, &["row_rivets", "limit 60", "--row-list"]),
        (&[("--wide-strap", "9 mm")], 1, &["wide_strap", "does not belong", "leave it out"]),
        (&[("--form", "single-strap"), ("--other-plate", "9 mm")], 1, &["other_plate", "does not belong"]),
        (&[("--hole", "20 mm"), ("--rivet", "21 mm")], 1, &["rivet", "21 mm", "limit 20 mm", "larger hole"]),
        (&[("--hole", "20 mm"), ("--pitch", "19 mm")], 1, &["pitch", "19 mm", "limit 20 mm"]),
        (&[("--hole", "20 mm"), ("--margin", "9 mm")], 1, &["margin", "limit 10 mm", "enlarge"]),
        (&[("--gap", "2 mm"), ("--pitch", "30 mm")], 1, &["back_pitch", "move the rows apart", "--gap"]),
        (&[("--gap", "40 mm"), ("--margin", "-4 mm")], 1, &["margin", "-4 mm"]),
        (&[("--set", "shear.double=3")], 1, &["limit 2", "shear.double", "--set"]),
        (&[("--set", "tear.diameter=0.5")], 1, &["choices", "tear.diameter", "--set"]),
        (&[("--set", "pitch.least.factor=9")], 1, &["pitch", "no pitch between", "pitch.greatest.lap.2", "hole = "]),
        (&[("--book", "us-code"), ("--plate", "2 in")], 1, &["plate", "outside the table", "hole.table.plate"]),
        (&[("--book", "indian"), ("--tension", "-"), ("--assume", "steel")], 1, &["tension", "indian is silent"]),
        (
            &[("--book", "us-existing"), ("--form", "double-strap")],
            1,
            &["wide_strap", "is needed", "strap.rule", "--wide-strap"],
        ),
    ];
    for (changes, code, parts) in table {
        let out = run(&lap(changes));
        let said = String::from_utf8_lossy(&out.stderr);
        assert_eq!(out.status.code(), Some(*code), "{changes:?}\n{said}");
        assert!(out.stdout.is_empty(), "{changes:?} printed a sheet");
        for part in *parts {
            assert!(said.contains(part), "{part} is missing for {changes:?} in\n{said}");
        }
    }
}

#[test]
fn a_check_needs_pitch_and_hole() {
    for (present, missing) in [("--pitch", "hole"), ("--hole", "pitch")] {
        let mut args = vec!["check".to_string()];
        args.extend(lap(&[(present, "60 mm")]));
        let out = run(&args);
        let said = String::from_utf8_lossy(&out.stderr);
        assert_eq!(out.status.code(), Some(2));
        assert!(said.contains(&format!("{missing}: is needed")) && said.contains(&format!("--{missing} \"")), "{said}");
    }
    let mut args = vec!["check".to_string()];
    args.extend(lap(&[("--pitch", "60 mm"), ("--hole", "21 mm"), ("--gap", "40 mm")]));
    args.extend(["--gap".to_string(), "40 mm".to_string()]);
    let out = run(&args);
    assert_eq!(out.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&out.stderr).contains("2 were given, and this form has 1"));
}

#[test]
fn an_inch_user_is_told_the_limit_in_inches() {
    let out = run(&lap(&[("--plate", "9 in"), ("--units", "inch")]));
    let said = String::from_utf8_lossy(&out.stderr);
    assert_eq!(out.status.code(), Some(1));
    assert!(said.contains("in inches: value 9.0000 in") && said.contains("limit 7.8740 in"), "{said}");
}

/// The double-riveted lap that the early US code works out: 5/16 in plate, 3/4 in hole, 2 7/8 in pitch, 0.739.
#[test]
fn fractions_in_and_out() {
    let args = |plate: &str, hole: &str, pitch: &str| {
        [
            "check",
            "--book",
            "us-code",
            "--form",
            "lap",
            "--rows",
            "2",
            "--assume",
            "steel",
            "--units",
            "inch",
            "--plate",
            plate,
            "--hole",
            hole,
            "--rivet",
            "11/16 in",
            "--pitch",
            pitch,
            "--gap",
            "1 5/8 in",
            "--margin",
            "1-3/16 in",
        ]
        .map(String::from)
    };
    let sheet = sheet_of(&args("5/16 in", "3/4 in", "2 7/8 in"));
    let found = figures(&sheet);
    for (name, text) in [
        ("t provided", "5/16 in"),
        ("d provided", "3/4 in"),
        ("dr provided", "11/16 in"),
        ("p provided", "2 7/8 in"),
        ("g1 provided", "1 5/8 in"),
        ("m provided", "1 3/16 in"),
        ("w1 provided", "4 in"),
        ("stress st", "55000 psi"),
        ("stress ss", "44000 psi"),
        ("eta, efficiency over all modes", "73.91 %"),
        ("tearing at the outer row", "36523"),
        ("letter C", "38877"),
    ] {
        assert_eq!(found[name].text, text, "{name} in\n{sheet}");
    }
    // The same in decimals, in sixteenths not reduced, and in millimetres.
    for (plate, hole, pitch) in [
        ("0.3125 in", "0.75\"", "2.875 inches"),
        ("10/32 in", "12/16in", "46/16 inch"),
        ("7.9375 mm", "1.905 cm", "73,025 mm"),
    ] {
        assert_eq!(figures(&sheet_of(&args(plate, hole, pitch))), found, "{plate}");
    }
    // What is no sixty-fourth is printed in decimals: no rounding is hidden.
    let off = figures(&sheet_of(&args("8 mm", "3/4 in", "2 7/8 in")));
    assert_eq!(off["t provided"].text, "0.3150 in");
}

#[test]
fn every_unit_of_stress_means_the_same() {
    let reference = figures(&sheet_of(&lap(&[("--tension", "98.0665 MPa")])));
    for same in ["98.0665 N/mm2", "98.0665N/mm^2", "98.0665 mpa", "1000 kgf/cm2", "10 kgf/mm2", "10 kg/mm2"] {
        assert_eq!(figures(&sheet_of(&lap(&[("--tension", same)]))), reference, "{same}");
    }
    let psi = figures(&sheet_of(&lap(&[("--tension", "11200 psi")])));
    for same in ["11.2 ksi", "5 tons/in2", "5 ton/in2", "5 long tons/in2", "11200 lb/in2"] {
        assert_eq!(figures(&sheet_of(&lap(&[("--tension", same)]))), psi, "{same}");
    }
    // 11 200 psi by hand: 11 200 x 0.006 894 757.
    assert_eq!(psi["stress st"].text, "77.22 MPa");
}

#[test]
fn undivided_assumed_strengths_are_called_ultimate() {
    let flags =
        [("--book", "us-code"), ("--tension", "-"), ("--shear", "-"), ("--bearing", "-"), ("--assume", "steel")];
    let sheet = sheet_of(&lap(&flags));
    assert!(sheet.contains("Stresses at FAILURE") && sheet.contains("no permissible loads"), "{sheet}");
    let divided = sheet_of(&lap(&[flags.as_slice(), &[("--safety-factor", "5")]].concat()));
    assert!(!divided.contains("FAILURE") && divided.contains("factor of safety of 5"), "{divided}");
    assert!(divided.contains("tabulated: at failure; "), "{divided}");
}

#[test]
fn a_changed_entry_is_the_users_own() {
    let sheet = sheet_of(&lap(&[("--set", "margin.least.factor=2")]));
    assert!(sheet.contains("with 1 entry changed by the user"), "{sheet}");
    assert!(flat(&sheet).contains("changed by the user; the book's own value is 1.5"), "{sheet}");
    assert!(flat(&sheet).contains("set by the user; the book's own value is 1.5 [OWN]"), "{sheet}");
}

/// A text without its line breaks.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn lists_of_books_and_of_rules() {
    let books = sheet_of(&["--list-books"]);
    for book in seamwright::rules::BOOKS {
        assert!(books.contains(book.id) && books.contains(book.title), "{}", book.id);
        let rules = sheet_of(&["--list-rules", book.id]);
        for item in book.items.iter() {
            let row = seamwright::rules::info(item.entry);
            assert!(rules.contains(row.key) && rules.contains(item.clause.number), "{} {}", book.id, row.key);
            assert!(rules.contains(item.clause.label.word()));
        }
        for (_, _, row) in seamwright::rules::GROUPS {
            assert!(rules.contains(row.key), "{} {}", book.id, row.key);
        }
    }
    assert_eq!(run(&["--list-rules", "none such"]).status.code(), Some(2));
    assert!(sheet_of(&["--help"]).contains("Examples:"));
    assert!(sheet_of(&["check", "--help"]).contains("--gap"));
}

/// Without any word about a joint the scenario stands in, also in inches or under another book; never half of it.
#[test]
fn the_scenario_is_all_or_nothing() {
    for args in [&["--units", "inch"][..], &["--book", "metric"], &["--title", "T"], &["--set", "room=2"], &["size"]] {
        assert!(sheet_of(args).contains("INVENTED SCENARIO"), "{args:?}");
    }
    for args in [&["--plate", "12 mm"][..], &["--chain"], &["--gap", "40 mm"], &["check"], &["--safety-factor", "4"]] {
        assert_eq!(run(args).status.code(), Some(2), "{args:?}");
    }
    assert!(!sheet_of(&lap(&[])).contains("INVENTED"));
}
