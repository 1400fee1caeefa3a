//! The table of an old boiler on standard output: `cargo run --bin old_boiler`.
//!
//! The boiler is invented: the shell of the saw-mill engine "Marsh Hen", three courses with double-riveted laps along
//! them, thinned unequally, single-riveted girth laps between them, and three limits that were computed elsewhere.

use core::fmt::Write as _;
use std::io::{self, Write as _};

use seamwright::check::check;
use seamwright::joint::{Form, JointSpec};
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{
    Assumptions, Boiler, BoilerPart, Existing, KnownLength, Rating, Seam, Service, girth_pressure_with, rate,
};
use seamwright::rules::{Metal, US_MICHIGAN};
use seamwright::step::Plain;
use seamwright::{CAUTION, Error};

/// Name, least plate at the seam and away from it, inches, as measured.
const COURSES: [(&str, f64, f64); 3] =
    [("course 1, fire end", 0.362, 0.355), ("course 2", 0.391, 0.388), ("course 3, smoke end", 0.384, 0.340)];
/// Inside diameter, inches; the plate was 7/16 when new.
const INSIDE: f64 = 44.0;
const NEW: f64 = 7.0 / 16.0;

fn main() -> Result<(), Box<dyn core::error::Error>> {
    let mut out = String::new();
    writeln!(out, "Boiler of the saw-mill engine \"Marsh Hen\" (invented). Rule book: {}.", US_MICHIGAN.title)?;
    writeln!(out, "{CAUTION}\n")?;
    let rules = &US_MICHIGAN.rules;
    let mut boiler = Boiler::new();
    let mut first: Option<Rating> = None;
    for (name, seam, away) in COURSES {
        let rated = course(seam, away)?;
        boiler.course(name, &rated)?;
        first.get_or_insert(rated);
    }
    // The girth lap of course 1: single-riveted, a rivet of 15/16 in to each 2 in.
    let rated = first.ok_or("no course")?;
    let girth = Form::lap(1)?;
    let plate = Length::inch(0.362).to_mm();
    let pitch = Length::inch(2.0).to_mm();
    let joint = JointSpec::new(girth, Length::mm(pitch), Length::mm(plate), Length::inch(0.9375));
    let found = check(&joint.build()?, &rated.materials, rules)?;
    let tension = rated.materials.plate.tension.to_mpa();
    let seam = Seam { form: &girth, plate, tension, efficiency: found.credited };
    let allowed = girth_pressure_with(Plain, rules, existing(0.362, 0.355)?.shell(), &seam, &mut Assumptions::new())?;
    boiler.add(BoilerPart::Girth, "girth between courses 1 and 2", Pressure::mpa(allowed.pressure))?;
    // Computed elsewhere, and filled in by whoever answers for them.
    boiler.add(BoilerPart::Head, "back head, flat part", Pressure::psi(131.0))?;
    boiler.add(BoilerPart::Tubes, "tubes, least wall", Pressure::psi(190.0))?;
    boiler.add(BoilerPart::Stays, "diagonal stays", Pressure::psi(126.0))?;
    for line in boiler.lines() {
        let own = if line.part.computed_here() { "" } else { "  (not checked here)" };
        writeln!(out, "{:<12}{:<32}{:>8.1} psi{own}", line.part.what(), line.name, line.pressure.to_psi())?;
    }
    if let Some(least) = boiler.governing() {
        writeln!(out, "\nThe boiler: {:.1} psi, set by {}.", least.pressure.to_psi(), least.name)?;
    }
    if let Some(test) = boiler.test_pressure(rules) {
        writeln!(out, "Hydrostatic test by the rule book: {:.1} psi.", test.to_psi())?;
    }
    writeln!(out, "\nCourse 1 rests on:")?;
    for a in rated.assumptions.iter() {
        let row = if a.row > 0 { format!(", row {}", a.row) } else { String::new() };
        writeln!(out, "  {}{row} ({})", a.about.what(), a.basis.word())?;
    }
    // A reader that closes the pipe early (`| head`) is no failure of ours.
    let _ = io::stdout().write_all(out.as_bytes());
    Ok(())
}

/// A course as found.
fn existing(seam: f64, away: f64) -> Result<Existing, Error> {
    let measured = |inches: f64| KnownLength::measured(Length::inch(inches));
    let found = Existing::new(Form::lap(2)?, measured(3.25), measured(seam), Length::inch(INSIDE));
    Ok(found
        .shell_plate(measured(away))
        .nominal(Length::inch(NEW))
        .metals(Metal::Steel, Metal::Iron)
        .tension(Stress::psi(50_000.0))
        .bearing(Stress::psi(90_000.0))
        .service(Service {
            second_hand: Some(false),
            past_age_limit: Some(true),
            tubular: Some(false),
            ..Service::in_service()
        })
        .present(Pressure::psi(100.0)))
}

/// A rated course.
fn course(seam: f64, away: f64) -> Result<Rating, Error> {
    rate(&existing(seam, away)?, &US_MICHIGAN.rules)
}
