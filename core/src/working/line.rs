//! One line of the working: the symbolic expression and the substituted one, in each dialect.

use core::f64::consts::PI;
use core::fmt;

use super::pad::{Node, Op, Step};
use super::style::{Dialect, Style, Units};
use crate::bounds::Unit;
use crate::formula::{HALF_INCH, MM_PER_M, MM3_PER_M3};
use crate::step::Name;
use crate::text;

/// Which reading of an expression is written.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Reading {
    /// With symbols.
    Symbolic,
    /// With the values in their place.
    Substituted,
}

/// How tightly an operation binds: a sum inside a product needs brackets.
fn binding(node: Node) -> u8 {
    match node {
        Node::Binary(Op::Add | Op::Sub, ..) => 1,
        Node::Binary(Op::Mul | Op::Div, ..) => 2,
        _ => 3,
    }
}

/// Writes the name of a quantity, with its row.
///
/// # Errors
/// Those of the sink.
pub fn write_symbol(out: &mut dyn fmt::Write, dialect: Dialect, name: Name) -> fmt::Result {
    let Name(quantity, row) = name;
    match dialect {
        Dialect::Latex => {
            let symbol = quantity.latex();
            if row == 0 {
                return out.write_str(symbol);
            }
            // F_t of row 2 is F_{t,2}: the row joins the index that the symbol may have.
            match text::split_once(symbol, b'_') {
                Some((stem, index)) => {
                    let index = index.strip_prefix('{').and_then(|i| i.strip_suffix('}')).unwrap_or(index);
                    write!(out, "{stem}_{{{index},{row}}}")
                }
                None => write!(out, "{symbol}_{{{row}}}"),
            }
        }
        Dialect::Html => {
            write!(out, "<var>{}</var>", quantity.symbol())?;
            if row > 0 { write!(out, "<sub>{row}</sub>") } else { Ok(()) }
        }
        _ => {
            out.write_str(quantity.symbol())?;
            if row > 0 { write!(out, ".{row}") } else { Ok(()) }
        }
    }
}

/// By what a fraction of pi is divided.
fn part_of_pi(x: f64) -> Option<u8> {
    match x {
        x if x == PI / 4.0 => Some(4),
        x if x == PI / 6.0 => Some(6),
        x if x == PI / 12.0 => Some(12),
        _ => None,
    }
}

/// A constant between units, as a sheet of these units has it: cubic inches in a cubic foot, inches in a foot.
fn in_units(style: &Style, unit: Unit, x: f64) -> f64 {
    match (style.units, unit) {
        (Units::Inch, Unit::Kilogram) if x == MM3_PER_M3 => 1728.0,
        (Units::Inch, Unit::KilogramPerMetre) if x == MM_PER_M => 12.0,
        (Units::Inch, Unit::Millimetre) if x == HALF_INCH => 0.5,
        _ => x,
    }
}

/// A constant of a formula: small whole numbers and fractions of pi by their names.
fn write_literal(out: &mut dyn fmt::Write, style: &Style, x: f64) -> fmt::Result {
    let latex = style.dialect == Dialect::Latex;
    if x == PI {
        return out.write_str(if latex { r"\pi" } else { "pi" });
    }
    if let Some(n) = part_of_pi(x) {
        return if latex { write!(out, r"\frac{{\pi}}{{{n}}}") } else { write!(out, "pi/{n}") };
    }
    if x == MM3_PER_M3 {
        return out.write_str(match style.dialect {
            Dialect::Latex => "10^{9}",
            Dialect::Html => "10<sup>9</sup>",
            _ => "10^9",
        });
    }
    text::write_plain_with(out, x, 9, style.mark).map_err(|_| fmt::Error)
}

/// Writes the expression at a place of a step's line.
///
/// Where forces are in kN it carries the thousand that lies between kN and what mm and MPa give, in symbols and in
/// numbers: the line can be worked out as it stands.
///
/// # Errors
/// Those of the sink.
pub fn write_expression(
    out: &mut dyn fmt::Write,
    style: &Style,
    step: &Step<'_>,
    place: u8,
    reading: Reading,
) -> fmt::Result {
    let line = Line { style, step, reading };
    // A value taken over stands in its own unit.
    let wanted = match step.node(place) {
        Node::Binary(..) | Node::Root(_) => style.thousands(step.name.0.unit()),
        Node::Free | Node::Literal(_) | Node::Leaf(..) => line.thousands(place),
    };
    line.operand(out, place, wanted, 0)
}

/// One reading of a line.
struct Line<'a, 's> {
    style: &'a Style,
    step: &'a Step<'s>,
    reading: Reading,
}

impl Line<'_, '_> {
    /// How many thousands are missing in the figure of a place, counted in N: 1 for a force in kN, 0 for a length.
    fn thousands(&self, place: u8) -> i8 {
        match self.step.node(place) {
            Node::Free | Node::Literal(_) => 0,
            Node::Leaf(Name(quantity, _), _) => self.style.thousands(quantity.unit()),
            Node::Root(x) => {
                let inside = self.thousands(x);
                if inside & 1 == 0 { inside.wrapping_shr(1) } else { 0 }
            }
            Node::Binary(Op::Mul, a, b) => self.thousands(a).wrapping_add(self.thousands(b)),
            Node::Binary(Op::Div, a, b) => self.thousands(a).wrapping_sub(self.thousands(b)),
            Node::Binary(Op::Add | Op::Sub, a, b) => self.common(a, b),
        }
    }

    /// What both sides of a sum are brought to.
    fn common(&self, a: u8, b: u8) -> i8 {
        let (a, b) = (self.thousands(a), self.thousands(b));
        if a == b { a } else { 0 }
    }

    /// An operand, brought to so many thousands, in brackets where it binds less tightly than the operation around it.
    fn operand(&self, out: &mut dyn fmt::Write, place: u8, wanted: i8, around: u8) -> fmt::Result {
        let latex = self.style.dialect == Dialect::Latex;
        let apart = self.thousands(place).wrapping_sub(wanted);
        if apart == 0 {
            return self.bracketed(out, place, around);
        }
        let fraction = latex && apart < 0;
        let brackets = around > 2 && !fraction;
        if brackets {
            out.write_str(if latex { r"\left(" } else { "(" })?;
        }
        if apart > 0 {
            for _ in 0..apart {
                out.write_str("1000")?;
                out.write_str(sign(self.style.dialect, Op::Mul, self.reading))?;
            }
            self.bracketed(out, place, 2)?;
        } else if fraction {
            out.write_str(r"\frac{")?;
            self.bracketed(out, place, 0)?;
            out.write_str("}{1000}")?;
        } else {
            self.bracketed(out, place, 2)?;
            out.write_str("/1000")?;
        }
        if brackets {
            out.write_str(if latex { r"\right)" } else { ")" })?;
        }
        Ok(())
    }

    fn bracketed(&self, out: &mut dyn fmt::Write, place: u8, around: u8) -> fmt::Result {
        let node = self.step.node(place);
        let latex = self.style.dialect == Dialect::Latex;
        let fraction = latex && matches!(node, Node::Binary(Op::Div, ..));
        let negative = self.reading == Reading::Substituted && self.prints_minus(node);
        let quarter = matches!(node, Node::Literal(x) if part_of_pi(x).is_some()) && !latex;
        let own = if quarter { 2 } else { binding(node) };
        let brackets = (own < around && !fraction) || (negative && around > 0);
        if brackets {
            out.write_str(if latex { r"\left(" } else { "(" })?;
        }
        self.node(out, node)?;
        if brackets {
            out.write_str(if latex { r"\right)" } else { ")" })?;
        }
        Ok(())
    }

    /// Whether a value is printed with a minus: one that rounds to nothing has none.
    fn prints_minus(&self, node: Node) -> bool {
        let Node::Leaf(Name(quantity, _), value) = node else { return false };
        let mut text: heapless::String<48> = heapless::String::new();
        value < 0.0 && self.style.value(&mut text, quantity.unit(), value).is_ok() && text.starts_with('-')
    }

    fn node(&self, out: &mut dyn fmt::Write, node: Node) -> fmt::Result {
        let dialect = self.style.dialect;
        let latex = dialect == Dialect::Latex;
        match node {
            Node::Free => Ok(()),
            Node::Literal(x) => write_literal(out, self.style, in_units(self.style, self.step.name.0.unit(), x)),
            Node::Leaf(name, _) if self.reading == Reading::Symbolic => write_symbol(out, dialect, name),
            Node::Leaf(Name(quantity, _), value) => self.style.value(out, quantity.unit(), value),
            Node::Root(x) => {
                let inside = self.thousands(x);
                out.write_str(if latex { r"\sqrt{" } else { "sqrt(" })?;
                self.operand(out, x, if inside & 1 == 0 { inside } else { 0 }, 0)?;
                out.write_str(if latex { "}" } else { ")" })
            }
            Node::Binary(Op::Div, a, b) if latex => {
                out.write_str(r"\frac{")?;
                self.operand(out, a, self.thousands(a), 0)?;
                out.write_str("}{")?;
                self.operand(out, b, self.thousands(b), 0)?;
                out.write_str("}")
            }
            Node::Binary(op, a, b) => {
                let own = binding(node);
                let sum = matches!(op, Op::Add | Op::Sub);
                let (of_a, of_b) = if sum {
                    let common = self.common(a, b);
                    (common, common)
                } else {
                    (self.thousands(a), self.thousands(b))
                };
                self.operand(out, a, of_a, own)?;
                out.write_str(sign(dialect, op, self.reading))?;
                // The right side of a difference or a quotient keeps its brackets on the same level.
                let tight = matches!(op, Op::Sub | Op::Div);
                self.operand(out, b, of_b, if tight { own.wrapping_add(1) } else { own })
            }
        }
    }
}

/// The sign of an operation.
fn sign(dialect: Dialect, op: Op, reading: Reading) -> &'static str {
    match (op, reading, dialect) {
        (Op::Add, ..) => " + ",
        (Op::Sub, ..) => " - ",
        (Op::Div, ..) => "/",
        (Op::Mul, Reading::Symbolic, Dialect::Latex) => r"\,",
        (Op::Mul, Reading::Symbolic, _) => " ",
        (Op::Mul, Reading::Substituted, Dialect::Latex) => r" \cdot ",
        (Op::Mul, Reading::Substituted, Dialect::Html) => " &#215; ",
        (Op::Mul, Reading::Substituted, _) => " x ",
    }
}

/// Writes a value with its unit.
///
/// # Errors
/// Those of the sink.
pub fn write_value(out: &mut dyn fmt::Write, style: &Style, unit: Unit, value: f64) -> fmt::Result {
    style.value(out, unit, value)?;
    write_unit(out, style, unit)
}

/// Writes a unit after its value.
pub(super) fn write_unit(out: &mut dyn fmt::Write, style: &Style, unit: Unit) -> fmt::Result {
    match style.symbol(unit) {
        "" => Ok(()),
        symbol if style.dialect == Dialect::Latex => {
            out.write_str(r"\,\mathrm{")?;
            match symbol {
                "mm^0.5" => out.write_str("mm^{0.5}")?,
                "in^0.5" => out.write_str("in^{0.5}")?,
                "N mm" => out.write_str(r"N\,mm")?,
                "kN mm" => out.write_str(r"kN\,mm")?,
                "lbf in" => out.write_str(r"lbf\,in")?,
                "mm2" => out.write_str("mm^2")?,
                "in2" => out.write_str("in^2")?,
                "mm3" => out.write_str("mm^3")?,
                "in3" => out.write_str("in^3")?,
                "kg/m3" => out.write_str("kg/m^3")?,
                "lb/ft3" => out.write_str("lb/ft^3")?,
                other => out.write_str(other)?,
            }
            out.write_str("}")
        }
        symbol => write!(out, " {symbol}"),
    }
}
