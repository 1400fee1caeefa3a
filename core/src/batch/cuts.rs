//! Which cuts of any form can govern, found from its list of rows.
//!
//! All rows of a sweep have one hole. A cut is a sum of pieces: net sections, and rows of rivets by the planes that are
//! on it. Cut X is left out where another cut Y has no piece that is not in X, or only weaker ones in their place, and
//!
//! - Y comes earlier in the documented order: X is not below Y, to the last bit, because a sum of figures that are not
//!   negative never falls when one of them grows or another one is put in between; or
//! - X has a piece more: Y is lower by a whole net section or a row of rivets. Those hold more than
//!   [`MARGIN`](super::kernel::MARGIN) of the strength; the kernel looks at that lane by lane, and a row where it is
//!   not so is checked by itself. Y then governs before X, whichever comes first.
//!
//! Whatever Y is left out for stands in its place, and so in the end one that stays. Pieces are compared by what holds
//! in every row of the sweep: more holes leave less of one member; rivets of one row with the same planes are equal.
//! Where a zig-zag net section may be the lesser, rows are compared with their neighbours; the row that Reg. 184(d)
//! corrects has more holes than its rivets say. An even share of the load is no sum: such a cut always stays, and no
//! other is left out for it.

use crate::joint::{Arrangement, Form, JointKind, MAX_ROWS};
use crate::modes::Cut;
use crate::rules::{CloseRows, Entry, Rules};

/// Ways of each member: torn at a row, or whole.
const WAYS: usize = MAX_ROWS + 1;

/// Cuts of a form: for each way of the other members, in the documented order, one bit for each way of the plate.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Cuts {
    groups: [u16; WAYS * WAYS],
}

impl Cuts {
    /// The ways of the plate, by the ways of the others.
    pub(super) fn groups(&self) -> impl Iterator<Item = u16> + '_ {
        self.groups.iter().copied()
    }
}

/// A net section as it can be compared: rivets of its row, those of the neighbour to which a zig-zag leads (0: none),
/// and whether the book counts more holes than there are.
#[derive(Clone, Copy, Default)]
struct Section {
    rivets: u8,
    neighbour: u8,
    crowded: bool,
}

/// What the cuts of a form are made of.
pub struct Pieces {
    rows: u8,
    lap: bool,
    first_double: u8,
    other: bool,
    narrow: bool,
    share: bool,
    nets: [[Section; MAX_ROWS]; 3],
}

/// One cut by its pieces: the rows of rivets with all their planes, with the wide strap's alone, with the narrow one's.
#[derive(Clone, Copy)]
struct Sum {
    cut: Cut,
    rows: [u8; 3],
    shared: bool,
}

impl Pieces {
    /// The pieces of a form under a book; straps given or not, distances of rows given or not.
    pub fn new(form: &Form, rules: &Rules, straps: bool, placed: bool) -> Self {
        let rows = form.row_count();
        let lap = form.kind() == JointKind::Lap;
        let close = if placed { rules.close_rows() } else { CloseRows::Finding };
        let zigzag = close == CloseRows::Stagger && form.arrangement() == Arrangement::Zigzag;
        let first_double = form.first_double_row();
        let rivets = |row: usize| form.row(row).rivets;
        let mut nets = [[Section::default(); MAX_ROWS]; 3];
        for (member, sections) in nets.iter_mut().enumerate() {
            let first = if member == 2 { first_double } else { 1 };
            for (row, section) in (1..=rows).zip(sections.iter_mut()) {
                let next = if member == 0 { row.wrapping_add(1) } else { row.wrapping_sub(1) };
                let neighbour = if zigzag && next >= first { rivets(next) } else { 0 };
                let outer = (member == 0 && row == 1) || (member == 1 && lap && row == rows);
                let crowded = close == CloseRows::ModifiedPercentage && outer;
                *section = Section { rivets: rivets(row), neighbour, crowded };
            }
        }
        Pieces {
            rows: byte(rows),
            lap,
            first_double: byte(first_double),
            other: straps || lap,
            narrow: straps && form.kind() == JointKind::DoubleStrap,
            share: rules.on(Entry::INNER_SHARE),
            nets,
        }
    }

    /// All cuts, in the documented order.
    fn all(&self) -> impl Iterator<Item = Sum> + '_ {
        let others = if self.other { self.rows } else { 0 };
        let last = if self.narrow { self.rows } else { 0 };
        let narrows = (0..=last).filter(|row| *row == 0 || *row >= self.first_double);
        narrows.flat_map(move |narrow| {
            (0..=others).flat_map(move |other| {
                (1..=self.rows).chain([0]).map(move |plate| self.sum(Cut { plate, other, narrow }))
            })
        })
    }

    fn sum(&self, cut: Cut) -> Sum {
        let mut rows = [0_u8; 3];
        for row in 1..=self.rows {
            let loaded = cut.plate == 0 || row < cut.plate;
            if let Some(slot) = reach(cut, row, self.first_double).and_then(|reach| rows.get_mut(reach))
                && loaded
            {
                *slot |= 1_u8.wrapping_shl(u32::from(row).wrapping_sub(1));
            }
        }
        let shared = match (cut.plate, cut.other, cut.narrow) {
            (row, 0, 0) if row > 1 => self.share,
            (0, row, 0) if row > 0 && row < self.rows => self.share && self.lap,
            _ => false,
        };
        Sum { cut, rows, shared }
    }

    /// The cuts that can govern among those that a book counts.
    pub fn governing(&self, counts: impl Fn(&Cut) -> bool) -> Cuts {
        let mut groups = [0_u16; WAYS * WAYS];
        let ways = usize::from(self.rows).wrapping_add(1);
        let mut sums = heapless::Vec::<(usize, Sum), { WAYS * WAYS * WAYS }>::new();
        for (number, x) in self.all().enumerate().filter(|(_, x)| counts(&x.cut)) {
            // There are never more than it holds.
            let _ = sums.push((number, x));
        }
        for (number, x) in &sums {
            let out = sums.iter().any(|(at, y)| at != number && self.instead(y, x, at < number));
            let (group, way) = (number.checked_div(ways), number.checked_rem(ways));
            if let Some((slot, way)) = group.and_then(|group| groups.get_mut(group)).zip(way)
                && (x.shared || !out)
            {
                *slot |= 1_u16.wrapping_shl(u32::try_from(way).unwrap_or(0));
            }
        }
        Cuts { groups }
    }

    /// Whether X can be left out because of Y.
    fn instead(&self, y: &Sum, x: &Sum, earlier: bool) -> bool {
        if y.shared {
            return false;
        }
        let mut more = false;
        let members = [(x.cut.plate, y.cut.plate), (x.cut.other, y.cut.other), (x.cut.narrow, y.cut.narrow)];
        for ((of_x, of_y), nets) in members.into_iter().zip(&self.nets) {
            more |= of_x != 0 && of_y == 0;
            if of_y != 0 && (of_x == 0 || !weaker(nets, of_y, of_x)) {
                return false;
            }
        }
        for (of_x, of_y) in x.rows.into_iter().zip(y.rows) {
            more |= of_x != of_y;
            if of_y & !of_x != 0 {
                return false;
            }
        }
        earlier || more
    }
}

/// Which planes of a row (from 1) are on a cut, by [`Pieces`]: all, the wide strap's, the narrow strap's.
#[inline(always)]
pub fn reach(cut: Cut, row: u8, first_double: u8) -> Option<usize> {
    let double = row >= first_double;
    let other = cut.other == 0 || row > cut.other;
    let narrow = double && (cut.narrow == 0 || row > cut.narrow);
    match (other, narrow) {
        (true, true) => Some(0),
        (true, false) => Some(if double { 1 } else { 0 }),
        (false, true) => Some(2),
        (false, false) => None,
    }
}

/// Whether a member is never stronger at row `y` than at row `x`.
fn weaker(nets: &[Section; MAX_ROWS], y: u8, x: u8) -> bool {
    let at = |row: u8| nets.get(usize::from(row).wrapping_sub(1)).copied().unwrap_or_default();
    let (of_y, of_x) = (at(y), at(x));
    let along = of_x.neighbour == 0 || (of_y.rivets, of_y.neighbour) == (of_x.rivets, of_x.neighbour);
    y == x || (of_y.rivets >= of_x.rivets && along && !of_x.crowded)
}

fn byte(n: usize) -> u8 {
    u8::try_from(n).unwrap_or(u8::MAX)
}
