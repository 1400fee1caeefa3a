//! Title, identity, the answer in short, and the basis of every input.

use seamwright::VERSION;

use super::page::Page;
use super::{Scene, strength};
use crate::flags::Action;
use crate::units::percent;

/// A line to be filled in by hand where nothing was said.
const BLANK: &str = "______________________________";

pub fn write(page: &mut Page, scene: &Scene<'_>) {
    let task = scene.task;
    let kind = match task.action {
        Action::Size => "RIVETED SEAM: SIZING AND CHECK",
        Action::Check => "RIVETED SEAM: CHECK OF A STATED JOINT",
    };
    page.rule('=');
    page.line(&format!("{kind:<63}page ____ of ____"));
    page.rule('=');
    if task.scenario {
        page.wrap(
            "",
            0,
            "INVENTED SCENARIO: object, drawing and data are made up. Describe a joint with options (--help).",
        );
        page.line("");
    }
    let filled = |text: &str| if text.is_empty() { BLANK.to_string() } else { text.to_string() };
    page.pair("Title", &filled(&task.identity.title));
    page.pair("Object", &filled(&task.identity.object));
    page.pair("Drawing no.", &filled(&task.identity.drawing));
    page.pair("Jurisdiction", &filled(&task.identity.jurisdiction));
    let changed = match task.book.changed.len() {
        0 => String::new(),
        1 => ", with 1 entry changed by the user".to_string(),
        n => format!(", with {n} entries changed by the user"),
    };
    page.pair("Rule book", &format!("{} (id {}{changed})", task.book.title(), task.book.id()));
    page.pair("Computed by", &format!("seamwright {VERSION}, a design aid"));
    short(page, scene);
    page.heading("BASIS OF INPUTS");
    for input in &task.inputs {
        let (name, value) = (&input.name, &input.value);
        page.wrap(&format!("  {name:<24}{value:>14}  "), 42, &input.basis);
    }
    page.line("");
    page.wrap("  Stresses used: ", 17, &task.footing);
    let m = &task.materials;
    let apart = m.other != m.plate;
    let mut used = vec![("tension, plate", "st", Some(m.plate.tension))];
    if apart {
        used.push(("tension, other plate or straps", "st2", Some(m.other.tension)));
    }
    used.push(("shear, rivets, one plane", "ss", Some(m.rivet_shear)));
    used.push(("bearing, plate", "sc", m.plate.bearing));
    if apart {
        used.push(("bearing, other plate or straps", "sc2", m.other.bearing));
    }
    if m.plate.shear_out.is_some() {
        used.push(("shear-out at the margin, plates", "sp", m.plate.shear_out));
    }
    for (name, symbol, stress) in used {
        let value = stress.map_or("not given".to_string(), |s| task.units.stress(s));
        page.line(&format!("    {name:<34}{symbol:<6}{value:>14}"));
    }
}

/// The answer in four lines, for those who read no further.
fn short(page: &mut Page, scene: &Scene<'_>) {
    let analysis = &scene.answer.analysis;
    page.line("");
    page.pair("IN SHORT", &format!("{}.", scene.answer.joint.form()));
    page.pair(
        "",
        &format!(
            "Efficiency {} over all modes; {} may be credited.",
            percent(analysis.efficiency),
            percent(analysis.credited)
        ),
    );
    page.pair("", &format!("Governing: {}.", analysis.governing.name(scene.answer.joint.form())));
    page.pair("", &format!("{}.", strength::open_words(analysis)));
}
