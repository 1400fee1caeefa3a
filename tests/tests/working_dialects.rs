//! The working in its dialects: well-formed by outside readers, within its columns, and alike in all of them.

mod dialects;
mod generate;

use std::path::PathBuf;
use std::{env, fs};

use dialects::{columns, html_is_sound, latex_is_sound, markdown_is_sound};
use generate::{any_book, brief, config};
use proptest::prelude::*;
use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, METRIC, RuleBook};
use seamwright::sizing::Brief;
use seamwright::text::DecimalMark;
use seamwright::working::{DIALECTS, Dialect, Doc, Style, write_check, write_size};

fn steel() -> Materials {
    Materials::new(Stress::mpa(95.0), Stress::mpa(70.0)).bearing(Stress::mpa(160.0))
}

/// A sheet of a sizing, where there is one.
fn sheet(style: Style, brief: &Brief, book: &RuleBook<'_>) -> Option<String> {
    let mut text = String::new();
    write_size(&mut text, style, brief, book).ok().map(|_| text)
}

fn of(dialect: Dialect) -> Style {
    Style { dialect, ..Style::default() }
}

/// `1,5` as `1.5`, without the breaks: a small display breaks long lines anywhere.
fn pointed(text: &str) -> String {
    let chars: Vec<char> = text.split_whitespace().flat_map(str::chars).collect();
    let digit = |i: usize| chars.get(i).is_some_and(char::is_ascii_digit);
    let at = |(i, c): (usize, &char)| if *c == ',' && i > 0 && digit(i - 1) && digit(i + 1) { '.' } else { *c };
    chars.iter().enumerate().map(at).collect()
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn every_dialect_is_sound(b in brief(6), book in any_book()) {
        let Some(plain) = sheet(of(Dialect::Plain), &b, book) else { return Ok(()) };
        prop_assert!(columns(&plain) <= 80);
        let narrow = sheet(of(Dialect::Narrow), &b, book).unwrap();
        prop_assert!(columns(&narrow) <= 20);
        html_is_sound(&sheet(of(Dialect::Html), &b, book).unwrap());
        latex_is_sound(&sheet(of(Dialect::Latex), &b, book).unwrap());
        markdown_is_sound(&sheet(of(Dialect::Markdown), &b, book).unwrap());
    }

    #[test]
    fn a_decimal_comma_changes_nothing_else(b in brief(6), book in any_book()) {
        for dialect in DIALECTS {
            let comma = Style { mark: DecimalMark::Comma, ..of(*dialect) };
            let Some(with_comma) = sheet(comma, &b, book) else { return Ok(()) };
            let with_point = sheet(of(*dialect), &b, book).unwrap();
            let back = if *dialect == Dialect::Latex { with_comma.replace("{,}", ".") } else { with_comma.clone() };
            // In LaTeX the words of a step keep a bare comma.
            prop_assert_eq!(pointed(&back), pointed(&with_point));
            prop_assert!(with_comma != with_point, "no decimals at all");
        }
    }
}

#[test]
fn every_book_names_itself_its_clauses_and_its_labels() {
    for book in BOOKS {
        let joint =
            JointSpec::new(Form::double_strap(2).unwrap(), Length::mm(70.0), Length::mm(12.0), Length::mm(21.0));
        let joint = joint.straps(Length::mm(10.0), Length::mm(10.0)).margin(Length::mm(33.0)).build().unwrap();
        let mut plain = String::new();
        write_check(&mut plain, of(Dialect::Plain), &joint, &steel(), book).unwrap();
        let flat = plain.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(&format!("Rule book: {}", book.title)), "{}", book.id);
        let labelled = ["READ)", "MEM)", "PRACTICE)"].iter().any(|label| flat.contains(label));
        assert!(labelled, "{}", book.id);
    }
}

/// Texts of a caller's own are escaped.
#[test]
fn strange_words_are_escaped() {
    let strange = r#"<b> & "x" | 5% of #3_{a}^2 ~ $ \ * [y](z) `c`"#;
    for dialect in DIALECTS {
        let mut text = String::new();
        let head = ["one", strange];
        let mut doc = Doc::new(&mut text, of(*dialect));
        doc.begin(&|w| w.write_str(strange)).unwrap();
        doc.heading(strange).unwrap();
        doc.paragraph(&|w| w.write_str(strange)).unwrap();
        doc.table(&head, &[10, 10]).unwrap();
        doc.row(&[&|w| w.write_str("|"), &|w| w.write_str(strange)]).unwrap();
        doc.end_table().unwrap();
        doc.end().unwrap();
        match dialect {
            Dialect::Html => html_is_sound(&text),
            Dialect::Latex => assert!(text.contains(r"\& ") && text.contains(r"5\% of \#3\_\{a\}\textasciicircum{}2")),
            Dialect::Markdown => {
                for line in text.lines().filter(|l| l.starts_with('|')) {
                    let bars = line.replace(r"\|", "").matches('|').count();
                    assert_eq!(bars, 3, "{line}");
                }
            }
            Dialect::Plain => assert!(columns(&text) <= 80),
            Dialect::Narrow => assert!(columns(&text) <= 20),
        }
    }
}

/// One small joint in each dialect. The snapshots show a reviewer what a change does to a sheet; they prove nothing:
/// that a sheet is right is shown by working it again (`working_sheet.rs`).
/// `SEAMWRIGHT_SNAPSHOTS=write cargo test -p seamwright-tests --test working_dialects` writes them anew.
#[test]
fn snapshots_are_those_that_were_reviewed() {
    let joint = JointSpec::new(Form::lap(1).unwrap(), Length::mm(52.0), Length::mm(9.0), Length::mm(19.0));
    let joint = joint.margin(Length::mm(30.0)).build().unwrap();
    let write = env::var_os("SEAMWRIGHT_SNAPSHOTS").is_some_and(|v| v == "write");
    let place = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("snapshots");
    for (dialect, name) in DIALECTS.iter().zip(["plain", "narrow", "markdown", "latex", "html"]) {
        let mut text = String::new();
        write_check(&mut text, of(*dialect), &joint, &steel(), &METRIC).unwrap();
        let path = place.join(format!("working-{name}.txt"));
        if write {
            fs::create_dir_all(&place).unwrap();
            fs::write(&path, &text).unwrap();
        }
        let reviewed = fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        assert!(
            reviewed == text,
            "{name}: the sheet differs from tests/snapshots; look at the difference, then write anew"
        );
    }
}
