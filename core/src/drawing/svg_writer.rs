//! SVG: one element for each stroke, kinds of lines as classes of one small style sheet.

use core::fmt::{self, Write};

use super::canvas::{Anchor, Canvas, Line, Point, Text};
use crate::text;

/// Before the title.
const HEAD: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\" \
role=\"img\">\n<title>";
/// Weights and dashes in millimetres of the sheet: 0.5 wide and 0.25 narrow (ISO 128, group 0.5), dashes in multiples
/// of the width.
const STYLE: &str = "</title>\n<style>\n\
line,circle,path{fill:none;stroke:#000;stroke-width:.25;stroke-linecap:round}\n\
.outline,.hole{stroke-width:.5}.cut{stroke-width:.7}.frame{stroke-width:.5}.hatch{stroke-width:.18}\n\
.hidden{stroke-dasharray:3 .75;stroke-linecap:butt}.centre{stroke-dasharray:6 .75 .12 .75;stroke-linecap:butt}\n\
.solid{fill:#000;stroke:none}\n\
text{font:3.5px Arial,Helvetica,'Liberation Sans',sans-serif;fill:#000}\n";
/// Kinds of lines of forces.
const FORCES: &str = ".force{stroke-width:.5}.critical,.load{stroke-width:.8}.turning{stroke-width:.18}\n\
.direct{stroke-width:.18;stroke-dasharray:1.4 .6;stroke-linecap:butt}\n";
/// After the style sheet.
const PAPER: &str = "</style>\n\
<rect width=\"297\" height=\"210\" fill=\"#fff\"/>\n";

/// The sheet as it is written.
pub(super) struct Svg<'o> {
    out: &'o mut dyn Write,
}

impl<'o> Svg<'o> {
    /// Writes the beginning of the drawing of a joint.
    pub fn begin(out: &'o mut dyn Write, object: &str) -> Result<Self, fmt::Error> {
        Svg::headed(out, "Riveted joint: ", object, "")
    }

    /// Writes the beginning of the drawing of a group under its load.
    pub fn begin_group(out: &'o mut dyn Write, object: &str) -> Result<Self, fmt::Error> {
        Svg::headed(out, "Group of rivets: ", object, FORCES)
    }

    fn headed(out: &'o mut dyn Write, kind: &str, object: &str, style: &str) -> Result<Self, fmt::Error> {
        let mut svg = Svg { out };
        svg.out.write_str(HEAD)?;
        svg.out.write_str(kind)?;
        svg.escaped(object)?;
        for part in [STYLE, style, PAPER] {
            svg.out.write_str(part)?;
        }
        Ok(svg)
    }

    /// Writes the end.
    pub fn end(self) -> fmt::Result {
        self.out.write_str("</svg>\n")
    }

    fn number(&mut self, before: &str, mm: f64, after: &str) -> fmt::Result {
        self.out.write_str(before)?;
        text::write_plain(self.out, mm, 4).map_err(|_| fmt::Error)?;
        self.out.write_str(after)
    }

    /// Letters as XML: no markup, and nothing that XML forbids.
    fn escaped(&mut self, letters: &str) -> fmt::Result {
        for c in letters.chars() {
            match c {
                '<' => self.out.write_str("&lt;")?,
                '>' => self.out.write_str("&gt;")?,
                '&' => self.out.write_str("&amp;")?,
                '"' => self.out.write_str("&quot;")?,
                '\'' => self.out.write_str("&#39;")?,
                '\t' | '\n' | '\r' => self.out.write_str(" ")?,
                '\0'..='\u{1f}' | '\u{7f}'..='\u{9f}' | '\u{fffe}' | '\u{ffff}' => self.out.write_str("\u{fffd}")?,
                c => self.out.write_char(c)?,
            }
        }
        Ok(())
    }
}

/// The class of a kind of line.
const fn class(kind: Line) -> &'static str {
    match kind {
        Line::Outline => "outline",
        Line::Hole => "hole",
        Line::Hidden => "hidden",
        Line::Centre => "centre",
        Line::Axis => "axis",
        Line::Dimension => "dimension",
        Line::Hatch => "hatch",
        Line::Break => "break",
        Line::Cut => "cut",
        Line::Force => "force",
        Line::Critical => "critical",
        Line::Load => "load",
        Line::Direct => "direct",
        Line::Turning => "turning",
        Line::Frame => "frame",
        Line::Rule => "rule",
    }
}

impl Canvas for Svg<'_> {
    fn line(&mut self, kind: Line, from: Point, to: Point) -> fmt::Result {
        self.out.write_str("<line class=\"")?;
        self.out.write_str(class(kind))?;
        self.number("\" x1=\"", from.x, "")?;
        self.number("\" y1=\"", from.y, "")?;
        self.number("\" x2=\"", to.x, "")?;
        self.number("\" y2=\"", to.y, "\"/>\n")
    }

    fn circle(&mut self, kind: Line, centre: Point, radius: f64) -> fmt::Result {
        self.out.write_str("<circle class=\"")?;
        self.out.write_str(class(kind))?;
        self.number("\" cx=\"", centre.x, "")?;
        self.number("\" cy=\"", centre.y, "")?;
        self.number("\" r=\"", radius, "\"/>\n")
    }

    fn arc(&mut self, kind: Line, from: Point, to: Point, rise: f64) -> fmt::Result {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let radius = (0.25 * (dx * dx + dy * dy) + rise * rise) / (2.0 * rise);
        self.out.write_str("<path class=\"")?;
        self.out.write_str(class(kind))?;
        self.number("\" d=\"M", from.x, " ")?;
        self.number("", from.y, "")?;
        self.number("A", radius, " ")?;
        self.number("", radius, " 0 0 1 ")?;
        self.number("", to.x, " ")?;
        self.number("", to.y, "\"/>\n")
    }

    fn triangle(&mut self, corners: [Point; 3]) -> fmt::Result {
        let [a, b, c] = corners;
        self.number("<path class=\"solid\" d=\"M", a.x, " ")?;
        self.number("", a.y, "L")?;
        self.number("", b.x, " ")?;
        self.number("", b.y, "L")?;
        self.number("", c.x, " ")?;
        self.number("", c.y, "Z\"/>\n")
    }

    fn text(&mut self, text: &Text<'_>) -> fmt::Result {
        self.number("<text x=\"", text.at.x, "\"")?;
        self.number(" y=\"", text.at.y, "\"")?;
        self.out.write_str(match text.anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        })?;
        if text.upright {
            self.number(" transform=\"rotate(-90 ", text.at.x, " ")?;
            self.number("", text.at.y, ")\"")?;
        }
        self.out.write_str(" data-key=\"")?;
        self.out.write_str(text.key)?;
        if text.row > 0 {
            write!(self.out, "\" data-row=\"{}", text.row)?;
        }
        self.out.write_str("\">")?;
        self.escaped(text.content)?;
        self.out.write_str("</text>\n")
    }
}
