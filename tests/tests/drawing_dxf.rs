//! DXF: pairs of lines as the format asks, and every hole where it must be drilled.

use seamwright::drawing::{DrawError, Extent, TitleBlock, dxf};
use seamwright::error::ErrorKind;
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::quantities::Length;

fn mm(x: f64) -> Length {
    Length::mm(x)
}

fn text(joint: &Joint, title: &TitleBlock<'_>, seam: Option<Length>) -> String {
    let mut out = String::new();
    dxf(&mut out, joint, title, seam).unwrap();
    out
}

/// Group codes and values; a file of R12 is nothing else.
fn pairs(text: &str) -> Vec<(i32, &str)> {
    let lines: Vec<&str> = text.strip_suffix('\n').unwrap().split('\n').collect();
    assert_eq!(lines.len() % 2, 0);
    let pairs: Vec<_> = lines.chunks(2).map(|p| (p[0].trim().parse().unwrap(), p[1])).collect();
    for (code, value) in &pairs {
        assert!(value.is_ascii() && value.len() < 256, "{value}");
        match code {
            10..=59 => assert!(value.parse::<f64>().unwrap().is_finite()),
            60..=79 => assert!(value.parse::<i16>().is_ok()),
            _ => {}
        }
    }
    pairs
}

/// Entities as lists of pairs.
fn entities<'t>(pairs: &[(i32, &'t str)]) -> Vec<Vec<(i32, &'t str)>> {
    let from = pairs.windows(2).position(|w| w[1] == (2, "ENTITIES")).unwrap() + 2;
    let mut all: Vec<Vec<(i32, &str)>> = Vec::new();
    for &(code, value) in &pairs[from..] {
        if code == 0 {
            all.push(Vec::new());
        }
        all.last_mut().unwrap().push((code, value));
    }
    assert_eq!(all[all.len() - 2..], [vec![(0, "ENDSEC")], vec![(0, "EOF")]]);
    all
}

fn value(entity: &[(i32, &str)], code: i32) -> f64 {
    entity.iter().find(|p| p.0 == code).unwrap().1.parse().unwrap()
}

fn holes(text: &str) -> Vec<(f64, f64, f64)> {
    let pairs = pairs(text);
    let circles = entities(&pairs);
    let holes = circles.iter().filter(|e| e[0] == (0, "CIRCLE") && e[1] == (8, "HOLES"));
    holes.map(|e| (value(e, 10), value(e, 20), value(e, 40))).collect()
}

fn double_lap() -> Joint {
    let spec = JointSpec::new(Form::lap(2).unwrap(), mm(71.0), mm(13.0), mm(23.0));
    spec.margin(mm(35.0)).back_pitch(1, mm(40.0)).build().unwrap()
}

const TITLE: TitleBlock<'static> = TitleBlock::new("Feed tank", "T-7");

#[test]
fn holes_stand_where_they_are_drilled() {
    let mut found = holes(&text(&double_lap(), &TITLE, Some(mm(1000.0))));
    // 14 pitches of 71 mm in 1000 mm; from the first to the last rivet 13.5 pitches, what is left alike at both ends.
    let from = (1000.0 - 13.5 * 71.0) / 2.0;
    let mut expected: Vec<_> =
        (0..28).map(|i| (if i % 2 == 0 { -20.0 } else { 20.0 }, -(from + 35.5 * f64::from(i)), 11.5)).collect();
    let order = |a: &(f64, f64, f64), b: &(f64, f64, f64)| b.1.total_cmp(&a.1);
    found.sort_by(order);
    expected.sort_by(order);
    assert_eq!(found.len(), 28);
    for (a, b) in found.iter().zip(&expected) {
        assert!((a.0 - b.0).abs() < 1e-5 && (a.1 - b.1).abs() < 1e-5 && (a.2 - b.2).abs() < 1e-6, "{a:?} {b:?}");
    }
}

#[test]
fn every_entity_stands_on_a_layer_of_the_table() {
    let out = text(&double_lap(), &TITLE, None);
    let pairs = pairs(&out);
    let layers = ["OUTLINE", "HOLES", "CENTRE", "DIMENSIONS", "TEXT"];
    for entity in entities(&pairs).iter().filter(|e| !matches!(e[0].1, "ENDSEC" | "EOF")) {
        assert!(entity[1].0 == 8 && layers.contains(&entity[1].1), "{entity:?}");
    }
    assert!(out.contains("AC1009") && layers.iter().all(|l| out.contains(&format!("LAYER\n2\n{l}\n"))));
    for words in ["pitch 71", "overlap 110", "%%c 23 hole, rivet 23", "Design aid only."] {
        assert!(out.contains(words), "{words}");
    }
}

#[test]
fn titles_cannot_break_the_format() {
    let title = TitleBlock::new("a\n0\nEOF \u{e4} %%u \\P ^J \u{1f600}", "7");
    let out = text(&double_lap(), &title, None);
    let pairs = pairs(&out);
    assert_eq!(entities(&pairs).iter().filter(|e| e[0].1 == "EOF").count(), 1);
    assert!(out.contains("\\U+00E4") && out.contains("\\U+0025\\U+0025u") && out.contains("\\U+005CP"));
}

#[test]
fn seams_that_cannot_be_drawn() {
    let error = |seam: f64, title: &TitleBlock<'_>| match dxf(&mut String::new(), &double_lap(), title, Some(mm(seam)))
    {
        Err(DrawError::Input(e)) => e.kind,
        other => panic!("{other:?}"),
    };
    assert_eq!(error(70.9, &TITLE), ErrorKind::TooSmall);
    assert_eq!(error(-1.0, &TITLE), ErrorKind::TooSmall);
    assert_eq!(error(f64::NAN, &TITLE), ErrorKind::NotFinite);
    assert_eq!(error(f64::INFINITY, &TITLE), ErrorKind::NotFinite);
    assert_eq!(error(710_001.0, &TITLE), ErrorKind::TooLarge);
    assert_eq!(error(500.0, &TitleBlock { extent: Extent::Tie, ..TITLE }), ErrorKind::NotForThisForm);
    // Exactly one pitch, and whole pitches that binary fractions miss by a hair.
    assert_eq!(holes(&text(&double_lap(), &TITLE, Some(mm(71.0)))).len(), 2);
    assert_eq!(holes(&text(&double_lap(), &TITLE, Some(mm(71.0 * 9.0 - 1e-10)))).len(), 18);
}

/// The outside reader; skipped where no Python with ezdxf is at hand (`target/venv`, or `SEAMWRIGHT_PYTHON`).
#[test]
fn ezdxf_reads_and_audits() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let python = std::env::var_os("SEAMWRIGHT_PYTHON").map_or(root.join("../target/venv/bin/python"), Into::into);
    let has = std::process::Command::new(&python).args(["-c", "import ezdxf"]).status().is_ok_and(|s| s.success());
    if !has {
        eprintln!("skipped: no ezdxf in {}", python.display());
        return;
    }
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (3, 2)]).unwrap();
    let spec = JointSpec::new(form, mm(200.0), mm(12.0), mm(21.0)).margin(mm(35.0)).strap(mm(8.0));
    let tie = spec.row(1, mm(23.0), None).back_pitch(1, mm(55.0)).back_pitch(2, mm(55.0)).build().unwrap();
    let of_tie = TitleBlock { extent: Extent::Tie, ..TITLE };
    let odd = TitleBlock::new("\u{c4}u\u{df}erer Sto\u{df} 100 % \\ ^", "7");
    let cases: [(&str, String, &[&str]); 3] = [
        (
            "lap",
            text(&double_lap(), &TITLE, Some(mm(1000.0))),
            &["28", "11.5", "-20,-20.75", "20,-56.25", "20,-979.25"],
        ),
        (
            "tie",
            text(&tie, &of_tie, None),
            &["12", "10.5,11.5", "-145,-100", "90,-66.666667", "35,-33.333333", "-35,-100"],
        ),
        ("letters", text(&double_lap(), &odd, None), &["6", "11.5"]),
    ];
    for (name, drawing, arguments) in cases {
        let file = std::env::temp_dir().join(format!("seamwright-{}-{name}.dxf", std::process::id()));
        std::fs::write(&file, drawing).unwrap();
        let mut command = std::process::Command::new(&python);
        let out = command.arg(root.join("python/check_dxf.py")).arg(&file).args(arguments).output().unwrap();
        std::fs::remove_file(&file).unwrap();
        assert!(
            out.status.success(),
            "{}{}",
            String::from_utf8_lossy(&out.stdout),
            String::from_utf8_lossy(&out.stderr)
        );
    }
}
