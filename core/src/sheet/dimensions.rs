//! Every dimension: its symbol, what is required or was computed, what is provided, and the rule that set it.

use core::fmt::{self, Write};

use super::basis::same_holes;
use super::figures::JOIN;
use super::page::Page;
use super::{Scene, Task};
use crate::bounds::Unit;
use crate::check::{Finding, Required, Subject};
use crate::joint::JointKind;
use crate::proportion::{self, HoleBasis, SNAP_HEAD_WIDTH};
use crate::quantities::Length;
use crate::rules::Entry;
use crate::sizing::{Decided, Stated};
use crate::step::Plain;
use crate::text;
use crate::working::{Columns, Piece};

/// The columns of the table: on a plain sheet the rule stands under its dimension.
const COLUMNS: Columns<'static> =
    Columns::new(&["dimension", "symbol", "required", "provided", "rule"], &[30, 9, 21, 20]).numbers(0b1100).remark();

/// The table and what its lines look at.
struct Table<'p, 'd, 's> {
    page: &'p mut Page<'d>,
    scene: &'s Scene<'s>,
    /// What was given to a sizing; a stated joint is given as a whole.
    stated: Option<Stated>,
    /// The word for what was not computed here.
    word: &'static str,
}

pub(super) fn write(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    page.heading("Dimensions")?;
    page.doc.table_of(COLUMNS)?;
    let stated = match scene.task {
        Task::Size(brief) => Some(brief.stated()),
        Task::Check(..) | Task::Rate(_) => None,
    };
    // How a rating knows each dimension stands among its inputs.
    let word = if scene.rating.is_some() { "as found" } else { "given" };
    let mut table = Table { page, scene, stated, word };
    table.plates()?;
    table.holes()?;
    table.pitches()?;
    table.rows_and_margin()?;
    table.straps()?;
    table.widths()?;
    page.end()?;
    if stated.is_some() { steps(page, scene) } else { Ok(()) }
}

/// A name and its symbol.
type Named<'n> = (&'n str, &'n str);

impl Table<'_, '_, '_> {
    /// One line.
    fn line(&mut self, (name, symbol): Named<'_>, required: Piece<'_>, provided: f64, rule: Piece<'_>) -> fmt::Result {
        let figures = self.page.figures;
        let provided = |w: &mut dyn Write| figures.size(w, provided);
        self.page.doc.row(&[&|w| w.write_str(name), &|w| w.write_str(symbol), required, &provided, rule])
    }

    /// A dimension without a figure to hold it against.
    fn plain(&mut self, named: Named<'_>, provided: f64, remark: &str) -> fmt::Result {
        self.line(named, &dash, provided, &|w| w.write_str(remark))
    }

    /// A dimension with the finding that compares it; one that a check leaves open is said to be.
    fn ruled(&mut self, named: Named<'_>, subject: Subject, row: u8, is: Option<Length>, given: bool) -> fmt::Result {
        let Some(is) = is else {
            let (name, symbol) = named;
            return self.page.doc.row(&[
                &|w| w.write_str(name),
                &|w| w.write_str(symbol),
                &dash,
                &|w| w.write_str("not given"),
                &|w| w.write_str("left out of this check"),
            ]);
        };
        let (figures, book, word) = (self.page.figures, self.scene.book, self.word);
        let Some(finding) = self.scene.analysis.findings.find(subject, row) else {
            return self.line(named, &dash, is.to_mm(), &|w| match given {
                true => write!(w, "{word}; the book has no rule"),
                false => Ok(()),
            });
        };
        let required = |w: &mut dyn Write| {
            if !finding.required.is_finite() {
                return w.write_str("unknown");
            }
            let sense = if finding.sense == Required::AtLeast { ">=" } else { "<=" };
            write!(w, "{sense}{JOIN}")?;
            figures.length(w, finding.required)
        };
        self.line(named, &required, is.to_mm(), &|w| {
            let entry = Entry::from_no(finding.entry);
            w.write_str(if given { word } else { "" })?;
            w.write_str(if given && entry.is_some() { "; " } else { "" })?;
            w.write_str(if finding.required.is_finite() { "" } else { "the rule does not reach this case: " })?;
            entry.map_or(Ok(()), |e| figures.cite(w, book, e))
        })
    }

    fn plates(&mut self) -> fmt::Result {
        let joint = self.scene.joint;
        let lap = joint.form().kind() == JointKind::Lap;
        let name = if lap { "plate A" } else { "plate" };
        self.ruled((name, "t"), Subject::PlateThickness, 0, Some(joint.plate()), true)?;
        let Some(other) = joint.other_plate() else { return Ok(()) };
        let given = self.stated.is_none_or(|s| s.other_plate.is_some());
        self.plain(("plate B", "t2"), other.to_mm(), if given { self.word } else { "as plate A" })
    }

    /// Hole and cold rivet of the joint, or of each row where they differ.
    fn holes(&mut self) -> fmt::Result {
        let rows = self.scene.joint.rows();
        let alike = rows.iter().all(|row| same_holes(row, rows.first()));
        for (row, at) in rows.iter().zip(1_u8..) {
            if alike && at > 1 {
                break;
            }
            let mut names: [heapless::String<40>; 4] = Default::default();
            let [hole, hole_symbol, rivet, rivet_symbol] = &mut names;
            if alike {
                write!(hole, "hole, driven rivet").and(write!(hole_symbol, "d"))?;
                write!(rivet, "cold rivet").and(write!(rivet_symbol, "dr"))?;
            } else {
                write!(hole, "hole, driven rivet, row {at}").and(write!(hole_symbol, "d.{at}"))?;
                write!(rivet, "cold rivet, row {at}").and(write!(rivet_symbol, "dr.{at}"))?;
            }
            self.hole((hole, hole_symbol), row.hole().to_mm())?;
            self.rivet((rivet, rivet_symbol), row.hole().to_mm(), row.rivet().to_mm())?;
        }
        Ok(())
    }

    fn hole(&mut self, named: Named<'_>, hole: f64) -> fmt::Result {
        let (figures, book) = (self.page.figures, self.scene.book);
        let Some((computed, basis)) = self.scene.design.and_then(|d| d.hole.computed) else {
            return self.plain(named, hole, self.word);
        };
        let entry = match basis {
            HoleBasis::Root => Entry::HOLE_SQRT,
            HoleBasis::Thin => Entry::HOLE_THIN_RULE,
            HoleBasis::Table(entry) => entry,
            HoleBasis::BeyondTable | HoleBasis::NoBearing => Entry::HOLE_RULE,
        };
        self.line(named, &|w| figures.length(w, computed), hole, &|w| {
            figures.cite(w, book, entry)?;
            match book.rules.size_of_hole(hole) {
                Some(size) if !book.rules.on(Entry::HOLE_ROUND) => {
                    w.write_str("; up to the series: ")?;
                    figures.cite(w, book, size.entry)
                }
                _ => {
                    w.write_str("; up to the step: ")?;
                    figures.cite(w, book, Entry::HOLE_STEP)
                }
            }
        })
    }

    fn rivet(&mut self, named: Named<'_>, hole: f64, rivet: f64) -> fmt::Result {
        let (figures, book, word) = (self.page.figures, self.scene.book, self.word);
        let sized = self.stated.is_some();
        let given = self.stated.map_or(rivet < hole, |s| s.rivet.is_some());
        self.line(named, &dash, rivet, &|w| match book.rules.size_of_hole(hole) {
            _ if given => w.write_str(word),
            _ if !sized => w.write_str("not given: taken as large as the hole"),
            Some(size) => {
                w.write_str("of this hole: ")?;
                let line = size.entry.index().saturating_sub(Entry::SERIES_HOLE.index());
                figures.cite(w, book, Entry::SERIES_RIVET.at(line))
            }
            None if rivet < hole => {
                w.write_str("hole less clearance: ")?;
                figures.cite(w, book, Entry::HOLE_CLEARANCE_GREATEST)
            }
            None => w.write_str("taken as large as the hole"),
        })
    }

    fn pitches(&mut self) -> fmt::Result {
        let (scene, figures, word) = (self.scene, self.page.figures, self.word);
        let (joint, book, form) = (scene.joint, scene.book, scene.joint.form());
        let limit = |subject| scene.analysis.findings.find(subject, 0).filter(|f: &&Finding| f.required.is_finite());
        let (least, most) = (limit(Subject::PitchLeast), limit(Subject::PitchGreatest));
        let required = |w: &mut dyn Write| match (least.map(|f| f.required), most.map(|f| f.required)) {
            (Some(least), Some(most)) if least > most => w.write_str("cap under floor"),
            (Some(least), Some(most)) => {
                figures.bare(w, Unit::Millimetre, least)?;
                write!(w, "{JOIN}to{JOIN}")?;
                figures.length(w, most)
            }
            (Some(least), None) => {
                write!(w, ">={JOIN}")?;
                figures.length(w, least)
            }
            (None, Some(most)) => {
                write!(w, "<={JOIN}")?;
                figures.length(w, most)
            }
            (None, None) => dash(w),
        };
        let rule = |w: &mut dyn Write| {
            let what = match scene.design.map(|d| d.pitch.decided) {
                None | Some(Decided::Given) => {
                    w.write_str(word)?;
                    for (name, finding) in [("floor", least), ("cap", most)] {
                        if let Some(entry) = finding.and_then(|f| Entry::from_no(f.entry)) {
                            write!(w, "; {name}: ")?;
                            figures.cite(w, book, entry)?;
                        }
                    }
                    return Ok(());
                }
                Some(Decided::Balance) => "the balance decides",
                Some(Decided::Floor) => "the floor decides",
                Some(Decided::Cap) => "the cap decides",
            };
            write!(w, "{what}; rounded by ")?;
            figures.cite(w, book, Entry::PITCH_STEP)
        };
        self.line(("pitch of the outer row", "p"), &required, joint.pitch().to_mm(), &rule)?;
        let strip = joint.strip().to_mm();
        if form.outer_rivets() > 1 {
            self.plain(("width of the strip", "B"), strip, "pitch times rivets of the outer row")?;
        }
        let dense = form.densest_rivets();
        if dense > form.outer_rivets() {
            self.plain(("pitch of the densest row", "p/k"), strip / f64::from(dense), "from p and the rows")?;
        }
        Ok(())
    }

    fn rows_and_margin(&mut self) -> fmt::Result {
        let joint = self.scene.joint;
        for (row, at) in (1..joint.form().row_count()).zip(1_u8..) {
            let given = match self.scene.task {
                Task::Size(brief) => brief.stated_back_pitch(row).is_some(),
                Task::Check(..) | Task::Rate(_) => true,
            };
            let (mut name, mut symbol): (heapless::String<40>, heapless::String<8>) = Default::default();
            write!(name, "row {at} to row {}", at.saturating_add(1)).and(write!(symbol, "g{at}"))?;
            match joint.back_pitch(row).zip(self.room_for_heads(row)) {
                Some((gap, heads)) => self.for_heads((&name, &symbol), at, gap, heads, given)?,
                None => self.ruled((&name, &symbol), Subject::RowDistance, at, joint.back_pitch(row), given)?,
            }
        }
        let given = self.stated.is_none_or(|s| s.margin.is_some());
        self.ruled(("margin", "m"), Subject::MarginLeast, 0, joint.margin(), given)
    }

    /// What the book asks of the distance from a row to the next.
    fn by_book(&self, at: u8) -> Option<&Finding> {
        self.scene.analysis.findings.find(Subject::RowDistance, at).filter(|f| f.required.is_finite())
    }

    /// What heads ask of the distance from a row to the next, and where, if it is more than the book asks.
    fn room_for_heads(&self, row: usize) -> Option<(f64, &'static str)> {
        let (form, given) = (self.scene.joint.form(), &self.scene.given);
        let beside = proportion::head_beside_strap(Plain, form, given, given.margin, row).unwrap_or(0.0);
        let apart = proportion::heads_apart(Plain, form, given, row).unwrap_or(0.0);
        let needed = if apart > beside { (apart, "") } else { (beside, " beside the narrow strap") };
        let by_book = u8::try_from(row).ok().and_then(|at| self.by_book(at)).map_or(0.0, |f| f.required);
        (needed.0 > by_book).then_some(needed)
    }

    /// A row distance for which heads ask more than the book.
    fn for_heads(
        &mut self,
        named: Named<'_>,
        at: u8,
        gap: Length,
        (least, place): (f64, &str),
        given: bool,
    ) -> fmt::Result {
        let (figures, book) = (self.page.figures, self.scene.book);
        let by_book = self.by_book(at).copied();
        let required = |w: &mut dyn Write| {
            write!(w, ">={JOIN}")?;
            figures.length(w, least)
        };
        self.line(named, &required, gap.to_mm(), &|w| {
            w.write_str(if given { "given; heads " } else { "heads " })?;
            text::write_plain(w, SNAP_HEAD_WIDTH, 3).map_err(|_| fmt::Error)?;
            write!(w, " rivets wide{place} [PRACTICE]")?;
            let Some(finding) = by_book else { return Ok(()) };
            w.write_str("; by the book ")?;
            figures.length(w, finding.required)?;
            w.write_str(": ")?;
            Entry::from_no(finding.entry).map_or(Ok(()), |e| figures.cite(w, book, e))
        })
    }

    fn straps(&mut self) -> fmt::Result {
        let joint = self.scene.joint;
        let [wide, narrow] = strap_names(self.scene);
        let given = self.stated.is_none_or(|s| s.straps.is_some());
        if joint.form().kind() != JointKind::Lap {
            self.ruled((wide, "b1"), Subject::WideStrap, 0, joint.wide_strap(), given)?;
        }
        if joint.form().kind() == JointKind::DoubleStrap {
            self.ruled((narrow, "b2"), Subject::NarrowStrap, 0, joint.narrow_strap(), given)?;
        }
        Ok(())
    }

    fn widths(&mut self) -> fmt::Result {
        let joint = self.scene.joint;
        let Some((first, second)) = joint.widths() else { return Ok(()) };
        let [wide, _] = strap_names(self.scene);
        let mut name: heapless::String<40> = heapless::String::new();
        if joint.form().kind() == JointKind::Lap {
            write!(name, "width of the lap")?;
        } else {
            write!(name, "width of the {wide}")?;
        }
        self.plain((&name, "w1"), first.to_mm(), "from gaps and margins")?;
        match second.filter(|_| joint.form().unequal()) {
            Some(second) => self.plain(("width of the narrow strap", "w2"), second.to_mm(), "from gaps and margins"),
            None => Ok(()),
        }
    }
}

/// The names of the straps.
pub(super) const fn names(kind: JointKind, unequal: bool) -> [&'static str; 2] {
    match (kind, unequal) {
        (JointKind::Lap, _) => ["plate B", ""],
        (JointKind::SingleStrap, _) => ["strap", ""],
        (JointKind::DoubleStrap, true) => ["wide strap", "narrow strap"],
        (JointKind::DoubleStrap, false) => ["first strap", "second strap"],
    }
}

fn strap_names(scene: &Scene<'_>) -> [&'static str; 2] {
    names(scene.joint.form().kind(), scene.joint.form().unequal())
}

fn dash(w: &mut dyn Write) -> fmt::Result {
    w.write_str("-")
}

/// By how much computed dimensions were rounded.
fn steps(page: &mut Page<'_>, scene: &Scene<'_>) -> fmt::Result {
    let (rules, figures) = (&scene.book.rules, page.figures);
    let form = scene.joint.form();
    page.line(&|w| {
        w.write_str("Where not given: ")?;
        let parts = [
            ("row distances", Entry::BACK_STEP, form.row_count() > 1),
            ("the margin", Entry::MARGIN_STEP, true),
            ("straps", Entry::STRAP_STEP, form.kind() != JointKind::Lap),
        ];
        let mut first = true;
        for (what, entry, _) in parts.into_iter().filter(|(_, _, used)| *used) {
            write!(w, "{}{what} up to steps of ", if first { "" } else { ", " })?;
            first = false;
            figures.size(w, rules.get(entry))?;
        }
        w.write_str(" (")?;
        figures.cite(w, scene.book, Entry::MARGIN_STEP)?;
        w.write_str(").")
    })
}
