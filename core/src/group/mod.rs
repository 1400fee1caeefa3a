//! Groups of rivets under a load that does not pass through their centroid: brackets, gussets.
//!
//! The elastic method: the plate is rigid, each rivet gives way in proportion to its force and its area. The load at the
//! centroid is shared by area (direct shares), its moment about the centroid by area and distance (at right angles to the
//! line from the centroid). Friction, prying, bending and edges of the plate are not looked at.
//!
//! [`check_group`] finds what each rivet takes, which one bears most, its stresses and the load that is allowed;
//! [`size_group`] the diameter that is needed, and the standard size of the rule book.

mod given;
mod shares;
mod size;
mod stresses;

pub use given::{Group, GroupLoad, GroupStress};
pub use size::{GroupDesign, size_group, size_group_with};

use crate::bounds::Field;
use crate::check::Findings;
use crate::error::{Error, ErrorKind};
use crate::math;
use crate::rules::{Entry, Rules};
use crate::step::{Ctx, Num, Plain};

/// The most rivets of a group.
pub const MAX_RIVETS: usize = 32;

/// What one rivet of a group takes. Forces are what the plate with the load puts on the rivet, N.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct RivetLoad<N = f64> {
    /// Its place, mm.
    pub place: [f64; 2],
    /// Diameter of its hole, mm.
    pub hole: f64,
    /// Diameter of the cold rivet, mm; the hole's where none was given.
    pub rivet: f64,
    /// Its share of the load at the centroid, along x and y.
    pub direct: [N; 2],
    /// Its share of the moment, along x and y.
    pub turning: [N; 2],
    /// Both together, along x and y.
    pub force: [N; 2],
    /// Both together.
    pub resultant: N,
    /// Shear stress, MPa. In double shear the rule book's factor counts, 1.75 to 2 areas.
    pub shear: N,
    /// Bearing stress, MPa; `None` without a plate.
    pub bearing: Option<N>,
}

impl<N: Num> RivetLoad<N> {
    /// The direction of the force in degrees, from x towards y; above -180, up to 180.
    #[must_use]
    pub fn direction(&self) -> f64 {
        let [x, y] = self.force;
        math::direction(x.value(), y.value())
    }

    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> RivetLoad {
        RivetLoad {
            place: self.place,
            hole: self.hole,
            rivet: self.rivet,
            direct: self.direct.map(N::value),
            turning: self.turning.map(N::value),
            force: self.force.map(N::value),
            resultant: self.resultant.value(),
            shear: self.shear.value(),
            bearing: self.bearing.map(N::value),
        }
    }
}

/// The greatest stress of a kind in a group.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Stressed<N = f64> {
    /// The rivet, from 1: of equal ones the first.
    pub rivet: u8,
    /// The stress, MPa.
    pub stress: N,
    /// Over the stress that is permitted; `None` where none was given.
    pub used: Option<N>,
}

impl<N: Num> Stressed<N> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Stressed {
        Stressed { rivet: self.rivet, stress: self.stress.value(), used: self.used.map(N::value) }
    }
}

/// What limits a group.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum GroupMode {
    /// Shear of a rivet.
    Shear,
    /// Bearing of the plate.
    Bearing,
}

/// A group under its load.
#[derive(Clone, Debug)]
pub struct GroupCheck<N = f64> {
    /// The centroid of the rivets' areas, mm.
    pub centroid: [N; 2],
    /// The areas together, over that of the largest rivet: the number of rivets where all are alike.
    pub areas: N,
    /// The polar moment about the centroid, mm2: squares of distances, each times its area over that of the largest.
    pub polar: N,
    /// The point of the load from the centroid, mm; along x the effective eccentricity where that was asked for.
    pub arm: [N; 2],
    /// The moment about the centroid, N mm, anticlockwise.
    pub moment: N,
    /// The instantaneous centre, about which the group turns, mm: `None` where it does not turn.
    pub centre: Option<[N; 2]>,
    /// The greatest shear stress.
    pub shear: Stressed<N>,
    /// The greatest bearing stress; `None` without a plate.
    pub bearing: Option<Stressed<N>>,
    /// Shear or bearing, whichever is used more; of equal ones shear.
    pub governs: GroupMode,
    /// How much of the permitted stress is used, at most.
    pub used: N,
    /// The force that is allowed along the same line, N; with a couple, both grow together. `None` without a force.
    pub safe_load: Option<N>,
    /// The couple that is allowed, N mm; `None` without a couple.
    pub safe_couple: Option<N>,
    /// Stresses and distances against what is permitted, open ones first.
    pub findings: Findings,
    rivets: heapless::Vec<RivetLoad<N>, MAX_RIVETS>,
}

impl<N: Num> GroupCheck<N> {
    /// The rivets, in the order in which they were given.
    #[must_use]
    pub fn rivets(&self) -> &[RivetLoad<N>] {
        &self.rivets
    }

    /// The number of the critical rivet, from 1: the one at which the governing stress is greatest, of equal ones the
    /// first.
    #[must_use]
    pub fn critical(&self) -> u8 {
        match (self.governs, &self.bearing) {
            (GroupMode::Bearing, Some(bearing)) => bearing.rivet,
            _ => self.shear.rivet,
        }
    }

    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> GroupCheck {
        let mut rivets = heapless::Vec::new();
        for rivet in self.rivets {
            keep(&mut rivets, rivet.values());
        }
        GroupCheck {
            centroid: self.centroid.map(N::value),
            areas: self.areas.value(),
            polar: self.polar.value(),
            arm: self.arm.map(N::value),
            moment: self.moment.value(),
            centre: self.centre.map(|centre| centre.map(N::value)),
            shear: self.shear.values(),
            bearing: self.bearing.map(Stressed::values),
            governs: self.governs,
            used: self.used.value(),
            safe_load: self.safe_load.map(N::value),
            safe_couple: self.safe_couple.map(N::value),
            findings: self.findings,
            rivets,
        }
    }
}

/// Adds to a list that has room for all rivets of a group.
fn keep<T>(list: &mut heapless::Vec<T, MAX_RIVETS>, item: T) {
    // A group has no more rivets than the list has room for.
    let _ = list.push(item);
}

/// Checks a group of rivets under a load. Which diameter counts in shear and in bearing, and what a rivet in double
/// shear bears, is the rule book's to say.
///
/// # Errors
/// A figure outside its range, with the number of its rivet; no hole; holes that overlap; no load; a load that turns
/// the plate about its only rivet; an eccentricity below the allowance.
///
/// ```
/// use seamwright::{group::{Group, GroupLoad, GroupStress, check_group}, rules::METRIC};
/// use seamwright::quantities::{Force, Length, Stress};
/// let mm = Length::mm;
/// // Four rivets in a line, 100 mm apart, and 25 kN hanging 100 mm beside it: Bhandari, Example 8.24.
/// let line = Group::at(&[(mm(0.0), mm(0.0)), (mm(0.0), mm(100.0)), (mm(0.0), mm(200.0)), (mm(0.0), mm(300.0))])?;
/// let load = GroupLoad::force(Force::kn(0.0), Force::kn(-25.0), mm(100.0), mm(0.0));
/// let stress = GroupStress::new(Stress::mpa(60.0));
/// let found = check_group(&line.hole(mm(15.0)), &load, &stress, &METRIC.rules)?;
/// assert_eq!(found.critical(), 1);
/// assert!((found.rivets()[0].resultant - 9762.8).abs() < 0.1); // sqrt(6250^2 + 7500^2)
/// assert!(found.used < 1.0);
/// assert!(check_group(&line, &load, &stress, &METRIC.rules).is_err()); // no hole
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn check_group(group: &Group, load: &GroupLoad, stress: &GroupStress, rules: &Rules) -> Result<GroupCheck, Error> {
    check_group_with(Plain, group, load, stress, rules)
}

/// [`check_group`] in any context: bare numbers, a record of steps, or numbers with derivatives.
///
/// # Errors
/// As [`check_group`].
pub fn check_group_with<C: Ctx>(
    c: C,
    group: &Group,
    load: &GroupLoad,
    stress: &GroupStress,
    rules: &Rules,
) -> Result<GroupCheck<C::N>, Error> {
    rules.validate()?;
    group.validate()?;
    for (r, number) in group.placed().iter().zip(1_u8..) {
        if r.hole == 0.0 {
            return Err(Error::new(ErrorKind::Missing, Field::Hole).index(number));
        }
    }
    load.validate()?;
    stress.validate()?;
    let which = rules.diameter(Entry::SHEAR_DIAMETER);
    let shares = shares::shares(c, group, load, Some(which))?;
    Ok(stresses::judged(c, group, stress, rules, shares))
}
