//! A document with numbered sections and the sheet's kinds of lines.

use core::fmt::{self, Write};

use super::figures::FigureStyle;
use crate::working::{Columns, Doc, Piece, Style};

/// Columns of a list of labels and texts.
const PAIRS: Columns<'static> = Columns::new(&["", ""], &[16]);
/// Columns of a list of values: what, how much, the same as a share, a remark.
const VALUES: Columns<'static> = Columns::new(&["", "", ""], &[40, 16]).numbers(2);

/// The same with a clause for a remark, which takes a line of its own on a plain sheet.
const CITED: Columns<'static> = Columns::new(&["", "", ""], &[40, 14]).numbers(2).remark();

/// The sheet as it is written.
pub(super) struct Page<'d> {
    pub doc: Doc<'d>,
    pub figures: FigureStyle,
    section: u8,
}

impl<'d> Page<'d> {
    pub fn new(out: &'d mut dyn Write, style: Style) -> Self {
        Page { doc: Doc::new(out, style), figures: FigureStyle::new(style), section: 0 }
    }

    /// A numbered heading.
    pub fn heading(&mut self, title: &str) -> fmt::Result {
        self.section = self.section.saturating_add(1);
        let mut text: heapless::String<64> = heapless::String::new();
        write!(text, "{}. {title}", self.section)?;
        self.doc.heading(&text)
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
