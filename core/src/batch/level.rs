//! The seam between the kernel and the processor: a job may be run inside a function compiled for more of it.

/// A piece of work that is compiled anew wherever it is run: all of it is inlined into its caller.
pub trait Job {
    /// Does it.
    fn work(self);
}

/// A level of the processor. The library itself knows the baseline only; `bindings/lanes` has those of x86-64.
pub trait Level: Copy {
    /// Runs a job, inside a function that is compiled for this level.
    fn run<J: Job>(self, job: J);
}

/// What every processor of the target can do.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Baseline;

impl Level for Baseline {
    // A function for each job: all kernels in one would take the stack of all.
    #[inline(never)]
    fn run<J: Job>(self, job: J) {
        job.work();
    }
}
