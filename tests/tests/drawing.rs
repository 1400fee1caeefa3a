//! Drawings: true to the joint, well-formed, and whole or refused; judged from outside the library.

mod drawing_support;

use roxmltree::{Document, Node};
use seamwright::bounds::Field;
use seamwright::drawing::{DrawError, Extent, TEXT_SIZE, TitleBlock, Units, svg, svg_into};
use seamwright::error::ErrorKind;
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::Stress;
use seamwright::rules::{INDIAN, METRIC};
use seamwright::sizing::{Brief, size};

use drawing_support::{Room, Seen, TITLE, crossed, every_size, joint, legible, mm, owed};

fn treble() -> Joint {
    joint(Form::unequal_straps(3).unwrap(), 190.0, 19.0, 27.0, &[70.0, 57.0], 40.0, Some((16.0, 12.5)))
}

fn text(joint: &Joint, title: &TitleBlock<'_>) -> String {
    let mut out = String::new();
    svg(&mut out, joint, title).unwrap();
    out
}

fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).unwrap().parse().unwrap()
}

#[test]
fn svg_is_well_formed_and_shows_every_hole_where_it_is() {
    let joint = treble();
    let out = text(&joint, &TITLE);
    let document = Document::parse(&out).unwrap();
    let holes: Vec<_> = document.descendants().filter(|n| n.attribute("class") == Some("hole")).collect();
    // Three pitches of 1-2-2 on both sides.
    assert_eq!(holes.len(), 3 * 5 * 2);
    let scale = 2.0 * number(holes[0], "r") / 27.0;
    assert!((scale - 0.1).abs() < 1e-6, "plan at 1:10");
    let mut columns: Vec<f64> = holes.iter().map(|h| number(*h, "cx")).collect();
    columns.sort_by(f64::total_cmp);
    columns.dedup();
    let steps: Vec<f64> = columns.windows(2).map(|w| ((w[1] - w[0]) / scale * 100.0).round() / 100.0).collect();
    assert_eq!(steps, [70.0, 57.0, 80.0, 57.0, 70.0]);
    // Row 1 lies in the middle of the gaps of row 2, row 2 in those of row 3.
    let row =
        |x: f64| -> Vec<f64> { holes.iter().filter(|h| number(**h, "cx") == x).map(|h| number(*h, "cy")).collect() };
    let (first, second, third) = (row(columns[0]), row(columns[1]), row(columns[2]));
    assert_eq!((first.len(), second.len(), third.len()), (3, 6, 6));
    let nearest = |y: f64, of: &[f64]| of.iter().map(|o| (o - y).abs()).fold(f64::INFINITY, f64::min) / scale;
    assert!(first.iter().all(|y| (nearest(*y, &second) - 190.0 / 4.0).abs() < 0.01));
    assert!(second.iter().all(|y| (nearest(*y, &third) - 190.0 / 4.0).abs() < 0.01));
    // No letter is lower than 2.5 mm: one size for all, set in the style sheet.
    assert!(out.contains("text{font:3.5px ") && TEXT_SIZE * 0.716 >= 2.5);
    assert!(document.descendants().filter(|n| n.has_tag_name("text")).all(|n| n.attribute("font-size").is_none()));
}

#[test]
fn unequal_straps_are_visibly_unequal() {
    let seen = Seen::of(&treble(), &TITLE).unwrap();
    // Wide strap and butt hidden under the plates, narrow strap visible on top.
    let mut hidden: Vec<f64> = seen.hidden.iter().map(|h| h.0).collect();
    hidden.sort_by(f64::total_cmp);
    assert_eq!(hidden.len(), 3);
    assert!((hidden[2] - hidden[0] - 41.4).abs() < 1e-9);
    assert_eq!(seen.joined("narrow_width"), "narrow strap width 274");
    assert_eq!(seen.joined("wide_width"), "wide strap width 414");
    let equal = joint(Form::double_strap(2).unwrap(), 75.0, 12.0, 23.0, &[40.0], 35.0, Some((9.0, 9.0)));
    assert_eq!(Seen::of(&equal, &TITLE).unwrap().hidden.len(), 1);
}

#[test]
fn labels_say_what_the_joint_is() {
    let seen = Seen::of(&treble(), &TITLE).unwrap();
    assert_eq!(seen.keyed(), owed(&treble(), Extent::Seam));
    assert_eq!(seen.joined("pitch"), "pitch 190");
    assert_eq!(seen.joined("row_pitch"), "rows 2-3: 95");
    assert_eq!(seen.joined("back_pitch"), "70 57");
    assert_eq!(seen.joined("hole"), "\u{2300} 27 hole, rivet 26");
    assert_eq!(seen.joined("plate"), "plates, t = 19");
    assert_eq!(seen.joined("caution"), seamwright::CAUTION);
    assert!(seen.joined("title").contains("treble-riveted butt joint, double straps of unequal width"));
    assert!(seen.joined("title").contains(seamwright::VERSION));
    let inches = TitleBlock { units: Units::Inch, ..TITLE };
    let lap = joint(Form::lap(1).unwrap(), 50.8, 12.7, 23.8125, &[], 38.1, None);
    let seen = Seen::of(&lap, &inches).unwrap();
    assert_eq!((seen.joined("pitch"), seen.joined("margin")), ("pitch 2".to_string(), "1 1/2".to_string()));
    assert!(seen.joined("hole").starts_with("\u{2300} 15/16 hole, rivet "));
}

#[test]
fn a_tie_is_shown_over_its_width() {
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (3, 2)]).unwrap();
    let tie = joint(form, 200.0, 12.0, 21.0, &[55.0, 55.0], 35.0, Some((8.0, 8.0)));
    let title = TitleBlock { extent: Extent::Tie, ..TITLE };
    let seen = Seen::of(&tie, &title).unwrap();
    assert_eq!(seen.holes.len(), 12);
    assert_eq!(seen.keyed(), owed(&tie, Extent::Tie));
    // A lozenge: each row symmetrical about the middle of the width.
    let middle = seen.holes.iter().map(|h| h.1).sum::<f64>() / 12.0;
    for (x, y, _) in &seen.holes {
        assert!(seen.holes.iter().any(|(u, v, _)| (u - x).abs() < 1e-9 && (v + y - 2.0 * middle).abs() < 1e-9));
    }
}

#[test]
fn what_is_missing_is_named() {
    let spec = JointSpec::new(Form::double_strap(2).unwrap(), mm(75.0), mm(12.0), mm(23.0));
    let field = |spec: JointSpec| match svg(&mut String::new(), &spec.build().unwrap(), &TITLE) {
        Err(DrawError::Input(e)) => (e.kind, e.field, e.index),
        other => panic!("{other:?}"),
    };
    assert_eq!(field(spec), (ErrorKind::Missing, Field::Margin, 0));
    let spec = spec.margin(mm(35.0));
    assert_eq!(field(spec), (ErrorKind::Missing, Field::BackPitch, 1));
    let spec = spec.back_pitch(1, mm(40.0));
    assert_eq!(field(spec), (ErrorKind::Missing, Field::WideStrap, 0));
    let long = "x".repeat(200);
    let title = TitleBlock { object: &long, ..TITLE };
    match svg(&mut String::new(), &spec.strap(mm(9.0)).build().unwrap(), &title) {
        Err(DrawError::Input(e)) => assert_eq!((e.kind, e.field), (ErrorKind::TooLarge, Field::Text)),
        other => panic!("{other:?}"),
    }
}

#[test]
fn titles_are_escaped() {
    let object = "A <b> & \"c\" 'd' \u{e4}\u{f6} \u{65e5}\u{672c} \u{1}";
    let title = TitleBlock { prepared: "<&\">", ..TitleBlock::new(object, "N\u{ba} 7") };
    let out = text(&treble(), &title);
    let document = Document::parse(&out).unwrap();
    let words: Vec<&str> = document.descendants().filter(|n| n.has_tag_name("text")).filter_map(|n| n.text()).collect();
    assert!(words.contains(&"<&\">") && words.contains(&"N\u{ba} 7"));
    let title = document.descendants().find(|n| n.has_tag_name("title")).and_then(|n| n.text()).unwrap();
    assert_eq!(title, "Riveted joint: A <b> & \"c\" 'd' \u{e4}\u{f6} \u{65e5}\u{672c} \u{fffd}");
}

#[test]
fn every_buffer_size() {
    let joint = joint(Form::lap(1).unwrap(), 56.0, 12.0, 23.0, &[], 35.0, None);
    let whole = text(&joint, &TITLE);
    every_size(&whole, |buffer| svg_into(buffer, &joint, &TITLE).map(str::len));
}

#[test]
fn a_sink_that_refuses_midway() {
    let whole = text(&treble(), &TITLE).len();
    assert_eq!(svg(&mut Room(whole), &treble(), &TITLE), Ok(()));
    for room in [0, 10, 1000, whole - 1] {
        assert_eq!(svg(&mut Room(room), &treble(), &TITLE), Err(DrawError::Sink));
    }
}

/// What a shop would send back: a line through a label, a leader through a rivet or a dimension. Joints as they are
/// sized, of all forms and usual plates, and ties.
#[test]
fn nothing_is_crossed() {
    let steel = Materials::new(Stress::mpa(88.0), Stress::mpa(68.0)).bearing(Stress::mpa(132.0));
    let forms = (1..=4).map(Form::lap).chain((1..=3).map(Form::single_strap));
    let forms = forms.chain((1..=5).map(Form::double_strap)).chain((2..=5).map(Form::unequal_straps));
    let mut joints = Vec::new();
    for form in forms.map(Result::unwrap) {
        for form in [form.chain(), form.zigzag()] {
            for t in [6.0, 9.0, 13.0, 20.0, 28.0, 40.0] {
                for book in [&METRIC, &INDIAN] {
                    if let Ok(design) = size(&Brief::new(form, mm(t), steel), &book.rules) {
                        joints.push((design.joint, Extent::Seam));
                    }
                }
            }
        }
    }
    assert!(joints.len() > 200, "{}", joints.len());
    for rows in [&[1, 2, 3][..], &[2, 2], &[1, 2], &[3, 3, 3], &[1, 2, 3, 4], &[2, 3, 2]] {
        let rows: Vec<_> = rows.iter().map(|n| (*n, 2)).collect();
        let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &rows).unwrap();
        let gaps = vec![60.0; rows.len() - 1];
        joints.push((joint(form, 300.0, 12.0, 21.0, &gaps, 35.0, Some((8.0, 8.0))), Extent::Tie));
    }
    let mut wrong = Vec::new();
    for (joint, extent) in &joints {
        let seen = Seen::of(joint, &TitleBlock { extent: *extent, ..TITLE }).unwrap();
        legible(&seen).unwrap();
        wrong.extend(crossed(&seen).into_iter().map(|w| format!("{}, {:?}: {w}", joint.form(), joint.plate())));
    }
    assert!(wrong.is_empty(), "{} of {}\n{}", wrong.len(), joints.len(), wrong.join("\n"));
}
