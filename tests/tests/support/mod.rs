//! Helpers of the rule tests: arithmetic as it stands in the vectors, forms by name, joints and stresses by symbol.
#![allow(dead_code, reason = "each test uses its share")]

use std::collections::BTreeMap;

use seamwright::bounds::Field;
use seamwright::check::check;
use seamwright::error::{EntryNo, Error, ErrorKind};
use seamwright::group::{Group, GroupLoad, GroupStress, check_group};
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::{Materials, PlateStress};
use seamwright::quantities::{Force, Length, Stress};
use seamwright::rules::{Entry, INDIAN, METRIC, Metal, Rules, US_CODE, US_EXISTING, US_MONTANA};
use seamwright::sizing::{Brief, size};
use seamwright::teach::{Effect, Family, Setting, Task, problem};
use seamwright::working::{WorkingError, into_buffer};

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
            "pi" => core::f64::consts::PI,
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

/// A bad input, the error it raised, and what that error must say.
pub struct Bad {
    /// What was asked for.
    pub what: &'static str,
    /// What came back.
    pub error: Error,
    /// Kind and field.
    pub about: (ErrorKind, Field),
    /// Value and limit; `NAN` where there is none.
    pub figures: (f64, f64),
    /// The entries behind it.
    pub entries: (EntryNo, EntryNo),
    /// Row or line.
    pub index: u8,
}

/// Realistic bad inputs through the public door, at least one for each kind of error. Figures by hand.
pub fn bad_inputs() -> Vec<Bad> {
    use ErrorKind as K;
    use Field as F;
    let none = EntryNo::NONE;
    let nan = f64::NAN;
    let mut list = Vec::new();
    let mut add = |what, error: Option<Error>, about, figures, entries, index| {
        let error = error.unwrap_or_else(|| panic!("{what}: accepted"));
        list.push(Bad { what, error, about, figures, entries, index });
    };
    let base = symbols(&[("p", 60.0), ("t", 10.0), ("d", 20.0), ("st", 80.0), ("ss", 60.0), ("sc", 120.0)]);
    let changed = |changes: &[(&str, f64)]| {
        let mut s = base.clone();
        s.extend(symbols(changes));
        s
    };
    let built = |name: &str, changes: &[(&str, f64)]| joint(form(name), &changed(changes)).err();
    let steel = materials(&base);
    let sized = |brief: Brief, rules: &Rules| size(&brief, rules).err();
    let lap = |t: f64| Brief::new(form("lap 1"), mm(t), steel);
    let rows = |list: &[(u8, u8)]| Form::from_rows(JointKind::Lap, Arrangement::Zigzag, list).err();

    add("plate not a number", built("lap 1", &[("t", nan)]), (K::NotFinite, F::Plate), (nan, nan), (none, none), 0);
    add(
        "endless pitch",
        built("lap 1", &[("p", f64::INFINITY)]),
        (K::NotFinite, F::Pitch),
        (f64::INFINITY, nan),
        (none, none),
        0,
    );
    add("no plate", built("lap 1", &[("t", 0.0)]), (K::TooSmall, F::Plate), (0.0, 0.5), (none, none), 0);
    add("plate below nothing", built("lap 1", &[("t", -3.0)]), (K::TooSmall, F::Plate), (-3.0, 0.5), (none, none), 0);
    add("hole in metres", built("lap 1", &[("d", 0.02)]), (K::TooSmall, F::Hole), (0.02, 1.0), (none, none), 1);
    add("plate in micrometres", built("lap 1", &[("t", 1e4)]), (K::TooLarge, F::Plate), (1e4, 200.0), (none, none), 0);
    add("nine rows", rows(&[(1, 1); 9]), (K::TooLarge, F::Rows), (9.0, 8.0), (none, none), 0);
    add("no rows", rows(&[]), (K::TooSmall, F::Rows), (0.0, 1.0), (none, none), 0);
    add("five rows in a lap", Form::lap(5).err(), (K::TooLarge, F::Rows), (5.0, 4.0), (none, none), 0);
    add("a row without rivets", rows(&[(1, 1), (0, 1)]), (K::TooSmall, F::RowRivets), (0.0, 1.0), (none, none), 2);
    add("a row of 61", rows(&[(61, 1)]), (K::TooLarge, F::RowRivets), (61.0, 60.0), (none, none), 1);
    add("three planes", rows(&[(1, 3)]), (K::TooLarge, F::ShearPlanes), (3.0, 2.0), (none, none), 1);
    add("double shear in a lap", rows(&[(1, 2)]), (K::Inconsistent, F::ShearPlanes), (2.0, 1.0), (none, none), 1);
    add(
        "no inner row to omit rivets against",
        form("lap 1").omit_alternate().err(),
        (K::Inconsistent, F::Form),
        (nan, nan),
        (none, none),
        1,
    );
    let bearing = check(&joint(form("lap 1"), &base).unwrap(), &bare(), &METRIC.rules).err();
    add("no bearing stress", bearing, (K::Missing, F::Bearing), (nan, nan), (Entry::BEARING_CHECKED.no(), none), 0);
    let iron = INDIAN.rules.assumed_materials(Metal::Iron, Metal::Iron).err();
    add("plate without strength", iron, (K::Missing, F::Tension), (nan, nan), (Entry::IRON_TENSION.no(), none), 0);
    let silent = sized(Brief::new(form("double 1"), mm(10.0), steel), &US_EXISTING.rules);
    add(
        "straps the book is silent on",
        silent,
        (K::Missing, F::WideStrap),
        (nan, nan),
        (Entry::STRAP_RULE.no(), none),
        0,
    );
    add(
        "a strap in a lap",
        built("lap 1", &[("b", 8.0)]),
        (K::NotForThisForm, F::WideStrap),
        (8.0, nan),
        (none, none),
        0,
    );
    add(
        "plate B in a butt joint",
        built("double 1", &[("t2", 8.0)]),
        (K::NotForThisForm, F::OtherPlate),
        (8.0, nan),
        (none, none),
        0,
    );
    let third = JointSpec::new(form("lap 2"), mm(60.0), mm(10.0), mm(20.0)).row(3, mm(20.0), None).build().err();
    add("a third row of two", third, (K::NotForThisForm, F::Rows), (3.0, 2.0), (none, none), 0);
    add(
        "hole as wide as the pitch",
        built("lap 1", &[("p", 20.0)]),
        (K::HolesFillPitch, F::Pitch),
        (20.0, 20.0),
        (none, none),
        1,
    );
    add(
        "inner holes that fill the pitch",
        built("double 2 omitted", &[("p", 39.0)]),
        (K::HolesFillPitch, F::Pitch),
        (39.0, 40.0),
        (none, none),
        2,
    );
    add(
        "overlapping rows",
        built("lap 3 chain", &[("g1", 45.0), ("g2", 15.0)]),
        (K::RowsOverlap, F::BackPitch),
        (15.0, 20.0),
        (none, none),
        2,
    );
    add(
        "margin in the hole",
        built("lap 1", &[("m", 9.0)]),
        (K::HoleCutsEdge, F::Margin),
        (9.0, 10.0),
        (none, none),
        0,
    );
    add(
        "rivet over its hole",
        built("lap 1", &[("dr", 21.0)]),
        (K::RivetExceedsHole, F::Rivet),
        (21.0, 20.0),
        (none, none),
        1,
    );
    let thick = Brief::new(form("lap 1"), mm(25.4), steel);
    add(
        "plate beyond the table of holes",
        sized(thick, &US_CODE.rules),
        (K::BeyondTable, F::Plate),
        (25.4, nan),
        (Entry::HOLE_TABLE_PLATE.no(), none),
        0,
    );
    // 6 sqrt 100 = 60 over the largest hole of 50.
    add(
        "no size so large",
        sized(lap(100.0), &METRIC.rules),
        (K::NoStandardSize, F::Hole),
        (60.0, 50.0),
        (Entry::SERIES_HOLE.no(), none),
        0,
    );
    add(
        "a book without sizes",
        sized(lap(10.0), &US_MONTANA.rules),
        (K::Missing, F::Hole),
        (nan, nan),
        (Entry::SERIES_HOLE.no(), none),
        0,
    );
    // 2 x 30 = 60 over 1.31 x 5 + 41.28 = 47.83.
    add(
        "cap below floor",
        sized(lap(5.0).hole(mm(30.0), None), &METRIC.rules),
        (K::NoAdmissiblePitch, F::Pitch),
        (60.0, 47.83),
        (Entry::PITCH_MAX_LAP.no(), Entry::PITCH_LEAST.no()),
        0,
    );
    // 1.5 x 20 = 30 up to 40; at most 1.75 x 20 = 35.
    let coarse = US_CODE.rules.with(Entry::MARGIN_STEP, 20.0).unwrap();
    add(
        "margin rounded past its greatest",
        sized(lap(10.0).hole(mm(20.0), None), &coarse),
        (K::NoAdmissibleMargin, F::Margin),
        (40.0, 35.0),
        (Entry::MARGIN_GREATEST.no(), Entry::MARGIN_LEAST.no()),
        0,
    );
    add(
        "unknown key",
        METRIC.rules.with_key("hole.root", 6.0).err(),
        (K::UnknownKey, F::RuleEntry),
        (6.0, nan),
        (none, none),
        0,
    );
    add(
        "half a choice",
        METRIC.rules.with(Entry::PITCH_ROUND, 0.5).err(),
        (K::WrongChoice, F::RuleEntry),
        (0.5, 2.0),
        (Entry::PITCH_ROUND.no(), none),
        0,
    );
    add(
        "no such line of the balance",
        METRIC.rules.with(Entry::PITCH_BALANCE, 3.0).err(),
        (K::TooLarge, F::RuleEntry),
        (3.0, 2.0),
        (Entry::PITCH_BALANCE.no(), none),
        0,
    );
    let upset = METRIC.rules.with(Entry::SERIES_HOLE.at(2), 14.0).unwrap();
    add(
        "a series that falls",
        sized(lap(10.0), &upset),
        (K::BookUnsound, F::RuleEntry),
        (14.0, nan),
        (Entry::SERIES_HOLE.at(2).no(), none),
        0,
    );
    add("a length without its unit", Length::parse("12").err(), (K::Unreadable, F::Text), (12.0, nan), (none, none), 0);
    add("no number", Length::parse("wide mm").err(), (K::Unreadable, F::Text), (nan, nan), (none, none), 0);
    // Nine bytes for a text of ten.
    let short = into_buffer(&mut [0; 9], |out| Ok(out.write_str("0123456789")?)).err();
    let short = match short {
        Some(WorkingError::Routine(e)) => Some(e),
        _ => None,
    };
    add("a short buffer", short, (K::NoSpace, F::Text), (nan, 10.0), (none, none), 0);
    let other = PlateStress { tension: Stress::mpa(0.0), bearing: None, shear_out: None };
    add(
        "straps without strength",
        steel.other(other).validate().err(),
        (K::TooSmall, F::OtherTension),
        (0.0, 0.01),
        (none, none),
        0,
    );
    let family =
        Family { form: Form::lap(2).unwrap(), setting: Setting::Boiler, task: Task::Check, effect: Effect::Combined };
    let none_drawn = problem(1, &family, &METRIC.rules).err();
    add("an inner row that is none", none_drawn, (K::NoProblem, F::Form), (nan, nan), (none, none), 0);
    let group = |places: &[(f64, f64)], along: f64| {
        let places: Vec<_> = places.iter().map(|(x, y)| (mm(*x), mm(*y))).collect();
        let load = GroupLoad::force(Force::n(along), Force::n(-500.0), mm(100.0), mm(0.0));
        let stress = GroupStress::new(Stress::mpa(60.0));
        Group::at(&places).and_then(|g| check_group(&g.hole(mm(20.0)), &load, &stress, &METRIC.rules)).err()
    };
    add(
        "rivets of a group on top of each other",
        group(&[(0.0, 0.0), (0.0, 12.0)], 0.0),
        (K::HolesOverlap, F::RivetDistance),
        (12.0, 20.0),
        (none, none),
        2,
    );
    // 500 N, 100 mm beside the only rivet.
    add(
        "one rivet under a moment",
        group(&[(0.0, 0.0)], 0.0),
        (K::RivetTurns, F::Couple),
        (-50_000.0, 0.0),
        (none, none),
        0,
    );
    add("safety of 21", steel.divided_by(21.0).err(), (K::TooLarge, F::SafetyFactor), (21.0, 20.0), (none, none), 0);
    list
}

/// Plate and rivets without a bearing stress.
fn bare() -> Materials {
    Materials::new(Stress::mpa(80.0), Stress::mpa(60.0))
}
