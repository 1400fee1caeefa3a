//! `seamwright problems`: a sheet of problems for a class, with or without the answers, or one solution in full.

use seamwright::error::Error;
use seamwright::teach::{Audience, Effect, Family, Problem, Setting, Task, problem, write_problems, write_solution};

use super::shell::{style, unwritten};
use crate::failure::Failure;
use crate::flags::{EffectFlag, Flags, ProblemFlags};
use crate::stated::form;
use crate::task::Book;

/// Writes the sheet.
pub fn run(flags: &Flags, said: &ProblemFlags) -> Result<String, Failure> {
    let units = crate::units::Units::from(flags.units);
    let Some(id) = &flags.book else {
        return Err(Failure::usage("book", "is needed and was not given", "name the rule book, as in --book metric"));
    };
    let book = Book::new(id, &flags.set, units)?;
    let refused = |e: Error| Failure::refused(&e, &book, units);
    let effect = match said.effect {
        EffectFlag::Tearing => Effect::Tearing,
        EffectFlag::Shearing => Effect::Shearing,
        EffectFlag::Bearing => Effect::Bearing,
        EffectFlag::Combined => Effect::Combined,
        EffectFlag::Cap => Effect::Cap,
        EffectFlag::ThinPlate => Effect::ThinPlate,
    };
    let sized = said.size || matches!(effect, Effect::Cap | Effect::ThinPlate);
    let family = Family {
        form: form(flags, &refused)?,
        setting: if said.structure { Setting::Structure } else { Setting::Boiler },
        task: if sized { Task::Size } else { Task::Check },
        effect,
    };
    let first = said.number;
    let drawn = (0..u64::from(said.count))
        .map(|n| problem(first.wrapping_add(n), &family, &book.rules))
        .collect::<Result<Vec<Problem>, Error>>()
        .map_err(refused)?;
    let style = style(flags);
    let mut out = String::new();
    let written = match (said.solution, drawn.first()) {
        (true, Some(first)) => write_solution(&mut out, style, first, &book.whole()),
        _ => {
            let audience = if said.answers { Audience::Teacher } else { Audience::Class };
            write_problems(&mut out, style, &drawn, audience, &book.whole())
        }
    };
    written.map_err(|e| unwritten(e, &book, flags))?;
    Ok(out)
}
