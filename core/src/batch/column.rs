//! Columns of a sweep: what goes in, row by row.

use crate::bounds::Field;
use crate::error::{Error, ErrorKind};

/// One input of a sweep.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum InputColumn<'a> {
    /// The same in every row.
    Constant(f64),
    /// One value for each row.
    Values(&'a [f64]),
    /// An axis of a grid that is nowhere written out: each value stands for `each` rows, then comes the next, and
    /// after the last the first again. The last axis of a grid has `each` = 1, the one before it the length of the
    /// last.
    Axis {
        /// The values along the axis.
        values: &'a [f64],
        /// For how many rows in turn each of them stands.
        each: usize,
    },
}

impl InputColumn<'_> {
    /// The value of a row, from 0; not a number beyond the last.
    ///
    /// ```
    /// use seamwright::batch::InputColumn;
    /// let axis = InputColumn::Axis { values: &[10.0, 12.0], each: 3 };
    /// assert_eq!([0, 2, 3, 6].map(|row| axis.at(row)), [10.0, 10.0, 12.0, 10.0]);
    /// ```
    #[must_use]
    #[inline]
    pub fn at(&self, row: usize) -> f64 {
        match self {
            InputColumn::Constant(x) => *x,
            InputColumn::Values(values) => values.get(row).copied().unwrap_or(f64::NAN),
            InputColumn::Axis { values, each } => {
                let turn = row.checked_div(*each).and_then(|n| n.checked_rem(values.len()));
                turn.and_then(|n| values.get(n)).copied().unwrap_or(f64::NAN)
            }
        }
    }

    /// The length that the column lays down for the sweep.
    fn rows(&self) -> Option<usize> {
        match self {
            InputColumn::Values(values) => Some(values.len()),
            _ => None,
        }
    }

    /// Whether its value is the same in all rows, and which it is.
    pub(super) fn constant(&self) -> Option<f64> {
        match self {
            InputColumn::Constant(x) => Some(*x),
            _ => None,
        }
    }

    /// Whether another column is this very one.
    pub(super) fn is(&self, other: &InputColumn<'_>) -> bool {
        match (self, other) {
            (InputColumn::Constant(a), InputColumn::Constant(b)) => a == b,
            (InputColumn::Values(a), InputColumn::Values(b)) => core::ptr::eq(*a, *b),
            (InputColumn::Axis { values: a, each: i }, InputColumn::Axis { values: b, each: j }) => {
                core::ptr::eq(*a, *b) && i == j
            }
            _ => false,
        }
    }

    /// Fills a chunk with the rows from `from` on, `count` of them. Beyond them the last one stands again, so that
    /// lanes without a row compute something harmless.
    #[inline(always)]
    pub(super) fn fill<const W: usize>(&self, from: usize, count: usize, chunk: &mut [f64; W]) {
        match self {
            InputColumn::Constant(x) => *chunk = [*x; W],
            InputColumn::Values(values) => {
                let rows = values.get(from..).unwrap_or(&[]);
                if let Some(whole) = rows.first_chunk::<W>() {
                    *chunk = *whole;
                } else {
                    let mut last = f64::NAN;
                    let mut rows = rows.iter();
                    for slot in chunk.iter_mut() {
                        last = rows.next().copied().unwrap_or(last);
                        *slot = last;
                    }
                }
            }
            InputColumn::Axis { values, each } => {
                let turn = from.checked_div(*each).and_then(|n| n.checked_rem(values.len())).unwrap_or(0);
                let mut left = each.wrapping_sub(from.checked_rem(*each).unwrap_or(0));
                let mut later = values.get(turn..).unwrap_or(&[]).iter().chain(values.iter().cycle());
                let mut next = || later.next().copied().unwrap_or(f64::NAN);
                let mut value = next();
                for slot in chunk.iter_mut().take(count) {
                    if left == 0 {
                        left = *each;
                        value = next();
                    }
                    left = left.wrapping_sub(1);
                    *slot = value;
                }
                for slot in chunk.iter_mut().skip(count) {
                    *slot = value;
                }
            }
        }
    }
}

/// What a sweep is given: lengths in millimetres, stresses in megapascals.
///
/// The first five are needed. What is `None` was not given, and means what it means in a single
/// [`JointSpec`](crate::joint::JointSpec) and [`Materials`](crate::materials::Materials).
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Inputs<'a> {
    /// Pitch of the outer row; width of the strip where that row has several rivets in it.
    pub pitch: InputColumn<'a>,
    /// Main plate; plate A of a lap.
    pub plate: InputColumn<'a>,
    /// Hole of every row.
    pub hole: InputColumn<'a>,
    /// Tension of the plate.
    pub tension: InputColumn<'a>,
    /// Shear of the rivets, single shear.
    pub shear: InputColumn<'a>,
    /// Cold rivet of every row; as large as the hole where not given.
    pub rivet: Option<InputColumn<'a>>,
    /// Plate B of a lap (as thick as plate A where not given), the single strap, the wide strap, or both straps.
    pub other: Option<InputColumn<'a>>,
    /// The second or narrow strap; as thick as `other` where not given.
    pub narrow: Option<InputColumn<'a>>,
    /// Tension of plate B or the straps; as of the plate where not given.
    pub other_tension: Option<InputColumn<'a>>,
    /// Bearing of the plate.
    pub bearing: Option<InputColumn<'a>>,
    /// Bearing of plate B or the straps; as of the plate where not given.
    pub other_bearing: Option<InputColumn<'a>>,
    /// Shear of plates and straps at the margin.
    pub plate_shear: Option<InputColumn<'a>>,
    /// Centre of the edge row to the plate edge.
    pub margin: Option<InputColumn<'a>>,
    /// Distance from each row to the next.
    pub back_pitch: Option<InputColumn<'a>>,
}

/// Number of columns of [`Inputs`].
pub(super) const COLUMNS: usize = 14;

impl<'a> Inputs<'a> {
    /// The inputs that every joint needs; the rest as fields.
    ///
    /// ```
    /// use seamwright::batch::{InputColumn, Inputs};
    /// let pitches = [60.0, 70.0, 80.0];
    /// let inputs = Inputs {
    ///     bearing: Some(InputColumn::Constant(120.0)),
    ///     ..Inputs::new(
    ///         InputColumn::Values(&pitches),
    ///         InputColumn::Constant(13.0),
    ///         InputColumn::Constant(23.0),
    ///         InputColumn::Constant(80.0),
    ///         InputColumn::Constant(60.0),
    ///     )
    /// };
    /// assert_eq!(inputs.rivet, None);
    /// ```
    #[must_use]
    pub const fn new(
        pitch: InputColumn<'a>,
        plate: InputColumn<'a>,
        hole: InputColumn<'a>,
        tension: InputColumn<'a>,
        shear: InputColumn<'a>,
    ) -> Self {
        Inputs {
            pitch,
            plate,
            hole,
            tension,
            shear,
            rivet: None,
            other: None,
            narrow: None,
            other_tension: None,
            bearing: None,
            other_bearing: None,
            plate_shear: None,
            margin: None,
            back_pitch: None,
        }
    }

    /// All columns in the order of the fields, each with the field that bounds it.
    pub(super) fn columns(&self, lap: bool) -> [(Field, Option<InputColumn<'a>>); COLUMNS] {
        [
            (Field::Pitch, Some(self.pitch)),
            (Field::Plate, Some(self.plate)),
            (Field::Hole, Some(self.hole)),
            (Field::Tension, Some(self.tension)),
            (Field::Shear, Some(self.shear)),
            (Field::Rivet, self.rivet),
            (if lap { Field::OtherPlate } else { Field::WideStrap }, self.other),
            (Field::NarrowStrap, self.narrow),
            (Field::OtherTension, self.other_tension),
            (Field::Bearing, self.bearing),
            (Field::OtherBearing, self.other_bearing),
            (Field::PlateShear, self.plate_shear),
            (Field::Margin, self.margin),
            (Field::BackPitch, self.back_pitch),
        ]
    }

    /// Looks at lengths of columns against the number of rows, and at the constants against their bounds.
    pub(super) fn validate(&self, lap: bool, rows: usize) -> Result<(), Error> {
        for ((field, column), number) in self.columns(lap).into_iter().zip(1_u8..) {
            match column {
                None => {}
                Some(InputColumn::Constant(x)) => {
                    field.check(x)?;
                }
                // An empty axis belongs to an empty grid.
                Some(InputColumn::Axis { values, each }) if rows > 0 && (values.is_empty() || each == 0) => {
                    return Err(length(ErrorKind::TooSmall, number, 0, 1));
                }
                Some(InputColumn::Axis { .. }) => {}
                Some(column) => match column.rows() {
                    Some(n) if n < rows => return Err(length(ErrorKind::TooSmall, number, n, rows)),
                    Some(n) if n > rows => return Err(length(ErrorKind::TooLarge, number, n, rows)),
                    _ => {}
                },
            }
        }
        Ok(())
    }
}

/// A column of a wrong length. The number is that of the field in [`Inputs`], from 1.
pub(super) fn length(kind: ErrorKind, number: u8, is: usize, should: usize) -> Error {
    Error::new(kind, Field::BatchRows).index(number).value(is as f64).limit(should as f64)
}
