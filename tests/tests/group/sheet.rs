//! The working of a group, worked again from nothing but what it prints.

use proptest::prelude::*;
use seamwright::bounds::Unit;
use seamwright::rules::{METRIC, STRUCTURAL};
use seamwright::text::DecimalMark;
use seamwright::working::{DIALECTS, Dialect, Forces, Style, Units, WorkingError, write_group_check, write_group_size};

use super::cases::case;
use super::dialects::{columns, html_is_sound, latex_is_sound, markdown_is_sound};
use super::generate::config;
use super::working_support::{Sheet, changed_digits, rework};

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

fn style(inch: bool, kilo: bool) -> Style {
    Style {
        units: if inch { Units::Inch } else { Units::Metric },
        forces: if kilo { Forces::Kilonewton } else { Forces::Newton },
        ..Style::default()
    }
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_check_is_worked_again_from_its_sheet(case in case(), [inch, kilo, double] in any::<[bool; 3]>()) {
        let style = style(inch, kilo);
        let group = if double { case.group().planes(2) } else { case.group() };
        let mut text = String::new();
        let found = write_group_check(&mut text, style, &group, &case.load(), &case.stress(), &STRUCTURAL).map_err(fail)?;
        let sheet = rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?;
        last(&sheet, &style, "Ip", Unit::SquareMillimetre, found.polar)?;
        last(&sheet, &style, "MG", Unit::NewtonMillimetre, found.moment)?;
        last(&sheet, &style, "sM", Unit::Megapascal, found.shear.stress)?;
        for (rivet, number) in found.rivets().iter().zip(1..) {
            last(&sheet, &style, &format!("FR.{number}"), Unit::Newton, rivet.resultant)?;
        }
        if let Some(load) = found.safe_load {
            last(&sheet, &style, "Pa", Unit::Newton, load)?;
        }
        let plain = seamwright::group::check_group(&group, &case.load(), &case.stress(), &STRUCTURAL.rules).unwrap();
        prop_assert_eq!(format!("{:?}", plain), format!("{:?}", found));
    }

    #[test]
    fn a_sizing_is_worked_again_from_its_sheet(case in case(), [inch, kilo] in any::<[bool; 2]>()) {
        let style = style(inch, kilo);
        let (group, load, stress) = case.unsized_group();
        let mut text = String::new();
        match write_group_size(&mut text, style, &group, &load, &stress, &METRIC) {
            Ok(made) => {
                let sheet = rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?;
                last(&sheet, &style, "dF", Unit::Millimetre, made.by_shear)?;
                last(&sheet, &style, "d", Unit::Millimetre, made.hole)?;
                last(&sheet, &style, "dr", Unit::Millimetre, made.rivet)?;
            }
            Err(WorkingError::Routine(e)) => {
                let plain = seamwright::group::size_group(&group, &load, &stress, &METRIC.rules).unwrap_err();
                prop_assert_eq!(e.to_string(), plain.to_string());
            }
            Err(e) => return Err(fail(e)),
        }
    }

    #[test]
    fn every_dialect_is_sound(case in case()) {
        for dialect in DIALECTS {
            let style = Style { dialect: *dialect, mark: DecimalMark::Comma, ..Style::default() };
            let mut text = String::new();
            write_group_check(&mut text, style, &case.group(), &case.load(), &case.stress(), &METRIC).map_err(fail)?;
            match dialect {
                Dialect::Plain => prop_assert!(columns(&text) <= 80, "{}", text),
                Dialect::Narrow => prop_assert!(columns(&text) <= 20, "{}", text),
                Dialect::Html => html_is_sound(&text),
                Dialect::Latex => latex_is_sound(&text),
                Dialect::Markdown => markdown_is_sound(&text),
            }
        }
    }
}

/// A digit that is changed is noticed, wherever it stands.
#[test]
fn no_digit_can_be_changed() {
    use super::cases::mm;
    use seamwright::group::{Group, GroupLoad, GroupStress};
    use seamwright::quantities::{Force, Moment, Stress};
    let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(10.0), mm(95.0)), (mm(72.0), mm(41.0))]).unwrap();
    let group = group.hole(mm(21.0)).one(3, mm(15.0), None).unwrap().plate(mm(9.0));
    let load = GroupLoad::force(Force::kn(3.0), Force::kn(-20.0), mm(150.0), mm(11.0)).and_couple(Moment::n_m(210.0));
    let stress = GroupStress::new(Stress::mpa(65.0)).bearing(Stress::mpa(120.0));
    let mut text = String::new();
    write_group_check(&mut text, Style::default(), &group, &load, &stress, &METRIC).unwrap();
    assert!(rework(&text, &Style::default()).is_ok());
    let steps = text.split("\nWhat governs\n").next().unwrap().lines().count();
    let (tried, missed) = changed_digits(&text, steps, &Style::default());
    assert!(tried > 100, "{tried}");
    // Places, sizes and loads that nobody else on the sheet repeats may be anything.
    assert!(missed.iter().all(|line| line.matches(" = ").count() == 1 && !line.contains(" x ")), "{missed:?}");
    assert!(missed.is_empty(), "{missed:?}");
}
