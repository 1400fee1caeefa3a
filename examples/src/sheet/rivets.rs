//! What one rivet of each row holds, fate by fate.

use seamwright::joint::JointKind;
use seamwright::modes::rivet_fates;
use seamwright::rules::{Diameter, Entry};
use seamwright::step::Plain;

use super::page::Page;
use super::{Scene, cite};

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    let units = scene.task.units;
    let joint = &scene.answer.joint;
    let rules = &scene.task.book.rules;
    let form = joint.form();
    page.heading(&format!("ONE RIVET OF EACH ROW ({})", units.force_unit()));
    let (second, third) = match form.kind() {
        JointKind::Lap => ("plate B", ""),
        JointKind::SingleStrap => ("strap", ""),
        JointKind::DoubleStrap if form.unequal() => ("wide strap", "narrow strap"),
        JointKind::DoubleStrap => ("1st strap", "2nd strap"),
    };
    let first = if form.kind() == JointKind::Lap { "plate A" } else { "plate" };
    page.line(&format!("  {:<6}{:>8}{:>8}{:>12}  crushing:", "row", "rivets", "planes", "shear"));
    page.line(&format!("  {:34}{first:>12}{second:>13}{third:>15}", ""));
    let number = |f: Option<f64>| f.map_or("-".to_string(), |f| units.force(f));
    let mut margin_lines = Vec::new();
    for (row, at) in form.rows().zip(1_usize..) {
        let fates = rivet_fates(Plain, joint, &scene.given, rules, at, None, true);
        let [one, _, both] = fates.shear;
        let shear = if row.planes == 2 { both } else { one };
        let [other, narrow] = fates.other_bearing;
        page.line(&format!(
            "  {at:<6}{:>8}{:>8}{:>12}{:>12}{:>13}{:>15}",
            row.rivets,
            row.planes,
            units.force(shear),
            number(fates.bearing),
            number(other),
            if third.is_empty() { String::new() } else { number(narrow) }
        ));
        let [other_out, narrow_out] = fates.other_shear_out;
        for (what, out) in [(first, fates.shear_out), (second, other_out), (third, narrow_out)] {
            if let Some(out) = out {
                margin_lines.push(format!("row {at}, shearing out the margin of {what}: {}", units.force(out)));
            }
        }
    }
    for line in margin_lines {
        page.wrap("  ", 2, &line);
    }
    let word = |entry: Entry| match rules.diameter(entry) {
        Diameter::Hole => "hole d",
        Diameter::Rivet => "rivet dr",
    };
    let book = &scene.task.book;
    page.wrap("  Shear on the ", 6, &format!("{}: {}", word(Entry::SHEAR_DIAMETER), cite(book, Entry::SHEAR_DIAMETER)));
    page.wrap(
        "  Crushing on the ",
        6,
        &format!("{}: {}", word(Entry::BEARING_DIAMETER), cite(book, Entry::BEARING_DIAMETER)),
    );
    if form.rows().any(|r| r.planes == 2) {
        let factor = crate::units::plain(rules.get(Entry::DOUBLE_SHEAR), 4);
        page.wrap("  Double shear = ", 6, &format!("{factor} x single: {}", cite(book, Entry::DOUBLE_SHEAR)));
    }
}
