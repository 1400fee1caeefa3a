//! The forms that are searched where none are named.

use crate::error::Error;
use crate::joint::Form;

/// Makes a form of so many rows.
type Make = fn(u8) -> Result<Form, Error>;

/// How many there are.
pub const FORM_COUNT: usize = 45;

/// Adds a form, and the same in chain rows where there are several.
fn add(list: &mut heapless::Vec<Form, FORM_COUNT>, form: Form) {
    let _ = list.push(form);
    if form.row_count() > 1 {
        let _ = list.push(form.chain());
    }
}

/// All named forms: laps of 1 to 4 rows, single straps of 1 to 3, double straps of 1 to 5, unequal straps of 2 to 5,
/// the equal ones with alternate rivets of the outer row omitted as well, each in zig-zag and in chain rows.
///
/// ```
/// use seamwright::{joint::Form, search::{FORM_COUNT, all_forms}};
/// assert_eq!(all_forms().len(), FORM_COUNT);
/// assert!(all_forms().contains(&Form::double_strap(3)?.omit_alternate()?.chain()));
/// # Ok::<(), seamwright::Error>(())
/// ```
#[must_use]
pub fn all_forms() -> heapless::Vec<Form, FORM_COUNT> {
    let mut list = heapless::Vec::new();
    let plain: [(Make, u8, u8); 4] = [
        (|n| Form::lap(n), 1, 4),
        (|n| Form::single_strap(n), 1, 3),
        (|n| Form::double_strap(n), 1, 5),
        (Form::unequal_straps, 2, 5),
    ];
    for (make, first, last) in plain {
        for rows in first..=last {
            let Ok(form) = make(rows) else { continue };
            add(&mut list, form);
            if let Ok(omitted) = form.zigzag().omit_alternate() {
                add(&mut list, omitted);
            }
        }
    }
    list
}
