//! What else can be asked: what an existing joint allows, a shell to a pressure, the best joint, books and forms side by
//! side, which conventions give stated figures, what each input and each tolerance does; and problems for a class.

pub mod compare;
pub mod flags;
pub mod problems;
pub mod rate;
pub mod reconcile;
pub mod search;
pub mod sensitivity;
mod shell;
pub mod vessel;

use seamwright::sizing::Brief;

use crate::failure::Failure;
use crate::flags::{Action, Flags};
use crate::stated;
use crate::task::{Answer, Task};

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

/// The title of a study, with its book and its joint.
fn title(what: &str, task: &Task) -> String {
    let rule = "=".repeat(80);
    format!("{rule}\n{what}\n{rule}\nRule book: {} (id {}).\n{}.\n\n", task.book.title(), task.book.id(), task.form)
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
