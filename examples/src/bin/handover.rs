//! What goes to the shop: `cargo run --bin handover -- [directory]` writes the working, the drawing, the hole pattern
//! and the shop sheet of one seam (default directory `target/handover`).
//!
//! The scenario is invented: a longitudinal seam on the drum of a steam mangle that never was, 14 mm plate, straps of
//! unequal width, three rows on each side.

use std::fs;
use std::path::PathBuf;

use seamwright::drawing::{self, Extent, TitleBlock};
use seamwright::joint::Form;
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{INDIAN, Rounding};
use seamwright::shop::{self, HeadForm, LengthRule, Order, Run, Stock, shop_sheet};
use seamwright::sizing::{Brief, size};
use seamwright::working::{Dialect, Style, write_size};

/// Length of the seam, mm.
const SEAM: f64 = 1500.0;

fn main() -> Result<(), Box<dyn core::error::Error>> {
    let place = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "target/handover".to_string()));
    fs::create_dir_all(&place)?;
    let steel = Materials::new(Stress::mpa(88.0), Stress::mpa(68.0)).bearing(Stress::mpa(132.0));
    let brief = Brief::new(Form::unequal_straps(3)?, Length::mm(14.0), steel);

    // The pitch is adjusted to the seam first: the drawing shows what will be drilled.
    let design = size(&brief, &INDIAN.rules)?;
    let end = Length::mm(40.0);
    let run = Run::Straight { length: Length::mm(SEAM), first_end: end, last_end: end };
    let stock = Stock::every(Length::mm(2.0), Rounding::Up);
    let order = Order::steel(run, HeadForm::Button, LengthRule::BoilerButton, stock);
    let sheet = shop_sheet(&design.joint, &steel, &INDIAN.rules, &order)?;
    let mut text = String::new();
    sheet.write_text(&mut text, &INDIAN, &shop::Style::new(shop::Units::Millimetre))?;
    fs::write(place.join("shop.txt"), &text)?;

    let title = TitleBlock {
        object: "Mangle drum (invented)",
        drawing_no: "SM-3 (invented)",
        rule_book: INDIAN.title,
        extent: Extent::Seam,
        ..TitleBlock::default()
    };
    let mut text = String::new();
    drawing::svg(&mut text, &sheet.joint, &title)?;
    fs::write(place.join("drawing.svg"), &text)?;
    let mut text = String::new();
    drawing::dxf(&mut text, &sheet.joint, &title, Some(Length::mm(SEAM)))?;
    fs::write(place.join("seam.dxf"), &text)?;

    for (name, dialect) in [
        ("working.txt", Dialect::Plain),
        ("working.md", Dialect::Markdown),
        ("working.html", Dialect::Html),
        ("working.tex", Dialect::Latex),
    ] {
        let mut text = String::new();
        write_size(&mut text, Style { dialect, ..Style::default() }, &brief, &INDIAN)?;
        fs::write(place.join(name), &text)?;
    }
    Ok(())
}
