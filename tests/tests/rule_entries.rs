//! What each built-in book says, rule by rule, against figures typed from the sources and worked out by hand; and the
//! proof that these figures cover every entry: changed by one per cent, each makes one of them fail.

mod shells;
mod support;

use std::collections::BTreeMap;

use seamwright::bounds::Unit;
use seamwright::check::{Analysis, Findings, check};
use seamwright::given::Given;
use seamwright::modes::{Cut, Lens, Strengths};
use seamwright::proportion::{self, Covered, HoleBasis, Limit, Strap};
use seamwright::rules::{self, Clause, Entry, EntryKind, Item, JointKind, Metal, RuleBook, Rules, info};
use seamwright::sizing::{Brief, size};
use seamwright::step::Plain;
use serde::Deserialize;
use support::{Symbols, form, joint, materials, mm, near, work_out};

const FILES: [&str; 12] = [
    include_str!("../vectors/rules-metric.toml"),
    include_str!("../vectors/rules-indian.toml"),
    include_str!("../vectors/rules-us-code.toml"),
    include_str!("../vectors/rules-us-existing.toml"),
    include_str!("../vectors/rules-british-marine.toml"),
    include_str!("../vectors/rules-german-1908.toml"),
    include_str!("../vectors/rules-structural.toml"),
    include_str!("../vectors/rules-us-michigan.toml"),
    include_str!("../vectors/rules-us-north-carolina.toml"),
    include_str!("../vectors/rules-us-montana.toml"),
    include_str!("../vectors/rules-us-california.toml"),
    include_str!("../vectors/rules-us-locomotive.toml"),
];

/// One file of vectors.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    book: String,
    /// Keys of the entries by the label that the source supports.
    labels: BTreeMap<String, Vec<String>>,
    vector: Vec<Vector>,
}

/// One application of a rule.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Vector {
    id: String,
    source: String,
    routine: String,
    #[serde(default)]
    form: String,
    /// Given: symbols with hand arithmetic.
    #[serde(default)]
    given: BTreeMap<String, Figure>,
    /// Entries that the user sets first, such as a strength from a certificate.
    #[serde(default)]
    set: BTreeMap<String, Figure>,
    /// Expected figures, as hand arithmetic in the symbols given; or a word.
    expect: BTreeMap<String, Figure>,
    /// Expected verdicts of findings.
    #[serde(default)]
    verdict: BTreeMap<String, String>,
    /// Members torn: plate, other or wide strap, narrow strap.
    #[serde(default)]
    cut: [u8; 3],
    #[serde(default)]
    row: usize,
    /// Lines of a list.
    #[serde(default)]
    keys: Vec<Figure>,
    #[serde(default)]
    values: Vec<Figure>,
}

/// A number, hand arithmetic, or a word.
#[derive(Deserialize, Clone)]
#[serde(untagged)]
enum Figure {
    Number(f64),
    Text(String),
}

impl Figure {
    fn value(&self, symbols: &Symbols) -> f64 {
        match self {
            Figure::Number(x) => *x,
            Figure::Text(text) => work_out(text, symbols),
        }
    }

    fn is_word(&self) -> bool {
        matches!(self, Figure::Text(t) if WORDS.contains(&t.as_str()))
    }
}

const WORDS: [&str; 4] = ["none", "unknown", "beyond", "missing"];

enum Answer {
    Number(f64),
    Word(&'static str),
}
use Answer::{Number, Word};

type Answers = BTreeMap<String, Answer>;

fn files() -> Vec<File> {
    FILES.iter().map(|text| toml::from_str(text).unwrap_or_else(|e| panic!("{e}"))).collect()
}

fn limit(l: Limit<f64>) -> Answer {
    match l {
        Limit::None => Word("none"),
        Limit::Unknown(_) => Word("unknown"),
        Limit::At(x, _) => Number(x),
    }
}

/// Runs a vector under some rules; what disagrees, in words.
fn failures(v: &Vector, rules: &Rules) -> Vec<String> {
    let none = Symbols::new();
    let mut given = Symbols::new();
    // Symbols are given in terms of numbers and units, never of each other.
    given.extend(v.given.iter().map(|(k, f)| (k.clone(), f.value(&none))));
    let mut rules = *rules;
    for (key, figure) in &v.set {
        rules = rules.with_key(key, figure.value(&none)).unwrap();
    }
    let mut wrong = Vec::new();
    match v.routine.as_str() {
        "series" | "table hole" | "table strap" => lines(v, &rules, &mut wrong),
        "caps" => caps(v, &rules, &given, &mut wrong),
        _ => match answers(v, &rules, &given) {
            Ok(found) => compare(v, &given, &found, &mut wrong),
            Err(e) => wrong.push(e),
        },
    }
    wrong
}

fn compare(v: &Vector, given: &Symbols, found: &Answers, wrong: &mut Vec<String>) {
    for (key, expected) in &v.expect {
        match (expected, found.get(key)) {
            (Figure::Text(word), Some(Word(w))) if expected.is_word() && word == w => {}
            (_, Some(Number(x))) if !expected.is_word() => {
                let hand = expected.value(given);
                if !near(*x, hand) {
                    wrong.push(format!("{}: {key} is {x}, by hand {hand}", v.id));
                }
            }
            (_, Some(Word(w))) => wrong.push(format!("{}: {key} is {w:?}", v.id)),
            (_, Some(Number(x))) => wrong.push(format!("{}: {key} is {x}, not a word", v.id)),
            (_, None) => wrong.push(format!("{}: {key} is not among the answers", v.id)),
        }
    }
    for (key, expected) in &v.verdict {
        if !found.contains_key(&format!("{key} is {expected}")) {
            wrong.push(format!("{}: {key} is not {expected}", v.id));
        }
    }
}

/// The answers of a routine, by name.
fn answers(v: &Vector, rules: &Rules, s: &Symbols) -> Result<Answers, String> {
    let mut out = Answers::new();
    let mut put = |key: &str, answer: Answer| {
        out.insert(key.to_string(), answer);
    };
    let c = Plain;
    match v.routine.as_str() {
        "hole" => {
            let planes = proportion::planes(c, rules, &form(&v.form));
            let ss = s.get("ss").copied().unwrap_or(60.0);
            let (d, basis) = proportion::hole(c, rules, s["t"], ss, s.get("sc").copied(), planes);
            put(
                "d",
                match basis {
                    HoleBasis::BeyondTable => Word("beyond"),
                    HoleBasis::NoBearing => Word("missing"),
                    _ => Number(d),
                },
            );
        }
        "least pitch" => put("p", Number(proportion::pitch_least(c, rules, &form(&v.form), s["d"]).0)),
        "greatest pitch" => put("p", limit(proportion::pitch_greatest(c, rules, &form(&v.form), s["t"]))),
        "row distance" => {
            let d2 = s.get("d2").copied().unwrap_or(s["d"]);
            put("g", Number(proportion::row_gap(c, rules, &form(&v.form), s["p"], v.row, s["d"], d2).0));
        }
        "margin" => {
            put("least", Number(proportion::margin_least(c, rules, s["d"])));
            put("greatest", limit(proportion::margin_greatest(c, rules, s["d"], s["t"])));
        }
        "straps" => {
            let f = form(&v.form);
            let row = |r: usize| (f64::from(f.row(r).rivets), s["d"]);
            let covered = Covered { plate: s["t"], strip: s["p"], outer: row(1), butt: row(f.row_count()) };
            put("wide", limit(proportion::strap_least(c, rules, &f, Strap::Wide, &covered)));
            put("narrow", limit(proportion::strap_least(c, rules, &f, Strap::Narrow, &covered)));
        }
        "strengths" => {
            for (name, plate, rivets) in [("steel", Metal::Steel, Metal::Steel), ("iron", Metal::Iron, Metal::Iron)] {
                match rules.assumed_materials(plate, rivets) {
                    Ok(m) => {
                        put(&format!("{name}.tension"), Number(m.plate.tension.to_mpa()));
                        put(&format!("{name}.shear"), Number(m.rivet_shear.to_mpa()));
                        let bearing = m.plate.bearing.map_or(Word("none"), |b| Number(b.to_mpa()));
                        put(&format!("{name}.bearing"), bearing);
                    }
                    Err(_) => put(&format!("{name}.tension"), Word("missing")),
                }
            }
        }
        "mode" => {
            let made = joint(form(&v.form), s).map_err(|e| format!("{}: {e}", v.id))?;
            let held = Given::new(c, &made, &materials(s));
            let strengths = Strengths::new(c, &made, &held, rules, Lens::Real);
            let [plate, other, narrow] = v.cut;
            put("P", Number(strengths.mode(Cut { plate, other, narrow }).strength));
        }
        "check" => {
            let made = joint(form(&v.form), s).map_err(|e| format!("{}: {e}", v.id))?;
            let found = check(&made, &materials(s), rules).map_err(|e| format!("{}: {e}", v.id))?;
            analysis(&found, &mut out);
        }
        "size" => {
            let mut brief = Brief::new(form(&v.form), mm(s["t"]), materials(s));
            if let Some(d) = s.get("d") {
                brief = brief.hole(mm(*d), s.get("dr").copied().map(mm));
            }
            if let Some(p) = s.get("p") {
                brief = brief.pitch(mm(*p));
            }
            if let Some(m) = s.get("m") {
                brief = brief.margin(mm(*m));
            }
            let design = size(&brief, rules).map_err(|e| format!("{}: {e}", v.id))?;
            let j = &design.joint;
            put("hole", Number(design.hole.hole));
            put("rivet", Number(design.hole.rivet));
            put("by shear", Number(design.pitch.by_shear));
            put("by weaker", Number(design.pitch.by_weaker));
            put("by all", Number(design.pitch.by_all_modes));
            put("pitch", Number(design.pitch.taken));
            for (name, found) in [
                ("g1", j.back_pitch(1)),
                ("g2", j.back_pitch(2)),
                ("margin", j.margin()),
                ("wide", j.wide_strap()),
                ("narrow", j.narrow_strap()),
            ] {
                put(name, found.map_or(Word("none"), |x| Number(x.to_mm())));
            }
            analysis(&design.analysis, &mut out);
        }
        "shear" => {
            for (name, metal) in [("steel", Metal::Steel), ("iron", Metal::Iron)] {
                put(name, rules.assumed_shear(metal).map_or(Word("missing"), |s| Number(s.to_mpa())));
            }
        }
        "pressure" | "girth" | "rate" => shells::shells(v, rules, s, &mut out)?,
        other => panic!("{}: no routine {other:?}", v.id),
    }
    Ok(out)
}

fn analysis(a: &Analysis, out: &mut Answers) {
    let mut put = |key: &str, x: f64| {
        out.insert(key.to_string(), Number(x));
    };
    put("tear", a.tear_outer);
    put("shear", a.shear_all);
    put("solid", a.solid);
    put("J", a.book_efficiency);
    put("eta", a.efficiency);
    put("credited", a.credited);
    put("plate %", a.percentages.plate);
    put("rivet %", a.percentages.rivet);
    if let Some(x) = a.percentages.combined {
        put("combined %", x);
    }
    if let Some(x) = a.bearing_all {
        put("bearing", x);
    }
    findings(&a.findings, out);
}

fn findings(list: &Findings, out: &mut Answers) {
    for f in list.iter() {
        // The figure required; of several rows the first.
        let name = format!("{:?}", f.subject);
        out.entry(name.clone()).or_insert(Number(f.required));
        out.insert(format!("{name} is {:?}", f.verdict), Word("none"));
    }
}

/// The lines of a list: at each key, a shade above it (still that line), half a per cent above (the next line, or
/// beyond the list).
fn lines(v: &Vector, rules: &Rules, wrong: &mut Vec<String>) {
    let none = Symbols::new();
    let keys: Vec<f64> = v.keys.iter().map(|f| f.value(&none)).collect();
    let values: Vec<f64> = v.values.iter().map(|f| f.value(&none)).collect();
    assert_eq!(keys.len(), values.len(), "{}", v.id);
    let look = |x: f64| -> Option<(u8, f64, f64)> {
        let line = |e: Entry| info(e).line;
        match v.routine.as_str() {
            // Keys are rivets, values holes: the size is looked up by its hole.
            "series" => rules.next_size(x).map(|s| (line(s.entry), s.rivet, s.hole)),
            "table hole" => rules.table_hole(x).map(|(e, y)| (line(e), f64::NAN, y)),
            _ => rules.table_strap(x).map(|(e, y)| (line(e), f64::NAN, y)),
        }
    };
    for i in 0..keys.len() {
        let series = v.routine == "series";
        let at = if series { values[i] } else { keys[i] };
        let expected = |i: usize| keys.get(i).map(|k| (u8::try_from(i + 1).unwrap(), *k, values[i]));
        for (x, want) in [(at, expected(i)), (at * (1.0 + 1e-12), expected(i)), (at * 1.005, expected(i + 1))] {
            let same = match (look(x), want) {
                (None, None) => true,
                (Some((l, k, y)), Some((wl, wk, wy))) => l == wl && near(y, wy) && (!series || near(k, wk)),
                _ => false,
            };
            if !same {
                wrong.push(format!("{} line {}: at {x} found {:?}, not {want:?}", v.id, i + 1, look(x)));
            }
        }
    }
}

/// The greatest pitches of a kind of joint: `C t + K` for 1, 2, ... rivets in the pitch, and unknown beyond.
fn caps(v: &Vector, rules: &Rules, s: &Symbols, wrong: &mut Vec<String>) {
    let most = v.values.len();
    for n in 1..=most + 1 {
        let (kind, planes) = match v.form.as_str() {
            "lap" => (JointKind::Lap, 1),
            "single" => (JointKind::SingleStrap, 1),
            _ => (JointKind::DoubleStrap, 2),
        };
        let rows = vec![(1, planes); n];
        let f = seamwright::joint::Form::from_rows(kind, seamwright::joint::Arrangement::Zigzag, &rows).unwrap();
        let found = proportion::pitch_greatest(Plain, rules, &f, s["t"]);
        let good = match (v.values.get(n - 1), found) {
            (Some(c), Limit::At(p, _)) => near(p, c.value(s) * s["t"] + s["K"]),
            (None, Limit::Unknown(_)) => true,
            _ => false,
        };
        if !good {
            wrong.push(format!("{} with {n}: {found:?}", v.id));
        }
    }
}

fn book(id: &str) -> &'static RuleBook<'static> {
    rules::book(id).unwrap()
}

#[test]
fn every_rule_as_worked_out_by_hand() {
    let mut wrong = Vec::new();
    let mut ids = std::collections::BTreeSet::new();
    for file in files() {
        for v in &file.vector {
            assert!(ids.insert(format!("{}/{}", file.book, v.id)), "{} stands twice", v.id);
            assert!(!v.source.is_empty(), "{} has no source", v.id);
            wrong.extend(failures(v, &book(&file.book).rules).into_iter().map(|w| format!("{}: {w}", file.book)));
        }
    }
    assert!(wrong.is_empty(), "{} disagree:\n{}", wrong.len(), wrong.join("\n"));
}

/// The entries that a book states, with the label of each.
fn stated(book: &RuleBook<'static>) -> Vec<(Entry, Clause<'static>)> {
    book.items.iter().flat_map(|i| (0..i.values.len()).map(move |n| (i.entry.at(n), i.clause))).collect()
}

fn key_of(entry: Entry) -> String {
    let row = info(entry);
    if row.line == 0 { row.key.to_string() } else { format!("{}.{}", row.key, row.line) }
}

/// A book with one entry changed: through the door for users where the value is in range, else as a book of its own.
fn changed(book: &RuleBook<'static>, entry: Entry, value: f64) -> Rules {
    book.rules.with(entry, value).unwrap_or_else(|_| {
        let values = [value];
        let mut items: Vec<Item<'_>> = book.items.iter().collect();
        items.push(Item::new(entry, &values, Clause::own("changed")));
        RuleBook::from_items("changed", "changed", &[], &items).rules
    })
}

/// What an entry is changed to.
fn changes(entry: Entry, value: f64) -> Vec<f64> {
    let row = info(entry);
    match row.kind {
        EntryKind::Number(_) if value != 0.0 => vec![value * 1.01, value * 0.99],
        EntryKind::Number(Unit::Millimetre) => vec![0.1],
        EntryKind::Number(_) => vec![0.01],
        _ => (0_u8..=9).map(f64::from).filter(|x| *x <= row.hi && *x != value).collect(),
    }
}

/// The `k` of a row distance `a (p - k d) + b d + c` whose `a` is 0: it multiplies nothing, so no figure can show it.
fn multiplies_nothing(rules: &Rules, entry: Entry) -> bool {
    [Entry::BACK_CHAIN, Entry::BACK_ZIGZAG, Entry::BACK_HALF_CHAIN, Entry::BACK_HALF_ZIGZAG]
        .iter()
        .any(|head| entry == head.at(1) && rules.get(*head) == 0.0)
}

#[test]
fn one_per_cent_on_any_entry_is_noticed() {
    let (mut unnoticed, mut counted, mut without_effect) = (Vec::new(), 0, 0);
    for file in files() {
        let book = book(&file.book);
        // A vector that fails anyway proves nothing.
        let sound: Vec<&Vector> = file.vector.iter().filter(|v| failures(v, &book.rules).is_empty()).collect();
        for (entry, _) in stated(book) {
            let value = book.rules.get(entry);
            if multiplies_nothing(&book.rules, entry) {
                without_effect += 1;
                continue;
            }
            for other in changes(entry, value) {
                counted += 1;
                let mine = changed(book, entry, other);
                assert_eq!(mine.get(entry), other, "{} was not changed", key_of(entry));
                if sound.iter().all(|v| failures(v, &mine).is_empty()) {
                    unnoticed.push(format!("{}: {} changed from {value} to {other}", file.book, key_of(entry)));
                }
            }
        }
    }
    println!("{counted} changes, {without_effect} entries that multiply nothing");
    assert!(unnoticed.is_empty(), "{} of {counted} unnoticed:\n{}", unnoticed.len(), unnoticed.join("\n"));
}

/// Each statement of a book carries the label that the facts collected in the sources support.
#[test]
fn labels_are_those_that_the_sources_support() {
    let mut wrong = Vec::new();
    for file in files() {
        let mut named = std::collections::BTreeSet::new();
        for (entry, clause) in stated(book(&file.book)) {
            let row = info(entry);
            let listed: Vec<&str> = file
                .labels
                .iter()
                .filter(|(_, keys)| keys.iter().any(|k| *k == key_of(entry) || *k == row.key))
                .map(|(label, _)| label.as_str())
                .collect();
            named.insert(key_of(entry));
            named.insert(row.key.to_string());
            if !listed.contains(&clause.label.word()) {
                wrong.push(format!("{}: {} is {}, not {listed:?}", file.book, key_of(entry), clause.label.word()));
            }
        }
        for key in file.labels.values().flatten() {
            assert!(named.contains(key), "{}: {key} is labelled and not stated", file.book);
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_book_has_its_vectors() {
    let have: Vec<String> = files().into_iter().map(|f| f.book).collect();
    let want: Vec<&str> = rules::BOOKS.iter().map(|b| b.id).collect();
    assert_eq!(have, want);
}
