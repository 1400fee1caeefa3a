//! Sweeps where modes tie, or nearly: what decides which cuts a kernel may leave out. Each is compared with single
//! checks, bit for bit.

mod generate;

use generate::columns::{BACK, BEARING, Columns, HOLE, Kept, MARGIN, NARROW, OTHER, OTHER_TENSION, PITCH, PLATE};
use generate::columns::{PLATE_SHEAR, SHEAR, TENSION, compare, singly};
use seamwright::batch::Path;
use seamwright::joint::{Arrangement, Form, JointKind};
use seamwright::modes::Cut;
use seamwright::rules::{BOOKS, Entry, Rules, STRUCTURAL};

/// Figures by chance, the same in every run.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11
    }

    fn below(&mut self, n: usize) -> usize {
        (self.next() % n as u64) as usize
    }

    /// Once in so many times.
    fn once_in(&mut self, n: usize) -> bool {
        self.below(n) == 0
    }

    fn of<T: Copy>(&mut self, list: &[T]) -> T {
        list[self.below(list.len())]
    }

    /// A figure itself, or apart from it by less, as much, or more than the tolerance.
    fn about(&mut self, x: f64) -> f64 {
        let part = self.of(&[0.0, 0.0, 0.0, 2.3e-16, 1e-12, 4e-10, 9.99e-10, 1e-9, 1.001e-9, 2e-9, 3e-9, 1e-8, 1e-6]);
        if self.once_in(2) { x * (1.0 + part) } else { x * (1.0 - part) }
    }

    /// Up to eight rows, more often few, more often with inner rows alike.
    fn form(&mut self) -> Form {
        let kind = self.of(&[JointKind::Lap, JointKind::SingleStrap, JointKind::DoubleStrap]);
        let arrangement = self.of(&[Arrangement::Chain, Arrangement::Zigzag]);
        let few = if self.once_in(6) { 8 } else { 5 };
        let rows = 1 + self.below(few);
        let most = if self.once_in(5) { 9 } else { 3 };
        let mut rivets: Vec<u8> = (0..rows).map(|_| 1 + self.below(most) as u8).collect();
        if self.once_in(2) {
            let (inner, outer) = (1 + self.below(most) as u8, 1 + self.below(most) as u8);
            rivets = vec![inner.max(outer); rows];
            rivets[0] = outer;
            if kind == JointKind::Lap {
                rivets[rows - 1] = outer;
            }
        }
        let single = match kind {
            JointKind::DoubleStrap if self.once_in(2) => self.below(rows),
            JointKind::DoubleStrap => 0,
            _ => rows,
        };
        let list: Vec<_> = rivets.iter().enumerate().map(|(row, n)| (*n, if row < single { 1 } else { 2 })).collect();
        Form::from_rows(kind, arrangement, &list).expect("a form")
    }

    /// A book with some of what decides how modes are counted set otherwise.
    fn rules(&mut self) -> Rules {
        let mut rules = self.of(BOOKS).rules;
        let choices: [(Entry, usize, &[f64]); 11] = [
            (Entry::CLOSE_ROWS, 3, &[0.0, 1.0, 2.0]),
            (Entry::INNER_SHARE, 3, &[0.0, 1.0]),
            (Entry::COUNT_STRAP, 2, &[0.0, 1.0]),
            (Entry::COUNT_INNER, 2, &[0.0, 1.0, 2.0]),
            (Entry::DOUBLE_SHEAR, 2, &[1.0, 1.0 + 1e-9, 1.0 + 2e-9, 1.0 + 3e-7, 1.75, 2.0]),
            (Entry::LONE_PLANE, 2, &[0.0, 1.0]),
            (Entry::TEAR_ALLOWANCE, 6, &[0.0, 1.5]),
            (Entry::SEAM_SAFETY, 5, &[4.0, 4.5, 5.0]),
            (Entry::SEAM_DIVISOR, 5, &[4.0, 4.25, 4.5]),
            (Entry::BEARING_CHECKED, 3, &[0.0, 1.0]),
            (Entry::EFFICIENCY_CAP, 9, &[0.5, 1.0]),
        ];
        for (entry, seldom, values) in choices {
            if self.once_in(seldom) {
                rules = rules.with(entry, self.of(values)).expect("in range");
            }
        }
        rules
    }

    /// One row of figures that tie: a rivet that crushes holds a simple share of a net section, and one that shears as
    /// much as one that crushes; at the margin next to nothing may be left.
    fn row(&mut self, form: &Form) -> [f64; 14] {
        let hole = self.of(&[10.0, 20.0, 24.0]);
        let pitch = f64::from(form.densest_rivets()) * hole * self.of(&[1.25, 1.5, 2.0, 3.0, 4.0, 6.0]);
        let (plate, tension) = (self.of(&[1.0, 2.0, 5.0, 10.0, 20.0]), self.of(&[50.0, 100.0, 200.0]));
        let other = plate * self.of(&[0.5, 1.0, 2.0]);
        let narrow = if self.once_in(2) { other } else { plate * self.of(&[0.5, 1.0, 2.0]) };
        let bearing = tension * self.of(&[0.25, 0.5, 0.5, 1.0, 1.0, 2.0, 4.0]);
        let other_bearing = tension * self.of(&[0.25, 0.5, 1.0, 2.0, 4.0]);
        let other_tension = f64::max(0.01, tension * self.of(&[1e-4, 0.01, 0.5, 1.0, 1.0, 2.0]));
        let crushed = hole * plate * bearing / (std::f64::consts::FRAC_PI_4 * hole * hole);
        let shear = f64::max(0.01, crushed * self.of(&[0.5, 1.0, 1.0, 2.0, 10.0, 1e-4, 1.0001e-4]));
        let plate_shear = bearing * self.of(&[0.25, 0.5, 1.0]);
        let share = self.of(&[0.5 + 4e-9, 0.5 + 1e-8, 0.5 + 1e-6, 0.501, 0.75, 1.0, 1.5]);
        let back = hole * self.of(&[1.25, 1.5, 2.0, 3.0]);
        let [pitch, plate, tension, shear, other, narrow] =
            [pitch, plate, tension, shear, other, narrow].map(|x| self.about(x));
        let [bearing, other_bearing] = [bearing, other_bearing].map(|x| self.about(x));
        let margin = share * hole;
        [
            pitch,
            plate,
            hole,
            tension,
            shear,
            hole,
            other,
            narrow,
            other_tension,
            bearing,
            other_bearing,
            plate_shear,
            margin,
            back,
        ]
    }
}

#[test]
fn figures_that_tie() {
    let mut chance = Chance(0x9E37_79B9_7F4A_7C15);
    let (mut sound, mut all, mut paths) = (0, 0, [0; 2]);
    for case in 0..3000 {
        let (form, rules) = (chance.form(), chance.rules());
        let rows = 1 + chance.below(40);
        let table: Vec<[f64; 14]> = (0..rows).map(|_| chance.row(&form)).collect();
        let (straps, double) = (!chance.once_in(6), form.kind() == JointKind::DoubleStrap);
        let (bearing, out) = (!chance.once_in(9), chance.once_in(3));
        let mut given = [true; 14];
        given[5] = false;
        given[OTHER] = straps;
        given[NARROW] = straps && double && !chance.once_in(3);
        given[OTHER_TENSION] = chance.once_in(2);
        given[BEARING] = bearing;
        given[10] = bearing && chance.once_in(2);
        (given[PLATE_SHEAR], given[MARGIN]) = (out, out);
        given[BACK] = form.row_count() > 1 && chance.once_in(3);
        let mut kept = [const { Kept::None }; 14];
        for (column, kept) in kept.iter_mut().enumerate().filter(|(column, _)| given[*column]) {
            let constant = column != MARGIN && column != HOLE && chance.once_in(4);
            let values = table.iter().map(|row| row[column]).collect();
            *kept = if constant { Kept::Constant(table[0][column]) } else { Kept::Values(values) };
        }
        let columns = Columns { rows, kept };
        match compare(&columns, &form, &rules).unwrap_or_else(|e| panic!("case {case}: {e}")) {
            Some(Path::Form) => paths[0] += 1,
            Some(Path::Cuts) => paths[1] += 1,
            None => continue,
        }
        all += rows;
        sound += singly(&columns, &form, &rules).status.iter().filter(|status| **status == 0).count();
    }
    // Most rows are joints, and both kernels had many.
    assert!(2 * sound > all && paths.iter().all(|n| *n > 500), "{sound} of {all}, {paths:?}");
}

/// An even share of the load is no sum, so nothing is left out for it. By hand, N: the plate torn at row 2
/// `(400 - 6 x 20) 20 x 100 = 560 000`; with an even share of 7 rivets `560 000 x 7/6 = 653 333`. The narrow strap torn
/// too is a sum: it holds `280 x 0.5 x 300 = 42 000`, and the rivet of row 1 shears out the wide strap at
/// `2 (30 - 10) 8 x 127.5 = 40 800`: in all `642 800`, the least. All rivets: six at `2 (30 - 10) 20 x 127.5 = 102 000`,
/// at which they shear out the plate, and `40 800` make `652 800`; the wide strap at row 2 alone `280 x 8 x 300 = 672 000`.
/// Solid `400 x 20 x 100 = 800 000`.
#[test]
fn a_sum_below_an_even_share() {
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 1), (6, 2)]).expect("a form");
    let rules = STRUCTURAL.rules.with(Entry::INNER_SHARE, 1.0).expect("a choice");
    let mut kept = [const { Kept::None }; 14];
    for (column, value) in [
        (PITCH, 400.0),
        (PLATE, 20.0),
        (HOLE, 20.0),
        (TENSION, 100.0),
        (SHEAR, 1000.0),
        (OTHER, 8.0),
        (NARROW, 0.5),
        (OTHER_TENSION, 300.0),
        (BEARING, 1000.0),
        (PLATE_SHEAR, 127.5),
        (MARGIN, 30.0),
    ] {
        kept[column] = Kept::Values(vec![value; 3]);
    }
    let columns = Columns { rows: 3, kept };
    let single = columns.single(&form, &rules, 0).expect("a joint");
    assert_eq!(single.governing.cut, Cut { plate: 2, other: 0, narrow: 2 });
    assert!((single.efficiency - 642_800.0 / 800_000.0).abs() < 1e-12, "{}", single.efficiency);
    assert_eq!(compare(&columns, &form, &rules).unwrap_or_else(|e| panic!("{e}")), Some(Path::Cuts));
}
