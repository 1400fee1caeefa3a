//! Lengths along the seam, ply by ply, and the cut sizes of straps and lap.

use super::order::{Face, Measured, Order, Run, no_room_inside};
use crate::error::Error;
use crate::formula::{self, Formula};
use crate::given::Given;
use crate::joint::{Joint, JointKind};
use crate::step::{Ctx, Name, Num, Quantity as Q};

/// A plate to cut: the straps, and the part of a plate that a lap covers.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PlateCut<N = f64> {
    /// Thickness, mm.
    pub thickness: f64,
    /// Across the seam, mm.
    pub width: N,
    /// Along the seam, mm: in a girth at the middle of the ply's own thickness.
    pub length: N,
    /// Mass before drilling, kg.
    pub mass: N,
}

/// Lengths along a seam, mm.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Along<N = f64> {
    /// The seam: the length of the plate, the girth at the circle of holes, the width of a tie.
    pub seam: N,
    /// What the pitches divide; `None` for a tie.
    pub run: Option<N>,
    /// The circle of holes of a girth.
    pub circle: Option<N>,
    /// The second ring of a lap, the single or wide strap.
    pub other: N,
    /// The narrow or second strap.
    pub narrow: N,
}

impl<N: Num> Along<N> {
    /// The lengths of an order.
    #[inline]
    pub(super) fn new<C: Ctx<N = N>>(c: C, joint: &Joint, given: &Given<N>, order: &Order) -> Result<Self, Error> {
        match *order.run() {
            Run::Tie => {
                let w = given.strip;
                Ok(Along { seam: w, run: None, circle: None, other: w, narrow: w })
            }
            Run::Straight { length, first_end, last_end } => {
                let seam = c.given(Name(Q::SeamLength, 0), length.to_mm());
                let e1 = c.given(Name(Q::EndDistance, 1), first_end.to_mm());
                let e2 = c.given(Name(Q::EndDistance, 2), last_end.to_mm());
                let run = formula::straight_run(seam, e1, e2);
                let run = c.formula(Name(Q::Run, 0), Formula::StraightRun.no(), run);
                Ok(Along { seam, run: Some(run), circle: None, other: seam, narrow: seam })
            }
            Run::Girth { diameter, measured, other } => {
                let (t, t2) = (given.plate, given.other);
                let inside = || c.given(Name(Q::InsideDiameter, 0), diameter.to_mm());
                let middle =
                    |q: Q, t: N| c.formula(Name(q, 0), Formula::MiddleCircle.no(), formula::middle_circle(inside(), t));
                let circle = match measured {
                    Measured::Circle => c.given(Name(Q::Circle, 0), diameter.to_mm()),
                    Measured::InsidePlate => middle(Q::Circle, t),
                    // Seen from plate B, plate A lies on the other side.
                    Measured::InsideOther => {
                        next_circle(c, Q::Circle, opposite(other), middle(Q::OtherCircle, t2), t2, t)
                    }
                };
                let girth = |q: Q, d: N| c.formula(Name(q, 0), Formula::Girth.no(), formula::girth(d));
                let wide = next_circle(c, Q::OtherCircle, other, circle, t, t2);
                let run = girth(Q::Run, circle);
                let mut along = Along {
                    seam: run,
                    run: Some(run),
                    circle: Some(circle),
                    other: girth(Q::OtherGirth, wide),
                    narrow: run,
                };
                let mut innermost = if wide.value() < circle.value() { wide } else { circle };
                if joint.form().kind() == JointKind::DoubleStrap {
                    let narrow = next_circle(c, Q::NarrowCircle, opposite(other), circle, t, given.narrow);
                    along.narrow = girth(Q::NarrowGirth, narrow);
                    if narrow.value() < innermost.value() {
                        innermost = narrow;
                    }
                }
                if innermost.value() <= 0.0 {
                    return Err(no_room_inside(diameter.to_mm()));
                }
                Ok(along)
            }
        }
    }
}

const fn opposite(face: Face) -> Face {
    match face {
        Face::Inside => Face::Outside,
        Face::Outside => Face::Inside,
    }
}

/// The middle circle of the ply next to one of middle circle `d`: thicknesses `t` here and `t2` there.
#[inline]
fn next_circle<C: Ctx>(c: C, q: Q, face: Face, d: C::N, t: C::N, t2: C::N) -> C::N {
    match face {
        Face::Outside => c.formula(Name(q, 0), Formula::CircleOutside.no(), formula::circle_outside(d, t, t2)),
        Face::Inside => c.formula(Name(q, 0), Formula::CircleInside.no(), formula::circle_inside(d, t, t2)),
    }
}

/// What is cut for a seam.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Cuts<N = f64> {
    /// The part of plate B that a lap covers.
    pub overlap: Option<PlateCut<N>>,
    /// The single or the wide strap.
    pub wide: Option<PlateCut<N>>,
    /// The narrow or second strap.
    pub narrow: Option<PlateCut<N>>,
}

impl<N: Num> Cuts<N> {
    /// The cut sizes of a joint whose row distances and margin are known.
    #[inline]
    pub(super) fn new<C: Ctx<N = N>>(c: C, joint: &Joint, given: &Given<N>, along: &Along<N>, rho: N) -> Self {
        let kind = joint.form().kind();
        let m = given.margin;
        let cut = |thickness: f64, t: N, width: N, length: N, q: Q| {
            let v = formula::plate_volume(width, length, t);
            let v = c.formula(Name(Q::PlateVolume, 0), Formula::PlateVolume.no(), v);
            let mass = c.formula(Name(q, 0), Formula::Mass.no(), formula::mass(v, rho));
            PlateCut { thickness, width, length, mass }
        };
        let all = span(c, joint, 1);
        if kind == JointKind::Lap {
            let width = c.formula(Name(Q::WideWidth, 0), Formula::Overlap.no(), formula::overlap(all, m));
            let overlap = cut(joint.other, given.other, width, along.other, Q::OverlapMass);
            return Cuts { overlap: Some(overlap), wide: None, narrow: None };
        }
        let strap = |q: Q, s: N| c.formula(Name(q, 0), Formula::StrapWidth.no(), formula::strap_width(s, m));
        let width = strap(Q::WideWidth, all);
        let wide = cut(joint.other, given.other, width, along.other, Q::WideMass);
        let narrow = (kind == JointKind::DoubleStrap).then(|| {
            let first = joint.form().first_double_row();
            let s = if first == 1 { all } else { span(c, joint, first) };
            let width = strap(Q::NarrowWidth, s);
            cut(joint.narrow, given.narrow, width, along.narrow, Q::NarrowMass)
        });
        Cuts { overlap: None, wide: Some(wide), narrow }
    }
}

/// From row `first` (from 1) to the last row.
#[inline]
fn span<C: Ctx>(c: C, joint: &Joint, first: usize) -> C::N {
    let gaps = joint.form().row_count().saturating_sub(1);
    let from = first.saturating_sub(1);
    let mut sum: Option<C::N> = None;
    for (gap, number) in joint.back.iter().zip(1_u8..).take(gaps).skip(from) {
        let g = c.given(Name(Q::RowGap, number), *gap);
        sum = Some(match sum {
            Some(sum) => c.formula(Name(Q::RowSpan, number), Formula::RowSpan.no(), formula::row_span(sum, g)),
            None => g,
        });
    }
    sum.unwrap_or(C::N::lit(0.0))
}
