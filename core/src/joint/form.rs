//! Forms: which rows there are, how many rivets each has, and how many shear planes.

use core::fmt;

use super::JointKind;
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};

/// Greatest number of rows on one side of the joint.
pub const MAX_ROWS: usize = 8;

/// How rivets of neighbouring rows lie to each other.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Arrangement {
    /// Behind each other.
    Chain,
    /// In the gaps of each other.
    Zigzag,
}

/// One row of a form.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct RowForm {
    /// Rivets in the strip.
    pub rivets: u8,
    /// Shear planes of each: 1 through one strap or the other plate, 2 through both straps.
    pub planes: u8,
}

/// The form of a joint: kind, arrangement and rows, outside first.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Form {
    kind: JointKind,
    arrangement: Arrangement,
    rows: [RowForm; MAX_ROWS],
    count: u8,
}

impl Form {
    /// A lap joint of 1 to 4 equal rows, one rivet of each in the pitch.
    ///
    /// # Errors
    /// Rows outside 1 to 4.
    ///
    /// ```
    /// use seamwright::joint::Form;
    /// assert_eq!(Form::lap(2)?.rivets(), 2);
    /// assert!(Form::lap(5).is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub const fn lap(rows: u8) -> Result<Form, Error> {
        Form::equal_rows(JointKind::Lap, rows, 4, 1)
    }

    /// A butt joint with a single strap, 1 to 3 equal rows on each side.
    ///
    /// # Errors
    /// Rows outside 1 to 3.
    ///
    /// ```
    /// use seamwright::joint::Form;
    /// assert!(Form::single_strap(3).is_ok());
    /// assert!(Form::single_strap(0).is_err());
    /// ```
    pub const fn single_strap(rows: u8) -> Result<Form, Error> {
        Form::equal_rows(JointKind::SingleStrap, rows, 3, 1)
    }

    /// A butt joint with two straps of equal width, 1 to 5 equal rows on each side, all in double shear.
    ///
    /// # Errors
    /// Rows outside 1 to 5.
    ///
    /// ```
    /// use seamwright::joint::Form;
    /// assert_eq!(Form::double_strap(2)?.shear_areas(), 4);
    /// assert!(Form::double_strap(6).is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub const fn double_strap(rows: u8) -> Result<Form, Error> {
        Form::equal_rows(JointKind::DoubleStrap, rows, 5, 2)
    }

    /// A butt joint with a wide and a narrow strap, 2 to 5 rows on each side. The outer rows pass through the plate
    /// and the wide strap only.
    ///
    /// Rivets in the pitch, outside first: 1-2; 1-2-2; 1-2-4-4; 1-2-4-4-4. One outer row is in single shear up to
    /// three rows, two above (the quadruple butt joint of the early US code).
    ///
    /// # Errors
    /// Rows outside 2 to 5.
    ///
    /// ```
    /// use seamwright::joint::Form;
    /// assert_eq!(Form::unequal_straps(4)?.rivets(), 11);
    /// assert!(Form::unequal_straps(1).is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn unequal_straps(rows: u8) -> Result<Form, Error> {
        let list: &[(u8, u8)] = match rows {
            2 => &[(1, 1), (2, 2)],
            3 => &[(1, 1), (2, 2), (2, 2)],
            4 => &[(1, 1), (2, 1), (4, 2), (4, 2)],
            5 => &[(1, 1), (2, 1), (4, 2), (4, 2), (4, 2)],
            _ => {
                let limit = if rows < 2 { 2.0 } else { 5.0 };
                let kind = if rows < 2 { ErrorKind::TooSmall } else { ErrorKind::TooLarge };
                return Err(Error::new(kind, Field::Rows).value(f64::from(rows)).limit(limit));
            }
        };
        Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, list)
    }

    /// Any form: rivets in the strip and shear planes of each row, outside first (outside of plate A in a lap).
    ///
    /// # Errors
    /// No rows or more than [`MAX_ROWS`]; a row without rivets or with more than 60; planes that contradict the kind:
    /// one each in a lap or under a single strap, one or two under double straps, single-shear rows outside.
    ///
    /// ```
    /// use seamwright::{error::ErrorKind, joint::{Arrangement, Form, JointKind}};
    /// let lozenge = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (3, 2)])?;
    /// assert_eq!(lozenge.rivets(), 6);
    /// let wrong = Form::from_rows(JointKind::Lap, Arrangement::Zigzag, &[(1, 2)]);
    /// assert_eq!(wrong.unwrap_err().kind, ErrorKind::Inconsistent);
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn from_rows(kind: JointKind, arrangement: Arrangement, rows: &[(u8, u8)]) -> Result<Form, Error> {
        if rows.is_empty() {
            return Err(Error::new(ErrorKind::TooSmall, Field::Rows).value(0.0).limit(1.0));
        }
        if rows.len() > MAX_ROWS {
            let error = Error::new(ErrorKind::TooLarge, Field::Rows);
            return Err(error.value(u32::try_from(rows.len()).map_or(f64::MAX, f64::from)).limit(MAX_ROWS as f64));
        }
        let mut form = Form { kind, arrangement, rows: [RowForm::default(); MAX_ROWS], count: 0 };
        let mut inner_planes = 0;
        for (slot, &(rivets, planes)) in form.rows.iter_mut().zip(rows) {
            form.count = form.count.wrapping_add(1);
            let row = form.count;
            let at = |e: Error| Err(e.index(row));
            if let Err(e) = Field::RowRivets.check(f64::from(rivets)) {
                return at(e);
            }
            if let Err(e) = Field::ShearPlanes.check(f64::from(planes)) {
                return at(e);
            }
            let most = if kind == JointKind::DoubleStrap { 2 } else { 1 };
            // A row in single shear inside one in double shear would need a strap with a gap in it.
            if planes > most || planes < inner_planes {
                let error = Error::new(ErrorKind::Inconsistent, Field::ShearPlanes);
                return at(error.value(f64::from(planes)).limit(f64::from(if planes > most { most } else { 2 })));
            }
            inner_planes = planes;
            *slot = RowForm { rivets, planes };
        }
        if kind == JointKind::DoubleStrap && inner_planes < 2 {
            let error = Error::new(ErrorKind::Inconsistent, Field::ShearPlanes).index(form.count);
            return Err(error.value(1.0).limit(2.0));
        }
        Ok(form)
    }

    /// One row in single shear.
    pub(super) const SINGLE_LAP: Form = Form {
        kind: JointKind::Lap,
        arrangement: Arrangement::Chain,
        rows: [RowForm { rivets: 1, planes: 1 }; MAX_ROWS],
        count: 1,
    };

    const fn equal_rows(kind: JointKind, rows: u8, most: u8, planes: u8) -> Result<Form, Error> {
        if rows < 1 {
            return Err(Error::new(ErrorKind::TooSmall, Field::Rows).value(rows as f64).limit(1.0));
        }
        if rows > most {
            return Err(Error::new(ErrorKind::TooLarge, Field::Rows).value(rows as f64).limit(most as f64));
        }
        let row = RowForm { rivets: 1, planes };
        let arrangement = if rows == 1 { Arrangement::Chain } else { Arrangement::Zigzag };
        Ok(Form { kind, arrangement, rows: [row; MAX_ROWS], count: rows })
    }

    /// The same form with its rows behind each other.
    #[must_use]
    pub const fn chain(mut self) -> Form {
        self.arrangement = Arrangement::Chain;
        self
    }

    /// The same form with its rows in the gaps of each other.
    #[must_use]
    pub const fn zigzag(mut self) -> Form {
        self.arrangement = Arrangement::Zigzag;
        self
    }

    /// The same form with every other rivet of the outer row left out: the pitch is then that of the outer row, and
    /// the inner rows have two rivets in it. In a lap the outer row of each plate is thinned out.
    ///
    /// # Errors
    /// A form of a single row (there is no inner row left), a lap of two rows, or rows that are not equal already.
    ///
    /// ```
    /// use seamwright::joint::Form;
    /// let form = Form::double_strap(3)?.omit_alternate()?;
    /// assert_eq!(form.rows().map(|r| r.rivets).collect::<Vec<_>>(), [1, 2, 2]);
    /// assert!(Form::lap(1)?.omit_alternate().is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn omit_alternate(mut self) -> Result<Form, Error> {
        let inner = if self.kind == JointKind::Lap { 2 } else { 1 };
        let equal = self.rows().all(|r| r.rivets == 1);
        if self.count <= inner || !equal {
            return Err(Error::new(ErrorKind::Inconsistent, Field::Form).index(self.count));
        }
        let last = self.count.wrapping_sub(1);
        for (i, row) in (0_u8..).zip(self.rows.iter_mut()) {
            let outer = i == 0 || (self.kind == JointKind::Lap && i == last);
            if i < self.count && !outer {
                row.rivets = 2;
            }
        }
        Ok(self)
    }

    /// Lap, single strap or double strap.
    #[must_use]
    pub const fn kind(&self) -> JointKind {
        self.kind
    }

    /// Chain or zig-zag.
    #[must_use]
    pub const fn arrangement(&self) -> Arrangement {
        self.arrangement
    }

    /// Number of rows on one side.
    #[must_use]
    #[inline(always)]
    pub const fn row_count(&self) -> usize {
        self.count as usize
    }

    /// The rows, outside first.
    pub fn rows(&self) -> impl DoubleEndedIterator<Item = RowForm> + '_ {
        self.rows.iter().take(self.row_count()).copied()
    }

    /// Row `row`, from 1.
    #[must_use]
    pub fn row(&self, row: usize) -> RowForm {
        self.rows.get(row.wrapping_sub(1)).copied().unwrap_or_default()
    }

    /// Rivets in the strip, on one side.
    #[must_use]
    pub fn rivets(&self) -> u32 {
        self.rows().fold(0, |n, r| n.saturating_add(u32::from(r.rivets)))
    }

    /// Shear areas in the strip, on one side: rivets times planes.
    #[must_use]
    pub fn shear_areas(&self) -> u32 {
        self.rows().fold(0, |n, r| n.saturating_add(u32::from(r.rivets).saturating_mul(u32::from(r.planes))))
    }

    /// Rivets of the outer row in the strip.
    #[must_use]
    pub const fn outer_rivets(&self) -> u8 {
        let [first, ..] = self.rows;
        first.rivets
    }

    /// Rivets of the densest row in the strip.
    #[must_use]
    pub fn densest_rivets(&self) -> u8 {
        self.rows().fold(0, |n, r| if r.rivets > n { r.rivets } else { n })
    }

    /// The first row (from 1) in double shear; one past the last when there is none.
    #[must_use]
    pub fn first_double_row(&self) -> usize {
        self.rows().take_while(|r| r.planes < 2).count().saturating_add(1)
    }

    /// Whether the two straps differ in width, because outer rows pass through one only.
    #[must_use]
    pub fn unequal(&self) -> bool {
        self.kind == JointKind::DoubleStrap && self.first_double_row() > 1
    }

    /// Whether all inner rows have twice the rivets of the outer row (of both outer rows in a lap).
    #[must_use]
    pub fn inner_doubled(&self) -> bool {
        let last = if self.kind == JointKind::Lap { self.row_count().wrapping_sub(1) } else { self.row_count() };
        let outer = u32::from(self.outer_rivets());
        let twice = |row: usize| u32::from(self.row(row).rivets) == outer.wrapping_mul(2);
        let alike = self.kind != JointKind::Lap || u32::from(self.row(self.row_count()).rivets) == outer;
        last >= 2 && alike && (2..=last).all(twice)
    }

    /// Whether the row at the butt (or the densest row) has more rivets than the outer row.
    #[must_use]
    pub fn rivets_omitted(&self) -> bool {
        self.densest_rivets() > self.outer_rivets()
    }
}

impl fmt::Display for Form {
    /// The form in the trade's words, as in `triple-riveted butt joint, double straps of unequal width, zig-zag`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let order = ["", "single", "double", "treble", "quadruple", "quintuple"];
        match order.get(self.row_count()) {
            Some(word) => write!(f, "{word}-riveted ")?,
            None => write!(f, "{}-row riveted ", self.count)?,
        }
        f.write_str(match self.kind {
            JointKind::Lap => "lap joint",
            JointKind::SingleStrap => "butt joint, single strap",
            JointKind::DoubleStrap if self.unequal() => "butt joint, double straps of unequal width",
            JointKind::DoubleStrap => "butt joint, double straps of equal width",
        })?;
        if self.count > 1 {
            f.write_str(match self.arrangement {
                Arrangement::Chain => ", chain",
                Arrangement::Zigzag => ", zig-zag",
            })?;
        }
        if self.rivets_omitted() || self.outer_rivets() > 1 {
            f.write_str(", rivets by row ")?;
            for (i, row) in self.rows().enumerate() {
                if i > 0 {
                    f.write_str("-")?;
                }
                write!(f, "{}", row.rivets)?;
            }
        }
        Ok(())
    }
}
