//! Numbers to text and back.

use core::fmt::Write;

use seamwright::text::{self, Count, DecimalMark, Slice, TextError};

use crate::input::{Input, keep, show};

pub fn write(i: &mut Input) {
    let mut sink = Slice::new(i.room());
    keep(text::write_fixed(&mut sink, i.number(), i.small()));
    keep(text::write_plain(&mut sink, i.number(), i.small()));
    keep(text::write_significant(&mut sink, i.number(), i.small()));
    keep(text::write_inch_fraction(&mut sink, i.number(), i.half_word()));
    let mark = if i.yes() { DecimalMark::Comma } else { DecimalMark::Point };
    keep(text::write_fixed_with(&mut sink, i.number(), i.small(), mark));
    keep(text::write_plain_with(&mut sink, i.number(), i.small(), mark));
    keep(text::write_significant_with(&mut sink, i.number(), i.small(), mark));
    keep(Slice::finish(sink));
}

pub fn parse(i: &mut Input) {
    let read = text::parse_number(i.text());
    if let Err(error) = read {
        keep(TextError::text(error));
        show::<TextError>(&error, i);
    }
    keep(read);
}

pub fn sinks(i: &mut Input) {
    let mut sink = Slice::new(i.room());
    let mut count = Count::new();
    while let Some(letter) = i.letter() {
        let piece = i.text();
        keep((sink.write_str(piece), count.write_str(piece)));
        keep((sink.write_char(letter), count.write_char(letter)));
        keep((Slice::needed(&sink), Count::needed(&count)));
    }
    keep(Slice::finish(sink));
}
