//! Drawings.

use core::fmt;

use seamwright::drawing::{self, Canvas, DrawError, Extent, Line, Point, Text, TitleBlock, Units};
use seamwright::shop::shop_sheet;
use seamwright::text::Slice;

use crate::input::{Input, keep, show};
use crate::shop::order;

/// A canvas that may refuse anything.
struct Refusing<'a>(&'a mut Input);

impl Refusing<'_> {
    fn answer<T>(&mut self, given: T) -> fmt::Result {
        keep(given);
        if self.0.yes() { Ok(()) } else { Err(fmt::Error) }
    }
}

impl Canvas for Refusing<'_> {
    fn line(&mut self, kind: Line, from: Point, to: Point) -> fmt::Result {
        self.answer((kind, from, to))
    }
    fn circle(&mut self, kind: Line, centre: Point, radius: f64) -> fmt::Result {
        self.answer((kind, centre, radius))
    }
    fn arc(&mut self, kind: Line, from: Point, to: Point, rise: f64) -> fmt::Result {
        self.answer((kind, from, to, rise))
    }
    fn triangle(&mut self, corners: [Point; 3]) -> fmt::Result {
        self.answer(corners)
    }
    fn text(&mut self, text: &Text<'_>) -> fmt::Result {
        self.answer(text)
    }
}

fn title<'a>(i: &mut Input) -> TitleBlock<'a> {
    let mut title = TitleBlock::new(i.text(), i.text());
    (title.rule_book, title.date, title.prepared, title.checked) = (i.text(), i.text(), i.text(), i.text());
    title.units = if i.yes() { Units::Inch } else { Units::Millimetre };
    title.extent = if i.yes() { Extent::Tie } else { Extent::Seam };
    title
}

fn told(outcome: Result<(), DrawError>, i: &mut Input) {
    if let Err(error) = outcome {
        show::<DrawError>(&error, i);
    }
}

pub fn sheet(i: &mut Input) {
    let Some(joint) = i.joint() else { return };
    let title = title(i);
    told(drawing::sheet(&mut Refusing(i), &joint, &title), i);
}

pub fn svg(i: &mut Input) {
    let Some(joint) = i.joint() else { return };
    let title = title(i);
    told(drawing::svg(&mut Slice::new(i.room()), &joint, &title), i);
    keep(drawing::svg_into(i.room(), &joint, &title));
}

pub fn dxf(i: &mut Input) {
    let Some(joint) = i.joint() else { return };
    let title = title(i);
    told(drawing::dxf(&mut Slice::new(i.room()), &joint, &title), i);
    let (Some(order), rules) = (order(i), i.rules()) else { return };
    if let Ok(sheet) = shop_sheet(&joint, &i.materials(), &rules, &order) {
        told(drawing::svg_seam(&mut Slice::new(i.room()), &sheet, &title), i);
        told(drawing::dxf_seam(&mut Slice::new(i.room()), &sheet, &title), i);
    }
}

pub fn group(i: &mut Input) {
    let Some((group, load, stress)) = crate::group::stated(i) else { return };
    let (rules, title) = (i.rules(), title(i));
    told(drawing::sheet_group(&mut Refusing(i), &group, &load, &stress, &rules, &title), i);
    told(drawing::svg_group(&mut Slice::new(i.room()), &group, &load, &stress, &rules, &title), i);
    keep(drawing::svg_group_into(i.room(), &group, &load, &stress, &rules, &title));
}
