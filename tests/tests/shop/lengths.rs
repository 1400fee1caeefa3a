//! Rivet lengths by rule, as published.

use super::*;

/// The length of a rivet through two plates of 4 mm by a rule, and from the stock.
fn small_lap(d: f64, rule: LengthRule, stock: Stock) -> (f64, f64, f64) {
    let spec = JointSpec::new(Form::lap(1).unwrap(), MM(4.0 * d), MM(4.0), MM(d)).margin(MM(2.0 * d));
    let order = Order::steel(straight(100.0 * d, 2.0 * d, 2.0 * d), HeadForm::Button, rule, stock);
    let sheet = shop_sheet(&spec.build().unwrap(), &steel(), &silent(), &order).unwrap();
    let line = sheet.rivets()[0];
    (line.allowance, line.length, line.stock)
}

/// "Technique for Manual Working of Materials: Riveting", trainees' handbook, ch. 5: rivet of 3 mm through two plates
/// of 4 mm. Z = 4.5, L = 12.5, chosen 12 from the stock below.
#[test]
fn trainees_handbook_rivet_of_3_mm() {
    let found = small_lap(3.0, LengthRule::SteelButton, Stock::every(MM(1.0), Rounding::Down));
    assert_eq!(found, (4.5, 12.5, 12.0));
}

/// Roloff/Matek, Maschinenelemente, exercise as worked on an open teaching page: 4 on 4 mm, 12 mm rivet, hand riveting
/// 7/4 d. Allowance 21, length 29, chosen 30.
#[test]
fn roloff_matek_lap_of_two_4_mm_plates() {
    let found = small_lap(12.0, LengthRule::Hand, Stock::every(MM(2.0), Rounding::Up));
    assert_eq!(found, (21.0, 29.0, 30.0));
}

/// Rivet table of Beuchelt & Co., Gruenberg, printed p. 327 of an iron-bridge handbook: allowances at 50 and 100 mm.
#[test]
fn beuchelt_table() {
    let printed = [
        (13.0, 18.0, 23.0),
        (15.0, 21.0, 26.0),
        (17.0, 24.0, 29.0),
        (18.0, 25.0, 30.0),
        (20.0, 26.0, 31.0),
        (22.0, 28.0, 33.0),
        (23.0, 30.0, 35.0),
        (25.0, 32.0, 37.0),
        (26.0, 33.0, 38.0),
    ];
    for (d, at_50, at_100) in printed {
        assert_eq!(allowance(Plain, LengthRule::BridgeTable, 1, d, 50.0).unwrap(), at_50, "d = {d}");
        assert_eq!(allowance(Plain, LengthRule::BridgeTable, 1, d, 100.0).unwrap(), at_100, "d = {d}");
    }
    for d in [8.0, 10.0, 12.999, 14.0, 16.0, 21.0, 26.001, 30.0] {
        let error = allowance(Plain, LengthRule::BridgeTable, 3, d, 50.0).unwrap_err();
        assert_eq!((error.kind, error.field, error.index, error.value), (ErrorKind::BeyondTable, Field::Rivet, 3, d));
    }
}

/// At 40 mm of grip and a 20 mm rivet the rules give 25, 30 or 34 mm, and by hand riveting 35.
#[test]
fn the_rules_differ_by_nine_millimetres() {
    let at = |rule| allowance(Plain, rule, 0, 20.0, 40.0).unwrap();
    assert_eq!(at(LengthRule::BridgeTable), 25.0);
    assert_eq!(at(LengthRule::SteelButton), 30.0);
    assert_eq!(at(LengthRule::SmallMachine), 30.0); // 1.1*40 + 1.3*20 - 40
    assert_eq!(at(LengthRule::BoilerButton), 34.0);
    assert_eq!(at(LengthRule::Hand), 35.0);
    assert_eq!(at(LengthRule::Countersunk), 10.0);
}

#[test]
fn handbook_factors_change_above_20_mm() {
    for (rule, small, large) in [(LengthRule::SteelButton, 1.5, 1.6), (LengthRule::BoilerButton, 1.7, 1.8)] {
        for (d, k) in [(19.999, small), (20.0, small), (20.001, large), (30.0, large)] {
            assert_eq!(allowance(Plain, rule, 0, d, 10.0).unwrap(), k * d);
        }
    }
}

#[test]
fn stock_lengths_go_where_they_are_told() {
    for (rounding, stock) in [(Rounding::Down, 25.0), (Rounding::Nearest, 30.0), (Rounding::Up, 30.0)] {
        assert_eq!(small_lap(12.0, LengthRule::Hand, Stock::every(MM(5.0), rounding)).2, stock);
    }
    assert_eq!(small_lap(12.0, LengthRule::Hand, EXACT).2, 29.0);
}

#[test]
fn rules_and_heads_are_named_and_labelled() {
    for rule in LENGTH_RULES {
        assert!(!rule.key().is_empty() && !rule.name().is_empty() && !rule.source().is_empty());
        assert_eq!(rule.label().word(), "READ");
    }
    let labels: Vec<&str> = HEAD_FORMS.iter().map(|h| h.label().word()).collect();
    assert_eq!(labels, ["PRACTICE", "MEM", "PRACTICE"]);
}
