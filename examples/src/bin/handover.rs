//! What goes to the shop: `cargo run --bin handover -- [directory]` writes the working, the drawing, the
//! hole pattern and the shop sheet of one seam (default directory `target/handover`).
//!
//! The scenario is invented: a longitudinal seam on the drum of a steam mangle that never was, 14 mm plate, straps of
//! unequal width, three rows on each side; the splice of a tie in a gantry that never was either, and a bracket of its
//! hoist.
//!
//! Drawing, hole pattern, shop sheet and `working.*` are all of the joint as it is to be made, with the pitch that the
//! seam takes. `sizing.txt` is how its dimensions were found, with the pitch before it was fitted, and says so.

use std::fs;
use std::io::Write as _;
use std::path::PathBuf;

use seamwright::drawing::{self, Extent, TitleBlock};
use seamwright::group::{Group, GroupLoad, GroupStress, size_group};
use seamwright::joint::{Arrangement, Form, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Force, Length, Stress};
use seamwright::rules::{INDIAN, Rounding, STRUCTURAL};
use seamwright::shop::{self, HeadForm, LengthRule, Order, Run, ShopSheet, Stock, shop_sheet};
use seamwright::sizing::{Brief, size};
use seamwright::working::{Dialect, Style, write_check, write_shop, write_size};

/// Length of the seam, mm.
const SEAM: f64 = 1500.0;
/// What every text says of itself.
const INVENTED: &str = "Invented example: no such mangle, drum or drawing exists.";

/// What the sizing is not.
fn before(sheet: &ShopSheet) -> String {
    let (sized, made) = (sheet.pitch.asked, sheet.pitch.taken.pitch);
    format!(
        "Sized with a pitch of {sized:.2} mm. The seam takes {} pitches of {made:.2} mm: make it by the shop sheet;\n\
         working.txt is the check with that pitch.",
        sheet.pitch.taken.strips
    )
}

/// What the program says of itself.
const HELP: &str = "\
Usage: handover [DIRECTORY]

Writes what goes to the shop for an invented seam and an invented tie: working, drawing, hole pattern and shop sheet;
and the drawing of an invented bracket; into DIRECTORY (target/handover without one), which is made where it is not there.";

/// The directory to write to; `None`: only help was asked for.
fn directory(mut words: impl Iterator<Item = String>) -> Result<Option<PathBuf>, String> {
    let Some(word) = words.next() else { return Ok(Some(PathBuf::from("target/handover"))) };
    if word == "--help" || word == "-h" {
        return Ok(None);
    }
    if word.starts_with('-') {
        return Err(format!("{word} is no flag of this program; --help says what it takes"));
    }
    match words.next() {
        None => Ok(Some(PathBuf::from(word))),
        Some(more) => Err(format!("{more:?} is one directory too many; --help says what it takes")),
    }
}

/// The drawing of the hoist's bracket: three rows of two rivets, of the size that they need.
fn bracket() -> Result<String, Box<dyn core::error::Error>> {
    let mm = Length::mm;
    let places = [(0.0, 0.0), (90.0, 0.0), (0.0, 80.0), (90.0, 80.0), (0.0, 160.0), (90.0, 160.0)];
    let group = Group::at(&places.map(|(x, y)| (mm(x), mm(y))))?.plate(mm(12.0));
    let load = GroupLoad::force(Force::n(0.0), Force::kn(-32.0), mm(345.0), mm(80.0));
    let stress = GroupStress::new(Stress::mpa(90.0)).bearing(Stress::mpa(200.0));
    let made = size_group(&group, &load, &stress, &STRUCTURAL.rules)?;
    let group = group.hole(mm(made.hole)).rivet(mm(made.rivet));
    let title = TitleBlock {
        object: "Hoist bracket of a pontoon gantry (invented)",
        drawing_no: "PG-2 (invented)",
        rule_book: STRUCTURAL.title,
        ..TitleBlock::default()
    };
    let mut text = String::new();
    drawing::svg_group(&mut text, &group, &load, &stress, &STRUCTURAL.rules, &title)?;
    Ok(text)
}

fn main() -> Result<(), Box<dyn core::error::Error>> {
    let Some(place) = directory(std::env::args().skip(1))? else {
        let _ = writeln!(std::io::stdout(), "{HELP}");
        return Ok(());
    };
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
    let style = shop::Style::new(shop::Units::Millimetre);
    let mut text = format!("{INVENTED}\n\n");
    sheet.write_text(&mut text, &INDIAN, &style)?;
    fs::write(place.join("shop.txt"), &text)?;
    let mut text = format!("{INVENTED}\n\n");
    sheet.write_markdown(&mut text, &INDIAN, &style)?;
    fs::write(place.join("shop.md"), &text)?;
    let mut text = format!("{INVENTED}\n\n");
    write_shop(&mut text, Style::default(), &design.joint, &steel, &INDIAN, &order)?;
    fs::write(place.join("shop-working.txt"), &text)?;
    // The pitch here is the one before it was fitted.
    let mut text = format!("{INVENTED}\n{}\n\n", before(&sheet));
    write_size(&mut text, Style::default(), &brief, &INDIAN)?;
    fs::write(place.join("sizing.txt"), &text)?;

    let title = TitleBlock {
        object: "Mangle drum (invented)",
        drawing_no: "SM-3 (invented)",
        rule_book: INDIAN.title,
        extent: Extent::Seam,
        ..TitleBlock::default()
    };
    let mut text = String::new();
    drawing::svg_seam(&mut text, &sheet, &title)?;
    fs::write(place.join("drawing.svg"), &text)?;
    // A tie, by its shop sheet too: rows on common gauge lines.
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (3, 2)])?;
    let (width, gap) = (Length::mm(240.0), Length::mm(60.0));
    let spec = JointSpec::new(form, width, Length::mm(12.0), Length::mm(21.0)).rivet(Length::mm(20.0));
    let tie = spec.strap(Length::mm(8.0)).margin(Length::mm(35.0)).back_pitch(1, gap).back_pitch(2, gap).build()?;
    let tie_order = Order::steel(Run::Tie, HeadForm::Button, LengthRule::SteelButton, stock);
    let tie = shop_sheet(&tie, &steel, &STRUCTURAL.rules, &tie_order)?;
    let tie_title = TitleBlock {
        object: "Tie of a pontoon gantry (invented)",
        drawing_no: "PG-1 (invented)",
        rule_book: STRUCTURAL.title,
        ..TitleBlock::default()
    };
    let mut text = String::new();
    drawing::svg_seam(&mut text, &tie, &tie_title)?;
    fs::write(place.join("tie.svg"), &text)?;
    let mut text = String::new();
    drawing::dxf_seam(&mut text, &tie, &tie_title)?;
    fs::write(place.join("tie.dxf"), &text)?;

    fs::write(place.join("bracket.svg"), bracket()?)?;

    // Every hole where the table of the shop sheet has it.
    let mut text = String::new();
    drawing::dxf_seam(&mut text, &sheet, &title)?;
    fs::write(place.join("seam.dxf"), &text)?;

    // The words go before a text, and into the body of a document: before `mark`, which is its first heading.
    for (name, dialect, mark) in [
        ("working.txt", Dialect::Plain, ""),
        ("working.md", Dialect::Markdown, ""),
        ("working.html", Dialect::Html, "<h1>"),
        ("working.tex", Dialect::Latex, "\\section*{"),
    ] {
        let mut text = String::new();
        write_check(&mut text, Style { dialect, ..Style::default() }, &sheet.joint, &steel, &INDIAN)?;
        let words = if dialect == Dialect::Html { format!("<p>{INVENTED}</p>") } else { format!("{INVENTED}\n") };
        let text = text.replacen(mark, &format!("{words}\n{mark}"), 1);
        fs::write(place.join(name), &text)?;
    }
    Ok(())
}
