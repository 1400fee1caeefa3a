//! The rivets of a seam, row by row, and the masses of all parts.

use super::holes::Layout;
use super::length::{CLOSING, HeadSize, SET, allowance};
use super::order::Order;
use super::plies::{Along, Cuts};
use crate::error::Error;
use crate::formula::{self, Formula};
use crate::given::{Given, pick};
use crate::joint::{Joint, JointKind, MAX_ROWS};
use crate::quantities::Length;
use crate::rules::Rounding;
use crate::step::{Ctx, Name, Num, Quantity as Q};

/// Where the last holes of the rows come from.
const BY_LAYOUT: &str = "the layout of the holes: 1 where a hole ends the row";
/// Where the sides come from.
const BY_FORM: &str = "the form: rows on both sides of a butt, on one of a lap";

/// The rivets of one row, on all sides of the seam.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct RivetLine<N = f64> {
    /// The row, from 1.
    pub row: u8,
    /// Shear planes of each.
    pub planes: u8,
    /// How many there are in the seam.
    pub count: u32,
    /// The cold rivet.
    pub rivet: Length,
    /// The hole.
    pub hole: Length,
    /// Grip, mm.
    pub grip: N,
    /// Allowance beyond the grip by the length rule, mm.
    pub allowance: N,
    /// Length by the rule, mm: grip and allowance.
    pub length: N,
    /// Length from the stock, mm.
    pub stock: N,
    /// The set head.
    pub set_head: HeadSize<N>,
    /// The closing head.
    pub closing_head: HeadSize<N>,
    /// Mass of one rivet as bought, kg: shank of the stock length and set head.
    pub mass: N,
    /// Mass drilled out of plates and straps for one rivet, kg: hole, and countersinks where heads are sunk.
    pub drilled: N,
}

impl<N: Num> RivetLine<N> {
    /// A row that is not there.
    fn none(order: &Order) -> Self {
        let zero = N::lit(0.0);
        let head = |form| HeadSize { form, width: zero, height: zero };
        RivetLine {
            row: 0,
            planes: 0,
            count: 0,
            rivet: Length::mm(0.0),
            hole: Length::mm(0.0),
            grip: zero,
            allowance: zero,
            length: zero,
            stock: zero,
            set_head: head(order.set_head),
            closing_head: head(order.head),
            mass: zero,
            drilled: zero,
        }
    }
}

/// Masses of a seam, kg.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Masses<N = f64> {
    /// All rivets as bought.
    pub rivets: N,
    /// The straps before drilling; nothing in a lap.
    pub straps: N,
    /// One plate (plate B) over the lap, before drilling; nothing in a butt joint.
    pub overlap: N,
    /// What is drilled out of all plies.
    pub holes: N,
    /// What the seam adds to plates that meet edge to edge: rivets, straps and overlap, less the holes.
    pub total: N,
    /// The same for a metre of seam.
    pub per_metre: N,
}

/// The rivets of every row, and the masses.
#[inline]
pub(super) fn rivets<C: Ctx>(
    c: C,
    joint: &Joint,
    given: &Given<C::N>,
    order: &Order,
    layout: &Layout,
    rho: C::N,
) -> Result<[RivetLine<C::N>; MAX_ROWS], Error> {
    let mut lines = [RivetLine::none(order); MAX_ROWS];
    for ((slot, row), number) in lines.iter_mut().zip(joint.rows()).zip(1_u8..) {
        let at = usize::from(number);
        let (d, hole) = (pick(&given.rivet, at), pick(&given.hole, at));
        let grip = match (joint.form().kind(), row.planes) {
            (JointKind::DoubleStrap, 2) => {
                let g = formula::grip_of_three(given.plate, given.other, given.narrow);
                c.formula(Name(Q::Grip, number), Formula::GripOfThree.no(), g)
            }
            _ => {
                let g = formula::grip_of_two(given.plate, given.other);
                c.formula(Name(Q::Grip, number), Formula::GripOfTwo.no(), g)
            }
        };
        let z = allowance(c, order.rule, number, d, grip)?;
        let name = Name(Q::RivetLength, number);
        let length = c.formula(name, Formula::RivetLength.no(), formula::rivet_length(grip, z));
        let step = order.stock.step;
        let stock = match (step > 0.0, order.stock.rounding) {
            (false, _) => length,
            (true, Rounding::Down) => c.down(name, step, length),
            (true, Rounding::Nearest) => c.nearest(name, step, length),
            (true, Rounding::Up) => c.up(name, step, length),
        };
        let set_head = HeadSize::new(c, SET, order.set_head, number, d);
        let (closing_head, closing) = if order.head == order.set_head {
            (set_head, SET)
        } else {
            (HeadSize::new(c, CLOSING, order.head, number, d), CLOSING)
        };
        let cylinder =
            |q: Q, d: C::N, l: C::N| c.formula(Name(q, number), Formula::Cylinder.no(), formula::cylinder(d, l));
        let add =
            |q: Q, a: C::N, b: C::N| c.formula(Name(q, number), Formula::VolumeSum.no(), formula::volume_sum(a, b));
        let weigh = |q: Q, v: C::N| c.formula(Name(q, number), Formula::Mass.no(), formula::mass(v, rho));
        let set_volume = set_head.volume(c, SET, number, d);
        let volume = add(Q::RivetVolume, cylinder(Q::ShankVolume, d, stock), set_volume);
        let mut out = cylinder(Q::HoleVolume, hole, grip);
        for (head, names) in [(set_head, SET), (closing_head, closing)] {
            if head.form.sunk() {
                out = add(Q::HoleVolume, out, head.volume(c, names, number, d));
            }
        }
        let (sides, strips) = (f64::from(layout.sides()), layout.in_row(at));
        *slot = RivetLine {
            row: number,
            planes: row.planes,
            count: strips.saturating_mul(layout.sides()),
            rivet: row.rivet(),
            hole: row.hole(),
            grip,
            allowance: z,
            length,
            stock,
            set_head,
            closing_head,
            mass: weigh(Q::RivetMass, volume),
            drilled: weigh(Q::HoleMass, out),
        };
        // The count of the working; the layout's is the same whole number.
        let k = c.given(Name(Q::Strips, 0), f64::from(layout.strips()));
        let e = c.stated(Name(Q::LastHoles, number), BY_LAYOUT, f64::from(layout.closing(at)));
        let s = c.stated(Name(Q::Sides, 0), BY_FORM, sides);
        let count = formula::rivets_in_run(s, k, given.rivets_in(at), e);
        c.formula(Name(Q::RowRivets, number), Formula::RivetsInRun.no(), count);
    }
    Ok(lines)
}

/// The masses of a seam.
#[inline]
pub(super) fn masses<C: Ctx>(c: C, lines: &[RivetLine<C::N>], cuts: &Cuts<C::N>, along: &Along<C::N>) -> Masses<C::N> {
    let zero = C::N::lit(0.0);
    let many = |q: Q, mass_of: fn(&RivetLine<C::N>) -> C::N| {
        let mut sum: Option<C::N> = None;
        for line in lines {
            let n = c.given(Name(Q::RowRivets, line.row), f64::from(line.count));
            let more = match sum {
                Some(sum) => formula::mass_of_many(sum, n, mass_of(line)),
                None => formula::times(n, mass_of(line)),
            };
            sum = Some(c.formula(Name(q, line.row), Formula::MassOfMany.no(), more));
        }
        sum.unwrap_or(zero)
    };
    let rivets = many(Q::RivetsMass, |line| line.mass);
    let holes = many(Q::HolesMass, |line| line.drilled);
    let straps = match (cuts.wide, cuts.narrow) {
        (Some(wide), Some(narrow)) => {
            let sum = formula::volume_sum(wide.mass, narrow.mass);
            c.formula(Name(Q::StrapsMass, 0), Formula::MassOfMany.no(), sum)
        }
        (Some(wide), None) => wide.mass,
        _ => zero,
    };
    let overlap = cuts.overlap.map_or(zero, |cut| cut.mass);
    let total = formula::seam_mass(rivets, straps, overlap, holes);
    let total = c.formula(Name(Q::SeamMass, 0), Formula::SeamMass.no(), total);
    let per_metre = formula::mass_per_metre(total, along.seam);
    let per_metre = c.formula(Name(Q::MetreMass, 0), Formula::MassPerMetre.no(), per_metre);
    Masses { rivets, straps, overlap, holes, total, per_metre }
}
