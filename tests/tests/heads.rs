//! Sizing makes room for rivet heads: snap heads 1.6 cold rivets wide, custom of the trade (PRACTICE).
//!
//! What heads need is worked here by plain arithmetic, without the library's formulas.

mod generate;

use generate::{any_rules, brief, config};
use proptest::prelude::*;
use seamwright::check::{Subject, Verdict, check};
use seamwright::joint::{Arrangement, Form, Joint};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, Entry, INDIAN, METRIC, Rules};
use seamwright::sizing::{Brief, Design, size};
use seamwright::working::{Style, write_size};

const ON_HEADS: [Subject; 3] = [Subject::HeadAtStrap, Subject::HeadsInRow, Subject::HeadsOfRows];

fn mm(x: f64) -> Length {
    Length::mm(x)
}

fn steel() -> Materials {
    Materials::new(Stress::mpa(92.0), Stress::mpa(71.0)).bearing(Stress::mpa(136.0))
}

/// What heads ask of the distance from row `i` (from 0) to the next, mm: all rivets of a sized joint are alike.
fn need(joint: &Joint, i: usize) -> f64 {
    let (row, next) = (joint.rows()[i], joint.rows()[i + 1]);
    let rivet = row.rivet().to_mm();
    assert_eq!(rivet, next.rivet().to_mm());
    let mut least: f64 = 0.0;
    if row.planes == 1 && next.planes == 2 {
        least = joint.margin().unwrap().to_mm() + 0.8 * rivet;
    }
    let (few, many) = (row.rivets.min(next.rivets), row.rivets.max(next.rivets));
    if many == few || many == 2 * few {
        let across = match joint.form().arrangement() {
            Arrangement::Chain => 0.0,
            Arrangement::Zigzag => joint.strip().to_mm() / f64::from(many) / 2.0,
        };
        least = least.max(((1.6 * rivet).powi(2) - across.powi(2)).max(0.0).sqrt());
    }
    least
}

/// The book's distance on its grid, or else the next step of it that makes room: no closer and no further.
fn room_and_no_more(design: &Design, rules: &Rules, stated: &[usize]) -> Result<(), TestCaseError> {
    let joint = &design.joint;
    let step = rules.get(Entry::BACK_STEP);
    for i in (0..joint.form().row_count() - 1).filter(|i| !stated.contains(i)) {
        let gap = joint.back_pitch(i + 1).unwrap().to_mm();
        let need = need(joint, i);
        prop_assert!(gap >= need * (1.0 - 2e-9), "row {}: {gap} under {need}", i + 1);
        // A book that asks for nothing has twice the hole.
        let book = match design.gaps[i].0 {
            g if g > 0.0 => g,
            _ => 2.0 * joint.rows()[0].hole().to_mm(),
        };
        let wanted = need.max(book);
        prop_assert!(gap <= (wanted + step) * (1.0 + 2e-9), "row {}: {gap} for {book}, {need}, {step}", i + 1);
        let steps = if step > 0.0 { gap / step } else { 0.0 };
        prop_assert!((steps - steps.round()).abs() < 1e-6 * steps.max(1.0), "{gap} is not on the grid of {step}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    /// Over all books, with any entries changed. Heads of one row have the pitch's own room: two diameters in every
    /// built-in book; where the least pitch was set lower, or the pitch is given, sizing leaves it and the finding says
    /// so.
    #[test]
    fn a_sized_joint_leaves_no_heads_without_room(b in brief(8), rules in any_rules(3)) {
        if let Ok(design) = size(&b, &rules) {
            room_and_no_more(&design, &rules, &[])?;
            let row = design.joint.rows()[0];
            let low = rules.get(Entry::PITCH_LEAST) * row.rivet().to_mm() < 1.6 * row.rivet().to_mm();
            for f in design.analysis.findings.iter().filter(|f| ON_HEADS.contains(&f.subject)) {
                let in_row = f.subject == Subject::HeadsInRow && low;
                prop_assert!(f.verdict == Verdict::Met || in_row, "{:?}", f);
            }
        }
    }

    /// With a pitch, a margin and one distance given: what is given stays, and only there may a finding stay open.
    #[test]
    fn given_distances_stay_and_the_others_make_room(
        b in brief(8), rules in any_rules(1), pitch in 10.0..250.0_f64, margin in 5.0..90.0_f64,
        stated in 1..8_usize, gap in 5.0..120.0_f64,
    ) {
        let rows = b.form().row_count();
        let pitch = pitch * f64::from(b.form().outer_rivets());
        let mut b = b.pitch(mm(pitch)).margin(mm(margin));
        let kept = (stated < rows).then_some(stated);
        if let Some(row) = kept {
            b = b.back_pitch(row, mm(gap));
        }
        if let Ok(design) = size(&b, &rules) {
            if let Some(row) = kept {
                prop_assert_eq!(design.joint.back_pitch(row), Some(mm(gap)));
                prop_assert_eq!(design.heads[row - 1].at_strap, None);
            }
            let stated: Vec<usize> = kept.iter().map(|row| row - 1).collect();
            room_and_no_more(&design, &rules, &stated)?;
            for f in design.analysis.findings.iter().filter(|f| ON_HEADS.contains(&f.subject)) {
                let may = f.subject == Subject::HeadsInRow || kept == Some(usize::from(f.row));
                prop_assert!(f.verdict == Verdict::Met || may, "{:?}", f);
            }
        }
    }
}

/// Every form of every book over a range of plates: nothing open about heads, not even in a row.
#[test]
fn no_book_leaves_heads_without_room() {
    let mut sized = 0;
    let mut raised = [0; 2];
    for book in BOOKS {
        for form in seamwright::search::all_forms() {
            for form in [form, form.chain()] {
                for t in [6.0, 9.0, 12.0, 16.0, 22.0, 30.0] {
                    let Ok(design) = size(&Brief::new(form, mm(t), steel()), &book.rules) else { continue };
                    sized += 1;
                    for f in design.analysis.findings.iter().filter(|f| ON_HEADS.contains(&f.subject)) {
                        assert_eq!(f.verdict, Verdict::Met, "{}, {form}, {t} mm: {f:?}", book.id);
                    }
                    let gaps = (1..form.row_count()).map(|row| design.joint.back_pitch(row).unwrap().to_mm());
                    for (i, (gap, (least, _))) in gaps.zip(design.gaps).enumerate() {
                        let moved = gap > least + book.rules.get(Entry::BACK_STEP) * 1.001;
                        raised[usize::from(design.heads[i].at_strap.is_none())] += u32::from(moved && least > 0.0);
                    }
                }
            }
        }
    }
    // The range holds rows that are moved out beside a strap; no built-in book sets two rows so close that heads touch.
    assert!(sized > 1000 && raised[0] > 50, "{sized} {raised:?}");
    assert_eq!(raised[1], 0);
}

/// Three rows under unequal straps, by hand: 16 mm plate, hole 25, rivet 24, pitch 137 mm, Indian book.
///
/// - Reg. 184(c): 0.2 x 137 + 1.15 x 25 = 27.4 + 28.75 = 56.15, up to 57 mm.
/// - Margin 1.5 x 25 = 37.5, up to 38 mm. Head 1.6 x 24 = 38.4 mm; beside the strap 38 + 38.4/2 = 57.2, up to 58 mm.
/// - Reg. 184(a) with the inner pitch: 0.165 x 137 + 0.67 x 25 = 22.605 + 16.75 = 39.355, up to 40 mm; the heads of rows
///   2 and 3 lie 137/4 = 34.25 mm across and need sqrt(38.4^2 - 34.25^2) = sqrt(1474.56 - 1173.0625) = 17.36 mm.
#[test]
fn a_row_is_moved_out_for_its_heads() {
    let brief =
        Brief::new(Form::unequal_straps(3).unwrap(), mm(16.0), steel()).hole(mm(25.0), Some(mm(24.0))).pitch(mm(137.0));
    let design = size(&brief, &INDIAN.rules).unwrap();
    let near = |a: f64, b: f64| assert!((a - b).abs() < 1e-9, "{a} {b}");
    near(design.gaps[0].0, 56.15);
    near(design.heads[0].at_strap.unwrap(), 57.2);
    near(design.heads[0].of_rows.unwrap(), 17.363683365);
    assert_eq!(design.heads[1].at_strap, None);
    assert_eq!(design.joint.back_pitch(1), Some(mm(58.0)));
    assert_eq!(design.joint.back_pitch(2), Some(mm(40.0)));
    assert_eq!(design.analysis.findings.open(), 0);
    let found = design.analysis.findings.find(Subject::HeadAtStrap, 1).unwrap();
    near(found.required, 57.2);
    assert_eq!((found.provided, found.verdict), (58.0, Verdict::Met));
    // The sheet shows the step: what the book has, what heads need, and what is taken.
    let mut sheet = String::new();
    write_size(&mut sheet, Style::default(), &brief, &INDIAN).unwrap();
    let room = sheet.split("Room for the rivet heads").nth(1).unwrap().split("The joint as checked").next().unwrap();
    let flat = room.split_whitespace().collect::<Vec<_>>().join(" ");
    for line in [
        "snap heads, custom of the trade: PRACTICE",
        "wh.1 = 1.6 x 24 wh.1 = 38.4 mm",
        "gs.1 = 38 + 38.4/2 gs.1 = 57.2 mm",
        "g.1 = max(57; gs.1 = 57.2) = 57.2 mm",
        "rounded up to a multiple of 1 mm g.1 = 57.2 -> 58 mm",
    ] {
        assert!(flat.contains(line), "{line}\n{room}");
    }
}

/// Exactly at the limit: 38 + 19.2 = 57.2 mm. A book's distance of 2.288 x 25 = 57.2 mm is room enough, and a hair under
/// it is not; a need of exactly 57 mm takes 57 and not 58.
#[test]
fn room_exactly_at_the_limit_is_room() {
    let brief =
        Brief::new(Form::unequal_straps(2).unwrap(), mm(16.0), steel()).hole(mm(25.0), Some(mm(24.0))).pitch(mm(137.0));
    let taken = |brief: &Brief, share: f64, step: f64| {
        let entry = Entry::BACK_HALF_ZIGZAG;
        let changes =
            [(entry, 0.0), (entry.at(1), 0.0), (entry.at(2), share), (entry.at(3), 0.0), (Entry::BACK_STEP, step)];
        let rules = changes.iter().fold(METRIC.rules, |r, (e, x)| r.with(*e, *x).unwrap());
        let design = size(brief, &rules).unwrap();
        assert!(design.analysis.findings.iter().all(|f| !ON_HEADS.contains(&f.subject) || f.verdict == Verdict::Met));
        design.joint.back_pitch(1).unwrap().to_mm()
    };
    assert_eq!(taken(&brief, 2.288, 0.0), 2.288 * 25.0);
    assert!((taken(&brief, 2.288 - 1e-6, 0.0) - 57.2).abs() < 1e-9);
    assert!((taken(&brief, 2.2, 0.1) - 57.2).abs() < 1e-9);
    assert_eq!(taken(&brief, 2.2, 1.0), 58.0);
    assert_eq!(taken(&brief.margin(mm(37.8)), 2.2, 1.0), 57.0);
    assert_eq!(taken(&brief.margin(mm(37.801)), 2.2, 1.0), 58.0);
    assert_eq!(taken(&brief, 2.2, 5.0), 60.0);
}

/// Lozenge rows of 2 and 3 rivets: no distance of heads is found, and none is asked for.
#[test]
fn rows_that_stand_differently_are_left_to_the_book() {
    let form = Form::from_rows(seamwright::joint::JointKind::DoubleStrap, Arrangement::Zigzag, &[(2, 2), (3, 2)]);
    let brief = Brief::new(form.unwrap(), mm(12.0), steel()).hole(mm(21.0), Some(mm(20.0))).pitch(mm(220.0));
    let design = size(&brief, &METRIC.rules).unwrap();
    assert_eq!((design.heads[0].at_strap, design.heads[0].of_rows), (None, None));
    let checked = check(&design.joint, &steel(), &METRIC.rules).unwrap();
    assert!(checked.findings.find(Subject::HeadsOfRows, 1).is_none());
}
