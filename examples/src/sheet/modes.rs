//! All failure modes, weakest first. Twelve are listed, and how many there are is said.

use seamwright::check::counted;
use seamwright::modes::{Cut, Mode};

use super::page::Page;
use super::{Scene, cite};
use crate::units::percent;
use seamwright::rules::Entry;

/// How many are listed.
const LISTED: usize = 12;

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    let units = scene.task.units;
    let rules = &scene.task.book.rules;
    let joint = &scene.answer.joint;
    let analysis = &scene.answer.analysis;
    let mut modes: Vec<Mode> = scene.strengths.modes().collect();
    // A stable sort: of equal modes the first governs, here as in the library. The governing mode is put first by
    // hand, since the library calls strengths equal within its tolerance.
    modes.sort_by(|a, b| a.strength.total_cmp(&b.strength));
    let rank = |cut: &Cut| match *cut {
        cut if cut == analysis.governing.cut => 0,
        cut if cut == analysis.runner_up.cut => 1,
        _ => 2,
    };
    modes.sort_by_key(|mode| rank(&mode.cut));
    page.heading("FAILURE MODES");
    page.wrap(
        "  ",
        2,
        &format!(
            "{} modes were worked out (plates and straps torn at any of their rows, rivets in their weakest way); {}, \
             in {}. * = counted by the rule book.",
            modes.len(),
            if modes.len() > LISTED {
                format!("the {LISTED} weakest")
            } else {
                "all of them, weakest first".to_string()
            },
            units.force_unit()
        ),
    );
    page.line("");
    for (mode, number) in modes.iter().take(LISTED).zip(1..) {
        let star = if counted(rules, joint, &mode.cut) { '*' } else { ' ' };
        let (force, share) = (units.force(mode.strength), percent(mode.strength / analysis.solid));
        let lead = format!("  {number:>2} {star} {force:>11}  {share:>9}  ");
        page.wrap(&lead, 31, &mode.name(joint.form()).to_string());
    }
    page.line("");
    page.wrap("  Counted by the book: ", 6, &cite(&scene.task.book, Entry::COUNT_INNER));
    if !rules.on(Entry::BEARING_CHECKED) {
        let clause = cite(&scene.task.book, Entry::BEARING_CHECKED);
        page.wrap("  ", 6, &format!("The book has no crushing check, so J leaves crushing out: {clause}"));
    }
}
