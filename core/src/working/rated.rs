//! The working of a rating and of a vessel: the steps, what governs, what it rests on.

use core::fmt;

use super::doc::Doc;
use super::line::write_value;
use super::steps::write_clause;
use super::style::{Dialect, Style};
use super::verdict::{Verdicts, write_finding};
use super::{WorkingError, record};
use crate::bounds::Unit;
use crate::check::Findings;
use crate::materials::Materials;
use crate::math;
use crate::rating::{Assumptions, Existing, Governs, Rating, rate_with};
use crate::rules::RuleBook;
use crate::sizing::Design;
use crate::text;
use crate::vessel::{Outcome, VesselBrief, vessel_with};

/// Rates an existing joint and writes the working of it, each assumption listed.
///
/// # Errors
/// Those of [`rate`](crate::rating::rate), and of the sink.
///
/// ```
/// use seamwright::{joint::Form, quantities::Length, rules::{Metal, US_EXISTING}};
/// use seamwright::{rating::{Existing, KnownLength}, working::{Style, write_rate}};
/// let inch = |x: f64| KnownLength::measured(Length::inch(x));
/// let found = Existing::new(Form::lap(2)?, inch(3.5), inch(0.45), Length::inch(48.0)).metals(Metal::Steel, Metal::Iron);
/// let mut sheet = String::new();
/// assert!(write_rate(&mut sheet, Style::default(), &found.safety(5.0), &US_EXISTING).is_ok());
/// assert!(sheet.contains("What this rests on"));
/// assert!(write_rate(&mut sheet, Style::default(), &found, &US_EXISTING).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn write_rate(
    out: &mut dyn fmt::Write,
    style: Style,
    existing: &Existing,
    book: &RuleBook<'_>,
) -> Result<Rating, WorkingError> {
    let verdicts = |doc: &mut Doc<'_>, rating: &Rating| {
        write_rating(doc, book, rating)?;
        let Rating { joint, materials, analysis, .. } = rating;
        Verdicts { book, joint, materials, analysis }.write(doc)?;
        write_findings(doc, book, &rating.findings)?;
        write_assumptions(doc, book, &rating.assumptions)
    };
    record(out, style, book, "Working: rating of a riveted joint of a shell", verdicts, |c| {
        rate_with(c, existing, &book.rules).map(Rating::values)
    })
}

/// Designs a vessel and writes the working of the plate that is taken, with its seams.
///
/// # Errors
/// Those of [`vessel`](crate::vessel::vessel), and of the sink.
///
/// ```
/// use seamwright::{joint::Form, materials::Materials, quantities::{Length, Pressure, Stress}, rules::METRIC};
/// use seamwright::{rating::{Footing, Shell}, vessel::{PlateStock, VesselBrief}, working::{Style, write_vessel}};
/// let steel = Materials::new(Stress::mpa(90.0), Stress::mpa(75.0)).bearing(Stress::mpa(150.0));
/// let shell = Shell::new(Length::mm(1000.0), Footing::Permissible);
/// let stock = PlateStock::every(Length::mm(1.0), Length::mm(5.0), Length::mm(40.0));
/// let brief = VesselBrief::new(Form::double_strap(2)?, Pressure::mpa(1.5), shell, steel, stock);
/// let mut sheet = String::new();
/// assert!(write_vessel(&mut sheet, Style::default(), &brief, &METRIC).is_ok());
/// assert!(write_vessel(&mut sheet, Style::default(), &brief.pressure(Pressure::mpa(-1.0)), &METRIC).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn write_vessel(
    out: &mut dyn fmt::Write,
    style: Style,
    brief: &VesselBrief<'_>,
    book: &RuleBook<'_>,
) -> Result<Outcome, WorkingError> {
    let verdicts = |doc: &mut Doc<'_>, outcome: &Outcome| write_outcome(doc, book, brief.stresses(), outcome);
    record(out, style, book, "Working: design of a riveted shell", verdicts, |c| {
        vessel_with(c, brief, &book.rules).map(Outcome::values)
    })
}

/// The words are escaped as text: values are written as such, whatever the dialect.
fn plain(doc: &Doc<'_>) -> Style {
    Style { dialect: Dialect::Plain, ..*doc.style() }
}

pub(crate) fn write_rating(doc: &mut Doc<'_>, book: &RuleBook<'_>, rating: &Rating) -> fmt::Result {
    let style = plain(doc);
    let pressure = |w: &mut dyn fmt::Write, p: f64| write_value(w, &style, Unit::Megapascal, p);
    doc.heading("The rating")?;
    doc.paragraph(&|w| {
        w.write_str("Working pressure allowed: ")?;
        pressure(w, rating.allowed)?;
        w.write_str(". It is set by ")?;
        match rating.governs {
            Governs::Seam => write!(w, "the seam: {}.", rating.analysis.governing.name(rating.joint.form())),
            Governs::Plate => w.write_str("the solid plate away from the seam."),
            Governs::Rule(entry) => {
                w.write_str("a limit of the rule book on laps (")?;
                write_clause(w, book, entry)?;
                w.write_str(").")
            }
        }
    })?;
    if let Some(margin) = rating.margin {
        doc.paragraph(&|w| {
            w.write_str("Allowed over present pressure: ")?;
            write_value(w, &style, Unit::One, margin)?;
            w.write_str(if math::below(margin, 1.0) { ". The present pressure is NOT allowed." } else { "." })
        })?;
    }
    if let Some(test) = rating.test {
        doc.paragraph(&|w| {
            w.write_str("Hydrostatic test pressure by the rule book: ")?;
            pressure(w, test)?;
            w.write_str(".")
        })?;
    }
    let Some(life) = rating.life else { return Ok(()) };
    doc.paragraph(&|w| {
        w.write_str("Wastage ")?;
        write_value(w, &style, Unit::Millimetre, life.rate)?;
        w.write_str(" in a year. ")?;
        if life.years.is_infinite() {
            return w.write_str("Nothing wastes: the pressure stays.");
        }
        if life.years <= 0.0 {
            return w.write_str("No years are left at the present pressure.");
        }
        w.write_str("Years until only the present pressure is allowed: ")?;
        text::write_plain_with(w, life.years, 1, style.mark).map_err(|_| fmt::Error)?;
        w.write_str(", found by checking the joint again along the wastage; the plate is then ")?;
        write_value(w, &style, Unit::Millimetre, life.plate)?;
        w.write_str(" and the pressure allowed ")?;
        pressure(w, life.pressure)?;
        w.write_str(".")
    })
}

fn write_findings(doc: &mut Doc<'_>, book: &RuleBook<'_>, findings: &Findings) -> fmt::Result {
    let style = plain(doc);
    doc.heading("Rules on the shell")?;
    if findings.is_empty() {
        return doc.paragraph(&|w| w.write_str("The rule book has none that apply."));
    }
    for finding in findings.iter() {
        doc.paragraph(&|w| write_finding(w, &style, book, finding))?;
    }
    Ok(())
}

/// Lists what a result rests on.
fn write_assumptions(doc: &mut Doc<'_>, book: &RuleBook<'_>, assumptions: &Assumptions) -> fmt::Result {
    let style = plain(doc);
    doc.heading("What this rests on")?;
    for a in assumptions.iter() {
        doc.paragraph(&|w| {
            w.write_str(a.about.what())?;
            if a.row > 0 {
                write!(w, ", row {}", a.row)?;
            }
            w.write_str(": ")?;
            if a.about.is_circumstance() {
                w.write_str(if a.value > 0.0 { "yes" } else { "no" })?;
            } else {
                write_value(w, &style, a.about.unit(), a.value)?;
            }
            write!(w, " ({}", a.basis.word())?;
            if a.entry.is_some() {
                w.write_str("; ")?;
                write_clause(w, book, a.entry)?;
            }
            w.write_str(")")
        })?;
    }
    Ok(())
}

fn write_outcome(doc: &mut Doc<'_>, book: &RuleBook<'_>, materials: &Materials, outcome: &Outcome) -> fmt::Result {
    let style = plain(doc);
    let millimetre = |w: &mut dyn fmt::Write, t: f64| write_value(w, &style, Unit::Millimetre, t);
    let pressure = |w: &mut dyn fmt::Write, p: f64| write_value(w, &style, Unit::Megapascal, p);
    let vessel = match outcome {
        Outcome::Found(vessel) => vessel,
        Outcome::NothingFits(why) => {
            doc.heading("No plate of the stock carries the pressure")?;
            return doc.paragraph(&|w| {
                write!(w, "{} plates tried; below the least of the book {}; ", why.tried, why.too_thin)?;
                write!(w, "without a joint {}.", why.refused)?;
                if let Some(error) = &why.refusal {
                    write!(w, " The last of these: {error}.")?;
                }
                if let Some((plate, most)) = why.best {
                    w.write_str(" Most is carried by ")?;
                    millimetre(w, plate)?;
                    w.write_str(": ")?;
                    pressure(w, most)?;
                    w.write_str(".")?;
                }
                Ok(())
            });
        }
    };
    doc.heading("The shell")?;
    doc.paragraph(&|w| {
        w.write_str("Plate ")?;
        millimetre(w, vessel.plate)?;
        write!(w, ", number {} of the stock and the first that does; it allows ", vessel.tried)?;
        pressure(w, vessel.allowed.pressure)?;
        w.write_str(".")
    })?;
    let Design { joint, analysis, .. } = &vessel.seam;
    Verdicts { book, joint, materials, analysis }.write(doc)?;
    write_findings(doc, book, &vessel.findings)?;
    if let Some(error) = &vessel.no_girth {
        doc.heading("No girth seam")?;
        doc.paragraph(&|w| write!(w, "{error}."))?;
    }
    if let Some(girth) = &vessel.girth {
        doc.heading("The girth seam in short")?;
        doc.paragraph(&|w| {
            write!(w, "{} rivets in {} pitches; it allows ", girth.rivets, girth.strips)?;
            pressure(w, girth.pressure)?;
            w.write_str(".")
        })?;
        for finding in girth.findings.iter() {
            doc.paragraph(&|w| write_finding(w, &style, book, finding))?;
        }
    }
    write_assumptions(doc, book, &vessel.assumptions)
}
