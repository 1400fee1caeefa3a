//! What a group is given: rivets at their places, the load, the stresses that are permitted.

use super::MAX_RIVETS;
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::formula;
use crate::math;
use crate::quantities::{Force, Length, Moment, Stress};

/// One rivet: its place, mm, with its hole and its cold rivet, mm; 0 where not given.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub(super) struct Placed {
    pub x: f64,
    pub y: f64,
    pub hole: f64,
    pub rivet: f64,
}

/// Rivets at their places in the plane of the plate, with the plate they go through.
///
/// ```
/// use seamwright::{group::Group, quantities::Length};
/// let mm = Length::mm;
/// let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(0.0), mm(80.0))])?.hole(mm(21.0)).rivet(mm(20.0)).plate(mm(12.0));
/// assert!(group.validate().is_ok());
/// assert!(Group::at(&[]).is_err());
/// assert!(group.hole(mm(90.0)).validate().is_err()); // the holes overlap
/// # Ok::<(), seamwright::Error>(())
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Group {
    rivets: [Placed; MAX_RIVETS],
    count: u8,
    planes: u8,
    plate: Option<Length>,
}

impl Group {
    /// Rivets at places `(x, y)`, numbered from 1 in this order, in single shear.
    ///
    /// # Errors
    /// No rivet, or more than [`MAX_RIVETS`].
    pub fn at(places: &[(Length, Length)]) -> Result<Self, Error> {
        let number = u32::try_from(places.len()).map_or(f64::MAX, f64::from);
        Field::GroupRivets.check(number)?;
        let mut rivets = [Placed::default(); MAX_RIVETS];
        for (slot, (x, y)) in rivets.iter_mut().zip(places) {
            *slot = Placed { x: x.to_mm(), y: y.to_mm(), hole: 0.0, rivet: 0.0 };
        }
        Ok(Group { rivets, count: u8::try_from(places.len()).unwrap_or(0), planes: 1, plate: None })
    }

    /// With the same hole for all rivets. A driven rivet fills it.
    #[must_use]
    pub fn hole(mut self, hole: Length) -> Self {
        for rivet in &mut self.rivets {
            rivet.hole = hole.to_mm();
        }
        self
    }

    /// With the same cold rivet for all. Without it the rivet is taken as large as its hole.
    #[must_use]
    pub fn rivet(mut self, rivet: Length) -> Self {
        for slot in &mut self.rivets {
            slot.rivet = rivet.to_mm();
        }
        self
    }

    /// With another hole for one rivet, and its cold rivet where it is known. The rivet is counted from 1.
    ///
    /// # Errors
    /// A number of no rivet of the group.
    pub fn one(mut self, number: u8, hole: Length, rivet: Option<Length>) -> Result<Self, Error> {
        let count = f64::from(self.count);
        let error = Error::new(ErrorKind::TooLarge, Field::GroupRivets).value(f64::from(number)).limit(count);
        let at = usize::from(number).checked_sub(1).filter(|_| number <= self.count).ok_or(error)?;
        if let Some(slot) = self.rivets.get_mut(at) {
            slot.hole = hole.to_mm();
            slot.rivet = rivet.map_or(0.0, Length::to_mm);
        }
        Ok(self)
    }

    /// With so many shear planes of each rivet: 1 or 2.
    #[must_use]
    pub const fn planes(mut self, planes: u8) -> Self {
        self.planes = planes;
        self
    }

    /// With the plate that the rivets bear on, so that bearing is worked out: of two plates the thinner, of a plate
    /// between two others that or both of them together, whichever is thinner.
    #[must_use]
    pub const fn plate(mut self, plate: Length) -> Self {
        self.plate = Some(plate);
        self
    }

    /// How many rivets there are.
    #[must_use]
    pub const fn count(&self) -> u8 {
        self.count
    }

    /// The shear planes of each rivet.
    #[must_use]
    pub const fn shear_planes(&self) -> u8 {
        self.planes
    }

    /// Thickness of the plate, mm, where it is given.
    pub(crate) fn thickness(&self) -> Option<f64> {
        self.plate.map(Length::to_mm)
    }

    /// The rivets.
    pub(super) fn placed(&self) -> &[Placed] {
        self.rivets.get(..usize::from(self.count)).unwrap_or(&[])
    }

    /// Whether all rivets are of one size.
    pub(super) fn alike(&self) -> bool {
        let mut all = self.placed().iter();
        all.next().is_none_or(|first| all.all(|r| r.hole == first.hole && r.rivet == first.rivet))
    }

    /// Checks every figure; a hole that was not given is no error here.
    ///
    /// # Errors
    /// A figure outside its range, with the number of its rivet; a rivet greater than its hole; holes that overlap.
    pub fn validate(&self) -> Result<(), Error> {
        Field::ShearPlanes.check(f64::from(self.planes))?;
        if let Some(plate) = self.plate {
            Field::Plate.check(plate.to_mm())?;
        }
        for (r, number) in self.placed().iter().zip(1_u8..) {
            let numbered = |e: Error| e.index(number);
            Field::RivetX.check(r.x).map_err(numbered)?;
            Field::RivetY.check(r.y).map_err(numbered)?;
            if r.hole != 0.0 {
                Field::Hole.check(r.hole).map_err(numbered)?;
            }
            if r.rivet != 0.0 {
                Field::Rivet.check(r.rivet).map_err(numbered)?;
                if r.hole != 0.0 && math::below(r.hole, r.rivet) {
                    let error = Error::new(ErrorKind::RivetExceedsHole, Field::Rivet);
                    return Err(error.value(r.rivet).limit(r.hole).index(number));
                }
            }
        }
        self.apart()
    }

    /// Whether no two holes overlap. Holes that touch leave no plate between them: refused too, as in rows of a joint.
    fn apart(&self) -> Result<(), Error> {
        let (least, _) = Field::RivetDistance.limits();
        for (b, number) in self.placed().iter().zip(1_u8..) {
            for a in self.placed().iter().take(usize::from(number).saturating_sub(1)) {
                let distance = formula::distance(a.x, b.x, a.y, b.y);
                let touching = formula::mean(a.hole, b.hole);
                let limit = math::larger(touching, least);
                if math::below(distance, least) || (touching > 0.0 && math::at_most(distance, touching)) {
                    let error = Error::new(ErrorKind::HolesOverlap, Field::RivetDistance);
                    return Err(error.value(distance).limit(limit).index(number));
                }
            }
        }
        Ok(())
    }
}

/// A load in the plane of the group: a force by its components and a point of its line, a couple, or both.
///
/// x and y run as for the places of the rivets; a couple counts anticlockwise, from x to y. A load that hangs down has a
/// negative `y`.
///
/// ```
/// use seamwright::{group::GroupLoad, quantities::{Force, Length, Moment}};
/// let hanging = GroupLoad::force(Force::kn(0.0), Force::kn(-50.0), Length::mm(500.0), Length::mm(0.0));
/// assert!(hanging.validate().is_ok());
/// assert!(hanging.and_couple(Moment::kn_m(f64::NAN)).validate().is_err());
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct GroupLoad {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) at_x: f64,
    pub(crate) at_y: f64,
    pub(crate) couple: f64,
    pub(super) in_row: Option<u8>,
}

impl GroupLoad {
    /// A force by its components, through a point `(x, y)`.
    #[must_use]
    pub const fn force(along_x: Force, along_y: Force, x: Length, y: Length) -> Self {
        let (at_x, at_y) = (x.to_mm(), y.to_mm());
        GroupLoad { x: along_x.to_n(), y: along_y.to_n(), at_x, at_y, couple: 0.0, in_row: None }
    }

    /// A couple alone, anticlockwise.
    #[must_use]
    pub const fn couple(couple: Moment) -> Self {
        GroupLoad { x: 0.0, y: 0.0, at_x: 0.0, at_y: 0.0, couple: couple.to_n_mm(), in_row: None }
    }

    /// With a couple besides the force, anticlockwise.
    #[must_use]
    pub const fn and_couple(mut self, couple: Moment) -> Self {
        self.couple = couple.to_n_mm();
        self
    }

    /// With the effective eccentricity of an old AISC Manual (Hicks, Handbook of Civil Engineering Calculations, p. 1.83):
    /// `(1 + n)/2` inches less than the true one, `n` the rivets in one vertical row, for a vertical load. It makes the
    /// forces smaller than the elastic method by itself does: not for new work.
    #[must_use]
    pub const fn effective(mut self, in_row: u8) -> Self {
        self.in_row = Some(in_row);
        self
    }

    /// Whether there is a force besides the couple.
    pub(crate) fn has_force(&self) -> bool {
        self.x != 0.0 || self.y != 0.0
    }

    /// Whether the old allowance is taken off the eccentricity.
    pub(crate) fn is_effective(&self) -> bool {
        self.in_row.is_some()
    }

    /// Checks every figure.
    ///
    /// # Errors
    /// A figure outside its range; no load at all; an effective eccentricity for a load that is not vertical.
    pub fn validate(&self) -> Result<(), Error> {
        Field::LoadX.check(self.x)?;
        Field::LoadY.check(self.y)?;
        Field::LoadAtX.check(self.at_x)?;
        Field::LoadAtY.check(self.at_y)?;
        Field::Couple.check(self.couple)?;
        if self.has_force() || self.couple == 0.0 {
            Field::Load.check(formula::resultant(self.x, self.y))?;
        }
        if let Some(n) = self.in_row {
            Field::RowRivets.check(f64::from(n))?;
            if self.x != 0.0 || self.y == 0.0 {
                return Err(Error::new(ErrorKind::Inconsistent, Field::LoadX).value(self.x).limit(0.0));
            }
        }
        Ok(())
    }
}

/// The stresses that are permitted.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct GroupStress {
    pub(super) shear: Stress,
    pub(super) bearing: Option<Stress>,
}

impl GroupStress {
    /// Shear of the rivets, single shear.
    #[must_use]
    pub const fn new(shear: Stress) -> Self {
        GroupStress { shear, bearing: None }
    }

    /// With bearing of the plate.
    #[must_use]
    pub const fn bearing(mut self, bearing: Stress) -> Self {
        self.bearing = Some(bearing);
        self
    }

    /// Checks both against the table of bounds.
    ///
    /// # Errors
    /// A stress that is not finite or outside its range, by name.
    pub fn validate(&self) -> Result<(), Error> {
        Field::Shear.check(self.shear.to_mpa())?;
        if let Some(bearing) = self.bearing {
            Field::Bearing.check(bearing.to_mpa())?;
        }
        Ok(())
    }
}
