//! What a signed sheet shows, and on which page.

use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, METRIC, RuleBook, US_EXISTING};
use seamwright::sheet::{Particulars, Task, write_sheet};
use seamwright::working::Style;

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
