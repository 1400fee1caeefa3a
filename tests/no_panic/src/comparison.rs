//! Comparison.

use core::hint::black_box;

use seamwright::comparison::{Column, Comparison, SECTIONS, SortBy, Stage};
use seamwright::rating::{Footing, Shell};
use seamwright::sizing::Brief;
use seamwright::text::Slice;

use crate::input::{Input, keep};
use crate::working::{book, style};

const ORDERS: &[SortBy] =
    &[SortBy::Given, SortBy::Credited, SortBy::Efficiency, SortBy::Pressure, SortBy::Pitch, SortBy::Hole, SortBy::Open];

pub fn comparison(i: &mut Input) {
    let books = [book(i), book(i), book(i)];
    let (Some(one), Some(two)) = (i.form(), i.form()) else { return };
    let briefs = [Brief::new(one, i.length(), i.materials()), Brief::new(two, i.length(), i.materials())];
    let [first, second, third] = &books;
    let [brief, other] = briefs;
    let shell = Shell::new(i.length(), Footing::Ultimate);
    let columns = black_box([
        Column::new(brief, first),
        Column::new(other, second),
        Column::shell(Column::new(brief, third), shell),
    ]);
    let Ok(compared) = Comparison::new(columns.get(..i.index()).unwrap_or(&columns)) else { return };
    keep((Comparison::columns(&compared).len(), Comparison::figures(&compared)));
    let by = i.one_of(ORDERS).unwrap_or_default();
    keep(Comparison::sorted(&compared, by));
    for section in SECTIONS {
        if let Some(parting) = Comparison::parting(&compared, i.index(), *section) {
            keep(parting.steps.iter().flatten().map(Stage::entry).count());
        }
    }
    let style = style(i);
    keep(Comparison::write(&compared, &mut Slice::new(i.room()), style, by));
}
