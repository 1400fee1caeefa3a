//! What sizing finds.

use super::{HeadRoom, PitchChoice};
use crate::check::{Analysis, Findings};
use crate::joint::{Joint, MAX_ROWS};
use crate::proportion::{HoleBasis, Limit};
use crate::rules::Entry;
use crate::step::Num;

/// The hole, and how it was found.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct HoleChoice<N = f64> {
    /// The computed hole, mm, and its rule; `None` where the hole was given.
    pub computed: Option<(N, HoleBasis)>,
    /// The hole taken, mm.
    pub hole: f64,
    /// The cold rivet for it, mm.
    pub rivet: f64,
}

/// A sized joint.
#[derive(Clone, Debug)]
pub struct Design<N = f64, F = Findings> {
    /// The joint.
    pub joint: Joint,
    /// The hole.
    pub hole: HoleChoice<N>,
    /// The pitch.
    pub pitch: PitchChoice<N>,
    /// Row distances that the book prescribes, mm, by gap, before rounding.
    pub gaps: [(N, Entry); MAX_ROWS],
    /// The least margin, mm, before rounding.
    pub margin: N,
    /// The least straps, mm, before rounding: single, wide or first; narrow or second.
    pub straps: [Limit<N>; 2],
    /// What rivet heads ask for, by gap, mm, before rounding; nothing where the distance was given.
    pub heads: [HeadRoom<N>; MAX_ROWS],
    /// All modes, efficiencies and findings.
    pub analysis: Analysis<N, F>,
}

impl<N: Num> Design<N, ()> {
    /// Room for a design: nothing is sized yet, and the simplest of joints stands where its joint will.
    #[must_use]
    #[inline(never)]
    pub fn blank() -> Self {
        let zero = N::lit(0.0);
        Design {
            joint: Joint::SIMPLEST,
            hole: HoleChoice { computed: None, hole: 0.0, rivet: 0.0 },
            pitch: PitchChoice::blank(),
            gaps: [(zero, Entry::BACK_CHAIN); MAX_ROWS],
            margin: zero,
            straps: [Limit::None; 2],
            heads: [HeadRoom::NONE; MAX_ROWS],
            analysis: Analysis::blank(),
        }
    }

    /// Blank again. By itself, so that its copy leaves the stack before anything is sized.
    #[inline(never)]
    pub(super) fn clear(&mut self) {
        *self = Self::blank();
    }
}

impl<N: Num, F> Design<N, F> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Design<f64, F> {
        Design {
            joint: self.joint,
            hole: HoleChoice {
                computed: self.hole.computed.map(|(d, basis)| (d.value(), basis)),
                hole: self.hole.hole,
                rivet: self.hole.rivet,
            },
            pitch: self.pitch.values(),
            gaps: self.gaps.map(|(gap, entry)| (gap.value(), entry)),
            margin: self.margin.value(),
            straps: self.straps.map(Limit::values),
            heads: self.heads.map(HeadRoom::values),
            analysis: self.analysis.values(),
        }
    }
}
