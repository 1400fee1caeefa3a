//! `seamwright`: sizes or checks one riveted seam and prints a sheet that can be followed and signed.
//!
//! Without arguments it sizes the seam of an invented scenario. All engineering is the library's; this program reads
//! flags and keeps the basis of every input.
#![allow(clippy::arithmetic_side_effects, reason = "column counts and row numbers of a page")]

mod failure;
mod flags;
mod lists;
mod scenario;
mod sheet;
mod stated;
mod studies;
mod task;
mod units;

use std::io::Write;
use std::process::ExitCode;

use failure::Failure;
use flags::{Action, Cli, Flags, Request};

fn main() -> ExitCode {
    // Bad flags end here, with clap's own message and exit code 2.
    let cli = Cli::read();
    let text = match run(cli) {
        Ok(text) => text,
        Err(failure) => {
            eprintln!("{failure}");
            return ExitCode::from(failure.code());
        }
    };
    // A reader that closes the pipe early (`| head`) is no failure of ours.
    let _ = std::io::stdout().write_all(text.as_bytes());
    ExitCode::SUCCESS
}

/// The whole program between flags and text.
fn run(cli: Cli) -> Result<String, Failure> {
    match cli.request() {
        Request::Sheet(action, flags) => one_sheet(action, &flags),
        Request::Reconcile(flags, figures) => studies::reconcile::run(&flags, &figures),
        Request::Sensitivity(flags, tolerances) => studies::sensitivity::run(&flags, &tolerances),
        Request::Rate(flags, shell, found) => studies::rate::run(&flags, &shell, &found),
        Request::Vessel(flags, shell, vessel) => studies::vessel::run(&flags, &shell, &vessel),
        Request::Bracket(flags, bracket) => studies::bracket::run(&flags, &bracket),
        Request::Search(flags, shell, search) => studies::search::run(&flags, &shell, &search),
        Request::Compare(flags, shell, compare) => studies::compare::run(flags, &shell, &compare),
        Request::Problems(flags, problems) => studies::problems::run(&flags, &problems),
    }
}

/// A sheet of one joint, or a list.
fn one_sheet(action: Action, flags: &Flags) -> Result<String, Failure> {
    if flags.list_books {
        return Ok(lists::books());
    }
    if let Some(id) = &flags.list_rules {
        return lists::rules(id);
    }
    let task = if action == Action::Size && !flags.describes_a_joint() {
        scenario::task(flags)?
    } else {
        stated::task(action, flags)?
    };
    sheet::write(&task)
}
