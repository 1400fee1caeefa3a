//! One joint of any form, cut by cut over a chunk of rows.
//!
//! Where no kernel is compiled for a form, its cuts that can govern ([`cuts`](super::cuts)) are added up one after the
//! other, each over all rows of a chunk at once. The figures come from the formula bodies, in the order of a single
//! check, so the bits are the same. Here is also what no compiled kernel knows: shear-out at the margin, rows that lie
//! too close, an even share of the load.
#![allow(
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "arrays and loops of constant length: nothing is out of bounds, and the compiler knows it"
)]

use super::Sweep;
use super::cuts::{Cuts, Pieces, reach};
use super::kernel::{BACK, Chunk, Fixed, Found, Lane, MARGIN, MARGIN_COLUMN, PLATE_SHEAR};
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
struct Strengths<const W: usize> {
    net: [[[f64; W]; MAX_ROWS]; 3],
    hold: [[[f64; W]; MAX_ROWS]; 3],
    /// The least net section, and the least rivet.
    least_net: [f64; W],
    least_rivet: [f64; W],
    /// All rivets that there are.
    all: f64,
}

/// A kind of rivet: its planes, and at which margins it stands.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Place {
    double: bool,
    /// Of the plate, of plate B or the wide strap, of the narrow strap.
    edges: [bool; 3],
}

impl<const W: usize> Strengths<W> {
    #[inline(always)]
    fn new() -> Self {
        Strengths {
            net: [[[0.0; W]; MAX_ROWS]; 3],
            hold: [[[0.0; W]; MAX_ROWS]; 3],
            least_net: [f64::INFINITY; W],
            least_rivet: [f64::INFINITY; W],
            all: 0.0,
        }
    }

    #[inline(always)]
    fn piece(&self, of: &[[[f64; W]; MAX_ROWS]; 3], which: usize, row: u8) -> Option<[f64; W]> {
        of.get(which).and_then(|rows| rows.get(usize::from(row).wrapping_sub(1))).copied()
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
        let known = [true, any.other, any.narrow];
        for (((rows, known), member), first) in self.net.iter_mut().zip(known).zip(0_u8..).zip([1, 1, any.first_double])
        {
            if !known {
                continue;
            }
            let outer = match member {
                0 => 1,
                1 if any.lap => any.rows,
                _ => 0,
            };
            for ((slot, n), row) in rows.iter_mut().zip(fixed.rivets).zip(1..=any.rows) {
                if row < first {
                    continue;
                }
                let crowded = any.close == CloseRows::ModifiedPercentage && row == outer;
                for i in 0..W {
                    let lane = Lane::new(fixed, chunk, i);
                    let n = if crowded { formula::crowded_holes(crowding[i], n) } else { n };
                    let (t, st) = lane.member(member);
                    slot[i] = formula::net_section(lane.strip, n, lane.tear_hole, t, st);
                }
                let next = if member == 0 { row.wrapping_add(1) } else { row.wrapping_sub(1) };
                if any.close == CloseRows::Stagger && next >= first && next <= any.rows {
                    let other = fixed.rivets.get(usize::from(next).wrapping_sub(1)).copied().unwrap_or(0.0);
                    let (few, many) = if n < other { (n, other) } else { (other, n) };
                    for i in 0..W {
                        let lane = Lane::new(fixed, chunk, i);
                        let (t, st) = lane.member(member);
                        let across = formula::gauge(lane.strip, many);
                        let gain = formula::zigzag_gain(2.0 * few, chunk[BACK][i], across);
                        let d = lane.tear_hole;
                        let path = formula::zigzag_net_section(lane.strip, n, d, other, d, gain, t, st);
                        slot[i] = math::smaller(slot[i], path);
                    }
                }
                for i in 0..W {
                    self.least_net[i] = math::smaller(self.least_net[i], slot[i]);
                }
            }
        }
    }

    /// The least of these cuts and its number, as a single check goes through them.
    #[inline(always)]
    fn governing(&self, any: &Any, fixed: &Fixed, cuts: &Cuts) -> ([f64; W], [f64; W]) {
        let [[first, ..], ..] = &self.net;
        let (mut value, mut number) = (*first, [0.0; W]);
        let others = if any.other { any.rows } else { 0 };
        let (mut group, mut base) = (cuts.groups(), 0.0);
        let mut narrow = 0;
        loop {
            for other in 0..=others {
                let mut left = group.next().unwrap_or(0);
                while left != 0 {
                    let way = left.trailing_zeros();
                    left &= left.wrapping_sub(1);
                    let plate = if way == u32::from(any.rows) { 0 } else { (way as u8).wrapping_add(1) };
                    let cut = Cut { plate, other, narrow };
                    let sum = self.cut(any, fixed, cut);
                    let this = base + f64::from(way);
                    for i in 0..W {
                        let lower = math::below_positive(sum[i], value[i]);
                        value[i] = if lower { sum[i] } else { value[i] };
                        number[i] = if lower { this } else { number[i] };
                    }
                }
                base += f64::from(any.rows) + 1.0;
            }
            narrow = if narrow == 0 { any.first_double } else { narrow.wrapping_add(1) };
            if !any.narrow || narrow > any.rows {
                break;
            }
        }
        (value, number)
    }

    /// The strength of a cut: net sections, then rows from the outside.
    #[inline(always)]
    fn cut(&self, any: &Any, fixed: &Fixed, cut: Cut) -> [f64; W] {
        let mut sum = [0.0; W];
        let add = |sum: &mut [f64; W], piece: Option<[f64; W]>| {
            if let Some(piece) = piece {
                for i in 0..W {
                    sum[i] = formula::cut_strength(sum[i], piece[i]);
                }
            }
        };
        for (row, member) in [cut.plate, cut.other, cut.narrow].into_iter().zip(0..) {
            add(&mut sum, self.piece(&self.net, member, row));
        }
        let shared = match (cut.plate, cut.other, cut.narrow) {
            (row, 0, 0) if row > 1 && any.share => Some((1, row)),
            (0, row, 0) if row > 0 && row < any.rows && any.share && any.lap => {
                Some((row.wrapping_add(1), any.rows.wrapping_add(1)))
            }
            _ => None,
        };
        if let Some((from, to)) = shared {
            let outside = fixed.rivets.iter().zip(1..=any.rows).filter(|(_, row)| *row >= from && *row < to);
            let outside = outside.fold(0.0, |sum, (n, _)| formula::cut_strength(sum, *n));
            for strength in &mut sum {
                *strength = formula::even_share(*strength, self.all, outside);
            }
            return sum;
        }
        for row in 1..=any.rows {
            if cut.plate != 0 && row >= cut.plate {
                break;
            }
            if let Some(reach) = reach(cut, row, any.first_double) {
                add(&mut sum, self.piece(&self.hold, reach, row));
            }
        }
        sum
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
    let [all, other, narrow] = one;
    for i in 0..W {
        let lane = Lane::new(fixed, chunk, i);
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
        let rivet = lane.rivet::<DOUBLE>(fixed, seam, crush, outs);
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
    found: &mut Found<W>,
) {
    let crowding = if any.close == CloseRows::ModifiedPercentage { crowding(sweep, chunk) } else { [1.0; W] };
    let mut strengths = Strengths::<W>::new();
    strengths.nets(any, fixed, chunk, &crowding);
    strengths.rivets(any, fixed, chunk, 1.0, true);
    let (strength, number) = strengths.governing(any, fixed, &any.real);
    for i in 0..W {
        let lane = Lane::new(fixed, chunk, i);
        let solid = lane.solid(any.lap);
        let efficiency = formula::efficiency(strength[i], solid);
        found.efficiency[i] = efficiency;
        found.book[i] = efficiency;
        let sound = lane.sound(fixed, fixed.densest, chunk, i) & strengths.safe(i, strength[i]);
        found.mode[i] = if sound { number[i] as u16 } else { NO_MODE };
    }
    if book && (any.own || any.counted != any.real) {
        if any.own {
            strengths.rivets(any, fixed, chunk, fixed.seam, fixed.crush);
        }
        let (strength, _) = strengths.governing(any, fixed, &any.counted);
        for i in 0..W {
            let lane = Lane::new(fixed, chunk, i);
            found.book[i] = formula::efficiency(strength[i], lane.solid(any.lap));
            found.mode[i] = if strengths.safe(i, strength[i]) { found.mode[i] } else { NO_MODE };
        }
    }
    for i in 0..W {
        // The lesser of the two, the first when equal, under the cap.
        found.credited[i] = math::smaller(math::smaller(found.book[i], found.efficiency[i]), fixed.cap);
    }
}
