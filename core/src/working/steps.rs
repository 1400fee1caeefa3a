//! The sink that writes each step as it closes.

use core::cell::RefCell;
use core::fmt;

use super::doc::Doc;
use super::line::{Reading, write_expression, write_symbol, write_unit, write_value};
use super::memory::{Memory, Shown};
use super::pad::{Node, Sink, Step};
use super::style::{Dialect, Style};
use crate::error::EntryNo;
use crate::formula::FORMULAS;
use crate::rules::{Entry, RuleBook, key};
use crate::step::{Name, Quantity as Q, Section, Why};

/// Writes steps into a document. A sink that fails is remembered and nothing more is written.
///
/// A step that stands on the sheet already, word for word and with its name still holding the same value, is not
/// written again; one that is an earlier row's over again is written as such. Constants of the rule book are written
/// before the line that first needs them.
pub(super) struct Steps<'d, 'o, 'b> {
    doc: RefCell<&'d mut Doc<'o>>,
    book: &'b RuleBook<'b>,
    state: RefCell<State>,
}

struct State {
    number: u16,
    failed: bool,
    section: Option<Section>,
    heading_due: bool,
    memory: Memory,
    waiting: heapless::Vec<Leaf, WAITING>,
}

/// A constant that waits for the line that needs it. Small: there are many of them, and a handheld has little memory.
#[derive(Clone, Copy)]
struct Leaf {
    name: Name,
    /// Where the rule book gives it; none where the user did.
    entry: EntryNo,
    /// The bits of its value, in words: the whole then has no gaps.
    value: [u32; 2],
}

impl Leaf {
    /// The constant of a step, if its value is an input of one formula and nothing else.
    fn of(step: &Step<'_>) -> Option<Self> {
        let entry = match step.why {
            Why::Table(entry) => entry,
            _ => EntryNo::NONE,
        };
        let bits = step.value.to_bits();
        waits(step).then_some(Leaf { name: step.name, entry, value: [bits.wrapping_shr(32) as u32, bits as u32] })
    }

    fn step(&self) -> Step<'static> {
        let [high, low] = self.value;
        let why = if self.entry.is_some() { Why::Table(self.entry) } else { Why::Given };
        Step::leaf(self.name, why, f64::from_bits(u64::from(high).wrapping_shl(32) | u64::from(low)))
    }
}

/// Constants that may wait: more than there are names of constants in use at one time.
const WAITING: usize = 24;

/// Whether a value is an input of one formula and nothing else.
fn waits(step: &Step<'_>) -> bool {
    match (step.why, step.name) {
        (Why::Given, Name(q, row)) => q == Q::RivetsInRow && row == 0,
        (Why::Table(_), Name(q, _)) => matches!(
            q,
            Q::Coefficient
                | Q::Allowance
                | Q::PitchShare
                | Q::HolesOff
                | Q::DiameterShare
                | Q::RootCoefficient
                | Q::SeamSafety
                | Q::SeamDivisor
                | Q::DoubleShear
        ),
        _ => false,
    }
}

impl<'d, 'o, 'b> Steps<'d, 'o, 'b> {
    #[inline(always)]
    pub(super) fn new(doc: &'d mut Doc<'o>, book: &'b RuleBook<'b>) -> Self {
        let (memory, waiting) = (Memory::new(), heapless::Vec::new());
        let state = State { number: 0, failed: false, section: None, heading_due: false, memory, waiting };
        Steps { doc: RefCell::new(doc), book, state: RefCell::new(state) }
    }

    /// Whether the sink refused something.
    pub(super) fn failed(&self) -> bool {
        self.state.try_borrow().map_or(true, |s| s.failed)
    }
}

impl State {
    /// Writes a step, under the heading that is due.
    fn write(&mut self, doc: &mut Doc<'_>, book: &RuleBook<'_>, step: &Step<'_>) -> fmt::Result {
        if let Some(leaf) = Leaf::of(step) {
            if let Some(old) = self.waiting.iter_mut().find(|old| old.name == leaf.name) {
                *old = leaf;
                return Ok(());
            }
            if self.waiting.push(leaf).is_ok() {
                return Ok(());
            }
        }
        let shown = self.memory.take(step);
        if shown == Shown::Full {
            self.needed(doc, book, step)?;
        }
        self.put(doc, book, step, shown)
    }

    /// Writes the constants that a step needs.
    fn needed(&mut self, doc: &mut Doc<'_>, book: &RuleBook<'_>, step: &Step<'_>) -> fmt::Result {
        let last = step.root().max(step.left_root().unwrap_or(0));
        for place in 0..=last {
            // Places of a line stand in the order in which it is read.
            let Node::Leaf(name, _) = step.node(place) else { continue };
            let Some(leaf) = self.waiting.iter().find(|leaf| leaf.name == name).copied() else { continue };
            if step.uses(name) {
                let constant = leaf.step();
                let shown = self.memory.take(&constant);
                self.put(doc, book, &constant, shown)?;
            }
        }
        Ok(())
    }

    fn put(&mut self, doc: &mut Doc<'_>, book: &RuleBook<'_>, step: &Step<'_>, shown: Shown) -> fmt::Result {
        if shown == Shown::Already {
            return Ok(());
        }
        if self.heading_due {
            self.heading_due = false;
            if let Some(section) = self.section {
                doc.heading(section.heading())?;
            }
        }
        self.number = self.number.saturating_add(1);
        match shown {
            Shown::AsRow(row) => write_as_row(doc, step, self.number, row),
            _ => write_step(doc, book, step, self.number),
        }
    }
}

impl Sink for Steps<'_, '_, '_> {
    fn step(&self, step: &Step<'_>) {
        if let (Ok(mut doc), Ok(mut state)) = (self.doc.try_borrow_mut(), self.state.try_borrow_mut())
            && !state.failed
        {
            state.failed = state.write(&mut doc, self.book, step).is_err();
        }
    }

    fn section(&self, section: Section) {
        if let Ok(mut state) = self.state.try_borrow_mut()
            && state.section != Some(section)
        {
            state.section = Some(section);
            state.heading_due = true;
        }
    }
}

/// Writes where an entry stands: clause and label, that the user changed it, or that the book is silent.
///
/// # Errors
/// Those of the sink.
pub fn write_clause(out: &mut dyn fmt::Write, book: &RuleBook<'_>, entry: EntryNo) -> fmt::Result {
    match (book.clause(entry), Entry::from_no(entry)) {
        (_, Some(entry)) if book.is_changed(entry) => {
            write!(out, "{}, changed by the user: ", key(entry))?;
            out.write_str(crate::rules::Label::Own.word())
        }
        (Some(clause), _) => write!(out, "{}, {}", clause.number, clause.label.word()),
        (None, Some(entry)) => write!(out, "{}: the book is silent, neutral value", key(entry)),
        (None, None) => Ok(()),
    }
}

/// The words of a step: its number, the quantity, where it belongs.
fn write_words(out: &mut dyn fmt::Write, number: u16, name: Name) -> fmt::Result {
    let Name(quantity, row) = name;
    write!(out, "({number}) ")?;
    match (quantity, row) {
        (Q::RowRivetsHold, 0) => out.write_str("rivets of the rows outside, together"),
        (Q::ModeStrength, 0) => out.write_str("strength of the weakest mode"),
        (Q::ModeStrength, 1) => out.write_str("strength of the next weakest mode"),
        (Q::ModeStrength, _) => out.write_str("strength of the weakest mode that the rule book counts"),
        (Q::StrapShare | Q::StrapThick | Q::StrapLeast, 1) => {
            write!(out, "{}: single, wide or first strap", quantity.what())
        }
        (Q::StrapShare | Q::StrapThick | Q::StrapLeast, 2) => {
            write!(out, "{}: narrow or second strap", quantity.what())
        }
        (Q::EndDistance, 1) => out.write_str("end of the plate to the first hole"),
        (Q::EndDistance, 2) => out.write_str("last hole to the end of the plate"),
        (Q::RowSpan, gap) => write!(out, "distances between rows added up, to row {}", gap.saturating_add(1)),
        (_, 0) => out.write_str(quantity.what()),
        (
            Q::RowGap
            | Q::RowGapLeast
            | Q::RowGapThinned
            | Q::RowGapEqual
            | Q::RowGapBeside
            | Q::RowGapApart
            | Q::RowGapRatio
            | Q::MeanHole,
            _,
        ) => {
            write!(out, "{}, row {row} to the next", quantity.what())
        }
        (Q::ShearAll | Q::BearingAll | Q::RivetsWeaker | Q::RivetsMass | Q::HolesMass, 2..) => {
            write!(out, "{}, rows 1 to {row} together", quantity.what())
        }
        _ => write!(out, "{}, {} {row}", quantity.what(), place(quantity)),
    }
}

/// What the number of a name counts: rows, or the rivets of a group.
const fn place(quantity: Q) -> &'static str {
    match quantity {
        Q::ShearDiameter
        | Q::BearingDiameter
        | Q::RivetX
        | Q::RivetY
        | Q::AreaRatio
        | Q::AreaX
        | Q::AreaY
        | Q::RivetArmX
        | Q::RivetArmY
        | Q::ArmSquared
        | Q::AreaArm
        | Q::DirectX
        | Q::DirectY
        | Q::TurningX
        | Q::TurningY
        | Q::ForceX
        | Q::ForceY
        | Q::RivetForce
        | Q::RivetShearStress
        | Q::RivetBearingStress => "rivet",
        _ => "row",
    }
}

/// A step that is an earlier row's over again.
fn write_as_row(doc: &mut Doc<'_>, step: &Step<'_>, number: u16, row: u8) -> fmt::Result {
    doc.paragraph(&|w| {
        write_words(w, number, step.name)?;
        write!(w, ": as {} {row}", place(step.name.0))
    })?;
    equation(doc, step.name, &|w, style| write_value(w, style, step.name.0.unit(), step.value))
}

/// Writes a line of mathematics: `symbol = ...`.
fn equation(doc: &mut Doc<'_>, name: Name, right: &dyn Fn(&mut dyn fmt::Write, &Style) -> fmt::Result) -> fmt::Result {
    let style = *doc.style();
    doc.formula(&|w| {
        write_symbol(w, style.dialect, name)?;
        w.write_str(" = ")?;
        right(w, &style)
    })
}

/// One step: its words, then the line or lines.
fn write_step(doc: &mut Doc<'_>, book: &RuleBook<'_>, step: &Step<'_>, number: u16) -> fmt::Result {
    let name = step.name;
    let unit = name.0.unit();
    let value = step.value;
    let words = |w: &mut dyn fmt::Write| write_words(w, number, name);
    let result = |w: &mut dyn fmt::Write, style: &Style| write_value(w, style, unit, value);
    match step.why {
        Why::Given => {
            doc.paragraph(&|w| {
                words(w)?;
                w.write_str(" (given)")
            })?;
            equation(doc, name, &result)
        }
        Why::Stated(place) => {
            doc.paragraph(&|w| {
                words(w)?;
                write!(w, " ({place})")
            })?;
            equation(doc, name, &result)
        }
        Why::Table(entry) => {
            doc.paragraph(&|w| {
                words(w)?;
                w.write_str(" (rule book: ")?;
                write_clause(w, book, entry)?;
                w.write_str(")")
            })?;
            equation(doc, name, &result)
        }
        Why::Formula(no) => {
            let source = FORMULAS.get(usize::from(no.0)).map_or("", |f| f.source());
            doc.paragraph(&|w| {
                words(w)?;
                write!(w, " ({source})")
            })?;
            equation(doc, name, &|w, style| write_expression(w, style, step, step.root(), Reading::Symbolic))?;
            // One value taken over is its own result.
            if !matches!(step.node(step.root()), Node::Leaf(..) | Node::Literal(_)) {
                equation(doc, name, &|w, style| write_expression(w, style, step, step.root(), Reading::Substituted))?;
            }
            equation(doc, name, &result)
        }
        why => {
            let style = *doc.style();
            doc.paragraph(&|w| {
                words(w)?;
                w.write_str(", ")?;
                write_reason(w, style, book, step, why)
            })?;
            equation(doc, name, &|w, style| choice(w, style, step))
        }
    }
}

/// Why a choice fell as it did.
fn write_reason(out: &mut dyn fmt::Write, style: Style, book: &RuleBook<'_>, line: &Step<'_>, why: Why) -> fmt::Result {
    let unit = line.name.0.unit();
    // Of two whole numbers of pitches one passes a limit: what is taken is no limit.
    let fitted = line.name == Name(Q::Pitch, 0);
    let by = |out: &mut dyn fmt::Write, what: &str, entry: EntryNo| {
        out.write_str(what)?;
        if entry.is_some() {
            out.write_str(" (")?;
            write_clause(out, book, entry)?;
            out.write_str(")")?;
        }
        Ok(())
    };
    let step = |out: &mut dyn fmt::Write, what: &str, step: f64| {
        out.write_str(what)?;
        // The words are escaped as text: the value is written as such, whatever the dialect.
        let style = Style { dialect: Dialect::Plain, ..style };
        write_value(out, &style, unit, step)
    };
    match why {
        Why::Least(e) => by(out, "the least governs", e),
        Why::Greatest(e) => by(out, "the greatest governs", e),
        Why::Cap(e) if fitted => by(out, "the one of the two that is not above the greatest pitch", e),
        Why::Floor(e) if fitted => by(out, "the one of the two that is not below the least pitch", e),
        Why::Cap(e) => by(out, "not above the cap", e),
        Why::Floor(e) => by(out, "not below the floor", e),
        Why::Nearer => out.write_str("the nearer of the two to the pitch asked for, the wider where both are as near"),
        Why::Choice(EntryNo::NONE) => out.write_str("to go with the one taken"),
        Why::Series(e) => by(out, "up to the next standard size", e),
        Why::Choice(e) => by(out, "as the rule book chooses", e),
        Why::RoundDown(s) => step(out, "rounded down to a multiple of ", s),
        Why::RoundUp(s) => step(out, "rounded up to a multiple of ", s),
        Why::RoundNearest(s) => step(out, "rounded to the nearest multiple of ", s),
        Why::Given | Why::Stated(_) | Why::Table(_) | Why::Formula(_) => Ok(()),
    }
}

/// A candidate of a choice: its symbols where it has other ones than the step, and its value.
fn candidate(out: &mut dyn fmt::Write, style: &Style, step: &Step<'_>, place: u8, value: f64) -> fmt::Result {
    let named = match step.node(place) {
        Node::Leaf(name, _) => name != step.name,
        Node::Literal(_) | Node::Free => false,
        Node::Binary(..) | Node::Root(_) => true,
    };
    if named {
        write_expression(out, style, step, place, Reading::Symbolic)?;
        out.write_str(" = ")?;
    }
    let unit = match step.node(place) {
        Node::Leaf(name, _) => name.0.unit(),
        _ => step.name.0.unit(),
    };
    style.value(out, unit, value)
}

/// Both candidates of a choice, and the one taken.
fn choice(out: &mut dyn fmt::Write, style: &Style, step: &Step<'_>) -> fmt::Result {
    let latex = style.dialect == Dialect::Latex;
    let left = step.left.unwrap_or(step.value);
    let left_root = step.left_root().unwrap_or(step.root());
    let word = match step.why {
        Why::Least(_) | Why::Cap(_) => "min",
        Why::Greatest(_) | Why::Floor(_) => "max",
        Why::Nearer => "nearer",
        Why::Choice(_) => {
            candidate(out, style, step, step.root(), step.value)?;
            return write_unit(out, style, step.name.0.unit());
        }
        _ => "",
    };
    if word.is_empty() {
        candidate(out, style, step, left_root, left)?;
        out.write_str(match style.dialect {
            Dialect::Latex => r" \rightarrow ",
            Dialect::Html => " &#8594; ",
            _ => " -> ",
        })?;
    } else {
        match (style.dialect, word) {
            (Dialect::Latex, "nearer") => out.write_str(r"\mathrm{nearer}(")?,
            (Dialect::Latex, _) => write!(out, r"\{word}(")?,
            _ => write!(out, "{word}(")?,
        }
        candidate(out, style, step, left_root, left)?;
        out.write_str(if latex { r";\; " } else { "; " })?;
        candidate(out, style, step, step.root(), step.value)?;
        out.write_str(") = ")?;
    }
    write_value(out, style, step.name.0.unit(), step.value)
}
