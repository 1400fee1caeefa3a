//! The README is executed: its command line, its Rust example, its table of rule books and its table of checks.

use std::process::Command;

use seamwright::joint::{Arrangement, Form, JointKind};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, Label, RuleBook, Rules, STRUCTURAL};
use seamwright::sizing::{Brief, size};
use seamwright_tests::units::one_of;
use seamwright_tests::{Expect, Value, Vector, evaluate, load, load_file, rules_of, vectors_dir};

const README: &str = include_str!("../../README.md");
const EXAMPLE: &str = include_str!("../../examples/src/bin/readme.rs");

/// The fenced blocks of a language.
fn blocks(language: &str) -> Vec<&'static str> {
    let mut found = Vec::new();
    let mut rest = README;
    while let Some((_, after)) = rest.split_once("\n```") {
        let (head, body) = after.split_once('\n').expect("a line after the fence");
        let (block, tail) = body.split_once("\n```").expect("a closed block");
        if head == language {
            found.push(block);
        }
        rest = tail;
    }
    found
}

/// The cells of the rows of the table whose first head cell is `head`.
fn table(head: &str) -> Vec<Vec<&'static str>> {
    let cells =
        |line: &'static str| -> Vec<&'static str> { line.trim().trim_matches('|').split('|').map(str::trim).collect() };
    let mut lines = README.lines().skip_while(|l| !l.starts_with(&format!("| {head} |")));
    let width = cells(lines.next().unwrap_or_else(|| panic!("no table {head:?}"))).len();
    let rows: Vec<_> = lines.skip(1).take_while(|l| l.starts_with('|')).map(cells).collect();
    assert!(rows.iter().all(|r| r.len() == width), "{head}: a row of another width");
    rows
}

/// The words of a command line; double quotes hold a word together.
fn words(line: &str) -> Vec<String> {
    let mut out = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        match c {
            '"' => quoted = !quoted,
            ' ' if !quoted => out.push(String::new()),
            c => out.last_mut().expect("a word").push(c),
        }
    }
    out.retain(|w| !w.is_empty());
    out
}

fn cargo(arguments: &[String]) -> String {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/..");
    let mut command = Command::new(env!("CARGO"));
    command.current_dir(root).args(["run", "-q", "--locked", "--release", "-p", "seamwright-examples"]);
    let output = command.args(arguments).output().expect("cargo runs");
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{arguments:?}: {said}");
    String::from_utf8(output.stdout).expect("text")
}

#[test]
fn every_command_line_prints_what_the_readme_shows() {
    let mut commands = 0;
    for block in blocks("console") {
        // Commands start with `$ `; a backslash carries them on.
        let joined = block.replace("\\\n", " ");
        for part in joined.split("$ ").filter(|p| !p.trim().is_empty()) {
            let (line, shown) = part.split_once('\n').unwrap_or((part, ""));
            let Some(rest) = line.trim().strip_prefix("cargo run --release") else {
                panic!("{line:?} is not executed")
            };
            let mut arguments = vec!["--".to_owned()];
            arguments.extend(words(rest).into_iter().filter(|w| w != "--"));
            let real = cargo(&arguments);
            let mut lines = real.lines().map(str::trim_end);
            // In the same order.
            for wanted in shown.lines().map(str::trim_end).filter(|l| !l.is_empty() && l.trim() != "...") {
                assert!(lines.any(|l| l == wanted), "{line}\nhas no further line\n{wanted}\nin\n{real}");
            }
            assert!(shown.lines().count() >= 10, "{line}: shows too little");
            commands += 1;
        }
    }
    assert!(commands > 0, "the README shows no command");
}

#[test]
fn the_rust_example_is_a_program_that_runs() {
    let found = blocks("rust");
    assert_eq!(found.len(), 1, "one Rust example");
    assert_eq!(format!("{}\n", found[0]), EXAMPLE, "README.md and examples/src/bin/readme.rs");
    let said = cargo(&["--bin".to_owned(), "readme".to_owned()]);
    let shown = blocks("text").into_iter().find(|b| b.starts_with("efficiency")).expect("what the example prints");
    assert_eq!(said.trim_end(), shown);
}

fn count(book: &RuleBook<'_>, label: Label) -> usize {
    book.items.iter().filter(|i| i.clause.label == label).count()
}

#[test]
fn the_table_of_rule_books_counts_the_labels() {
    let rows = table("book");
    let ids: Vec<String> = BOOKS.iter().map(|b| format!("`{}`", b.id)).collect();
    assert_eq!(rows.iter().map(|r| r[0].to_owned()).collect::<Vec<_>>(), ids, "the books, in their order");
    for (row, book) in rows.iter().zip(BOOKS) {
        assert_eq!(row[1], book.title);
        let counts = [Label::Read, Label::Memory, Label::Practice, Label::Own].map(|l| count(book, l).to_string());
        assert_eq!(row[2..6], counts, "{}: READ, MEM, PRACTICE, OWN", book.id);
        assert!(!row[6].is_empty(), "{}: what is from memory", book.id);
    }
}

/// What the library computes, in the unit of the expectation.
fn computed(vector: &Vector, expect: &Expect) -> f64 {
    let found = evaluate(vector, &rules_of(vector)).unwrap_or_else(|e| panic!("{}: {e}", vector.id));
    match found.get(&expect.quantity) {
        Ok(Value::Number(x)) => x / one_of(&expect.unit).expect("a unit"),
        other => panic!("{}: {}: {other:?}", vector.id, expect.quantity),
    }
}

/// A figure as the README writes it equals a value to the digits written.
fn agrees(text: &str, value: f64) -> bool {
    let decimals = text.split_once('.').map_or(0, |(_, d)| d.len());
    text == format!("{value:.decimals$}")
}

fn expectation<'a>(vectors: &'a [Vector], id: &str, quantity: &str) -> (&'a Vector, &'a Expect) {
    let (id, quantity) = (id.trim_matches('`'), quantity.trim_matches('`'));
    let vector = vectors.iter().find(|v| v.id == id).unwrap_or_else(|| panic!("no vector {id:?}"));
    let expect = vector.expect.iter().find(|e| e.quantity == quantity && e.printed.is_some());
    (vector, expect.unwrap_or_else(|| panic!("{id}: no printed {quantity:?}")))
}

fn same_unit(shown: &str, expect: &Expect) -> bool {
    shown == if expect.unit.is_empty() { "-" } else { &expect.unit }
}

#[test]
fn every_row_of_the_validation_table_is_a_vector_and_what_the_library_computes() {
    let vectors = load(&vectors_dir());
    let rows = table("check");
    assert!(rows.len() >= 12, "{} rows", rows.len());
    let mut authors = std::collections::BTreeSet::new();
    for row in rows {
        let &[id, source, form, seen, quantity, unit, printed, value] = row.as_slice() else {
            panic!("{row:?}: eight cells")
        };
        let (vector, expect) = expectation(&vectors, id, quantity);
        let (surname, _) = source.split_once(',').unwrap_or((source, ""));
        assert!(vector.source.author.contains(surname), "{id}: {source} is not {:?}", vector.source.author);
        assert!(!form.is_empty(), "{id}: the form");
        // What is from memory or derived is no validation.
        assert!(["read", "transcription"].contains(&seen) && seen == vector.provenance, "{id}: {seen}");
        assert!(same_unit(unit, expect), "{id}: {unit}, in the vector {:?}", expect.unit);
        assert_eq!(Some(printed), expect.printed.as_deref(), "{id}: {quantity} as printed");
        let is = computed(vector, expect);
        assert!(agrees(value, is), "{id}: {quantity} is {is}, the README says {value}");
        authors.insert(vector.source.author.as_str());
    }
    assert!(authors.len() >= 8, "only from {authors:?}");
}

#[test]
fn the_list_of_misprints_is_whole_and_true() {
    let vectors = load_file(&vectors_dir().join("misprints.toml"));
    let rows = table("misprint");
    let ids: Vec<String> = vectors.iter().map(|v| format!("`{}`", v.id)).collect();
    assert_eq!(rows.iter().map(|r| r[0].to_owned()).collect::<Vec<_>>(), ids);
    for row in rows {
        let &[id, quantity, unit, printed, value, cause] = row.as_slice() else { panic!("{row:?}: six cells") };
        let (vector, expect) = expectation(&vectors, id, quantity);
        assert!(same_unit(unit, expect), "{id}: {unit}");
        assert_eq!(Some(printed), expect.printed.as_deref(), "{id}: as printed");
        let is = computed(vector, expect);
        assert!(agrees(value, is), "{id}: {quantity} is {is}, the README says {value}");
        assert!(!agrees(printed, is), "{id}: not a misprint");
        assert!(!cause.is_empty(), "{id}: the cause");
    }
}

#[test]
fn the_caution_of_the_library_stands_in_the_readme() {
    let flat = README.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains(seamwright::CAUTION));
}

#[test]
fn no_document_has_a_line_over_120_columns() {
    // A table's row cannot be wrapped; everything else can.
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    for name in ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "bindings/README.md"] {
        let text = std::fs::read_to_string(root.join(name)).unwrap_or_else(|e| panic!("{name}: {e}"));
        for (number, line) in text.lines().enumerate().filter(|(_, l)| !l.starts_with('|')) {
            assert!(line.chars().count() <= 120, "{name}:{}: {} columns", number + 1, line.chars().count());
        }
    }
}

/// By hand: from row 1 with one rivet to row 2 with two, 55 mm apart in a tie of 200 mm, two diagonals lie across half
/// of row 2's own pitch, 200/4 = 50 mm: 200 - 3 x 21.5 + 2 x 55^2/(4 x 50) = 165.75 mm of 200, 82.875 %. Straight
/// across row 1 200 - 21.5 = 178.5 mm, the printed 89.25 %.
#[test]
fn the_zigzag_of_khurmis_tie_is_the_figure_of_the_readme() {
    let mm = Length::mm;
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(65.0)).bearing(Stress::mpa(160.0));
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (2, 2)]).unwrap();
    let brief = Brief::new(form, mm(12.5), steel).pitch(mm(200.0));
    let sized = |rules: &Rules| {
        let design = size(&brief, rules).unwrap();
        assert_eq!(design.joint.back_pitch(1), Some(mm(55.0)));
        100.0 * design.analysis.efficiency
    };
    let straight = STRUCTURAL.rules.with_key("back.close", 0.0).unwrap();
    for (rules, by_hand, shown) in [
        (STRUCTURAL.rules, 100.0 * (200.0 - 3.0 * 21.5 + 2.0 * 55.0 * 55.0 / (4.0 * 50.0)) / 200.0, "82.88 %"),
        (straight, 100.0 * (200.0 - 21.5) / 200.0, "89.25 %"),
    ] {
        let found = sized(&rules);
        assert!((found - by_hand).abs() < 1e-9, "{found} {by_hand}");
        // A half at the third decimal is printed upwards.
        assert_eq!(format!("{:.2} %", found + 1e-9), shown);
        assert!(README.contains(shown), "{shown}");
    }
}
