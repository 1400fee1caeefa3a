//! Search.

use core::hint::black_box;

use core::ops::ControlFlow;

use seamwright::joint::Form;
use seamwright::quantities::Pressure;
use seamwright::rating::{Footing, Shell};
use seamwright::search::{self, Beside, Candidate, Constraint, Found, Measure, Objective, Outcome, SearchBrief, Tally};
use seamwright::shop;
use seamwright::step::{Ctx, Name, Plain, Quantity};

use crate::context::{By, Hidden};
use crate::input::{Input, keep};

const OBJECTIVES: &[Objective] = &[Objective::Efficiency, Objective::Mass, Objective::Rivets, Objective::Thickness];

/// Calls with a brief of any content.
fn with(i: &mut Input, call: impl FnOnce(&SearchBrief<'_>, &mut Input)) {
    let Some(objective) = i.one_of(OBJECTIVES) else { return };
    let plates = [i.length(), i.length()];
    let holes = [i.length(), i.length(), i.length()];
    let (Some(first), Some(second)) = (i.form(), i.form()) else { return };
    let forms: [Form; 2] = [first, second];
    let mut brief = SearchBrief::new(objective, plates.get(..i.index()).unwrap_or(&plates), i.materials());
    loop {
        brief = match i.small() {
            0 => SearchBrief::forms(brief, forms.get(..i.index()).unwrap_or(&forms)),
            1 => SearchBrief::holes(brief, holes.get(..i.index()).unwrap_or(&holes)),
            2 => SearchBrief::rows_most(brief, i.small()),
            3 => SearchBrief::rivet_least(brief, i.length()),
            4 => SearchBrief::rivet_most(brief, i.length()),
            5 => SearchBrief::pitch_most(brief, i.length()),
            6 => SearchBrief::efficiency(brief, i.number()),
            7 => {
                let footing = if i.yes() { Footing::Permissible } else { Footing::Ultimate };
                SearchBrief::pressure(brief, Pressure::mpa(i.number()), Shell::new(i.length(), footing))
            }
            8 => match crate::shop::order(i) {
                Some(order) => SearchBrief::mass(brief, order),
                None => brief,
            },
            9 => SearchBrief::any_finding(brief),
            _ => break,
        };
    }
    keep(SearchBrief::objective(&brief));
    call(&black_box(brief), i);
}

fn counts(tally: &Tally) {
    keep(Tally::most(tally));
    for (constraint, count) in Tally::excluded(tally) {
        keep((Constraint::what(constraint), count));
    }
}

pub fn search(i: &mut Input) {
    keep(search::all_forms());
    let rules = i.rules();
    with(i, |brief, _| {
        let Ok(outcome) = search::search(brief, &rules) else { return };
        counts(Outcome::tally(&outcome));
        let Some(found) = Outcome::found(&outcome) else { return };
        for ranked in &found.best {
            keep(Candidate::brief(&ranked.candidate, brief));
            keep(ranked.behind.map(Measure::what));
            for neighbour in ranked.neighbours {
                if let Beside::Worse(measure) = neighbour {
                    keep(Measure::what(measure));
                }
            }
        }
        keep(Found::values(found.clone()));
    });
}

pub fn search_with(i: &mut Input) {
    contexts(Plain, i);
    contexts(Hidden, i);
    contexts(By(Name(Quantity::Bearing, 0)), i);
}

fn contexts<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    with(i, |brief, _| {
        if let Ok(Outcome::Found(found)) = search::search_with(c, brief, &rules) {
            keep(found.design.values());
        }
    });
}

pub fn front(i: &mut Input) {
    let rules = i.rules();
    with(i, |brief, i| {
        let mut slots = [None; 64];
        let room = i.index();
        if let Some(room) = slots.get_mut(..room) {
            keep(search::front(brief, &rules, room));
        }
        keep(slots);
    });
}

pub fn stopped(i: &mut Input) {
    let rules = i.rules();
    with(i, |brief, i| {
        let mut left = i.index();
        let go_on = &mut || {
            left = left.wrapping_sub(1);
            if left == 0 { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
        };
        let mut slots = [None; 8];
        keep(search::search_while(brief, &rules, go_on));
        keep(search::front_while(brief, &rules, &mut slots, go_on));
        keep(slots);
    });
}

pub fn strip(i: &mut Input) {
    let (Some(joint), Some(order)) = (i.joint(), crate::shop::order(i)) else { return };
    let materials = i.materials();
    keep(shop::strip_masses(Plain, &joint, &materials, &order));
    keep(shop::strip_masses(Hidden, &joint, &materials, &order).is_ok());
}
