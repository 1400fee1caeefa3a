//! A plain text on pages: a foot on each of them, and nothing torn from its heading.
//!
//! Nothing is stored: the document says before it writes how many lines belong together ([`Keep`]), and the [`Pager`]
//! between document and sink ends a page where they have no room. How many pages there are is known from a first run
//! into a sink that forgets.

use core::cell::Cell;
use core::fmt;

/// How many of the next lines belong together, and how many the page still has. Shared by a document and its pager.
#[derive(Debug, Default)]
pub(crate) struct Keep {
    asked: Cell<u16>,
    left: Cell<u16>,
}

impl Keep {
    /// The next lines belong together; of several wishes before one line the greatest counts.
    pub(crate) fn ask(&self, lines: u16) {
        self.asked.set(self.asked.get().max(lines));
    }

    /// Whether a page ends before so many lines.
    pub(super) fn ends_before(&self, lines: u16) -> bool {
        self.left.get() < lines
    }
}

/// The foot of a page by its number and the number of all pages: whole lines.
pub(crate) type Foot<'a> = &'a dyn Fn(&mut dyn fmt::Write, u16, u16) -> fmt::Result;

/// Counts lines.
#[derive(Default)]
pub(super) struct Lines(pub(super) u16);

impl fmt::Write for Lines {
    fn write_str(&mut self, s: &str) -> fmt::Result {
        let ends = s.bytes().fold(0_u16, |n, b| n.saturating_add(u16::from(b == b'\n')));
        self.0 = self.0.saturating_add(ends);
        Ok(())
    }
}

/// Breaks a text into pages.
pub(crate) struct Pager<'a> {
    out: &'a mut dyn fmt::Write,
    keep: &'a Keep,
    foot: Foot<'a>,
    /// Lines of a page above its foot.
    body: u16,
    /// Lines on this page so far.
    lines: u16,
    /// Whether a line is begun.
    begun: bool,
    page: u16,
    pages: u16,
}

impl<'a> Pager<'a> {
    /// Pages of so many lines, the foot included; `pages` is what a first run found, or nothing yet.
    pub(crate) fn new(
        out: &'a mut dyn fmt::Write,
        keep: &'a Keep,
        lines: u16,
        foot: Foot<'a>,
        pages: u16,
    ) -> Result<Self, fmt::Error> {
        let mut taken = Lines::default();
        foot(&mut taken, 1, 1)?;
        let body = lines.saturating_sub(taken.0).max(1);
        keep.left.set(body);
        Ok(Pager { out, keep, foot, body, lines: 0, begun: false, page: 1, pages })
    }

    /// Fills the page and writes its foot.
    fn close(&mut self) -> fmt::Result {
        for _ in self.lines..self.body {
            self.out.write_str("\n")?;
        }
        (self.foot)(self.out, self.page, self.pages)
    }

    /// Ends the last page; how many there are.
    pub(crate) fn finish(mut self) -> Result<u16, fmt::Error> {
        self.close()?;
        Ok(self.page)
    }
}

impl fmt::Write for Pager<'_> {
    fn write_str(&mut self, s: &str) -> fmt::Result {
        s.chars().try_for_each(|c| self.write_char(c))
    }

    fn write_char(&mut self, c: char) -> fmt::Result {
        if !self.begun {
            let wanted = self.keep.asked.take().max(1);
            // What is longer than a page is torn anyway: it goes on where it stands.
            let wanted = if wanted > self.body { 1 } else { wanted };
            if self.lines.saturating_add(wanted) > self.body {
                self.close()?;
                self.out.write_str("\u{c}")?;
                self.page = self.page.saturating_add(1);
                self.lines = 0;
            }
            // No page begins with a blank line.
            if c == '\n' && self.lines == 0 {
                return Ok(());
            }
            self.begun = true;
        }
        if c == '\n' {
            self.begun = false;
            self.lines = self.lines.saturating_add(1);
            self.keep.left.set(self.body.saturating_sub(self.lines));
        }
        self.out.write_char(c)
    }
}
