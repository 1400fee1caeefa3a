//! What comes of it: the modes in words, and the rules that are met or not.

use core::fmt::{self, Write};

use super::doc::Doc;
use super::line::write_value;
use super::steps::write_clause;
use super::style::{Dialect, Style};
use super::table::Columns;
use crate::bounds::Unit;
use crate::check::{Analysis, Finding, Findings, Required, Verdict, counted};
use crate::given::Given;
use crate::joint::Joint;
use crate::materials::Materials;
use crate::modes::{Cut, Lens, Mode, Strengths};
use crate::rules::RuleBook;
use crate::step::{Ctx, Num, Plain};

/// Hands over all modes, weakest first: the governing one, the runner-up, then by strength, equal ones in the documented
/// order. Nothing is stored: each next mode is looked for among all.
///
/// # Errors
/// That of `each`, with which it ends.
pub(crate) fn weakest_first<N: Num, F>(
    strengths: &Strengths<N>,
    analysis: &Analysis<f64, F>,
    each: &mut dyn FnMut(&Mode) -> fmt::Result,
) -> fmt::Result {
    // The library calls strengths equal within its tolerance, so these two go first by name.
    let rank = |cut: &Cut| match *cut {
        cut if cut == analysis.governing.cut => 0_u8,
        cut if cut == analysis.runner_up.cut => 1,
        _ => 2,
    };
    let mut last: Option<(u8, f64, usize)> = None;
    loop {
        let mut next: Option<((u8, f64, usize), Mode)> = None;
        for (mode, at) in strengths.modes().map(Mode::values).zip(0_usize..) {
            let key = (rank(&mode.cut), mode.strength, at);
            let after = last.is_none_or(|last| last < key);
            if after && next.as_ref().is_none_or(|(least, _)| key < *least) {
                next = Some((key, mode));
            }
        }
        let Some((key, mode)) = next else { return Ok(()) };
        each(&mode)?;
        last = Some(key);
    }
}

/// What a small display says of a mode that the rule book counts, and of another.
pub(crate) const BY_BOOK: &str = "counted by the book";
pub(crate) const NOT_BY_BOOK: &str = "not in the book";

/// What the verdicts look at.
pub(super) struct Verdicts<'a, F = Findings> {
    pub book: &'a RuleBook<'a>,
    pub joint: &'a Joint,
    pub materials: &'a Materials,
    pub analysis: &'a Analysis<f64, F>,
}

impl Verdicts<'_> {
    /// Writes the modes in words, the list of all of them, and the findings, open ones first.
    pub fn write(&self, doc: &mut Doc<'_>) -> fmt::Result {
        self.governs(doc)?;
        self.modes(doc, Plain)?;
        doc.heading(RULES)?;
        for finding in self.analysis.findings.iter() {
            write_told(doc, self.book, finding)?;
        }
        Ok(())
    }
}

/// The heading over the findings.
pub(super) const RULES: &str = "Rules met and not met";

/// A finding as a paragraph.
pub(super) fn write_told(doc: &mut Doc<'_>, book: &RuleBook<'_>, finding: &Finding) -> fmt::Result {
    // The words are escaped as text: values are written as such, whatever the dialect.
    let style = Style { dialect: Dialect::Plain, ..*doc.style() };
    doc.paragraph(&|w| write_finding(w, &style, book, finding))
}

impl<F> Verdicts<'_, F> {
    /// The modes that govern, in words.
    #[inline(never)]
    pub fn governs(&self, doc: &mut Doc<'_>) -> fmt::Result {
        let Verdicts { joint, analysis, .. } = *self;
        let form = joint.form();
        doc.heading("What governs")?;
        doc.paragraph(&|w| write!(w, "Weakest mode, P: {}.", analysis.governing.name(form)))?;
        doc.paragraph(&|w| write!(w, "Next weakest mode, P.1: {}.", analysis.runner_up.name(form)))?;
        doc.paragraph(&|w| write!(w, "Weakest mode that the rule book counts, P.2: {}.", analysis.by_book.name(form)))
    }

    /// The list of all modes, worked out in a context that says nothing.
    #[inline(never)]
    pub fn modes<C: Ctx>(&self, doc: &mut Doc<'_>, c: C) -> fmt::Result {
        let style = Style { dialect: Dialect::Plain, ..*doc.style() };
        let form = self.joint.form();
        let given = Given::new(c, self.joint, self.materials);
        let strengths = Strengths::new(c, self.joint, &given, &self.book.rules, Lens::Real);
        let narrow = doc.is_narrow();
        doc.heading("All failure modes, weakest first")?;
        doc.paragraph(&|w| {
            w.write_str(
                "Strength: net sections torn and rivets of the rows that hold, added up. Efficiency: over F0.",
            )?;
            w.write_str(if narrow { "" } else { " * counted by the rule book." })
        })?;
        let counts = |mode: &Mode| counted(&self.book.rules, self.joint, &mode.cut);
        let efficiency = |mode: &Mode| mode.strength / self.analysis.solid;
        if narrow {
            let mut number = 0_u16;
            return weakest_first(&strengths, self.analysis, &mut |mode| {
                number = number.saturating_add(1);
                let figures = |w: &mut dyn Write| {
                    write_value(w, &style, Unit::Newton, mode.strength)?;
                    w.write_str(", ")?;
                    style.value(w, Unit::One, efficiency(mode))
                };
                let words = if counts(mode) { BY_BOOK } else { NOT_BY_BOOK };
                doc.entry(&|w| write!(w, "{number}. {}", mode.name(form)), &[&figures, &|w| w.write_str(words)])
            });
        }
        let mut strength: heapless::String<20> = heapless::String::new();
        write!(strength, "strength, {}", style.symbol(Unit::Newton))?;
        let head = ["*", &*strength, "efficiency", "mode"];
        let mut list = doc.again();
        list.table_of(Columns::new(&head, &[3, 16, 14]).numbers(0b110))?;
        weakest_first(&strengths, self.analysis, &mut |mode| {
            list.row(&[
                &|w| w.write_str(if counts(mode) { "*" } else { "" }),
                &|w| style.value(w, Unit::Newton, mode.strength),
                &|w| style.value(w, Unit::One, efficiency(mode)),
                &|w| write!(w, "{}", mode.name(form)),
            ])
        })?;
        list.end_table()
    }
}

pub(super) fn write_finding(
    out: &mut dyn fmt::Write,
    style: &Style,
    book: &RuleBook<'_>,
    finding: &Finding,
) -> fmt::Result {
    let verdict = match finding.verdict {
        Verdict::Open => "NOT MET",
        Verdict::Unknown => "NOT CHECKED",
        Verdict::Note => "Note",
        Verdict::Met => "Met",
    };
    write!(out, "{verdict}: {}", finding.subject.what())?;
    if finding.row > 0 {
        write!(out, ", {} {}", finding.subject.place(), finding.row)?;
    }
    let figure = |out: &mut dyn fmt::Write, words: &str, value: f64| {
        if !value.is_finite() {
            return Ok(());
        }
        out.write_str(words)?;
        write_value(out, style, finding.subject.unit(), value)
    };
    let required = match (finding.verdict, finding.sense) {
        (Verdict::Note | Verdict::Unknown, _) => "; figure of the rule book ",
        (_, Required::AtLeast) => "; at least ",
        (_, Required::AtMost) => "; at most ",
    };
    figure(out, required, finding.required)?;
    figure(out, "; is ", finding.provided)?;
    if finding.entry.is_some() {
        out.write_str(" (")?;
        write_clause(out, book, finding.entry)?;
        out.write_str(")")?;
    }
    if finding.verdict == Verdict::Met {
        return out.write_str(".");
    }
    write!(out, ": {}.", finding.advice())
}
