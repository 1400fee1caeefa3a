//! Tables that are well formed, and nothing in them idle: every formula, quantity, subject, verdict, fate, class, reason
//! and part of the working is produced by some joint, and every entry of the rule books changes some result.

mod grouped_cases;
mod rated_cases;
mod support;

use std::cell::RefCell;
use std::collections::{BTreeSet, HashSet};
use std::fmt::Debug;

use grouped_cases::watch_groups;
use rated_cases::{ratings, vessel_shell, vessels};
use seamwright::check::{SUBJECTS, Subject, Verdict, check, check_with};
use seamwright::error::EntryNo;
use seamwright::formula::{FORMULAS, Formula};
use seamwright::given::Given;
use seamwright::joint::{Form, Joint, JointKind};
use seamwright::materials::{Materials, PlateStress};
use seamwright::modes::{Class, Fate, Lens, Strengths, letters};
use seamwright::quantities::{Pressure, Stress};
use seamwright::rating::{Assumptions, Seam, rate, rate_with};
use seamwright::rules::{BOOKS, ENTRIES, Entry, EntryKind, GROUPS, METRIC, Metal, Rounding, Rules, find, info};
use seamwright::shop::{
    Face, HEAD_FORMS, LENGTH_RULES, Measured, Order, Run, SHOP_NOTES, Stock, shop_sheet, shop_sheet_with,
};
use seamwright::sizing::{Brief, size, size_with};
use seamwright::step::{Ctx, FormulaNo, Name, QUANTITIES, Quantity, Section, Why};
use seamwright::vessel::{GirthPlace, Longitudinal, Outcome, girth_check, vessel, vessel_with};
use support::{form, joint, mm, symbols};

fn key(entry: Entry) -> String {
    let row = info(entry);
    if row.line > 0 { format!("{}.{}", row.key, row.line) } else { row.key.to_string() }
}

#[test]
fn entries_are_well_formed() {
    let mut keys = HashSet::new();
    let silent = seamwright::rules::RuleBook::from_items("silent", "Silent", &[], &[]);
    assert_eq!(Entry::all().count(), ENTRIES);
    assert_eq!(GROUPS.iter().map(|(_, lines, _)| usize::from(*lines)).sum::<usize>(), ENTRIES);
    for entry in Entry::all() {
        let (row, key) = (info(entry), key(entry));
        assert_eq!((seamwright::rules::key(entry), silent.stated(entry)), (row.key, row.default));
        assert!(keys.insert(key.clone()), "{key} twice");
        assert_eq!(find(&key), Some(entry), "{key}");
        assert_eq!(Entry::from_no(entry.no()), Some(entry), "{key}");
        assert!(row.lo <= row.default && row.default <= row.hi && row.lo < row.hi, "{key}");
        assert!(!row.what.is_empty() && row.what.is_ascii(), "{key}");
        assert_eq!(Rules::SILENT.get(entry), row.default, "{key}");
        match row.kind {
            EntryKind::Number(_) => {}
            EntryKind::Switch => assert_eq!((row.lo, row.hi), (0.0, 1.0), "{key}"),
            EntryKind::Choice(ways) => {
                assert_eq!((row.lo, row.hi as usize), (0.0, ways.len() - 1), "{key}");
                assert!(ways.iter().all(|w| !w.is_empty()), "{key}");
            }
        }
    }
    assert_eq!(Entry::from_no(EntryNo::NONE), None);
    for stray in ["", ".", "series.hole", "series.hole.0", "series.hole.25", "hole.sqrt.1", "Hole.sqrt", "hole.sqrt "] {
        assert_eq!(find(stray), None, "{stray:?}");
    }
}

#[test]
fn built_in_books_are_sound() {
    let ids: HashSet<_> = BOOKS.iter().map(|b| b.id).collect();
    assert_eq!(ids.len(), BOOKS.len());
    for book in BOOKS {
        assert_eq!(book.rules.validate(), Ok(()), "{}", book.id);
        assert!(!book.title.is_empty() && book.sources.iter().all(|s| !s.is_empty()), "{}", book.id);
        let mut stated = HashSet::new();
        let mut rules = Rules::SILENT;
        for item in book.items.iter() {
            let (at, clause) = (format!("{}: {}", book.id, key(item.entry)), item.clause);
            assert!(!item.values.is_empty() && !clause.number.is_empty(), "{at}");
            let resolves = usize::from(clause.source) < book.sources.len();
            assert!(resolves || clause.source == u8::MAX, "{at}: source {}", clause.source);
            assert_eq!(book.source(&clause).is_empty(), !resolves, "{at}");
            for (line, value) in item.values.iter().enumerate() {
                let entry = item.entry.at(line);
                assert_eq!(info(entry).key, info(item.entry).key, "{at} runs into the next list");
                assert!(stated.insert(entry), "{at}: stated twice, line {line}");
                rules = rules.with(entry, *value).unwrap_or_else(|e| panic!("{at}: {e}"));
                assert_eq!(book.clause(entry.no()), Some(clause), "{at}");
            }
        }
        assert_eq!(rules, book.rules, "{}", book.id);
        for entry in Entry::all().filter(|e| !stated.contains(e)) {
            assert_eq!(book.clause(entry.no()), None, "{}: {}", book.id, key(entry));
        }
    }
}

#[test]
fn texts_are_there() {
    for q in QUANTITIES {
        assert!(!q.symbol().is_empty() && !q.latex().is_empty() && !q.what().is_empty(), "{q:?}");
    }
    for f in FORMULAS {
        assert!(f.equation().contains(" = ") || f.equation().starts_with("100 "), "{f:?}");
        assert!(!f.source().is_empty(), "{f:?}");
    }
    for s in SUBJECTS {
        assert!(!s.what().is_empty() && !s.advice().is_empty(), "{s:?}");
    }
    assert!(SHOP_NOTES.iter().all(|n| !n.text().is_empty()));
    let mut seen = HashSet::new();
    let twice: BTreeSet<_> = QUANTITIES.iter().map(|q| q.symbol()).filter(|s| !seen.insert(*s)).collect();
    // `z`: the factor of double shear, and shear areas.
    assert_eq!(twice, BTreeSet::from(["z"]));
}

/// What was seen of the routines.
#[derive(Default)]
struct Seen {
    quantities: HashSet<Quantity>,
    formulas: HashSet<u8>,
    /// Reasons and parts of the working, by name.
    words: HashSet<String>,
    subjects: HashSet<Subject>,
    verdicts: HashSet<Verdict>,
    compared: HashSet<(Subject, Verdict)>,
    fates: Vec<Fate>,
    classes: Vec<Class>,
}

/// A context that keeps names and reasons.
#[derive(Clone, Copy)]
struct Watch<'a> {
    seen: &'a RefCell<Seen>,
    quiet: bool,
}

impl Watch<'_> {
    fn note(self, name: Name, why: Why) {
        if self.quiet {
            return;
        }
        let mut seen = self.seen.borrow_mut();
        seen.quantities.insert(name.0);
        let reason = format!("{why:?}");
        seen.words.insert(reason.split('(').next().unwrap().to_string());
        match why {
            Why::Formula(FormulaNo(n)) => {
                assert!(usize::from(n) < FORMULAS.len());
                seen.formulas.insert(n);
            }
            Why::Table(e)
            | Why::Least(e)
            | Why::Greatest(e)
            | Why::Cap(e)
            | Why::Floor(e)
            | Why::Series(e)
            | Why::Choice(e) => {
                assert!(!e.is_some() || Entry::from_no(e).is_some(), "{name:?}");
            }
            _ => {}
        }
    }
}

impl Ctx for Watch<'_> {
    type N = f64;
    fn leaf(self, name: Name, why: Why, x: f64) -> f64 {
        self.note(name, why);
        x
    }
    fn close(self, name: Name, why: Why, e: f64) -> f64 {
        self.note(name, why);
        e
    }
    fn choice(self, name: Name, why: Why, taken: f64, _: f64) -> f64 {
        self.note(name, why);
        taken
    }
    fn section(self, section: Section) {
        self.seen.borrow_mut().words.insert(format!("{section:?}"));
    }
    fn quiet(self) -> Self {
        Watch { quiet: true, ..self }
    }
}

const FORMS: &str = "lap 1, lap 2, lap 2 chain, lap 3, lap 3 omitted, lap 4 omitted chain, rows lap 1x1 1x1 1x1 1x1 1x1, \
    single 1, single 2 omitted, single 3, rows single 1x1 1x1 1x1 1x1, rows single 1x1 1x1 1x1 1x1 1x1, \
    double 1, double 2, double 3 omitted, double 3 omitted chain, double 4, double 5, unequal 2, \
    unequal 3, unequal 4, unequal 5, rows double 1x2 2x2 3x2, rows double 2x2 3x2";

fn forms() -> impl Iterator<Item = Form> {
    FORMS.split(", ").map(form)
}

fn steel() -> Materials {
    Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0))
}

/// Stresses: as usual; weak in crushing; with shear-out, strong otherwise; other straps; without bearing.
fn stresses() -> Vec<Materials> {
    let weak = PlateStress { tension: Stress::mpa(40.0), bearing: Some(Stress::mpa(50.0)), shear_out: None };
    let soft = steel().bearing(Stress::mpa(40.0));
    let mut split = steel().bearing(Stress::mpa(300.0)).shear_out(Stress::mpa(9.0));
    let plate_only = split;
    split.plate.shear_out = None;
    vec![steel(), soft, plate_only, split, steel().other(weak), Materials::new(Stress::mpa(80.0), Stress::mpa(60.0))]
}

/// Joints of a form as built: usual, close, at close rows, of two sizes, of unequal plies, and bare.
fn joints(form: Form) -> Vec<Joint> {
    let (lap, double) = (form.kind() == JointKind::Lap, form.kind() == JointKind::DoubleStrap);
    let dense = f64::from(form.densest_rivets());
    let build = |p: f64, ply: &[(&str, f64)], other: &[(&str, f64)]| {
        let mut s = symbols(&[("p", p * dense), ("t", 12.0), ("d", 20.0), ("dr", 19.0)]);
        s.extend(symbols(ply));
        s.extend(symbols(other));
        joint(form, &s).unwrap()
    };
    let plies: &[(&str, f64)] = match (lap, double) {
        (true, _) => &[("t2", 9.0)],
        (false, false) => &[("b", 14.0)],
        _ => &[("bw", 10.0), ("bn", 5.0)],
    };
    let wide = [("g", 60.0), ("m", 32.0)];
    let mut list = vec![
        build(60.0, &[], &[]),
        build(60.0, plies, &wide),
        build(26.0, plies, &wide),
        build(60.0, plies, &[("g", 24.0), ("m", 11.0)]),
        build(75.0, plies, &[("g", 60.0), ("m", 60.0), ("t", 8.0), ("d", 23.0)]),
    ];
    // Every other row of another size.
    let mut spec = seamwright::joint::JointSpec::new(form, mm(64.0 * dense), mm(12.0), mm(20.0)).margin(mm(36.0));
    for row in 1..=form.row_count() {
        spec = spec.row(row, mm(if row % 2 == 0 { 24.0 } else { 20.0 }), None);
    }
    for gap in 1..form.row_count() {
        spec = spec.back_pitch(gap, mm(70.0));
    }
    spec = if lap { spec } else { spec.strap(mm(10.0)) };
    list.push(spec.build().unwrap());
    // Heads 30.4 mm wide that lie 20 mm across touch at less than 22.9 mm.
    list.push(build(40.0, plies, &[("g", 22.0), ("m", 32.0)]));
    list
}

/// The built-in books, and books that differ from them in what no built-in book says.
fn books() -> Vec<Rules> {
    let with = |changes: &[(Entry, f64)]| changes.iter().fold(METRIC.rules, |r, (e, v)| r.with(*e, *v).unwrap());
    let mut list: Vec<Rules> = BOOKS.iter().map(|b| b.rules).collect();
    list.push(with(&[(Entry::INNER_SHARE, 1.0), (Entry::LONE_PLANE, 1.0), (Entry::TEAR_ALLOWANCE, 6.0)]));
    list.push(with(&[(Entry::CLOSE_ROWS, 1.0), (Entry::COUNT_STRAP, 1.0), (Entry::PITCH_ROUND, 2.0)]));
    list.push(with(&[(Entry::CLOSE_ROWS, 2.0), (Entry::EFFICIENCY_CAP, 0.3), (Entry::PITCH_ROUND, 1.0)]));
    list.push(with(&[(Entry::PRESSURE_FORM, 4.0)]));
    list.push(full(0.0));
    list.push(full(1.0));
    list
}

/// What a book that says something on everything says, apart from its lists.
const FULL: &str = "diagonal.pitch=0.7 diagonal.diameter=0.9 hole.round=0 hole.add=1 hole.per_plate.least=1.1 \
    hole.per_plate.greatest=2.5 hole.clearance.greatest=1 pitch.least.add=1 pitch.greatest.thickness=30 \
    pitch.greatest.limit=350 pitch.scallop=8 margin.least.add=1 margin.greatest.factor=2.5 margin.greatest.thickness=9 \
    margin.greatest.limit=150 strap.single.add=1 strap.omitted=2 strap.least=5 plate.least=7 grip.greatest=2 \
    efficiency.cap=0.85 percent.safety=4.5 percent.divisor=4 default.steel.tension=400 default.iron.tension=330 \
    pressure.form=3 pressure.allowance=1 pressure.outside=0.1 pressure.constant.single=3 pressure.constant.double=2.8 \
    safety.lap=4.5 safety.single=4.4 safety.double=4 safety.double.unequal=4.1 safety.hand.add=0.3 \
    safety.punched.add=0.25 safety.reamed.add=0.1 safety.existing=4.2 safety.second_hand.lap=6 \
    safety.second_hand.butt=5 safety.long_lap=8 safety.long_lap.above=3650 safety.fire_lap=5 safety.weight=5.2 \
    safety.age.add=0.5 safety.age.tested=4.7 shell.least.above=10 lap.diameter=900 lap.pressure=1.2 lap.product=900 \
    lap.second_hand.pressure=0.3 lap.wide.above=800 lap.wide.pressure=0.4 girth.end=0.4 girth.middle=0.42 \
    girth.share.end=0.5 girth.share.middle=0.5 girth.share.stayed=0.35 girth.double.end=12 girth.double.middle=11 \
    girth.treble.middle=25 seams.staggered=1 test.factor=1.5 default.bearing=600 default.steel.shear=300 default.iron.shear=260";

/// A book that says something on everything: by formulas (0) or by tables (1).
fn full(way: f64) -> Rules {
    let mut list = vec![(Entry::HOLE_RULE, way), (Entry::STRAP_RULE, way), (Entry::BACK_ZIGZAG_RULE, way)];
    let said = FULL.split(' ').map(|item| item.split_once('=').unwrap());
    list.extend(said.map(|(key, value)| (find(key).unwrap(), value.parse().unwrap())));
    for (head, lines, step, first) in [
        (Entry::SERIES_RIVET, 24, 2.7, 6.0),
        (Entry::SERIES_HOLE, 24, 2.7, 7.0),
        (Entry::HOLE_TABLE_PLATE, 12, 8.0, 10.0),
        (Entry::HOLE_TABLE_HOLE, 12, 2.6, 12.0),
        (Entry::STRAP_TABLE_PLATE, 20, 5.0, 5.0),
        (Entry::STRAP_TABLE_STRAP, 20, 4.0, 4.0),
        (Entry::PRESSURE_LAP, 4, -0.1, 3.0),
        (Entry::SHELL_DIAMETER, 4, 300.0, 600.0),
        (Entry::SHELL_PLATE, 4, 1.0, 6.0),
        (Entry::PITCH_MAX_LAP, 5, 1.0, 2.0),
        (Entry::PITCH_MAX_SINGLE, 5, 1.0, 2.1),
        (Entry::PITCH_MAX_DOUBLE, 5, 1.0, 2.3),
        (Entry::BACK_CHAIN, 4, 0.5, 0.3),
        (Entry::BACK_ZIGZAG, 4, 0.5, 0.3),
        (Entry::BACK_HALF_CHAIN, 4, 0.5, 0.3),
        (Entry::BACK_HALF_ZIGZAG, 4, 0.5, 0.3),
    ] {
        list.extend((0..lines).map(|i| (head.at(i), step * i as f64 + first)));
    }
    list.iter().fold(METRIC.rules, |r, (e, v)| r.with(*e, *v).unwrap())
}

/// Things to size: each form in a few plates, straps found or given, holes found or given, rows and margin given.
fn briefs() -> Vec<Brief> {
    let mut list = Vec::new();
    for form in forms() {
        for t in [6.0, 8.0, 13.0] {
            let brief = Brief::new(form, mm(t), steel());
            list.push(brief);
            let second = (form.kind() == JointKind::DoubleStrap).then(|| mm(0.7 * t));
            let given =
                if form.kind() == JointKind::Lap { brief.other_plate(mm(9.0)) } else { brief.straps(mm(t), second) };
            list.push(given);
            list.push(given.hole(mm(21.0), None).margin(mm(40.0)).pitch(mm(240.0)));
        }
    }
    for t in 1..=130 {
        list.push(Brief::new(form("single 1"), mm(f64::from(t)), steel()));
    }
    list
}

/// Orders for the shop: every length rule and head on every kind of run.
fn orders() -> Vec<Order> {
    let girth = |measured, other| Run::Girth { diameter: mm(1500.0), measured, other };
    let runs = [
        Run::Tie,
        Run::Straight { length: mm(3000.0), first_end: mm(45.0), last_end: mm(50.0) },
        girth(Measured::InsidePlate, Face::Outside),
        girth(Measured::InsideOther, Face::Inside),
        girth(Measured::Circle, Face::Inside),
    ];
    let mut list = Vec::new();
    for run in runs {
        for rule in LENGTH_RULES {
            for head in HEAD_FORMS {
                let order = Order::steel(run, *head, *rule, Stock::every(mm(5.0), Rounding::Nearest));
                list.push(order.set_head(HEAD_FORMS[0]));
            }
        }
    }
    list
}

fn missing<T: PartialEq + Debug>(all: &[T], seen: impl Fn(&T) -> bool) -> Vec<&T> {
    all.iter().filter(|x| !seen(x)).collect()
}

/// Runs everything there is in a context that listens.
fn watch(seen: &RefCell<Seen>) {
    let c = Watch { seen, quiet: false };
    let found = |list: &seamwright::check::Findings| {
        assert!(!list.lost());
        for f in list.iter() {
            seen.borrow_mut().subjects.insert(f.subject);
            seen.borrow_mut().verdicts.insert(f.verdict);
            seen.borrow_mut().compared.insert((f.subject, f.verdict));
        }
    };
    for rules in books() {
        for brief in briefs() {
            if let Ok(design) = size_with(c, &brief, &rules) {
                found(&design.analysis.findings);
            }
        }
        for joint in forms().flat_map(joints) {
            for materials in stresses() {
                let Ok(analysis) = check_with(c, &joint, &materials, &rules) else { continue };
                // Nobody's figures change for being listened to.
                let plain = check(&joint, &materials, &rules).unwrap();
                assert_eq!(format!("{plain:?}"), format!("{:?}", analysis.clone().values()));
                found(&analysis.findings);
                let given = Given::new(c, &joint, &materials);
                let strengths = Strengths::new(c, &joint, &given, &rules, Lens::Real);
                letters(c, &joint, &given, &rules, &strengths);
                let mut seen = seen.borrow_mut();
                for mode in strengths.modes() {
                    seen.classes.push(mode.cut.class(joint.form().kind(), joint.form().row_count()));
                    seen.fates.extend(mode.fates);
                }
            }
        }
    }
    for rules in books() {
        for old in ratings() {
            let Ok(heard) = rate_with(c, &old, &rules) else { continue };
            found(&heard.findings);
            assert_eq!(format!("{:?}", heard.values()), format!("{:?}", rate(&old, &rules).unwrap()));
        }
        for brief in vessels(&steel()) {
            if let Ok(Outcome::Found(made)) = vessel_with(c, &brief, &rules) {
                found(&made.findings);
                let Some(fits) = made.girth else { continue };
                found(&fits.findings);
                // Pitches that do not fit, and a pressure that is too much for it.
                let along = made.seam.joint;
                let a = check(&along, &steel(), &rules).unwrap();
                let allowed = made.allowed.values();
                let long = Longitudinal { joint: &along, materials: &steel(), credited: a.credited, allowed };
                for (rows, pitch, pressure) in [("lap 1", 230.0, 5.0), ("lap 2", 61.0, 0.2)] {
                    let spec = seamwright::joint::JointSpec::new(form(rows), mm(pitch), along.plate(), mm(21.0));
                    let p = Pressure::mpa(pressure);
                    let place = GirthPlace::Middle;
                    if let Ok(g) = girth_check(&rules, &vessel_shell(), &long, &spec.build().unwrap(), place, p) {
                        found(&g.findings);
                    }
                }
            }
        }
    }
    let other = METRIC.rules.with(Entry::BEARING_DIAMETER, 1.0).unwrap();
    for rules in books().into_iter().chain([other]) {
        watch_groups(c, &rules, found);
    }
    let girth = Seam { form: &form("lap 1"), plate: 12.0, tension: 80.0, efficiency: 0.5 };
    seamwright::rating::girth_pressure_with(c, &METRIC.rules, &vessel_shell(), &girth, &mut Assumptions::new())
        .unwrap();
    for joint in forms().flat_map(|f| joints(f).into_iter().skip(4)) {
        for order in orders() {
            // Orders that do not belong to the joint, or rules without a size for it, are refused.
            let heard = shop_sheet_with(c, &joint, &steel(), &METRIC.rules, &order);
            assert_eq!(format!("{heard:?}"), format!("{:?}", shop_sheet(&joint, &steel(), &METRIC.rules, &order)));
        }
    }
}

#[test]
fn everything_in_the_tables_is_produced() {
    let seen = RefCell::new(Seen::default());
    watch(&seen);
    let seen = seen.into_inner();
    // Slopes run in the context of derivatives alone; holes of the shop sheet are worked out by an iterator, outside any.
    let elsewhere = [Formula::StrengthPerLength, Formula::HolePlace, Formula::HoleAngle];
    let never = missing(FORMULAS, |f| seen.formulas.contains(&f.no().0));
    assert_eq!(never, elsewhere.iter().collect::<Vec<_>>(), "formulas");
    assert_eq!(missing(SUBJECTS, |s| seen.subjects.contains(s)), [] as [&Subject; 0], "subjects");
    let verdicts = [Verdict::Open, Verdict::Unknown, Verdict::Note, Verdict::Met];
    assert_eq!(missing(&verdicts, |v| seen.verdicts.contains(v)), [] as [&Verdict; 0], "verdicts");
    use Fate::{Bearing, Mixed, OtherBearing, OtherShearOut, Shear, ShearOut, Whole};
    let fates = [Whole, Shear, Bearing, OtherBearing, Mixed, ShearOut, OtherShearOut];
    assert_eq!(missing(&fates, |f| seen.fates.contains(f)), [] as [&Fate; 0], "fates");
    let classes = [Class::PlateOuter, Class::PlateInner, Class::Rivets, Class::Strap, Class::BothPlates];
    assert_eq!(missing(&classes, |k| seen.classes.contains(k)), [] as [&Class; 0], "classes");
    let reasons = "Given Table Formula Least Greatest Cap Floor RoundDown RoundUp RoundNearest Series Choice";
    let sections = "Safety Shell SolidPlate Girth Hole Pitch Rows Margin Straps Heads Joint Rivets NetSections BookView Modes Percentages Limits Group GroupLoad GroupForces GroupSize GroupStresses";
    for word in reasons.split(' ').chain(sections.split(' ')) {
        assert!(seen.words.contains(word), "{word}");
    }
    use Quantity as Q;
    // Named by no routine here: `P'` by slopes alone; `z` and `x1` stand in equations only; `L` and `lim` have no use so far.
    let unused = [Q::Planes, Q::StrengthPerLength, Q::Load, Q::Limit, Q::FirstHole];
    let never = missing(QUANTITIES, |q| seen.quantities.contains(q));
    assert_eq!(never, unused.iter().collect::<Vec<_>>(), "quantities");
    // A subject that compares is found met by one joint and open by another.
    let one_sided = missing(SUBJECTS, |s| {
        let is = |v| seen.compared.contains(&(*s, v));
        is(Verdict::Met) == is(Verdict::Open)
    });
    let only_open = [&Subject::HeadsInRow, &Subject::HeadsOfRows, &Subject::NetSection];
    assert_eq!(one_sided, only_open, "found only where no room or nothing is left");
}

/// Everything that a book can change, as text, one case at a time.
fn results(rules: &Rules, briefs: &[Brief], joints: &[Joint]) -> impl Iterator<Item = String> {
    let metals = [Metal::Steel, Metal::Iron];
    let assumed = metals.into_iter().map(move |m| format!("{:?}", rules.assumed_materials(m, m)));
    let sized = briefs.iter().map(move |b| format!("{:?}", size(b, rules)));
    let checked = joints.iter().map(move |j| format!("{:?}", check(j, &stresses()[3], rules)));
    let rated = ratings().into_iter().step_by(3).map(move |old| format!("{:?}", rate(&old, rules)));
    let made = vessels(&steel()).into_iter().map(move |brief| format!("{:?}", vessel(&brief, rules)));
    assumed.chain(rated).chain(made).chain(sized).chain(checked)
}

/// What an entry may be changed to.
fn changes(entry: Entry, value: f64) -> Vec<f64> {
    let row = info(entry);
    match row.kind {
        EntryKind::Number(_) => vec![1.02 * value + 0.01, 0.97 * value, row.hi, row.lo, 0.0],
        _ => vec![0.0, 1.0, 2.0, 3.0, 4.0],
    }
}

#[test]
fn every_entry_changes_some_result() {
    let (briefs, joints): (Vec<_>, Vec<_>) = (briefs(), forms().flat_map(joints).collect());
    let mut idle: Vec<Entry> = Entry::all().collect();
    for base in books().into_iter().rev() {
        let before: Vec<String> = results(&base, &briefs, &joints).collect();
        idle.retain(|entry| {
            let now = base.get(*entry);
            let changed = changes(*entry, now).into_iter().filter(|v| *v != now);
            // A book that contradicts itself is refused, which proves nothing of the entry.
            let mut sound = changed.filter_map(|v| base.with(*entry, v).ok()).filter(|r| r.validate().is_ok());
            sound.all(|rules| results(&rules, &briefs, &joints).eq(before.iter().cloned()))
        });
    }
    assert!(idle.is_empty(), "never read: {:?}", idle.iter().map(|e| key(*e)).collect::<Vec<_>>());
}
