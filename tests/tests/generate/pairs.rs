//! Books of the reference model beside the library's, set to the same choices.

use seamwright::joint::Form;
use seamwright::rules::{Entry, INDIAN, METRIC, Rules, US_CODE};
use seamwright_reference as reference;

use super::{named_forms, set};

/// A book of the reference, and the library's book set to the same choices.
#[derive(Clone, Copy, Debug)]
pub struct Pair {
    pub theirs: reference::Book,
    pub ours: Rules,
}

pub fn pairs() -> Vec<Pair> {
    let indian = Pair { theirs: reference::INDIAN_BOILER, ours: INDIAN.rules };
    // The textbooks' metric practice is the Indian proportions with 2 for double shear and no least strap.
    let metric_book = reference::Book { double: 2.0, one_plane: 1.0, strap_least: 0.0, ..reference::INDIAN_BOILER };
    let metric = Pair { theirs: metric_book, ours: METRIC.rules };
    // The reference's general metric practice is the structural chapter: other figures, the same entries.
    let mut changes = vec![
        (Entry::DOUBLE_SHEAR, 1.75),
        (Entry::PITCH_LEAST, 3.0),
        (Entry::PITCH_LEAST_ADD, 5.0),
        (Entry::STRAP_SINGLE, 1.25),
        (Entry::STRAP_EQUAL, 0.75),
        (Entry::STRAP_WIDE, 0.75),
        (Entry::STRAP_NARROW, 0.75),
        (Entry::STRAP_OMITTED, 0.0),
    ];
    for head in [Entry::PITCH_MAX_LAP, Entry::PITCH_MAX_SINGLE, Entry::PITCH_MAX_DOUBLE] {
        changes.extend((0..5).map(|i| (head.at(i), 0.0)));
    }
    for head in [Entry::BACK_CHAIN, Entry::BACK_ZIGZAG, Entry::BACK_HALF_CHAIN, Entry::BACK_HALF_ZIGZAG] {
        changes.extend([0.0, 0.0, 2.5, 0.0].into_iter().enumerate().map(|(i, v)| (head.at(i), v)));
    }
    for (i, (rivet, hole)) in reference::book::GENERAL_HOLES.iter().enumerate() {
        changes.extend([(Entry::SERIES_RIVET.at(i), *rivet), (Entry::SERIES_HOLE.at(i), *hole)]);
    }
    let general = Pair { theirs: reference::GENERAL_METRIC, ours: set(METRIC.rules, &changes) };
    // The code gives no least pitch: the reference has none, the library takes the practice of 2 d and allows none
    // below 1 d. The reference is given the same practice.
    let us_book = reference::Book { floor_factor: 2.0, ..reference::US_BOILER_1918 };
    let us = Pair { theirs: us_book, ours: US_CODE.rules };
    vec![indian, metric, general, us]
}

/// The forms for which the reference's books have all clauses: rows equal, or the outer row half of the others.
pub fn sized_forms() -> Vec<Form> {
    let clauses = |f: &Form| {
        let inner: Vec<u8> = f.rows().skip(1).map(|r| r.rivets).collect();
        [1, 2].iter().any(|k| inner.iter().all(|n| *n == k * f.outer_rivets()))
    };
    named_forms().into_iter().filter(clauses).collect()
}
