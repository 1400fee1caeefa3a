//! The form in words, and a sketch: rows in plan, planes and caulked edges in section. Not to scale; it says what goes
//! through what.

use core::fmt::{self, Write};

use super::page::Page;
use crate::joint::{Arrangement, Form, Joint, JointKind};

/// Columns of the strip in the plan.
const STRIP: u32 = 48;
/// Columns that the section needs beside its rows.
const ENDS: usize = 8;

pub(super) fn write(page: &mut Page<'_>, joint: &Joint) -> fmt::Result {
    let form = joint.form();
    page.heading("Form")?;
    page.line(&|w| write!(w, "{form}"))?;
    let side = if form.kind() == JointKind::Lap { "" } else { " on each side of the butt" };
    let unit = if form.outer_rivets() > 1 { "strip" } else { "pitch" };
    let plural = |n: u32| if n == 1 { "" } else { "s" };
    page.line(&|w| {
        let (rivets, areas) = (form.rivets(), form.shear_areas());
        write!(w, "{rivets} rivet{} and {areas} shear area{} in one {unit}{side}.", plural(rivets), plural(areas))
    })?;
    // In words as well: a small display has no room for the sketch, and not everybody sees it.
    for (row, number) in form.rows().zip(1_u8..) {
        page.line(&|w| {
            let (n, z) = (row.rivets, row.planes);
            let (rivets, planes) = (plural(u32::from(n)), plural(u32::from(z)));
            write!(w, "Row {number}: {n} rivet{rivets} in one {unit}, {z} shear plane{planes} each.")
        })?;
    }
    page.line(&|w| w.write_str(caulked(form)))?;
    page.doc.block("Plan and section of the joint, described in the lines above", &|w| {
        plan(w, form)?;
        section(w, form)
    })
}

/// Which edges are caulked.
const fn caulked(form: &Form) -> &'static str {
    match form.kind() {
        JointKind::Lap => "Edges caulked where the seam must be tight: those of both plates.",
        JointKind::SingleStrap => "Edges caulked where the seam must be tight: those of the strap.",
        JointKind::DoubleStrap => "Edges caulked where the seam must be tight: those of both straps.",
    }
}

/// Where the first rivet of a row lies across the strip, as a share of it.
fn offset(form: &Form, row: usize) -> f64 {
    if form.arrangement() != Arrangement::Zigzag {
        return 0.0;
    }
    let pairs = form.rows().zip(form.rows().skip(1)).take(row.saturating_sub(1));
    pairs.fold(0.0, |at, (a, b)| at + 0.5 / f64::from(a.rivets.max(b.rivets)))
}

fn fill(w: &mut dyn Write, c: char, count: usize) -> fmt::Result {
    (0..count).try_for_each(|_| w.write_char(c))
}

fn plan(w: &mut dyn Write, form: &Form) -> fmt::Result {
    let lap = form.kind() == JointKind::Lap;
    // A strip of several pitches is shown once, a single pitch twice.
    let (shown, name) = if form.outer_rivets() > 1 { (1_u8, "one strip") } else { (2_u8, "two pitches") };
    let force = if lap { "plate A pulls up" } else { "plate pulls up" };
    writeln!(w, "  Plan, {name} ({force}; o one shear plane, O two):")?;
    for (row, number) in form.rows().zip(1_usize..) {
        write!(w, "    row {number}  |")?;
        let first = offset(form, number);
        let mark = if row.planes == 2 { 'O' } else { 'o' };
        for column in 0..STRIP {
            let rivets = u32::from(row.rivets).saturating_mul(u32::from(shown));
            let here = (0..rivets).any(|k| {
                let along = first / f64::from(shown) + f64::from(k) / f64::from(rivets);
                // Two columns in, so that a rivet never stands on the edge of the sketch.
                let at = along * f64::from(STRIP) + 2.0;
                let at = if at >= f64::from(STRIP) { at - f64::from(STRIP) } else { at };
                at >= f64::from(column) && at < f64::from(column) + 1.0
            });
            w.write_char(if here { mark } else { ' ' })?;
        }
        writeln!(w, "|  {} x {} plane{}", row.rivets, row.planes, if row.planes == 1 { "" } else { "s" })?;
    }
    w.write_str("           ")?;
    fill(w, '-', 48)?;
    writeln!(w, "   {}", if lap { "plate B pulls down" } else { "butt" })
}

/// A member in the section.
struct Member {
    name: &'static str,
    fill: char,
    /// First row of its own; 0 comes from the far left.
    from: usize,
    /// Whether it goes on to the right.
    onwards: bool,
    /// Whether its edge is caulked.
    caulked: bool,
}

/// The rows from the side: which members each rivet passes through.
fn section(w: &mut dyn Write, form: &Form) -> fmt::Result {
    let member = |name, fill, from, onwards, caulked| Member { name, fill, from, onwards, caulked };
    let double = form.first_double_row();
    let members: [Option<Member>; 3] = match form.kind() {
        JointKind::Lap => {
            [Some(member("plate A", '=', 0, false, true)), Some(member("plate B", '#', 1, true, true)), None]
        }
        JointKind::SingleStrap => {
            [Some(member("strap", '#', 1, true, true)), Some(member("plate", '=', 0, false, false)), None]
        }
        JointKind::DoubleStrap => {
            let [wide, narrow] =
                if form.unequal() { ["wide strap", "narrow strap"] } else { ["first strap", "second strap"] };
            [
                Some(member(narrow, '#', double, true, true)),
                Some(member("plate", '=', 0, false, false)),
                Some(member(wide, '#', 1, true, true)),
            ]
        }
    };
    let tail = if form.kind() == JointKind::Lap { "" } else { ", up to the butt" };
    writeln!(w, "  Section, rows from the outside{tail} (| a rivet, X a caulked edge):")?;
    let rows = form.row_count();
    // Many rows stand closer, so that the name of the member still fits.
    let wide = if rows > 5 { 6 } else { 8 };
    let centre = |row: usize| row.saturating_mul(wide).saturating_sub(2);
    let length = rows.saturating_mul(wide).saturating_add(ENDS);
    let row_at = |column: usize| (1..=rows).find(|row| centre(*row) == column);
    w.write_str("    ")?;
    for column in 0..=centre(rows) {
        match row_at(column) {
            Some(row) => write!(w, "{row}")?,
            None => w.write_str(" ")?,
        }
    }
    w.write_str("\n")?;
    for m in members.iter().flatten() {
        let start = if m.from == 0 { 0 } else { centre(m.from).saturating_sub(3) };
        let end = if m.onwards { length } else { length.saturating_sub(4) };
        w.write_str("    ")?;
        for column in 0..length {
            let edge = if m.onwards { start } else { end.saturating_sub(1) };
            let c = match row_at(column) {
                Some(row) if row >= m.from => '|',
                _ if m.caulked && column == edge => 'X',
                _ if column >= start && column < end => m.fill,
                _ => ' ',
            };
            w.write_char(c)?;
        }
        writeln!(w, "  {}", m.name)?;
    }
    Ok(())
}
