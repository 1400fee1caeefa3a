//! The built-in books one by one, where they stand. A program that uses one book links no other, and copies nothing:
//! `sw_rules_find` knows them all by name, and so brings them all.

use core::ptr::null;

use seamwright::rules::{self as built_in, Clause, Items, Place, RuleBook, Rules};

use crate::pack::Pack;
use crate::rules::sw_rules;
use crate::status::Failure;

/// A built-in book with its words, where it stands in the library: read it, never make or copy one.
pub struct sw_book(Shelf);

/// Its first two numbers and those of the book are laid out as an `sw_rules`, so that they are there only once.
#[repr(C)]
struct Shelf {
    struct_size: u32,
    number: u32,
    book: RuleBook<'static>,
}

impl sw_book {
    /// The numbers, where they stand.
    const fn numbers(&'static self) -> &'static Rules {
        &self.0.book.rules
    }

    /// The book behind a pointer.
    pub(crate) fn at<'a>(book: *const sw_book, argument: u32) -> Result<&'a RuleBook<'static>, Failure> {
        crate::border::standing(book, argument).map(|found| &found.0.book)
    }
}

/// A book on its shelf: the number that it has in the list of all, and its name there.
///
/// Its words are one text each, and its statements places in its numbers and clauses. A word of 8, 16 or 32 bytes that
/// stood for itself would go into a section that the linker keeps whole, with such words of all the library.
macro_rules! shelved {
    ($number:literal, $book:ident) => {{
        const PACK: Pack = Pack::of(&built_in::$book);
        static WORDS: [u8; PACK.length(PACK.words())] = PACK.put_words();
        static SOURCES: [&str; built_in::$book.sources.len()] = PACK.put_sources(&WORDS);
        static CLAUSES: [Clause<'static>; PACK.clauses] = PACK.put_clauses(&WORDS);
        static PLACES: [Place; built_in::$book.items.len()] = PACK.put_places();
        static BOOK: sw_book = sw_book(Shelf {
            struct_size: size_of::<sw_rules>() as u32,
            number: $number,
            book: RuleBook {
                rules: built_in::$book.rules,
                id: PACK.word(0, &WORDS),
                title: PACK.word(1, &WORDS),
                sources: &SOURCES,
                items: Items::packed(BOOK.numbers(), &PLACES, &CLAUSES),
                lettered: built_in::$book.lettered,
            },
        });
        &raw const BOOK
    }};
}

const _: () = assert!(
    core::mem::offset_of!(Shelf, book) == core::mem::offset_of!(sw_rules, value)
        && core::mem::offset_of!(RuleBook<'static>, rules) == 0
        && size_of::<Shelf>() >= size_of::<sw_rules>(),
    "a shelf begins as an sw_rules does"
);

/// The numbers of a built-in book, where they stand; copy the struct to change them. NULL for NULL.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_numbers(book: *const sw_book) -> *const sw_rules {
    match crate::border::standing(book, 1) {
        Ok(found) => (&raw const found.0).cast(),
        Err(_) => null(),
    }
}

/// The built-in book `metric`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_metric() -> *const sw_book {
    shelved!(1, METRIC)
}

/// The built-in book `indian`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_indian() -> *const sw_book {
    shelved!(2, INDIAN)
}

/// The built-in book `us-code`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_code() -> *const sw_book {
    shelved!(3, US_CODE)
}

/// The built-in book `us-existing`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_existing() -> *const sw_book {
    shelved!(4, US_EXISTING)
}

/// The built-in book `british-marine`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_british_marine() -> *const sw_book {
    shelved!(5, BRITISH_MARINE)
}

/// The built-in book `german-1908`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_german_1908() -> *const sw_book {
    shelved!(6, GERMAN_1908)
}

/// The built-in book `structural`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_structural() -> *const sw_book {
    shelved!(7, STRUCTURAL)
}

/// The built-in book `us-michigan`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_michigan() -> *const sw_book {
    shelved!(8, US_MICHIGAN)
}

/// The built-in book `us-north-carolina`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_north_carolina() -> *const sw_book {
    shelved!(9, US_NORTH_CAROLINA)
}

/// The built-in book `us-montana`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_montana() -> *const sw_book {
    shelved!(10, US_MONTANA)
}

/// The built-in book `us-california`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_california() -> *const sw_book {
    shelved!(11, US_CALIFORNIA)
}

/// The built-in book `us-locomotive`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_locomotive() -> *const sw_book {
    shelved!(12, US_LOCOMOTIVE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use seamwright::rules::BOOKS;

    /// Each stands under the number that it has in the list of all, with its own words.
    #[test]
    fn books_stand_under_their_numbers() {
        let all = [
            sw_book_metric(),
            sw_book_indian(),
            sw_book_us_code(),
            sw_book_us_existing(),
            sw_book_british_marine(),
            sw_book_german_1908(),
            sw_book_structural(),
            sw_book_us_michigan(),
            sw_book_us_north_carolina(),
            sw_book_us_montana(),
            sw_book_us_california(),
            sw_book_us_locomotive(),
        ];
        assert_eq!(all.len(), BOOKS.len());
        for ((book, listed), number) in all.into_iter().zip(BOOKS).zip(1_u32..) {
            let found = crate::border::standing(book, 1).ok().map(|b| &b.0);
            assert!(found.is_some_and(|b| b.book == **listed && b.number == number));
        }
    }
}
