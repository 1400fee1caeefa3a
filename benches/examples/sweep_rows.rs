//! Sweeps the first so many rows of a double-strap triple-riveted seam, for the gate to count instructions: the count
//! for many rows less that for few, over the rows between, is what one row costs.
//!
//! `sweep_rows <rows> <mode|all>`: the efficiency and the governing mode, or all outputs.

use std::hint::black_box;

use seamwright::batch::{InputColumn, Inputs, Outputs, Sweep};
use seamwright::joint::Form;
use seamwright::rules::METRIC;
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
    let (mut efficiency, mut book, mut credited) = (vec![0.0; ROWS], vec![0.0; ROWS], vec![0.0; ROWS]);
    let (mut mode, mut status) = (vec![0; ROWS], vec![0; ROWS]);
    let c = InputColumn::Constant;
    let values = InputColumn::Values;
    let inputs = Inputs {
        other: Some(c(10.0)),
        bearing: Some(c(120.0)),
        ..Inputs::new(values(&pitch), values(&plate), values(&hole), c(80.0), c(60.0))
    };
    let form = Form::double_strap(3)?;
    let sweep = Sweep::new(&form, &METRIC.rules, inputs, ROWS)?;
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
