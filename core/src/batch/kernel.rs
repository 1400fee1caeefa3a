//! One joint of a usual form, as straight-line code that a compiler turns into lanes.
//!
//! Every figure is made by the formula bodies, in the order in which [`check`](crate::check::check) adds them up, so
//! the bits are the same. Only the cuts that can govern are looked at ([`shape`](super::shape)); where the reasons for
//! leaving the others out do not hold clearly, the lane says so and its row is checked by itself. Thanks to those
//! margins the cuts that are left out change nothing in the search for the least one either, which prefers the earlier
//! of two that are equal within the tolerance.
#![allow(
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "arrays and loops of constant length: nothing is out of bounds, and the compiler knows it"
)]

use super::chunk::{Chunk, Finds, Fixed, View};
use super::shape::{self as at, SLOTS, Shape};
use super::table::NO_MODE;
use crate::formula;
use crate::joint::JointKind;
use crate::math;

/// Least share of the strength that each net section and each rivet must have, so that a cut with one of them more is
/// surely above one without: four orders above what the tolerance of ties needs.
pub const MARGIN: f64 = 1e-4;

/// Least share of the strength by which a second plane must hold more, where it holds more at all: two orders above the
/// tolerance of ties, which a chain of near ties over all slots cannot use up.
const APART: f64 = 100.0 * math::TOLERANCE;

/// Holes that leave less of the strip than this are left to a single check, which has the exact limit.
pub const FILLED: f64 = 1.0 - 3.0 * math::TOLERANCE;

/// Which cuts the book's figure is taken from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Eyes {
    /// It sees what is: its figure is that of all modes, or it is not asked for.
    Same,
    /// It counts everything but straps.
    NoStraps,
    /// It counts some cuts, or has its own figures for the rivets; or, by the book, another diameter than the hole's
    /// counts, or one plane that fails alone is not half of two.
    Own,
}

/// The bits of a figure, its sign the sign.
#[inline(always)]
pub fn bits(x: f64) -> i64 {
    x.to_bits().cast_signed()
}

/// Rows that a kernel works out at once: few enough that all of them stay in registers.
const BLOCK: usize = 8;

/// One rivet by the planes that are on the cut.
#[derive(Clone, Copy)]
pub struct Rivet {
    /// Of a row in single shear.
    pub single: f64,
    pub both: f64,
    /// The plane of the wide strap alone, and of the narrow one.
    pub other: f64,
    pub narrow: f64,
}

/// Thicknesses, stresses and diameters of one lane.
#[derive(Clone, Copy)]
pub struct Lane {
    pub strip: f64,
    pub plate: f64,
    pub other: f64,
    pub narrow: f64,
    pub tension: f64,
    pub other_tension: f64,
    pub shear: f64,
    pub bearing: f64,
    pub other_bearing: f64,
    pub tear_hole: f64,
    pub shear_hole: f64,
    pub bearing_hole: f64,
}

/// The least figure so far, and the least that still counts as equal to it: made of each figure by itself, so that no
/// figure waits for those before it.
#[derive(Clone, Copy)]
struct Weakest {
    value: f64,
    equal: f64,
}

impl Weakest {
    #[inline(always)]
    fn new(value: f64) -> Self {
        Weakest { value, equal: math::least_equal(value) }
    }

    /// The weaker of this and another, and whether it is the other; equal within the tolerance, this one stays.
    #[inline(always)]
    fn or(self, other: Weakest) -> (Self, bool) {
        let lower = other.value < self.equal;
        let value = if lower { other.value } else { self.value };
        let equal = if lower { other.equal } else { self.equal };
        (Weakest { value, equal }, lower)
    }

    #[inline(always)]
    fn against(self, other: f64) -> Self {
        self.or(Weakest::new(other)).0
    }

    /// Twice this: exactly so, for both of its figures.
    #[inline(always)]
    fn twice(self) -> Self {
        Weakest { value: formula::cut_strength(self.value, self.value), equal: self.equal + self.equal }
    }
}

impl Lane {
    /// A lane of a chunk.
    #[inline(always)]
    pub fn new<const W: usize>(view: &View<'_, W>, i: usize) -> Self {
        Lane {
            tear_hole: formula::deducted(view.tear[i], view.allowance),
            shear_hole: view.sheared[i],
            bearing_hole: view.borne[i],
            ..Lane::plain(&view.columns, i)
        }
    }

    /// The solid strip: in a lap the lesser of two, the first when equal.
    #[inline(always)]
    pub fn solid(&self, lap: bool) -> f64 {
        let solid = formula::solid(self.strip, self.plate, self.tension);
        if lap { math::smaller(solid, formula::solid(self.strip, self.other, self.other_tension)) } else { solid }
    }

    /// A lane as a shape sees it.
    #[inline(always)]
    fn of<S: Shape, const W: usize>(own: bool, view: &View<'_, W>, i: usize) -> Self {
        let lane = if own { Lane::new(view, i) } else { Lane::plain(&view.columns, i) };
        Lane { narrow: if S::ALIKE { lane.other } else { lane.narrow }, ..lane }
    }

    /// The numbers of the slots' modes.
    #[inline(always)]
    fn numbers<S: Shape>(&self, fixed: &Fixed, tied: bool) -> [u64; SLOTS] {
        let mut numbers = fixed.numbers;
        if S::SINGLE > 0 {
            numbers[at::OTHER] = if tied { fixed.tied } else { numbers[at::OTHER] };
        }
        numbers
    }

    /// The same where every diameter that counts is the hole's.
    #[inline(always)]
    fn plain<const W: usize>(chunk: &Chunk<'_, W>, i: usize) -> Self {
        let [pitch, plate, hole, tension, shear, _, other, narrow, other_tension, bearing, other_bearing, ..] = chunk;
        Lane {
            strip: pitch[i],
            plate: plate[i],
            other: other[i],
            narrow: narrow[i],
            tension: tension[i],
            other_tension: other_tension[i],
            shear: shear[i],
            bearing: bearing[i],
            other_bearing: other_bearing[i],
            tear_hole: hole[i],
            shear_hole: hole[i],
            bearing_hole: hole[i],
        }
    }

    /// What its holes clearly leave of the strip, mm. Those that nearly fill it are left to a single check.
    #[inline(always)]
    pub fn room(&self, densest: f64, hole: f64) -> f64 {
        self.strip * FILLED - formula::row_hold(densest, hole)
    }

    /// The net section at a row of `n` rivets: of the plate, of plate B or the wide strap, of the narrow strap.
    #[inline(always)]
    fn plate_net(&self, n: f64) -> f64 {
        formula::net_section(self.strip, n, self.tear_hole, self.plate, self.tension)
    }
    #[inline(always)]
    fn other_net(&self, n: f64) -> f64 {
        formula::net_section(self.strip, n, self.tear_hole, self.other, self.other_tension)
    }
    #[inline(always)]
    fn narrow_net(&self, n: f64) -> f64 {
        formula::net_section(self.strip, n, self.tear_hole, self.narrow, self.other_tension)
    }

    /// One rivet in its weakest fate. A stress that was not given is infinite here, and never the weaker; so is a
    /// margin (`outs`: of the plate, of plate B or the wide strap, of the narrow strap) at which it does not stand.
    ///
    /// `APART`: one plane that fails alone may bear another figure than half of two. Where it bears that, it is the half
    /// to the last bit, because halves of binary figures are exact.
    #[inline(always)]
    pub fn rivet<const DOUBLE: bool, const APART: bool, const ALIKE: bool>(
        &self,
        fixed: &Fixed,
        seam: f64,
        crush: bool,
        outs: [f64; 3],
    ) -> Rivet {
        let (d, ss, db) = (self.shear_hole, self.shear, self.bearing_hole);
        let (sc, sc2) = if crush { (self.bearing, self.other_bearing) } else { (f64::INFINITY, f64::INFINITY) };
        let [out, wide_out, thin_out] = outs;
        let plate = formula::bearing(db, self.plate, sc);
        let wide = formula::bearing(db, self.other, sc2);
        let weaker = |f: f64, strap: f64, strap_out: f64| Weakest::new(f).against(strap).against(strap_out);
        let in_plate = |f: Weakest| f.against(plate).against(out).value;
        let single = in_plate(weaker(formula::times(seam, formula::single_shear(d, ss)), wide, wide_out));
        if !DOUBLE {
            return Rivet { single, both: single, other: single, narrow: single };
        }
        let thin = formula::bearing(db, self.narrow, sc2);
        // Half of the double shear, to the last bit.
        let half = formula::times(seam, formula::plane_shear(fixed.double, d, ss));
        // Each plane by itself, shearing or crushing its strap. Where both shear, the sum is the double shear again.
        let (a, b) = (weaker(half, wide, wide_out), weaker(half, thin, thin_out));
        let both = in_plate(if ALIKE { a.twice() } else { Weakest::new(formula::cut_strength(a.value, b.value)) });
        let (other, narrow) = if APART {
            let lone = formula::times(seam, formula::plane_shear(fixed.lone, d, ss));
            (weaker(lone, wide, wide_out), weaker(lone, thin, thin_out))
        } else {
            (a, b)
        };
        Rivet { single, both, other: in_plate(other), narrow: in_plate(narrow) }
    }

    /// [`rivet`](Self::rivet) of a shape.
    #[inline(always)]
    fn rivet_of<S: Shape, const APART: bool>(&self, fixed: &Fixed, seam: f64, crush: bool) -> Rivet {
        let nowhere = [f64::INFINITY; 3];
        match (S::KIND, S::ALIKE) {
            (JointKind::DoubleStrap, true) => self.rivet::<true, APART, true>(fixed, seam, crush, nowhere),
            (JointKind::DoubleStrap, false) => self.rivet::<true, APART, false>(fixed, seam, crush, nowhere),
            _ => self.rivet::<false, APART, false>(fixed, seam, crush, nowhere),
        }
    }

    /// The cuts that can govern; infinite where the form has no such cut.
    #[inline(always)]
    fn cuts<S: Shape>(&self, fixed: &Fixed, rivet: &Rivet) -> [f64; SLOTS] {
        let mut cuts = [f64::INFINITY; SLOTS];
        let double = S::KIND == JointKind::DoubleStrap;
        let lap = S::KIND == JointKind::Lap;
        let n = S::counts(&fixed.rivets);
        let (outer, last) = (n[0], n[S::ROWS - 1]);
        let inner = if lap && S::ROWS > 1 { n[1] } else { last };
        // No index: where a compiler does not unroll the rows, as for small images, it would keep its panic.
        let hold = |row: usize, f: f64| formula::row_hold(n.get(row).copied().unwrap_or(0.0), f);
        // A row of the part outside, and one of the part at the butt.
        let planes =
            |row: usize, f: f64| if row < S::SINGLE || !double { hold(row, rivet.single) } else { hold(row, f) };
        // Rows one after the other, as a single check adds them.
        let all = |start: Option<f64>, from: usize, f: f64| {
            let mut sum = start;
            for row in from..S::ROWS {
                let more = planes(row, f);
                sum = Some(match sum {
                    Some(sum) => formula::cut_strength(sum, more),
                    None => more,
                });
            }
            sum.unwrap_or(0.0)
        };
        cuts[at::OUTER] = self.plate_net(outer);
        if S::HAS[at::SECOND] {
            cuts[at::SECOND] = formula::cut_strength(self.plate_net(n[1]), planes(0, rivet.both));
        }
        if S::HAS[at::THIRD] {
            let rows = formula::cut_strength(self.plate_net(n[2]), planes(0, rivet.both));
            cuts[at::THIRD] = formula::cut_strength(rows, planes(1, rivet.both));
        }
        cuts[at::RIVETS] = all(None, 0, rivet.both);
        if S::HAS[at::WITH_OTHER] {
            let torn = formula::cut_strength(self.plate_net(inner), self.other_net(inner));
            let outside = double && S::SINGLE == 0;
            cuts[at::WITH_OTHER] = if outside { formula::cut_strength(torn, hold(0, rivet.narrow)) } else { torn };
        }
        if S::HAS[at::B_SECOND] {
            cuts[at::B_SECOND] = formula::cut_strength(self.other_net(inner), hold(S::ROWS - 1, rivet.single));
        }
        cuts[at::OTHER] = self.other_net(last);
        if double {
            cuts[at::OTHER] = all(Some(cuts[at::OTHER]), S::SINGLE, rivet.narrow);
        }
        if S::HAS[at::WITH_NARROW] {
            let torn = formula::cut_strength(self.plate_net(inner), self.narrow_net(inner));
            cuts[at::WITH_NARROW] = formula::cut_strength(torn, hold(0, rivet.other));
        }
        if S::HAS[at::NARROW] {
            cuts[at::NARROW] = all(Some(self.narrow_net(last)), 0, rivet.other);
        }
        if S::HAS[at::STRAPS] {
            cuts[at::STRAPS] = formula::cut_strength(self.other_net(last), self.narrow_net(last));
        }
        cuts
    }

    /// The weakest net section of each member.
    #[inline(always)]
    fn least_net<S: Shape>(&self, fixed: &Fixed) -> f64 {
        let n = S::densest(&fixed.rivets);
        let least = math::smaller(self.plate_net(n), self.other_net(n));
        let apart = S::KIND == JointKind::DoubleStrap && !S::ALIKE;
        if apart { math::smaller(least, self.narrow_net(n)) } else { least }
    }
}

/// The least cut and its number, as a single check goes through them: a later one only where it is lower by more than
/// the tolerance.
#[inline(always)]
fn governing(cuts: &[f64; SLOTS], numbers: &[u64; SLOTS], has: [bool; SLOTS]) -> (f64, u64) {
    let (mut least, mut number) = (Weakest::new(cuts[at::OUTER]), numbers[at::OUTER]);
    for slot in 1..SLOTS {
        if has[slot] {
            let (weaker, lower) = least.or(Weakest::new(cuts[slot]));
            least = weaker;
            number = if lower { numbers[slot] } else { number };
        }
    }
    (least.value, number)
}

/// Cuts that a book or missing straps take away are infinite.
#[inline(always)]
fn barred(cuts: &[f64; SLOTS], bars: &[f64; SLOTS]) -> [f64; SLOTS] {
    let mut seen = *cuts;
    for slot in 0..SLOTS {
        seen[slot] = cuts[slot] + bars[slot];
    }
    seen
}

/// A number whose sign says that cuts that are left out may not be above those that are looked at, for cuts with these
/// rivets and this least strength.
///
/// Where rows and straps are alike and a single check looks at all slots ([`Eyes::Own`] may not), they always are: each
/// net section is itself a slot or half of one. All rivets are a slot too, of `N` in all, and the strength is not
/// above it: so a rivet has at least `1/N` of the strength, and one plane of it half of that. `N` is below a thousand.
#[inline(always)]
fn doubtful<S: Shape>(rivet: &Rivet, least_net: f64, strength: f64, strap_tied: bool) -> i64 {
    let least = strength * MARGIN;
    let mut sign = bits(least_net - least);
    if S::KIND != JointKind::DoubleStrap || S::SINGLE > 0 {
        sign |= bits(rivet.single - least);
    }
    if S::KIND == JointKind::DoubleStrap {
        sign |= bits(rivet.narrow - least);
        if !S::ALIKE {
            sign |= bits(rivet.other - least);
        }
        if S::THINNED || S::SINGLE > 0 {
            sign |= bits(rivet.both - rivet.narrow) | bits(rivet.both - rivet.other);
        }
        if S::SINGLE > 0 {
            let gap = (rivet.both - rivet.narrow) - strength * APART;
            sign |= if strap_tied { 0 } else { bits(gap) };
        }
    }
    sign
}

/// The number of a mode, or [`NO_MODE`] where the sign of `unclear` is set.
#[inline(always)]
fn unless(unclear: i64, number: u64) -> u16 {
    (number | (unclear >> 63).cast_unsigned()) as u16 & NO_MODE
}

/// Works a chunk of rows out.
#[inline(always)]
pub fn chunk<S: Shape, const EYES: u8, const W: usize>(fixed: &Fixed, chunk: &Chunk<'_, W>, mut found: Finds<'_, W>) {
    const { assert!(W.is_multiple_of(BLOCK)) };
    let view = View::new(fixed, chunk);
    for at in 0..W / BLOCK {
        found.put(fixed, at, block::<S, EYES>(fixed, &view.block(at)));
    }
}

/// Works a block of rows out: efficiencies over all modes and by the book, numbers of modes.
#[inline(always)]
fn block<S: Shape, const EYES: u8>(
    fixed: &Fixed,
    view: &View<'_, BLOCK>,
) -> ([f64; BLOCK], [f64; BLOCK], [u16; BLOCK]) {
    let no_straps = {
        let mut has = S::HAS;
        has[at::OTHER] = false;
        has[at::WITH_OTHER] = false;
        has[at::WITH_NARROW] = false;
        has[at::NARROW] = false;
        has[at::STRAPS] = false;
        has
    };
    let own = EYES == Eyes::Own as u8;
    let sure = !own && !S::THINNED && S::SINGLE == 0 && (S::KIND != JointKind::DoubleStrap || S::ALIKE);
    let hole = view.columns[2];
    let (mut efficiencies, mut books, mut modes) = ([0.0; BLOCK], [0.0; BLOCK], [0; BLOCK]);
    for i in 0..BLOCK {
        let lane = Lane::of::<S, BLOCK>(own, view, i);
        let solid = lane.solid(S::KIND == JointKind::Lap);
        let one =
            if own { lane.rivet_of::<S, true>(fixed, 1.0, true) } else { lane.rivet_of::<S, false>(fixed, 1.0, true) };
        let cuts = lane.cuts::<S>(fixed, &one);
        let tied = one.both == one.narrow;
        let numbers = lane.numbers::<S>(fixed, tied);
        let seen = if own { barred(&cuts, &fixed.bars[0]) } else { cuts };
        let (strength, number) = governing(&seen, &numbers, S::HAS);
        let efficiency = formula::efficiency(strength, solid);
        // Where the efficiency and the net sections are above the margin, the holes leave enough of the strip: more
        // than MARGIN x MARGIN of it.
        let mut unclear = if own { bits(lane.room(S::densest(&fixed.rivets), hole[i])) } else { 0 };
        if !sure {
            unclear |= doubtful::<S>(&one, lane.least_net::<S>(fixed), strength, tied);
        }
        let mut book = efficiency;
        if EYES == Eyes::NoStraps as u8 {
            book = formula::efficiency(governing(&cuts, &numbers, no_straps).0, solid);
        }
        efficiencies[i] = efficiency;
        books[i] = book;
        modes[i] = unless(unclear, number);
    }
    if own && fixed.twice {
        for i in 0..BLOCK {
            let lane = Lane::of::<S, BLOCK>(own, view, i);
            let one = lane.rivet_of::<S, true>(fixed, fixed.seam, fixed.crush);
            let tied = one.both == one.narrow;
            let seen = barred(&lane.cuts::<S>(fixed, &one), &fixed.bars[1]);
            let (strength, _) = governing(&seen, &lane.numbers::<S>(fixed, tied), S::HAS);
            books[i] = formula::efficiency(strength, lane.solid(S::KIND == JointKind::Lap));
            let unclear = doubtful::<S>(&one, lane.least_net::<S>(fixed), strength, tied);
            modes[i] = unless(unclear, u64::from(modes[i]));
        }
    }
    (efficiencies, books, modes)
}
