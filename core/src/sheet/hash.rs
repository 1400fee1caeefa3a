//! The hash of the inputs: two sheets with the same hash come from the same numbers under the same rules.
//!
//! It is FNV-1a (64 bits) over the bytes of a text of lines, each ended by a line feed, that [`write_inputs`] writes:
//!
//! ```text
//! seamwright inputs 1
//! task=check                     size, check or rate
//! book=metric                    short name of the rule book
//! kind=lap                       lap, single-strap or double-strap
//! arrangement=zigzag             zigzag or chain
//! row=1,1                        rivets in the strip and shear planes of each row, outside first
//! strip=71.000000000             then dimensions in mm and stresses in MPa, each with nine decimals, as far as
//! plate=13.000000000             they were given: what is not given has no line
//! hole.1=23.000000000            by row
//! present=0.862000000            of a rating also shell, pressure, wastage, and all that it rests on, in words
//! rule.shear.double=1.875000000  last, every entry of the rule book that is not at its neutral value
//! ```
//!
//! Nine decimals, because every language prints them alike (`%.9f`), and no drawing states more. Particulars, units,
//! dialect and version are not in it: they change no number.

use core::fmt::{self, Write};

use super::Task;
use super::figures::key;
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::{Arrangement, Form, Joint, JointKind};
use crate::materials::Materials;
use crate::quantities::{Length, Stress};
use crate::rating::{Rating, rate};
use crate::rules::{Entry, RuleBook, neutral};
use crate::sizing::Brief;
use crate::text;

/// FNV-1a over 64 bits: offset basis and prime as its authors (Fowler, Noll, Vo) published them.
const BASIS: u64 = 0xcbf2_9ce4_8422_2325;
const PRIME: u64 = 0x0000_0100_0000_01b3;

/// A sink that hashes what it is given.
pub(super) struct Fnv(pub u64);

impl Fnv {
    pub const fn new() -> Self {
        Fnv(BASIS)
    }
}

impl Write for Fnv {
    fn write_str(&mut self, s: &str) -> fmt::Result {
        for byte in s.bytes() {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(PRIME);
        }
        Ok(())
    }
}

/// The hash of a task's inputs: FNV-1a over the text of [`write_inputs`]. Sheets print it as 16 hexadecimal digits.
///
/// # Errors
/// Inputs outside their range; for a rating those of [`rate`](crate::rating::rate), as strengths and holes may come from
/// the book; an entry of the book that is no number ([`Field::RuleEntry`]).
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::sheet::{Task, input_hash};
/// let joint = JointSpec::new(Form::lap(1)?, Length::mm(50.0), Length::mm(6.0), Length::mm(20.0)).build()?;
/// let inches = JointSpec::new(Form::lap(1)?, Length::inch(50.0 / 25.4), Length::mm(6.0), Length::mm(20.0)).build()?;
/// let steel = Materials::new(Stress::mpa(120.0), Stress::mpa(90.0));
/// let hash = input_hash(&Task::Check(&joint, &steel), &METRIC)?;
/// assert_eq!(hash, input_hash(&Task::Check(&inches, &steel), &METRIC)?);
/// assert_ne!(hash, input_hash(&Task::Check(&joint, &steel.bearing(Stress::mpa(180.0))), &METRIC)?);
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn input_hash(task: &Task<'_>, book: &RuleBook<'_>) -> Result<u64, Error> {
    let rated = match task {
        Task::Rate(existing) => Some(rate(existing, &book.rules)?),
        Task::Size(brief) => {
            within(brief)?;
            None
        }
        Task::Check(_, materials) => {
            materials.validate()?;
            None
        }
    };
    hash_of(task, rated.as_ref(), book)
}

/// Whether a brief can be printed: its figures lie in their ranges.
fn within(brief: &Brief) -> Result<(), Error> {
    brief.materials().validate()?;
    let stated = brief.stated();
    for (field, length) in [
        (Field::Pitch, stated.strip),
        (Field::Plate, Some(brief.plate())),
        (Field::OtherPlate, stated.other_plate),
        (Field::WideStrap, stated.straps.map(|(wide, _)| wide)),
        (Field::NarrowStrap, stated.straps.and_then(|(_, narrow)| narrow)),
        (Field::Hole, stated.hole),
        (Field::Rivet, stated.rivet),
        (Field::Margin, stated.margin),
    ] {
        length.map_or(Ok(0.0), |l| field.check(l.to_mm()))?;
    }
    (1..brief.form().row_count()).filter_map(|row| brief.stated_back_pitch(row)).try_for_each(|gap| {
        Field::BackPitch.check(gap.to_mm())?;
        Ok(())
    })
}

/// The same where the inputs are known to be in range, and the rating is known. Half a text would hash like any other
/// that breaks off there, so it is refused.
pub(super) fn hash_of(task: &Task<'_>, rated: Option<&Rating>, book: &RuleBook<'_>) -> Result<u64, Error> {
    let mut hash = Fnv::new();
    // The sink refuses nothing: what cannot be printed is an entry.
    lines(&mut hash, task, rated, book).map_err(|_| Error::new(ErrorKind::NotFinite, Field::RuleEntry))?;
    Ok(hash.0)
}

/// Writes the text that [`input_hash`] hashes, for those who want to hash it themselves.
///
/// # Errors
/// Those of the sink; for a rating, where it cannot be computed.
pub fn write_inputs(out: &mut dyn Write, task: &Task<'_>, book: &RuleBook<'_>) -> fmt::Result {
    let rated = match task {
        Task::Rate(existing) => Some(rate(existing, &book.rules).map_err(|_| fmt::Error)?),
        Task::Size(_) | Task::Check(..) => None,
    };
    lines(out, task, rated.as_ref(), book)
}

fn lines(out: &mut dyn Write, task: &Task<'_>, rated: Option<&Rating>, book: &RuleBook<'_>) -> fmt::Result {
    out.write_str("seamwright inputs 1\n")?;
    let name = match task {
        Task::Size(_) => "size",
        Task::Check(..) => "check",
        Task::Rate(_) => "rate",
    };
    write!(out, "task={name}\nbook={}\n", book.id)?;
    match (task, rated) {
        (Task::Size(brief), _) => of_brief(out, brief)?,
        (Task::Check(joint, materials), _) => {
            of_joint(out, joint)?;
            of_materials(out, materials)?;
        }
        (Task::Rate(existing), Some(rated)) => {
            of_joint(out, &rated.joint)?;
            of_materials(out, &rated.materials)?;
            number(out, "inside_diameter", 0, existing.shell().inside().to_mm())?;
            length(out, "corrosion", 0, existing.shell().corrosion_allowance())?;
            if let Some(present) = existing.present_pressure() {
                number(out, "present", 0, present.to_mpa())?;
            }
            length(out, "wastage_rate", 0, existing.wastage())?;
            if let Some((plate, years)) = existing.earlier_plate() {
                number(out, "earlier_plate", 0, plate.to_mm())?;
                number(out, "earlier_years", 0, years)?;
            }
            // Circumstances, factor of safety, strengths and thicknesses, under what they are about in words.
            rated.assumptions.iter().try_for_each(|a| number(out, a.about.what(), a.row, a.value))?;
        }
        (Task::Rate(_), None) => {}
    }
    for entry in Entry::all() {
        let value = book.rules.get(entry);
        if value != neutral(entry) {
            out.write_str("rule.")?;
            key(out, entry)?;
            number(out, "", 0, value)?;
        }
    }
    Ok(())
}

/// `name.row=value`, without the row where it is 0.
fn number(out: &mut dyn Write, name: &str, row: u8, value: f64) -> fmt::Result {
    out.write_str(name)?;
    if row > 0 {
        write!(out, ".{row}")?;
    }
    out.write_str("=")?;
    text::write_fixed(out, value, 9).map_err(|_| fmt::Error)?;
    out.write_str("\n")
}

fn length(out: &mut dyn Write, name: &str, row: u8, value: Option<Length>) -> fmt::Result {
    value.map_or(Ok(()), |l| number(out, name, row, l.to_mm()))
}

fn of_form(out: &mut dyn Write, form: &Form) -> fmt::Result {
    let kind = match form.kind() {
        JointKind::Lap => "lap",
        JointKind::SingleStrap => "single-strap",
        JointKind::DoubleStrap => "double-strap",
    };
    let arrangement = match form.arrangement() {
        Arrangement::Zigzag => "zigzag",
        Arrangement::Chain => "chain",
    };
    write!(out, "kind={kind}\narrangement={arrangement}\n")?;
    form.rows().try_for_each(|row| writeln!(out, "row={},{}", row.rivets, row.planes))
}

fn of_brief(out: &mut dyn Write, brief: &Brief) -> fmt::Result {
    of_form(out, brief.form())?;
    let stated = brief.stated();
    length(out, "strip", 0, stated.strip)?;
    length(out, "plate", 0, Some(brief.plate()))?;
    length(out, "other_plate", 0, stated.other_plate)?;
    length(out, "wide_strap", 0, stated.straps.map(|(wide, _)| wide))?;
    length(out, "narrow_strap", 0, stated.straps.and_then(|(_, narrow)| narrow))?;
    length(out, "hole", 0, stated.hole)?;
    length(out, "rivet", 0, stated.rivet)?;
    for (row, at) in (1..brief.form().row_count()).zip(1_u8..) {
        length(out, "back_pitch", at, brief.stated_back_pitch(row))?;
    }
    length(out, "margin", 0, stated.margin)?;
    of_materials(out, brief.materials())
}

fn of_joint(out: &mut dyn Write, joint: &Joint) -> fmt::Result {
    of_form(out, joint.form())?;
    number(out, "strip", 0, joint.strip().to_mm())?;
    number(out, "plate", 0, joint.plate().to_mm())?;
    length(out, "other_plate", 0, joint.other_plate())?;
    length(out, "wide_strap", 0, joint.wide_strap())?;
    length(out, "narrow_strap", 0, joint.narrow_strap())?;
    for (row, at) in joint.rows().iter().zip(1_u8..) {
        number(out, "hole", at, row.hole().to_mm())?;
        number(out, "rivet", at, row.rivet().to_mm())?;
    }
    for (row, at) in (1..joint.form().row_count()).zip(1_u8..) {
        length(out, "back_pitch", at, joint.back_pitch(row))?;
    }
    length(out, "margin", 0, joint.margin())
}

fn of_materials(out: &mut dyn Write, materials: &Materials) -> fmt::Result {
    let stress =
        |out: &mut dyn Write, name: &str, s: Option<Stress>| s.map_or(Ok(()), |s| number(out, name, 0, s.to_mpa()));
    stress(out, "tension", Some(materials.plate.tension))?;
    stress(out, "bearing", materials.plate.bearing)?;
    stress(out, "plate_shear", materials.plate.shear_out)?;
    stress(out, "other_tension", Some(materials.other.tension))?;
    stress(out, "other_bearing", materials.other.bearing)?;
    stress(out, "other_plate_shear", materials.other.shear_out)?;
    stress(out, "shear", Some(materials.rivet_shear))
}
