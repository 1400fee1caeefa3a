//! The best of a grid by plain enumeration: every form, plate, size and pitch, nothing left out.
//!
//! Only the routines of this crate are used, and rules that are stated here in numbers.

use crate::book::Book;
use crate::cuts::{Cut, cuts, weakest};
use crate::model::{Form, Joint, Row, Stresses};
use crate::sizing::{
    Arrangement, Cap, Kind, SAME, back_pitches, cap, floor, head_room, margin, round_up, row_distance, straps,
};
use crate::textbook::solid;
use std::f64::consts::PI;

/// How the plates of a plan meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meeting {
    /// Two like plates overlapping.
    Lap,
    /// One strap.
    Single,
    /// Two straps, of equal or unequal width.
    Double,
}

/// A form to be sized.
#[derive(Clone, Debug)]
pub struct Plan {
    /// How the plates meet.
    pub meeting: Meeting,
    /// Chain or zig-zag.
    pub arrangement: Arrangement,
    /// Rivets per strip and shear planes of each row, outside first.
    pub rows: Vec<(u32, u32)>,
}

/// Which tears at inner rows a book counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Inner {
    /// At every row.
    All,
    /// At the next row, where every inner row has twice the rivets of the outer one (Reg. 177, Eq. 4).
    Doubled,
}

/// What a book says beyond [`Book`].
#[derive(Clone, Copy, Debug)]
pub struct Sight {
    /// Whether bearing is checked.
    pub bearing: bool,
    /// Inner tears.
    pub inner: Inner,
    /// Most that is credited, ratio.
    pub credit: f64,
    /// Least plate, mm; 0 for no rule.
    pub plate_least: f64,
    /// Greatest margin in holes; 0 for no rule.
    pub margin_most: f64,
}

/// What is wanted first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// The highest efficiency.
    Efficiency,
    /// The least mass.
    Mass,
    /// The fewest rivets.
    Rivets,
    /// The thinnest plate.
    Thickness,
}

/// The task.
#[derive(Clone, Debug)]
pub struct Task<'a> {
    /// What is wanted.
    pub wanted: Wanted,
    /// Forms.
    pub plans: &'a [Plan],
    /// Plates, mm.
    pub plates: &'a [f64],
    /// Rivets and holes, mm.
    pub sizes: &'a [(f64, f64)],
    /// Stresses.
    pub stresses: &'a Stresses,
    /// The book.
    pub book: &'a Book,
    /// The rest of the book.
    pub sight: Sight,
    /// Greatest pitch of the outer row besides the book's, mm.
    pub pitch_most: f64,
    /// Least efficiency, in billionths.
    pub efficiency: u64,
    /// Whether every rule has to be met.
    pub rules_met: bool,
    /// Step of rivet lengths, mm; none: nothing is weighed.
    pub stock: Option<f64>,
}

/// A joint of the grid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hit {
    /// Places in the lists of the task.
    pub plan: usize,
    /// The plate.
    pub plate: usize,
    /// The size.
    pub size: usize,
    /// Pitch of the outer row, mm.
    pub pitch: f64,
    /// Efficiency credited, billionths.
    pub efficiency: u64,
    /// Rivets in a metre, millionths.
    pub rivets: u64,
    /// Mass of a metre, milligrams.
    pub mass: u64,
    /// What is compared, the lesser being the better.
    pub key: [i128; 5],
}

/// Why there is no hit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Miss {
    /// The efficiency.
    Efficiency,
    /// It cannot be sized.
    Making,
    /// A rule.
    Rule,
}

/// Density, kg/mm3.
const DENSITY: f64 = 7850e-9;

fn parts(x: f64, scale: f64) -> u64 {
    (x * scale).round() as u64
}

/// The pitches of a form, plate and size: from the least to the greatest, mm.
fn pitches(task: &Task<'_>, plan: &Plan, plate: f64, size: (f64, f64)) -> Vec<f64> {
    let thick = joint(plan, plate, size, 1e9, [1e9, 1e9]);
    let least = floor(task.book, &thick);
    let most = match cap(task.book, &thick) {
        Cap::At(limit) => limit.min(task.pitch_most),
        Cap::NoRule | Cap::Unknown => task.pitch_most,
    };
    let outer = f64::from(plan.rows[0].0);
    let mut list = Vec::new();
    let mut k = 1.0;
    while k * task.book.step <= most * (1.0 + SAME) {
        let pitch = k * task.book.step;
        let mut room = pitch >= least * (1.0 - SAME);
        for &(rivets, _) in &plan.rows {
            room &= f64::from(rivets) * size.1 < pitch * outer * (1.0 - SAME);
        }
        if room {
            list.push(pitch);
        }
        k += 1.0;
    }
    list
}

fn joint(plan: &Plan, plate: f64, (rivet, hole): (f64, f64), strip: f64, [wide, narrow]: [f64; 2]) -> Joint {
    let form = match plan.meeting {
        Meeting::Lap => Form::Lap { plates: [plate, plate] },
        Meeting::Single => Form::Butt { plate, wide, narrow: None },
        Meeting::Double => Form::Butt { plate, wide, narrow: Some(narrow) },
    };
    let rows = plan.rows.iter().map(|&(rivets, planes)| Row { rivets, hole, rivet, planes }).collect();
    Joint { form, strip, rows }
}

/// Whether a book counts a cut.
fn counted(plan: &Plan, sight: &Sight, cut: &Cut) -> bool {
    let n = plan.rows.len();
    let lap = plan.meeting == Meeting::Lap;
    if !lap && (cut.first.is_some() || cut.second.is_some()) {
        return false;
    }
    let outer = match (cut.plate, cut.first) {
        (None, None) => true,
        (Some(row), None) => row == 1,
        (None, Some(row)) => row == n,
        (Some(_), Some(_)) => false,
    };
    if outer || sight.inner == Inner::All {
        return true;
    }
    let first = plan.rows[0].0;
    let inner = if lap { &plan.rows[1..n.max(2) - 1] } else { &plan.rows[1..] };
    let doubled = !inner.is_empty() && inner.iter().all(|r| r.0 == 2 * first) && (!lap || plan.rows[n - 1].0 == first);
    let next =
        (cut.plate == Some(2) && cut.first.is_none()) || (lap && cut.plate.is_none() && cut.first == Some(n - 1));
    doubled && next
}

/// One joint of the grid.
fn one(task: &Task<'_>, at: [usize; 3], pitch: f64) -> Result<Hit, Miss> {
    let [plan_at, plate_at, size_at] = at;
    let (plan, plate, size) = (&task.plans[plan_at], task.plates[plate_at], task.sizes[size_at]);
    let (book, sight) = (task.book, &task.sight);
    let hole = size.1;
    let first = plan.rows[0];
    let last = plan.rows[plan.rows.len() - 1];
    let strip = pitch * f64::from(first.0);
    let kind = match plan.meeting {
        Meeting::Single => Kind::Single,
        Meeting::Double if plan.rows.iter().any(|r| r.1 == 1) => Kind::Unequal,
        _ => Kind::Equal,
    };
    let cover = if plan.meeting == Meeting::Lap {
        [0.0, 0.0]
    } else {
        straps(book, kind, plate, strip, (first.0, hole), (last.0, hole)).ok_or(Miss::Making)?
    };
    let edge = margin(book, hole);
    if sight.margin_most > 0.0 && edge > sight.margin_most * hole * (1.0 + SAME) {
        return Err(Miss::Making);
    }
    let joint = joint(plan, plate, size, strip, cover);
    let c = book.convention();
    let whole = solid(&joint, task.stresses);
    let eta = weakest(&joint, task.stresses, &c) / whole;
    let seen = if sight.bearing {
        task.stresses.clone()
    } else {
        Stresses { plate_bearing: None, other_bearing: None, ..task.stresses.clone() }
    };
    let mut least = f64::INFINITY;
    for cut in cuts(&joint, &seen, &c) {
        if counted(plan, sight, &cut) {
            least = least.min(cut.strength);
        }
    }
    let j = least / whole;
    let efficiency = parts(eta.min(j).min(sight.credit), 1e9);
    if efficiency < task.efficiency {
        return Err(Miss::Efficiency);
    }
    let mut gaps = Vec::new();
    let by_book =
        back_pitches(book, pitch, &plan.rows.iter().map(|r| (r.0, hole)).collect::<Vec<_>>(), plan.arrangement);
    for (i, least) in by_book.into_iter().enumerate() {
        let heads = head_room([plan.rows[i], plan.rows[i + 1]], size.0, strip, edge, plan.arrangement);
        gaps.push(row_distance(book, least.expect("a clause for these rows"), heads));
    }
    let broken = eta < j * (1.0 - SAME) || plate < sight.plate_least * (1.0 - SAME) || heads_foul(plan, size.0, strip);
    if task.rules_met && broken {
        return Err(Miss::Rule);
    }
    let mut total = 0;
    for row in &plan.rows {
        total += row.0;
    }
    let sides = if plan.meeting == Meeting::Lap { 1.0 } else { 2.0 };
    let rivets = parts(sides * f64::from(total) / strip * 1000.0, 1e6);
    let mass = match task.stock {
        Some(stock) => parts(weight(plan, &joint, (cover, edge, &gaps), stock) / strip * 1000.0, 1e6),
        None => 0,
    };
    let [e, r, m, p, t] = [
        -i128::from(efficiency),
        i128::from(rivets),
        i128::from(mass),
        -i128::from(parts(pitch, 1e6)),
        i128::from(parts(plate, 1e6)),
    ];
    let key = match task.wanted {
        Wanted::Efficiency => [e, r, m, p, t],
        Wanted::Mass => [m, e, r, p, t],
        Wanted::Rivets => [r, e, m, p, t],
        Wanted::Thickness => [t, e, r, m, p],
    };
    Ok(Hit { plan: plan_at, plate: plate_at, size: size_at, pitch, efficiency, rivets, mass, key })
}

/// Whether button heads, 1.6 rivets wide, foul each other in a row; between rows they have room.
fn heads_foul(plan: &Plan, rivet: f64, strip: f64) -> bool {
    plan.rows.iter().any(|row| strip / f64::from(row.0) < 1.6 * rivet * (1.0 - SAME))
}

/// Mass of a strip, kg: plate B over the lap or the straps, and rivets with one button head of 1.6 d by 0.7 d and a
/// shank of grip and 7/4 d up to the stock, less the holes.
fn weight(plan: &Plan, joint: &Joint, (cover, edge, gaps): ([f64; 2], f64, &[f64]), stock: f64) -> f64 {
    let across = |from: usize| gaps[from..].iter().sum::<f64>() + 2.0 * edge;
    let first_double = plan.rows.iter().position(|r| r.1 == 2).unwrap_or(0);
    let plate = joint.plate();
    let plates = match plan.meeting {
        Meeting::Lap => across(0) * plate,
        Meeting::Single => 2.0 * across(0) * cover[0],
        Meeting::Double => 2.0 * across(0) * cover[0] + 2.0 * across(first_double) * cover[1],
    };
    let mut volume = plates * joint.strip;
    let sides = if plan.meeting == Meeting::Lap { 1.0 } else { 2.0 };
    for row in &joint.rows {
        let d = row.rivet;
        let grip = match plan.meeting {
            Meeting::Lap => 2.0 * plate,
            Meeting::Single => plate + cover[0],
            Meeting::Double if row.planes == 2 => plate + cover[0] + cover[1],
            Meeting::Double => plate + cover[0],
        };
        let shank = PI / 4.0 * d * d * round_up(grip + 1.75 * d, stock);
        let (w, h) = (1.6 * d, 0.7 * d);
        let head = PI * h / 6.0 * (3.0 * (w / 2.0) * (w / 2.0) + h * h);
        let drilled = PI / 4.0 * row.hole * row.hole * grip;
        volume += sides * f64::from(row.rivets) * (shank + head - drilled);
    }
    volume * DENSITY
}

/// All joints of the grid, or why not.
pub fn all(task: &Task<'_>) -> Vec<Result<Hit, Miss>> {
    let mut list = Vec::new();
    for (plan_at, plan) in task.plans.iter().enumerate() {
        for (plate_at, &plate) in task.plates.iter().enumerate() {
            for (size_at, &size) in task.sizes.iter().enumerate() {
                for pitch in pitches(task, plan, plate, size) {
                    list.push(one(task, [plan_at, plate_at, size_at], pitch));
                }
            }
        }
    }
    list
}

/// The best of each form, the best first; of equals the earlier one.
pub fn best(hits: &[Result<Hit, Miss>]) -> Vec<Hit> {
    let mut list: Vec<Hit> = Vec::new();
    for hit in hits.iter().flatten() {
        match list.iter_mut().find(|h| h.plan == hit.plan) {
            Some(old) if hit.key < old.key => *old = *hit,
            Some(_) => {}
            None => list.push(*hit),
        }
    }
    list.sort_by_key(|h| (h.key, h.plan));
    list
}

/// The hits that no other one betters in efficiency without more mass, lightest first; of equals in both the one with
/// fewer rivets, then the larger pitch, then the earlier one.
pub fn front(hits: &[Result<Hit, Miss>]) -> Vec<Hit> {
    let mut sorted: Vec<Hit> = hits.iter().flatten().copied().collect();
    sorted.sort_by(|a, b| {
        let key = |h: &Hit| (h.mass, -i128::from(h.efficiency), h.rivets, -(h.pitch * 1e6).round());
        key(a).partial_cmp(&key(b)).expect("numbers")
    });
    let mut list: Vec<Hit> = Vec::new();
    for hit in sorted {
        if list.last().is_none_or(|last| hit.efficiency > last.efficiency) {
            list.push(hit);
        }
    }
    list
}
