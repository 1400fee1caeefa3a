//! Sizing against worked examples, rules and edges.

use super::near;
use crate::book::{INCH, PSI};
use crate::{
    Arrangement, Book, Cap, Form, GENERAL_METRIC, INDIAN_BOILER, Joint, Kind, Row, Stresses, US_BOILER_1918,
    admissible_pitch, back_pitches, balanced_pitches, cap, floor, head_room, margin, raw_hole, round_down, round_up,
    row_distance, size_hole, straps,
};

fn rows(list: &[(u32, f64, u32)]) -> Vec<Row> {
    let rows = list.iter().map(|&(rivets, hole, planes)| Row { rivets, hole, rivet: hole - 1.0, planes });
    rows.collect()
}

fn lap(t: f64, list: &[(u32, f64, u32)]) -> Joint {
    Joint { form: Form::Lap { plates: [t, t] }, strip: 1.0, rows: rows(list) }
}

fn butt(t: f64, list: &[(u32, f64, u32)]) -> Joint {
    Joint { form: Form::Butt { plate: t, wide: t, narrow: Some(t) }, strip: 1.0, rows: rows(list) }
}

fn stresses(tension: f64, shear: f64, bearing: Option<f64>) -> Stresses {
    Stresses { plate_tension: tension, other_tension: tension, shear, plate_bearing: bearing, other_bearing: bearing }
}

fn limit(book: &Book, joint: &Joint) -> f64 {
    match cap(book, joint) {
        Cap::At(limit) => limit,
        _ => f64::NAN,
    }
}

#[test]
fn rounding() {
    near(round_down(70.94, 1.0), 70.0, 0.0);
    near(round_down(71.0, 1.0), 71.0, 0.0);
    near(round_down(71.0 * (1.0 - 5e-10), 1.0), 71.0, 0.0);
    near(round_down(71.0 * (1.0 - 2e-9), 1.0), 70.0, 0.0);
    near(round_up(34.5, 1.0), 35.0, 0.0);
    near(round_up(35.0 * (1.0 + 5e-10), 1.0), 35.0, 0.0);
    near(round_up(35.0 * (1.0 + 2e-9), 1.0), 36.0, 0.0);
    for k in 1..400 {
        let length = f64::from(k) / 16.0 * INCH;
        near(round_down(length, 1.5875), length, 1e-9);
        near(round_up(length, 1.5875), length, 1e-9);
    }
}

#[test]
fn khurmi_gupta_laps() {
    let ibr = &INDIAN_BOILER;
    let c = ibr.convention();
    // Khurmi & Gupta, Example 9.4: 21.6, 23 (22), 70.94, 75.34, 38.84, 35.
    let raw = raw_hole(ibr, 13.0, 60.0, Some(120.0), false);
    near(raw.unwrap_or(0.0), 21.6333, 5e-5);
    let sized = size_hole(ibr, 13.0, 60.0, Some(120.0), false);
    assert_eq!(sized, Some((23.0, 22.0)));
    let j = lap(13.0, &[(1, 23.0, 1), (1, 23.0, 1)]);
    let s = stresses(80.0, 60.0, Some(120.0));
    near(balanced_pitches(&j, &s, &c)[0], 70.9395, 5e-5);
    near(limit(ibr, &j), 75.34, 5e-3);
    let alike = [(1, 23.0), (1, 23.0)];
    let gaps = back_pitches(ibr, 71.0, &alike, Arrangement::Zigzag);
    near(gaps[0].unwrap_or(0.0), 38.84, 5e-3);
    let gaps = back_pitches(ibr, 71.0, &alike, Arrangement::Chain);
    assert_eq!(gaps, [Some(46.0)]);
    near(margin(ibr, 23.0), 35.0, 0.0);
    near(admissible_pitch(70.9395, 46.0, Cap::At(75.34), 1.0).unwrap_or(0.0), 70.0, 0.0);

    // Example 9.5, thin plate: 17.8, 19, 100.008, 65.57; the book then takes 66, above its own limit.
    near(raw_hole(ibr, 7.0, 60.0, Some(120.0), false).unwrap_or(0.0), 17.8254, 5e-5);
    assert_eq!(size_hole(ibr, 7.0, 60.0, Some(120.0), false), Some((19.0, 18.0)));
    let j = lap(7.0, &[(1, 19.0, 1), (1, 19.0, 1), (1, 19.0, 1)]);
    let s = stresses(90.0, 60.0, Some(120.0));
    let wanted = balanced_pitches(&j, &s, &c)[0];
    near(wanted, 100.0082, 5e-5);
    near(limit(ibr, &j), 65.57, 5e-3);
    assert_eq!(floor(ibr, &j), 38.0);
    assert_eq!(admissible_pitch(wanted, 38.0, cap(ibr, &j), 1.0), Some(65.0));
    let gaps = back_pitches(ibr, 66.0, &[(1, 19.0), (1, 19.0), (1, 19.0)], Arrangement::Zigzag);
    near(gaps[1].unwrap_or(0.0), 34.51, 5e-3);

    // Sadhu Singh, Machine Design-I, Example 5.7, thin plate: 11.46, 13.5 (12), 35.2.
    let general = &GENERAL_METRIC;
    near(raw_hole(general, 6.0, 100.0, Some(150.0), false).unwrap_or(0.0), 11.4592, 5e-5);
    assert_eq!(size_hole(general, 6.0, 100.0, Some(150.0), false), Some((13.5, 12.0)));
    let j = lap(6.0, &[(1, 13.5, 1), (1, 13.5, 1)]);
    let s = stresses(220.0, 100.0, Some(150.0));
    near(balanced_pitches(&j, &s, &c)[0], 35.1877, 5e-5);
}

#[test]
fn khurmi_gupta_butts() {
    let ibr = &INDIAN_BOILER;
    let c = ibr.convention();
    // Khurmi & Gupta, Example 9.6: 19, 58.87, 58.78; strap 6.25, under the 10 mm of the same book.
    assert_eq!(size_hole(ibr, 10.0, 60.0, None, true), Some((19.0, 18.0)));
    let j = butt(10.0, &[(1, 19.0, 2)]);
    let [p, _, _] = balanced_pitches(&j, &stresses(80.0, 60.0, None), &c);
    near(p, 58.8712, 5e-5);
    near(limit(ibr, &j), 58.78, 5e-3);
    let one = (1, 19.0);
    assert_eq!(straps(ibr, Kind::Equal, 10.0, 60.0, one, one), Some([10.0, 10.0]));

    // Example 9.7: 20.8, 21 (20), 88.35, 83.28, 41.79, margin 31.5.
    assert_eq!(size_hole(ibr, 12.0, 56.0, Some(140.0), true), Some((21.0, 20.0)));
    let j = butt(12.0, &[(1, 21.0, 2), (1, 21.0, 2)]);
    let [p, _, _] = balanced_pitches(&j, &stresses(90.0, 56.0, Some(140.0)), &c);
    near(p, 88.3479, 5e-5);
    near(limit(ibr, &j), 83.28, 5e-3);
    assert_eq!(admissible_pitch(p, floor(ibr, &j), cap(ibr, &j), 1.0), Some(83.0));
    let gaps = back_pitches(ibr, 84.0, &[(1, 21.0), (1, 21.0)], Arrangement::Zigzag);
    near(gaps[0].unwrap_or(0.0), 41.79, 5e-3);
    near(margin(ibr, 21.0), 32.0, 0.0);

    // Example 9.9: 30, 31.5 (30), 220.8, 191.28, 75.425, 53.445, straps 18.75 and 15.625, margin 47.25.
    near(raw_hole(ibr, 25.0, 60.0, None, false).unwrap_or(0.0), 30.0, 1e-12);
    assert_eq!(size_hole(ibr, 25.0, 60.0, None, false), Some((31.5, 30.0)));
    let d = 31.5;
    let j = butt(25.0, &[(1, d, 1), (2, d, 2), (2, d, 2)]);
    let [p, _, _] = balanced_pitches(&j, &stresses(84.0, 60.0, Some(130.0)), &c);
    near(p, 220.7613, 5e-5);
    near(limit(ibr, &j), 191.28, 5e-3);
    assert_eq!(floor(ibr, &j), 126.0);
    let gaps = back_pitches(ibr, 196.0, &[(1, d), (2, d), (2, d)], Arrangement::Zigzag);
    near(gaps[0].unwrap_or(0.0), 75.425, 1e-9);
    near(gaps[1].unwrap_or(0.0), 53.445, 1e-9);
    let two = straps(ibr, Kind::Unequal, 25.0, 196.0, (1, d), (2, d));
    assert_eq!(two, Some([19.0, 16.0]));
    near(margin(ibr, d), 48.0, 0.0);

    // Example 9.10: 34.5 (33), 261.53, 209.28, 83.675, 59.415, straps 21 and 17.5, margin 51.75.
    assert_eq!(size_hole(ibr, 28.0, 60.0, None, false), Some((34.5, 33.0)));
    let d = 34.5;
    let j = butt(28.0, &[(1, d, 1), (2, d, 2), (2, d, 2)]);
    let [p, _, _] = balanced_pitches(&j, &stresses(75.0, 60.0, Some(125.0)), &c);
    near(p, 261.5278, 5e-5);
    near(limit(ibr, &j), 209.28, 5e-3);
    let gaps = back_pitches(ibr, 220.0, &[(1, d), (2, d), (2, d)], Arrangement::Zigzag);
    near(gaps[0].unwrap_or(0.0), 83.675, 1e-9);
    near(gaps[1].unwrap_or(0.0), 59.415, 1e-9);
    let two = straps(ibr, Kind::Unequal, 28.0, 220.0, (1, d), (2, d));
    assert_eq!(two, Some([21.0, 18.0]));

    // Bhandari, Design of Machine Elements, Example 8.22: row distance 64.5, straps 20.83 -> 21, margin 45.
    let gaps = back_pitches(ibr, 150.0, &[(1, 30.0), (2, 30.0)], Arrangement::Zigzag);
    near(gaps[0].unwrap_or(0.0), 64.5, 1e-9);
    let two = straps(ibr, Kind::Equal, 25.0, 150.0, (1, 30.0), (2, 30.0));
    assert_eq!(two, Some([21.0, 21.0]));
    near(margin(ibr, 30.0), 45.0, 0.0);
}

#[test]
fn general_and_bearing() {
    let general = &GENERAL_METRIC;
    // Khurmi & Gupta, Example 9.11: 21.2, 21.5 (20), pitch 69.5, rows 53.75, margin 32.25, strap 9.375.
    assert_eq!(size_hole(general, 12.5, 65.0, None, true), Some((21.5, 20.0)));
    near(floor(general, &butt(12.5, &[(1, 21.5, 2)])), 69.5, 1e-9);
    let gaps = back_pitches(general, 69.5, &[(1, 21.5), (2, 21.5)], Arrangement::Chain);
    near(gaps[0].unwrap_or(0.0), 53.75, 1e-9);
    near(margin(general, 21.5), 33.0, 0.0);
    let two = straps(general, Kind::Equal, 12.5, 200.0, (1, 21.5), (2, 21.5));
    assert_eq!(two, Some([10.0, 10.0]));
    assert_eq!(cap(general, &butt(12.5, &[(1, 21.5, 2)])), Cap::NoRule);
    // Junnarkar, Mechanics of Structures, ch. 11, Example 4, ton and inch: bearing governs, pitch 3.792.
    let c = US_BOILER_1918.convention();
    let j = butt(0.5, &[(1, 0.875, 2), (1, 0.875, 2)]);
    near(balanced_pitches(&j, &stresses(6.0, 5.0, Some(10.0)), &c)[1], 3.7917, 5e-5);
    // Sarkar, Strength of Materials, Problem 16.5: bearing governs, pitch 64.
    let j = butt(12.0, &[(1, 24.0, 2)]);
    near(balanced_pitches(&j, &stresses(120.0, 100.0, Some(200.0)), &c)[1], 64.0, 1e-9);
    // Invented case X3: 133 beats 129; all plate modes balance still further on.
    let j = butt(20.0, &[(1, 28.5, 1), (2, 28.5, 2)]);
    let s = stresses(90.0, 60.0, Some(150.0));
    let [shear, _, modes] = balanced_pitches(&j, &s, &INDIAN_BOILER.convention());
    near(round_down(shear, 1.0), 129.0, 0.0);
    assert!(modes > 133.0);
}

#[test]
fn caps_floors_and_no_pitch() {
    let ibr = &INDIAN_BOILER;
    // Invented case X6: 25.46, 28.5, floor 57, cap 50.45, no pitch.
    near(raw_hole(ibr, 7.0, 56.0, Some(160.0), false).unwrap_or(0.0), 25.46, 5e-3);
    assert_eq!(size_hole(ibr, 7.0, 56.0, Some(160.0), false), Some((28.5, 27.0)));
    let j = lap(7.0, &[(1, 28.5, 1)]);
    near(floor(ibr, &j), 57.0, 0.0);
    near(limit(ibr, &j), 50.45, 1e-9);
    let s = stresses(80.0, 56.0, Some(160.0));
    for wanted in balanced_pitches(&j, &s, &ibr.convention()) {
        assert_eq!(admissible_pitch(wanted, 57.0, cap(ibr, &j), 1.0), None);
    }
    // The thin rule stops strictly below 8 mm; in double shear it is divided by the factor.
    near(raw_hole(ibr, 8.0, 60.0, Some(120.0), false).unwrap_or(0.0), 16.9706, 5e-5);
    near(raw_hole(ibr, 7.0, 60.0, Some(120.0), true).unwrap_or(0.0), 17.8254 / 1.875, 5e-5);
    // Up by a step where rounding down passed the floor; none where that passes the cap.
    assert_eq!(admissible_pitch(40.0, 50.4, Cap::At(60.0), 1.0), Some(51.0));
    assert_eq!(admissible_pitch(50.9, 50.4, Cap::At(60.0), 1.0), Some(51.0));
    assert_eq!(admissible_pitch(40.0, 50.4, Cap::At(50.9), 1.0), None);
    assert_eq!(admissible_pitch(40.0, 50.0, Cap::At(50.0), 1.0), Some(50.0));
    assert_eq!(admissible_pitch(400.0, 50.4, Cap::NoRule, 1.0), Some(400.0));
    // The floor is the densest row's, the cap counts rivets per outer pitch, and the table ends.
    assert_eq!(floor(ibr, &butt(20.0, &[(2, 25.0, 2), (4, 23.0, 2)])), 92.0);
    let four = butt(20.0, &[(2, 25.0, 2), (6, 23.0, 2)]);
    near(limit(ibr, &four), 5.52 * 20.0 + 41.28, 1e-9);
    assert_eq!(cap(ibr, &butt(20.0, &[(1, 25.0, 2), (5, 25.0, 2)])), Cap::Unknown);
    assert_eq!(cap(ibr, &butt(20.0, &[(2, 25.0, 2), (3, 25.0, 2)])), Cap::Unknown);
    let unequal = Joint { form: Form::Lap { plates: [14.0, 11.0] }, ..lap(1.0, &[(1, 23.0, 1)]) };
    near(limit(ibr, &unequal), 1.31 * 11.0 + 41.28, 1e-9);
}

#[test]
fn us_tables() {
    let us = &US_BOILER_1918;
    let sixteenth = INCH / 16.0;
    // US state rules, driven rivets where unknown: 1/4 -> 11/16, 3/8 -> 13/16, 1/2 -> 15/16, 5/8 -> 1 1/16.
    for (t, driven) in [(4.0, 11.0), (6.0, 13.0), (8.0, 15.0), (10.0, 17.0)] {
        let sized = size_hole(us, t * sixteenth, 303.0, None, false);
        let (hole, rivet) = sized.unwrap_or((0.0, 0.0));
        near(hole, driven * sixteenth, 1e-9);
        near(rivet, (driven - 1.0) * sixteenth, 1e-9);
    }
    assert_eq!(size_hole(us, 17.0, 303.0, None, false), None);
    // US boiler code, Par. 19, Table 1: 3/8 -> 5/16, 1/2 -> 7/16 (as in the code's own butt joints), 1 1/4 -> 7/8.
    for (t, b) in [(6.0, 5.0), (8.0, 7.0), (20.0, 14.0)] {
        let one = (1, 20.0);
        let two = straps(us, Kind::Unequal, t * sixteenth, 100.0, one, one);
        near(two.unwrap_or([0.0; 2])[1], b * sixteenth, 1e-9);
    }
    // Par. 182, edition of 1918: at P/d = 4, and above it by 0.1 (P - 4 d); two inner rivets: outer less inner pitch.
    let same = [(1, 20.0), (1, 20.0)];
    let gaps = |p: f64, list: &[(u32, f64)]| back_pitches(us, p, list, Arrangement::Zigzag)[0].unwrap_or(0.0);
    near(gaps(80.0, &same), 35.0, 1e-9);
    near(gaps(100.0, &same), 37.0, 1e-9);
    near(gaps(200.0, &[(1, 20.0), (2, 20.0)]), 37.0, 1e-9);
    near(44_000.0 * PSI, 303.369_321_3, 1e-6);
}

/// Heads 1.6 rivets wide, by hand.
#[test]
fn room_for_heads() {
    let (zigzag, chain) = (Arrangement::Zigzag, Arrangement::Chain);
    // Rivets of 24: 38.4 wide. Beside a strap that ends 38 outside the next row: 38 + 19.2 = 57.2.
    let beside = head_room([(1, 1), (2, 2)], 24.0, 137.0, 38.0, zigzag);
    near(beside, 57.2, 1e-12);
    near(row_distance(&INDIAN_BOILER, 56.15, beside), 58.0, 0.0);
    near(row_distance(&INDIAN_BOILER, 60.2, beside), 61.0, 0.0);
    near(row_distance(&INDIAN_BOILER, 56.15, 57.0), 57.0, 0.0);
    // Rivets of 20: 32 wide. 24 across: sqrt(32^2 - 24^2) = sqrt(448). 34 across: nothing. In line: 32.
    near(head_room([(1, 1), (1, 1)], 20.0, 48.0, 33.0, zigzag), 448.0_f64.sqrt(), 1e-12);
    near(head_room([(1, 2), (2, 2)], 20.0, 96.0, 33.0, zigzag), 448.0_f64.sqrt(), 1e-12);
    near(head_room([(1, 1), (1, 1)], 20.0, 68.0, 33.0, zigzag), 0.0, 0.0);
    near(head_room([(2, 2), (1, 2)], 20.0, 68.0, 33.0, chain), 32.0, 1e-12);
    // Two rivets beside three.
    near(head_room([(2, 2), (3, 2)], 20.0, 68.0, 33.0, chain), 0.0, 0.0);
}
