//! Centroid, polar moment, and what each rivet takes of the load.

use super::given::{Group, GroupLoad, Placed};
use super::{MAX_RIVETS, keep};
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::math;
use crate::rules::Diameter;
use crate::step::{Ctx, Name, Num, Quantity as Q, Section};

/// What one rivet takes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Share<N> {
    pub direct: [N; 2],
    pub turning: [N; 2],
    pub force: [N; 2],
    pub resultant: N,
}

/// The group under its load, before any stress.
#[derive(Clone, Debug)]
pub(super) struct Shares<N> {
    pub centroid: [N; 2],
    pub areas: N,
    pub polar: N,
    pub arm: [N; 2],
    pub moment: N,
    pub centre: Option<[N; 2]>,
    /// The force, whatever its direction, where there is one.
    pub load: Option<N>,
    /// The couple, where there is one.
    pub couple: Option<N>,
    pub rivets: heapless::Vec<Share<N>, MAX_RIVETS>,
    /// Diameters that count in shear, where rivets differ.
    pub diameters: heapless::Vec<N, MAX_RIVETS>,
}

/// Figures of all rivets.
type Each<N> = heapless::Vec<N, MAX_RIVETS>;

/// The diameter of a rivet that counts, mm.
pub(super) fn diameter(placed: &Placed, which: Diameter) -> f64 {
    match which {
        Diameter::Hole => placed.hole,
        Diameter::Rivet if placed.rivet == 0.0 => placed.hole,
        Diameter::Rivet => placed.rivet,
    }
}

/// Figures of all rivets added up, in one line.
fn total<C: Ctx>(c: C, name: Name, each: &Each<C::N>) -> C::N {
    let mut all = each.iter().copied();
    let first = all.next().unwrap_or(C::N::lit(0.0));
    c.formula(name, Formula::GroupSum.no(), all.fold(first, formula::sum))
}

/// A line for each rivet.
fn each<C: Ctx>(rivets: usize, mut line: impl FnMut(u8, usize) -> C::N) -> Each<C::N> {
    let mut list = Each::new();
    for (number, at) in (1_u8..).zip(0..rivets) {
        keep(&mut list, line(number, at));
    }
    list
}

/// The figure of a rivet (from 0).
pub(super) fn of<N: Num>(list: &Each<N>, at: usize) -> N {
    list.get(at).copied().unwrap_or(N::lit(0.0))
}

/// Places, areas, centroid and polar moment.
struct Geometry<N> {
    x: Each<N>,
    y: Each<N>,
    /// Areas over that of the largest rivet, where they differ.
    ratios: Option<Each<N>>,
    diameters: Each<N>,
    areas: N,
    centroid: [N; 2],
    polar: N,
}

/// The place of the first of the greatest; equal ones within the tolerance go to the first.
pub(super) fn greatest<N: Num>(all: impl Iterator<Item = N>) -> (usize, N) {
    let mut best = (0, N::lit(0.0));
    for (at, x) in all.enumerate() {
        if at == 0 || math::below(best.1.value(), x.value()) {
            best = (at, x);
        }
    }
    best
}

#[inline(never)]
fn geometry<C: Ctx>(c: C, group: &Group, which: Option<Diameter>) -> Geometry<C::N> {
    c.section(Section::Group);
    let placed = group.placed();
    let n = placed.len();
    let at = |i: usize| placed.get(i).copied().unwrap_or_default();
    let mut x = Each::new();
    let mut y = Each::new();
    for (r, number) in placed.iter().zip(1_u8..) {
        keep(&mut x, c.given(Name(Q::RivetX, number), r.x));
        keep(&mut y, c.given(Name(Q::RivetY, number), r.y));
    }
    // Rivets of one size have equal areas: each counts as one.
    let mut diameters = Each::new();
    let ratios = which.filter(|_| !group.alike()).map(|which| {
        diameters = each::<C>(n, |number, i| c.given(Name(Q::ShearDiameter, number), diameter(&at(i), which)));
        let (_, largest) = greatest(diameters.iter().copied());
        let largest = c.formula(Name(Q::LargestDiameter, 0), Formula::Largest.no(), largest);
        each::<C>(n, |number, i| {
            let ratio = formula::area_ratio(of(&diameters, i), largest);
            c.formula(Name(Q::AreaRatio, number), Formula::AreaRatio.no(), ratio)
        })
    });
    let areas = match &ratios {
        Some(ratios) => total(c, Name(Q::AreaSum, 0), ratios),
        None => c.given(Name(Q::GroupRivets, 0), f64::from(group.count())),
    };
    let weighed = |q: Q, list: &Each<C::N>| match &ratios {
        None => list.clone(),
        Some(ratios) => each::<C>(n, |number, i| {
            let weighed = formula::area_times(of(ratios, i), of(list, i));
            c.formula(Name(q, number), Formula::AreaTimes.no(), weighed)
        }),
    };
    let centre = |sum: Q, to: Q, list: &Each<C::N>| {
        let sum = total(c, Name(sum, 0), list);
        c.formula(Name(to, 0), Formula::Centroid.no(), formula::centroid(sum, areas))
    };
    let centroid =
        [centre(Q::SumX, Q::CentroidX, &weighed(Q::AreaX, &x)), centre(Q::SumY, Q::CentroidY, &weighed(Q::AreaY, &y))];
    let [xc, yc] = centroid;
    let squares = each::<C>(n, |number, i| {
        let off =
            |q: Q, a: C::N, b: C::N| c.formula(Name(q, number), Formula::FromCentroid.no(), formula::difference(a, b));
        let (u, v) = (off(Q::RivetArmX, of(&x, i), xc), off(Q::RivetArmY, of(&y, i), yc));
        c.formula(Name(Q::ArmSquared, number), Formula::ArmSquared.no(), formula::arm_squared(u, v))
    });
    let polar = total(c, Name(Q::PolarMoment, 0), &weighed(Q::AreaArm, &squares));
    Geometry { x, y, ratios, diameters, areas, centroid, polar }
}

/// What each rivet takes. `which` diameter counts in shear; none where no diameter is known yet.
pub(super) fn shares<C: Ctx>(
    c: C,
    group: &Group,
    load: &GroupLoad,
    which: Option<Diameter>,
) -> Result<Shares<C::N>, Error> {
    let g = geometry(c, group, which);
    let on = on_group(c, load, &g)?;
    let (moment, turns) = (on.moment, g.polar.value() > 0.0);
    if !turns {
        // A load in line with the only rivet has no arm but for its last bits.
        let [ex, ey] = on.arm.map(|e| math::abs(e.value()));
        let reach = on.force.map_or(0.0, |[px, py]| (math::abs(px.value()) + math::abs(py.value())) * (ex + ey));
        if math::abs(moment.value()) > math::TOLERANCE * reach {
            return Err(Error::new(ErrorKind::RivetTurns, Field::Couple).value(moment.value()).limit(0.0));
        }
    }
    let centre = if turns { instant(c, &g, &on) } else { None };
    c.section(Section::GroupForces);
    let common = on.force.filter(|_| g.ratios.is_none()).map(|[px, py]| {
        let part = |q: Q, p: C::N| c.formula(Name(q, 0), Formula::DirectShare.no(), formula::direct_share(p, g.areas));
        [part(Q::DirectX, px), part(Q::DirectY, py)]
    });
    let mut rivets = heapless::Vec::new();
    for (number, at) in (1_u8..).zip(0..group.placed().len()) {
        keep(&mut rivets, share(c, &g, &on, common, turns, number, at));
    }
    let Geometry { areas, centroid, polar, diameters, .. } = g;
    let On { arm, load, couple, .. } = on;
    Ok(Shares { centroid, areas, polar, arm, moment, centre, load, couple, rivets, diameters })
}

/// The load on the group.
struct On<N> {
    force: Option<[N; 2]>,
    load: Option<N>,
    arm: [N; 2],
    couple: Option<N>,
    moment: N,
}

#[inline(never)]
fn on_group<C: Ctx>(c: C, load: &GroupLoad, g: &Geometry<C::N>) -> Result<On<C::N>, Error> {
    c.section(Section::GroupLoad);
    let name = Name(Q::GroupMoment, 0);
    let couple = (load.couple != 0.0).then(|| c.given(Name(Q::Couple, 0), load.couple));
    if !load.has_force() {
        let zero = C::N::lit(0.0);
        let taken = couple.unwrap_or(zero);
        let moment = c.formula(name, Formula::MomentTaken.no(), taken);
        return Ok(On { force: None, load: None, arm: [zero; 2], couple, moment });
    }
    let px = c.given(Name(Q::LoadX, 0), load.x);
    let py = c.given(Name(Q::LoadY, 0), load.y);
    let all = c.formula(Name(Q::LoadInAll, 0), Formula::Resultant.no(), formula::resultant(px, py));
    let arm = |at: Q, to: Q, given: f64, centre: C::N| {
        let at = c.given(Name(at, 0), given);
        c.formula(Name(to, 0), Formula::FromCentroid.no(), formula::difference(at, centre))
    };
    let [xc, yc] = g.centroid;
    let mut ex = arm(Q::LoadAtX, Q::EccentricX, load.at_x, xc);
    let ey = arm(Q::LoadAtY, Q::EccentricY, load.at_y, yc);
    if let Some(n) = load.in_row {
        ex = effective(c, ex, n)?;
    }
    let moment = match couple {
        Some(m) => c.formula(name, Formula::MomentSum.no(), formula::moment_sum(py, ex, px, ey, m)),
        None => c.formula(name, Formula::MomentAbout.no(), formula::moment_about(py, ex, px, ey)),
    };
    Ok(On { force: Some([px, py]), load: Some(all), arm: [ex, ey], couple, moment })
}

/// The eccentricity less the old allowance.
fn effective<C: Ctx>(c: C, ex: C::N, in_row: u8) -> Result<C::N, Error> {
    let n = c.given(Name(Q::RowOfGroup, 0), f64::from(in_row));
    let off = formula::eccentricity_allowance(n);
    let off = c.formula(Name(Q::EccentricityOff, 0), Formula::EccentricityAllowance.no(), off);
    let length = math::abs(ex.value());
    if !math::below(off.value(), length) {
        return Err(Error::new(ErrorKind::TooSmall, Field::Eccentricity).value(length).limit(off.value()));
    }
    let name = Name(Q::EccentricityLeft, 0);
    Ok(if ex.value() > 0.0 {
        c.formula(name, Formula::EccentricityLess.no(), formula::difference(ex, off))
    } else {
        c.formula(name, Formula::EccentricityLessLeft.no(), formula::sum(ex, off))
    })
}

/// The point about which the group turns; none where it does not turn. Under a couple alone it is the centroid.
#[inline(never)]
fn instant<C: Ctx>(c: C, g: &Geometry<C::N>, on: &On<C::N>) -> Option<[C::N; 2]> {
    let [px, py] = match on.force {
        Some(force) => force,
        None => return Some(g.centroid),
    };
    let load = on.load.map_or(0.0, C::N::value);
    let gyration = math::sqrt(g.polar.value() / g.areas.value());
    if math::abs(on.moment.value()) <= math::TOLERANCE * load * gyration {
        return None;
    }
    let [xc, yc] = g.centroid;
    let x = formula::instant_x(xc, py, g.polar, g.areas, on.moment);
    let x = c.formula(Name(Q::CentreX, 0), Formula::InstantX.no(), x);
    let y = formula::instant_y(yc, px, g.polar, g.areas, on.moment);
    let y = c.formula(Name(Q::CentreY, 0), Formula::InstantY.no(), y);
    c.formula(Name(Q::CentreDistance, 0), Formula::Distance.no(), formula::distance(x, xc, y, yc));
    Some([x, y])
}

/// What one rivet takes.
#[inline(never)]
fn share<C: Ctx>(
    c: C,
    g: &Geometry<C::N>,
    on: &On<C::N>,
    common: Option<[C::N; 2]>,
    turns: bool,
    number: u8,
    at: usize,
) -> Share<C::N> {
    let zero = C::N::lit(0.0);
    let ratio = g.ratios.as_ref().map(|ratios| of(ratios, at));
    let direct = match (on.force, ratio) {
        (Some([px, py]), Some(k)) => {
            let part = |q: Q, p: C::N| {
                let share = formula::direct_share_by_area(p, k, g.areas);
                c.formula(Name(q, number), Formula::DirectShareByArea.no(), share)
            };
            Some([part(Q::DirectX, px), part(Q::DirectY, py)])
        }
        _ => common,
    };
    let turning = turns.then(|| {
        let part = |q: Q, a: C::N, b: C::N| match ratio {
            Some(k) => {
                let share = formula::turning_share_by_area(on.moment, k, a, b, g.polar);
                c.formula(Name(q, number), Formula::TurningShareByArea.no(), share)
            }
            None => {
                let share = formula::turning_share(on.moment, a, b, g.polar);
                c.formula(Name(q, number), Formula::TurningShare.no(), share)
            }
        };
        let [xc, yc] = g.centroid;
        [part(Q::TurningX, yc, of(&g.y, at)), part(Q::TurningY, of(&g.x, at), xc)]
    });
    let both = |q: Q, d: C::N, t: C::N| c.formula(Name(q, number), Formula::ShareSum.no(), formula::share_sum(d, t));
    let force = match (direct, turning) {
        (Some([dx, dy]), Some([tx, ty])) => [both(Q::ForceX, dx, tx), both(Q::ForceY, dy, ty)],
        (Some(only), None) | (None, Some(only)) => only,
        (None, None) => [zero; 2],
    };
    let [x, y] = force;
    let resultant = formula::resultant(x, y);
    let resultant = c.formula(Name(Q::RivetForce, number), Formula::Resultant.no(), resultant);
    Share { direct: direct.unwrap_or([zero; 2]), turning: turning.unwrap_or([zero; 2]), force, resultant }
}
