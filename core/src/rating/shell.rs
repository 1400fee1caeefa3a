//! A shell, its stresses' footing and its circumstances.

use crate::bounds::Field;
use crate::error::Error;
use crate::quantities::Length;

/// What the stresses are.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Footing {
    /// Permissible: the safety is in them.
    Permissible,
    /// Strengths at failure: a factor of safety divides them.
    Ultimate,
}

/// How the rivets were closed.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Riveting {
    /// By hand.
    Hand,
    /// By machine.
    Machine,
}

/// How the holes were made.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum HoleMaking {
    /// Drilled.
    Drilled,
    /// Punched small and reamed.
    Reamed,
    /// Punched to size.
    Punched,
}

/// Circumstances that rule books make the factor of safety depend on. What is not stated is taken on the safe side
/// where the book distinguishes it, and listed as assumed.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Service {
    /// In service, not new.
    pub existing: bool,
    /// Bought second-hand.
    pub second_hand: Option<bool>,
    /// Past the book's age limit.
    pub past_age_limit: Option<bool>,
    /// Inspected and tested as the book asks of boilers past their age limit.
    pub tested: bool,
    /// A horizontal return tubular boiler.
    pub tubular: Option<bool>,
    /// Length of the longest continuous lap along the shell.
    pub lap_length: Option<Length>,
    /// A lap exposed to fire.
    pub lap_in_fire: Option<bool>,
    /// The boiler's weight pulls on the seam.
    pub weight_on_seam: Option<bool>,
    /// How the rivets were closed.
    pub riveting: Option<Riveting>,
    /// How the holes were made.
    pub holes: Option<HoleMaking>,
    /// Inspected stripped down as the book asks of wide shells with laps.
    pub stripped: bool,
}

impl Service {
    /// A new shell of drilled holes, in no unusual circumstance; riveting is left open.
    #[must_use]
    pub const fn new_shell() -> Self {
        Service {
            existing: false,
            second_hand: Some(false),
            past_age_limit: Some(false),
            tested: false,
            tubular: Some(false),
            lap_length: None,
            lap_in_fire: Some(false),
            weight_on_seam: Some(false),
            riveting: None,
            holes: Some(HoleMaking::Drilled),
            stripped: false,
        }
    }

    /// A boiler in service of which nothing is stated.
    #[must_use]
    pub const fn in_service() -> Self {
        Service {
            existing: true,
            second_hand: None,
            past_age_limit: None,
            tested: false,
            tubular: None,
            lap_length: None,
            lap_in_fire: None,
            weight_on_seam: None,
            riveting: None,
            holes: None,
            stripped: false,
        }
    }
}

/// A cylindrical shell under internal pressure.
///
/// ```
/// use seamwright::{quantities::Length, rating::{Footing, Shell}};
/// let shell = Shell::new(Length::mm(1200.0), Footing::Ultimate).safety(5.0).corrosion(Length::mm(1.0));
/// assert!(shell.validate().is_ok());
/// assert!(Shell::new(Length::mm(-1.0), Footing::Ultimate).validate().is_err());
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Shell {
    pub(crate) inside: Length,
    pub(crate) footing: Footing,
    pub(crate) corrosion: Option<Length>,
    pub(crate) safety: Option<f64>,
    pub(crate) service: Service,
}

impl Shell {
    /// A new shell: greatest inside diameter, and what the stresses are.
    #[must_use]
    pub const fn new(inside: Length, footing: Footing) -> Self {
        Shell { inside, footing, corrosion: None, safety: None, service: Service::new_shell() }
    }

    /// With a corrosion allowance. By the book it comes on top of what its formula takes off, or takes its place.
    #[must_use]
    pub const fn corrosion(mut self, allowance: Length) -> Self {
        self.corrosion = Some(allowance);
        self
    }

    /// With a factor of safety given, in the place of the book's.
    #[must_use]
    pub const fn safety(mut self, factor: f64) -> Self {
        self.safety = Some(factor);
        self
    }

    /// With its circumstances.
    #[must_use]
    pub const fn service(mut self, service: Service) -> Self {
        self.service = service;
        self
    }

    /// Greatest inside diameter.
    #[must_use]
    pub const fn inside(&self) -> Length {
        self.inside
    }

    /// The corrosion allowance, where one was given.
    #[must_use]
    pub const fn corrosion_allowance(&self) -> Option<Length> {
        self.corrosion
    }

    /// What the stresses are.
    #[must_use]
    pub const fn footing(&self) -> Footing {
        self.footing
    }

    /// Its circumstances.
    #[must_use]
    pub const fn circumstances(&self) -> &Service {
        &self.service
    }

    /// Checks every figure against the table of bounds.
    ///
    /// # Errors
    /// The first figure that is not finite or outside its range, by name.
    pub fn validate(&self) -> Result<(), Error> {
        Field::RingDiameter.check(self.inside.to_mm())?;
        if let Some(allowance) = self.corrosion {
            Field::Corrosion.check(allowance.to_mm())?;
        }
        if let Some(factor) = self.safety {
            Field::SafetyFactor.check(factor)?;
        }
        if let Some(length) = self.service.lap_length {
            Field::LapLength.check(length.to_mm())?;
        }
        Ok(())
    }
}
