//! The pitch: three balances, floor, cap, and what decided.

use seamwright::check::Subject;
use seamwright::proportion::Limit;
use seamwright::rules::{Balance, Entry};
use seamwright::sizing::{Decided, PitchChoice};

use super::page::Page;
use super::{Scene, cite};

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    page.heading("PITCH OF THE OUTER ROW");
    let units = scene.task.units;
    if let Some(design) = &scene.answer.design {
        balances(page, scene, &design.pitch);
    }
    let book = &scene.task.book;
    let findings = &scene.answer.analysis.findings;
    for (subject, label, silent) in [
        (Subject::PitchLeast, "floor (least pitch)", "no rule"),
        (Subject::PitchGreatest, "cap (greatest pitch)", "no rule"),
    ] {
        match findings.find(subject, 0) {
            Some(f) => {
                let clause = Entry::from_no(f.entry).map_or(String::new(), |e| cite(book, e));
                if f.required.is_finite() {
                    page.value(label, &units.length(f.required), "");
                    page.wrap("      ", 6, &clause);
                } else {
                    page.value(label, "unknown", "the table does not reach this form");
                    page.wrap("      ", 6, &clause);
                }
            }
            None => page.value(label, silent, "the book sets none"),
        }
    }
    page.value("pitch provided", &units.size(scene.answer.joint.pitch().to_mm()), "");
    if let Some(design) = &scene.answer.design {
        page.wrap("  ", 2, &format!("Decided by: {}", decided(scene, &design.pitch)));
    }
}

fn balances(page: &mut Page, scene: &Scene<'_>, pitch: &PitchChoice) {
    let units = scene.task.units;
    let taken = |of: Balance| if pitch.balance == of { "<- taken by the book" } else { "" };
    page.value("balanced, outer row = rivets in shear", &units.length(pitch.by_shear), taken(Balance::Shear));
    page.value("balanced, outer row = rivets, weaker", &units.length(pitch.by_weaker), taken(Balance::Weaker));
    page.value("balanced, all plate modes = rivets", &units.length(pitch.by_all_modes), taken(Balance::AllModes));
    if pitch.balance != scene.task.book.rules.balance() {
        page.wrap("      ", 6, "thin plate: its hole was rounded up, so the weaker of shear and bearing counts");
    }
    page.wrap("      ", 6, &cite(&scene.task.book, Entry::PITCH_BALANCE));
}

fn decided(scene: &Scene<'_>, pitch: &PitchChoice) -> String {
    let balance = match pitch.balance {
        Balance::Shear => pitch.by_shear,
        Balance::Weaker => pitch.by_weaker,
        Balance::AllModes => pitch.by_all_modes,
    };
    let units = scene.task.units;
    let step = units.size(scene.task.book.rules.get(Entry::PITCH_STEP));
    match pitch.decided {
        Decided::Given => "the pitch given".to_string(),
        Decided::Balance => format!("the balance, {}, brought to the step of {step}", units.length(balance)),
        Decided::Floor => format!(
            "the floor, {}, above the balance of {}; the seam is wider than its strength asks for",
            units.length(pitch.least),
            units.length(balance)
        ),
        Decided::Cap => {
            let cap = match pitch.greatest {
                Limit::At(cap, _) => units.length(cap),
                Limit::None | Limit::Unknown(_) => "-".to_string(),
            };
            format!(
                "the cap, {cap}, below the balance of {}; tightness, not strength, sets the pitch, and the rivets \
                 are stronger than the plate",
                units.length(balance)
            )
        }
    }
}
