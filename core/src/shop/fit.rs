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
    let neighbour = |k: C::N| {
        let strip = c.formula(Name(Q::Pitch, 0), Formula::StripOfRun.no(), formula::strip_of_run(run, k));
        let pitch = outer_pitch(c, joint, strip);
        Neighbour { strips: k.value() as u32, strip, pitch, admissible: beyond(&limits, pitch).is_none() }
    };
    let low = c.down(Name(Q::Strips, 0), 1.0, exact);
    // Each neighbour follows its own number of strips, so that a reader finds the one above the other.
    let fewer = if low.value() > 0.0 { Some(neighbour(low)) } else { None };
    let high = c.up(Name(Q::Strips, 0), 1.0, exact);
    let more = neighbour(high);
    let whole = low.value() == high.value();
    let (taken, left, fitted) = match fewer {
        _ if whole => (more, None, Fitted::Whole),
        None => (more, None, Fitted::Floor),
        Some(fewer) => match (fewer.admissible, more.admissible) {
            (true, false) => (fewer, Some(more), Fitted::Floor),
            (false, true) => (more, Some(fewer), Fitted::Cap),
            _ => {
                // How far the neighbours are: the asked pitch lies between them.
                let up = math::abs(fewer.pitch.value() - asked);
                let down = math::abs(asked - more.pitch.value());
                let (near, far) = if math::at_most(up, down) { (fewer, more) } else { (more, fewer) };
                (near, Some(far), Fitted::Nearer)
            }
        },
    };
    if let Some((limit, entry)) = beyond(&limits, taken.pitch) {
        let other =
            if entry == Entry::PITCH_LEAST.no() { proportion::limit_entry(&greatest) } else { Entry::PITCH_LEAST.no() };
        let error = Error::new(ErrorKind::NoAdmissiblePitch, Field::Pitch).value(taken.pitch.value()).limit(limit);
        return Err(error.entry(entry).other(other));
    }
    if let Some(left) = left {
        let why = match fitted {
            Fitted::Cap => Why::Cap(proportion::limit_entry(&greatest)),
            Fitted::Floor => Why::Floor(Entry::PITCH_LEAST.no()),
            Fitted::Tie | Fitted::Whole | Fitted::Nearer => Why::Choice(EntryNo::NONE),
        };
        c.choice(Name(Q::Pitch, 0), why, taken.strip, left.strip);
    }
    Ok(PitchFit { asked, exact, fewer, more, taken, least, greatest, fitted })
}

/// The pitch of the outer row in a strip.
#[inline]
fn outer_pitch<C: Ctx>(c: C, joint: &Joint, strip: C::N) -> C::N {
    match joint.form().outer_rivets() {
        1 => strip,
        n => {
            let n = c.given(Name(Q::RivetsInRow, 1), f64::from(n));
            c.formula(Name(Q::Pitch, 1), Formula::RowPitch.no(), formula::row_pitch(strip, n))
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
