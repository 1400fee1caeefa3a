//! A document, written once for all dialects: headings, paragraphs, tables, formulas.

use core::fmt::{self, Write};

use super::style::{Dialect, Style};
use super::wrap::{Escape, Wrap, spaces};
use crate::text::Count;

/// Something that writes itself: a cell of a table, a piece of a line.
pub type Piece<'a> = &'a dyn Fn(&mut dyn fmt::Write) -> fmt::Result;

/// Columns of a plain sheet.
const PLAIN: usize = 80;
/// Columns of a small display.
const NARROW: usize = 20;

/// A document being written.
pub struct Doc<'a> {
    out: &'a mut dyn fmt::Write,
    style: Style,
    widths: &'a [u8],
    head: &'a [&'a str],
}

impl<'a> Doc<'a> {
    /// A document into a sink.
    pub fn new(out: &'a mut dyn fmt::Write, style: Style) -> Self {
        Doc { out, style, widths: &[], head: &[] }
    }

    /// The reader's wishes.
    #[must_use]
    pub const fn style(&self) -> &Style {
        &self.style
    }

    fn columns(&self) -> usize {
        if self.style.dialect == Dialect::Narrow { NARROW } else { PLAIN }
    }

    fn escaped(&mut self, piece: Piece<'_>) -> fmt::Result {
        piece(&mut Escape { out: self.out, dialect: self.style.dialect })
    }

    /// The beginning, with its title.
    ///
    /// # Errors
    /// Those of the sink, here and in all that follows.
    pub fn begin(&mut self, title: Piece<'_>) -> fmt::Result {
        match self.style.dialect {
            Dialect::Plain => {
                title(self.out)?;
                self.out.write_str("\n")?;
                (0..PLAIN).try_for_each(|_| self.out.write_str("="))?;
                self.out.write_str("\n")
            }
            Dialect::Narrow => self.paragraph(title),
            Dialect::Markdown => {
                self.out.write_str("# ")?;
                self.escaped(title)?;
                self.out.write_str("\n\n")
            }
            Dialect::Latex => {
                self.out.write_str(LATEX_HEAD)?;
                self.out.write_str("\\section*{")?;
                self.escaped(title)?;
                self.out.write_str("}\n")
            }
            Dialect::Html => {
                self.out.write_str(HTML_HEAD)?;
                self.escaped(title)?;
                self.out.write_str(HTML_STYLE)?;
                self.escaped(title)?;
                self.out.write_str("</h1>\n")
            }
        }
    }

    /// The end.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn end(&mut self) -> fmt::Result {
        match self.style.dialect {
            Dialect::Latex => self.out.write_str("\\end{document}\n"),
            Dialect::Html => self.out.write_str("</main>\n</body>\n</html>\n"),
            _ => Ok(()),
        }
    }

    /// A heading.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn heading(&mut self, text: &str) -> fmt::Result {
        match self.style.dialect {
            Dialect::Plain => {
                self.out.write_str("\n")?;
                self.out.write_str(text)?;
                self.out.write_str("\n")?;
                text.chars().try_for_each(|_| self.out.write_str("-"))?;
                self.out.write_str("\n")
            }
            Dialect::Narrow => {
                self.out.write_str("\n")?;
                self.paragraph(&|w| write!(w, "* {text}"))
            }
            Dialect::Markdown => {
                self.out.write_str("\n## ")?;
                self.escaped(&|w| w.write_str(text))?;
                self.out.write_str("\n\n")
            }
            Dialect::Latex => {
                self.out.write_str("\n\\subsection*{")?;
                self.escaped(&|w| w.write_str(text))?;
                self.out.write_str("}\n")
            }
            Dialect::Html => {
                self.out.write_str("<h2>")?;
                self.escaped(&|w| w.write_str(text))?;
                self.out.write_str("</h2>\n")
            }
        }
    }

    /// A paragraph.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn paragraph(&mut self, piece: Piece<'_>) -> fmt::Result {
        match self.style.dialect {
            Dialect::Plain | Dialect::Narrow => {
                let columns = self.columns();
                let mut wrap = Wrap::new(self.out, columns, 0, 0);
                piece(&mut wrap)?;
                wrap.end()
            }
            Dialect::Html => {
                self.out.write_str("<p>")?;
                self.escaped(piece)?;
                self.out.write_str("</p>\n")
            }
            Dialect::Markdown | Dialect::Latex => {
                self.escaped(piece)?;
                self.out.write_str("\n\n")
            }
        }
    }

    /// A table begins: headings, and the widths that its columns have on a plain sheet (the last takes what is left).
    ///
    /// # Errors
    /// Those of the sink.
    pub fn table(&mut self, head: &'a [&'a str], widths: &'a [u8]) -> fmt::Result {
        self.head = head;
        self.widths = widths;
        match self.style.dialect {
            Dialect::Narrow => Ok(()),
            Dialect::Plain => {
                if head.iter().any(|h| !h.is_empty()) {
                    self.cells(head.len(), &|i, w| w.write_str(head.get(i).copied().unwrap_or("")))?;
                }
                Ok(())
            }
            Dialect::Markdown => {
                self.cells(head.len(), &|i, w| w.write_str(head.get(i).copied().unwrap_or("")))?;
                self.out.write_str("|")?;
                head.iter().try_for_each(|_| self.out.write_str(" --- |"))?;
                self.out.write_str("\n")
            }
            Dialect::Latex => {
                self.out.write_str("\\begin{longtable}{@{}")?;
                // The last column holds sentences: a paragraph of what the page leaves.
                for i in 1..=head.len() {
                    self.out.write_str(if i == head.len() { "p{0.42\\linewidth}" } else { "l" })?;
                }
                self.out.write_str("@{}}\n")?;
                self.cells(head.len(), &|i, w| w.write_str(head.get(i).copied().unwrap_or("")))?;
                self.out.write_str("\\hline\n")
            }
            Dialect::Html => {
                self.out.write_str("<table>\n<thead><tr>")?;
                for h in head {
                    self.out.write_str("<th scope=\"col\">")?;
                    self.escaped(&|w| w.write_str(h))?;
                    self.out.write_str("</th>")?;
                }
                self.out.write_str("</tr></thead>\n<tbody>\n")
            }
        }
    }

    /// A row of the table.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn row(&mut self, cells: &[Piece<'_>]) -> fmt::Result {
        self.cells(cells.len(), &|i, w| cells.get(i).map_or(Ok(()), |cell| cell(w)))
    }

    /// The table ends.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn end_table(&mut self) -> fmt::Result {
        match self.style.dialect {
            Dialect::Latex => self.out.write_str("\\end{longtable}\n"),
            Dialect::Html => self.out.write_str("</tbody>\n</table>\n"),
            Dialect::Markdown => self.out.write_str("\n"),
            _ => Ok(()),
        }
    }

    fn cells(&mut self, count: usize, cell: &dyn Fn(usize, &mut dyn fmt::Write) -> fmt::Result) -> fmt::Result {
        match self.style.dialect {
            Dialect::Plain => self.plain_cells(count, cell),
            Dialect::Narrow => {
                for i in 0..count {
                    let head = self.head.get(i).copied().unwrap_or("");
                    let mut wrap = Wrap::new(self.out, NARROW, 1, 0);
                    if !head.is_empty() {
                        write!(wrap, "{head}: ")?;
                    }
                    cell(i, &mut wrap)?;
                    wrap.end()?;
                }
                Ok(())
            }
            Dialect::Markdown => {
                self.out.write_str("|")?;
                for i in 0..count {
                    self.out.write_str(" ")?;
                    self.escaped(&|w| cell(i, w))?;
                    self.out.write_str(" |")?;
                }
                self.out.write_str("\n")
            }
            Dialect::Latex => {
                for i in 0..count {
                    if i > 0 {
                        self.out.write_str(" & ")?;
                    }
                    self.escaped(&|w| cell(i, w))?;
                }
                self.out.write_str(" \\\\\n")
            }
            Dialect::Html => {
                self.out.write_str("<tr>")?;
                for i in 0..count {
                    self.out.write_str("<td>")?;
                    self.escaped(&|w| cell(i, w))?;
                    self.out.write_str("</td>")?;
                }
                self.out.write_str("</tr>\n")
            }
        }
    }

    /// Cells in columns; the last one wraps under itself.
    fn plain_cells(&mut self, count: usize, cell: &dyn Fn(usize, &mut dyn fmt::Write) -> fmt::Result) -> fmt::Result {
        let mut column = 0_usize;
        let mut start = 0_usize;
        for i in 0..count {
            if i.saturating_add(1) == count {
                let mut wrap = Wrap::new(self.out, PLAIN, start, column);
                cell(i, &mut wrap)?;
                return wrap.end();
            }
            let mut length = Count::new();
            cell(i, &mut length)?;
            cell(i, self.out)?;
            column = column.saturating_add(length.needed());
            start = start.saturating_add(usize::from(self.widths.get(i).copied().unwrap_or(10)));
            // A cell that fills its column is still followed by a space.
            let fill = start.saturating_sub(column).max(1);
            spaces(self.out, fill)?;
            column = column.saturating_add(fill);
        }
        Ok(())
    }

    /// A line of mathematics; `piece` writes in the dialect itself and is not escaped.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn formula(&mut self, piece: Piece<'_>) -> fmt::Result {
        match self.style.dialect {
            Dialect::Plain | Dialect::Narrow => {
                let indent = if self.style.dialect == Dialect::Plain { 6 } else { 1 };
                spaces(self.out, indent)?;
                let columns = self.columns();
                let mut wrap = Wrap::new(self.out, columns, indent.saturating_add(4), indent);
                piece(&mut wrap)?;
                wrap.end()
            }
            Dialect::Markdown => {
                self.out.write_str("    ")?;
                piece(self.out)?;
                self.out.write_str("\n")
            }
            Dialect::Latex => {
                self.out.write_str("\\[ ")?;
                piece(self.out)?;
                self.out.write_str(" \\]\n")
            }
            Dialect::Html => {
                self.out.write_str("<div class=\"formula\">")?;
                piece(self.out)?;
                self.out.write_str("</div>\n")
            }
        }
    }
}

/// Packages that every LaTeX has; fonts and paper of a plain article.
const LATEX_HEAD: &str = "\\documentclass[a4paper,10pt]{article}\n\\usepackage[utf8]{inputenc}\n\
\\usepackage{longtable}\n\\usepackage[margin=20mm]{geometry}\n\
\\setlength{\\parindent}{0pt}\n\\begin{document}\n";

const HTML_HEAD: &str = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n\
<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>";

const HTML_STYLE: &str = "</title>\n<style>\n@page { size: A4; margin: 18mm; }\n\
body { font: 11pt/1.4 serif; color: #111; background: #fff; max-width: 60em; margin: auto; padding: 1em; }\n\
h1 { font-size: 1.4em; } h2 { font-size: 1.15em; break-after: avoid; }\n\
table { border-collapse: collapse; margin: .5em 0; } th, td { text-align: left; vertical-align: top; \
padding: .1em .8em .1em 0; border-bottom: 1px solid #bbb; } tr { break-inside: avoid; }\n\
.formula { margin: .1em 0 .1em 2em; } p { margin: .4em 0 .1em; }\n</style>\n</head>\n<body>\n<main>\n<h1>";
