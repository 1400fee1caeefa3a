//! DXF, release 12, ASCII: group codes and values on lines of their own.

use core::fmt::{self, Write};

use super::canvas::{Anchor, Canvas, Line, Point, TEXT_SIZE, Text};
use crate::text;

/// The header, of the oldest form that every CAD program reads.
const HEAD: &str =
    "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1009\n9\n$INSBASE\n10\n0.0\n20\n0.0\n30\n0.0\n9\n$LTSCALE\n40\n";
/// Kinds of lines and layers.
const TABLES: &str = "0\nENDSEC\n\
0\nSECTION\n2\nTABLES\n\
0\nTABLE\n2\nLTYPE\n70\n3\n\
0\nLTYPE\n2\nCONTINUOUS\n70\n0\n3\nSolid line\n72\n65\n73\n0\n40\n0.0\n\
0\nLTYPE\n2\nDASHED\n70\n0\n3\nHidden outline\n72\n65\n73\n2\n40\n3.75\n49\n3.0\n49\n-0.75\n\
0\nLTYPE\n2\nCENTER\n70\n0\n3\nCentre line\n72\n65\n73\n4\n40\n7.75\n49\n6.0\n49\n-0.75\n49\n0.25\n49\n-0.75\n\
0\nENDTAB\n\
0\nTABLE\n2\nLAYER\n70\n6\n\
0\nLAYER\n2\n0\n70\n0\n62\n7\n6\nCONTINUOUS\n\
0\nLAYER\n2\nOUTLINE\n70\n0\n62\n7\n6\nCONTINUOUS\n\
0\nLAYER\n2\nHOLES\n70\n0\n62\n1\n6\nCONTINUOUS\n\
0\nLAYER\n2\nCENTRE\n70\n0\n62\n4\n6\nCENTER\n\
0\nLAYER\n2\nDIMENSIONS\n70\n0\n62\n3\n6\nCONTINUOUS\n\
0\nLAYER\n2\nTEXT\n70\n0\n62\n2\n6\nCONTINUOUS\n\
0\nENDTAB\n\
0\nTABLE\n2\nSTYLE\n70\n1\n0\nSTYLE\n2\nSTANDARD\n70\n0\n40\n0.0\n41\n1.0\n50\n0.0\n71\n0\n42\n2.5\n3\ntxt\n4\n\n\
0\nENDTAB\n0\nENDSEC\n\
0\nSECTION\n2\nENTITIES\n";

/// Height of capitals for the em.
const CAPITALS: f64 = 2.5 / 3.5;

/// The drawing as it is written.
pub(super) struct Dxf<'o> {
    out: &'o mut dyn Write,
    /// Millimetres of the joint for a millimetre of the sheet.
    full: f64,
}

impl<'o> Dxf<'o> {
    /// Writes the beginning; `scale` is that of the sheet.
    pub fn begin(out: &'o mut dyn Write, scale: f64) -> Result<Self, fmt::Error> {
        out.write_str(HEAD)?;
        let full = 1.0 / scale;
        // Dashes of the sheet's size, so that a print to the sheet's scale looks like the sheet.
        text::write_fixed(out, full, 6).map_err(|_| fmt::Error)?;
        out.write_str("\n")?;
        out.write_str(TABLES)?;
        let dxf = Dxf { out, full };
        Ok(dxf)
    }

    /// Writes the end.
    pub fn end(self) -> fmt::Result {
        self.out.write_str("0\nENDSEC\n0\nEOF\n")
    }

    fn group(&mut self, code: &str, value: &str) -> fmt::Result {
        self.out.write_str(code)?;
        self.out.write_str("\n")?;
        self.out.write_str(value)?;
        self.out.write_str("\n")
    }

    /// A real that is given in millimetres of the sheet.
    fn real(&mut self, code: &str, sheet: f64) -> fmt::Result {
        self.bare(code, sheet * self.full)
    }

    fn bare(&mut self, code: &str, value: f64) -> fmt::Result {
        self.out.write_str(code)?;
        self.out.write_str("\n")?;
        text::write_fixed(self.out, value, 6).map_err(|_| fmt::Error)?;
        self.out.write_str("\n")
    }

    /// A point, y up.
    fn point(&mut self, codes: [&str; 3], p: Point) -> fmt::Result {
        let [x, y, z] = codes;
        self.real(x, p.x)?;
        self.real(y, -p.y)?;
        self.group(z, "0.0")
    }

    fn entity(&mut self, name: &str, kind: Line) -> fmt::Result {
        self.group("0", name)?;
        self.group("8", layer(kind))?;
        if kind == Line::Hidden { self.group("6", "DASHED") } else { Ok(()) }
    }
}

/// The layer of a kind of line.
const fn layer(kind: Line) -> &'static str {
    match kind {
        Line::Outline | Line::Hidden | Line::Break => "OUTLINE",
        Line::Hole => "HOLES",
        Line::Centre | Line::Axis | Line::Cut => "CENTRE",
        Line::Dimension | Line::Hatch => "DIMENSIONS",
        Line::Force | Line::Critical | Line::Load | Line::Direct | Line::Turning => "DIMENSIONS",
        Line::Frame | Line::Rule => "TEXT",
    }
}

impl Canvas for Dxf<'_> {
    fn line(&mut self, kind: Line, from: Point, to: Point) -> fmt::Result {
        self.entity("LINE", kind)?;
        self.point(["10", "20", "30"], from)?;
        self.point(["11", "21", "31"], to)
    }

    fn circle(&mut self, kind: Line, centre: Point, radius: f64) -> fmt::Result {
        self.entity("CIRCLE", kind)?;
        self.point(["10", "20", "30"], centre)?;
        self.real("40", radius)
    }

    /// A polyline with a bulge: the tangent of a quarter of the angle, which is rise over half the chord.
    fn arc(&mut self, kind: Line, from: Point, to: Point, rise: f64) -> fmt::Result {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let half = 0.5 * crate::math::sqrt(dx * dx + dy * dy);
        self.entity("POLYLINE", kind)?;
        self.group("66", "1")?;
        self.point(["10", "20", "30"], Point { x: 0.0, y: 0.0 })?;
        self.entity("VERTEX", kind)?;
        self.point(["10", "20", "30"], from)?;
        if half > 0.0 {
            self.bare("42", -rise / half)?;
        }
        self.entity("VERTEX", kind)?;
        self.point(["10", "20", "30"], to)?;
        self.entity("SEQEND", kind)
    }

    fn triangle(&mut self, corners: [Point; 3]) -> fmt::Result {
        let [a, b, c] = corners;
        self.entity("SOLID", Line::Dimension)?;
        self.point(["10", "20", "30"], a)?;
        self.point(["11", "21", "31"], b)?;
        self.point(["12", "22", "32"], c)?;
        self.point(["13", "23", "33"], c)
    }

    fn text(&mut self, text: &Text<'_>) -> fmt::Result {
        self.group("0", "TEXT")?;
        let words = matches!(text.key, "note" | "title" | "caption" | "caution");
        self.group("8", if words { "TEXT" } else { "DIMENSIONS" })?;
        self.point(["10", "20", "30"], text.at)?;
        self.real("40", TEXT_SIZE * CAPITALS)?;
        self.out.write_str("1\n")?;
        for c in text.content.chars() {
            match c {
                '\u{2300}' => self.out.write_str("%%c")?,
                // Letters that DXF gives a meaning of their own are written by number, like all beyond ASCII.
                '\\' | '%' | '^' | '\u{a0}'..='\u{ffff}' => write!(self.out, "\\U+{:04X}", c as u32)?,
                ' '..='~' => self.out.write_char(c)?,
                '\t' | '\n' | '\r' => self.out.write_str(" ")?,
                _ => self.out.write_str("?")?,
            }
        }
        self.out.write_str("\n")?;
        if text.upright {
            self.group("50", "90.0")?;
        }
        let justified = match text.anchor {
            Anchor::Start => return Ok(()),
            Anchor::Middle => "1",
            Anchor::End => "2",
        };
        self.group("72", justified)?;
        self.point(["11", "21", "31"], text.at)
    }
}
