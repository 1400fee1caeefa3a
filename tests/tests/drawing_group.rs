//! Drawings of groups: rivets where they are, forces as worked out by hand, legible, whole or refused.

mod drawing_support;
#[allow(dead_code, reason = "other tests use the rest")]
#[path = "group/cases.rs"]
mod group_cases;

use proptest::prelude::*;
use proptest::test_runner::Config;
use roxmltree::Document;
use seamwright::bounds::Field;
use seamwright::drawing::{DrawError, Line, Point, TitleBlock, Units, sheet_group, svg_group, svg_group_into};
use seamwright::error::ErrorKind;
use seamwright::group::{Group, GroupLoad, GroupStress, check_group};
use seamwright::quantities::{Force, Moment, Stress};
use seamwright::rules::{METRIC, STRUCTURAL};

use drawing_support::{Room, Seen, every_size, legible, mm, struck};
use group_cases::case;

const TITLE: TitleBlock<'static> = TitleBlock::new("Hoist bracket (invented)", "QM-3");

fn group(places: &[(f64, f64)], hole: f64) -> Group {
    let places: Vec<_> = places.iter().map(|(x, y)| (mm(*x), mm(*y))).collect();
    Group::at(&places).unwrap().hole(mm(hole)).rivet(mm(hole - 1.5)).plate(mm(12.0))
}

fn grid(columns: usize, rows: usize, across: f64, up: f64) -> Vec<(f64, f64)> {
    (0..rows).flat_map(|j| (0..columns).map(move |i| (across * i as f64, up * j as f64))).collect()
}

fn load(x: f64, y: f64, at: (f64, f64)) -> GroupLoad {
    GroupLoad::force(Force::kn(x), Force::kn(y), mm(at.0), mm(at.1))
}

fn stress() -> GroupStress {
    GroupStress::new(Stress::mpa(90.0)).bearing(Stress::mpa(200.0))
}

fn seen(group: &Group, load: &GroupLoad, title: &TitleBlock<'_>) -> Seen {
    Seen::drawn(|canvas| sheet_group(canvas, group, load, &stress(), &STRUCTURAL.rules, title)).unwrap()
}

fn text(group: &Group, load: &GroupLoad) -> String {
    let mut out = String::new();
    svg_group(&mut out, group, load, &stress(), &STRUCTURAL.rules, &TITLE).unwrap();
    out
}

/// Millimetres of the sheet for a newton, by what the sheet says: "Forces: 10 mm drawn = 20 kN".
fn per_newton(seen: &Seen) -> f64 {
    let said = seen.joined("force_scale");
    let (_, tail) = said.split_once(" = ").unwrap();
    let (figure, unit) = tail.split_once(' ').unwrap();
    // 1 lbf is 0.45359237 kg times 9.80665 m/s2.
    let newtons = if unit == "kN" { 1000.0 } else { 0.453_592_37 * 9.806_65 };
    10.0 / (figure.parse::<f64>().unwrap() * newtons)
}

fn has_tip(seen: &Seen, x: f64, y: f64) -> bool {
    seen.tips.iter().any(|tip| (tip.x - x).hypot(tip.y - y) < 1e-6)
}

/// The groups of the trade, each with a load.
fn usual() -> Vec<(&'static str, Group, GroupLoad)> {
    let circle: Vec<_> =
        (0..6).map(|i| (f64::from(60 * i)).to_radians()).map(|a| (100.0 * a.cos(), 100.0 * a.sin())).collect();
    let u = [(0.0, 200.0), (0.0, 100.0), (0.0, 0.0), (100.0, 0.0), (200.0, 0.0), (200.0, 100.0), (200.0, 200.0)];
    let pair = group(&grid(2, 3, 90.0, 80.0), 21.0);
    vec![
        ("two columns", pair, load(0.0, -32.0, (345.0, 80.0))),
        ("from the left", pair, load(0.0, 32.0, (-200.0, 80.0))),
        ("aslant", pair, load(25.0, -20.0, (345.0, 120.0))),
        ("from far", pair, load(0.0, -6.0, (1800.0, 80.0))),
        ("effective", group(&grid(2, 3, 88.9, 76.2), 23.8), load(0.0, -32.0, (304.8, 76.2)).effective(3)),
        ("three columns", group(&grid(3, 3, 80.0, 80.0), 21.0), load(0.0, -60.0, (300.0, 80.0))),
        ("a line", group(&grid(1, 4, 0.0, 100.0), 17.5), load(0.0, -25.0, (100.0, 0.0))),
        ("a U", group(&u, 21.0), load(0.0, -40.0, (350.0, 100.0))),
        ("a circle", group(&circle, 21.0), GroupLoad::couple(Moment::kn_m(-6.0))),
        ("a circle under both", group(&circle, 21.0), load(20.0, -30.0, (260.0, 40.0)).and_couple(Moment::kn_m(3.0))),
        ("one rivet", group(&[(10.0, 10.0)], 21.0), load(0.0, -12.0, (10.0, 200.0))),
        ("through the centroid", group(&grid(2, 5, 100.0, 70.0), 21.0), load(0.0, -120.0, (50.0, 140.0))),
        ("full", group(&grid(4, 8, 75.0, 75.0), 21.0), load(0.0, -200.0, (500.0, 300.0))),
    ]
}

#[test]
fn svg_is_well_formed_and_rivets_are_to_scale() {
    let out = text(&group(&grid(2, 3, 90.0, 80.0), 21.0), &load(0.0, -32.0, (345.0, 80.0)));
    let document = Document::parse(&out).unwrap();
    let number = |n: &roxmltree::Node<'_, '_>, name: &str| n.attribute(name).unwrap().parse::<f64>().unwrap();
    let holes: Vec<_> = document.descendants().filter(|n| n.attribute("class") == Some("hole")).collect();
    assert_eq!(holes.len(), 6);
    // The title block says 1:2.5: 90 mm is 36 mm, 80 mm is 32 mm, a hole of 21 mm has a radius of 4.2 mm; y is up.
    assert!(document.descendants().any(|n| n.text() == Some("1:2.5")));
    let (x, y) = (number(&holes[0], "cx"), number(&holes[0], "cy"));
    for (hole, place) in holes.iter().zip(grid(2, 3, 36.0, 32.0)) {
        assert!((number(hole, "r") - 4.2).abs() < 1e-4);
        assert!((number(hole, "cx") - x - place.0).abs() < 1e-3 && (y - number(hole, "cy") - place.1).abs() < 1e-3);
    }
    // One force is the critical one's, with a ring round its rivet, no. 2 at (90, 0).
    let ring = document.descendants().find(|n| n.has_tag_name("circle") && n.attribute("class") == Some("critical"));
    assert!((number(&ring.unwrap(), "cx") - x - 36.0).abs() < 1e-3 && (number(&ring.unwrap(), "cy") - y).abs() < 1e-3);
    let count = |class: &str| {
        document.descendants().filter(|n| n.has_tag_name("line") && n.attribute("class") == Some(class)).count()
    };
    // Each with the sample in the legend.
    assert_eq!((count("force"), count("critical"), count("direct"), count("turning"), count("load")), (6, 2, 7, 7, 1));
    assert_eq!(
        document.descendants().find(|n| n.has_tag_name("title")).and_then(|n| n.text()),
        Some("Group of rivets: Hoist bracket (invented)")
    );
}

/// Bhandari, Design of Machine Elements, Example 8.24: four rivets in a line, 100 mm apart, 25 kN hanging 100 mm beside
/// it. Direct share 25/4 = 6.25 kN; turning 25 x 100 x 150/(2 (150^2 + 50^2)) = 7.5 kN at the ends, 2.5 kN inside.
#[test]
fn forces_are_drawn_as_worked_out_by_hand() {
    for units in [Units::Millimetre, Units::Inch] {
        let title = TitleBlock { units, ..TITLE };
        let seen = seen(&group(&grid(1, 4, 0.0, 100.0), 17.5), &load(0.0, -25.0, (100.0, 0.0)), &title);
        let per = per_newton(&seen);
        for ((x, y, _), turning) in seen.holes.iter().zip([-7500.0, -2500.0, 2500.0, 7500.0]) {
            // Down on the sheet is y.
            assert!(has_tip(&seen, *x, y + 6250.0 * per), "direct share");
            assert!(has_tip(&seen, x + turning * per, y + 6250.0 * per), "force");
        }
        let [first, .., last] = seen.holes[..] else { panic!("four holes") };
        let scale = (first.1 - last.1) / 300.0;
        // The load at its point, level with the first rivet; the centre where v = 0: e/x = Ip/(n e^2) gives
        // x = -50000/(4 x 100) = -125 mm, level with the centroid.
        let point = Point { x: first.0 + 100.0 * scale, y: first.1 };
        let dots: Vec<_> = seen.circles.iter().filter(|c| c.0 == Line::Load).collect();
        assert!(!dots.is_empty() && dots.iter().all(|c| (c.1.x - point.x).hypot(c.1.y - point.y) < 1e-9));
        let (_, from, to) = seen.strokes.iter().find(|s| s.0 == Line::Load).unwrap();
        assert!(from == &point && to.x == from.x && to.y > from.y);
        let centre = (first.0 - 125.0 * scale, 0.5 * (first.1 + last.1));
        let through = |(kind, a, b): &&(Line, Point, Point)| {
            *kind == Line::Outline && ((a.x + b.x) / 2.0 - centre.0).hypot((a.y + b.y) / 2.0 - centre.1) < 1e-6
        };
        assert_eq!(seen.strokes.iter().filter(through).count(), 2, "a cross at the instantaneous centre");
        if units == Units::Millimetre {
            assert_eq!(seen.joined("eccentricity"), "e = 100");
            assert_eq!((seen.joined("row"), seen.joined("column")), ("100 100 100".into(), String::new()));
            assert_eq!(seen.joined("load"), "P = 25 kN, down");
            assert_eq!(seen.joined("centroid"), "G, centroid, x, y: 0, 150");
            assert_eq!(seen.joined("centre"), "C, instant. centre: -125, 150");
            assert_eq!(seen.joined("moment"), "Moment about G: -2500 kN mm");
            // sqrt(6.25^2 + 7.5^2) and sqrt(6.25^2 + 2.5^2).
            assert_eq!(seen.joined("rivet_force"), "1: 9.763 2: 6.731 3: 6.731 4: 9.763");
            assert_eq!(seen.joined("hole"), "\u{2300} 17.5 hole, rivet 16");
        } else {
            // 100/25.4; 25000 N over 4.4482216 N.
            assert_eq!(seen.joined("eccentricity"), "e = 3.9370");
            assert_eq!(seen.joined("load"), "P = 5620.22 lbf, down");
        }
    }
}

#[test]
fn words_of_the_sheet() {
    let title = TitleBlock { rule_book: STRUCTURAL.title, ..TITLE };
    let far = load(0.0, -25.0, (100.0, 0.0));
    let line = group(&grid(1, 4, 0.0, 100.0), 17.5);
    let sheet = seen(&line, &far, &title);
    assert_eq!(sheet.joined("caution"), seamwright::CAUTION);
    let block = sheet.joined("title");
    for part in
        ["4 rivets, single shear,", "plate 12 mm", "QM-3", seamwright::VERSION, "Structural practice", "invented"]
    {
        assert!(block.contains(part), "{part}: {block}");
    }
    // By the hole, 17.5 mm: 9762.8/(pi/4 x 17.5^2) = 40.59 MPa of 90; bearing 9762.8/(17.5 x 12) = 46.49 of 200.
    assert!(block.contains("no. 1: shear 40.59 MPa, 45.1 % of the permitted"), "{block}");
    assert!(!block.contains("NOT ENOUGH"));
    assert!(seen(&line, &load(0.0, -60.0, (100.0, 0.0)), &title).joined("title").contains("NOT ENOUGH"));
    let notes = sheet.joined("note");
    assert!(notes.contains("No edges of the plate are drawn") && !notes.contains("nearer"));
    // 1800 mm beside 160 mm: the true arm is written, and that it is not to scale.
    let pair = group(&grid(2, 3, 90.0, 80.0), 21.0);
    let broken = seen(&pair, &load(0.0, -6.0, (1845.0, 80.0)), &title);
    assert_eq!(broken.joined("eccentricity"), "e = 1800");
    assert!(broken.joined("note").contains("The load is drawn nearer than to scale."));
    assert!(broken.strokes.iter().any(|s| s.0 == Line::Break));
    // (1 + 3)/2 = 2 in off 10 1/4 in, the centroid being 1 3/4 in from the left column.
    let old = load(0.0, -32.0, (304.8, 76.2)).effective(3);
    let inches = TitleBlock { units: Units::Inch, ..title };
    assert_eq!(
        seen(&group(&grid(2, 3, 88.9, 76.2), 23.8), &old, &inches).joined("eccentricity"),
        "e = 10 1/4, taken as 8 1/4"
    );
    // Places that no lines hold are listed, from the first rivet.
    let odd = group(&[(10.0, 5.0), (73.0, 22.0), (140.0, -15.0), (105.0, 93.0), (30.0, 125.0)], 17.5);
    let odd = seen(&odd, &far, &title);
    assert!(odd.joined("note").contains("Rivets from no. 1, x and y: 2: 63, 17; 3: 130, -20; 4: 95, 88; 5: 20, 120."));
    assert_eq!(odd.joined("row") + &odd.joined("column"), "");
    // Sizes that differ are told by number.
    let mixed = pair.one(1, mm(25.0), None).unwrap().one(4, mm(25.0), None).unwrap();
    let mixed = seen(&mixed, &far, &title);
    assert_eq!(mixed.joined("hole"), "nos. 1, 4: \u{2300} 25 hole nos. 2-3, 5-6: \u{2300} 21 hole, rivet 19.5");
}

/// The head of a couple: an arc runs from the left end over the top to the right one.
#[test]
fn a_couple_turns_the_right_way() {
    let circle = usual().remove(8).1;
    for (couple, left) in [(4.0, true), (-4.0, false)] {
        let seen = seen(&circle, &GroupLoad::couple(Moment::kn_m(couple)), &TITLE);
        let [(from, top), (_, to)] = seen.arcs[..] else { panic!("two arcs") };
        assert!(from.x < top.x && top.x < to.x && top.y < from.y);
        let near = |p: Point| seen.tips.iter().any(|t| (t.x - p.x).hypot(t.y - p.y) < 3.5 && t.y > p.y);
        assert_eq!((near(from), near(to)), (left, !left));
        assert_eq!(seen.joined("couple"), "couple 4000 kN mm");
        // Six rivets 100 mm off the middle: 4000 kN mm/(6 x 100 mm) = 6.667 kN each, at right angles to its radius.
        let (x, y) =
            (seen.holes.iter().map(|h| h.0).sum::<f64>() / 6.0, seen.holes.iter().map(|h| h.1).sum::<f64>() / 6.0);
        for (u, v, _) in &seen.holes {
            let (dx, dy) = (u - x, v - y);
            let long = 4e6 / 600.0 * per_newton(&seen) / dx.hypot(dy);
            // Anticlockwise to the eye, y down: the vector (dx, dy) turned to (dy, -dx).
            let sign = if left { 1.0 } else { -1.0 };
            assert!(has_tip(&seen, u + sign * dy * long, v - sign * dx * long));
        }
    }
}

/// What a drawing office would send back: a label over another or under a line.
#[test]
fn usual_groups_read_well() {
    let kinds = [
        Line::Outline,
        Line::Hole,
        Line::Centre,
        Line::Dimension,
        Line::Force,
        Line::Critical,
        Line::Load,
        Line::Direct,
        Line::Turning,
        Line::Frame,
    ];
    for (name, group, load) in usual() {
        for units in [Units::Millimetre, Units::Inch] {
            let seen = seen(&group, &load, &TitleBlock { units, rule_book: STRUCTURAL.title, ..TITLE });
            legible(&seen).unwrap_or_else(|e| panic!("{name}: {e}"));
            let wrong = struck(&seen, &kinds);
            assert!(wrong.is_empty(), "{name}, {units:?}: {}", wrong.join("\n"));
        }
    }
}

#[test]
fn the_text_over_one_arm_keeps_off_the_other_arm() {
    // Found by random groups: the text over the arm along x, longer than the arm, ran into that beside the arm along y.
    let rivets: [(f64, f64, f64); 30] = [
        (180.0, 0.0, 15.9),
        (270.0, 0.0, 8.0),
        (360.0, -17.0, 21.2),
        (540.0, 0.0, 13.1),
        (-12.0, 90.0, 22.6),
        (270.0, 90.0, 8.0),
        (360.0, 70.0, 25.4),
        (450.0, 90.0, 8.0),
        (630.0, 90.0, 10.9),
        (0.0, 180.0, 13.0),
        (77.0, 180.0, 25.2),
        (360.0, 180.0, 8.0),
        (540.0, 180.0, 20.9),
        (77.0, 270.0, 13.8),
        (180.0, 270.0, 18.0),
        (450.0, 270.0, 8.0),
        (649.0, 270.0, 18.5),
        (-19.0, 360.0, 11.0),
        (270.0, 360.0, 8.0),
        (360.0, 360.0, 8.0),
        (450.0, 360.0, 8.0),
        (540.0, 360.0, 24.5),
        (0.0, 450.0, 25.5),
        (90.0, 450.0, 8.0),
        (175.0, 450.0, 21.9),
        (270.0, 450.0, 16.4),
        (360.0, 450.0, 8.0),
        (450.0, 450.0, 18.9),
        (540.0, 450.0, 8.0),
        (630.0, 450.0, 18.7),
    ];
    let places = rivets.map(|(x, y, _)| (mm(x), mm(y)));
    let bare = Group::at(&places).unwrap();
    let group = rivets.iter().zip(1..).fold(bare, |group, (r, number)| group.one(number, mm(r.2), None).unwrap());
    let load = load(-72.0, -81.0, (942.0, -870.0)).and_couple(Moment::kn_m(8.54));
    let seen = seen(&group, &load, &TitleBlock { units: Units::Inch, rule_book: STRUCTURAL.title, ..TITLE });
    legible(&seen).unwrap();
}

#[test]
fn what_is_wrong_is_refused_and_nothing_is_written() {
    let (good, hang) = (group(&grid(2, 2, 80.0, 80.0), 21.0), load(0.0, -9.0, (200.0, 0.0)));
    let bare = Group::at(&[(mm(0.0), mm(0.0)), (mm(80.0), mm(0.0))]).unwrap();
    let steel = GroupStress::new(Stress::mpa(60.0));
    let cases = [
        (bare, hang, steel, ErrorKind::Missing, Field::Hole),
        (good.hole(mm(90.0)), hang, steel, ErrorKind::HolesOverlap, Field::RivetDistance),
        (good.planes(3), hang, steel, ErrorKind::TooLarge, Field::ShearPlanes),
        (good.plate(mm(f64::NAN)), hang, steel, ErrorKind::NotFinite, Field::Plate),
        (good, GroupLoad::couple(Moment::n_mm(0.0)), steel, ErrorKind::TooSmall, Field::Load),
        (good, load(f64::INFINITY, 0.0, (0.0, 0.0)), steel, ErrorKind::NotFinite, Field::LoadX),
        (good, load(1.0, 0.0, (0.0, 1e9)), steel, ErrorKind::TooLarge, Field::LoadAtY),
        (good, hang, GroupStress::new(Stress::mpa(-1.0)), ErrorKind::TooSmall, Field::Shear),
        (good, load(0.0, -9.0, (60.0, 0.0)).effective(9), steel, ErrorKind::TooSmall, Field::Eccentricity),
        (group(&[(0.0, 0.0)], 21.0), hang, steel, ErrorKind::RivetTurns, Field::Couple),
    ];
    let mut out = String::new();
    for (group, load, stress, kind, field) in cases {
        match svg_group(&mut out, &group, &load, &stress, &METRIC.rules, &TITLE) {
            Err(DrawError::Input(e)) => {
                assert_eq!((e.kind, e.field), (kind, field));
                assert_eq!(e.to_string(), check_group(&group, &load, &stress, &METRIC.rules).unwrap_err().to_string());
            }
            other => panic!("{field:?}: {other:?}"),
        }
    }
    let long = "x".repeat(200);
    let title = TitleBlock { object: &long, ..TITLE };
    match svg_group(&mut out, &good, &hang, &steel, &METRIC.rules, &title) {
        Err(DrawError::Input(e)) => assert_eq!((e.kind, e.field, e.index), (ErrorKind::TooLarge, Field::Text, 1)),
        other => panic!("{other:?}"),
    }
    assert_eq!(out, "");
}

#[test]
fn every_buffer_size() {
    let (group, load) = (group(&grid(1, 2, 0.0, 100.0), 17.5), load(0.0, -25.0, (100.0, 0.0)));
    let whole = text(&group, &load);
    every_size(&whole, |buffer| {
        svg_group_into(buffer, &group, &load, &stress(), &STRUCTURAL.rules, &TITLE).map(str::len)
    });
}

#[test]
fn a_sink_that_refuses_midway() {
    let (group, load) = (group(&grid(3, 3, 80.0, 80.0), 17.5), load(0.0, -25.0, (300.0, 0.0)));
    let whole = text(&group, &load).len();
    let draw = |room| svg_group(&mut Room(room), &group, &load, &stress(), &STRUCTURAL.rules, &TITLE);
    assert_eq!(draw(whole), Ok(()));
    for room in [0, 10, 1000, whole / 2, whole - 1] {
        assert_eq!(draw(room), Err(DrawError::Sink));
    }
}

proptest! {
    #![proptest_config(Config { cases: 400, failure_persistence: None, ..Config::default() })]

    /// Whatever the group: every rivet with its number, its force to scale and in its direction, all inside the frame.
    #[test]
    fn any_group(case in case(), inch in any::<bool>()) {
        let (group, load, stress) = (case.group(), case.load(), case.stress());
        let found = check_group(&group, &load, &stress, &METRIC.rules).unwrap();
        let units = if inch { Units::Inch } else { Units::Millimetre };
        let title = TitleBlock { units, ..TITLE };
        let seen = Seen::drawn(|canvas| sheet_group(canvas, &group, &load, &stress, &METRIC.rules, &title)).unwrap();
        if let Err(e) = legible(&seen) { prop_assert!(false, "{}", e); }
        prop_assert_eq!(seen.holes.len(), case.rivets.len());
        let mut numbers: Vec<_> = seen.texts.iter().filter(|t| t.1 == "rivet").map(|t| (t.2, t.0.as_str())).collect();
        numbers.sort();
        for ((row, said), number) in numbers.iter().zip(1..) {
            let critical = if number == usize::from(found.critical()) { " critical" } else { "" };
            let wanted = format!("{number}{critical}");
            prop_assert_eq!((*row, *said), (number, wanted.as_str()));
        }
        prop_assert_eq!(numbers.len(), case.rivets.len());
        // To scale: by the greatest hole and by the first two rivets.
        let scale = 2.0 * seen.holes[0].2 / case.rivets[0][2];
        let per = per_newton(&seen);
        for ((x, y, r), (rivet, load)) in seen.holes.iter().zip(case.rivets.iter().zip(found.rivets())) {
            prop_assert!((r - 0.5 * scale * rivet[2]).abs() < 1e-9);
            prop_assert!((x - seen.holes[0].0 - scale * (rivet[0] - case.rivets[0][0])).abs() < 1e-6);
            prop_assert!((y - seen.holes[0].1 + scale * (rivet[1] - case.rivets[0][1])).abs() < 1e-6);
            // A force too short to be drawn has no head.
            if load.resultant * per > 0.06 {
                prop_assert!(has_tip(&seen, x + load.force[0] * per, y - load.force[1] * per));
            }
            prop_assert!(load.resultant * per <= 30.0 + 1e-9);
        }
        let arrow: Vec<_> = seen.strokes.iter().filter(|s| s.0 == Line::Load && case.force != [0.0, 0.0]).take(1).collect();
        for (_, a, b) in arrow {
            let ([fx, fy], (dx, dy)) = (case.force, (b.x - a.x, a.y - b.y));
            prop_assert!((fx * dy - fy * dx).abs() < 1e-9 * fx.hypot(fy) * dx.hypot(dy) && fx * dx + fy * dy > 0.0);
        }
    }
}
