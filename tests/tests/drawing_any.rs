//! Drawings of any joint that can be built: each dimension once, no label over another, all inside the frame.

mod drawing_support;

use proptest::prelude::*;
use proptest::test_runner::Config;
use seamwright::drawing::{DrawError, Extent, TitleBlock, Units};
use seamwright::error::ErrorKind;
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};

use drawing_support::{Seen, TITLE, legible, mm, owed};

/// A length anywhere between two bounds, small ones as often as large ones; rounded or not.
fn log(lo: f64, hi: f64) -> impl Strategy<Value = f64> {
    (lo.ln()..hi.ln(), any::<bool>()).prop_map(move |(x, round)| {
        let x = x.exp();
        if round { x.round().clamp(lo, hi) } else { x }
    })
}

prop_compose! {
    fn any_form()(
        kind in prop_oneof![Just(JointKind::Lap), Just(JointKind::SingleStrap), Just(JointKind::DoubleStrap)],
        zigzag in any::<bool>(),
        rows in prop::collection::vec(prop_oneof![4 => 1_u8..5, 1 => 1_u8..=60], 1..=8),
        single in 0_usize..4,
    ) -> Form {
        let last = rows.len() - 1;
        let rows: Vec<_> = rows.iter().enumerate()
            .map(|(i, &n)| (n, if kind == JointKind::DoubleStrap && (i >= single || i == last) { 2 } else { 1 })).collect();
        let arrangement = if zigzag { Arrangement::Zigzag } else { Arrangement::Chain };
        Form::from_rows(kind, arrangement, &rows).unwrap()
    }
}

prop_compose! {
    fn any_joint()(
        form in any_form(),
        pitch in log(2.0, 20000.0),
        thick in prop::array::uniform3(log(0.5, 200.0)),
        holes in prop::array::uniform8(log(1.0, 150.0)),
        alike in any::<bool>(),
        gaps in prop::array::uniform8(log(1.0, 2000.0)),
        margin in log(1.0, 1000.0),
    ) -> Option<Joint> {
        let [plate, wide, narrow] = thick;
        let mut spec = JointSpec::new(form, mm(pitch), mm(plate), mm(holes[0])).margin(mm(margin));
        for i in 1..=form.row_count() {
            let hole = if alike { holes[0] } else { holes[i - 1] };
            spec = spec.row(i, mm(hole), (i % 2 == 0 && hole > 2.0).then(|| mm(0.95 * hole)));
        }
        for (i, &gap) in (1..form.row_count()).zip(&gaps) {
            spec = spec.back_pitch(i, mm(gap));
        }
        match form.kind() {
            JointKind::Lap => spec.other_plate(mm(wide)),
            JointKind::SingleStrap => spec.strap(mm(wide)),
            JointKind::DoubleStrap => spec.straps(mm(wide), mm(narrow)),
        }.build().ok()
    }
}

proptest! {
    #![proptest_config(Config { cases: 3000, max_global_rejects: 200_000, failure_persistence: None, ..Config::default() })]

    /// Whatever the joint: each dimension once, no label over another, all inside the frame.
    #[test]
    fn nothing_overlaps_and_nothing_is_dropped(joint in any_joint(), tie in any::<bool>(), inch in any::<bool>(), full in any::<bool>()) {
        let Some(joint) = joint else { return Err(TestCaseError::reject("not a joint")) };
        let extent = if tie { Extent::Tie } else { Extent::Seam };
        let units = if inch { Units::Inch } else { Units::Millimetre };
        let (three, two, one) = ("Longitudinal seam of the second drum, shell ring next to", "1234567-ABCDEFG/0987654", "2031-12-31");
        let title = if full {
            TitleBlock { rule_book: three, date: one, prepared: one, checked: one, ..TitleBlock::new(three, two) }
        } else { TITLE };
        let title = TitleBlock { extent, units, ..title };
        let seen = match Seen::of(&joint, &title) {
            Err(DrawError::Input(e)) if e.kind == ErrorKind::RowsOverlap => return Err(TestCaseError::reject("rows overlap")),
            seen => seen.unwrap(),
        };
        let keyed = seen.keyed();
        prop_assert_eq!(&keyed, &owed(&joint, extent));
        if let Err(e) = legible(&seen) { prop_assert!(false, "{}", e); }
        prop_assert_eq!(seen.joined("caution"), seamwright::CAUTION);
        let sides = if joint.form().kind() == JointKind::Lap { 1 } else { 2 };
        let strips = if tie { 1 } else { 3 };
        prop_assert_eq!(seen.holes.len(), joint.form().rivets() as usize * sides * strips);
    }
}
