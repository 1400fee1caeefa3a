//! Sweeps against single checks, bit for bit: all forms and books, bad rows, ties, every level of the processor.

mod generate;

use generate::columns::{BACK, BEARING, Columns, HOLE, Kept, MARGIN, NARROW, OTHER, PITCH, PLATE, PLATE_SHEAR};
use generate::columns::{RIVET, Results, SHEAR, TENSION, columns, compare, singly};
use generate::{any_rules, config, form, named_forms};
use proptest::prelude::*;
use proptest::sample::select;
use seamwright::batch::{InputColumn, Inputs, ModeTable, NO_MODE, Outputs, Path, Sweep};
use seamwright::bounds::Field;
use seamwright::error::ErrorKind;
use seamwright::given::Given;
use seamwright::joint::{Arrangement, Form, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::modes::{Lens, Strengths};
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, Entry, METRIC, Rules, STRUCTURAL};
use seamwright::step::Plain;
use seamwright_lanes::Lanes;

/// What may follow when rows are too close.
fn closes() -> Vec<f64> {
    vec![0.0, 1.0, 2.0]
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
        prop_assert!(path.is_none_or(|p| p == Path::Form));
    }

    #[test]
    fn usual_forms_with_margins_and_distances(
        (form, columns) in select(kernel_forms()).prop_flat_map(|f| columns(f, 0.8)),
        book in select(BOOKS.to_vec()),
    ) {
        compare(&columns, &form, &book.rules)?;
    }

    #[test]
    fn any_form_with_margins_and_distances(
        (form, columns) in form(8).prop_flat_map(|f| columns(f, 0.8)),
        rules in prop_oneof![
            any_rules(40),
            select(BOOKS.to_vec()).prop_map(|book| book.rules),
            select(closes()).prop_flat_map(|close| any_rules(10).prop_map(move |r| {
                r.with(Entry::CLOSE_ROWS, close).expect("a choice")
            })),
        ],
    ) {
        compare(&columns, &form, &rules)?;
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

/// A form without a kernel of its own.
fn lozenge() -> Result<Form, seamwright::Error> {
    Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (3, 2)])
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
    for form in [Form::double_strap(3), Form::lap(4), Form::unequal_straps(4), Form::single_strap(2), lozenge()] {
        let form = form.expect("a form");
        compare(&columns, &form, &METRIC.rules).unwrap_or_else(|e| panic!("{e}"));
    }
}

#[test]
fn pieces_of_any_length_and_place_give_what_the_whole_gives() {
    let columns = seam(300);
    for (form, path) in [(Form::double_strap(3), Path::Form), (lozenge(), Path::Cuts)] {
        let form = form.expect("a form");
        let sweep = Sweep::new(&form, &METRIC.rules, columns.inputs(), columns.rows).expect("a sweep");
        assert_eq!((sweep.len(), sweep.path()), (300, path));
        let mut whole = Results::new(300);
        sweep.run(0, whole.outputs(0, 300)).expect("one length");
        assert_eq!(whole.bits(), singly(&columns, &form, &METRIC.rules).bits());
        for level in Lanes::available() {
            // About one to four chunks, begun at every place up to beyond a register: never aligned to one.
            for length in (0..100).chain([127, 128, 129, 200, 255, 256, 257]) {
                for from in 0..40 {
                    let mut piece = Results::new(length + from);
                    level.run_sweep(&sweep, from, piece.outputs(from, from + length)).expect("one length");
                    let (found, wanted) = (piece.bits(), whole.bits());
                    assert_eq!(found[from..], wanted[from..from + length], "{form} {} {from} {length}", level.name());
                    assert!(piece.status[..from].iter().all(|s| *s == 7), "rows before the piece stay untouched");
                }
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
        pitch: InputColumn::Axis { values: &pitches, each: 6 },
        plate: InputColumn::Axis { values: &plates, each: 2 },
        hole: InputColumn::Axis { values: &holes, each: 1 },
        ..columns.inputs()
    };
    let form = Form::double_strap(2).expect("a form");
    let expected = singly(&columns, &form, &METRIC.rules);
    assert!(expected.status.contains(&(ErrorKind::HolesFillPitch as u8)), "the grid has bad corners");
    assert!(expected.status.contains(&(ErrorKind::NotFinite as u8)));
    let sweep = Sweep::new(&form, &METRIC.rules, grid, rows).expect("a sweep");
    for from in 0..rows {
        let mut found = Results::new(rows);
        Lanes::best().run_sweep(&sweep, from, found.outputs(from, rows)).expect("one length");
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

/// One row in a sweep that is sound otherwise, so that the chunk has to notice it: at the bounds, just outside, and what
/// is no length or stress at all, in every column.
#[test]
fn one_input_about_its_bounds() {
    let good = seam(200);
    let form = Form::double_strap(3).expect("a form");
    for (column, field) in [
        (PITCH, Field::Pitch),
        (PLATE, Field::Plate),
        (HOLE, Field::Hole),
        (TENSION, Field::Tension),
        (SHEAR, Field::Shear),
        (OTHER, Field::WideStrap),
        (BEARING, Field::Bearing),
    ] {
        let (lo, hi) = (field.bound().lo, field.bound().hi);
        let strange = [f64::NAN, -f64::NAN, -0.0, -lo, -hi, f64::INFINITY, f64::NEG_INFINITY];
        for (row, value) in [lo, lo.next_down(), lo.next_up(), hi, hi.next_down(), hi.next_up()]
            .into_iter()
            .chain(strange)
            .flat_map(|value| [0, 77, 199].map(|row| (row, value)))
        {
            let mut columns = good.clone();
            let mut values: Vec<f64> = (0..200).map(|row| good.kept[column].at(row).expect("given")).collect();
            values[row] = value;
            columns.kept[column] = Kept::Values(values);
            compare(&columns, &form, &METRIC.rules).unwrap_or_else(|e| panic!("{field:?} {value}: {e}"));
            let status = singly(&columns, &form, &METRIC.rules).status;
            assert!((lo..=hi).contains(&value) || status[row] != 0, "{field:?} {value} in row {row}");
            assert_eq!(status.iter().filter(|s| **s != 0).count(), usize::from(status[row] != 0), "{field:?} {value}");
        }
    }
}

/// Figures about another one: itself, and apart from it by less, as much, and more than the tolerance.
fn about(x: f64) -> impl Iterator<Item = f64> {
    let apart =
        [0.0, 1e-16, 1e-12, 5e-10, 9.9e-10, 1e-9, 1.1e-9, 1.5e-9, 2e-9, 2.9e-9, 3e-9, 3.1e-9, 5e-9, 1e-8, 1e-7, 2e-7];
    apart.into_iter().flat_map(move |part| [x * (1.0 - part), x * (1.0 + part)])
}

/// Where the kernel leaves a row to a single check, the limits are those of the tolerance: below, at and above.
#[test]
fn holes_about_the_strip_and_rivets_about_the_hole() {
    for form in kernel_forms() {
        let filled = f64::from(form.densest_rivets()) * 23.0;
        let rows = about(1.0).count();
        let mut columns = seam(rows);
        columns.kept[HOLE] = Kept::Constant(23.0);
        let mut rivets = columns.clone();
        columns.kept[PITCH] = Kept::Values(about(filled).collect());
        compare(&columns, &form, &METRIC.rules).unwrap_or_else(|e| panic!("{e}"));
        rivets.kept[PITCH] = Kept::Constant(3.0 * filled);
        rivets.kept[RIVET] = Kept::Values(about(23.0).collect());
        compare(&rivets, &form, &METRIC.rules).unwrap_or_else(|e| panic!("{e}"));
    }
}

/// A second plane that holds next to nothing: the wide strap torn at row 2 or 3 is a tie or not. By hand: one plane
/// `S = pi/4 20 x 20 x 100 = 31 416 N`, both `S (1 + x)`; the wide strap `60 x 2 x 80 = 9 600 N`. Torn at row 3 the
/// seam holds `9 600 + 4 S = 135 264 N`, at row 2 it is `2 x S` more: about `x / 2` of it.
#[test]
fn a_second_plane_that_hardly_holds() {
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 1), (2, 2), (2, 2)]).expect("a form");
    let mut columns = seam(3);
    for (column, value) in
        [(PITCH, 100.0), (PLATE, 40.0), (HOLE, 20.0), (SHEAR, 100.0), (OTHER, 2.0), (NARROW, 30.0), (BEARING, 1000.0)]
    {
        columns.kept[column] = Kept::Values(vec![value; 3]);
    }
    let lone = STRUCTURAL.rules.with(Entry::LONE_PLANE, 1.0).expect("a choice");
    let mut seen = Vec::new();
    for double in about(1.0).filter(|double| *double >= 1.0) {
        let rules = lone.with(Entry::DOUBLE_SHEAR, double).expect("in range");
        assert_eq!(compare(&columns, &form, &rules).unwrap_or_else(|e| panic!("{e}")), Some(Path::Form));
        seen.push(columns.single(&form, &rules, 0).expect("a check").governing.cut.other);
    }
    assert!(seen.contains(&2) && seen.contains(&3), "{seen:?}");
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
    let c = InputColumn::Constant;
    let with = |shear| Inputs { shear, ..inputs };
    assert_eq!(refused(make(with(c(-1.0)), 50)), (ErrorKind::TooSmall, Field::Shear, 0));
    assert_eq!(refused(make(with(InputColumn::Axis { values: &[], each: 1 }), 50)).0, ErrorKind::TooSmall);
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
fn which_kernel_serves_a_sweep() {
    let columns = seam(60);
    let path =
        |form: &Form, rules: &Rules, columns: &Columns| compare(columns, form, rules).unwrap_or_else(|e| panic!("{e}"));
    assert_eq!(path(&lozenge().expect("a form"), &METRIC.rules, &columns), Some(Path::Cuts));
    let triple = Form::double_strap(3).expect("a form");
    assert_eq!(path(&triple, &METRIC.rules, &columns), Some(Path::Form));
    // A margin and distances of rows alone do nothing to the strength.
    let mut margin = columns.clone();
    margin.kept[MARGIN] = Kept::Constant(40.0);
    margin.kept[BACK] = Kept::Constant(50.0);
    assert_eq!(path(&triple, &METRIC.rules, &margin), Some(Path::Form));
    margin.kept[PLATE_SHEAR] = Kept::Constant(60.0);
    assert_eq!(path(&triple, &METRIC.rules, &margin), Some(Path::Cuts));
    let shared = STRUCTURAL.rules.with(Entry::INNER_SHARE, 1.0).expect("a choice");
    let thinned = triple.omit_alternate().expect("a form");
    assert_eq!(path(&thinned, &shared, &columns), Some(Path::Cuts));
    assert_eq!(path(&triple, &shared, &columns), Some(Path::Form));
    let unequal = Form::unequal_straps(4).expect("a form");
    let counted = METRIC.rules.with(Entry::COUNT_STRAP, 1.0).and_then(|r| r.with(Entry::COUNT_INNER, 0.0));
    assert_eq!(path(&unequal, &counted.expect("a choice"), &columns), Some(Path::Cuts));
}

/// All forms of up to three rows with one to three rivets, and some of more.
fn small_forms() -> Vec<Form> {
    let mut lists: Vec<Vec<u8>> = vec![vec![]];
    for rows in 0..3 {
        let longer: Vec<_> = lists.iter().filter(|l| l.len() == rows).cloned().collect();
        lists.extend(longer.iter().flat_map(|l| (1..=3).map(|n| [&l[..], &[n]].concat())));
    }
    lists.retain(|l| !l.is_empty());
    lists.extend([vec![1, 2, 3, 2, 1], vec![4, 3, 2, 1], vec![1, 2, 3, 4, 5, 6, 7, 8], vec![1; 8]]);
    let mut forms = Vec::new();
    for list in lists {
        for arrangement in [Arrangement::Chain, Arrangement::Zigzag] {
            let mut push = |kind, single: usize| {
                let rows: Vec<_> = (0..).zip(&list).map(|(at, n)| (*n, if at < single { 1 } else { 2 })).collect();
                forms.push(Form::from_rows(kind, arrangement, &rows).expect("a form"));
            };
            push(JointKind::Lap, list.len());
            push(JointKind::SingleStrap, list.len());
            (0..list.len()).for_each(|single| push(JointKind::DoubleStrap, single));
        }
    }
    forms
}

/// Every small form with margins, distances and shear-out, bad rows in the midst, under books of each way to take rows
/// that are too close: a sweep is what single checks are, at every level.
#[test]
fn every_small_form_with_everything_given() {
    let whole = |part: f64| part.round();
    // A whole chunk and some rows more.
    const ROWS: u32 = 141;
    for (at, form) in small_forms().into_iter().enumerate() {
        let densest = f64::from(form.densest_rivets());
        let mut columns = seam(ROWS as usize);
        let of = |a: f64, b: f64, step: f64| (0..ROWS).map(move |i| a + b * (f64::from(i) * step + 0.37).fract());
        let mut pitch: Vec<f64> = of(1.6, 4.0, 0.618_034).map(|p| whole(p * densest * 23.0)).collect();
        (pitch[20], pitch[33]) = (f64::NAN, densest * 12.0);
        columns.kept[PITCH] = Kept::Values(pitch);
        columns.kept[OTHER] = Kept::Values(of(4.0, 12.0, 0.302_776).map(whole).collect());
        columns.kept[NARROW] = if form.kind() == JointKind::DoubleStrap { Kept::Constant(8.0) } else { Kept::None };
        columns.kept[PLATE_SHEAR] = Kept::Constant(if at % 2 == 0 { 70.0 } else { 25.0 });
        columns.kept[MARGIN] = Kept::Values(of(15.0, 40.0, 0.541_381).collect());
        if form.row_count() > 1 {
            columns.kept[BACK] = Kept::Values(of(20.0, 60.0, 0.192_582).collect());
        }
        let book = BOOKS[at % BOOKS.len()].rules;
        let close = book.with(Entry::CLOSE_ROWS, (at % 3) as f64).expect("a choice");
        let share = close.with(Entry::INNER_SHARE, f64::from(at % 4 == 3)).expect("a choice");
        let expected = singly(&columns, &form, &share).status;
        assert_eq!(expected[20], ErrorKind::NotFinite as u8, "{form}");
        assert_eq!(expected[33], ErrorKind::HolesFillPitch as u8, "{form}");
        assert!(expected.contains(&0), "{form}: {expected:?}");
        assert_eq!(compare(&columns, &form, &share).unwrap_or_else(|e| panic!("{e}")), Some(Path::Cuts), "{form}");
    }
}

/// A margin about half a hole, rows about where their holes touch. By hand, holes of 24 mm: half of it is 12 mm; rows
/// of a chain touch at 24 mm, those of a zig-zag with one rivet in 40 mm lie 20 mm across and touch at
/// sqrt(24 x 24 - 20 x 20) = 13.266 mm; three rows behind each other at 12 mm from each to the next.
#[test]
fn margins_and_rows_about_their_limits() {
    let refused = |columns: &Columns, form: &Form, kind: ErrorKind| {
        compare(columns, form, &METRIC.rules).unwrap_or_else(|e| panic!("{e}"));
        let status = singly(columns, form, &METRIC.rules).status;
        assert!(status.contains(&0) && status.contains(&(kind as u8)), "{form}: {status:?}");
    };
    for form in kernel_forms() {
        let mut columns = seam(about(1.0).count());
        columns.kept[HOLE] = Kept::Constant(24.0);
        columns.kept[PITCH] = Kept::Constant(40.0 * f64::from(form.densest_rivets()));
        columns.kept[MARGIN] = Kept::Values(about(12.0).collect());
        refused(&columns, &form, ErrorKind::HoleCutsEdge);
        columns.kept[MARGIN] = Kept::None;
        if form.row_count() > 1 {
            columns.kept[BACK] = Kept::Values(about(24.0).collect());
            refused(&columns, &form.chain(), ErrorKind::RowsOverlap);
            if form.rows().all(|row| row.rivets == form.densest_rivets()) {
                let touching = (24.0_f64 * 24.0 - 20.0 * 20.0).sqrt();
                columns.kept[BACK] = Kept::Values(about(touching).collect());
                refused(&columns, &form.zigzag(), ErrorKind::RowsOverlap);
            }
        }
        if form.row_count() > 2 && form.rows().all(|row| row.rivets == form.densest_rivets()) {
            // Far enough across for neighbours, so that only the rows behind each other may touch.
            columns.kept[PITCH] = Kept::Constant(60.0 * f64::from(form.densest_rivets()));
            columns.kept[BACK] = Kept::Values(about(12.0).collect());
            refused(&columns, &form.zigzag(), ErrorKind::RowsOverlap);
        }
    }
}
