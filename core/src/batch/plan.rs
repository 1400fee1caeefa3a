//! What is settled once for a sweep: whether the kernel serves it, and everything that is the same in all rows.

use super::column::{InputColumn, Inputs};
use super::kernel::{Eyes, Fixed, READ};
use super::shape::{Pattern, SLOTS, Shape};
use super::table::ModeTable;
use crate::bounds::Field;
use crate::joint::{Form, JointKind, MAX_ROWS};
use crate::modes::Cut;
use crate::rules::{Counted, Diameter, Entry, Rules};

/// Greatest number of rows that the kernel is compiled for.
pub const ROWS: usize = 5;

/// A sweep as the kernel sees it.
#[derive(Clone, Copy, Debug)]
pub struct Plan<'a> {
    pub kind: JointKind,
    pub rows: usize,
    pub pattern: Pattern,
    /// Whether both straps are one column.
    pub alike: bool,
    pub eyes: Eyes,
    pub fixed: Fixed,
    /// The columns that the kernel reads, with the bounds of those that change from row to row.
    pub columns: [(InputColumn<'a>, Option<(f64, f64)>); READ],
}

impl<'a> Plan<'a> {
    /// The plan of a sweep; `None` where its rows have to be checked one by one.
    pub fn new(form: &Form, rules: &Rules, inputs: &Inputs<'a>, modes: &ModeTable) -> Option<Self> {
        let (kind, rows, pattern) = (form.kind(), form.row_count(), Pattern::of(form));
        let most = if kind == JointKind::SingleStrap { 3 } else { ROWS };
        // Straps that differ in width: one outer row up to three rows, two above.
        let unusual = match pattern {
            Pattern::Unequal(1) => rows > 3,
            Pattern::Unequal(2) => rows < 4,
            Pattern::Unequal(_) | Pattern::Other => true,
            Pattern::Even | Pattern::Thinned => false,
        };
        if unusual || rows > most {
            return None;
        }
        if inputs.margin.is_some() || inputs.back_pitch.is_some() || inputs.plate_shear.is_some() {
            return None;
        }
        let inner = pattern != Pattern::Even;
        let straps = inputs.other.is_some() && kind != JointKind::Lap;
        // Bearing of straps that were not given still has to be within its bounds.
        if kind != JointKind::Lap && !straps && matches!(inputs.other_bearing, Some(c) if c.constant().is_none()) {
            return None;
        }
        let counts_straps = straps && rules.on(Entry::COUNT_STRAP);
        let counts_all_inner = !inner || rules.counts_inner() == Counted::Always;
        // A plate torn with the narrow strap is above the plate torn alone, where that counts and is a plain sum.
        if matches!(pattern, Pattern::Unequal(_)) && counts_straps && !counts_all_inner {
            return None;
        }
        if inner && rules.on(Entry::INNER_SHARE) {
            return None;
        }
        let columns = Self::columns(inputs, kind);
        let alike = kind == JointKind::DoubleStrap
            && !matches!(pattern, Pattern::Unequal(_))
            && columns.get(6).zip(columns.get(7)).is_some_and(|(wide, narrow)| wide.0.is(&narrow.0));
        let (safety, divisor) = (rules.get(Entry::SEAM_SAFETY), rules.get(Entry::SEAM_DIVISOR));
        let crush = rules.on(Entry::BEARING_CHECKED);
        let sees = (crush || inputs.bearing.is_none()) && safety == divisor;
        let butt = kind != JointKind::Lap;
        let eyes = if (butt && !straps) || !sees || !counts_all_inner {
            Eyes::Own
        } else if straps && !counts_straps {
            Eyes::NoStraps
        } else {
            Eyes::Same
        };
        let mut fixed = Self::fixed(form, rules);
        fixed.crush = crush;
        if safety != divisor {
            fixed.seam = crate::formula::safety_ratio(safety, divisor);
        }
        let mut plan = Plan { kind, rows, pattern, alike, eyes, fixed, columns };
        super::run::for_shape(&plan, Number { fixed: &mut fixed, form, rules, modes });
        plan.fixed = fixed;
        Some(plan)
    }

    fn columns(inputs: &Inputs<'a>, kind: JointKind) -> [(InputColumn<'a>, Option<(f64, f64)>); READ] {
        let bounded = |field: Field, column: InputColumn<'a>| {
            let bound = field.bound();
            (column, column.constant().is_none().then_some((bound.lo, bound.hi)))
        };
        let unknown = InputColumn::Constant(f64::INFINITY);
        let rivet = inputs.rivet.unwrap_or(inputs.hole);
        let other = inputs.other.unwrap_or(inputs.plate);
        let narrow = inputs.narrow.unwrap_or(other);
        let bearing = inputs.bearing.unwrap_or(unknown);
        // Straps that were not given crush no rivet.
        let no_straps = kind != JointKind::Lap && inputs.other.is_none();
        let other_bearing = if no_straps { unknown } else { inputs.other_bearing.unwrap_or(bearing) };
        [
            bounded(Field::Pitch, inputs.pitch),
            bounded(Field::Plate, inputs.plate),
            bounded(Field::Hole, inputs.hole),
            bounded(Field::Tension, inputs.tension),
            bounded(Field::Shear, inputs.shear),
            bounded(Field::Rivet, rivet),
            bounded(Field::OtherPlate, other),
            bounded(Field::NarrowStrap, narrow),
            bounded(Field::OtherTension, inputs.other_tension.unwrap_or(inputs.tension)),
            bounded(Field::Bearing, bearing),
            bounded(Field::OtherBearing, other_bearing),
        ]
    }

    fn fixed(form: &Form, rules: &Rules) -> Fixed {
        let mut rivets = [0.0; MAX_ROWS];
        for (slot, row) in rivets.iter_mut().zip(form.rows()) {
            *slot = f64::from(row.rivets);
        }
        let double = rules.get(Entry::DOUBLE_SHEAR);
        let diameters = [Entry::TEAR_DIAMETER, Entry::SHEAR_DIAMETER, Entry::BEARING_DIAMETER];
        Fixed {
            rivets,
            double,
            lone: if rules.choice(Entry::LONE_PLANE) == 0 { double } else { 2.0 },
            allowance: rules.get(Entry::TEAR_ALLOWANCE),
            by_rivet: diameters.map(|entry| rules.diameter(entry) == Diameter::Rivet),
            cap: rules.get(Entry::EFFICIENCY_CAP),
            seam: 1.0,
            crush: true,
            bars: [[0.0; SLOTS]; 2],
            numbers: [0; SLOTS],
            tied: 0,
            bounds: [Field::Pitch, Field::Plate, Field::Hole].map(|field| (field.bound().lo, field.bound().hi)),
        }
    }
}

/// Numbers the slots of a shape, and bars those that there are not or that the book does not count.
struct Number<'n> {
    fixed: &'n mut Fixed,
    form: &'n Form,
    rules: &'n Rules,
    modes: &'n ModeTable,
}

impl super::run::ShapeWork for Number<'_> {
    fn work<S: Shape>(self) {
        let Fixed { numbers, bars: [real, book], tied, .. } = self.fixed;
        let slots = numbers.iter_mut().zip(real.iter_mut()).zip(book.iter_mut());
        for (((number, real), book), slot) in slots.zip(0..) {
            let cut = S::cut(slot);
            let there = self.modes.number(cut).map(u64::from);
            *number = there.unwrap_or(0);
            *real = if there.is_some() { 0.0 } else { f64::INFINITY };
            *book =
                if there.is_some() && crate::check::counts(self.rules, self.form, &cut) { 0.0 } else { f64::INFINITY };
        }
        let first_double = u8::try_from(S::SINGLE.wrapping_add(1)).unwrap_or(0);
        let cut = Cut { plate: 0, other: first_double, narrow: 0 };
        *tied = self.modes.number(cut).map_or(0, u64::from);
    }
}
