//! Sizing by a book: hole, pitch, back pitch, margin, straps. Lengths in mm.
//!
//! A strip may hold several rivets of the outer row. Balances are widths of the strip; floor, cap and the pitch are
//! those of the outer row, that is the strip divided by the rivets of that row.

use crate::book::{BackRule, Book, StrapRule};
use crate::model::{Convention, Form, Joint, Stresses};
use crate::textbook::shear_all;
use std::f64::consts::PI;

/// What counts as equal, relative.
pub const SAME: f64 = 1e-9;

/// The greatest multiple of the step not above a length, mm; a multiple within 1e-9 stays.
pub fn round_down(length: f64, step: f64) -> f64 {
    let mut k = (length / step).floor() - 2.0;
    while (k + 1.0) * step <= length * (1.0 + SAME) {
        k += 1.0;
    }
    k * step
}

/// The least multiple of the step not below a length, mm; a multiple within 1e-9 stays.
pub fn round_up(length: f64, step: f64) -> f64 {
    let mut k = (length / step).ceil() + 2.0;
    while (k - 1.0) * step >= length * (1.0 - SAME) {
        k -= 1.0;
    }
    k * step
}

/// The first entry of a table not below a key, and its value.
fn look_up(table: &[(f64, f64)], key: f64) -> Option<f64> {
    for &(at, value) in table {
        if at >= key * (1.0 - SAME) {
            return Some(value);
        }
    }
    None
}

/// The hole before rounding to a standard one, mm, for the thickness t, mm, shear and bearing, MPa.
///
/// Strictly below `thin_below` it is 4 t bearing/(pi shear), over the double-shear factor if all rivets are in double
/// shear; without a bearing stress, and from `thin_below` on, a sqrt(t) + b. A book with a table has the table's.
pub fn raw_hole(book: &Book, t: f64, shear: f64, bearing: Option<f64>, all_double: bool) -> Option<f64> {
    if !book.hole_table.is_empty() {
        return look_up(book.hole_table, t);
    }
    match bearing {
        Some(bearing) if t < book.thin_below => {
            let d = 4.0 * t * bearing / (PI * shear);
            Some(if all_double { d / book.double } else { d })
        }
        _ => Some(book.hole_a * t.sqrt() + book.hole_b),
    }
}

/// Hole and rivet, mm: the next standard hole not below [`raw_hole`], or the table's. None: beyond the table.
pub fn size_hole(book: &Book, t: f64, shear: f64, bearing: Option<f64>, all_double: bool) -> Option<(f64, f64)> {
    let raw = raw_hole(book, t, shear, bearing, all_double)?;
    if !book.hole_table.is_empty() {
        return Some((raw, raw - book.table_clearance));
    }
    for &(rivet, hole) in book.series {
        if hole >= raw * (1.0 - SAME) {
            return Some((hole, rivet));
        }
    }
    None
}

/// What a row's rivets (from 0) carry with nothing torn, each by its weaker fate, N.
fn row_fate(joint: &Joint, row: usize, s: &Stresses, c: &Convention) -> f64 {
    let mut plane = joint.single_shear(row, s, c);
    if joint.is_double(row) {
        plane *= c.double / 2.0;
    }
    let mut straps = 0.0;
    for other in 0..joint.others().len() {
        if joint.reaches(row, other) {
            straps += plane.min(joint.other_bearing(row, other, s, c));
        }
    }
    f64::from(joint.rows[row].rivets) * straps.min(joint.plate_bearing(row, s, c))
}

/// Three strip widths, mm; the joint's own strip width is not used.
///
/// 1. the outer row torn = every rivet sheared;
/// 2. the outer row torn = every rivet by the weaker of shear and bearing;
/// 3. the greatest, over the rows, of that row torn with the rows outside it failed = every rivet failed.
///
/// In a lap each is the larger of both plates', each plate from its own outside.
pub fn balanced_pitches(joint: &Joint, s: &Stresses, c: &Convention) -> [f64; 3] {
    let n = joint.rows.len();
    let inwards: Vec<usize> = (0..n).collect();
    let outwards: Vec<usize> = (0..n).rev().collect();
    let plates = match joint.form {
        Form::Lap { plates } => vec![(plates[0] * s.plate_tension, inwards), (plates[1] * s.other_tension, outwards)],
        Form::Butt { plate, .. } => vec![(plate * s.plate_tension, inwards)],
    };
    let sheared = shear_all(joint, s, c);
    let mut all = 0.0;
    for row in 0..n {
        all += row_fate(joint, row, s, c);
    }
    let mut balance = [0.0_f64; 3];
    for (per_width, order) in plates {
        let mut outside = 0.0;
        for (i, &row) in order.iter().enumerate() {
            let r = &joint.rows[row];
            let gone = f64::from(r.rivets) * (r.diameter(c.tear) + c.tear_allowance);
            if i == 0 {
                balance[0] = balance[0].max(gone + sheared / per_width);
                balance[1] = balance[1].max(gone + all / per_width);
            }
            balance[2] = balance[2].max(gone + (all - outside) / per_width);
            outside += row_fate(joint, row, s, c);
        }
    }
    balance
}

/// The least pitch of the outer row, mm: (factor d + add) times rivets of the densest row over rivets of the outer.
/// Of several densest rows the one with the largest hole counts.
pub fn floor(book: &Book, joint: &Joint) -> f64 {
    let mut most = 0;
    let mut hole = 0.0;
    for row in &joint.rows {
        if row.rivets > most || (row.rivets == most && row.hole > hole) {
            most = row.rivets;
            hole = row.hole;
        }
    }
    let outer = joint.rows[0].rivets;
    (book.floor_factor * hole + book.floor_add) * f64::from(most) / f64::from(outer)
}

/// The greatest pitch of the outer row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cap {
    /// The book has none.
    NoRule,
    /// The book has a rule, but no coefficient for this joint.
    Unknown,
    /// The limit, mm.
    At(f64),
}

/// The greatest pitch of the outer row, C t + K, by the joint's form and rivets per outer pitch; t is the thinner
/// plate of a lap.
pub fn cap(book: &Book, joint: &Joint) -> Cap {
    if !book.has_cap {
        return Cap::NoRule;
    }
    let (t, coefficients) = match joint.form {
        Form::Lap { plates } => (plates[0].min(plates[1]), book.cap_lap),
        Form::Butt { plate, narrow: None, .. } => (plate, book.cap_single),
        Form::Butt { plate, .. } => (plate, book.cap_double),
    };
    let mut total = 0;
    for row in &joint.rows {
        total += row.rivets;
    }
    let outer = joint.rows[0].rivets;
    if !total.is_multiple_of(outer) {
        return Cap::Unknown;
    }
    match coefficients.get((total / outer) as usize - 1) {
        Some(Some(coefficient)) => Cap::At(coefficient * t + book.cap_add),
        _ => Cap::Unknown,
    }
}

/// The pitch to use for a wanted one, mm; none if no multiple of the step lies between floor and cap.
///
/// Raised to the floor, lowered to the cap, rounded down to the step, and up by one step if that passed the floor.
/// An unknown cap limits nothing here: the caller must say so.
pub fn admissible_pitch(wanted: f64, floor: f64, cap: Cap, step: f64) -> Option<f64> {
    let limit = match cap {
        Cap::At(limit) => limit,
        Cap::NoRule | Cap::Unknown => f64::INFINITY,
    };
    let mut pitch = wanted;
    if pitch < floor {
        pitch = floor;
    }
    if pitch > limit {
        pitch = limit;
    }
    pitch = round_down(pitch, step);
    if pitch < floor * (1.0 - SAME) {
        pitch += step;
    }
    let inside = pitch >= floor * (1.0 - SAME) && pitch <= limit * (1.0 + SAME);
    inside.then_some(pitch)
}

/// How the rivets of one row stand to those of the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Arrangement {
    /// In line.
    Chain,
    /// Midway.
    Zigzag,
}

/// The least distance of each row to the next, mm, before rounding; none where the book has no clause.
///
/// `outer_pitch` is that of row 1, mm; `rows` are rivets per strip and hole, mm; `inner` is the arrangement of the full
/// rows. Clauses exist where all rows are alike, or row 1 has half the rivets of the others, which are alike.
pub fn back_pitches(book: &Book, outer_pitch: f64, rows: &[(u32, f64)], inner: Arrangement) -> Vec<Option<f64>> {
    let equal = rows.iter().all(|r| r.0 == rows[0].0);
    let half = rows.len() > 1 && rows[1..].iter().all(|r| r.0 == 2 * rows[0].0);
    let mut gaps = Vec::new();
    for i in 1..rows.len() {
        let d = (rows[i - 1].1 + rows[i].1) / 2.0;
        let p = outer_pitch;
        gaps.push(match book.back {
            BackRule::Diameters(factor) => Some(factor * d),
            BackRule::Reg184 if equal => Some(match inner {
                // Eq. 12: 0.33 P + 0.67 D; Eq. 13: 2 D.
                Arrangement::Zigzag => 0.33 * p + 0.67 * d,
                Arrangement::Chain => 2.0 * d,
            }),
            BackRule::Reg184 if half => Some(match (inner, i) {
                (Arrangement::Chain, 1) => (0.33 * p + 0.67 * d).max(2.0 * d),
                (Arrangement::Chain, _) => 2.0 * d,
                // Eq. 14: 0.2 P + 1.15 D; Eq. 15: 0.165 P + 0.67 D.
                (Arrangement::Zigzag, 1) => 0.2 * p + 1.15 * d,
                (Arrangement::Zigzag, _) => 0.165 * p + 0.67 * d,
            }),
            BackRule::Reg184 => None,
            BackRule::Us1918 => {
                let outer = f64::from(rows[0].0);
                let this = p * outer / f64::from(rows[i - 1].0);
                let next = p * outer / f64::from(rows[i].0);
                let midway = rows[i].0 == rows[i - 1].0 && inner == Arrangement::Zigzag;
                if midway {
                    Some(us_1918(this, d))
                } else if rows[i].0 == 2 * rows[i - 1].0 {
                    Some(us_1918(this - next, d))
                } else {
                    None
                }
            }
        });
    }
    gaps
}

/// Back pitch of the US code of 1918, mm, for its P and d, mm.
fn us_1918(p: f64, d: f64) -> f64 {
    if p / d <= 4.0 { 1.75 * d } else { 1.75 * d + 0.1 * (p - 4.0 * d) }
}

/// What button heads, 1.6 rivets wide (custom of the trade), need from a row to the next, mm.
///
/// `rows` are rivets per strip and shear planes of the two rows, `edge` hole centre to edge. A row in single shear beside
/// one in double shear has the edge of the narrow strap between them. Heads of the two rows: the sides of a triangle.
/// Rows whose rivets are neither as many nor twice as many have no rule.
pub fn head_room(rows: [(u32, u32); 2], rivet: f64, strip: f64, edge: f64, arrangement: Arrangement) -> f64 {
    let [(n1, planes1), (n2, planes2)] = rows;
    let wide = 1.6 * rivet;
    let mut room: f64 = if (planes1, planes2) == (1, 2) { edge + wide / 2.0 } else { 0.0 };
    if n1 == n2 || n1 == 2 * n2 || n2 == 2 * n1 {
        let across = match arrangement {
            Arrangement::Zigzag => strip / f64::from(n1.max(n2)) / 2.0,
            Arrangement::Chain => 0.0,
        };
        if across < wide {
            room = room.max(((wide - across) * (wide + across)).sqrt());
        }
    }
    room
}

/// The distance from a row to the next, mm: the book's least on its grid, or the next step that leaves the heads room.
pub fn row_distance(book: &Book, least: f64, heads: f64) -> f64 {
    let gap = round_up(least, book.step);
    if heads > gap * (1.0 + SAME) { round_up(heads, book.step) } else { gap }
}

/// Hole centre to edge, mm, rounded up to the book's step.
pub fn margin(book: &Book, hole: f64) -> f64 {
    round_up(book.margin_factor * hole, book.step)
}

/// Which straps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// One strap.
    Single,
    /// Two straps of the same width.
    Equal,
    /// A wide strap and a narrow one.
    Unequal,
}

/// Thickness of the wide (or single) and the narrow strap, mm, rounded up to the book's step; none beyond a table.
///
/// `t` plate, mm; `p` strip, mm; `outer` and `butt` are rivets per strip and hole, mm, of the outer row and of the row
/// next to the butt. The factor (p - k1 d)/(p - kb d) applies to a single strap and to equal ones where the book says
/// so; with like rows it is one. None also where it is not positive.
pub fn straps(book: &Book, kind: Kind, t: f64, p: f64, outer: (u32, f64), butt: (u32, f64)) -> Option<[f64; 2]> {
    let raw = match book.strap {
        StrapRule::Table(table) => {
            let least = look_up(table, t)?;
            [least, least]
        }
        StrapRule::Factors { single, equal, unequal, omitted } => {
            let mut factor = 1.0;
            if omitted && kind != Kind::Unequal {
                let left = p - f64::from(butt.0) * butt.1;
                if left <= 0.0 {
                    return None;
                }
                factor = (p - f64::from(outer.0) * outer.1) / left;
            }
            match kind {
                Kind::Single => [single * t * factor, single * t * factor],
                Kind::Equal => [equal * t * factor, equal * t * factor],
                Kind::Unequal => [unequal[0] * t, unequal[1] * t],
            }
        }
    };
    Some(raw.map(|b| round_up(b.max(book.strap_least), book.step)))
}
