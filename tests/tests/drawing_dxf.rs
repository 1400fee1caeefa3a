//! DXF: pairs of lines as the format asks, and every hole where it must be drilled.

mod generate;

use generate::{Reach, stated};
use proptest::prelude::*;
use seamwright::Error;
use seamwright::drawing::{Extent, TitleBlock, dxf, dxf_seam};
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{Entry, Rules};
use seamwright::shop::{Face, HeadForm, LengthRule, Measured, Order, Run, ShopSheet, Stock, shop_sheet};

fn mm(x: f64) -> Length {
    Length::mm(x)
}

fn text(joint: &Joint, title: &TitleBlock<'_>) -> String {
    let mut out = String::new();
    dxf(&mut out, joint, title).unwrap();
    out
}

/// A seam by its shop sheet.
fn seam_text(sheet: &ShopSheet) -> String {
    let mut out = String::new();
    dxf_seam(&mut out, sheet, &TITLE).unwrap();
    out
}

/// A book without limits of pitch, so that any run can be divided.
fn free() -> Rules {
    Rules::SILENT.with(Entry::BEARING_CHECKED, 0.0).unwrap()
}

fn sheet_of(joint: &Joint, run: Run) -> Result<ShopSheet, Error> {
    let steel = Materials::new(Stress::mpa(90.0), Stress::mpa(60.0));
    let order = Order::steel(run, HeadForm::Button, LengthRule::SteelButton, Stock::cut_to_length());
    shop_sheet(joint, &steel, &free(), &order)
}

fn straight(length: f64, first_end: f64, last_end: f64) -> Run {
    Run::Straight { length: mm(length), first_end: mm(first_end), last_end: mm(last_end) }
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
    // By hand: 1064 mm less 40 mm at either end are 984 mm, 13.86 times the joint's own 71 mm: 14 pitches of
    // 70.285714 mm, the nearer whole number. Row 1 begins at 40 mm and is closed at 1024 mm; row 2 lies in its gaps. The lap is 110 mm wide:
    // row 1 is 35 mm from the edge of plate B, 20 mm from the middle.
    let found = holes(&seam_text(&sheet_of(&double_lap(), straight(1064.0, 40.0, 40.0)).unwrap()));
    let pitch = (1064.0 - 80.0) / 14.0;
    let row_1 = (0..=14).map(|i| (-20.0, -(40.0 + pitch * f64::from(i)), 11.5));
    let row_2 = (0..14).map(|i| (20.0, -(40.0 + pitch * (f64::from(i) + 0.5)), 11.5));
    same_holes(found, row_1.chain(row_2).collect());
}

/// The same holes in any order.
fn same_holes(mut found: Vec<(f64, f64, f64)>, mut expected: Vec<(f64, f64, f64)>) {
    let near = |a: f64, b: f64| (a - b).abs() < 2e-5;
    assert_eq!(found.len(), expected.len());
    // To a tenth of a micrometre both lists agree: sorted by rounded places they stand side by side.
    let order = |a: &(f64, f64, f64)| ((a.1 * 1e3).round() as i64, (a.0 * 1e3).round() as i64);
    found.sort_by_key(order);
    expected.sort_by_key(order);
    for e in &expected {
        let here = found.iter().position(|f| near(f.0, e.0) && near(f.1, e.1) && (f.2 - e.2).abs() < 1e-5);
        let here = here.unwrap_or_else(|| panic!("no hole at {e:?}"));
        found.swap_remove(here);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    /// Whoever drills one part by the drawing and the other by the table of the shop sheet finds the same holes.
    #[test]
    fn drawing_and_shop_sheet_have_the_same_holes(
        s in stated(Reach::Usual, 6, 0.0),
        (pitches, first, last) in (1.0..20.0_f64, 0.6..3.0_f64, 0.6..3.0_f64),
        run in 0..3_u8,
    ) {
        let stated = s.joint();
        let d = stated.rows().iter().map(|r| r.hole().to_mm()).fold(0.0, f64::max);
        let (first, last) = (first * d, last * d);
        let length = pitches * stated.strip().to_mm() + first + last;
        let run = match run {
            0 => Run::Girth { diameter: mm(length), measured: Measured::Circle, other: Face::Outside },
            1 => straight(length, first, last),
            _ => Run::Tie,
        };
        // Rows that a shop or a drawing refuses have no holes to compare.
        let Ok(sheet) = sheet_of(&stated, run) else { return Ok(()) };
        let mut out = String::new();
        if dxf_seam(&mut out, &sheet, &TITLE).is_err() {
            return Ok(());
        }
        let lap = sheet.joint.form().kind() == JointKind::Lap;
        let half = 0.5 * sheet.joint.widths().unwrap().0.to_mm();
        let table: Vec<_> = sheet.layout().holes().map(|h| {
            let radius = 0.5 * sheet.joint.rows()[usize::from(h.row) - 1].hole().to_mm();
            // Turned by a right angle: along is down, left of it is right. A lap is told from the edge of plate B.
            (if lap { h.y.to_mm() - half } else { h.y.to_mm() }, -h.x.to_mm(), radius)
        }).collect();
        if matches!(run, Run::Tie) {
            // The drawing of the form alone is a drawing of the same tie.
            let alone = text(&sheet.joint, &TitleBlock { extent: Extent::Tie, ..TITLE });
            same_holes(holes(&alone), table.clone());
        }
        same_holes(holes(&out), table);
    }
}

#[test]
fn every_entity_stands_on_a_layer_of_the_table() {
    let out = text(&double_lap(), &TITLE);
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
    let out = text(&double_lap(), &title);
    let pairs = pairs(&out);
    assert_eq!(entities(&pairs).iter().filter(|e| e[0].1 == "EOF").count(), 1);
    assert!(out.contains("\\U+00E4") && out.contains("\\U+0025\\U+0025u") && out.contains("\\U+005CP"));
}

#[test]
fn the_sheet_says_whether_it_is_a_tie() {
    let sheet = sheet_of(&double_lap(), straight(1064.0, 40.0, 40.0)).unwrap();
    let mut out = String::new();
    dxf_seam(&mut out, &sheet, &TitleBlock { extent: Extent::Tie, ..TITLE }).unwrap();
    assert_eq!(out, seam_text(&sheet));
    let tie = seam_text(&sheet_of(&double_lap(), Run::Tie).unwrap());
    assert_eq!(holes(&tie).len(), 2);
    assert!(tie.contains("width 71") && !tie.contains("seam "));
    // A drawing of the form alone shows three pitches, and no length of seam.
    let drawing = text(&double_lap(), &TITLE);
    assert_eq!(holes(&drawing).len(), 6);
    assert!(!drawing.contains("seam "));
}

/// The outside reader. The gate names a Python with ezdxf in `SEAMWRIGHT_PYTHON`, and then it must be there; a bare
/// `cargo test` on a machine without one (`target/venv`) goes without it.
#[test]
fn ezdxf_reads_and_audits() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let python = std::env::var_os("SEAMWRIGHT_PYTHON").map_or(root.join("../target/venv/bin/python"), Into::into);
    let has = std::process::Command::new(&python).args(["-c", "import ezdxf"]).status().is_ok_and(|s| s.success());
    if !has {
        assert!(std::env::var_os("SEAMWRIGHT_PYTHON").is_none(), "no ezdxf in {}", python.display());
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
            seam_text(&sheet_of(&double_lap(), straight(1064.0, 40.0, 40.0)).unwrap()),
            // 984 mm in 14 pitches of 70.285714 mm.
            &["29", "11.5", "-20,-40", "20,-75.142857", "-20,-1024"],
        ),
        ("tie", text(&tie, &of_tie), &["12", "10.5,11.5", "-145,-100", "90,-66.666667", "35,-33.333333", "-35,-100"]),
        ("letters", text(&double_lap(), &odd), &["6", "11.5"]),
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
