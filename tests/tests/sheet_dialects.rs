//! The signed sheet in its dialects: well-formed by outside readers, within its columns, alike in all of them.

mod dialects;
mod generate;

use std::path::PathBuf;
use std::{env, fs};

use dialects::{columns, html_is_sound, latex_is_sound, markdown_is_sound};
use generate::{Reach, any_book, brief, config, set, stated};
use proptest::prelude::*;
use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{Entry, METRIC, RuleBook};
use seamwright::sheet::{Particulars, Task, write_sheet};
use seamwright::text::DecimalMark;
use seamwright::working::{DIALECTS, Dialect, Forces, Style, Units};

/// Texts that every dialect would take for its own.
const STRANGE: &str = r#"<b> & "x" | 5% of #3_{a}^2 ~ $ \ * [y](z) `c` Grossdampfkesselreinigungsverordnung"#;

fn particulars() -> Particulars<'static> {
    Particulars { title: STRANGE, object: STRANGE, jurisdiction: STRANGE, prepared: STRANGE, ..Particulars::default() }
}

fn sheet(style: Style, task: &Task<'_>, book: &RuleBook<'_>) -> Option<String> {
    let mut text = String::new();
    write_sheet(&mut text, style, task, &particulars(), book).ok().map(|()| text)
}

fn sound(task: &Task<'_>, book: &RuleBook<'_>, style: Style) -> Result<(), TestCaseError> {
    let of = |dialect| sheet(Style { dialect, ..style }, task, book);
    let Some(plain) = of(Dialect::Plain) else { return Ok(()) };
    prop_assert!(columns(&plain) <= 80, "{}", plain.lines().max_by_key(|l| l.chars().count()).unwrap());
    prop_assert!(plain.chars().all(|c| c != '\u{a0}'), "a joined blank");
    let narrow = of(Dialect::Narrow).unwrap();
    prop_assert!(columns(&narrow) <= 20, "{}", narrow.lines().max_by_key(|l| l.chars().count()).unwrap());
    // No word of letters is cut without a hyphen, and no number at all.
    let lines: Vec<&str> = narrow.lines().collect();
    for pair in lines.windows(2) {
        let (end, begin) = (pair[0].chars().last(), pair[1].trim_start().chars().next());
        let full = pair[0].chars().count() == 20;
        let cut = |f: fn(char) -> bool| end.is_some_and(f) && begin.is_some_and(f);
        let one_word = full && !plain.split_whitespace().any(|w| w.ends_with(pair[0].rsplit(' ').next().unwrap()));
        prop_assert!(!(one_word && cut(char::is_alphabetic)), "{:?}", pair);
    }
    html_is_sound(&of(Dialect::Html).unwrap());
    latex_is_sound(&of(Dialect::Latex).unwrap());
    markdown_is_sound(&of(Dialect::Markdown).unwrap());
    Ok(())
}

fn reader() -> impl Strategy<Value = Style> {
    any::<[bool; 3]>().prop_map(|[inch, kilo, comma]| Style {
        units: if inch { Units::Inch } else { Units::Metric },
        forces: if kilo { Forces::Kilonewton } else { Forces::Newton },
        mark: if comma { DecimalMark::Comma } else { DecimalMark::Point },
        ..Style::default()
    })
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn every_dialect_of_a_design_is_sound(b in brief(6), book in any_book(), style in reader()) {
        sound(&Task::Size(&b), book, style)?;
    }

    #[test]
    fn every_dialect_of_a_check_is_sound(s in stated(Reach::Usual, 6, 5.0), book in any_book(), style in reader()) {
        let book = RuleBook { rules: set(book.rules, &[(Entry::BEARING_CHECKED, 0.0)]), ..*book };
        let (joint, materials) = (s.joint(), s.materials());
        sound(&Task::Check(&joint, &materials), &book, style)?;
    }

    #[test]
    fn a_decimal_comma_changes_nothing_else(b in brief(4), book in any_book(), inch in any::<bool>()) {
        let units = if inch { Units::Inch } else { Units::Metric };
        let with = |mark| sheet(Style { mark, units, ..Style::default() }, &Task::Size(&b), book);
        let (Some(point), Some(comma)) = (with(DecimalMark::Point), with(DecimalMark::Comma)) else { return Ok(()) };
        prop_assert_ne!(&point, &comma);
        prop_assert_eq!(point.replace(['.', ','], ""), comma.replace(['.', ','], ""));
    }
}

/// One small joint in each dialect. The snapshots show a reviewer what a change does to a sheet; they prove nothing.
/// `SEAMWRIGHT_SNAPSHOTS=write cargo test -p seamwright-tests --test sheet_dialects` writes them anew.
#[test]
fn snapshots_are_those_that_were_reviewed() {
    let joint = JointSpec::new(Form::lap(1).unwrap(), Length::mm(52.0), Length::mm(9.0), Length::mm(19.0));
    let joint = joint.margin(Length::mm(30.0)).build().unwrap();
    let steel = Materials::new(Stress::mpa(95.0), Stress::mpa(70.0)).bearing(Stress::mpa(160.0));
    let particulars = Particulars { object: "Feed tank (invented)", invented: true, ..Particulars::default() };
    let write = env::var_os("SEAMWRIGHT_SNAPSHOTS").is_some_and(|v| v == "write");
    let place = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("snapshots");
    for (dialect, name) in DIALECTS.iter().zip(["plain", "narrow", "markdown", "latex", "html"]) {
        let mut text = String::new();
        let style = Style { dialect: *dialect, ..Style::default() };
        write_sheet(&mut text, style, &Task::Check(&joint, &steel), &particulars, &METRIC).unwrap();
        // The version is not what is reviewed.
        let text = text.replace(seamwright::VERSION, "(version)");
        let path = place.join(format!("sheet-{name}.txt"));
        if write {
            fs::write(&path, &text).unwrap();
        }
        let reviewed = fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        assert!(reviewed == text, "{name}: differs from tests/snapshots; look at the difference, then write anew");
    }
}
