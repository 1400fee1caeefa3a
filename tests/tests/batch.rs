//! Sweeps against single checks, bit for bit: all forms and books, bad rows, ties, every level of the processor.

mod generate;

use generate::{any_rules, config, form, named_forms};
use proptest::prelude::*;
use proptest::sample::select;
use seamwright::batch::{COMPUTED, Column, Inputs, ModeTable, NO_MODE, Outputs, Path, Sweep};
use seamwright::bounds::Field;
use seamwright::check::{Analysis, check};
use seamwright::error::ErrorKind;
use seamwright::given::Given;
use seamwright::joint::{Arrangement, Form, JointKind, JointSpec};
use seamwright::materials::{Materials, PlateStress};
use seamwright::modes::{Lens, Strengths};
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, Entry, METRIC, Rules, STRUCTURAL};
use seamwright::step::Plain;
use seamwright_lanes::Lanes;

/// Columns as a test keeps them: what is not given, the same in all rows, or each row its own.
#[derive(Clone, Debug)]
enum Kept {
    None,
    Constant(f64),
    Values(Vec<f64>),
}

impl Kept {
    fn column(&self) -> Option<Column<'_>> {
        match self {
            Kept::None => None,
            Kept::Constant(x) => Some(Column::Constant(*x)),
            Kept::Values(x) => Some(Column::Values(x)),
        }
    }

    fn at(&self, row: usize) -> Option<f64> {
        match self {
            Kept::None => None,
            Kept::Constant(x) => Some(*x),
            Kept::Values(x) => Some(x[row]),
        }
    }
}

/// A sweep's columns, in the order of `Inputs`.
#[derive(Clone, Debug)]
struct Columns {
    rows: usize,
    kept: [Kept; 14],
}

const PITCH: usize = 0;
const PLATE: usize = 1;
const HOLE: usize = 2;
const TENSION: usize = 3;
const SHEAR: usize = 4;
const RIVET: usize = 5;
const OTHER: usize = 6;
const NARROW: usize = 7;
const OTHER_TENSION: usize = 8;
const BEARING: usize = 9;
const OTHER_BEARING: usize = 10;
const PLATE_SHEAR: usize = 11;
const MARGIN: usize = 12;
const BACK: usize = 13;

impl Columns {
    fn inputs(&self) -> Inputs<'_> {
        let needed = |n: usize| self.kept[n].column().expect("a needed column");
        Inputs {
            rivet: self.kept[RIVET].column(),
            other: self.kept[OTHER].column(),
            narrow: self.kept[NARROW].column(),
            other_tension: self.kept[OTHER_TENSION].column(),
            bearing: self.kept[BEARING].column(),
            other_bearing: self.kept[OTHER_BEARING].column(),
            plate_shear: self.kept[PLATE_SHEAR].column(),
            margin: self.kept[MARGIN].column(),
            back_pitch: self.kept[BACK].column(),
            ..Inputs::new(needed(PITCH), needed(PLATE), needed(HOLE), needed(TENSION), needed(SHEAR))
        }
    }

    /// The single check of a row, put together here from the columns and not by the sweep.
    fn single(&self, form: &Form, rules: &Rules, row: usize) -> Result<Analysis, seamwright::Error> {
        let at = |n: usize| self.kept[n].at(row);
        let mm = |n: usize| at(n).map(Length::mm);
        let mpa = |n: usize| at(n).map(Stress::mpa);
        let needed = |n: usize| mm(n).expect("a needed column");
        let mut spec = JointSpec::new(*form, needed(PITCH), needed(PLATE), needed(HOLE));
        if let Some(rivet) = mm(RIVET) {
            spec = spec.rivet(rivet);
        }
        if let Some(other) = mm(OTHER) {
            spec = match form.kind() {
                JointKind::Lap => spec.other_plate(other),
                JointKind::SingleStrap => spec.strap(other),
                JointKind::DoubleStrap => spec.straps(other, mm(NARROW).unwrap_or(other)),
            };
        }
        if let Some(margin) = mm(MARGIN) {
            spec = spec.margin(margin);
        }
        if let Some(gap) = mm(BACK) {
            spec = (1..form.row_count()).fold(spec, |spec, row| spec.back_pitch(row, gap));
        }
        let tension = mpa(TENSION).expect("a needed column");
        let plate = PlateStress { tension, bearing: mpa(BEARING), shear_out: mpa(PLATE_SHEAR) };
        let other = PlateStress {
            tension: mpa(OTHER_TENSION).unwrap_or(tension),
            bearing: mpa(OTHER_BEARING).or(mpa(BEARING)),
            shear_out: plate.shear_out,
        };
        check(&spec.build()?, &Materials { plate, other, rivet_shear: mpa(SHEAR).expect("a needed column") }, rules)
    }
}

/// All results of a run, as bits.
#[derive(Clone, PartialEq, Debug)]
struct Results {
    efficiency: Vec<f64>,
    book: Vec<f64>,
    credited: Vec<f64>,
    mode: Vec<u16>,
    status: Vec<u8>,
}

impl Results {
    fn new(rows: usize) -> Results {
        Results {
            efficiency: vec![7.0; rows],
            book: vec![7.0; rows],
            credited: vec![7.0; rows],
            mode: vec![7; rows],
            status: vec![7; rows],
        }
    }

    fn outputs(&mut self, from: usize, to: usize) -> Outputs<'_> {
        Outputs {
            mode: Some(&mut self.mode[from..to]),
            book_efficiency: Some(&mut self.book[from..to]),
            credited: Some(&mut self.credited[from..to]),
            status: Some(&mut self.status[from..to]),
            ..Outputs::new(&mut self.efficiency[from..to])
        }
    }

    fn bits(&self) -> Vec<[u64; 5]> {
        let figures = self.efficiency.iter().zip(&self.book).zip(&self.credited);
        figures
            .zip(self.mode.iter().zip(&self.status))
            .map(|(((e, b), c), (m, s))| [e.to_bits(), b.to_bits(), c.to_bits(), u64::from(*m), u64::from(*s)])
            .collect()
    }
}

/// What single checks give.
fn singly(columns: &Columns, form: &Form, rules: &Rules) -> Results {
    let table = ModeTable::new(form, columns.kept[OTHER].column().is_some());
    let mut results = Results::new(columns.rows);
    for row in 0..columns.rows {
        let (figures, mode, status) = match columns.single(form, rules, row) {
            Ok(a) => {
                let number = table.number(a.governing.cut).expect("a mode of the form");
                ([a.efficiency, a.book_efficiency, a.credited], number, COMPUTED)
            }
            Err(e) => ([f64::NAN; 3], NO_MODE, e.kind as u8),
        };
        [results.efficiency[row], results.book[row], results.credited[row]] = figures;
        (results.mode[row], results.status[row]) = (mode, status);
    }
    results
}

fn compare(columns: &Columns, form: &Form, rules: &Rules) -> Result<Option<Path>, TestCaseError> {
    let sweep = match Sweep::new(form, rules, columns.inputs(), columns.rows) {
        Ok(sweep) => sweep,
        Err(e) => {
            // What is refused as a whole is refused in every row.
            for row in 0..columns.rows {
                prop_assert!(columns.single(form, rules, row).is_err(), "{e}: row {row} of {columns:?}");
            }
            return Ok(None);
        }
    };
    let expected = singly(columns, form, rules).bits();
    for level in Lanes::available() {
        let mut results = Results::new(columns.rows);
        sweep.run_with(level, 0, results.outputs(0, columns.rows)).expect("outputs of one length");
        for (row, (found, expected)) in results.bits().iter().zip(&expected).enumerate() {
            let at = |n: usize| columns.kept[n].at(row);
            prop_assert!(
                found == expected,
                "{} row {row} of {form:?}:\n{:?}\n{:?}\n{found:?}\n{expected:?}",
                level.name(),
                (0..14).map(at).collect::<Vec<_>>(),
                columns.single(form, rules, row).map(|a| (a.efficiency, a.book_efficiency, a.governing.cut))
            );
        }
    }
    Ok(Some(sweep.path()))
}

/// One figure of a shop, or now and then one at odds with it; whole numbers, so that modes tie.
fn figure(lo: f64, hi: f64) -> BoxedStrategy<f64> {
    let odd = select(vec![f64::NAN, f64::INFINITY, -1.0, 0.0, 1e300, 1e-3, 0.5, 200.0, 5000.0]);
    let ratio = (hi / lo).ln();
    prop_oneof![
        60 => (0.0..1.0_f64).prop_map(move |u| lo * (ratio * u).exp()),
        60 => (0.0..1.0_f64).prop_map(move |u| (lo * (ratio * u).exp()).round().max(1.0)),
        1 => odd
    ]
    .boxed()
}

/// A column of figures, with a chance that it is given at all.
fn column(lo: f64, hi: f64, given: f64, rows: usize) -> BoxedStrategy<Kept> {
    let kept = prop_oneof![
        figure(lo, hi).prop_map(Kept::Constant),
        prop::collection::vec(figure(lo, hi), rows).prop_map(Kept::Values),
    ];
    (0.0..1.0_f64, kept).prop_map(move |(u, kept)| if u < given { kept } else { Kept::None }).boxed()
}

/// Columns of dimensions that mostly fit a form: the pitch in holes of its densest row, the rivet within its hole.
fn columns(form: Form, special: f64) -> BoxedStrategy<(Form, Columns)> {
    let rows = prop_oneof![1 => 0..4_usize, 4 => 1..150_usize];
    rows.prop_flat_map(move |rows| {
        let densest = f64::from(form.densest_rivets());
        let straps = if form.kind() == JointKind::DoubleStrap { 0.6 } else { 0.0 };
        let shares = (prop::collection::vec(0.95..6.0_f64, rows), any::<bool>(), any::<bool>());
        let kept = [
            column(20.0, 400.0, 1.0, rows),
            column(3.0, 60.0, 1.0, rows),
            column(6.0, 40.0, 1.0, rows),
            column(40.0, 450.0, 1.0, rows),
            column(30.0, 350.0, 1.0, rows),
            column(5.0, 40.0, 0.3, rows),
            column(2.0, 60.0, 0.8, rows),
            column(2.0, 60.0, straps, rows),
            column(40.0, 450.0, 0.3, rows),
            column(20.0, 900.0, 0.9, rows),
            column(20.0, 900.0, 0.3, rows),
            column(20.0, 400.0, special, rows),
            column(10.0, 100.0, special, rows),
            column(10.0, 200.0, special, rows),
        ];
        (Just(rows), kept, shares).prop_map(move |(rows, mut kept, (shares, fit, whole))| {
            if fit && rows > 0 {
                let pitch = |row: usize| {
                    let p = densest * kept[HOLE].at(row).unwrap_or(1.0) * shares[row];
                    if whole { p.round() } else { p }
                };
                kept[PITCH] = Kept::Values((0..rows).map(pitch).collect());
                if kept[RIVET].column().is_some() {
                    let rivet = |row: usize| kept[HOLE].at(row).unwrap_or(1.0) * (0.8 + shares[row] / 30.0);
                    kept[RIVET] = Kept::Values((0..rows).map(rivet).collect());
                }
            }
            if kept[OTHER].column().is_none() {
                kept[NARROW] = Kept::None;
            }
            if kept[BEARING].column().is_none() {
                kept[OTHER_BEARING] = Kept::None;
            }
            if form.row_count() == 1 {
                // There is nothing to place; a single check never looks at it.
                kept[BACK] = Kept::None;
            }
            (form, Columns { rows, kept })
        })
    })
    .boxed()
}

fn kernel_forms() -> Vec<Form> {
    let list = |kind, rows: &[(u8, u8)]| Form::from_rows(kind, Arrangement::Zigzag, rows).expect("a form");
    let mut forms = named_forms();
    forms.extend([
        list(JointKind::Lap, &[(1, 1); 5]),
        list(JointKind::Lap, &[(2, 1), (5, 1), (5, 1), (5, 1), (2, 1)]),
        list(JointKind::DoubleStrap, &[(2, 2), (3, 2), (3, 2)]),
        list(JointKind::DoubleStrap, &[(1, 1), (1, 1), (3, 2), (3, 2)]),
        list(JointKind::DoubleStrap, &[(7, 1), (9, 2)]),
        list(JointKind::SingleStrap, &[(3, 1), (4, 1), (4, 1)]),
    ]);
    forms
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn usual_forms_under_the_books(
        (form, columns) in select(kernel_forms()).prop_flat_map(|f| columns(f, 0.0)),
        book in select(BOOKS.to_vec()),
    ) {
        let path = compare(&columns, &form, &book.rules)?;
        // Bearing of straps that are not there takes the long way.
        let odd = columns.kept[OTHER].column().is_none() && columns.kept[OTHER_BEARING].column().is_some();
        prop_assert!(odd || path.is_none_or(|p| p == Path::Lanes));
    }

    #[test]
    fn any_form_under_any_rules((form, columns) in form(6).prop_flat_map(|f| columns(f, 0.1)), rules in any_rules(40)) {
        compare(&columns, &form, &rules)?;
    }

    #[test]
    fn usual_forms_under_any_rules(
        (form, columns) in select(kernel_forms()).prop_flat_map(|f| columns(f, 0.0)),
        rules in any_rules(60),
    ) {
        compare(&columns, &form, &rules)?;
    }
}

/// Ten thousand joints of a double-strap triple-riveted seam, figures that do not repeat.
fn seam(rows: usize) -> Columns {
    let of = |a: f64, b: f64, step: f64| Kept::Values((0..rows).map(|i| a + b * (i as f64 * step).fract()).collect());
    let mut kept = [const { Kept::None }; 14];
    kept[PITCH] = of(60.0, 120.0, 0.618_034);
    kept[PLATE] = of(6.0, 20.0, 0.414_214);
    kept[HOLE] = of(14.0, 18.0, 0.732_051);
    kept[TENSION] = Kept::Constant(80.0);
    kept[SHEAR] = Kept::Constant(60.0);
    kept[BEARING] = Kept::Constant(120.0);
    kept[OTHER] = Kept::Constant(10.0);
    Columns { rows, kept }
}

#[test]
fn every_level_of_the_processor_gives_the_same_bits() {
    let levels: Vec<Lanes> = Lanes::available().collect();
    println!("levels of this processor: {:?}", levels.iter().map(|l| l.name()).collect::<Vec<_>>());
    assert_eq!(levels.last(), Some(&Lanes::BASELINE));
    assert_eq!(levels.first(), Some(&Lanes::best()));
    let columns = seam(10_000);
    for form in [Form::double_strap(3), Form::lap(4), Form::unequal_straps(4), Form::single_strap(2)] {
        let form = form.expect("a form");
        compare(&columns, &form, &METRIC.rules).unwrap_or_else(|e| panic!("{e}"));
    }
}

#[test]
fn pieces_of_any_length_and_place_give_what_the_whole_gives() {
    let columns = seam(300);
    let form = Form::double_strap(3).expect("a form");
    let sweep = Sweep::new(&form, &METRIC.rules, columns.inputs(), columns.rows).expect("a sweep");
    assert_eq!((sweep.len(), sweep.path()), (300, Path::Lanes));
    let mut whole = Results::new(300);
    sweep.run(0, whole.outputs(0, 300)).expect("one length");
    for level in Lanes::available() {
        // Every length up to three chunks, begun at every place up to beyond one: never aligned to a register.
        for length in (0..100).chain([127, 128, 129, 200]) {
            for from in 0..40 {
                let mut piece = Results::new(length + from);
                sweep.run_with(level, from, piece.outputs(from, from + length)).expect("one length");
                assert_eq!(piece.bits()[from..], whole.bits()[from..from + length], "{} {from} {length}", level.name());
                assert!(piece.status[..from].iter().all(|s| *s == 7), "rows before the piece stay untouched");
            }
        }
    }
}

#[test]
fn axes_are_the_columns_that_they_stand_for() {
    let (pitches, plates, holes) = ([60.0, 20.0, 75.0, 90.0, 110.0], [8.0, 12.0, f64::NAN], [19.0, 23.0]);
    let rows = pitches.len() * plates.len() * holes.len();
    let mut kept = seam(rows).kept;
    let all = |f: &dyn Fn(f64, f64, f64) -> f64| {
        let mut values = Vec::new();
        for p in pitches {
            for t in plates {
                values.extend(holes.map(|d| f(p, t, d)));
            }
        }
        Kept::Values(values)
    };
    kept[PITCH] = all(&|p, _, _| p);
    kept[PLATE] = all(&|_, t, _| t);
    kept[HOLE] = all(&|_, _, d| d);
    let columns = Columns { rows, kept };
    let grid = Inputs {
        pitch: Column::Axis { values: &pitches, each: 6 },
        plate: Column::Axis { values: &plates, each: 2 },
        hole: Column::Axis { values: &holes, each: 1 },
        ..columns.inputs()
    };
    let form = Form::double_strap(2).expect("a form");
    let expected = singly(&columns, &form, &METRIC.rules);
    assert!(expected.status.contains(&(ErrorKind::HolesFillPitch as u8)), "the grid has bad corners");
    assert!(expected.status.contains(&(ErrorKind::NotFinite as u8)));
    let sweep = Sweep::new(&form, &METRIC.rules, grid, rows).expect("a sweep");
    for from in 0..rows {
        let mut found = Results::new(rows);
        sweep.run_with(Lanes::best(), from, found.outputs(from, rows)).expect("one length");
        assert_eq!(found.bits()[from..], expected.bits()[from..], "from {from}");
    }
}

#[test]
fn one_bad_row_leaves_the_others_alone() {
    let good = seam(200);
    let mut bad = good.clone();
    let Kept::Values(pitch) = &mut bad.kept[PITCH] else { panic!("values") };
    for (row, value) in [(0, f64::NAN), (31, -3.0), (32, 1e9), (63, 13.0), (199, f64::INFINITY)] {
        pitch[row] = value;
    }
    let form = Form::double_strap(3).expect("a form");
    let (expected, found) = (singly(&good, &form, &METRIC.rules), singly(&bad, &form, &METRIC.rules));
    let kinds = [ErrorKind::NotFinite, ErrorKind::TooSmall, ErrorKind::TooLarge, ErrorKind::HolesFillPitch];
    for (row, kind) in [0, 31, 32, 63].into_iter().zip(kinds) {
        assert_eq!(found.status[row], kind as u8, "row {row}");
        assert!(found.efficiency[row].is_nan() && found.mode[row] == NO_MODE);
    }
    compare(&bad, &form, &METRIC.rules).unwrap_or_else(|e| panic!("{e}"));
    let kept = (0..200).filter(|r| ![0, 31, 32, 63, 199].contains(r));
    assert!(kept.into_iter().all(|r| found.bits()[r] == expected.bits()[r]));
}

#[test]
fn mode_strengths_are_those_of_the_modes() {
    let columns = seam(40);
    let form = Form::double_strap(3).expect("a form");
    let sweep = Sweep::new(&form, &METRIC.rules, columns.inputs(), 40).expect("a sweep");
    let numbers: Vec<u16> = (0..sweep.modes().len()).collect();
    let mut strengths = vec![0.0; numbers.len() * 30];
    sweep.mode_strengths(&numbers, 10, &mut strengths).expect("one length");
    let mut results = Results::new(40);
    sweep.run(0, results.outputs(0, 40)).expect("one length");
    for row in 10..40 {
        let (joint, materials) = sweep.joint(row).expect("a joint");
        let solid = joint.strip().to_mm() * joint.plate().to_mm() * materials.plate.tension.to_mpa();
        let of = |mode: u16| strengths[usize::from(mode) * 30 + row - 10];
        // By hand: tearing at row 1 is (p - d) t st; the efficiency is the governing mode over the solid strip.
        let hole = joint.rows()[0].hole().to_mm();
        assert_eq!(of(0), (joint.strip().to_mm() - hole) * joint.plate().to_mm() * 80.0);
        assert_eq!(of(results.mode[row]) / solid, results.efficiency[row]);
        let least = numbers.iter().map(|n| of(*n)).fold(f64::INFINITY, f64::min);
        assert!(of(results.mode[row]) <= least * (1.0 + 1e-9));
    }
}

#[test]
fn the_table_of_modes_is_in_documented_order() {
    for form in kernel_forms() {
        for straps in [false, true] {
            let straps = straps || form.kind() == JointKind::Lap;
            let mut spec = JointSpec::new(form, Length::mm(900.0), Length::mm(10.0), Length::mm(9.0));
            if straps && form.kind() != JointKind::Lap {
                spec = spec.strap(Length::mm(8.0));
            }
            let joint = spec.build().expect("a joint");
            let materials = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
            let given = Given::new(Plain, &joint, &materials);
            let strengths = Strengths::new(Plain, &joint, &given, &METRIC.rules, Lens::Real);
            let table = ModeTable::new(&form, straps);
            let mut number = 0;
            for mode in strengths.modes() {
                assert_eq!(table.number(mode.cut), Some(number), "{form}");
                assert_eq!(table.cut(number), Some(mode.cut), "{form}");
                assert_eq!(table.mode(number).map(|m| m.cut), Some(mode.cut));
                number += 1;
            }
            assert_eq!((table.len(), table.cut(number), table.is_empty()), (number, None, false), "{form}");
        }
    }
}

#[test]
fn wrong_sweeps_are_refused_before_anything_is_written() {
    let columns = seam(50);
    let form = Form::double_strap(3).expect("a form");
    let make = |inputs, rows| Sweep::new(&form, &METRIC.rules, inputs, rows).map(|_| ());
    let inputs = columns.inputs();
    let refused = |result: Result<(), seamwright::Error>| result.map_err(|e| (e.kind, e.field, e.index)).unwrap_err();
    assert_eq!(refused(make(inputs, 51)), (ErrorKind::TooSmall, Field::BatchRows, 1));
    assert_eq!(refused(make(inputs, 49)), (ErrorKind::TooLarge, Field::BatchRows, 1));
    let c = Column::Constant;
    let with = |shear| Inputs { shear, ..inputs };
    assert_eq!(refused(make(with(c(-1.0)), 50)), (ErrorKind::TooSmall, Field::Shear, 0));
    assert_eq!(refused(make(with(Column::Axis { values: &[], each: 1 }), 50)).0, ErrorKind::TooSmall);
    assert_eq!(refused(make(Inputs { other: None, narrow: Some(c(8.0)), ..inputs }, 50)).1, Field::WideStrap);
    assert_eq!(refused(make(Inputs { bearing: None, ..inputs }, 50)), (ErrorKind::Missing, Field::Bearing, 0));
    let lap = Form::lap(2).expect("a form");
    let narrow = Sweep::new(&lap, &METRIC.rules, Inputs { narrow: Some(c(8.0)), ..inputs }, 50);
    assert_eq!(refused(narrow.map(|_| ())), (ErrorKind::NotForThisForm, Field::NarrowStrap, 0));

    let sweep = Sweep::new(&form, &METRIC.rules, inputs, 50).expect("a sweep");
    let (mut efficiency, mut mode) = ([7.0; 50], [7; 49]);
    let outputs = Outputs { mode: Some(&mut mode), ..Outputs::new(&mut efficiency) };
    assert_eq!(refused(sweep.run(0, outputs)), (ErrorKind::TooSmall, Field::BatchRows, 2));
    assert_eq!(refused(sweep.run(1, Outputs::new(&mut efficiency))), (ErrorKind::TooLarge, Field::BatchRows, 1));
    assert!(efficiency.iter().all(|x| *x == 7.0));
    assert_eq!(refused(sweep.mode_strengths(&[64], 0, &mut efficiency)).0, ErrorKind::NotForThisForm);
    assert_eq!(refused(sweep.mode_strengths(&[0, 1, 2], 0, &mut efficiency)).0, ErrorKind::TooLarge);
    assert_eq!(refused(sweep.mode_strengths(&[0], 1, &mut efficiency)).0, ErrorKind::TooLarge);
}

#[test]
fn what_the_kernel_does_not_serve_goes_row_by_row() {
    let columns = seam(60);
    let path =
        |form: &Form, rules: &Rules, columns: &Columns| compare(columns, form, rules).unwrap_or_else(|e| panic!("{e}"));
    let lozenge = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (3, 2)]);
    assert_eq!(path(&lozenge.expect("a form"), &METRIC.rules, &columns), Some(Path::Rows));
    let triple = Form::double_strap(3).expect("a form");
    assert_eq!(path(&triple, &METRIC.rules, &columns), Some(Path::Lanes));
    let mut margin = columns.clone();
    margin.kept[MARGIN] = Kept::Constant(40.0);
    assert_eq!(path(&triple, &METRIC.rules, &margin), Some(Path::Rows));
    let shared = STRUCTURAL.rules.with(Entry::INNER_SHARE, 1.0).expect("a choice");
    let thinned = triple.omit_alternate().expect("a form");
    assert_eq!(path(&thinned, &shared, &columns), Some(Path::Rows));
    assert_eq!(path(&triple, &shared, &columns), Some(Path::Lanes));
    let unequal = Form::unequal_straps(4).expect("a form");
    let counted = METRIC.rules.with(Entry::COUNT_STRAP, 1.0).and_then(|r| r.with(Entry::COUNT_INNER, 0.0));
    assert_eq!(path(&unequal, &counted.expect("a choice"), &columns), Some(Path::Rows));
}
