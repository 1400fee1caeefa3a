//! Tables of a document: one row of cells at a time, in every dialect.

use core::fmt::{self, Write};

use super::doc::{Doc, NARROW, PLAIN, Piece, TOGETHER};
use super::style::Dialect;
use super::wrap::{Joined, Wrap, spaces};
use crate::text::Count;

/// Indent of a remark under its row on a plain sheet.
const UNDER: usize = 6;

/// The columns of a table.
#[derive(Clone, Copy, Debug)]
pub struct Columns<'a> {
    head: &'a [&'a str],
    widths: &'a [u8],
    numbers: u16,
    remark: bool,
}

impl<'a> Columns<'a> {
    /// Headings, and the widths that the columns have on a plain sheet (the last takes what is left).
    #[must_use]
    pub const fn new(head: &'a [&'a str], widths: &'a [u8]) -> Self {
        Columns { head, widths, numbers: 0, remark: false }
    }

    /// With the columns of these bits (the first column is bit 0) set to the right, as figures are.
    #[must_use]
    pub const fn numbers(mut self, bits: u16) -> Self {
        self.numbers = bits;
        self
    }

    /// With the last column under its row on a plain sheet: a sentence that needs the whole width.
    #[must_use]
    pub const fn remark(mut self) -> Self {
        self.remark = true;
        self
    }

    fn is_number(&self, column: usize) -> bool {
        u32::try_from(column).is_ok_and(|c| c < 16 && self.numbers.wrapping_shr(c) & 1 == 1)
    }

    fn width(&self, column: usize) -> usize {
        usize::from(self.widths.get(column).copied().unwrap_or(10))
    }

    /// Share of the page that a column has where columns are paragraphs, in hundredths.
    fn share(&self, column: usize) -> usize {
        let last = self.head.len().saturating_sub(1);
        let others = (0..last).fold(0_usize, |sum, c| sum.saturating_add(self.width(c)));
        let rest = PLAIN.saturating_sub(others).max(30);
        let own = if column == last { rest } else { self.width(column) };
        // What lies between the columns takes its part of the page too.
        own.saturating_mul(86).checked_div(others.saturating_add(rest)).unwrap_or(86)
    }
}

/// A cell by its column.
type Cell<'c> = &'c dyn Fn(usize, &mut dyn fmt::Write) -> fmt::Result;

/// Letters that a cell takes.
fn length(cell: Cell<'_>, column: usize) -> Result<usize, fmt::Error> {
    // Joined blanks are two bytes and one letter.
    let mut count = Count::new();
    cell(column, &mut Joined { out: &mut count })?;
    Ok(count.needed())
}

impl<'a> Doc<'a> {
    /// A table begins: headings, and the widths that its columns have on a plain sheet (the last takes what is left).
    ///
    /// # Errors
    /// Those of the sink.
    pub fn table(&mut self, head: &'a [&'a str], widths: &'a [u8]) -> fmt::Result {
        self.table_of(Columns::new(head, widths))
    }

    /// A table of columns begins.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn table_of(&mut self, columns: Columns<'a>) -> fmt::Result {
        self.columns = columns;
        let head = columns.head;
        let heading = |i: usize, w: &mut dyn fmt::Write| w.write_str(head.get(i).copied().unwrap_or(""));
        match self.style.dialect {
            Dialect::Narrow => Ok(()),
            // The headings stay with the first row.
            Dialect::Plain => self.plain_head(TOGETHER),
            Dialect::Markdown => {
                self.cells(head.len(), &heading)?;
                self.out.write_str("|")?;
                for i in 0..head.len() {
                    self.out.write_str(if columns.is_number(i) { " ---: |" } else { " --- |" })?;
                }
                self.out.write_str("\n")
            }
            Dialect::Latex => {
                self.out.write_str("\\begin{longtable}{@{}")?;
                for i in 0..head.len() {
                    let side = if columns.is_number(i) { "left" } else { "right" };
                    write!(self.out, ">{{\\ragged{side}\\arraybackslash}}p{{0.{:02}\\linewidth}}", columns.share(i))?;
                }
                self.out.write_str("@{}}\n")?;
                if head.iter().any(|h| !h.is_empty()) {
                    self.cells(head.len(), &heading)?;
                    self.out.write_str("\\hline\\noalign{\\vskip 2pt}\n\\endhead\n")?;
                }
                Ok(())
            }
            Dialect::Html => {
                self.out.write_str("<table>\n")?;
                if head.iter().any(|h| !h.is_empty()) {
                    self.out.write_str("<thead><tr>")?;
                    for (i, h) in head.iter().enumerate() {
                        let class = if columns.is_number(i) { " class=\"n\"" } else { "" };
                        write!(self.out, "<th scope=\"col\"{class}>")?;
                        self.escaped(&|w| w.write_str(h))?;
                        self.out.write_str("</th>")?;
                    }
                    self.out.write_str("</tr></thead>\n")?;
                }
                self.out.write_str("<tbody>\n")
            }
        }
    }

    /// The headings on a plain sheet, on one page with so many lines after them.
    fn plain_head(&mut self, after: u16) -> fmt::Result {
        let Columns { head, remark, .. } = self.columns;
        if head.iter().all(|h| h.is_empty()) {
            return Ok(());
        }
        let heading = |i: usize, w: &mut dyn fmt::Write| w.write_str(head.get(i).copied().unwrap_or(""));
        let shown = if remark { head.len().saturating_sub(1) } else { head.len() };
        self.whole(u16::MAX, after, &|doc| doc.plain_cells(shown, &heading))?;
        self.plain_cells(shown, &heading)
    }

    /// A row of the table.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn row(&mut self, cells: &[Piece<'_>]) -> fmt::Result {
        let cell = |i: usize, w: &mut dyn fmt::Write| cells.get(i).map_or(Ok(()), |cell: &Piece<'_>| cell(w));
        if let Some(keep) = self.keep {
            let lines = self.lines(&|doc| doc.cells(cells.len(), &cell))?.min(TOGETHER);
            // A table that goes on on another page has its headings there too.
            if keep.ends_before(lines) {
                self.plain_head(lines)?;
            }
            keep.ask(lines);
        }
        self.cells(cells.len(), &cell)
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

    fn cells(&mut self, count: usize, cell: Cell<'_>) -> fmt::Result {
        match self.style.dialect {
            Dialect::Plain if self.columns.remark => {
                let last = count.saturating_sub(1);
                self.plain_cells(last, cell)?;
                if length(cell, last)? == 0 {
                    return Ok(());
                }
                spaces(self.out, UNDER)?;
                let mut wrap = Wrap::new(self.out, PLAIN, UNDER, UNDER);
                cell(last, &mut wrap)?;
                wrap.end()
            }
            Dialect::Plain => self.plain_cells(count, cell),
            Dialect::Narrow => {
                for i in 0..count {
                    if length(cell, i)? == 0 {
                        continue;
                    }
                    let head = self.columns.head.get(i).copied().unwrap_or("");
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
                    let number = self.columns.is_number(i);
                    let (open, close) = match (i, number) {
                        (0, false) => ("<th scope=\"row\">", "</th>"),
                        (0, true) => ("<th scope=\"row\" class=\"n\">", "</th>"),
                        (_, false) => ("<td>", "</td>"),
                        (_, true) => ("<td class=\"n\">", "</td>"),
                    };
                    self.out.write_str(open)?;
                    self.escaped(&|w| cell(i, w))?;
                    self.out.write_str(close)?;
                }
                self.out.write_str("</tr>\n")
            }
        }
    }

    /// Cells in columns; the last one wraps under itself.
    fn plain_cells(&mut self, count: usize, cell: Cell<'_>) -> fmt::Result {
        let mut column = 0_usize;
        let mut start = 0_usize;
        // Blanks are written before what follows them, so that no line ends in any.
        let mut due = 0_usize;
        for i in 0..count {
            let last = i.saturating_add(1) == count;
            let wide = if last && self.columns.widths.get(i).is_none() {
                PLAIN.saturating_sub(start)
            } else {
                self.columns.width(i)
            };
            let long = length(cell, i)?;
            if self.columns.is_number(i) {
                // Figures end two columns before the next column, or at the edge of the page.
                let end = start.saturating_add(wide).saturating_sub(if last { 0 } else { 2 });
                let fill = end.saturating_sub(long).saturating_sub(column);
                due = due.saturating_add(fill);
                column = column.saturating_add(fill);
            }
            if long > 0 {
                spaces(self.out, due)?;
                due = 0;
            }
            if last && long > 0 {
                let mut wrap = Wrap::new(self.out, PLAIN, start, column);
                cell(i, &mut wrap)?;
                return wrap.end();
            }
            cell(i, &mut Joined { out: self.out })?;
            column = column.saturating_add(long);
            start = start.saturating_add(wide);
            // A cell that fills its column is still followed by a space.
            let fill = start.saturating_sub(column).max(1);
            due = due.saturating_add(fill);
            column = column.saturating_add(fill);
        }
        self.out.write_str("\n")
    }
}
