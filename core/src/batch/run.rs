//! Running a sweep: which kernel, chunk by chunk, and the rows that a chunk leaves over.

use core::marker::PhantomData;

use super::any::{self, Any, Strengths};
use super::chunk::{Chunk, Finds, Fixed, Found, READ, Span, above_margin};
use super::column::InputColumn;
use super::kernel::{self, Eyes, MARGIN};
use super::level::{Job, Level};
use super::plan::{Placing, Plan, Way};
use super::shape::{Double, Lap, Pattern, Shape, Single, Unequal};
use super::single;
use super::table::NO_MODE;
use super::{COMPUTED, Outputs, Sweep};
use crate::joint::JointKind;

/// Rows of a chunk of the kernels that are compiled for a shape: enough that what is done once for each is little, few
/// enough that the processor fetches the next ones while it works these out.
const SHAPED: usize = 64;
/// Rows of a chunk of the kernel of all forms: what is found out once for each cut is then little. Its pieces take 50 KB
/// of the stack, which a small machine has not.
const PIECES: usize = if cfg!(target_pointer_width = "64") { 128 } else { 32 };

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
        Way::Any(any) => level.run(Chunks::<_, PIECES> { sweep, from, outputs, kernel: Cuts { any, asked } }),
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
            Eyes::Own => level.run(Chunks::<_, SHAPED> { sweep, from, outputs, kernel: Shaped::<S, 2>(PhantomData) }),
            Eyes::NoStraps if S::KIND != JointKind::Lap && asked => {
                level.run(Chunks::<_, SHAPED> { sweep, from, outputs, kernel: Shaped::<S, 1>(PhantomData) })
            }
            _ => level.run(Chunks::<_, SHAPED> { sweep, from, outputs, kernel: Shaped::<S, 0>(PhantomData) }),
        }
    }
}

/// A kernel: works a chunk of rows out.
trait Kernel<const W: usize> {
    /// Room that it needs, made once for all chunks.
    type Room;
    fn room() -> Self::Room;
    fn chunk(&self, on: &On<'_>, chunk: &Chunk<'_, W>, room: &mut Self::Room, found: Finds<'_, W>);
}

/// What is the same for all chunks.
struct On<'s> {
    sweep: &'s Sweep<'s>,
    fixed: Fixed,
}

/// The kernel compiled for a shape.
struct Shaped<S, const EYES: u8>(PhantomData<S>);

impl<S: Shape, const EYES: u8, const W: usize> Kernel<W> for Shaped<S, EYES> {
    type Room = ();
    #[inline(always)]
    fn room() {}
    #[inline(always)]
    fn chunk(&self, on: &On<'_>, chunk: &Chunk<'_, W>, (): &mut (), found: Finds<'_, W>) {
        kernel::chunk::<S, EYES, W>(&on.fixed, chunk, found);
    }
}

/// The kernel of all forms.
struct Cuts<'p> {
    any: &'p Any,
    asked: bool,
}

impl<const W: usize> Kernel<W> for Cuts<'_> {
    type Room = Strengths<W>;
    #[inline(always)]
    fn room() -> Self::Room {
        Strengths::new()
    }
    #[inline(always)]
    fn chunk(&self, on: &On<'_>, chunk: &Chunk<'_, W>, room: &mut Self::Room, found: Finds<'_, W>) {
        any::chunk(on.sweep, self.any, &on.fixed, chunk, self.asked, room, found);
    }
}

/// All chunks of a run.
struct Chunks<'s, 'a, 'o, K, const W: usize> {
    sweep: &'s Sweep<'a>,
    from: usize,
    outputs: Outputs<'o>,
    kernel: K,
}

impl<K: Kernel<W>, const W: usize> Job for Chunks<'_, '_, '_, K, W> {
    #[inline(always)]
    fn work(mut self) {
        let plan = &self.sweep.plan;
        // The book's figure costs a second look: not where nobody asks for it.
        let asked = self.outputs.book_efficiency.is_some() || self.outputs.credited.is_some();
        let on = On { sweep: self.sweep, fixed: Fixed { twice: plan.fixed.twice && asked, ..plan.fixed } };
        let mut room = K::room();
        let mut spare = Found::new();
        // Whole chunks of values are read where they stand; what is the same in all rows, axes and the last rows from
        // here.
        let mut held = [[0.0; W]; READ];
        let mut moving = Moving::<W>::new();
        let mut axes = false;
        for (((column, bounds), lanes), number) in plan.columns.iter().zip(held.iter_mut()).zip(0..) {
            if let Some(x) = column.constant() {
                *lanes = [x; W];
                continue;
            }
            let values = if let InputColumn::Values(values) = column { *values } else { &[] };
            axes |= values.is_empty();
            let chunks = values.get(self.from..).unwrap_or(&[]).as_chunks().0;
            let _ = moving.push(Stream { number, column, chunks, bounds: *bounds });
        }
        let rows = self.outputs.efficiency.len();
        let (mut begin, mut at) = (0_usize, 0_usize);
        while begin < rows {
            let left = rows.wrapping_sub(begin);
            if axes || left < W {
                fill(&moving, self.from.wrapping_add(begin), left, &mut held);
            }
            let mut chunk = held.each_ref();
            let mut sound = true;
            for stream in &moving {
                let Some(slot) = chunk.get_mut(stream.number) else { continue };
                if let Some(lanes) = stream.chunks.get(at) {
                    *slot = lanes;
                }
                if let Some(bounds) = stream.bounds {
                    sound &= bounds.holds(slot);
                }
            }
            if plan.rivet {
                let [_, _, hole, _, _, rivet, ..] = &chunk;
                sound &= fits(hole, rivet).into_iter().fold(true, |all, fits| all & fits);
            }
            let count = if left < W { left } else { W };
            self.chunk(&on, &chunk, Place { begin, count, sound }, &mut room, &mut spare);
            begin = begin.wrapping_add(count);
            at = at.wrapping_add(1);
        }
    }
}

/// Fills a chunk from columns that change and are not read where they stand.
#[inline(never)]
fn fill<const W: usize>(moving: &Moving<'_, W>, from: usize, left: usize, held: &mut [[f64; W]; READ]) {
    for stream in moving {
        if let Some(lanes) = held.get_mut(stream.number)
            && (stream.chunks.is_empty() || left < W)
        {
            stream.column.fill(from, left, lanes);
        }
    }
}

/// One column that changes from row to row.
#[derive(Clone, Copy)]
struct Stream<'c, const W: usize> {
    /// Its place in a chunk.
    number: usize,
    column: &'c InputColumn<'c>,
    /// Its whole chunks, where they can be read as they stand.
    chunks: &'c [[f64; W]],
    /// Its bounds, where it was given.
    bounds: Option<Span>,
}

/// All that change.
type Moving<'c, const W: usize> = heapless::Vec<Stream<'c, W>, READ>;

/// A chunk: its first row among the outputs, how many rows it has, and whether all that the kernel does not look at is
/// sound.
#[derive(Clone, Copy)]
struct Place {
    begin: usize,
    count: usize,
    sound: bool,
}

/// Which rivets fit their holes. Those that nearly do not are left to a single check.
#[inline(always)]
fn fits<const W: usize>(hole: &[f64; W], rivet: &[f64; W]) -> [bool; W] {
    let mut fits = [true; W];
    for ((hole, rivet), fits) in hole.iter().zip(rivet).zip(fits.iter_mut()) {
        *fits = *rivet <= *hole;
    }
    fits
}

/// Takes the mode from lanes with an input that is not within its bounds, a rivet that does not fit, or an efficiency
/// that is not above the margin. They are left to a single check, which says what is wrong.
#[inline(never)]
fn unsound<const W: usize>(plan: &Plan<'_>, chunk: &Chunk<'_, W>, efficiency: &[f64; W], modes: &mut [u16; W]) {
    let [_, _, hole, _, _, rivet, ..] = chunk;
    let mut sound = fits(hole, rivet);
    for ((_, bounds), lanes) in plan.columns.iter().zip(chunk) {
        if let Some(bounds) = *bounds {
            for (x, sound) in lanes.iter().zip(sound.iter_mut()) {
                *sound &= bounds.has(*x);
            }
        }
    }
    for ((mode, sound), efficiency) in modes.iter_mut().zip(sound).zip(efficiency) {
        *mode = if sound && *efficiency > MARGIN { *mode } else { NO_MODE };
    }
}

/// Whether margins and distances of rows are clear in all lanes.
#[inline(always)]
fn clear<const W: usize>(placing: &Placing, chunk: &Chunk<'_, W>) -> bool {
    let [pitch, _, hole, .., margin, back, _] = chunk;
    let mut sign = 0;
    for (((pitch, hole), margin), back) in pitch.iter().zip(*hole).zip(*margin).zip(*back) {
        sign |= placing.unclear(*pitch, *hole, *margin, *back);
    }
    sign >= 0
}

/// Takes the mode from lanes where they are not.
#[inline(never)]
fn unclear<const W: usize>(placing: &Placing, chunk: &Chunk<'_, W>, modes: &mut [u16; W]) {
    let [pitch, _, hole, .., margin, back, _] = chunk;
    let lanes = pitch.iter().zip(*hole).zip(*margin).zip(*back);
    for ((((pitch, hole), margin), back), mode) in lanes.zip(modes) {
        *mode = if placing.unclear(*pitch, *hole, *margin, *back) >= 0 { *mode } else { NO_MODE };
    }
}

/// The rows of an output that a whole chunk fills; otherwise, or where it is not asked for, room beside it.
#[inline(always)]
fn rows_of<'o, T, const W: usize>(output: Option<&'o mut [T]>, place: Place, spare: &'o mut [T; W]) -> &'o mut [T; W] {
    let whole = output.filter(|_| place.count == W).and_then(|rows| rows.get_mut(place.begin..));
    whole.and_then(|rows| rows.first_chunk_mut()).unwrap_or(spare)
}

/// Stores what does not fill a chunk.
#[inline(always)]
fn put<T: Copy, const W: usize>(output: Option<&mut [T]>, place: Place, lanes: &[T; W]) {
    if let Some(rows) = output.and_then(|rows| rows.get_mut(place.begin..)) {
        for (slot, lane) in rows.iter_mut().zip(lanes).take(place.count) {
            *slot = *lane;
        }
    }
}

impl<K: Kernel<W>, const W: usize> Chunks<'_, '_, '_, K, W> {
    /// Works one chunk out, stores it, and checks by themselves the rows that are not clear to the kernel.
    #[inline(always)]
    fn chunk(&mut self, on: &On<'_>, chunk: &Chunk<'_, W>, place: Place, room: &mut K::Room, spare: &mut Found<W>) {
        let out = &mut self.outputs;
        let mode = rows_of(out.mode.as_deref_mut(), place, &mut spare.mode);
        let efficiency = rows_of(Some(&mut *out.efficiency), place, &mut spare.efficiency);
        let finds = Finds {
            efficiency: &mut *efficiency,
            book: out.book_efficiency.as_deref_mut().map(|rows| rows_of(Some(rows), place, &mut spare.book)),
            credited: out.credited.as_deref_mut().map(|rows| rows_of(Some(rows), place, &mut spare.credited)),
            mode: &mut *mode,
        };
        self.kernel.chunk(on, chunk, room, finds);
        if !(place.sound & above_margin(efficiency)) {
            unsound(&on.sweep.plan, chunk, efficiency, mode);
        }
        if let Some(placing) = &on.sweep.plan.placing
            && !clear(placing, chunk)
        {
            unclear(placing, chunk, mode);
        }
        let unclear = mode.iter().fold(false, |any, mode| any | (*mode == NO_MODE)).then_some(*mode);
        if let Some(status) = out.status.as_deref_mut() {
            *rows_of(Some(status), place, &mut [COMPUTED; W]) = [COMPUTED; W];
        }
        if place.count < W {
            put(Some(&mut *out.efficiency), place, &spare.efficiency);
            put(out.mode.as_deref_mut(), place, &spare.mode);
            put(out.book_efficiency.as_deref_mut(), place, &spare.book);
            put(out.credited.as_deref_mut(), place, &spare.credited);
            put(out.status.as_deref_mut(), place, &[COMPUTED; W]);
        }
        if let Some(modes) = unclear {
            singly(self.sweep, self.from, place, &modes, out);
        }
    }
}

/// Checks by themselves the rows of a chunk that are not clear to the kernel.
#[inline(never)]
fn singly<const W: usize>(sweep: &Sweep<'_>, from: usize, place: Place, modes: &[u16; W], outputs: &mut Outputs<'_>) {
    for (mode, lane) in modes.iter().take(place.count).zip(0..) {
        if *mode == NO_MODE {
            single::place(sweep, from, place.begin.wrapping_add(lane), outputs);
        }
    }
}
