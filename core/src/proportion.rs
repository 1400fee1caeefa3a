//! Proportions that a rule book prescribes: hole, pitch limits, row distances, margins, straps.
//!
//! `check` compares them with what is there, `sizing` builds with them: one routine each.

use crate::error::EntryNo;
use crate::formula::{self, Formula};
use crate::given::{Given, pick};
use crate::joint::{Arrangement, Form, JointKind};
use crate::rules::{Entry, HoleTable, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Why};

/// Width of a snap (button) head in diameters of the cold rivet: PRACTICE. Shop sheet, drawing and the findings about the
/// room of heads take it from here.
pub const SNAP_HEAD_WIDTH: f64 = 1.6;

/// Height of a snap (button) head in diameters of the cold rivet: PRACTICE.
pub const SNAP_HEAD_HEIGHT: f64 = 0.7;

/// A limit that a book may set.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Limit<N> {
    /// The book has no such rule.
    None,
    /// The book has such a rule, and its table does not reach this case.
    Unknown(Entry),
    /// The limit, and the entry that sets it.
    At(N, Entry),
}

impl<N: Num> Limit<N> {
    /// The same with a bare value.
    #[must_use]
    pub fn values(self) -> Limit<f64> {
        match self {
            Limit::None => Limit::None,
            Limit::Unknown(entry) => Limit::Unknown(entry),
            Limit::At(limit, entry) => Limit::At(limit.value(), entry),
        }
    }

    /// The tighter of two upper limits.
    #[inline]
    fn tighter<C: Ctx<N = N>>(self, c: C, name: Name, value: N, entry: Entry) -> Self {
        match self {
            Limit::At(old, old_entry) if old.value() <= value.value() => {
                Limit::At(c.choice(name, Why::Least(old_entry.no()), old, value), old_entry)
            }
            Limit::At(old, _) => Limit::At(c.choice(name, Why::Least(entry.no()), value, old), entry),
            Limit::Unknown(e) => Limit::Unknown(e),
            Limit::None => Limit::At(value, entry),
        }
    }
}

/// Why a computed hole is what it is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum HoleBasis {
    /// The square-root rule.
    Root,
    /// Shear equals bearing: the plate is thin.
    Thin,
    /// The book's table by thickness.
    Table(Entry),
    /// The table does not reach this thickness.
    BeyondTable,
    /// Thin plate, and no bearing stress given.
    NoBearing,
}

/// The hole before it becomes a standard size, mm: `t` the thinner plate, `planes` the shear areas that count for one
/// rivet (1, or the book's double-shear factor). 0 with [`HoleBasis::BeyondTable`] or [`HoleBasis::NoBearing`].
#[inline]
pub fn hole<C: Ctx>(
    c: C,
    rules: &Rules,
    t: C::N,
    shear: C::N,
    bearing: Option<C::N>,
    planes: C::N,
) -> (C::N, HoleBasis) {
    let name = Name(Q::Hole, 0);
    if rules.hole_rule() == HoleTable::Table {
        return match rules.table_hole(t.value()) {
            Some((entry, hole)) => (c.table(name, entry.no(), hole), HoleBasis::Table(entry)),
            None => (C::N::lit(0.0), HoleBasis::BeyondTable),
        };
    }
    let limit = rules.get(Entry::HOLE_THIN_BELOW);
    let thin = if rules.on(Entry::HOLE_THIN_AT) {
        crate::math::at_most(t.value(), limit)
    } else {
        crate::math::below(t.value(), limit)
    };
    if thin && rules.on(Entry::HOLE_THIN_RULE) {
        return match bearing {
            Some(bearing) => {
                let d = formula::hole_by_bearing(t, bearing, shear, planes);
                (c.formula(name, Formula::HoleByBearing.no(), d), HoleBasis::Thin)
            }
            None => (C::N::lit(0.0), HoleBasis::NoBearing),
        };
    }
    let a = c.table(Name(Q::RootCoefficient, 0), Entry::HOLE_SQRT.no(), rules.get(Entry::HOLE_SQRT));
    let b = c.table(Name(Q::Allowance, 0), Entry::HOLE_ADD.no(), rules.get(Entry::HOLE_ADD));
    (c.formula(name, Formula::HoleByRoot.no(), formula::hole_by_root(a, t, b)), HoleBasis::Root)
}

/// The shear areas that count for one rivet: 1, or the book's double-shear factor where all rivets have two planes.
#[inline]
pub fn planes<C: Ctx>(c: C, rules: &Rules, form: &Form) -> C::N {
    if form.rows().all(|r| r.planes == 2) {
        c.table(Name(Q::DoubleShear, 0), Entry::DOUBLE_SHEAR.no(), rules.get(Entry::DOUBLE_SHEAR))
    } else {
        C::N::lit(1.0)
    }
}

/// Rivets in one pitch of the outer row, where that is a whole number.
#[must_use]
pub fn rivets_per_pitch(form: &Form) -> Option<u32> {
    let outer = u32::from(form.outer_rivets());
    (1..=form.rivets()).find(|n| n.checked_mul(outer) == Some(form.rivets()))
}

/// The least pitch of the outer row, mm: the floor belongs to the densest row. `d` is the diameter that counts.
#[inline]
pub fn pitch_least<C: Ctx>(c: C, rules: &Rules, form: &Form, d: C::N) -> (C::N, Entry) {
    let a = c.table(Name(Q::Coefficient, 0), Entry::PITCH_LEAST.no(), rules.get(Entry::PITCH_LEAST));
    let b = c.table(Name(Q::Allowance, 0), Entry::PITCH_LEAST_ADD.no(), rules.get(Entry::PITCH_LEAST_ADD));
    let dense = c.given(Name(Q::RivetsInRow, 0), f64::from(form.densest_rivets()));
    let outer = c.given(Name(Q::RivetsInRow, 1), f64::from(form.outer_rivets()));
    let p = formula::least_pitch(a, d, b, dense, outer);
    (c.formula(Name(Q::PitchLeast, 0), Formula::LeastPitch.no(), p), Entry::PITCH_LEAST)
}

/// The greatest pitch of the outer row, mm: the tightest of the book's rules, on the thinner plate.
#[inline]
pub fn pitch_greatest<C: Ctx>(c: C, rules: &Rules, form: &Form, t: C::N) -> Limit<C::N> {
    let name = Name(Q::PitchGreatest, 0);
    let mut limit = Limit::None;
    if rules.has_pitch_cap() {
        let found = rivets_per_pitch(form).and_then(|n| rules.pitch_cap(form.kind(), n));
        let Some((entry, coefficient)) = found else {
            return Limit::Unknown(match form.kind() {
                JointKind::Lap => Entry::PITCH_MAX_LAP,
                JointKind::SingleStrap => Entry::PITCH_MAX_SINGLE,
                JointKind::DoubleStrap => Entry::PITCH_MAX_DOUBLE,
            });
        };
        let coefficient = c.table(Name(Q::Coefficient, 0), entry.no(), coefficient);
        let add = c.table(Name(Q::Allowance, 0), Entry::PITCH_MAX_ADD.no(), rules.get(Entry::PITCH_MAX_ADD));
        let p = c.formula(name, Formula::GreatestPitch.no(), formula::greatest_pitch(coefficient, t, add));
        limit = limit.tighter(c, name, p, entry);
    }
    let even = rules.get(Entry::PITCH_MAX_EVEN);
    if even > 0.0 {
        let even = c.table(Name(Q::Coefficient, 0), Entry::PITCH_MAX_EVEN.no(), even);
        let p = c.formula(Name(Q::PitchByPlate, 0), Formula::Times.no(), formula::times(even, t));
        limit = limit.tighter(c, name, p, Entry::PITCH_MAX_EVEN);
    }
    let most = rules.get(Entry::PITCH_MAX_LIMIT);
    if most > 0.0 {
        limit = {
            let most = c.table(Name(Q::PitchLimit, 0), Entry::PITCH_MAX_LIMIT.no(), most);
            limit.tighter(c, name, most, Entry::PITCH_MAX_LIMIT)
        };
    }
    limit
}

/// One of the four lists `a, k, b, c` of row distances.
#[inline]
fn linear_gap<C: Ctx>(c: C, rules: &Rules, Name(q, row): Name, head: Entry, p: C::N, d: C::N) -> C::N {
    let value = |i: usize| {
        let entry = head.at(i);
        let input = match i {
            0 => Q::PitchShare,
            1 => Q::HolesOff,
            2 => Q::DiameterShare,
            _ => Q::Allowance,
        };
        c.table(Name(input, row), entry.no(), rules.get(entry))
    };
    let g = formula::row_distance(value(0), p, value(1), value(2), d, value(3));
    c.formula(Name(q, row), Formula::RowDistance.no(), g)
}

/// The least distance from row `row` (from 1) to the next, mm. `d1`, `d2`: the diameters that count in the two rows.
#[inline]
pub fn row_gap<C: Ctx>(c: C, rules: &Rules, form: &Form, strip: C::N, row: usize, d1: C::N, d2: C::N) -> (C::N, Entry) {
    let at = u8::try_from(row).unwrap_or(0);
    let d = if d1.value() == d2.value() {
        d1
    } else {
        c.formula(Name(Q::MeanHole, at), Formula::Mean.no(), formula::mean(d1, d2))
    };
    let (here, next) = (form.row(row).rivets, form.row(row.wrapping_add(1)).rivets);
    let (few, many) = if here < next { (here, next) } else { (next, here) };
    let few_rivets = C::N::lit(f64::from(few));
    let p = if few == 1 {
        strip
    } else {
        c.formula(Name(Q::Pitch, at), Formula::RowPitch.no(), formula::row_pitch(strip, few_rivets))
    };
    let name = Name(Q::RowGapLeast, at);
    match (form.arrangement(), here == next) {
        (Arrangement::Chain, true) => (linear_gap(c, rules, name, Entry::BACK_CHAIN, p, d), Entry::BACK_CHAIN),
        (Arrangement::Chain, false) => {
            // The greater of the rule for thinned-out rows and the rule for equal ones (Reg. 184(b)).
            let half = linear_gap(c, rules, Name(Q::RowGapThinned, at), Entry::BACK_HALF_CHAIN, p, d);
            let full = linear_gap(c, rules, Name(Q::RowGapEqual, at), Entry::BACK_CHAIN, p, d);
            let entry = if full.value() > half.value() { Entry::BACK_CHAIN } else { Entry::BACK_HALF_CHAIN };
            (c.greater(name, Why::Greatest(entry.no()), half, full), entry)
        }
        (Arrangement::Zigzag, true) if rules.on(Entry::BACK_ZIGZAG_RULE) => {
            let a = c.table(Name(Q::PitchShare, at), Entry::DIAGONAL_PITCH.no(), rules.get(Entry::DIAGONAL_PITCH));
            let b =
                c.table(Name(Q::DiameterShare, at), Entry::DIAGONAL_DIAMETER.no(), rules.get(Entry::DIAGONAL_DIAMETER));
            let many = C::N::lit(f64::from(many));
            let q = c.formula(Name(Q::Gauge, at), Formula::Gauge.no(), formula::gauge(strip, many));
            let g = formula::row_distance_diagonal(a, p, b, d, q);
            (c.formula(name, Formula::RowDistanceDiagonal.no(), g), Entry::DIAGONAL_PITCH)
        }
        (Arrangement::Zigzag, true) => (linear_gap(c, rules, name, Entry::BACK_ZIGZAG, p, d), Entry::BACK_ZIGZAG),
        (Arrangement::Zigzag, false) => {
            (linear_gap(c, rules, name, Entry::BACK_HALF_ZIGZAG, p, d), Entry::BACK_HALF_ZIGZAG)
        }
    }
}

/// The width of the snap head of a row, mm.
#[inline]
fn snap_head<C: Ctx>(c: C, given: &Given<C::N>, row: usize) -> C::N {
    let at = u8::try_from(row).unwrap_or(0);
    let width = formula::times(C::N::lit(SNAP_HEAD_WIDTH), pick(&given.rivet, row));
    c.formula(Name(Q::HeadWidth, at), Formula::SnapHead.no(), width)
}

/// The least distance from row `row` (from 1) to the next for its heads beside the edge of the narrow strap, mm. `None`
/// unless that edge lies between the two rows; it lies a `margin` outside the next one. Custom of the trade: PRACTICE.
#[inline]
pub fn head_beside_strap<C: Ctx>(c: C, form: &Form, given: &Given<C::N>, margin: C::N, row: usize) -> Option<C::N> {
    let edge_between = form.row(row).planes < form.row(row.wrapping_add(1)).planes;
    if !edge_between || margin.value() <= 0.0 {
        return None;
    }
    let at = u8::try_from(row).unwrap_or(0);
    let least = formula::head_beside_strap(margin, snap_head(c, given, row));
    Some(c.formula(Name(Q::RowGapBeside, at), Formula::HeadBesideStrap.no(), least))
}

/// The least distance from row `row` (from 1) to the next for heads that clear each other, mm. `None` where rivets stand
/// differently to each other along the rows (a lozenge's 2 and 3). Custom of the trade: PRACTICE.
#[inline]
pub fn heads_apart<C: Ctx>(c: C, form: &Form, given: &Given<C::N>, row: usize) -> Option<C::N> {
    let next = row.wrapping_add(1);
    let (a, b) = (form.row(row).rivets, form.row(next).rivets);
    let (few, many) = if a < b { (a, b) } else { (b, a) };
    if !(many == few || u32::from(many) == u32::from(few).wrapping_mul(2)) {
        return None;
    }
    let at = u8::try_from(row).unwrap_or(0);
    let (rivet, next_rivet) = (pick(&given.rivet, row), pick(&given.rivet, next));
    let width = snap_head(c, given, row);
    let next_width = if rivet.value() == next_rivet.value() { width } else { snap_head(c, given, next) };
    let name = Name(Q::RowGapApart, at);
    Some(match form.arrangement() {
        Arrangement::Chain => c.formula(name, Formula::HeadsInLine.no(), formula::mean(width, next_width)),
        Arrangement::Zigzag => {
            let many = C::N::lit(f64::from(many));
            let q = c.formula(Name(Q::Gauge, at), Formula::Gauge.no(), formula::gauge(given.strip, many));
            c.formula(name, Formula::HeadsApart.no(), formula::heads_apart(width, next_width, q))
        }
    })
}

/// The least margin, mm. `d`: the largest diameter that counts.
#[inline]
pub fn margin_least<C: Ctx>(c: C, rules: &Rules, d: C::N) -> C::N {
    let a = c.table(Name(Q::Coefficient, 0), Entry::MARGIN_LEAST.no(), rules.get(Entry::MARGIN_LEAST));
    let b = c.table(Name(Q::Allowance, 0), Entry::MARGIN_LEAST_ADD.no(), rules.get(Entry::MARGIN_LEAST_ADD));
    c.formula(Name(Q::MarginLeast, 0), Formula::Margin.no(), formula::margin(a, d, b))
}

/// The greatest margin, mm: the tightest of the book's rules. `d`: the smallest diameter that counts; `t`: the thinner
/// plate.
#[inline]
pub fn margin_greatest<C: Ctx>(c: C, rules: &Rules, d: C::N, t: C::N) -> Limit<C::N> {
    let name = Name(Q::MarginGreatest, 0);
    let mut limit = Limit::None;
    for (entry, q, of) in
        [(Entry::MARGIN_GREATEST, Q::MarginGreatest, d), (Entry::MARGIN_THICKNESS, Q::MarginByPlate, t)]
    {
        let factor = rules.get(entry);
        if factor > 0.0 {
            let factor = c.table(Name(Q::Coefficient, 0), entry.no(), factor);
            let m = c.formula(Name(q, 0), Formula::Times.no(), formula::times(factor, of));
            limit = limit.tighter(c, name, m, entry);
        }
    }
    let most = rules.get(Entry::MARGIN_LIMIT);
    if most > 0.0 {
        limit = {
            let most = c.table(Name(Q::MarginLimit, 0), Entry::MARGIN_LIMIT.no(), most);
            limit.tighter(c, name, most, Entry::MARGIN_LIMIT)
        };
    }
    limit
}

/// Which strap.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Strap {
    /// The only one, or the wide one.
    Wide,
    /// The second one.
    Narrow,
}

/// What a strap covers.
#[derive(Clone, Copy, Debug)]
pub struct Covered<N> {
    /// Thickness of the plate.
    pub plate: N,
    /// Width of the strip.
    pub strip: N,
    /// Rivets and diameter of the outer row.
    pub outer: (N, N),
    /// Rivets and diameter of the row at the butt.
    pub butt: (N, N),
}

impl<N: Num> Covered<N> {
    /// Takes the figures of a joint of a form.
    #[inline]
    pub fn new(form: &Form, given: &Given<N>, rules: &Rules) -> Self {
        let row = |r: usize| (given.rivets_in(r), given.diameter(rules, Entry::TEAR_DIAMETER, r));
        Covered { plate: given.plate, strip: given.strip, outer: row(1), butt: row(form.row_count()) }
    }
}

/// The least thickness of a strap, mm, before it is rounded up to a stock thickness.
#[inline]
pub fn strap_least<C: Ctx>(c: C, rules: &Rules, form: &Form, strap: Strap, covered: &Covered<C::N>) -> Limit<C::N> {
    let t = covered.plate;
    let (outer, butt) = (covered.outer, covered.butt);
    let name = Name(Q::StrapLeast, if strap == Strap::Wide { 1 } else { 2 });
    let (least, entry) = if rules.on(Entry::STRAP_RULE) {
        match rules.table_strap(t.value()) {
            Some((entry, b)) => (c.table(name, entry.no(), b), entry),
            None => return Limit::Unknown(Entry::STRAP_TABLE_PLATE),
        }
    } else {
        let (entry, add) = match (form.kind(), strap) {
            (JointKind::SingleStrap, _) => (Entry::STRAP_SINGLE, rules.get(Entry::STRAP_SINGLE_ADD)),
            (_, Strap::Wide) if form.unequal() => (Entry::STRAP_WIDE, 0.0),
            (_, Strap::Narrow) if form.unequal() => (Entry::STRAP_NARROW, 0.0),
            _ => (Entry::STRAP_EQUAL, 0.0),
        };
        let share = rules.get(entry);
        if share <= 0.0 {
            return Limit::None;
        }
        let share = c.table(Name(Q::Coefficient, 0), entry.no(), share);
        let add = c.table(Name(Q::Allowance, 0), Entry::STRAP_SINGLE_ADD.no(), add);
        let at = name.1;
        let b = c.formula(Name(Q::StrapShare, at), Formula::StrapShare.no(), formula::strap_share(share, t, add));
        let thickened = match rules.choice(Entry::STRAP_OMITTED) {
            0 => false,
            1 => !form.unequal(),
            _ => true,
        };
        if thickened && form.row(form.row_count()).rivets > form.outer_rivets() {
            let thick = formula::strap_thickened(b, covered.strip, outer.0, outer.1, butt.0, butt.1);
            (c.formula(Name(Q::StrapThick, at), Formula::StrapThickened.no(), thick), entry)
        } else {
            (b, entry)
        }
    };
    let most = rules.get(Entry::STRAP_LEAST);
    if most > 0.0 {
        let floor = c.table(Name(Q::StrapFloor, 0), Entry::STRAP_LEAST.no(), most);
        let taken = if most > least.value() { Entry::STRAP_LEAST } else { entry };
        return Limit::At(c.greater(name, Why::Floor(Entry::STRAP_LEAST.no()), least, floor), taken);
    }
    Limit::At(least, entry)
}

/// The entry of a limit, for findings.
#[must_use]
pub fn limit_entry<N>(limit: &Limit<N>) -> EntryNo {
    match limit {
        Limit::None => EntryNo::NONE,
        Limit::Unknown(e) | Limit::At(_, e) => e.no(),
    }
}
