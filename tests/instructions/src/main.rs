//! Sizes and checks representative joints, for counting instructions: `instructions plain|noting size|check`.
//!
//! `plain` is what users run. `noting` runs the same routines in a context that writes each step into a place of memory
//! and does nothing else: the least that any recorder does. The counter runs inside the functions `counted_*` only.

use std::hint::black_box;

use seamwright::check::{check, check_with};
use seamwright::error::Error;
use seamwright::joint::{Form, Joint};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{INDIAN, METRIC, Rules, US_CODE};
use seamwright::sizing::{Brief, size, size_with};
use seamwright::step::{Ctx, Name, Why};

/// Writes each step somewhere.
#[derive(Clone, Copy)]
struct Noting;

impl Ctx for Noting {
    type N = f64;
    fn leaf(self, name: Name, why: Why, x: f64) -> f64 {
        black_box((name, why));
        x
    }
    fn close(self, name: Name, why: Why, e: f64) -> f64 {
        black_box((name, why));
        e
    }
    fn choice(self, name: Name, why: Why, taken: f64, left: f64) -> f64 {
        black_box((name, why, left));
        taken
    }
}

/// Khurmi and Gupta's double lap, unequal straps by the Indian book, two equal straps by the early US code.
fn briefs() -> Result<[(Brief, &'static Rules); 3], Error> {
    let steel = |st: f64, ss: f64, sc: f64| Materials::new(Stress::mpa(st), Stress::mpa(ss)).bearing(Stress::mpa(sc));
    Ok([
        (Brief::new(Form::lap(2)?, Length::mm(13.0), steel(80.0, 60.0, 120.0)), &METRIC.rules),
        (Brief::new(Form::unequal_straps(3)?, Length::mm(16.0), steel(92.0, 71.0, 136.0)), &INDIAN.rules),
        (Brief::new(Form::double_strap(2)?, Length::inch(0.5), steel(76.0, 61.0, 131.0)), &US_CODE.rules),
    ])
}

#[inline(never)]
fn counted_size(noting: bool, brief: &Brief, rules: &Rules) -> Result<f64, Error> {
    let design = if noting { size_with(Noting, brief, rules)? } else { size(brief, rules)? };
    Ok(design.analysis.efficiency)
}

#[inline(never)]
fn counted_check(noting: bool, joint: &Joint, materials: &Materials, rules: &Rules) -> Result<f64, Error> {
    let found = if noting { check_with(Noting, joint, materials, rules)? } else { check(joint, materials, rules)? };
    Ok(found.efficiency)
}

fn main() -> Result<(), Error> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let (noting, sizing) = match words.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        [how @ ("plain" | "noting"), what @ ("size" | "check")] => (how == "noting", what == "size"),
        _ => {
            eprintln!("usage: instructions plain|noting size|check");
            std::process::exit(2);
        }
    };
    for (brief, rules) in briefs()? {
        let (brief, rules) = (black_box(brief), black_box(rules));
        let eta = if sizing {
            counted_size(noting, &brief, rules)?
        } else {
            let joint = black_box(size(&brief, rules)?.joint);
            counted_check(noting, &joint, brief.materials(), rules)?
        };
        println!("{eta:.17}");
    }
    Ok(())
}
