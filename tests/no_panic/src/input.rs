//! Inputs that the compiler cannot know, and results that it cannot drop.

use core::fmt::{Display, Write};
use core::hint::black_box;
use core::{ptr, slice, str};

use seamwright::joint::{Form, Joint, JointSpec};
use seamwright::materials::{Materials, PlateStress};
use seamwright::modes::Cut;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, Rules};
use seamwright::text::{Count, Slice};

/// Numbers of which any bits are one.
pub trait Plain: Copy {}
impl Plain for u8 {}
impl Plain for u16 {}
impl Plain for f64 {}

/// A stream of words, each read once by a volatile read.
pub struct Input {
    next: *const u64,
}

impl Input {
    /// # Safety
    /// `next` points to as many words as are read.
    pub unsafe fn new(next: *const u64) -> Self {
        Input { next }
    }

    pub fn word(&mut self) -> u64 {
        // SAFETY: as `new` was promised.
        let word = unsafe { ptr::read_volatile(self.next) };
        self.next = self.next.wrapping_add(1);
        word
    }

    /// Any `f64` at all, not-a-numbers and infinities included.
    pub fn number(&mut self) -> f64 {
        f64::from_bits(self.word())
    }

    pub fn index(&mut self) -> usize {
        self.word() as usize
    }

    pub fn small(&mut self) -> u8 {
        self.word() as u8
    }

    pub fn short(&mut self) -> u16 {
        self.word() as u16
    }

    pub fn half_word(&mut self) -> u32 {
        self.word() as u32
    }

    pub fn yes(&mut self) -> bool {
        self.word() & 1 == 1
    }

    pub fn letter(&mut self) -> Option<char> {
        char::from_u32(self.half_word())
    }

    /// Bytes of any length.
    pub fn bytes<'a>(&mut self) -> &'a [u8] {
        let (at, length) = (self.word() as usize, self.index());
        // SAFETY: as `new` was promised.
        unsafe { slice::from_raw_parts(ptr::with_exposed_provenance(at), length) }
    }

    /// Room for a text, of any length.
    pub fn room<'a>(&mut self) -> &'a mut [u8] {
        self.numbers_room()
    }

    /// Room for numbers of a kind, of any length.
    pub fn numbers_room<'a, T: Plain>(&mut self) -> &'a mut [T] {
        let (at, length) = (self.word() as usize, self.index());
        // SAFETY: as `new` was promised; any bits are a number.
        unsafe { slice::from_raw_parts_mut(ptr::with_exposed_provenance_mut(at), length) }
    }

    /// Any text, an empty one where the bytes are none.
    pub fn text<'a>(&mut self) -> &'a str {
        str::from_utf8(self.bytes()).unwrap_or("")
    }

    /// Numbers of any count.
    pub fn numbers<'a>(&mut self) -> &'a [f64] {
        let (at, length) = (self.word() as usize, self.index());
        // SAFETY: as `new` was promised.
        unsafe { slice::from_raw_parts(ptr::with_exposed_provenance(at), length) }
    }

    /// One row of a table, at an index that may lie outside.
    pub fn one_of<T: Copy>(&mut self, table: &[T]) -> Option<T> {
        table.get(self.index()).copied()
    }

    pub fn length(&mut self) -> Length {
        Length::mm(self.number())
    }

    pub fn stress(&mut self) -> Stress {
        Stress::mpa(self.number())
    }

    pub fn maybe<T>(&mut self, make: impl FnOnce(&mut Self) -> T) -> Option<T> {
        if self.yes() { Some(make(self)) } else { None }
    }

    pub fn plate_stress(&mut self) -> PlateStress {
        PlateStress { tension: self.stress(), bearing: self.maybe(Self::stress), shear_out: self.maybe(Self::stress) }
    }

    /// Stresses without any check.
    pub fn materials(&mut self) -> Materials {
        Materials { plate: self.plate_stress(), other: self.plate_stress(), rivet_shear: self.stress() }
    }

    /// A built-in book with one entry changed; what its entries hold is hidden from the compiler.
    pub fn rules(&mut self) -> Rules {
        let book = self.one_of(BOOKS).map_or(Rules::SILENT, |b| b.rules);
        let key = self.text();
        black_box(book.with_key(key, self.number()).unwrap_or(book))
    }

    pub fn cut(&mut self) -> Cut {
        Cut { plate: self.small(), other: self.small(), narrow: self.small() }
    }

    /// A form of any kind and any rows; what it holds is hidden from the compiler.
    pub fn form(&mut self) -> Option<Form> {
        let form = match self.small() {
            0 => Form::lap(self.small()),
            1 => Form::single_strap(self.small()),
            2 => Form::double_strap(self.small()),
            3 => Form::double_strap(self.small()).and_then(Form::omit_alternate),
            _ => Form::unequal_straps(self.small()),
        };
        form.ok().map(black_box)
    }

    /// A joint of any form; what it holds is hidden from the compiler.
    pub fn joint(&mut self) -> Option<Joint> {
        let form = self.form()?;
        let mut spec = JointSpec::new(form, self.length(), self.length(), self.length());
        if self.yes() {
            spec = JointSpec::straps(spec, self.length(), self.length());
        }
        if self.yes() {
            spec = JointSpec::back_pitch(spec, self.index(), self.length());
        }
        JointSpec::build(spec).ok().map(black_box)
    }
}

/// A result that must be computed.
#[inline(always)]
pub fn keep<T>(result: T) {
    black_box(&result);
}

/// A text counted, and written into any room.
pub fn show<T: Display>(value: &T, i: &mut Input) {
    let mut count = Count::new();
    keep(write!(count, "{value}"));
    keep(Count::needed(&count));
    let mut sink = Slice::new(i.room());
    keep(write!(sink, "{value}"));
    keep(Slice::finish(sink));
}
