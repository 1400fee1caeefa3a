//! Closed-form bounds over a stretch of pitches.

use crate::error::Error;
use crate::given::Given;
use crate::joint::{Form, JointSpec};
use crate::materials::Materials;
use crate::modes::{Lens, Strengths};
use crate::quantities::Length;
use crate::rules::{Entry, Rules};
use crate::step::Plain;

/// What a bound is widened by before anything is excluded by it: the roundings of its own arithmetic are thousands of
/// times less.
pub(super) const WIDER: f64 = 1.0 + 1e-9;

/// Most pieces: each main plate of a lap at each of its rows, and all rivets.
const MOST: usize = 17;

/// The upper bound of the efficiency as a function of the strip `p`: the least of `b + a/p` over the pieces, under the
/// cap of the book.
#[derive(Clone, Debug)]
pub(super) struct Pieces {
    list: heapless::Vec<(f64, f64), MOST>,
    cap: f64,
}

impl Pieces {
    /// The bound of a form with holes of one size in plates of one thickness, for strips from `low` to `high` mm.
    pub(super) fn new(
        form: &Form,
        hole: Length,
        rivet: Length,
        plate: Length,
        materials: &Materials,
        rules: &Rules,
        [low, high]: [f64; 2],
    ) -> Result<Self, Error> {
        let mut pieces = Pieces { list: heapless::Vec::new(), cap: rules.get(Entry::EFFICIENCY_CAP) };
        let at = |strip: f64| {
            // No straps, no row distances, no margin: what these may cost the joint is left out, so nothing is lower.
            let joint = JointSpec::new(*form, Length::mm(strip), plate, hole).rivet(rivet).build()?;
            let given = Given::new(Plain, &joint, materials);
            Ok::<_, Error>(Strengths::new(Plain, &joint, &given, rules, Lens::Real))
        };
        let (first, last) = (at(low)?, at(high)?);
        let solid = first.solid / low;
        for (one, two) in first.modes().zip(last.modes()) {
            let cut = one.cut;
            if cut.plate > 0 && cut.other > 0 {
                continue;
            }
            // Affine in the strip: between two of its own values the figure in between is a mean of both.
            let slope = if high > low { (two.strength - one.strength) / (high - low) } else { 0.0 };
            let _ = pieces.list.push(((one.strength - slope * low) / solid, slope / solid));
        }
        Ok(pieces)
    }

    /// A bound that excludes nothing.
    pub(super) fn none(rules: &Rules) -> Self {
        Pieces { list: heapless::Vec::new(), cap: rules.get(Entry::EFFICIENCY_CAP) }
    }

    /// The bound at one strip, widened.
    pub(super) fn at(&self, p: f64) -> f64 {
        self.over(p, p)
    }

    /// The bound over strips from `low` to `high`, widened: each piece is monotone, so its greatest is at an end.
    pub(super) fn over(&self, low: f64, high: f64) -> f64 {
        let mut least = self.cap;
        for (a, b) in &self.list {
            let (x, y) = (b + a / low, b + a / high);
            let most = if x > y { x } else { y };
            if most < least {
                least = most;
            }
        }
        least * WIDER
    }

    /// The strips at which the bound, widened, reaches `least`: an interval, empty where the first is greater.
    ///
    /// `b + a/p >= e` is `a >= (e - b) p`: a half-line of `p` for each piece.
    pub(super) fn reaching(&self, least: f64) -> (f64, f64) {
        let e = least / WIDER;
        let (mut from, mut to) = (0.0, f64::INFINITY);
        if self.cap < e {
            return (1.0, 0.0);
        }
        for (a, b) in &self.list {
            let rise = e - b;
            if rise > 0.0 {
                let end = a / rise;
                if end < to {
                    to = end;
                }
            } else if rise < 0.0 {
                let start = a / rise;
                if start > from {
                    from = start;
                }
            } else if *a < 0.0 {
                return (1.0, 0.0);
            }
        }
        (from, to)
    }
}
