//! The modes that the early US boiler code letters one by one, each with the fates it names.

use core::fmt;

use super::cut::Cut;
use super::rivets::{Fate, Reach, RivetFates, rivet_fates};
use super::strengths::Strengths;
use crate::formula::{self, Formula};
use crate::given::{Given, pick};
use crate::joint::{Form, Joint, JointKind, MAX_ROWS};
use crate::math;
use crate::rules::Rules;
use crate::step::{Ctx, Name, Num, Quantity as Q};

/// The most letters that a joint has: A to D, and two for each row.
pub const MAX_LETTERS: usize = 4 + 2 * MAX_ROWS;

/// One lettered mode.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Lettered<N = f64> {
    /// Its letter.
    pub letter: char,
    /// The cut; the solid strip has none.
    pub cut: Option<Cut>,
    /// How rivets in single shear fail, where they do.
    pub single: Fate,
    /// How rivets in double shear fail, where they do.
    pub double: Fate,
    /// Strength of the strip, newtons.
    pub strength: N,
}

/// The letters of a joint: A the solid strip, B tearing at the outer row, C all rivets in shear; for laps D all rivets
/// in bearing; for butt joints then each further row up to the first in double shear, with the rivets outside first
/// sheared and then crushing the strap, and last all rivets with the outer ones crushing and then shearing.
///
/// Modes that need a bearing stress or a strap that was not given are left out, and their letters with them.
///
/// Source: ASME Rules for the Construction of Stationary Boilers, 1914/1918, Appendix (Fig. 29 read in a 1919
/// reproduction; Figs. 25 to 28 from memory).
#[inline]
pub fn letters<C: Ctx>(
    c: C,
    joint: &Joint,
    given: &Given<C::N>,
    rules: &Rules,
    strengths: &Strengths<C::N>,
) -> heapless::Vec<Lettered<C::N>, MAX_LETTERS> {
    let mut list = List { found: heapless::Vec::new(), letter: b'A' };
    let form = &joint.form;
    let rows = form.row_count();
    let lap = form.kind() == JointKind::Lap;
    let all = Cut::default();
    let outer = Cut { plate: 1, ..all };
    list.push(None, Fate::Whole, Fate::Whole, Some(strengths.solid));
    list.push(Some(outer), Fate::Whole, Fate::Whole, Some(strengths.tear_outer));
    let forced = Forced { c, joint, given, rules, strengths };
    list.push(Some(all), Fate::Shear, Fate::Shear, forced.strength(all, Fate::Shear, Fate::Shear));
    if lap {
        list.push(Some(all), Fate::Bearing, Fate::Bearing, strengths.bearing_all);
        return list.found;
    }
    let first_double = form.first_double_row();
    // With equal straps there are no single-shear rows: the row next to the outer one is still listed where it has
    // more holes.
    let inner = |row: usize| row >= 2 && row <= rows && (row <= first_double || first_double == 1);
    for fate in [Fate::Shear, Fate::OtherBearing] {
        for row in (2..=rows).filter(|r| inner(*r) && form.row(*r).rivets > form.outer_rivets()) {
            let cut = Cut { plate: u8::try_from(row).unwrap_or(0), ..all };
            list.push(Some(cut), fate, fate, forced.strength(cut, fate, fate));
        }
    }
    if first_double > rows || first_double == 1 {
        list.push(Some(all), Fate::Bearing, Fate::Bearing, forced.strength(all, Fate::Bearing, Fate::Bearing));
    } else {
        for single in [Fate::OtherBearing, Fate::Shear] {
            list.push(Some(all), single, Fate::Bearing, forced.strength(all, single, Fate::Bearing));
        }
    }
    list.found
}

struct List<N> {
    found: heapless::Vec<Lettered<N>, MAX_LETTERS>,
    letter: u8,
}

impl<N: Num> List<N> {
    /// Takes the next letter, whether the mode can be worked out or not.
    #[inline]
    fn push(&mut self, cut: Option<Cut>, single: Fate, double: Fate, strength: Option<N>) {
        let letter = char::from(self.letter);
        self.letter = self.letter.wrapping_add(1);
        if let Some(strength) = strength {
            // The capacity is the greatest number of letters: nothing is ever lost here.
            let _ = self.found.push(Lettered { letter, cut, single, double, strength });
        }
    }
}

/// Strengths of cuts whose rivets fail in a stated way.
struct Forced<'a, C: Ctx> {
    c: C,
    joint: &'a Joint,
    given: &'a Given<C::N>,
    rules: &'a Rules,
    strengths: &'a Strengths<C::N>,
}

impl<C: Ctx> Forced<'_, C> {
    #[inline]
    fn strength(&self, cut: Cut, single: Fate, double: Fate) -> Option<C::N> {
        let [plate_net, ..] = &self.strengths.net;
        let row_torn = usize::from(cut.plate);
        let mut sum = (row_torn > 0).then(|| pick(plate_net, row_torn));
        for row in 1..=self.joint.form.row_count() {
            if row_torn > 0 && row >= row_torn {
                break;
            }
            let one_double = self.joint.form.row(row).planes == 2;
            let fates = rivet_fates(self.c, self.joint, self.given, self.rules, row, None, true);
            let one = forced_fate(&fates, if one_double { double } else { single }, one_double)?;
            let held = formula::row_hold(self.given.rivets_in(row), one);
            let more = sum.map_or(held, |s| formula::cut_strength(s, held));
            sum = Some(self.c.formula(Name(Q::ModeStrength, 0), Formula::CutStrength.no(), more));
        }
        sum
    }
}

/// One rivet in one fate, with all its planes on the cut.
#[inline]
fn forced_fate<N: Num>(fates: &RivetFates<N>, fate: Fate, double: bool) -> Option<N> {
    let reach = if double { Reach::Both } else { Reach::Other };
    let [lone, _, both] = fates.shear;
    match fate {
        Fate::Bearing => fates.bearing,
        Fate::OtherBearing => fates.other_crush(reach),
        _ => Some(if double { both } else { lone }),
    }
}

impl<N: Num> Lettered<N> {
    /// Whether another letter is weaker.
    #[must_use]
    pub fn is_weaker_than(&self, other: &Self) -> bool {
        math::below(self.strength.value(), other.strength.value())
    }

    /// The mode in words, for a form.
    #[must_use]
    pub fn name<'a>(&self, form: &'a Form) -> LetterName<'a> {
        LetterName { cut: self.cut, single: self.single, double: self.double, form }
    }
}

/// A lettered mode in words.
#[derive(Clone, Copy, Debug)]
pub struct LetterName<'a> {
    cut: Option<Cut>,
    single: Fate,
    double: Fate,
    form: &'a Form,
}

impl fmt::Display for LetterName<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words = |fate: Fate| match fate {
            Fate::Bearing => "crush the plate",
            Fate::OtherBearing => "crush the strap",
            _ => "shear",
        };
        match self.cut {
            None => f.write_str("solid strip"),
            Some(Cut { plate: 1, .. }) => f.write_str("plate tears at the outer row"),
            Some(Cut { plate: 0, .. }) if self.single == self.double || self.form.kind() == JointKind::Lap => {
                write!(f, "all rivets {}", words(self.double))
            }
            Some(Cut { plate: 0, .. }) => {
                write!(f, "inner rivets {}, outer rivets {}", words(self.double), words(self.single))
            }
            Some(Cut { plate, .. }) => write!(f, "plate tears at row {plate}, rivets outside {}", words(self.single)),
        }
    }
}
