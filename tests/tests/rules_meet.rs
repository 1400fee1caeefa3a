//! Where rules meet: each point of the rules of the trade that concerns seams, with its winner and its trap.

mod support;

use seamwright::bounds::Field;
use seamwright::check::{Analysis, Subject, Verdict, check};
use seamwright::error::ErrorKind;
use seamwright::given::Given;
use seamwright::joint::JointSpec;
use seamwright::materials::{Materials, PlateStress};
use seamwright::modes::{Class, Cut, Lens, Strengths};
use seamwright::proportion::{self, Covered, Limit, Strap};
use seamwright::quantities::Stress;
use seamwright::rules::{Balance, Entry, GERMAN_1908, INDIAN, METRIC, Rules, STRUCTURAL, US_CODE};
use seamwright::sizing::{Brief, Decided, size};
use seamwright::step::Plain;
use support::{Symbols, form, joint, materials, mm, near, symbols};

/// Shear area of a 20 mm hole, mm2.
const A20: f64 = std::f64::consts::PI * 100.0;

fn start(changes: &[(&str, f64)]) -> Symbols {
    let base = [("p", 100.0), ("t", 10.0), ("d", 20.0), ("st", 100.0), ("ss", 40.0), ("sc", 900.0)];
    let mut s = symbols(&base);
    s.extend(symbols(changes));
    s
}

fn checked(rules: &Rules, name: &str, changes: &[(&str, f64)]) -> Analysis {
    let s = start(changes);
    check(&joint(form(name), &s).unwrap(), &materials(&s), rules).unwrap()
}

fn verdict(a: &Analysis, subject: Subject) -> Option<Verdict> {
    a.findings.find(subject, 0).map(|f| f.verdict)
}

fn strength(rules: &Rules, name: &str, changes: &[(&str, f64)], (plate, other, narrow): (u8, u8, u8)) -> f64 {
    let s = start(changes);
    let made = joint(form(name), &s).unwrap();
    let given = Given::new(Plain, &made, &materials(&s));
    Strengths::new(Plain, &made, &given, rules, Lens::Real).mode(Cut { plate, other, narrow }).strength
}

fn with(rules: &Rules, changes: &[(Entry, f64)]) -> Rules {
    changes.iter().fold(*rules, |r, (e, x)| r.with(*e, *x).unwrap())
}

/// Point 1: half of double shear, unless the book says a single shear.
#[test]
fn point_1_one_plane_alone() {
    // The second strap torn, (100 - 20) x 8 x 100, and the plane of the first sheared.
    for (choice, plane) in [(0.0, 1.875 / 2.0), (1.0, 1.0)] {
        let rules = with(&INDIAN.rules, &[(Entry::LONE_PLANE, choice)]);
        let found = strength(&rules, "double 1", &[("b", 8.0)], (0, 0, 1));
        assert!(near(found, 64_000.0 + plane * A20 * 40.0), "{choice}");
    }
}

/// Point 1: in Reg. 177 Eq. (3) C goes rivet by rivet where single and double shear mix.
#[test]
fn point_1_c_goes_rivet_by_rivet() {
    // 1 rivet in single shear, 2 + 2 in double: 100 A (1 + 4 x 1.875) S1/(P T S).
    let a = checked(&INDIAN.rules, "unequal 3", &[]);
    assert!(near(a.percentages.rivet, 100.0 * A20 * (1.0 + 4.0 * 1.875) * 40.0 / 100_000.0));
    assert!(near(a.shear_all, A20 * 8.5 * 40.0));
}

/// Point 2: the rivets outside an inner row hold what they can, or take an even share: the book says.
#[test]
fn point_2_load_share_at_inner_rows() {
    // Rows of 1 and 3: (100 - 60) x 1000 and one rivet of four.
    for (choice, expected) in [(0.0, 40_000.0 + 1.75 * A20 * 40.0), (1.0, 40_000.0 * 4.0 / 3.0)] {
        let rules = with(&STRUCTURAL.rules, &[(Entry::INNER_SHARE, choice)]);
        assert!(near(strength(&rules, "rows double 1x2 3x2", &[], (2, 0, 0)), expected), "{choice}");
    }
}

/// Point 4: the strap factor is (p - k1 d)/(p - kb d), not always (p - d)/(p - 2 d).
#[test]
fn point_4_strap_factor_in_general() {
    for (name, p, outer, butt, factor) in [
        ("rows double 1x2 2x2", 100.0, 1.0, 2.0, 80.0 / 60.0),
        ("rows double 1x2 3x2", 100.0, 1.0, 3.0, 80.0 / 40.0),
        ("rows double 2x2 4x2", 200.0, 2.0, 4.0, 160.0 / 120.0),
    ] {
        let covered = Covered { plate: 10.0, strip: p, outer: (outer, 20.0), butt: (butt, 20.0) };
        match proportion::strap_least(Plain, &METRIC.rules, &form(name), Strap::Wide, &covered) {
            Limit::At(b, entry) => assert!(near(b, 6.25 * factor) && entry == Entry::STRAP_EQUAL, "{name}"),
            other => panic!("{name}: {other:?}"),
        }
    }
}

/// Point 4: straps of 0.75 t and 0.625 t tear at the butt row before the plate at its outer row when p/d < 4.67:
/// 1.375 (p - 2 d) = p - d at p = 14/3 d.
#[test]
fn point_4_straps_tear_first_in_close_pitches() {
    let rivets = [("ss", 4000.0), ("sc", 9000.0), ("bw", 7.5), ("bn", 6.25)];
    let governs = |p: f64| {
        let mut changes = rivets.to_vec();
        changes.push(("p", p));
        checked(&METRIC.rules, "unequal 2", &changes).governing
    };
    let close = governs(4.6 * 20.0);
    assert_eq!(
        (close.cut.class(form("unequal 2").kind(), 2), close.cut),
        (Class::Strap, Cut { plate: 0, other: 2, narrow: 2 })
    );
    assert!(near(close.strength, 1.375 * 10.0 * (92.0 - 40.0) * 100.0));
    assert_eq!(governs(4.7 * 20.0).cut, Cut { plate: 1, other: 0, narrow: 0 });
}

/// t 10, hole 19; single shear pi/4 x 361 x 40 = 11 341, bearing 19 x 10 x 100 = 19 000; t st = 800 N/mm.
fn balanced(rules: &Rules) -> seamwright::sizing::Design {
    let s = start(&[("st", 80.0), ("sc", 100.0)]);
    size(&Brief::new(form("unequal 2"), mm(10.0), materials(&s)), rules).unwrap()
}

/// Point 5: three balances are reported, and the book's choice decides.
#[test]
fn point_5_three_balances() {
    let f = std::f64::consts::FRAC_PI_4 * 361.0 * 40.0;
    let mut efficiency = Vec::new();
    for (choice, balance, taken, decided) in [
        // 89.9 is over the cap of 4.63 x 10 + 41.28 = 87.58; 80.7; 2 d + F_inner/(t st) = 85.5.
        (0.0, Balance::Shear, 87.0, Decided::Cap),
        (1.0, Balance::Weaker, 80.0, Decided::Balance),
        (2.0, Balance::AllModes, 85.0, Decided::Balance),
    ] {
        let design = balanced(&with(&METRIC.rules, &[(Entry::PITCH_BALANCE, choice)]));
        let p = design.pitch;
        assert!(near(p.by_shear, 19.0 + 5.0 * f / 800.0));
        assert!(near(p.by_weaker, 19.0 + (f + 38_000.0) / 800.0));
        assert!(near(p.by_all_modes, 38.0 + 38_000.0 / 800.0));
        assert_eq!((p.balance, p.taken, p.decided), (balance, taken, decided));
        efficiency.push(design.analysis.efficiency);
    }
    // With the outer rivet in single shear the textbook's two miss the best: 80 and 87 mm against 85 mm.
    // 85: inner row (85 - 38) x 800 + 11 341 of 68 000; 80: 42 x 800 + 11 341 of 64 000; 87: rivets 49 341 of 69 600.
    assert!(near(efficiency[2], (37_600.0 + f) / 68_000.0));
    assert!(near(efficiency[1], (33_600.0 + f) / 64_000.0));
    assert!(near(efficiency[0], (38_000.0 + f) / 69_600.0));
    assert!(efficiency[2] > efficiency[0] && efficiency[2] > efficiency[1]);
}

/// Point 5: balanced on the outer row (129 mm) the inner row governs; under the cap (133 mm) the joint is better.
#[test]
fn point_5_the_outer_row_misses_the_best_pitch() {
    let f = std::f64::consts::FRAC_PI_4 * 28.5 * 28.5 * 60.0; // one rivet in single shear, 38 276 N
    let steel = materials(&symbols(&[("st", 90.0), ("ss", 60.0), ("sc", 150.0)]));
    let brief = Brief::new(form("unequal 2"), mm(20.0), steel).hole(mm(28.5), None).straps(mm(16.0), Some(mm(14.0)));
    for (choice, taken, decided) in [(0.0, 129.0, Decided::Balance), (2.0, 133.0, Decided::Cap)] {
        let rules = with(&INDIAN.rules, &[(Entry::PITCH_BALANCE, choice), (Entry::PITCH_ROUND, 0.0)]);
        let design = size(&brief, &rules).unwrap();
        assert!(near(design.pitch.by_shear, 28.5 + 4.75 * f / 1800.0)); // 129.51
        assert!(near(design.pitch.by_all_modes, 57.0 + 3.75 * f / 1800.0)); // 136.74, over 4.63 x 20 + 41.28 = 133.88
        assert_eq!((design.pitch.taken, design.pitch.decided), (taken, decided));
        let a = &design.analysis;
        assert_eq!(a.governing.cut, Cut { plate: 2, other: 0, narrow: 0 });
        assert!(near(a.efficiency, ((taken - 57.0) * 1800.0 + f) / (taken * 1800.0))); // 0.7230 and 0.7313
        // Next the wide strap at the butt row, with the inner planes of its two rivets.
        assert_eq!(a.runner_up.cut, Cut { plate: 0, other: 2, narrow: 0 });
        assert!(near(a.runner_up.strength, (taken - 57.0) * 1440.0 + 1.875 * f));
    }
}

/// Point 6: the floor belongs to the inner row, the cap to the outer pitch.
#[test]
fn point_6_floor_on_inner_row_cap_on_outer() {
    let a = checked(&INDIAN.rules, "double 3 omitted", &[]);
    // 2 x 2 x 20 = 80; 5 rivets: 6.00 x 10 + 41.28 = 101.28.
    assert_eq!(a.findings.find(Subject::PitchLeast, 0).unwrap().required, 80.0);
    assert!(near(a.findings.find(Subject::PitchGreatest, 0).unwrap().required, 101.28));
    // In sizing, too, with rivets that ask for less.
    let brief = Brief::new(form("unequal 2"), mm(10.0), materials(&start(&[("ss", 5.0)]))).hole(mm(20.0), None);
    let pitch = size(&brief, &METRIC.rules).unwrap().pitch;
    assert_eq!((pitch.taken, pitch.least, pitch.decided), (80.0, 80.0, Decided::Floor));
}

/// Point 6: what decided is said, also where the pitch was given; what is checked is the rounded joint.
#[test]
fn point_6_given_pitch_and_findings_after_rounding() {
    let brief = Brief::new(form("lap 1"), mm(10.0), materials(&start(&[("ss", 10.0)]))).hole(mm(20.5), None);
    let given = size(&brief.pitch(mm(40.3)), &METRIC.rules).unwrap();
    assert_eq!((given.pitch.taken, given.pitch.decided), (40.3, Decided::Given));
    let floor = given.analysis.findings.find(Subject::PitchLeast, 0).unwrap();
    assert_eq!((floor.required, floor.provided, floor.verdict), (41.0, 40.3, Verdict::Open));
    // The floor of 41 goes up to a step of 4.
    let rounded = size(&brief, &with(&METRIC.rules, &[(Entry::PITCH_STEP, 4.0)])).unwrap();
    let floor = rounded.analysis.findings.find(Subject::PitchLeast, 0).unwrap();
    assert_eq!((floor.required, floor.provided, floor.verdict), (41.0, 44.0, Verdict::Met));
    let rivet = std::f64::consts::FRAC_PI_4 * 20.5 * 20.5 * 10.0;
    assert!(near(rounded.analysis.efficiency, rivet / 44_000.0));
}

/// Point 6: a cap below the floor leaves no pitch: both clauses are named, and a hole that would do.
#[test]
fn point_6_cap_below_floor() {
    // Lap 1: 1.31 x 4 + 41.28 = 46.52 under 2 x 25 = 50; on whole millimetres 46, and 2 x 23 fits it.
    let brief = |d: f64| Brief::new(form("lap 1"), mm(4.0), materials(&start(&[]))).hole(mm(d), None);
    let error = size(&brief(25.0), &METRIC.rules).unwrap_err();
    assert_eq!((error.kind, error.field, error.value), (ErrorKind::NoAdmissiblePitch, Field::Pitch, 50.0));
    assert!(near(error.limit, 46.52));
    assert_eq!((error.entry, error.other), (Entry::PITCH_MAX_LAP.no(), Entry::PITCH_LEAST.no()));
    assert_eq!(error.hint_field, Field::Hole);
    assert!(near(error.hint, 23.0));
    assert!(error.to_string().contains("hole = 23 mm would do"), "{error}");
    assert!(size(&brief(error.hint), &METRIC.rules).is_ok());
}

/// Point 6: no step of the grid between floor and cap.
#[test]
fn point_6_no_step_between_floor_and_cap() {
    // Floor 40, cap 54.38: no multiple of 30; 45 for 15.
    let sized = |step: f64| {
        let brief = Brief::new(form("lap 1"), mm(10.0), materials(&start(&[("ss", 900.0)]))).hole(mm(20.0), None);
        size(&brief, &with(&METRIC.rules, &[(Entry::PITCH_STEP, step)]))
    };
    let error = sized(30.0).unwrap_err();
    assert_eq!((error.kind, error.value), (ErrorKind::NoAdmissiblePitch, 40.0));
    assert!(near(error.limit, 54.38));
    assert_eq!(sized(15.0).unwrap().pitch.taken, 45.0);
}

/// Point 6: rounding up never passes the cap, rounding down never the floor; and the result says what decided.
#[test]
fn point_6_rounding_passes_neither() {
    let sized = |ss: f64, round: f64, step: f64| {
        let brief = Brief::new(form("lap 1"), mm(10.0), materials(&start(&[("ss", ss)]))).hole(mm(20.5), None);
        let rules = with(&METRIC.rules, &[(Entry::PITCH_ROUND, round), (Entry::PITCH_STEP, step)]);
        let pitch = size(&brief, &rules).unwrap().pitch;
        (pitch.taken, pitch.decided)
    };
    // Floor 41, cap 54.38.
    assert_eq!(sized(900.0, 2.0, 1.0), (54.0, Decided::Cap));
    assert_eq!(sized(900.0, 1.0, 6.0), (54.0, Decided::Cap));
    assert_eq!(sized(10.0, 0.0, 2.0), (42.0, Decided::Floor));
    assert_eq!(sized(10.0, 1.0, 4.0), (44.0, Decided::Floor));
}

/// Point 6: more rivets per pitch than the table of caps holds: unknown, and said so.
#[test]
fn point_6_beyond_the_table_is_unknown() {
    let a = checked(&INDIAN.rules, "rows double 1x2 2x2 2x2 2x2", &[]);
    let finding = a.findings.find(Subject::PitchGreatest, 0).unwrap();
    assert_eq!((finding.verdict, finding.entry), (Verdict::Unknown, Entry::PITCH_MAX_DOUBLE.no()));
    assert!(finding.required.is_nan() && finding.provided == 100.0);
    let s = start(&[]);
    let design =
        size(&Brief::new(form("rows double 1x2 2x2 2x2 2x2"), mm(10.0), materials(&s)), &INDIAN.rules).unwrap();
    assert_eq!(design.pitch.greatest, Limit::Unknown(Entry::PITCH_MAX_DOUBLE));
    // A form that the British table leaves out altogether, too.
    let a = checked(&seamwright::rules::BRITISH_MARINE.rules, "single 1", &[]);
    assert_eq!(verdict(&a, Subject::PitchGreatest), Some(Verdict::Unknown));
}

/// Point 6: the cap goes by the thinner plate; the caulked edge is the narrow strap's.
#[test]
fn point_6_thinner_plate_and_narrow_strap() {
    for (t, t2) in [(10.0, 14.0), (14.0, 10.0)] {
        let a = checked(&METRIC.rules, "lap 2", &[("p", 60.0), ("t", t), ("t2", t2)]);
        assert!(near(a.findings.find(Subject::PitchGreatest, 0).unwrap().required, 2.62 * 10.0 + 41.28));
        let brief = Brief::new(form("lap 2"), mm(t), materials(&start(&[]))).other_plate(mm(t2));
        match size(&brief, &METRIC.rules).unwrap().pitch.greatest {
            Limit::At(p, _) => assert!(near(p, 67.48)),
            other => panic!("{other:?}"),
        }
    }
    let a = checked(&GERMAN_1908.rules, "unequal 2", &[("bw", 9.0), ("bn", 7.0)]);
    assert_eq!(a.findings.find(Subject::Scallop, 0).unwrap().required, 56.0);
}

/// Point 7: thin plate: hole by shear = bearing (divided by the factor in double shear), rounded up, so that bearing
/// governs and the pitch is balanced on bearing even where the book balances on shear.
#[test]
fn point_7_thin_plate_is_balanced_on_bearing() {
    let s = start(&[("st", 80.0), ("ss", 60.0), ("sc", 120.0)]);
    let sized = |name: &str, t: f64| size(&Brief::new(form(name), mm(t), materials(&s)), &INDIAN.rules).unwrap();
    for (name, phi, hole) in [("lap 2", 1.0, 17.0), ("double 2", 1.875, 13.0)] {
        let design = sized(name, 6.0);
        let computed = 4.0 * 6.0 * 120.0 / (std::f64::consts::PI * 60.0 * phi); // 15.28 and 8.15
        assert!(near(design.hole.computed.unwrap().0, computed));
        assert_eq!((design.hole.hole, design.pitch.balance), (hole, Balance::Weaker), "{name}");
        // Two rivets in bearing: p = d + 2 d t sc/(t st) = 4 d.
        assert!(near(design.pitch.by_weaker, 4.0 * hole), "{name}");
        assert!(design.pitch.by_shear > design.pitch.by_weaker, "{name}");
    }
    assert_eq!(sized("lap 2", 9.0).pitch.balance, Balance::Shear);
    // A hole that was given was not rounded up from shear = bearing: the book's own balance.
    let brief = Brief::new(form("lap 2"), mm(6.0), materials(&s)).hole(mm(17.0), None);
    assert_eq!(size(&brief, &INDIAN.rules).unwrap().pitch.balance, Balance::Shear);
}

/// Point 7: at 8 mm the hole jumps from 21 to 17: a finding.
#[test]
fn point_7_the_hole_jumps_at_8_mm() {
    let s = start(&[("st", 80.0), ("ss", 60.0), ("sc", 120.0)]);
    let sized = |t: f64| size(&Brief::new(form("lap 2"), mm(t), materials(&s)), &INDIAN.rules).unwrap();
    assert_eq!((sized(7.9).hole.hole, sized(8.0).hole.hole), (21.0, 17.0));
    assert_eq!(verdict(&sized(8.0).analysis, Subject::ThinPlateJump), Some(Verdict::Note));
    assert_eq!(verdict(&sized(7.9).analysis, Subject::ThinPlateJump), None);
}

/// Point 8: a margin rounded up past the greatest is no margin.
#[test]
fn point_8_margin_rounded_past_its_greatest() {
    // 1.5 x 20 = 30 to 1.75 x 20 = 35: steps of 8 mm give 32, steps of 18 give 36.
    let sized = |step: f64| {
        let s = start(&[("t", 9.525)]);
        let brief = Brief::new(form("lap 1"), mm(9.525), materials(&s)).hole(mm(20.0), None);
        size(&brief, &with(&US_CODE.rules, &[(Entry::MARGIN_STEP, step)]))
    };
    assert_eq!(sized(8.0).unwrap().joint.margin().unwrap().to_mm(), 32.0);
    let error = sized(18.0).unwrap_err();
    let told = (error.kind, error.field, error.value, error.limit);
    assert_eq!(told, (ErrorKind::NoAdmissibleMargin, Field::Margin, 36.0, 35.0));
    assert_eq!((error.entry, error.other), (Entry::MARGIN_GREATEST.no(), Entry::MARGIN_LEAST.no()));
}

/// Point 8: a strap rounded up changes the grip: what is checked is the rounded one.
#[test]
fn point_8_rounded_straps_are_checked_again() {
    // 31 + 2 x 23.25 = 77.5 under 4 x 20 = 80; straps of 25 make it 81.
    let s = start(&[("t", 31.0)]);
    let brief = Brief::new(form("double 1"), mm(31.0), materials(&s)).hole(mm(21.5), Some(mm(20.0))).pitch(mm(110.0));
    for (step, thickness, met) in [(1.0, 79.0, Verdict::Met), (5.0, 81.0, Verdict::Open)] {
        let design = size(&brief, &with(&STRUCTURAL.rules, &[(Entry::STRAP_STEP, step)])).unwrap();
        let finding = design.analysis.findings.find(Subject::Grip, 0).unwrap();
        assert_eq!((finding.required, finding.provided, finding.verdict), (80.0, thickness, met));
    }
}

/// Point 10: the credited efficiency is one figure, in sizing and in checking; computed and credited are both there.
#[test]
fn point_10_credited_efficiency() {
    let s = start(&[("ss", 900.0), ("sc", 3000.0)]);
    let brief = Brief::new(form("double 2"), mm(10.0), materials(&s)).hole(mm(21.0), Some(mm(20.0))).pitch(mm(150.0));
    let design = size(&brief, &INDIAN.rules).unwrap();
    assert!(near(design.analysis.efficiency, 129.0 / 150.0) && near(design.analysis.book_efficiency, 0.86));
    assert_eq!(design.analysis.credited, 0.85);
    let again = check(&design.joint, &materials(&s), &INDIAN.rules).unwrap();
    assert_eq!((again.credited, again.efficiency), (design.analysis.credited, design.analysis.efficiency));
    let note = again.findings.find(Subject::CreditCap, 0).unwrap();
    assert_eq!((note.verdict, note.required), (Verdict::Note, 0.85));
    assert!(near(note.provided, 0.86));
}

/// Point 10: Reg. 184(d) corrects Eq. (2) by the worst ratio of all gaps.
#[test]
fn point_10_the_worst_gap_counts() {
    // Prescribed 0.33 x 100 + 0.67 x 20 = 46.4; 40 and 30 given.
    for (g1, g2) in [(40.0, 30.0), (30.0, 40.0)] {
        let a = checked(&INDIAN.rules, "lap 3", &[("g1", g1), ("g2", g2)]);
        assert!(near(a.percentages.plate, 100.0 - (2.0 - 30.0 / 46.4) * 20.0));
        assert_eq!(a.findings.iter().filter(|f| f.subject == Subject::RowDistance).count(), 2);
    }
}

/// Point 12: at a measured thickness every mode is worked out again; the nominal efficiency does not carry over.
#[test]
fn point_12_every_mode_again_at_the_measured_thickness() {
    // Rivets pi/4 20^2 x 90 = 28 274; bearing 20 t 150; plate (60 - 20) t 80; solid 60 t 80.
    let changes = |t: f64| [("p", 60.0), ("t", t), ("st", 80.0), ("ss", 90.0), ("sc", 150.0)];
    let new = checked(&METRIC.rules, "lap 1", &changes(10.0));
    let worn = checked(&METRIC.rules, "lap 1", &changes(8.0));
    assert!(near(new.governing.strength, A20 * 90.0) && near(new.efficiency, A20 * 90.0 / 48_000.0));
    assert!(near(worn.shear_all, A20 * 90.0) && near(worn.tear_outer, 25_600.0) && near(worn.solid, 38_400.0));
    // Bearing now, 24 000: neither 0.589 x 38 400 = 22 619 nor 0.625 x 48 000 = 30 000.
    assert!(near(worn.governing.strength, 24_000.0) && near(worn.efficiency, 0.625));
}

/// Point 14: boiler books go by the hole throughout; structural practice by the rivet in shear and bearing, and by an
/// allowance more in the net section.
#[test]
fn point_14_the_diameter_that_counts() {
    let found = |rules: &Rules| {
        let a = checked(rules, "lap 1", &[("dr", 19.0)]);
        (a.shear_all, a.bearing_all.unwrap(), a.tear_outer)
    };
    let all = |(shear, bearing, tear), (a, b, c)| near(shear, a) && near(bearing, b) && near(tear, c);
    for book in [&INDIAN, &METRIC, &US_CODE, &GERMAN_1908] {
        assert!(all(found(&book.rules), (A20 * 40.0, 180_000.0, 80_000.0)), "{}", book.id);
    }
    // Hole + 1/16 in, and rivet + 1/8 in.
    let by_rivet = [(Entry::SHEAR_DIAMETER, 1.0), (Entry::BEARING_DIAMETER, 1.0)];
    let nominal = with(&STRUCTURAL.rules, &by_rivet);
    let shear = std::f64::consts::FRAC_PI_4 * 361.0 * 40.0;
    let hole = with(&nominal, &[(Entry::TEAR_ALLOWANCE, 1.5875)]);
    assert!(all(found(&hole), (shear, 171_000.0, 78_412.5)));
    let rivet = with(&nominal, &[(Entry::TEAR_DIAMETER, 1.0), (Entry::TEAR_ALLOWANCE, 3.175)]);
    assert!(all(found(&rivet), (shear, 171_000.0, 77_825.0)));
}

/// Point 15: a caution on every lap, and on laps only.
#[test]
fn point_15_bending_of_laps() {
    for book in seamwright::rules::BOOKS {
        for (name, lap) in [("lap 1", true), ("lap 3", true), ("single 1", false), ("double 1", false)] {
            let found = verdict(&checked(&book.rules, name, &[]), Subject::LapBending);
            assert_eq!(found, lap.then_some(Verdict::Note), "{} {name}", book.id);
        }
    }
}

/// A mode that the book does not count and that is weaker is a finding: eta below J.
#[test]
fn a_weaker_mode_that_the_book_does_not_count() {
    // Bearing of 60 MPa: 2 x 20 x 10 x 60 = 24 000 of 100 000; J by shear, 2 x 314.16 x 40 = 25 133.
    let a = checked(&INDIAN.rules, "lap 2", &[("sc", 60.0)]);
    let finding = a.findings.find(Subject::AllModes, 0).unwrap();
    assert_eq!(finding.verdict, Verdict::Open);
    assert!(near(finding.provided, 0.24) && near(finding.required, 2.0 * A20 * 40.0 / 100_000.0));
    assert!(near(a.credited, 0.24), "the lesser of the two is credited");
    assert_eq!(verdict(&checked(&INDIAN.rules, "lap 2", &[]), Subject::AllModes), Some(Verdict::Met));
}

/// Rivets far stronger than the plate: the joint has room.
#[test]
fn strong_rivets_leave_room() {
    // Bearing 2 x 20 x 10 x 900 = 360 000 over (100 - 20) x 1000.
    let a = checked(&METRIC.rules, "double 2", &[("ss", 4000.0)]);
    let note = a.findings.find(Subject::Room, 0).unwrap();
    assert_eq!((note.verdict, note.required), (Verdict::Note, 1.5));
    assert!(near(note.provided, 4.5));
}

/// What is not given is not silently passed.
#[test]
fn what_is_not_given_is_unknown() {
    let mut s = start(&[]);
    s.remove("sc");
    let a = check(&joint(form("double 2"), &s).unwrap(), &materials(&s), &INDIAN.rules).unwrap();
    for subject in [Subject::BearingUnknown, Subject::StrapsUnknown, Subject::RowsUnknown, Subject::MarginUnknown] {
        assert_eq!(verdict(&a, subject), Some(Verdict::Unknown), "{subject:?}");
    }
    let a = checked(&INDIAN.rules, "double 2", &[("b", 8.0), ("g", 50.0), ("m", 32.0)]);
    for subject in [Subject::BearingUnknown, Subject::StrapsUnknown, Subject::RowsUnknown, Subject::MarginUnknown] {
        assert_eq!(verdict(&a, subject), None, "{subject:?}");
    }
}

/// In a lap each plate tears from its own outside, and the solid strip is the least t x sigma, not the least t.
#[test]
fn each_plate_of_a_lap_from_its_own_outside() {
    let plate = |st: f64| PlateStress { tension: Stress::mpa(st), bearing: Some(Stress::mpa(900.0)), shear_out: None };
    let steel = Materials::new(Stress::mpa(100.0), Stress::mpa(400.0)).bearing(Stress::mpa(900.0)).other(plate(70.0));
    // Plate A 10 mm at 100, plate B 12 mm at 70: 840 N/mm is less than 1000. Holes 20, 20 and, outermost in B, 26.
    let made = JointSpec::new(form("lap 3"), mm(100.0), mm(10.0), mm(20.0)).other_plate(mm(12.0));
    let made = made.row(3, mm(26.0), None).build().unwrap();
    let a = check(&made, &steel, &METRIC.rules).unwrap();
    assert!(near(a.solid, 84_000.0));
    assert!(near(a.tear_outer, (100.0 - 26.0) * 840.0));
    assert_eq!(a.governing.cut, Cut { plate: 0, other: 3, narrow: 0 });
    assert_eq!(a.governing.cut.class(made.form().kind(), 3), Class::PlateOuter);
    assert!(near(a.efficiency, 0.74));
    // Turned round, with B the weaker at its own inner row: rows 1-2-1, B tears at row 2 with row 3 outside.
    let made = JointSpec::new(form("rows lap 1x1 2x1 1x1"), mm(100.0), mm(10.0), mm(20.0)).other_plate(mm(8.0));
    let weak = Materials::new(Stress::mpa(100.0), Stress::mpa(40.0)).bearing(Stress::mpa(900.0));
    let made = made.build().unwrap();
    let given = Given::new(Plain, &made, &weak);
    let strengths = Strengths::new(Plain, &made, &given, &METRIC.rules, Lens::Real);
    let inner = strengths.mode(Cut { plate: 0, other: 2, narrow: 0 }).strength;
    assert!(near(inner, 60.0 * 800.0 + A20 * 40.0));
}
