//! Checking: every failure mode, the efficiencies, and the rules that are met or not.

mod finding;
mod heads;
mod percent;
mod rules_met;

pub use finding::{Finding, FindingSink, Findings, MAX_FINDINGS, Required, SUBJECTS, Subject, Verdict};
pub use percent::Percentages;
pub(crate) use rules_met::{densest, extremes, thinner};

use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::given::Given;
use crate::joint::{Form, Joint, JointKind, MAX_ROWS};
use crate::materials::Materials;
use crate::math;
use crate::modes::{Class, Cut, Fate, Lens, Mode, Strengths};
use crate::rules::{Counted, Entry, Rules};
use crate::step::{Ctx, Name, Num, Plain, Quantity as Q, Section, Why};

/// What a check finds. Strengths in newtons for the strip, on the footing of the stresses that went in.
#[derive(Clone, Debug)]
pub struct Analysis<N = f64, F = Findings> {
    /// The solid strip: least thickness times tension of the main plates.
    pub solid: N,
    /// Tearing at the outer row, the least of the main plates.
    pub tear_outer: N,
    /// All rivets in shear.
    pub shear_all: N,
    /// All rivets in bearing; `None` without a bearing stress.
    pub bearing_all: Option<N>,
    /// The weakest of all modes.
    pub governing: Mode<N>,
    /// The next weakest.
    pub runner_up: Mode<N>,
    /// The weakest of the modes that the rule book counts, seen with the book's eyes.
    pub by_book: Mode<N>,
    /// Efficiency over all modes.
    pub efficiency: N,
    /// `J`: efficiency by the modes that the book counts.
    pub book_efficiency: N,
    /// Efficiency credited: the lesser of the two, under the book's cap.
    pub credited: N,
    /// Plate, rivet and combined percentages.
    pub percentages: Percentages<N>,
    /// The rules, open ones first; nothing where they went elsewhere ([`check_into`]).
    pub findings: F,
}

impl<N: Num> Analysis<N, ()> {
    /// Room for an analysis: nothing is found yet.
    #[must_use]
    #[inline(never)]
    pub fn blank() -> Self {
        let zero = N::lit(0.0);
        let mode = Mode { cut: FIRST_CUT, fates: [Fate::Whole; MAX_ROWS], strength: zero, zigzag: false };
        Analysis {
            solid: zero,
            tear_outer: zero,
            shear_all: zero,
            bearing_all: None,
            governing: mode,
            runner_up: mode,
            by_book: mode,
            efficiency: zero,
            book_efficiency: zero,
            credited: zero,
            percentages: Percentages { plate: zero, rivet: zero, combined: None },
            findings: (),
        }
    }

    /// Blank again. By itself, so that its copy leaves the stack.
    #[inline(never)]
    fn clear(&mut self) {
        *self = Self::blank();
    }
}

impl<N: Num, F> Analysis<N, F> {
    /// The same with its findings.
    #[inline]
    pub(crate) fn with<G>(self, findings: G) -> Analysis<N, G> {
        Analysis {
            solid: self.solid,
            tear_outer: self.tear_outer,
            shear_all: self.shear_all,
            bearing_all: self.bearing_all,
            governing: self.governing,
            runner_up: self.runner_up,
            by_book: self.by_book,
            efficiency: self.efficiency,
            book_efficiency: self.book_efficiency,
            credited: self.credited,
            percentages: self.percentages,
            findings,
        }
    }

    /// The same with bare values.
    #[must_use]
    pub fn values(self) -> Analysis<f64, F> {
        Analysis {
            solid: self.solid.value(),
            tear_outer: self.tear_outer.value(),
            shear_all: self.shear_all.value(),
            bearing_all: self.bearing_all.map(Num::value),
            governing: self.governing.values(),
            runner_up: self.runner_up.values(),
            by_book: self.by_book.values(),
            efficiency: self.efficiency.value(),
            book_efficiency: self.book_efficiency.value(),
            credited: self.credited.value(),
            percentages: self.percentages.values(),
            findings: self.findings,
        }
    }

    /// Runner-up over governing mode: how far the next failure is away.
    #[must_use]
    pub fn runner_up_ratio(&self) -> f64 {
        let (next, least) = (self.runner_up.strength.value(), self.governing.strength.value());
        // A joint that holds nothing has no next failure to speak of.
        if least > 0.0 { next / least } else { 1.0 }
    }

    /// Tearing, shearing and bearing over the solid strip: the figures that the trade always quotes, even above 1.
    #[must_use]
    pub fn classic_efficiencies(&self) -> (N, N, Option<N>) {
        let over = |p: N| formula::efficiency(p, self.solid);
        (over(self.tear_outer), over(self.shear_all), self.bearing_all.map(over))
    }
}

/// Whether a book counts a mode.
#[must_use]
pub fn counted(rules: &Rules, joint: &Joint, cut: &Cut) -> bool {
    counts(rules, joint.form(), cut)
}

/// [`counted`] by the form alone.
#[must_use]
pub(crate) fn counts(rules: &Rules, form: &Form, cut: &Cut) -> bool {
    match cut.class(form.kind(), form.row_count()) {
        Class::PlateOuter | Class::Rivets => true,
        Class::Strap => rules.on(Entry::COUNT_STRAP),
        Class::PlateInner | Class::BothPlates => match rules.counts_inner() {
            Counted::Never => false,
            Counted::Always => true,
            Counted::Doubled => next_row_doubled(form, cut),
        },
    }
}

/// Whether a plate tears at the row next to its outer row, and all inner rows have twice the rivets of the outer row.
fn next_row_doubled(form: &Form, cut: &Cut) -> bool {
    let lap = form.kind() == JointKind::Lap;
    let before_last = form.row_count().wrapping_sub(1);
    let lap_b = lap && cut.plate == 0 && usize::from(cut.other) == before_last;
    form.inner_doubled() && ((cut.plate == 2 && cut.other == 0) || lap_b)
}

/// Checks a joint: all modes, efficiencies and rules.
///
/// # Errors
/// Stresses outside their range, or [`ErrorKind::Missing`] where the book checks bearing and no bearing stress is
/// given.
///
/// ```
/// use seamwright::{check::check, error::ErrorKind, joint::{Form, JointSpec}, materials::Materials,
///     quantities::{Length, Stress}, rules::METRIC};
/// let joint = JointSpec::new(Form::lap(2)?, Length::mm(71.0), Length::mm(13.0), Length::mm(23.0)).build()?;
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0));
/// let found = check(&joint, &steel.bearing(Stress::mpa(120.0)), &METRIC.rules)?;
/// assert!((found.efficiency - 0.6752).abs() < 1e-4); // Khurmi & Gupta, Example 9.4
/// assert_eq!(check(&joint, &steel, &METRIC.rules).unwrap_err().kind, ErrorKind::Missing);
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn check(joint: &Joint, materials: &Materials, rules: &Rules) -> Result<Analysis, Error> {
    check_with(Plain, joint, materials, rules)
}

/// [`check`] in any context: bare numbers, a record of steps, or numbers with derivatives.
///
/// # Errors
/// As [`check`].
#[inline]
pub fn check_with<C: Ctx>(c: C, joint: &Joint, materials: &Materials, rules: &Rules) -> Result<Analysis<C::N>, Error> {
    let mut findings = Findings::new();
    let mut analysis = Analysis::blank();
    check_telling(c, joint, materials, rules, &mut findings, &mut analysis)?;
    findings.open_first();
    Ok(analysis.with(findings))
}

/// [`check`] in memory of the caller's: into an analysis ([`Analysis::blank`]), its findings told to a sink in the order
/// of the check. A machine with little memory has no room for a second analysis, nor for the longest list of findings.
///
/// Whatever stood in the analysis before leaves no trace.
///
/// # Errors
/// As [`check`]; nothing was told then, and the analysis is blank.
pub fn check_into(
    joint: &Joint,
    materials: &Materials,
    rules: &Rules,
    out: &mut dyn FindingSink,
    analysis: &mut Analysis<f64, ()>,
) -> Result<(), Error> {
    let checked = check_telling(Plain, joint, materials, rules, out, analysis);
    if checked.is_err() {
        // A result of the joint before could be taken for one of this joint.
        analysis.clear();
    }
    checked
}

/// [`check_into`] in any context.
#[inline]
pub(crate) fn check_telling<C: Ctx>(
    c: C,
    joint: &Joint,
    materials: &Materials,
    rules: &Rules,
    out: &mut dyn FindingSink,
    analysis: &mut Analysis<C::N, ()>,
) -> Result<(), Error> {
    materials.validate()?;
    let bearing_known = materials.plate.bearing.is_some() || materials.other.bearing.is_some();
    if rules.on(Entry::BEARING_CHECKED) && !bearing_known {
        return Err(Error::new(ErrorKind::Missing, Field::Bearing).entry(Entry::BEARING_CHECKED.no()));
    }
    c.section(Section::Joint);
    // In place: these figures are not to stand on the stack twice.
    let mut given = Given::blank();
    given.take(c, c, joint, materials);
    let alike = Lens::alike(materials, rules);
    as_it_is(c, joint, &given, rules, alike, analysis);
    if !alike {
        as_the_book_sees(c, joint, &given, rules, analysis);
    }
    credit(c, rules, analysis);
    c.section(Section::Percentages);
    analysis.percentages = percent::percentages(c, joint, &given, rules);
    c.section(Section::Limits);
    rules_met::dimensions(c, joint, &given, rules, out);
    rules_met::strengths(materials, rules, analysis, out);
    if joint.form().kind() == JointKind::Lap {
        out.note(Subject::LapBending);
    }
    Ok(())
}

/// What the book makes of its weakest mode, and what is credited.
#[inline]
fn credit<C: Ctx>(c: C, rules: &Rules, analysis: &mut Analysis<C::N, ()>) {
    let by_book = formula::efficiency(analysis.by_book.strength, analysis.solid);
    analysis.book_efficiency = c.formula(Name(Q::BookEfficiency, 0), Formula::Efficiency.no(), by_book);
    let cap = c.table(Name(Q::CreditCap, 0), Entry::EFFICIENCY_CAP.no(), rules.get(Entry::EFFICIENCY_CAP));
    let (j, eta) = (analysis.book_efficiency, analysis.efficiency);
    let least = c.lesser(Name(Q::Credited, 0), Why::Least(Entry::COUNT_INNER.no()), j, eta);
    analysis.credited = c.lesser(Name(Q::Credited, 0), Why::Cap(Entry::EFFICIENCY_CAP.no()), least, cap);
}

/// The cut that is always there: the plate tears at row 1.
const FIRST_CUT: Cut = Cut { plate: 1, other: 0, narrow: 0 };

/// The joint with every fate that a stress was given for, and its mode by the book where that sees it `alike`. By
/// itself, so that the figures of all rows leave the stack again.
#[inline(never)]
fn as_it_is<C: Ctx>(
    c: C,
    joint: &Joint,
    given: &Given<C::N>,
    rules: &Rules,
    alike: bool,
    analysis: &mut Analysis<C::N, ()>,
) {
    let mut real = Strengths::none(joint, given, rules);
    real.work_out(c, joint, given, rules, Lens::Real);
    c.section(Section::Modes);
    let (least, next) = real.weakest_cuts(&mut |_| true).unwrap_or((FIRST_CUT, None));
    close_mode(c, 0, &real, least, &mut analysis.governing);
    match next {
        Some(cut) => close_mode(c, 1, &real, cut, &mut analysis.runner_up),
        None => analysis.runner_up = analysis.governing,
    }
    analysis.solid = real.solid;
    analysis.tear_outer = real.tear_outer;
    analysis.shear_all = real.shear_all;
    analysis.bearing_all = real.bearing_all;
    let eta = formula::efficiency(analysis.governing.strength, real.solid);
    analysis.efficiency = c.formula(Name(Q::Efficiency, 0), Formula::Efficiency.no(), eta);
    if alike {
        weakest_counted(c, joint, rules, &real, &mut analysis.by_book);
    }
}

/// The weakest mode that the book counts, where it sees the joint with other eyes.
#[inline(never)]
fn as_the_book_sees<C: Ctx>(
    c: C,
    joint: &Joint,
    given: &Given<C::N>,
    rules: &Rules,
    analysis: &mut Analysis<C::N, ()>,
) {
    let mut seen = Strengths::none(joint, given, rules);
    seen.work_out(c, joint, given, rules, Lens::Book);
    weakest_counted(c, joint, rules, &seen, &mut analysis.by_book);
}

/// The weakest of the modes that the book counts.
#[inline]
fn weakest_counted<C: Ctx>(c: C, joint: &Joint, rules: &Rules, seen: &Strengths<C::N>, mode: &mut Mode<C::N>) {
    let (cut, _) = seen.weakest_cuts(&mut |cut: &Cut| counted(rules, joint, cut)).unwrap_or((FIRST_CUT, None));
    close_mode(c, 2, seen, cut, mode);
}

/// The mode of a cut, its strength named as a step: 0 the governing one, 1 the runner-up, 2 the book's.
#[inline]
fn close_mode<C: Ctx>(c: C, which: u8, strengths: &Strengths<C::N>, cut: Cut, mode: &mut Mode<C::N>) {
    *mode = strengths.mode(cut);
    mode.strength = c.formula(Name(Q::ModeStrength, which), strengths.formula_of(cut).no(), mode.strength);
}

/// Whether two figures are the same for a reader: within the library's tolerance.
pub(crate) fn same(a: f64, b: f64) -> bool {
    math::at_least(a, b) && math::at_most(a, b)
}
