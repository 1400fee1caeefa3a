//! Rule books: entries, values, look-ups, citations, and books made at run time.

use core::hint::black_box;

use seamwright::error::EntryNo;
use seamwright::joint::JointKind;
use seamwright::rules::{self, Clause, Entry, Item, Items, Label, Metal, Place, RuleBook, Rules};

use crate::input::{Input, keep};

/// Any entry that there is.
fn entry(i: &mut Input) -> Option<Entry> {
    Entry::from_no(EntryNo(i.short())).map(|e| Entry::at(e, i.index()))
}

pub fn entries(i: &mut Input) {
    for e in Entry::all() {
        keep((Entry::index(e), Entry::no(e), rules::info(e), rules::key(e)));
    }
    if let Some(e) = entry(i) {
        keep((Entry::index(e), Entry::no(e), rules::info(e), rules::key(e)));
    }
    keep(rules::find(i.text()));
}

pub fn rules(i: &mut Input) {
    let mut r: Rules = i.rules();
    if let Some(e) = entry(i) {
        keep((Rules::get(&r, e), Rules::choice(&r, e), Rules::on(&r, e), Rules::diameter(&r, e)));
        keep(Rules::pressure_form(&r));
        r = Rules::with(r, e, i.number()).unwrap_or(r);
    }
    r = Rules::with_key(r, i.text(), i.number()).unwrap_or(r);
    let r = black_box(r);
    keep((Rules::validate(&r), Rules::within_ranges(&r), Rules::values(&r)));
    keep((
        Rules::balance(&r),
        Rules::rounding(&r),
        Rules::close_rows(&r),
        Rules::counts_inner(&r),
        Rules::hole_rule(&r),
    ));
    for size in Rules::series(&r) {
        keep(size);
    }
    keep((Rules::next_size(&r, i.number()), Rules::size_of_hole(&r, i.number())));
    keep((Rules::table_hole(&r, i.number()), Rules::table_strap(&r, i.number())));
    keep(Rules::has_pitch_cap(&r));
    for kind in [JointKind::Lap, JointKind::SingleStrap, JointKind::DoubleStrap] {
        keep(Rules::pitch_cap(&r, kind, i.half_word()));
    }
    let metal = |yes: bool| if yes { Metal::Steel } else { Metal::Iron };
    keep(Rules::assumed_materials(&r, metal(i.yes()), metal(i.yes())));
    keep(Rules::assumed_shear(&r, metal(i.yes())));
}

pub fn books(i: &mut Input) {
    if let Some(book) = rules::book(i.text()) {
        cited(book, i);
    }
    let number = i.text();
    let clauses = [
        Clause::read(i.small(), number),
        Clause::memory(i.small(), number),
        Clause::practice(number),
        Clause::own(number),
    ];
    let mut items = [Item::new(Entry::DOUBLE_SHEAR, &[], Clause::own("")); 4];
    for (item, clause) in items.iter_mut().zip(clauses) {
        let Some(e) = entry(i) else { return };
        *item = Item::new(e, i.numbers(), clause);
    }
    let items = items.get(..i.index()).unwrap_or(&items);
    let sources = [i.text(), i.text(), i.text()];
    let book = RuleBook::from_items(i.text(), i.text(), &sources, items);
    cited(&black_box(book), i);
    said(&black_box(Items::listed(items)), i);
    let mut places = [Place { entry: Entry::DOUBLE_SHEAR, lines: 1, clause: 0 }; 4];
    for place in &mut places {
        let Some(entry) = entry(i) else { return };
        *place = Place { entry, lines: i.small(), clause: i.small() };
    }
    let numbers: Rules = i.rules();
    let packed = RuleBook { items: Items::packed(&numbers, &places, &clauses), ..book };
    cited(&black_box(packed), i);
    said(&packed.items, i);
    keep(packed == book);
    keep(RuleBook::lettered(book).lettered);
}

fn said(items: &Items<'_>, i: &mut Input) {
    keep((Items::len(items), Items::is_empty(items), Items::get(items, i.index()), Items::written(items, i.index())));
    for item in Items::iter(items) {
        keep(item);
    }
}

fn cited(book: &RuleBook<'_>, i: &mut Input) {
    if let Some(clause) = RuleBook::clause(book, EntryNo(i.short())) {
        keep((RuleBook::source(book, &clause), Label::word(clause.label)));
    }
}
