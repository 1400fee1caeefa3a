//! Books made small, as firmware has them.

use seamwright::rules::{Clause, Entry, Item, Items, Place, RuleBook};

/// A book whose statements are places says what one says that was written down; what lies outside is no statement.
#[test]
fn packed_statements_are_those_written_down() {
    let clauses = [Clause::read(0, "par. 1"), Clause::own("whole millimetres")];
    let table = [12.0, 14.0, 17.0];
    let listed = [
        Item::new(Entry::DOUBLE_SHEAR, &[1.75], clauses[0]),
        Item::new(Entry::SERIES_HOLE, &table, clauses[1]),
        Item::new(Entry::PITCH_LEAST, &[2.5], clauses[0]),
    ];
    let book = RuleBook::from_items("made", "Made up", &["Someone"], &listed);
    let place = |entry, lines, clause| Place { entry, lines, clause };
    let places = [place(Entry::DOUBLE_SHEAR, 1, 0), place(Entry::SERIES_HOLE, 3, 1), place(Entry::PITCH_LEAST, 1, 0)];
    let packed = RuleBook { items: Items::packed(&book.rules, &places, &clauses), ..book };
    assert_eq!(packed, book);
    assert_eq!((packed.items.len(), packed.items.is_empty()), (3, false));
    assert_eq!(packed.items.get(1), Some(listed[1]));
    assert_eq!((book.items.written(2), packed.items.written(2)), (Some(&listed[2]), None));
    assert_eq!((book.items.written(3), book.items.get(3), packed.items.get(3)), (None, None, None));
    assert_eq!(packed.clause(Entry::SERIES_HOLE.at(2).no()), Some(clauses[1]));
    assert_eq!(packed.clause(Entry::SERIES_HOLE.at(3).no()), None);
    // Changed by a user: the places still say what the book says.
    let changed = RuleBook { rules: book.rules.with(Entry::SERIES_HOLE.at(1), 15.0).unwrap(), ..packed };
    assert_eq!(changed.stated(Entry::SERIES_HOLE.at(1)), 14.0);
    assert!(changed.is_changed(Entry::SERIES_HOLE.at(1)) && !changed.is_changed(Entry::SERIES_HOLE));
    assert_eq!(changed.stated(Entry::HOLE_SQRT), 6.0);
    let last = Entry::all().last().unwrap();
    let outside = [place(Entry::DOUBLE_SHEAR, 1, 2), place(last, 2, 0), place(Entry::PITCH_LEAST, 1, 0)];
    let items = Items::packed(&book.rules, &outside, &clauses);
    assert_eq!(items.iter().collect::<Vec<_>>(), [listed[2]]);
    let outside = RuleBook { items, ..book };
    assert_eq!((outside.clause(last.no()), outside.clause(Entry::DOUBLE_SHEAR.no())), (None, None));
    assert_eq!((outside.stated(Entry::DOUBLE_SHEAR), outside.stated(Entry::PITCH_LEAST)), (2.0, 2.5));
    assert!(items != book.items && Items::packed(&book.rules, &[], &[]).is_empty());
}
