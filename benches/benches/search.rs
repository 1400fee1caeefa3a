//! The certified search beside the enumeration of the same grid, in one run: read the ratio.
#![allow(missing_docs, reason = "the macros of the harness")]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::Error;
use seamwright::joint::Form;
use seamwright::materials::Materials;
use seamwright::proportion::{Limit, pitch_greatest, pitch_least};
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{METRIC, Rounding};
use seamwright::search::{Objective, SearchBrief, all_forms, search};
use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock};
use seamwright::sizing::{Brief, size};
use seamwright::step::Plain;

/// The best credited efficiency of the grid, every candidate sized and checked, and how many there were.
fn enumerate(forms: &[Form], plate: Length, materials: Materials) -> (f64, u64) {
    let (mut best, mut count) = (0.0, 0);
    let rules = &METRIC.rules;
    for form in forms {
        for s in rules.series() {
            let (least, _) = pitch_least(Plain, rules, form, s.hole);
            let Limit::At(most, _) = pitch_greatest(Plain, rules, form, plate.to_mm()) else { continue };
            let mut pitch = least.ceil();
            while pitch <= most {
                let brief = Brief::new(*form, plate, materials)
                    .hole(Length::mm(s.hole), Some(Length::mm(s.rivet)))
                    .pitch(Length::mm(pitch));
                if let Ok(design) = size(&brief, rules)
                    && design.analysis.findings.open() == 0
                    && design.analysis.credited > best
                {
                    best = design.analysis.credited;
                }
                count += 1;
                pitch += 1.0;
            }
        }
    }
    (best, count)
}

fn all(c: &mut Criterion) {
    let run = |c: &mut Criterion| -> Result<(), Error> {
        let named = all_forms();
        let forms = named.get(..20).unwrap_or(&named);
        let plates = [Length::mm(16.0)];
        let [plate] = plates;
        let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(130.0));
        let stock = Stock::every(Length::mm(2.0), Rounding::Up);
        let order = Order::steel(Run::Tie, HeadForm::Button, LengthRule::Hand, stock);
        let brief = |objective| SearchBrief::new(objective, &plates, steel).forms(forms);
        let (best, count) = enumerate(forms, plate, steel);
        let outcome = search(&brief(Objective::Efficiency), &METRIC.rules)?;
        let found = outcome.found().map_or(0.0, |f| f.design.analysis.credited);
        assert_eq!(
            best.to_bits(),
            found.to_bits(),
            "the search must agree with the enumeration that it is timed against"
        );
        println!("{count} candidates enumerated; the search examined {}", outcome.tally().examined);
        let mut group = c.benchmark_group("search");
        group.sample_size(10);
        group.bench_function("baseline: full enumeration, 20 forms", |b| {
            b.iter(|| enumerate(black_box(forms), plate, steel));
        });
        group.sample_size(100);
        for (name, asked) in [
            ("efficiency", brief(Objective::Efficiency)),
            ("mass, 70 %", brief(Objective::Mass).mass(order).efficiency(0.7)),
            ("rivets, 70 %", brief(Objective::Rivets).efficiency(0.7)),
        ] {
            group.bench_function(name, |b| b.iter(|| search(black_box(&asked), &METRIC.rules)));
        }
        group.finish();
        Ok(())
    };
    if let Err(e) = run(c) {
        eprintln!("{e}");
        std::process::exit(1);
    }
}

criterion_group!(searching, all);
criterion_main!(searching);
