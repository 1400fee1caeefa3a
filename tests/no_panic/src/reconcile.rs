//! Reconciling.

use core::hint::black_box;

use seamwright::reconcile::{self, Answer, Case, Explanation, Figure, MAX_FIGURES, Work};
use seamwright::step::{Name, QUANTITIES, Quantity};
use seamwright::text::Slice;

use crate::input::{Input, keep};

fn figure(i: &mut Input) -> Option<Figure> {
    let name = Name(i.one_of(QUANTITIES)?, i.small());
    if i.yes() {
        Figure::within(name, i.number(), i.number()).ok()
    } else {
        Figure::printed(name, i.text(), i.number()).ok()
    }
}

pub fn figures(i: &mut Input) {
    let Some(figure) = figure(i) else { return };
    keep((Figure::is(&figure, i.number()), Figure::miss(&figure, i.number())));
    keep((Figure::chance(&figure), Figure::unit(&figure)));
}

pub fn answer(i: &mut Input) {
    let rules = i.rules();
    let work = if i.yes() {
        let Some(joint) = i.joint() else { return };
        Work::Check(joint, i.materials())
    } else {
        let Some(brief) = crate::sizing::any(i) else { return };
        Work::Size(brief)
    };
    let mut stated = [Figure::within(Name(Quantity::ShearAll, 0), 1.0, 1.0).ok(); MAX_FIGURES];
    for slot in &mut stated {
        *slot = figure(i);
    }
    let [Some(a), Some(b), Some(c), ..] = stated else { return };
    let many = black_box([a, b, c]);
    let some = many.get(..i.index()).unwrap_or(&many);
    if let Ok(answer) = reconcile::reconcile(&black_box(Case { work, rules }), some) {
        keep(Answer::reproduced(&answer));
        if let Some(best) = Answer::best(&answer) {
            keep(Explanation::count(best));
            for convention in Explanation::edits(best) {
                keep(convention);
            }
        }
        keep(Answer::write(&answer, &mut Slice::new(i.room()), some));
    }
}
