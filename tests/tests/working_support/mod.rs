//! A reader of plain sheets: works every line again in intervals.

use std::collections::HashMap;

use seamwright::bounds::Unit;
use seamwright::shop::{HEAD_FORMS, LENGTH_RULES};
use seamwright::step::QUANTITIES;
use seamwright::working::Style;

/// What was printed under each symbol, the last of each.
pub struct Sheet {
    printed: HashMap<String, String>,
    style: Style,
}

impl Sheet {
    /// The digits last printed under a symbol.
    pub fn printed(&self, symbol: &str) -> Option<&str> {
        self.printed.get(symbol).map(String::as_str)
    }
}

impl Sheet {
    /// All symbols with the digits last printed under them, and half a unit of their last place.
    pub fn symbols(&self) -> impl Iterator<Item = (&str, f64, f64)> {
        let value = |s: &str, digits: &str| Some((number(digits).ok()?, self.half(s).ok()?));
        self.printed.iter().filter_map(move |(s, digits)| value(s, digits).map(|(x, half)| (s.as_str(), x, half)))
    }
}

/// What one of the units of a sheet in inches is in those of a metric one.
pub fn metric(symbol: &str) -> f64 {
    match unit_of(symbol) {
        Some(Unit::Millimetre) => 25.4,
        Some(Unit::Newton) => 4.448_221_615_260_5,
        Some(Unit::Megapascal) => 4.448_221_615_260_5 / 645.16,
        Some(Unit::SquareMillimetre) => 645.16,
        Some(Unit::NewtonMillimetre) => 4.448_221_615_260_5 * 25.4,
        Some(Unit::CubicMillimetre) => 16_387.064,
        Some(Unit::Kilogram) => 0.453_592_37,
        Some(Unit::KilogramPerMetre) => 0.453_592_37 / 0.304_8,
        Some(Unit::KilogramPerCubicMetre) => 0.453_592_37 / 0.028_316_846_592,
        _ => 1.0,
    }
}

/// The unit of a symbol.
fn unit_of(symbol: &str) -> Option<Unit> {
    let stem = symbol.split_once('.').map_or(symbol, |(stem, _)| stem);
    QUANTITIES.iter().find(|q| q.symbol() == stem).map(|q| q.unit())
}

/// All values that printed digits stand for.
#[derive(Clone, Copy, Debug)]
struct Span {
    lo: f64,
    hi: f64,
}

impl Span {
    fn of(lo: f64, hi: f64) -> Span {
        Span { lo, hi }
    }

    fn around(x: f64, half: f64) -> Span {
        Span::of(x - half, x + half)
    }

    fn hull(values: [f64; 4]) -> Span {
        Span::of(values.into_iter().fold(f64::INFINITY, f64::min), values.into_iter().fold(f64::NEG_INFINITY, f64::max))
    }

    fn apply(self, op: char, o: Span) -> Span {
        match op {
            '+' => Span::of(self.lo + o.lo, self.hi + o.hi),
            '-' => Span::of(self.lo - o.hi, self.hi - o.lo),
            '*' => Span::hull([self.lo * o.lo, self.lo * o.hi, self.hi * o.lo, self.hi * o.hi]),
            _ if o.lo <= 0.0 && o.hi >= 0.0 => Span::of(f64::NEG_INFINITY, f64::INFINITY),
            _ => Span::hull([self.lo / o.lo, self.lo / o.hi, self.hi / o.lo, self.hi / o.hi]),
        }
    }

    /// Whether the span meets digits with this half unit; the arithmetic of this test has its own last bits.
    fn meets(self, x: f64, half: f64) -> bool {
        let own = 1e-12 * x.abs();
        self.lo - half - own <= x && x <= self.hi + half + own
    }
}

#[derive(Clone, Debug, PartialEq)]
enum Token {
    Operand(String),
    Op(char),
    Open,
    Close,
    Root,
}

/// Tokens of a line; with symbols, what stands side by side is multiplied.
fn tokens(text: &str, symbols: bool) -> Result<Vec<Token>, String> {
    let mut found: Vec<Token> = Vec::new();
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        let token = match c {
            ' ' => continue,
            '+' | '/' | '-' => Token::Op(c),
            '(' => Token::Open,
            ')' => Token::Close,
            c if c.is_ascii_alphanumeric() => {
                let mut word = String::from(c);
                while let Some(c) = chars.next_if(|c| c.is_ascii_alphanumeric() || ".%'^".contains(*c)) {
                    word.push(c);
                }
                match word.as_str() {
                    "sqrt" => Token::Root,
                    "x" if !symbols => Token::Op('*'),
                    _ => Token::Operand(word),
                }
            }
            c => return Err(format!("{c:?} in {text:?}")),
        };
        let after = matches!(found.last(), Some(Token::Operand(_) | Token::Close));
        if symbols && after && matches!(token, Token::Operand(_) | Token::Open | Token::Root) {
            found.push(Token::Op('*'));
        }
        found.push(token);
        // `(-4)` is one operand.
        if let [.., Token::Open, Token::Op('-'), Token::Operand(digits), Token::Close] = found.as_slice() {
            let operand = Token::Operand(format!("-{digits}"));
            found.truncate(found.len() - 4);
            found.push(operand);
        }
    }
    Ok(found)
}

impl Sheet {
    /// Half a unit of the last place printed for a symbol; whole numbers are exact.
    fn half(&self, symbol: &str) -> Result<f64, String> {
        let unit = unit_of(symbol).ok_or(format!("no symbol {symbol:?}"))?;
        let decimals = i32::from(self.style.decimals(unit));
        Ok(if unit == Unit::Count { 0.0 } else { 0.5 * 10_f64.powi(-decimals) * (1.0 + 1e-9) })
    }

    fn operand(&self, word: &str) -> Result<Span, String> {
        if word == "pi" {
            return Ok(Span::around(std::f64::consts::PI, 0.0));
        }
        if word == "10^9" {
            return Ok(Span::around(1e9, 0.0));
        }
        if word.starts_with(|c: char| c.is_ascii_digit() || c == '-') {
            return Ok(Span::around(number(word)?, 0.0));
        }
        let digits = self.printed(word).ok_or(format!("{word} was not printed before"))?;
        Ok(Span::around(number(digits)?, self.half(word)?))
    }

    /// Works out symbols by what was printed.
    fn work(&self, tokens: &[Token]) -> Result<Span, String> {
        let mut at = 0;
        let found = self.sum(tokens, &mut at)?;
        if at == tokens.len() { Ok(found) } else { Err(format!("left over: {:?}", &tokens[at..])) }
    }

    fn sum(&self, tokens: &[Token], at: &mut usize) -> Result<Span, String> {
        let mut value = self.product(tokens, at)?;
        while let Some(Token::Op(op @ ('+' | '-'))) = tokens.get(*at) {
            *at += 1;
            value = value.apply(*op, self.product(tokens, at)?);
        }
        Ok(value)
    }

    fn product(&self, tokens: &[Token], at: &mut usize) -> Result<Span, String> {
        let mut value = self.factor(tokens, at)?;
        while let Some(Token::Op(op @ ('*' | '/'))) = tokens.get(*at) {
            *at += 1;
            value = value.apply(*op, self.factor(tokens, at)?);
        }
        Ok(value)
    }

    fn factor(&self, tokens: &[Token], at: &mut usize) -> Result<Span, String> {
        let token = tokens.get(*at).ok_or("the line breaks off")?;
        *at += 1;
        match token {
            Token::Operand(word) => self.operand(word),
            Token::Root => {
                let x = self.factor(tokens, at)?;
                Ok(Span::of(x.lo.max(0.0).sqrt(), x.hi.max(0.0).sqrt()))
            }
            Token::Open => {
                let inner = self.sum(tokens, at)?;
                *at += 1;
                if tokens.get(*at - 1) == Some(&Token::Close) { Ok(inner) } else { Err("a bracket stays open".into()) }
            }
            other => Err(format!("{other:?} where a value should be")),
        }
    }

    /// The substituted line is the symbolic one with the digits printed before.
    fn same(&self, symbolic: &[Token], substituted: &[Token]) -> Result<(), String> {
        if symbolic.len() != substituted.len() {
            return Err(format!("{symbolic:?} against {substituted:?}"));
        }
        for pair in symbolic.iter().zip(substituted) {
            let same = match pair {
                (Token::Operand(symbol), Token::Operand(digits)) => {
                    let literal = symbol == "pi" || symbol.starts_with(|c: char| c.is_ascii_digit());
                    if literal { symbol == digits } else { self.printed(symbol) == Some(digits) }
                }
                (a, b) => a == b,
            };
            if !same {
                return Err(format!("{pair:?}"));
            }
        }
        Ok(())
    }

    /// A candidate of a choice: `digits`, or `symbols = digits`.
    fn candidate<'t>(&self, name: &str, text: &'t str) -> Result<&'t str, String> {
        let Some((symbols, digits)) = text.split_once(" = ") else {
            let known = self.printed(name) == Some(text) || text == "0";
            return if known { Ok(text) } else { Err(format!("{text} comes from nowhere")) };
        };
        let span = self.work(&tokens(symbols, true)?)?;
        let exact = self.printed(symbols).is_none_or(|printed| printed == digits);
        let meets = span.meets(number(digits)?, self.half(name)?);
        if exact && meets { Ok(digits) } else { Err(format!("{symbols} is not {digits}")) }
    }

    /// The nearer of two pitches to the one asked for, by how far they were printed to be off.
    fn nearer(&self, name: &str, inside: &str, result: &str) -> Result<(), String> {
        let (a, b) = inside.strip_suffix(')').and_then(|i| i.split_once("; ")).ok_or("no two candidates")?;
        if !(a.starts_with("p") && b.starts_with("p") && (a[..2] == *"pf") != (b[..2] == *"pf")) {
            return Err(format!("{inside} are not the two pitches"));
        }
        self.candidate(name, a)?;
        self.candidate(name, b)?;
        let off = |symbol: &str| self.printed(symbol).ok_or(format!("no {symbol}")).and_then(number);
        let (over, under) = (off("uf")?, off("um")?);
        // Digits that are alike may stand for either.
        let taken = if over < under { "pf" } else { "pm" };
        let same = (over - under).abs() <= 2.0 * self.half("uf")?;
        if same || self.printed(taken) == Some(result) { Ok(()) } else { Err(format!("{taken} is nearer")) }
    }

    /// The pitch that was left passes the limit for which it was left.
    fn passes_its_limit(&self, left: &str, least: bool) -> Result<(), String> {
        let value = |symbol: &str| self.printed(symbol).and_then(|digits| number(digits).ok());
        let pitch = value(&format!("{left}.1")).or_else(|| value(left)).ok_or(format!("no {left}"))?;
        let limit = value(if least { "pmin" } else { "pmax" }).ok_or("no limit of the pitch")?;
        let room = 2.0 * self.half(left)?;
        let passes = if least { pitch <= limit + room } else { pitch >= limit - room };
        if passes { Ok(()) } else { Err(format!("{left} = {pitch} is within {limit}")) }
    }

    /// A choice or a rounding.
    fn choice(&self, name: &str, words: &str, text: &str, result: &str) -> Result<(), String> {
        let (r, half) = (number(result)?, self.half(name)?);
        if let Some(inside) = text.strip_prefix("nearer(") {
            return self.nearer(name, inside, result);
        }
        let greater = text.starts_with("max(");
        if let Some(inside) = text.strip_prefix(if greater { "max(" } else { "min(" }) {
            let (a, b) = inside.strip_suffix(')').and_then(|i| i.split_once("; ")).ok_or("no two candidates")?;
            if words.contains("the one of the two") {
                self.passes_its_limit(if greater { "pm" } else { "pf" }, greater)?;
            }
            let (a, b) = (self.candidate(name, a)?, self.candidate(name, b)?);
            let other = number(if result == a { b } else { a })?;
            let right = if greater { r >= other * (1.0 - 1e-8) } else { r <= other * (1.0 + 1e-8) };
            return if right && (result == a || result == b) { Ok(()) } else { Err(format!("{text} is not {result}")) };
        }
        let Some(from) = text.strip_suffix(" ->") else {
            return self.candidate(name, &format!("{text} = {result}")).map(|_| ());
        };
        let v = number(self.candidate(name, from)?)?;
        let wrong = || Err(format!("{v} does not become {r} when {words}"));
        let Some((_, step)) = words.split_once("multiple of ") else {
            return if r >= v - 2.0 * half { Ok(()) } else { wrong() };
        };
        let step = number(step.split(' ').next().unwrap_or(""))?;
        let room = if words.contains("nearest") { step / 2.0 } else { step };
        let side = if words.contains("rounded up") { r - v } else { v - r };
        let side = if words.contains("nearest") { side.abs() } else { side };
        let count = if step > 0.0 { (r / step).round() } else { 0.0 };
        let whole = step <= 0.0 || (r - count * step).abs() <= half * (count + 1.0);
        if side >= -2.0 * half && side <= room + 2.0 * half && whole { Ok(()) } else { wrong() }
    }

    /// One numbered step: its words, and its equations.
    fn step(&mut self, words: &str, equations: &[String]) -> Result<(), String> {
        let split: Option<Vec<(&str, &str)>> = equations.iter().map(|e| e.split_once(" = ")).collect();
        let split = split.ok_or("no equation")?;
        let (name, last) = *split.last().ok_or("no equation")?;
        if split.iter().any(|(n, _)| *n != name) {
            return Err("several names in one step".into());
        }
        // The result, without its unit, stands last.
        let (before, result) = match (last.rfind(" -> "), last.rfind(" = ")) {
            (Some(at), _) => (&last[..at + 3], &last[at + 4..]),
            (None, Some(at)) => (&last[..at], &last[at + 3..]),
            (None, None) => ("", last),
        };
        let result = result.split(' ').next().unwrap_or("");
        let half = self.half(name)?;
        let value = number(result)?;
        match split.as_slice() {
            [(_, symbolic), rest @ .., _] => {
                let symbols = tokens(symbolic, true)?;
                if let [(_, substituted)] = rest {
                    self.same(&symbols, &tokens(substituted, false)?)?;
                }
                let span = self.work(&symbols)?;
                if !span.meets(value, half) {
                    return Err(format!("{symbolic} gives {span:?}, printed {result}"));
                }
            }
            _ if !before.is_empty() => self.choice(name, words, before, result)?,
            _ => {
                let row =
                    words.rsplit_once(": as row ").or_else(|| words.rsplit_once(": as rivet ")).map(|(_, row)| row);
                let named = |name: &str| words.contains(&format!(" ({name}; "));
                let taken = words.ends_with("(given)")
                    || words.contains("(rule book: ")
                    || LENGTH_RULES.iter().any(|rule| named(rule.name()))
                    || HEAD_FORMS.iter().any(|form| named(form.name()))
                    || words.contains(" (the layout of the holes: ")
                    || words.contains(" (the form: ");
                let stem = name.split_once('.').map_or(name, |(stem, _)| stem);
                let as_row = row.is_some_and(|row| self.printed(&format!("{stem}.{row}")) == Some(result));
                if !(taken || as_row) {
                    return Err(format!("{result} comes from nowhere"));
                }
            }
        }
        self.printed.insert(name.to_owned(), result.to_owned());
        Ok(())
    }
}

fn number(text: &str) -> Result<f64, String> {
    text.parse().map_err(|_| format!("{text:?} is no number"))
}

/// Works a plain sheet again.
pub fn rework(text: &str, style: &Style) -> Result<Sheet, String> {
    let mut sheet = Sheet { printed: HashMap::new(), style: *style };
    let (mut words, mut equations) = (String::new(), Vec::<String>::new());
    let mut next = 1;
    // What governs, the list of modes and the rules are no steps.
    let (steps, _) = text.split_once("\nWhat governs\n").ok_or("no verdicts")?;
    for line in steps.lines().chain(["(end)"]) {
        if let Some(more) = line.strip_prefix("          ") {
            let last = equations.last_mut().ok_or("a line goes on that did not begin")?;
            *last = format!("{last} {more}");
        } else if let Some(equation) = line.strip_prefix("      ") {
            equations.push(equation.to_owned());
        } else if line == "(end)" || line.is_empty() || line.starts_with(&format!("({next}) ")) {
            next += usize::from(line.starts_with('(') && line != "(end)");
            if !equations.is_empty() {
                sheet.step(&words, &equations).map_err(|e| format!("{words}: {e}"))?;
            }
            (words, equations) = (line.to_owned(), Vec::new());
        } else {
            words = format!("{words} {line}");
        }
    }
    Ok(sheet)
}

/// How many digits of the first lines were changed, one on each line, and the lines where nobody noticed.
pub fn changed_digits(text: &str, lines: usize, style: &Style) -> (usize, Vec<String>) {
    let (mut tried, mut missed) = (0, Vec::new());
    for (at, line) in text.lines().enumerate().take(lines).filter(|(_, l)| l.starts_with("      ")) {
        // The first digit of the last number of the line, before its unit.
        let ends = |c: char| !(c.is_ascii_digit() || c == '.' || c.is_alphabetic() || c == ' ' || c == '^');
        let unit = [" kg/m3", " kg/m"].into_iter().find(|unit| line.ends_with(unit)).map_or(0, str::len);
        let number = line[..line.len() - unit].rfind(ends).unwrap();
        let Some(digit) = line[number..].find(|c: char| c.is_ascii_digit()).map(|d| d + number) else { continue };
        if line[number..digit].chars().any(char::is_alphabetic) {
            continue;
        }
        let old = line.as_bytes()[digit];
        let new = if old == b'9' { '8' } else { char::from(old + 1) };
        let changed = format!("{}{new}{}", &line[..digit], &line[digit + 1..]);
        let sheet: Vec<&str> =
            text.lines().enumerate().map(|(i, l)| if i == at { changed.as_str() } else { l }).collect();
        tried += 1;
        if rework(&sheet.join("\n"), style).is_ok() {
            missed.push(changed);
        }
    }
    (tried, missed)
}
