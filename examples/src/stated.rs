//! From flags to a task: what was given, what the book assumes, and what is missing.

use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::joint::{Arrangement, Form, JointKind};
use seamwright::materials::{Materials, PlateStress};
use seamwright::quantities::{Length, Stress};
use seamwright::rating::{Basis, Footing};
use seamwright::rules::{Entry, Label};
use seamwright::sheet::Divided;

use crate::failure::Failure;
use crate::flags::{Action, Flags, FormFlag, MetalFlag};
use crate::studies::style;
use crate::task::{Book, Identity, Input, Stated, Task, change_text};
use crate::units::{Units, flag_name, length, number, plain, stress};

/// Reads the flags of a joint.
pub fn task(action: Action, flags: &Flags) -> Result<Task, Failure> {
    let units = Units::from(flags.units);
    let Some(id) = &flags.book else {
        return Err(missing("book", "name the rule book, as in --book metric (see --list-books)"));
    };
    let book = Book::new(id, &flags.set, units)?;
    let refused = |e: Error| Failure::refused(&e, &book, units);
    let form = form(flags, &refused)?;
    let mut reader = Reader { units, inputs: Vec::new() };
    let Some(plate) = reader.length(Field::Plate, &flags.plate)? else {
        return Err(missing("plate", "write --plate \"12 mm\" or --plate \"1/2 in\""));
    };
    let stated = reader.stated(action, flags, &form)?;
    let (ultimate, factor) = reader.materials(flags, &book, &refused)?;
    let divided = factor.map(|factor| Divided { ultimate, factor });
    let (materials, footing) = match factor {
        Some(factor) => (
            ultimate.divided_by(factor).map_err(refused)?,
            format!("ultimate strengths divided by a factor of safety of {}", plain(factor, 4)),
        ),
        None => (ultimate, footing(flags.assume.is_some()).to_string()),
    };
    let footing_of = flags.assume.is_some().then_some(Footing::Ultimate);
    reader.changes(&book);
    Ok(Task {
        action,
        units,
        style: style(flags),
        identity: Identity::new(flags, ["", "", "", ""]),
        scenario: false,
        form,
        plate,
        stated,
        materials,
        footing,
        footing_of,
        divided,
        inputs: reader.inputs,
        book,
    })
}

/// The stresses of flags as they are given or assumed, not divided by a factor of safety.
pub fn ultimate(flags: &Flags, book: &Book) -> Result<Materials, Failure> {
    let units = Units::from(flags.units);
    let refused = |e: Error| Failure::refused(&e, book, units);
    Reader { units, inputs: Vec::new() }.materials(flags, book, &refused).map(|(materials, _)| materials)
}

/// The stresses of flags, divided by the factor of safety where there is one.
pub fn permissible(flags: &Flags, book: &Book) -> Result<Materials, Failure> {
    let units = Units::from(flags.units);
    let refused = |e: Error| Failure::refused(&e, book, units);
    let (materials, factor) = Reader { units, inputs: Vec::new() }.materials(flags, book, &refused)?;
    factor.map_or(Ok(materials), |factor| materials.divided_by(factor).map_err(refused))
}

/// What stresses without a factor of safety are.
fn footing(assumed: bool) -> &'static str {
    if assumed {
        "as given; those assumed are ULTIMATE and were not divided by a factor of safety, so the strengths below are \
         no permissible loads (--safety-factor divides all of them)"
    } else {
        "as given; the strengths below are on the same footing"
    }
}

/// A flag that is needed.
fn missing(name: &str, remedy: &str) -> Failure {
    Failure::usage(name, "is needed and was not given", remedy)
}

/// The form from its flags.
pub fn form(flags: &Flags, refused: &dyn Fn(Error) -> Failure) -> Result<Form, Failure> {
    let Some(shape) = flags.form else {
        return Err(missing("form", "write --form lap, single-strap, double-strap or unequal-straps"));
    };
    let arrangement = if flags.chain { Arrangement::Chain } else { Arrangement::Zigzag };
    let mut form = if let Some(list) = &flags.row_list {
        let kind = match shape {
            FormFlag::Lap => JointKind::Lap,
            FormFlag::SingleStrap => JointKind::SingleStrap,
            FormFlag::DoubleStrap | FormFlag::UnequalStraps => JointKind::DoubleStrap,
        };
        let form = Form::from_rows(kind, arrangement, &row_list(list)?).map_err(refused)?;
        let unequal = shape == FormFlag::UnequalStraps;
        if kind == JointKind::DoubleStrap && form.unequal() != unequal {
            let fix = if unequal { "--form double-strap" } else { "--form unequal-straps" };
            let wrong = format!("the planes of \"{list}\" do not go with this --form");
            return Err(Failure::usage("row-list", wrong, format!("single-shear rows need a wide strap: write {fix}")));
        }
        form
    } else {
        let Some(said) = &flags.rows else {
            return Err(missing("rows", "write --rows 2, or --row-list 1x1,2x2"));
        };
        let rows: u8 = said.trim().parse().map_err(|_| {
            Failure::usage("rows", format!("\"{said}\" is not a whole number of rows"), "write --rows 2")
        })?;
        match shape {
            FormFlag::Lap => Form::lap(rows),
            FormFlag::SingleStrap => Form::single_strap(rows),
            FormFlag::DoubleStrap => Form::double_strap(rows),
            FormFlag::UnequalStraps => Form::unequal_straps(rows),
        }
        .map_err(refused)?
    };
    if flags.omit_alternate {
        form = form.omit_alternate().map_err(refused)?;
    }
    Ok(if flags.chain {
        form.chain()
    } else if flags.zigzag {
        form.zigzag()
    } else {
        form
    })
}

/// `1x1,2x2`: rivets in the strip and shear planes of each row.
fn row_list(list: &str) -> Result<Vec<(u8, u8)>, Failure> {
    list.split(',')
        .map(|row| {
            let pair = row.split_once(['x', 'X']);
            pair.and_then(|(n, z)| Some((n.trim().parse().ok()?, z.trim().parse().ok()?))).ok_or_else(|| {
                let wrong = format!("\"{row}\" is not rivets x planes");
                Failure::usage("row-list", wrong, "write --row-list 1x1,2x2,2x2, outside first")
            })
        })
        .collect()
}

/// Reads values and keeps the basis of each.
struct Reader {
    units: Units,
    inputs: Vec<Input>,
}

impl Reader {
    fn push(&mut self, field: Field, value: String, basis: Basis, source: String) {
        let before = self.inputs.iter().filter(|input| input.field == Some(field)).count();
        let row = if field == Field::BackPitch { u8::try_from(before + 1).unwrap_or(0) } else { 0 };
        let name = flag_name(field).replace('-', " ");
        self.inputs.push(Input { field: Some(field), row, name, value, basis, source });
    }

    fn length(&mut self, field: Field, said: &Option<String>) -> Result<Option<Length>, Failure> {
        let Some(said) = said else { return Ok(None) };
        let value = length(field, said)?;
        self.push(field, self.units.size(value.to_mm()), Basis::Given, format!("--{} \"{said}\"", flag_name(field)));
        Ok(Some(value))
    }

    fn stress(&mut self, field: Field, said: &Option<String>) -> Result<Option<Stress>, Failure> {
        let Some(said) = said else { return Ok(None) };
        let value = stress(field, said)?;
        self.push(field, self.units.stress(value), Basis::Given, format!("--{} \"{said}\"", flag_name(field)));
        Ok(Some(value))
    }

    /// Dimensions other than the plate.
    fn stated(&mut self, action: Action, flags: &Flags, form: &Form) -> Result<Stated, Failure> {
        let mut said = Stated {
            other_plate: self.length(Field::OtherPlate, &flags.other_plate)?,
            hole: self.length(Field::Hole, &flags.hole)?,
            rivet: self.length(Field::Rivet, &flags.rivet)?,
            pitch: self.length(Field::Pitch, &flags.pitch)?,
            wide: self.length(Field::WideStrap, &flags.wide_strap)?,
            narrow: self.length(Field::NarrowStrap, &flags.narrow_strap)?,
            margin: self.length(Field::Margin, &flags.margin)?,
            gaps: Vec::new(),
        };
        for gap in &flags.gap {
            said.gaps.extend(self.length(Field::BackPitch, &Some(gap.clone()))?);
        }
        if action == Action::Check && said.pitch.is_none() {
            return Err(missing("pitch", "write --pitch \"75 mm\" or --pitch \"2 7/8 in\" (or let `size` find it)"));
        }
        if action == Action::Check && said.hole.is_none() {
            return Err(missing("hole", "write --hole \"21 mm\" or --hole \"13/16 in\" (or let `size` find it)"));
        }
        if said.rivet.is_some() && said.hole.is_none() {
            return Err(Failure::usage("rivet", "was given without its hole", "add --hole, or leave the rivet out"));
        }
        if said.narrow.is_some() && said.wide.is_none() {
            return Err(Failure::usage("narrow-strap", "was given without the wide strap", "add --wide-strap"));
        }
        if said.wide.is_some() && said.narrow.is_none() && form.unequal() {
            return Err(Failure::usage("wide-strap", "was given without the narrow strap", "add --narrow-strap"));
        }
        let gaps = form.row_count().saturating_sub(1);
        if said.gaps.len() > gaps {
            let wrong = format!("{} were given, and this form has {gaps}", said.gaps.len());
            return Err(Failure::usage("gap", wrong, "give one --gap for each row but the last"));
        }
        Ok(said)
    }

    /// Stresses as given, the rest as the book assumes them, and the factor of safety.
    fn materials(
        &mut self,
        flags: &Flags,
        book: &Book,
        refused: &dyn Fn(Error) -> Failure,
    ) -> Result<(Materials, Option<f64>), Failure> {
        let [plate_entry, rivet_entry] = match flags.assume {
            Some(MetalFlag::Iron) => [Entry::IRON_TENSION, Entry::IRON_SHEAR],
            _ => [Entry::STEEL_TENSION, Entry::STEEL_SHEAR],
        };
        let mut needed = |field: Field, said: &Option<String>, entry: Entry| -> Result<Stress, Failure> {
            if let Some(stress) = self.stress(field, said)? {
                return Ok(stress);
            }
            if flags.assume.is_none() {
                let name = flag_name(field);
                let fix = format!("write --{name} \"80 MPa\" or --{name} \"11000 psi\", or --assume steel");
                return Err(missing(&name, &fix));
            }
            let assumed = self.assumed(field, book, entry);
            assumed.ok_or_else(|| refused(Error::new(ErrorKind::Missing, field).entry(entry.no())))
        };
        let tension = needed(Field::Tension, &flags.tension, plate_entry)?;
        let rivet_shear = needed(Field::Shear, &flags.shear, rivet_entry)?;
        let mut bearing = self.stress(Field::Bearing, &flags.bearing)?;
        if bearing.is_none() && flags.assume.is_some() {
            bearing = self.assumed(Field::Bearing, book, Entry::PLATE_BEARING);
        }
        let other_tension = self.stress(Field::OtherTension, &flags.other_tension)?.unwrap_or(tension);
        let other_bearing = self.stress(Field::OtherBearing, &flags.other_bearing)?.or(bearing);
        let shear_out = self.stress(Field::PlateShear, &flags.plate_shear)?;
        let plate = PlateStress { tension, bearing, shear_out };
        let other = PlateStress { tension: other_tension, bearing: other_bearing, shear_out };
        let factor = match &flags.safety_factor {
            Some(said) => {
                let factor = number("safety-factor", said)?;
                self.push(Field::SafetyFactor, plain(factor, 4), Basis::Given, format!("--safety-factor {said}"));
                Some(factor)
            }
            None => None,
        };
        Ok((Materials { plate, other, rivet_shear }, factor))
    }

    /// A strength that the book lets one assume.
    fn assumed(&mut self, field: Field, book: &Book, entry: Entry) -> Option<Stress> {
        let value = book.rules.get(entry);
        if value <= 0.0 {
            return None;
        }
        let stress = Stress::mpa(value);
        let clause = book.clause(entry);
        let (words, label) = clause.map_or((String::new(), Label::Own), |c| (c.words, c.label));
        let source = format!("at failure; {words} [{}]", label.word());
        self.push(field, self.units.stress(stress), Basis::Tabulated, source);
        Some(stress)
    }

    /// Changed entries are inputs too.
    fn changes(&mut self, book: &Book) {
        changes(&mut self.inputs, book);
    }
}

/// Lists the entries that the user changed among the inputs.
pub fn changes(inputs: &mut Vec<Input>, book: &Book) {
    for (entry, before) in &book.changed {
        let (key, value) = change_text(book, *entry);
        let source = format!("--set; the book says {}", plain(*before, 6));
        inputs.push(Input { field: None, row: 0, name: key, value, basis: Basis::Given, source });
    }
}
