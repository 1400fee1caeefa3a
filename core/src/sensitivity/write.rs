//! The study as a table.

use core::fmt::{self, Write};

use super::inputs::Input;
use super::one_sided::Sided;
use super::slopes::Slopes;
use crate::rules::{Entry, key};
use crate::step::Name;
use crate::text::write_significant;

impl Slopes {
    /// Writes the slopes as a Markdown table, which reads as plain text too: the input, its value, and what one per
    /// cent more of it does to the efficiency and to the strength, in per cent; two figures where the sides differ,
    /// for less and for more. Inputs that do nothing are left out.
    ///
    /// # Errors
    /// Those of the sink.
    pub fn write_table(&self, out: &mut dyn Write) -> fmt::Result {
        out.write_str("| input | value | eta, % for 1 % | J, % for 1 % | strength, % for 1 % |\n")?;
        out.write_str("| --- | --- | --- | --- | --- |\n")?;
        let [eta, j, _] = self.efficiencies;
        for line in &self.lines {
            let cells = [(line.efficiency, eta), (line.book_efficiency, j), (line.strength, self.strength)];
            let shares = cells.map(|(slope, of)| slope.times(if of > 0.0 { line.value / of } else { 0.0 }));
            if shares.iter().all(|s| s.left == 0.0 && s.right == 0.0) {
                continue;
            }
            out.write_str("| ")?;
            name(out, line.input)?;
            out.write_str(" | ")?;
            figure(out, line.value, 6)?;
            for share in &shares {
                out.write_str(" | ")?;
                sided(out, share)?;
            }
            out.write_str(" |\n")?;
        }
        Ok(())
    }
}

fn name(out: &mut dyn Write, input: Input) -> fmt::Result {
    match input {
        Input::Given(Name(quantity, row)) => {
            out.write_str(quantity.what())?;
            if row > 0 {
                write!(out, ", row {row}")?;
            }
            let unit = quantity.unit().symbol();
            if unit.is_empty() { Ok(()) } else { write!(out, ", {unit}") }
        }
        Input::Rule(entry) => out.write_str(Entry::from_no(entry).map_or("", key)),
    }
}

fn sided(out: &mut dyn Write, share: &Sided) -> fmt::Result {
    if share.has_kink() {
        figure(out, share.left, 4)?;
        out.write_str(" / ")?;
    }
    figure(out, share.right, 4)
}

fn figure(out: &mut dyn Write, x: f64, figures: u8) -> fmt::Result {
    if x == 0.0 {
        return out.write_str("0");
    }
    write_significant(out, x, figures).map_err(|_| fmt::Error)
}
