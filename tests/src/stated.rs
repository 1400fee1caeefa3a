//! From what a source states to the library's joint, brief and stresses.

use seamwright::group::{Group, GroupLoad, GroupStress};
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::{Materials, PlateStress};
use seamwright::quantities::{Force, Length, Stress};
use seamwright::sizing::Brief;

use crate::schema::{Stated, StatedGroup};
use crate::units::{base, length, stress};

fn text(e: seamwright::Error) -> String {
    e.to_string()
}

fn optional(x: Option<&String>) -> Result<Option<Length>, String> {
    x.map(|x| length(x)).transpose()
}

/// The form.
///
/// # Errors
/// What the library refuses, or an unknown kind.
pub fn form_of(stated: &Stated) -> Result<Form, String> {
    let kind = match stated.kind.as_str() {
        "lap" => JointKind::Lap,
        "single strap" => JointKind::SingleStrap,
        "double straps" => JointKind::DoubleStrap,
        other => return Err(format!("unknown kind {other:?}")),
    };
    let arrangement = if stated.chain { Arrangement::Chain } else { Arrangement::Zigzag };
    let rows: Vec<(u8, u8)> = stated.rows.iter().map(|&[rivets, planes]| (rivets, planes)).collect();
    Form::from_rows(kind, arrangement, &rows).map_err(text)
}

/// The stresses.
///
/// # Errors
/// A stress that cannot be read.
pub fn materials_of(stated: &Stated) -> Result<Materials, String> {
    let mut materials = Materials::new(stress(&stated.tension)?, stress(&stated.shear)?);
    let bearing: Option<Stress> = stated.bearing.as_ref().map(|b| stress(b)).transpose()?;
    materials.plate.bearing = bearing;
    materials.other.bearing = bearing;
    if let Some(other) = &stated.other_tension {
        materials = materials.other(PlateStress { tension: stress(other)?, bearing, shear_out: None });
    }
    Ok(materials)
}

/// The joint.
///
/// # Errors
/// What the library refuses, or a pitch or hole that is not stated.
pub fn joint_of(stated: &Stated) -> Result<Joint, String> {
    let form = form_of(stated)?;
    let pitch = optional(stated.pitch.as_ref())?.ok_or("no pitch stated")?;
    let first = stated.hole.as_ref().or(stated.holes.first()).ok_or("no hole stated")?;
    let mut spec = JointSpec::new(form, pitch, length(&stated.plate)?, length(first)?);
    if let Some(rivet) = optional(stated.rivet.as_ref())? {
        spec = spec.rivet(rivet);
    }
    for (row, hole) in (1..).zip(&stated.holes) {
        spec = spec.row(row, length(hole)?, None);
    }
    if let Some(b) = optional(stated.other_plate.as_ref())? {
        spec = spec.other_plate(b);
    }
    spec = match (optional(stated.wide.as_ref())?, optional(stated.narrow.as_ref())?) {
        (Some(wide), Some(narrow)) => spec.straps(wide, narrow),
        (Some(strap), None) => spec.strap(strap),
        (None, None) => spec,
        (None, Some(_)) => return Err("a narrow strap without a wide one".to_owned()),
    };
    for (row, gap) in (1..).zip(&stated.gaps) {
        spec = spec.back_pitch(row, length(gap)?);
    }
    if let Some(margin) = optional(stated.margin.as_ref())? {
        spec = spec.margin(margin);
    }
    spec.build().map_err(text)
}

/// The brief.
///
/// # Errors
/// What cannot be read.
pub fn brief_of(stated: &Stated) -> Result<Brief, String> {
    let mut brief = Brief::new(form_of(stated)?, length(&stated.plate)?, materials_of(stated)?);
    if let Some(hole) = optional(stated.hole.as_ref())? {
        brief = brief.hole(hole, optional(stated.rivet.as_ref())?);
    }
    if let Some(pitch) = optional(stated.pitch.as_ref())? {
        brief = brief.pitch(pitch);
    }
    if let Some(b) = optional(stated.other_plate.as_ref())? {
        brief = brief.other_plate(b);
    }
    if let Some(wide) = optional(stated.wide.as_ref())? {
        brief = brief.straps(wide, optional(stated.narrow.as_ref())?);
    }
    for (row, gap) in (1..).zip(&stated.gaps) {
        brief = brief.back_pitch(row, length(gap)?);
    }
    if let Some(margin) = optional(stated.margin.as_ref())? {
        brief = brief.margin(margin);
    }
    Ok(brief)
}

/// The group, its load and the stresses that are permitted.
///
/// # Errors
/// What cannot be read, or what the library refuses.
pub fn group_of(stated: &StatedGroup) -> Result<(Group, GroupLoad, GroupStress), String> {
    let places: Result<Vec<_>, String> = stated.rivets.iter().map(|[x, y]| Ok((length(x)?, length(y)?))).collect();
    let mut group = Group::at(&places?).map_err(text)?.planes(stated.planes.unwrap_or(1));
    if let Some(hole) = optional(stated.hole.as_ref())? {
        group = group.hole(hole);
    }
    if let Some(rivet) = optional(stated.rivet.as_ref())? {
        group = group.rivet(rivet);
    }
    for (number, hole) in (1..).zip(&stated.holes) {
        group = group.one(number, length(hole)?, None).map_err(text)?;
    }
    if let Some(plate) = optional(stated.plate.as_ref())? {
        group = group.plate(plate);
    }
    let [x, y] = &stated.load;
    let [at_x, at_y] = &stated.at;
    let mut load = GroupLoad::force(Force::n(base(x)?), Force::n(base(y)?), length(at_x)?, length(at_y)?);
    if let Some(n) = stated.effective {
        load = load.effective(n);
    }
    let mut permitted = GroupStress::new(stress(&stated.shear)?);
    if let Some(bearing) = &stated.bearing {
        permitted = permitted.bearing(stress(bearing)?);
    }
    Ok((group, load, permitted))
}
