//! The form in words, and a sketch: rows in plan, planes in section. Not to scale; it says what goes through what.

use seamwright::joint::{Arrangement, Form, Joint, JointKind};

use super::Scene;
use super::page::Page;

/// Columns of one pitch in the plan.
const PITCH: usize = 24;
/// Columns of one row in the section.
const ROW: usize = 9;

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    let joint = &scene.answer.joint;
    let form = joint.form();
    page.heading("FORM");
    page.wrap("  ", 2, &form.to_string());
    let side = if form.kind() == JointKind::Lap { "" } else { " on each side of the butt" };
    let unit = if form.outer_rivets() > 1 { "strip" } else { "pitch" };
    page.wrap(
        "  ",
        2,
        &format!("{} rivets and {} shear areas in one {unit}{side}.", form.rivets(), form.shear_areas()),
    );
    page.line("");
    plan(page, form);
    page.line("");
    section(page, joint);
}

/// Where the rivets of each row lie across the strip, as fractions of it.
fn offsets(form: &Form) -> Vec<f64> {
    let mut at = 0.0;
    let mut before: Option<u8> = None;
    form.rows()
        .map(|row| {
            if let Some(before) = before
                && form.arrangement() == Arrangement::Zigzag
            {
                at += 0.5 / f64::from(before.max(row.rivets));
            }
            before = Some(row.rivets);
            at
        })
        .collect()
}

fn plan(page: &mut Page, form: &Form) {
    let lap = form.kind() == JointKind::Lap;
    let shown = if form.outer_rivets() > 1 { 1 } else { 2 };
    let wide = PITCH * shown * if shown == 1 { 2 } else { 1 };
    let strip = wide / shown;
    let name = if shown == 1 { "one strip" } else { "two pitches" };
    let force = if lap { "plate A pulls up" } else { "plate pulls up" };
    page.line(&format!("  Plan, {name} ({force}; o one shear plane, O two):"));
    for ((row, number), offset) in form.rows().zip(1..).zip(offsets(form)) {
        let mut line = vec![' '; wide];
        let rivets = usize::from(row.rivets);
        for k in 0..rivets * shown {
            let across = (offset + k as f64 / f64::from(row.rivets)) * strip as f64 + 2.0;
            if let Some(slot) = line.get_mut(across as usize % wide) {
                *slot = if row.planes == 2 { 'O' } else { 'o' };
            }
        }
        let text: String = line.into_iter().collect();
        page.line(&format!("    row {number}  |{text}|  {rivets} x {} plane{}", row.planes, plural(row.planes)));
    }
    let edge = if lap { "plate B pulls down" } else { "butt" };
    page.line(&format!("           {}   {edge}", "-".repeat(wide)));
}

fn plural(n: u8) -> &'static str {
    if n == 1 { "" } else { "s" }
}

/// The rows from the side: which members each rivet passes through.
fn section(page: &mut Page, joint: &Joint) {
    let form = joint.form();
    let rows = form.row_count();
    let length = ROW * rows;
    let double = form.first_double_row();
    // Member: name, fill, from row (0: from the far left), up to row (rows + 1: to the right end).
    let mut members: Vec<(&str, char, usize, bool)> = Vec::new();
    match form.kind() {
        JointKind::Lap => {
            members.push(("plate A", '=', 0, false));
            members.push(("plate B", '#', 1, true));
        }
        JointKind::SingleStrap => {
            members.push(("strap", '#', 1, true));
            members.push(("plate", '=', 0, false));
        }
        JointKind::DoubleStrap => {
            let [wide, narrow] =
                if form.unequal() { ["wide strap", "narrow strap"] } else { ["first strap", "second strap"] };
            members.push((narrow, '#', double, true));
            members.push(("plate", '=', 0, false));
            members.push((wide, '#', 1, true));
        }
    }
    let tail = if form.kind() == JointKind::Lap { "" } else { ", up to the butt" };
    page.line(&format!("  Section, rows from the outside{tail} (| a rivet):"));
    let mut numbers = vec![' '; length + 8];
    for row in 1..=rows {
        if let Some(slot) = numbers.get_mut(centre(row)) {
            *slot = char::from_digit(u32::try_from(row).unwrap_or(0), 10).unwrap_or('?');
        }
    }
    page.line(&format!("    {}", numbers.iter().collect::<String>()));
    for (name, fill, from, onwards) in members {
        let start = if from == 0 { 0 } else { centre(from) - 3 };
        let end = if onwards { length + 8 } else { length + 4 };
        let mut line: Vec<char> = (0..length + 8).map(|x| if x >= start && x < end { fill } else { ' ' }).collect();
        for row in from.max(1)..=rows {
            if let Some(slot) = line.get_mut(centre(row)) {
                *slot = '|';
            }
        }
        let text: String = line.into_iter().collect();
        page.line(&format!("    {text}  {name}"));
    }
}

/// Column of a row in the section.
fn centre(row: usize) -> usize {
    ROW * row - ROW / 2 + 2
}
