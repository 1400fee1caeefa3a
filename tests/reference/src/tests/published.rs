//! Strengths and efficiencies printed in books. Any consistent units will do, so inches and pounds stay as printed.

use super::near;
use crate::{
    Convention, Diameter, Form, Joint, Row, Stresses, bearing_all, cuts, efficiency, shear_all, solid, tearing_outer,
    weakest,
};

/// Rows of (rivets, hole, planes).
fn joint(form: Form, strip: f64, rows: &[(u32, f64, u32)]) -> Joint {
    let rows = rows.iter().map(|&(rivets, hole, planes)| Row { rivets, hole, rivet: hole, planes });
    Joint { form, strip, rows: rows.collect() }
}

fn lap(t: f64) -> Form {
    Form::Lap { plates: [t, t] }
}

/// A butt with two straps. Where the book gives no strap they are as thick as the plate and do not govern.
fn butt(plate: f64, wide: f64, narrow: f64) -> Form {
    Form::Butt { plate, wide, narrow: Some(narrow) }
}

fn stresses(tension: f64, shear: f64, bearing: f64) -> Stresses {
    Stresses {
        plate_tension: tension,
        other_tension: tension,
        shear,
        plate_bearing: Some(bearing),
        other_bearing: Some(bearing),
    }
}

fn counted(double: f64) -> Convention {
    Convention {
        double,
        one_plane: double / 2.0,
        tear: Diameter::Hole,
        tear_allowance: 0.0,
        shear: Diameter::Hole,
        bearing: Diameter::Hole,
    }
}

/// The strength of the cut with only the plate torn, at a row from 1, or with nothing torn.
fn plate_cut(j: &Joint, s: &Stresses, c: &Convention, row: Option<usize>) -> f64 {
    let all = cuts(j, s, c);
    let found = all.iter().find(|k| k.plate == row && k.first.is_none() && k.second.is_none());
    found.map_or(f64::NAN, |k| k.strength)
}

#[test]
fn khurmi_gupta_laps() {
    // Khurmi & Gupta, A Textbook of Machine Design, ch. 9, Example 9.1: 300 000, 314 160, 480 000, 300 000 N.
    let (j, s, c) =
        (joint(lap(15.0), 75.0, &[(1, 25.0, 1), (1, 25.0, 1)]), stresses(400.0, 320.0, 640.0), counted(2.0));
    near(tearing_outer(&j, &s, &c), 300_000.0, 1e-6);
    near(shear_all(&j, &s, &c), 314_160.0, 5.0);
    near(bearing_all(&j, &s, &c), 480_000.0, 1e-6);
    near(weakest(&j, &s, &c), 300_000.0, 1e-6);
    // Example 9.2: single lap 60 %, double lap 69.2 %.
    let s = stresses(120.0, 90.0, 180.0);
    let j = joint(lap(6.0), 50.0, &[(1, 20.0, 1)]);
    near(efficiency(&j, &s, &c), 0.60, 1e-9);
    let j = joint(lap(6.0), 65.0, &[(1, 20.0, 1), (1, 20.0, 1)]);
    near(efficiency(&j, &s, &c), 0.692, 5e-4);
    // Example 9.4: 49 920, 49 864 (rounded pi), 71 760, solid 73 840 N, 67.5 %.
    let s = stresses(80.0, 60.0, 120.0);
    let j = joint(lap(13.0), 71.0, &[(1, 23.0, 1), (1, 23.0, 1)]);
    near(tearing_outer(&j, &s, &c), 49_920.0, 1e-6);
    near(shear_all(&j, &s, &c), 49_864.0, 10.0);
    near(bearing_all(&j, &s, &c), 71_760.0, 1e-6);
    near(solid(&j, &s), 73_840.0, 1e-6);
    near(efficiency(&j, &s, &c), 0.675, 5e-4);
    // Exercise 1: a single lap of 28 280 N.
    let s = stresses(120.0, 90.0, 160.0);
    let j = joint(lap(15.0), 60.0, &[(1, 20.0, 1)]);
    near(weakest(&j, &s, &c), 28_280.0, 10.0);
}

#[test]
fn khurmi_gupta_butts() {
    // Khurmi & Gupta, Example 9.3: 180 000, 196 375 (rounded pi), 150 000, 240 000 N, 62.5 %.
    let s = stresses(120.0, 100.0, 150.0);
    let c = counted(2.0);
    let two = [(1, 25.0, 2), (1, 25.0, 2)];
    let j = joint(butt(20.0, 20.0, 20.0), 100.0, &two);
    near(tearing_outer(&j, &s, &c), 180_000.0, 1e-6);
    near(shear_all(&j, &s, &c), 196_375.0, 30.0);
    near(bearing_all(&j, &s, &c), 150_000.0, 1e-6);
    near(solid(&j, &s), 240_000.0, 1e-6);
    near(efficiency(&j, &s, &c), 0.625, 1e-9);
    // Example 9.9: 345 450, 397 500, 511 875; second row with the outer rivet 326 065; 411 600 N; 79.2 %.
    let s = stresses(84.0, 60.0, 130.0);
    let c = counted(1.875);
    let rows = [(1, 31.5, 1), (2, 31.5, 2), (2, 31.5, 2)];
    let j = joint(butt(25.0, 25.0, 25.0), 196.0, &rows);
    near(tearing_outer(&j, &s, &c), 345_450.0, 1e-6);
    near(shear_all(&j, &s, &c), 397_500.0, 100.0);
    near(bearing_all(&j, &s, &c), 511_875.0, 1e-6);
    near(plate_cut(&j, &s, &c, Some(2)), 326_065.0, 10.0);
    near(solid(&j, &s), 411_600.0, 1e-6);
    near(efficiency(&j, &s, &c), 0.792, 5e-4);
    // Exercise 4: 62.6 %.
    let s = stresses(115.0, 80.0, 160.0);
    let j = joint(butt(12.0, 12.0, 12.0), 80.0, &[(1, 18.0, 2), (1, 18.0, 2)]);
    near(efficiency(&j, &s, &c), 0.626, 5e-4);
}

#[test]
fn khurmi_gupta_ties() {
    // Khurmi & Gupta, Example 9.11, lozenge 1-2-2: 178 500, 198 300, 280 900, 206 500, 215 000 N, 89.25 %.
    let s = stresses(80.0, 65.0, 160.0);
    let c = counted(1.75);
    let rows = [(1, 21.5, 2), (2, 21.5, 2), (2, 21.5, 2)];
    let j = joint(butt(12.5, 12.5, 12.5), 200.0, &rows);
    near(plate_cut(&j, &s, &c, Some(1)), 178_500.0, 1e-6);
    near(plate_cut(&j, &s, &c, Some(2)), 198_300.0, 10.0);
    near(plate_cut(&j, &s, &c, Some(3)), 280_900.0, 20.0);
    near(shear_all(&j, &s, &c), 206_500.0, 20.0);
    near(bearing_all(&j, &s, &c), 215_000.0, 1e-6);
    near(efficiency(&j, &s, &c), 0.8925, 5e-5);
    // Example 9.13, lap 1-3-1: 195 440, 181 225, 214 525, 255 000 N, 80.9 %.
    let s = stresses(112.0, 84.0, 200.0);
    let rows = [(1, 25.5, 1), (3, 25.5, 1), (1, 25.5, 1)];
    let j = joint(lap(10.0), 200.0, &rows);
    near(plate_cut(&j, &s, &c, Some(1)), 195_440.0, 1e-6);
    near(plate_cut(&j, &s, &c, Some(2)), 181_225.0, 10.0);
    near(shear_all(&j, &s, &c), 214_525.0, 30.0);
    near(bearing_all(&j, &s, &c), 255_000.0, 1e-6);
    near(efficiency(&j, &s, &c), 0.809, 5e-4);
}

#[test]
fn other_metric_textbooks() {
    // Bhandari, Design of Machine Elements, Example 8.22: shear governs, 79.52 %.
    let c = counted(1.875);
    let s = stresses(80.0, 60.0, 1e6);
    let rows = [(1, 30.0, 2), (2, 30.0, 2)];
    let j = joint(butt(25.0, 25.0, 25.0), 150.0, &rows);
    near(100.0 * shear_all(&j, &s, &c) / solid(&j, &s), 79.52, 5e-3);
    // Bhandari, Example 8.20, lozenge 1-2-3: 89.2 %.
    let s = stresses(80.0, 60.0, 120.0);
    let rows = [(1, 27.0, 2), (2, 27.0, 2), (3, 27.0, 2)];
    let j = joint(butt(20.0, 20.0, 20.0), 250.0, &rows);
    near(efficiency(&j, &s, &c), 0.892, 5e-5);
    // Sadhu Singh, Machine Design-I, Example 5.7 (p. 155): 28 380, 28 628, 24 300, 46 200 N, 52.6 %.
    let s = stresses(220.0, 100.0, 150.0);
    let j = joint(lap(6.0), 35.0, &[(1, 13.5, 1), (1, 13.5, 1)]);
    near(tearing_outer(&j, &s, &c), 28_380.0, 1e-6);
    near(shear_all(&j, &s, &c), 28_628.0, 1.0);
    near(bearing_all(&j, &s, &c), 24_300.0, 1e-6);
    near(solid(&j, &s), 46_200.0, 1e-6);
    near(efficiency(&j, &s, &c), 0.526, 5e-4);
    // Sarkar, Strength of Materials, Problem 16.6 (p. 370), ultimate: 276 480 N.
    let c = counted(2.0);
    let s = stresses(460.0, 320.0, 640.0);
    let j = joint(butt(12.0, 12.0, 12.0), 80.0, &[(1, 18.0, 2), (1, 18.0, 2)]);
    near(weakest(&j, &s, &c), 276_480.0, 1e-6);
    // Jindal, Machine Design, Example 11-4 (p. 323), lozenge 1-2-3: 225 280, 232 960, 279 040 N, 88 %.
    let c = counted(1.875);
    let s = stresses(80.0, 60.0, 100.0);
    let rows = [(1, 24.0, 2), (2, 24.0, 2), (3, 24.0, 2)];
    let j = joint(butt(16.0, 16.0, 16.0), 200.0, &rows);
    near(plate_cut(&j, &s, &c, Some(1)), 225_280.0, 1e-6);
    near(plate_cut(&j, &s, &c, Some(2)), 232_960.0, 1e-6);
    near(plate_cut(&j, &s, &c, Some(3)), 279_040.0, 1e-6);
    near(efficiency(&j, &s, &c), 0.88, 1e-9);
}

#[test]
fn textbooks_in_inches() {
    // Junnarkar, Mechanics of Structures, ch. 11, Example 1 (p. 424), ultimate, ton and inch: 71.4 %.
    let c = counted(2.0);
    let s = stresses(28.0, 20.0, 40.0);
    let j = joint(butt(0.625, 0.625, 0.625), 4.0, &[(1, 1.0, 2), (1, 1.0, 2)]);
    near(efficiency(&j, &s, &c), 0.714, 5e-4);
    // Junnarkar, Example 2: 36.1 and 40.2 %.
    let s = stresses(8.0, 6.0, 10.0);
    let j = joint(lap(0.5), 2.5, &[(1, 0.875, 1)]);
    near(efficiency(&j, &s, &c), 0.361, 5e-4);
    let j = joint(lap(0.5), 3.5, &[(1, 1.125, 1)]);
    near(efficiency(&j, &s, &c), 0.402, 5e-4);
    // Junnarkar, Example 7, lozenge 1-2-3-3: 48.75, 49.5, 56.29, 74.33 ton, 90.3 %.
    let s = stresses(8.0, 5.0, 10.0);
    let rows = [(1, 0.875, 2), (2, 0.875, 2), (3, 0.875, 2), (3, 0.875, 2)];
    let j = joint(butt(0.75, 0.75, 0.75), 9.0, &rows);
    near(plate_cut(&j, &s, &c, Some(1)), 48.75, 1e-9);
    // Shear is the outer rivets' fate in the print (0.6013 x 10 ton, against 6.5625 in bearing).
    near(plate_cut(&j, &s, &c, Some(2)), 49.5, 0.05);
    near(plate_cut(&j, &s, &c, Some(3)), 56.29, 5e-3);
    near(plate_cut(&j, &s, &c, Some(4)), 74.33, 5e-3);
    near(efficiency(&j, &s, &c), 0.903, 5e-4);
    // Levinson, Statics and Strength of Materials, Example 15.3 (p. 397), psi: 62.5 %.
    let s = stresses(18_000.0, 15_000.0, 32_000.0);
    let j = joint(lap(0.125), 1.0, &[(1, 0.375, 1)]);
    near(efficiency(&j, &s, &c), 0.625, 1e-9);
}

#[test]
fn us_code_laps() {
    let s = stresses(55_000.0, 44_000.0, 95_000.0);
    let c = counted(2.0);
    // US boiler code 1914, appendix, single lap: 22 343, 12 890, 16 332, 16 328 lb, 0.576 (truncated).
    let j = joint(lap(0.25), 1.625, &[(1, 0.6875, 1)]);
    near(solid(&j, &s), 22_343.0, 1.0);
    near(tearing_outer(&j, &s, &c), 12_890.0, 1.0);
    near(shear_all(&j, &s, &c), 16_332.0, 3.0);
    near(bearing_all(&j, &s, &c), 16_328.0, 1.0);
    near(efficiency(&j, &s, &c), 0.576, 1e-3);
    // The same, double lap: 49 414, 36 523, 38 878, 44 531 lb, 0.739.
    let j = joint(lap(0.3125), 2.875, &[(1, 0.75, 1), (1, 0.75, 1)]);
    near(solid(&j, &s), 49_414.0, 1.0);
    near(tearing_outer(&j, &s, &c), 36_523.0, 1.0);
    near(shear_all(&j, &s, &c), 38_878.0, 3.0);
    near(bearing_all(&j, &s, &c), 44_531.0, 1.0);
    near(efficiency(&j, &s, &c), 0.739, 1e-3);
    // California Title 8, s. 796, single laps, rows 3, 5, 10, 11: 60.0, 57.0, 53.0, 52.8 %.
    let rows = [
        (0.3125, 0.75, 1.875, 60.0),
        (0.375, 0.8125, 1.9375, 57.0),
        (0.5625, 1.0625, 2.375, 53.0),
        (0.59375, 1.0625, 2.25, 52.8),
    ];
    for (t, d, p, printed) in rows {
        let j = joint(lap(t), p, &[(1, d, 1)]);
        near(100.0 * efficiency(&j, &s, &c), printed, 0.1);
    }
    // Laying Out for Boiler Makers and Sheet Metal Workers, p. 33, treble lap: 103 359, 78 750 lb, 76 %.
    let s = stresses(60_000.0, 42_000.0, 95_000.0);
    let d = 0.9375;
    let rows = [(1, d, 1), (1, d, 1), (1, d, 1)];
    let j = joint(lap(0.4375), 3.9375, &rows);
    near(solid(&j, &s), 103_359.0, 1.0);
    near(tearing_outer(&j, &s, &c), 78_750.0, 1.0);
    near(efficiency(&j, &s, &c), 0.76, 5e-3);
}

#[test]
fn us_code_butts() {
    let s = stresses(55_000.0, 44_000.0, 95_000.0);
    let c = counted(2.0);
    let within = 6.0; // lb: the code's rivet areas have four figures
    // US boiler code 1914, appendix, double butt: A 100 547, B 82 500, C 132 286, lesser of D and E 90 429 lb, 0.82.
    let d = 0.875;
    let j = joint(butt(0.375, 0.3125, 0.3125), 4.875, &[(1, d, 1), (2, d, 2)]);
    near(solid(&j, &s), 100_547.0, 1.0);
    near(tearing_outer(&j, &s, &c), 82_500.0, 1.0);
    near(shear_all(&j, &s, &c), 132_286.0, within);
    near(plate_cut(&j, &s, &c, Some(2)), 90_429.0, 1.0);
    // F 88 320: plate crushed at the inner rivets, strap at the outer one: nothing torn.
    near(plate_cut(&j, &s, &c, None), 88_320.0, 1.0);
    near(tearing_outer(&j, &s, &c) / solid(&j, &s), 0.82, 1e-3);
    // The same, treble butt: A 134 062, B 117 304, C 205 326, lesser of D and E 123 360, of F and G 138 595 lb, 0.875.
    let d = 0.8125;
    let rows = [(1, d, 1), (2, d, 2), (2, d, 2)];
    let j = joint(butt(0.375, 0.3125, 0.3125), 6.5, &rows);
    near(solid(&j, &s), 134_062.0, 1.0);
    near(tearing_outer(&j, &s, &c), 117_304.0, 1.0);
    near(shear_all(&j, &s, &c), 205_326.0, within);
    near(plate_cut(&j, &s, &c, Some(2)), 123_360.0, within);
    near(plate_cut(&j, &s, &c, None), 138_595.0, within);
    near(tearing_outer(&j, &s, &c) / solid(&j, &s), 0.875, 1e-9);
    // The same, quadruple butt: A 412 500, B 386 718, C 577 091, D 391 310, E 400 494, I 447 369 lb, 0.937.
    let d = 0.9375;
    let rows = [(1, d, 1), (2, d, 1), (4, d, 2), (4, d, 2)];
    let j = joint(butt(0.5, 0.4375, 0.4375), 15.0, &rows);
    near(solid(&j, &s), 412_500.0, 1.0);
    near(tearing_outer(&j, &s, &c), 386_718.0, 1.0);
    near(shear_all(&j, &s, &c), 577_091.0, 2.0 * within);
    near(plate_cut(&j, &s, &c, Some(2)), 391_310.0, within);
    near(plate_cut(&j, &s, &c, Some(3)), 400_494.0, within);
    near(plate_cut(&j, &s, &c, None), 447_369.0, within);
    near(tearing_outer(&j, &s, &c) / solid(&j, &s), 0.937, 1e-3);
}

#[test]
fn measured_thickness() {
    // Case X8 of the invented ones: a double lap at 0.50, 0.45 and 0.40 in, radius 24 in, factor of safety 5.
    let s = stresses(55_000.0, 44_000.0, 95_000.0);
    let c = counted(2.0);
    for (t, psi) in [(0.50, 144.6), (0.45, 144.6), (0.40, 134.2)] {
        let j = joint(lap(t), 3.5, &[(1, 0.9375, 1), (1, 0.9375, 1)]);
        near(weakest(&j, &s, &c) / 3.5 / (24.0 * 5.0), psi, 0.05);
    }
    let j = joint(lap(0.5), 3.5, &[(1, 0.9375, 1), (1, 0.9375, 1)]);
    near(efficiency(&j, &s, &c), 0.6311, 5e-5);
    let j = joint(lap(0.45), 3.5, &[(1, 0.9375, 1), (1, 0.9375, 1)]);
    near(efficiency(&j, &s, &c), 0.7012, 5e-5);
}
