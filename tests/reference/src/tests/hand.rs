//! Percentages of the regulations, and a joint small enough to do by hand.

use super::near;
use crate::{
    Arrangement, Convention, Diameter, Form, INDIAN_BOILER, Joint, Row, Stresses, back_pitches, cuts, ibr_percentages,
    min_cut,
};

fn rows(list: &[(u32, f64, u32)]) -> Vec<Row> {
    let rows = list.iter().map(|&(rivets, hole, planes)| Row { rivets, hole, rivet: hole - 1.0, planes });
    rows.collect()
}

#[test]
fn percentages() {
    // Laying Out for Boiler Makers, p. 33, British Columbia rule, F = 4.2: plate 76, rivets 104 %.
    let treble = rows(&[(1, 0.9375, 1), (1, 0.9375, 1), (1, 0.9375, 1)]);
    let j = ibr_percentages(3.9375, 0.4375, &treble, 28.0, 23.0 * 4.2 / 4.0, 1.875, None);
    near(j.plate, 76.1905, 5e-5);
    near(j.rivets, 103.6846, 5e-3);
    assert_eq!(j.combined, None);
    near(j.lowest, j.plate, 0.0);
    // Invented case X4: rows 30 apart where 34.86 are prescribed: plate 62.02 %.
    let double = rows(&[(1, 21.0, 1), (1, 21.0, 1)]);
    let gaps = back_pitches(&INDIAN_BOILER, 63.0, &[(1, 21.0), (1, 21.0)], Arrangement::Zigzag);
    let prescribed = gaps[0].unwrap_or(0.0);
    near(prescribed, 34.86, 5e-3);
    let j = ibr_percentages(63.0, 12.0, &double, 80.0, 60.0, 1.875, Some(30.0 / prescribed));
    near(j.plate, 62.02, 5e-3);
    near(j.rivets, 100.0 * 41_563.0 / 60_480.0, 5e-3);
    // Khurmi & Gupta, Example 9.9: outer 345 450, rivets 397 450, second row 326 060 of 411 600 N.
    let butt = rows(&[(1, 31.5, 1), (2, 31.5, 2), (2, 31.5, 2)]);
    let j = ibr_percentages(196.0, 25.0, &butt, 84.0, 60.0, 1.875, Some(1.2));
    near(j.plate, 100.0 * 345_450.0 / 411_600.0, 1e-9);
    near(j.rivets, 100.0 * 397_448.777_1 / 411_600.0, 1e-6);
    near(j.combined.unwrap_or(0.0), 79.2174, 5e-5);
    near(j.lowest, 79.2174, 5e-5);
}

fn one_rivet(one_plane: f64) -> (Joint, Stresses, Convention) {
    let joint = Joint {
        form: Form::Butt { plate: 10.0, wide: 10.0, narrow: Some(10.0) },
        strip: 60.0,
        rows: rows(&[(1, 20.0, 2)]),
    };
    let convention = Convention {
        double: 1.75,
        one_plane,
        tear: Diameter::Hole,
        tear_allowance: 2.0,
        shear: Diameter::Rivet,
        bearing: Diameter::Hole,
    };
    let stresses =
        Stresses { plate_tension: 100.0, other_tension: 100.0, shear: 60.0, plate_bearing: None, other_bearing: None };
    (joint, stresses, convention)
}

#[test]
fn one_plane_alone_and_diameters() {
    // By hand: rivet 19 in shear, 22 out of the plate; a strap torn leaves one plane.
    let (j, s, c) = one_rivet(1.0);
    let single = std::f64::consts::FRAC_PI_4 * 361.0 * 60.0;
    for cut in cuts(&j, &s, &c) {
        let torn = [cut.plate, cut.first, cut.second].iter().flatten().count();
        let planes = match (cut.plate, cut.first, cut.second) {
            (None, None, None) => 1.75,
            (None, Some(_), None) | (None, None, Some(_)) => 1.0,
            _ => 0.0,
        };
        near(cut.strength, 38_000.0 * torn as f64 + planes * single, 1e-6);
    }
    let (j, s, c) = one_rivet(0.875);
    near(min_cut(&j, &s, &c), 1.75 * single, 1e-6);
}

#[test]
#[should_panic(expected = "one_plane = double / 2")]
fn the_flow_refuses_another_plane() {
    let (j, s, c) = one_rivet(1.0);
    min_cut(&j, &s, &c);
}
