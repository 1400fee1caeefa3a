//! `seamwright rate`: what an existing joint of a shell allows, from what was measured.

use seamwright::bounds::Field;
use seamwright::quantities::{Length, Pressure};
use seamwright::rating::{Basis, Existing, Governs, KnownLength, Rating};
use seamwright::rules::Metal;
use seamwright::working::{Dialect, write_rate};

use super::flags::{RateFlags, ShellFlags};
use super::shell::{service, shell, signed, style, unwritten};
use crate::failure::Failure;
use crate::flags::{Flags, MetalFlag, UnitsFlag};
use crate::stated::form;
use crate::task::Book;
use crate::units::{fixed, length, number, percent, pressure, stress};

/// Names that --from-drawing takes.
const NAMES: [&str; 7] = ["pitch", "plate", "other-plate", "wide-strap", "narrow-strap", "hole", "shell-plate"];

/// Runs the rating.
pub fn run(flags: &Flags, shell_flags: &ShellFlags, said: &RateFlags) -> Result<String, Failure> {
    let Some(id) = &flags.book else {
        let remedy = "name the rule book of the jurisdiction, as in --book us-existing (see --list-books)";
        return Err(Failure::usage("book", "is needed and was not given", remedy));
    };
    let book = Book::new(id, &flags.set, flags.units.into())?;
    let existing = existing(flags, shell_flags, said, &book)?;
    let style = style(flags);
    let mut text = String::new();
    let rated = write_rate(&mut text, style, &existing, &book.whole()).map_err(|e| unwritten(e, &book, flags))?;
    Ok(signed(flags, style, &(short(flags, style.dialect, &rated) + &text)))
}

/// The answer in a few lines, for those who read no further.
fn short(flags: &Flags, dialect: Dialect, rated: &Rating) -> String {
    if dialect != Dialect::Plain {
        return String::new();
    }
    let shown = |mpa: f64| match flags.units {
        UnitsFlag::Mm => format!("{} MPa", fixed(mpa, 3)),
        UnitsFlag::Inch => format!("{} psi", fixed(Pressure::mpa(mpa).to_psi(), 1)),
    };
    let mut out = format!("IN SHORT        Working pressure allowed: {}.\n", shown(rated.allowed));
    let by = match rated.governs {
        Governs::Seam => format!("the seam: {}", rated.analysis.governing.name(rated.joint.form())),
        Governs::Plate => "the solid plate away from the seam".to_string(),
        Governs::Rule(_) => "a limit of the rule book on laps".to_string(),
    };
    out.push_str(&format!("                Set by {by}.\n"));
    if let Some(margin) = rated.margin {
        let verdict = if margin < 1.0 { " THE PRESENT PRESSURE IS NOT ALLOWED." } else { "" };
        out.push_str(&format!("                {} of the present pressure.{verdict}\n", percent(margin)));
    }
    if let Some(life) = rated.life.filter(|life| life.years.is_finite()) {
        out.push_str(&format!("                {} years left at the present pressure.\n", fixed(life.years, 1)));
    }
    let assumed = rated.assumptions.iter().filter(|a| a.basis == Basis::Assumed).count();
    let open = rated.findings.open() + rated.analysis.findings.open();
    out.push_str(&format!("                {assumed} assumptions and {open} open findings: see the end.\n\n"));
    out.replace('\u{a0}', " ")
}

/// The joint as found.
fn existing(flags: &Flags, shell_flags: &ShellFlags, said: &RateFlags, book: &Book) -> Result<Existing, Failure> {
    let refused = |e| Failure::refused(&e, book, flags.units.into());
    if let Some(stray) = said.from_drawing.iter().find(|name| !NAMES.contains(&name.as_str())) {
        let wrong = format!("\"{stray}\" is no figure of the joint");
        return Err(Failure::usage("from-drawing", wrong, format!("take one of {}", NAMES.join(", "))));
    }
    let figure = |name: &str, field: Field, text: &Option<String>| -> Result<Option<KnownLength>, Failure> {
        let Some(text) = text else { return Ok(None) };
        let value: Length = length(field, text)?;
        let drawn = said.from_drawing.iter().any(|n| n == name);
        Ok(Some(if drawn { KnownLength::given(value) } else { KnownLength::measured(value) }))
    };
    let needed = |name: &str, field: Field, text: &Option<String>, like: &str| {
        let remedy = format!("write --{name} \"{like}\", as measured");
        figure(name, field, text)?.ok_or_else(|| Failure::usage(name, "is needed and was not given", remedy))
    };
    let pitch = needed("pitch", Field::Pitch, &flags.pitch, "3 1/2 in")?;
    let plate = needed("plate", Field::Plate, &flags.plate, "0.45 in")?;
    let shell = shell(flags, shell_flags, service(said)?)?;
    let mut found = Existing::new(form(flags, &refused)?, pitch, plate, shell.inside()).service(*shell.circumstances());
    if shell_flags.permissible {
        found = found.permissible();
    }
    if let Some(factor) = &flags.safety_factor {
        found = found.safety(number("safety-factor", factor)?);
    }
    if let Some(allowance) = &shell_flags.corrosion {
        found = found.corrosion(length(Field::Corrosion, allowance)?);
    }
    if let Some(other) = figure("other-plate", Field::OtherPlate, &flags.other_plate)? {
        found = found.other_plate(other);
    }
    let wide = figure("wide-strap", Field::WideStrap, &flags.wide_strap)?;
    let narrow = figure("narrow-strap", Field::NarrowStrap, &flags.narrow_strap)?;
    match (wide, narrow) {
        (Some(wide), narrow) => found = found.straps(wide, narrow),
        (None, Some(_)) => {
            return Err(Failure::usage("narrow-strap", "was given without the wide strap", "add --wide-strap"));
        }
        (None, None) => {}
    }
    if let Some(hole) = figure("hole", Field::Hole, &flags.hole)? {
        found = found.hole(hole);
    }
    if let Some(plate) = figure("shell-plate", Field::Plate, &said.shell_plate)? {
        found = found.shell_plate(plate);
    }
    if let Some(plate) = &said.plate_when_new {
        found = found.nominal(length(Field::Plate, plate)?);
    }
    for (row, gap) in (1..).zip(&flags.gap) {
        found = found.back_pitch(row, length(Field::BackPitch, gap)?);
    }
    if let Some(margin) = &flags.margin {
        found = found.margin(length(Field::Margin, margin)?);
    }
    let metal = |flag: MetalFlag| if flag == MetalFlag::Iron { Metal::Iron } else { Metal::Steel };
    if let Some(plates) = flags.assume {
        found = found.metals(metal(plates), metal(said.rivet_metal.unwrap_or(plates)));
    }
    if let Some(tension) = &flags.tension {
        found = found.tension(stress(Field::Tension, tension)?);
    }
    if let Some(shear) = &flags.shear {
        found = found.shear(stress(Field::Shear, shear)?);
    }
    if let Some(bearing) = &flags.bearing {
        found = found.bearing(stress(Field::Bearing, bearing)?);
    }
    if let Some(present) = &said.present {
        found = found.present(pressure("present", present)?);
    }
    if let Some(rate) = &said.wastage_rate {
        found = found.wastage_rate(length(Field::WastageRate, rate)?);
    }
    if let (Some(earlier), Some(years)) = (&said.earlier_plate, &said.years_ago) {
        found = found.earlier(length(Field::Plate, earlier)?, number("years-ago", years)?);
    }
    Ok(found)
}
