//! The built-in books one by one, where they stand. A program that uses one book links no other, and copies nothing:
//! `sw_rules_find` knows them all by name, and so brings them all.

use core::ptr::null;

use seamwright::rules::{self as built_in, RuleBook};

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
    const fn new(number: u32, book: &RuleBook<'static>) -> Self {
        sw_book(Shelf { struct_size: size_of::<sw_rules>() as u32, number, book: *book })
    }

    /// The book behind a pointer.
    pub(crate) fn at<'a>(book: *const sw_book, argument: u32) -> Result<&'a RuleBook<'static>, Failure> {
        crate::border::standing(book, argument).map(|found| &found.0.book)
    }
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
    static BOOK: sw_book = sw_book::new(1, &built_in::METRIC);
    &raw const BOOK
}

/// The built-in book `indian`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_indian() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(2, &built_in::INDIAN);
    &raw const BOOK
}

/// The built-in book `us-code`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_code() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(3, &built_in::US_CODE);
    &raw const BOOK
}

/// The built-in book `us-existing`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_existing() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(4, &built_in::US_EXISTING);
    &raw const BOOK
}

/// The built-in book `british-marine`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_british_marine() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(5, &built_in::BRITISH_MARINE);
    &raw const BOOK
}

/// The built-in book `german-1908`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_german_1908() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(6, &built_in::GERMAN_1908);
    &raw const BOOK
}

/// The built-in book `structural`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_structural() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(7, &built_in::STRUCTURAL);
    &raw const BOOK
}

/// The built-in book `us-michigan`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_michigan() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(8, &built_in::US_MICHIGAN);
    &raw const BOOK
}

/// The built-in book `us-north-carolina`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_north_carolina() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(9, &built_in::US_NORTH_CAROLINA);
    &raw const BOOK
}

/// The built-in book `us-montana`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_montana() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(10, &built_in::US_MONTANA);
    &raw const BOOK
}

/// The built-in book `us-california`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_california() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(11, &built_in::US_CALIFORNIA);
    &raw const BOOK
}

/// The built-in book `us-locomotive`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_book_us_locomotive() -> *const sw_book {
    static BOOK: sw_book = sw_book::new(12, &built_in::US_LOCOMOTIVE);
    &raw const BOOK
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
