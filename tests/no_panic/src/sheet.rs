//! The sheet that someone signs.

use seamwright::bounds::FIELDS;
use seamwright::rating::{Basis, Footing};
use seamwright::sheet::{self, Divided, Known, Particulars, Task};
use seamwright::text::Slice;
use seamwright::working;

use crate::input::{Input, keep};
use crate::working::{book, brief, style, told};

fn write(i: &mut Input, task: &Task<'_>) {
    let (style, book) = (style(i), book(i));
    let known = Known {
        field: i.one_of(FIELDS).unwrap_or(seamwright::bounds::Field::Plate),
        row: i.small(),
        basis: i.one_of(&[Basis::Measured, Basis::Given, Basis::Tabulated]).unwrap_or(Basis::Assumed),
        source: i.text(),
    };
    let particulars = Particulars {
        title: i.text(),
        object: i.text(),
        drawing_no: i.text(),
        jurisdiction: i.text(),
        prepared: i.text(),
        checked: i.text(),
        date: i.text(),
        invented: i.yes(),
        footing: i.one_of(&[Footing::Permissible, Footing::Ultimate]),
        divided: i.maybe(|i| Divided { ultimate: i.materials(), factor: i.number() }),
        lines_per_page: i.maybe(Input::short),
        known: &[known],
    };
    told(sheet::write_sheet(&mut Slice::new(i.room()), style, task, &particulars, &book), i);
    told(working::into_buffer(i.room(), |out| sheet::write_sheet(out, style, task, &particulars, &book)), i);
    keep(sheet::input_hash(task, &book));
    keep(sheet::write_inputs(&mut Slice::new(i.room()), task, &book));
}

pub fn size(i: &mut Input) {
    let Some(brief) = brief(i) else { return };
    write(i, &Task::Size(&brief));
}

pub fn check(i: &mut Input) {
    let Some(joint) = i.joint() else { return };
    let materials = i.materials();
    write(i, &Task::Check(&joint, &materials));
}

pub fn rate(i: &mut Input) {
    let Some(old) = crate::rating::existing(i) else { return };
    write(i, &Task::Rate(&old));
}
