//! The parts of the written sheet that are tables or lists: rivets, cut sizes, masses, holes.

use core::fmt::{self, Write};

use super::holes::Hole;
use super::length::HeadSize;
use super::order::Run;
use super::plies::PlateCut;
use super::table::{Cell, Pen};
use super::write::{Style, Units};
use super::{RivetLine, ShopSheet};
use crate::joint::JointKind;
use crate::quantities::Length;
use crate::rules::{Label, Rounding};
use crate::step::Num;

impl<N: Num> ShopSheet<N> {
    pub(super) fn rivet_table(&self, pen: &mut Pen<'_>) -> fmt::Result {
        pen.heading("Rivets")?;
        let rule = self.order.length_rule();
        pen.line("Length rule", |p| {
            write!(p, "{} ({}), {}; ", rule.name(), rule.key(), rule.formula().equation())?;
            write!(p, "{}, {}", rule.source(), rule.label().word())
        })?;
        pen.line("Stock", |p| match self.order.stock().step() {
            None => p.write_str("cut to the length by the rule"),
            Some(step) => {
                p.write_str("every ")?;
                p.length(step.to_mm())?;
                p.write_str(match self.order.stock().rounding() {
                    Rounding::Down => ", the next below",
                    Rounding::Nearest => ", the nearest",
                    Rounding::Up => ", the next above",
                })
            }
        })?;
        pen.blank()?;
        let columns = [
            ("row", 4),
            ("planes", 6),
            ("number", 8),
            ("rivet", 8),
            ("hole", 8),
            ("grip", 9),
            ("allowance", 9),
            ("length", 9),
            ("stock", 9),
        ];
        pen.table_head(&columns)?;
        for line in self.rivets() {
            pen.row(&columns, |pen, at| rivet_cell(&pen.style, line, at))?;
        }
        pen.blank()?;
        for (rivet, length, count) in self.to_order() {
            pen.line("To order", |p| {
                p.count(count)?;
                p.write_str(" rivets ")?;
                p.length(rivet.to_mm())?;
                p.write_str(" by ")?;
                p.length(length.to_mm())?;
                p.write_str(" under the head")
            })?;
        }
        let mut before = None;
        for line in self.rivets() {
            if before != Some(line.rivet) {
                head(pen, "Set head", line, &line.set_head)?;
                head(pen, "Closing head", line, &line.closing_head)?;
            }
            before = Some(line.rivet);
        }
        Ok(())
    }

    pub(super) fn cut_sizes(&self, pen: &mut Pen<'_>) -> fmt::Result {
        pen.heading("Cut sizes")?;
        let unequal = self.joint.form().unequal();
        let double = self.joint.form().kind() == JointKind::DoubleStrap;
        let wide = if unequal {
            "Wide strap"
        } else if double {
            "First strap"
        } else {
            "Strap"
        };
        let narrow = if unequal { "Narrow strap" } else { "Second strap" };
        let parts = [("Overlap of the plates", self.cuts.overlap), (wide, self.cuts.wide), (narrow, self.cuts.narrow)];
        for (label, cut) in parts.iter().filter_map(|(label, cut)| cut.as_ref().map(|cut| (*label, cut))) {
            pen.line(label, |p| size(p, cut))?;
        }
        Ok(())
    }

    pub(super) fn weights(&self, pen: &mut Pen<'_>) -> fmt::Result {
        pen.heading("Masses")?;
        pen.line("Density", |p| {
            p.plain(self.order.density().to_kg_m3(), 3)?;
            p.write_str(" kg/m3, ")?;
            p.write_str(match self.order.density_label {
                Label::Practice => "steel, common practice (PRACTICE)",
                _ => "as given",
            })
        })?;
        let m = &self.masses;
        pen.line("Rivets as bought", |p| p.mass(m.rivets.value()))?;
        if self.joint.form().kind() == JointKind::Lap {
            pen.line("Plate B over the lap", |p| p.mass(m.overlap.value()))?;
        } else {
            pen.line("Straps before drilling", |p| p.mass(m.straps.value()))?;
        }
        pen.line("Drilled out", |p| p.mass(m.holes.value()))?;
        pen.line("What the seam adds to plates that meet edge to edge", |p| p.mass(m.total.value()))?;
        pen.line("The same for each unit of seam", |p| match p.style.units {
            Units::Millimetre => {
                p.fixed(m.per_metre.value(), 3)?;
                p.unit("kg/m")
            }
            Units::Inch => {
                let (pounds, _) = p.style.weight(m.per_metre.value());
                p.fixed(pounds * Length::foot(1.0).to_m(), 3)?;
                p.unit("lb/ft")
            }
        })
    }

    pub(super) fn hole_table(&self, pen: &mut Pen<'_>) -> fmt::Result {
        pen.heading("Hole centres")?;
        let closed = self.layout().closed();
        pen.line("Datum", |p| {
            p.write_str(match self.order.run() {
                Run::Straight { .. } => "x along the seam from the end of the plate",
                Run::Girth { .. } => {
                    "x along the circle of holes from a mark at a hole of row 1, angle from the same mark"
                }
                Run::Tie => {
                    "x across the width of the tie from its edge; rows on common gauge lines, centred on the width"
                }
            })?;
            p.write_str(match self.joint.form().kind() {
                JointKind::Lap => "; y from the edge of plate B, which is next to row 1",
                _ => "; y from the butt line, left of it seen along x",
            })
        })?;
        let (first, count) = (pen.style.first, pen.style.count);
        let page = self.layout().page(first, count);
        let (listed, total) = (page.len(), self.layout().total());
        pen.line("Listed", |p| {
            let listed = u32::try_from(listed).unwrap_or(u32::MAX);
            p.count(listed)?;
            if listed > 0 {
                p.write_str(" (no. ")?;
                p.count(first.max(1))?;
                p.write_str(" to ")?;
                p.count(first.max(1).saturating_add(listed).saturating_sub(1))?;
                p.write_str(")")?;
            }
            p.write_str(" of ")?;
            p.count(total)?;
            p.write_str(" holes")
        })?;
        if listed == 0 {
            return Ok(());
        }
        pen.blank()?;
        let columns = [("no.", 9), ("side", 6), ("row", 4), ("in row", 8), ("x", 12), ("y", 12), ("angle, deg", 11)];
        let columns = columns.get(..if closed { 7 } else { 6 }).unwrap_or(&[]);
        pen.table_head(columns)?;
        for hole in page {
            pen.row(columns, |pen, at| hole_cell(&pen.style, &hole, at))?;
        }
        Ok(())
    }
}

fn head<N: Num>(pen: &mut Pen<'_>, label: &str, line: &RivetLine<N>, head: &HeadSize<N>) -> fmt::Result {
    pen.line(label, |p| {
        p.write_str(head.form.name())?;
        p.write_str(" on rivets of ")?;
        p.length(line.rivet.to_mm())?;
        p.write_str(": ")?;
        p.length(head.width.value())?;
        p.write_str(" wide, ")?;
        p.length(head.height.value())?;
        p.write_str(if head.form.sunk() { " deep" } else { " high" })?;
        p.write_str(" (")?;
        p.plain(head.form.width(), 2)?;
        p.write_str(" d and ")?;
        p.plain(head.form.height(), 2)?;
        write!(p, " d: {}, {})", head.form.source(), head.form.label().word())
    })
}

fn size<N: Num>(p: &mut Pen<'_>, cut: &PlateCut<N>) -> fmt::Result {
    p.length(cut.width.value())?;
    p.write_str(" across by ")?;
    p.length(cut.length.value())?;
    p.write_str(" along, ")?;
    p.length(cut.thickness)?;
    p.write_str(" thick, ")?;
    p.mass(cut.mass.value())
}

fn rivet_cell<N: Num>(style: &Style, line: &RivetLine<N>, at: usize) -> Result<Cell, fmt::Error> {
    match at {
        0 => style.number(f64::from(line.row), 0),
        1 => style.number(f64::from(line.planes), 0),
        2 => style.number(f64::from(line.count), 0),
        3 => style.cell_length(line.rivet.to_mm()),
        4 => style.cell_length(line.hole.to_mm()),
        5 => style.cell_length(line.grip.value()),
        6 => style.cell_length(line.allowance.value()),
        7 => style.cell_length(line.length.value()),
        _ => style.cell_length(line.stock.value()),
    }
}

fn hole_cell(style: &Style, hole: &Hole, at: usize) -> Result<Cell, fmt::Error> {
    match at {
        0 => style.number(f64::from(hole.number), 0),
        1 => {
            let mut cell = Cell::new();
            cell.push_str(hole.side.word()).map_err(|_| fmt::Error)?;
            Ok(cell)
        }
        2 => style.number(f64::from(hole.row), 0),
        3 => style.number(f64::from(hole.in_row), 0),
        4 => style.cell_length(hole.x.to_mm()),
        5 => style.cell_length(hole.y.to_mm()),
        _ => style.number(hole.angle.unwrap_or(0.0), 4),
    }
}
