//! Every routine on numbers that carry a derivative: the same values bit for bit, and the right slopes.

mod generate;

use std::ops::{Add, Div, Mul, Sub};

use generate::{Reach, Stated, any_book, brief, config, set, stated};
use proptest::prelude::*;
use seamwright::check::{Analysis, check, check_with};
use seamwright::formula;
use seamwright::given::Given;
use seamwright::group::{
    Group, GroupCheck, GroupLoad, GroupStress, check_group, check_group_with, size_group, size_group_with,
};
use seamwright::joint::{Form, Joint, JointSpec};
use seamwright::materials::Materials;
use seamwright::modes::{Lens, Strengths, letters, prescribed_gaps};
use seamwright::proportion::{self, Covered, Limit, Strap};
use seamwright::quantities::{Force, Length, Moment, Pressure, Stress};
use seamwright::rating::{Existing, Footing, KnownLength, Shell, rate, rate_with};
use seamwright::rules::{Entry, METRIC, Rules};
use seamwright::sizing::{Brief, size, size_with};
use seamwright::step::{Ctx, Name, Num, Plain, Quantity as Q, Why};
use seamwright::vessel::{GirthBrief, GirthPlace, Outcome, PlateStock, VesselBrief, vessel, vessel_with};

/// A value and its slope along one chosen input.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Dual {
    v: f64,
    d: f64,
}

impl Add for Dual {
    type Output = Dual;
    fn add(self, o: Dual) -> Dual {
        Dual { v: self.v + o.v, d: self.d + o.d }
    }
}
impl Sub for Dual {
    type Output = Dual;
    fn sub(self, o: Dual) -> Dual {
        Dual { v: self.v - o.v, d: self.d - o.d }
    }
}
impl Mul for Dual {
    type Output = Dual;
    fn mul(self, o: Dual) -> Dual {
        Dual { v: self.v * o.v, d: self.d * o.v + self.v * o.d }
    }
}
impl Div for Dual {
    type Output = Dual;
    fn div(self, o: Dual) -> Dual {
        let v = self.v / o.v;
        Dual { v, d: (self.d - v * o.d) / o.v }
    }
}
impl Num for Dual {
    fn lit(c: f64) -> Dual {
        Dual { v: c, d: 0.0 }
    }
    fn value(self) -> f64 {
        self.v
    }
    fn sqrt(self) -> Dual {
        let v = Num::sqrt(self.v);
        Dual { v, d: self.d / (2.0 * v) }
    }
}

/// Slopes along what the user gave under one name, in all rows alike.
#[derive(Clone, Copy)]
struct Along(Q);

impl Ctx for Along {
    type N = Dual;
    fn leaf(self, name: Name, why: Why, x: f64) -> Dual {
        Dual { v: x, d: f64::from(u8::from(why == Why::Given && name.0 == self.0)) }
    }
    fn close(self, _: Name, _: Why, e: Dual) -> Dual {
        e
    }
    fn choice(self, _: Name, _: Why, taken: Dual, _: Dual) -> Dual {
        taken
    }
}

const INPUTS: [Q; 6] = [Q::Plate, Q::Pitch, Q::Hole, Q::Tension, Q::Shear, Q::Bearing];

/// All figures of an analysis.
fn figures<N: Num>(a: &Analysis<N>) -> Vec<N> {
    let p = &a.percentages;
    let mut all = vec![a.solid, a.tear_outer, a.shear_all, a.governing.strength, a.runner_up.strength];
    all.extend([a.by_book.strength, a.efficiency, a.book_efficiency, a.credited, p.plate, p.rivet]);
    all.extend(a.bearing_all.into_iter().chain(p.combined));
    let (tearing, shearing, bearing) = a.classic_efficiencies();
    all.extend([tearing, shearing].into_iter().chain(bearing));
    all
}

/// All that the routines below `check_with` and `size_with` give, each called for itself.
fn pieces<C: Ctx>(c: C, joint: &Joint, materials: &Materials, rules: &Rules) -> Vec<C::N> {
    let form = joint.form();
    let given = Given::new(c, joint, materials);
    let mut all = vec![given.strip, given.plate, given.other, given.narrow, given.margin, given.shear];
    for lens in [Lens::Real, Lens::Book] {
        let s = Strengths::new(c, joint, &given, rules, lens);
        all.extend(s.modes().map(|m| m.strength));
        let (best, second) = s.weakest(|_| true).map_or((s.mode(Default::default()), None), |found| found);
        all.extend([best.strength, second.unwrap_or(best).strength, s.solid, s.tear_outer]);
        all.extend(letters(c, joint, &given, rules, &s).iter().map(|l| l.strength));
    }
    all.extend(prescribed_gaps(c, joint, &given, rules).map(|g| g.0));
    let limit = |l: Limit<C::N>| match l {
        Limit::At(x, _) => x,
        Limit::None | Limit::Unknown(_) => C::N::lit(-1.0),
    };
    let (d, t) = (given.diameter(rules, Entry::DISTANCE_DIAMETER, 1), given.plate);
    let planes = proportion::planes(c, rules, form);
    all.extend([planes, proportion::hole(c, rules, t, given.shear, given.bearing, planes).0]);
    all.extend([proportion::pitch_least(c, rules, form, d).0, limit(proportion::pitch_greatest(c, rules, form, t))]);
    all.extend([proportion::margin_least(c, rules, d), limit(proportion::margin_greatest(c, rules, d, t))]);
    let covered = Covered::new(form, &given, rules);
    for strap in [Strap::Wide, Strap::Narrow] {
        all.push(limit(proportion::strap_least(c, rules, form, strap, &covered)));
    }
    all
}

fn same_bits(plain: &[f64], dual: &[Dual]) -> Result<(), TestCaseError> {
    prop_assert_eq!(plain.len(), dual.len());
    for (i, (a, b)) in plain.iter().zip(dual).enumerate() {
        prop_assert_eq!(a.to_bits(), b.v.to_bits(), "no. {}: {} {}", i, a, b.v);
    }
    Ok(())
}

fn failed(e: seamwright::Error) -> TestCaseError {
    TestCaseError::fail(e.to_string())
}

/// The joint with one input moved by a share of itself. Where both plates are of one make, so is their change.
fn moved(s: &Stated, along: Q, share: f64) -> Stated {
    let mut m = s.clone();
    let k = 1.0 + share;
    let alike = s.tension[0] == s.tension[1] && s.bearing[0] == s.bearing[1];
    match along {
        Q::Plate => m.plate *= k,
        Q::Pitch => m.strip *= k,
        Q::Hole => m.rows.iter_mut().for_each(|r| r.hole *= k),
        Q::Shear => m.shear *= k,
        Q::Tension if alike => m.tension = m.tension.map(|x| x * k),
        Q::Tension => m.tension[0] *= k,
        Q::Bearing if alike => m.bearing = m.bearing.map(|b| b.map(|x| x * k)),
        _ => m.bearing[0] = m.bearing[0].map(|x| x * k),
    }
    m
}

fn value_of(s: &Stated, along: Q) -> f64 {
    match along {
        Q::Plate => s.plate,
        Q::Pitch => s.strip,
        Q::Hole => s.rows[0].hole,
        Q::Tension => s.tension[0],
        Q::Shear => s.shear,
        _ => s.bearing[0].unwrap_or(1.0),
    }
}

/// Slopes against central differences. Rows of unlike holes move by unlike lengths: only alike ones have one slope.
fn slopes_agree(s: &Stated, rules: &Rules, along: Q) -> Result<(), TestCaseError> {
    const SHARE: f64 = 1e-5;
    let slopes = check_with(Along(along), &s.joint(), &s.materials(), rules).map_err(failed)?;
    let at = |share: f64| check(&moved(s, along, share).build()?, &moved(s, along, share).materials(), rules);
    let (Ok(low), Ok(here), Ok(high)) = (at(-SHARE), at(0.0), at(SHARE)) else { return Ok(()) };
    let step = SHARE * value_of(s, along);
    let (low, here, high) = (figures(&low), figures(&here), figures(&high));
    for (i, slope) in figures(&slopes).iter().enumerate() {
        // In shares of the value per share of the input: the size that a slope has by nature.
        let scale = here[i].abs() / value_of(s, along) + slope.d.abs();
        let (left, right) = ((here[i] - low[i]) / step, (high[i] - here[i]) / step);
        // A kink or a jump: another mode, another fate, another plate has become the weaker within the step.
        if (left - right).abs() > 2e-4 * scale {
            continue;
        }
        let middle = (high[i] - low[i]) / (2.0 * step);
        prop_assert!((middle - slope.d).abs() <= 1e-6 * scale, "figure {}: {} against {}", i, slope.d, middle);
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn values_are_those_of_plain_numbers(s in stated(Reach::Usual, 6, 0.0), book in any_book(), close in 0..3_u8,
                                         out in prop::option::of(30.0..300.0)) {
        let s = Stated { shear_out: out, ..s };
        let rules = set(book.rules, &[(Entry::BEARING_CHECKED, 0.0), (Entry::CLOSE_ROWS, f64::from(close))]);
        let (joint, materials) = (s.joint(), s.materials());
        let plain = check(&joint, &materials, &rules).map_err(failed)?;
        for along in INPUTS {
            let dual = check_with(Along(along), &joint, &materials, &rules).map_err(failed)?;
            same_bits(&figures(&plain), &figures(&dual))?;
            prop_assert_eq!(format!("{:?}", plain.findings), format!("{:?}", dual.findings));
            prop_assert_eq!(plain.governing.cut, dual.governing.cut);
            prop_assert_eq!(plain.governing.fates, dual.governing.fates);
        }
        same_bits(&pieces(Plain, &joint, &materials, &rules), &pieces(Along(Q::Hole), &joint, &materials, &rules))?;
    }

    #[test]
    fn sizing_is_that_of_plain_numbers(b in brief(6), book in any_book()) {
        match (size(&b, &book.rules), size_with(Along(Q::Shear), &b, &book.rules)) {
            (Ok(plain), Ok(dual)) => {
                prop_assert_eq!(plain.joint, dual.joint);
                same_bits(&figures(&plain.analysis), &figures(&dual.analysis))?;
                let (p, d) = (&plain.pitch, &dual.pitch);
                same_bits(&[p.by_shear, p.by_weaker, p.by_all_modes, p.least, plain.margin],
                    &[d.by_shear, d.by_weaker, d.by_all_modes, d.least, dual.margin])?;
                same_bits(&plain.gaps.map(|g| g.0), &dual.gaps.map(|g| g.0))?;
                for (p, d) in plain.heads.iter().zip(&dual.heads) {
                    prop_assert_eq!((p.at_strap.is_some(), p.of_rows.is_some()), (d.at_strap.is_some(), d.of_rows.is_some()));
                    if let (Some(p), Some(d)) = (p.at_strap, d.at_strap) {
                        same_bits(&[p], &[d])?;
                    }
                    if let (Some(p), Some(d)) = (p.of_rows, d.of_rows) {
                        same_bits(&[p], &[d])?;
                    }
                }
                prop_assert_eq!((p.taken, p.decided, p.balance), (d.taken, d.decided, d.balance));
                prop_assert_eq!((plain.hole.hole, plain.hole.rivet), (dual.hole.hole, dual.hole.rivet));
            }
            (plain, dual) => prop_assert_eq!(format!("{:?}", plain.map(|_| ())), format!("{:?}", dual.map(|_| ()))),
        }
    }

    #[test]
    fn rating_and_vessels_are_those_of_plain_numbers(s in stated(Reach::Usual, 4, 0.0), book in any_book(),
        inside in 300.0..3000.0_f64, factor in 1.0..8.0_f64, shell_plate in 3.0..40.0_f64, pressure in 0.1..3.0_f64) {
        let f = |x: f64| KnownLength::given(Length::mm(x));
        let mut old = Existing::new(s.form, f(s.strip), f(s.plate), Length::mm(inside)).safety(factor)
            .tension(Stress::mpa(s.tension[0])).shear(Stress::mpa(s.shear)).bearing(Stress::mpa(300.0))
            .shell_plate(f(shell_plate)).present(Pressure::mpa(pressure)).wastage_rate(Length::mm(0.1));
        for (row, number) in s.rows.iter().zip(1..) {
            old = old.row(number, f(row.hole));
        }
        let (plain, dual) = (rate(&old, &book.rules), rate_with(Along(Q::Plate), &old, &book.rules));
        match (plain, dual) {
            (Ok(plain), Ok(dual)) => {
                same_bits(&figures(&plain.analysis), &figures(&dual.analysis))?;
                let all = |p: f64, m: Option<f64>, f: f64| [p, m.unwrap_or(0.0), f];
                let ours = all(plain.allowed, plain.margin, plain.seam.factor.value);
                let d = dual.values();
                prop_assert_eq!(ours.map(f64::to_bits), all(d.allowed, d.margin, d.seam.factor.value).map(f64::to_bits));
                prop_assert_eq!((plain.governs, plain.life), (d.governs, d.life));
                prop_assert_eq!(&plain.assumptions, &d.assumptions);
                prop_assert!(!d.assumptions.lost() && !d.findings.lost());
            }
            (plain, dual) => prop_assert_eq!(format!("{:?}", plain.map(|_| ())), format!("{:?}", dual.map(|_| ()))),
        }
        let stock = PlateStock::every(Length::mm(2.0), Length::mm(4.0), Length::mm(40.0));
        let shell = Shell::new(Length::mm(inside), Footing::Ultimate).safety(factor);
        let asked = VesselBrief::new(s.form, Pressure::mpa(pressure), shell, s.materials(), stock)
            .girth(GirthBrief::new(Form::lap(1).unwrap(), GirthPlace::Middle));
        let plain = vessel(&asked, &book.rules);
        let dual = vessel_with(Along(Q::Tension), &asked, &book.rules).map(Outcome::values);
        prop_assert_eq!(format!("{plain:?}"), format!("{dual:?}"));
    }

    #[test]
    fn slopes_are_central_differences(s in stated(Reach::Usual, 6, 0.0), book in any_book(), close in 0..3_u8) {
        let rules = set(book.rules, &[(Entry::BEARING_CHECKED, 0.0), (Entry::CLOSE_ROWS, f64::from(close))]);
        let alike = s.rows.iter().all(|r| r.hole == s.rows[0].hole);
        for along in INPUTS {
            if along != Q::Hole || alike {
                slopes_agree(&s, &rules, along)?;
            }
        }
    }

    /// A group on duals: the same bits, and the slopes along the load, which the forces follow in a straight line.
    #[test]
    fn groups(places in prop::sample::subsequence((0..20).collect::<Vec<i32>>(), 2..12), load in 1e3..1e5_f64,
        at in 100.0..900.0_f64, couple in -1e6..1e6_f64, unequal in any::<bool>(), sized in any::<bool>()) {
        let at_grid = |i: &i32| (Length::mm(80.0 * f64::from(i % 5)), Length::mm(80.0 * f64::from(i / 5)));
        let group = Group::at(&places.iter().map(at_grid).collect::<Vec<_>>()).map_err(failed)?.plate(Length::mm(9.0));
        let force = GroupLoad::force(Force::n(0.0), Force::n(-load), Length::mm(at), Length::mm(0.0));
        let force = force.and_couple(Moment::n_mm(couple));
        let stress = GroupStress::new(Stress::mpa(90.0)).bearing(Stress::mpa(150.0));
        let (plain, dual) = if sized {
            let plain = size_group(&group, &force, &stress, &METRIC.rules);
            let Ok(plain) = plain else { return Ok(()) };
            let dual = size_group_with(Along(Q::LoadY), &group, &force, &stress, &METRIC.rules).map_err(failed)?;
            same_bits(&[plain.by_shear, plain.needed], &[dual.by_shear, dual.needed])?;
            (plain.check, dual.check)
        } else {
            let group = group.hole(Length::mm(21.0));
            let group = if unequal { group.one(1, Length::mm(17.0), None).map_err(failed)? } else { group };
            let plain = check_group(&group, &force, &stress, &METRIC.rules).map_err(failed)?;
            (plain, check_group_with(Along(Q::LoadY), &group, &force, &stress, &METRIC.rules).map_err(failed)?)
        };
        let all = |c: &GroupCheck| vec![c.areas, c.polar, c.moment, c.used, c.shear.stress];
        let duals = [dual.areas, dual.polar, dual.moment, dual.used, dual.shear.stress];
        same_bits(&all(&plain), &duals)?;
        for (a, b) in plain.rivets().iter().zip(dual.rivets()) {
            same_bits(&[a.force[0], a.force[1], a.resultant, a.shear], &[b.force[0], b.force[1], b.resultant, b.shear])?;
            // Of the load's own share: F = P dF/dP + what the couple puts there, which has no slope.
            prop_assert!(b.direct[1].d.is_finite() && (b.direct[1].d * -load - b.direct[1].v).abs() <= 1e-9 * load);
        }
        prop_assert!((dual.moment.d * -load + couple - dual.moment.v).abs() <= 1e-9 * load * at + 1e-6);
    }

    #[test]
    fn formula_bodies(x in prop::array::uniform8(0.3..3.0_f64)) {
        for body in bodies() {
            let value = (body.plain)(&x);
            for i in 0..body.arity {
                let seeded: Vec<Dual> =
                    x.iter().enumerate().map(|(j, v)| Dual { v: *v, d: f64::from(u8::from(i == j)) }).collect();
                let dual = (body.dual)(&seeded);
                prop_assert_eq!(dual.v.to_bits(), value.to_bits(), "{}", body.name);
                let at = |h: f64| {
                    let mut y = x;
                    y[i] += h;
                    (body.plain)(&y)
                };
                let h = 1e-5;
                let (left, right) = ((value - at(-h)) / h, (at(h) - value) / h);
                let scale = value.abs() + dual.d.abs() + 1.0;
                // The clamped bodies have a kink, and a square root that sets out from nothing is steep.
                let smooth = (left - right).abs() <= 1e-3 * scale;
                prop_assert!(!smooth || (0.5 * (left + right) - dual.d).abs() <= 1e-6 * scale,
                    "{} by no. {}: {} against {}", body.name, i, dual.d, 0.5 * (left + right));
            }
        }
    }
}

struct Body {
    name: &'static str,
    arity: usize,
    plain: fn(&[f64]) -> f64,
    dual: fn(&[Dual]) -> Dual,
}

macro_rules! bodies {
    ($($name:ident($($i:literal)*);)*) => {
        /// Every formula body of the library, on plain numbers and on duals.
        fn bodies() -> Vec<Body> {
            vec![$(Body {
                name: stringify!($name),
                arity: [$($i),*].len(),
                plain: |x| formula::$name($(x[$i]),*),
                dual: |x| formula::$name($(x[$i]),*),
            }),*]
        }
    };
}

bodies! {
    balanced_pitch(0 1 2 3 4 5); least_pitch(0 1 2 3 4); greatest_pitch(0 1 2);
    crowded_holes(0 1); gap_ratio(0 1); deducted(0 1); net_section(0 1 2 3 4); zigzag_gain(0 1 2);
    zigzag_net_section(0 1 2 3 4 5 6 7); solid(0 1 2); cut_strength(0 1); even_share(0 1 2); efficiency(0 1); strength_per_length(0 1);
    plate_percentage(0 1 2); combined_percentage(0 1 2 3);
    hole_by_root(0 1 2); hole_by_bearing(0 1 2 3); single_shear(0 1); double_shear(0 1 2); plane_shear(0 1 2); half(0);
    safety_ratio(0 1); bearing(0 1 2); shear_out(0 1 2 3); row_hold(0 1); rivet_percentage(0 1 2 3 4 5 6 7);
    row_distance(0 1 2 3 4 5); row_distance_diagonal(0 1 2 3 4); gauge(0 1); margin(0 1 2); times(0 1);
    strap_share(0 1 2); strap_thickened(0 1 2 3 4 5); row_pitch(0 1); mean(0 1);
    head_beside_strap(0 1); heads_apart(0 1 2);
    allowance_sum(0 1); half_diameter(0); radius_share(0 1); outside_radius(0 1); safety_sum(0 1); ratio(0 1);
    pressure_inside(0 1 2 3 4 5); pressure_thirty_seconds(0 1 2 3 4 5); pressure_radius(0 1 2 3 4 5);
    pressure_mean(0 1 2 3 4 5); girth_demand(0 1 2); plate_for_pressure(0 1 2 3); share_of_plate(0 1 2);
    end_rivets(0 1 2 3 4 5);
    straight_run(0 1 2); middle_circle(0 1); circle_outside(0 1 2); circle_inside(0 1 2); girth(0); strips_in_run(0 1);
    strip_of_run(0 1); difference(0 1); rivets_in_run(0 1 2 3); hole_place(0 1 2); hole_angle(0 1); grip_of_two(0 1);
    grip_of_three(0 1 2); allowance_in_diameters(0 1); allowance_small_machine(0 1); allowance_by_table(0 1);
    rivet_length(0 1); row_span(0 1); overlap(0 1); strap_width(0 1); cylinder(0 1); round_head(0 1); sunk_head(0 1 2);
    area_ratio(0 1); area_times(0 1); sum(0 1); centroid(0 1); arm_squared(0 1); moment_about(0 1 2 3);
    moment_sum(0 1 2 3 4); eccentricity_allowance(0); instant_x(0 1 2 3 4); instant_y(0 1 2 3 4); distance(0 1 2 3);
    direct_share(0 1); direct_share_by_area(0 1 2); turning_share(0 1 2 3); turning_share_by_area(0 1 2 3 4);
    share_sum(0 1); resultant(0 1); rivet_shear_stress(0 1); rivet_shear_stress_double(0 1 2);
    rivet_bearing_stress(0 1 2); safe_load(0 1); diameter_by_shear(0 1); diameter_by_shear_double(0 1 2);
    diameter_by_bearing(0 1 2);
    mass(0 1); plate_volume(0 1 2); volume_sum(0 1); mass_of_many(0 1 2); seam_mass(0 1 2 3); mass_per_metre(0 1);
}

/// A new formula must come into the list above.
#[test]
fn no_formula_body_is_left_out() {
    let source = include_str!("../../core/src/formula/mod.rs");
    let known: Vec<&str> = bodies().iter().map(|b| b.name).collect();
    let lists = source.split("pub use ").skip(1).filter_map(|s| s.split_once('{')?.1.split_once('}'));
    let names: Vec<&str> =
        lists.flat_map(|(list, _)| list.split(',')).map(str::trim).filter(|n| !n.is_empty()).collect();
    assert!(names.len() > 30);
    let missing: Vec<_> = names.iter().filter(|n| !known.contains(n)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * b.abs()
}

/// A lap of one row by hand: p = 60, d = 20, t = 10, tension 80, shear 60, bearing 300. The rivet shears.
#[test]
fn slopes_by_hand_of_a_sheared_lap() -> Result<(), seamwright::Error> {
    let mm = Length::mm;
    let joint = JointSpec::new(Form::lap(1)?, mm(60.0), mm(10.0), mm(20.0)).build()?;
    let materials = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(300.0));
    let slope = |q| check_with(Along(q), &joint, &materials, &METRIC.rules);
    let pi = std::f64::consts::PI;
    // P = pi/4 d^2 ss; eta = P/(p t st).
    let (force, solid) = (pi / 4.0 * 400.0 * 60.0, 60.0 * 10.0 * 80.0);
    assert!(near(slope(Q::Hole)?.governing.strength.d, pi / 2.0 * 20.0 * 60.0));
    assert!(near(slope(Q::Shear)?.governing.strength.d, pi / 4.0 * 400.0));
    assert_eq!(slope(Q::Bearing)?.governing.strength.d, 0.0);
    assert_eq!(slope(Q::Pitch)?.governing.strength.d, 0.0);
    assert!(near(slope(Q::Pitch)?.efficiency.d, -force / (solid * 60.0)));
    assert!(near(slope(Q::Plate)?.efficiency.d, -force / (solid * 10.0)));
    assert!(near(slope(Q::Tension)?.efficiency.d, -force / (solid * 80.0)));
    // Tearing: Pt = (p - d) t st, plate % = 100 (p - d)/p.
    assert!(near(slope(Q::Pitch)?.tear_outer.d, 10.0 * 80.0));
    assert!(near(slope(Q::Hole)?.tear_outer.d, -10.0 * 80.0));
    assert!(near(slope(Q::Plate)?.tear_outer.d, 40.0 * 80.0));
    assert!(near(slope(Q::Pitch)?.percentages.plate.d, 100.0 * 20.0 / 3600.0));
    Ok(())
}

/// Balanced pitch and hole by hand, with the hole given: p = d + n pi/4 d^2 ss/(t st).
#[test]
fn slopes_by_hand_of_a_sizing() -> Result<(), seamwright::Error> {
    let materials = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(300.0));
    let order = Brief::new(Form::lap(2)?, Length::mm(10.0), materials).hole(Length::mm(20.0), None);
    let area = 100.0 * std::f64::consts::PI;
    let slope = |q| Ok::<_, seamwright::Error>(size_with(Along(q), &order, &METRIC.rules)?.pitch.by_shear.d);
    assert!(near(slope(Q::Shear)?, 2.0 * area / 800.0));
    assert!(near(slope(Q::Tension)?, -2.0 * area * 60.0 / (10.0 * 6400.0)));
    assert!(near(slope(Q::Plate)?, -2.0 * area * 60.0 / (100.0 * 80.0)));
    assert!(near(slope(Q::Hole)?, 1.0 + 4.0 * area / 20.0 * 60.0 / 800.0));
    // The square-root rule: d = 6 sqrt t, so the slope at 16 mm is 6/8.
    let order = Brief::new(Form::lap(2)?, Length::mm(16.0), materials);
    let computed = size_with(Along(Q::Plate), &order, &METRIC.rules)?.hole.computed.map(|(d, _)| d.d);
    assert!(computed.is_some_and(|d| near(d, 0.75)));
    Ok(())
}

/// The pressure of a torn lap by hand: p = 2 st J (t - c)/(FS D) with J = (p - d)/p. Along the plate its slope is
/// 2 st J/(FS D); along the hole -2 st (t - c)/(FS D p).
#[test]
fn slopes_by_hand_of_a_rating() -> Result<(), seamwright::Error> {
    let f = |x: f64| KnownLength::given(Length::mm(x));
    let old = Existing::new(Form::lap(1)?, f(100.0), f(10.0), Length::mm(1000.0)).permissible();
    let old = old.hole(f(40.0)).tension(Stress::mpa(80.0)).shear(Stress::mpa(600.0)).bearing(Stress::mpa(900.0));
    let slope = |q| Ok::<_, seamwright::Error>(rate_with(Along(q), &old, &METRIC.rules)?.allowed.d);
    assert!(near(slope(Q::Plate)?, 2.0 * 80.0 * 0.6 / 1000.0));
    assert!(near(slope(Q::Hole)?, -2.0 * 80.0 * 9.0 / (1000.0 * 100.0)));
    assert!(near(slope(Q::ShellDiameter)?, -2.0 * 80.0 * 0.6 * 9.0 / 1e6));
    Ok(())
}
