//! Groups of rivets under eccentric load.

use pyo3::prelude::*;
use seamwright::group::{
    Group, GroupCheck, GroupDesign, GroupLoad, GroupStress, RivetLoad, Stressed, check_group as core_check,
    size_group as core_size,
};
use seamwright::quantities::{Force, Length, Moment, Stress};
use seamwright::working::{write_group_check, write_group_size};

use crate::book::Book;
use crate::check::FindingOut;
use crate::shell::findings_out;
use crate::words;
use crate::working::{Wishes, style, written};

/// A group as Python states it: mm, N, N mm and MPa. No hole, one hole, or one for each rivet; so the cold rivets.
#[derive(FromPyObject)]
#[pyo3(from_item_all)]
pub struct GroupIn {
    places: Vec<(f64, f64)>,
    holes: Vec<f64>,
    rivets: Vec<f64>,
    shear_planes: u8,
    plate: Option<f64>,
    load: (f64, f64),
    at: (f64, f64),
    couple: f64,
    in_row: Option<u8>,
    shear: f64,
    bearing: Option<f64>,
}

/// The group, its load and what is permitted.
pub(crate) fn stated(py: Python<'_>, given: &GroupIn, book: &Book) -> PyResult<(Group, GroupLoad, GroupStress)> {
    let raise = |e| book.raise(py, &e);
    let places: Vec<_> = given.places.iter().map(|(x, y)| (Length::mm(*x), Length::mm(*y))).collect();
    let mut group = Group::at(&places).map_err(raise)?.planes(given.shear_planes);
    if let [one] = given.holes.as_slice() {
        group = group.hole(Length::mm(*one));
    }
    if let [one] = given.rivets.as_slice() {
        group = group.rivet(Length::mm(*one));
    }
    if given.holes.len() > 1 {
        for (hole, at) in given.holes.iter().zip(0_u8..) {
            let rivet = given.rivets.get(usize::from(at)).or(given.rivets.first());
            let number = at.saturating_add(1);
            group = group.one(number, Length::mm(*hole), rivet.map(|r| Length::mm(*r))).map_err(raise)?;
        }
    }
    if let Some(plate) = given.plate {
        group = group.plate(Length::mm(plate));
    }
    let ((x, y), (at_x, at_y)) = (given.load, given.at);
    let couple = Moment::n_mm(given.couple);
    let mut load = if x == 0.0 && y == 0.0 {
        GroupLoad::couple(couple)
    } else {
        GroupLoad::force(Force::n(x), Force::n(y), Length::mm(at_x), Length::mm(at_y)).and_couple(couple)
    };
    if let Some(n) = given.in_row {
        load = load.effective(n);
    }
    let mut stress = GroupStress::new(Stress::mpa(given.shear));
    if let Some(bearing) = given.bearing {
        stress = stress.bearing(Stress::mpa(bearing));
    }
    Ok((group, load, stress))
}

/// What one rivet takes, N, mm, MPa, degrees.
#[derive(IntoPyObject)]
pub struct RivetLoadOut {
    place: (f64, f64),
    hole: f64,
    rivet: f64,
    direct: (f64, f64),
    turning: (f64, f64),
    force: (f64, f64),
    resultant: f64,
    direction: f64,
    shear: f64,
    bearing: Option<f64>,
}

/// The greatest stress of a kind: rivet, MPa, over what is permitted.
type StressedOut = (u8, f64, Option<f64>);

/// A group under its load: mm, mm2, N, N mm, MPa.
#[derive(IntoPyObject)]
pub struct GroupCheckOut {
    centroid: (f64, f64),
    areas: f64,
    polar: f64,
    arm: (f64, f64),
    moment: f64,
    centre: Option<(f64, f64)>,
    rivets: Vec<RivetLoadOut>,
    shear: StressedOut,
    bearing: Option<StressedOut>,
    governs: &'static str,
    critical: u8,
    used: f64,
    safe_load: Option<f64>,
    safe_couple: Option<f64>,
    findings: Vec<FindingOut>,
}

/// The size that a group needs, mm, and the group with it.
#[derive(IntoPyObject)]
pub struct GroupDesignOut {
    by_shear: f64,
    by_bearing: Option<f64>,
    needed: f64,
    hole: f64,
    rivet: f64,
    check: GroupCheckOut,
}

fn rivet_out(r: &RivetLoad) -> RivetLoadOut {
    RivetLoadOut {
        place: r.place.into(),
        hole: r.hole,
        rivet: r.rivet,
        direct: r.direct.into(),
        turning: r.turning.into(),
        force: r.force.into(),
        resultant: r.resultant,
        direction: r.direction(),
        shear: r.shear,
        bearing: r.bearing,
    }
}

fn check_out(found: &GroupCheck, book: &Book) -> GroupCheckOut {
    let stressed = |s: &Stressed| (s.rivet, s.stress, s.used);
    GroupCheckOut {
        centroid: found.centroid.into(),
        areas: found.areas,
        polar: found.polar,
        arm: found.arm.into(),
        moment: found.moment,
        centre: found.centre.map(Into::into),
        rivets: found.rivets().iter().map(rivet_out).collect(),
        shear: stressed(&found.shear),
        bearing: found.bearing.as_ref().map(stressed),
        governs: words::group_mode::word(found.governs),
        critical: found.critical(),
        used: found.used,
        safe_load: found.safe_load,
        safe_couple: found.safe_couple,
        findings: findings_out(&found.findings, book),
    }
}

/// Checks a group of rivets.
#[pyfunction]
pub fn check_group(py: Python<'_>, given: GroupIn, book: &Book) -> PyResult<GroupCheckOut> {
    let (group, load, stress) = stated(py, &given, book)?;
    let found = core_check(&group, &load, &stress, book.rules()).map_err(|e| book.raise(py, &e))?;
    Ok(check_out(&found, book))
}

/// Finds the size that a group of rivets needs.
#[pyfunction]
pub fn size_group(py: Python<'_>, given: GroupIn, book: &Book) -> PyResult<GroupDesignOut> {
    let (group, load, stress) = stated(py, &given, book)?;
    let made = core_size(&group, &load, &stress, book.rules()).map_err(|e| book.raise(py, &e))?;
    let GroupDesign { by_shear, by_bearing, needed, hole, rivet, check } = &made;
    Ok(GroupDesignOut {
        by_shear: *by_shear,
        by_bearing: *by_bearing,
        needed: *needed,
        hole: *hole,
        rivet: *rivet,
        check: check_out(check, book),
    })
}

/// The working of a group: its check, or its size where it has no holes.
#[pyfunction]
pub fn working_of_group(py: Python<'_>, given: GroupIn, book: &Book, wishes: Wishes) -> PyResult<String> {
    let (style, (group, load, stress)) = (style(py, &wishes)?, stated(py, &given, book)?);
    book.view(|view| {
        if given.holes.is_empty() && given.rivets.is_empty() {
            written(py, book, |out| write_group_size(out, style, &group, &load, &stress, view))
        } else {
            written(py, book, |out| write_group_check(out, style, &group, &load, &stress, view))
        }
    })
}
