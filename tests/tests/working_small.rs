//! The working in little memory: word for word the other one, and the joint that it shows bit for bit.

mod generate;

use generate::{Reach, any_book, brief, config, stated};
use proptest::prelude::*;
use proptest::sample::select;
use seamwright::check::{Finding, FindingSink};
use seamwright::sizing::{Design, size_into};
use seamwright::working::{
    DIALECTS, Forces, Style, Units, size_as_written, write_check, write_check_small, write_size, write_size_small,
};

/// Findings as they are told.
#[derive(Default)]
struct Told(Vec<Finding>);

impl FindingSink for Told {
    fn take(&mut self, finding: Finding) {
        self.0.push(finding);
    }
}

fn styles() -> impl Strategy<Value = Style> {
    (select(DIALECTS), any::<[bool; 2]>()).prop_map(|(dialect, [inch, kilonewton])| Style {
        dialect,
        units: if inch { Units::Inch } else { Units::Metric },
        forces: if kilonewton { Forces::Kilonewton } else { Forces::Newton },
        ..Style::default()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: config().cases / 4, ..config() })]

    #[test]
    fn a_sizing_reads_the_same(brief in brief(4), book in any_book(), style in styles()) {
        let (mut whole, mut small) = (String::new(), String::new());
        let design = write_size(&mut whole, style, &brief, book);
        let written = write_size_small(&mut small, style, &brief, book);
        prop_assert_eq!(&whole, &small);
        prop_assert_eq!(written.map_err(|e| format!("{e:?}")), design.map(|_| ()).map_err(|e| format!("{e:?}")));
    }

    #[test]
    fn a_check_reads_the_same(stated in stated(Reach::Usual, 4, 0.0), book in any_book(), style in styles()) {
        let (joint, materials) = (stated.joint(), stated.materials());
        let (mut whole, mut small) = (String::new(), String::new());
        let analysis = write_check(&mut whole, style, &joint, &materials, book);
        let written = write_check_small(&mut small, style, &joint, &materials, book);
        prop_assert_eq!(&whole, &small);
        prop_assert_eq!(written.map_err(|e| format!("{e:?}")), analysis.map(|_| ()).map_err(|e| format!("{e:?}")));
    }

    /// The debug form of a number is read back as the same one: equal texts are equal bits.
    #[test]
    fn the_joint_is_that_of_the_bare_routine(brief in brief(6), book in any_book()) {
        let (mut bare, mut shown) = (Design::blank(), Design::blank());
        let (mut told, mut heard) = (Told::default(), Told::default());
        let sized = size_into(&brief, &book.rules, &mut told, &mut bare);
        let written = size_as_written(&brief, &book.rules, &mut heard, &mut shown);
        prop_assert_eq!(format!("{written:?}"), format!("{sized:?}"));
        prop_assert_eq!(format!("{shown:?}"), format!("{bare:?}"));
        prop_assert_eq!(format!("{:?}", heard.0), format!("{:?}", told.0));
    }
}

/// A sink that refuses at any place ends both in the same way.
#[test]
fn a_sink_that_refuses_is_never_passed_over() {
    use seamwright::joint::Form;
    use seamwright::materials::Materials;
    use seamwright::quantities::{Length, Stress};
    use seamwright::rules::METRIC;
    use seamwright::sizing::Brief;
    use seamwright::working::WorkingError;

    struct Short(usize);
    impl std::fmt::Write for Short {
        fn write_str(&mut self, s: &str) -> std::fmt::Result {
            self.0 = self.0.checked_sub(s.len()).ok_or(std::fmt::Error)?;
            Ok(())
        }
    }
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    let brief = Brief::new(Form::lap(2).unwrap(), Length::mm(13.0), steel);
    let mut whole = String::new();
    write_size_small(&mut whole, Style::default(), &brief, &METRIC).unwrap();
    for room in (0..whole.len()).step_by(whole.len() / 97) {
        let refused = write_size_small(&mut Short(room), Style::default(), &brief, &METRIC);
        assert_eq!(refused, Err(WorkingError::Sink), "{room}");
    }
    assert_eq!(write_size_small(&mut Short(whole.len()), Style::default(), &brief, &METRIC), Ok(()));
}
