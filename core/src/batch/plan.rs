//! What is settled once for a sweep: which kernel serves it, and everything that is the same in all rows.

use super::any::{Any, Given};
use super::chunk::{Fixed, READ, Span};
use super::column::{InputColumn, Inputs};
use super::kernel::{Eyes, FILLED, bits};
use super::shape::{Pattern, SLOTS, Shape};
use super::table::ModeTable;
use crate::bounds::Field;
use crate::formula;
use crate::joint::{Arrangement, Form, JointKind, MAX_ROWS};
use crate::math;
use crate::modes::Cut;
use crate::rules::{CloseRows, Counted, Diameter, Entry, Rules};

/// Greatest number of rows that a kernel is compiled for.
const ROWS: usize = 5;

/// A sweep as the kernel sees it.
#[derive(Clone, Copy, Debug)]
pub struct Plan<'a> {
    pub kind: JointKind,
    pub rows: usize,
    pub pattern: Pattern,
    /// Whether both straps are one column.
    pub alike: bool,
    pub way: Way,
    /// Whether cold rivets are given, which have to fit their holes.
    pub rivet: bool,
    /// Where margins or distances of rows are given.
    pub placing: Option<Placing>,
    pub fixed: Fixed,
    /// The columns of a chunk, with the bounds of those that were given and change from row to row.
    pub columns: [(InputColumn<'a>, Option<Span>); READ],
}

/// Margin and distances of rows: what makes them sound, whatever they do to the strength.
#[derive(Clone, Copy, Debug)]
pub struct Placing {
    pub margin: bool,
    pub back: bool,
    /// How far across holes of neighbouring rows lie at least, as a share of the strip.
    across: f64,
    /// Whether there are rows behind each other.
    in_line: bool,
}

impl Placing {
    fn new(form: &Form, margin: bool, back: bool) -> Self {
        let rows = form.row_count();
        let mut across = f64::INFINITY;
        for row in 1..rows {
            let (a, b) = (form.row(row).rivets, form.row(row.wrapping_add(1)).rivets);
            let (few, many) = if a < b { (a, b) } else { (b, a) };
            let staggered = many == few || u32::from(many) == u32::from(few).wrapping_mul(2);
            let zigzag = form.arrangement() == Arrangement::Zigzag && staggered;
            across = math::smaller(across, if zigzag { formula::gauge(1.0, f64::from(many)) } else { 0.0 });
        }
        Placing { margin, back, across, in_line: rows > 2 }
    }

    /// A number whose sign says that a lane's holes are not clear of the margin or of each other. What is near a limit
    /// is left to a single check, which has it exactly.
    #[inline(always)]
    pub fn unclear(&self, pitch: f64, hole: f64, margin: f64, back: f64) -> i64 {
        let across = formula::times(self.across, pitch);
        let apart = formula::times(back, back) * FILLED + formula::times(across, across) * FILLED;
        let mut sign = 0;
        if self.margin {
            sign |= bits(margin * FILLED - formula::half(hole));
        }
        if self.back {
            sign |= bits(apart - formula::times(hole, hole));
        }
        if self.back & self.in_line {
            sign |= bits(back * FILLED - formula::half(hole));
        }
        sign
    }
}

/// Which kernel serves a sweep.
#[derive(Clone, Copy, Debug)]
#[expect(clippy::large_enum_variant, reason = "one for each sweep, and nothing is allocated")]
pub enum Way {
    /// The one compiled for its form.
    Shape(Eyes),
    /// The one of all forms.
    Any(Any),
}

impl<'a> Plan<'a> {
    /// The plan of a sweep.
    pub fn new(form: &Form, rules: &Rules, inputs: &Inputs<'a>, modes: &ModeTable) -> Self {
        let (kind, rows, pattern) = (form.kind(), form.row_count(), Pattern::of(form));
        let inner = pattern != Pattern::Even;
        let straps = inputs.other.is_some() && kind != JointKind::Lap;
        let (placed, margin) = (inputs.back_pitch.is_some() && rows > 1, inputs.margin.is_some());
        let counts_straps = straps && rules.on(Entry::COUNT_STRAP);
        let counts_all_inner = !inner || rules.counts_inner() == Counted::Always;
        let columns = Self::columns(inputs, form);
        let alike = kind == JointKind::DoubleStrap
            && !matches!(pattern, Pattern::Unequal(_))
            && columns.get(6).zip(columns.get(7)).is_some_and(|(wide, narrow)| wide.0.is(&narrow.0));
        let (safety, divisor) = (rules.get(Entry::SEAM_SAFETY), rules.get(Entry::SEAM_DIVISOR));
        let crush = rules.on(Entry::BEARING_CHECKED);
        let out = margin && inputs.plate_shear.is_some();
        let sees = (crush || (inputs.bearing.is_none() && !out)) && safety == divisor;
        let mut fixed = Self::fixed(form, rules);
        fixed.crush = crush;
        if safety != divisor {
            fixed.seam = formula::safety_ratio(safety, divisor);
        }
        // Straps that differ in width: one outer row up to three rows, two above.
        let usual = match pattern {
            Pattern::Unequal(1) => rows <= 3,
            Pattern::Unequal(2) => rows >= 4,
            Pattern::Unequal(_) | Pattern::Other => false,
            Pattern::Even | Pattern::Thinned => true,
        } && rows <= if kind == JointKind::SingleStrap { 3 } else { ROWS };
        let plain = !out && (!placed || rules.close_rows() == CloseRows::Finding);
        let shared = inner && rules.on(Entry::INNER_SHARE);
        // A plate torn with the narrow strap is above the plate torn alone, where that counts and is a plain sum.
        let apart = matches!(pattern, Pattern::Unequal(_)) && counts_straps && !counts_all_inner;
        let butt = kind != JointKind::Lap;
        let way = if !(usual && plain) || shared || apart {
            Way::Any(Any::new(form, rules, Given { straps, placed, out, own: !sees }))
        } else if (butt && !straps) || !sees || !counts_all_inner || !fixed.plain() {
            fixed.twice = !sees || !counts_all_inner || (straps && !counts_straps);
            Way::Shape(Eyes::Own)
        } else if straps && !counts_straps {
            Way::Shape(Eyes::NoStraps)
        } else {
            Way::Shape(Eyes::Same)
        };
        let placing = (margin || placed).then(|| Placing::new(form, margin, placed));
        let mut plan = Plan { kind, rows, pattern, alike, way, placing, fixed, columns, rivet: inputs.rivet.is_some() };
        super::run::for_shape(&plan, Number { fixed: &mut fixed, form, rules, modes });
        plan.fixed = fixed;
        plan
    }

    fn columns(inputs: &Inputs<'a>, form: &Form) -> [(InputColumn<'a>, Option<Span>); READ] {
        let kind = form.kind();
        let bounded = |field: Field, column: InputColumn<'a>| {
            let bound = field.bound();
            (column, column.constant().is_none().then(|| Span::new(bound.lo, bound.hi)))
        };
        // A column that stands in for one that was not given is looked at in its own place.
        let given = |field: Field, column: Option<InputColumn<'a>>, instead: InputColumn<'a>| {
            column.map_or((instead, None), |column| bounded(field, column))
        };
        let unknown = InputColumn::Constant(f64::INFINITY);
        let other = inputs.other.unwrap_or(inputs.plate);
        let bearing = inputs.bearing.unwrap_or(unknown);
        // Straps that were not given crush no rivet; their stress still has to be within its bounds.
        let no_straps = kind != JointKind::Lap && inputs.other.is_none();
        let (other_bearing, stray) =
            if no_straps { (None, inputs.other_bearing) } else { (inputs.other_bearing, None) };
        // Where there is nothing to place, a distance is never looked at.
        let back = inputs.back_pitch.filter(|_| form.row_count() > 1);
        [
            bounded(Field::Pitch, inputs.pitch),
            bounded(Field::Plate, inputs.plate),
            bounded(Field::Hole, inputs.hole),
            bounded(Field::Tension, inputs.tension),
            bounded(Field::Shear, inputs.shear),
            given(Field::Rivet, inputs.rivet, inputs.hole),
            given(Field::OtherPlate, inputs.other, inputs.plate),
            given(Field::NarrowStrap, inputs.narrow, other),
            given(Field::OtherTension, inputs.other_tension, inputs.tension),
            given(Field::Bearing, inputs.bearing, unknown),
            given(Field::OtherBearing, other_bearing, if no_straps { unknown } else { bearing }),
            given(Field::PlateShear, inputs.plate_shear, unknown),
            given(Field::Margin, inputs.margin, unknown),
            given(Field::BackPitch, back, unknown),
            given(Field::OtherBearing, stray, unknown),
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
            densest: f64::from(form.densest_rivets()),
            double,
            lone: if rules.choice(Entry::LONE_PLANE) == 0 { double } else { 2.0 },
            allowance: rules.get(Entry::TEAR_ALLOWANCE),
            by_rivet: diameters.map(|entry| rules.diameter(entry) == Diameter::Rivet),
            cap: rules.get(Entry::EFFICIENCY_CAP),
            seam: 1.0,
            crush: true,
            twice: false,
            bars: [[0.0; SLOTS]; 2],
            numbers: [0; SLOTS],
            tied: 0,
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
