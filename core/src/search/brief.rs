//! What is searched for, over which candidates, under which constraints.

use crate::bounds::Field;
use crate::check::Subject;
use crate::error::{Error, ErrorKind};
use crate::joint::Form;
use crate::materials::Materials;
use crate::quantities::{Length, Pressure};
use crate::rating::Shell;
use crate::rules::{Entry, Rules};
use crate::shop::Order;

/// What makes a joint the better one.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Objective {
    /// The highest efficiency that may be credited.
    Efficiency,
    /// The least mass that a metre of seam adds to plates that meet edge to edge.
    Mass,
    /// The fewest rivets in a metre of seam.
    Rivets,
    /// The thinnest plate.
    Thickness,
}

/// A brief of the search. Everything that is not limited is open.
///
/// ```
/// use seamwright::{error::ErrorKind, joint::Form, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::search::{Objective, SearchBrief, search};
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let plates = [Length::mm(12.0)];
/// let brief = SearchBrief::new(Objective::Efficiency, &plates, steel).rows_most(2).rivet_most(Length::mm(24.0));
/// assert!(search(&brief, &METRIC.rules)?.found().is_some());
/// let nothing = SearchBrief::new(Objective::Efficiency, &[], steel);
/// assert_eq!(search(&nothing, &METRIC.rules).unwrap_err().kind, ErrorKind::Missing);
/// # Ok::<(), seamwright::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct SearchBrief<'a> {
    pub(super) objective: Objective,
    pub(super) plates: &'a [Length],
    pub(super) materials: Materials,
    pub(super) forms: Option<&'a [Form]>,
    pub(super) holes: Option<&'a [Length]>,
    pub(super) rows_most: Option<u8>,
    pub(super) rivet_least: Option<Length>,
    pub(super) rivet_most: Option<Length>,
    pub(super) pitch_most: Option<Length>,
    pub(super) efficiency: Option<f64>,
    pub(super) pressure: Option<(Pressure, Shell)>,
    pub(super) mass: Option<Order>,
    pub(super) any_finding: bool,
}

impl<'a> SearchBrief<'a> {
    /// An objective, the plates to choose from (one, or the stock) and their stresses. Both plates of a lap are alike.
    #[must_use]
    pub const fn new(objective: Objective, plates: &'a [Length], materials: Materials) -> Self {
        SearchBrief {
            objective,
            plates,
            materials,
            forms: None,
            holes: None,
            rows_most: None,
            rivet_least: None,
            rivet_most: None,
            pitch_most: None,
            efficiency: None,
            pressure: None,
            mass: None,
            any_finding: false,
        }
    }

    /// With these forms only, in the place of [`all_forms`](super::all_forms); of equals the first wins.
    #[must_use]
    pub const fn forms(mut self, forms: &'a [Form]) -> Self {
        self.forms = Some(forms);
        self
    }

    /// With these holes, in the place of the book's series.
    #[must_use]
    pub const fn holes(mut self, holes: &'a [Length]) -> Self {
        self.holes = Some(holes);
        self
    }

    /// With at most so many rows on one side.
    #[must_use]
    pub const fn rows_most(mut self, rows: u8) -> Self {
        self.rows_most = Some(rows);
        self
    }

    /// With no cold rivet smaller than this.
    #[must_use]
    pub const fn rivet_least(mut self, rivet: Length) -> Self {
        self.rivet_least = Some(rivet);
        self
    }

    /// With no cold rivet larger than this.
    #[must_use]
    pub const fn rivet_most(mut self, rivet: Length) -> Self {
        self.rivet_most = Some(rivet);
        self
    }

    /// With no pitch of the outer row above this. Without it a book that caps no pitch leaves the grid open up to the
    /// greatest strip of the table of bounds, and a form that the book's table of caps does not reach is left out.
    #[must_use]
    pub const fn pitch_most(mut self, pitch: Length) -> Self {
        self.pitch_most = Some(pitch);
        self
    }

    /// With at least this efficiency credited (0 to 1), compared in whole billionths.
    #[must_use]
    pub const fn efficiency(mut self, least: f64) -> Self {
        self.efficiency = Some(least);
        self
    }

    /// With at least this working pressure, as [`joint_pressure`](crate::rating::joint_pressure) finds it.
    #[must_use]
    pub const fn pressure(mut self, least: Pressure, shell: Shell) -> Self {
        self.pressure = Some((least, shell));
        self
    }

    /// With the rivets, their lengths and the density by which a metre of seam is weighed. The run of the order is not
    /// used. Without it no mass is known, and none decides between equals.
    #[must_use]
    pub const fn mass(mut self, order: Order) -> Self {
        self.mass = Some(order);
        self
    }

    /// With joints of open findings as well: those that break a rule of the book, or have no room for their heads.
    #[must_use]
    pub const fn any_finding(mut self) -> Self {
        self.any_finding = true;
        self
    }

    /// The objective.
    #[must_use]
    pub const fn objective(&self) -> Objective {
        self.objective
    }

    /// What has to be sound before anything is searched.
    pub(super) fn validate(&self, rules: &Rules, needs_mass: bool) -> Result<(), Error> {
        rules.validate()?;
        self.materials.validate()?;
        if self.plates.is_empty() {
            return Err(Error::new(ErrorKind::Missing, Field::Plate));
        }
        for plate in self.plates {
            Field::Plate.check(plate.to_mm())?;
        }
        if self.forms.is_some_and(<[Form]>::is_empty) {
            return Err(Error::new(ErrorKind::Missing, Field::Form));
        }
        for hole in self.holes.unwrap_or(&[]) {
            Field::Hole.check(hole.to_mm())?;
        }
        if self.holes.map_or_else(|| rules.series().next().is_none(), <[Length]>::is_empty) {
            return Err(Error::new(ErrorKind::Missing, Field::Hole).entry(Entry::SERIES_HOLE.no()));
        }
        if rules.get(Entry::PITCH_STEP) < FINEST_STEP {
            let error = Error::new(ErrorKind::TooSmall, Field::Pitch).entry(Entry::PITCH_STEP.no());
            return Err(error.value(rules.get(Entry::PITCH_STEP)).limit(FINEST_STEP));
        }
        for rivet in [self.rivet_least, self.rivet_most].into_iter().flatten() {
            Field::Rivet.check(rivet.to_mm())?;
        }
        if let Some(pitch) = self.pitch_most {
            Field::Pitch.check(pitch.to_mm())?;
        }
        if let Some(rows) = self.rows_most {
            Field::Rows.check(f64::from(rows))?;
        }
        if let Some(least) = self.efficiency {
            Field::SeamEfficiency.check(least)?;
        }
        if let Some((least, shell)) = &self.pressure {
            Field::Pressure.check(least.to_mpa())?;
            shell.validate()?;
        }
        if needs_mass && self.mass.is_none() {
            return Err(Error::new(ErrorKind::Missing, Field::Density));
        }
        Ok(())
    }
}

/// The finest grid that is searched, mm.
pub(super) const FINEST_STEP: f64 = 0.01;

/// Why a candidate is out. In the order in which they are asked: a candidate counts under the first that excludes it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Constraint {
    /// More rows than allowed.
    Rows,
    /// A rivet smaller or larger than allowed.
    RivetSize,
    /// The book caps pitches, and its table of greatest pitches does not reach the form: the grid has no end. Naming a
    /// greatest pitch ([`SearchBrief::pitch_most`]) lets such forms in.
    CapUnknown,
    /// No step of the grid between the least and the greatest pitch.
    Pitch,
    /// The required efficiency is not reached.
    Efficiency,
    /// The required pressure is not reached.
    Pressure,
    /// It cannot be sized or weighed: an [`Error`] of [`size`](crate::sizing::size) or of the masses.
    Making,
    /// A rule is not met, of the book or beyond it (room for heads): the first open finding.
    Rule(Subject),
}

impl Constraint {
    /// In words, as it stands after "excluded by".
    #[must_use]
    pub const fn what(self) -> &'static str {
        match self {
            Constraint::Rows => "the number of rows allowed",
            Constraint::RivetSize => "the rivet sizes allowed",
            Constraint::CapUnknown => "the greatest pitch, which the book does not give for the form",
            Constraint::Pitch => "least and greatest pitch",
            Constraint::Efficiency => "the efficiency required",
            Constraint::Pressure => "the pressure required",
            Constraint::Making => "what cannot be sized",
            Constraint::Rule(subject) => subject.what(),
        }
    }
}
