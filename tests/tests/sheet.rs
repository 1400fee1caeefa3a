//! The sheet that someone signs: all of it there, its figures those of the result and of published examples, complete
//! or refused.

mod generate;

use generate::{Reach, any_book, brief, config, set, stated};
use proptest::prelude::*;
use seamwright::bounds::Field;
use seamwright::check::{Analysis, Verdict, check};
use seamwright::given::Given;
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::modes::{Lens, Strengths};
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{Basis, Existing, Footing, KnownLength, rate};
use seamwright::rules::{BOOKS, BRITISH_MARINE, Entry, EntryKind, INDIAN, Label, METRIC, RuleBook, US_EXISTING, info};
use seamwright::sheet::{Divided, Known, Particulars, Task, input_hash, write_inputs, write_sheet};
use seamwright::sizing::{Brief, size};
use seamwright::step::Plain;
use seamwright::working::{DIALECTS, Forces, Style, WorkingError, into_buffer};
use seamwright::{CAUTION, ErrorKind};

fn mm(x: f64) -> Length {
    Length::mm(x)
}

fn steel() -> Materials {
    Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0))
}

/// Khurmi & Gupta, Example 9.4, with the pitch of the book.
fn khurmi_9_4() -> Joint {
    JointSpec::new(Form::lap(2).unwrap(), mm(71.0), mm(13.0), mm(23.0)).build().unwrap()
}

fn sheet(task: &Task<'_>, book: &RuleBook<'_>) -> Result<String, WorkingError> {
    let mut text = String::new();
    write_sheet(&mut text, Style::default(), task, &Particulars::default(), book).map(|()| text)
}

/// The text on one line, blanks once.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The lines of a section by its title, without its number.
fn section(sheet: &str, title: &str) -> String {
    let start = sheet.find(&format!(". {title}\n")).unwrap_or_else(|| panic!("no {title} in\n{sheet}"));
    let body = &sheet[start..].split_once("--\n").expect("a heading is underlined").1;
    body.split("\n\n").next().unwrap_or("").to_owned()
}

/// As a dimension stands on a drawing: up to four decimals, none of them a useless zero.
fn size_of(x: f64) -> String {
    let text = format!("{x:.4}");
    format!("{} mm", text.trim_end_matches('0').trim_end_matches('.'))
}

#[test]
fn a_published_example_stands_on_its_sheet() {
    let joint = khurmi_9_4();
    let text = flat(&sheet(&Task::Check(&joint, &steel()), &METRIC).unwrap());
    // Printed in the book: 49 920 N tearing, 49 864 N shearing (with pi/4 = 0.7855; 2 x pi/4 x 23 x 23 x 60 = 49 857.1),
    // 71 760 N crushing, 67.5 %.
    assert!(text.contains("tearing at the outer row 49920 67.61 %"), "{text}");
    assert!(text.contains("shearing of all rivets 49857 67.52 %"), "{text}");
    assert!(text.contains("crushing of all rivets 71760 97.18 %"), "{text}");
    assert!(text.contains("eta, efficiency over all modes 67.52 %"), "{text}");
    let kilo = Style { forces: Forces::Kilonewton, ..Style::default() };
    let mut text = String::new();
    write_sheet(&mut text, kilo, &Task::Check(&joint, &steel()), &Particulars::default(), &METRIC).unwrap();
    assert!(flat(&text).contains("tearing at the outer row 49.92 67.61 %"), "{text}");
}

#[test]
fn a_lap_of_one_row_by_hand() {
    let joint = JointSpec::new(Form::lap(1).unwrap(), mm(60.0), mm(10.0), mm(20.0)).margin(mm(30.0)).build().unwrap();
    let metal = Materials::new(Stress::mpa(80.0), Stress::mpa(100.0)).bearing(Stress::mpa(200.0));
    let text = flat(&sheet(&Task::Check(&joint, &metal), &METRIC).unwrap());
    // Solid 60 x 10 x 80 = 48 000 N; tearing (60 - 20) x 10 x 80 = 32 000 N, 66.67 %; one rivet in shear
    // pi/4 x 400 x 100 = 31 415.9 N, 65.45 %; crushing 20 x 10 x 200 = 40 000 N, 83.33 %. Runner-up over governing:
    // 32 000 / 31 415.9 = 1.0186. Strength 31 415.9 / 60 = 523.6 N/mm.
    for part in [
        "solid plate 48000 100.00 %",
        "tearing at the outer row 32000 66.67 %",
        "shearing of all rivets 31416 65.45 %",
        "crushing of all rivets 40000 83.33 %",
        "Governing all rivets fail: row 1 shears: 31416 N, 65.45 %",
        "Runner-up plate A tears at row 1: 32000 N, 66.67 %",
        "runner-up above the governing mode by 1.86 %",
        "strength of the seam 523.6 N/mm",
        "1 1 1 31416 31416 40000 40000",
    ] {
        assert!(text.contains(part), "{part} in {text}");
    }
}

/// All that a result holds stands on the sheet.
fn all_there(
    text: &str,
    joint: &Joint,
    materials: &Materials,
    a: &Analysis,
    book: &RuleBook<'_>,
) -> Result<(), TestCaseError> {
    let dimensions = flat(&section(text, "Dimensions"));
    let mut sizes = vec![joint.pitch(), joint.plate()];
    sizes.extend([joint.other_plate(), joint.wide_strap(), joint.narrow_strap(), joint.margin()].into_iter().flatten());
    sizes.extend((1..joint.form().row_count()).filter_map(|row| joint.back_pitch(row)));
    sizes.extend(joint.rows().iter().flat_map(|row| [row.hole(), row.rivet()]));
    if let Some((first, second)) = joint.widths() {
        sizes.push(first);
        sizes.extend(second.filter(|_| joint.form().unequal()));
    }
    for size in sizes {
        let wanted = size_of(size.to_mm());
        prop_assert!(dimensions.contains(&format!(" {wanted}")), "{} in\n{}", wanted, dimensions);
    }
    let given = Given::new(Plain, joint, materials);
    let strengths = Strengths::new(Plain, joint, &given, &book.rules, Lens::Real);
    let modes = flat(&section(text, "Failure modes"));
    let mut count = 0;
    for mode in strengths.modes() {
        // In the sheet's order: at a tie the last bit decides how it is rounded.
        let share = 100.0 * (mode.strength / a.solid);
        let wanted = format!("{:.0} {share:.2} % {}", mode.strength, mode.name(joint.form()));
        prop_assert!(modes.contains(&wanted), "{} in\n{}", wanted, modes);
        count += 1;
    }
    let said = format!("{count} modes were worked out");
    prop_assert!(modes.starts_with(&said), "{}", said);
    let findings = flat(&section(text, "Findings"));
    let mut last = Verdict::Open;
    for finding in a.findings.iter() {
        let word = ["NOT MET", "unknown", "note", "met"][finding.verdict as usize];
        let wanted = format!("{word} {}", finding.subject.what());
        prop_assert!(findings.contains(&wanted), "{} in\n{}", wanted, findings);
        prop_assert!((last as u8) <= finding.verdict as u8, "open ones first");
        last = finding.verdict;
    }
    for part in [CAUTION, "Prepared", "Checked", "Page one text without page breaks", book.title] {
        prop_assert!(flat(text).contains(part), "{}", part);
    }
    let shares = [("J, efficiency by the book", a.book_efficiency), ("credited efficiency", a.credited)];
    for (label, share) in shares {
        let wanted = format!("{label} {:.2} %", 100.0 * share);
        prop_assert!(flat(text).contains(&wanted), "{}", wanted);
    }
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn every_dimension_mode_and_finding_of_a_check_stands_on_its_sheet(s in stated(Reach::Usual, 5, 5.0), book in any_book()) {
        let book = RuleBook { rules: set(book.rules, &[(Entry::BEARING_CHECKED, 0.0)]), ..*book };
        let (joint, materials) = (s.joint(), s.materials());
        let text = sheet(&Task::Check(&joint, &materials), &book).map_err(|e| TestCaseError::fail(e.to_string()))?;
        let found = check(&joint, &materials, &book.rules).map_err(|e| TestCaseError::fail(e.to_string()))?;
        all_there(&text, &joint, &materials, &found, &book)?;
    }

    #[test]
    fn every_dimension_mode_and_finding_of_a_design_stands_on_its_sheet(b in brief(4), book in any_book()) {
        match (sheet(&Task::Size(&b), book), size(&b, &book.rules)) {
            (Ok(text), Ok(design)) => all_there(&text, &design.joint, b.materials(), &design.analysis, book)?,
            (Err(WorkingError::Routine(a)), Err(b)) => prop_assert_eq!(a.kind, b.kind),
            (a, b) => prop_assert!(false, "{:?} against {:?}", a.map(|_| ()), b.map(|_| ())),
        }
    }
}

/// What is from memory and not listed does not touch the answer: another value of it changes nothing.
#[test]
fn what_is_from_memory_and_not_listed_does_not_matter() {
    let mut tried = 0;
    for book in BOOKS {
        for form in [Form::lap(2), Form::double_strap(3), Form::unequal_straps(3)] {
            let brief = Brief::new(form.unwrap(), mm(14.0), steel());
            let Ok(design) = size(&brief, &book.rules) else { continue };
            let listed = section(&sheet(&Task::Size(&brief), book).unwrap(), "Figures from memory in this answer");
            for entry in Entry::all().filter(|e| book.clause(e.no()).is_some_and(|c| c.label == Label::Memory)) {
                let row = info(entry);
                let key = if row.line > 0 { format!("{}.{}", row.key, row.line) } else { row.key.to_owned() };
                if listed.contains(&format!("- {key} = ")) {
                    continue;
                }
                let own = book.rules.get(entry);
                let other = match row.kind {
                    // A little off, inside the bounds; a table stays in its order.
                    EntryKind::Number(_) => (own * 1.001 + 1e-6).min(row.hi),
                    EntryKind::Switch | EntryKind::Choice(_) => {
                        if own > 0.0 {
                            0.0
                        } else {
                            1.0
                        }
                    }
                };
                let rules = book.rules.with(entry, other).unwrap();
                let Ok(again) = size(&brief, &rules) else { panic!("{} {key}: no longer sized", book.id) };
                let same = again.joint == design.joint
                    && again.analysis.governing == design.analysis.governing
                    && again.analysis.by_book == design.analysis.by_book
                    && again.analysis.credited == design.analysis.credited;
                assert!(same, "{} {key} matters and is not listed in\n{listed}", book.id);
                tried += 1;
            }
        }
    }
    assert!(tried > 100, "{tried}");
}

#[test]
fn the_basis_of_every_input_is_said() {
    let joint = khurmi_9_4();
    let ultimate = Materials::new(Stress::mpa(400.0), Stress::mpa(300.0)).bearing(Stress::mpa(600.0));
    let known = [
        Known { field: Field::Plate, row: 0, basis: Basis::Measured, source: "least of 8 readings" },
        Known { field: Field::Tension, row: 0, basis: Basis::Assumed, source: "no stamp found" },
    ];
    let particulars = Particulars {
        object: "Drum D-1",
        prepared: "P. Repared",
        divided: Some(Divided { ultimate, factor: 5.0 }),
        known: &known,
        invented: true,
        ..Particulars::default()
    };
    let write = |particulars: &Particulars<'_>, materials: &Materials| {
        let mut text = String::new();
        let task = Task::Check(&joint, materials);
        write_sheet(&mut text, Style::default(), &task, particulars, &METRIC).map(|()| flat(&text))
    };
    let text = write(&particulars, &steel()).unwrap();
    for part in [
        "Object Drum D-1",
        "plate 13 mm measured: least of 8 readings",
        "hole 23 mm given",
        "tension 400.00 MPa assumed: no stamp found",
        "shear 300.00 MPa given",
        "safety factor 5 given",
        "tension, plate st 80.00 MPa",
        "divided by a factor of safety of 5",
        "Prepared P. Repared",
        "INVENTED SCENARIO",
    ] {
        assert!(text.contains(part), "{part} in {text}");
    }
    // Stresses that are not the stated ones over the stated factor are refused.
    let other = steel().bearing(Stress::mpa(121.0));
    assert!(
        matches!(write(&particulars, &other), Err(WorkingError::Routine(e)) if e.kind == ErrorKind::Inconsistent && e.field == Field::SafetyFactor)
    );
    // Stresses at failure that are no number are refused by their own name.
    let nothing = ultimate.bearing(Stress::mpa(f64::NAN));
    let unknown = Particulars { divided: Some(Divided { ultimate: nothing, factor: 5.0 }), ..particulars };
    assert!(
        matches!(write(&unknown, &steel()), Err(WorkingError::Routine(e)) if e.kind == ErrorKind::NotFinite && e.field == Field::Bearing)
    );
    for (footing, words) in [
        (None, "Not said whether"),
        (Some(Footing::Permissible), "Permissible stresses:"),
        (Some(Footing::Ultimate), "Stresses at FAILURE:"),
    ] {
        let text = write(&Particulars { footing, ..Particulars::default() }, &steel()).unwrap();
        assert!(text.contains(words), "{words}");
    }
}

#[test]
fn a_changed_entry_is_the_users_own_and_an_input() {
    let book = RuleBook { rules: METRIC.rules.with_key("margin.least.factor", 1.75).unwrap(), ..METRIC };
    let brief = Brief::new(Form::lap(2).unwrap(), mm(13.0), steel());
    let text = flat(&sheet(&Task::Size(&brief), &book).unwrap());
    assert!(text.contains("with 1 entry changed by the user"), "{text}");
    assert!(text.contains("margin.least.factor 1.75 changed by the user; the book's own value is 1.5"), "{text}");
    // 1.75 x 23 = 40.25 mm, up to 41 mm.
    assert!(text.contains("margin m >= 40.25 mm 41 mm set by the user; the book's own value is 1.5 [OWN]"), "{text}");
}

fn fnv_1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |h, b| (h ^ u64::from(*b)).wrapping_mul(0x0000_0100_0000_01b3))
}

#[test]
fn the_hash_is_fnv_1a_over_the_documented_lines() {
    // Test vectors of the authors of the hash.
    assert_eq!(fnv_1a(b""), 0xcbf2_9ce4_8422_2325);
    assert_eq!(fnv_1a(b"a"), 0xaf63_dc4c_8601_ec8c);
    assert_eq!(fnv_1a(b"foobar"), 0x8594_4171_f739_67e8);
    let (joint, metal) = (khurmi_9_4(), steel());
    let task = Task::Check(&joint, &metal);
    let mut text = String::new();
    write_inputs(&mut text, &task, &METRIC).unwrap();
    assert_eq!(input_hash(&task, &METRIC).unwrap(), fnv_1a(text.as_bytes()));
    assert!(sheet(&task, &METRIC).unwrap().contains(&format!("{:016x}", fnv_1a(text.as_bytes()))));
    // By the documentation, by hand.
    let (inputs, rules) = text.split_at(text.find("rule.").unwrap());
    assert_eq!(
        inputs,
        "seamwright inputs 1\ntask=check\nbook=metric\nkind=lap\narrangement=zigzag\nrow=1,1\nrow=1,1\n\
         strip=71.000000000\nplate=13.000000000\nother_plate=13.000000000\nhole.1=23.000000000\nrivet.1=23.000000000\n\
         hole.2=23.000000000\nrivet.2=23.000000000\ntension=80.000000000\nbearing=120.000000000\n\
         other_tension=80.000000000\nother_bearing=120.000000000\nshear=60.000000000\n"
    );
    let mut wanted = String::new();
    for entry in Entry::all() {
        let row = info(entry);
        if METRIC.rules.get(entry) != row.default {
            let line = if row.line > 0 { format!(".{}", row.line) } else { String::new() };
            wanted += &format!("rule.{}{line}={:.9}\n", row.key, METRIC.rules.get(entry));
        }
    }
    assert_eq!(rules, wanted);
    // Words, units and dialect are not in it; every number is.
    let thicker = JointSpec::new(Form::lap(2).unwrap(), mm(71.0), mm(13.001), mm(23.0)).build().unwrap();
    assert_ne!(input_hash(&Task::Check(&thicker, &metal), &METRIC), input_hash(&task, &METRIC));
    assert_ne!(input_hash(&task, &INDIAN), input_hash(&task, &METRIC));
}

#[test]
fn a_rating_has_its_pressure_and_what_it_rests_on() {
    let inch = |x: f64| KnownLength::measured(Length::inch(x));
    let old =
        Existing::new(Form::lap(2).unwrap(), KnownLength::given(Length::inch(3.5)), inch(0.45), Length::inch(48.0))
            .hole(inch(0.9375))
            .metals(seamwright::rules::Metal::Steel, seamwright::rules::Metal::Steel)
            .safety(5.0)
            .present(Pressure::psi(125.0));
    let rated = rate(&old, &US_EXISTING.rules).unwrap();
    let text = flat(&sheet(&Task::Rate(&old), &US_EXISTING).unwrap());
    // 144.6 psi by the arithmetic in the rating's own test: 0.997 MPa.
    assert!((Pressure::mpa(rated.allowed).to_psi() - 144.6).abs() < 0.1);
    assert!(text.contains("Working pressure allowed: 1.00 MPa."), "{text}");
    assert!(text.contains("pitch 88.9 mm given") && text.contains("inside diameter 1219.2 mm given"), "{text}");
    for a in rated.assumptions.iter() {
        assert!(text.contains(a.about.what()), "{} in {text}", a.about.what());
    }
    for finding in rated.findings.iter() {
        assert!(text.contains(finding.subject.what()), "{} in {text}", finding.subject.what());
    }
}

/// The lap of the rating above under a factor of 4: 144.6 x 5/4 = 180.8 psi.
fn old_lap(present: f64) -> Existing {
    let inch = |x: f64| KnownLength::measured(Length::inch(x));
    let steel = seamwright::rules::Metal::Steel;
    Existing::new(Form::lap(2).unwrap(), inch(3.5), inch(0.45), Length::inch(48.0))
        .hole(inch(0.9375))
        .metals(steel, steel)
        .safety(4.0)
        .present(Pressure::psi(present))
}

#[test]
fn a_rule_on_the_shell_counts_among_those_not_met() {
    for (present, words) in [(180.0, "No rule is broken; 2 could not"), (182.0, "1 rule is NOT met; 2 could not")] {
        let text = flat(&sheet(&Task::Rate(&old_lap(present)), &US_EXISTING).unwrap());
        // In short, and above the list.
        assert_eq!(text.matches(words).count(), 2, "{present}: {text}");
        assert_eq!(text.contains("NOT MET working pressure that is allowed"), present > 181.0, "{text}");
    }
}

#[test]
fn what_findings_on_the_shell_have_from_memory_is_listed() {
    let mut found = 0;
    for book in BOOKS {
        let old = old_lap(100.0);
        let Ok(rated) = rate(&old, &book.rules) else { continue };
        let text = sheet(&Task::Rate(&old), book).unwrap();
        let listed = section(&text, "Figures from memory in this answer");
        for entry in rated.findings.iter().filter_map(|f| Entry::from_no(f.entry)) {
            let label = book.clause(entry.no()).map(|c| c.label);
            let key = info(entry).key;
            assert_eq!(listed.contains(&format!("- {key}")), label == Some(Label::Memory), "{} {key}", book.id);
            found += usize::from(label == Some(Label::Memory));
        }
    }
    assert!(found > 0, "no book has such a figure");
}

#[test]
fn a_dimension_of_a_rating_is_not_called_given() {
    let text = sheet(&Task::Rate(&old_lap(100.0)), &US_EXISTING).unwrap();
    let dimensions = section(&text, "Dimensions");
    assert!(flat(&dimensions).contains("plate B t2 - 11.43 mm as found"), "{dimensions}");
    // But for what was not given at all.
    assert!(!dimensions.replace("not given", "").contains("given"), "{dimensions}");
}

#[test]
fn a_rule_that_does_not_reach_a_case_gives_no_advice() {
    // The table of greatest pitches stops before single straps of three rows, that of holes before 45 mm.
    let form = Form::single_strap(3).unwrap();
    let joint = JointSpec::new(form, mm(390.0), mm(12.0), mm(45.0)).strap(mm(14.0)).build().unwrap();
    let text = flat(&sheet(&Task::Check(&joint, &steel()), &BRITISH_MARINE).unwrap());
    for part in ["unknown pitch, greatest: provided 390 mm", "unknown hole of the standard series: provided 45 mm"] {
        assert!(text.contains(&format!("{part} -> the rule does not reach this case: it was not judged")), "{text}");
    }
    assert!(!text.contains("cannot be kept tight") && !text.contains("take the next size"), "{text}");
}

#[test]
fn a_shear_out_stress_of_the_strap_alone_is_an_input() {
    let spec = JointSpec::new(Form::single_strap(1).unwrap(), mm(70.0), mm(12.0), mm(21.0));
    let joint = spec.strap(mm(13.0)).margin(mm(30.0)).build().unwrap();
    let mut metal = steel();
    metal.other.shear_out = Some(Stress::mpa(50.0));
    let text = flat(&sheet(&Task::Check(&joint, &metal), &METRIC).unwrap());
    for part in [
        "shear-out of strap 50.00 MPa given",
        "shear-out at the margin, plate sp not given",
        "shear-out at the margin, strap sp2 50.00 MPa",
        "tension, strap st2 80.00 MPa",
    ] {
        assert!(text.contains(part), "{part} in {text}");
    }
}

#[test]
fn the_strip_of_a_tie_is_not_called_its_pitch() {
    let form = Form::from_rows(JointKind::Lap, Arrangement::Chain, &[(2, 1), (2, 1)]).unwrap();
    let joint = JointSpec::new(form, mm(140.0), mm(13.0), mm(23.0)).build().unwrap();
    let text = flat(&sheet(&Task::Check(&joint, &steel()), &METRIC).unwrap());
    assert!(text.contains("width of the strip 140 mm given") && !text.contains("pitch 140 mm"), "{text}");
    assert!(text.contains("pitch of the outer row p"), "{text}");
}

#[test]
fn inputs_that_cannot_be_printed_have_no_hash() {
    let brief = |plate: f64| Brief::new(Form::lap(2).unwrap(), mm(plate), steel());
    let hash = |plate| input_hash(&Task::Size(&brief(plate)), &METRIC).map_err(|e| (e.kind, e.field));
    assert!(hash(200.0).is_ok());
    assert_eq!(hash(200.1), Err((ErrorKind::TooLarge, Field::Plate)));
    assert_eq!(hash(f64::NAN), Err((ErrorKind::NotFinite, Field::Plate)));
    let bad = Materials::new(Stress::mpa(f64::NAN), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
    let refused = input_hash(&Task::Check(&khurmi_9_4(), &bad), &METRIC).unwrap_err();
    assert_eq!((refused.kind, refused.field), (ErrorKind::NotFinite, Field::Tension));
    let items = [seamwright::rules::Item::new(Entry::ROOM, &[1e300], seamwright::rules::Clause::own("too much"))];
    let book = RuleBook::from_items("mine", "a book out of range", &[], &items);
    let refused = input_hash(&Task::Check(&khurmi_9_4(), &steel()), &book).unwrap_err();
    assert_eq!(refused.field, Field::RuleEntry);
}

/// Every size from 0 to one more than needed: all of the sheet, or the size that it needs.
#[test]
fn a_buffer_holds_all_or_says_what_it_needs() {
    let joint = khurmi_9_4();
    for dialect in DIALECTS {
        let style = Style { dialect: *dialect, ..Style::default() };
        let (task, metal) = (&joint, steel());
        let task = Task::Check(task, &metal);
        let write = |out: &mut dyn std::fmt::Write| write_sheet(out, style, &task, &Particulars::default(), &METRIC);
        let mut whole = String::new();
        write(&mut whole).unwrap();
        let needed = whole.len();
        // Each size once in plain; the others at a stride, and around the end.
        let stride = if *dialect == DIALECTS[0] { 1 } else { 211 };
        for size in (0..needed).step_by(stride).chain([needed - 1, needed, needed + 1]) {
            let mut buffer = vec![0; size];
            match into_buffer(&mut buffer, write) {
                Ok(text) => assert!(size >= needed && text == whole, "{size}"),
                Err(WorkingError::Routine(e)) => {
                    assert!(size < needed && e.kind == ErrorKind::NoSpace, "{size} of {needed}: {e}");
                    assert_eq!(e.limit, f64::from(u32::try_from(needed).unwrap()));
                }
                Err(other) => panic!("{other}"),
            }
        }
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
    let (joint, metal) = (khurmi_9_4(), steel());
    let task = Task::Check(&joint, &metal);
    for dialect in DIALECTS {
        let style = Style { dialect: *dialect, ..Style::default() };
        let mut taken = 0;
        while let Err(e) = write_sheet(&mut Refusing(taken), style, &task, &Particulars::default(), &METRIC) {
            assert_eq!(e, WorkingError::Sink, "{taken}");
            taken += 7;
        }
        assert!(taken > 500, "{taken}");
    }
}
