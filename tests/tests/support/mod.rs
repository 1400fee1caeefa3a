//! Helpers of the rule tests: arithmetic as it stands in the vectors, forms by name, joints and stresses by symbol.
#![allow(dead_code, reason = "each test uses its share")]

use std::collections::BTreeMap;

use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};

/// Values by symbol.
pub type Symbols = BTreeMap<String, f64>;

/// Works out hand arithmetic: `+ - * / ( )`, `sqrt`, `pi`, units as factors, and the symbols given.
///
/// Units are written out here from their definitions, so that nothing of the library under test is used: the inch of
/// 25.4 mm, the pound of 0.453 592 37 kg, standard gravity 9.806 65 m/s2, the long ton of 2240 lb.
pub fn work_out(text: &str, symbols: &Symbols) -> f64 {
    let mut rest = Scan { text: text.as_bytes(), at: 0, symbols };
    let value = rest.sum();
    rest.blank();
    assert_eq!(rest.at, text.len(), "arithmetic cannot be read from byte {}: {text}", rest.at);
    value
}

struct Scan<'a> {
    text: &'a [u8],
    at: usize,
    symbols: &'a Symbols,
}

impl Scan<'_> {
    fn blank(&mut self) {
        while self.text.get(self.at) == Some(&b' ') {
            self.at += 1;
        }
    }

    fn takes(&mut self, sign: u8) -> bool {
        self.blank();
        let found = self.text.get(self.at) == Some(&sign);
        self.at += usize::from(found);
        found
    }

    fn sum(&mut self) -> f64 {
        let mut value = self.product();
        loop {
            if self.takes(b'+') {
                value += self.product();
            } else if self.takes(b'-') {
                value -= self.product();
            } else {
                return value;
            }
        }
    }

    fn product(&mut self) -> f64 {
        let mut value = self.factor();
        loop {
            if self.takes(b'*') {
                value *= self.factor();
            } else if self.takes(b'/') {
                value /= self.factor();
            } else {
                return value;
            }
        }
    }

    fn factor(&mut self) -> f64 {
        if self.takes(b'-') {
            return -self.factor();
        }
        if self.takes(b'(') {
            let value = self.sum();
            assert!(self.takes(b')'), "a bracket is not closed");
            return value;
        }
        let from = self.at;
        while self.text.get(self.at).is_some_and(|c| c.is_ascii_alphanumeric() || *c == b'.' || *c == b'_') {
            self.at += 1;
        }
        let word = str::from_utf8(&self.text[from..self.at]).unwrap();
        if let Ok(number) = word.parse::<f64>() {
            return number;
        }
        const PSI: f64 = 0.453_592_37 * 9.806_65 / (25.4 * 25.4);
        match word {
            "sqrt" => {
                assert!(self.takes(b'('), "sqrt needs a bracket");
                let value = self.sum();
                assert!(self.takes(b')'), "a bracket is not closed");
                value.sqrt()
            }
            "pi" => std::f64::consts::PI,
            "in" => 25.4,
            "psi" => PSI,
            "ton" => 2240.0 * PSI,
            "kgmm2" => 9.806_65,
            _ => *self.symbols.get(word).unwrap_or_else(|| panic!("no value for {word:?}")),
        }
    }
}

/// Whether two figures agree as far as two ways of adding the same up can: a relative 1e-11.
pub fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-11 * a.abs().max(b.abs()).max(1e-30)
}

/// A form by name: `lap 2`, `single 1`, `double 3 omitted`, `unequal 3`, `rows double 1x2 3x2`; `chain` at the end.
pub fn form(name: &str) -> Form {
    let mut words: Vec<&str> = name.split(' ').collect();
    let chain = words.last() == Some(&"chain");
    if chain {
        words.pop();
    }
    let omitted = words.last() == Some(&"omitted");
    if omitted {
        words.pop();
    }
    let count = |w: &[&str]| w[1].parse::<u8>().unwrap();
    let made = match words[0] {
        "lap" => Form::lap(count(&words)),
        "single" => Form::single_strap(count(&words)),
        "double" => Form::double_strap(count(&words)),
        "unequal" => Form::unequal_straps(count(&words)),
        "rows" => {
            let kind = match words[1] {
                "lap" => JointKind::Lap,
                "single" => JointKind::SingleStrap,
                _ => JointKind::DoubleStrap,
            };
            let row = |w: &&str| w.split_once('x').map(|(n, z)| (n.parse().unwrap(), z.parse().unwrap())).unwrap();
            let rows: Vec<(u8, u8)> = words[2..].iter().map(row).collect();
            Form::from_rows(kind, Arrangement::Zigzag, &rows)
        }
        other => panic!("no form {other:?}"),
    };
    let made = made.unwrap();
    let made = if omitted { made.omit_alternate().unwrap() } else { made };
    if chain { made.chain() } else { made }
}

/// Stresses by symbol: `st` tension, `ss` shear, `sc` bearing, `sp` plate shear; MPa.
pub fn materials(s: &Symbols) -> Materials {
    let mut made = Materials::new(Stress::mpa(s["st"]), Stress::mpa(s["ss"]));
    if let Some(sc) = s.get("sc") {
        made = made.bearing(Stress::mpa(*sc));
    }
    if let Some(sp) = s.get("sp") {
        made = made.shear_out(Stress::mpa(*sp));
    }
    made
}

/// A joint by symbol, mm: `p` strip, `t` plate, `d` hole, `dr` rivet, `t2` plate B, `b` straps alike, `bw` and `bn`
/// wide and narrow strap, `g` all row distances (or `g1`, `g2`, ...), `m` margin.
pub fn joint(form: Form, s: &Symbols) -> Result<Joint, Error> {
    let mut spec = JointSpec::new(form, mm(s["p"]), mm(s["t"]), mm(s["d"]));
    if let Some(x) = s.get("dr") {
        spec = spec.rivet(mm(*x));
    }
    if let Some(x) = s.get("t2") {
        spec = spec.other_plate(mm(*x));
    }
    if let Some(x) = s.get("b") {
        spec = spec.strap(mm(*x));
    }
    if let (Some(wide), Some(narrow)) = (s.get("bw"), s.get("bn")) {
        spec = spec.straps(mm(*wide), mm(*narrow));
    }
    for row in 1..form.row_count() {
        if let Some(x) = s.get(&format!("g{row}")).or(s.get("g")) {
            spec = spec.back_pitch(row, mm(*x));
        }
    }
    if let Some(x) = s.get("m") {
        spec = spec.margin(mm(*x));
    }
    spec.build()
}

/// Millimetres.
pub fn mm(x: f64) -> Length {
    Length::mm(x)
}

/// Symbols from pairs.
pub fn symbols(pairs: &[(&str, f64)]) -> Symbols {
    pairs.iter().map(|(k, v)| ((*k).to_string(), *v)).collect()
}

/// An error's kind and field.
pub fn of<T>(result: Result<T, Error>) -> (ErrorKind, Field) {
    let error = result.err().expect("an error was expected");
    (error.kind, error.field)
}
