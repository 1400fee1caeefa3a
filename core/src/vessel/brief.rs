//! What a vessel is to be designed for.

use super::stocked;
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::Form;
use crate::materials::Materials;
use crate::math;
use crate::quantities::{Length, Pressure};
use crate::rating::Shell;

/// The most thicknesses that are tried.
const MOST: u32 = 4000;

/// Plates that the shop can get.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PlateStock<'a> {
    list: &'a [Length],
    step: Length,
    from: Length,
    to: Length,
}

impl<'a> PlateStock<'a> {
    /// A list of thicknesses, rising.
    #[must_use]
    pub const fn list(plates: &'a [Length]) -> Self {
        PlateStock { list: plates, step: Length::mm(0.0), from: Length::mm(0.0), to: Length::mm(0.0) }
    }

    /// Multiples of a step, between two thicknesses.
    #[must_use]
    pub const fn every(step: Length, from: Length, to: Length) -> Self {
        PlateStock { list: &[], step, from, to }
    }

    /// Thickness number `index`, from 0, mm; `None` beyond the last.
    ///
    /// # Errors
    /// A thickness outside its range, or a step that is not one, with its number in the list.
    ///
    /// ```
    /// use seamwright::{quantities::Length, vessel::PlateStock};
    /// let stock = PlateStock::every(Length::mm(2.0), Length::mm(5.0), Length::mm(9.0));
    /// assert_eq!((stock.thickness(0)?, stock.thickness(1)?, stock.thickness(2)?), (Some(6.0), Some(8.0), None));
    /// assert!(PlateStock::list(&[Length::mm(-3.0)]).thickness(0).is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn thickness(&self, index: u32) -> Result<Option<f64>, Error> {
        let at = usize::try_from(index).unwrap_or(usize::MAX);
        if !self.list.is_empty() {
            return self.list.get(at).map(|t| stocked(t.to_mm(), index.saturating_add(1))).transpose();
        }
        let step = Field::StockStep.check(self.step.to_mm())?;
        let from = math::round_up(stocked(self.from.to_mm(), 0)?, step);
        let plate = from + f64::from(index) * step;
        let more = index < MOST && math::at_most(plate, stocked(self.to.to_mm(), 0)?);
        if more { stocked(plate, 0).map(Some) } else { Ok(None) }
    }

    /// Whether the list rises.
    fn validate(&self) -> Result<(), Error> {
        if self.list.is_empty() {
            return self.thickness(0).map(|_| ());
        }
        let mut before = 0.0;
        for (t, number) in self.list.iter().zip(1_u32..) {
            let t = stocked(t.to_mm(), number)?;
            if t <= before {
                let error = Error::new(ErrorKind::TooSmall, Field::Plate).value(t).limit(before);
                return Err(error.index(u8::try_from(number).unwrap_or(0)));
            }
            before = t;
        }
        Ok(())
    }
}

/// Where a girth seam lies.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum GirthPlace {
    /// Between two rings.
    Middle,
    /// At an end plate.
    End,
    /// At an end plate, or between rings, of a shell whose heads tubes or through stays carry.
    Stayed,
}

/// A girth seam asked for.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct GirthBrief {
    pub(super) form: Form,
    pub(super) place: GirthPlace,
}

impl GirthBrief {
    /// A form and a place. More rows are taken where those of the form do not do.
    #[must_use]
    pub const fn new(form: Form, place: GirthPlace) -> Self {
        GirthBrief { form, place }
    }
}

/// What a vessel is to be designed for.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct VesselBrief<'a> {
    pub(super) form: Form,
    pub(super) pressure: Pressure,
    pub(super) shell: Shell,
    pub(super) materials: Materials,
    pub(super) stock: PlateStock<'a>,
    pub(super) hole: Option<(Length, Option<Length>)>,
    pub(super) girth: Option<GirthBrief>,
}

impl<'a> VesselBrief<'a> {
    /// Form of the seam along the shell, working pressure, shell, stresses on the footing of the shell, and plates.
    #[must_use]
    pub const fn new(
        form: Form,
        pressure: Pressure,
        shell: Shell,
        materials: Materials,
        stock: PlateStock<'a>,
    ) -> Self {
        VesselBrief { form, pressure, shell, materials, stock, hole: None, girth: None }
    }

    /// With another working pressure.
    #[must_use]
    pub const fn pressure(mut self, pressure: Pressure) -> Self {
        self.pressure = pressure;
        self
    }

    /// With the hole of the seam along the shell given, and the rivet where it is known.
    #[must_use]
    pub const fn hole(mut self, hole: Length, rivet: Option<Length>) -> Self {
        self.hole = Some((hole, rivet));
        self
    }

    /// The stresses of the seam along the shell.
    pub(crate) const fn stresses(&self) -> &Materials {
        &self.materials
    }

    /// With a girth seam.
    #[must_use]
    pub const fn girth(mut self, girth: GirthBrief) -> Self {
        self.girth = Some(girth);
        self
    }

    /// Checks every figure.
    ///
    /// # Errors
    /// The first that is not finite or outside its range; a list of plates that does not rise.
    pub fn validate(&self) -> Result<(), Error> {
        Field::Pressure.check(self.pressure.to_mpa())?;
        self.shell.validate()?;
        self.materials.validate()?;
        self.stock.validate()
    }
}
