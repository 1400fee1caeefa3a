//! The sheet of one joint: the library's own, with what the flags say of object, inputs and names.

use seamwright::sheet::{Known, Particulars, Task as OnSheet, write_sheet};
use seamwright::working::{Dialect, Forces, Style, WorkingError};

use crate::failure::Failure;
use crate::flags::Action;
use crate::task::Task;

/// Writes the sheet.
pub fn write(task: &Task) -> Result<String, Failure> {
    let refused = |error| Failure::refused(&error, &task.book, task.units);
    if task.identity.lines_per_page.is_some() && task.style.dialect != Dialect::Plain {
        let remedy = "leave --lines-per-page out, or --dialect";
        return Err(Failure::usage("lines-per-page", "only a plain sheet is broken into pages here", remedy));
    }
    let known: Vec<Known<'_>> = task.inputs.iter().filter_map(|input| input.known()).collect();
    let particulars = Particulars {
        title: &task.identity.title,
        object: &task.identity.object,
        drawing_no: &task.identity.drawing,
        jurisdiction: &task.identity.jurisdiction,
        invented: task.scenario,
        footing: task.footing_of,
        divided: task.divided,
        lines_per_page: task.identity.lines_per_page,
        known: &known,
        ..Particulars::default()
    };
    let style = Style { forces: Forces::Kilonewton, ..task.style };
    let book = task.book.whole();
    let mut text = String::new();
    let written = match task.action {
        Action::Size => write_sheet(&mut text, style, &OnSheet::Size(&task.brief()), &particulars, &book),
        Action::Check => {
            let joint = task.spec().and_then(|spec| spec.build()).map_err(refused)?;
            write_sheet(&mut text, style, &OnSheet::Check(&joint, &task.materials), &particulars, &book)
        }
    };
    match written {
        Ok(()) => Ok(text),
        Err(WorkingError::Routine(error)) => Err(refused(error)),
        Err(other) => Err(Failure::Refused(other.to_string())),
    }
}
