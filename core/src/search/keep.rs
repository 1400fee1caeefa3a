//! What a walk over the candidates keeps: the best few, or the front of efficiency against mass.

use super::BEST;
use super::brief::Objective;
use super::candidate::Candidate;
use super::measures::{Key, Measures};
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};

/// Where candidates go, and what may be left out.
pub(super) trait Keeper {
    /// Whether nothing with these measures or worse ones can change what is kept.
    fn hopeless(&self, bound: &Measures) -> bool;
    /// The efficiency, in billionths, below which nothing can change what is kept.
    fn efficiency_floor(&self) -> u64;
    /// A candidate that meets all constraints.
    fn offer(&mut self, candidate: &Candidate) -> Result<(), Error>;
    /// The next form begins.
    fn next_form(&mut self) {}
}

/// The best candidate of each form, and of those the best few.
pub(super) struct Ranking {
    objective: Objective,
    this_form: Option<(Key, Candidate)>,
    pub best: heapless::Vec<(Key, Candidate), BEST>,
}

impl Ranking {
    pub(super) const fn new(objective: Objective) -> Self {
        Ranking { objective, this_form: None, best: heapless::Vec::new() }
    }

    /// What a key must not be above if it is to matter.
    fn threshold(&self) -> Option<&Key> {
        let last = if self.best.is_full() { self.best.last().map(|(key, _)| key) } else { None };
        match (last, self.this_form.as_ref().map(|(key, _)| key)) {
            (Some(a), Some(b)) => Some(if b < a { b } else { a }),
            (a, b) => a.or(b),
        }
    }
}

impl Keeper for Ranking {
    fn hopeless(&self, bound: &Measures) -> bool {
        self.threshold().is_some_and(|key| bound.key(self.objective) > *key)
    }

    fn efficiency_floor(&self) -> u64 {
        match (self.objective, self.threshold()) {
            (Objective::Efficiency, Some([first, ..])) => u64::MAX.wrapping_sub(*first),
            _ => 0,
        }
    }

    fn offer(&mut self, candidate: &Candidate) -> Result<(), Error> {
        let key = candidate.measures.key(self.objective);
        if self.this_form.as_ref().is_none_or(|(best, _)| key < *best) {
            self.this_form = Some((key, *candidate));
        }
        Ok(())
    }

    fn next_form(&mut self) {
        let Some((key, candidate)) = self.this_form.take() else { return };
        if self.best.is_full() {
            match self.best.last() {
                Some((last, _)) if key < *last => {
                    self.best.pop();
                }
                _ => return,
            }
        }
        // Into its place, behind its equals; all after it move on by one.
        let mut moving = (key, candidate);
        let mut placed = false;
        for slot in &mut self.best {
            placed |= moving.0 < slot.0;
            if placed {
                core::mem::swap(slot, &mut moving);
            }
        }
        let _ = self.best.push(moving);
    }
}

/// The candidates that no other one betters in efficiency without more mass, lightest first.
pub(super) struct Front<'b> {
    list: &'b mut [Option<Candidate>],
    pub count: usize,
}

impl<'b> Front<'b> {
    pub(super) fn new(list: &'b mut [Option<Candidate>]) -> Self {
        for slot in list.iter_mut() {
            *slot = None;
        }
        Front { list, count: 0 }
    }

    fn kept(&self) -> impl Iterator<Item = &Candidate> {
        self.list.iter().map_while(Option::as_ref)
    }
}

/// Whether `a` makes `b` superfluous: no worse in both, and better in one, or equal and with fewer rivets, or equal in
/// those and with a pitch as large.
fn covers(a: &Measures, b: &Measures) -> bool {
    if a.efficiency < b.efficiency || a.mass > b.mass {
        return false;
    }
    let equal = a.efficiency == b.efficiency && a.mass == b.mass;
    !equal || a.rivets < b.rivets || (a.rivets == b.rivets && a.pitch >= b.pitch)
}

impl Keeper for Front<'_> {
    fn hopeless(&self, bound: &Measures) -> bool {
        self.kept().any(|c| covers(&c.measures, bound))
    }

    fn efficiency_floor(&self) -> u64 {
        0
    }

    fn offer(&mut self, candidate: &Candidate) -> Result<(), Error> {
        if self.hopeless(&candidate.measures) {
            return Ok(());
        }
        // Those that it covers go; the rest closes up.
        let mut kept = 0_usize;
        for at in 0..self.count {
            let Some(old) = self.list.get(at).copied().flatten() else { continue };
            if !covers(&candidate.measures, &old.measures) {
                if let Some(slot) = self.list.get_mut(kept) {
                    *slot = Some(old);
                }
                kept = kept.saturating_add(1);
            }
        }
        for slot in self.list.iter_mut().skip(kept) {
            *slot = None;
        }
        self.count = kept;
        if kept >= self.list.len() {
            let error = Error::new(ErrorKind::NoSpace, Field::Text);
            return Err(error.limit(u32::try_from(kept).map_or(f64::MAX, f64::from) + 1.0));
        }
        let mut moving = Some(*candidate);
        let mut placed = false;
        for slot in self.list.iter_mut().take(kept.saturating_add(1)) {
            placed |= match (&moving, &*slot) {
                (Some(new), Some(old)) => new.measures.mass < old.measures.mass,
                _ => true,
            };
            if placed {
                core::mem::swap(slot, &mut moving);
            }
        }
        self.count = kept.saturating_add(1);
        Ok(())
    }
}
