//! Cuts: the combinations of torn members, their strength, and their names.

use core::fmt;

use super::rivets::{Fate, Reach};
use super::strengths::Strengths;
use crate::formula::{self, Formula};
use crate::given::pick;
use crate::joint::{Form, JointKind, MAX_ROWS};
use crate::math;
use crate::step::Num;
use crate::text;

/// Which members tear, and at which row (from 1, outside first); 0: the member stays whole.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Cut {
    /// The plate (plate A of a lap).
    pub plate: u8,
    /// Plate B of a lap, the single or the wide strap.
    pub other: u8,
    /// The second or narrow strap.
    pub narrow: u8,
}

/// What kind of failure a cut is, as rule books distinguish it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Class {
    /// A main plate tears at its own outer row.
    PlateOuter,
    /// A main plate tears further in, and the rivets outside fail.
    PlateInner,
    /// All rivets fail.
    Rivets,
    /// A strap tears, alone or with something else.
    Strap,
    /// Both plates of a lap tear, at different rows.
    BothPlates,
}

/// One way to fail.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Mode<N = f64> {
    /// The members that tear.
    pub cut: Cut,
    /// How the rivets of each row fail.
    pub fates: [Fate; MAX_ROWS],
    /// Strength of the strip in this mode, newtons.
    pub strength: N,
    /// Whether the torn plate tears along the zig-zag to the next row.
    pub zigzag: bool,
}

impl Cut {
    /// The kind of failure, for a joint of a kind with so many rows.
    #[must_use]
    pub fn class(&self, kind: JointKind, rows: usize) -> Class {
        let last = usize::from(self.other) == rows;
        match (kind == JointKind::Lap, self.plate, self.other, self.narrow) {
            (_, 0, 0, 0) => Class::Rivets,
            (_, 1, 0, 0) => Class::PlateOuter,
            (_, _, 0, 0) => Class::PlateInner,
            (true, 0, _, 0) if last => Class::PlateOuter,
            (true, 0, _, 0) => Class::PlateInner,
            (true, _, _, _) => Class::BothPlates,
            (false, ..) => Class::Strap,
        }
    }
}

impl<N: Num> Strengths<N> {
    /// The strength of a cut, and how its rivets fail.
    #[inline]
    pub fn mode(&self, cut: Cut) -> Mode<N> {
        self.mode_as(cut, |n| n)
    }

    /// [`mode`](Self::mode) on another number made of this one: bare values for a search, whatever the context.
    #[inline]
    fn mode_as<M: Num>(&self, cut: Cut, take: impl Fn(N) -> M + Copy) -> Mode<M> {
        let (plate, other, narrow) = (usize::from(cut.plate), usize::from(cut.other), usize::from(cut.narrow));
        let [plate_net, other_net, narrow_net] = &self.net;
        let mut sum: Option<M> = None;
        let mut fates = [Fate::Whole; MAX_ROWS];
        let mut add = |f: N| sum = Some(sum.map_or(take(f), |s| formula::cut_strength(s, take(f))));
        for (row, net) in [(plate, plate_net), (other, other_net), (narrow, narrow_net)] {
            if row > 0 {
                add(pick(net, row));
            }
        }
        for (row, slot) in (1..=self.rows).zip(fates.iter_mut()) {
            let loaded = plate == 0 || row < plate;
            let far_other = other == 0 || row > other;
            let far_narrow = row >= self.first_double && (narrow == 0 || row > narrow);
            let reach = match (far_other, far_narrow) {
                (true, true) => Reach::Both,
                (true, false) => Reach::Other,
                (false, true) => Reach::Narrow,
                (false, false) => continue,
            };
            if loaded {
                add(self.hold.get(reach as usize).map_or(N::lit(0.0), |r| pick(r, row)));
                *slot =
                    self.fate.get(reach as usize).and_then(|r| r.get(row.wrapping_sub(1))).copied().unwrap_or_default();
            }
        }
        let mut strength = sum.unwrap_or(M::lit(0.0));
        if self.even_share {
            strength = self.shared(cut, take).unwrap_or(strength);
        }
        let mask = |row: u8, bits: u8| row > 0 && bits & 1_u8.wrapping_shl(u32::from(row).wrapping_sub(1)) != 0;
        let [a, b, n] = self.zigzag;
        let zigzag = mask(cut.plate, a) || mask(cut.other, b) || mask(cut.narrow, n);
        Mode { cut, fates, strength, zigzag }
    }

    /// The load at which one main plate tears at an inner row when the rivets outside have taken an even share of it.
    #[inline]
    fn shared<M: Num>(&self, cut: Cut, take: impl Fn(N) -> M) -> Option<M> {
        let [plate, other, _] = &self.net;
        let (net, row, from, to) = match (cut.plate, cut.other, cut.narrow) {
            (row, 0, 0) if row > 1 => (plate, row, 1, usize::from(row)),
            (0, row, 0) if self.lap && row > 0 && usize::from(row) < self.rows => {
                (other, row, usize::from(row).wrapping_add(1), self.rows.wrapping_add(1))
            }
            _ => return None,
        };
        let mut outside = M::lit(0.0);
        for r in from..to {
            outside = formula::cut_strength(outside, take(pick(&self.rivets, r)));
        }
        Some(formula::even_share(take(pick(net, usize::from(row))), take(self.all_rivets), outside))
    }

    /// All modes, in the documented order: first those where the main plate alone tears, outside first, and all
    /// rivets; then with the other plate or wide strap torn; then with the narrow strap torn. Of equal modes the first
    /// governs.
    #[must_use]
    pub fn modes(&self) -> Modes<'_, N> {
        Modes { strengths: self, next: Some(FIRST_CUT) }
    }

    /// The governing mode and the runner-up among those that pass a filter.
    ///
    /// The search runs on bare values; only the two that are found are worked out in the context's number.
    #[inline]
    pub fn weakest(&self, mut counts: impl FnMut(&Cut) -> bool) -> Option<(Mode<N>, Option<Mode<N>>)> {
        self.weakest_cuts(&mut counts).map(|(first, second)| (self.mode(first), second.map(|cut| self.mode(cut))))
    }

    /// [`weakest`](Self::weakest), the cuts alone.
    #[inline]
    pub(crate) fn weakest_cuts(&self, counts: &mut dyn FnMut(&Cut) -> bool) -> Option<(Cut, Option<Cut>)> {
        let mut best: Option<(f64, Cut)> = None;
        let mut second: Option<(f64, Cut)> = None;
        let mut next = Some(FIRST_CUT);
        while let Some(cut) = next {
            next = self.cut_after(cut);
            if !counts(&cut) {
                continue;
            }
            let value = self.mode_as(cut, |n| n.value()).strength;
            match (best, second) {
                (None, _) => best = Some((value, cut)),
                (Some((b, _)), _) if math::below(value, b) => {
                    second = best;
                    best = Some((value, cut));
                }
                (_, Some((s, _))) if !math::below(value, s) => {}
                _ => second = Some((value, cut)),
            }
        }
        best.map(|(_, cut)| (cut, second.map(|(_, cut)| cut)))
    }

    /// The formula that makes the strength of a cut.
    #[inline]
    pub(crate) fn formula_of(&self, cut: Cut) -> Formula {
        let last = usize::from(cut.other) == self.rows;
        let shared = match (cut.plate, cut.other, cut.narrow) {
            (row, 0, 0) => row > 1,
            (0, row, 0) => self.lap && row > 0 && !last,
            _ => false,
        };
        if self.even_share && shared { Formula::EvenShare } else { Formula::CutStrength }
    }

    /// The cut after another in the documented order: the plate runs 1, 2, ..., rows, whole; then the other member
    /// takes its next row, then the narrow strap.
    #[inline]
    fn cut_after(&self, cut: Cut) -> Option<Cut> {
        let rows = u8::try_from(self.rows).unwrap_or(0);
        let [other_tears, narrow_tears] = self.tears;
        if cut.plate == rows {
            Some(Cut { plate: 0, ..cut })
        } else if cut.plate != 0 {
            Some(Cut { plate: cut.plate.wrapping_add(1), ..cut })
        } else if other_tears && cut.other < rows {
            Some(Cut { plate: 1, other: cut.other.wrapping_add(1), narrow: cut.narrow })
        } else if narrow_tears && cut.narrow < rows {
            let first = u8::try_from(self.first_double).unwrap_or(u8::MAX);
            Some(Cut { plate: 1, other: 0, narrow: if cut.narrow == 0 { first } else { cut.narrow.wrapping_add(1) } })
        } else {
            None
        }
    }
}

/// The first cut of the documented order.
const FIRST_CUT: Cut = Cut { plate: 1, other: 0, narrow: 0 };

/// The modes of a joint, one by one.
#[derive(Clone, Debug)]
pub struct Modes<'s, N> {
    strengths: &'s Strengths<N>,
    next: Option<Cut>,
}

impl<N: Num> Iterator for Modes<'_, N> {
    type Item = Mode<N>;

    #[inline]
    fn next(&mut self) -> Option<Mode<N>> {
        let cut = self.next?;
        self.next = self.strengths.cut_after(cut);
        Some(self.strengths.mode(cut))
    }
}

/// A mode in words, for a form.
#[derive(Clone, Copy, Debug)]
pub struct ModeName<'a> {
    cut: Cut,
    zigzag: bool,
    fates: [Fate; MAX_ROWS],
    form: &'a Form,
}

impl<N: Num> Mode<N> {
    /// The same with a bare value.
    #[must_use]
    pub fn values(self) -> Mode {
        Mode { cut: self.cut, fates: self.fates, strength: self.strength.value(), zigzag: self.zigzag }
    }

    /// The mode in words: what tears at which row, and how each row of rivets fails.
    #[must_use]
    pub fn name<'a>(&self, form: &'a Form) -> ModeName<'a> {
        ModeName { cut: self.cut, zigzag: self.zigzag, fates: self.fates, form }
    }
}

impl ModeName<'_> {
    fn tears(&self) -> [(&'static str, u8); 3] {
        let [plate, other, narrow] = match self.form.kind() {
            JointKind::Lap => ["plate A", "plate B", ""],
            JointKind::SingleStrap => ["plate", "strap", ""],
            JointKind::DoubleStrap if self.form.unequal() => ["plate", "wide strap", "narrow strap"],
            JointKind::DoubleStrap => ["plate", "first strap", "second strap"],
        };
        [(plate, self.cut.plate), (other, self.cut.other), (narrow, self.cut.narrow)]
    }

    fn fate_words(&self, fate: Fate) -> &'static str {
        let lap = self.form.kind() == JointKind::Lap;
        match fate {
            Fate::Whole => "holds",
            Fate::Shear => "shears",
            Fate::Bearing if lap => "crushes plate A",
            Fate::Bearing => "crushes the plate",
            Fate::OtherBearing if lap => "crushes plate B",
            Fate::OtherBearing => "crushes the strap",
            Fate::Mixed => "shears and crushes a strap",
            Fate::ShearOut if lap => "shears out plate A",
            Fate::ShearOut => "shears out the plate",
            Fate::OtherShearOut if lap => "shears out plate B",
            Fate::OtherShearOut => "shears out the strap",
        }
    }
}

impl fmt::Display for ModeName<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut first = true;
        for (member, row) in self.tears() {
            if row > 0 {
                write!(f, "{}{member} tears at row {row}", if first { "" } else { ", " })?;
                first = false;
            }
        }
        if self.zigzag {
            f.write_str(" (along the zig-zag)")?;
        }
        if first {
            f.write_str("all rivets fail")?;
        }
        let rows = self.form.row_count();
        let mut lead = if first { ": " } else { ", " };
        let mut row = 1;
        // Neighbouring rows with one fate are named together.
        while row <= rows {
            let fate = self.fates.get(row.wrapping_sub(1)).copied().unwrap_or_default();
            let alike = self.fates.iter().take(rows).skip(row).take_while(|x| **x == fate).count();
            let last = row.saturating_add(alike);
            if fate != Fate::Whole {
                f.write_str(lead)?;
                match alike {
                    0 => write!(f, "row {row} ")?,
                    _ => write!(f, "rows {row}-{last} ")?,
                }
                let words = self.fate_words(fate);
                // "rows 1-2 shear", "row 1 shears".
                match (alike, text::split_once(words, b' ')) {
                    (0, _) => f.write_str(words)?,
                    (_, Some((verb, rest))) => write!(f, "{} {rest}", plural(verb))?,
                    (_, None) => f.write_str(plural(words))?,
                }
                lead = ", ";
            }
            row = last.saturating_add(1);
        }
        Ok(())
    }
}

/// The plural of a verb in the present tense.
fn plural(verb: &str) -> &str {
    verb.strip_suffix("hes").map_or_else(
        || verb.strip_suffix('s').unwrap_or(verb),
        |stem| verb.get(..stem.len().saturating_add(1)).unwrap_or(verb),
    )
}
