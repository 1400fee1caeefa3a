//! What rating and design have in common: the shell of the flags, and texts in a reader's style.

use seamwright::bounds::Field;
use seamwright::rating::{Footing, HoleMaking, Riveting, Service, Shell};
use seamwright::working::{Dialect, Style, Units, WorkingError};

use super::flags::{HolesFlag, RateFlags, RivetingFlag, ShellFlags};
use crate::failure::Failure;
use crate::flags::{DialectFlag, Flags, UnitsFlag};
use crate::task::Book;
use crate::units::{length, number};

/// The shell, in circumstances.
pub fn shell(flags: &Flags, said: &ShellFlags, service: Service) -> Result<Shell, Failure> {
    let Some(inside) = &said.inside_diameter else {
        let remedy = "write --inside-diameter \"1200 mm\" or --inside-diameter \"48 in\"";
        return Err(Failure::usage("inside-diameter", "is needed and was not given", remedy));
    };
    let footing = if said.permissible { Footing::Permissible } else { Footing::Ultimate };
    let mut service = service;
    service.riveting = said.riveting.map(|r| match r {
        RivetingFlag::Hand => Riveting::Hand,
        RivetingFlag::Machine => Riveting::Machine,
    });
    if let Some(made) = said.holes_made {
        service.holes = Some(match made {
            HolesFlag::Drilled => HoleMaking::Drilled,
            HolesFlag::Reamed => HoleMaking::Reamed,
            HolesFlag::Punched => HoleMaking::Punched,
        });
    }
    let mut shell = Shell::new(length(Field::RingDiameter, inside)?, footing).service(service);
    if let Some(allowance) = &said.corrosion {
        shell = shell.corrosion(length(Field::Corrosion, allowance)?);
    }
    if let Some(factor) = &flags.safety_factor {
        shell = shell.safety(number("safety-factor", factor)?);
    }
    Ok(shell)
}

/// The circumstances of a boiler in service.
pub fn service(said: &RateFlags) -> Result<Service, Failure> {
    let mut service = Service::in_service();
    service.second_hand = said.second_hand.map(super::flags::Yes::is);
    service.past_age_limit = said.past_age_limit.map(super::flags::Yes::is);
    service.tested = said.tested;
    service.tubular = said.tubular.map(super::flags::Yes::is);
    service.lap_length = said.lap_length.as_ref().map(|l| length(Field::LapLength, l)).transpose()?;
    service.lap_in_fire = said.lap_in_fire.map(super::flags::Yes::is);
    service.weight_on_seam = said.weight_on_seam.map(super::flags::Yes::is);
    service.stripped = said.stripped;
    Ok(service)
}

/// The reader's style.
pub fn style(flags: &Flags) -> Style {
    let dialect = match flags.dialect {
        DialectFlag::Plain => Dialect::Plain,
        DialectFlag::Narrow => Dialect::Narrow,
        DialectFlag::Markdown => Dialect::Markdown,
        DialectFlag::Latex => Dialect::Latex,
        DialectFlag::Html => Dialect::Html,
    };
    let units = if flags.units == UnitsFlag::Mm { Units::Metric } else { Units::Inch };
    Style { units, dialect, ..Style::default() }
}

/// Refuses a dialect where a study is written in plain text only.
pub fn plain_only(flags: &Flags) -> Result<(), Failure> {
    if flags.dialect == DialectFlag::Plain {
        return Ok(());
    }
    Err(Failure::usage("dialect", "this command writes plain text only", "leave --dialect out"))
}

/// Why a text was not written.
pub fn unwritten(error: WorkingError, book: &Book, flags: &Flags) -> Failure {
    match error {
        WorkingError::Routine(e) => Failure::refused(&e, book, flags.units.into()),
        other => Failure::Refused(other.to_string()),
    }
}

/// The lines of identity before a plain sheet, and those for names after it: what a signature is under.
pub fn signed(flags: &Flags, style: Style, text: &str) -> String {
    if style.dialect != Dialect::Plain {
        return text.to_string();
    }
    let blank = "______________________________".to_string();
    let mut out = String::new();
    for (name, said) in [
        ("Title", &flags.title),
        ("Object", &flags.object),
        ("Drawing no.", &flags.drawing),
        ("Jurisdiction", &flags.jurisdiction),
    ] {
        out.push_str(&format!("{name:<16}{}\n", said.as_ref().unwrap_or(&blank)));
    }
    out.push('\n');
    out.push_str(text);
    out.push_str("\nPrepared ____________________  Checked ____________________  Date ____________\n");
    out
}
