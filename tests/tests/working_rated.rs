//! The sheets of ratings and vessels, worked again from nothing but what they print.

mod generate;
#[allow(dead_code, reason = "another test uses the rest")]
mod working_support;

use generate::{Reach, any_book, config, stated};
use proptest::prelude::*;
use seamwright::bounds::Unit;
use seamwright::joint::Form;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{Existing, Footing, KnownLength, Shell, rate};
use seamwright::rules::{Metal, US_MICHIGAN};
use seamwright::vessel::{GirthBrief, GirthPlace, Outcome, PlateStock, VesselBrief, vessel};
use seamwright::working::{DIALECTS, Style, Units, WorkingError, write_rate, write_vessel};
use working_support::{Sheet, rework};

fn fail(e: impl std::fmt::Display) -> TestCaseError {
    TestCaseError::fail(e.to_string())
}

/// A figure is the last one printed under its symbol.
fn last(sheet: &Sheet, style: &Style, symbol: &str, unit: Unit, value: f64) -> Result<(), TestCaseError> {
    let mut text = String::new();
    style.value(&mut text, unit, value).map_err(fail)?;
    prop_assert_eq!(sheet.printed(symbol), Some(text.as_str()), "{}", symbol);
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_rating_is_worked_again_from_its_sheet(s in stated(Reach::Usual, 4, 0.0), book in any_book(),
        inside in 300.0..3000.0_f64, factor in 1.0..8.0_f64, inch in any::<bool>(), solid in any::<bool>(),
        other in 0.8..1.2_f64) {
        let f = |x: f64| KnownLength::given(Length::mm(x));
        let mut old = Existing::new(s.form, f(s.strip), f(s.plate), Length::mm(inside)).safety(factor)
            .tension(Stress::mpa(s.tension[0])).shear(Stress::mpa(s.shear)).bearing(Stress::mpa(300.0))
            .present(Pressure::mpa(0.7));
        if s.form.kind() == seamwright::joint::JointKind::Lap {
            old = old.other_plate(f(s.plate * other));
        }
        if solid {
            old = old.shell_plate(f(s.plate * other));
        }
        for (row, number) in s.rows.iter().zip(1..) {
            old = old.row(number, f(row.hole));
        }
        let style = Style { units: if inch { Units::Inch } else { Units::Metric }, ..Style::default() };
        let mut text = String::new();
        match write_rate(&mut text, style, &old, book) {
            Ok(found) => {
                let sheet = rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?;
                last(&sheet, &style, "WP", Unit::Megapascal, found.seam.pressure)?;
                let least = if solid { "WPm" } else { "WP" };
                if solid || found.governs == seamwright::rating::Governs::Seam {
                    last(&sheet, &style, least, Unit::Megapascal, found.allowed)?;
                }
                prop_assert_eq!(found.allowed.to_bits(), rate(&old, &book.rules).map_err(fail)?.allowed.to_bits());
            }
            Err(WorkingError::Routine(e)) => prop_assert_eq!(Some(e.kind), rate(&old, &book.rules).err().map(|e| e.kind)),
            Err(e) => return Err(fail(e)),
        }
    }

    #[test]
    fn a_vessel_is_worked_again_from_its_sheet(s in stated(Reach::Usual, 3, 0.0), book in any_book(),
        inside in 300.0..2000.0_f64, pressure in 0.1..1.5_f64, inch in any::<bool>()) {
        let stock = PlateStock::every(Length::mm(1.0), Length::mm(6.0), Length::mm(40.0));
        let shell = Shell::new(Length::mm(inside), Footing::Ultimate);
        let steel = s.materials().bearing(Stress::mpa(500.0));
        let brief = VesselBrief::new(s.form, Pressure::mpa(pressure), shell, steel, stock)
            .girth(GirthBrief::new(Form::lap(1).unwrap(), GirthPlace::Middle));
        let style = Style { units: if inch { Units::Inch } else { Units::Metric }, ..Style::default() };
        let mut text = String::new();
        match write_vessel(&mut text, style, &brief, book) {
            Ok(Outcome::Found(v)) => {
                let sheet = rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?;
                last(&sheet, &style, "WP", Unit::Megapascal, v.allowed.pressure)?;
                if let Some(girth) = &v.girth {
                    last(&sheet, &style, "WPg", Unit::Megapascal, girth.pressure)?;
                    let ruled = sheet.printed("Jg").is_some();
                    last(&sheet, &style, if ruled { "Jg" } else { "Jgl" }, Unit::One, girth.needed)?;
                }
            }
            Ok(Outcome::NothingFits(_)) => {
                prop_assert!(text.contains("No plate of the stock carries the pressure"));
            }
            Err(WorkingError::Routine(e)) => prop_assert_eq!(Some(e.kind), vessel(&brief, &book.rules).err().map(|e| e.kind)),
            Err(e) => return Err(fail(e)),
        }
    }
}

/// In every dialect each assumption is listed, and none of them is left out.
#[test]
fn every_assumption_is_on_the_sheet() {
    let inch = |x: f64| KnownLength::measured(Length::inch(x));
    let bare = Existing::new(Form::lap(2).unwrap(), inch(3.5), inch(0.45), Length::inch(48.0))
        .metals(Metal::Steel, Metal::Iron)
        .tension(Stress::psi(55_000.0))
        .bearing(Stress::psi(95_000.0))
        .present(Pressure::psi(60.0))
        .wastage_rate(Length::inch(0.01));
    for dialect in DIALECTS {
        let mut text = String::new();
        let found =
            write_rate(&mut text, Style { dialect: *dialect, ..Style::default() }, &bare, &US_MICHIGAN).unwrap();
        let flat: String = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(found.assumptions.len() >= 14, "{}", found.assumptions.len());
        for a in found.assumptions.iter() {
            assert!(flat.contains(a.about.what()), "{dialect:?}: {}", a.about.what());
            assert!(flat.contains(a.basis.word()));
        }
        assert!(flat.contains("Years until only the present pressure is allowed"));
    }
}
