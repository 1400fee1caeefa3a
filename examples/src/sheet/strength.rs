//! The figures of strength: classic three, percentages or letters, and the result.

use seamwright::check::{Analysis, Verdict};
use seamwright::modes::letters;
use seamwright::rules::Entry;
use seamwright::step::Plain;

use super::page::Page;
use super::{Scene, cite};
use crate::units::{fixed, percent};

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    let units = scene.task.units;
    let analysis = &scene.answer.analysis;
    let unit = units.force_unit();
    let strip = if scene.answer.joint.form().outer_rivets() > 1 { "STRIP" } else { "PITCH" };
    page.heading(&format!("STRENGTH OF ONE {strip} ({unit})"));
    let (tear, shear, bearing) = analysis.classic_efficiencies();
    page.value("solid plate", &units.force(analysis.solid), &right(1.0));
    page.value("tearing at the outer row", &units.force(analysis.tear_outer), &right(tear));
    page.value("shearing of all rivets", &units.force(analysis.shear_all), &right(shear));
    match (analysis.bearing_all, bearing) {
        (Some(force), Some(ratio)) => page.value("crushing of all rivets", &units.force(force), &right(ratio)),
        _ => page.value("crushing of all rivets", "-", "no bearing stress given"),
    }
    match scene.task.book.id() {
        "indian" | "british-marine" => percentages(page, scene),
        "us-code" | "us-existing" => lettered(page, scene),
        _ => {}
    }
}

/// A percentage as a column.
fn right(ratio: f64) -> String {
    format!("{:>9}", percent(ratio)).replace(' ', "\u{a0}")
}

/// As the British and Indian rules state them.
fn percentages(page: &mut Page, scene: &Scene<'_>) {
    let p = &scene.answer.analysis.percentages;
    let book = &scene.task.book;
    page.line("");
    page.line("  Percentages by the book:");
    let show = |x: f64| format!("{} %", fixed(x, 2));
    page.value("plate percentage", &show(p.plate), "");
    page.value("rivet percentage", &show(p.rivet), "");
    match p.combined {
        Some(combined) => page.value("combined percentage", &show(combined), ""),
        None => page.value("combined percentage", "-", "not of this form"),
    }
    for entry in [Entry::TEAR_DIAMETER, Entry::SHEAR_DIAMETER, Entry::COUNT_INNER] {
        page.wrap("      ", 6, &cite(book, entry));
    }
}

/// As the early US code letters them.
fn lettered(page: &mut Page, scene: &Scene<'_>) {
    let units = scene.task.units;
    let joint = &scene.answer.joint;
    let solid = scene.answer.analysis.solid;
    page.line("");
    page.line("  Modes by letter, as the early US code lists them:");
    for one in letters(Plain, joint, &scene.given, &scene.task.book.rules, &scene.strengths) {
        let (force, share) = (units.force(one.strength), percent(one.strength / solid));
        page.wrap(&format!("    {}  {force:>12}  {share:>9}  ", one.letter), 32, &one.name(joint.form()).to_string());
    }
}

/// Governing mode, runner-up, the gap, and the efficiencies.
pub fn result(page: &mut Page, scene: &Scene<'_>) {
    let units = scene.task.units;
    let analysis = &scene.answer.analysis;
    let joint = &scene.answer.joint;
    let form = joint.form();
    let unit = units.force_unit();
    page.heading("RESULT");
    for (label, mode) in
        [("Governing", &analysis.governing), ("Runner-up", &analysis.runner_up), ("By the book", &analysis.by_book)]
    {
        page.pair(label, &format!("{}:", mode.name(form)));
        page.pair("", &format!("{} {unit}, {}", units.force(mode.strength), percent(mode.strength / analysis.solid)));
    }
    page.line("");
    let gap = analysis.runner_up_ratio() - 1.0;
    page.value("runner-up above the governing mode by", &percent(gap), "");
    page.value("J, efficiency by the book", &percent(analysis.book_efficiency), "modes the book counts");
    page.value("eta, efficiency over all modes", &percent(analysis.efficiency), "");
    page.value("credited efficiency", &percent(analysis.credited), "least of J, eta and cap");
    let cap = scene.task.book.rules.get(Entry::EFFICIENCY_CAP);
    if cap < 1.0 {
        page.wrap("      ", 6, &format!("cap {}: {}", percent(cap), cite(&scene.task.book, Entry::EFFICIENCY_CAP)));
    }
    let carried = analysis.governing.strength;
    page.value("strength of the seam", &units.per_length(carried, joint.strip().to_mm()), "governing mode / length");
}

/// How many rules are not met, in words.
pub fn open_words(analysis: &Analysis) -> String {
    let unknown = analysis.findings.iter().filter(|f| f.verdict == Verdict::Unknown).count();
    let open = match analysis.findings.open() {
        0 => "No rule is broken".to_string(),
        1 => "1 rule is NOT met".to_string(),
        n => format!("{n} rules are NOT met"),
    };
    match unknown {
        0 => open,
        1 => format!("{open}; 1 could not be judged"),
        n => format!("{open}; {n} could not be judged"),
    }
}
