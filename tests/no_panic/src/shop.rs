//! Shop sheets.

use core::hint::black_box;

use seamwright::quantities::Length;
use seamwright::rules::{BOOKS, Rounding};
use seamwright::shop::{
    self, Density, Face, HEAD_FORMS, HeadForm, LENGTH_RULES, Layout, LengthRule, Measured, Note, Order, Run,
    SHOP_NOTES, ShopSheet, Side, Stock, Style, Units,
};
use seamwright::step::{Ctx, Name, Num, Plain, Quantity};
use seamwright::text::DecimalMark;

use crate::context::{By, Hidden};
use crate::input::{Input, keep};

/// Any order; what it holds is hidden from the compiler.
pub fn order(i: &mut Input) -> Option<Order> {
    let (head, set_head, rule) = (i.one_of(HEAD_FORMS)?, i.one_of(HEAD_FORMS)?, i.one_of(LENGTH_RULES)?);
    keep((HeadForm::key(head), HeadForm::name(head), HeadForm::width(head), HeadForm::height(head)));
    keep((HeadForm::sunk(head), HeadForm::label(head), HeadForm::source(head)));
    keep((LengthRule::key(rule), LengthRule::name(rule), LengthRule::formula(rule), LengthRule::source(rule)));
    keep((LengthRule::label(rule), LengthRule::sunk(rule), LengthRule::greatest_grip(rule)));
    let rounding = i.one_of(&[Rounding::Down, Rounding::Nearest, Rounding::Up])?;
    let stock = if i.yes() { Stock::cut_to_length() } else { Stock::every(i.length(), rounding) };
    let run = match i.small() {
        0 => Run::Straight { length: i.length(), first_end: i.length(), last_end: i.length() },
        1 => {
            let measured = i.one_of(&[Measured::Circle, Measured::InsidePlate, Measured::InsideOther])?;
            let other = if i.yes() { Face::Inside } else { Face::Outside };
            Run::Girth { diameter: i.length(), measured, other }
        }
        _ => Run::Tie,
    };
    let order = if i.yes() {
        Order::steel(run, head, rule, stock)
    } else {
        Order::new(run, head, rule, stock, Density::kg_m3(i.number()))
    };
    Some(black_box(Order::set_head(order, set_head)))
}

pub fn orders(i: &mut Input) {
    let Some(order) = order(i) else { return };
    keep((Order::run(&order), Order::head(&order), Order::length_rule(&order)));
    let stock = Order::stock(&order);
    keep((Stock::step(stock), Stock::rounding(stock), Density::to_kg_m3(Order::density(&order))));
    for note in SHOP_NOTES {
        keep(Note::text(*note));
    }
    if let Some(rule) = i.one_of(LENGTH_RULES) {
        keep(shop::allowance(Plain, rule, i.small(), i.number(), i.number()));
    }
}

pub fn sheet(i: &mut Input) {
    let rules = i.rules();
    let (Some(joint), Some(order)) = (i.joint(), order(i)) else { return };
    if let Ok(sheet) = shop::shop_sheet(&joint, &i.materials(), &rules, &order) {
        seen(&sheet, i);
        seen(&black_box(sheet), i);
    }
}

pub fn sheet_with(i: &mut Input) {
    with(Plain, i);
    with(Hidden, i);
    with(By(Name(Quantity::Plate, 0)), i);
}

fn with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let (Some(joint), Some(order)) = (i.joint(), order(i)) else { return };
    if let Ok(sheet) = shop::shop_sheet_with(c, &joint, &i.materials(), &rules, &order) {
        seen(&sheet, i);
    }
}

fn seen<N: Num>(sheet: &ShopSheet<N>, i: &mut Input) {
    keep((ShopSheet::rivets(sheet), ShopSheet::rivet_count(sheet)));
    for line in ShopSheet::to_order(sheet) {
        keep::<(Length, Length, u32)>(line);
    }
    for note in ShopSheet::notes(sheet) {
        keep((Note::text(note), ShopSheet::holds(sheet, note)));
    }
    places(ShopSheet::layout(sheet), i);
    let Some(book) = i.one_of(BOOKS) else { return };
    let units = if i.yes() { Units::Millimetre } else { Units::Inch };
    let mut style = Style::new(units);
    style.mark = if i.yes() { DecimalMark::Comma } else { DecimalMark::Point };
    (style.first, style.count) = (i.half_word(), i.half_word());
    keep(ShopSheet::text_in(sheet, i.room(), book, &style));
    keep(ShopSheet::markdown_in(sheet, i.room(), book, &style));
    let mut sink = seamwright::text::Slice::new(i.room());
    keep(ShopSheet::write_text(sheet, &mut sink, book, &style));
    keep(ShopSheet::write_markdown(sheet, &mut sink, book, &style));
}

fn places(layout: &Layout, i: &mut Input) {
    let row = i.index();
    keep((Layout::in_row(layout, row), Layout::closing(layout, row)));
    keep((Layout::strips(layout), Layout::sides(layout), Layout::on_one_side(layout), Layout::total(layout)));
    keep((Layout::closed(layout), Layout::hole(layout, i.half_word()), Layout::place(layout, row, i.half_word())));
    for hole in Layout::holes(layout) {
        keep((hole, Side::word(hole.side)));
    }
    for hole in Layout::page(layout, i.half_word(), i.half_word()) {
        keep(hole);
    }
}
