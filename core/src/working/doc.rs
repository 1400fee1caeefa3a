//! A document, written once for all dialects: headings, paragraphs, tables, formulas.

use core::fmt;

use super::paper::{Keep, Lines};
use super::style::{Dialect, Style};
use super::table::Columns;
use super::wrap::{Escape, Wrap, spaces};
use crate::CAUTION;

/// Something that writes itself: a cell of a table, a piece of a line.
pub type Piece<'a> = &'a dyn Fn(&mut dyn fmt::Write) -> fmt::Result;

/// Columns of a plain sheet.
pub(crate) const PLAIN: usize = 80;
/// Columns of a small display.
pub(super) const NARROW: usize = 20;

/// A document being written.
pub struct Doc<'a> {
    pub(super) out: &'a mut dyn fmt::Write,
    pub(super) style: Style,
    pub(super) columns: Columns<'a>,
    /// Where the pages of a plain text are told what belongs together.
    pub(super) keep: Option<&'a Keep>,
}

/// Lines of the longest paragraph or row that is not torn between two pages.
pub(super) const TOGETHER: u16 = 8;

impl<'a> Doc<'a> {
    /// A document into a sink.
    pub fn new(out: &'a mut dyn fmt::Write, style: Style) -> Self {
        Doc { out, style, columns: Columns::new(&[], &[]), keep: None }
    }

    /// A document into a sink that breaks pages.
    pub(crate) fn on_paper(out: &'a mut dyn fmt::Write, style: Style, keep: Option<&'a Keep>) -> Self {
        Doc { keep, ..Doc::new(out, style) }
    }

    /// The next lines belong on one page.
    pub(crate) fn together(&self, lines: u16) {
        if let Some(keep) = self.keep {
            keep.ask(lines);
        }
    }

    /// What is written belongs on one page, up to so many lines, with others after it.
    pub(super) fn whole(&self, most: u16, after: u16, write: &dyn Fn(&mut Doc<'_>) -> fmt::Result) -> fmt::Result {
        if self.keep.is_some() {
            self.together(self.lines(write)?.min(most).saturating_add(after));
        }
        Ok(())
    }

    /// How many lines something takes.
    pub(super) fn lines(&self, write: &dyn Fn(&mut Doc<'_>) -> fmt::Result) -> Result<u16, fmt::Error> {
        let mut lines = Lines::default();
        write(&mut Doc { out: &mut lines, style: self.style, columns: self.columns, keep: None })?;
        Ok(lines.0)
    }

    /// The same document for a while, so that a table may have a head of its own.
    pub(crate) fn again(&mut self) -> Doc<'_> {
        Doc::on_paper(self.out, self.style, self.keep)
    }

    /// The reader's wishes.
    #[must_use]
    pub const fn style(&self) -> &Style {
        &self.style
    }

    fn width(&self) -> usize {
        if self.style.dialect == Dialect::Narrow { NARROW } else { PLAIN }
    }

    pub(super) fn escaped(&mut self, piece: Piece<'_>) -> fmt::Result {
        piece(&mut Escape::new(self.out, self.style.dialect))
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
                self.out.write_str(CAUTION)?;
                self.out.write_str(LATEX_FOOT)?;
                self.out.write_str("\\section*{")?;
                self.escaped(title)?;
                self.out.write_str("}\n")
            }
            Dialect::Html => {
                self.out.write_str(HTML_HEAD)?;
                self.escaped(title)?;
                self.out.write_str(HTML_PAGE)?;
                self.out.write_str(CAUTION)?;
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
            Dialect::Latex => self.out.write_str("\\label{seamwright:last}\n\\end{document}\n"),
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
                // Blank, heading, its line, and the beginning of what follows: a paragraph, or a table's head and a row.
                self.together(TOGETHER.saturating_add(4));
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
                self.whole(TOGETHER, 0, &|doc| doc.paragraph(piece))?;
                let columns = self.width();
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

    /// An item of a list.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn item(&mut self, piece: Piece<'_>) -> fmt::Result {
        match self.style.dialect {
            Dialect::Plain | Dialect::Narrow => {
                self.whole(TOGETHER, 0, &|doc| doc.item(piece))?;
                self.out.write_str("- ")?;
                let columns = self.width();
                let mut wrap = Wrap::new(self.out, columns, 2, 2);
                piece(&mut wrap)?;
                wrap.end()
            }
            Dialect::Html => {
                self.out.write_str("<p class=\"item\">")?;
                self.escaped(piece)?;
                self.out.write_str("</p>\n")
            }
            Dialect::Markdown => {
                self.out.write_str("- ")?;
                self.escaped(piece)?;
                self.out.write_str("\n\n")
            }
            Dialect::Latex => {
                self.out.write_str("\\hangindent=1em -- ")?;
                self.escaped(piece)?;
                self.out.write_str("\n\n")
            }
        }
    }

    /// Whether the document is for a small display, where a row of a long table is an entry of a few lines.
    #[must_use]
    pub(crate) fn is_narrow(&self) -> bool {
        self.style.dialect == Dialect::Narrow
    }

    /// An entry of a list on a small display: what it is, and below, set back, what there is to say of it.
    ///
    /// # Errors
    /// Those of the sink.
    pub(crate) fn entry(&mut self, what: Piece<'_>, more: &[Piece<'_>]) -> fmt::Result {
        let mut wrap = Wrap::new(self.out, NARROW, 1, 0);
        what(&mut wrap)?;
        wrap.end()?;
        for piece in more {
            spaces(self.out, 1)?;
            let mut wrap = Wrap::new(self.out, NARROW, 1, 1);
            piece(&mut wrap)?;
            wrap.end()?;
        }
        Ok(())
    }

    /// Lines as they stand, such as a sketch; `what` says what they show to those who cannot see it. A small display gets
    /// nothing: say it in words as well.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn block(&mut self, what: &str, lines: Piece<'_>) -> fmt::Result {
        match self.style.dialect {
            Dialect::Narrow => Ok(()),
            Dialect::Plain => {
                self.whole(u16::MAX, 0, &|doc| doc.block(what, lines))?;
                self.out.write_str("\n")?;
                lines(self.out)
            }
            Dialect::Markdown => {
                self.out.write_str("```text\n")?;
                lines(self.out)?;
                self.out.write_str("```\n\n")
            }
            Dialect::Latex => {
                self.out.write_str("\\begin{verbatim}\n")?;
                lines(self.out)?;
                self.out.write_str("\\end{verbatim}\n")
            }
            Dialect::Html => {
                self.out.write_str("<pre role=\"img\" aria-label=\"")?;
                self.escaped(&|w| w.write_str(what))?;
                self.out.write_str("\">\n")?;
                self.escaped(lines)?;
                self.out.write_str("</pre>\n")
            }
        }
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
                let columns = self.width();
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

/// Packages that every LaTeX has; fonts and paper of a plain article. The caution goes into the foot of each page.
const LATEX_HEAD: &str = "\\documentclass[a4paper,10pt]{article}\n\\usepackage[utf8]{inputenc}\n\
\\usepackage{array}\n\\usepackage{longtable}\n\\usepackage[margin=20mm,bottom=28mm]{geometry}\n\
\\setlength{\\parindent}{0pt}\n\\setlength{\\LTleft}{0pt}\n\\setlength{\\LTpre}{4pt}\n\\setlength{\\LTpost}{4pt}\n\
\\makeatletter\n\\def\\@oddfoot{\\parbox[t]{\\textwidth}{\\footnotesize\\centering ";

const LATEX_FOOT: &str = "\\\\ page \\thepage\\ of \\pageref{seamwright:last}}}\n\\makeatother\n\\begin{document}\n";

const HTML_HEAD: &str = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n\
<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>";

/// Paper: page numbers and caution at the foot, where a browser prints margin boxes; others leave the foot empty.
const HTML_PAGE: &str = "</title>\n<style>\n@page { size: A4; margin: 15mm 18mm 20mm; \
@bottom-right { content: \"page \" counter(page) \" of \" counter(pages); font: 9pt serif; width: 20%; } \
@bottom-left { font: 8pt serif; text-align: left; width: 80%; content: \"";

const HTML_STYLE: &str = "\"; } }\n\
body { font: 11pt/1.4 serif; color: #111; background: #fff; max-width: 60em; margin: auto; padding: 1em; }\n\
h1 { font-size: 1.4em; } h2 { font-size: 1.15em; break-after: avoid; }\n\
table { border-collapse: collapse; margin: .5em 0; } th, td { text-align: left; vertical-align: top; \
padding: .1em .8em .1em 0; border-bottom: 1px solid #bbb; } tr { break-inside: avoid; } thead { display: table-header-group; }\n\
th[scope=row] { font-weight: normal; } th.n, td.n { text-align: right; white-space: nowrap; \
font-variant-numeric: tabular-nums; }\n\
p.item { padding-left: 1em; text-indent: -1em; } p.item::before { content: \"\\2013\\a0\"; }\n\
pre { font: 9pt/1.25 monospace; break-inside: avoid; overflow-x: auto; }\n\
.formula { margin: .1em 0 .1em 2em; } p { margin: .4em 0 .1em; }\n\
@media print { body { font-size: 9.5pt; line-height: 1.3; max-width: none; margin: 0; padding: 0; } \
p { margin: .25em 0 .1em; break-inside: avoid; } p:has(+ table) { break-after: avoid; } pre { font-size: 8pt; } }\n</style>\n</head>\n<body>\n<main>\n<h1>";
