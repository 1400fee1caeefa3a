//! The working in its context: never spoilt, the same bits as the bare routine, a step for every figure of a result.

mod generate;

use std::cell::RefCell;
use std::collections::HashMap;

use generate::{Reach, Stated, any_book, any_rules, brief, config, set, stated};
use proptest::prelude::*;
use seamwright::check::{Analysis, check, check_with};
use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::proportion::Limit;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{Entry, INDIAN, METRIC, RuleBook, Rules};
use seamwright::sizing::{Decided, Design, size, size_with};
use seamwright::step::{Name, Quantity as Q, Section, Why};
use seamwright::working::{
    DIALECTS, Node, Pad, Record, Sink, Step, Style, WorkingError, into_buffer, write_check, write_size,
};
use seamwright::{CAUTION, ErrorKind};

/// A step without its line.
#[derive(Clone, Copy, Debug)]
struct Line {
    name: Name,
    value: f64,
}

/// Takes every step, and looks whether each name in it was closed before with the value that it has there.
#[derive(Default)]
struct All {
    lines: RefCell<Vec<Line>>,
    strangers: RefCell<Vec<String>>,
}

impl All {
    fn look(&self, step: &Step<'_>, place: u8, known: &HashMap<(u8, u8), f64>) {
        match step.node(place) {
            Node::Leaf(Name(q, row), value) => {
                let was = known.get(&(q as u8, row)).copied();
                if was.map(f64::to_bits) != Some(value.to_bits()) {
                    let line = format!("{:?} names {q:?}.{row} = {value}, last {was:?}", step.name);
                    self.strangers.borrow_mut().push(line);
                }
            }
            Node::Root(x) => self.look(step, x, known),
            Node::Binary(_, a, b) => {
                self.look(step, a, known);
                self.look(step, b, known);
            }
            Node::Free | Node::Literal(_) => {}
        }
    }

    fn has(&self, quantities: &[Q], value: f64) -> bool {
        self.lines.borrow().iter().any(|l| quantities.contains(&l.name.0) && l.value.to_bits() == value.to_bits())
    }
}

impl Sink for All {
    fn step(&self, step: &Step<'_>) {
        let known: HashMap<_, _> = self.lines.borrow().iter().map(|l| ((l.name.0 as u8, l.name.1), l.value)).collect();
        if !matches!(step.why, Why::Given | Why::Table(_)) {
            self.look(step, step.root(), &known);
            if let Some(left) = step.left_root() {
                self.look(step, left, &known);
            }
        }
        self.lines.borrow_mut().push(Line { name: step.name, value: step.value });
    }
    fn section(&self, _: Section) {}
}

fn sound(all: &All, spoilt: bool) -> Result<(), TestCaseError> {
    prop_assert!(!spoilt, "spoilt");
    let strangers = all.strangers.borrow();
    prop_assert!(strangers.is_empty(), "{:?}", strangers);
    Ok(())
}

/// Each figure of an analysis has a step with its very value.
fn analysis_shown(all: &All, a: &Analysis) -> Result<(), TestCaseError> {
    let p = &a.percentages;
    let mut figures: Vec<(&[Q], f64)> = vec![
        (&[Q::Solid], a.solid),
        (&[Q::PlateTear, Q::TearOuter], a.tear_outer),
        (&[Q::ShearAll], a.shear_all),
        (&[Q::ModeStrength], a.governing.strength),
        (&[Q::ModeStrength], a.runner_up.strength),
        (&[Q::ModeStrength], a.by_book.strength),
        (&[Q::Efficiency], a.efficiency),
        (&[Q::BookEfficiency], a.book_efficiency),
        (&[Q::Credited], a.credited),
        (&[Q::PlatePercent], p.plate),
        (&[Q::RivetPercent], p.rivet),
    ];
    figures.extend(a.bearing_all.map(|b| (&[Q::BearingAll][..], b)));
    figures.extend(p.combined.map(|c| (&[Q::CombinedPercent][..], c)));
    for (quantities, value) in figures {
        prop_assert!(all.has(quantities, value), "{:?} = {} has no step", quantities, value);
    }
    Ok(())
}

/// The same of a design.
fn design_shown(all: &All, d: &Design) -> Result<(), TestCaseError> {
    let p = &d.pitch;
    let mut figures: Vec<(&[Q], f64)> = vec![
        (&[Q::Hole], d.hole.hole),
        (&[Q::Hole, Q::Rivet], d.hole.rivet),
        (&[Q::PitchByShear], p.by_shear),
        (&[Q::PitchByWeaker], p.by_weaker),
        (&[Q::PitchByAllModes], p.by_all_modes),
        (&[Q::PitchLeast], p.least),
        (&[Q::MarginLeast], d.margin),
    ];
    let taken = if p.decided == Decided::Given { d.joint.strip().to_mm() } else { p.taken };
    figures.push((&[Q::Pitch], taken));
    figures.extend(d.hole.computed.map(|(hole, _)| (&[Q::Hole][..], hole)));
    if let Limit::At(cap, _) = p.greatest {
        figures.push((&[Q::PitchGreatest, Q::PitchByPlate, Q::PitchLimit], cap));
    }
    for strap in d.straps {
        if let Limit::At(least, _) = strap {
            figures.push((&[Q::StrapLeast, Q::StrapShare, Q::StrapThick], least));
        }
    }
    let joint = &d.joint;
    figures.extend(joint.wide_strap().map(|b| (&[Q::OtherPlate][..], b.to_mm())));
    figures.extend(joint.narrow_strap().map(|b| (&[Q::Narrow][..], b.to_mm())));
    figures.extend(joint.margin().map(|m| (&[Q::Margin][..], m.to_mm())));
    for (row, (least, _)) in (1..joint.form().row_count()).zip(d.gaps) {
        figures.push((&[Q::RowGapLeast], least));
        figures.extend(joint.back_pitch(row).map(|g| (&[Q::RowGap][..], g.to_mm())));
        figures.extend(d.heads[row - 1].at_strap.map(|g| (&[Q::RowGapBeside][..], g)));
    }
    for (quantities, value) in figures {
        prop_assert!(all.has(quantities, value), "{:?} = {} has no step", quantities, value);
    }
    analysis_shown(all, &d.analysis)
}

/// A joint recorded: the same bits, nothing spoilt, nothing unnamed, nothing without a step.
fn recorded(s: &Stated, rules: &Rules) -> Result<(), TestCaseError> {
    let (joint, materials) = (s.joint(), s.materials());
    let all = All::default();
    let pad = Pad::new(&all);
    let noted = check_with(Record::new(&pad), &joint, &materials, rules).map(Analysis::values);
    let plain = check(&joint, &materials, rules);
    // Debug prints every bit of a number and finds one "not a number" equal to the other.
    prop_assert_eq!(format!("{noted:?}"), format!("{plain:?}"));
    if let Ok(analysis) = plain {
        sound(&all, pad.spoilt())?;
        analysis_shown(&all, &analysis)?;
    }
    Ok(())
}

/// A book that sees otherwise: close rows, even share, lone planes, no need for bearing.
fn other_eyes(rules: Rules, close: u8, [share, lone, bearing]: [bool; 3]) -> Rules {
    let switch = |b: bool| f64::from(u8::from(b));
    let rules = set(
        rules,
        &[
            (Entry::CLOSE_ROWS, f64::from(close)),
            (Entry::INNER_SHARE, switch(share)),
            (Entry::LONE_PLANE, switch(lone)),
        ],
    );
    if bearing { rules } else { set(rules, &[(Entry::BEARING_CHECKED, 0.0)]) }
}

/// A writer's book with other rules.
fn with(book: &RuleBook<'static>, rules: Rules) -> RuleBook<'static> {
    RuleBook { rules, ..*book }
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_check_recorded_is_the_check(s in stated(Reach::Usual, 8, 5.0), book in any_book(), close in 0..3_u8,
                                     eyes in any::<[bool; 3]>(), out in prop::option::of(30.0..300.0)) {
        recorded(&s, &book.rules)?;
        recorded(&Stated { shear_out: out, ..s }, &other_eyes(book.rules, close, eyes))?;
    }

    #[test]
    fn a_check_at_the_bounds_recorded_is_the_check(s in stated(Reach::Bounds, 60, 0.0), rules in any_rules(40)) {
        recorded(&s, &rules)?;
    }

    #[test]
    fn a_sizing_recorded_is_the_sizing(b in brief(6), book in any_book(), rules in any_rules(12), own in any::<bool>()) {
        let rules = if own { rules } else { book.rules };
        let all = All::default();
        let pad = Pad::new(&all);
        let noted = size_with(Record::new(&pad), &b, &rules).map(Design::values);
        let plain = size(&b, &rules);
        prop_assert_eq!(format!("{noted:?}"), format!("{plain:?}"));
        if let Ok(design) = plain {
            sound(&all, pad.spoilt())?;
            design_shown(&all, &design)?;
        }
    }

    #[test]
    fn every_sheet_is_written_whole_and_cautions(s in stated(Reach::Usual, 8, 5.0), b in brief(6), book in any_book(),
                                                 dialect in 0..DIALECTS.len(), close in 0..3_u8, eyes in any::<[bool; 3]>()) {
        let style = Style { dialect: DIALECTS[dialect], ..Style::default() };
        let other = with(book, other_eyes(book.rules, close, eyes));
        let mut sheet = String::new();
        match write_check(&mut sheet, style, &s.joint(), &s.materials(), &other) {
            Ok(_) => prop_assert!(words(&sheet).contains(&words(CAUTION))),
            Err(e) => prop_assert!(matches!(e, WorkingError::Routine(_)), "{e}"),
        }
        sheet.clear();
        match write_size(&mut sheet, style, &b, book) {
            Ok(_) => prop_assert!(words(&sheet).contains(&words(CAUTION))),
            Err(e) => prop_assert!(matches!(e, WorkingError::Routine(_)), "{e}"),
        }
    }
}

/// A text without its breaks.
fn words(text: &str) -> String {
    text.split_whitespace().collect()
}

fn steel() -> Materials {
    Materials::new(Stress::mpa(95.0), Stress::mpa(70.0)).bearing(Stress::mpa(160.0))
}

/// All of the text, or the size that it needs, for each size asked for.
fn in_every_buffer(
    sizes: impl Iterator<Item = usize>,
    write: impl Fn(&mut dyn std::fmt::Write) -> Result<(), WorkingError>,
) {
    let mut whole = String::new();
    write(&mut whole).unwrap();
    let needed = whole.len();
    for size in sizes.take_while(|s| *s < needed).chain([needed - 1, needed, needed + 1]) {
        let mut buffer = vec![0; size];
        match into_buffer(&mut buffer, |out| write(out)) {
            Ok(text) => assert!(size >= needed && text == whole, "{size}"),
            Err(WorkingError::Routine(e)) => {
                assert!(size < needed && e.kind == ErrorKind::NoSpace, "{size} of {needed}: {e}");
                assert_eq!(e.limit, f64::from(u32::try_from(needed).unwrap()));
            }
            Err(other) => panic!("{other}"),
        }
    }
}

#[test]
fn a_buffer_holds_all_or_says_what_it_needs() {
    let joint = JointSpec::new(Form::lap(1).unwrap(), Length::mm(52.0), Length::mm(9.0), Length::mm(19.0));
    let joint = joint.build().unwrap();
    in_every_buffer(0.., |out| write_check(out, Style::default(), &joint, &steel(), &METRIC).map(|_| ()));
    let brief = seamwright::sizing::Brief::new(Form::unequal_straps(3).unwrap(), Length::mm(14.0), steel());
    for dialect in DIALECTS {
        let style = Style { dialect: *dialect, ..Style::default() };
        in_every_buffer((0..).step_by(499), |out| write_size(out, style, &brief, &INDIAN).map(|_| ()));
    }
}

/// A sink that takes so many pieces and then refuses.
struct Refusing(usize);

impl std::fmt::Write for Refusing {
    fn write_str(&mut self, _: &str) -> std::fmt::Result {
        self.0 = self.0.checked_sub(1).ok_or(std::fmt::Error)?;
        Ok(())
    }
}

#[test]
fn a_sink_that_refuses_is_never_passed_over() {
    let joint = JointSpec::new(Form::lap(1).unwrap(), Length::mm(52.0), Length::mm(9.0), Length::mm(19.0));
    let joint = joint.build().unwrap();
    for dialect in DIALECTS {
        let style = Style { dialect: *dialect, ..Style::default() };
        let mut taken = 0;
        while let Err(e) = write_check(&mut Refusing(taken), style, &joint, &steel(), &METRIC) {
            assert_eq!(e, WorkingError::Sink, "{taken}");
            taken += 1;
        }
        assert!(taken > 100, "{taken}");
    }
}
