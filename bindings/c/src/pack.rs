//! A book made small: its words in one text, its clauses once each, its statements as places. All of it is evaluated by
//! the compiler.

use core::str::from_utf8;

use seamwright::rules::{Clause, Entry, Item, Place, RuleBook};

/// A book to be packed. Its words are its id, its title, its sources and the numbers of its clauses, in this order.
pub(crate) struct Pack {
    book: &'static RuleBook<'static>,
    places: [Place; MOST],
    /// The first statement of each clause.
    first: [usize; MOST],
    pub(crate) clauses: usize,
}

/// Words before the sources.
const HEAD: usize = 2;
/// Most statements of a book. The compiler stops where there are more.
const MOST: usize = 128;

#[expect(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "evaluated by the compiler")]
impl Pack {
    pub(crate) const fn of(book: &'static RuleBook<'static>) -> Self {
        let (mut places, mut first, mut clauses) = ([NO_PLACE; MOST], [0; MOST], 0);
        let mut at = 0;
        while let Some(item) = book.items.written(at) {
            let mut clause = 0;
            while clause < clauses && !same(&written(book, first[clause]).clause, &item.clause) {
                clause += 1;
            }
            if clause == clauses {
                first[clauses] = at;
                clauses += 1;
            }
            assert!(item.values.len() < 256 && clause < 256, "lines and clauses are counted in bytes");
            places[at] = Place { entry: item.entry, lines: item.values.len() as u8, clause: clause as u8 };
            at += 1;
        }
        Pack { book, places, first, clauses }
    }

    /// How many words there are.
    pub(crate) const fn words(&self) -> usize {
        HEAD + self.book.sources.len() + self.clauses
    }

    const fn word_of(&self, at: usize) -> &'static str {
        let sources = self.book.sources;
        match at {
            0 => self.book.id,
            1 => self.book.title,
            _ if at < HEAD + sources.len() => sources[at - HEAD],
            _ => written(self.book, self.first[at - HEAD - sources.len()]).clause.number,
        }
    }

    /// Bytes of the first so many words.
    pub(crate) const fn length(&self, words: usize) -> usize {
        let (mut at, mut length) = (0, 0);
        while at < words {
            length += self.word_of(at).len();
            at += 1;
        }
        length
    }

    /// A word where it stands in the text of all.
    pub(crate) const fn word(&self, at: usize, words: &'static [u8]) -> &'static str {
        let (_, from) = words.split_at(self.length(at));
        let (word, _) = from.split_at(self.word_of(at).len());
        match from_utf8(word) {
            Ok(word) => word,
            Err(_) => unreachable!(),
        }
    }

    /// The text of all words.
    pub(crate) const fn put_words<const N: usize>(&self) -> [u8; N] {
        let mut text = [0; N];
        let (mut at, mut to) = (0, 0);
        while at < self.words() {
            let word = self.word_of(at).as_bytes();
            let mut from = 0;
            while from < word.len() {
                text[to] = word[from];
                to += 1;
                from += 1;
            }
            at += 1;
        }
        text
    }

    /// The sources, as slices of that text.
    pub(crate) const fn put_sources<const N: usize>(&self, words: &'static [u8]) -> [&'static str; N] {
        let mut sources = [""; N];
        let mut at = 0;
        while at < N {
            sources[at] = self.word(HEAD + at, words);
            at += 1;
        }
        sources
    }

    /// The clauses that differ, their numbers as slices of the text.
    pub(crate) const fn put_clauses<const N: usize>(&self, words: &'static [u8]) -> [Clause<'static>; N] {
        let mut clauses = [Clause::own(""); N];
        let mut at = 0;
        while at < N {
            let Clause { source, label, .. } = written(self.book, self.first[at]).clause;
            clauses[at] = Clause { number: self.word(HEAD + self.book.sources.len() + at, words), source, label };
            at += 1;
        }
        clauses
    }

    /// The statements as places in the numbers and in those clauses.
    pub(crate) const fn put_places<const N: usize>(&self) -> [Place; N] {
        let mut places = [NO_PLACE; N];
        let mut at = 0;
        while at < N {
            places[at] = self.places[at];
            at += 1;
        }
        places
    }
}

const NO_PLACE: Place = Place { entry: Entry::HOLE_RULE, lines: 0, clause: 0 };

/// A statement that is there: a place behind the last one stops the compiler.
const fn written(book: &'static RuleBook<'static>, at: usize) -> &'static Item<'static> {
    match book.items.written(at) {
        Some(item) => item,
        None => unreachable!(),
    }
}

/// Whether two clauses are one.
#[expect(clippy::indexing_slicing, clippy::arithmetic_side_effects, reason = "evaluated by the compiler")]
const fn same(a: &Clause<'_>, b: &Clause<'_>) -> bool {
    let (x, y) = (a.number.as_bytes(), b.number.as_bytes());
    if x.len() != y.len() || a.source != b.source || a.label as u8 != b.label as u8 {
        return false;
    }
    let mut at = 0;
    while at < x.len() {
        if x[at] != y[at] {
            return false;
        }
        at += 1;
    }
    true
}
