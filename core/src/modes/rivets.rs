//! One rivet of a row: all its fates.

use crate::error::EntryNo;
use crate::formula::{self, Formula};
use crate::given::{Given, pick};
use crate::joint::Joint;
use crate::math;
use crate::rules::{Entry, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Why};

/// How the rivets of a row fail in a mode.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
#[repr(u8)]
pub enum Fate {
    /// They do not: the row is not on the cut.
    #[default]
    Whole,
    /// They shear, in every plane that is on the cut.
    Shear,
    /// They crush the plate (plate A of a lap).
    Bearing,
    /// They crush the straps that are on the cut (plate B of a lap).
    OtherBearing,
    /// They shear in one plane and crush the strap at the other.
    Mixed,
    /// They shear out the margin of the plate.
    ShearOut,
    /// They shear out the margin of a strap (plate B of a lap).
    OtherShearOut,
}

/// Which straps are on the far side of a cut, at a row.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub(crate) enum Reach {
    Other = 0,
    Narrow = 1,
    Both = 2,
}

/// The strengths of one rivet of a row, newtons. Absent fates are `None`.
#[derive(Clone, Copy, Debug)]
pub struct RivetFates<N> {
    /// In shear, with the planes through the wide strap or plate B, through the narrow strap, and through both.
    pub shear: [N; 3],
    /// Crushing the plate.
    pub bearing: Option<N>,
    /// Crushing plate B or the wide strap, and the narrow strap.
    pub other_bearing: [Option<N>; 2],
    /// Shearing out the margin of the plate.
    pub shear_out: Option<N>,
    /// Shearing out plate B or the wide strap, and the narrow strap.
    pub other_shear_out: [Option<N>; 2],
}

/// What a rivet of row `row` (from 1) bears in each fate.
///
/// `seam` multiplies its shear strength (the book's `F/F1`; none for the real joint); `bearing` says whether crushing
/// and shear-out are fates at all.
#[inline]
pub fn rivet_fates<C: Ctx>(
    c: C,
    joint: &Joint,
    given: &Given<C::N>,
    rules: &Rules,
    row: usize,
    seam: Option<C::N>,
    bearing: bool,
) -> RivetFates<C::N> {
    let at = u8::try_from(row).unwrap_or(0);
    let form = &joint.form;
    let d = given.diameter(rules, Entry::SHEAR_DIAMETER, row);
    let shear_name = Name(Q::RivetShear, at);
    let ss = given.shear;
    let seamed = |f: C::N| seam.map_or(f, |k| formula::times(k, f));
    let single = |name| c.formula(name, Formula::SingleShear.no(), seamed(formula::single_shear(d, ss)));
    let shear = if form.row(row).planes == 2 {
        let z = c.table(Name(Q::DoubleShear, 0), Entry::DOUBLE_SHEAR.no(), rules.get(Entry::DOUBLE_SHEAR));
        let both = c.formula(shear_name, Formula::DoubleShear.no(), seamed(formula::double_shear(z, d, ss)));
        let lone = if rules.choice(Entry::LONE_PLANE) == 0 {
            c.formula(Name(Q::LoneShear, at), Formula::PlaneShear.no(), seamed(formula::plane_shear(z, d, ss)))
        } else {
            single(Name(Q::LoneShear, at))
        };
        [lone, lone, both]
    } else {
        [single(shear_name); 3]
    };
    let mut fates =
        RivetFates { shear, bearing: None, other_bearing: [None; 2], shear_out: None, other_shear_out: [None; 2] };
    if !bearing {
        return fates;
    }
    let d = given.diameter(rules, Entry::BEARING_DIAMETER, row);
    let crush = |q: Q, t: C::N, sc: Option<C::N>, known: bool| {
        let bears = |sc| c.formula(Name(q, at), Formula::Bearing.no(), formula::bearing(d, t, sc));
        sc.filter(|_| known).map(bears)
    };
    fates.bearing = crush(Q::RivetBearing, given.plate, given.bearing, true);
    fates.other_bearing = [
        crush(Q::RivetBearingOther, given.other, given.other_bearing, joint.other > 0.0),
        crush(
            Q::RivetBearingNarrow,
            given.narrow,
            given.other_bearing,
            joint.narrow > 0.0 && form.row(row).planes == 2,
        ),
    ];
    let hole = pick(&given.hole, row);
    let out = |q: Q, t: C::N, sp: Option<C::N>, edge: bool, known: bool| {
        let holds = |sp| c.formula(Name(q, at), Formula::ShearOut.no(), formula::shear_out(given.margin, hole, t, sp));
        sp.filter(|_| edge && known && joint.margin > 0.0).map(holds)
    };
    // The plate ends behind its innermost row, a strap (and plate B) behind its outermost.
    let last = row == form.row_count();
    fates.shear_out = out(Q::RivetShearOut, given.plate, given.shear_out, last, true);
    fates.other_shear_out = [
        out(Q::RivetShearOutOther, given.other, given.other_shear_out, row == 1, joint.other > 0.0),
        out(
            Q::RivetShearOutNarrow,
            given.narrow,
            given.other_shear_out,
            row == form.first_double_row(),
            joint.narrow > 0.0,
        ),
    ];
    fates
}

impl<N: Num> RivetFates<N> {
    /// A plane's shear of a rivet with the planes of `reach` on the cut.
    #[inline(always)]
    fn plane(&self, reach: Reach) -> N {
        let [other, narrow, both] = self.shear;
        match reach {
            Reach::Other => other,
            Reach::Narrow => narrow,
            Reach::Both => both,
        }
    }

    /// The weakest fate of the rivet where the straps of `reach` lie on the far side.
    ///
    /// With both straps on the cut each plane may go its own way, shearing or crushing its strap: one plane's share of
    /// double shear is then half of it. A rivet of one plane has no other: its fate is that of the whole rivet.
    #[inline]
    pub(crate) fn weakest<C: Ctx<N = N>>(&self, c: C, row: u8, planes: u8, reach: Reach) -> (N, Fate) {
        let q = match reach {
            _ if planes == 1 => Q::RivetLeast,
            Reach::Both => Q::RivetLeast,
            Reach::Other => Q::RivetLeastOther,
            Reach::Narrow => Q::RivetLeastNarrow,
        };
        let name = Name(q, row);
        let mut best = Weakest { c, name, force: self.plane(reach), fate: Fate::Shear };
        let [other, narrow] = self.other_bearing;
        let [other_out, narrow_out] = self.other_shear_out;
        match reach {
            Reach::Other => best.links(other, other_out),
            Reach::Narrow => best.links(narrow, narrow_out),
            Reach::Both if other.or(narrow).or(other_out).or(narrow_out).is_some() => {
                let half = c.formula(Name(Q::HalfShear, row), Formula::Half.no(), formula::half(self.plane(reach)));
                let side = |crush: Option<N>, out: Option<N>, q: Q| {
                    let mut link = Weakest { c, name: Name(q, row), force: half, fate: Fate::Shear };
                    link.links(crush, out);
                    link
                };
                let a = side(other, other_out, Q::RivetLeastOther);
                let b = side(narrow, narrow_out, Q::RivetLeastNarrow);
                if (a.fate, b.fate) != (Fate::Shear, Fate::Shear) {
                    let both = formula::cut_strength(a.force, b.force);
                    let both = c.formula(name, Formula::CutStrength.no(), both);
                    best.take(both, if a.fate == b.fate { a.fate } else { Fate::Mixed });
                }
            }
            Reach::Both => {}
        }
        best.against(self.bearing, Fate::Bearing);
        best.against(self.shear_out, Fate::ShearOut);
        (best.force, best.fate)
    }

    /// In shear, and in the weakest fate, with all planes on the cut.
    #[inline]
    pub(crate) fn full<C: Ctx<N = N>>(&self, c: C, row: u8, planes: u8) -> (N, N) {
        let reach = if planes == 2 { Reach::Both } else { Reach::Other };
        (self.plane(reach), self.weakest(c, row, planes, reach).0)
    }

    /// Crushing the straps of `reach`; `None` where one of them has no bearing stress.
    #[inline]
    pub(crate) fn other_crush(&self, reach: Reach) -> Option<N> {
        let [other, narrow] = self.other_bearing;
        match reach {
            Reach::Other => other,
            Reach::Narrow => narrow,
            Reach::Both => Some(formula::cut_strength(other?, narrow?)),
        }
    }

    /// The textbook's bearing of one rivet: the lesser of crushing the plate and crushing all it bears against.
    #[inline]
    pub(crate) fn crush<C: Ctx<N = N>>(&self, c: C, row: u8, reach: Reach) -> Option<N> {
        let plate = self.bearing?;
        Some(match self.other_crush(reach) {
            Some(other) => c.lesser(Name(Q::RivetBearing, row), Why::Least(EntryNo::NONE), plate, other),
            None => plate,
        })
    }
}

/// The weakest fate so far.
#[derive(Clone, Copy)]
struct Weakest<C: Ctx> {
    c: C,
    name: Name,
    force: C::N,
    fate: Fate,
}

impl<C: Ctx> Weakest<C> {
    /// One strap's own ways to give in.
    #[inline(always)]
    fn links(&mut self, crush: Option<C::N>, out: Option<C::N>) {
        self.against(crush, Fate::OtherBearing);
        self.against(out, Fate::OtherShearOut);
    }

    /// Another way to give in, where it is known. Equal within the library's tolerance: the earlier one stays.
    #[inline(always)]
    fn against(&mut self, force: Option<C::N>, fate: Fate) {
        let Some(force) = force else { return };
        if math::below(force.value(), self.force.value()) {
            self.take(force, fate);
        } else {
            self.force = self.c.choice(self.name, Why::Least(EntryNo::NONE), self.force, force);
        }
    }

    #[inline(always)]
    fn take(&mut self, force: C::N, fate: Fate) {
        self.force = self.c.choice(self.name, Why::Least(EntryNo::NONE), force, self.force);
        self.fate = fate;
    }
}
