//! The working of a group of rivets: the steps, the rivet that bears most, all rivets in a table.

use core::fmt::{self, Write};

use super::doc::Doc;
use super::line::write_value;
use super::steps::write_clause;
use super::style::{Dialect, Style};
use super::table::Columns;
use super::verdict::write_finding;
use super::{WorkingError, record};
use crate::bounds::Unit;
use crate::group::{
    Group, GroupCheck, GroupDesign, GroupLoad, GroupMode, GroupStress, RivetLoad, check_group_with, size_group_with,
};
use crate::math;
use crate::rules::{Diameter, Entry, RuleBook};
use crate::text;

/// Checks a group of rivets and writes the working of it.
///
/// # Errors
/// Those of [`check_group`](crate::group::check_group), and of the sink.
///
/// ```
/// use seamwright::{group::{Group, GroupLoad, GroupStress}, rules::METRIC, working::{Style, write_group_check}};
/// use seamwright::quantities::{Force, Length, Stress};
/// let mm = Length::mm;
/// let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(0.0), mm(100.0))])?.hole(mm(19.0));
/// let load = GroupLoad::force(Force::kn(0.0), Force::kn(-15.0), mm(50.0), mm(0.0));
/// let stress = GroupStress::new(Stress::mpa(60.0));
/// let mut sheet = String::new();
/// assert!(write_group_check(&mut sheet, Style::default(), &group, &load, &stress, &METRIC).is_ok());
/// assert!(sheet.contains("Critical rivet: no. 1"));
/// assert!(write_group_check(&mut sheet, Style::default(), &group.planes(3), &load, &stress, &METRIC).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn write_group_check(
    out: &mut dyn fmt::Write,
    style: Style,
    group: &Group,
    load: &GroupLoad,
    stress: &GroupStress,
    book: &RuleBook<'_>,
) -> Result<GroupCheck, WorkingError> {
    let verdicts = |doc: &mut Doc<'_>, found: &GroupCheck| write_verdicts(doc, book, found);
    record(out, style, book, "Working: check of a group of rivets", verdicts, |c| {
        check_group_with(c, group, load, stress, &book.rules).map(GroupCheck::values)
    })
}

/// Finds the size that a group of rivets needs and writes the working of it.
///
/// # Errors
/// Those of [`size_group`](crate::group::size_group), and of the sink.
///
/// ```
/// use seamwright::{group::{Group, GroupLoad, GroupStress}, rules::METRIC, working::{Style, write_group_size}};
/// use seamwright::quantities::{Force, Length, Stress};
/// let mm = Length::mm;
/// let group = Group::at(&[(mm(0.0), mm(0.0)), (mm(0.0), mm(100.0))])?;
/// let load = GroupLoad::force(Force::kn(0.0), Force::kn(-15.0), mm(50.0), mm(0.0));
/// let stress = GroupStress::new(Stress::mpa(60.0));
/// let mut sheet = String::new();
/// assert!(write_group_size(&mut sheet, Style::default(), &group, &load, &stress, &METRIC).is_ok());
/// assert!(sheet.contains("dF = sqrt(4 FM/(pi ss))"));
/// assert!(write_group_size(&mut sheet, Style::default(), &group.hole(mm(9.0)), &load, &stress, &METRIC).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn write_group_size(
    out: &mut dyn fmt::Write,
    style: Style,
    group: &Group,
    load: &GroupLoad,
    stress: &GroupStress,
    book: &RuleBook<'_>,
) -> Result<GroupDesign, WorkingError> {
    let verdicts = |doc: &mut Doc<'_>, made: &GroupDesign| write_verdicts(doc, book, &made.check);
    record(out, style, book, "Working: size of the rivets of a group", verdicts, |c| {
        size_group_with(c, group, load, stress, &book.rules).map(GroupDesign::values)
    })
}

/// Which diameter counts, by which clause.
fn write_counted(w: &mut dyn Write, book: &RuleBook<'_>, words: &str, entry: Entry) -> fmt::Result {
    let which = match book.rules.diameter(entry) {
        Diameter::Hole => "hole",
        Diameter::Rivet => "cold rivet",
    };
    write!(w, "Diameter that counts in {words}: the {which} (")?;
    write_clause(w, book, entry.no())?;
    w.write_str(").")
}

fn write_verdicts(doc: &mut Doc<'_>, book: &RuleBook<'_>, found: &GroupCheck) -> fmt::Result {
    // The words are escaped as text: values are written as such, whatever the dialect.
    let style = Style { dialect: Dialect::Plain, ..*doc.style() };
    let value = |w: &mut dyn Write, unit: Unit, x: f64| write_value(w, &style, unit, x);
    doc.heading("What governs")?;
    doc.paragraph(&|w| {
        write!(w, "Critical rivet: no. {}, by ", found.critical())?;
        let stress = match (found.governs, &found.bearing) {
            (GroupMode::Bearing, Some(bearing)) => {
                w.write_str("bearing: ")?;
                bearing.stress
            }
            _ => {
                w.write_str("shear: ")?;
                found.shear.stress
            }
        };
        value(w, Unit::Megapascal, stress)?;
        w.write_str(", ")?;
        text::write_fixed_with(w, 100.0 * found.used, 1, style.mark).map_err(|_| fmt::Error)?;
        w.write_str(" % of what is permitted.")?;
        if math::below(1.0, found.used) { w.write_str(" NOT ENOUGH.") } else { Ok(()) }
    })?;
    doc.paragraph(&|w| {
        w.write_str("Allowed, with the same line and direction: ")?;
        if let Some(load) = found.safe_load {
            value(w, Unit::Newton, load)?;
        }
        if found.safe_load.is_some() && found.safe_couple.is_some() {
            w.write_str(", together with ")?;
        }
        if let Some(couple) = found.safe_couple {
            w.write_str("a couple of ")?;
            value(w, Unit::NewtonMillimetre, couple)?;
        }
        w.write_str(".")
    })?;
    if found.centre.is_none() {
        doc.paragraph(&|w| w.write_str("The load passes through the centroid: the group does not turn."))?;
    }
    doc.paragraph(&|w| write_counted(w, book, "shear", Entry::SHEAR_DIAMETER))?;
    if found.bearing.is_some() {
        doc.paragraph(&|w| write_counted(w, book, "bearing", Entry::BEARING_DIAMETER))?;
    }
    rivets(doc, &style, found.rivets())?;
    doc.heading("Rules met and not met")?;
    for finding in found.findings.iter() {
        doc.paragraph(&|w| write_finding(w, &style, book, finding))?;
    }
    doc.heading("What was not looked at")?;
    doc.paragraph(&|w| {
        w.write_str(
            "The elastic method takes the plate as rigid and the load in its plane. Prying, bending and buckling of \
             the plate, its edges and net section, friction and fatigue were not looked at.",
        )
    })
}

/// All rivets, one to a row.
fn rivets(doc: &mut Doc<'_>, style: &Style, rivets: &[RivetLoad]) -> fmt::Result {
    let (mm, n, mpa) = (Unit::Millimetre, Unit::Newton, Unit::Megapascal);
    let figure = |unit: Unit, x: f64| move |w: &mut dyn Write| even(w, style, unit, x);
    let place = |x: f64| move |w: &mut dyn Write| short(style).value(w, mm, x);
    let angle = |r: &RivetLoad| {
        let degrees = r.direction();
        move |w: &mut dyn Write| text::write_fixed_with(w, degrees, 1, style.mark).map_err(|_| fmt::Error)
    };
    doc.heading("The rivets one by one")?;
    doc.paragraph(&|w| {
        w.write_str(
            "The force is what the loaded plate puts on the rivet; its direction is in degrees, from x towards y. ",
        )?;
        write!(w, "Stresses in {}.", style.symbol(mpa))
    })?;
    if doc.is_narrow() {
        for (r, number) in rivets.iter().zip(1_u8..) {
            let here = |w: &mut dyn Write| {
                let [x, y] = r.place;
                write!(w, "{number}. at ")?;
                place(x)(w)?;
                w.write_str(", ")?;
                place(y)(w)
            };
            let force = |w: &mut dyn Write| {
                write_value(w, &short(style), n, r.resultant)?;
                w.write_str(" at ")?;
                angle(r)(w)?;
                w.write_str(" deg")
            };
            let stress = |w: &mut dyn Write| {
                w.write_str("shear ")?;
                write_value(w, &short(style), mpa, r.shear)?;
                let Some(bearing) = r.bearing else { return Ok(()) };
                w.write_str(", bearing ")?;
                write_value(w, &short(style), mpa, bearing)
            };
            doc.entry(&here, &[&force, &stress])?;
        }
        return Ok(());
    }
    let head = |words: &str, unit: Unit| -> Result<heapless::String<16>, fmt::Error> {
        let mut text = heapless::String::new();
        write!(text, "{words}{}", style.symbol(unit))?;
        Ok(text)
    };
    let (x, y, fx, fy) = (head("x, ", mm)?, head("y, ", mm)?, head("Fx, ", n)?, head("Fy, ", n)?);
    let f = head("F, ", n)?;
    let heads = ["no.", &*x, &*y, &*fx, &*fy, &*f, "degrees", "shear", "bearing"];
    let known = rivets.iter().any(|r| r.bearing.is_some());
    let shown = heads.get(..if known { 9 } else { 8 }).unwrap_or(&heads);
    let mut list = doc.again();
    list.table_of(Columns::new(shown, &[5, 9, 9, 10, 10, 10, 9, 9]).numbers(0b1_1111_1111))?;
    for (r, number) in rivets.iter().zip(1_u8..) {
        let ([x, y], [fx, fy]) = (r.place, r.force);
        let last = |w: &mut dyn Write| r.bearing.map_or(Ok(()), |bearing| figure(mpa, bearing)(w));
        let cells: [super::Piece<'_>; 9] = [
            &|w| write!(w, "{number}"),
            &place(x),
            &place(y),
            &figure(n, fx),
            &figure(n, fy),
            &figure(n, r.resultant),
            &angle(r),
            &figure(mpa, r.shear),
            &last,
        ];
        list.row(cells.get(..shown.len()).unwrap_or(&cells))?;
    }
    list.end_table()
}

/// A figure of a column, with as many decimals as its neighbours.
fn even(w: &mut dyn Write, style: &Style, unit: Unit, x: f64) -> fmt::Result {
    let short = short(style);
    text::write_fixed_with(w, short.convert(unit, x), short.decimals(unit), style.mark).map_err(|_| fmt::Error)
}

/// Figures of a table: fewer decimals than the lines that are to be worked again.
fn short(style: &Style) -> Style {
    let fewer = match style.units {
        super::Units::Metric => -2,
        super::Units::Inch => -3,
    };
    Style { extra_digits: style.extra_digits.saturating_add(fewer), ..*style }
}
