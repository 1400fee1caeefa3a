//! The working of shop sheets, worked again from nothing but what it prints: see `working_sheet.rs`.

mod generate;
mod working_support;

use generate::{Reach, Stated, any_book, config, set, stated};
use proptest::prelude::*;
use proptest::sample::select;
use seamwright::bounds::Unit;
use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{Entry, INDIAN, METRIC, Rounding, RuleBook, Rules};
use seamwright::shop::{
    Density, Face, HEAD_FORMS, HeadForm, LENGTH_RULES, LengthRule, Measured, Order, Run, ShopSheet, Stock,
};
use seamwright::working::{Decimals, Style, Units, WorkingError, write_shop};
use working_support::{Sheet, rework};

fn fail(e: impl ToString) -> TestCaseError {
    TestCaseError::fail(e.to_string())
}

/// The figures of the shop sheet are the last ones printed under their symbols.
fn results(sheet: &Sheet, style: &Style, made: &ShopSheet) -> Result<(), TestCaseError> {
    let mut figures = vec![
        ("p".to_string(), Unit::Millimetre, made.pitch.taken.strip),
        ("ks".to_string(), Unit::Count, f64::from(made.pitch.taken.strips)),
        ("rho".to_string(), Unit::KilogramPerCubicMetre, made.order.density().to_kg_m3()),
        ("M".to_string(), Unit::Kilogram, made.masses.total),
        ("M1".to_string(), Unit::KilogramPerMetre, made.masses.per_metre),
    ];
    for (symbol, cut) in [("w", made.cuts.overlap.or(made.cuts.wide)), ("wn", made.cuts.narrow)] {
        figures.extend(cut.map(|cut| (symbol.to_string(), Unit::Millimetre, cut.width)));
    }
    for (symbol, cut) in [("Ml", made.cuts.overlap), ("Mw", made.cuts.wide), ("Mn", made.cuts.narrow)] {
        figures.extend(cut.map(|cut| (symbol.to_string(), Unit::Kilogram, cut.mass)));
    }
    for line in made.rivets() {
        let of = |symbol: &str| format!("{symbol}.{}", line.row);
        figures.extend([
            (of("Nr"), Unit::Count, f64::from(line.count)),
            (of("G"), Unit::Millimetre, line.grip),
            (of("Z"), Unit::Millimetre, line.allowance),
            (of("l"), Unit::Millimetre, line.stock),
            (of("ws"), Unit::Millimetre, line.set_head.width),
            (of("h"), Unit::Millimetre, line.set_head.height),
            (of("mr"), Unit::Kilogram, line.mass),
            (of("mo"), Unit::Kilogram, line.drilled),
        ]);
        if line.closing_head != line.set_head {
            figures.push((of("wc"), Unit::Millimetre, line.closing_head.width));
            figures.push((of("hc"), Unit::Millimetre, line.closing_head.height));
        }
    }
    for (symbol, unit, value) in figures {
        let mut text = String::new();
        style.value(&mut text, unit, value).map_err(fail)?;
        prop_assert_eq!(sheet.printed(&symbol), Some(text.as_str()), "{}", symbol);
    }
    Ok(())
}

/// Any run: straight, round a shell, a tie. Lengths are shares of the pitch.
#[derive(Clone, Copy, Debug)]
struct Along {
    kind: u8,
    strips: f64,
    ends: [f64; 2],
    measured: Measured,
    other: Face,
}

impl Along {
    fn run(&self, s: &Stated) -> Run {
        // Holes keep clear of the ends, as far as this test can tell.
        let hole = s.rows.iter().map(|r| r.hole).fold(0.0, f64::max);
        let end = |share: f64| hole * (1.0 + share);
        match self.kind {
            0 => Run::Tie,
            1 => Run::Girth {
                diameter: Length::mm(s.strip * self.strips / std::f64::consts::PI),
                measured: self.measured,
                other: self.other,
            },
            _ => Run::Straight {
                length: Length::mm(s.strip * self.strips + end(self.ends[0]) + end(self.ends[1])),
                first_end: Length::mm(end(self.ends[0])),
                last_end: Length::mm(end(self.ends[1])),
            },
        }
    }
}

fn along() -> impl Strategy<Value = Along> {
    let measured = select(vec![Measured::Circle, Measured::InsidePlate, Measured::InsideOther]);
    // Whole numbers of pitches are few among random ones: half of them are made.
    let strips = (1.2..60.0_f64, any::<bool>()).prop_map(|(n, whole)| if whole { n.floor() } else { n });
    (0..4_u8, strips, [0.0..1.5, 0.0..1.5_f64], measured, select(vec![Face::Inside, Face::Outside]))
        .prop_map(|(kind, strips, ends, measured, other)| Along { kind, strips, ends, measured, other })
}

fn order(run: Run) -> impl Strategy<Value = Order> {
    let rules: Vec<LengthRule> = LENGTH_RULES.to_vec();
    let heads: Vec<HeadForm> = HEAD_FORMS.to_vec();
    let rounding = select(vec![Rounding::Up, Rounding::Nearest, Rounding::Down]);
    let density = prop_oneof![Just(7850.0), 2000.0..9000.0_f64];
    (select(rules), select(heads.clone()), select(heads), rounding, 0..4_u8, density).prop_map(
        move |(rule, head, set_head, rounding, step, density)| {
            let stock = match step {
                0 => Stock::cut_to_length(),
                n => Stock::every(Length::mm(f64::from(n)), rounding),
            };
            Order::new(run, head, rule, stock, Density::kg_m3(density)).set_head(set_head)
        },
    )
}

/// Any reader.
fn reader() -> impl Strategy<Value = Style> {
    let digits = || prop::option::of(0..9_u8);
    (any::<bool>(), [digits(), digits(), digits(), digits()], -2..3_i8).prop_map(
        |(inch, [length, stress, force, ratio], extra_digits)| Style {
            units: if inch { Units::Inch } else { Units::Metric },
            decimals: Decimals { length, stress, force, ratio },
            extra_digits,
            ..Style::default()
        },
    )
}

fn case() -> impl Strategy<Value = (Stated, Order)> {
    let placed = stated(Reach::Usual, 3, 5.0).prop_filter("rows and margin are known", |s| s.margin > 0.0);
    (placed, along()).prop_flat_map(|(s, along)| {
        let order = order(along.run(&s));
        (Just(s), order)
    })
}

/// A book that asks for no bearing stress; with its limits of the pitch, or with none at all.
fn lenient(book: &RuleBook<'static>, free: bool) -> RuleBook<'static> {
    let rules = if free { Rules::SILENT } else { book.rules };
    RuleBook { rules: set(rules, &[(Entry::BEARING_CHECKED, 0.0)]), ..*book }
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_shop_sheet_is_worked_again_from_its_sheet((s, order) in case(), book in any_book(), free in any::<bool>(),
                                                   style in reader()) {
        let book = lenient(book, free);
        let mut text = String::new();
        match write_shop(&mut text, style, &s.joint(), &s.materials(), &book, &order) {
            Ok(made) => {
                let sheet = rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?;
                results(&sheet, &style, &made)?;
            }
            // No pitch may be admissible, no hole have room at the end, no table go so far: never an outgrown line.
            Err(WorkingError::Routine(_)) => {}
            Err(e) => return Err(fail(e)),
        }
    }

    #[test]
    fn a_shop_sheet_in_inches_says_the_same((s, order) in case(), book in any_book()) {
        let book = lenient(book, true);
        let mut sheets = Vec::new();
        for units in [Units::Metric, Units::Inch] {
            let style = Style { units, extra_digits: 2, ..Style::default() };
            let mut text = String::new();
            if write_shop(&mut text, style, &s.joint(), &s.materials(), &book, &order).is_err() {
                return Ok(());
            }
            sheets.push(rework(&text, &style).map_err(|e| fail(format!("{e}\n{text}")))?);
        }
        let [metric, inch] = sheets.as_slice() else { return Err(fail("two sheets")) };
        prop_assert_eq!(metric.symbols().count(), inch.symbols().count());
        for (symbol, x, half) in inch.symbols() {
            let factor = working_support::metric(symbol);
            let found = metric.symbols().find(|(s, ..)| *s == symbol);
            let room = |own: f64| own + half * factor + 1e-12 * x.abs() * factor;
            prop_assert!(found.is_some_and(|(_, kept, own)| (x * factor - kept).abs() <= room(own)), "{} {} {:?}",
                symbol, x, found);
        }
    }
}

fn steel() -> Materials {
    Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0))
}

/// The shop sheet of a double-riveted lap, 13 mm plate, 23 mm holes, 22 mm rivets, margin 35, rows 40 mm apart, in a
/// straight seam with 40 mm at both ends.
fn lap(pitch: f64, run: f64, book: &RuleBook<'_>, style: Style) -> String {
    let mm = Length::mm;
    let spec = JointSpec::new(Form::lap(2).unwrap(), mm(pitch), mm(13.0), mm(23.0)).rivet(mm(22.0));
    let joint = spec.margin(mm(35.0)).back_pitch(1, mm(40.0)).build().unwrap();
    let run = Run::Straight { length: mm(run + 80.0), first_end: mm(40.0), last_end: mm(40.0) };
    let stock = Stock::every(mm(2.0), Rounding::Up);
    let order = Order::steel(run, HeadForm::Button, LengthRule::BoilerButton, stock);
    let mut text = String::new();
    write_shop(&mut text, style, &joint, &steel(), book, &order).unwrap();
    rework(&text, &style).unwrap_or_else(|e| panic!("{e}\n{text}"));
    text
}

/// Lines of a sheet, without how they are wrapped.
fn says(sheet: &str, lines: &[&str]) {
    let flat = sheet.split_whitespace().collect::<Vec<_>>().join(" ");
    for line in lines {
        assert!(flat.contains(line), "{line}\n{sheet}");
    }
}

/// By hand: 2920/71 = 41.1268. In 41 pitches 2920/41 = 71.2195, 0.2195 above 71; in 42 2920/42 = 69.5238, 1.4762 below.
#[test]
fn the_nearer_of_two_pitches_is_shown_with_the_other() {
    let sheet = lap(71.0, 2920.0, &METRIC, Style::default());
    let why = "the nearer of the two to the pitch asked for, the wider where both are as near \
               p = nearer(pm = 69.5238; pf = 71.2195) = 71.2195 mm";
    says(
        &sheet,
        &[
            "kf = kx = 41.126761 -> 41",
            "pf = 2920/41 pf = 71.2195 mm",
            "km = kx = 41.126761 -> 42",
            "pm = 2920/42 pm = 69.5238 mm",
            "uf = 71.2195 - 71 uf = 0.2195 mm",
            "um = 71 - 69.5238 um = 1.4762 mm",
            why,
            "ks = kf = 41",
            "Nr.1 = s (ks n.1 + e1.1) Nr.1 = 1 x (41 x 1 + 1) Nr.1 = 42",
        ],
    );
}

/// By hand, cap of the metric book for a lap of two rows, 2.62 x 13 + 41.28 = 75.34: 2920/75 = 38.9333, in 38 pitches
/// 76.8421, too wide; in 39 74.8718. Floor, two diameters, 46: 140/47 = 2.9787, in 3 pitches 46.6667; in 2 70, both are
/// admissible. 130/47 = 2.7660, in 3 43.3333, too narrow; in 2 65.
#[test]
fn a_limit_leaves_one_of_two_pitches() {
    says(
        &lap(75.0, 2920.0, &METRIC, Style::default()),
        &[
            "pmax = 75.34 mm",
            "the one of the two that is not above the greatest pitch (",
            "p = min(pf = 76.8421; pm = 74.8718) = 74.8718 mm",
            "to go with the one taken ks = km = 39",
        ],
    );
    says(
        &lap(47.0, 130.0, &METRIC, Style::default()),
        &[
            "pmin = 46 mm",
            "the one of the two that is not below the least pitch (",
            "p = max(pm = 43.3333; pf = 65) = 65 mm",
            "ks = kf = 2",
        ],
    );
    // 2911/71 = 41: there is no other.
    let whole = lap(71.0, 2911.0, &METRIC, Style::default());
    says(&whole, &["ks = kx = 41 -> 41", "p = Lr/ks p = 2911/41 p = 71 mm"]);
    assert!(!whole.contains("pf =") && !whole.contains("pm ="));
}

/// By hand. Grip 26; beyond it 1.8 x 22 = 39.6 by the rule for boilers above 20 mm; 65.6, from the stock 66. Lap
/// 40 + 2 x 35 = 110 wide, 110 x 3000 x 13 = 4 290 000 mm3, by 7850 kg/m3 33.6765 kg. In inches 65.6/25.4 = 2.582677,
/// 4 290 000/25.4^3 = 261.791862 in3, 7850 x 0.3048^3/0.45359237 = 490.059491 lb/ft3; 261.791862 x 490.059491/1728
/// = 74.243974 lb, which is 33.6765/0.45359237. (Worked with Python's decimal module.)
#[test]
fn lengths_by_their_rule_and_masses_with_their_factors() {
    says(
        &lap(71.0, 2920.0, &METRIC, Style::default()),
        &[
            "in diameters of the rivet (button head, boilers; Technique for Manual Working of Materials: Riveting, \
         trainees' handbook, ch. 5, READ) kz = 1.8",
            "Z.1 = kz dr.1 Z.1 = 1.8 x 22 Z.1 = 39.6 mm",
            "l.1 = 26 + 39.6 l.1 = 65.6 mm",
            "l.1 = 65.6 -> 66 mm",
            "rho = 7850 kg/m3",
            "Vp = 110 x 3000 x 13 Vp = 4290000 mm3",
            "Ml = Vp rho/10^9 Ml = 4290000 x 7850/10^9 \
         Ml = 33.6765 kg",
            "1000 mm in a metre",
        ],
    );
    let inch = Style { units: Units::Inch, ..Style::default() };
    says(
        &lap(71.0, 2920.0, &METRIC, inch),
        &[
            "l.1 = 2.582677 in",
            "rho = 490.059491 lb/ft3",
            "Vp = 261.791862 in3",
            "Ml = Vp rho/1728 Ml = 261.791862 x 490.059491/1728 Ml = 74.243974 lb",
            "M1 = 12 M/Ls",
        ],
    );
}

/// A sheet on which one digit is changed is caught, wherever in its formulas the digit stands.
#[test]
fn a_changed_digit_is_caught() {
    let style = Style::default();
    let text = lap(75.0, 2920.0, &INDIAN, style);
    let steps = text.split("\nWhat governs\n").next().unwrap().lines().count();
    let (tried, missed) = working_support::changed_digits(&text, steps, &style);
    // What is given or looked up and used by nothing else can be anything.
    assert!(tried > 150 && missed.len() <= 2, "{} of {tried} missed: {missed:#?}", missed.len());
}
