//! Each sheet worked again from nothing but what it prints.
//!
//! The plain text is read line by line: every symbol must have been printed with its value before, the substituted
//! line must be the symbolic one with those very digits, and its result must be what the digits give. Printed digits
//! stand for an interval, half a unit of the last place to either side; the lines are worked in intervals, so that no
//! tolerance is made up.

mod generate;
mod working_support;

use generate::{Reach, any_book, brief, config, set, stated};
use proptest::prelude::*;
use seamwright::bounds::Unit;
use seamwright::check::Analysis;
use seamwright::rules::{Entry, RuleBook};
use seamwright::working::{Decimals, Forces, Style, Units, write_check, write_size};
use working_support::{Sheet, rework};

fn fail(e: String) -> TestCaseError {
    TestCaseError::fail(e)
}

/// The figures of the analysis are the last ones printed under their symbols.
fn results(sheet: &Sheet, style: &Style, a: &Analysis) -> Result<(), TestCaseError> {
    let mut figures = vec![
        ("F0", Unit::Newton, a.solid),
        ("P", Unit::Newton, a.governing.strength),
        ("P.2", Unit::Newton, a.by_book.strength),
        ("eta", Unit::One, a.efficiency),
        ("J", Unit::One, a.book_efficiency),
        ("Jc", Unit::One, a.credited),
        ("plate%", Unit::One, a.percentages.plate),
        ("rivet%", Unit::One, a.percentages.rivet),
    ];
    figures.extend(a.percentages.combined.map(|c| ("comb%", Unit::One, c)));
    for (symbol, unit, value) in figures {
        let mut text = String::new();
        style.value(&mut text, unit, value).map_err(|e| fail(e.to_string()))?;
        // A figure of one row alone stands under that row; the figure of the joint comes last where there is one.
        let of_a_row = || (1..=8).any(|row| sheet.printed(&format!("{symbol}.{row}")) == Some(&text));
        let last = sheet.printed(symbol).map_or_else(of_a_row, |printed| printed == text);
        prop_assert!(last, "{} = {}", symbol, text);
    }
    Ok(())
}

fn style(inch: bool, extra_digits: i8) -> Style {
    Style { units: if inch { Units::Inch } else { Units::Metric }, extra_digits, ..Style::default() }
}

/// Any reader: units, forces in N or kN, decimals as they like.
fn reader() -> impl Strategy<Value = Style> {
    let digits = || prop::option::of(0..9_u8);
    (any::<[bool; 2]>(), [digits(), digits(), digits(), digits()], -2..3_i8).prop_map(
        |([inch, kilo], [length, stress, force, ratio], extra)| Style {
            forces: if kilo { Forces::Kilonewton } else { Forces::Newton },
            decimals: Decimals { length, stress, force, ratio },
            ..style(inch, extra)
        },
    )
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_check_is_worked_again_from_its_sheet(s in stated(Reach::Usual, 8, 5.0), book in any_book(), close in 0..3_u8,
                                              eyes in any::<[bool; 2]>(), out in prop::option::of(30.0..300.0),
                                              style in reader()) {
        let s = generate::Stated { shear_out: out, ..s };
        let switch = |b: bool| f64::from(u8::from(b));
        let rules = set(book.rules, &[(Entry::CLOSE_ROWS, f64::from(close)), (Entry::BEARING_CHECKED, 0.0),
            (Entry::INNER_SHARE, switch(eyes[0])), (Entry::LONE_PLANE, switch(eyes[1]))]);
        let book = RuleBook { rules, ..*book };
        let mut text = String::new();
        let analysis = write_check(&mut text, style, &s.joint(), &s.materials(), &book).map_err(|e| fail(e.to_string()))?;
        let sheet = rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?;
        results(&sheet, &style, &analysis)?;
    }

    #[test]
    fn a_sheet_in_inches_says_the_same(s in stated(Reach::Usual, 8, 5.0), book in any_book()) {
        let book = RuleBook { rules: set(book.rules, &[(Entry::BEARING_CHECKED, 0.0)]), ..*book };
        let mut sheets = Vec::new();
        for inch in [false, true] {
            let (mut text, style) = (String::new(), style(inch, 2));
            write_check(&mut text, style, &s.joint(), &s.materials(), &book).map_err(|e| fail(e.to_string()))?;
            sheets.push(rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?);
        }
        let [metric, inch] = sheets.as_slice() else { return Err(fail("two sheets".into())) };
        prop_assert_eq!(metric.symbols().count(), inch.symbols().count());
        for (symbol, x, half) in inch.symbols() {
            let factor = working_support::metric(symbol);
            let found = metric.symbols().find(|(s, ..)| *s == symbol);
            let room = |own: f64| own + half * factor + 1e-12 * x.abs() * factor;
            prop_assert!(found.is_some_and(|(_, mm, own)| (x * factor - mm).abs() <= room(own)), "{} {} {:?}", symbol, x, found);
        }
    }

    #[test]
    fn a_sizing_is_worked_again_from_its_sheet(b in brief(6), book in any_book(), style in reader()) {
        let mut text = String::new();
        let Ok(design) = write_size(&mut text, style, &b, book) else { return Ok(()) };
        let sheet = rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?;
        results(&sheet, &style, &design.analysis)?;
    }
}

/// A sheet on which one digit is changed is caught, wherever in its formulas the digit stands.
#[test]
fn a_changed_digit_is_caught() {
    use seamwright::{
        joint::Form,
        materials::Materials,
        quantities::{Length, Stress},
        rules::INDIAN,
        sizing::Brief,
    };
    let steel = Materials::new(Stress::mpa(95.0), Stress::mpa(70.0)).bearing(Stress::mpa(160.0));
    let (mut text, style) = (String::new(), Style::default());
    let brief = Brief::new(Form::unequal_straps(2).unwrap(), Length::mm(14.0), steel);
    write_size(&mut text, style, &brief, &INDIAN).unwrap();
    rework(&text, &style).unwrap();
    // The list of modes after the steps has no formulas.
    let steps = text.split("\nWhat governs\n").next().unwrap().lines().count();
    let (tried, missed) = working_support::changed_digits(&text, steps, &style);
    // What is given or looked up and used by nothing else can be anything.
    assert!(tried > 100 && missed.len() <= 2, "{} of {tried} missed: {missed:#?}", missed.len());
}
