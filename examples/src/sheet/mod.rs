//! The sheet, in the order in which someone can sign it: what it is, what went in, the joint, the figures, the
//! verdicts, what to beware of, and the lines for the names.

mod dimensions;
mod findings;
mod head;
mod modes;
mod page;
mod pitch;
mod rivets;
mod sketch;
mod strength;
mod tail;

use seamwright::given::Given;
use seamwright::modes::{Lens, Strengths};
use seamwright::rules::Entry;
use seamwright::step::Plain;

use crate::failure::key;
use crate::task::{Answer, Book, Task};
use page::Page;

/// What every section looks at.
struct Scene<'a> {
    task: &'a Task,
    answer: &'a Answer,
    given: Given<f64>,
    strengths: Strengths<f64>,
}

/// Writes the sheet.
pub fn write(task: &Task, answer: &Answer) -> String {
    let given = Given::new(Plain, &answer.joint, &task.materials);
    let strengths = Strengths::new(Plain, &answer.joint, &given, &task.book.rules, Lens::Real);
    let scene = Scene { task, answer, given, strengths };
    let mut page = Page::default();
    head::write(&mut page, &scene);
    sketch::write(&mut page, &scene);
    dimensions::write(&mut page, &scene);
    pitch::write(&mut page, &scene);
    rivets::write(&mut page, &scene);
    strength::write(&mut page, &scene);
    modes::write(&mut page, &scene);
    strength::result(&mut page, &scene);
    findings::write(&mut page, &scene);
    tail::write(&mut page, &scene);
    page.finish()
}

/// Key, clause and label of an entry on one line.
fn cite(book: &Book, entry: Entry) -> String {
    match book.clause(entry) {
        Some(clause) => format!("{} [{}] ({})", clause.words, clause.label.word(), key(entry)),
        None => format!("the book is silent; neutral value ({})", key(entry)),
    }
}
