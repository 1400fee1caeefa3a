//! Problems and their marking.

use seamwright::reconcile::{self, CATALOGUE, Figure};
use seamwright::rules::BOOKS;
use seamwright::step::{Name, QUANTITIES, Quantity};
use seamwright::teach::{self, Audience, EFFECTS, Family, Key, Mark, Marks, Problem, Setting, Task};
use seamwright::text::Slice;

use crate::input::{Input, keep};

fn name(i: &mut Input) -> Name {
    Name(i.one_of(QUANTITIES).unwrap_or(Quantity::Solid), i.small())
}

fn problem(i: &mut Input) -> Option<Problem> {
    let family = Family {
        form: i.form()?,
        setting: if i.yes() { Setting::Boiler } else { Setting::Structure },
        task: if i.yes() { Task::Check } else { Task::Size },
        effect: i.one_of(EFFECTS)?,
    };
    teach::problem(i.word(), &family, &i.rules()).ok()
}

pub fn problems(i: &mut Input) {
    let Some(drawn) = problem(i) else { return };
    let Some(book) = i.one_of(BOOKS) else { return };
    if let Ok(key) = Key::of(&drawn.case) {
        keep(Key::answer(&key, name(i)));
        keep(Key::iter(&key).count());
    }
    let style = crate::working::style(i);
    let audience = if i.yes() { Audience::Teacher } else { Audience::Class };
    let list = core::slice::from_ref(&drawn);
    keep(teach::write_problems(&mut Slice::new(i.room()), style, list, audience, book));
    keep(teach::write_solution(&mut Slice::new(i.room()), style, &drawn, book));
    keep(reconcile::worked(&drawn.case, &[name(i), name(i)]));
    let edits = [i.one_of(CATALOGUE).map(|row| row.edit), i.one_of(CATALOGUE).map(|row| row.edit)];
    keep(reconcile::edited(&drawn.case, edits, name(i)));
}

pub fn marks(i: &mut Input) {
    let Some(drawn) = problem(i) else { return };
    let stated = [name(i), name(i), name(i)].map(|name| Figure::within(name, i.number(), i.number()).ok());
    let [Some(a), Some(b), Some(c)] = stated else { return };
    let Ok(marks) = teach::mark(&drawn, &[a, b, c]) else { return };
    keep(Marks::credit(&marks));
    keep(Marks::of(&marks, name(i)));
    for (_, mark) in Marks::iter(&marks) {
        if let Mark::Slip { convention, sure } = mark {
            keep((convention.words, sure));
        }
    }
    let style = crate::working::style(i);
    keep(teach::write_marks(&mut Slice::new(i.room()), style, &drawn, &marks));
}
