//! The pen of the shop sheet: wrapped lines and aligned tables, as plain text or Markdown.

use core::fmt::{self, Write};

use super::write::{Style, Units};
use crate::quantities::{Force, Length};
use crate::text::{self, DecimalMark, TextError};

/// Columns of a plain page.
const COLUMNS: usize = 80;
/// Continuation lines begin here.
const INDENT: usize = 4;
/// The longest cell: a number is far shorter.
const CELL: usize = 40;

/// One cell of a table, or a number on its way into a line.
pub(super) type Cell = heapless::String<CELL>;

/// Writes lines of words, broken at the page's width in plain text.
pub(super) struct Pen<'w> {
    out: &'w mut dyn Write,
    pub(super) style: Style,
    markdown: bool,
    word: heapless::String<COLUMNS>,
    column: usize,
    space: bool,
}

impl<'w> Pen<'w> {
    pub(super) fn new(out: &'w mut dyn Write, style: &Style, markdown: bool) -> Self {
        Pen { out, style: *style, markdown, word: heapless::String::new(), column: 0, space: false }
    }

    /// The title of the sheet.
    pub(super) fn title(&mut self, title: &str) -> fmt::Result {
        if self.markdown {
            self.out.write_str("# ")?;
            self.out.write_str(title)?;
            return self.out.write_str("\n\n");
        }
        self.out.write_str(title)?;
        self.underline(title, "=")
    }

    /// The heading of a part, one line apart from what is before.
    pub(super) fn heading(&mut self, title: &str) -> fmt::Result {
        if self.markdown {
            self.out.write_str("\n## ")?;
            self.out.write_str(title)?;
            return self.out.write_str("\n\n");
        }
        self.out.write_str("\n")?;
        self.out.write_str(title)?;
        self.underline(title, "-")
    }

    fn underline(&mut self, title: &str, with: &str) -> fmt::Result {
        self.out.write_str("\n")?;
        for _ in title.chars() {
            self.out.write_str(with)?;
        }
        self.out.write_str("\n")
    }

    /// One line, `label: ` and what `body` writes.
    pub(super) fn line(&mut self, label: &str, body: impl FnOnce(&mut Self) -> fmt::Result) -> fmt::Result {
        if self.markdown {
            self.out.write_str("- ")?;
        }
        if !label.is_empty() {
            self.write_str(label)?;
            self.write_str(": ")?;
        }
        body(self)?;
        self.flush()?;
        self.space = false;
        self.column = 0;
        self.out.write_str("\n")
    }

    /// The word so far goes out, on a new line where it does not fit.
    fn flush(&mut self) -> fmt::Result {
        if self.word.is_empty() {
            return Ok(());
        }
        let length = self.word.chars().count();
        let gap = usize::from(self.space && self.column > 0);
        let end = self.column.saturating_add(gap).saturating_add(length);
        if !self.markdown && end > COLUMNS && self.column > INDENT {
            self.out.write_str("\n    ")?;
            self.column = INDENT.saturating_add(length);
        } else {
            if gap > 0 {
                self.out.write_str(" ")?;
            }
            self.column = end;
        }
        self.space = false;
        self.out.write_str(&self.word)?;
        self.word.clear();
        Ok(())
    }

    /// The head of a table: titles and, for plain text, widths.
    pub(super) fn table_head(&mut self, columns: &[(&str, usize)]) -> fmt::Result {
        self.row(columns, |pen, at| {
            let (title, _) = columns.get(at).copied().unwrap_or(("", 0));
            let mut cell = Cell::new();
            cell.push_str(title).map_err(|_| fmt::Error)?;
            let _ = pen;
            Ok(cell)
        })?;
        if self.markdown {
            self.out.write_str("|")?;
            for _ in columns {
                self.out.write_str("---:|")?;
            }
            self.out.write_str("\n")?;
        }
        Ok(())
    }

    /// A row of a table; `cell` makes the cells by their number.
    pub(super) fn row(
        &mut self,
        columns: &[(&str, usize)],
        mut cell: impl FnMut(&Self, usize) -> Result<Cell, fmt::Error>,
    ) -> fmt::Result {
        for (at, (_, width)) in columns.iter().enumerate() {
            let cell = cell(self, at)?;
            if self.markdown {
                self.out.write_str("| ")?;
            } else {
                let used = cell.chars().count().saturating_add(usize::from(at == 0));
                for _ in used..width.saturating_add(1) {
                    self.out.write_str(" ")?;
                }
            }
            self.out.write_str(&cell)?;
            if self.markdown {
                self.out.write_str(" ")?;
            }
        }
        self.out.write_str(if self.markdown { "|\n" } else { "\n" })
    }

    /// A blank line: after a table in Markdown, before one in both.
    pub(super) fn blank(&mut self) -> fmt::Result {
        self.out.write_str("\n")
    }

    /// A whole number.
    pub(super) fn count(&mut self, n: u32) -> fmt::Result {
        let cell = self.style.number(f64::from(n), 0)?;
        self.write_str(&cell)
    }

    /// A number with at most so many decimals.
    pub(super) fn plain(&mut self, x: f64, decimals: u8) -> fmt::Result {
        let mut cell = Cell::new();
        printed(text::write_plain_with(&mut cell, x, decimals, self.style.mark), &mut cell)?;
        self.write_str(&cell)
    }

    /// A number with so many decimals.
    pub(super) fn fixed(&mut self, x: f64, decimals: u8) -> fmt::Result {
        let cell = self.style.number(x, decimals)?;
        self.write_str(&cell)
    }

    /// A length with its unit: millimetres, or inches as fractions where they are.
    pub(super) fn length(&mut self, mm: f64) -> fmt::Result {
        match self.style.units {
            Units::Millimetre => {
                self.plain(mm, 3)?;
                self.unit("mm")
            }
            Units::Inch => {
                let mut cell = Cell::new();
                printed(text::write_inch_fraction(&mut cell, Length::mm(mm).to_inch(), 64), &mut cell)?;
                for char in cell.chars() {
                    let comma = char == '.' && self.style.mark == DecimalMark::Comma;
                    self.write_char(if comma { ',' } else { char })?;
                }
                self.unit("in")
            }
        }
    }

    /// A unit, on the same line as its number.
    pub(super) fn unit(&mut self, unit: &str) -> fmt::Result {
        self.push(' ')?;
        self.write_str(unit)
    }

    /// A mass with its unit.
    pub(super) fn mass(&mut self, kg: f64) -> fmt::Result {
        let (x, unit) = self.style.weight(kg);
        self.fixed(x, 3)?;
        self.unit(unit)
    }
}

impl Write for Pen<'_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for char in text.chars() {
            if char == ' ' || char == '\n' {
                self.flush()?;
                self.space = true;
                continue;
            }
            if self.markdown && matches!(char, '\\' | '`' | '*' | '_' | '|' | '<' | '>' | '[' | ']' | '#' | '~') {
                self.push('\\')?;
            }
            self.push(char)?;
        }
        Ok(())
    }
}

impl Pen<'_> {
    fn push(&mut self, char: char) -> fmt::Result {
        if self.word.push(char).is_ok() {
            return Ok(());
        }
        // A word longer than the page goes out in pieces.
        self.flush()?;
        self.word.push(char).map_err(|_| fmt::Error)
    }
}

impl Style {
    /// A number with so many decimals, as a cell.
    pub(super) fn number(&self, x: f64, decimals: u8) -> Result<Cell, fmt::Error> {
        let mut cell = Cell::new();
        printed(text::write_fixed_with(&mut cell, x, decimals, self.mark), &mut cell)?;
        Ok(cell)
    }

    /// A length in the reader's unit, as a cell without it.
    pub(super) fn cell_length(&self, mm: f64) -> Result<Cell, fmt::Error> {
        match self.units {
            Units::Millimetre => self.number(mm, 2),
            Units::Inch => self.number(Length::mm(mm).to_inch(), 4),
        }
    }

    /// A mass in the reader's unit, and that unit.
    pub(super) fn weight(&self, kg: f64) -> (f64, &'static str) {
        match self.units {
            Units::Millimetre => (kg, "kg"),
            // The weight of a kilogram in pounds-force is its mass in pounds.
            Units::Inch => (Force::kgf(kg).to_lbf(), "lb"),
        }
    }
}

/// A number that cannot be printed leaves a dash; only a full cell or sink is an error.
fn printed(done: Result<(), TextError>, cell: &mut Cell) -> fmt::Result {
    match done {
        Ok(()) => Ok(()),
        Err(TextError::Sink) => Err(fmt::Error),
        Err(_) => cell.push('-').map_err(|_| fmt::Error),
    }
}
