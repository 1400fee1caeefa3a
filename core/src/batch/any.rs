//! One joint of any form, cut by cut over a chunk of rows.
//!
//! Where no kernel is compiled for a form, its cuts that can govern ([`cuts`](super::cuts)) are added up one after the
//! other, each over all rows of a chunk at once. The figures come from the formula bodies, in the order of a single
//! check, so the bits are the same. Here is also what no compiled kernel knows: shear-out at the margin, rows that lie
//! too close, an even share of the load.
#![allow(
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    clippy::needless_range_loop,
    reason = "arrays and loops of constant length: nothing is out of bounds, and the compiler knows it; lanes are numbers"
)]

use super::Sweep;
use super::chunk::{BACK, Chunk, Finds, Fixed, MARGIN_COLUMN, PLATE_SHEAR, View};
use super::cuts::{Cuts, Pieces, reach};
use super::kernel::{Lane, MARGIN};
use super::table::NO_MODE;
use crate::formula;
use crate::joint::{Arrangement, Form, JointKind, MAX_ROWS};
use crate::math;
use crate::modes::Cut;
use crate::proportion;
use crate::rules::{CloseRows, Diameter, Entry, Rules};
use crate::step::Plain;

/// What is the same in all rows, besides [`Fixed`].
#[derive(Clone, Copy, Debug)]
pub struct Any {
    rows: u8,
    lap: bool,
    first_double: u8,
    /// Whether plate B or the straps are known.
    other: bool,
    narrow: bool,
    /// Whether shear-out is a fate.
    out: bool,
    close: CloseRows,
    share: bool,
    /// The cuts of the joint as it is, and those that the book counts.
    real: Cuts,
    counted: Cuts,
    /// Whether the book has its own figures for the rivets.
    own: bool,
}

/// What is given of a sweep, for [`Any::new`].
#[derive(Clone, Copy)]
pub struct Given {
    pub straps: bool,
    /// Distances of rows.
    pub placed: bool,
    /// Shear stress and margin both.
    pub out: bool,
    /// Whether the book has its own figures for the rivets.
    pub own: bool,
}

impl Any {
    pub fn new(form: &Form, rules: &Rules, given: Given) -> Self {
        let lap = form.kind() == JointKind::Lap;
        let double = form.kind() == JointKind::DoubleStrap;
        let pieces = Pieces::new(form, rules, given.straps, given.placed);
        let close = match rules.close_rows() {
            CloseRows::Stagger if form.arrangement() == Arrangement::Chain => CloseRows::Finding,
            close if given.placed => close,
            _ => CloseRows::Finding,
        };
        let byte = |n: usize| u8::try_from(n).unwrap_or(u8::MAX);
        Any {
            rows: byte(form.row_count()),
            lap,
            first_double: byte(form.first_double_row()),
            other: given.straps || lap,
            narrow: given.straps && double,
            out: given.out,
            close,
            share: rules.on(Entry::INNER_SHARE),
            real: pieces.governing(|_| true),
            counted: pieces.governing(|cut| crate::check::counts(rules, form, cut)),
            own: given.own,
        }
    }
}

/// Net sections of the members and rows of rivets by their planes, lane by lane.
pub struct Strengths<const W: usize> {
    net: [[[f64; W]; MAX_ROWS]; 3],
    hold: [[[f64; W]; MAX_ROWS]; 3],
    /// The least net section, and the least rivet.
    least_net: [f64; W],
    least_rivet: [f64; W],
    /// All rivets that there are.
    all: f64,
}

/// The row of a member that tears, from 1; none where it stays whole.
#[inline(always)]
fn of_row<const W: usize>(rows: &[[f64; W]; MAX_ROWS], row: usize) -> Option<&[f64; W]> {
    rows.get(row.wrapping_sub(1))
}

/// Most pieces that are added up at once.
const AT_ONCE: usize = 4;

/// The pieces of a cut: so many are added up already.
struct Sum<'s, const W: usize> {
    pieces: heapless::Vec<&'s [f64; W], { MAX_ROWS + 3 }>,
}

impl<'s, const W: usize> Sum<'s, W> {
    #[inline(always)]
    fn new() -> Self {
        Sum { pieces: heapless::Vec::new() }
    }

    /// One more; there is room for all that a cut can have.
    #[inline(always)]
    fn add(&mut self, piece: &'s [f64; W]) {
        let _ = self.pieces.push(piece);
    }
}

/// The least cut so far and its number.
struct Least<const W: usize> {
    value: [f64; W],
    number: [u64; W],
}

impl<const W: usize> Least<W> {
    /// Takes a cut where it is lower.
    #[inline(always)]
    fn take(&mut self, sum: &Sum<'_, W>, number: u64) {
        match sum.pieces.as_slice() {
            [a] => self.lower([a], number),
            [a, b] => self.lower([a, b], number),
            [a, b, c] => self.lower([a, b, c], number),
            [a, b, c, d] => self.lower([a, b, c, d], number),
            [a, b, c, d, rest @ ..] => {
                let mut sum = [0.0; W];
                for i in 0..W {
                    sum[i] = added([a, b, c, d], i);
                }
                let (threes, left) = rest.as_chunks::<{ AT_ONCE - 1 }>();
                for [b, c, d] in threes {
                    for i in 0..W {
                        let next = formula::cut_strength(sum[i], b[i]);
                        sum[i] = formula::cut_strength(formula::cut_strength(next, c[i]), d[i]);
                    }
                }
                match left {
                    [b] => self.lower([&sum, b], number),
                    [b, c] => self.lower([&sum, b, c], number),
                    _ => self.lower([&sum], number),
                }
            }
            [] => {}
        }
    }

    #[inline(always)]
    fn lower<const K: usize>(&mut self, pieces: [&[f64; W]; K], number: u64) {
        for i in 0..W {
            self.against(i, added(pieces, i), number);
        }
    }

    /// Takes a net section that bears the whole load less the even share of the rivets outside.
    #[inline(always)]
    fn shared(&mut self, net: &Sum<'_, W>, all: f64, outside: f64, number: u64) {
        let Some(net) = net.pieces.first() else { return };
        for i in 0..W {
            self.against(i, formula::even_share(net[i], all, outside), number);
        }
    }

    /// A later cut only where it is lower by more than the tolerance.
    #[inline(always)]
    fn against(&mut self, i: usize, value: f64, number: u64) {
        let lower = math::below_positive(value, self.value[i]);
        self.value[i] = if lower { value } else { self.value[i] };
        self.number[i] = if lower { number } else { self.number[i] };
    }
}

/// The sum of pieces in their order, in one lane.
#[inline(always)]
fn added<const K: usize, const W: usize>(pieces: [&[f64; W]; K], i: usize) -> f64 {
    let mut sum = pieces[0][i];
    for piece in pieces.iter().skip(1) {
        sum = formula::cut_strength(sum, piece[i]);
    }
    sum
}

/// A kind of rivet: its planes, and at which margins it stands.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Place {
    double: bool,
    /// Of the plate, of plate B or the wide strap, of the narrow strap.
    edges: [bool; 3],
}

impl<const W: usize> Strengths<W> {
    /// Room for a chunk.
    #[inline(always)]
    pub fn new() -> Self {
        Strengths {
            net: [[[0.0; W]; MAX_ROWS]; 3],
            hold: [[[0.0; W]; MAX_ROWS]; 3],
            least_net: [f64::INFINITY; W],
            least_rivet: [f64::INFINITY; W],
            all: 0.0,
        }
    }

    /// What the rivets hold, by the real figures or the book's own.
    #[inline(always)]
    fn rivets(&mut self, any: &Any, fixed: &Fixed, chunk: &Chunk<'_, W>, seam: f64, crush: bool) {
        let mut before: Option<Place> = None;
        let mut one = [[0.0; W]; 3];
        self.least_rivet = [f64::INFINITY; W];
        let [all, other, narrow] = &mut self.hold;
        let slots = all.iter_mut().zip(other.iter_mut()).zip(narrow.iter_mut());
        for ((slots, n), row) in slots.zip(fixed.rivets).zip(1..=any.rows) {
            let edges = [row == any.rows, row == 1, row == any.first_double];
            let known = [true, any.other, any.narrow];
            let mut place = Place { double: row >= any.first_double, edges: [false; 3] };
            for ((edge, known), slot) in edges.into_iter().zip(known).zip(place.edges.iter_mut()) {
                *slot = edge && known && any.out && crush;
            }
            if before != Some(place) {
                match (place.double, place.edges == [false; 3]) {
                    (true, true) => ones::<true, false, W>(fixed, chunk, place, seam, crush, &mut one),
                    (true, false) => ones::<true, true, W>(fixed, chunk, place, seam, crush, &mut one),
                    (false, true) => ones::<false, false, W>(fixed, chunk, place, seam, crush, &mut one),
                    (false, false) => ones::<false, true, W>(fixed, chunk, place, seam, crush, &mut one),
                }
                for i in 0..W {
                    let least = math::smaller(math::smaller(one[0][i], one[1][i]), one[2][i]);
                    self.least_rivet[i] = math::smaller(self.least_rivet[i], least);
                }
                before = Some(place);
            }
            let ((a, b), c) = slots;
            for i in 0..W {
                a[i] = formula::row_hold(n, one[0][i]);
                b[i] = formula::row_hold(n, one[1][i]);
                c[i] = formula::row_hold(n, one[2][i]);
            }
        }
        self.all = fixed.rivets.iter().fold(0.0, |sum, n| sum + n);
    }

    #[inline(always)]
    fn nets(&mut self, any: &Any, fixed: &Fixed, chunk: &Chunk<'_, W>, crowding: &[f64; W]) {
        let [pitch, plate, _, tension, _, _, other, narrow, other_tension, ..] = *chunk;
        let tear = View::new(fixed, chunk).tear.map(|d| formula::deducted(d, fixed.allowance));
        self.least_net = [f64::INFINITY; W];
        let members = [
            (true, plate, tension, 1, 1),
            (any.other, other, other_tension, 1, if any.lap { any.rows } else { 0 }),
            (any.narrow, narrow, other_tension, any.first_double, 0),
        ];
        for ((rows, (known, t, st, first, outer)), outside_first) in
            self.net.iter_mut().zip(members).zip([true, false, false])
        {
            if !known {
                continue;
            }
            for ((slot, n), row) in rows.iter_mut().zip(fixed.rivets).zip(1..=any.rows) {
                if row < first {
                    continue;
                }
                if any.close == CloseRows::ModifiedPercentage && row == outer {
                    for i in 0..W {
                        let n = formula::crowded_holes(crowding[i], n);
                        slot[i] = formula::net_section(pitch[i], n, tear[i], t[i], st[i]);
                    }
                } else {
                    for i in 0..W {
                        slot[i] = formula::net_section(pitch[i], n, tear[i], t[i], st[i]);
                    }
                }
                let next = if outside_first { row.wrapping_add(1) } else { row.wrapping_sub(1) };
                if any.close == CloseRows::Stagger && next >= first && next <= any.rows {
                    let m = fixed.rivets.get(usize::from(next).wrapping_sub(1)).copied().unwrap_or(0.0);
                    let (few, many) = if n < m { (n, m) } else { (m, n) };
                    for i in 0..W {
                        let gain = formula::zigzag_gain(2.0 * few, chunk[BACK][i], formula::gauge(pitch[i], many));
                        let path = formula::zigzag_net_section(pitch[i], n, tear[i], m, tear[i], gain, t[i], st[i]);
                        slot[i] = math::smaller(slot[i], path);
                    }
                }
                for i in 0..W {
                    self.least_net[i] = math::smaller(self.least_net[i], slot[i]);
                }
            }
        }
    }

    /// The least of these cuts and its number, as a single check goes through them: net sections, then rows from the
    /// outside.
    #[inline(always)]
    fn governing(&self, any: &Any, fixed: &Fixed, cuts: &Cuts) -> Least<W> {
        let [plates, others, narrows] = &self.net;
        let mut least = Least { value: plates[0], number: [0; W] };
        let rows = usize::from(any.rows);
        let last = if any.other { rows } else { 0 };
        let (mut group, mut base) = (cuts.groups(), 0_u64);
        let mut narrow = 0;
        loop {
            for other in 0..=last {
                let mut left = group.next().unwrap_or(0);
                let first = base;
                base += (rows + 1) as u64;
                if left == 0 {
                    continue;
                }
                let reaches = self.reaches(any, other as u8, narrow as u8);
                let torn = [of_row(others, other), of_row(narrows, narrow)];
                while left != 0 {
                    let way = left.trailing_zeros() as usize;
                    left &= left.wrapping_sub(1);
                    let plate = if way == rows { 0 } else { way + 1 };
                    let mut pieces = Sum::new();
                    for net in [of_row(plates, plate)].into_iter().chain(torn).flatten() {
                        pieces.add(net);
                    }
                    let this = first + way as u64;
                    let alone = torn[1].is_none() && (torn[0].is_none() || (any.lap && other != rows));
                    if any.share && alone && ((plate > 1 && other == 0) || (plate == 0 && other > 0)) {
                        let from = if plate > 0 { 0..plate - 1 } else { other..rows };
                        let outside = fixed.rivets.get(from).unwrap_or(&[]);
                        let outside = outside.iter().fold(0.0, |sum, n| formula::cut_strength(sum, *n));
                        least.shared(&pieces, self.all, outside, this);
                        continue;
                    }
                    let loaded = if plate == 0 { rows } else { plate - 1 };
                    for hold in reaches.iter().take(loaded).flatten() {
                        pieces.add(hold);
                    }
                    least.take(&pieces, this);
                }
            }
            narrow = if narrow == 0 { usize::from(any.first_double) } else { narrow + 1 };
            if !any.narrow || narrow > rows {
                break;
            }
        }
        least
    }

    /// The rows of rivets that are on a cut by the straps, or plate B, that tear.
    #[inline(always)]
    fn reaches(&self, any: &Any, other: u8, narrow: u8) -> [Option<&[f64; W]>; MAX_ROWS] {
        let mut reaches = [None; MAX_ROWS];
        for ((slot, row), at) in reaches.iter_mut().zip(1..=any.rows).zip(0..) {
            let reach = reach(Cut { plate: 0, other, narrow }, row, any.first_double);
            *slot = reach.and_then(|reach| self.hold.get(reach)).and_then(|rows: &[[f64; W]; MAX_ROWS]| rows.get(at));
        }
        reaches
    }

    /// Whether the cuts that are left out are above the least one.
    #[inline(always)]
    fn safe(&self, lane: usize, strength: f64) -> bool {
        let least = strength * MARGIN;
        (self.least_net[lane] > least) & (self.least_rivet[lane] >= least)
    }
}

/// One rivet of a place in its weakest fate, with all planes on the cut, with the wide strap's, with the narrow one's.
#[inline(always)]
fn ones<const DOUBLE: bool, const OUT: bool, const W: usize>(
    fixed: &Fixed,
    chunk: &Chunk<'_, W>,
    place: Place,
    seam: f64,
    crush: bool,
    one: &mut [[f64; W]; 3],
) {
    let view = View::new(fixed, chunk);
    let [all, other, narrow] = one;
    for i in 0..W {
        let lane = Lane::new(&view, i);
        let mut outs = [f64::INFINITY; 3];
        if OUT {
            let (m, d, sp) = (chunk[MARGIN_COLUMN][i], chunk[2][i], chunk[PLATE_SHEAR][i]);
            for (out, (t, edge)) in
                outs.iter_mut().zip([lane.plate, lane.other, lane.narrow].into_iter().zip(place.edges))
            {
                let holds = formula::shear_out(m, d, t, sp);
                *out = if edge { holds } else { f64::INFINITY };
            }
        }
        let rivet = lane.rivet::<DOUBLE, true, false>(fixed, seam, crush, outs);
        if DOUBLE {
            (all[i], other[i], narrow[i]) = (rivet.both, rivet.other, rivet.narrow);
        } else {
            (all[i], other[i], narrow[i]) = (rivet.single, rivet.single, rivet.single);
        }
    }
}

/// How much closer than prescribed the closest rows lie: actual over prescribed; 1 where none is closer.
#[inline(never)]
fn crowding<const W: usize>(sweep: &Sweep<'_>, chunk: &Chunk<'_, W>) -> [f64; W] {
    let (form, rules) = (sweep.form, sweep.rules);
    let [pitch, _, hole, _, _, rivet, ..] = chunk;
    let d = if rules.diameter(Entry::DISTANCE_DIAMETER) == Diameter::Hole { hole } else { rivet };
    let mut worst = [1.0; W];
    let mut before = None;
    for row in 1..form.row_count() {
        let pair = (form.row(row).rivets, form.row(row.wrapping_add(1)).rivets);
        if before == Some(pair) {
            continue;
        }
        before = Some(pair);
        for i in 0..W {
            let (least, _) = proportion::row_gap(Plain, rules, form, pitch[i], row, d[i], d[i]);
            let actual = chunk[BACK][i];
            if math::below(actual, least) {
                worst[i] = math::smaller(worst[i], formula::gap_ratio(actual, least));
            }
        }
    }
    worst
}

/// Works a chunk of rows out; the book's figures only where they are asked for.
#[inline(always)]
pub fn chunk<const W: usize>(
    sweep: &Sweep<'_>,
    any: &Any,
    fixed: &Fixed,
    chunk: &Chunk<'_, W>,
    book: bool,
    strengths: &mut Strengths<W>,
    mut found: Finds<'_, W>,
) {
    let crowding = if any.close == CloseRows::ModifiedPercentage { crowding(sweep, chunk) } else { [1.0; W] };
    strengths.nets(any, fixed, chunk, &crowding);
    strengths.rivets(any, fixed, chunk, 1.0, true);
    let view = View::new(fixed, chunk);
    let hole = chunk[2];
    let Least { value: strength, number } = strengths.governing(any, fixed, &any.real);
    let (mut efficiencies, mut modes) = ([0.0; W], [0; W]);
    for i in 0..W {
        let lane = Lane::new(&view, i);
        efficiencies[i] = formula::efficiency(strength[i], lane.solid(any.lap));
        let sound = (lane.room(fixed.densest, hole[i]) > 0.0) & strengths.safe(i, strength[i]);
        modes[i] = if sound { number[i] as u16 } else { NO_MODE };
    }
    let mut books = efficiencies;
    if book && (any.own || any.counted != any.real) {
        if any.own {
            strengths.rivets(any, fixed, chunk, fixed.seam, fixed.crush);
        }
        let strength = strengths.governing(any, fixed, &any.counted).value;
        for i in 0..W {
            let lane = Lane::new(&view, i);
            books[i] = formula::efficiency(strength[i], lane.solid(any.lap));
            modes[i] = if strengths.safe(i, strength[i]) { modes[i] } else { NO_MODE };
        }
    }
    found.put(fixed, 0, (efficiencies, books, modes));
}
