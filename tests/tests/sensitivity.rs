//! Slopes against differences of the plain check, and worst cases against sampling.

mod generate;

use generate::{Reach, counting, stated};
use proptest::prelude::*;
use seamwright::check::check;
use seamwright::error::ErrorKind;
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{Entry, METRIC, Rules};
use seamwright::sensitivity::tolerance::worst_case;
use seamwright::sensitivity::{Input, Target, Tolerances, slopes};
use seamwright::step::{Name, Quantity as Q};

fn mm(x: f64) -> Length {
    Length::mm(x)
}

fn given(q: Q, row: u8) -> Input {
    Input::Given(Name(q, row))
}

/// Khurmi and Gupta, Example 9.2: tearing and bearing are equal, (50-20) 6 120 = 20 6 180 = 21 600 N.
#[test]
fn at_a_change_of_mode_each_side_has_its_own_slope() {
    let joint = JointSpec::new(Form::lap(1).unwrap(), mm(50.0), mm(6.0), mm(20.0)).build().unwrap();
    let steel = Materials::new(Stress::mpa(120.0), Stress::mpa(90.0)).bearing(Stress::mpa(180.0));
    let found = slopes(&joint, &steel, &METRIC.rules).unwrap();
    let hole = found.of(given(Q::Hole, 1)).unwrap();
    // A larger hole tears: -1/50. A smaller one crushes: 6 180/(50 6 120).
    assert!((hole.efficiency.right + 1.0 / 50.0).abs() < 1e-15, "{hole:?}");
    assert!((hole.efficiency.left - 180.0 / (50.0 * 120.0)).abs() < 1e-15, "{hole:?}");
    assert!(hole.efficiency.has_kink() && hole.mode_changes());
    // The strength of 50 mm of seam, N/mm.
    assert!((hole.strength.right + 6.0 * 120.0 / 50.0).abs() < 1e-12);
    // Both grow alike with the thickness: no kink, and no change of the efficiency.
    let plate = found.of(given(Q::Plate, 0)).unwrap();
    assert!(!plate.strength.has_kink() && plate.efficiency.right.abs() < 1e-15);
    let mut table = String::new();
    found.write_table(&mut table).unwrap();
    assert!(table.contains("| hole diameter, row 1, mm | 20.0000 |"), "{table}");
}

/// Double shear governs: its factor is in proportion, and so is the stress.
#[test]
fn figures_of_the_book_have_slopes_too() {
    let joint = JointSpec::new(Form::double_strap(1).unwrap(), mm(90.0), mm(12.0), mm(18.0)).build().unwrap();
    let steel = Materials::new(Stress::mpa(100.0), Stress::mpa(60.0)).bearing(Stress::mpa(300.0));
    let rules = METRIC.rules.with(Entry::DOUBLE_SHEAR, 1.875).unwrap();
    let found = slopes(&joint, &steel, &rules).unwrap();
    let factor = found.of(Input::Rule(Entry::DOUBLE_SHEAR.no())).unwrap();
    assert!((factor.relative(found.efficiencies[0]).right - 1.0).abs() < 1e-12, "{factor:?}");
    let shear = found.of(given(Q::Shear, 0)).unwrap();
    assert!((shear.relative(found.efficiencies[0]).left - 1.0).abs() < 1e-12);
}

/// The joint with one input moved; `None` for what is no dimension or stress of it.
fn moved(s: &generate::Stated, input: Input, by: f64) -> Option<generate::Stated> {
    let mut s = s.clone();
    let Input::Given(Name(q, row)) = input else { return None };
    let alike = s.form.kind() == JointKind::Lap && s.other == s.plate;
    let same = s.tension[0] == s.tension[1] && s.bearing[0] == s.bearing[1];
    match q {
        Q::Plate => {
            s.plate += by;
            if alike {
                s.other += by;
            }
        }
        Q::OtherPlate => s.other += by,
        Q::Narrow => s.narrow += by,
        Q::Pitch => s.strip += by,
        Q::Margin => s.margin += by,
        Q::RowGap => s.back[usize::from(row) - 1] += by,
        Q::Hole | Q::Rivet => {
            let at = usize::from(row) - 1;
            let first = s.rows[at];
            for r in s.rows[at..].iter_mut() {
                if (r.hole, r.rivet) != (first.hole, first.rivet) {
                    break;
                }
                let (hole, rivet) = (r.hole, r.rivet);
                if q == Q::Hole {
                    r.hole += by;
                }
                if q == Q::Rivet || rivet == hole {
                    r.rivet += by;
                }
            }
        }
        Q::Tension => {
            s.tension[0] += by;
            if same {
                s.tension[1] += by;
            }
        }
        Q::OtherTension => s.tension[1] += by,
        Q::Shear => s.shear += by,
        Q::Bearing => {
            s.bearing[0] = s.bearing[0].map(|b| b + by);
            if same {
                s.bearing[1] = s.bearing[1].map(|b| b + by);
            }
        }
        Q::OtherBearing => s.bearing[1] = s.bearing[1].map(|b| b + by),
        _ => return None,
    }
    Some(s)
}

proptest! {
    #![proptest_config(generate::config())]

    /// To each side, the slope is what a small step to that side does.
    #[test]
    fn slopes_are_what_small_steps_do(s in stated(Reach::Usual, 4, 0.0), c in counting(0.0)) {
        let (joint, materials, rules) = (s.joint(), s.materials(), c.rules());
        let Ok(plain) = check(&joint, &materials, &rules) else { return Ok(()) };
        let found = slopes(&joint, &materials, &rules).unwrap();
        prop_assert_eq!(found.efficiencies, [plain.efficiency, plain.book_efficiency, plain.credited]);
        for line in &found.lines {
            for (sign, side) in [(-1.0, 0), (1.0, 1)] {
                let step = 1e-6 * line.value;
                let at = |k: f64| -> Option<[f64; 2]> {
                    let s = moved(&s, line.input, sign * k * step)?;
                    let joint = s.build().ok()?;
                    let a = check(&joint, &s.materials(), &rules).ok()?;
                    Some([a.efficiency, a.book_efficiency])
                };
                // Two steps: where they disagree a mode changes between them, and nothing can be said.
                let (Some(near), Some(far)) = (at(1.0), at(2.0)) else { continue };
                for (i, slope) in [line.efficiency, line.book_efficiency].iter().enumerate() {
                    let own = [slope.left, slope.right][side];
                    let here = found.efficiencies[i];
                    let (first, second) = ((near[i] - here) / (sign * step), (far[i] - near[i]) / (sign * step));
                    let scale = here.abs() / line.value + own.abs();
                    if (first - second).abs() <= 1e-4 * scale {
                        prop_assert!((first - own).abs() <= 1e-3 * scale, "{:?} {side}: {own} {first} {second}", line);
                    }
                }
            }
        }
    }

    /// No joint within the tolerances is worse than the worst case, and the worst case is one of them.
    #[test]
    fn nothing_within_the_tolerances_is_worse(
        s in stated(Reach::Usual, 4, 0.0),
        c in counting(0.0),
        spans in prop::array::uniform4(0.0_f64..0.05),
        places in prop::collection::vec(prop::array::uniform5(-1.0_f64..=1.0), 60),
        what in 0_u8..3,
    ) {
        let (joint, materials, rules) = (s.joint(), s.materials(), c.rules());
        prop_assume!(check(&joint, &materials, &rules).is_ok());
        let [plate, straps, hole, pitch] = spans;
        let least_hole = s.rows.iter().map(|r| r.hole).fold(f64::MAX, f64::min);
        let thinnest = s.other.min(if s.narrow > 0.0 { s.narrow } else { s.other });
        let (plate, straps, hole, pitch) = (plate * s.plate.min(s.other), straps * thinnest, hole * least_hole, pitch * s.strip);
        let t = Tolerances::none().plate(mm(plate)).straps(mm(straps)).hole(mm(hole)).pitch(mm(pitch));
        let measure = [Target::Efficiency, Target::BookEfficiency, Target::Strength][usize::from(what)];
        let found = match worst_case(&joint, &materials, &rules, &t, measure) {
            Ok(found) => found,
            Err(e) => {
                prop_assert!(matches!(e.kind, ErrorKind::HolesFillPitch | ErrorKind::RivetExceedsHole), "{e}");
                return Ok(());
            }
        };
        let value = |u: &[f64; 5]| -> Option<f64> {
            let mut s = s.clone();
        s.plate += u[0];
            s.other += u[1];
            s.narrow += u[2];
            for r in &mut s.rows {
                if r.rivet == r.hole {
                    r.rivet += u[3];
                }
                r.hole += u[3];
            }
            s.strip += u[4];
            let a = check(&s.build().ok()?, &s.materials(), &rules).ok()?;
            Some(match measure {
                Target::Efficiency => a.efficiency,
                Target::BookEfficiency => a.book_efficiency,
                Target::Strength => a.governing.strength / s.strip,
            })
        };
        // The worst case is attained.
        if let Some(there) = value(&found.worst.deviation) {
            prop_assert!((there - found.worst.value).abs() <= 1e-9 * there.abs(), "{there} {found:?}");
        }
        let other = if s.form.kind() == JointKind::Lap { plate } else { straps };
        for u in &places {
            let at = [u[0] * plate, u[1] * other, u[2] * straps, u[3] * hole, u[4] * pitch];
            if let Some(there) = value(&at) {
                prop_assert!(there >= found.worst.value * (1.0 - 1e-9), "{there} at {at:?}: {found:?}");
            }
        }
        for alone in found.alone {
            prop_assert!(alone >= found.worst.value * (1.0 - 1e-9) && alone <= found.stated * (1.0 + 1e-9));
        }
        prop_assert!(found.exact);
    }
}

/// Rows 1-2-4-4, of which two in single shear: the least efficiency lies inside the tolerance of the hole.
fn interior() -> (Joint, Materials, Rules) {
    let rows = [(1, 1), (2, 1), (4, 2), (4, 2)];
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &rows).unwrap();
    let joint = JointSpec::new(form, mm(148.0), mm(24.0), mm(23.0)).build().unwrap();
    let steel = Materials::new(Stress::mpa(110.0), Stress::mpa(98.0)).bearing(Stress::mpa(400.0));
    (joint, steel, METRIC.rules)
}

/// By hand: row 3 tears while rows 1 and 2 shear. `t st (p - 4 d) + 3 pi/4 d^2 s` is least at `d = 4 t st/(1.5 pi s)`.
#[test]
fn the_worst_hole_may_lie_inside_its_tolerance() {
    let (joint, steel, rules) = interior();
    let drill = Tolerances::none().hole(mm(1.0));
    let found = worst_case(&joint, &steel, &rules, &drill, Target::Efficiency).unwrap();
    let pi = std::f64::consts::PI;
    let by_hand = |d: f64| {
        let strength = 24.0 * 110.0 * (148.0 - 4.0 * d) + 3.0 * pi / 4.0 * d * d * 98.0;
        strength / (148.0 * 24.0 * 110.0)
    };
    let worst = 4.0 * 24.0 * 110.0 / (1.5 * pi * 98.0); // 22.867 mm
    assert!((23.0 + found.worst.deviation[3] - worst).abs() < 1e-5, "{found:?}");
    assert!((found.worst.value - by_hand(worst)).abs() < 1e-12, "{found:?}");
    assert!(found.hole_inside(&drill) && found.exact);
    assert!(by_hand(22.0) > found.worst.value && by_hand(24.0) > found.worst.value);
    // The ends alone would say less is lost.
    let at = |d: f64| {
        let spec = JointSpec::new(*joint.form(), mm(148.0), mm(24.0), mm(d));
        check(&spec.build().unwrap(), &steel, &rules).unwrap().efficiency
    };
    assert!((at(22.0) - by_hand(22.0)).abs() < 1e-12 && (at(24.0) - by_hand(24.0)).abs() < 1e-12);
}

#[test]
fn close_rows_are_searched_and_said_not_to_be_proved() {
    let (_, steel, rules) = interior();
    let rules = rules.with(Entry::CLOSE_ROWS, 2.0).unwrap();
    let form = Form::lap(2).unwrap();
    let joint = JointSpec::new(form, mm(70.0), mm(12.0), mm(21.0)).back_pitch(1, mm(30.0)).build().unwrap();
    let t = Tolerances::none().hole(mm(0.5)).pitch(mm(2.0)).plate(mm(0.3));
    assert!(!worst_case(&joint, &steel, &rules, &t, Target::Efficiency).unwrap().exact);
}

#[test]
fn tolerances_that_make_no_sense_are_refused() {
    let (joint, steel, rules) = interior();
    let kind = |t: Tolerances| worst_case(&joint, &steel, &rules, &t, Target::Efficiency).unwrap_err().kind;
    let none = Tolerances::none();
    assert_eq!(kind(none.hole(mm(f64::NAN))), ErrorKind::NotFinite);
    assert_eq!(kind(none.plate(mm(-0.1))), ErrorKind::TooSmall);
    assert_eq!(kind(none.plate(mm(24.0))), ErrorKind::TooLarge);
    assert_eq!(kind(none.pitch(mm(60.0))), ErrorKind::HolesFillPitch);
    let tight = JointSpec::new(Form::lap(1).unwrap(), mm(60.0), mm(10.0), mm(20.0)).rivet(mm(19.5)).build().unwrap();
    let too_tight = worst_case(&tight, &steel, &rules, &none.hole(mm(0.6)), Target::Strength).unwrap_err();
    assert_eq!(too_tight.kind, ErrorKind::RivetExceedsHole);
    let exact = worst_case(&joint, &steel, &rules, &none, Target::Efficiency).unwrap();
    assert_eq!((exact.ratio(), exact.worst.value), (1.0, exact.stated));
}
