//! Groups of rivets.

use core::hint::black_box;

use seamwright::group::{
    self, Group, GroupCheck, GroupDesign, GroupLoad, GroupStress, MAX_RIVETS, RivetLoad, Stressed,
};
use seamwright::quantities::{Force, Length, Moment};
use seamwright::step::{Ctx, Name, Num, Quantity};
use seamwright::text::Slice;
use seamwright::working;

use crate::context::{By, Hidden};
use crate::input::{Input, keep};
use crate::working::{book, style, told};

/// Any group; what it holds is hidden from the compiler.
fn any(i: &mut Input) -> Option<Group> {
    let mut places = [(Length::mm(0.0), Length::mm(0.0)); MAX_RIVETS + 1];
    for place in &mut places {
        *place = (i.length(), i.length());
    }
    let mut made = Group::at(places.get(..i.index())?).ok()?;
    if i.yes() {
        made = Group::hole(made, i.length());
    }
    if i.yes() {
        made = Group::rivet(made, i.length());
    }
    if i.yes() {
        made = Group::one(made, i.small(), i.length(), i.maybe(Input::length)).ok()?;
    }
    if i.yes() {
        made = Group::plate(made, i.length());
    }
    made = Group::planes(made, i.small());
    keep((Group::count(&made), Group::shear_planes(&made), Group::validate(&made)));
    Some(black_box(made))
}

fn load(i: &mut Input) -> GroupLoad {
    let mut load = if i.yes() {
        GroupLoad::couple(Moment::n_mm(i.number()))
    } else {
        GroupLoad::force(Force::n(i.number()), Force::n(i.number()), i.length(), i.length())
    };
    if i.yes() {
        load = GroupLoad::and_couple(load, Moment::n_mm(i.number()));
    }
    if i.yes() {
        load = GroupLoad::effective(load, i.small());
    }
    keep(GroupLoad::validate(&load));
    black_box(load)
}

fn stress(i: &mut Input) -> GroupStress {
    let mut stress = GroupStress::new(i.stress());
    if i.yes() {
        stress = GroupStress::bearing(stress, i.stress());
    }
    keep(GroupStress::validate(&stress));
    black_box(stress)
}

/// All that a group is asked with.
pub(crate) fn stated(i: &mut Input) -> Option<(Group, GroupLoad, GroupStress)> {
    Some((any(i)?, load(i), stress(i)))
}

fn seen<N: Num>(found: &GroupCheck<N>) {
    keep(GroupCheck::critical(found));
    for rivet in GroupCheck::rivets(found) {
        keep(RivetLoad::direction(rivet));
        keep(RivetLoad::values(*rivet));
    }
    keep(Stressed::values(found.shear));
}

pub fn plain(i: &mut Input) {
    let Some(group) = any(i) else { return };
    let (load, stress, rules) = (load(i), stress(i), i.rules());
    if let Ok(found) = group::check_group(&group, &load, &stress, &rules) {
        seen(&found);
    }
    if let Ok(made) = group::size_group(&group, &load, &stress, &rules) {
        seen(&made.check);
    }
}

pub fn with(i: &mut Input) {
    in_context(Hidden, i);
    in_context(By(Name(Quantity::LoadY, 0)), i);
}

fn in_context<C: Ctx>(c: C, i: &mut Input) {
    let Some(group) = any(i) else { return };
    let (load, stress, rules) = (load(i), stress(i), i.rules());
    if let Ok(found) = group::check_group_with(c, &group, &load, &stress, &rules) {
        seen(&found);
        keep(GroupCheck::values(found));
    }
    if let Ok(made) = group::size_group_with(c, &group, &load, &stress, &rules) {
        seen(&made.check);
        keep(GroupDesign::values(made));
    }
}

pub fn written(i: &mut Input) {
    let Some(group) = any(i) else { return };
    let (load, stress, style, book) = (load(i), stress(i), style(i), book(i));
    told(working::write_group_check(&mut Slice::new(i.room()), style, &group, &load, &stress, &book), i);
    told(working::write_group_size(&mut Slice::new(i.room()), style, &group, &load, &stress, &book), i);
}
