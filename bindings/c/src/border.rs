//! Everything that C hands over, taken apart: the only unsafe blocks of the crate, and the one policy for NULL, sizes
//! and texts.
//!
//! * A pointer that must not be NULL and is, or that is not aligned: [`SW_BAD_POINTER`](crate::status::SW_BAD_POINTER).
//! * `struct_size` outside what the library knows: [`SW_BAD_STRUCT_SIZE`](crate::status::SW_BAD_STRUCT_SIZE). A struct
//!   that ends earlier (of an older header) keeps the defaults for the rest.
//! * Outputs are written at the very end and only on success.

use core::ffi::c_char;
use core::fmt;
use core::mem::{align_of, size_of};
use core::ptr;

use seamwright::quantities::Length;
use seamwright::rules::Rules;

use crate::status::{Failure, SW_BAD_POINTER, SW_BAD_STRUCT_SIZE, SW_BAD_TEXT, SW_NO_SPACE, SW_TOO_MANY};

/// A struct that begins with `struct_size`.
///
/// # Safety
/// `repr(C)`, a `u32` first, and only fields for which every pattern of bits is a value.
pub(crate) unsafe trait Sized32: Copy {
    /// The least size that has ever been published. A struct that grows keeps it, and gets a new init function beside the
    /// old one: that would write past the end of what a program of an older header has.
    const LEAST: usize;

    /// All fields at their defaults, with the full size.
    fn fresh() -> Self;
}

/// A record without `struct_size`, whose layout never changes.
///
/// # Safety
/// `repr(C)`, and only fields for which every pattern of bits is a value.
pub(crate) unsafe trait Record: Copy {}

macro_rules! numbers {
    ($($number:ty)*) => {$(
        // SAFETY: every pattern of bits is a number.
        unsafe impl Record for $number {}
    )*};
}
numbers! { f64 u64 u32 u16 u8 usize }

/// Declares which structs cross the border.
macro_rules! crosses {
    ($(sized $sized:ident from $least:expr;)* $(record $record:ident;)*) => {
        $(
            // SAFETY: `repr(C)` with `struct_size: u32` first; numbers and pointers only.
            unsafe impl Sized32 for crate::$sized {
                const LEAST: usize = $least;
                fn fresh() -> Self { crate::$sized::fresh() }
            }
        )*
        $(
            // SAFETY: `repr(C)`, numbers and pointers only.
            unsafe impl Record for crate::$record {}
        )*
    };
}

crosses! {
    sized sw_error from size_of::<crate::sw_error>();
    // A rule book may end after any entry: those that follow keep their silent values.
    sized sw_rules from 16;
    sized sw_joint from size_of::<crate::sw_joint>();
    sized sw_brief from size_of::<crate::sw_brief>();
    sized sw_design from size_of::<crate::sw_design>();
    sized sw_analysis from size_of::<crate::sw_analysis>();
    sized sw_entry_info from size_of::<crate::sw_entry_info>();
    sized sw_style from size_of::<crate::sw_style>();
    sized sw_title from size_of::<crate::sw_title>();
    sized sw_order from size_of::<crate::sw_order>();
    sized sw_shop from size_of::<crate::sw_shop>();
    sized sw_shell from size_of::<crate::sw_shell>();
    sized sw_existing from size_of::<crate::sw_existing>();
    sized sw_rating from size_of::<crate::sw_rating>();
    sized sw_search from size_of::<crate::sw_search>();
    sized sw_tally from size_of::<crate::sw_tally>();
    sized sw_vessel_brief from size_of::<crate::sw_vessel_brief>();
    sized sw_vessel from size_of::<crate::sw_vessel>();
    sized sw_girth from size_of::<crate::sw_girth>();
    sized sw_group from size_of::<crate::sw_group>();
    sized sw_group_found from size_of::<crate::sw_group_found>();
    sized sw_case from size_of::<crate::sw_case>();
    sized sw_reconciled from size_of::<crate::sw_reconciled>();
    sized sw_worst from size_of::<crate::sw_worst>();
    sized sw_sweep from size_of::<crate::sw_sweep>();
    sized sw_sweep_results from size_of::<crate::sw_sweep_results>();
    sized sw_sheet from size_of::<crate::sw_sheet>();
    record sw_form;
    record sw_materials;
    record sw_mode;
    record sw_finding;
    record sw_hole;
    record sw_rivet_line;
    record sw_service;
    record sw_factor;
    record sw_allowed;
    record sw_seam;
    record sw_assumption;
    record sw_candidate;
    record sw_ranked;
    record sw_boiler_line;
    record sw_name;
    record sw_figure;
    record sw_explanation;
    record sw_exercise;
    record sw_asked;
    record sw_mark;
    record sw_slope;
    record sw_tolerances;
    record sw_column;
    record sw_compared;
    record sw_parting;
    record sw_letter;
    record sw_masses;
    record sw_known;
    record sw_group_rivet;
    record sw_rivet_load;
}

fn usable<T>(at: *const T, argument: u32) -> Result<(), Failure> {
    if at.is_null() || at.addr() & align_of::<T>().wrapping_sub(1) != 0 {
        return Err(Failure::border(SW_BAD_POINTER, argument));
    }
    Ok(())
}

/// The `struct_size` of a struct, if it is one that the library knows.
fn known_size<T: Sized32>(at: *const T, argument: u32) -> Result<usize, Failure> {
    usable(at, argument)?;
    // SAFETY: not NULL and aligned; the caller promises a struct that begins with a `u32` which `sw_*_init` wrote.
    let size = unsafe { ptr::read(at.cast::<u32>()) } as usize;
    // Every `sizeof` is a multiple of the alignment: anything else would cut a number in two.
    let whole = size & align_of::<T>().wrapping_sub(1) == 0;
    if size < T::LEAST || size > size_of::<T>() || !whole {
        return Err(Failure::border(SW_BAD_STRUCT_SIZE, argument));
    }
    Ok(size)
}

/// A copy of a struct; what an older, shorter struct lacks has its default.
pub(crate) fn read<T: Sized32>(at: *const T, argument: u32) -> Result<T, Failure> {
    let size = known_size(at, argument)?;
    let mut copy = T::fresh();
    // SAFETY: `size` bytes are the caller's struct and at most as long as the copy; any bits are a value of `T`.
    unsafe { ptr::copy_nonoverlapping(at.cast::<u8>(), (&raw mut copy).cast::<u8>(), size) };
    Ok(copy)
}

/// Runs a body on the numbers of a rule book where they stand, each held to its range: a copy of them is most of what
/// a small machine has for its stack. Only the shorter struct of an older header is copied.
pub(crate) fn with_rules(
    at: *const crate::sw_rules,
    argument: u32,
    body: &mut dyn FnMut(&Rules) -> Result<(), Failure>,
) -> Result<(), Failure> {
    if known_size(at, argument)? < size_of::<crate::sw_rules>() {
        #[cfg(feature = "std")]
        return with_copied_rules(at, argument, body);
        // A static archive is linked with the programs of its own header: no older struct can come.
        #[cfg(not(feature = "std"))]
        return Err(Failure::border(SW_BAD_STRUCT_SIZE, argument));
    }
    // SAFETY: not NULL, aligned and of full size, the caller's; any bits are a value, and `Rules` has this layout.
    let (book, rules) = unsafe { (ptr::read(&raw const (*at).book), &*(&raw const (*at).value).cast::<Rules>()) };
    crate::rules::known(book)?;
    rules.within_ranges()?;
    body(rules)
}

#[cfg(feature = "std")]
fn with_copied_rules(
    at: *const crate::sw_rules,
    argument: u32,
    body: &mut dyn FnMut(&Rules) -> Result<(), Failure>,
) -> Result<(), Failure> {
    // Its size came along from the shorter struct; the copy itself is whole.
    let copy = crate::sw_rules { struct_size: size_of::<crate::sw_rules>() as u32, ..read(at, argument)? };
    with_rules(&raw const copy, argument, body)
}

const _: () = assert!(size_of::<Rules>() == size_of::<[f64; crate::SW_RULE_ENTRIES]>(), "one number for each entry");

/// What stands in the library itself and was handed out as a pointer.
pub(crate) fn standing<'a>(at: *const crate::sw_book, argument: u32) -> Result<&'a crate::sw_book, Failure> {
    usable(at, argument)?;
    // SAFETY: not NULL and aligned; the caller promises what one of the functions `sw_book_<id>` returned, a static.
    Ok(unsafe { &*at })
}

/// A copy of a record.
pub(crate) fn record<T: Record>(at: *const T, argument: u32) -> Result<T, Failure> {
    usable(at, argument)?;
    // SAFETY: not NULL and aligned, the caller's; any bits are a value of `T`.
    Ok(unsafe { ptr::read(at) })
}

/// Where a struct goes, once there is one.
pub(crate) struct Out<T> {
    at: *mut T,
    size: usize,
}

impl<T: Sized32> Out<T> {
    /// An output that must be there.
    pub(crate) fn needed(at: *mut T, argument: u32) -> Result<Self, Failure> {
        known_size(at.cast_const(), argument).map(|size| Out { at, size })
    }

    /// An output that may be NULL.
    pub(crate) fn wanted(at: *mut T, argument: u32) -> Result<Option<Self>, Failure> {
        if at.is_null() { Ok(None) } else { Out::needed(at, argument).map(Some) }
    }

    /// Writes the struct; its size stays as the caller stated it.
    pub(crate) fn put(self, value: T) {
        let (from, to) = ((&raw const value).cast::<u8>(), self.at.cast::<u8>());
        let rest = self.size.saturating_sub(size_of::<u32>());
        // SAFETY: `size` bytes are the caller's struct, checked by `known_size`; `struct_size` is left as it is.
        unsafe { ptr::copy_nonoverlapping(from.add(size_of::<u32>()), to.add(size_of::<u32>()), rest) };
    }
}

/// Where a record or a number goes.
pub(crate) struct Slot<T> {
    at: *mut T,
}

impl<T: Record> Slot<T> {
    /// A place that must be there.
    pub(crate) fn needed(at: *mut T, argument: u32) -> Result<Self, Failure> {
        usable(at.cast_const(), argument).map(|()| Slot { at })
    }

    /// Writes the record.
    pub(crate) fn put(&self, value: T) {
        // SAFETY: not NULL and aligned, the caller's.
        unsafe { ptr::write(self.at, value) };
    }
}

/// Fills a struct with its defaults, whatever stood there.
pub(crate) fn init<T: Sized32>(at: *mut T) {
    if usable(at.cast_const(), 1).is_ok() {
        // SAFETY: not NULL and aligned, the caller's.
        unsafe { ptr::write(at, T::fresh()) };
    }
}

/// An array that the caller owns, and the place for the number of its elements.
pub(crate) struct List<T> {
    at: *mut T,
    capacity: usize,
    count: Option<Slot<usize>>,
}

impl<T: Record> List<T> {
    /// NULL and 0 ask for the number only; `count` may be NULL where an array is given; all three nothing: not wanted.
    pub(crate) fn new(at: *mut T, capacity: usize, count: *mut usize, argument: u32) -> Result<Self, Failure> {
        if !at.is_null() || capacity != 0 {
            usable(at.cast_const(), argument)?;
        }
        let count = if count.is_null() { None } else { Some(Slot::needed(count, argument.wrapping_add(2))?) };
        Ok(List { at, capacity, count })
    }

    /// Whether `found` elements will do: an array that was given and is too short is refused, with the number written.
    pub(crate) fn room(self, found: usize) -> Result<Self, Failure> {
        if !self.at.is_null() && found > self.capacity {
            if let Some(count) = self.count {
                count.put(found);
            }
            return Err(Failure::space(self.capacity, found));
        }
        Ok(self)
    }

    /// What is said where so many elements are needed and the number could not be known before.
    pub(crate) fn lacking(self, needs: usize) -> Failure {
        if let Some(count) = self.count {
            count.put(needs);
        }
        Failure::space(self.capacity, needs)
    }

    /// Whether an array was given, and not only the number asked for; one that takes so many elements.
    pub(crate) fn takes(&self, elements: usize) -> bool {
        !self.at.is_null() && self.capacity >= elements
    }

    /// Puts one element before the `n`th of the `count` written so far; to be asked for [`List::room`] first.
    pub(crate) fn insert(&mut self, n: usize, count: usize, element: T) {
        if !self.at.is_null() && n <= count && count < self.capacity {
            // SAFETY: elements `n` to `count` of the caller's array move up by one, to below its capacity.
            unsafe {
                ptr::copy(self.at.add(n), self.at.add(n).add(1), count.saturating_sub(n));
                ptr::write(self.at.add(n), element);
            }
        }
    }

    /// Writes the number of elements.
    pub(crate) fn close(self, n: usize) {
        if let Some(count) = self.count {
            count.put(n);
        }
    }

    /// Writes all elements and their number. To be asked for [`List::room`] first; never passes the capacity.
    pub(crate) fn fill(mut self, elements: impl Iterator<Item = T>) {
        let mut n = 0_usize;
        for element in elements.take(if self.at.is_null() { usize::MAX } else { self.capacity }) {
            self.insert(n, n, element);
            n = n.saturating_add(1);
        }
        self.close(n);
    }
}

/// The most elements of an array that is read.
pub(crate) const MOST: usize = 4096;

/// An array of the caller's, only read. NULL and 0 is an empty one.
pub(crate) fn array<'a, T: Record>(at: *const T, count: usize, argument: u32) -> Result<&'a [T], Failure> {
    if count == 0 {
        return Ok(&[]);
    }
    usable(at, argument)?;
    if count > MOST {
        return Err(Failure::border(SW_TOO_MANY, argument));
    }
    // SAFETY: not NULL and aligned; the caller promises `count` elements, which any bits are a value of.
    Ok(unsafe { core::slice::from_raw_parts(at, count) })
}

/// Whether an array can be as long as that.
fn long<T>(at: *const T, count: usize, argument: u32) -> Result<(), Failure> {
    usable(at, argument)?;
    if count.checked_mul(size_of::<T>()).is_none_or(|size| size > isize::MAX as usize) {
        return Err(Failure::border(SW_TOO_MANY, argument));
    }
    Ok(())
}

/// A column of a sweep, of any length, only read. NULL and 0 is an empty one.
pub(crate) fn column<'a, T: Record>(at: *const T, count: usize, argument: u32) -> Result<&'a [T], Failure> {
    if at.is_null() && count == 0 {
        return Ok(&[]);
    }
    long(at, count, argument)?;
    // SAFETY: not NULL and aligned; the caller promises `count` elements, which any bits are a value of.
    Ok(unsafe { core::slice::from_raw_parts(at, count) })
}

/// A column of results, of any length. To be called once for each place, and never for one that is read as well.
pub(crate) fn column_mut<'a, T: Record>(at: *mut T, count: usize, argument: u32) -> Result<&'a mut [T], Failure> {
    if at.is_null() && count == 0 {
        return Ok(&mut []);
    }
    long(at.cast_const(), count, argument)?;
    // SAFETY: not NULL and aligned; the caller promises `count` elements of its own, and the sweep saw to it that they
    // are apart from all other columns.
    Ok(unsafe { core::slice::from_raw_parts_mut(at, count) })
}

/// A column of results that may be NULL.
pub(crate) fn column_wanted<'a, T: Record>(
    at: *mut T,
    count: usize,
    argument: u32,
) -> Result<Option<&'a mut [T]>, Failure> {
    if at.is_null() { Ok(None) } else { column_mut(at, count, argument).map(Some) }
}

/// An array of lengths in mm.
pub(crate) fn lengths<'a>(mm: *const f64, count: usize, argument: u32) -> Result<&'a [Length], Failure> {
    let given = array(mm, count, argument)?;
    // SAFETY: a length is a transparent f64 in millimetres.
    Ok(unsafe { core::slice::from_raw_parts(given.as_ptr().cast::<Length>(), given.len()) })
}

/// Memory of the caller's for `count` values that the library works with; all of them `None` at first.
pub(crate) fn scratch<'a, T>(
    at: *mut crate::sw_front_slot,
    count: usize,
    argument: u32,
) -> Result<&'a mut [Option<T>], Failure> {
    const {
        assert!(size_of::<Option<T>>() <= size_of::<crate::sw_front_slot>(), "a slot is too small");
        assert!(align_of::<Option<T>>() <= align_of::<crate::sw_front_slot>(), "a slot is not aligned");
    }
    if count == 0 {
        return Ok(&mut []);
    }
    usable(at.cast_const(), argument)?;
    if count > MOST {
        return Err(Failure::border(SW_TOO_MANY, argument));
    }
    let at = at.cast::<Option<T>>();
    for n in 0..count {
        // SAFETY: `count` slots of the caller's, each at least as large as a value.
        unsafe { ptr::write(at.add(n), None) };
    }
    // SAFETY: all values were written just now; the caller's memory is nobody else's during the call.
    Ok(unsafe { core::slice::from_raw_parts_mut(at, count) })
}

/// The longest text that is read, in bytes with its closing NUL.
pub(crate) const LONGEST: usize = 4096;

/// A text of the caller's, closed by NUL.
pub(crate) fn text<'a>(at: *const c_char, argument: u32) -> Result<&'a str, Failure> {
    usable(at, argument)?;
    let bad = || Failure::border(SW_BAD_TEXT, argument);
    let mut length = 0_usize;
    // SAFETY: the caller's text is closed by NUL; nothing behind that is looked at.
    while unsafe { ptr::read(at.add(length)) } != 0 {
        length = length.saturating_add(1);
        if length >= LONGEST {
            return Err(bad());
        }
    }
    // SAFETY: `length` bytes were read just now.
    let bytes = unsafe { core::slice::from_raw_parts(at.cast::<u8>(), length) };
    core::str::from_utf8(bytes).map_err(|_| bad())
}

/// A text that may be NULL, which is the empty one.
pub(crate) fn text_or_none<'a>(at: *const c_char, argument: u32) -> Result<&'a str, Failure> {
    if at.is_null() { Ok("") } else { text(at, argument) }
}

/// The caller's buffer for a text, and the place for the size it needs.
pub(crate) struct Text {
    at: *mut c_char,
    length: usize,
    needed: Option<Slot<usize>>,
}

/// Copies what is written behind what stands there.
struct Copying {
    at: *mut c_char,
    length: usize,
    written: usize,
}

impl fmt::Write for Copying {
    fn write_str(&mut self, piece: &str) -> fmt::Result {
        let end = self.written.checked_add(piece.len()).filter(|end| *end < self.length).ok_or(fmt::Error)?;
        // SAFETY: up to `end`, which is below the length of the caller's buffer.
        unsafe { ptr::copy_nonoverlapping(piece.as_ptr(), self.at.add(self.written).cast::<u8>(), piece.len()) };
        self.written = end;
        Ok(())
    }
}

impl Text {
    /// NULL and 0 ask for the size only; `needed` may be NULL where a buffer is given.
    pub(crate) fn new(at: *mut c_char, length: usize, needed: *mut usize, argument: u32) -> Result<Self, Failure> {
        if at.is_null() && (length != 0 || needed.is_null()) {
            return Err(Failure::border(SW_BAD_POINTER, argument));
        }
        let needed = if needed.is_null() { None } else { Some(Slot::needed(needed, argument.wrapping_add(2))?) };
        Ok(Text { at, length, needed })
    }

    /// Writes a text with its closing NUL: all of it or nothing. `write` is called twice, first to count.
    pub(crate) fn put(&self, write: impl Fn(&mut dyn fmt::Write) -> Result<(), Failure>) -> Result<(), Failure> {
        let mut count = seamwright::text::Count::new();
        write(&mut count)?;
        let size = count.needed().saturating_add(1);
        if let Some(needed) = &self.needed {
            needed.put(size);
        }
        if self.at.is_null() {
            return Ok(());
        }
        if size > self.length {
            return Err(Failure::space(self.length, size));
        }
        let mut copying = Copying { at: self.at, length: self.length, written: 0 };
        write(&mut copying).map_err(|e| if e.status == SW_NO_SPACE { Failure::space(self.length, size) } else { e })?;
        // SAFETY: what was written is shorter than the buffer.
        unsafe { ptr::write(self.at.add(copying.written), 0) };
        Ok(())
    }
}

/// Writes a whole struct where nothing stands yet.
pub(crate) fn place<T: Sized32>(at: *mut T, argument: u32, value: T) -> Result<(), Failure> {
    usable(at.cast_const(), argument)?;
    // SAFETY: not NULL and aligned, the caller's.
    unsafe { ptr::write(at, value) };
    Ok(())
}
