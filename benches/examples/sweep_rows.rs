//! Sweeps the first so many rows of a seam, for the gate to count instructions: the count for many rows less that for
//! few, over the rows between, is what one row costs.
//!
//! `sweep_rows <rows> <mode|all> [seam]`: the efficiency and the governing mode, or all outputs; of a double-strap
//! triple-riveted seam (`even`), under a book with figures of its own for the rivets (`own`), one with margin and distances of rows (`placed`), with shear-out at the margin (`out`),
//! with rows closer than its book prescribes (`crowded`) or along the zig-zag (`zigzag`), of rows of 1, 2 and 3 rivets
//! (`lozenge`), of a lap of rows of 1, 3 and 2 (`uneven`), of an even share of the load (`shared`).

use std::hint::black_box;

use seamwright::batch::{InputColumn, Inputs, Outputs, Sweep};
use seamwright::joint::{Arrangement, Form, JointKind};
use seamwright::rules::{Entry, INDIAN, METRIC};
use seamwright_lanes::Lanes;

const ROWS: usize = 50_016;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut args = std::env::args().skip(1);
    let rows: usize = args.next().ok_or("say how many rows")?.parse()?;
    let all = args.next().as_deref() == Some("all");
    // Figures that do not repeat, in usual proportions.
    let of = |step: f64, lo: f64, width: f64| (0..ROWS).map(move |i| lo + width * (i as f64 * step).fract());
    let hole: Vec<f64> = of(0.618_034, 12.0, 20.0).collect();
    let plate: Vec<f64> = of(0.414_214, 6.0, 20.0).collect();
    let pitch: Vec<f64> = of(0.732_051, 2.0, 3.0).zip(&hole).map(|(holes, hole)| holes * hole).collect();
    let back: Vec<f64> = of(0.302_776, 1.2, 1.6).zip(&hole).map(|(holes, hole)| holes * hole).collect();
    let (mut efficiency, mut book, mut credited) = (vec![0.0; ROWS], vec![0.0; ROWS], vec![0.0; ROWS]);
    let (mut mode, mut status) = (vec![0; ROWS], vec![0; ROWS]);
    let c = InputColumn::Constant;
    let values = InputColumn::Values;
    let inputs = Inputs {
        other: Some(c(10.0)),
        bearing: Some(c(120.0)),
        ..Inputs::new(values(&pitch), values(&plate), values(&hole), c(80.0), c(60.0))
    };
    let seam = args.next().unwrap_or_else(|| "even".into());
    let list = |kind, rows: &[(u8, u8)]| Form::from_rows(kind, Arrangement::Zigzag, rows);
    let even = Form::double_strap(3)?;
    let placed = Inputs { margin: Some(values(&hole)), back_pitch: Some(values(&back)), ..inputs };
    let close = |by| METRIC.rules.with(Entry::CLOSE_ROWS, by);
    let (form, inputs, rules) = match seam.as_str() {
        "even" => (even, inputs, METRIC.rules),
        "own" => (even, inputs, INDIAN.rules),
        "placed" => (even, placed, METRIC.rules),
        "out" => (even, Inputs { plate_shear: Some(c(50.0)), ..placed }, METRIC.rules),
        "crowded" => (even, placed, close(1.0)?),
        "zigzag" => (even, placed, close(2.0)?),
        "shared" => (even.omit_alternate()?, inputs, METRIC.rules.with(Entry::INNER_SHARE, 1.0)?),
        "lozenge" => (list(JointKind::DoubleStrap, &[(1, 2), (2, 2), (3, 2)])?, inputs, METRIC.rules),
        "uneven" => (list(JointKind::Lap, &[(1, 1), (3, 1), (2, 1)])?, Inputs { other: None, ..inputs }, METRIC.rules),
        _ => return Err("no such seam".into()),
    };
    // Room for the holes of the densest row.
    let strip: Vec<f64> = pitch.iter().map(|p| p * f64::from(form.densest_rivets())).collect();
    let sweep = Sweep::new(&form, &rules, Inputs { pitch: values(&strip), ..inputs }, ROWS)?;
    let outputs = Outputs {
        mode: Some(&mut mode[..rows]),
        book_efficiency: all.then_some(&mut book[..rows]),
        credited: all.then_some(&mut credited[..rows]),
        status: all.then_some(&mut status[..rows]),
        ..Outputs::new(&mut efficiency[..rows])
    };
    Lanes::best().run_sweep(&sweep, 0, outputs)?;
    black_box((&efficiency, &book, &credited, &mode, &status));
    println!("{rows} rows, {}", Lanes::best().name());
    Ok(())
}
