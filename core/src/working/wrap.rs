//! Sinks between a text and its reader: wrapping at words, and escaping.

use core::fmt;

use super::style::Dialect;

/// Longest word that is kept in one piece.
const WORD: usize = 64;

/// Wraps at spaces to so many columns, later lines indented. A word longer than a line is broken.
pub(super) struct Wrap<'a> {
    out: &'a mut dyn fmt::Write,
    columns: usize,
    indent: usize,
    column: usize,
    word: heapless::String<WORD>,
    gap: bool,
    begun: bool,
}

impl<'a> Wrap<'a> {
    /// Starts at a column already reached.
    pub(super) fn new(out: &'a mut dyn fmt::Write, columns: usize, indent: usize, column: usize) -> Self {
        Wrap { out, columns, indent, column, word: heapless::String::new(), gap: false, begun: false }
    }

    fn flush(&mut self) -> fmt::Result {
        let length = self.word.chars().count();
        if length == 0 {
            return Ok(());
        }
        let wanted = length.saturating_add(usize::from(self.gap));
        if self.column.saturating_add(wanted) > self.columns && self.column > self.indent {
            self.out.write_str("\n")?;
            spaces(self.out, self.indent)?;
            self.column = self.indent;
            self.begun = false;
        } else if self.gap {
            self.out.write_str(" ")?;
            self.column = self.column.saturating_add(1);
        }
        self.gap = false;
        self.begun = true;
        for c in self.word.chars() {
            if self.column >= self.columns {
                self.out.write_str("\n")?;
                spaces(self.out, self.indent)?;
                self.column = self.indent;
            }
            self.out.write_char(c)?;
            self.column = self.column.saturating_add(1);
        }
        self.word.clear();
        Ok(())
    }

    /// Writes what is left and ends the line.
    pub(super) fn end(mut self) -> fmt::Result {
        self.flush()?;
        self.out.write_str("\n")
    }
}

impl fmt::Write for Wrap<'_> {
    fn write_str(&mut self, s: &str) -> fmt::Result {
        for c in s.chars() {
            if c == ' ' {
                self.flush()?;
                self.gap = self.begun;
            } else if self.word.push(c).is_err() {
                self.flush()?;
                // The word was flushed: there is room for one character.
                self.word.push(c).map_err(|_| fmt::Error)?;
            }
        }
        Ok(())
    }
}

/// So many spaces.
pub(super) fn spaces(out: &mut dyn fmt::Write, n: usize) -> fmt::Result {
    (0..n).try_for_each(|_| out.write_str(" "))
}

/// Escapes a text for its dialect.
pub(super) struct Escape<'a> {
    pub(super) out: &'a mut dyn fmt::Write,
    pub(super) dialect: Dialect,
}

impl fmt::Write for Escape<'_> {
    fn write_str(&mut self, s: &str) -> fmt::Result {
        match self.dialect {
            Dialect::Plain | Dialect::Narrow => self.out.write_str(s),
            Dialect::Html => s.chars().try_for_each(|c| match c {
                '&' => self.out.write_str("&amp;"),
                '<' => self.out.write_str("&lt;"),
                '>' => self.out.write_str("&gt;"),
                '"' => self.out.write_str("&quot;"),
                c => self.out.write_char(c),
            }),
            Dialect::Latex => s.chars().try_for_each(|c| match c {
                '\\' => self.out.write_str(r"\textbackslash{}"),
                '~' => self.out.write_str(r"\textasciitilde{}"),
                '^' => self.out.write_str(r"\textasciicircum{}"),
                '&' | '%' | '$' | '#' | '_' | '{' | '}' => {
                    self.out.write_char('\\')?;
                    self.out.write_char(c)
                }
                '<' | '>' | '|' => write!(self.out, "${c}$"),
                c => self.out.write_char(c),
            }),
            Dialect::Markdown => s.chars().try_for_each(|c| match c {
                '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '#' => {
                    self.out.write_char('\\')?;
                    self.out.write_char(c)
                }
                c => self.out.write_char(c),
            }),
        }
    }
}
