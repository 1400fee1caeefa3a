//! The diameter that a group needs.

use super::GroupCheck;
use super::given::{Group, GroupLoad, GroupStress};
use super::shares::shares;
use super::stresses::{double, greatest_force, judged};
use crate::bounds::Field;
use crate::error::{EntryNo, Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::math;
use crate::quantities::Length;
use crate::rules::{Diameter, Entry, Rules, Size};
use crate::sizing::rivet_for;
use crate::step::{Ctx, Name, Num, Plain, Quantity as Q, Section, Why};

/// Steps of the hole that are tried beyond the first.
const MOST_STEPS: u8 = 100;

/// A group of rivets of the standard size that the load needs.
#[derive(Clone, Debug)]
pub struct GroupDesign<N = f64> {
    /// The diameter that shear needs, mm: of the hole or of the rivet, as the rule book counts it.
    pub by_shear: N,
    /// The diameter that bearing needs, mm; `None` without a plate or a bearing stress.
    pub by_bearing: Option<N>,
    /// The greater of both.
    pub needed: N,
    /// The standard hole taken, mm.
    pub hole: f64,
    /// Its cold rivet, mm.
    pub rivet: f64,
    /// The group with it.
    pub check: GroupCheck<N>,
}

impl<N: Num> GroupDesign<N> {
    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> GroupDesign {
        GroupDesign {
            by_shear: self.by_shear.value(),
            by_bearing: self.by_bearing.map(N::value),
            needed: self.needed.value(),
            hole: self.hole,
            rivet: self.rivet,
            check: self.check.values(),
        }
    }
}

/// Finds the standard size of the rule book that a group of equal rivets needs for a load, and checks the group with it.
/// The group has no holes yet; without a plate or a bearing stress shear alone decides.
///
/// # Errors
/// Those of [`check_group`](super::check_group); a hole that is given; a diameter above the book's series; holes of the
/// size needed that overlap.
///
/// ```
/// use seamwright::{group::{Group, GroupLoad, GroupStress, size_group}, rules::STRUCTURAL};
/// use seamwright::quantities::{Force, Length, Stress};
/// let mm = Length::mm;
/// // Two columns of three rivets, 100 mm by 100 mm, and 54 kN at 200 mm from the middle: Singh, Example 5.3.
/// let places: Vec<_> = [0.0, 100.0, 200.0].iter().flat_map(|y| [(mm(-50.0), mm(*y)), (mm(50.0), mm(*y))]).collect();
/// let load = GroupLoad::force(Force::kn(0.0), Force::kn(-54.0), mm(200.0), mm(0.0));
/// let made = size_group(&Group::at(&places)?, &load, &GroupStress::new(Stress::mpa(120.0)), &STRUCTURAL.rules)?;
/// assert!((made.needed - 16.99).abs() < 0.01);
/// assert_eq!((made.hole, made.rivet), (17.5, 16.0));
/// let huge = GroupLoad::force(Force::kn(0.0), Force::kn(-54_000.0), mm(200.0), mm(0.0));
/// assert!(size_group(&Group::at(&places)?, &huge, &GroupStress::new(Stress::mpa(120.0)), &STRUCTURAL.rules).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn size_group(group: &Group, load: &GroupLoad, stress: &GroupStress, rules: &Rules) -> Result<GroupDesign, Error> {
    size_group_with(Plain, group, load, stress, rules)
}

/// [`size_group`] in any context: bare numbers, a record of steps, or numbers with derivatives.
///
/// # Errors
/// As [`size_group`].
pub fn size_group_with<C: Ctx>(
    c: C,
    group: &Group,
    load: &GroupLoad,
    stress: &GroupStress,
    rules: &Rules,
) -> Result<GroupDesign<C::N>, Error> {
    rules.validate()?;
    group.validate()?;
    for (r, number) in group.placed().iter().zip(1_u8..) {
        if r.hole != 0.0 || r.rivet != 0.0 {
            let given = if r.hole != 0.0 { (Field::Hole, r.hole) } else { (Field::Rivet, r.rivet) };
            return Err(Error::new(ErrorKind::Inconsistent, given.0).value(given.1).index(number));
        }
    }
    load.validate()?;
    stress.validate()?;
    let shares = shares(c, group, load, None)?;
    c.section(Section::GroupSize);
    let (_, force) = greatest_force(c, &shares);
    let ss = c.given(Name(Q::Shear, 0), stress.shear.to_mpa());
    let by_shear = match double(c, group, rules) {
        Some(z) => {
            let d = formula::diameter_by_shear_double(force, z, ss);
            c.formula(Name(Q::DiameterByShear, 0), Formula::DiameterByShearDouble.no(), d)
        }
        None => {
            let d = formula::diameter_by_shear(force, ss);
            c.formula(Name(Q::DiameterByShear, 0), Formula::DiameterByShear.no(), d)
        }
    };
    let by_bearing = group.thickness().zip(stress.bearing).map(|(t, sc)| {
        let (t, sc) = (c.given(Name(Q::Plate, 0), t), c.given(Name(Q::Bearing, 0), sc.to_mpa()));
        let d = formula::diameter_by_bearing(force, t, sc);
        c.formula(Name(Q::DiameterByBearing, 0), Formula::DiameterByBearing.no(), d)
    });
    let needed = match by_bearing {
        Some(b) => c.greater(Name(Q::DiameterNeeded, 0), Why::Greatest(EntryNo::NONE), by_shear, b),
        None => by_shear,
    };
    let wanted = Wanted { shear: by_shear.value(), bearing: by_bearing.map(C::N::value) };
    let (name, of_rivet) = (Name(Q::Hole, 0), Name(Q::Rivet, 0));
    let (hole, rivet) = if rules.on(Entry::HOLE_ROUND) {
        let step = rules.get(Entry::HOLE_STEP);
        let hole = wanted.rounded(rules, needed.value(), step)?;
        c.rounded(name, Why::RoundUp(step), hole, needed);
        (hole, rivet_for(c, rules, of_rivet, hole))
    } else {
        let size = wanted.standard(rules, needed.value())?;
        c.rounded(name, Why::Series(size.entry.no()), size.hole, needed);
        c.table(of_rivet, size.entry.no(), size.rivet);
        (size.hole, size.rivet)
    };
    let made = group.hole(Length::mm(Field::Hole.check(hole)?)).rivet(Length::mm(rivet));
    made.validate()?;
    let check = judged(c, &made, stress, rules, shares);
    Ok(GroupDesign { by_shear, by_bearing, needed, hole, rivet, check })
}

/// Diameters that are needed, mm.
struct Wanted {
    shear: f64,
    bearing: Option<f64>,
}

impl Wanted {
    /// Whether a hole and its rivet reach what they count for.
    fn met(&self, rules: &Rules, hole: f64, rivet: f64) -> bool {
        let reach = |entry: Entry, d: f64| match rules.diameter(entry) {
            Diameter::Hole => math::at_least(hole, d),
            Diameter::Rivet => math::at_least(rivet, d),
        };
        reach(Entry::SHEAR_DIAMETER, self.shear) && self.bearing.is_none_or(|d| reach(Entry::BEARING_DIAMETER, d))
    }

    /// The first size of the series that will do.
    fn standard(&self, rules: &Rules, needed: f64) -> Result<Size, Error> {
        rules.series().find(|size| self.met(rules, size.hole, size.rivet)).ok_or_else(|| {
            let error = match rules.series().last() {
                Some(last) => Error::new(ErrorKind::NoStandardSize, Field::Hole).value(needed).limit(last.hole),
                None => Error::new(ErrorKind::Missing, Field::Hole),
            };
            error.entry(Entry::SERIES_HOLE.no())
        })
    }

    /// The first hole on the book's steps that will do.
    fn rounded(&self, rules: &Rules, needed: f64, step: f64) -> Result<f64, Error> {
        let first = math::round_up(needed, step);
        // Where the rivet counts, its hole is a clearance wider: a few steps at most.
        (0..=MOST_STEPS)
            .map(|more| formula::hole_place(first, step, f64::from(more)))
            .find(|hole| self.met(rules, *hole, rivet_for(Plain, rules, Name(Q::Rivet, 0), *hole)))
            .ok_or_else(|| Error::new(ErrorKind::NoStandardSize, Field::Hole).value(needed).limit(first))
    }
}
