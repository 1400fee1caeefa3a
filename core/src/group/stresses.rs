//! Stresses of the rivets, the one that bears most, the load that is allowed.

use super::given::{Group, GroupStress};
use super::shares::{Shares, diameter, greatest, of};
use super::{GroupCheck, GroupMode, MAX_RIVETS, RivetLoad, Stressed, keep};
use crate::check::{FindingSink, Findings, Required, Subject};
use crate::error::EntryNo;
use crate::formula::{self, Formula};
use crate::math;
use crate::rules::{Diameter, Entry, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Section, Why};

/// What the stresses are worked out with.
#[derive(Clone, Copy)]
struct With<'a, N> {
    group: &'a Group,
    which: [Diameter; 2],
    /// The factor of double shear, where there are two planes.
    double: Option<N>,
    plate: Option<N>,
}

/// The name under which a diameter of all rivets is given.
pub(super) const fn common(which: Diameter) -> Name {
    match which {
        Diameter::Hole => Name(Q::Hole, 0),
        Diameter::Rivet => Name(Q::Rivet, 0),
    }
}

/// The factor of double shear, where the rivets have two planes.
pub(super) fn double<C: Ctx>(c: C, group: &Group, rules: &Rules) -> Option<C::N> {
    let entry = Entry::DOUBLE_SHEAR;
    (group.shear_planes() == 2).then(|| c.table(Name(Q::DoubleShear, 0), entry.no(), rules.get(entry)))
}

fn shear_stress<C: Ctx>(c: C, name: Name, force: C::N, d: C::N, double: Option<C::N>) -> C::N {
    match double {
        Some(z) => {
            let stress = formula::rivet_shear_stress_double(force, z, d);
            c.formula(name, Formula::RivetShearStressDouble.no(), stress)
        }
        None => c.formula(name, Formula::RivetShearStress.no(), formula::rivet_shear_stress(force, d)),
    }
}

fn bearing_stress<C: Ctx>(c: C, name: Name, force: C::N, d: C::N, t: C::N) -> C::N {
    c.formula(name, Formula::RivetBearingStress.no(), formula::rivet_bearing_stress(force, d, t))
}

/// Stresses of a group, and what is made of them. All rivets have holes.
#[inline(never)]
pub(super) fn judged<C: Ctx>(
    c: C,
    group: &Group,
    permitted: &GroupStress,
    rules: &Rules,
    shares: Shares<C::N>,
) -> GroupCheck<C::N> {
    c.section(Section::GroupStresses);
    let shear = c.given(Name(Q::Shear, 0), permitted.shear.to_mpa());
    let plate = group.thickness().map(|t| c.given(Name(Q::Plate, 0), t));
    let crush = permitted.bearing.filter(|_| plate.is_some());
    let crush = crush.map(|b| c.given(Name(Q::Bearing, 0), b.to_mpa()));
    let which = [rules.diameter(Entry::SHEAR_DIAMETER), rules.diameter(Entry::BEARING_DIAMETER)];
    let with = With { group, which, double: double(c, group, rules), plate };
    let rivets = each(c, &with, &shares);
    let (most_shear, most_bearing) = if group.alike() { alike(c, &with, &shares) } else { among(c, &rivets) };
    let over = |q: Q, stress: C::N, permitted: C::N| {
        c.formula(Name(q, 0), Formula::Use.no(), formula::ratio(stress, permitted))
    };
    let shear_used = over(Q::ShearUse, most_shear.1, shear);
    let shear = Stressed { rivet: most_shear.0, stress: most_shear.1, used: Some(shear_used) };
    let bearing = most_bearing.map(|(rivet, stress)| {
        let used = crush.map(|permitted| over(Q::BearingUse, stress, permitted));
        Stressed { rivet, stress, used }
    });
    let (mut used, mut governs) = (shear_used, GroupMode::Shear);
    if let Some(other) = bearing.and_then(|b| b.used) {
        let (name, why) = (Name(Q::Use, 0), Why::Greatest(EntryNo::NONE));
        if math::below(used.value(), other.value()) {
            (used, governs) = (c.choice(name, why, other, used), GroupMode::Bearing);
        } else {
            used = c.choice(name, why, used, other);
        }
    }
    let safe = |q: Q, p: C::N| c.formula(Name(q, 0), Formula::SafeLoad.no(), formula::safe_load(p, used));
    let safe_load = shares.load.map(|p| safe(Q::SafeLoad, p));
    let safe_couple = shares.couple.map(|m| safe(Q::SafeCouple, m));
    let mut findings = Findings::new();
    compare(&mut findings, group, permitted, rules, &shear, bearing.as_ref());
    findings.open_first();
    let Shares { centroid, areas, polar, arm, moment, centre, .. } = shares;
    GroupCheck {
        centroid,
        areas,
        polar,
        arm,
        moment,
        centre,
        shear,
        bearing,
        governs,
        used,
        safe_load,
        safe_couple,
        findings,
        rivets,
    }
}

/// Every rivet with its stresses; told to the reader where rivets differ.
#[inline(never)]
fn each<C: Ctx>(c: C, with: &With<'_, C::N>, shares: &Shares<C::N>) -> heapless::Vec<RivetLoad<C::N>, MAX_RIVETS> {
    let alike = with.group.alike();
    // Rivets of one size have their stresses as their forces: the greatest is enough to show.
    let c = if alike { c.quiet() } else { c };
    let [in_shear, in_bearing] = with.which;
    let mut list = heapless::Vec::new();
    let all = with.group.placed().iter().zip(&shares.rivets).zip((1_u8..).zip(0_usize..));
    for ((placed, share), (number, at)) in all {
        let d = if alike { c.given(common(in_shear), diameter(placed, in_shear)) } else { of(&shares.diameters, at) };
        let shear = shear_stress(c, Name(Q::RivetShearStress, number), share.resultant, d, with.double);
        let bearing = with.plate.map(|t| {
            let d = match (alike, in_bearing == in_shear) {
                (_, true) => d,
                (true, false) => c.given(common(in_bearing), diameter(placed, in_bearing)),
                (false, false) => c.given(Name(Q::BearingDiameter, number), diameter(placed, in_bearing)),
            };
            bearing_stress(c, Name(Q::RivetBearingStress, number), share.resultant, d, t)
        });
        let rivet = if placed.rivet == 0.0 { placed.hole } else { placed.rivet };
        let share = *share;
        keep(
            &mut list,
            RivetLoad {
                place: [placed.x, placed.y],
                hole: placed.hole,
                rivet,
                direct: share.direct,
                turning: share.turning,
                force: share.force,
                resultant: share.resultant,
                shear,
                bearing,
            },
        );
    }
    list
}

/// A rivet (from 1) and a stress.
type At<N> = (u8, N);

fn numbered(at: usize) -> u8 {
    u8::try_from(at).unwrap_or(0).saturating_add(1)
}

/// The greatest force of the group, under its name.
pub(super) fn greatest_force<C: Ctx>(c: C, shares: &Shares<C::N>) -> At<C::N> {
    let (at, force) = greatest(shares.rivets.iter().map(|share| share.resultant));
    (numbered(at), c.formula(Name(Q::GreatestForce, 0), Formula::GreatestForce.no(), force))
}

/// Rivets of one size: the one with the greatest force has the greatest stresses.
fn alike<C: Ctx>(c: C, with: &With<'_, C::N>, shares: &Shares<C::N>) -> (At<C::N>, Option<At<C::N>>) {
    let (number, force) = greatest_force(c, shares);
    let placed = with.group.placed().first().copied().unwrap_or_default();
    let [in_shear, in_bearing] = with.which;
    let d = c.given(common(in_shear), diameter(&placed, in_shear));
    let shear = shear_stress(c, Name(Q::GreatestShear, 0), force, d, with.double);
    let bearing = with.plate.map(|t| {
        let d = c.given(common(in_bearing), diameter(&placed, in_bearing));
        (number, bearing_stress(c, Name(Q::GreatestBearing, 0), force, d, t))
    });
    ((number, shear), bearing)
}

/// Rivets of several sizes: the greatest of each stress.
fn among<C: Ctx>(c: C, rivets: &[RivetLoad<C::N>]) -> (At<C::N>, Option<At<C::N>>) {
    let named =
        |q: Q, (at, stress): (usize, C::N)| (numbered(at), c.formula(Name(q, 0), Formula::GreatestStress.no(), stress));
    let shear = named(Q::GreatestShear, greatest(rivets.iter().map(|r| r.shear)));
    let known = rivets.iter().all(|r| r.bearing.is_some());
    let bearing = known.then(|| named(Q::GreatestBearing, greatest(rivets.iter().filter_map(|r| r.bearing))));
    (shear, bearing)
}

/// What is permitted against what is there.
#[inline(never)]
fn compare<N: Num>(
    findings: &mut Findings,
    group: &Group,
    permitted: &GroupStress,
    rules: &Rules,
    shear: &Stressed<N>,
    bearing: Option<&Stressed<N>>,
) {
    let (most, none) = (Required::AtMost, EntryNo::NONE);
    let limit = permitted.shear.to_mpa();
    findings.compare(Subject::GroupShear, shear.rivet, none, most, limit, shear.stress.value());
    match (bearing, permitted.bearing) {
        (Some(b), Some(limit)) => {
            findings.compare(Subject::GroupBearing, b.rivet, none, most, limit.to_mpa(), b.stress.value());
        }
        _ => (findings as &mut dyn FindingSink).unknown(Subject::GroupBearingUnknown, none, f64::NAN),
    }
    if let Some((number, least, distance)) = closest(group, rules) {
        let entry = Entry::PITCH_LEAST.no();
        findings.compare(Subject::RivetsApart, number, entry, Required::AtLeast, least, distance);
    }
}

/// The two rivets with the least room to spare against the book's least pitch: the second of them, what the book asks,
/// and how far apart they are, mm.
fn closest(group: &Group, rules: &Rules) -> Option<(u8, f64, f64)> {
    let which = rules.diameter(Entry::DISTANCE_DIAMETER);
    let (factor, add) = (rules.get(Entry::PITCH_LEAST), rules.get(Entry::PITCH_LEAST_ADD));
    let mut found: Option<(u8, f64, f64)> = None;
    for (b, number) in group.placed().iter().zip(1_u8..) {
        for a in group.placed().iter().take(usize::from(number).saturating_sub(1)) {
            let d = math::larger(diameter(a, which), diameter(b, which));
            let least = formula::margin(factor, d, add);
            let distance = formula::distance(a.x, b.x, a.y, b.y);
            let room = formula::difference(distance, least);
            if least > 0.0 && found.is_none_or(|(_, l, f)| math::below(room, formula::difference(f, l))) {
                found = Some((number, least, distance));
            }
        }
    }
    found
}
