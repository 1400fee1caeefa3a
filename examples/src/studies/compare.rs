//! `seamwright compare`: one brief under several books, or several forms under one.

use seamwright::comparison::{Column, Comparison, SortBy};
use seamwright::joint::Form;
use seamwright::rating::Service;
use seamwright::rules::{BOOKS, RuleBook};
use seamwright::sizing::Brief;

use super::flags::{CompareFlags, ShellFlags, SortFlag};
use super::shell::{shell, style};
use crate::failure::Failure;
use crate::flags::{Action, Flags};
use crate::stated;
use crate::task::Book;

/// Runs the comparison.
pub fn run(mut flags: Flags, shell_flags: &ShellFlags, said: &CompareFlags) -> Result<String, Failure> {
    // Books to compare; the first one reads what may be assumed.
    let mut ids: Vec<String> = said.books.clone();
    if let Some(book) = &flags.book {
        ids = vec![book.clone()];
    }
    if ids.is_empty() {
        ids = BOOKS.iter().map(|b| b.id.to_string()).collect();
    }
    flags.book = ids.first().cloned();
    let units = flags.units.into();
    let books = ids.iter().map(|id| Book::new(id, &flags.set, units)).collect::<Result<Vec<Book>, Failure>>()?;
    let whole: Vec<RuleBook<'static>> = books.iter().map(Book::whole).collect();
    let task = stated::task(Action::Size, &flags)?;
    let briefs: Vec<Brief> =
        if said.all_forms { forms().into_iter().map(|form| task.brief_of(form)).collect() } else { vec![task.brief()] };
    let shell = match &shell_flags.inside_diameter {
        Some(_) => Some(shell(&flags, shell_flags, Service::new_shell())?),
        None => None,
    };
    let columns: Vec<Column<'_>> = briefs
        .iter()
        .flat_map(|brief| whole.iter().map(|book| Column::new(*brief, book)))
        .map(|column| shell.map_or(column, |shell| column.shell(shell)))
        .collect();
    let refused = |e| Failure::refused(&e, &task.book, task.units);
    let compared = Comparison::new(&columns).map_err(refused)?;
    let by = match said.sort {
        SortFlag::Given => SortBy::Given,
        SortFlag::Credited => SortBy::Credited,
        SortFlag::Efficiency => SortBy::Efficiency,
        SortFlag::Pressure => SortBy::Pressure,
        SortFlag::Pitch => SortBy::Pitch,
        SortFlag::Hole => SortBy::Hole,
        SortFlag::Open => SortBy::Open,
    };
    let mut text = String::new();
    // A string takes everything.
    let _ = compared.write(&mut text, style(&flags), by);
    Ok(text)
}

/// The common forms.
fn forms() -> Vec<Form> {
    let laps = (1..=3).map(Form::lap);
    let single = (1..=2).map(Form::single_strap);
    let double = (1..=3).map(Form::double_strap);
    let unequal = (2..=4).map(Form::unequal_straps);
    laps.chain(single).chain(double).chain(unequal).flatten().collect()
}
