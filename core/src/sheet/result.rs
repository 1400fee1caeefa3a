//! All failure modes, the result, and the load or pressure.

use core::fmt::{self, Write};

use super::figures::FigureStyle;
use super::page::{Page, none};
use super::{Scene, Task};
use crate::bounds::Unit;
use crate::check::counted;
use crate::modes::{Lens, Mode};
use crate::rules::Entry;
use crate::working::{BY_BOOK, Columns, NOT_BY_BOOK, weakest_first, write_rating};

/// All failure modes, weakest first; those that the book counts are marked.
pub(super) fn write_modes(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (figures, analysis, joint) = (page.figures, scene.analysis, scene.joint);
    let (book, rules) = (scene.book, &scene.book.rules);
    let narrow = page.doc.is_narrow();
    page.leads_to_a_table();
    page.heading("Failure modes")?;
    let count = scene.strengths.modes().count();
    page.line(&|w| {
        write!(
            w,
            "{count} modes were worked out: plates and straps torn at any of their rows, rivets in their weakest "
        )?;
        w.write_str(if narrow { "way; weakest first." } else { "way; weakest first. * counted by the rule book." })
    })?;
    let mut force: heapless::String<16> = heapless::String::new();
    write!(force, "force, {}", figures.symbol(Unit::Newton))?;
    let head = ["no.", "*", &*force, "share", "mode"];
    let mut list = page.doc.again();
    if !narrow {
        list.table_of(Columns::new(&head, &[5, 3, 15, 12]).numbers(0b1101))?;
    }
    let mut number = 0_u16;
    weakest_first(&scene.strengths, analysis, &mut |mode| {
        number = number.saturating_add(1);
        let counts = counted(rules, joint, &mode.cut);
        if narrow {
            let words = if counts { BY_BOOK } else { NOT_BY_BOOK };
            let share = |w: &mut dyn Write| strength_and_share(w, &figures, mode.strength, analysis.solid);
            let name = mode.name(joint.form());
            return list.entry(&|w| write!(w, "{number}. {name}"), &[&share, &|w| w.write_str(words)]);
        }
        list.row(&[
            &|w| write!(w, "{number}"),
            &|w| w.write_str(if counts { "*" } else { "" }),
            &|w| figures.force(w, mode.strength),
            &|w| figures.percent(w, mode.strength / analysis.solid),
            &|w| write!(w, "{}", mode.name(joint.form())),
        ])
    })?;
    if !narrow {
        list.end_table()?;
    }
    page.line(&|w| {
        w.write_str("Counted by the book: ")?;
        figures.cite(w, book, Entry::COUNT_INNER)
    })?;
    if !rules.on(Entry::BEARING_CHECKED) {
        page.line(&|w| {
            w.write_str("The book has no crushing check, so J leaves crushing out: ")?;
            figures.cite(w, book, Entry::BEARING_CHECKED)
        })?;
    }
    if rules.get(Entry::SEAM_SAFETY) != rules.get(Entry::SEAM_DIVISOR) && !Lens::alike(scene.materials, rules) {
        page.line(&|w| {
            w.write_str("The book puts a factor of its own on the rivets, which J has and the list above has not: ")?;
            figures.cite(w, book, Entry::SEAM_SAFETY)
        })?;
    }
    Ok(())
}

/// A strength, and what it is of the solid strip.
pub(super) fn strength_and_share(w: &mut dyn Write, figures: &FigureStyle, strength: f64, solid: f64) -> fmt::Result {
    figures.value(w, Unit::Newton, strength)?;
    w.write_str(", ")?;
    figures.percent(w, strength / solid)
}

/// Governing mode, runner-up, the gap, and the efficiencies.
pub(super) fn write_result(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (figures, analysis) = (page.figures, scene.analysis);
    let form = scene.joint.form();
    page.heading("Result")?;
    page.pairs()?;
    let mut mode = |label: &str, mode: &Mode| {
        page.pair(label, &|w| {
            write!(w, "{}: ", mode.name(form))?;
            strength_and_share(w, &figures, mode.strength, analysis.solid)
        })
    };
    mode("Governing", &analysis.governing)?;
    mode("Runner-up", &analysis.runner_up)?;
    mode("By the book", &analysis.by_book)?;
    page.end()?;
    let cap = scene.book.rules.get(Entry::EFFICIENCY_CAP);
    page.values()?;
    let gap = analysis.runner_up_ratio() - 1.0;
    page.value("runner-up above the governing mode by", &|w| figures.percent(w, gap), &none)?;
    page.value("J, efficiency by the book", &|w| figures.percent(w, analysis.book_efficiency), &|w| {
        w.write_str("modes the book counts")
    })?;
    page.value("eta, efficiency over all modes", &|w| figures.percent(w, analysis.efficiency), &none)?;
    page.value("credited efficiency", &|w| figures.percent(w, analysis.credited), &|w| {
        w.write_str("least of J, eta and cap")
    })?;
    if cap < 1.0 {
        page.value("cap of the book", &|w| figures.percent(w, cap), &none)?;
    }
    page.end()?;
    if cap < 1.0 {
        page.line(&|w| {
            w.write_str("Cap: ")?;
            figures.cite(w, scene.book, Entry::EFFICIENCY_CAP)
        })?;
    }
    Ok(())
}

/// What the seam carries, the pressure of a rating, and what this sheet does not look at.
pub(super) fn write_load(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let figures = page.figures;
    page.heading("Load, pressure, and other limits")?;
    let (carried, strip) = (scene.analysis.governing.strength, scene.joint.strip().to_mm());
    page.values()?;
    page.value("strength of the seam", &|w| figures.per_length(w, carried, strip), &|w| {
        w.write_str("governing mode over length")
    })?;
    page.end()?;
    let pressed = match (scene.task, scene.rating) {
        (Task::Rate(_), Some(rating)) => {
            write_rating(&mut page.doc, scene.book, rating)?;
            ""
        }
        _ => "pressure, the plate away from the seam, ",
    };
    page.line(&|w| {
        write!(
            w,
            "Not checked here: {pressed}bending of laps, temperature, fatigue, corrosion, caulking and leakage, "
        )?;
        w.write_str("quality of holes and heads.")
    })
}
