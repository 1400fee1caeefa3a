//! The numbers of modes: their places in the documented order of cuts.

use crate::joint::{Form, JointKind, MAX_ROWS};
use crate::modes::{Cut, Fate, Mode};

/// In the place of a mode's number: this row has none, because it could not be computed.
pub const NO_MODE: u16 = u16::MAX;

/// The table of a form's modes: number to cut and back.
///
/// The number of a mode is its place, from 0, in the documented order of cuts (that of
/// [`Strengths::modes`](crate::modes::Strengths::modes)): the plate runs fastest, torn at row 1, 2, ... and whole; then
/// the other plate or wide strap, whole and torn at row 1, 2, ...; then the narrow strap.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct ModeTable {
    rows: u16,
    /// Ways of the other plate or wide strap, the whole one counted.
    other: u16,
    narrow: u16,
    first_double: u16,
}

impl ModeTable {
    /// The modes of a form; butt joints with their straps given or not.
    ///
    /// ```
    /// use seamwright::{batch::ModeTable, joint::Form, modes::Cut};
    /// let table = ModeTable::new(&Form::lap(2)?, false);
    /// assert_eq!(table.len(), 9);
    /// assert_eq!(table.number(Cut { plate: 1, other: 0, narrow: 0 }), Some(0));
    /// assert_eq!(table.number(Cut::default()), Some(2)); // all rivets fail
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    #[must_use]
    pub fn new(form: &Form, straps: bool) -> Self {
        let rows = short(form.row_count());
        let first_double = short(form.first_double_row());
        let other = if straps || form.kind() == JointKind::Lap { rows.wrapping_add(1) } else { 1 };
        let double = straps && form.kind() == JointKind::DoubleStrap;
        let narrow = if double { rows.wrapping_add(2).wrapping_sub(first_double) } else { 1 };
        ModeTable { rows, other, narrow, first_double }
    }

    /// How many modes there are.
    #[must_use]
    pub const fn len(&self) -> u16 {
        self.rows.wrapping_add(1).wrapping_mul(self.other).wrapping_mul(self.narrow)
    }

    /// A form always has modes.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        false
    }

    /// The number of a cut; `None` where the form has no such cut.
    #[must_use]
    pub fn number(&self, cut: Cut) -> Option<u16> {
        let (plate, other) = (u16::from(cut.plate), u16::from(cut.other));
        let narrow = match u16::from(cut.narrow) {
            0 => 0,
            row => row.checked_sub(self.first_double)?.wrapping_add(1),
        };
        if plate > self.rows || other >= self.other || narrow >= self.narrow {
            return None;
        }
        let plate = if plate == 0 { self.rows } else { plate.wrapping_sub(1) };
        let wide = narrow.wrapping_mul(self.other).wrapping_add(other);
        Some(wide.wrapping_mul(self.rows.wrapping_add(1)).wrapping_add(plate))
    }

    /// The cut of a number; `None` beyond the last.
    #[must_use]
    pub fn cut(&self, number: u16) -> Option<Cut> {
        if number >= self.len() {
            return None;
        }
        let ways = self.rows.wrapping_add(1);
        let (plate, rest) = (number.checked_rem(ways)?, number.checked_div(ways)?);
        let (other, narrow) = (rest.checked_rem(self.other)?, rest.checked_div(self.other)?);
        let plate = if plate == self.rows { 0 } else { plate.wrapping_add(1) };
        let narrow = if narrow == 0 { 0 } else { narrow.wrapping_add(self.first_double).wrapping_sub(1) };
        let byte = |n: u16| u8::try_from(n).ok();
        Some(Cut { plate: byte(plate)?, other: byte(other)?, narrow: byte(narrow)? })
    }

    /// The mode of a number as it can be named without a joint: what tears, not how each row of rivets fails.
    #[must_use]
    pub fn mode(&self, number: u16) -> Option<Mode> {
        let cut = self.cut(number)?;
        Some(Mode { cut, fates: [Fate::Whole; MAX_ROWS], strength: 0.0, zigzag: false })
    }
}

fn short(n: usize) -> u16 {
    u16::try_from(n).unwrap_or(u16::MAX)
}
