//! Levels of the processor: sweeps of [`seamwright::batch`] with AVX2 or AVX-512 where the machine has them.
//!
//! The kernel is the library's own; here it is only compiled once more for each level, inside a function that may use
//! its instructions, and called where the processor was asked and has them. The results are the same bits at every
//! level: wider registers, no other arithmetic (no fused multiply-add is ever made of a product and a sum).
//!
//! ```
//! use seamwright::{batch::{InputColumn, Inputs, Outputs, Sweep}, joint::Form, rules::METRIC};
//! use seamwright_lanes::Lanes;
//! let c = InputColumn::Constant;
//! let pitches = [60.0, 71.0];
//! let inputs = Inputs {
//!     bearing: Some(c(120.0)),
//!     ..Inputs::new(InputColumn::Values(&pitches), c(13.0), c(23.0), c(80.0), c(60.0))
//! };
//! let form = Form::lap(2)?;
//! let mut efficiency = [0.0; 2];
//! let sweep = Sweep::new(&form, &METRIC.rules, inputs, 2)?;
//! Lanes::best().run_sweep(&sweep, 0, Outputs::new(&mut efficiency))?;
//! assert!((efficiency[1] - 0.6752).abs() < 1e-4); // Khurmi & Gupta, Example 9.4
//! # Ok::<(), seamwright::Error>(())
//! ```

use seamwright::Error;
use seamwright::batch::{Baseline, Job, Level, Outputs, Sweep};

/// A level of the processor at hand. Made by [`available`](Lanes::available) or [`best`](Lanes::best) only, so that a
/// level that exists is one that the processor has.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Lanes(Kind);

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Kind {
    Baseline,
    #[cfg(target_arch = "x86_64")]
    Avx2,
    #[cfg(target_arch = "x86_64")]
    Avx512,
}

impl Lanes {
    /// What every processor of the target can do.
    pub const BASELINE: Lanes = Lanes(Kind::Baseline);

    /// The levels that the processor offers, the widest first, the baseline last.
    ///
    /// ```
    /// use seamwright_lanes::Lanes;
    /// assert_eq!(Lanes::available().last(), Some(Lanes::BASELINE));
    /// ```
    pub fn available() -> impl Iterator<Item = Lanes> {
        let wide: [Option<Lanes>; 2];
        #[cfg(target_arch = "x86_64")]
        {
            let avx512 = std::arch::is_x86_feature_detected!("avx512f")
                && std::arch::is_x86_feature_detected!("avx512dq")
                && std::arch::is_x86_feature_detected!("avx512bw")
                && std::arch::is_x86_feature_detected!("avx512vl");
            let avx2 = std::arch::is_x86_feature_detected!("avx2");
            wide = [avx512.then_some(Lanes(Kind::Avx512)), avx2.then_some(Lanes(Kind::Avx2))];
        }
        #[cfg(not(target_arch = "x86_64"))]
        {
            wide = [None; 2];
        }
        wide.into_iter().flatten().chain([Lanes::BASELINE])
    }

    /// The widest level that the processor offers. It is asked once.
    #[must_use]
    pub fn best() -> Lanes {
        static BEST: std::sync::OnceLock<Lanes> = std::sync::OnceLock::new();
        *BEST.get_or_init(|| Lanes::available().next().unwrap_or(Lanes::BASELINE))
    }

    /// Its name, as the makers of processors write it in lower case.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self.0 {
            Kind::Baseline => "baseline",
            #[cfg(target_arch = "x86_64")]
            Kind::Avx2 => "avx2",
            #[cfg(target_arch = "x86_64")]
            Kind::Avx512 => "avx512",
        }
    }

    /// [`Sweep::run_with`] at this level: the kernels compiled once, here, for all who call it.
    ///
    /// # Errors
    /// As [`Sweep::run_with`].
    pub fn run_sweep(self, sweep: &Sweep<'_>, from: usize, outputs: Outputs<'_>) -> Result<(), Error> {
        sweep.run_with(self, from, outputs)
    }
}

impl Level for Lanes {
    #[inline(always)]
    fn run<J: Job>(self, job: J) {
        match self.0 {
            Kind::Baseline => Baseline.run(job),
            // SAFETY: a level exists only where the processor was asked and offers its features.
            #[cfg(target_arch = "x86_64")]
            Kind::Avx2 => unsafe { avx2(job) },
            // SAFETY: as above.
            #[cfg(target_arch = "x86_64")]
            Kind::Avx512 => unsafe { avx512(job) },
        }
    }
}

#[cfg(target_arch = "x86_64")]
#[target_feature(enable = "avx2")]
fn avx2<J: Job>(job: J) {
    job.work();
}

#[cfg(target_arch = "x86_64")]
#[target_feature(enable = "avx512f,avx512dq,avx512bw,avx512vl")]
fn avx512<J: Job>(job: J) {
    job.work();
}
