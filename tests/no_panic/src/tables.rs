//! Bounds, errors, names, and the materials that are checked against the bounds.

use seamwright::Error;
use seamwright::bounds::{FIELDS, Field, Unit};
use seamwright::check::{SUBJECTS, Subject};
use seamwright::error::{EntryNo, ErrorKind, KINDS};
use seamwright::formula::{FORMULAS, Formula};
use seamwright::materials::Materials;
use seamwright::step::{QUANTITIES, Quantity, Section};

use crate::input::{Input, keep, show};

pub fn errors(i: &mut Input) {
    let (Some(kind), Some(field), Some(hinted)) = (i.one_of(KINDS), i.one_of(FIELDS), i.one_of(FIELDS)) else {
        return;
    };
    keep((ErrorKind::text(kind), ErrorKind::remedy(kind)));
    let mut error = Error::new(kind, field);
    error = Error::value(error, i.number());
    error = Error::limit(error, i.number());
    error = Error::index(error, i.small());
    error = Error::entry(error, EntryNo(i.short()));
    error = Error::other(error, EntryNo(i.short()));
    error = Error::hint(error, hinted, i.number());
    keep(EntryNo::is_some(error.entry));
    show::<Error>(&core::hint::black_box(error), i);
}

pub fn tables(i: &mut Input) {
    for field in FIELDS {
        let bound = Field::bound(*field);
        keep((bound, Unit::symbol(bound.unit)));
        keep(Field::check(*field, i.number()));
    }
    if let Some(field) = i.one_of(FIELDS) {
        keep((Field::bound(field), Field::check(field, i.number())));
    }
    if let Some(quantity) = i.one_of(QUANTITIES) {
        keep((Quantity::symbol(quantity), Unit::symbol(Quantity::unit(quantity)), Quantity::what(quantity)));
        keep(Quantity::latex(quantity));
    }
    if let Some(section) = i.one_of(&[Section::Given, Section::Hole, Section::Pitch, Section::Straps]) {
        keep(Section::heading(section));
    }
    if let Some(formula) = i.one_of(FORMULAS) {
        keep((Formula::no(formula), Formula::equation(formula), Formula::source(formula)));
    }
    if let Some(subject) = i.one_of(SUBJECTS) {
        keep((Subject::what(subject), Subject::advice(subject), Subject::unit(subject)));
        keep(Subject::place(subject));
    }
}

pub fn materials(i: &mut Input) {
    let mut materials = Materials::new(i.stress(), i.stress());
    materials = Materials::bearing(materials, i.stress());
    materials = Materials::other(materials, i.plate_stress());
    materials = Materials::shear_out(materials, i.stress());
    keep(Materials::validate(&materials));
    keep(Materials::divided_by(materials, i.number()));
    keep(Materials::validate(&i.materials()));
}
