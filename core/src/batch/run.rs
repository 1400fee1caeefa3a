//! Running a sweep: which kernel, chunk by chunk, and the rows that a chunk leaves over.

use core::marker::PhantomData;

use super::any::{self, Any};
use super::column::InputColumn;
use super::kernel::{self, CHECKED, Chunk, Eyes, Fixed, Found, READ};
use super::level::{Job, Level};
use super::plan::{Placing, Plan, Way};
use super::shape::{Double, Lap, Pattern, Shape, Single, Unequal};
use super::single::place;
use super::table::NO_MODE;
use super::{COMPUTED, Outputs, Sweep};
use crate::joint::JointKind;

/// Rows of a chunk.
pub const CHUNK: usize = 32;

/// Something to be done for a shape that is known at compile time.
pub trait ShapeWork {
    fn work<S: Shape>(self);
}

/// Finds the shape of a plan.
#[inline(always)]
pub fn for_shape<T: ShapeWork>(plan: &Plan<'_>, work: T) {
    macro_rules! shapes {
        ($(($kind:ident, $rows:literal, $pattern:pat, $alike:pat) $shape:ty;)*) => {
            match (plan.kind, plan.rows, plan.pattern, plan.alike) {
                $((JointKind::$kind, $rows, $pattern, $alike) => work.work::<$shape>(),)*
                _ => {}
            }
        };
    }
    use Pattern::{Even, Thinned};
    shapes! {
        (Lap, 1, Even, _) Lap<1, false>;
        (Lap, 2, Even, _) Lap<2, false>;
        (Lap, 3, Even, _) Lap<3, false>;
        (Lap, 4, Even, _) Lap<4, false>;
        (Lap, 5, Even, _) Lap<5, false>;
        (Lap, 3, Thinned, _) Lap<3, true>;
        (Lap, 4, Thinned, _) Lap<4, true>;
        (Lap, 5, Thinned, _) Lap<5, true>;
        (SingleStrap, 1, Even, _) Single<1, false>;
        (SingleStrap, 2, Even, _) Single<2, false>;
        (SingleStrap, 3, Even, _) Single<3, false>;
        (SingleStrap, 2, Thinned, _) Single<2, true>;
        (SingleStrap, 3, Thinned, _) Single<3, true>;
        (DoubleStrap, 1, Even, true) Double<1, false, true>;
        (DoubleStrap, 2, Even, true) Double<2, false, true>;
        (DoubleStrap, 3, Even, true) Double<3, false, true>;
        (DoubleStrap, 4, Even, true) Double<4, false, true>;
        (DoubleStrap, 5, Even, true) Double<5, false, true>;
        (DoubleStrap, 2, Thinned, true) Double<2, true, true>;
        (DoubleStrap, 3, Thinned, true) Double<3, true, true>;
        (DoubleStrap, 4, Thinned, true) Double<4, true, true>;
        (DoubleStrap, 5, Thinned, true) Double<5, true, true>;
        (DoubleStrap, 1, Even, false) Double<1, false, false>;
        (DoubleStrap, 2, Even, false) Double<2, false, false>;
        (DoubleStrap, 3, Even, false) Double<3, false, false>;
        (DoubleStrap, 4, Even, false) Double<4, false, false>;
        (DoubleStrap, 5, Even, false) Double<5, false, false>;
        (DoubleStrap, 2, Thinned, false) Double<2, true, false>;
        (DoubleStrap, 3, Thinned, false) Double<3, true, false>;
        (DoubleStrap, 4, Thinned, false) Double<4, true, false>;
        (DoubleStrap, 5, Thinned, false) Double<5, true, false>;
        (DoubleStrap, 2, Pattern::Unequal(1), _) Unequal<2, 1>;
        (DoubleStrap, 3, Pattern::Unequal(1), _) Unequal<3, 1>;
        (DoubleStrap, 4, Pattern::Unequal(2), _) Unequal<4, 2>;
        (DoubleStrap, 5, Pattern::Unequal(2), _) Unequal<5, 2>;
    }
}

/// Runs a sweep.
pub fn dispatch<L: Level>(sweep: &Sweep<'_>, level: L, from: usize, outputs: Outputs<'_>) {
    // The book's figure costs a second search: not where nobody asks for it.
    let asked = outputs.book_efficiency.is_some() || outputs.credited.is_some();
    match &sweep.plan.way {
        Way::Shape(eyes) => for_shape(&sweep.plan, Start { sweep, level, from, outputs, eyes: *eyes, asked }),
        Way::Any(any) => level.run(Chunks { sweep, from, outputs, kernel: Cuts { any, asked } }),
    }
}

/// A sweep about to start, its shape still to be found.
struct Start<'s, 'a, 'o, L> {
    sweep: &'s Sweep<'a>,
    level: L,
    from: usize,
    outputs: Outputs<'o>,
    eyes: Eyes,
    asked: bool,
}

impl<L: Level> ShapeWork for Start<'_, '_, '_, L> {
    #[inline(always)]
    fn work<S: Shape>(self) {
        let Start { sweep, level, from, outputs, eyes, asked } = self;
        match eyes {
            Eyes::Own => level.run(Chunks { sweep, from, outputs, kernel: Shaped::<S, 2>(PhantomData) }),
            Eyes::NoStraps if S::KIND != JointKind::Lap && asked => {
                level.run(Chunks { sweep, from, outputs, kernel: Shaped::<S, 1>(PhantomData) })
            }
            _ => level.run(Chunks { sweep, from, outputs, kernel: Shaped::<S, 0>(PhantomData) }),
        }
    }
}

/// A kernel: works a chunk of rows out.
trait Kernel {
    fn chunk(&self, sweep: &Sweep<'_>, fixed: &Fixed, chunk: &Chunk<'_, CHUNK>, found: &mut Found<CHUNK>);
}

/// The kernel compiled for a shape.
struct Shaped<S, const EYES: u8>(PhantomData<S>);

impl<S: Shape, const EYES: u8> Kernel for Shaped<S, EYES> {
    #[inline(always)]
    fn chunk(&self, _: &Sweep<'_>, fixed: &Fixed, chunk: &Chunk<'_, CHUNK>, found: &mut Found<CHUNK>) {
        kernel::chunk::<S, EYES, CHUNK>(fixed, chunk, found);
    }
}

/// The kernel of all forms.
struct Cuts<'p> {
    any: &'p Any,
    asked: bool,
}

impl Kernel for Cuts<'_> {
    #[inline(always)]
    fn chunk(&self, sweep: &Sweep<'_>, fixed: &Fixed, chunk: &Chunk<'_, CHUNK>, found: &mut Found<CHUNK>) {
        any::chunk(sweep, self.any, fixed, chunk, self.asked, found);
    }
}

/// All chunks of a run.
struct Chunks<'s, 'a, 'o, K> {
    sweep: &'s Sweep<'a>,
    from: usize,
    outputs: Outputs<'o>,
    kernel: K,
}

impl<K: Kernel> Job for Chunks<'_, '_, '_, K> {
    #[inline(always)]
    fn work(mut self) {
        let columns = self.sweep.plan.columns;
        let fixed = self.sweep.plan.fixed;
        let rows = self.outputs.efficiency.len();
        // Whole chunks of values are read where they stand; axes and the last rows by way of `filled`.
        let mut constants = [[0.0; CHUNK]; READ];
        let mut filled = [[0.0; CHUNK]; READ];
        let mut moving = Moving::new();
        let mut axes = false;
        for (((column, bounds), lanes), number) in columns.iter().zip(constants.iter_mut()).zip(0..) {
            match (column, *bounds) {
                (InputColumn::Values(values), Some(bounds)) => {
                    let chunks = values.get(self.from..).unwrap_or(&[]).as_chunks().0;
                    let _ = moving.push(Stream { column: number, chunks, bounds });
                }
                (column, None) => *lanes = [column.constant().unwrap_or(f64::NAN); CHUNK],
                _ => axes = true,
            }
        }
        let mut standing = constants.each_ref();
        let (mut begin, mut at) = (0_usize, 0_usize);
        while begin < rows {
            let left = rows.wrapping_sub(begin);
            let mut sound = true;
            let chunk = if left >= CHUNK && !axes {
                for stream in &moving {
                    let Some(lanes) = stream.chunks.get(at) else { continue };
                    if let Some(slot) = standing.get_mut(stream.column) {
                        *slot = lanes;
                    }
                    if stream.column >= CHECKED {
                        sound &= inside(lanes, stream.bounds);
                    }
                }
                standing
            } else {
                sound = fill(&self.sweep.plan, self.from.wrapping_add(begin), left, &mut filled);
                filled.each_ref()
            };
            let count = if left < CHUNK { left } else { CHUNK };
            self.chunk(&fixed, &chunk, begin, count, sound);
            begin = begin.wrapping_add(count);
            at = at.wrapping_add(1);
        }
    }
}

/// Fills a chunk from all columns; whether all of it is within bounds.
#[inline(never)]
fn fill(plan: &Plan<'_>, from: usize, left: usize, filled: &mut [[f64; CHUNK]; READ]) -> bool {
    let mut sound = true;
    for ((column, bounds), lanes) in plan.columns.iter().zip(filled.iter_mut()) {
        column.fill(from, left, lanes);
        if let Some(bounds) = *bounds {
            sound &= inside(lanes, bounds);
        }
    }
    sound
}

/// The chunks of one column that changes from row to row.
#[derive(Clone, Copy)]
struct Stream<'c> {
    column: usize,
    chunks: &'c [[f64; CHUNK]],
    bounds: (f64, f64),
}

/// All that change.
type Moving<'c> = heapless::Vec<Stream<'c>, READ>;

/// Whether all lanes are within bounds.
#[inline(always)]
fn inside<const W: usize>(lanes: &[f64; W], (lo, hi): (f64, f64)) -> bool {
    let mut outside = [0_u64; 8];
    for eight in lanes.as_chunks::<8>().0 {
        for (x, outside) in eight.iter().zip(outside.iter_mut()) {
            *outside |= u64::from(!((*x >= lo) & (*x <= hi)));
        }
    }
    outside.iter().fold(0, |any, x| any | x) == 0
}

/// Which lanes have all inputs within their bounds. The others are left to a single check, which says what is wrong.
#[inline(never)]
fn within<const W: usize>(plan: &Plan<'_>, chunk: &Chunk<'_, W>) -> [bool; W] {
    let mut within = [true; W];
    for ((_, bounds), lanes) in plan.columns.iter().zip(chunk) {
        if let Some((lo, hi)) = *bounds {
            for (x, within) in lanes.iter().zip(within.iter_mut()) {
                *within &= *x >= lo && *x <= hi;
            }
        }
    }
    within
}

/// Whether margins and distances of rows are clear in all lanes. Lanes where they are not lose their mode.
#[inline(never)]
fn clear(placing: &Placing, chunk: &Chunk<'_, CHUNK>, modes: Option<&mut [u16; CHUNK]>) -> bool {
    let [pitch, _, hole, .., margin, back, _] = chunk;
    let mut all = 0_u64;
    let mut clear = [0_u64; CHUNK];
    let lanes = pitch.iter().zip(*hole).zip(*margin).zip(*back);
    for ((((pitch, hole), margin), back), clear) in lanes.zip(clear.iter_mut()) {
        *clear = u64::from(!placing.clear(*pitch, *hole, *margin, *back));
        all |= *clear;
    }
    if let Some(modes) = modes {
        for (mode, clear) in modes.iter_mut().zip(clear) {
            *mode = if clear == 0 { *mode } else { NO_MODE };
        }
    }
    all == 0
}

#[inline(always)]
fn put<T: Copy, const W: usize>(slot: Option<&mut [T]>, begin: usize, count: usize, lanes: &[T; W]) {
    let Some(rows) = slot.and_then(|s| s.get_mut(begin..)) else { return };
    if count == W
        && let Some(whole) = rows.first_chunk_mut::<W>()
    {
        *whole = *lanes;
    } else {
        for (slot, lane) in rows.iter_mut().zip(lanes).take(count) {
            *slot = *lane;
        }
    }
}

impl<K: Kernel> Chunks<'_, '_, '_, K> {
    /// Works one chunk out, stores it, and checks by themselves the rows that are not clear to the kernel.
    #[inline(always)]
    fn chunk(&mut self, fixed: &Fixed, chunk: &Chunk<'_, CHUNK>, begin: usize, count: usize, sound: bool) {
        let mut found =
            Found { efficiency: [0.0; CHUNK], book: [0.0; CHUNK], credited: [0.0; CHUNK], mode: [0; CHUNK] };
        self.kernel.chunk(self.sweep, fixed, chunk, &mut found);
        if !sound {
            for (mode, sound) in found.mode.iter_mut().zip(within(&self.sweep.plan, chunk)) {
                *mode = if sound { *mode } else { NO_MODE };
            }
        }
        if let Some(placing) = &self.sweep.plan.placing
            && !clear(placing, chunk, None)
        {
            clear(placing, chunk, Some(&mut found.mode));
        }
        self.store(begin, count, &found);
        if found.mode.iter().fold(false, |any, mode| any | (*mode == NO_MODE)) {
            for (mode, lane) in found.mode.into_iter().take(count).zip(0..) {
                if mode == NO_MODE {
                    place(self.sweep, self.from, begin.wrapping_add(lane), &mut self.outputs);
                }
            }
        }
    }

    #[inline(always)]
    fn store(&mut self, begin: usize, count: usize, found: &Found<CHUNK>) {
        let out = &mut self.outputs;
        put(Some(&mut *out.efficiency), begin, count, &found.efficiency);
        put(out.mode.as_deref_mut(), begin, count, &found.mode);
        put(out.book_efficiency.as_deref_mut(), begin, count, &found.book);
        put(out.credited.as_deref_mut(), begin, count, &found.credited);
        put(out.status.as_deref_mut(), begin, count, &[COMPUTED; CHUNK]);
    }
}
