//! A page of 80 columns: headings, pairs, tables, wrapped text. No line leaves here longer than the page.

/// Columns of the page.
pub const WIDTH: usize = 80;

/// A blank at which a line is never broken: a number stays with its unit.
pub use crate::units::JOIN;

/// The text so far.
#[derive(Debug, Default)]
pub struct Page {
    text: String,
    section: usize,
}

impl Page {
    /// The finished text.
    pub fn finish(self) -> String {
        self.text
    }

    /// One line as it stands.
    pub fn line(&mut self, line: &str) {
        self.text.push_str(&line.trim_end().replace(JOIN, " "));
        self.text.push('\n');
    }

    /// A rule across the page.
    pub fn rule(&mut self, with: char) {
        let line: String = core::iter::repeat_n(with, WIDTH).collect();
        self.line(&line);
    }

    /// A numbered heading.
    pub fn heading(&mut self, title: &str) {
        self.section += 1;
        let head = format!("{}. {title} ", self.section);
        let rest = WIDTH.saturating_sub(head.chars().count());
        self.line("");
        self.line(&(head + &"-".repeat(rest)));
    }

    /// Text wrapped between an indent and the edge; `first` stands in the indent of the first line.
    pub fn wrap(&mut self, first: &str, indent: usize, words: &str) {
        let mut line = format!("{first:<indent$}");
        let mut empty = true;
        for word in words.split([' ', '\n']).filter(|word| !word.is_empty()) {
            let needed = line.chars().count() + word.chars().count() + usize::from(!empty);
            if needed > WIDTH && !empty {
                self.line(&line);
                line = " ".repeat(indent);
                empty = true;
            }
            if !empty {
                line.push(' ');
            }
            line.push_str(word);
            empty = false;
        }
        self.line(&line);
    }

    /// A label and its text.
    pub fn pair(&mut self, label: &str, text: &str) {
        self.wrap(&format!("  {label}"), 18, text);
    }

    /// A label, a value, and where it comes from: the value column is the same on the whole sheet.
    pub fn value(&mut self, label: &str, value: &str, remark: &str) {
        self.wrap(&format!("  {label:<38}{value:>14}"), 56, remark);
    }
}
