//! Where everything of a group goes on the sheet: scale, scale of forces, load, lanes of the dimensions.

use heapless::Vec;

use super::super::Units;
use super::super::canvas::{Point, TEXT_SIZE, at, width};
use super::super::dimension::{ABOVE, PARTS, label};
use super::super::layout::{SCALES, Scale};
use super::Known;
use super::area::Area;
use super::words;
use crate::group::MAX_RIVETS;
use crate::math::{abs, larger, smaller, sqrt};

/// Length of the arrow of the load, mm of the sheet.
const LOAD: f64 = 22.0;
/// Furthest that a load lies off the rivets where it is drawn nearer than to scale.
const NEAR: f64 = 36.0;
/// Longest force on a rivet, shortest and longest wish.
const FORCE: (f64, f64) = (9.0, 30.0);
/// Widest hole.
const WIDEST: f64 = 16.0;
/// Columns or rows closer than this (mm, true) are one.
const SAME: f64 = 0.005;
/// Least distance of two rows whose dimension is still legible, mm of the sheet.
const ROWS_APART: f64 = 4.8;
/// From what is drawn to a dimension.
const LANE: f64 = 7.0;
/// From the text over one arm to the line of the other, which has its own text before it.
const OVER: f64 = ABOVE + TEXT_SIZE + 1.0;
/// An eccentricity shorter than this (mm of the sheet) is not dimensioned.
const NO_ARM: f64 = 0.6;

/// Places along one axis, in order.
pub(super) type Lines = Vec<f64, MAX_RIVETS>;

/// The different places of rivets along an axis.
pub(super) fn lines(places: impl Iterator<Item = f64>) -> Lines {
    let mut list = Lines::new();
    for place in places {
        if list.iter().any(|x| abs(x - place) <= SAME) {
            continue;
        }
        // Into its place among the greater ones; there are no more of them than rivets.
        let mut next = place;
        for x in &mut list {
            if *x > next {
                core::mem::swap(x, &mut next);
            }
        }
        let _ = list.push(next);
    }
    list
}

/// Neighbours of a list.
pub(super) fn gaps(list: &[f64]) -> impl Iterator<Item = (f64, f64)> + '_ {
    list.iter().copied().zip(list.iter().copied().skip(1))
}

/// The load on the sheet.
#[derive(Clone, Copy)]
pub(super) struct LoadPlace {
    /// Its point.
    pub point: Point,
    /// Its arrow.
    pub from: Point,
    pub tip: Point,
    /// Whether it lies nearer than to scale, along x and y.
    pub nearer: (bool, bool),
}

/// How the dimensions of the rows are written.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum RowWords {
    Upright,
    Level,
}

/// Where everything goes.
pub(super) struct Plan {
    pub scale: Scale,
    /// Force, N, for a millimetre of the sheet, and for ten in the unit of the sheet.
    pub per: f64,
    pub per_ten: f64,
    origin: Point,
    pub load: Option<LoadPlace>,
    /// The holes.
    pub holes: Area,
    /// Everything but dimensions and labels.
    pub reach: Area,
    /// Columns and rows that are dimensioned from one to the next; `None`: places are listed.
    pub chains: Option<(Lines, Lines, RowWords)>,
    /// Lines of the dimensions: below for columns, beside for rows, above and right for eccentricities.
    pub columns_y: f64,
    pub rows_x: f64,
    /// Whether the rows are dimensioned on the right: the load is on the left.
    pub rows_right: bool,
    pub arm_y: Option<f64>,
    pub arm_x: Option<f64>,
}

impl Plan {
    /// A true place on the sheet.
    pub fn at(&self, [x, y]: [f64; 2]) -> Point {
        at(self.origin.x + self.scale.factor * x, self.origin.y - self.scale.factor * y)
    }

    /// The largest scale that fits into the view. The load lies in its place, unless the rivets would be too small then.
    pub fn choose(known: &Known<'_>, view: Area, listed: bool) -> Plan {
        let chosen =
            |limit: f64| SCALES.iter().find_map(|scale| Plan::new(known, *scale, limit, listed).centred(known, view));
        let smallest = SCALES.last().copied().unwrap_or(Scale { factor: 1e-4, name: "1:10000" });
        match (chosen(f64::INFINITY), chosen(NEAR)) {
            (Some(full), Some(near)) if 2.0 * full.scale.factor >= near.scale.factor => full,
            (_, Some(near)) => near,
            (Some(full), None) => full,
            // Whatever the group, it fits at the smallest scale; if a text of the sheet were longer, it would be here.
            (None, None) => {
                let plan = Plan::new(known, smallest, NEAR, true);
                let all = plan.whole(known);
                plan.middled(all, view)
            }
        }
    }

    fn new(known: &Known<'_>, scale: Scale, limit: f64, listed: bool) -> Plan {
        let s = scale.factor;
        let rivets = known.found.rivets();
        let spot = |[x, y]: [f64; 2]| at(s * x, -s * y);
        let nothing = Area { x0: f64::INFINITY, y0: f64::INFINITY, x1: f64::NEG_INFINITY, y1: f64::NEG_INFINITY };
        let hole = |area: Area, r: &crate::group::RivetLoad| {
            area.with(&Area::about(spot(r.place), 0.5 * s * r.hole, 0.5 * s * r.hole))
        };
        let holes = rivets.iter().fold(nothing, hole);
        let (per, per_ten) = force_scale(known, s);
        let mut reach = Area { x0: holes.x0 - 2.0, y0: holes.y0 - 2.0, x1: holes.x1 + 2.0, y1: holes.y1 + 2.0 };
        for r in rivets {
            let p = spot(r.place);
            for [x, y] in [r.direct, r.force] {
                reach = reach.reaching(at(p.x + x / per, p.y - y / per));
            }
        }
        reach = reach.reaching(spot(known.found.centroid));
        let load = known.load.has_force().then(|| place_load(known, s, holes, limit));
        if let Some(load) = load {
            for p in [load.point, load.from, load.tip] {
                reach = reach.reaching(p);
            }
        }
        let chains = if listed { None } else { chains(known, s) };
        let arm = |force: f64, arm: f64, nearer: bool| force != 0.0 && (nearer || s * abs(arm) > NO_ARM);
        let [ex, ey] = known.arm();
        let nearer = load.map_or((false, false), |l| l.nearer);
        let has = known.load.has_force();
        let arm_y = (has && arm(known.load.y, ex, nearer.0)).then_some(reach.y0 - LANE);
        let rows_right = load.is_some_and(|l| l.point.x < holes.x0);
        let taken = match &chains {
            Some((_, rows, words)) if rows_right => 7.0 + rows_room(known.units, rows, *words),
            _ => 2.0,
        };
        let beside = reach.x1 + LANE + taken;
        let beside = match (arm_y, load) {
            // The text over the other arm may reach further to the right than all that is drawn.
            (Some(_), Some(l)) => larger(beside, over_arm(known, l.point.x, spot(known.found.centroid).x).1 + OVER),
            _ => beside,
        };
        let arm_x = (has && arm(known.load.x, ey, nearer.1)).then_some(beside);
        Plan {
            scale,
            per,
            per_ten,
            origin: at(0.0, 0.0),
            load,
            holes,
            reach,
            chains,
            columns_y: reach.y1 + LANE,
            rows_x: if rows_right { reach.x1 + LANE } else { reach.x0 - LANE },
            rows_right,
            arm_y,
            arm_x,
        }
    }

    /// With its dimensions.
    fn whole(&self, known: &Known<'_>) -> Area {
        let mut all = self.reach;
        if let Some((columns, rows, words)) = &self.chains {
            if columns.len() > 1 {
                all.y1 = self.columns_y + 7.0;
            }
            if rows.len() > 1 {
                let wide = rows_room(known.units, rows, *words);
                if self.rows_right {
                    all.x1 = self.rows_x + wide;
                } else {
                    all.x0 = self.rows_x - wide;
                }
            }
        }
        if let Some(y) = self.arm_y {
            all.y0 = y - 5.0;
            // Its text may be longer than the dimension.
            if let Some(load) = self.load {
                let (left, right) = over_arm(known, load.point.x, self.at(known.found.centroid).x);
                all = all.reaching(at(left, y)).reaching(at(right, y));
            }
        }
        if let Some(x) = self.arm_x {
            all.x1 = larger(all.x1, x + 1.5);
        }
        all
    }

    /// The same in the middle of the view, where it fits.
    fn centred(self, known: &Known<'_>, view: Area) -> Option<Plan> {
        let all = self.whole(known);
        let widest_hole = known.found.rivets().iter().fold(0.0, |d, r| larger(d, r.hole));
        let fits = all.width() <= view.width() && all.height() <= view.height();
        (fits && self.scale.factor * widest_hole <= WIDEST).then(|| self.middled(all, view))
    }

    /// The same with its whole area in the middle of the view.
    fn middled(mut self, all: Area, view: Area) -> Plan {
        let dx = 0.5 * (view.x0 + view.x1) - 0.5 * (all.x0 + all.x1);
        let dy = 0.5 * (view.y0 + view.y1) - 0.5 * (all.y0 + all.y1);
        let moved = |p: Point| at(p.x + dx, p.y + dy);
        self.origin = moved(self.origin);
        self.holes = self.holes.moved(dx, dy);
        self.reach = self.reach.moved(dx, dy);
        self.load = self.load.map(|l| LoadPlace { point: moved(l.point), from: moved(l.from), tip: moved(l.tip), ..l });
        self.columns_y += dy;
        self.rows_x += dx;
        self.arm_y = self.arm_y.map(|y| y + dy);
        self.arm_x = self.arm_x.map(|x| x + dx);
        self
    }
}

/// Where the text over the arm along x, from the load to the centroid, begins and ends.
fn over_arm(known: &Known<'_>, load: f64, centroid: f64) -> (f64, f64) {
    let (middle, half) = (0.5 * (load + centroid), 0.5 * words::arm(known, 0).map_or(0.0, |words| width(&words)));
    (middle - half, middle + half)
}

/// Room for the words beside the dimensions of the rows.
fn rows_room(units: Units, rows: &[f64], words: RowWords) -> f64 {
    let wide = |(a, b): (f64, f64)| label("", units, b - a).map_or(0.0, |words| width(&words));
    match words {
        RowWords::Upright => 5.0,
        RowWords::Level => 2.0 + gaps(rows).map(wide).fold(0.0, larger),
    }
}

/// Columns and rows, where rivets stand on few enough lines and the rows far enough apart for their dimensions.
fn chains(known: &Known<'_>, s: f64) -> Option<(Lines, Lines, RowWords)> {
    let rivets = known.found.rivets();
    let (columns, rows) = (lines(rivets.iter().map(|r| r.place[0])), lines(rivets.iter().map(|r| r.place[1])));
    let few = columns.len() <= PARTS && rows.len() <= PARTS;
    if !few || columns.len().saturating_add(rows.len()) > rivets.len().saturating_add(2) {
        return None;
    }
    let least = gaps(&rows).fold(f64::INFINITY, |least, (a, b)| smaller(least, s * (b - a)));
    let upright = gaps(&rows).all(|(a, b)| {
        let words = label("", known.units, b - a).map_or(0.0, |words| width(&words));
        words + 1.0 <= s * (b - a)
    });
    if least < ROWS_APART {
        return None;
    }
    Some((columns, rows, if upright { RowWords::Upright } else { RowWords::Level }))
}

/// Newtons for a millimetre of the sheet, and the unit of the sheet for ten: 1, 2, 2.5, 4 or 5 of a decade.
fn force_scale(known: &Known<'_>, s: f64) -> (f64, f64) {
    let rivets = known.found.rivets();
    let mut nearest = f64::INFINITY;
    for (a, after) in rivets.iter().zip(1_usize..) {
        for b in rivets.iter().skip(after) {
            let ([ax, ay], [bx, by]) = (a.place, b.place);
            let (dx, dy) = (bx - ax, by - ay);
            nearest = smaller(nearest, s * sqrt(dx * dx + dy * dy));
        }
    }
    let long = smaller(larger(0.85 * nearest, FORCE.0), FORCE.1);
    let size = |[x, y]: [f64; 2]| sqrt(x * x + y * y);
    let most = rivets.iter().fold(0.0, |most, r| larger(most, larger(size(r.force), size(r.direct))));
    let unit = words::newtons(known.units);
    for decade in DECADES {
        for step in [1.0, 2.0, 2.5, 4.0, 5.0] {
            let ten = step * decade;
            let per = 0.1 * ten * unit;
            if most <= per * long {
                return (per, ten);
            }
        }
    }
    (larger(most, 1.0) / long, 10.0 * larger(most, 1.0) / (long * unit))
}

/// Powers of ten from the least force to the greatest.
const DECADES: [f64; 19] =
    [1e-9, 1e-8, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 0.01, 0.1, 1.0, 10.0, 100.0, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

/// Where the load is drawn: its point, and its arrow on that side of it where the rivets are not.
fn place_load(known: &Known<'_>, s: f64, holes: Area, limit: f64) -> LoadPlace {
    let load = known.load;
    let (x, y) = (s * load.at_x, -s * load.at_y);
    let near = |v: f64, low: f64, high: f64| larger(smaller(v, high + limit), low - limit);
    let point = at(near(x, holes.x0, holes.x1), near(y, holes.y0, holes.y1));
    let size = sqrt(load.x * load.x + load.y * load.y);
    let (dx, dy) = (LOAD * load.x / size, -LOAD * load.y / size);
    // From the point on, or up to it.
    let on = (point, at(point.x + dx, point.y + dy));
    let to = (at(point.x - dx, point.y - dy), point);
    let clear = Area { x0: holes.x0 - 3.0, y0: holes.y0 - 3.0, x1: holes.x1 + 3.0, y1: holes.y1 + 3.0 };
    let free = |(a, b): (Point, Point)| !clear.crossed(a, b);
    // A steep load hangs below its point, under the dimension of its arm; a flat one lies beyond it.
    let middle = 0.5 * (holes.x0 + holes.x1);
    let on_first = if abs(dy) >= abs(dx) { dy > 0.0 } else { (dx > 0.0) == (point.x >= middle) };
    let (first, second) = if on_first { (on, to) } else { (to, on) };
    let (from, tip) = if free(first) || !free(second) { first } else { second };
    LoadPlace { point, from, tip, nearer: (point.x != x, point.y != y) }
}
