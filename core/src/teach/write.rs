//! Problem sheets, keys, solutions and marks, in every dialect.

use core::borrow::Borrow;
use core::fmt::{self, Write};

use super::family::Setting;
use super::generate::Problem;
use super::mark::{Mark, Marks};
use crate::bounds::Unit;
use crate::joint::JointKind;
use crate::materials::Materials;
use crate::proportion::SNAP_HEAD_WIDTH;
use crate::quantities::Stress;
use crate::reconcile::Work;
use crate::rules::RuleBook;
use crate::step::{Name, Quantity};
use crate::text::write_whole;
use crate::working::{Doc, Style, WorkingError, write_check, write_size, write_value};
use crate::{CAUTION, VERSION};

/// Whom a sheet is for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub enum Audience {
    /// The class: the problems alone.
    Class,
    /// The teacher: the problems and their answers.
    Teacher,
}

/// Writes a sheet of problems, with the answers or without: of a slice of them, or of an iterator that draws one after
/// the other where there is no room for all.
///
/// # Errors
/// Those of the sink.
pub fn write_problems(
    out: &mut dyn fmt::Write,
    style: Style,
    problems: impl IntoIterator<Item: Borrow<Problem>>,
    audience: Audience,
    book: &RuleBook<'_>,
) -> Result<(), WorkingError> {
    let mut doc = Doc::new(out, style);
    let title =
        if audience == Audience::Teacher { "Riveted joints: problems and answers" } else { "Riveted joints: problems" };
    doc.begin(&|w| w.write_str(title))?;
    doc.paragraph(&|w| write!(w, "Rule book: {}. seamwright {VERSION}. The joints are made up.", book.title))?;
    doc.paragraph(&|w| w.write_str(CAUTION))?;
    for (number, problem) in (1_u32..).zip(problems) {
        let problem = problem.borrow();
        let mut heading = heapless::String::<32>::new();
        // A heading of a number always fits.
        let _ = write!(heading, "Problem {number}");
        doc.heading(heading.as_str())?;
        statement(&mut doc, style, problem)?;
        if audience == Audience::Teacher {
            answers(&mut doc, style, problem)?;
        }
    }
    doc.end()?;
    Ok(())
}

/// Writes the full working of a problem.
///
/// # Errors
/// Those of [`write_check`] and [`write_size`].
pub fn write_solution(
    out: &mut dyn fmt::Write,
    style: Style,
    problem: &Problem,
    book: &RuleBook<'_>,
) -> Result<(), WorkingError> {
    match &problem.case.work {
        Work::Check(joint, materials) => write_check(out, style, joint, materials, book).map(|_| ()),
        Work::Size(brief) => write_size(out, style, brief, book).map(|_| ()),
    }
}

/// Writes the marks of a student's answers.
///
/// # Errors
/// Those of the sink.
pub fn write_marks(
    out: &mut dyn fmt::Write,
    style: Style,
    problem: &Problem,
    marks: &Marks,
) -> Result<(), WorkingError> {
    let mut doc = Doc::new(out, style);
    doc.begin(&|w| w.write_str("Marks"))?;
    doc.table(&["quantity", "key", "mark"], &[14, 18])?;
    for ((name, mark), (_, value)) in marks.iter().zip(problem.key.iter()) {
        doc.row(&[&|w| symbol(w, name), &|w| answer(w, style, name, value), &|w| match mark {
            Mark::Right => w.write_str("right"),
            Mark::CarriedOver => w.write_str("right by carry-over"),
            Mark::Slip { convention, sure: true } => write!(w, "wrong: {}", convention.words),
            Mark::Slip { convention, sure: false } => write!(w, "wrong, perhaps {}", convention.words),
            Mark::Wrong => w.write_str("wrong"),
            Mark::Missing => w.write_str("not answered"),
        }])?;
    }
    doc.end_table()?;
    let (credited, asked) = marks.credit();
    doc.paragraph(&|w| write!(w, "{credited} of {asked} answers credited."))?;
    doc.paragraph(&|w| w.write_str(CAUTION))?;
    doc.end()?;
    Ok(())
}

/// The text of a problem.
fn statement(doc: &mut Doc<'_>, style: Style, problem: &Problem) -> fmt::Result {
    let value = |w: &mut dyn fmt::Write, unit: Unit, x: f64| write_value(w, &rough(style), unit, x);
    let form = problem.family.form;
    let place = match problem.family.setting {
        Setting::Boiler => "of a boiler drum",
        Setting::Structure => "of a structural tie",
    };
    let stresses = |w: &mut dyn fmt::Write, m: &Materials| {
        let stress = |w: &mut dyn fmt::Write, s: Stress| value(w, Unit::Megapascal, s.to_mpa());
        w.write_str(" Permissible stresses: tension of the plate ")?;
        stress(w, m.plate.tension)?;
        w.write_str(", shear of the rivets ")?;
        stress(w, m.rivet_shear)?;
        if let Some(bearing) = m.plate.bearing {
            w.write_str(", bearing ")?;
            stress(w, bearing)?;
        }
        w.write_str(".")
    };
    match &problem.case.work {
        Work::Check(joint, materials) => doc.paragraph(&|w| {
            write!(w, "The plates {place} are ")?;
            value(w, Unit::Millimetre, joint.plate().to_mm())?;
            write!(w, " thick and are joined by a {form}. The pitch of the outer row is ")?;
            value(w, Unit::Millimetre, joint.pitch().to_mm())?;
            w.write_str(", the holes are ")?;
            value(w, Unit::Millimetre, joint.rows().first().map_or(0.0, |r| r.hole().to_mm()))?;
            w.write_str(" for rivets of ")?;
            value(w, Unit::Millimetre, joint.rows().first().map_or(0.0, |r| r.rivet().to_mm()))?;
            if form.kind() != JointKind::Lap {
                if let Some(strap) = joint.wide_strap() {
                    w.write_str(if joint.narrow_strap().is_some() { ", the straps " } else { ", the strap " })?;
                    value(w, Unit::Millimetre, strap.to_mm())?;
                }
                if let Some(strap) = joint.narrow_strap() {
                    w.write_str(" and ")?;
                    value(w, Unit::Millimetre, strap.to_mm())?;
                }
            }
            w.write_str(".")?;
            stresses(w, materials)?;
            w.write_str(" Find the strength of one rivet in shear and in bearing, in each row where it differs; the strength of \
                 one pitch in every way it can fail; and the efficiency of the joint.",
            )
        }),
        Work::Size(brief) => doc.paragraph(&|w| {
            write!(w, "The plates {place} are ")?;
            value(w, Unit::Millimetre, brief.plate().to_mm())?;
            write!(w, " thick and are to be joined by a {form}.")?;
            stresses(w, brief.materials())?;
            if form.unequal() {
                w.write_str(" The rivets have snap heads, ")?;
                value(w, Unit::One, SNAP_HEAD_WIDTH)?;
                w.write_str(" cold rivets wide; those of the row outside the narrow strap are to clear its edge.")?;
            }
            w.write_str(
                " Find the hole, the strength of one rivet in shear and in bearing, the pitch, the distances between \
                 rows, the margin, the straps and the efficiency.",
            )
        }),
    }
}

/// The answers of a problem.
fn answers(doc: &mut Doc<'_>, style: Style, problem: &Problem) -> fmt::Result {
    doc.table(&["quantity", "answer", "what"], &[14, 18])?;
    for (name, value) in problem.key.iter() {
        let Name(quantity, row) = name;
        doc.row(&[&|w| symbol(w, name), &|w| answer(w, style, name, value), &|w| {
            w.write_str(match quantity {
                // What a rivet bears on may be the plate or the straps, whichever is weaker.
                Quantity::RivetBearing => "one rivet in bearing",
                other => other.what(),
            })?;
            if row > 0 { write!(w, ", row {row}") } else { Ok(()) }
        }])?;
    }
    doc.end_table()?;
    doc.paragraph(&|w| {
        w.write_str("Drawn from number ")?;
        write_whole(w, problem.seed)?;
        w.write_str(".")
    })
}

fn symbol(out: &mut dyn fmt::Write, Name(quantity, row): Name) -> fmt::Result {
    out.write_str(quantity.symbol())?;
    if row > 0 { write!(out, ".{row}") } else { Ok(()) }
}

/// A value with the digits that a student is asked for.
fn answer(out: &mut dyn fmt::Write, style: Style, Name(quantity, _): Name, value: f64) -> fmt::Result {
    write_value(out, &rough(style), quantity.unit(), value)
}

/// Two decimals less than a working has.
const fn rough(mut style: Style) -> Style {
    style.extra_digits = style.extra_digits.saturating_sub(2);
    // Cells are escaped by the document: they are no mathematics.
    if matches!(style.dialect, crate::working::Dialect::Latex) {
        style.dialect = crate::working::Dialect::Plain;
    }
    style
}
