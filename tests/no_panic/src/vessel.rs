//! Vessels.

use core::hint::black_box;

use seamwright::check;
use seamwright::quantities::{Length, Pressure};
use seamwright::rating::{self, Assumptions};
use seamwright::step::{Ctx, Name, Num, Plain, Quantity};
use seamwright::vessel::{self, Girth, GirthBrief, GirthPlace, Longitudinal, Outcome, PlateStock, VesselBrief};

use crate::context::{By, Hidden};
use crate::input::{Input, keep};

const PLATES: &[Length] = &[Length::mm(5.0), Length::mm(8.0), Length::mm(13.0), Length::mm(21.0)];

fn place(i: &mut Input) -> GirthPlace {
    i.one_of(&[GirthPlace::Middle, GirthPlace::End, GirthPlace::Stayed]).unwrap_or(GirthPlace::Middle)
}

/// Any brief; what it holds is hidden from the compiler.
pub fn brief(i: &mut Input) -> Option<VesselBrief<'static>> {
    let stock = if i.yes() {
        PlateStock::list(PLATES.get(i.index()..)?)
    } else {
        PlateStock::every(i.length(), i.length(), i.length())
    };
    keep(PlateStock::thickness(&stock, i.half_word()));
    let shell = crate::rating::shell(i);
    let mut brief = VesselBrief::new(i.form()?, Pressure::mpa(i.number()), shell, i.materials(), stock);
    if i.yes() {
        brief = VesselBrief::hole(brief, i.length(), i.maybe(Input::length));
    }
    if i.yes() {
        brief = VesselBrief::pressure(brief, Pressure::mpa(i.number()));
    }
    if i.yes() {
        brief = VesselBrief::girth(brief, GirthBrief::new(i.form()?, place(i)));
    }
    keep(VesselBrief::validate(&brief));
    Some(black_box(brief))
}

pub fn design(i: &mut Input) {
    let rules = i.rules();
    let Some(brief) = brief(i) else { return };
    if let Ok(outcome) = vessel::vessel(&brief, &rules) {
        seen(&outcome, i);
    }
}

pub fn design_with(i: &mut Input) {
    with(Hidden, i);
    with(By(Name(Quantity::Plate, 0)), i);
}

fn with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let Some(brief) = brief(i) else { return };
    if let Ok(outcome) = vessel::vessel_with(c, &brief, &rules) {
        seen(&outcome, i);
        keep(Outcome::values(outcome));
    }
}

fn seen<N: Num>(outcome: &Outcome<N>, i: &mut Input) {
    if let Some(vessel) = Outcome::found(outcome) {
        keep(vessel);
        crate::check::seen(&vessel.seam.analysis, i);
    }
}

pub fn girth(i: &mut Input) {
    let (rules, shell) = (i.rules(), crate::rating::shell(i));
    let (Some(along), Some(round)) = (i.joint(), i.joint()) else { return };
    let materials = i.materials();
    let Ok(analysis) = check::check(&along, &materials, &rules) else { return };
    let mut notes = Assumptions::new();
    let found = rating::joint_pressure_with(Plain, &along, &materials, &analysis, &shell, &rules, &mut notes);
    let Ok(allowed) = found else { return };
    let long = Longitudinal { joint: &along, materials: &materials, credited: analysis.credited, allowed };
    let at = place(i);
    keep(vessel::girth_check(&rules, &shell, &long, &round, at, Pressure::mpa(i.number())));
    if let Ok(found) = vessel::girth_check_with(Hidden, &rules, &shell, &long, &round, at, i.number()) {
        keep(Girth::values(found));
    }
}
