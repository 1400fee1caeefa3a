//! One place for many joints: whatever stood there before, a check and a sizing leave what they leave in a fresh place.

mod generate;

use generate::{any_book, any_rules, brief, config, stated};
use proptest::prelude::*;
use seamwright::check::{Analysis, Finding, FindingSink, check, check_into};
use seamwright::error::ErrorKind;
use seamwright::joint::{Arrangement, Form, JointKind};
use seamwright::materials::Materials;
use seamwright::proportion::Limit;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{METRIC, Rules};
use seamwright::sizing::{Brief, Design, HeadRoom, size, size_into};

/// Findings as they are told.
#[derive(Default)]
struct Told(Vec<Finding>);

impl FindingSink for Told {
    fn take(&mut self, finding: Finding) {
        self.0.push(finding);
    }
}

impl Told {
    /// In the order of a list: open ones first, and so on.
    fn listed(mut self) -> String {
        self.0.sort_by_key(|f| f.verdict as u8);
        format!("{:?}", self.0)
    }
}

/// Every field, each figure to its last bit: the debug form of a number is read back as the same one.
fn all(x: &impl std::fmt::Debug) -> String {
    format!("{x:?}")
}

/// Any rules at all, or a book as it stands.
fn rules() -> impl Strategy<Value = Rules> {
    prop_oneof![any_book().prop_map(|book| book.rules), any_rules(20)]
}

/// What a shop asks for, now and then with dimensions that stand already or cannot be.
fn briefs() -> impl Strategy<Value = Brief> {
    (brief(6), prop::array::uniform4(0.0..1.0_f64), any::<[bool; 3]>()).prop_map(|(brief, u, [pitch, margin, back])| {
        let mut brief = brief;
        if pitch && u[0] < 0.3 {
            brief = brief.pitch(Length::mm(20.0 + 400.0 * u[1]));
        }
        if margin && u[0] < 0.5 {
            brief = brief.margin(Length::mm(10.0 + 80.0 * u[2]));
        }
        if back {
            for row in (1..brief.form().row_count()).filter(|row| (u[3] * 8.0) as usize & row != 0) {
                brief = brief.back_pitch(row, Length::mm(15.0 + 100.0 * u[3]));
            }
        }
        brief
    })
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn one_design_for_many_briefs(many in prop::collection::vec((briefs(), rules()), 1..12)) {
        let mut kept = Design::blank();
        for (brief, rules) in many {
            let mut told = Told::default();
            let answer = size_into(&brief, &rules, &mut told, &mut kept);
            match size(&brief, &rules) {
                Ok(Design { joint, hole, pitch, gaps, margin, straps, heads, analysis }) => {
                    prop_assert_eq!(answer, Ok(()));
                    let Design { joint: j, hole: h, pitch: p, gaps: g, margin: m, straps: s, heads: r, .. } = &kept;
                    prop_assert_eq!(all(&(j, h, p, g, m, s, r)), all(&(joint, hole, pitch, gaps, margin, straps, heads)));
                    prop_assert_eq!(told.listed(), all(&analysis.findings.iter().collect::<Vec<_>>()));
                    let mut fresh = Analysis::blank();
                    let mut again = Told::default();
                    prop_assert_eq!(check_into(&joint, brief.materials(), &rules, &mut again, &mut fresh), Ok(()));
                    prop_assert_eq!(all(&kept.analysis), all(&fresh));
                }
                Err(error) => {
                    prop_assert_eq!(all(&answer), all(&Err::<(), _>(error)));
                    prop_assert!(told.0.is_empty());
                    prop_assert_eq!(all(&kept), all(&Design::<f64, ()>::blank()));
                }
            }
        }
    }

    #[test]
    fn one_analysis_for_many_joints(
        many in prop::collection::vec((stated(generate::Reach::Usual, 6, 0.0), rules()), 1..12),
    ) {
        let mut kept = Analysis::blank();
        for (stated, rules) in many {
            let (joint, materials) = (stated.joint(), stated.materials());
            let mut told = Told::default();
            let answer = check_into(&joint, &materials, &rules, &mut told, &mut kept);
            match check(&joint, &materials, &rules) {
                Ok(found) => {
                    prop_assert_eq!(answer, Ok(()));
                    prop_assert_eq!(told.listed(), all(&found.findings.iter().collect::<Vec<_>>()));
                    let Analysis { solid, tear_outer, shear_all, bearing_all, governing, runner_up, by_book, .. } = &found;
                    prop_assert_eq!(
                        all(&(kept.solid, kept.tear_outer, kept.shear_all, kept.bearing_all)),
                        all(&(solid, tear_outer, shear_all, bearing_all))
                    );
                    prop_assert_eq!(
                        all(&(kept.governing, kept.runner_up, kept.by_book)),
                        all(&(governing, runner_up, by_book))
                    );
                    prop_assert_eq!(
                        all(&(kept.efficiency, kept.book_efficiency, kept.credited, kept.percentages)),
                        all(&(found.efficiency, found.book_efficiency, found.credited, found.percentages))
                    );
                }
                Err(error) => {
                    prop_assert_eq!(all(&answer), all(&Err::<(), _>(error)));
                    prop_assert!(told.0.is_empty());
                    prop_assert_eq!(all(&kept), all(&Analysis::<f64, ()>::blank()));
                }
            }
        }
    }
}

/// A lap after a double strap: what straps, heads and further rows asked for belongs to the joint before.
#[test]
fn a_lap_after_a_double_strap_asks_for_no_straps() {
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    let rows = [(1, 1), (2, 2), (2, 2), (2, 2)];
    let wide = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &rows).expect("a form");
    let mut design = Design::blank();
    let sized =
        |brief: &Brief, design: &mut Design<f64, ()>| size_into(brief, &METRIC.rules, &mut Told::default(), design);
    let butt = Brief::new(wide, Length::mm(12.0), steel);
    sized(&butt, &mut design).expect("a butt joint");
    assert!(design.straps != [Limit::None; 2] && design.gaps[2].0 > 0.0 && design.heads[2].of_rows.is_some());

    // Distances that the brief gives ask for no room for heads, whatever the joint before asked for.
    let given = (1..4).fold(butt, |brief, row| brief.back_pitch(row, Length::mm(90.0)));
    sized(&given, &mut design).expect("the same, its rows at given distances");
    assert_eq!(design.heads, [HeadRoom { at_strap: None, of_rows: None }; 8]);

    sized(&Brief::new(Form::lap(1).expect("a form"), Length::mm(12.0), steel), &mut design).expect("a lap");
    assert_eq!(design.straps, [Limit::None; 2], "a lap has no straps");
    assert!(design.gaps.iter().all(|(gap, _)| *gap == 0.0), "one row has no distances: {:?}", design.gaps);

    // A plate of 500 mm is beyond its bounds: nothing of the lap stays.
    let refused = sized(&Brief::new(wide, Length::mm(500.0), steel), &mut design);
    assert_eq!(refused.unwrap_err().kind, ErrorKind::TooLarge);
    assert_eq!((design.hole.hole, design.pitch.taken, design.analysis.efficiency), (0.0, 0.0, 0.0));
}
