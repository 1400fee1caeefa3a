//! Sizing, checking, enumerating modes, lettering and printing, each beside a baseline of the same run: read ratios.
//!
//! The inputs are published examples; their sources stand beside them.
#![allow(missing_docs, reason = "the macros of the harness")]

use std::f64::consts::PI;
use std::fmt::Write as _;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::check::{Analysis, check};
use seamwright::given::Given;
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::Materials;
use seamwright::modes::{Lens, Strengths, letters};
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{INDIAN, METRIC, RuleBook, US_CODE};
use seamwright::sizing::{Brief, size};
use seamwright::step::Plain;
use seamwright::{Error, formula, text};

fn metric(tension: f64, shear: f64, bearing: f64) -> Materials {
    Materials::new(Stress::mpa(tension), Stress::mpa(shear)).bearing(Stress::mpa(bearing))
}

/// An example: its name, what is asked for, and the book it is solved by.
struct Example {
    name: &'static str,
    order: Brief,
    book: &'static RuleBook<'static>,
}

fn examples() -> Result<[Example; 3], Error> {
    let mm = Length::mm;
    Ok([
        Example {
            // R.S. Khurmi & J.K. Gupta, A Textbook of Machine Design, Example 9.4: double-riveted lap, 13 mm.
            name: "lap 2, Khurmi 9.4",
            order: Brief::new(Form::lap(2)?, mm(13.0), metric(80.0, 60.0, 120.0)),
            book: &METRIC,
        },
        Example {
            // The same, Example 9.7: double-riveted butt, two equal straps, 12 mm.
            name: "double strap 2, Khurmi 9.7",
            order: Brief::new(Form::double_strap(2)?, mm(12.0), metric(90.0, 56.0, 140.0)),
            book: &INDIAN,
        },
        Example {
            // The same, Example 9.9: triple-riveted butt, unequal straps, 25 mm.
            name: "unequal straps 3, Khurmi 9.9",
            order: Brief::new(Form::unequal_straps(3)?, mm(25.0), metric(84.0, 60.0, 130.0)),
            book: &INDIAN,
        },
    ])
}

/// ASME Rules for the Construction of Stationary Boilers, 1914/1918, Appendix: quadruple-riveted butt joint, pitch
/// 15 in, plate 1/2 in, straps 7/16 in, holes 15/16 in; strengths of the same code.
fn quadruple() -> Result<(Joint, Materials), Error> {
    let inch = Length::inch;
    let spec = JointSpec::new(Form::unequal_straps(4)?, inch(15.0), inch(0.5), inch(0.9375)).strap(inch(0.4375));
    let materials = Materials::new(Stress::psi(55_000.0), Stress::psi(44_000.0)).bearing(Stress::psi(95_000.0));
    Ok((spec.build()?, materials))
}

/// What a textbook does with the double-riveted butt joint of Example 9.7, on bare numbers: the least of tearing, shear
/// and bearing over the solid plate.
fn textbook_double_strap(p: f64, d: f64, t: f64, tension: f64, shear: f64, bearing: f64) -> f64 {
    let tearing = (p - d) * t * tension;
    let shearing = 2.0 * 1.875 * PI / 4.0 * d * d * shear;
    let crushing = 2.0 * d * t * bearing;
    tearing.min(shearing).min(crushing) / (p * t * tension)
}

/// The textbook's sizing of the same: Unwin's hole, the pitch by shear, the cap; no series, straps, or check.
fn textbook_pitch(t: f64, tension: f64, shear: f64) -> f64 {
    let d = (6.0 * t.powf(0.5)).ceil();
    let p = d + 2.0 * 1.875 * PI / 4.0 * d * d * shear / (t * tension);
    p.min(3.5 * t + 41.28).floor()
}

fn sizing(c: &mut Criterion, examples: &[Example]) {
    let mut group = c.benchmark_group("size");
    group.bench_function("baseline: hole and pitch of Khurmi 9.7 by hand", |b| {
        b.iter(|| textbook_pitch(black_box(12.0), black_box(90.0), black_box(56.0)));
    });
    for e in examples {
        group.bench_function(e.name, |b| b.iter(|| size(black_box(&e.order), black_box(&e.book.rules))));
    }
    group.finish();
}

fn checking(c: &mut Criterion, examples: &[Example], quadruple: &(Joint, Materials)) -> Result<(), Error> {
    let mut group = c.benchmark_group("check");
    group.bench_function("baseline: three figures of Khurmi 9.7 by hand", |b| {
        b.iter(|| {
            let [p, d, t] = black_box([83.0, 21.0, 12.0]);
            let [tension, shear, bearing] = black_box([90.0, 56.0, 140.0]);
            textbook_double_strap(p, d, t, tension, shear, bearing)
        });
    });
    for e in examples {
        let joint = size(&e.order, &e.book.rules)?.joint;
        group.bench_function(e.name, |b| {
            b.iter(|| check(black_box(&joint), black_box(e.order.materials()), black_box(&e.book.rules)));
        });
    }
    group.bench_function("unequal straps 4, US code", |b| {
        b.iter(|| check(black_box(&quadruple.0), black_box(&quadruple.1), black_box(&US_CODE.rules)));
    });
    group.finish();
    Ok(())
}

/// A lozenge of eight rows under two straps: the most modes that there are (9 x 9 x 9).
fn longest() -> Result<Joint, Error> {
    let rows = [1, 2, 3, 4, 4, 3, 2, 1].map(|n| (n, 2));
    let form = Form::from_rows(JointKind::DoubleStrap, Arrangement::Chain, &rows)?;
    let mm = Length::mm;
    JointSpec::new(form, mm(300.0), mm(16.0), mm(21.0)).straps(mm(12.0), mm(10.0)).build()
}

fn enumeration(c: &mut Criterion, examples: &[Example], quadruple: &(Joint, Materials)) -> Result<(), Error> {
    let mut group = c.benchmark_group("modes");
    let mut joints = Vec::new();
    for e in examples {
        joints.push((e.name, size(&e.order, &e.book.rules)?.joint, *e.order.materials()));
    }
    joints.push(("unequal straps 4, US code", quadruple.0, quadruple.1));
    joints.push(("lozenge of 8 rows", longest()?, metric(90.0, 60.0, 140.0)));
    for (name, joint, materials) in &joints {
        let given = Given::new(Plain, joint, materials);
        let strengths = Strengths::new(Plain, joint, &given, &METRIC.rules, Lens::Real);
        let count = strengths.modes().count();
        // As many additions as there are modes: what a bare sum over a list of strengths costs.
        let list: Vec<f64> = strengths.modes().map(|m| m.strength).collect();
        group.bench_function(format!("baseline: least of a list of {count}, {name}"), |b| {
            b.iter(|| black_box(&list).iter().fold(f64::INFINITY, |a, x| if *x < a { *x } else { a }));
        });
        group.bench_function(format!("net sections and rows, {name}"), |b| {
            b.iter(|| Strengths::new(Plain, black_box(joint), &given, &METRIC.rules, Lens::Real));
        });
        group.bench_function(format!("weakest of {count}, {name}"), |b| {
            b.iter(|| black_box(&strengths).weakest(|_| true));
        });
    }
    group.finish();
    Ok(())
}

fn lettering(c: &mut Criterion, quadruple: &(Joint, Materials)) {
    let mut group = c.benchmark_group("letters");
    let (joint, materials) = quadruple;
    let given = Given::new(Plain, joint, materials);
    let strengths = Strengths::new(Plain, joint, &given, &US_CODE.rules, Lens::Real);
    group.bench_function("baseline: A to I of the quadruple joint by hand", |b| {
        b.iter(|| {
            let [p, t, strap, d] = black_box([381.0, 12.7, 11.1125, 23.8125]);
            let [tension, shear, crush] = black_box([379.212, 303.369, 655.002]);
            let (one, plate, wide) = (PI / 4.0 * d * d * shear, d * t * crush, d * strap * crush);
            let tear = |n: f64| (p - n * d) * t * tension;
            [
                p * t * tension,
                tear(1.0),
                (8.0 * 2.0 + 3.0) * one,
                tear(2.0) + one,
                tear(4.0) + 3.0 * one,
                tear(2.0) + wide,
                tear(4.0) + 3.0 * wide,
                8.0 * plate + 3.0 * wide,
                8.0 * plate + 3.0 * one,
            ]
        });
    });
    group.bench_function("unequal straps 4, US code", |b| {
        b.iter(|| letters(Plain, black_box(joint), black_box(&given), &US_CODE.rules, &strengths));
    });
    group.finish();
}

fn print_names(out: &mut String, analysis: &Analysis, form: &Form) {
    out.clear();
    let _ = write!(out, "{form}: {}; {}", analysis.governing.name(form), analysis.runner_up.name(form));
}

fn printing(c: &mut Criterion, quadruple: &(Joint, Materials)) -> Result<(), Error> {
    let mut group = c.benchmark_group("text");
    let figures = [70.939_5, 0.675_213, 143_217.48, 1.0 / 3.0, 35.0, 1e-3];
    let mut out = String::with_capacity(256);
    group.bench_function("baseline: six figures by the standard library", |b| {
        b.iter(|| {
            out.clear();
            for x in black_box(&figures) {
                let _ = write!(out, "{x:.3}");
            }
        });
    });
    group.bench_function("six figures, three decimals", |b| {
        b.iter(|| {
            out.clear();
            black_box(&figures).iter().try_for_each(|x| text::write_fixed(&mut out, *x, 3))
        });
    });
    group.bench_function("six figures, five significant", |b| {
        b.iter(|| {
            out.clear();
            black_box(&figures).iter().try_for_each(|x| text::write_significant(&mut out, *x, 5))
        });
    });
    group.bench_function("six figures as inch fractions", |b| {
        b.iter(|| {
            out.clear();
            black_box(&figures).iter().try_for_each(|x| text::write_inch_fraction(&mut out, *x, 64))
        });
    });
    let analysis = check(&quadruple.0, &quadruple.1, &US_CODE.rules)?;
    group.bench_function("form, governing mode and runner-up in words", |b| {
        b.iter(|| print_names(&mut out, black_box(&analysis), quadruple.0.form()));
    });
    group.finish();
    Ok(())
}

fn hole_rule(c: &mut Criterion) {
    let mut group = c.benchmark_group("hole rule");
    group.bench_function("baseline: 6 t^0.5 by powf", |b| b.iter(|| 6.0 * black_box(13.0_f64).powf(0.5)));
    group.bench_function("6 sqrt t", |b| b.iter(|| formula::hole_by_root(6.0, black_box(13.0), 0.0)));
    group.finish();
}

fn all(c: &mut Criterion) {
    let run = |c: &mut Criterion| -> Result<(), Error> {
        let (examples, quadruple) = (examples()?, quadruple()?);
        sizing(c, &examples);
        checking(c, &examples, &quadruple)?;
        enumeration(c, &examples, &quadruple)?;
        lettering(c, &quadruple);
        printing(c, &quadruple)?;
        hole_rule(c);
        Ok(())
    };
    if let Err(e) = run(c) {
        eprintln!("{e}");
        std::process::exit(1);
    }
}

criterion_group!(solver, all);
criterion_main!(solver);
