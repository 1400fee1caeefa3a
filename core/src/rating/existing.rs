//! What is known of an existing joint, figure by figure, and how it is known.

use super::{Basis, Footing, Service, Shell};
use crate::joint::{Form, MAX_ROWS};
use crate::quantities::{Length, Pressure, Stress};
use crate::rules::Metal;

/// A length and how it is known.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct KnownLength {
    pub(super) length: Length,
    pub(super) basis: Basis,
}

impl KnownLength {
    /// Measured on the boiler: the least found.
    #[must_use]
    pub const fn measured(length: Length) -> Self {
        KnownLength { length, basis: Basis::Measured }
    }

    /// From a drawing, a certificate, a stamp.
    #[must_use]
    pub const fn given(length: Length) -> Self {
        KnownLength { length, basis: Basis::Given }
    }

    /// The length.
    #[must_use]
    pub const fn length(&self) -> Length {
        self.length
    }

    /// How it is known.
    #[must_use]
    pub const fn basis(&self) -> Basis {
        self.basis
    }
}

/// A joint along the shell of a boiler in service, as found. What is not stated is taken from the rule book or on the
/// safe side, and listed.
///
/// ```
/// use seamwright::{joint::Form, quantities::{Length, Pressure}, rules::{Metal, US_EXISTING}};
/// use seamwright::rating::{Existing, KnownLength, rate};
/// let inch = |x: f64| KnownLength::measured(Length::inch(x));
/// let found = Existing::new(Form::lap(2)?, KnownLength::given(Length::inch(3.5)), inch(0.45), Length::inch(48.0))
///     .hole(inch(0.9375)).metals(Metal::Steel, Metal::Steel).safety(5.0)
///     .present(Pressure::psi(125.0)).wastage_rate(Length::inch(0.005));
/// let rated = rate(&found, &US_EXISTING.rules)?;
/// assert!((Pressure::mpa(rated.allowed).to_psi() - 144.6).abs() < 0.1);
/// assert!((rated.life.unwrap().years - 15.5).abs() < 0.05);
/// // No factor of safety, neither from the user nor from this book: nothing is rated.
/// let unknown = Existing::new(Form::lap(2)?, KnownLength::given(Length::inch(3.5)), inch(0.45), Length::inch(48.0));
/// assert!(rate(&unknown.metals(Metal::Steel, Metal::Steel), &US_EXISTING.rules).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Existing {
    pub(super) form: Form,
    pub(super) pitch: KnownLength,
    pub(super) plate: KnownLength,
    pub(super) other_plate: Option<KnownLength>,
    pub(super) straps: Option<(KnownLength, Option<KnownLength>)>,
    pub(super) shell_plate: Option<KnownLength>,
    pub(super) nominal: Option<Length>,
    pub(super) holes: [Option<KnownLength>; MAX_ROWS],
    pub(super) back: [Option<Length>; MAX_ROWS],
    pub(super) margin: Option<Length>,
    pub(super) metals: Option<(Metal, Metal)>,
    pub(super) tension: Option<Stress>,
    pub(super) shear: Option<Stress>,
    pub(super) bearing: Option<Stress>,
    pub(super) shell: Shell,
    pub(super) present: Option<Pressure>,
    pub(super) rate: Option<Length>,
    pub(super) earlier: Option<(Length, f64)>,
    pub(super) stray_row: u8,
}

impl Existing {
    /// A joint of a form: pitch of the outer row (width of the strip where it has several rivets), the least plate at
    /// the seam, and the inside diameter of the shell. Strengths are those at failure.
    #[must_use]
    pub const fn new(form: Form, pitch: KnownLength, plate: KnownLength, inside: Length) -> Self {
        Existing {
            form,
            pitch,
            plate,
            other_plate: None,
            straps: None,
            shell_plate: None,
            nominal: None,
            holes: [None; MAX_ROWS],
            back: [None; MAX_ROWS],
            margin: None,
            metals: None,
            tension: None,
            shear: None,
            bearing: None,
            shell: Shell::new(inside, Footing::Ultimate).service(Service::in_service()),
            present: None,
            rate: None,
            earlier: None,
            stray_row: 0,
        }
    }

    /// With the second plate of a lap; without it, it is taken as thick as the first.
    #[must_use]
    pub const fn other_plate(mut self, plate: KnownLength) -> Self {
        self.other_plate = Some(plate);
        self
    }

    /// With the straps: the only, wide or first one, and the narrow or second one.
    #[must_use]
    pub const fn straps(mut self, wide: KnownLength, narrow: Option<KnownLength>) -> Self {
        self.straps = Some((wide, narrow));
        self
    }

    /// With the least plate of the shell away from the seam, which is held against the pressure as a solid plate.
    #[must_use]
    pub const fn shell_plate(mut self, plate: KnownLength) -> Self {
        self.shell_plate = Some(plate);
        self
    }

    /// With the plate's thickness when new, which tables of driven rivets go by.
    #[must_use]
    pub const fn nominal(mut self, plate: Length) -> Self {
        self.nominal = Some(plate);
        self
    }

    /// With the driven rivet, which is the hole, of all rows.
    #[must_use]
    pub const fn hole(mut self, hole: KnownLength) -> Self {
        self.holes = [Some(hole); MAX_ROWS];
        self
    }

    /// With the driven rivet of one row, from 1. A row that the form does not have is refused when it is rated.
    #[must_use]
    pub fn row(mut self, row: usize, hole: KnownLength) -> Self {
        match self.holes.get_mut(row.wrapping_sub(1)) {
            Some(slot) if row <= self.form.row_count() => *slot = Some(hole),
            _ => self.stray_row = u8::try_from(row).unwrap_or(u8::MAX),
        }
        self
    }

    /// With the distance from row `row` (from 1) to the next.
    #[must_use]
    pub fn back_pitch(mut self, row: usize, distance: Length) -> Self {
        let gaps = self.form.row_count().wrapping_sub(1);
        match self.back.get_mut(row.wrapping_sub(1)) {
            Some(slot) if row <= gaps => *slot = Some(distance),
            _ => self.stray_row = u8::try_from(row).unwrap_or(u8::MAX),
        }
        self
    }

    /// With the margin.
    #[must_use]
    pub const fn margin(mut self, margin: Length) -> Self {
        self.margin = Some(margin);
        self
    }

    /// With the metals of plates and rivets: strengths that are not given are the book's for them.
    #[must_use]
    pub const fn metals(mut self, plates: Metal, rivets: Metal) -> Self {
        self.metals = Some((plates, rivets));
        self
    }

    /// With the tensile strength of the plates, from a stamp, a certificate or a test.
    #[must_use]
    pub const fn tension(mut self, strength: Stress) -> Self {
        self.tension = Some(strength);
        self
    }

    /// With the shear strength of the rivets.
    #[must_use]
    pub const fn shear(mut self, strength: Stress) -> Self {
        self.shear = Some(strength);
        self
    }

    /// With the crushing strength of the plates.
    #[must_use]
    pub const fn bearing(mut self, strength: Stress) -> Self {
        self.bearing = Some(strength);
        self
    }

    /// With strengths that are permissible stresses instead.
    #[must_use]
    pub const fn permissible(mut self) -> Self {
        self.shell.footing = Footing::Permissible;
        self
    }

    /// With the factor of safety that the authority sets.
    #[must_use]
    pub const fn safety(mut self, factor: f64) -> Self {
        self.shell.safety = Some(factor);
        self
    }

    /// With a corrosion allowance, besides the wastage that is measured.
    #[must_use]
    pub const fn corrosion(mut self, allowance: Length) -> Self {
        self.shell.corrosion = Some(allowance);
        self
    }

    /// With its circumstances. It is in service, whatever they say of that.
    #[must_use]
    pub const fn service(mut self, service: Service) -> Self {
        self.shell.service = Service { existing: true, ..service };
        self
    }

    /// With the present working pressure.
    #[must_use]
    pub const fn present(mut self, pressure: Pressure) -> Self {
        self.present = Some(pressure);
        self
    }

    /// With the loss of thickness in a year.
    #[must_use]
    pub const fn wastage_rate(mut self, a_year: Length) -> Self {
        self.rate = Some(a_year);
        self
    }

    /// With the plate's thickness at an earlier inspection, some years ago: the wastage since then goes on.
    #[must_use]
    pub const fn earlier(mut self, plate: Length, years_ago: f64) -> Self {
        self.earlier = Some((plate, years_ago));
        self
    }

    /// The pitch, and how it is known.
    #[must_use]
    pub const fn pitch(&self) -> &KnownLength {
        &self.pitch
    }

    /// The present working pressure, where it was stated.
    #[must_use]
    pub const fn present_pressure(&self) -> Option<Pressure> {
        self.present
    }

    /// The loss of thickness in a year, where it was stated as such.
    #[must_use]
    pub const fn wastage(&self) -> Option<Length> {
        self.rate
    }

    /// The plate's thickness at an earlier inspection and the years since, where they were stated.
    #[must_use]
    pub const fn earlier_plate(&self) -> Option<(Length, f64)> {
        self.earlier
    }

    /// The shell.
    #[must_use]
    pub const fn shell(&self) -> &Shell {
        &self.shell
    }
}
