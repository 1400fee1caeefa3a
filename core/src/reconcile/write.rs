//! The answer in words.

use core::fmt::{self, Write};

use super::figure::Figure;
use super::search::{Answer, Explanation};
use crate::CAUTION;
use crate::step::Name;
use crate::text::write_significant;

/// Figures of the numbers in an answer.
const FIGURES: u8 = 5;

impl Answer {
    /// Writes the answer in words: what reproduces the figures, what each would be as the book stands, and, where
    /// nothing does, what comes nearest.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn write(&self, out: &mut dyn Write, figures: &[Figure]) -> fmt::Result {
        match self.best() {
            Some(best) if best.count() == 0 => writeln!(out, "Reproduced with the rule book as it stands.")?,
            Some(best) => {
                self.conventions(out, "Reproduced with", best)?;
                for other in self.explanations.iter().skip(1) {
                    self.conventions(out, "As well with", other)?;
                }
            }
            None => {
                writeln!(
                    out,
                    "Not reproduced: none of {} single edits and pairs of edits gives all figures.",
                    self.tried
                )?;
                for other in &self.by_chance {
                    self.conventions(out, "May be chance:", other)?;
                }
                if self.nearest.count() == 0 {
                    writeln!(out, "Nearest: the rule book as it stands.")?;
                } else {
                    self.conventions(out, "Nearest:", &self.nearest)?;
                }
            }
        }
        let shown = self.best().unwrap_or(&self.nearest);
        for (bit, (figure, (value, plain))) in
            (0_u32..).zip(figures.iter().zip(shown.values.iter().zip(self.as_it_stands.values)))
        {
            let Name(quantity, row) = figure.name;
            write!(out, "  {}", quantity.symbol())?;
            if row > 0 {
                write!(out, ".{row}")?;
            }
            number(out, " stated ", figure.value)?;
            number(out, ", comes out as ", *value)?;
            if *value != plain {
                number(out, "; as the book stands ", plain)?;
            }
            let unit = quantity.unit().symbol();
            if !unit.is_empty() {
                write!(out, " {unit}")?;
            }
            let met = if shown.out.wrapping_shr(bit) & 1 == 1 { ": not met" } else { "" };
            writeln!(out, "{met}")?;
        }
        writeln!(out, "{CAUTION}")
    }

    fn conventions(&self, out: &mut dyn Write, lead: &str, explanation: &Explanation) -> fmt::Result {
        write!(out, "{lead}")?;
        for (number, convention) in explanation.edits().enumerate() {
            write!(out, "{} {}", if number > 0 { " and" } else { "" }, convention.words)?;
            if convention.slip {
                write!(out, " (a slip)")?;
            }
        }
        writeln!(out, ".")
    }
}

/// A figure after its words.
fn number(out: &mut dyn Write, words: &str, x: f64) -> fmt::Result {
    out.write_str(words)?;
    if x.is_nan() {
        return out.write_str("nothing");
    }
    write_significant(out, x, FIGURES).map_err(|_| fmt::Error)
}
