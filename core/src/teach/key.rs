//! The key: what is asked, in the order of the work, and the answers.

use crate::error::Error;
use crate::reconcile::{Case, MAX_FIGURES, Work, worked};
use crate::step::{Name, Quantity as Q};

/// Most figures that a problem asks for.
pub const MAX_ASKED: usize = 18;

/// What a problem asks for.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Key {
    asked: [Option<(Name, f64)>; MAX_ASKED],
}

/// In the order of the work.
const OF_CHECK: [Name; 6] = [
    Name(Q::Solid, 0),
    Name(Q::TearOuter, 0),
    Name(Q::ShearAll, 0),
    Name(Q::BearingAll, 0),
    Name(Q::ModeStrength, 0),
    Name(Q::BookEfficiency, 0),
];
const OF_SIZE: [Name; 18] = [
    Name(Q::Hole, 0),
    Name(Q::Hole, 1),
    Name(Q::Rivet, 1),
    Name(Q::PitchByShear, 0),
    Name(Q::PitchByWeaker, 0),
    Name(Q::PitchLeast, 0),
    Name(Q::PitchGreatest, 0),
    Name(Q::Pitch, 0),
    Name(Q::RowGapLeast, 1),
    Name(Q::RowGapLeast, 2),
    Name(Q::RowGapLeast, 3),
    Name(Q::RowGapLeast, 4),
    Name(Q::MarginLeast, 0),
    Name(Q::OtherPlate, 0),
    Name(Q::Narrow, 0),
    Name(Q::RowGapBeside, 1),
    Name(Q::RowGapBeside, 2),
    Name(Q::BookEfficiency, 0),
];

impl Key {
    /// The key of a case.
    ///
    /// # Errors
    /// Those of [`check`](crate::check::check) and [`size`](crate::sizing::size).
    pub fn of(case: &Case) -> Result<Key, Error> {
        let names: &[Name] = match case.work {
            Work::Check(..) => &OF_CHECK,
            Work::Size(_) => &OF_SIZE,
        };
        let values: [f64; MAX_FIGURES] = worked(case, names)?;
        let mut key = Key { asked: [None; MAX_ASKED] };
        for (slot, (name, value)) in key.asked.iter_mut().zip(names.iter().zip(values)) {
            // What the form or the book does not have is not asked for.
            *slot = value.is_finite().then_some((*name, value));
        }
        Ok(key)
    }

    /// What is asked, with the answers.
    pub fn iter(&self) -> impl Iterator<Item = (Name, f64)> + '_ {
        self.asked.iter().flatten().copied()
    }

    /// The answer to one question.
    #[must_use]
    pub fn answer(&self, name: Name) -> Option<f64> {
        self.iter().find(|(asked, _)| *asked == name).map(|(_, value)| value)
    }
}
