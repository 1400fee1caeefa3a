//! Sweeps: one form, one rule book, and columns of dimensions and stresses.
//!
//! A sweep gives for each row what [`check`](crate::check::check) gives for that joint, bit for bit: efficiency and
//! governing mode, the book's efficiency and the one credited, and a status, so that one bad row never loses the
//! others. It allocates nothing; all results go into slices that the caller gives.
//!
//! A kernel works on many rows at once: for usual forms one that is compiled for each of them, for all others one that
//! goes through their cuts (see [`Path`]). Whatever row is not clear to it (a bad one, holes that nearly fill the strip,
//! rivets of next to no strength) is checked by itself.
//!
//! ```
//! use seamwright::{batch::{InputColumn, Inputs, Outputs, Sweep}, joint::Form, rules::METRIC};
//! let pitches = [60.0, 71.0, 20.0];
//! let same = InputColumn::Constant;
//! let inputs = Inputs {
//!     bearing: Some(same(120.0)),
//!     ..Inputs::new(InputColumn::Values(&pitches), same(13.0), same(23.0), same(80.0), same(60.0))
//! };
//! let form = Form::lap(2)?;
//! let sweep = Sweep::new(&form, &METRIC.rules, inputs, pitches.len())?;
//! let (mut efficiency, mut status) = ([0.0; 3], [0; 3]);
//! sweep.run(0, Outputs { status: Some(&mut status), ..Outputs::new(&mut efficiency) })?;
//! assert!((efficiency[1] - 0.6752).abs() < 1e-4); // Khurmi & Gupta, Example 9.4
//! assert_eq!(status, [0, 0, 7]); // the holes of the last fill its pitch
//! assert!(efficiency[2].is_nan());
//! # Ok::<(), seamwright::Error>(())
//! ```

mod any;
mod chunk;
mod column;
mod cuts;
mod kernel;
mod level;
mod plan;
mod run;
mod shape;
mod single;
mod table;

pub use column::{InputColumn, Inputs};
pub use level::{Baseline, Job, Level};
pub use table::{ModeTable, NO_MODE};

use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::joint::{Form, JointKind};
use crate::rules::{Entry, Rules};
use column::length;
use plan::{Plan, Way};

/// Status of a row that was computed; any other is the number of an [`ErrorKind`].
pub const COMPUTED: u8 = 0;

/// Which kernel works out the rows of a sweep, many at once.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Path {
    /// The one compiled for this form: laps, single straps and double straps of equal width with up to five rows
    /// (single straps: three), alike or with the outer row thinned out; wide and narrow straps with one outer row (two
    /// or three rows in all) or two (four or five), which have fewer rivets than the rows at the butt, and those are
    /// alike.
    Form,
    /// The one of all forms, which adds up cut by cut those that can govern: some times slower. It serves all other
    /// forms, shear-out at the margin, books that reckon with rows that lie too close (where distances of rows are
    /// given), the even share of the load where rows differ, and books that count straps without all inner rows where
    /// straps differ in width.
    Cuts,
}

/// Slices for the results, all of one length. What is `None` is not asked for.
#[derive(Debug)]
pub struct Outputs<'a> {
    /// Efficiency over all modes; not a number where the row could not be computed.
    pub efficiency: &'a mut [f64],
    /// Number of the governing mode in the sweep's [`ModeTable`]; [`NO_MODE`] where the row could not be computed.
    pub mode: Option<&'a mut [u16]>,
    /// `J`, the efficiency by the modes that the book counts.
    pub book_efficiency: Option<&'a mut [f64]>,
    /// Efficiency credited.
    pub credited: Option<&'a mut [f64]>,
    /// [`COMPUTED`], or the number of the [`ErrorKind`].
    pub status: Option<&'a mut [u8]>,
}

impl<'a> Outputs<'a> {
    /// The efficiency alone; the rest as fields.
    ///
    /// ```
    /// use seamwright::batch::Outputs;
    /// assert!(Outputs::new(&mut [0.0; 4]).mode.is_none());
    /// ```
    #[must_use]
    pub const fn new(efficiency: &'a mut [f64]) -> Self {
        Outputs { efficiency, mode: None, book_efficiency: None, credited: None, status: None }
    }

    fn validate(&self) -> Result<(), Error> {
        let rows = self.efficiency.len();
        let others = [
            self.mode.as_ref().map(|s| s.len()),
            self.book_efficiency.as_ref().map(|s| s.len()),
            self.credited.as_ref().map(|s| s.len()),
            self.status.as_ref().map(|s| s.len()),
        ];
        for (other, number) in others.into_iter().zip(2_u8..) {
            match other {
                Some(n) if n < rows => return Err(length(ErrorKind::TooSmall, number, n, rows)),
                Some(n) if n > rows => return Err(length(ErrorKind::TooLarge, number, n, rows)),
                _ => {}
            }
        }
        Ok(())
    }
}

/// A sweep that is ready to run, whole or piece by piece.
#[derive(Clone, Debug)]
pub struct Sweep<'a> {
    form: &'a Form,
    rules: &'a Rules,
    inputs: Inputs<'a>,
    rows: usize,
    modes: ModeTable,
    plan: Plan<'a>,
}

impl<'a> Sweep<'a> {
    /// Takes over a form, a book and columns for `rows` rows.
    ///
    /// # Errors
    /// A column that is shorter or longer than `rows` ([`Field::BatchRows`], with the number of the column in
    /// [`Inputs`], from 1); a constant outside its bounds; a strap that the form does not have, or a narrow strap
    /// without the wide one; a bearing stress of the straps without one of the plate; no bearing stress where the book
    /// checks bearing.
    ///
    /// ```
    /// use seamwright::{batch::{InputColumn, Inputs, Sweep}, error::ErrorKind, joint::Form, rules::METRIC};
    /// let c = InputColumn::Constant;
    /// let inputs = Inputs::new(c(71.0), c(13.0), c(23.0), c(80.0), c(60.0));
    /// let bearing = Some(c(120.0));
    /// let form = Form::lap(2)?;
    /// assert!(Sweep::new(&form, &METRIC.rules, Inputs { bearing, ..inputs }, 1).is_ok());
    /// let without = Sweep::new(&form, &METRIC.rules, inputs, 1);
    /// assert_eq!(without.unwrap_err().kind, ErrorKind::Missing);
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn new(form: &'a Form, rules: &'a Rules, inputs: Inputs<'a>, rows: usize) -> Result<Self, Error> {
        let kind = form.kind();
        let refused = |kind, field| Err(Error::new(kind, field));
        inputs.validate(kind == JointKind::Lap, rows)?;
        if inputs.narrow.is_some() && kind != JointKind::DoubleStrap {
            return refused(ErrorKind::NotForThisForm, Field::NarrowStrap);
        }
        if inputs.narrow.is_some() && inputs.other.is_none() {
            return refused(ErrorKind::Missing, Field::WideStrap);
        }
        if inputs.other_bearing.is_some() && inputs.bearing.is_none() {
            return refused(ErrorKind::Missing, Field::Bearing);
        }
        if rules.on(Entry::BEARING_CHECKED) && inputs.bearing.is_none() {
            return Err(Error::new(ErrorKind::Missing, Field::Bearing).entry(Entry::BEARING_CHECKED.no()));
        }
        let modes = ModeTable::new(form, inputs.other.is_some());
        let plan = Plan::new(form, rules, &inputs, &modes);
        Ok(Sweep { form, rules, inputs, rows, modes, plan })
    }

    /// Number of rows.
    #[must_use]
    pub fn len(&self) -> usize {
        self.rows
    }

    /// Whether there are no rows.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.rows == 0
    }

    /// Which way its rows go.
    #[must_use]
    pub fn path(&self) -> Path {
        match self.plan.way {
            Way::Shape(_) => Path::Form,
            Way::Any(_) => Path::Cuts,
        }
    }

    /// The table of the form's modes, as the numbers in [`Outputs::mode`] mean them.
    #[must_use]
    pub fn modes(&self) -> &ModeTable {
        &self.modes
    }

    /// Works out as many rows as the outputs hold, from row `from` (from 0) on, with what every processor can do.
    ///
    /// # Errors
    /// Outputs of different lengths, or reaching beyond the last row ([`Field::BatchRows`], with the number of the
    /// output in [`Outputs`], from 1). Nothing is written then.
    pub fn run(&self, from: usize, outputs: Outputs<'_>) -> Result<(), Error> {
        self.run_with(Baseline, from, outputs)
    }

    /// [`run`](Self::run) with a level of the processor.
    ///
    /// # Errors
    /// As [`run`](Self::run).
    pub fn run_with<L: Level>(&self, level: L, from: usize, outputs: Outputs<'_>) -> Result<(), Error> {
        outputs.validate()?;
        let (asked, left) = (outputs.efficiency.len(), self.rows.saturating_sub(from));
        if asked > left {
            return Err(length(ErrorKind::TooLarge, 1, asked, left));
        }
        run::dispatch(self, level, from, outputs);
        Ok(())
    }

    /// The strength of given modes, newtons for the strip, row by row; not a number where the row could not be
    /// computed. The strengths of one mode stand together: first all rows of the first mode asked for.
    ///
    /// # Errors
    /// A number that is not in the table of modes ([`ErrorKind::NotForThisForm`]); room that is not a whole number of
    /// rows for each mode, or reaches beyond the last row ([`Field::BatchRows`]). Nothing is written then.
    ///
    /// ```
    /// use seamwright::{batch::{InputColumn, Inputs, Sweep}, joint::Form, rules::METRIC};
    /// let c = InputColumn::Constant;
    /// let inputs = Inputs {
    ///     bearing: Some(c(120.0)),
    ///     ..Inputs::new(InputColumn::Values(&[50.0, 60.0]), c(13.0), c(23.0), c(80.0), c(60.0))
    /// };
    /// let form = Form::lap(1)?;
    /// let mut strengths = [0.0; 2];
    /// Sweep::new(&form, &METRIC.rules, inputs, 2)?.mode_strengths(&[0], 0, &mut strengths)?;
    /// assert_eq!(strengths, [(50.0 - 23.0) * 13.0 * 80.0, (60.0 - 23.0) * 13.0 * 80.0]);
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn mode_strengths(&self, modes: &[u16], from: usize, strengths: &mut [f64]) -> Result<(), Error> {
        if let Some(stray) = modes.iter().find(|n| **n >= self.modes.len()) {
            let error = Error::new(ErrorKind::NotForThisForm, Field::BatchRows).value(f64::from(*stray));
            return Err(error.limit(f64::from(self.modes.len())));
        }
        let Some(rows) = strengths.len().checked_div(modes.len()) else {
            return if strengths.is_empty() { Ok(()) } else { Err(length(ErrorKind::TooLarge, 1, strengths.len(), 0)) };
        };
        let (whole, left) = (rows.wrapping_mul(modes.len()), self.rows.saturating_sub(from));
        if whole != strengths.len() {
            return Err(length(ErrorKind::TooLarge, 1, strengths.len(), whole));
        }
        if rows > left {
            return Err(length(ErrorKind::TooLarge, 1, rows, left));
        }
        single::strengths(self, modes, from, rows, strengths);
        Ok(())
    }
}
