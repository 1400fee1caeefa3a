//! The working.

use core::cell::Cell;
use core::fmt::Write;

use seamwright::bounds::Unit;
use seamwright::check;
use seamwright::joint::Form;
use seamwright::modes::Mode;
use seamwright::proportion::Limit;
use seamwright::rules::{BOOKS, METRIC, RuleBook};
use seamwright::sizing::{Brief, Design, HeadRoom, PitchChoice, size};
use seamwright::step::{Name, QUANTITIES, Section};
use seamwright::text::{DecimalMark, Slice};
use seamwright::working::{
    self, Columns, DIALECTS, Decimals, Doc, Forces, Pad, Reading, Record, Sink, Step, Style, Units, WorkingError,
};

use crate::input::{Input, keep, show};

pub fn style(i: &mut Input) -> Style {
    Style {
        units: if i.yes() { Units::Inch } else { Units::Metric },
        mark: if i.yes() { DecimalMark::Comma } else { DecimalMark::Point },
        dialect: i.one_of(DIALECTS).unwrap_or_default(),
        forces: if i.yes() { Forces::Kilonewton } else { Forces::Newton },
        decimals: Decimals {
            length: i.maybe(Input::small),
            stress: i.maybe(Input::small),
            force: i.maybe(Input::small),
            ratio: i.maybe(Input::small),
        },
        extra_digits: i.small() as i8,
    }
}

pub fn book<'a>(i: &mut Input) -> RuleBook<'a> {
    RuleBook { rules: i.rules(), title: i.text(), ..*i.one_of(BOOKS).unwrap_or(&METRIC) }
}

pub fn told<T>(outcome: Result<T, WorkingError>, i: &mut Input) {
    match outcome {
        Ok(found) => keep(found),
        Err(error) => show::<WorkingError>(&error, i),
    }
}

pub fn brief(i: &mut Input) -> Option<Brief> {
    Some(Brief::new(i.form()?, i.length(), i.materials()))
}

pub fn check(i: &mut Input) {
    let Some(joint) = i.joint() else { return };
    let (style, book, materials) = (style(i), book(i), i.materials());
    told(working::write_check(&mut Slice::new(i.room()), style, &joint, &materials, &book), i);
    let into =
        working::into_buffer(i.room(), |out| working::write_check(out, style, &joint, &materials, &book).map(|_| ()));
    told(into, i);
    told(working::write_check_small(&mut Slice::new(i.room()), style, &joint, &materials, &book), i);
}

pub fn shop(i: &mut Input) {
    let (Some(joint), Some(order)) = (i.joint(), crate::shop::order(i)) else { return };
    let (style, book, materials) = (style(i), book(i), i.materials());
    told(working::write_shop(&mut Slice::new(i.room()), style, &joint, &materials, &book, &order), i);
}

pub fn size_joint(i: &mut Input) {
    let Some(brief) = brief(i) else { return };
    let (style, book) = (style(i), book(i));
    told(working::write_size(&mut Slice::new(i.room()), style, &brief, &book), i);
    told(working::write_size_small(&mut Slice::new(i.room()), style, &brief, &book), i);
    let (mut findings, mut design) = (check::Findings::new(), Design::blank());
    keep(working::size_as_written(&brief, &book.rules, &mut findings, &mut design));
    keep((findings, design));
}

pub fn rate(i: &mut Input) {
    let Some(old) = crate::rating::existing(i) else { return };
    let (style, book) = (style(i), book(i));
    told(working::write_rate(&mut Slice::new(i.room()), style, &old, &book), i);
}

pub fn vessel(i: &mut Input) {
    let Some(brief) = crate::vessel::brief(i) else { return };
    let (style, book) = (style(i), book(i));
    told(working::write_vessel(&mut Slice::new(i.room()), style, &brief, &book), i);
}

/// A sink of a caller's own.
struct Mine {
    style: Style,
    room: Cell<Option<&'static mut [u8]>>,
}

impl Sink for Mine {
    fn step(&self, step: &Step<'_>) {
        keep((Step::root(step), Step::left_root(step), Step::node(step, Step::root(step))));
        let Some(room) = self.room.take() else { return };
        let mut out = Slice::new(room);
        for reading in [Reading::Symbolic, Reading::Substituted] {
            keep(working::write_expression(&mut out, &self.style, step, Step::root(step), reading));
        }
        keep(out.finish());
    }
    fn section(&self, section: Section) {
        keep(section.heading());
    }
}

pub fn record(i: &mut Input) {
    let Some(joint) = i.joint() else { return };
    let (rules, materials) = (i.rules(), i.materials());
    let mine = Mine { style: style(i), room: Cell::new(Some(i.room())) };
    let pad = Pad::new(&mine);
    let recorded = check::check_with(Record::new(&pad), &joint, &materials, &rules);
    keep(Pad::spoilt(&pad));
    if let Ok(analysis) = recorded {
        keep(Mode::values(analysis.governing));
        keep(check::Percentages::values(analysis.percentages));
        keep(check::Analysis::values(analysis));
    }
}

pub fn values(i: &mut Input) {
    let Some(brief) = brief(i) else { return };
    keep(Form::inner_doubled(brief.form()));
    let Ok(design) = size(&brief, &i.rules()) else { return };
    keep(PitchChoice::values(design.pitch));
    keep(Limit::values(design.pitch.greatest));
    keep(design.heads.map(HeadRoom::values));
    keep(Design::values(design));
}

const UNITS: [Unit; 11] = [
    Unit::One,
    Unit::Millimetre,
    Unit::Megapascal,
    Unit::Newton,
    Unit::RootMillimetre,
    Unit::Count,
    Unit::SquareMillimetre,
    Unit::CubicMillimetre,
    Unit::Kilogram,
    Unit::KilogramPerMetre,
    Unit::NewtonMillimetre,
];

pub fn document(i: &mut Input) {
    let (style, book) = (style(i), book(i));
    let (text, value) = (i.text(), i.number());
    let unit = i.one_of(&UNITS).unwrap_or(Unit::KilogramPerCubicMetre);
    let row = i.small();
    if let Some(entry) = seamwright::rules::Entry::from_no(seamwright::error::EntryNo(i.short())) {
        keep((RuleBook::stated(&book, entry), RuleBook::is_changed(&book, entry)));
    }
    keep((Style::convert(&style, unit, value), Style::symbol(&style, unit), Style::decimals(&style, unit)));
    let name = i.one_of(QUANTITIES).map(|q| Name(q, row));
    let entry = seamwright::error::EntryNo(i.short());
    let mut out = Slice::new(i.room());
    let head = [text, "", text];
    let widths = [i.small(), i.small()];
    let piece = |w: &mut dyn Write| w.write_str(text);
    let mut doc = Doc::new(&mut out, style);
    keep(Doc::style(&doc));
    keep(Doc::begin(&mut doc, &piece));
    keep(Doc::heading(&mut doc, text));
    keep(Doc::paragraph(&mut doc, &|w| working::write_clause(w, &book, entry)));
    keep(Doc::table(&mut doc, &head, &widths));
    keep(Doc::row(&mut doc, &[&piece, &piece, &|w| Style::value(&style, w, unit, value)]));
    keep(Doc::end_table(&mut doc));
    let columns = Columns::numbers(Columns::new(&head, &widths), i.short());
    keep(Doc::table_of(&mut doc, if i.yes() { Columns::remark(columns) } else { columns }));
    keep(Doc::row(&mut doc, &[&piece, &piece, &|w| Style::value(&style, w, unit, value)]));
    keep(Doc::end_table(&mut doc));
    keep(Doc::item(&mut doc, &piece));
    keep(Doc::block(&mut doc, text, &piece));
    keep(Doc::formula(&mut doc, &|w| working::write_value(w, &style, unit, value)));
    if let Some(name) = name {
        keep(Doc::formula(&mut doc, &|w| working::write_symbol(w, style.dialect, name)));
    }
    keep(Doc::end(&mut doc));
    keep(out.finish());
}
