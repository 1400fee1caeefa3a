//! The key: what is asked, in the order of the work, and the answers.

use crate::error::Error;
use crate::joint::MAX_ROWS;
use crate::math;
use crate::reconcile::{Case, MAX_FIGURES, Work, worked};
use crate::step::{Name, Quantity as Q};

/// Most figures that a problem asks for.
pub const MAX_ASKED: usize = 34;

/// What a problem asks for.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Key {
    asked: [Option<(Name, f64)>; MAX_ASKED],
}

/// A question: one quantity, or that of a single rivet in each row where it is another one.
#[derive(Clone, Copy)]
enum Question {
    One(Name),
    Rivet(Q),
}

use Question::{One, Rivet};

/// In the order of the work.
const OF_CHECK: &[Question] = &[
    One(Name(Q::Solid, 0)),
    One(Name(Q::TearOuter, 0)),
    Rivet(Q::RivetShear),
    One(Name(Q::ShearAll, 0)),
    Rivet(Q::RivetBearing),
    One(Name(Q::BearingAll, 0)),
    One(Name(Q::ModeStrength, 0)),
    One(Name(Q::BookEfficiency, 0)),
];
const OF_SIZE: &[Question] = &[
    One(Name(Q::Hole, 0)),
    One(Name(Q::Hole, 1)),
    One(Name(Q::Rivet, 1)),
    Rivet(Q::RivetShear),
    Rivet(Q::RivetBearing),
    One(Name(Q::PitchByShear, 0)),
    One(Name(Q::PitchByWeaker, 0)),
    One(Name(Q::PitchLeast, 0)),
    One(Name(Q::PitchGreatest, 0)),
    One(Name(Q::Pitch, 0)),
    One(Name(Q::RowGapLeast, 1)),
    One(Name(Q::RowGapLeast, 2)),
    One(Name(Q::RowGapLeast, 3)),
    One(Name(Q::RowGapLeast, 4)),
    One(Name(Q::MarginLeast, 0)),
    One(Name(Q::OtherPlate, 0)),
    One(Name(Q::Narrow, 0)),
    One(Name(Q::RowGapBeside, 1)),
    One(Name(Q::RowGapBeside, 2)),
    One(Name(Q::BookEfficiency, 0)),
];

/// One rivet in shear and in bearing, by row.
pub(super) type SingleRivets = [[f64; MAX_ROWS]; 2];

/// The names of [`SingleRivets`], one after the other.
pub(super) const RIVET_NAMES: [Name; 2 * MAX_ROWS] = {
    let mut names = [Name(Q::RivetShear, 0); 2 * MAX_ROWS];
    let mut row = 1_u8;
    let mut rest: &mut [Name] = &mut names;
    while let [shear, bearing, more @ ..] = rest {
        *shear = Name(Q::RivetShear, row);
        *bearing = Name(Q::RivetBearing, row);
        row = row.wrapping_add(1);
        rest = more;
    }
    names
};

/// The strengths of single rivets out of the values of [`RIVET_NAMES`].
pub(super) fn single_rivets(values: &[f64; MAX_FIGURES]) -> SingleRivets {
    let mut found = [[f64::NAN; MAX_ROWS]; 2];
    let [shear, bearing] = &mut found;
    for (pair, (s, b)) in values.chunks_exact(2).zip(shear.iter_mut().zip(bearing)) {
        if let [x, y] = pair {
            (*s, *b) = (*x, *y);
        }
    }
    found
}

/// The first row whose single rivet is as strong as that of a row, from 1.
pub(super) fn first_alike(by_row: &[f64; MAX_ROWS], row: u8) -> Option<u8> {
    let strength = by_row.get(usize::from(row).checked_sub(1)?).copied().filter(|x| x.is_finite())?;
    let same = |x: f64| math::at_least(x, strength) && math::at_most(x, strength);
    (1_u8..).zip(by_row).find(|(_, x)| same(**x)).map(|(first, _)| first)
}

impl Key {
    /// The key of a case.
    ///
    /// # Errors
    /// Those of [`check`](crate::check::check) and [`size`](crate::sizing::size).
    pub fn of(case: &Case) -> Result<Key, Error> {
        let questions = match case.work {
            Work::Check(..) => OF_CHECK,
            Work::Size(_) => OF_SIZE,
        };
        let mut names = [Name(Q::Solid, 0); MAX_FIGURES];
        let single = |question: &Question| match question {
            One(name) => Some(*name),
            Rivet(_) => None,
        };
        for (slot, name) in names.iter_mut().zip(questions.iter().filter_map(single)) {
            *slot = name;
        }
        let mut values = worked(case, &names)?.into_iter();
        let [shear, bearing] = single_rivets(&worked(case, &RIVET_NAMES)?);
        let mut key = Key { asked: [None; MAX_ASKED] };
        let mut slots = key.asked.iter_mut();
        let mut ask = |name: Name, value: f64| {
            // What the form or the book does not have is not asked for.
            if value.is_finite()
                && let Some(slot) = slots.next()
            {
                *slot = Some((name, value));
            }
        };
        for question in questions {
            match *question {
                One(name) => ask(name, values.next().unwrap_or(f64::NAN)),
                Rivet(quantity) => {
                    let by_row = if quantity == Q::RivetShear { &shear } else { &bearing };
                    for (row, value) in (1_u8..).zip(by_row) {
                        if first_alike(by_row, row) == Some(row) {
                            ask(Name(quantity, row), *value);
                        }
                    }
                }
            }
        }
        Ok(key)
    }

    /// What is asked, with the answers. The strength of a single rivet is asked for in the first row that has it.
    pub fn iter(&self) -> impl Iterator<Item = (Name, f64)> + '_ {
        self.asked.iter().flatten().copied()
    }

    /// The answer to one question.
    #[must_use]
    pub fn answer(&self, name: Name) -> Option<f64> {
        self.iter().find(|(asked, _)| *asked == name).map(|(_, value)| value)
    }
}
