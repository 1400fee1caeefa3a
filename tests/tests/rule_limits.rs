//! Every "at least" and "at most" of a clause: below, exactly at, a rounding error away from, and above its limit.
//!
//! Limits are worked out by hand beside each check; the rules and their sources stand in `tests/vectors/rules-*.toml`.

mod support;

use seamwright::bounds::Field;
use seamwright::check::{Subject, Verdict, check};
use seamwright::error::ErrorKind;
use seamwright::joint::{Form, JointSpec};
use seamwright::proportion::{self, Covered, HoleBasis, Limit, Strap};
use seamwright::rules::{BRITISH_MARINE, Balance, Entry, GERMAN_1908, INDIAN, METRIC, Rules, STRUCTURAL, US_CODE};
use seamwright::sizing::{Brief, Decided, Design, size};
use seamwright::step::Plain;
use support::{Symbols, form, joint, materials, mm, near, of, symbols};

/// What a rounding error may be, and what is more than one.
const HAIR: f64 = 1e-12;
const MORE: f64 = 1e-6;

/// A seam that most checks start from: 10 mm plate, 20 mm holes, strong rivets.
fn start(changes: &[(&str, f64)]) -> Symbols {
    let base = [("p", 60.0), ("t", 10.0), ("d", 20.0), ("st", 80.0), ("ss", 60.0), ("sc", 120.0)];
    let mut s = symbols(&base);
    s.extend(symbols(changes));
    s
}

fn verdict(rules: &Rules, form: Form, s: &Symbols, subject: Subject, row: u8) -> Option<Verdict> {
    let analysis = check(&joint(form, s).unwrap(), &materials(s), rules).unwrap();
    assert!(!analysis.findings.lost());
    analysis.findings.find(subject, row).map(|f| f.verdict)
}

/// A figure `key` that must be at least (`sense` 1) or at most (-1) `limit`.
fn edge(
    rules: &Rules,
    name: &str,
    s: &[(&str, f64)],
    subject: Subject,
    row: u8,
    (key, sense): (&str, f64),
    limit: f64,
) {
    let at = |x: f64| {
        let mut s = start(s);
        s.insert(key.into(), x);
        verdict(rules, form(name), &s, subject, row)
    };
    for good in [limit, limit * (1.0 - sense * HAIR), limit * (1.0 + sense * HAIR), limit * (1.0 + sense * MORE)] {
        assert_eq!(at(good), Some(Verdict::Met), "{name} {subject:?}: {key} = {good} at a limit of {limit}");
    }
    let bad = limit * (1.0 - sense * MORE);
    assert_eq!(at(bad), Some(Verdict::Open), "{name} {subject:?}: {key} = {bad} at a limit of {limit}");
}

const LEAST: f64 = 1.0;
const MOST: f64 = -1.0;

#[test]
fn thin_plate_limit_on_both_sides() {
    // Read: d = 6 sqrt t above 8 mm, shear = bearing below; the books of this library take 8 mm itself as thick.
    let basis = |rules: &Rules, t: f64| proportion::hole(Plain, rules, t, 60.0, Some(120.0), 1.0).1;
    for (choice, at) in [(0.0, HoleBasis::Root), (1.0, HoleBasis::Thin)] {
        for book in [METRIC, INDIAN] {
            let rules = book.rules.with(Entry::HOLE_THIN_AT, choice).unwrap();
            for t in [8.0, 8.0 * (1.0 - HAIR), 8.0 * (1.0 + HAIR)] {
                assert_eq!(basis(&rules, t), at, "{t}");
            }
            assert_eq!(basis(&rules, 8.0 * (1.0 - MORE)), HoleBasis::Thin);
            assert_eq!(basis(&rules, 8.0 * (1.0 + MORE)), HoleBasis::Root);
        }
    }
    // The note that the hole jumps there stands at the limit only.
    for (t, there) in
        [(8.0, true), (8.0 * (1.0 + HAIR), true), (8.0 * (1.0 - MORE), false), (8.0 * (1.0 + MORE), false)]
    {
        let found = verdict(&METRIC.rules, form("lap 1"), &start(&[("t", t)]), Subject::ThinPlateJump, 0);
        assert_eq!(found, there.then_some(Verdict::Note), "{t}");
    }
}

#[test]
fn thin_plate_limit_in_sizing() {
    // At 8 mm: 6 sqrt 8 = 16.97 up to 17; 4 x 8 x 120/(60 pi) = 20.37 up to 21, and balanced on bearing.
    let steel = materials(&start(&[]));
    for (choice, at) in
        [(0.0, (17.0, HoleBasis::Root, Balance::Shear)), (1.0, (21.0, HoleBasis::Thin, Balance::Weaker))]
    {
        let rules = INDIAN.rules.with(Entry::HOLE_THIN_AT, choice).unwrap();
        let sized = |t: f64| {
            let design = size(&Brief::new(form("lap 2"), mm(t), steel), &rules).unwrap();
            (design.hole.hole, design.hole.computed.unwrap().1, design.pitch.balance)
        };
        for t in [8.0, 8.0 * (1.0 - HAIR), 8.0 * (1.0 + HAIR)] {
            assert_eq!(sized(t), at, "{t}");
        }
        assert_eq!(sized(8.0 * (1.0 - MORE)), (21.0, HoleBasis::Thin, Balance::Weaker));
        assert_eq!(sized(8.0 * (1.0 + MORE)), (17.0, HoleBasis::Root, Balance::Shear));
    }
}

#[test]
fn least_and_greatest_pitch() {
    // 2 d = 40; 2 x 2 d = 80 on the outer row with every other rivet left out; 3 d + 5 = 65.
    edge(&METRIC.rules, "lap 1", &[], Subject::PitchLeast, 0, ("p", LEAST), 40.0);
    edge(&INDIAN.rules, "double 2 omitted", &[], Subject::PitchLeast, 0, ("p", LEAST), 80.0);
    edge(&STRUCTURAL.rules, "double 1", &[], Subject::PitchLeast, 0, ("p", LEAST), 65.0);
    // By the rivet of 19 mm where the book says so: 38.
    edge(&BRITISH_MARINE.rules, "lap 1", &[("dr", 19.0)], Subject::PitchLeast, 0, ("p", LEAST), 38.0);
    // 2.62 x 10 + 41.28 = 67.48; 3.50 x 10 + 41.28 = 76.28; 24 x 10 = 240; 12 in = 304.8 from 12.7 mm plate on.
    edge(&METRIC.rules, "lap 2", &[], Subject::PitchGreatest, 0, ("p", MOST), 67.48);
    edge(&INDIAN.rules, "double 2", &[], Subject::PitchGreatest, 0, ("p", MOST), 76.28);
    edge(&STRUCTURAL.rules, "double 1", &[], Subject::PitchGreatest, 0, ("p", MOST), 240.0);
    edge(&STRUCTURAL.rules, "double 1", &[("t", 13.0)], Subject::PitchGreatest, 0, ("p", MOST), 304.8);
}

/// A single lap of 10 mm with 20 mm holes whose rivets balance the plate at a pitch of `p`: pi/4 400 ss = (p - 20) 800.
fn balanced_at(p: f64, rules: &Rules) -> Design {
    let s = start(&[("ss", (p - 20.0) * 800.0 / (std::f64::consts::PI * 100.0)), ("sc", 5000.0)]);
    let brief = Brief::new(form("lap 1"), mm(10.0), materials(&s)).hole(mm(20.0), None);
    size(&brief, rules).unwrap()
}

#[test]
fn floor_and_cap_in_sizing() {
    // Floor 40, cap 1.31 x 10 + 41.28 = 54.38.
    for (p, taken, decided) in [
        (39.9, 40.0, Decided::Floor),
        (40.1, 40.0, Decided::Balance),
        (54.3, 54.0, Decided::Balance),
        (54.5, 54.0, Decided::Cap),
    ] {
        let pitch = balanced_at(p, &METRIC.rules).pitch;
        assert_eq!((pitch.taken, pitch.decided), (taken, decided), "{p}");
    }
    // At the floor and at a cap of 50 (K = 36.9) nothing but the balance need decide, and a hair moves no step.
    let rules = METRIC.rules.with(Entry::PITCH_MAX_ADD, 36.9).unwrap();
    for limit in [40.0, 50.0] {
        for p in [limit, limit * (1.0 - HAIR), limit * (1.0 + HAIR)] {
            assert_eq!(balanced_at(p, &rules).pitch.taken, limit, "{p}");
        }
    }
}

#[test]
fn pitch_steps_on_exact_multiples() {
    for (round, cases) in [
        (0.0, [(45.0, 45.0), (45.0 * (1.0 - HAIR), 45.0), (45.0 * (1.0 - MORE), 44.0), (45.9, 45.0)]),
        (1.0, [(45.0, 45.0), (45.5, 45.0), (45.5 * (1.0 + MORE), 46.0), (45.5 * (1.0 + HAIR), 45.0)]),
        (2.0, [(45.0, 45.0), (45.0 * (1.0 + HAIR), 45.0), (45.0 * (1.0 + MORE), 46.0), (45.1, 46.0)]),
    ] {
        let rules = METRIC.rules.with(Entry::PITCH_ROUND, round).unwrap();
        for (p, taken) in cases {
            assert_eq!(balanced_at(p, &rules).pitch.taken, taken, "direction {round}, {p}");
        }
    }
}

#[test]
fn pitch_steps_of_a_sixteenth() {
    // 26/16 in = 41.275 mm; a hole of 11/16 in = 17.4625 mm in 1/4 in = 6.35 mm plate; one step less is 39.6875 mm.
    let area = std::f64::consts::FRAC_PI_4 * 17.4625 * 17.4625;
    let taken = |p: f64| {
        let s = start(&[("ss", (p - 17.4625) * 6.35 * 80.0 / area), ("sc", 5000.0)]);
        let brief = Brief::new(form("lap 1"), mm(6.35), materials(&s)).hole(mm(17.4625), None);
        size(&brief, &US_CODE.rules).unwrap().pitch.taken
    };
    for p in [41.275, 41.275 * (1.0 - HAIR), 41.275 * (1.0 + MORE)] {
        assert!(near(taken(p), 41.275), "{p}");
    }
    assert!(near(taken(41.275 * (1.0 - MORE)), 39.6875));
}

#[test]
fn row_distances() {
    let zigzag = 0.33 * 60.0 + 0.67 * 20.0; // 33.2
    for (book, name, p, row, limit) in [
        (&INDIAN, "lap 2 chain", 60.0, 1, 40.0),
        (&INDIAN, "lap 2", 60.0, 1, zigzag),
        // 184(b): 0.33 x 100 + 0.67 x 20 = 46.4 over 40; full rows 40.
        (&INDIAN, "double 3 omitted chain", 100.0, 1, 46.4),
        (&INDIAN, "double 3 omitted chain", 100.0, 2, 40.0),
        // 184(c): 0.2 x 100 + 1.15 x 20 = 43; 0.165 x 100 + 0.67 x 20 = 29.9.
        (&INDIAN, "double 3 omitted", 100.0, 1, 43.0),
        (&INDIAN, "double 3 omitted", 100.0, 2, 29.9),
        (&GERMAN_1908, "double 3 omitted", 100.0, 1, 43.0),
        (&GERMAN_1908, "double 3 omitted", 100.0, 2, 29.9),
        // Memory, Par. 182: 1.75 x 20 while P/d is at most 4, and 0.1 (100 - 80) more at 5.
        (&US_CODE, "lap 2", 80.0, 1, 35.0),
        (&US_CODE, "lap 2", 100.0, 1, 37.0),
        (&STRUCTURAL, "lap 2 chain", 70.0, 1, 50.0),
        // Rose: diagonal (6 x 60 + 4 x 20)/10 = 44 over 30 across: sqrt(44^2 - 30^2).
        (&BRITISH_MARINE, "lap 2", 60.0, 1, (44.0_f64 * 44.0 - 30.0 * 30.0).sqrt()),
    ] {
        let key = format!("g{row}");
        edge(&book.rules, name, &[("p", p), ("g", 60.0)], Subject::RowDistance, row, (&key, LEAST), limit);
    }
}

#[test]
fn row_distance_by_the_mean_of_two_holes() {
    // Reg. 184(c), D = mean of the two rows' holes: 0.2 x 100 + 1.15 x (24 + 20)/2 = 45.3.
    let at = |g: f64| {
        let spec = JointSpec::new(form("double 3 omitted"), mm(100.0), mm(10.0), mm(20.0)).row(1, mm(24.0), None);
        let made = spec.back_pitch(1, mm(g)).build().unwrap();
        let a = check(&made, &materials(&start(&[])), &INDIAN.rules).unwrap();
        a.findings.find(Subject::RowDistance, 1).unwrap().verdict
    };
    for g in [45.3, 45.3 * (1.0 - HAIR), 45.3 * (1.0 + MORE)] {
        assert_eq!(at(g), Verdict::Met, "{g}");
    }
    assert_eq!(at(45.3 * (1.0 - MORE)), Verdict::Open);
}

#[test]
fn back_pitch_of_1918_on_both_sides_of_four_diameters() {
    // Memory, Par. 182; for a thinned-out row P is the outer less the inner pitch, so the bend lies at 8 d.
    let gap = |name: &str, p: f64| proportion::row_gap(Plain, &US_CODE.rules, &form(name), p, 1, 20.0, 20.0).0;
    for (name, bend, slope) in [("lap 2", 80.0, 0.1), ("unequal 2", 160.0, 0.05)] {
        for p in [bend - 20.0, bend * (1.0 - MORE), bend] {
            assert_eq!(gap(name, p), 35.0, "{name} {p}");
        }
        for more in [1e-4, 0.1, 20.0] {
            assert!(near(gap(name, bend + more), 35.0 + slope * more), "{name} {more}");
        }
    }
}

#[test]
fn correction_for_close_rows_starts_below_the_prescribed_distance() {
    // Reg. 184(d): 100 [P - (2 - actual/prescribed) D]/P instead of 100 (P - D)/P; P 60, D 20, prescribed 33.2.
    let limit = 0.33 * 60.0 + 0.67 * 20.0;
    let plate = |g: f64| {
        let s = start(&[("g", g)]);
        check(&joint(form("lap 2"), &s).unwrap(), &materials(&s), &INDIAN.rules).unwrap().percentages.plate
    };
    for g in [limit, limit * (1.0 - HAIR), limit + 5.0] {
        assert!(near(plate(g), 100.0 * 40.0 / 60.0), "{g}");
    }
    for part in [1.0 - MORE, 0.9, 0.5] {
        assert!(near(plate(limit * part), 100.0 * (60.0 - (2.0 - part) * 20.0) / 60.0), "{part}");
    }
}

#[test]
fn nothing_left_between_close_rows() {
    // Reg. 184(d): P - (2 - ratio) D = 0 at P 24, D 20 and a ratio of 0.8; prescribed 0.33 x 24 + 0.67 x 20 = 21.32.
    let found = |g: f64| {
        let s = start(&[("p", 24.0), ("g", g)]);
        check(&joint(form("lap 2"), &s).unwrap(), &materials(&s), &INDIAN.rules).unwrap()
    };
    let limit = 0.8 * 21.32;
    let left = found(limit * (1.0 + MORE));
    assert!(left.efficiency > 0.0 && left.percentages.plate > 0.0);
    assert!(left.findings.find(Subject::NetSection, 0).is_none());
    for g in [limit * (1.0 - MORE), 16.5] {
        let a = found(g);
        assert_eq!((a.tear_outer, a.governing.strength, a.efficiency, a.credited), (0.0, 0.0, 0.0, 0.0), "{g}");
        assert_eq!((a.percentages.plate, a.runner_up_ratio()), (0.0, 1.0), "{g}");
        assert_eq!(a.findings.find(Subject::NetSection, 0).unwrap().verdict, Verdict::Open, "{g}");
    }
}

#[test]
fn combined_percentage_only_where_all_inner_rows_have_twice_the_rivets() {
    // Reg. 177, Eq. (4): 100 (P - 2 D)/P + 100 A C S1/(P T S), P 100, D 20, A = 100 pi, T 10, S 80, S1 30.
    let checked = |name: &str| {
        let s = start(&[("p", 100.0), ("ss", 30.0)]);
        check(&joint(form(name), &s).unwrap(), &materials(&s), &INDIAN.rules).unwrap()
    };
    let area = std::f64::consts::PI * 100.0;
    for (name, c) in [("unequal 2", 1.0), ("unequal 3", 1.0), ("double 3 omitted", 1.875), ("lap 3 omitted", 1.0)] {
        let combined = checked(name).percentages.combined.unwrap();
        assert!(near(combined, 60.0 + 100.0 * area * c * 30.0 / 80_000.0), "{name}");
    }
    let others = ["lap 2", "double 2", "unequal 4", "rows double 1x2 3x2", "rows double 1x1 2x2 3x2"];
    for name in others.into_iter().chain(["rows lap 1x1 2x1 2x1"]) {
        assert_eq!(checked(name).percentages.combined, None, "{name}");
    }
    // J counts the mode in the same cases: (100 - 40) x 800 and the outer rivet, or (100 - 20) x 800.
    let a = checked("unequal 3");
    assert!(near(a.by_book.strength, 48_000.0 + area * 30.0) && near(a.governing.strength, a.by_book.strength));
    let a = checked("rows double 1x1 2x2 3x2");
    assert!(near(a.by_book.strength, 64_000.0) && near(a.governing.strength, 48_000.0 + area * 30.0));
}

#[test]
fn margins() {
    edge(&INDIAN.rules, "lap 1", &[], Subject::MarginLeast, 0, ("m", LEAST), 30.0);
    edge(&US_CODE.rules, "lap 1", &[], Subject::MarginLeast, 0, ("m", LEAST), 30.0);
    edge(&US_CODE.rules, "lap 1", &[], Subject::MarginGreatest, 0, ("m", MOST), 35.0);
    // 12 t = 120 in 10 mm plate; 6 in = 152.4 from 12.7 mm plate on.
    edge(&STRUCTURAL.rules, "lap 1", &[], Subject::MarginGreatest, 0, ("m", MOST), 120.0);
    edge(&STRUCTURAL.rules, "lap 1", &[("t", 13.0)], Subject::MarginGreatest, 0, ("m", MOST), 152.4);
}

#[test]
fn straps_by_factor_and_by_minimum_the_larger() {
    // 0.625 t against 10 mm (memory): equal at 16 mm plate.
    let least = |t: f64| {
        let covered = Covered { plate: t, strip: 60.0, outer: (1.0, 20.0), butt: (1.0, 20.0) };
        proportion::strap_least(Plain, &INDIAN.rules, &form("double 1"), Strap::Wide, &covered)
    };
    assert_eq!(least(12.0), Limit::At(10.0, Entry::STRAP_LEAST));
    assert_eq!(least(16.0 * (1.0 - MORE)), Limit::At(10.0, Entry::STRAP_LEAST));
    assert_eq!(least(16.0), Limit::At(10.0, Entry::STRAP_EQUAL));
    assert_eq!(least(17.6), Limit::At(11.0, Entry::STRAP_EQUAL));
    edge(&INDIAN.rules, "double 1", &[("t", 12.0)], Subject::WideStrap, 0, ("b", LEAST), 10.0);
    edge(&INDIAN.rules, "double 1", &[("t", 24.0)], Subject::NarrowStrap, 0, ("b", LEAST), 15.0);
    edge(&METRIC.rules, "single 1", &[("t", 16.0)], Subject::WideStrap, 0, ("b", LEAST), 18.0);
    // Wide 0.75 x 24 and narrow 0.625 x 24; 0.625 x 24 x (100 - 20)/(100 - 40) with every other rivet left out.
    edge(&METRIC.rules, "unequal 2", &[("t", 24.0), ("bn", 15.0)], Subject::WideStrap, 0, ("bw", LEAST), 18.0);
    edge(&METRIC.rules, "unequal 2", &[("t", 24.0), ("bw", 18.0)], Subject::NarrowStrap, 0, ("bn", LEAST), 15.0);
    let omitted = [("t", 24.0), ("p", 100.0)];
    edge(&METRIC.rules, "double 2 omitted", &omitted, Subject::WideStrap, 0, ("b", LEAST), 20.0);
    // Par. 19, Table 1 (memory): 5/16 in on 3/8 in plate. Marine III.11: 0.75 s.
    edge(&US_CODE.rules, "double 1", &[("t", 9.525)], Subject::WideStrap, 0, ("b", LEAST), 7.9375);
    edge(&GERMAN_1908.rules, "double 1", &[("t", 12.0)], Subject::WideStrap, 0, ("b", LEAST), 9.0);
    // Marine III.11: s + 3.
    edge(&GERMAN_1908.rules, "single 1", &[], Subject::WideStrap, 0, ("b", LEAST), 13.0);
}

#[test]
fn plate_hole_clearance_grip_scallop() {
    edge(&GERMAN_1908.rules, "lap 1", &[], Subject::PlateThickness, 0, ("t", LEAST), 7.0);
    edge(&INDIAN.rules, "lap 1", &[], Subject::PlateThickness, 0, ("t", LEAST), 6.35);
    // Marine III.12: s <= d <= 2 s in 10 mm plate; holes of 20 and rivets of 19.
    edge(&GERMAN_1908.rules, "lap 1", &[], Subject::HoleLeast, 1, ("d", LEAST), 10.0);
    edge(&GERMAN_1908.rules, "lap 1", &[], Subject::HoleGreatest, 1, ("d", MOST), 20.0);
    edge(&GERMAN_1908.rules, "lap 1", &[], Subject::Clearance, 1, ("dr", LEAST), 19.0);
    // 1/16 in: 3/4 in rivets in holes of up to 13/16.
    edge(&US_CODE.rules, "lap 1", &[("dr", 19.05)], Subject::Clearance, 1, ("d", MOST), 20.6375);
    // Grip 4 D: a 10 mm plate and two straps of 35 on a 20 mm rivet.
    edge(&STRUCTURAL.rules, "double 1", &[], Subject::Grip, 0, ("b", MOST), 35.0);
    // Marine III.13: 8 x the thinner of strap and plate.
    edge(&GERMAN_1908.rules, "double 1", &[("b", 9.0)], Subject::Scallop, 0, ("p", MOST), 72.0);
    edge(&GERMAN_1908.rules, "double 1", &[("b", 12.0)], Subject::Scallop, 0, ("p", MOST), 80.0);
}

#[test]
fn credited_efficiency_at_its_cap() {
    // d 30: J = (p - 30)/p is 0.85 at p = 200.
    let found = |p: f64| {
        let s = start(&[("p", p), ("d", 30.0), ("ss", 900.0), ("sc", 3000.0)]);
        let a = check(&joint(form("double 1"), &s).unwrap(), &materials(&s), &INDIAN.rules).unwrap();
        (a.credited, a.findings.find(Subject::CreditCap, 0).map(|f| f.verdict))
    };
    for p in [200.0, 200.0 * (1.0 + HAIR)] {
        let (credited, note) = found(p);
        assert!(near(credited, 0.85) && note.is_none(), "{p}");
    }
    let (credited, note) = found(199.0);
    assert!(near(credited, 169.0 / 199.0) && note.is_none());
    let (credited, note) = found(201.0);
    assert!(credited == 0.85 && note == Some(Verdict::Note));
}

#[test]
fn room_at_half_as_strong_again() {
    // Bearing 20 x 10 x 900 = 180 000 against (p - 20) x 800: 1.5 at p = 170.
    let note = |p: f64| {
        let s = start(&[("p", p), ("ss", 4000.0), ("sc", 900.0)]);
        verdict(&METRIC.rules, form("double 1"), &s, Subject::Room, 0)
    };
    for p in [170.0, 170.0 * (1.0 + HAIR), 170.0 * (1.0 - HAIR), 169.0] {
        assert_eq!(note(p), Some(Verdict::Note), "{p}");
    }
    assert_eq!(note(170.0 * (1.0 + MORE)), None);
}

#[test]
fn lines_of_tables() {
    // State rules: 3/8 in is the last thickness of 13/16, then 15/16; Par. 19 (memory): 3/8 and 13/32 have 5/16.
    let inch = 25.4;
    for (t, hole, strap) in [(0.375, 0.8125, 0.3125), (0.406_25, 0.8125, 0.3125), (0.4375, 0.9375, 0.375)] {
        for t in [t, t * (1.0 + HAIR), t * (1.0 - MORE)] {
            assert_eq!(US_CODE.rules.table_hole(t * inch).unwrap().1, hole * inch, "{t}");
            assert_eq!(US_CODE.rules.table_strap(t * inch).unwrap().1, strap * inch, "{t}");
        }
    }
    let next = 0.406_25 * (1.0 + MORE) * inch;
    assert_eq!(US_CODE.rules.table_hole(next).unwrap().1, 0.9375 * inch);
    assert_eq!(US_CODE.rules.table_strap(next).unwrap().1, 0.375 * inch);
    assert!(US_CODE.rules.table_hole(0.625 * (1.0 + MORE) * inch).is_none());
    assert!(US_CODE.rules.table_strap(1.25 * (1.0 + MORE) * inch).is_none());
}

#[test]
fn standard_holes() {
    let found = |d: f64| {
        let s = start(&[("d", d)]);
        let a = check(&joint(form("lap 1"), &s).unwrap(), &materials(&s), &METRIC.rules).unwrap();
        a.findings.find(Subject::HoleStandard, 1).map(|f| (f.verdict, f.required))
    };
    for d in [21.0, 21.0 * (1.0 - HAIR), 21.0 * (1.0 + HAIR)] {
        assert_eq!(found(d), Some((Verdict::Met, 21.0)), "{d}");
    }
    assert_eq!(found(21.0 * (1.0 - MORE)), Some((Verdict::Open, 21.0)));
    assert_eq!(found(21.0 * (1.0 + MORE)), Some((Verdict::Open, 23.0)));
    // 6 sqrt 12.25 = 21 exactly; a hair more is still 21, more is the next: 23.
    let steel = materials(&start(&[]));
    let hole = |t: f64| size(&Brief::new(form("lap 2"), mm(t), steel), &METRIC.rules).unwrap().hole.hole;
    assert_eq!(
        [12.25, 12.25 * (1.0 + HAIR), 12.25 * (1.0 - MORE), 12.25 * (1.0 + MORE)].map(hole),
        [21.0, 21.0, 21.0, 23.0]
    );
    // Whole millimetres where the book has no series: sqrt(50 x 18) - 4 = 26.
    let steel = materials(&start(&[]));
    let hole = |t: f64| size(&Brief::new(form("lap 2"), mm(t), steel), &GERMAN_1908.rules).unwrap().hole.hole;
    assert_eq!([18.0, 18.0 * (1.0 + HAIR), 18.0 * (1.0 + MORE)].map(hole), [26.0, 26.0, 27.0]);
}

#[test]
fn dimensions_on_exact_steps_stay() {
    // Margin 1.5 x 22 = 33; chain rows 2 x 22 = 44; straps 0.625 x 16 = 10.
    let sized = |d: f64, t: f64| {
        let s = start(&[("ss", 100.0), ("sc", 300.0)]);
        let brief = Brief::new(form("double 2 chain"), mm(t), materials(&s)).hole(mm(d), None).pitch(mm(80.0));
        let joint = size(&brief, &METRIC.rules).unwrap().joint;
        let of = |x: Option<seamwright::quantities::Length>| x.unwrap().to_mm();
        [of(joint.margin()), of(joint.back_pitch(1)), of(joint.wide_strap())]
    };
    assert_eq!(sized(22.0, 16.0), [33.0, 44.0, 10.0]);
    assert_eq!(sized(22.0 * (1.0 + HAIR), 16.0 * (1.0 + HAIR)), [33.0, 44.0, 10.0]);
    assert_eq!(sized(22.0 * (1.0 + MORE), 16.0 * (1.0 + MORE)), [34.0, 45.0, 11.0]);
    assert_eq!(sized(22.0 * (1.0 - MORE), 16.0 * (1.0 - MORE)), [33.0, 44.0, 10.0]);
}

#[test]
fn what_can_be_built() {
    let build = |name: &str, changes: &[(&str, f64)]| joint(form(name), &start(changes));
    // Holes that fill the pitch; a rivet as large as its hole; a margin of half a hole; rows that touch.
    for p in [20.0, 20.0 * (1.0 + HAIR), 19.0] {
        assert_eq!(of(build("lap 1", &[("p", p)])), (ErrorKind::HolesFillPitch, Field::Pitch), "{p}");
    }
    assert!(build("lap 1", &[("p", 20.0 * (1.0 + MORE))]).is_ok());
    assert!(build("lap 1", &[("dr", 20.0)]).is_ok() && build("lap 1", &[("dr", 20.0 * (1.0 + HAIR))]).is_ok());
    assert_eq!(of(build("lap 1", &[("dr", 20.0 * (1.0 + MORE))])), (ErrorKind::RivetExceedsHole, Field::Rivet));
    for m in [10.0, 10.0 * (1.0 + HAIR), 5.0] {
        assert_eq!(of(build("lap 1", &[("m", m)])), (ErrorKind::HoleCutsEdge, Field::Margin), "{m}");
    }
    assert!(build("lap 1", &[("m", 10.0 * (1.0 + MORE))]).is_ok());
    // Chain: 20 apart. Zig-zag, p 24: 12 across, so 16 apart (12, 16, 20).
    for (name, p, g) in [("lap 2 chain", 60.0, 20.0), ("lap 2", 24.0, 16.0)] {
        for g in [g, g * (1.0 + 1e-13), g * (1.0 - MORE)] {
            let refused = of(build(name, &[("p", p), ("g", g)]));
            assert_eq!(refused, (ErrorKind::RowsOverlap, Field::BackPitch), "{name} {g}");
        }
        assert!(build(name, &[("p", p), ("g", g * (1.0 + MORE))]).is_ok(), "{name}");
    }
}

/// Heads 1.6 rivets wide (custom of the trade): below, at and above the room that they need, by hand.
#[test]
fn heads_need_room() {
    let heads = |spec: JointSpec, subject: Subject, row: u8| {
        let a = check(&spec.build().unwrap(), &materials(&start(&[])), &METRIC.rules).unwrap();
        a.findings.find(subject, row).map(|f| (f.verdict, f.required, (1e6 * f.provided).round() / 1e6))
    };
    // Unequal straps, 20 mm rivets in 21 mm holes: a head reaches 16 mm. Row 2 lies 35 mm within the narrow strap: 51 mm.
    let butt = |gap: f64| {
        let spec = JointSpec::new(Form::unequal_straps(2).unwrap(), mm(120.0), mm(12.0), mm(21.0)).margin(mm(35.0));
        spec.rivet(mm(20.0)).straps(mm(10.0), mm(8.0)).back_pitch(1, mm(gap))
    };
    for (gap, expected) in [(50.9, Verdict::Open), (51.0, Verdict::Met), (60.0, Verdict::Met)] {
        let found = heads(butt(gap), Subject::HeadAtStrap, 1);
        assert_eq!(found, Some((expected, 51.0, gap)), "{gap}");
    }
    let equal = JointSpec::new(Form::double_strap(2).unwrap(), mm(80.0), mm(12.0), mm(21.0)).margin(mm(35.0));
    assert_eq!(heads(equal.strap(mm(8.0)).back_pitch(1, mm(40.0)), Subject::HeadAtStrap, 1), None);
    // In a row: 32 mm.
    let lap = |p: f64| JointSpec::new(Form::lap(1).unwrap(), mm(p), mm(12.0), mm(21.0)).rivet(mm(20.0));
    assert_eq!(heads(lap(31.9), Subject::HeadsInRow, 1), Some((Verdict::Open, 32.0, 31.9)));
    assert_eq!(heads(lap(32.0), Subject::HeadsInRow, 1), None);
    // Two rows of a zig-zag 48 mm in pitch are 24 mm apart along: heads touch where sqrt(g^2 + 24^2) is 32, so
    // g = 21.166; in chain where g itself is 32.
    let two =
        |form: Form, g: f64| JointSpec::new(form, mm(48.0), mm(12.0), mm(21.0)).rivet(mm(20.0)).back_pitch(1, mm(g));
    let zigzag = Form::lap(2).unwrap();
    let (verdict, required, provided) = heads(two(zigzag, 18.0), Subject::HeadsOfRows, 1).unwrap();
    assert_eq!((verdict, provided), (Verdict::Open, 18.0));
    assert!((required - (32.0_f64.powi(2) - 24.0_f64.powi(2)).sqrt()).abs() < 1e-9, "{required}");
    assert_eq!(heads(two(zigzag, 21.2), Subject::HeadsOfRows, 1), None);
    assert_eq!(heads(two(zigzag.chain(), 31.9), Subject::HeadsOfRows, 1), Some((Verdict::Open, 32.0, 31.9)));
    assert_eq!(heads(two(zigzag.chain(), 32.0), Subject::HeadsOfRows, 1), None);
}
