//! Sweeps in nanoseconds per joint, single thread, outputs given by the caller: against a bare pass over the same
//! memory, and against a single check for each row, all measured in turn in one run.
//!
//! `cargo bench -p seamwright-benches --bench sweep` takes ten million rows (`SWEEP_ROWS` says otherwise); `-- --test`
//! runs each case once on a few. A word picks cases: `-- "avx2: double 3"`.

use std::hint::black_box;
use std::time::Instant;

use seamwright::Error;
use seamwright::batch::{InputColumn, Inputs, Job, Level, Outputs, Path, Sweep};
use seamwright::check::check;
use seamwright::joint::{Arrangement, Form, JointKind};
use seamwright::rules::{INDIAN, METRIC, RuleBook, US_CODE};
use seamwright_lanes::Lanes;

/// Rows that are read and written in turn: pitch, plate and hole; efficiency and mode, or all outputs.
struct Memory {
    inputs: [Vec<f64>; 3],
    efficiency: Vec<f64>,
    book: Vec<f64>,
    credited: Vec<f64>,
    mode: Vec<u16>,
    status: Vec<u8>,
}

impl Memory {
    /// Rows of usual proportions: pitch 3 to 6 diameters of the hole (a figure for each rivet of the densest row).
    fn new(rows: usize, densest: f64) -> Memory {
        let mut seed = 0x9e37_79b9_7f4a_7c15_u64;
        let mut unit = || {
            seed ^= seed << 13;
            seed ^= seed >> 7;
            seed ^= seed << 17;
            (seed >> 11) as f64 / (1_u64 << 53) as f64
        };
        let mut inputs = [const { Vec::new() }; 3];
        for _ in 0..rows {
            let hole = 12.0 + 20.0 * unit();
            inputs[0].push(densest * hole * (2.0 + 3.0 * unit()));
            inputs[1].push(6.0 + 20.0 * unit());
            inputs[2].push(hole);
        }
        Memory {
            inputs,
            efficiency: vec![1.0; rows],
            book: vec![1.0; rows],
            credited: vec![1.0; rows],
            mode: vec![1; rows],
            status: vec![1; rows],
        }
    }

    fn outputs(&mut self, all: bool) -> Outputs<'_> {
        Outputs {
            mode: Some(&mut self.mode),
            book_efficiency: all.then_some(&mut self.book[..]),
            credited: all.then_some(&mut self.credited[..]),
            status: all.then_some(&mut self.status[..]),
            ..Outputs::new(&mut self.efficiency)
        }
    }
}

/// The bare pass: reads what the sweep reads, writes what it writes, and does next to nothing between.
struct Pass<'a> {
    inputs: [&'a [f64]; 3],
    outputs: Outputs<'a>,
}

/// Writes the next chunk, where there is one.
#[inline(always)]
fn put<'a, T: 'a>(chunks: Option<&mut impl Iterator<Item = &'a mut T>>, value: T) {
    if let Some(chunk) = chunks.and_then(Iterator::next) {
        *chunk = value;
    }
}

impl Job for Pass<'_> {
    #[inline(always)]
    fn work(self) {
        const W: usize = 64;
        let [a, b, c] = self.inputs.map(|x| x.as_chunks::<W>().0);
        let out = self.outputs;
        let mut efficiency = out.efficiency.as_chunks_mut::<W>().0.iter_mut();
        let mut mode = out.mode.map(|x| x.as_chunks_mut::<W>().0.iter_mut());
        let mut book = out.book_efficiency.map(|x| x.as_chunks_mut::<W>().0.iter_mut());
        let mut credited = out.credited.map(|x| x.as_chunks_mut::<W>().0.iter_mut());
        let mut status = out.status.map(|x| x.as_chunks_mut::<W>().0.iter_mut());
        for ((a, b), c) in a.iter().zip(b).zip(c) {
            let mut sum = [0.0; W];
            for i in 0..W {
                sum[i] = a[i] + b[i] + c[i];
            }
            let number = sum.map(|x| x.to_bits() as u16);
            put(Some(&mut efficiency), sum);
            put(mode.as_mut(), number);
            put(book.as_mut(), sum);
            put(credited.as_mut(), sum);
            put(status.as_mut(), [0; W]);
        }
    }
}

struct Case {
    name: &'static str,
    form: Form,
    book: &'static RuleBook<'static>,
    /// Thickness of the straps, or of the wide and the narrow one, mm.
    straps: Option<(f64, Option<f64>)>,
    all: bool,
    /// Margin and distances of rows, mm, and the shear stress of the plate.
    placed: Option<(f64, f64, Option<f64>)>,
}

fn cases() -> Result<Vec<Case>, Error> {
    let double = (10.0, None);
    let case = |name, form, book, straps, all| Case { name, form, book, straps, all, placed: None };
    let placed = |case: Case, shear| Case { placed: Some((60.0, 90.0, shear)), ..case };
    let rows = |kind, list: &[(u8, u8)]| Form::from_rows(kind, Arrangement::Zigzag, list);
    let lozenge = rows(JointKind::DoubleStrap, &[(1, 2), (2, 2), (3, 2)])?;
    let uneven = rows(JointKind::Lap, &[(1, 1), (3, 1), (2, 1)])?;
    let metric = &METRIC;
    Ok(vec![
        case("double 3, efficiency and mode", Form::double_strap(3)?, metric, Some(double), false),
        case("double 3, all outputs", Form::double_strap(3)?, metric, Some(double), true),
        case("double 3, straps that differ", Form::double_strap(3)?, metric, Some((10.0, Some(8.0))), true),
        case("double 3, straps not given", Form::double_strap(3)?, metric, None, true),
        case("double 3, book's own figures", Form::double_strap(3)?, &INDIAN, Some(double), true),
        case("double 5 thinned", Form::double_strap(5)?.omit_alternate()?, metric, Some((10.0, Some(8.0))), true),
        case("unequal 4", Form::unequal_straps(4)?, &US_CODE, Some((10.0, Some(8.0))), true),
        case("unequal 5", Form::unequal_straps(5)?, &US_CODE, Some((10.0, Some(8.0))), true),
        case("lap 1", Form::lap(1)?, metric, None, true),
        case("lap 4", Form::lap(4)?, metric, None, true),
        case("lap 4 thinned", Form::lap(4)?.omit_alternate()?, metric, None, true),
        placed(case("double 3, placed", Form::double_strap(3)?, metric, Some(double), true), None),
        placed(case("double 3, shear-out", Form::double_strap(3)?, metric, Some(double), true), Some(50.0)),
        placed(case("double 3, rows too close", Form::double_strap(3)?, &INDIAN, Some(double), true), None),
        case("double 1-2-3", lozenge, metric, Some(double), true),
        case("lap 1-3-2", uneven, metric, None, true),
        case("single strap 3 thinned", Form::single_strap(3)?.omit_alternate()?, metric, Some(double), true),
    ])
}

fn timed(mut work: impl FnMut()) -> f64 {
    let begin = Instant::now();
    work();
    begin.elapsed().as_secs_f64()
}

fn run(case: &Case, rows: usize, level: Lanes, turns: usize) -> Result<(), Error> {
    let densest = f64::from(case.form.densest_rivets());
    let mut memory = Memory::new(rows, densest);
    let [pitch, plate, hole] = memory.inputs.clone();
    let c = InputColumn::Constant;
    let inputs = Inputs {
        bearing: Some(c(120.0)),
        other: case.straps.map(|s| c(s.0)),
        narrow: case.straps.and_then(|s| s.1).map(c),
        margin: case.placed.map(|p| c(p.0)),
        back_pitch: case.placed.map(|p| c(p.1)),
        plate_shear: case.placed.and_then(|p| p.2).map(c),
        ..Inputs::new(
            InputColumn::Values(&pitch),
            InputColumn::Values(&plate),
            InputColumn::Values(&hole),
            c(80.0),
            c(60.0),
        )
    };
    let sweep = Sweep::new(&case.form, &case.book.rules, inputs, rows)?;
    let (mut kernel, mut pass, mut single) = (f64::MAX, f64::MAX, f64::MAX);
    let few = rows.min(100_000);
    let mut ran = Ok(());
    for turn in 0..turns {
        kernel = kernel.min(timed(|| ran = level.run_sweep(&sweep, 0, memory.outputs(case.all))));
        ran?;
        // The fastest of all levels: the widest registers need not be the fastest to pass memory.
        for level in Lanes::available() {
            let read = [&pitch[..], &plate[..], &hole[..]];
            pass = pass.min(timed(|| level.run(Pass { inputs: read, outputs: memory.outputs(case.all) })));
        }
        if turn >= 5 {
            continue;
        }
        single = single.min(timed(|| {
            for row in 0..few {
                let found = sweep.joint(row).and_then(|(joint, m)| check(&joint, &m, &case.book.rules));
                black_box(found.map_or(f64::NAN, |found| found.efficiency));
            }
        }));
        black_box(&memory.efficiency);
    }
    let ns = |seconds: f64, n: usize| seconds * 1e9 / n as f64;
    let (kernel, pass, single) = (ns(kernel, rows), ns(pass, rows), ns(single, few));
    let way = if sweep.path() == Path::Form { "form" } else { "cuts" };
    println!(
        "{:<32} {way} {kernel:8.3} ns, memory alone {pass:7.3} ns (ratio {:5.2}), single check {single:7.1} ns (ratio {:6.1})",
        case.name,
        kernel / pass,
        single / kernel
    );
    Ok(())
}

fn main() -> Result<(), Error> {
    let test = std::env::args().any(|a| a == "--test");
    let asked = std::env::var("SWEEP_ROWS").ok().and_then(|n| n.parse().ok());
    let rows = if test { 2000 } else { asked.unwrap_or(10_000_000) };
    let turns = if test { 1 } else { 5_usize.max(50_000_000 / rows.max(1)) };
    let only = std::env::args().skip(1).find(|a| !a.starts_with("--")).unwrap_or_default();
    let levels: Vec<Lanes> = Lanes::available().collect();
    println!("levels: {:?}; {rows} rows", levels.iter().map(|l| l.name()).collect::<Vec<_>>());
    for level in levels {
        println!("-- {}", level.name());
        for case in cases()?.iter().filter(|case| format!("{}: {}", level.name(), case.name).contains(&only)) {
            if test {
                println!("Testing {} {}", level.name(), case.name);
            }
            run(case, rows, level, turns)?;
            if test {
                println!("Success");
            }
        }
    }
    Ok(())
}
