//! Reading a book: choices as types, tables as look-ups. No formula lives here.

use super::{Entry, JointKind, Rules};
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::materials::{Materials, PlateStress};
use crate::math;
use crate::quantities::Stress;

/// Which diameter counts.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Diameter {
    /// The hole, which the driven rivet fills.
    Hole,
    /// The cold rivet.
    Rivet,
}

/// Which balance sets the pitch.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Balance {
    /// Tearing at the outer row against all rivets in shear.
    Shear,
    /// Tearing at the outer row against the weaker of shear and bearing, rivet by rivet.
    Weaker,
    /// The pitch from which no plate mode is weaker than the rivets.
    AllModes,
}

/// The direction of a rounding.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Rounding {
    /// To the step below.
    Down,
    /// To the nearest step.
    Nearest,
    /// To the step above.
    Up,
}

/// What follows when rows are closer than prescribed.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum CloseRows {
    /// A finding, nothing else.
    Finding,
    /// The modified plate percentage (Reg. 184(d) of the Indian regulations).
    ModifiedPercentage,
    /// The net section along the zig-zag, with `s^2/4g` for each diagonal.
    Stagger,
}

/// Whether a book counts tearing at inner rows.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Counted {
    /// Not at all.
    Never,
    /// Where the next row has twice the rivets of the outer row.
    Doubled,
    /// At every row.
    Always,
}

/// How the hole follows from the plate.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum HoleTable {
    /// `d = a sqrt t + b`.
    SquareRoot,
    /// A table by thickness.
    Table,
}

/// The formula of the working pressure.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum PressureForm {
    /// The book has none.
    None,
    /// `2 st J (t - c)/(FS D)`.
    Inside,
    /// `(T - 2) S J/(C D)` in thirty-seconds of an inch and tons.
    ThirtySeconds,
    /// `st t J/(R FS)`.
    Radius,
    /// `2 st J (t - c)/(FS (D + t - c))`.
    Mean,
}

/// What a plate or a rivet of unknown make is made of.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Metal {
    /// Mild steel.
    Steel,
    /// Wrought iron.
    Iron,
}

/// One line of a series of sizes.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Size {
    /// Diameter of the cold rivet, mm.
    pub rivet: f64,
    /// Diameter of its hole, mm.
    pub hole: f64,
    /// The entry of the hole.
    pub entry: Entry,
}

impl Rules {
    /// The diameter named by one of the `*_DIAMETER` entries.
    #[must_use]
    pub fn diameter(&self, entry: Entry) -> Diameter {
        if self.choice(entry) == 0 { Diameter::Hole } else { Diameter::Rivet }
    }

    /// The balance that sets the pitch.
    #[must_use]
    pub fn balance(&self) -> Balance {
        match self.choice(Entry::PITCH_BALANCE) {
            0 => Balance::Shear,
            1 => Balance::Weaker,
            _ => Balance::AllModes,
        }
    }

    /// The direction in which a pitch is rounded.
    #[must_use]
    pub fn rounding(&self) -> Rounding {
        match self.choice(Entry::PITCH_ROUND) {
            0 => Rounding::Down,
            1 => Rounding::Nearest,
            _ => Rounding::Up,
        }
    }

    /// What follows when rows are too close.
    #[must_use]
    pub fn close_rows(&self) -> CloseRows {
        match self.choice(Entry::CLOSE_ROWS) {
            0 => CloseRows::Finding,
            1 => CloseRows::ModifiedPercentage,
            _ => CloseRows::Stagger,
        }
    }

    /// Whether tearing at inner rows counts.
    #[must_use]
    pub fn counts_inner(&self) -> Counted {
        match self.choice(Entry::COUNT_INNER) {
            0 => Counted::Never,
            1 => Counted::Doubled,
            _ => Counted::Always,
        }
    }

    /// The formula of the working pressure.
    #[must_use]
    pub fn pressure_form(&self) -> PressureForm {
        match self.choice(Entry::PRESSURE_FORM) {
            0 => PressureForm::None,
            1 => PressureForm::Inside,
            2 => PressureForm::ThirtySeconds,
            3 => PressureForm::Radius,
            _ => PressureForm::Mean,
        }
    }

    /// How the hole follows from the plate.
    #[must_use]
    pub fn hole_rule(&self) -> HoleTable {
        if self.choice(Entry::HOLE_RULE) == 0 { HoleTable::SquareRoot } else { HoleTable::Table }
    }

    /// Whether a switch is on.
    #[must_use]
    pub fn on(&self, entry: Entry) -> bool {
        self.choice(entry) != 0
    }

    /// The lines of the series, up to the first empty one.
    pub fn series(&self) -> impl Iterator<Item = Size> + '_ {
        (0..24)
            .map(|i| Size {
                rivet: self.get(Entry::SERIES_RIVET.at(i)),
                hole: self.get(Entry::SERIES_HOLE.at(i)),
                entry: Entry::SERIES_HOLE.at(i),
            })
            .take_while(|s| s.hole > 0.0)
    }

    /// The first size whose hole is not below `hole` mm.
    #[must_use]
    pub fn next_size(&self, hole: f64) -> Option<Size> {
        self.series().find(|s| math::at_least(s.hole, hole))
    }

    /// The size with just this hole, mm.
    #[must_use]
    pub fn size_of_hole(&self, hole: f64) -> Option<Size> {
        self.series().find(|s| math::at_least(s.hole, hole) && math::at_most(s.hole, hole))
    }

    /// The coefficient `C` of the greatest pitch for `rivets` in one pitch of the outer row; `None` beyond the table.
    #[must_use]
    pub fn pitch_cap(&self, kind: JointKind, rivets: u32) -> Option<(Entry, f64)> {
        let head = match kind {
            JointKind::Lap => Entry::PITCH_MAX_LAP,
            JointKind::SingleStrap => Entry::PITCH_MAX_SINGLE,
            JointKind::DoubleStrap => Entry::PITCH_MAX_DOUBLE,
        };
        let line = usize::try_from(rivets).ok()?.checked_sub(1).filter(|n| *n < 5)?;
        let entry = head.at(line);
        Some((entry, self.get(entry))).filter(|(_, c)| *c > 0.0)
    }

    /// Whether the book has a table of greatest pitches at all.
    #[must_use]
    pub fn has_pitch_cap(&self) -> bool {
        [Entry::PITCH_MAX_LAP, Entry::PITCH_MAX_SINGLE, Entry::PITCH_MAX_DOUBLE]
            .iter()
            .any(|head| (0..5).any(|i| self.get(head.at(i)) > 0.0))
    }

    /// The hole that the table gives for a plate of `t` mm: the first line not below `t`.
    #[must_use]
    pub fn table_hole(&self, t: f64) -> Option<(Entry, f64)> {
        self.look_up(Entry::HOLE_TABLE_PLATE, Entry::HOLE_TABLE_HOLE, 12, t)
    }

    /// The least strap that the table gives for a plate of `t` mm: the first line not below `t`.
    #[must_use]
    pub fn table_strap(&self, t: f64) -> Option<(Entry, f64)> {
        self.look_up(Entry::STRAP_TABLE_PLATE, Entry::STRAP_TABLE_STRAP, 20, t)
    }

    fn look_up(&self, keys: Entry, values: Entry, lines: usize, t: f64) -> Option<(Entry, f64)> {
        (0..lines)
            .take_while(|i| self.get(keys.at(*i)) > 0.0)
            .find(|i| math::at_least(self.get(keys.at(*i)), t))
            .map(|i| (values.at(i), self.get(values.at(i))))
    }

    /// The shear strength that the book gives for rivets of a metal: an ultimate one.
    ///
    /// # Errors
    /// [`ErrorKind::Missing`] where the book gives none.
    ///
    /// ```
    /// use seamwright::rules::{Metal, INDIAN, METRIC};
    /// let tons = INDIAN.rules.assumed_shear(Metal::Iron)?.to_long_ton_in2(); // Reg. 177: 18 tons
    /// assert!((tons - 18.0).abs() < 1e-9);
    /// assert!(METRIC.rules.assumed_shear(Metal::Iron).is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn assumed_shear(&self, rivets: Metal) -> Result<Stress, Error> {
        let entry = match rivets {
            Metal::Steel => Entry::STEEL_SHEAR,
            Metal::Iron => Entry::IRON_SHEAR,
        };
        self.needed(Field::Shear, entry).map(Stress::mpa)
    }

    /// A strength that has to be in the book.
    fn needed(&self, field: Field, entry: Entry) -> Result<f64, Error> {
        match self.get(entry) {
            v if v > 0.0 => Ok(v),
            _ => Err(Error::new(ErrorKind::Missing, field).entry(entry.no())),
        }
    }

    /// The strengths that the book lets one assume of plate and rivets of unknown make: ultimate ones, to be divided
    /// by a factor of safety. Books differ by jurisdiction, so this is asked for and never assumed.
    ///
    /// # Errors
    /// [`ErrorKind::Missing`] where the book gives no tensile or shear strength for that metal.
    ///
    /// ```
    /// use seamwright::rules::{Metal, INDIAN, US_EXISTING};
    /// let old = US_EXISTING.rules.assumed_materials(Metal::Steel, Metal::Iron)?;
    /// assert!((old.plate.tension.to_psi() - 55_000.0).abs() < 1e-6);
    /// // The Indian regulations give the rivets' strength, and leave the plate's to its certificate.
    /// assert!(INDIAN.rules.assumed_materials(Metal::Steel, Metal::Steel).is_err());
    /// # Ok::<(), seamwright::Error>(())
    /// ```
    pub fn assumed_materials(&self, plate: Metal, rivets: Metal) -> Result<Materials, Error> {
        let tension = match plate {
            Metal::Steel => self.needed(Field::Tension, Entry::STEEL_TENSION)?,
            Metal::Iron => self.needed(Field::Tension, Entry::IRON_TENSION)?,
        };
        let rivet_shear = self.assumed_shear(rivets)?;
        let bearing = Some(self.get(Entry::PLATE_BEARING)).filter(|b| *b > 0.0).map(Stress::mpa);
        let stress = PlateStress { tension: Stress::mpa(tension), bearing, shear_out: None };
        Ok(Materials { plate: stress, other: stress, rivet_shear })
    }
}
