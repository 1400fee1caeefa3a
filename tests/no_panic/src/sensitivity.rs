//! Slopes and worst cases.

use core::hint::black_box;

use seamwright::sensitivity::tolerance;
use seamwright::sensitivity::{self, Input as Moved, Sided, Slope, Slopes, Target, Tolerances, WorstCase};
use seamwright::step::{Name, QUANTITIES, Quantity};
use seamwright::text::Slice;

use crate::input::{Input, keep};

pub fn slopes(i: &mut Input) {
    let Some(joint) = i.joint() else { return };
    let Ok(found) = sensitivity::slopes(&joint, &i.materials(), &i.rules()) else { return };
    let name = Name(i.one_of(QUANTITIES).unwrap_or(Quantity::Plate), i.small());
    if let Some(line) = Slopes::of(&found, Moved::Given(name)) {
        let relative = Slope::relative(line, i.number());
        keep((Slope::mode_changes(line), Sided::has_kink(&relative), Sided::times(&relative, i.number())));
    }
    keep(Slopes::write_table(&found, &mut Slice::new(i.room())));
}

pub fn worst_case(i: &mut Input) {
    let Some(joint) = i.joint() else { return };
    let mut t = Tolerances::none();
    t = Tolerances::plate(t, i.length());
    t = Tolerances::straps(t, i.length());
    t = Tolerances::hole(t, i.length());
    t = black_box(Tolerances::pitch(t, i.length()));
    let measure = match i.small() {
        0 => Target::Efficiency,
        1 => Target::BookEfficiency,
        _ => Target::Strength,
    };
    if let Ok(found) = tolerance::worst_case(&joint, &i.materials(), &i.rules(), &t, measure) {
        keep((WorstCase::ratio(&found), WorstCase::hole_inside(&found, &t)));
    }
}
