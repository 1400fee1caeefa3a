//! Worst cases over tolerances against the independent reference model, at random and densely along the hole.

mod generate;

use generate::{Counting, Reach, Stated, config, counting, stated};
use proptest::prelude::*;
use seamwright::joint::JointKind;
use seamwright::quantities::Length;
use seamwright::sensitivity::Tolerances;
use seamwright::sensitivity::tolerance::{Target, worst_case};
use seamwright_reference as reference;

fn mm(x: f64) -> Length {
    Length::mm(x)
}

/// Efficiency and strength per length by the reference model, the dimensions moved.
fn by_reference(s: &Stated, c: &Counting, [a, b, n, p, d]: [f64; 5]) -> (f64, f64) {
    let form = match s.form.kind() {
        JointKind::Lap => reference::Form::Lap { plates: [s.plate + a, s.other + b] },
        JointKind::SingleStrap => reference::Form::Butt { plate: s.plate + a, wide: s.other + b, narrow: None },
        JointKind::DoubleStrap => {
            reference::Form::Butt { plate: s.plate + a, wide: s.other + b, narrow: Some(s.narrow + n) }
        }
    };
    let row = |r: &generate::StatedRow| reference::Row {
        rivets: u32::from(r.rivets),
        hole: r.hole + d,
        rivet: if r.rivet == r.hole { r.rivet + d } else { r.rivet },
        planes: u32::from(r.planes),
    };
    let joint = reference::Joint { form, strip: s.strip + p, rows: s.rows.iter().map(row).collect() };
    let stresses = reference::Stresses {
        plate_tension: s.tension[0],
        other_tension: s.tension[1],
        shear: s.shear,
        plate_bearing: s.bearing[0],
        other_bearing: s.bearing[1],
    };
    let diameter = |rivet: bool| if rivet { reference::Diameter::Rivet } else { reference::Diameter::Hole };
    let convention = reference::Convention {
        double: c.double,
        one_plane: if c.lone { 1.0 } else { c.double / 2.0 },
        tear: diameter(c.tear),
        tear_allowance: c.allowance,
        shear: diameter(c.shear),
        bearing: diameter(c.bearing),
    };
    let eta = reference::efficiency(&joint, &stresses, &convention);
    (eta, reference::weakest(&joint, &stresses, &convention) / joint.strip)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: config().cases / 8, ..config() })]

    #[test]
    fn the_reference_finds_nothing_worse(s in stated(Reach::Usual, 4, 0.0), c in counting(0.0),
                                         share in prop::array::uniform4(0.0..0.05_f64),
                                         at in prop::collection::vec(prop::array::uniform5(-1.0..1.0_f64), 60)) {
        let least = s.rows.iter().map(|r| r.hole).fold(f64::INFINITY, f64::min);
        let [plate, straps] = [share[0] * s.plate.min(s.other), share[1] * s.other.min(s.narrow.max(0.5))];
        let (pitch, hole) = (share[2] * s.strip, share[3] * least);
        let by = [plate, if s.form.kind() == JointKind::Lap { plate } else { straps }, straps, pitch, hole];
        let given = Tolerances::none().plate(mm(plate)).straps(mm(straps)).hole(mm(hole)).pitch(mm(pitch));
        let (joint, materials, rules) = (s.joint(), s.materials(), c.rules());
        let least_of = |m: Target| worst_case(&joint, &materials, &rules, &given, m).ok();
        let (Some(eta), Some(strength)) = (least_of(Target::Efficiency), least_of(Target::Strength)) else {
            return Ok(());
        };
        let grid = (0..16).flat_map(|ends| (0..=24).map(move |k| {
            let end = |bit: u8| if ends >> bit & 1 == 1 { 1.0 } else { -1.0 };
            [end(0), end(1), end(2), end(3), f64::from(k) / 12.0 - 1.0]
        }));
        for point in at.into_iter().chain(grid) {
            let mut moved = [0.0; 5];
            for i in 0..5 {
                moved[i] = point[i] * by[i];
            }
            let (e, p) = by_reference(&s, &c, moved);
            prop_assert!(eta.worst.value * (1.0 - 1e-8) <= e, "{} {} {:?}", eta.worst.value, e, moved);
            prop_assert!(strength.worst.value * (1.0 - 1e-8) <= p, "{} {} {:?}", strength.worst.value, p, moved);
        }
        let [a, b, n, d, p] = eta.worst.deviation;
        let there = by_reference(&s, &c, [a, b, n, p, d]).0;
        prop_assert!((there - eta.worst.value).abs() <= 1e-7 * there, "{} {}", there, eta.worst.value);
    }
}
