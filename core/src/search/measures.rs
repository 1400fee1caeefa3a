//! Measures of a candidate in whole numbers, and the keys by which candidates are put in order.

use super::brief::Objective;

/// What a candidate is measured by. Whole numbers, so that "equal" means the same on every machine and in every
/// association of a sum.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Measures {
    /// Efficiency credited, billionths.
    pub efficiency: u64,
    /// Rivets in a metre of seam, both sides, millionths.
    pub rivets: u64,
    /// Mass of a metre of seam, millionths of a kilogram; 0 where no mass is asked for.
    pub mass: u64,
    /// Plate, millionths of a millimetre.
    pub plate: u64,
    /// Pitch of the outer row, millionths of a millimetre.
    pub pitch: u64,
}

/// Parts in one of an efficiency.
pub(super) const BILLION: f64 = 1e9;
/// Parts in one of everything else.
pub(super) const MILLION: f64 = 1e6;

/// The nearest whole number of parts; nothing below none.
#[inline]
pub(super) fn whole(x: f64, parts: f64) -> u64 {
    (x * parts + 0.5) as u64
}

/// The order of candidates: the lesser key is the better one.
pub(super) type Key = [u64; 5];

impl Measures {
    /// The key under an objective: its own measure first, then the higher efficiency, fewer rivets, less mass, the
    /// larger pitch, the thinner plate.
    #[inline]
    pub(super) fn key(&self, objective: Objective) -> Key {
        let (efficiency, pitch) = (u64::MAX.wrapping_sub(self.efficiency), u64::MAX.wrapping_sub(self.pitch));
        let &Measures { rivets, mass, plate, .. } = self;
        match objective {
            Objective::Efficiency => [efficiency, rivets, mass, pitch, plate],
            Objective::Mass => [mass, efficiency, rivets, pitch, plate],
            Objective::Rivets => [rivets, efficiency, mass, pitch, plate],
            Objective::Thickness => [plate, efficiency, rivets, mass, pitch],
        }
    }
}

/// A measure that decides between two candidates.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Measure {
    /// Efficiency credited.
    Efficiency,
    /// Rivets in a metre.
    Rivets,
    /// Mass of a metre.
    Mass,
    /// Plate.
    Plate,
    /// Pitch: the larger one is taken.
    Pitch,
    /// Nothing: equal in all, the earlier in the order of plates, forms and sizes is taken.
    Order,
}

impl Measure {
    /// In words.
    #[must_use]
    pub const fn what(self) -> &'static str {
        match self {
            Measure::Efficiency => "lower efficiency",
            Measure::Rivets => "more rivets",
            Measure::Mass => "more mass",
            Measure::Plate => "a thicker plate",
            Measure::Pitch => "a smaller pitch",
            Measure::Order => "equal, and later in the order of forms, plates and sizes",
        }
    }

    /// The first measure in which two keys differ.
    pub(super) fn deciding(objective: Objective, a: &Key, b: &Key) -> Measure {
        use Measure as M;
        let order = match objective {
            Objective::Efficiency => [M::Efficiency, M::Rivets, M::Mass, M::Pitch, M::Plate],
            Objective::Mass => [M::Mass, M::Efficiency, M::Rivets, M::Pitch, M::Plate],
            Objective::Rivets => [M::Rivets, M::Efficiency, M::Mass, M::Pitch, M::Plate],
            Objective::Thickness => [M::Plate, M::Efficiency, M::Rivets, M::Mass, M::Pitch],
        };
        order.into_iter().zip(a.iter().zip(b)).find(|(_, (x, y))| x != y).map_or(M::Order, |(m, _)| m)
    }
}
