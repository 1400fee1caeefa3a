//! The invented scenario that stands in when no joint is described.
//!
//! A workshop that never was rebuilds the shell of a threshing engine's boiler. The seam is the one that matters most
//! on such a shell, and its numbers are chosen so that the answer is not the obvious one.

use seamwright::bounds::Field;
use seamwright::joint::Form;
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rating::Basis;
use seamwright::sheet::Divided;

use crate::failure::Failure;
use crate::flags::{Action, Flags};
use crate::stated::changes;
use crate::studies::style;
use crate::task::{Book, Identity, Input, Stated, Task};
use crate::units::Units;

/// Invented: plate, ultimate strengths, factor.
const PLATE: Length = Length::mm(16.0);
const TENSION: Stress = Stress::mpa(460.0);
const SHEAR: Stress = Stress::mpa(355.0);
const BEARING: Stress = Stress::mpa(680.0);
const FACTOR: f64 = 5.0;

/// The task, in the units and under the book that the flags ask for.
pub fn task(flags: &Flags) -> Result<Task, Failure> {
    let units = Units::from(flags.units);
    let book = Book::new(flags.book.as_deref().unwrap_or("indian"), &flags.set, units)?;
    let refused = |e| Failure::refused(&e, &book, units);
    let form = Form::unequal_straps(3).map_err(refused)?;
    let ultimate = Materials::new(TENSION, SHEAR).bearing(BEARING);
    let materials = ultimate.divided_by(FACTOR).map_err(refused)?;
    let invented = |field: Field, value: String, source: &str| Input {
        field: Some(field),
        row: 0,
        name: field.bound().key.replace('_', " "),
        value,
        basis: Basis::Given,
        source: format!("invented; {source}"),
    };
    let mut inputs = vec![
        invented(Field::Plate, units.size(PLATE.to_mm()), "new shell plate, nominal"),
        invented(Field::Tension, units.stress(TENSION), "at failure, plate and straps"),
        invented(Field::Shear, units.stress(SHEAR), "at failure, steel rivets, single shear"),
        invented(Field::Bearing, units.stress(BEARING), "at failure, crushing"),
        invented(Field::SafetyFactor, "5".to_string(), "on all strengths at failure"),
    ];
    changes(&mut inputs, &book);
    let story = [
        "Longitudinal seam of the barrel, invented example",
        "Boiler of the engine \"Marsh Hen\" (invented; no such engine exists)",
        "MH-07, sheet 2 (invented)",
        "none: invented example",
    ];
    Ok(Task {
        action: Action::Size,
        units,
        style: style(flags),
        identity: Identity::new(flags, story),
        scenario: true,
        form,
        plate: PLATE,
        stated: Stated::default(),
        materials,
        footing: "ultimate strengths divided by a factor of safety of 5".to_string(),
        footing_of: None,
        divided: Some(Divided { ultimate, factor: FACTOR }),
        inputs,
        book,
    })
}
