//! The search over the catalogue: none, one, two edits, each charged with the chance of a coincidence.

use heapless::Vec;

use super::apply::{Edited, as_it_stands};
use super::catalogue::{CATALOGUE, Convention};
use super::figure::{Figure, MAX_FIGURES};
use super::{Case, Work};
use crate::bounds::{Field, Unit};
use crate::error::{Error, ErrorKind};
use crate::math;
use crate::rules::Entry;

/// Most explanations that an answer keeps.
pub const MAX_ANSWERS: usize = 8;

/// The chance of a coincidence up to which an explanation counts: one statement in a hundred drawn at random.
pub const CHANCE: f64 = 0.01;

/// Edits of the catalogue that together give the stated figures, or come near them.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Explanation {
    edits: [Option<u8>; 2],
    /// The figures as they come out, in the units of their quantities; not a number where the routine does not have it.
    pub values: [f64; MAX_FIGURES],
    /// The figures that are not met, one bit each.
    pub out: u32,
    /// The worst miss, in widths of what a figure leaves open; at most 1 where all are met.
    pub miss: f64,
}

impl Explanation {
    /// The edits, as rows of the catalogue: none for the book as it stands.
    pub fn edits(&self) -> impl Iterator<Item = &'static Convention> + '_ {
        self.edits.iter().filter_map(|at| CATALOGUE.get(usize::from((*at)?)))
    }

    /// How many edits there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.edits.iter().flatten().count()
    }
}

/// What the search found.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// What reproduces the figures, fewest edits first, then the closest, then the catalogue's order. Empty: not
    /// reproduced.
    pub explanations: Vec<Explanation, MAX_ANSWERS>,
    /// What would reproduce them too, but may do so by chance.
    pub by_chance: Vec<Explanation, MAX_ANSWERS>,
    /// The case as it stands.
    pub as_it_stands: Explanation,
    /// The nearest of the single edits, or the case as it stands.
    pub nearest: Explanation,
    /// Edits and pairs of edits that were worked.
    pub tried: u32,
}

impl Answer {
    /// Whether the figures are reproduced.
    #[must_use]
    pub fn reproduced(&self) -> bool {
        !self.explanations.is_empty()
    }

    /// The best explanation.
    #[must_use]
    pub fn best(&self) -> Option<&Explanation> {
        self.explanations.first()
    }
}

/// Finds the conventions that reproduce stated figures.
///
/// # Errors
/// No figure or more than [`MAX_FIGURES`]; a figure about which the routine says nothing at all; whatever
/// [`check`](crate::check::check) or [`size`](crate::sizing::size) refuse of the case as it stands.
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::reconcile::{Case, Figure, Work, reconcile};
/// use seamwright::step::{Name, Quantity};
/// // An old sheet says 31 897 N for the rivets of a single-riveted butt joint with two straps.
/// let joint = JointSpec::new(Form::double_strap(1)?, Length::mm(60.0), Length::mm(10.0), Length::mm(19.0)).build()?;
/// let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));
/// let rules = METRIC.rules.with_key("shear.double", 2.0)?;
/// let case = Case { work: Work::Check(joint, steel), rules };
/// let stated = [Figure::printed(Name(Quantity::ShearAll, 0), "31897", 1.0)?];
/// let answer = reconcile(&case, &stated)?;
/// assert_eq!(answer.best().unwrap().edits().next().unwrap().words, "1.875 for double shear");
/// assert!(reconcile(&case, &[]).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn reconcile(case: &Case, figures: &[Figure]) -> Result<Answer, Error> {
    let count = u32::try_from(figures.len()).map_or(f64::MAX, f64::from);
    if figures.is_empty() {
        return Err(Error::new(ErrorKind::Missing, Field::Figure));
    }
    if figures.len() > MAX_FIGURES {
        return Err(Error::new(ErrorKind::TooLarge, Field::Figure).value(count).limit(MAX_FIGURES as f64));
    }
    let case = &without_unknown_bearing(case);
    let plain = Edited::new(*case);
    let base = judge(figures, as_it_stands(case, figures)?, [None; 2], &plain);
    for (number, (figure, value)) in (1_u8..).zip(figures.iter().zip(base.values)) {
        if value.is_nan() && figure.value.is_finite() && !anywhere(case, figures, number) {
            return Err(Error::new(ErrorKind::NotForThisForm, Field::Figure).index(number).value(figure.value));
        }
    }
    let mut search = Search {
        figures,
        base,
        open: open_chance(figures, &base),
        spent: 0.0,
        seen: Vec::new(),
        answer: Answer { explanations: Vec::new(), by_chance: Vec::new(), as_it_stands: base, nearest: base, tried: 1 },
    };
    if base.out == 0 {
        search.keep(base);
        return Ok(search.answer);
    }
    // Habits before slips of the pen: many slips are possible, and each is charged.
    for of_figures in [false, true] {
        if search.nothing_yet() {
            search.singles(&plain, of_figures);
        }
        if search.nothing_yet() {
            search.pairs(&plain, of_figures);
        }
    }
    Ok(search.answer)
}

/// A book that checks bearing cannot where no bearing stress is given: bearing is then left out from the start.
fn without_unknown_bearing(case: &Case) -> Case {
    let mut case = *case;
    let materials = match &case.work {
        Work::Check(_, materials) => materials,
        Work::Size(brief) => brief.materials(),
    };
    if materials.plate.bearing.is_none() && materials.other.bearing.is_none() {
        case.rules = case.rules.with(Entry::BEARING_CHECKED, 0.0).unwrap_or(case.rules);
    }
    case
}

/// Whether some edit of the catalogue makes the routine say something of a figure that it is silent on.
fn anywhere(case: &Case, figures: &[Figure], number: u8) -> bool {
    let at = usize::from(number).wrapping_sub(1);
    let plain = Edited::new(*case);
    CATALOGUE.iter().filter_map(|row| plain.with(row.edit)).any(|edited| {
        let value = edited.run(figures).and_then(|values| values.get(at).copied());
        value.is_some_and(f64::is_finite)
    })
}

/// The chance that one hypothesis meets all the figures which the case as it stands does not give.
fn open_chance(figures: &[Figure], base: &Explanation) -> f64 {
    let bits = (0..32).map(|bit| base.out.wrapping_shr(bit) & 1 == 1);
    figures.iter().zip(bits).filter(|(_, out)| *out).fold(1.0, |chance, (figure, _)| chance * figure.chance())
}

/// Every edit has a number: otherwise the search would not be complete.
const _: () = assert!(CATALOGUE.len() <= u8::MAX as usize);

struct Search<'a> {
    figures: &'a [Figure],
    base: Explanation,
    open: f64,
    spent: f64,
    /// Outcomes of the open figures so far.
    seen: Vec<f64, 128>,
    answer: Answer,
}

impl Search<'_> {
    fn nothing_yet(&self) -> bool {
        self.answer.explanations.is_empty() && self.answer.by_chance.is_empty()
    }

    /// The single edits: those that change what is worked, or the slips of figures.
    fn singles(&mut self, plain: &Edited, of_figures: bool) {
        for (number, row) in (0_u8..).zip(CATALOGUE) {
            if let Some(edited) = plain.with(row.edit).filter(|e| e.of_figures() == of_figures) {
                self.consider(&edited, [Some(number), None]);
            }
        }
    }

    /// Pairs in the order of the sum of their places in the catalogue.
    fn pairs(&mut self, plain: &Edited, of_figures: bool) {
        // In u16, so that no sum of two places overflows; an edit is numbered by a u8, see the assertion above.
        let last = u16::try_from(CATALOGUE.len()).unwrap_or(u16::MAX).wrapping_sub(1);
        for sum in 1..last.saturating_mul(2) {
            for second in (sum / 2)..=sum.min(last) {
                let first = sum.wrapping_sub(second);
                if first >= second {
                    continue;
                }
                let row = |at: u16| CATALOGUE.get(usize::from(at)).zip(u8::try_from(at).ok());
                let Some(((a, first), (b, second))) = row(first).zip(row(second)) else { continue };
                // Each must mean something for the case by itself, and the second something after the first.
                if let Some(edited) = plain.with(a.edit).and_then(|once| once.with(b.edit))
                    && plain.with(b.edit).is_some()
                    && edited.of_figures() == of_figures
                {
                    self.consider(&edited, [Some(first), Some(second)]);
                }
            }
        }
    }

    /// Works one hypothesis.
    fn consider(&mut self, edited: &Edited, edits: [Option<u8>; 2]) {
        let Some(values) = edited.run(self.figures) else { return };
        self.answer.tried = self.answer.tried.saturating_add(1);
        let tried = judge(self.figures, values, edits, edited);
        // What gives the same as an earlier hypothesis is none of its own. Slips of figures always are.
        if edited.of_figures() || self.is_new(&tried) {
            // A slip of the digits is as many hypotheses as the figures have digits.
            let ways = if edited.digits.0 || edited.digits.1 { 12.0 } else { 1.0 };
            self.spent += self.open * ways;
        }
        if tried.out == 0 {
            self.keep(tried);
        } else if tried.count() == 1 && !edited.of_figures() && nearer(&tried, &self.answer.nearest) {
            self.answer.nearest = tried;
        }
    }

    /// Whether the open figures come out as in no hypothesis before; it is remembered.
    fn is_new(&mut self, tried: &Explanation) -> bool {
        let mut key = 0.0;
        let mut weight = 1.0;
        for (bit, (figure, value)) in (0_u32..).zip(self.figures.iter().zip(tried.values)) {
            if self.base.out.wrapping_shr(bit) & 1 == 1 {
                // Weights without a common measure: different outcomes do not add up to the same.
                key += weight * if value.is_nan() { -1.0 } else { value / figure.below };
                weight *= 1.370_1;
            }
        }
        if self.seen.iter().any(|before| math::abs(before - key) <= 0.25) {
            return false;
        }
        // A full list forgets, and the account is charged too much rather than too little.
        let _ = self.seen.push(key);
        true
    }

    /// Keeps an explanation, in order.
    fn keep(&mut self, found: Explanation) {
        let list = if self.spent <= CHANCE { &mut self.answer.explanations } else { &mut self.answer.by_chance };
        let mut ordered = Vec::new();
        let mut new = Some(found);
        for kept in list.iter() {
            if let Some(found) = new.take_if(|found| better(found, kept)) {
                // A list that is full drops its last.
                let _ = ordered.push(found);
            }
            let _ = ordered.push(*kept);
        }
        if let Some(found) = new {
            let _ = ordered.push(found);
        }
        *list = ordered;
    }
}

/// Fewer edits, then clearly closer; otherwise the earlier one stays.
fn better(a: &Explanation, b: &Explanation) -> bool {
    a.count() < b.count() || (a.count() == b.count() && a.miss < b.miss - 0.05)
}

/// Fewer figures out, then a smaller miss.
fn nearer(a: &Explanation, b: &Explanation) -> bool {
    let (a_out, b_out) = (a.out.count_ones(), b.out.count_ones());
    a_out < b_out || (a_out == b_out && a.miss < b.miss)
}

/// Compares what came out with what is stated.
fn judge(figures: &[Figure], values: [f64; MAX_FIGURES], edits: [Option<u8>; 2], edited: &Edited) -> Explanation {
    let mut found = Explanation { edits, values, out: 0, miss: 0.0 };
    let mut slipped: Option<Unit> = None;
    let mut digits_used = false;
    let mut unit_used = false;
    let mut cut_used = false;
    for (bit, (figure, value)) in (0_u32..).zip(figures.iter().zip(values)) {
        if figure.is(value) {
            found.miss = math::larger(found.miss, figure.miss(value));
            continue;
        }
        let unit_slip = match edited.figure_unit {
            Some(by) if slipped.is_none() || slipped == Some(figure.unit()) => {
                slipped = Some(figure.unit());
                unit_used = true;
                figure.is(value * by)
            }
            _ => false,
        };
        let digit_slip = !digits_used
            && ((edited.digits.0 && figure.is_transposed(value)) || (edited.digits.1 && figure.has_dropped(value)));
        digits_used |= digit_slip;
        let cut = edited.cut_off && figure.is_cut_off(value);
        cut_used |= cut;
        if !(unit_slip || digit_slip || cut) {
            found.out |= 1_u32.wrapping_shl(bit);
            found.miss = math::larger(found.miss, figure.miss(value));
        }
    }
    // A slip that nothing needed explains nothing.
    let idle = (edited.cut_off && !cut_used)
        || (edited.figure_unit.is_some() && !unit_used)
        || ((edited.digits.0 || edited.digits.1) && !digits_used);
    if idle && found.out == 0 {
        found.out = u32::MAX;
    }
    found
}
