//! Forms and joints.

use core::hint::black_box;

use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec, Row};

use crate::input::{Input, keep, show};

pub fn forms(i: &mut Input) {
    let rows = i.small();
    keep((Form::lap(rows), Form::single_strap(rows), Form::double_strap(rows), Form::unequal_straps(rows)));
    let bytes = i.bytes();
    let mut list = [(0_u8, 0_u8); 12];
    for (slot, pair) in list.iter_mut().zip(bytes.chunks_exact(2)) {
        if let [rivets, planes] = pair {
            *slot = (*rivets, *planes);
        }
    }
    let list = list.get(..i.index()).unwrap_or(&list);
    for kind in [JointKind::Lap, JointKind::SingleStrap, JointKind::DoubleStrap] {
        for arrangement in [Arrangement::Chain, Arrangement::Zigzag] {
            if let Ok(form) = Form::from_rows(kind, arrangement, list) {
                about(&black_box(form), i);
            }
        }
    }
    if let Some(form) = i.form() {
        keep(Form::omit_alternate(form));
        about(&Form::chain(form), i);
        about(&Form::zigzag(form), i);
    }
}

fn about(form: &Form, i: &mut Input) {
    keep((Form::kind(form), Form::arrangement(form), Form::row_count(form), Form::row(form, i.index())));
    for row in Form::rows(form).rev() {
        keep(row);
    }
    for row in Form::rows(form) {
        keep(row);
    }
    keep((Form::rivets(form), Form::shear_areas(form), Form::outer_rivets(form), Form::densest_rivets(form)));
    keep((Form::first_double_row(form), Form::unequal(form), Form::rivets_omitted(form)));
    show::<Form>(form, i);
}

pub fn joint(i: &mut Input) {
    let Some(form) = i.form() else { return };
    let mut spec = JointSpec::new(form, i.length(), i.length(), i.length());
    loop {
        spec = match i.small() {
            0 => JointSpec::rivet(spec, i.length()),
            1 => JointSpec::row(spec, i.index(), i.length(), i.maybe(Input::length)),
            2 => JointSpec::other_plate(spec, i.length()),
            3 => JointSpec::strap(spec, i.length()),
            4 => JointSpec::straps(spec, i.length(), i.length()),
            5 => JointSpec::back_pitch(spec, i.index(), i.length()),
            6 => JointSpec::margin(spec, i.length()),
            _ => break,
        };
    }
    let built = JointSpec::build(black_box(spec));
    if let Ok(joint) = built {
        seen(&joint, i);
        seen(&black_box(joint), i);
    }
    keep(built);
}

fn seen(joint: &Joint, i: &mut Input) {
    keep((Joint::form(joint), Joint::pitch(joint), Joint::strip(joint), Joint::plate(joint)));
    keep((Joint::other_plate(joint), Joint::wide_strap(joint), Joint::narrow_strap(joint), Joint::margin(joint)));
    for row in Joint::rows(joint) {
        keep((Row::hole(row), Row::rivet(row)));
    }
    keep((Joint::back_pitch(joint, i.index()), Joint::rows_placed(joint), Joint::widths(joint)));
}
