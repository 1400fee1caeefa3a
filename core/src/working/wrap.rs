//! Sinks between a text and its reader: wrapping at words, and escaping.

use core::fmt;

use super::style::Dialect;

/// Longest word that is kept in one piece.
const WORD: usize = 64;

/// A blank at which no line is broken: a figure stays with its unit. Texts and Markdown show an ordinary one.
pub(crate) const JOIN: char = '\u{a0}';

/// Wraps at spaces to so many columns, later lines indented. A word longer than a line is broken: after a mark within it
/// where there is one, else with a hyphen between letters; figures only where nothing else is left.
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

    fn line(&mut self) -> fmt::Result {
        self.out.write_str("\n")?;
        spaces(self.out, self.indent)?;
        self.column = self.indent;
        Ok(())
    }

    fn flush(&mut self) -> fmt::Result {
        let mut left = self.word.chars().count();
        if left == 0 {
            return Ok(());
        }
        let wanted = left.saturating_add(usize::from(self.gap));
        if self.column.saturating_add(wanted) > self.columns && self.column > self.indent {
            self.line()?;
        } else if self.gap {
            self.out.write_str(" ")?;
            self.column = self.column.saturating_add(1);
        }
        self.gap = false;
        self.begun = true;
        let word = core::mem::take(&mut self.word);
        let mut rest = word.chars();
        while left > 0 {
            let room = self.columns.saturating_sub(self.column);
            let (taken, hyphen) = if left <= room { (left, false) } else { piece(rest.clone(), room) };
            for c in rest.by_ref().take(taken) {
                self.out.write_char(if c == JOIN { ' ' } else { c })?;
            }
            self.column = self.column.saturating_add(taken);
            left = left.saturating_sub(taken);
            if left > 0 {
                self.out.write_str(if hyphen { "-" } else { "" })?;
                self.line()?;
            }
        }
        Ok(())
    }

    /// Writes what is left and ends the line.
    pub(super) fn end(mut self) -> fmt::Result {
        self.flush()?;
        self.out.write_str("\n")
    }
}

/// How many letters of a word go on a line with so much room, and whether a hyphen follows them.
fn piece(word: impl Iterator<Item = char>, room: usize) -> (usize, bool) {
    let (mut mark, mut letters, mut before) = (0, 0, ' ');
    let mut word = word.peekable();
    for at in 1..=room {
        let Some(c) = word.next() else { break };
        let after = word.peek().copied().unwrap_or(' ');
        // After a mark or a joined blank; not within a number such as 1.25 or 1,25.
        if c == JOIN
            || matches!(c, '/' | '-' | ';' | ':' | '=' | ')' | '_')
            || (c == ',' && !(before.is_ascii_digit() && after.is_ascii_digit()))
            || (c == '.' && !before.is_ascii_digit())
        {
            mark = at;
        }
        // Between letters: a whole word before a bracket needs no hyphen.
        if is_letter(before) && is_letter(c) && is_letter(after) && at < room {
            letters = at;
        }
        before = c;
    }
    match (mark, letters) {
        // A line without room at all is left as it is: one letter is written whatever comes.
        (0, 0) => (room.max(1), false),
        // A mark near the end of the line is better than a hyphen; one near its beginning is not.
        (mark, letters) if mark.saturating_mul(2) >= letters => (mark, false),
        (_, letters) => (letters, true),
    }
}

/// Whether a word may be broken beside a character: a letter of English, or of a language whose letters stand behind the
/// signs of Latin-1 and before the punctuation of the world. The whole table of letters takes 2 KiB of a firmware image.
fn is_letter(c: char) -> bool {
    c.is_ascii_alphabetic() || matches!(c, '\u{c0}'..='\u{1fff}' if !matches!(c, '\u{d7}' | '\u{f7}'))
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

/// A sink that shows joined blanks as ordinary ones.
pub(super) struct Joined<'a> {
    pub(super) out: &'a mut dyn fmt::Write,
}

impl fmt::Write for Joined<'_> {
    fn write_str(&mut self, s: &str) -> fmt::Result {
        s.chars().try_for_each(|c| self.out.write_char(if c == JOIN { ' ' } else { c }))
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
    /// Whether a hyphen went before.
    hyphen: bool,
}

impl<'a> Escape<'a> {
    pub(super) fn new(out: &'a mut dyn fmt::Write, dialect: Dialect) -> Self {
        Escape { out, dialect, hyphen: false }
    }

    fn latex(&mut self, c: char) -> fmt::Result {
        let second_hyphen = self.hyphen && c == '-';
        self.hyphen = c == '-';
        match c {
            JOIN => self.out.write_str("~"),
            '\\' => self.out.write_str(r"\textbackslash{}"),
            '~' => self.out.write_str(r"\textasciitilde{}"),
            '^' => self.out.write_str(r"\textasciicircum{}"),
            '&' | '%' | '$' | '#' | '_' | '{' | '}' => {
                self.out.write_char('\\')?;
                self.out.write_char(c)
            }
            '<' | '>' | '|' => write!(self.out, "${c}$"),
            // TeX sets these as typographic quotes in its roman letters; its typewriter letters have them straight.
            '"' => self.out.write_str(r"{\ttfamily\char34}"),
            '`' => self.out.write_str(r"{\ttfamily\char18}"),
            // Two hyphens would run together into a dash.
            '-' if second_hyphen => self.out.write_str("{}-"),
            c => self.out.write_char(c),
        }
    }
}

impl fmt::Write for Escape<'_> {
    fn write_str(&mut self, s: &str) -> fmt::Result {
        match self.dialect {
            Dialect::Plain | Dialect::Narrow => Joined { out: &mut *self.out }.write_str(s),
            Dialect::Html => s.chars().try_for_each(|c| match c {
                JOIN => self.out.write_str("&#160;"),
                '&' => self.out.write_str("&amp;"),
                '<' => self.out.write_str("&lt;"),
                '>' => self.out.write_str("&gt;"),
                '"' => self.out.write_str("&quot;"),
                c => self.out.write_char(c),
            }),
            Dialect::Latex => s.chars().try_for_each(|c| self.latex(c)),
            Dialect::Markdown => s.chars().try_for_each(|c| match c {
                JOIN => self.out.write_char(' '),
                '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '#' => {
                    self.out.write_char('\\')?;
                    self.out.write_char(c)
                }
                c => self.out.write_char(c),
            }),
        }
    }
}
