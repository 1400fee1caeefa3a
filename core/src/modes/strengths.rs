//! The pieces that cuts are made of: net sections by row, and what the rivets of each row hold.

use super::rivets::{Fate, Reach, rivet_fates};
use crate::error::EntryNo;
use crate::formula::{self, Formula};
use crate::given::{Given, pick};
use crate::joint::{Arrangement, Joint, JointKind, MAX_ROWS};
use crate::materials::Materials;
use crate::math;
use crate::proportion;
use crate::rules::{CloseRows, Entry, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Section, Why};

/// Which eyes a joint is seen with.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Lens {
    /// As it is: every fate that a stress was given for.
    Real,
    /// As the rule book counts it: without bearing where the book has no such check, and with the book's factor on
    /// the rivets.
    Book,
}

/// Net sections and rows of a joint, newtons.
#[derive(Clone, Copy, Debug)]
pub struct Strengths<N> {
    pub(super) rows: usize,
    pub(super) lap: bool,
    pub(super) even_share: bool,
    pub(super) first_double: usize,
    /// Whether plate B or the wide strap, and the narrow strap, have net sections.
    pub(super) tears: [bool; 2],
    /// Net sections by row: the plate, plate B or the wide strap, the narrow strap.
    pub(super) net: [[N; MAX_ROWS]; 3],
    /// Rows by [`Reach`].
    pub(super) hold: [[N; MAX_ROWS]; 3],
    pub(super) fate: [[Fate; MAX_ROWS]; 3],
    pub(super) rivets: [N; MAX_ROWS],
    pub(super) all_rivets: N,
    /// Rows whose net section follows the zig-zag, one bit a row for each member.
    pub(super) zigzag: [u8; 3],
    /// The solid strip: least thickness times tension of the main plates.
    pub solid: N,
    /// Tearing at the outer row, the least of the main plates.
    pub tear_outer: N,
    /// All rivets in shear.
    pub shear_all: N,
    /// All rivets in bearing; `None` without a bearing stress.
    pub bearing_all: Option<N>,
}

/// The distances between rows that the book prescribes, by gap, mm.
#[inline]
pub fn prescribed_gaps<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules) -> [(C::N, Entry); MAX_ROWS] {
    let mut gaps = [(C::N::lit(0.0), Entry::BACK_CHAIN); MAX_ROWS];
    for (row, slot) in (1..joint.form.row_count()).zip(gaps.iter_mut()) {
        *slot = prescribed_gap(c, joint, given, rules, row);
    }
    gaps
}

/// The distance from row `row` (from 1) to the next that the book prescribes, mm.
#[inline]
pub(crate) fn prescribed_gap<C: Ctx>(
    c: C,
    joint: &Joint,
    given: &Given<C::N>,
    rules: &Rules,
    row: usize,
) -> (C::N, Entry) {
    let d = |row: usize| given.diameter(rules, Entry::DISTANCE_DIAMETER, row);
    proportion::row_gap(c, rules, &joint.form, given.strip, row, d(row), d(row.wrapping_add(1)))
}

/// How much closer than prescribed the closest rows lie: actual over prescribed, under 1; `None` where none is closer.
#[inline(never)]
pub(crate) fn closest<C: Ctx>(c: C, joint: &Joint, given: &Given<C::N>, rules: &Rules) -> Option<C::N> {
    let mut worst: Option<C::N> = None;
    for ((row, at), actual) in (1..joint.form.row_count()).zip(1_u8..).zip(&joint.back) {
        let ((least, _), actual) = (prescribed_gap(c, joint, given, rules, row), *actual);
        if actual > 0.0 && math::below(actual, least.value()) {
            let g = c.given(Name(Q::RowGap, at), actual);
            let ratio = c.formula(Name(Q::RowGapRatio, at), Formula::GapRatio.no(), formula::gap_ratio(g, least));
            worst = Some(match worst {
                Some(w) => c.lesser(Name(Q::RowGapRatio, 0), Why::Least(Entry::CLOSE_ROWS.no()), w, ratio),
                None => ratio,
            });
        }
    }
    worst
}

/// One member of the joint: its thickness, its stress, and the quantity of its net section.
#[derive(Clone, Copy)]
struct Member<N> {
    q: Q,
    thickness: N,
    tension: N,
    /// The rows that it meets, from the side that carries the whole load.
    outside_first: bool,
    first_row: usize,
}

impl Lens {
    /// Whether the book sees a joint as it is: it checks bearing (or no bearing stress is given), it has no factor of
    /// its own on the rivets, and no shear-out is given that it does not know of.
    #[must_use]
    pub fn alike(materials: &Materials, rules: &Rules) -> bool {
        let plates = [&materials.plate, &materials.other];
        let bearing = plates.iter().any(|p| p.bearing.is_some() || p.shear_out.is_some());
        let sees = rules.on(Entry::BEARING_CHECKED) || !bearing;
        sees && rules.get(Entry::SEAM_SAFETY) == rules.get(Entry::SEAM_DIVISOR)
    }
}

impl<N: Num> Strengths<N> {
    /// Works out net sections and rows.
    #[inline(always)]
    pub fn new<C: Ctx<N = N>>(c: C, joint: &Joint, given: &Given<N>, rules: &Rules, lens: Lens) -> Self {
        let mut s = Self::none(joint, given, rules);
        s.work_out(c, joint, given, rules, lens);
        s
    }

    /// Nothing worked out yet.
    #[inline(never)]
    pub(crate) fn none(joint: &Joint, given: &Given<N>, rules: &Rules) -> Self {
        let form = &joint.form;
        let rows = form.row_count();
        let zero = N::lit(0.0);
        let first_double = form.first_double_row();
        Strengths {
            rows,
            lap: form.kind() == JointKind::Lap,
            even_share: rules.on(Entry::INNER_SHARE),
            first_double,
            tears: [joint.other > 0.0, joint.narrow > 0.0 && first_double <= rows],
            net: [[zero; MAX_ROWS]; 3],
            hold: [[zero; MAX_ROWS]; 3],
            fate: [[Fate::Whole; MAX_ROWS]; 3],
            rivets: given.rivets,
            all_rivets: zero,
            zigzag: [0; 3],
            solid: zero,
            tear_outer: zero,
            shear_all: zero,
            bearing_all: None,
        }
    }

    /// In place: a second copy of these figures is a quarter of what a small machine has for its stack.
    #[inline(never)]
    pub(crate) fn work_out<C: Ctx<N = N>>(&mut self, c: C, joint: &Joint, given: &Given<N>, rules: &Rules, lens: Lens) {
        self.all_rivets = c.given(Name(Q::RivetsInAll, 0), f64::from(joint.form.rivets()));
        c.section(if lens == Lens::Book { Section::BookView } else { Section::Rivets });
        self.rivets_by_row(c, joint, given, rules, lens);
        c.section(if lens == Lens::Book { Section::BookView } else { Section::NetSections });
        let crowded = match rules.close_rows() {
            CloseRows::ModifiedPercentage => closest(c, joint, given, rules),
            _ => None,
        };
        self.net_sections(c, joint, given, rules, crowded);
        self.solid =
            c.formula(Name(Q::Solid, 0), Formula::Solid.no(), formula::solid(given.strip, given.plate, given.tension));
        let [plate, other, _] = &self.net;
        self.tear_outer = pick(plate, 1);
        if self.lap {
            let b = c.formula(
                Name(Q::OtherSolid, 0),
                Formula::Solid.no(),
                formula::solid(given.strip, given.other, given.other_tension),
            );
            let outer = pick(other, self.rows);
            self.solid = c.lesser(Name(Q::Solid, 0), Why::Least(EntryNo::NONE), self.solid, b);
            self.tear_outer = c.lesser(Name(Q::TearOuter, 0), Why::Least(EntryNo::NONE), self.tear_outer, outer);
        }
    }

    /// Whether every rivet fails as in another joint of the same form, and every net section runs as there.
    pub(crate) fn fates_as(&self, other: &Self) -> bool {
        self.fate == other.fate && self.zigzag == other.zigzag
    }

    #[inline(never)]
    fn rivets_by_row<C: Ctx<N = N>>(&mut self, c: C, joint: &Joint, given: &Given<N>, rules: &Rules, lens: Lens) {
        let seam = if lens == Lens::Book && rules.get(Entry::SEAM_SAFETY) != rules.get(Entry::SEAM_DIVISOR) {
            let f = c.table(Name(Q::SeamSafety, 0), Entry::SEAM_SAFETY.no(), rules.get(Entry::SEAM_SAFETY));
            let f1 = c.table(Name(Q::SeamDivisor, 0), Entry::SEAM_DIVISOR.no(), rules.get(Entry::SEAM_DIVISOR));
            Some(c.formula(Name(Q::SeamRatio, 0), Formula::SafetyRatio.no(), formula::safety_ratio(f, f1)))
        } else {
            None
        };
        let bearing = lens == Lens::Real || rules.on(Entry::BEARING_CHECKED);
        let mut shear_all: Option<N> = None;
        let mut bearing_all: Option<N> = Some(N::lit(0.0));
        for row in 1..=self.rows {
            let at = u8::try_from(row).unwrap_or(0);
            let index = row.wrapping_sub(1);
            let fates = rivet_fates(c, joint, given, rules, row, seam, bearing);
            let n = given.rivets_in(row);
            let planes = joint.form.row(row).planes;
            let double = planes == 2;
            let full = if double { Reach::Both } else { Reach::Other };
            let holds = |q: Q, reach: Reach| {
                let (one, fate) = fates.weakest(c, at, planes, reach);
                (c.formula(Name(q, at), Formula::RowHold.no(), formula::row_hold(n, one)), fate)
            };
            let whole = holds(Q::RowRivetsHold, full);
            for reach in [Reach::Both, Reach::Other, Reach::Narrow] {
                // A rivet in single shear has one plane: one line of the working says all.
                let (held, fate) = match reach {
                    Reach::Other if double => holds(Q::RowHoldOther, reach),
                    Reach::Narrow if double => holds(Q::RowHoldNarrow, reach),
                    _ => whole,
                };
                if let (Some(h), Some(f)) = (
                    self.hold.get_mut(reach as usize).and_then(|r| r.get_mut(index)),
                    self.fate.get_mut(reach as usize).and_then(|r| r.get_mut(index)),
                ) {
                    *h = held;
                    *f = fate;
                }
            }
            // The sums so far are closed row by row, so that one line of the working stays short.
            let [other, _, both] = fates.shear;
            let shear = formula::row_hold(n, if double { both } else { other });
            let shear = shear_all.map_or(shear, |sum| formula::cut_strength(sum, shear));
            shear_all = Some(c.formula(Name(Q::ShearAll, at), Formula::CutStrength.no(), shear));
            bearing_all = match (bearing_all, fates.crush(c, at, full)) {
                (Some(sum), Some(one)) => {
                    let crush = formula::row_hold(n, one);
                    let crush = if row == 1 { crush } else { formula::cut_strength(sum, crush) };
                    Some(c.formula(Name(Q::BearingAll, at), Formula::CutStrength.no(), crush))
                }
                _ => None,
            };
        }
        self.shear_all = shear_all.unwrap_or(N::lit(0.0));
        self.bearing_all = bearing_all;
    }

    /// Every member's net section in every row that it meets; `crowded` is how much closer than prescribed the closest
    /// rows lie.
    #[inline(never)]
    fn net_sections<C: Ctx<N = N>>(
        &mut self,
        c: C,
        joint: &Joint,
        given: &Given<N>,
        rules: &Rules,
        crowded: Option<N>,
    ) {
        for which in [Q::PlateTear, Q::OtherTear, Q::NarrowTear] {
            let plate = which == Q::PlateTear;
            let (thickness, tension) = match which {
                Q::PlateTear => (given.plate, given.tension),
                Q::OtherTear if joint.other > 0.0 => (given.other, given.other_tension),
                Q::NarrowTear if joint.narrow > 0.0 => (given.narrow, given.other_tension),
                _ => continue,
            };
            let first_row = if which == Q::NarrowTear { self.first_double } else { 1 };
            let member = Member { q: which, thickness, tension, outside_first: plate, first_row };
            self.net_sections_of(c, joint, given, rules, crowded, &member);
        }
    }

    #[inline(never)]
    fn net_sections_of<C: Ctx<N = N>>(
        &mut self,
        c: C,
        joint: &Joint,
        given: &Given<N>,
        rules: &Rules,
        crowded: Option<N>,
        member: &Member<N>,
    ) {
        // The row that takes the whole load of a main plate: Reg. 184(d) corrects that one.
        let (of, outer) = match member.q {
            Q::PlateTear => (0, 1),
            Q::OtherTear => (1, if self.lap { self.rows } else { 0 }),
            _ => (2, 0),
        };
        for row in member.first_row..=self.rows {
            let at = u8::try_from(row).unwrap_or(0);
            let name = Name(member.q, at);
            let d = deducted(c, given, rules, row);
            let mut n = given.rivets_in(row);
            if let Some(ratio) = crowded.filter(|_| row == outer) {
                n = c.formula(Name(Q::HolesCounted, at), Formula::CrowdedHoles.no(), formula::crowded_holes(ratio, n));
            }
            let straight = formula::net_section(given.strip, n, d, member.thickness, member.tension);
            let mut net = held(c, name, c.formula(name, Formula::NetSection.no(), straight));
            let next = if member.outside_first { row.wrapping_add(1) } else { row.wrapping_sub(1) };
            let meets = next >= member.first_row && next <= self.rows;
            if meets && let Some(path) = zigzag_section(c, joint, given, rules, member, row, next) {
                if path.value() < net.value()
                    && let Some(zigzag) = self.zigzag.get_mut(of)
                {
                    *zigzag |= 1_u8.wrapping_shl(u32::from(at).wrapping_sub(1));
                }
                net = c.lesser(name, Why::Least(Entry::CLOSE_ROWS.no()), net, path);
            }
            if let Some(slot) = self.net.get_mut(of).and_then(|rows| rows.get_mut(row.wrapping_sub(1))) {
                *slot = net;
            }
        }
    }
}

/// The diameter that a hole of a row takes from a net section.
#[inline]
pub(crate) fn deducted<C: Ctx>(c: C, given: &Given<C::N>, rules: &Rules, row: usize) -> C::N {
    let d = given.diameter(rules, Entry::TEAR_DIAMETER, row);
    let allowance = rules.get(Entry::TEAR_ALLOWANCE);
    if allowance > 0.0 {
        let allowance = c.table(Name(Q::Allowance, 0), Entry::TEAR_ALLOWANCE.no(), allowance);
        let at = u8::try_from(row).unwrap_or(0);
        c.formula(Name(Q::TearDiameter, at), Formula::Deducted.no(), formula::deducted(d, allowance))
    } else {
        d
    }
}

/// The net section along the zig-zag from row `row` to its neighbour `next`, where the book asks for it and the row
/// distance is known.
#[inline]
fn zigzag_section<C: Ctx>(
    c: C,
    joint: &Joint,
    given: &Given<C::N>,
    rules: &Rules,
    member: &Member<C::N>,
    row: usize,
    next: usize,
) -> Option<C::N> {
    if rules.close_rows() != CloseRows::Stagger || joint.form.arrangement() != Arrangement::Zigzag {
        return None;
    }
    let (outside, inside) = if row < next { (row, next) } else { (next, row) };
    let gap = joint.back_pitch(outside)?;
    let at = u8::try_from(row).unwrap_or(0);
    let (n1, n2) = (joint.form.row(outside).rivets, joint.form.row(inside).rivets);
    let (few, many) = if n1 < n2 { (n1, n2) } else { (n2, n1) };
    let g = c.given(Name(Q::RowGap, u8::try_from(outside).unwrap_or(0)), gap.to_mm());
    let many_rivets = C::N::lit(f64::from(many));
    let q = c.formula(Name(Q::Gauge, at), Formula::Gauge.no(), formula::gauge(given.strip, many_rivets));
    // Each hole of the thinner row is reached and left by a diagonal.
    let diagonals = C::N::lit(2.0 * f64::from(few));
    let x = c.formula(Name(Q::ZigzagGain, at), Formula::ZigzagGain.no(), formula::zigzag_gain(diagonals, g, q));
    let (d1, d2) = (deducted(c, given, rules, row), deducted(c, given, rules, next));
    let path = formula::zigzag_net_section(
        given.strip,
        given.rivets_in(row),
        d1,
        given.rivets_in(next),
        d2,
        x,
        member.thickness,
        member.tension,
    );
    let name = Name(Q::ZigzagTear, at);
    Some(held(c, name, c.formula(name, Formula::ZigzagNetSection.no(), path)))
}

/// A net section never holds less than nothing, however the book counts its holes.
#[inline]
fn held<C: Ctx>(c: C, name: Name, net: C::N) -> C::N {
    if net.value() < 0.0 { c.greater(name, Why::Floor(EntryNo::NONE), net, C::N::lit(0.0)) } else { net }
}
