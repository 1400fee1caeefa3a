//! Identity, the answer in short, and the basis of every input.

use core::fmt::{self, Write};

use super::figures::{FigureStyle, JOIN, key};
use super::page::{Page, none};
use super::strength::other_plates;
use super::{Known, Scene, Task};
use crate::VERSION;
use crate::bounds::{Field, Unit};
use crate::check::Verdict;
use crate::quantities::{Length, Stress};
use crate::rating::{Basis, Existing};
use crate::rules::{Entry, EntryKind, info};
use crate::sizing::Brief;
use crate::working::{Columns, Dialect, Piece, Style};

/// A line to be filled in by hand.
const BLANK: &str = "______________________________";

/// Where the number of a page stands.
const AT_FOOT: &str = "page x of y at the foot of each page";

/// What was said, or a line to be filled in by hand.
pub(super) fn filled(w: &mut dyn Write, page: &Style, said: &str) -> fmt::Result {
    if !said.is_empty() {
        return one_line(w, said);
    }
    let room = if page.dialect == Dialect::Narrow { 18 } else { BLANK.len() };
    w.write_str(BLANK.get(..room).unwrap_or(BLANK))
}

/// A text of the user's in a line: a line end or another control character in it is a blank, so that nothing of it can
/// be taken for a line of the sheet.
fn one_line(w: &mut dyn Write, said: &str) -> fmt::Result {
    said.chars().try_for_each(|c| w.write_char(if c.is_control() { ' ' } else { c }))
}

/// Title, identity, and the answer in a few lines for those who read no further.
pub(super) fn write_head(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (book, particulars) = (scene.book, scene.particulars);
    let title = match scene.task {
        Task::Size(_) => "RIVETED SEAM: SIZING AND CHECK",
        Task::Check(..) => "RIVETED SEAM: CHECK OF A STATED JOINT",
        Task::Rate(_) => "RIVETED SEAM: RATING OF AN EXISTING JOINT",
    };
    page.doc.begin(&|w| w.write_str(title))?;
    if particulars.invented {
        page.line(&|w| w.write_str("INVENTED SCENARIO: object, drawing and data are made up."))?;
    }
    page.pairs()?;
    let style = *page.doc.style();
    let filled = |w: &mut dyn Write, said: &str| filled(w, &style, said);
    page.pair("Title", &|w| filled(w, particulars.title))?;
    page.pair("Object", &|w| filled(w, particulars.object))?;
    page.pair("Drawing no.", &|w| filled(w, particulars.drawing_no))?;
    page.pair("Jurisdiction", &|w| filled(w, particulars.jurisdiction))?;
    page.pair("Rule book", &|w| {
        write!(w, "{} (id {}", book.title, book.id)?;
        match Entry::all().filter(|e| book.is_changed(*e)).count() {
            0 => {}
            1 => w.write_str(", with 1 entry changed by the user")?,
            n => write!(w, ", with {n} entries changed by the user")?,
        }
        w.write_str(")")
    })?;
    page.pair("Computed by", &|w| write!(w, "seamwright {VERSION}, a design aid"))?;
    page.pair("Input hash", &|w| write!(w, "{:016x} (FNV-1a of the inputs)", scene.hash))?;
    page.pair("Page", &|w| {
        w.write_str(match style.dialect {
            Dialect::Plain if particulars.lines_per_page.is_some() => AT_FOOT,
            Dialect::Latex => AT_FOOT,
            Dialect::Html => {
                "page x of y at the foot of each printed page; where the browser prints none: ____\u{a0}of\u{a0}____"
            }
            Dialect::Plain | Dialect::Narrow | Dialect::Markdown => "one text without page breaks",
        })
    })?;
    page.end()?;
    short(page, scene)
}

fn short(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (analysis, figures) = (scene.analysis, page.figures);
    page.doc.heading("In short")?;
    page.line(&|w| write!(w, "{}.", scene.joint.form()))?;
    page.line(&|w| {
        w.write_str("Efficiency ")?;
        figures.percent(w, analysis.efficiency)?;
        w.write_str(" over all modes; ")?;
        figures.percent(w, analysis.credited)?;
        w.write_str(" may be credited.")
    })?;
    page.line(&|w| write!(w, "Governing: {}.", analysis.governing.name(scene.joint.form())))?;
    if let Some(rating) = scene.rating {
        page.line(&|w| {
            w.write_str("Working pressure allowed: ")?;
            figures.stress(w, rating.allowed)?;
            w.write_str(".")
        })?;
    }
    page.line(&|w| {
        open_words(w, scene)?;
        w.write_str(".")
    })
}

/// How many rules are not met, in words: those on the joint, and of a rating those on the shell.
pub(super) fn open_words(w: &mut dyn Write, scene: &Scene<'_>) -> fmt::Result {
    let count = |verdict| {
        let shell = scene.rating.into_iter().flat_map(|rating| rating.findings.iter());
        scene.analysis.findings.iter().chain(shell).filter(|f| f.verdict == verdict).count()
    };
    match count(Verdict::Open) {
        0 => w.write_str("No rule is broken")?,
        1 => w.write_str("1 rule is NOT met")?,
        n => write!(w, "{n} rules are NOT met")?,
    }
    match count(Verdict::Unknown) {
        0 => Ok(()),
        1 => w.write_str("; 1 could not be judged"),
        n => write!(w, "; {n} could not be judged"),
    }
}

/// The table of inputs as it grows; or, where one input is sought, only whether it has a line.
struct Inputs<'p, 'd, 's> {
    page: &'p mut Page<'d>,
    scene: &'s Scene<'s>,
    sought: Option<(Field, u8)>,
    found: bool,
}

impl Inputs<'_, '_, '_> {
    /// One input with its basis.
    fn put(&mut self, field: Field, row: u8, value: f64) -> fmt::Result {
        if let Some(sought) = self.sought {
            // What was said of all rows holds for each.
            self.found |= sought == (field, row) || sought == (field, 0);
            return Ok(());
        }
        let said = |row| self.scene.particulars.known.iter().find(move |k| k.field == field && k.row == row);
        let known = said(row).or_else(|| said(0));
        let (basis, source) = known.map_or((Basis::Given, ""), |k| (k.basis, k.source));
        let figures = self.page.figures;
        let several = self.scene.joint.form().outer_rivets() > 1;
        self.page.doc.row(&[
            &|w| name(w, field, row, several),
            &|w| figures.value(w, field.bound().unit, value),
            &|w| known_by(w, basis, source),
        ])
    }

    /// A line that nothing can be said of.
    fn row(&mut self, cells: &[Piece<'_>]) -> fmt::Result {
        if self.sought.is_some() { Ok(()) } else { self.page.doc.row(cells) }
    }

    /// What was said of inputs that have no line, so that nothing of it is lost.
    fn without_line(&mut self) -> fmt::Result {
        let several = self.scene.joint.form().outer_rivets() > 1;
        for known in self.scene.particulars.known {
            (self.sought, self.found) = (Some((known.field, known.row)), false);
            self.all()?;
            self.sought = None;
            if !self.found {
                self.page.doc.row(&[
                    &|w| name(w, known.field, known.row, several),
                    &|w| w.write_str("not used"),
                    &|w| known_by(w, known.basis, known.source),
                ])?;
            }
        }
        Ok(())
    }

    fn length(&mut self, field: Field, row: u8, value: Option<Length>) -> fmt::Result {
        value.map_or(Ok(()), |l| self.put(field, row, l.to_mm()))
    }

    fn stress(&mut self, field: Field, value: Option<Stress>) -> fmt::Result {
        value.map_or(Ok(()), |s| self.put(field, 0, s.to_mpa()))
    }
}

/// How an input is known, and from where.
fn known_by(w: &mut dyn Write, basis: Basis, source: &str) -> fmt::Result {
    w.write_str(basis.word())?;
    if source.is_empty() {
        return Ok(());
    }
    w.write_str(": ")?;
    one_line(w, source)
}

/// The name of an input, with its row. Where the outer row has several rivets, the strip was given and not their pitch.
fn name(w: &mut dyn Write, field: Field, row: u8, several: bool) -> fmt::Result {
    match field {
        Field::Pitch if several => w.write_str("width of the strip")?,
        Field::BackPitch => return write!(w, "row {row} to row {}", row.saturating_add(1)),
        Field::PlateShear => w.write_str("shear-out of plates")?,
        Field::RingDiameter => w.write_str("inside diameter")?,
        Field::Pressure => w.write_str("present pressure")?,
        field => {
            for c in field.bound().key.chars() {
                w.write_char(if c == '_' { ' ' } else { c })?;
            }
        }
    }
    if row > 0 { write!(w, ", row {row}") } else { Ok(()) }
}

/// Every input, its value, and how it is known.
pub(super) fn write_inputs(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    page.heading("Basis of inputs")?;
    page.doc.table_of(Columns::new(&["input", "value", "basis"], &[26, 16]).numbers(2))?;
    let mut inputs = Inputs { page, scene, sought: None, found: false };
    inputs.all()?;
    match scene.task {
        Task::Rate(_) => assumed(page, scene)?,
        Task::Size(_) | Task::Check(..) => inputs.without_line()?,
    }
    changes(page, scene)?;
    page.end()
}

impl Inputs<'_, '_, '_> {
    fn all(&mut self) -> fmt::Result {
        let scene = self.scene;
        match scene.task {
            Task::Size(brief) => {
                self.of_brief(brief)?;
                self.stresses()
            }
            Task::Check(..) => {
                of_joint(self, scene)?;
                self.stresses()
            }
            Task::Rate(existing) => self.of_existing(existing),
        }
    }

    fn of_brief(&mut self, brief: &Brief) -> fmt::Result {
        let stated = brief.stated();
        self.put(Field::Plate, 0, brief.plate().to_mm())?;
        self.length(Field::OtherPlate, 0, stated.other_plate)?;
        self.length(Field::Hole, 0, stated.hole)?;
        self.length(Field::Rivet, 0, stated.rivet)?;
        self.length(Field::Pitch, 0, stated.strip)?;
        self.length(Field::WideStrap, 0, stated.straps.map(|(wide, _)| wide))?;
        self.length(Field::NarrowStrap, 0, stated.straps.and_then(|(_, narrow)| narrow))?;
        self.length(Field::Margin, 0, stated.margin)?;
        for (row, at) in (1..brief.form().row_count()).zip(1_u8..) {
            self.length(Field::BackPitch, at, brief.stated_back_pitch(row))?;
        }
        Ok(())
    }

    fn of_existing(&mut self, existing: &Existing) -> fmt::Result {
        let (joint, figures, pitch) = (self.scene.joint, self.page.figures, existing.pitch());
        let several = joint.form().outer_rivets() > 1;
        self.row(&[&|w| name(w, Field::Pitch, 0, several), &|w| figures.size(w, pitch.length().to_mm()), &|w| {
            w.write_str(pitch.basis().word())
        }])?;
        for (row, at) in (1..joint.form().row_count()).zip(1_u8..) {
            self.length(Field::BackPitch, at, joint.back_pitch(row))?;
        }
        self.length(Field::Margin, 0, joint.margin())?;
        self.length(Field::RingDiameter, 0, Some(existing.shell().inside()))?;
        if let Some(p) = existing.present_pressure() {
            self.put(Field::Pressure, 0, p.to_mpa())?;
        }
        self.length(Field::WastageRate, 0, existing.wastage())
    }

    /// Stresses: those at failure, where a factor of safety made those of the task.
    fn stresses(&mut self) -> fmt::Result {
        let (scene, figures) = (self.scene, self.page.figures);
        let m = scene.particulars.divided.map_or(*scene.materials, |d| d.ultimate);
        self.stress(Field::Tension, Some(m.plate.tension))?;
        self.stress(Field::OtherTension, Some(m.other.tension).filter(|s| *s != m.plate.tension))?;
        self.stress(Field::Shear, Some(m.rivet_shear))?;
        self.stress(Field::Bearing, m.plate.bearing)?;
        self.stress(Field::OtherBearing, m.other.bearing.filter(|_| m.other.bearing != m.plate.bearing))?;
        self.stress(Field::PlateShear, m.plate.shear_out)?;
        if let Some(out) = m.other.shear_out.filter(|_| m.other.shear_out != m.plate.shear_out) {
            self.row(&[
                &|w| write!(w, "shear-out of {}", other_plates(scene)),
                &|w| figures.stress(w, out.to_mpa()),
                &|w| w.write_str(Basis::Given.word()),
            ])?;
        }
        scene.particulars.divided.map_or(Ok(()), |d| self.put(Field::SafetyFactor, 0, d.factor))
    }
}

fn of_joint(inputs: &mut Inputs<'_, '_, '_>, scene: &Scene<'_>) -> fmt::Result {
    let joint = scene.joint;
    inputs.put(Field::Plate, 0, joint.plate().to_mm())?;
    inputs.length(Field::OtherPlate, 0, joint.other_plate())?;
    let mut before = None;
    let of_row = |k: &Known<'_>| matches!(k.field, Field::Hole | Field::Rivet) && k.row > 0;
    // Rows alike share one line, unless something is said of one of them.
    let each = scene.particulars.known.iter().any(of_row);
    let alike = joint.rows().iter().all(|r| joint.rows().first() == Some(r) || same_holes(r, joint.rows().first()));
    for (row, at) in joint.rows().iter().zip(1_u8..) {
        if each || !same_holes(row, before) {
            let at = if alike && !each { 0 } else { at };
            inputs.put(Field::Hole, at, row.hole().to_mm())?;
            inputs.length(Field::Rivet, at, Some(row.rivet()).filter(|r| *r != row.hole()))?;
        }
        before = Some(row);
    }
    inputs.put(Field::Pitch, 0, joint.strip().to_mm())?;
    inputs.length(Field::WideStrap, 0, joint.wide_strap())?;
    inputs.length(Field::NarrowStrap, 0, joint.narrow_strap())?;
    inputs.length(Field::Margin, 0, joint.margin())?;
    for (row, at) in (1..joint.form().row_count()).zip(1_u8..) {
        inputs.length(Field::BackPitch, at, joint.back_pitch(row))?;
    }
    Ok(())
}

/// Whether two rows have the same hole and rivet.
pub(super) fn same_holes(row: &crate::joint::Row, other: Option<&crate::joint::Row>) -> bool {
    other.is_some_and(|o| o.hole() == row.hole() && o.rivet() == row.rivet())
}

/// What a rating rests on.
fn assumed(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (Some(rating), figures) = (scene.rating, page.figures) else { return Ok(()) };
    for a in rating.assumptions.iter() {
        page.doc.row(&[
            &|w| {
                w.write_str(a.about.what())?;
                if a.row > 0 { write!(w, ", row {}", a.row) } else { Ok(()) }
            },
            &|w| {
                if a.about.is_circumstance() {
                    w.write_str(if a.value > 0.0 { "yes" } else { "no" })
                } else {
                    figures.value(w, a.about.unit(), a.value)
                }
            },
            &|w| {
                w.write_str(a.basis.word())?;
                let Some(entry) = Entry::from_no(a.entry) else { return Ok(()) };
                w.write_str(": ")?;
                figures.cite(w, scene.book, entry)
            },
        ])?;
    }
    Ok(())
}

/// Changed entries of the book are inputs too.
fn changes(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let book = scene.book;
    let figures = page.figures;
    for entry in Entry::all().filter(|e| book.is_changed(*e)) {
        let unit = match info(entry).kind {
            EntryKind::Number(unit) => unit,
            EntryKind::Switch | EntryKind::Choice(_) => Unit::One,
        };
        let value = |w: &mut dyn Write, figures: &FigureStyle, x: f64| figures.value(w, unit, x);
        page.doc.row(&[&|w| key(w, entry), &|w| value(w, &figures, book.rules.get(entry)), &|w| {
            write!(w, "changed by the user; the book's own value is{JOIN}")?;
            value(w, &figures, book.stated(entry))
        }])?;
    }
    none(&mut crate::text::Count::new())
}
