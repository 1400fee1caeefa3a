//! The shop sheet: rivet lengths as published, whole numbers of pitches, holes, masses, the written sheet.

#[path = "shop/holes.rs"]
mod holes;
#[path = "shop/lengths.rs"]
mod lengths;
#[path = "shop/masses.rs"]
mod masses;
#[path = "shop/notes.rs"]
mod notes;
#[path = "shop/pitches.rs"]
mod pitches;
#[path = "shop/properties.rs"]
mod properties;
#[path = "shop/sheet.rs"]
mod sheet;

use std::f64::consts::PI;

use proptest::prelude::*;
use seamwright::bounds::Field;
use seamwright::check::{Subject, Verdict, check};
use seamwright::error::ErrorKind;
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::proportion::Limit;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{Entry, INDIAN, METRIC, Rounding, RuleBook, Rules};
use seamwright::shop::{
    Density, Face, Fitted, HEAD_FORMS, HeadForm, Hole, LENGTH_RULES, LengthRule, Measured, Note, Order, Run,
    SHOP_NOTES, ShopSheet, Side, Stock, Style, Units, allowance, shop_sheet,
};
use seamwright::step::Plain;
use seamwright::text::DecimalMark;

const MM: fn(f64) -> Length = Length::mm;
const EXACT: Stock = Stock::cut_to_length();
const STEEL: f64 = 7850.0;

fn steel() -> Materials {
    Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0))
}

fn straight(length: f64, first: f64, last: f64) -> Run {
    Run::Straight { length: MM(length), first_end: MM(first), last_end: MM(last) }
}

fn girth(diameter: f64, measured: Measured, other: Face) -> Run {
    Run::Girth { diameter: MM(diameter), measured, other }
}

fn order(run: Run) -> Order {
    Order::steel(run, HeadForm::Button, LengthRule::BoilerButton, EXACT)
}

fn sheet(joint: &Joint, rules: &Rules, run: Run) -> ShopSheet {
    shop_sheet(joint, &steel(), rules, &order(run)).unwrap()
}

/// A double-riveted lap: 71 mm pitch, 13 mm plates, 23 mm holes, 22 mm rivets, margin 35, rows 40 mm apart.
fn lap() -> Joint {
    let spec = JointSpec::new(Form::lap(2).unwrap(), MM(71.0), MM(13.0), MM(23.0)).rivet(MM(22.0));
    spec.margin(MM(35.0)).back_pitch(1, MM(40.0)).build().unwrap()
}

/// A triple-riveted butt joint, 1-2-2 rivets, wide strap 16, narrow strap 13, plate 20, holes 26, rivets 25.
fn butt() -> Joint {
    let spec = JointSpec::new(Form::unequal_straps(3).unwrap(), MM(180.0), MM(20.0), MM(26.0)).rivet(MM(25.0));
    let spec = spec.straps(MM(16.0), MM(13.0)).margin(MM(40.0));
    spec.back_pitch(1, MM(68.0)).back_pitch(2, MM(50.0)).build().unwrap()
}

/// A book without caps, and a floor of two diameters.
fn silent() -> Rules {
    Rules::SILENT
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs())
}

fn row(found: &ShopSheet, side: Side, row: u8) -> Vec<Hole> {
    found.layout().holes().filter(|h| h.side == side && h.row == row).collect()
}

fn xs(holes: &[Hole]) -> Vec<f64> {
    holes.iter().map(|h| h.x.to_mm()).collect()
}

/// Volume of a button head 1.6 d wide and 0.7 d high: pi h (3 a^2 + h^2)/6 with a = 0.8 d, that is
/// pi 0.7 (1.92 + 0.49)/6 d^3 = 0.883311 d^3.
fn button(d: f64) -> f64 {
    PI * 0.7 * 2.41 / 6.0 * d.powi(3)
}
