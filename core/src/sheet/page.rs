//! A document with numbered sections and the sheet's kinds of lines.

use core::fmt::{self, Write};

use super::figures::FigureStyle;
use crate::CAUTION;
use crate::working::{Columns, Doc, Keep, PLAIN, Piece, Style};

/// Columns of a list of labels and texts.
const PAIRS: Columns<'static> = Columns::new(&["", ""], &[16]);
/// Columns of a list of values: what, how much, the same as a share, a remark.
const VALUES: Columns<'static> = Columns::new(&["", "", ""], &[40, 16]).numbers(2);

/// The same with a clause for a remark, which takes a line of its own on a plain sheet.
const CITED: Columns<'static> = Columns::new(&["", "", ""], &[40, 14]).numbers(2).remark();

/// Columns of the last line of a page.
const FOOT: Columns<'static> = Columns::new(&["", ""], &[50, 30]).numbers(2);

/// The sheet as it is written.
pub(super) struct Page<'d> {
    pub doc: Doc<'d>,
    pub figures: FigureStyle,
    section: u8,
}

impl<'d> Page<'d> {
    pub fn new(out: &'d mut dyn Write, style: Style, keep: Option<&'d Keep>) -> Self {
        Page { doc: Doc::on_paper(out, style, keep), figures: FigureStyle::new(style), section: 0 }
    }

    /// A numbered heading.
    pub fn heading(&mut self, title: &str) -> fmt::Result {
        self.section = self.section.saturating_add(1);
        let mut text: heapless::String<64> = heapless::String::new();
        write!(text, "{}. {title}", self.section)?;
        self.doc.heading(&text)
    }

    /// What follows are words that lead to a table: they and its first row belong on one page.
    pub fn leads_to_a_table(&self) {
        self.doc.together(16);
    }

    /// A paragraph.
    pub fn line(&mut self, piece: Piece<'_>) -> fmt::Result {
        self.doc.paragraph(piece)
    }

    /// A list of labels and texts begins.
    pub fn pairs(&mut self) -> fmt::Result {
        self.doc.table_of(PAIRS)
    }

    /// A label and its text.
    pub fn pair(&mut self, label: &str, text: Piece<'_>) -> fmt::Result {
        self.doc.row(&[&|w| w.write_str(label), text])
    }

    /// A list of values begins.
    pub fn values(&mut self) -> fmt::Result {
        self.doc.table_of(VALUES)
    }

    /// A list of values with their clauses begins.
    pub fn cited(&mut self) -> fmt::Result {
        self.doc.table_of(CITED)
    }

    /// A label, a value, and a remark.
    pub fn value(&mut self, label: &str, value: Piece<'_>, remark: Piece<'_>) -> fmt::Result {
        self.doc.row(&[&|w| w.write_str(label), value, remark])
    }

    /// A list ends.
    pub fn end(&mut self) -> fmt::Result {
        self.doc.end_table()
    }
}

/// Nothing.
pub(super) fn none(_: &mut dyn Write) -> fmt::Result {
    Ok(())
}

/// The foot of a page of plain text: the caution, what the page belongs to, and its number.
pub(super) fn write_foot(out: &mut dyn Write, hash: u64, page: u16, pages: u16) -> fmt::Result {
    out.write_str("\n")?;
    (0..PLAIN).try_for_each(|_| out.write_str("-"))?;
    out.write_str("\n")?;
    let mut doc = Doc::new(out, Style::default());
    doc.paragraph(&|w| w.write_str(CAUTION))?;
    let mut number: heapless::String<24> = heapless::String::new();
    write!(number, "page {page} of {pages}")?;
    doc.table_of(FOOT)?;
    doc.row(&[&|w| write!(w, "Input hash {hash:016x}"), &|w| w.write_str(&number)])
}
