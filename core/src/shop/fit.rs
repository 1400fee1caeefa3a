//! The whole number of pitches in a run, and the pitch that follows.

use crate::bounds::Field;
use crate::check::densest;
use crate::check::thinner;
use crate::error::{EntryNo, Error, ErrorKind};
use crate::formula::{self, Formula};
use crate::given::Given;
use crate::joint::Joint;
use crate::math;
use crate::proportion::{self, Limit};
use crate::rules::{Entry, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q, Why};

/// Why the number of pitches is what it is.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Fitted {
    /// A tie is one strip.
    Tie,
    /// The pitch of the joint divides the run.
    Whole,
    /// The nearer of two neighbours that both are admissible; the one with fewer rivets when equally near.
    Nearer,
    /// The other neighbour passes the greatest pitch.
    Cap,
    /// The other neighbour passes the least pitch, or there is none.
    Floor,
}

/// A whole number of strips, and what it makes of the pitch.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Neighbour<N = f64> {
    /// Strips in the run.
    pub strips: u32,
    /// Width of the strip, mm.
    pub strip: N,
    /// Pitch of the outer row, mm.
    pub pitch: N,
    /// Whether the pitch lies between the least and the greatest of the book.
    pub admissible: bool,
}

/// How the pitch was fitted to the run.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PitchFit<N = f64> {
    /// The pitch of the joint as given, mm.
    pub asked: f64,
    /// Strips in the run before they are made whole.
    pub exact: N,
    /// The neighbour with the fewer and wider strips; `None` for a run shorter than a strip.
    pub fewer: Option<Neighbour<N>>,
    /// The neighbour with the more and narrower strips; the same where the pitch divides the run.
    pub more: Neighbour<N>,
    /// The one taken.
    pub taken: Neighbour<N>,
    /// The least pitch of the book, mm.
    pub least: N,
    /// The greatest pitch of the book, mm.
    pub greatest: Limit<N>,
    /// Why it was taken.
    pub fitted: Fitted,
}

/// Fits the pitch of a joint to a run, mm; a tie stays as it is.
#[inline]
pub(super) fn fit<C: Ctx>(
    c: C,
    joint: &Joint,
    given: &Given<C::N>,
    rules: &Rules,
    run: Option<C::N>,
) -> Result<PitchFit<C::N>, Error> {
    let form = joint.form();
    let d = given.diameter(rules, Entry::DISTANCE_DIAMETER, densest(joint));
    let (least, _) = proportion::pitch_least(c, rules, form, d);
    let greatest = proportion::pitch_greatest(c, rules, form, thinner(c, joint, given));
    let limits = (least, greatest);
    let asked = joint.pitch().to_mm();
    let Some(run) = run else {
        let one = C::N::lit(1.0);
        let pitch = outer_pitch(c, joint, given.strip);
        let admissible = beyond(&limits, pitch).is_none();
        let tie = Neighbour { strips: 1, strip: given.strip, pitch, admissible };
        let fitted = Fitted::Tie;
        return Ok(PitchFit { asked, exact: one, fewer: Some(tie), more: tie, taken: tie, least, greatest, fitted });
    };
    let strip = c.given(Name(Q::Pitch, 0), joint.strip);
    let exact = formula::strips_in_run(run, strip);
    let exact = c.formula(Name(Q::StripsExact, 0), Formula::StripsInRun.no(), exact);
    let neighbour = |q: Q, k: C::N| {
        let strip = c.formula(Name(q, 0), Formula::StripOfRun.no(), formula::strip_of_run(run, k));
        let pitch = outer_pitch_as(c, q, joint, strip);
        Neighbour { strips: k.value() as u32, strip, pitch, admissible: beyond(&limits, pitch).is_none() }
    };
    let (low, high) = (math::round_down(exact.value(), 1.0), math::round_up(exact.value(), 1.0));
    let (fewer, more, taken, fitted) = if low == high || low <= 0.0 {
        // One whole number alone: it needs no name beside the one of the answer.
        let one = neighbour(Q::Pitch, c.up(Name(Q::Strips, 0), 1.0, exact));
        if low == high { (Some(one), one, one, Fitted::Whole) } else { (None, one, one, Fitted::Floor) }
    } else {
        // Each neighbour follows its own number of strips, so that a reader finds the one above the other.
        let few = c.down(Name(Q::StripsFewer, 0), 1.0, exact);
        let fewer = neighbour(Q::PitchFewer, few);
        let many = c.up(Name(Q::StripsMore, 0), 1.0, exact);
        let more = neighbour(Q::PitchMore, many);
        let (wide, fitted, why) = match (fewer.admissible, more.admissible) {
            (true, false) => (true, Fitted::Floor, Why::Floor(Entry::PITCH_LEAST.no())),
            (false, true) => (false, Fitted::Cap, Why::Cap(proportion::limit_entry(&greatest))),
            _ => {
                // How far the neighbours are: the asked pitch lies between them.
                let over = formula::difference(fewer.strip, strip);
                let over = c.formula(Name(Q::PitchOver, 0), Formula::Difference.no(), over);
                let under = formula::difference(strip, more.strip);
                let under = c.formula(Name(Q::PitchUnder, 0), Formula::Difference.no(), under);
                (math::at_most(over.value(), under.value()), Fitted::Nearer, Why::Nearer)
            }
        };
        let (taken, left) = if wide { (fewer, more) } else { (more, fewer) };
        let strip = c.choice(Name(Q::Pitch, 0), why, taken.strip, left.strip);
        let (k, other) = if wide { (few, many) } else { (many, few) };
        c.choice(Name(Q::Strips, 0), Why::Choice(EntryNo::NONE), k, other);
        (Some(fewer), more, Neighbour { strip, ..taken }, fitted)
    };
    if let Some((limit, entry)) = beyond(&limits, taken.pitch) {
        let other =
            if entry == Entry::PITCH_LEAST.no() { proportion::limit_entry(&greatest) } else { Entry::PITCH_LEAST.no() };
        let error = Error::new(ErrorKind::NoAdmissiblePitch, Field::Pitch).value(taken.pitch.value()).limit(limit);
        return Err(error.entry(entry).other(other));
    }
    Ok(PitchFit { asked, exact, fewer, more, taken, least, greatest, fitted })
}

/// The pitch of the outer row in a strip.
#[inline]
fn outer_pitch<C: Ctx>(c: C, joint: &Joint, strip: C::N) -> C::N {
    outer_pitch_as(c, Q::Pitch, joint, strip)
}

/// [`outer_pitch`] under the name of the strip that it belongs to.
#[inline]
fn outer_pitch_as<C: Ctx>(c: C, q: Q, joint: &Joint, strip: C::N) -> C::N {
    match joint.form().outer_rivets() {
        1 => strip,
        n => {
            let n = c.given(Name(Q::RivetsInRow, 1), f64::from(n));
            c.formula(Name(q, 1), Formula::RowPitch.no(), formula::row_pitch(strip, n))
        }
    }
}

/// The limit that a pitch passes, and its entry.
fn beyond<N: Num>((least, greatest): &(N, Limit<N>), pitch: N) -> Option<(f64, EntryNo)> {
    if math::below(pitch.value(), least.value()) {
        return Some((least.value(), Entry::PITCH_LEAST.no()));
    }
    match greatest {
        Limit::At(most, entry) if math::below(most.value(), pitch.value()) => Some((most.value(), entry.no())),
        _ => None,
    }
}
