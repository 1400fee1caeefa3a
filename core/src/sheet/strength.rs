//! Stresses, the pitch's balances, one rivet of each row, and the figures that the trade always quotes.

use core::fmt::{self, Write};

use super::dimensions::names;
use super::figures::FigureStyle;
use super::page::{Page, none};
use super::result::strength_and_share;
use super::{Scene, Task};
use crate::bounds::Unit;
use crate::check::Subject;
use crate::joint::JointKind;
use crate::modes::{letters, rivet_fates};
use crate::proportion::Limit;
use crate::quantities::Stress;
use crate::rating::Footing;
use crate::rules::{Balance, Diameter, Entry};
use crate::sizing::{Decided, PitchChoice};
use crate::step::Plain;
use crate::working::{Columns, Piece};

/// What is held to the stresses of the other plate.
pub(super) fn other_plates(scene: &Scene<'_>) -> &'static str {
    match scene.joint.form().kind() {
        JointKind::Lap => "plate B",
        JointKind::SingleStrap => "strap",
        JointKind::DoubleStrap => "straps",
    }
}

/// Stresses used, what they are, and the factor of safety.
pub(super) fn write_stresses(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    page.heading("Stresses and factor of safety")?;
    let figures = page.figures;
    page.doc.table_of(Columns::new(&["stress used", "symbol", "value"], &[48, 8, 16]).numbers(4))?;
    let m = scene.materials;
    let apart = m.other != m.plate;
    let other = other_plates(scene);
    let mut line = |what: &str, of: &str, symbol: &str, stress: Option<Stress>| {
        page.doc.row(&[&|w| write!(w, "{what}{of}"), &|w| w.write_str(symbol), &|w| match stress {
            Some(s) => figures.stress(w, s.to_mpa()),
            None => w.write_str("not given"),
        }])
    };
    line("tension, plate", "", "st", Some(m.plate.tension))?;
    if apart {
        line("tension, ", other, "st2", Some(m.other.tension))?;
    }
    line("shear, rivets, one plane", "", "ss", Some(m.rivet_shear))?;
    line("bearing, plate", "", "sc", m.plate.bearing)?;
    if apart {
        line("bearing, ", other, "sc2", m.other.bearing)?;
    }
    if m.plate.shear_out != m.other.shear_out {
        line("shear-out at the margin, plate", "", "sp", m.plate.shear_out)?;
        line("shear-out at the margin, ", other, "sp2", m.other.shear_out)?;
    } else if m.plate.shear_out.is_some() {
        line("shear-out at the margin, plates", "", "sp", m.plate.shear_out)?;
    }
    page.end()?;
    let footing = match scene.task {
        Task::Rate(existing) => Some(existing.shell().footing()),
        Task::Size(_) | Task::Check(..) => scene.particulars.footing,
    };
    match (scene.particulars.divided, footing) {
        (Some(divided), _) => page.line(&|w| {
            w.write_str("Stresses at failure divided by a factor of safety of ")?;
            figures.plain(w, divided.factor, 4)?;
            w.write_str(": the strengths below are permissible loads.")
        }),
        (None, Some(Footing::Permissible)) => {
            page.line(&|w| w.write_str("Permissible stresses: the strengths below are permissible loads."))
        }
        (None, Some(Footing::Ultimate)) => page.line(&|w| {
            w.write_str("Stresses at FAILURE: the strengths below are no permissible loads until a factor of safety ")?;
            w.write_str("divides them.")
        }),
        (None, None) => page.line(&|w| {
            w.write_str(
                "Not said whether these are permissible stresses or those at failure: the strengths below are ",
            )?;
            w.write_str("on the same footing. No factor of safety was applied.")
        }),
    }
}

/// Three balances, floor, cap, and what decided: of a sizing.
pub(super) fn write_pitch(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    page.heading("Pitch of the outer row")?;
    let (book, figures) = (scene.book, page.figures);
    if let Some(design) = scene.design {
        balances(page, scene, &design.pitch)?;
    }
    page.cited()?;
    let cited = |w: &mut dyn Write, entry| Entry::from_no(entry).map_or(Ok(()), |e| figures.cite(w, book, e));
    for (subject, label) in
        [(Subject::PitchLeast, "floor (least pitch)"), (Subject::PitchGreatest, "cap (greatest pitch)")]
    {
        match scene.analysis.findings.find(subject, 0) {
            Some(f) if f.required.is_finite() => {
                page.value(label, &|w| figures.length(w, f.required), &|w| cited(w, f.entry))?;
            }
            Some(f) => page.value(label, &|w| w.write_str("unknown"), &|w| {
                w.write_str("the table does not reach this form: ")?;
                cited(w, f.entry)
            })?,
            None => page.value(label, &|w| w.write_str("no rule"), &|w| w.write_str("the book sets none"))?,
        }
    }
    page.value("pitch provided", &|w| figures.size(w, scene.joint.pitch().to_mm()), &none)?;
    page.end()?;
    match scene.design {
        Some(design) => page.line(&|w| decided(w, figures, scene, &design.pitch)),
        None => Ok(()),
    }
}

fn balances(page: &mut Page<'_>, scene: &Scene<'_>, pitch: &PitchChoice) -> fmt::Result {
    let figures = page.figures;
    page.values()?;
    for (label, value, of) in [
        ("balanced, outer row = rivets in shear", pitch.by_shear, Balance::Shear),
        ("balanced, outer row = rivets, weaker", pitch.by_weaker, Balance::Weaker),
        ("balanced, all plate modes = rivets", pitch.by_all_modes, Balance::AllModes),
    ] {
        let taken = if pitch.balance == of { "taken by the book" } else { "" };
        page.value(label, &|w| figures.length(w, value), &|w| w.write_str(taken))?;
    }
    page.end()?;
    if pitch.balance != scene.book.rules.balance() {
        page.line(&|w| w.write_str("Thin plate: its hole was rounded up, so the weaker of shear and bearing counts."))?;
    }
    page.line(&|w| {
        w.write_str("Balance taken: ")?;
        figures.cite(w, scene.book, Entry::PITCH_BALANCE)
    })
}

fn decided(w: &mut dyn Write, figures: FigureStyle, scene: &Scene<'_>, pitch: &PitchChoice) -> fmt::Result {
    let balance = match pitch.balance {
        Balance::Shear => pitch.by_shear,
        Balance::Weaker => pitch.by_weaker,
        Balance::AllModes => pitch.by_all_modes,
    };
    w.write_str("Decided by: ")?;
    match pitch.decided {
        Decided::Given => w.write_str("the pitch given."),
        Decided::Balance => {
            w.write_str("the balance, ")?;
            figures.length(w, balance)?;
            w.write_str(", brought to the step of ")?;
            figures.size(w, scene.book.rules.get(Entry::PITCH_STEP))?;
            w.write_str(".")
        }
        Decided::Floor => {
            w.write_str("the floor, ")?;
            figures.length(w, pitch.least)?;
            w.write_str(", above the balance of ")?;
            figures.length(w, balance)?;
            w.write_str("; the seam is wider than its strength asks for.")
        }
        Decided::Cap => {
            w.write_str("the cap, ")?;
            match pitch.greatest {
                Limit::At(cap, _) => figures.length(w, cap)?,
                Limit::None | Limit::Unknown(_) => w.write_str("-")?,
            }
            w.write_str(", below the balance of ")?;
            figures.length(w, balance)?;
            w.write_str("; tightness, not strength, sets the pitch, and the rivets are stronger than the plate.")
        }
    }
}

/// What one rivet of each row holds, fate by fate, and per plane.
pub(super) fn write_rivets(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (figures, book, joint) = (page.figures, scene.book, scene.joint);
    let (rules, form) = (&book.rules, joint.form());
    let unit = figures.symbol(Unit::Newton);
    page.leads_to_a_table();
    page.heading("One rivet of each row")?;
    let first = if form.kind() == JointKind::Lap { "plate A" } else { "plate" };
    let [second, third] = names(form.kind(), form.unequal());
    page.line(&|w| write!(w, "Forces in {unit}; one plane, all planes: in shear; the others: crushing that member."))?;
    let heads = ["row", "rivets", "planes", "one plane", "all planes", first, second, third];
    let shown = if third.is_empty() { 7 } else { 8 };
    let head = heads.get(..shown).unwrap_or(&heads);
    let mut list = page.doc.again();
    list.table_of(Columns::new(head, &[4, 8, 8, 11, 12, 11, 13, 13]).numbers(0xff))?;
    let number = |w: &mut dyn Write, f: Option<f64>| match f {
        Some(f) => figures.force(w, f),
        None => none_given(w),
    };
    for (row, at) in form.rows().zip(1_usize..) {
        let fates = rivet_fates(Plain, joint, &scene.given, rules, at, None, true);
        let [one, _, both] = fates.shear;
        let all = if row.planes == 2 { both } else { one };
        let [other, narrow] = fates.other_bearing;
        let cells: [Piece<'_>; 8] = [
            &|w: &mut dyn Write| write!(w, "{at}"),
            &|w: &mut dyn Write| write!(w, "{}", row.rivets),
            &|w: &mut dyn Write| write!(w, "{}", row.planes),
            &|w: &mut dyn Write| figures.force(w, one),
            &|w: &mut dyn Write| figures.force(w, all),
            &|w: &mut dyn Write| number(w, fates.bearing),
            &|w: &mut dyn Write| number(w, other),
            &|w: &mut dyn Write| number(w, narrow),
        ];
        list.row(cells.get(..shown).unwrap_or(&cells))?;
    }
    list.end_table()?;
    for (at, _) in (1_usize..).zip(form.rows()) {
        let fates = rivet_fates(Plain, joint, &scene.given, rules, at, None, true);
        let [other_out, narrow_out] = fates.other_shear_out;
        for (what, out) in [(first, fates.shear_out), (second, other_out), (third, narrow_out)] {
            let Some(out) = out else { continue };
            page.line(&|w| {
                write!(w, "Row {at}, shearing out the margin of {what}: ")?;
                figures.value(w, Unit::Newton, out)
            })?;
        }
    }
    for (what, entry) in [("Shear", Entry::SHEAR_DIAMETER), ("Crushing", Entry::BEARING_DIAMETER)] {
        let diameter = match rules.diameter(entry) {
            Diameter::Hole => "hole d",
            Diameter::Rivet => "rivet dr",
        };
        page.line(&|w| {
            write!(w, "{what} on the {diameter}: ")?;
            figures.cite(w, book, entry)
        })?;
    }
    if !form.rows().any(|r| r.planes == 2) {
        return Ok(());
    }
    page.line(&|w| {
        w.write_str("Double shear = ")?;
        figures.plain(w, rules.get(Entry::DOUBLE_SHEAR), 4)?;
        w.write_str(" x single: ")?;
        figures.cite(w, book, Entry::DOUBLE_SHEAR)
    })
}

fn none_given(w: &mut dyn Write) -> fmt::Result {
    w.write_str("-")
}

/// Tearing, shearing, crushing; percentages; letters.
pub(super) fn write_classic(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (figures, analysis, book) = (page.figures, scene.analysis, scene.book);
    let strip = scene.joint.form().outer_rivets() > 1;
    page.heading(if strip { "Strength of one strip" } else { "Strength of one pitch" })?;
    let (tear, shear, bearing) = analysis.classic_efficiencies();
    let mut force: heapless::String<16> = heapless::String::new();
    write!(force, "force, {}", figures.symbol(Unit::Newton))?;
    let head = ["strength", &*force, "share"];
    let mut list = page.doc.again();
    list.table_of(Columns::new(&head, &[40, 16, 14]).numbers(0b110))?;
    let mut line = |label: &str, strength: Option<(f64, f64)>| {
        list.row(&[
            &|w| w.write_str(label),
            &|w| match strength {
                Some((f, _)) => figures.force(w, f),
                None => none_given(w),
            },
            &|w| match strength {
                Some((_, share)) => figures.percent(w, share),
                None => none_given(w),
            },
        ])
    };
    line("solid plate", Some((analysis.solid, 1.0)))?;
    line("tearing at the outer row", Some((analysis.tear_outer, tear)))?;
    line("shearing of all rivets", Some((analysis.shear_all, shear)))?;
    line("crushing of all rivets", analysis.bearing_all.zip(bearing))?;
    list.end_table()?;
    if analysis.bearing_all.is_none() {
        page.line(&|w| w.write_str("No bearing stress was given: crushing was not checked."))?;
    }
    if !book.rules.on(Entry::BEARING_CHECKED) {
        percentages(page, scene)?;
    }
    if book.lettered { lettered(page, scene) } else { Ok(()) }
}

/// As the boiler rules without a crushing check state them.
fn percentages(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (figures, p) = (page.figures, &scene.analysis.percentages);
    page.leads_to_a_table();
    page.line(&|w| w.write_str("Percentages as boiler rules without a crushing check state them:"))?;
    page.cited()?;
    let book = scene.book;
    page.value("plate percentage", &|w| figures.hundredths(w, p.plate), &|w| {
        figures.cite(w, book, Entry::TEAR_DIAMETER)
    })?;
    page.value("rivet percentage", &|w| figures.hundredths(w, p.rivet), &|w| {
        figures.cite(w, book, Entry::SHEAR_DIAMETER)
    })?;
    match p.combined {
        Some(combined) => page.value("combined percentage", &|w| figures.hundredths(w, combined), &|w| {
            figures.cite(w, book, Entry::COUNT_INNER)
        })?,
        None => page.value("combined percentage", &none_given, &|w| w.write_str("not of this form"))?,
    }
    page.end()
}

/// As the early US code letters them.
fn lettered(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let figures = page.figures;
    let (joint, solid) = (scene.joint, scene.analysis.solid);
    page.leads_to_a_table();
    page.line(&|w| w.write_str("Modes by letter, as the early US code lists them:"))?;
    let mut force: heapless::String<16> = heapless::String::new();
    write!(force, "force, {}", figures.symbol(Unit::Newton))?;
    let head = ["", &*force, "share", "mode"];
    let mut list = page.doc.again();
    let found = letters(Plain, joint, &scene.given, &scene.book.rules, &scene.strengths);
    if list.is_narrow() {
        return found.iter().try_for_each(|one| {
            let share = |w: &mut dyn Write| strength_and_share(w, &figures, one.strength, solid);
            list.entry(&|w| write!(w, "{}. {}", one.letter, one.name(joint.form())), &[&share])
        });
    }
    list.table_of(Columns::new(&head, &[4, 16, 14]).numbers(0b110))?;
    for one in found {
        list.row(&[
            &|w| w.write_char(one.letter),
            &|w| figures.force(w, one.strength),
            &|w| figures.percent(w, one.strength / solid),
            &|w| write!(w, "{}", one.name(joint.form())),
        ])?;
    }
    list.end_table()
}
