//! Sizing.

use core::hint::black_box;

use seamwright::sizing::{self, Brief, Design};
use seamwright::step::{Ctx, Name, Num, Plain, Quantity};

use crate::context::{By, Hidden};
use crate::input::{Input, keep};

/// Any brief; what it holds is hidden from the compiler.
pub fn any(i: &mut Input) -> Option<Brief> {
    let form = i.form()?;
    let mut brief = Brief::new(form, i.length(), i.materials());
    loop {
        brief = match i.small() {
            0 => Brief::other_plate(brief, i.length()),
            1 => Brief::hole(brief, i.length(), i.maybe(Input::length)),
            2 => Brief::pitch(brief, i.length()),
            3 => Brief::straps(brief, i.length(), i.maybe(Input::length)),
            4 => Brief::back_pitch(brief, i.index(), i.length()),
            5 => Brief::margin(brief, i.length()),
            _ => return Some(black_box(brief)),
        };
    }
}

pub fn brief(i: &mut Input) {
    if let Some(brief) = any(i) {
        keep((Brief::form(&brief), Brief::materials(&brief), Brief::plate(&brief)));
        keep(Brief::stated_back_pitch(&brief, i.index()));
    }
}

pub fn size(i: &mut Input) {
    let rules = i.rules();
    let Some(brief) = any(i) else { return };
    if let Ok(design) = sizing::size(&brief, &rules) {
        seen(&design, i);
    }
}

pub fn size_with(i: &mut Input) {
    with(Plain, i);
    with(Hidden, i);
    with(By(Name(Quantity::Bearing, 0)), i);
}

pub fn size_into(i: &mut Input) {
    let rules = i.rules();
    let Some(brief) = any(i) else { return };
    let mut design = Design::blank();
    keep(sizing::size_into(&brief, &rules, &mut crate::check::Keeping, &mut design).is_ok());
    keep(design);
}

fn with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let Some(brief) = any(i) else { return };
    if let Ok(design) = sizing::size_with(c, &brief, &rules) {
        seen(&design, i);
    }
}

fn seen<N: Num>(design: &Design<N>, i: &mut Input) {
    keep(design);
    crate::check::seen(&design.analysis, i);
}
