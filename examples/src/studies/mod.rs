//! What else can be asked: what an existing joint allows, a shell to a pressure, the best joint, books and forms side by
//! side, which conventions give stated figures, what each input and each tolerance does; groups of rivets under eccentric load;
//! and problems for a class.

pub mod bracket;
pub mod compare;
pub mod flags;
pub mod problems;
pub mod rate;
pub mod reconcile;
pub mod search;
pub mod sensitivity;
mod shell;
pub use shell::style;
pub mod vessel;

use seamwright::sizing::Brief;

use crate::failure::Failure;
use crate::flags::{Action, Flags};
use crate::stated;
use crate::task::{Answer, Book, Task};

/// The task that flags describe: a check where pitch and hole are given, a sizing otherwise.
fn task_of(flags: &Flags) -> Result<Task, Failure> {
    let given = flags.pitch.is_some() && flags.hole.is_some();
    stated::task(if given { Action::Check } else { Action::Size }, flags)
}

/// A task with its answer.
fn solved(flags: &Flags) -> Result<(Task, Answer), Failure> {
    let task = task_of(flags)?;
    let answer = task.solve()?;
    Ok((task, answer))
}

/// The brief of a sizing task.
fn brief_of(task: &Task) -> Option<Brief> {
    (task.action == Action::Size).then(|| task.brief())
}

/// The title of a study, with its book, its joint and the basis of every input.
fn title(what: &str, task: &Task) -> String {
    let mut out = heading(what, &task.book);
    out.push_str(&format!("{}.\n\n", task.form));
    for input in &task.inputs {
        let (name, value, basis, source) = (&input.name, &input.value, input.basis.word(), &input.source);
        out.push_str(&format!("  {name:<24}{value:>14}  {basis}: {source}\n"));
    }
    out.push_str(&format!("  Stresses: {}.\n\n", task.footing));
    out
}

/// The head of a study, with its book.
fn heading(what: &str, book: &Book) -> String {
    let rule = "=".repeat(80);
    let changed = if book.changed.is_empty() { "" } else { ", changed by the user" };
    format!("{rule}\n{what}\n{rule}\nRule book: {} (id {}{changed}).\n", book.title(), book.id())
}

/// Lines of prose broken at 80 columns; rows of tables stay whole.
fn folded(text: &str) -> String {
    let mut out = String::new();
    for line in text.lines() {
        let mut column = 0;
        if line.starts_with('|') || line.chars().count() <= 80 {
            out.push_str(line);
            out.push('\n');
            continue;
        }
        let indent = line.len() - line.trim_start().len();
        out.push_str(&" ".repeat(indent));
        column += indent;
        for (number, word) in line.split_whitespace().enumerate() {
            let length = word.chars().count();
            if number > 0 && column + 1 + length > 80 {
                out.push('\n');
                out.push_str(&" ".repeat(indent + 2));
                column = indent + 2;
            } else if number > 0 {
                out.push(' ');
                column += 1;
            }
            out.push_str(word);
            column += length;
        }
        out.push('\n');
    }
    out
}
