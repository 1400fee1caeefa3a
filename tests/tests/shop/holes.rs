//! Where the holes are.

use super::*;

#[test]
fn holes_of_a_zigzag_lap() {
    let found = sheet(&lap(), &silent(), straight(3000.0, 40.0, 40.0));
    let p = 2920.0 / 41.0;
    assert!(close(found.joint.pitch().to_mm(), p));
    let (first, second) = (row(&found, Side::Lap, 1), row(&found, Side::Lap, 2));
    assert_eq!((first.len(), second.len(), found.rivet_count()), (42, 41, 83));
    assert_eq!((found.layout().total(), found.layout().holes().len()), (83, 83));
    for (i, h) in first.iter().enumerate() {
        assert!(close(h.x.to_mm(), 40.0 + p * i as f64) && h.y.to_mm() == 35.0 && h.angle.is_none());
    }
    for (i, h) in second.iter().enumerate() {
        assert!(close(h.x.to_mm(), 40.0 + p * (i as f64 + 0.5)) && h.y.to_mm() == 75.0);
    }
    assert!(close(first[41].x.to_mm(), 2960.0));
    // Numbers run on through rows.
    assert!(found.layout().holes().zip(1..).all(|(h, n)| h.number == n));
    assert_eq!(found.layout().hole(0), None);
    assert_eq!(found.layout().hole(84), None);
    assert_eq!(found.layout().hole(43).unwrap().in_row, 1);
}

#[test]
fn holes_of_a_butt_with_omitted_rivets() {
    // Run 1800: ten strips of 180. Row 1 at 0, 180, ...; row 2 at 45, 135, ...; row 3 between them, at 0, 90, ...
    let found = sheet(&butt(), &silent(), straight(1900.0, 50.0, 50.0));
    assert_eq!(found.pitch.taken.strips, 10);
    let counts: Vec<u32> = found.rivets().iter().map(|line| line.count).collect();
    assert_eq!(counts, [2 * 11, 2 * 20, 2 * 21]);
    // From the butt: margin 40, row 3; 50 further row 2; 68 further row 1.
    for (number, y) in [(1, 158.0), (2, 90.0), (3, 40.0)] {
        let (left, right) = (row(&found, Side::Left, number), row(&found, Side::Right, number));
        assert_eq!(xs(&left), xs(&right));
        assert!(left.iter().all(|h| h.y.to_mm() == y) && right.iter().all(|h| h.y.to_mm() == -y));
    }
    assert_eq!(xs(&row(&found, Side::Left, 2))[..3], [95.0, 185.0, 275.0]);
    assert_eq!(xs(&row(&found, Side::Left, 3))[..3], [50.0, 140.0, 230.0]);
    // Every row is its own mirror image about the middle of the seam.
    for number in 1..=3 {
        let x = xs(&row(&found, Side::Left, number));
        assert!(x.iter().zip(x.iter().rev()).all(|(a, b)| close(a + b, 1900.0)));
    }
}

#[test]
fn holes_of_chain_rows_stand_behind_each_other() {
    let spec = JointSpec::new(Form::lap(2).unwrap().chain(), MM(71.0), MM(13.0), MM(23.0));
    let joint = spec.margin(MM(35.0)).back_pitch(1, MM(50.0)).build().unwrap();
    let found = sheet(&joint, &silent(), straight(790.0, 40.0, 40.0));
    assert_eq!(xs(&row(&found, Side::Lap, 1)), xs(&row(&found, Side::Lap, 2)));
    assert_eq!(found.rivet_count(), 22);
}

#[test]
fn holes_of_a_girth_close_on_themselves() {
    let found = sheet(&lap(), &silent(), girth(1000.0, Measured::InsidePlate, Face::Outside));
    let n = found.pitch.taken.strips;
    assert!(close(f64::from(n) * found.joint.pitch().to_mm(), PI * 1013.0));
    assert_eq!(found.rivet_count(), 2 * n);
    let (first, second) = (row(&found, Side::Lap, 1), row(&found, Side::Lap, 2));
    assert_eq!((first.len() as u32, second.len() as u32), (n, n));
    assert_eq!(first[0].angle, Some(0.0));
    let step = 360.0 / f64::from(n);
    for (i, (a, b)) in first.iter().zip(&second).enumerate() {
        assert!((a.angle.unwrap() - step * i as f64).abs() < 1e-9);
        assert!((b.angle.unwrap() - step * (i as f64 + 0.5)).abs() < 1e-9);
        assert!(b.x.to_mm() < found.along.seam);
    }
}

#[test]
fn circles_of_the_plies() {
    // Unequal plates, 10 outside 13: middle circles 1013 and 1013 + 13 + 10.
    let spec = JointSpec::new(Form::lap(1).unwrap(), MM(60.0), MM(13.0), MM(21.0)).other_plate(MM(10.0));
    let joint = spec.margin(MM(35.0)).build().unwrap();
    let out = sheet(&joint, &silent(), girth(1000.0, Measured::InsidePlate, Face::Outside));
    assert!(close(out.along.circle.unwrap(), 1013.0) && close(out.along.other, PI * 1036.0));
    // The same seam told from plate B: its ring has 1026 mm inside.
    let told = sheet(&joint, &silent(), girth(1026.0, Measured::InsideOther, Face::Outside));
    assert!(close(told.along.circle.unwrap(), 1013.0) && close(told.along.other, PI * 1036.0));
    let inside = sheet(&joint, &silent(), girth(1013.0, Measured::Circle, Face::Inside));
    assert!(close(inside.along.other, PI * 990.0));
    assert!(out.holds(Note::RingsDiffer));
    // A butt: wide strap of 16 inside, narrow strap of 13 outside a plate of 20.
    let found = sheet(&butt(), &silent(), girth(2000.0, Measured::InsidePlate, Face::Inside));
    assert!(close(found.cuts.wide.unwrap().length, PI * (2020.0 - 36.0)));
    assert!(close(found.cuts.narrow.unwrap().length, PI * (2020.0 + 33.0)));
    let refused = order(girth(2000.0, Measured::InsideOther, Face::Inside));
    let error = shop_sheet(&butt(), &steel(), &silent(), &refused).unwrap_err();
    assert_eq!((error.kind, error.field), (ErrorKind::NotForThisForm, Field::OtherPlate));
}

#[test]
fn ties_are_one_strip() {
    // A lozenge of 1-2-3 rivets in 180 mm of width, two straps.
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (3, 2)]).unwrap();
    let spec = JointSpec::new(form, MM(180.0), MM(16.0), MM(21.0)).strap(MM(10.0)).margin(MM(35.0));
    let joint = spec.back_pitch(1, MM(60.0)).back_pitch(2, MM(60.0)).build().unwrap();
    let found = sheet(&joint, &silent(), Run::Tie);
    assert_eq!((found.pitch.taken.strips, found.pitch.fitted, found.joint), (1, Fitted::Tie, joint));
    assert_eq!(found.rivet_count(), 12);
    assert_eq!(xs(&row(&found, Side::Left, 1)), [90.0]);
    // On common gauge lines 180/3 = 60 apart: row 2 lies in the gaps of row 3.
    assert_eq!(xs(&row(&found, Side::Left, 2)), [60.0, 120.0]);
    assert!(xs(&row(&found, Side::Right, 3)).iter().zip([30.0, 90.0, 150.0]).all(|(a, b)| close(*a, b)));
    let strap = found.cuts.wide.unwrap();
    assert_eq!((strap.length, strap.width), (180.0, 2.0 * (120.0 + 70.0)));
    assert_eq!(found.cuts.narrow.unwrap(), strap);
    // The outer holes of row 3 are 30 from the edge, and 1.5 holes of 21 are 31.5.
    assert!(found.holds(Note::SideMargin));
}

#[test]
fn equal_rows_of_a_tie_are_staggered_within_the_side_margin() {
    let of = |hole: f64| {
        let form = Form::from_rows(JointKind::Lap, Arrangement::Zigzag, &[(2, 1), (2, 1), (1, 1)]).unwrap();
        let joint = JointSpec::new(form, MM(200.0), MM(10.0), MM(hole)).margin(MM(35.0)).back_pitch(1, MM(60.0));
        sheet(&joint.back_pitch(2, MM(60.0)).build().unwrap(), &silent(), Run::Tie)
    };
    // Gauge 100, rows of two centred at 50 and 150. A quarter of the gauge leaves 25 to the edge: more than 1.5 x 16.
    let found = of(16.0);
    assert_eq!(xs(&row(&found, Side::Lap, 1)), [25.0, 125.0]);
    assert_eq!(xs(&row(&found, Side::Lap, 2)), [75.0, 175.0]);
    assert_eq!(xs(&row(&found, Side::Lap, 3)), [100.0]);
    // 1.5 x 21 = 31.5 stay at the edge: shifted by 18.5 only.
    let found = of(21.0);
    assert_eq!(xs(&row(&found, Side::Lap, 1)), [31.5, 131.5]);
    assert_eq!(xs(&row(&found, Side::Lap, 2)), [68.5, 168.5]);
    assert!(!found.holds(Note::SideMargin));
    // Two over four: both even, in line on the gauge lines 50 apart, and symmetrical.
    let form = Form::from_rows(JointKind::Lap, Arrangement::Zigzag, &[(2, 1), (4, 1)]).unwrap();
    let spec = JointSpec::new(form, MM(200.0), MM(10.0), MM(16.0)).margin(MM(35.0)).back_pitch(1, MM(60.0));
    let found = sheet(&spec.build().unwrap(), &silent(), Run::Tie);
    assert_eq!(xs(&row(&found, Side::Lap, 1)), [75.0, 125.0]);
    assert_eq!(xs(&row(&found, Side::Lap, 2)), [25.0, 75.0, 125.0, 175.0]);
    // So close that holes of two rows would run into each other: refused, not drilled.
    let close = spec.back_pitch(1, MM(15.0)).build().unwrap();
    let error = shop_sheet(&close, &steel(), &silent(), &order(Run::Tie)).unwrap_err();
    assert_eq!((error.kind, error.field), (ErrorKind::RowsOverlap, Field::BackPitch));
}
