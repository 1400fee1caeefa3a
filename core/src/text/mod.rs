//! Numbers to text and back without `alloc`, without floats in `core::fmt` and without a panic path.
//!
//! * [`write_fixed`], [`write_significant`], [`write_plain`]: decimals, rounded half to even on the *exact* binary value.
//! * [`write_inch_fraction`]: inches as a reduced mixed fraction, only where that hides no rounding.
//! * [`parse_number`]: decimals, fractions and mixed numbers, exactly rounded.
//! * [`Slice`] and [`Count`]: sinks over a borrowed buffer, and one that only counts bytes.
//!
//! Each writing function hands the sink its whole number in a single `write_str`; on an error of its own it hands over
//! nothing.

use core::fmt;

mod decimal;
mod fraction;
mod parse;

pub use decimal::{
    write_fixed, write_fixed_with, write_plain, write_plain_with, write_significant, write_significant_with,
};
pub use fraction::write_inch_fraction;
pub use parse::parse_number;

/// Why a number could not be written or read.
///
/// ```
/// use seamwright::text::{TextError, parse_number};
/// assert_eq!(parse_number("5/0"), Err(TextError::Syntax));
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
pub enum TextError {
    /// The value is infinite or not a number.
    NotFinite,
    /// The magnitude is 9e15 or more.
    TooLarge,
    /// The number of decimals or figures (or the denominator) asked for is outside of what can be printed.
    TooManyDigits,
    /// The sink refused the text.
    Sink,
    /// The text is not a number in one of the accepted forms.
    Syntax,
    /// The text is empty or blank.
    Empty,
    /// The text has more figures, or a larger power of ten, than can be read exactly.
    TooManyFigures,
}

impl TextError {
    /// The message, as [`Display`](fmt::Display) prints it.
    ///
    /// ```
    /// use seamwright::text::{TextError, parse_number};
    /// assert_eq!(parse_number("1/2"), Ok(0.5));
    /// assert_eq!(parse_number("").unwrap_err().text(), "nothing was given");
    /// assert_eq!(TextError::Sink.text(), "the sink refused the text");
    /// ```
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            TextError::NotFinite => "not a finite number",
            TextError::TooLarge => "too large to print",
            TextError::TooManyDigits => "the number of digits asked for cannot be printed",
            TextError::Sink => "the sink refused the text",
            TextError::Syntax => "not a number",
            TextError::Empty => "nothing was given",
            TextError::TooManyFigures => "more figures than can be read exactly",
        }
    }
}

impl fmt::Display for TextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text())
    }
}

impl core::error::Error for TextError {}

/// What stands before and after the first of an ASCII byte, without the panic path that the library's own keeps.
pub(crate) fn split_once(text: &str, byte: u8) -> Option<(&str, &str)> {
    let at = text.bytes().position(|b| b == byte)?;
    Some((text.get(..at)?, text.get(at.saturating_add(1)..)?))
}

/// What stands between the whole number and its decimals.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, Default)]
pub enum DecimalMark {
    /// `12.5`
    #[default]
    Point,
    /// `12,5`
    Comma,
}

impl DecimalMark {
    /// The mark as an ASCII byte.
    const fn byte(self) -> u8 {
        match self {
            DecimalMark::Point => b'.',
            DecimalMark::Comma => b',',
        }
    }
}

/// A sink over a borrowed buffer, in bytes: all or nothing, and it keeps counting after the buffer is full.
///
/// Writing never fails; [`finish`](Slice::finish) tells whether all of it fitted. A piece that does not fit is left out
/// as a whole, so no character is ever cut.
///
/// ```
/// use seamwright::text::{Slice, write_fixed};
/// let mut buffer = [0_u8; 5];
/// let mut sink = Slice::new(&mut buffer);
/// write_fixed(&mut sink, 12.5, 2).unwrap();
/// assert_eq!(sink.finish(), Ok("12.50"));
///
/// let mut small = [0_u8; 4];
/// let mut sink = Slice::new(&mut small);
/// write_fixed(&mut sink, 12.5, 2).unwrap();
/// assert_eq!(sink.finish(), Err(5)); // five bytes are needed
/// ```
#[derive(Debug)]
pub struct Slice<'b> {
    buffer: &'b mut [u8],
    needed: usize,
}

impl<'b> Slice<'b> {
    /// An empty text over `buffer` (of any length, zero included).
    #[must_use]
    pub const fn new(buffer: &'b mut [u8]) -> Self {
        Self { buffer, needed: 0 }
    }

    /// Bytes written so far, those that did not fit included.
    #[must_use]
    pub const fn needed(&self) -> usize {
        self.needed
    }

    /// The whole text.
    ///
    /// # Errors
    /// The number of bytes needed, when that is more than the buffer holds.
    pub fn finish(self) -> Result<&'b str, usize> {
        let Slice { buffer, needed } = self;
        let buffer: &'b [u8] = buffer;
        // Only whole `&str` stand in the part that was written, so the second step cannot fail.
        buffer.get(..needed).and_then(|text| core::str::from_utf8(text).ok()).ok_or(needed)
    }
}

impl fmt::Write for Slice<'_> {
    fn write_str(&mut self, piece: &str) -> fmt::Result {
        let start = self.needed;
        let end = start.saturating_add(piece.len());
        // Once a piece is left out `needed` exceeds the buffer, and every later piece (an empty one apart) is out too.
        if let Some(room) = self.buffer.get_mut(start..end) {
            for (to, from) in room.iter_mut().zip(piece.bytes()) {
                *to = from;
            }
        }
        self.needed = end;
        Ok(())
    }
}

/// A sink that only counts bytes.
///
/// ```
/// use seamwright::text::{Count, TextError, write_fixed};
/// let mut count = Count::new();
/// write_fixed(&mut count, -1.0, 3).unwrap();
/// assert_eq!(count.needed(), 6); // "-1.000"
/// assert_eq!(write_fixed(&mut count, f64::NAN, 3), Err(TextError::NotFinite));
/// assert_eq!(count.needed(), 6); // nothing was written
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Count {
    needed: usize,
}

impl Count {
    /// A count of zero.
    #[must_use]
    pub const fn new() -> Self {
        Self { needed: 0 }
    }

    /// Bytes written so far.
    #[must_use]
    pub const fn needed(&self) -> usize {
        self.needed
    }
}

impl fmt::Write for Count {
    fn write_str(&mut self, piece: &str) -> fmt::Result {
        self.needed = self.needed.saturating_add(piece.len());
        Ok(())
    }
}

/// Room for the longest number: sign, 16 digits, mark, 22 decimals; or sign, 16 digits, blank, `127/128`.
const ROOM: usize = 40;

/// ASCII text on the stack, written from its end to its front.
struct Backwards {
    buffer: [u8; ROOM],
    start: usize,
}

impl Backwards {
    const fn new() -> Self {
        Self { buffer: [0; ROOM], start: ROOM }
    }

    /// Puts one ASCII byte in front. With no room left (which [`ROOM`] excludes) nothing happens.
    fn byte(&mut self, byte: u8) {
        let at = self.start.wrapping_sub(1);
        if let Some(place) = self.buffer.get_mut(at) {
            *place = byte;
            self.start = at;
        }
    }

    /// Puts a whole number in front, with leading zeros up to `width` digits; `width` 0 writes nothing for 0.
    fn number(&mut self, mut number: u64, mut width: u32) {
        while number > 0 || width > 0 {
            // The remainder is below 10: no bits are lost.
            self.byte(b'0'.wrapping_add((number % 10) as u8));
            number /= 10;
            width = width.saturating_sub(1);
        }
    }

    /// Hands the text over in one piece.
    fn send(&self, out: &mut dyn fmt::Write) -> Result<(), TextError> {
        let text = self.buffer.get(self.start..).and_then(|text| core::str::from_utf8(text).ok());
        out.write_str(text.ok_or(TextError::Sink)?).map_err(|_| TextError::Sink)
    }
}

/// Writes a whole number of any size. What `core::fmt` has for 64 bits keeps panic paths on small processors.
pub(crate) fn write_whole(out: &mut dyn fmt::Write, number: u64) -> fmt::Result {
    let mut text = Backwards::new();
    text.number(number, 1);
    text.send(out).map_err(|_| fmt::Error)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "tests may panic")]
mod tests {
    extern crate std;
    use super::*;
    use core::fmt::Write;
    use std::string::{String, ToString};
    use std::vec;

    #[test]
    fn whole_numbers_of_any_size() {
        for number in [0, 7, 10, 1_000_000_009, u64::from(u32::MAX) + 1, u64::MAX] {
            let mut text = String::new();
            write_whole(&mut text, number).unwrap();
            assert_eq!(text, number.to_string());
        }
    }

    #[test]
    fn slice_of_every_size() {
        // Pieces with characters of one to four bytes, an empty one, and one that would fit after one that does not.
        for pieces in
            [&["12.5", " mm\u{b2}", "", "\u{2264} ", "\u{1d70f}", "x"][..], &["0.8125"], &["", ""], &["\u{e9}\u{e9}"]]
        {
            let whole: String = pieces.concat();
            for size in 0..=whole.len() + 1 {
                let mut buffer = vec![0xff_u8; size];
                let mut sink = Slice::new(&mut buffer);
                let mut count = Count::new();
                for piece in pieces {
                    sink.write_str(piece).unwrap();
                    count.write_str(piece).unwrap();
                }
                assert_eq!(sink.needed(), whole.len());
                assert_eq!(count.needed(), whole.len());
                let expected = if size >= whole.len() { Ok(whole.as_str()) } else { Err(whole.len()) };
                assert_eq!(sink.finish(), expected);
            }
        }
    }

    #[test]
    fn every_writer_into_every_size() {
        type Writer = fn(&mut dyn fmt::Write) -> Result<(), TextError>;
        let writers: [(Writer, &str); 5] = [
            (|out| write_fixed(out, -8999999999999999.0, 9), "-8999999999999999.000000000"),
            (|out| write_significant(out, -0.999e-8, 13), "-0.000000009990000000000"),
            (|out| write_plain(out, 2.50, 6), "2.5"),
            (|out| write_inch_fraction(out, -1.625, 64), "-1 5/8"),
            (|out| write_fixed_with(out, 0.5, 2, DecimalMark::Comma), "0,50"),
        ];
        for (writer, text) in writers {
            for size in 0..=text.len() + 1 {
                let mut buffer = vec![0_u8; size];
                let mut sink = Slice::new(&mut buffer);
                writer(&mut sink).unwrap();
                let expected = if size >= text.len() { Ok(text) } else { Err(text.len()) };
                assert_eq!(sink.finish(), expected);
            }
        }
    }

    #[test]
    fn a_sink_that_refuses() {
        struct Refuses;
        impl fmt::Write for Refuses {
            fn write_str(&mut self, _: &str) -> fmt::Result {
                Err(fmt::Error)
            }
        }
        assert_eq!(write_fixed(&mut Refuses, 1.0, 2), Err(TextError::Sink));
        assert_eq!(write_significant(&mut Refuses, 1.0, 2), Err(TextError::Sink));
        assert_eq!(write_significant(&mut Refuses, 0.0, 2), Err(TextError::Sink));
        assert_eq!(write_plain(&mut Refuses, 1.0, 2), Err(TextError::Sink));
        assert_eq!(write_inch_fraction(&mut Refuses, 1.0, 2), Err(TextError::Sink));
        assert_eq!(write_inch_fraction(&mut Refuses, 0.3, 2), Err(TextError::Sink));
    }

    #[test]
    fn messages() {
        assert_eq!(TextError::Syntax.to_string(), "not a number");
        let boxed: std::boxed::Box<dyn core::error::Error> = TextError::Empty.into();
        assert_eq!(boxed.to_string(), "nothing was given");
    }

    #[test]
    fn within_a_display() {
        struct Shown(f64);
        impl fmt::Display for Shown {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write_plain(f, self.0, 6).map_err(|_| fmt::Error)
            }
        }
        assert_eq!(Shown(-12.5).to_string(), "-12.5");
    }
}
