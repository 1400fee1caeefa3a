//! Columns of sweeps: made at random, and worked out by single checks.

use proptest::prelude::*;
use proptest::sample::select;
use seamwright::batch::{COMPUTED, InputColumn, Inputs, ModeTable, NO_MODE, Outputs, Path, Sweep};
use seamwright::check::{Analysis, check};
use seamwright::joint::{Form, JointKind, JointSpec};
use seamwright::materials::{Materials, PlateStress};
use seamwright::quantities::{Length, Stress};
use seamwright::rules::Rules;
use seamwright_lanes::Lanes;

/// Columns as a test keeps them: what is not given, the same in all rows, or each row its own.
#[derive(Clone, Debug)]
pub enum Kept {
    None,
    Constant(f64),
    Values(Vec<f64>),
}

impl Kept {
    pub fn column(&self) -> Option<InputColumn<'_>> {
        match self {
            Kept::None => None,
            Kept::Constant(x) => Some(InputColumn::Constant(*x)),
            Kept::Values(x) => Some(InputColumn::Values(x)),
        }
    }

    pub fn at(&self, row: usize) -> Option<f64> {
        match self {
            Kept::None => None,
            Kept::Constant(x) => Some(*x),
            Kept::Values(x) => Some(x[row]),
        }
    }
}

/// A sweep's columns, in the order of `Inputs`.
#[derive(Clone, Debug)]
pub struct Columns {
    pub rows: usize,
    pub kept: [Kept; 14],
}

pub const PITCH: usize = 0;
pub const PLATE: usize = 1;
pub const HOLE: usize = 2;
pub const TENSION: usize = 3;
pub const SHEAR: usize = 4;
pub const RIVET: usize = 5;
pub const OTHER: usize = 6;
pub const NARROW: usize = 7;
pub const OTHER_TENSION: usize = 8;
pub const BEARING: usize = 9;
pub const OTHER_BEARING: usize = 10;
pub const PLATE_SHEAR: usize = 11;
pub const MARGIN: usize = 12;
pub const BACK: usize = 13;

impl Columns {
    pub fn inputs(&self) -> Inputs<'_> {
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
    pub fn single(&self, form: &Form, rules: &Rules, row: usize) -> Result<Analysis, seamwright::Error> {
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
pub struct Results {
    pub efficiency: Vec<f64>,
    pub book: Vec<f64>,
    pub credited: Vec<f64>,
    pub mode: Vec<u16>,
    pub status: Vec<u8>,
}

impl Results {
    pub fn new(rows: usize) -> Results {
        Results {
            efficiency: vec![7.0; rows],
            book: vec![7.0; rows],
            credited: vec![7.0; rows],
            mode: vec![7; rows],
            status: vec![7; rows],
        }
    }

    pub fn outputs(&mut self, from: usize, to: usize) -> Outputs<'_> {
        Outputs {
            mode: Some(&mut self.mode[from..to]),
            book_efficiency: Some(&mut self.book[from..to]),
            credited: Some(&mut self.credited[from..to]),
            status: Some(&mut self.status[from..to]),
            ..Outputs::new(&mut self.efficiency[from..to])
        }
    }

    pub fn bits(&self) -> Vec<[u64; 5]> {
        let figures = self.efficiency.iter().zip(&self.book).zip(&self.credited);
        figures
            .zip(self.mode.iter().zip(&self.status))
            .map(|(((e, b), c), (m, s))| [e.to_bits(), b.to_bits(), c.to_bits(), u64::from(*m), u64::from(*s)])
            .collect()
    }
}

/// What single checks give.
pub fn singly(columns: &Columns, form: &Form, rules: &Rules) -> Results {
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

pub fn compare(columns: &Columns, form: &Form, rules: &Rules) -> Result<Option<Path>, TestCaseError> {
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
        level.run_sweep(&sweep, 0, results.outputs(0, columns.rows)).expect("outputs of one length");
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
pub fn column(lo: f64, hi: f64, given: f64, rows: usize) -> BoxedStrategy<Kept> {
    let kept = prop_oneof![
        figure(lo, hi).prop_map(Kept::Constant),
        prop::collection::vec(figure(lo, hi), rows).prop_map(Kept::Values),
    ];
    (0.0..1.0_f64, kept).prop_map(move |(u, kept)| if u < given { kept } else { Kept::None }).boxed()
}

/// Columns of dimensions that mostly fit a form: the pitch in holes of its densest row, the rivet within its hole.
pub fn columns(form: Form, special: f64) -> BoxedStrategy<(Form, Columns)> {
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
