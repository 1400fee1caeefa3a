//! Every dimension: its symbol, what is required or was computed, what is provided, and the rule that set it.

use seamwright::check::{Required, Subject};
use seamwright::joint::JointKind;
use seamwright::proportion::HoleBasis;
use seamwright::quantities::Length;
use seamwright::rules::Entry;
use seamwright::sizing::Decided;

use super::page::Page;
use super::{Scene, cite};
use crate::flags::Action;

/// One line of the table.
struct Line {
    name: String,
    symbol: String,
    required: String,
    provided: String,
    rule: String,
}

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    page.heading("DIMENSIONS");
    page.line(&format!("  {:<30}{:<6}{:>19}{:>17}", "dimension", "symbol", "required", "provided"));
    for line in lines(scene) {
        page.line(&format!("  {:<30}{:<6}{:>19}{:>17}", line.name, line.symbol, line.required, line.provided));
        if !line.rule.is_empty() {
            page.wrap("      ", 6, &line.rule);
        }
    }
    if scene.task.action == Action::Size {
        page.wrap("  ", 2, &steps(scene));
    }
}

fn lines(scene: &Scene<'_>) -> Vec<Line> {
    let joint = &scene.answer.joint;
    let units = scene.task.units;
    let said = &scene.task.stated;
    let lap = joint.form().kind() == JointKind::Lap;
    let mut out = Vec::new();
    let plate = if lap { "plate A" } else { "plate" };
    out.push(ruled(scene, plate, "t", Subject::PlateThickness, 0, units.size(joint.plate().to_mm()), true));
    if let Some(other) = joint.other_plate() {
        out.push(plain_line(
            "plate B",
            "t2",
            units.size(other.to_mm()),
            given_word(said.other_plate.is_some(), "as plate A"),
        ));
    }
    hole_and_rivet(scene, &mut out);
    pitch(scene, &mut out);
    for row in 1..joint.form().row_count() {
        let at = u8::try_from(row).unwrap_or(0);
        let (name, symbol) = (format!("row {row} to row {}", row + 1), format!("g{row}"));
        let stated = said.gaps.len() >= row;
        out.push(known(scene, &name, &symbol, (Subject::RowDistance, at), joint.back_pitch(row), stated));
    }
    out.push(known(scene, "margin", "m", (Subject::MarginLeast, 0), joint.margin(), said.margin.is_some()));
    let unequal = joint.form().unequal();
    let (wide, narrow) = match joint.form().kind() {
        JointKind::SingleStrap => ("strap", ""),
        _ if unequal => ("wide strap", "narrow strap"),
        _ => ("first strap", "second strap"),
    };
    let stated = said.wide.is_some();
    if !lap {
        out.push(known(scene, wide, "b1", (Subject::WideStrap, 0), joint.wide_strap(), stated));
    }
    if joint.form().kind() == JointKind::DoubleStrap {
        out.push(known(scene, narrow, "b2", (Subject::NarrowStrap, 0), joint.narrow_strap(), stated));
    }
    if let Some((first, second)) = joint.widths() {
        let name = if lap { "width of the lap".to_string() } else { format!("width of the {wide}") };
        out.push(plain_line(&name, "w1", units.size(first.to_mm()), "from gaps and margins"));
        if let Some(second) = second.filter(|_| unequal) {
            out.push(plain_line(
                "width of the narrow strap",
                "w2",
                units.size(second.to_mm()),
                "from gaps and margins",
            ));
        }
    }
    out
}

fn given_word(stated: bool, otherwise: &'static str) -> &'static str {
    if stated { "given" } else { otherwise }
}

fn plain_line(name: &str, symbol: &str, provided: String, remark: &str) -> Line {
    Line {
        name: name.to_string(),
        symbol: symbol.to_string(),
        required: "-".to_string(),
        provided,
        rule: remark.to_string(),
    }
}

/// A dimension that a check may leave open.
fn known(
    scene: &Scene<'_>,
    name: &str,
    symbol: &str,
    (subject, row): (Subject, u8),
    length: Option<Length>,
    stated: bool,
) -> Line {
    match length {
        Some(length) => ruled(scene, name, symbol, subject, row, scene.task.units.size(length.to_mm()), stated),
        None => plain_line(name, symbol, "not given".to_string(), "left out of this check"),
    }
}

/// A dimension with the finding that compares it.
fn ruled(
    scene: &Scene<'_>,
    name: &str,
    symbol: &str,
    subject: Subject,
    row: u8,
    provided: String,
    stated: bool,
) -> Line {
    let mut line = plain_line(name, symbol, provided, if stated { "given; the book has no rule" } else { "" });
    let finding = scene.answer.analysis.findings.find(subject, row).filter(|f| f.required.is_finite());
    if let Some(finding) = finding {
        let sense = if finding.sense == Required::AtLeast { ">=" } else { "<=" };
        line.required = format!("{sense} {}", scene.task.units.length(finding.required));
        let entry = Entry::from_no(finding.entry);
        let clause = entry.map_or(String::new(), |e| cite(&scene.task.book, e));
        line.rule = if stated { format!("given; {clause}") } else { clause };
    }
    line
}

fn hole_and_rivet(scene: &Scene<'_>, out: &mut Vec<Line>) {
    let units = scene.task.units;
    let book = &scene.task.book;
    let rules = &book.rules;
    let Some(row) = scene.answer.joint.rows().first() else { return };
    let (hole, rivet) = (row.hole().to_mm(), row.rivet().to_mm());
    let computed = scene.answer.design.as_ref().and_then(|d| d.hole.computed);
    let mut line = plain_line("hole, driven rivet", "d", units.size(hole), "given");
    if let Some((computed, basis)) = computed {
        let entry = match basis {
            HoleBasis::Root => Entry::HOLE_SQRT,
            HoleBasis::Thin => Entry::HOLE_THIN_RULE,
            HoleBasis::Table(entry) => entry,
            HoleBasis::BeyondTable | HoleBasis::NoBearing => Entry::HOLE_RULE,
        };
        line.required = units.length(computed);
        let up = match rules.size_of_hole(hole) {
            Some(size) if !rules.on(Entry::HOLE_ROUND) => {
                format!("up to the series: {}", cite(book, size.entry))
            }
            _ => format!("up to the step: {}", cite(book, Entry::HOLE_STEP)),
        };
        line.rule = format!("{}; {up}", cite(book, entry));
    }
    out.push(line);
    let said = &scene.task.stated;
    let remark = match rules.size_of_hole(hole) {
        _ if said.rivet.is_some() => "given".to_string(),
        _ if scene.task.action == Action::Check => "not given: taken as large as the hole".to_string(),
        Some(size) => {
            let line = size.entry.index() - Entry::SERIES_HOLE.index();
            format!("of this hole: {}", cite(book, Entry::SERIES_RIVET.at(line)))
        }
        None if rivet < hole => format!("hole less clearance: {}", cite(book, Entry::HOLE_CLEARANCE_GREATEST)),
        None => "taken as large as the hole".to_string(),
    };
    out.push(plain_line("cold rivet", "dr", units.size(rivet), &remark));
}

/// Floor and cap, as far as the book has them.
fn pitch_range(scene: &Scene<'_>) -> String {
    let units = scene.task.units;
    let findings = &scene.answer.analysis.findings;
    let limit = |subject| findings.find(subject, 0).map(|f| f.required).filter(|r| r.is_finite());
    match (limit(Subject::PitchLeast), limit(Subject::PitchGreatest)) {
        (Some(least), Some(most)) if least > most => "cap under floor".to_string(),
        (Some(least), Some(most)) => format!("{} to {}", units.decimal(least), units.length(most)),
        (Some(least), None) => format!(">= {}", units.length(least)),
        (None, Some(most)) => format!("<= {}", units.length(most)),
        (None, None) => "-".to_string(),
    }
}

/// By how much computed dimensions were rounded.
fn steps(scene: &Scene<'_>) -> String {
    let rules = &scene.task.book.rules;
    let lap = scene.answer.joint.form().kind() == JointKind::Lap;
    let mut parts = Vec::new();
    for (what, entry, used) in [
        ("row distances", Entry::BACK_STEP, scene.answer.joint.form().row_count() > 1),
        ("the margin", Entry::MARGIN_STEP, true),
        ("straps", Entry::STRAP_STEP, !lap),
    ] {
        if used {
            parts.push(format!("{what} up to steps of {}", scene.task.units.size(rules.get(entry))));
        }
    }
    format!("Where not given: {} ({}).", parts.join(", "), cite(&scene.task.book, Entry::MARGIN_STEP))
}

fn pitch(scene: &Scene<'_>, out: &mut Vec<Line>) {
    let units = scene.task.units;
    let book = &scene.task.book;
    let joint = &scene.answer.joint;
    let form = joint.form();
    let p = joint.pitch().to_mm();
    let remark = match scene.answer.design.as_ref().map(|d| d.pitch.decided) {
        None | Some(Decided::Given) => "given".to_string(),
        Some(Decided::Balance) => format!("the balance decides; rounded by {}", cite(book, Entry::PITCH_STEP)),
        Some(Decided::Floor) => format!("the floor decides; rounded by {}", cite(book, Entry::PITCH_STEP)),
        Some(Decided::Cap) => format!("the cap decides; rounded by {}", cite(book, Entry::PITCH_STEP)),
    };
    let mut line = plain_line("pitch of the outer row", "p", units.size(p), &remark);
    line.required = pitch_range(scene);
    out.push(line);
    if form.outer_rivets() > 1 {
        let strip = joint.strip().to_mm();
        out.push(plain_line("width of the strip", "B", units.size(strip), "pitch times rivets of the outer row"));
    }
    let dense = form.densest_rivets();
    if dense > form.outer_rivets() {
        let inner = joint.strip().to_mm() / f64::from(dense);
        out.push(plain_line("pitch of the densest row", "p/k", units.size(inner), "from p and the rows"));
    }
}
