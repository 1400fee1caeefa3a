//! Notes, and what is refused.

use super::*;

#[test]
fn notes_hold_where_they_should() {
    let run = straight(3000.0, 40.0, 40.0);
    let with =
        |head, rule, stock| shop_sheet(&lap(), &steel(), &silent(), &Order::steel(run, head, rule, stock)).unwrap();
    let fine = with(HeadForm::Button, LengthRule::BoilerButton, EXACT);
    assert!(!fine.holds(Note::HeadAgainstRule) && !fine.holds(Note::GripBeyondRule) && !fine.holds(Note::StockShort));
    assert!(fine.holds(Note::RivetLoose) && !fine.holds(Note::RingsDiffer) && !fine.holds(Note::PitchOutside));
    assert!(with(HeadForm::Countersunk, LengthRule::BoilerButton, EXACT).holds(Note::HeadAgainstRule));
    assert!(with(HeadForm::Button, LengthRule::Countersunk, EXACT).holds(Note::HeadAgainstRule));
    let short = with(HeadForm::Button, LengthRule::BoilerButton, Stock::every(MM(5.0), Rounding::Down));
    assert!(short.holds(Note::StockShort));
    assert!(short.notes().all(|n| short.holds(n)) && SHOP_NOTES.contains(&Note::StockShort));
    // Grip 44 through 11 mm rivets is exactly four diameters.
    let thick = |t: f64, rule| {
        let spec = JointSpec::new(Form::lap(1).unwrap(), MM(40.0), MM(t), MM(11.0)).margin(MM(20.0));
        let order = Order::steel(straight(480.0, 40.0, 40.0), HeadForm::Button, rule, EXACT);
        shop_sheet(&spec.build().unwrap(), &steel(), &silent(), &order).unwrap().holds(Note::GripBeyondRule)
    };
    assert!(!thick(22.0, LengthRule::SteelButton) && thick(22.1, LengthRule::SteelButton));
    assert!(!thick(22.1, LengthRule::SmallMachine));
}

#[test]
fn what_is_refused() {
    let run = straight(3000.0, 40.0, 40.0);
    let kind = |joint: &Joint, order: Order| {
        let error = shop_sheet(joint, &steel(), &silent(), &order).unwrap_err();
        (error.kind, error.field)
    };
    let spec = JointSpec::new(Form::lap(2).unwrap(), MM(71.0), MM(13.0), MM(23.0));
    let no_rows = spec.margin(MM(35.0)).build().unwrap();
    assert_eq!(kind(&no_rows, order(run)), (ErrorKind::Missing, Field::BackPitch));
    let no_margin = spec.back_pitch(1, MM(40.0)).build().unwrap();
    assert_eq!(kind(&no_margin, order(run)), (ErrorKind::Missing, Field::Margin));
    let spec = JointSpec::new(Form::double_strap(1).unwrap(), MM(71.0), MM(13.0), MM(23.0)).margin(MM(35.0));
    assert_eq!(kind(&spec.build().unwrap(), order(run)), (ErrorKind::Missing, Field::WideStrap));
    // The end of the plate cuts the hole: at half a hole, refused; above, taken.
    assert_eq!(kind(&lap(), order(straight(3000.0, 11.5, 40.0))), (ErrorKind::HoleCutsEdge, Field::Margin));
    assert_eq!(kind(&lap(), order(straight(3000.0, 40.0, 11.5))), (ErrorKind::HoleCutsEdge, Field::Margin));
    assert!(shop_sheet(&lap(), &steel(), &silent(), &order(straight(3000.0, 11.6, 11.6))).is_ok());
    for length in [-1.0, 0.0, 81.9, 500_000.1, f64::NAN, f64::INFINITY] {
        assert!(shop_sheet(&lap(), &steel(), &silent(), &order(straight(length, 40.0, 40.0))).is_err(), "{length}");
    }
    for d in [-1.0, 0.0, 19.9, 100_000.1, f64::NAN] {
        let run = girth(d, Measured::Circle, Face::Inside);
        assert!(shop_sheet(&lap(), &steel(), &silent(), &order(run)).is_err(), "{d}");
    }
    // A ring with no room for the plate inside it.
    let tight = girth(20.0, Measured::Circle, Face::Inside);
    assert_eq!(kind(&lap(), order(tight)).0, ErrorKind::TooSmall);
    for density in [0.0, -7850.0, 499.0, 25_001.0, f64::NAN] {
        let order = Order::new(run, HeadForm::Button, LengthRule::Hand, EXACT, Density::kg_m3(density));
        assert!(shop_sheet(&lap(), &steel(), &silent(), &order).is_err());
    }
    for step in [-1.0, 0.01, 100.1, f64::NAN] {
        let stock = Stock::every(MM(step), Rounding::Up);
        let order = Order::steel(run, HeadForm::Button, LengthRule::Hand, stock);
        assert!(shop_sheet(&lap(), &steel(), &silent(), &order).is_err());
    }
    let order = Order::steel(run, HeadForm::Button, LengthRule::BridgeTable, EXACT);
    assert!(shop_sheet(&lap(), &steel(), &silent(), &order).is_ok()); // 22 mm is a column
    assert_eq!(kind(&{ no_cold_rivet() }, order), (ErrorKind::BeyondTable, Field::Rivet));
}

fn no_cold_rivet() -> Joint {
    JointSpec::new(Form::lap(1).unwrap(), MM(71.0), MM(13.0), MM(21.0)).margin(MM(35.0)).build().unwrap()
}
