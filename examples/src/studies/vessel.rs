//! `seamwright vessel`: plate and seam of a shell together.

use seamwright::bounds::Field;
use seamwright::joint::Form;
use seamwright::materials::Materials;
use seamwright::quantities::Length;
use seamwright::rating::Service;
use seamwright::vessel::{GirthBrief, GirthPlace, PlateStock, VesselBrief};
use seamwright::working::write_vessel;

use super::flags::{ShellFlags, VesselFlags};
use super::shell::{shell, signed, style, unwritten};
use crate::failure::Failure;
use crate::flags::{Flags, UnitsFlag};
use crate::stated::{form, ultimate};
use crate::task::Book;
use crate::units::{length, pressure};

/// Runs the design.
pub fn run(flags: &Flags, shell_flags: &ShellFlags, said: &VesselFlags) -> Result<String, Failure> {
    let missing = |name: &str, remedy: &str| Failure::usage(name, "is needed and was not given", remedy);
    let id = flags.book.as_ref().ok_or_else(|| missing("book", "name the rule book, as in --book indian"))?;
    let book = Book::new(id, &flags.set, flags.units.into())?;
    let refused = |e| Failure::refused(&e, &book, flags.units.into());
    let working = said.pressure.as_ref().ok_or_else(|| missing("pressure", "write --pressure \"1.2 MPa\""))?;
    let materials: Materials = ultimate(flags, &book)?;
    let shell = shell(flags, shell_flags, Service::new_shell())?;
    let inch = flags.units == UnitsFlag::Inch;
    let or = |text: &Option<String>, mm: Length, inches: Length| match text {
        Some(text) => length(Field::Plate, text),
        None => Ok(if inch { inches } else { mm }),
    };
    let step = or(&said.plate_step, Length::mm(1.0), Length::inch(1.0 / 16.0))?;
    let most = or(&said.plate_most, Length::mm(40.0), Length::inch(1.5))?;
    let stock = PlateStock::every(step, Length::mm(3.0), most);
    let form = form(flags, &refused)?;
    let mut brief = VesselBrief::new(form, pressure("pressure", working)?, shell, materials, stock);
    if let Some(hole) = &flags.hole {
        let rivet = flags.rivet.as_ref().map(|r| length(Field::Rivet, r)).transpose()?;
        brief = brief.hole(length(Field::Hole, hole)?, rivet);
    }
    if let Some(rows) = said.girth_rows {
        brief = brief.girth(GirthBrief::new(Form::lap(rows).map_err(refused)?, GirthPlace::Middle));
    }
    let style = style(flags);
    let mut text = String::new();
    write_vessel(&mut text, style, &brief, &book.whole()).map_err(|e| unwritten(e, &book, flags))?;
    Ok(signed(flags, style, &text))
}
