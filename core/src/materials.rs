//! What plates, straps and rivets bear: permissible or ultimate stresses, never mixed by the library.
//!
//! Strengths come out on the same footing as the stresses that go in: permissible stresses give permissible loads,
//! ultimate ones give loads at failure, to be divided by a factor of safety.

use crate::bounds::Field;
use crate::error::Error;
use crate::quantities::Stress;

/// Stresses of one plate, or of the straps.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PlateStress {
    /// Tensile stress on the net section.
    pub tension: Stress,
    /// Bearing (crushing) stress on the projected area of a rivet; `None` when the source gives none.
    pub bearing: Option<Stress>,
    /// Shear stress of the plate for shear-out at the margin; `None` leaves the margin to its rule.
    pub shear_out: Option<Stress>,
}

/// Stresses of a joint.
///
/// ```
/// use seamwright::{materials::Materials, quantities::Stress};
/// let boiler = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// assert!(boiler.validate().is_ok());
/// assert!(Materials::new(Stress::mpa(-80.0), Stress::mpa(60.0)).validate().is_err());
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Materials {
    /// The plate: plate A of a lap, the main plates of a butt joint.
    pub plate: PlateStress,
    /// Plate B of a lap, or the straps of a butt joint.
    pub other: PlateStress,
    /// Shear stress of the rivets in single shear.
    pub rivet_shear: Stress,
}

impl Materials {
    /// One tensile stress for all plates and straps, and the rivets' shear stress. Bearing is not known.
    #[must_use]
    pub const fn new(tension: Stress, rivet_shear: Stress) -> Self {
        let plate = PlateStress { tension, bearing: None, shear_out: None };
        Materials { plate, other: plate, rivet_shear }
    }

    /// With one bearing stress for all plates and straps.
    #[must_use]
    pub const fn bearing(mut self, bearing: Stress) -> Self {
        self.plate.bearing = Some(bearing);
        self.other.bearing = Some(bearing);
        self
    }

    /// With a second plate (or straps) of another material.
    #[must_use]
    pub const fn other(mut self, other: PlateStress) -> Self {
        self.other = other;
        self
    }

    /// With a shear stress for the plates, so that shear-out at the margin becomes a failure mode.
    #[must_use]
    pub const fn shear_out(mut self, shear_out: Stress) -> Self {
        self.plate.shear_out = Some(shear_out);
        self.other.shear_out = Some(shear_out);
        self
    }

    /// All stresses divided by a factor of safety: from ultimate to permissible.
    ///
    /// # Errors
    /// A factor outside 1 to 20.
    pub fn divided_by(self, factor: f64) -> Result<Self, Error> {
        let factor = Field::SafetyFactor.check(factor)?;
        let by = |s: Stress| Stress::mpa(s.to_mpa() / factor);
        let plate = |p: PlateStress| PlateStress {
            tension: by(p.tension),
            bearing: p.bearing.map(by),
            shear_out: p.shear_out.map(by),
        };
        Ok(Materials { plate: plate(self.plate), other: plate(self.other), rivet_shear: by(self.rivet_shear) })
    }

    /// Checks every stress against the table of bounds.
    ///
    /// # Errors
    /// The first stress that is not finite or outside its range, by name.
    pub fn validate(&self) -> Result<(), Error> {
        let optional = |field: Field, s: Option<Stress>| s.map_or(Ok(0.0), |s| field.check(s.to_mpa()));
        Field::Tension.check(self.plate.tension.to_mpa())?;
        optional(Field::Bearing, self.plate.bearing)?;
        optional(Field::PlateShear, self.plate.shear_out)?;
        Field::OtherTension.check(self.other.tension.to_mpa())?;
        optional(Field::OtherBearing, self.other.bearing)?;
        optional(Field::PlateShear, self.other.shear_out)?;
        Field::Shear.check(self.rivet_shear.to_mpa())?;
        Ok(())
    }
}
