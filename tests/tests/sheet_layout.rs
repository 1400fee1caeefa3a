//! What a signed sheet shows, and on which page.

mod generate;

use generate::{Reach, any_book, brief, config, set, stated};
use proptest::prelude::*;
use seamwright::CAUTION;
use seamwright::ErrorKind;
use seamwright::bounds::Field;
use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, Entry, METRIC, RuleBook, US_EXISTING};
use seamwright::sheet::{A4_LINES, Particulars, Task, write_sheet};
use seamwright::working::{Dialect, Style, WorkingError, into_buffer};

fn steel() -> Materials {
    Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0))
}

/// The books of the United States letter their modes; a book of another name keeps what it was made from.
#[test]
fn letters_stand_where_the_book_says_so_whatever_its_name() {
    let mm = Length::mm;
    let joint = JointSpec::new(Form::lap(2).unwrap(), mm(71.0), mm(13.0), mm(23.0)).build().unwrap();
    let lettered = |book: &RuleBook<'_>| {
        let (mut text, steel) = (String::new(), steel());
        let task = Task::Check(&joint, &steel);
        write_sheet(&mut text, Style::default(), &task, &Particulars::default(), book).unwrap();
        text.contains("Modes by letter")
    };
    for book in BOOKS {
        assert_eq!(lettered(&RuleBook { id: "mine", ..**book }), book.id.starts_with("us-"), "{}", book.id);
    }
    assert!(lettered(&METRIC.lettered()));
    assert!(!lettered(&RuleBook { lettered: false, ..US_EXISTING }));
}

fn on_pages(task: &Task<'_>, book: &RuleBook<'_>, lines: Option<u16>) -> Result<String, WorkingError> {
    let mut text = String::new();
    let particulars = Particulars { lines_per_page: lines, object: "Feed tank (invented)", ..Particulars::default() };
    write_sheet(&mut text, Style::default(), task, &particulars, book).map(|()| text)
}

/// Blank, rule, two lines of caution, the last line.
const FOOT: usize = 5;

/// How the heads of tables begin.
const HEADS: [&str; 7] = ["dimension ", "no.  *", "input  ", "verdict  ", "row rivets", "stress used", "strength  "];

/// Whether a line is the head of a table; that of modes by letter has no word over the letters.
fn is_head(line: &str) -> bool {
    HEADS.iter().any(|head| line.starts_with(head)) || line.trim_start().starts_with("force, ")
}

/// The pages of a sheet are sound: all alike in length, a true number at each foot, nothing torn from its heading, and
/// together they are the sheet without pages.
fn pages_are_sound(task: &Task<'_>, book: &RuleBook<'_>, lines: u16) -> Result<usize, TestCaseError> {
    let text = on_pages(task, book, Some(lines)).unwrap();
    let whole = on_pages(task, book, None).unwrap();
    let pages: Vec<Vec<&str>> = text.split('\u{c}').map(|page| page.lines().collect()).collect();
    let mut together: Vec<&str> = Vec::new();
    for (page, number) in pages.iter().zip(1..) {
        prop_assert_eq!(page.len(), usize::from(lines), "page {}", number);
        let (body, foot) = page.split_at(page.len() - FOOT);
        prop_assert!(foot[0].is_empty() && foot[1] == "-".repeat(80));
        prop_assert_eq!(foot[2..4].join(" "), CAUTION);
        let end = format!("page {number} of {}", pages.len());
        prop_assert!(
            foot[4].starts_with("Input hash ") && foot[4].ends_with(&end) && foot[4].len() == 80,
            "{}",
            foot[4]
        );
        prop_assert!(whole.contains(foot[4].split_whitespace().nth(2).unwrap()));
        let body = &body[..body.iter().rposition(|line| !line.is_empty()).map_or(0, |last| last + 1)];
        prop_assert!(!body.is_empty() && !body[0].is_empty(), "page {}", number);
        // No heading without two lines below it, no head of a table without a row.
        for (at, line) in body.iter().enumerate() {
            let heading = at > 0 && line.len() > 1 && line.bytes().all(|b| b == b'-');
            prop_assert!(!heading || at + 2 < body.len(), "{} torn off on page {}", body[at - 1], number);
        }
        prop_assert!(!is_head(body.last().unwrap()), "{:?}", body.last());
        // A remark stays under its row: an indented line does not begin a page.
        prop_assert!(!body[0].starts_with("      ") || is_head(body[0]), "{}", body[0]);
        // The head of a table that goes on stands on both pages.
        let body = if is_head(body[0]) { &body[1..] } else { body };
        together.extend(body.iter().filter(|line| !line.is_empty()));
    }
    let place = |line: &&str| !line.starts_with("Page  ");
    let whole: Vec<&str> = whole.lines().filter(|line| !line.is_empty()).filter(place).collect();
    prop_assert_eq!(together.into_iter().filter(place).collect::<Vec<_>>(), whole);
    Ok(pages.len())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn any_sheet_on_any_page(b in brief(6), s in stated(Reach::Usual, 6, 5.0), book in any_book(), lines in 30..=300_u16) {
        let book = RuleBook { rules: set(book.rules, &[(Entry::BEARING_CHECKED, 0.0)]), ..*book };
        let (joint, steel) = (s.joint(), s.materials());
        pages_are_sound(&Task::Check(&joint, &steel), &book, lines)?;
        if on_pages(&Task::Size(&b), &book, None).is_ok() {
            pages_are_sound(&Task::Size(&b), &book, lines)?;
        }
    }
}

fn lap() -> seamwright::joint::Joint {
    let mm = Length::mm;
    JointSpec::new(Form::lap(2).unwrap(), mm(71.0), mm(13.0), mm(23.0)).build().unwrap()
}

#[test]
fn a_page_of_a4_and_the_limits_of_a_page() {
    let (joint, steel) = (lap(), steel());
    let task = Task::Check(&joint, &steel);
    let a4 = pages_are_sound(&task, &METRIC, A4_LINES).unwrap();
    assert!((3..8).contains(&a4), "{a4}");
    assert!(pages_are_sound(&task, &METRIC, 30).unwrap() > a4);
    for (lines, kind, limit) in [(29, ErrorKind::TooSmall, 30.0), (301, ErrorKind::TooLarge, 300.0)] {
        let Err(WorkingError::Routine(error)) = on_pages(&task, &METRIC, Some(lines)) else { panic!("{lines}") };
        assert_eq!((error.kind, error.field, error.limit), (kind, Field::LinesPerPage, limit));
    }
    // A buffer is filled as a whole or not at all.
    let particulars = Particulars { lines_per_page: Some(A4_LINES), ..Particulars::default() };
    let write = |out: &mut dyn std::fmt::Write| write_sheet(out, Style::default(), &task, &particulars, &METRIC);
    let mut text = String::new();
    write(&mut text).unwrap();
    let mut buffer = vec![0; text.len()];
    assert_eq!(into_buffer(&mut buffer, write).unwrap(), text);
    let short = into_buffer(&mut buffer[1..], write);
    assert!(
        matches!(short, Err(WorkingError::Routine(e)) if e.kind == ErrorKind::NoSpace && e.limit == text.len() as f64)
    );
}

/// What each dialect says of its pages is what it has.
#[test]
fn only_what_has_pages_says_so() {
    let (joint, steel) = (lap(), steel());
    let write = |dialect, lines_per_page| {
        let particulars = Particulars { lines_per_page, ..Particulars::default() };
        let (mut text, style) = (String::new(), Style { dialect, ..Style::default() });
        write_sheet(&mut text, style, &Task::Check(&joint, &steel), &particulars, &METRIC).unwrap();
        text
    };
    for dialect in [Dialect::Narrow, Dialect::Markdown, Dialect::Html, Dialect::Latex] {
        let text = write(dialect, None);
        assert_eq!(write(dialect, Some(A4_LINES)), text);
        assert!(!text.contains('\u{c}'));
    }
    assert!(write(Dialect::Plain, None).contains("one text without page breaks"));
    assert!(write(Dialect::Markdown, None).contains("one text without page breaks"));
    assert!(write(Dialect::Plain, Some(A4_LINES)).contains("page x of y at the foot of each page"));
    let latex = write(Dialect::Latex, None);
    assert!(latex.contains("page x of y at the foot of each page") && latex.contains(r"\pageref{seamwright:last}"));
    let html = write(Dialect::Html, None);
    assert!(html.contains("counter(page)") && html.contains("____&#160;of&#160;____"));
}
