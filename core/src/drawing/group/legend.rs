//! The column beside the view: sizes, centres, scale of forces, force on each rivet.

use core::fmt::{self, Write};

use heapless::String;

use super::super::canvas::{Anchor, Canvas, Line, Point, Text, at};
use super::super::dimension::Words;
use super::super::title::{LEADING, WIDE, wrap};
use super::Known;
use super::marks::{HEAD, SMALL_HEAD, arrow};
use super::plan::Plan;
use super::words::{SIZES, bare, figure, place, runs, size, sizes, style};
use crate::bounds::Unit;
use crate::text;

/// Columns of the list of forces.
const ABREAST: usize = 3;

/// The column beside the view: sizes, centres, scale of forces, forces.
pub(super) struct Legend<'c> {
    canvas: &'c mut dyn Canvas,
    x: f64,
    y: f64,
}

impl<'c> Legend<'c> {
    /// Begins at the top.
    pub fn new(canvas: &'c mut dyn Canvas, top: Point) -> Self {
        Legend { canvas, x: top.x, y: top.y }
    }

    fn text(&mut self, dx: f64, content: &str, key: &'static str, row: usize) -> fmt::Result {
        let at = at(self.x + dx, self.y);
        self.canvas.text(&Text { content, at, anchor: Anchor::Start, upright: false, key, row })
    }

    /// A line of text, wrapped.
    fn line(&mut self, words: &str, key: &'static str) -> fmt::Result {
        wrap(words, WIDE - 4.0, &mut |part| {
            let done = self.text(0.0, part, key, 0);
            self.y += LEADING;
            done
        })
    }

    /// Sizes of the rivets.
    fn sizes(&mut self, known: &Known<'_>) -> fmt::Result {
        let sizes = sizes(known);
        if sizes.len() > SIZES {
            return self.line("Holes and rivets: see the notes", "hole");
        }
        for one in &sizes {
            let mut words: String<240> = String::new();
            if sizes.len() > 1 {
                runs(&mut words, known.found.rivets().iter().map(|r| (r.hole, r.rivet) == *one))?;
                words.write_str(": ")?;
            }
            size(&mut words, known.units, *one)?;
            self.line(&words, "hole")?;
        }
        Ok(())
    }

    /// Centroid, instantaneous centre, moment.
    fn centres(&mut self, known: &Known<'_>) -> fmt::Result {
        let mut words = Words::new();
        words.write_str("G, centroid, x, y: ")?;
        place(&mut words, known.units, known.found.centroid)?;
        self.line(&words, "centroid")?;
        words.clear();
        match known.found.centre {
            Some(centre) => {
                words.write_str("C, instant. centre: ")?;
                place(&mut words, known.units, centre)?;
            }
            None => words.write_str("Load through G: no turning")?,
        }
        self.line(&words, "centre")?;
        if known.found.centre.is_some() {
            words.clear();
            words.write_str("Moment about G: ")?;
            figure(&mut words, known.units, Unit::NewtonMillimetre, known.found.moment, 6)?;
            self.line(&words, "moment")?;
        }
        Ok(())
    }

    /// The scale of forces, with the lines that show them.
    fn scale(&mut self, known: &Known<'_>, plan: &Plan) -> fmt::Result {
        self.y += 1.5;
        let mut words = Words::new();
        words.write_str("Forces: 10 mm drawn = ")?;
        // It is 1, 2, 2.5, 4 or 5 of a decade: whole, however small.
        text::write_plain(&mut words, plan.per_ten, 9).map_err(|_| fmt::Error)?;
        write!(words, " {}", style(known.units).symbol(Unit::Newton))?;
        self.line(&words, "force_scale")?;
        let shares = known.shares();
        let samples = [
            (Line::Force, "force on a rivet", HEAD, true),
            (Line::Critical, "force on the critical rivet", HEAD, true),
            (Line::Direct, "direct share", SMALL_HEAD, shares),
            (Line::Turning, "turning share", SMALL_HEAD, shares),
        ];
        for (kind, name, head, shown) in samples {
            if shown {
                let y = self.y - 1.2;
                arrow(self.canvas, kind, at(self.x, y), at(self.x + 10.0, y), head)?;
                self.text(13.0, name, "note", 0)?;
                self.y += LEADING;
            }
        }
        Ok(())
    }

    /// The force on each rivet, as far down as `end`.
    fn forces(&mut self, known: &Known<'_>, end: f64) -> fmt::Result {
        self.y += 1.5;
        let rivets = known.found.rivets();
        let high = rivets.len().div_ceil(ABREAST);
        let rows = u32::try_from(high).map_or(0.0, f64::from);
        if self.y + LEADING * rows > end {
            return self.line("Force on each rivet: see the working", "note");
        }
        let mut words = Words::new();
        write!(words, "Force on each rivet, {}:", style(known.units).symbol(Unit::Newton))?;
        self.line(&words, "note")?;
        let top = self.y;
        let mut all = rivets.iter().zip(1_usize..);
        for dx in [0.0, 26.0, 52.0] {
            self.y = top;
            for (r, number) in all.by_ref().take(high) {
                words.clear();
                write!(words, "{number}: ")?;
                bare(&mut words, style(known.units).convert(Unit::Newton, r.resultant), 4)?;
                self.text(dx, &words, "rivet_force", number)?;
                self.y += LEADING;
            }
        }
        Ok(())
    }

    /// All of it, as far down as `end`.
    pub fn write(mut self, known: &Known<'_>, plan: &Plan, end: f64) -> fmt::Result {
        self.sizes(known)?;
        self.centres(known)?;
        self.scale(known, plan)?;
        self.forces(known, end)
    }
}
