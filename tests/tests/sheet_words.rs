//! The user's words on the sheet that someone signs.

use seamwright::bounds::Field;
use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rating::Basis;
use seamwright::rules::METRIC;
use seamwright::sheet::{Known, Particulars, Task, write_sheet};
use seamwright::working::{DIALECTS, Dialect, Style};

/// Words of the user's cannot make a line of the sheet, nor tear a table of it.
#[test]
fn a_line_end_in_the_users_words_is_a_blank() {
    let spec = JointSpec::new(Form::lap(2).unwrap(), Length::mm(71.0), Length::mm(13.0), Length::mm(23.0));
    let joint = spec.build().unwrap();
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    // On one line, blanks once.
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let known = [Known { field: Field::Pitch, row: 0, basis: Basis::Measured, source: "gauge 7\r\nplate 99 mm\u{7}" }];
    let said = Particulars {
        object: "Drum\nGoverning       nothing at all",
        prepared: "A.\tSmithson\u{1b}[2J",
        known: &known,
        ..Particulars::default()
    };
    for dialect in DIALECTS {
        let mut text = String::new();
        let style = Style { dialect: *dialect, ..Style::default() };
        write_sheet(&mut text, style, &Task::Check(&joint, &steel), &said, &METRIC).unwrap();
        assert!(!text.chars().any(|c| c.is_control() && c != '\n'), "{dialect:?}");
        assert!(!text.lines().any(|line| line.starts_with("Governing       nothing")), "{dialect:?}");
        assert!(flat(&text).contains("Drum Governing nothing at all"), "{dialect:?}: {text}");
        assert!(flat(&text).contains("gauge 7 plate 99 mm"), "{dialect:?}");
    }
}

/// TeX sets `"` and a backtick as typographic quotes; its typewriter letters have them as they were written (characters
/// 34 and 18 of Computer Modern Typewriter: Knuth, The METAFONTbook and Computer Modern Typefaces, from memory).
#[test]
fn straight_quotes_and_hyphens_stay_as_written() {
    let spec = JointSpec::new(Form::lap(2).unwrap(), Length::mm(71.0), Length::mm(13.0), Length::mm(23.0));
    let joint = spec.build().unwrap();
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    let said = Particulars { object: "drum \"B\", 1/2\" plate, `old` -- as found", ..Particulars::default() };
    let sheet = |dialect| {
        let mut text = String::new();
        let style = Style { dialect, ..Style::default() };
        write_sheet(&mut text, style, &Task::Check(&joint, &steel), &said, &METRIC).unwrap();
        text
    };
    let quote = r"{\ttfamily\char34}";
    let latex = sheet(Dialect::Latex);
    assert!(latex.contains(&format!("drum {quote}B{quote}, 1/2{quote} plate, ")), "{latex}");
    assert!(latex.contains(r"{\ttfamily\char18}old{\ttfamily\char18} -{}- as found"));
    assert!(sheet(Dialect::Plain).contains("drum \"B\", 1/2\" plate, `old` -- as found"));
}

/// What the user says of an input is never left out: rows that are spoken of have a line each, and what the joint does
/// not have is listed as not used.
#[test]
fn what_is_said_of_an_input_is_on_the_sheet() {
    let spec = JointSpec::new(Form::lap(2).unwrap(), Length::mm(71.0), Length::mm(13.0), Length::mm(23.0));
    let joint = spec.build().unwrap();
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    let said = |field, row, basis, source| Known { field, row, basis, source };
    let known = [
        said(Field::Hole, 0, Basis::Assumed, "as drawn"),
        said(Field::Hole, 2, Basis::Measured, "two bored out"),
        said(Field::NarrowStrap, 0, Basis::Given, "drawing 7"),
    ];
    let particulars = Particulars { known: &known, ..Particulars::default() };
    let mut text = String::new();
    write_sheet(&mut text, Style::default(), &Task::Check(&joint, &steel), &particulars, &METRIC).unwrap();
    let line = |start: &str| {
        let found: Vec<&str> = text.lines().filter(|l| l.starts_with(start)).collect();
        assert_eq!(found.len(), 1, "{start}: {text}");
        found[0].split_whitespace().collect::<Vec<_>>().join(" ")
    };
    assert_eq!(line("hole, row 1"), "hole, row 1 23 mm assumed: as drawn");
    assert_eq!(line("hole, row 2"), "hole, row 2 23 mm measured: two bored out");
    assert_eq!(line("narrow strap"), "narrow strap not used given: drawing 7");
}
