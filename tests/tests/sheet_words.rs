//! The user's words on the sheet that someone signs.

use seamwright::bounds::Field;
use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rating::Basis;
use seamwright::rules::METRIC;
use seamwright::sheet::{Known, Particulars, Task, write_sheet};
use seamwright::working::{DIALECTS, Style};

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
