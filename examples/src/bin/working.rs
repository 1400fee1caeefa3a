//! A sheet of the working, on standard output: `cargo run --bin working -- [plain|narrow|markdown|latex|html] [inch]`.
//!
//! The scenario is invented: the shell seam of a small hot-water drum for a laundry, 11 mm plate, two equal straps, two
//! rows on each side.

use std::io::{self, Write};

use seamwright::joint::Form;
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::INDIAN;
use seamwright::sizing::Brief;
use seamwright::working::{Dialect, Style, Units, write_size};

fn main() -> Result<(), Box<dyn core::error::Error>> {
    let mut style = Style::default();
    for word in std::env::args().skip(1) {
        match word.as_str() {
            "plain" => style.dialect = Dialect::Plain,
            "narrow" => style.dialect = Dialect::Narrow,
            "markdown" => style.dialect = Dialect::Markdown,
            "latex" => style.dialect = Dialect::Latex,
            "html" => style.dialect = Dialect::Html,
            "inch" => style.units = Units::Inch,
            other => return Err(format!("{other:?} is none of plain, narrow, markdown, latex, html, inch").into()),
        }
    }
    let steel = Materials::new(Stress::mpa(85.0), Stress::mpa(62.0)).bearing(Stress::mpa(130.0));
    let brief = Brief::new(Form::double_strap(2)?, Length::mm(11.0), steel);
    // The sheet is complete or there is none: it is written as a whole, and printed only then.
    let mut sheet = String::new();
    write_size(&mut sheet, style, &brief, &INDIAN)?;
    // A reader that closes the pipe early (`| head`) is no failure of ours.
    let _ = io::stdout().write_all(sheet.as_bytes());
    Ok(())
}
