//! Areas of the sheet with sides along it.

use super::super::canvas::Point;
use crate::math::{larger, smaller};

/// From the upper left corner to the lower right one, mm of the sheet.
#[derive(Clone, Copy)]
pub(super) struct Area {
    pub x0: f64,
    pub y0: f64,
    pub x1: f64,
    pub y1: f64,
}

impl Area {
    /// Of half a width and half a height about its middle.
    pub fn about(middle: Point, wide: f64, high: f64) -> Self {
        Area { x0: middle.x - wide, y0: middle.y - high, x1: middle.x + wide, y1: middle.y + high }
    }

    pub fn width(&self) -> f64 {
        self.x1 - self.x0
    }

    pub fn height(&self) -> f64 {
        self.y1 - self.y0
    }

    /// With another one.
    pub fn with(&self, other: &Area) -> Self {
        Area {
            x0: smaller(self.x0, other.x0),
            y0: smaller(self.y0, other.y0),
            x1: larger(self.x1, other.x1),
            y1: larger(self.y1, other.y1),
        }
    }

    /// With a point.
    pub fn reaching(&self, p: Point) -> Self {
        self.with(&Area::about(p, 0.0, 0.0))
    }

    pub fn meets(&self, other: &Area) -> bool {
        self.x0 < other.x1 && other.x0 < self.x1 && self.y0 < other.y1 && other.y0 < self.y1
    }

    pub fn contains(&self, other: &Area) -> bool {
        other.x0 >= self.x0 && other.x1 <= self.x1 && other.y0 >= self.y0 && other.y1 <= self.y1
    }

    pub fn holds(&self, p: Point) -> bool {
        p.x >= self.x0 && p.x <= self.x1 && p.y >= self.y0 && p.y <= self.y1
    }

    /// Whether a stroke runs through it.
    pub fn crossed(&self, a: Point, b: Point) -> bool {
        let (mut enter, mut leave) = (0.0, 1.0);
        for (from, to, low, high) in [(a.x, b.x, self.x0, self.x1), (a.y, b.y, self.y0, self.y1)] {
            if from == to {
                if from <= low || from >= high {
                    return false;
                }
                continue;
            }
            let (s, t) = ((low - from) / (to - from), (high - from) / (to - from));
            enter = larger(enter, smaller(s, t));
            leave = smaller(leave, larger(s, t));
        }
        enter < leave
    }

    pub fn moved(&self, dx: f64, dy: f64) -> Self {
        Area { x0: self.x0 + dx, y0: self.y0 + dy, x1: self.x1 + dx, y1: self.y1 + dy }
    }
}
