//! One line of the working: the symbolic expression and the substituted one, in each dialect.

use core::f64::consts::PI;
use core::fmt;

use super::pad::{Node, Op, Step};
use super::style::{Dialect, Style};
use crate::bounds::Unit;
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

/// A constant of a formula: small whole numbers and fractions of pi by their names.
fn write_literal(out: &mut dyn fmt::Write, style: &Style, x: f64) -> fmt::Result {
    let latex = style.dialect == Dialect::Latex;
    if x == PI {
        return out.write_str(if latex { r"\pi" } else { "pi" });
    }
    if x == PI / 4.0 {
        return out.write_str(if latex { r"\frac{\pi}{4}" } else { "pi/4" });
    }
    text::write_plain_with(out, x, 9, style.mark).map_err(|_| fmt::Error)
}

/// Writes the expression at a place of a step's line.
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
    let node = step.node(place);
    match node {
        Node::Free => Ok(()),
        Node::Literal(x) => write_literal(out, style, x),
        Node::Leaf(name, _) if reading == Reading::Symbolic => write_symbol(out, style.dialect, name),
        Node::Leaf(Name(quantity, _), value) => style.value(out, quantity.unit(), value),
        Node::Root(x) => {
            let latex = style.dialect == Dialect::Latex;
            out.write_str(if latex { r"\sqrt{" } else { "sqrt(" })?;
            operand(out, style, step, x, reading, 0)?;
            out.write_str(if latex { "}" } else { ")" })
        }
        Node::Binary(Op::Div, a, b) if style.dialect == Dialect::Latex => {
            out.write_str(r"\frac{")?;
            operand(out, style, step, a, reading, 0)?;
            out.write_str("}{")?;
            operand(out, style, step, b, reading, 0)?;
            out.write_str("}")
        }
        Node::Binary(op, a, b) => {
            let own = binding(node);
            operand(out, style, step, a, reading, own)?;
            out.write_str(sign(style.dialect, op, reading))?;
            // The right side of a difference or a quotient keeps its brackets on the same level.
            let tight = matches!(op, Op::Sub | Op::Div);
            operand(out, style, step, b, reading, if tight { own.wrapping_add(1) } else { own })
        }
    }
}

/// An operand, in brackets where it binds less tightly than the operation around it.
fn operand(
    out: &mut dyn fmt::Write,
    style: &Style,
    step: &Step<'_>,
    place: u8,
    reading: Reading,
    around: u8,
) -> fmt::Result {
    let node = step.node(place);
    let fraction = style.dialect == Dialect::Latex && matches!(node, Node::Binary(Op::Div, ..));
    let negative = reading == Reading::Substituted && matches!(node, Node::Leaf(_, v) if v < 0.0);
    let quarter = matches!(node, Node::Literal(x) if x == PI / 4.0) && style.dialect != Dialect::Latex;
    let own = if quarter { 2 } else { binding(node) };
    let brackets = (own < around && !fraction) || (negative && around > 0);
    let latex = style.dialect == Dialect::Latex;
    if brackets {
        out.write_str(if latex { r"\left(" } else { "(" })?;
    }
    write_expression(out, style, step, place, reading)?;
    if brackets {
        out.write_str(if latex { r"\right)" } else { ")" })?;
    }
    Ok(())
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
                other => out.write_str(other)?,
            }
            out.write_str("}")
        }
        symbol => write!(out, " {symbol}"),
    }
}
