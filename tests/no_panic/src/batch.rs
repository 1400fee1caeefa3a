//! Sweeps over columns.

use seamwright::batch::{Baseline, InputColumn, Inputs, ModeTable, Outputs, Sweep};

use crate::input::{Input, keep};

fn column<'a>(i: &mut Input) -> InputColumn<'a> {
    match i.small() {
        0 => InputColumn::Constant(i.number()),
        1 => InputColumn::Values(i.numbers()),
        _ => InputColumn::Axis { values: i.numbers(), each: i.index() },
    }
}

fn inputs<'a>(i: &mut Input) -> Inputs<'a> {
    Inputs {
        rivet: i.maybe(column),
        other: i.maybe(column),
        narrow: i.maybe(column),
        other_tension: i.maybe(column),
        bearing: i.maybe(column),
        other_bearing: i.maybe(column),
        plate_shear: i.maybe(column),
        margin: i.maybe(column),
        back_pitch: i.maybe(column),
        ..Inputs::new(column(i), column(i), column(i), column(i), column(i))
    }
}

fn outputs<'a>(i: &mut Input) -> Outputs<'a> {
    Outputs {
        mode: i.maybe(|i| i.numbers_room()),
        book_efficiency: i.maybe(|i| i.numbers_room()),
        credited: i.maybe(|i| i.numbers_room()),
        status: i.maybe(|i| i.numbers_room()),
        ..Outputs::new(i.numbers_room())
    }
}

pub fn run(i: &mut Input) {
    let (Some(form), rules) = (i.form(), i.rules()) else { return };
    let Ok(sweep) = Sweep::new(&form, &rules, inputs(i), i.index()) else { return };
    keep((Sweep::len(&sweep), Sweep::is_empty(&sweep), Sweep::path(&sweep)));
    keep(Sweep::run(&sweep, i.index(), outputs(i)));
    keep(Sweep::run_with(&sweep, Baseline, i.index(), outputs(i)));
}

pub fn rows(i: &mut Input) {
    let (Some(form), rules) = (i.form(), i.rules()) else { return };
    let Ok(sweep) = Sweep::new(&form, &rules, inputs(i), i.index()) else { return };
    keep(InputColumn::at(&column(i), i.index()));
    keep(Sweep::joint(&sweep, i.index()));
    let (modes, from): (&[u16], usize) = (i.numbers_room(), i.index());
    keep(Sweep::mode_strengths(&sweep, modes, from, i.numbers_room()));
    let table = Sweep::modes(&sweep);
    keep((ModeTable::number(table, i.cut()), ModeTable::cut(table, i.short()), ModeTable::mode(table, i.short())));
    let table = ModeTable::new(&form, i.yes());
    keep((ModeTable::len(&table), ModeTable::is_empty(&table)));
}
