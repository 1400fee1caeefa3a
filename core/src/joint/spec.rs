//! What a user says of a joint, and the checks that make it a [`Joint`].

use super::{Arrangement, Form, Joint, JointKind, MAX_ROWS};
use crate::bounds::Field;
use crate::error::{Error, ErrorKind};
use crate::math;
use crate::quantities::Length;

/// Hole and rivet of one row, with what its form says.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Row {
    /// Rivets in the strip.
    pub rivets: u8,
    /// Shear planes of each.
    pub planes: u8,
    /// Hole, mm.
    pub(crate) hole: f64,
    /// Cold rivet, mm.
    pub(crate) rivet: f64,
}

impl Row {
    /// Diameter of the hole, which the driven rivet fills.
    #[must_use]
    pub fn hole(&self) -> Length {
        Length::mm(self.hole)
    }

    /// Diameter of the cold rivet; the hole's where none was given.
    #[must_use]
    pub fn rivet(&self) -> Length {
        Length::mm(self.rivet)
    }
}

/// A joint as stated: required dimensions first, the others as they are known.
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, error::ErrorKind, quantities::Length};
/// let stated = JointSpec::new(Form::lap(2)?, Length::mm(71.0), Length::mm(13.0), Length::mm(23.0));
/// let joint = stated.rivet(Length::mm(22.0)).margin(Length::mm(35.0)).back_pitch(1, Length::mm(40.0)).build()?;
/// assert_eq!(joint.rows().len(), 2);
/// let too_close = JointSpec::new(Form::lap(1)?, Length::mm(20.0), Length::mm(13.0), Length::mm(23.0));
/// assert_eq!(too_close.build().unwrap_err().kind, ErrorKind::HolesFillPitch);
/// # Ok::<(), seamwright::Error>(())
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct JointSpec {
    form: Form,
    strip: Length,
    plate: Length,
    other_plate: Option<Length>,
    wide_strap: Option<Length>,
    narrow_strap: Option<Length>,
    holes: [Length; MAX_ROWS],
    rivets: [Option<Length>; MAX_ROWS],
    back: [Option<Length>; MAX_ROWS],
    margin: Option<Length>,
    stray_row: u8,
}

impl JointSpec {
    /// A joint of a form: pitch of the outer row (width of the strip where the outer row has several rivets in it),
    /// plate and hole.
    #[must_use]
    pub const fn new(form: Form, pitch: Length, plate: Length, hole: Length) -> Self {
        JointSpec {
            form,
            strip: pitch,
            plate,
            other_plate: None,
            wide_strap: None,
            narrow_strap: None,
            holes: [hole; MAX_ROWS],
            rivets: [None; MAX_ROWS],
            back: [None; MAX_ROWS],
            margin: None,
            stray_row: 0,
        }
    }

    /// All at once for rows that are alike, but for the row distances: passed from hand to hand as it grows, a spec is
    /// moved each time, and a small machine has no room for two. `plates`: the plate, the second one of a lap; `size`:
    /// hole and rivet.
    #[inline(never)]
    pub(crate) fn alike(
        form: Form,
        strip: Length,
        plates: (Length, Option<Length>),
        size: (Length, Length),
        straps: Option<(Length, Option<Length>)>,
        margin: Option<Length>,
    ) -> JointSpec {
        // Of two straps the second is as the first where it is not given.
        let second = |wide: Length| (form.kind() == JointKind::DoubleStrap).then_some(wide);
        JointSpec {
            form,
            strip,
            plate: plates.0,
            other_plate: plates.1,
            wide_strap: straps.map(|(wide, _)| wide),
            narrow_strap: straps.and_then(|(wide, narrow)| narrow.or(second(wide))),
            holes: [size.0; MAX_ROWS],
            rivets: [Some(size.1); MAX_ROWS],
            back: [None; MAX_ROWS],
            margin,
            stray_row: 0,
        }
    }

    /// Takes over the distances from each row to the next.
    pub(crate) fn place(&mut self, back: &[Length; MAX_ROWS]) {
        for (slot, taken) in self.back.iter_mut().zip(back).take(self.form.row_count().wrapping_sub(1)) {
            *slot = Some(*taken);
        }
    }

    /// With the cold rivet of all rows. Without it the rivet is taken as large as the hole.
    #[must_use]
    pub const fn rivet(mut self, rivet: Length) -> Self {
        self.rivets = [Some(rivet); MAX_ROWS];
        self
    }

    /// With hole and rivet of one row, from 1.
    #[must_use]
    pub fn row(mut self, row: usize, hole: Length, rivet: Option<Length>) -> Self {
        let at = row.wrapping_sub(1);
        match (self.holes.get_mut(at), self.rivets.get_mut(at)) {
            (Some(h), Some(r)) if at < self.form.row_count() => {
                *h = hole;
                *r = rivet;
            }
            _ => self.stray_row = u8::try_from(row).unwrap_or(u8::MAX),
        }
        self
    }

    /// With a second plate of another thickness (laps only; otherwise it is as thick as the first).
    #[must_use]
    pub const fn other_plate(mut self, plate: Length) -> Self {
        self.other_plate = Some(plate);
        self
    }

    /// With the single strap, or two straps, of this thickness.
    #[must_use]
    pub const fn strap(mut self, strap: Length) -> Self {
        self.wide_strap = Some(strap);
        if matches!(self.form.kind(), JointKind::DoubleStrap) {
            self.narrow_strap = Some(strap);
        }
        self
    }

    /// With a wide and a narrow strap (or two of equal width that differ in thickness).
    #[must_use]
    pub const fn straps(mut self, wide: Length, narrow: Length) -> Self {
        self.wide_strap = Some(wide);
        self.narrow_strap = Some(narrow);
        self
    }

    /// With the distance from row `row` (from 1) to the next.
    #[must_use]
    pub fn back_pitch(mut self, row: usize, distance: Length) -> Self {
        let gaps = self.form.row_count().wrapping_sub(1);
        match self.back.get_mut(row.wrapping_sub(1)) {
            Some(slot) if row <= gaps => *slot = Some(distance),
            _ => self.stray_row = u8::try_from(row).unwrap_or(u8::MAX),
        }
        self
    }

    /// With the distance from the centre of the edge row to the plate edge.
    #[must_use]
    pub const fn margin(mut self, margin: Length) -> Self {
        self.margin = Some(margin);
        self
    }

    /// The joint, if its dimensions are sound and agree with its form.
    ///
    /// # Errors
    /// A dimension that is not finite or outside its range; a strap in a lap, a second plate in a butt joint or a
    /// second strap where there is one only; a rivet greater than its hole; holes that fill the pitch; rows that
    /// overlap; a margin inside the hole; a row number that the form does not have.
    pub fn build(self) -> Result<Joint, Error> {
        let mut joint = Joint::SIMPLEST;
        self.build_into(&mut joint)?;
        Ok(joint)
    }

    /// [`build`](Self::build) where another joint stands; the simplest one stands there after an error.
    pub(crate) fn build_into(&self, joint: &mut Joint) -> Result<(), Error> {
        let built = self.fill(joint);
        if built.is_err() {
            *joint = Joint::SIMPLEST;
        }
        built
    }

    fn fill(&self, joint: &mut Joint) -> Result<(), Error> {
        let kind = self.form.kind();
        if self.stray_row > 0 {
            let error = Error::new(ErrorKind::NotForThisForm, Field::Rows).value(f64::from(self.stray_row));
            return Err(error.limit(f64::from(self.form.count())));
        }
        let strip = Field::Pitch.check(self.strip.to_mm())?;
        let plate = Field::Plate.check(self.plate.to_mm())?;
        let lap = kind == JointKind::Lap;
        let other = match (self.other_plate, lap) {
            (Some(b), true) => Field::OtherPlate.check(b.to_mm())?,
            (None, true) => plate,
            (Some(b), false) => return Err(stray(Field::OtherPlate, b)),
            (None, false) => 0.0,
        };
        let other = match (self.wide_strap, lap) {
            (Some(b), true) => return Err(stray(Field::WideStrap, b)),
            (Some(b), false) => Field::WideStrap.check(b.to_mm())?,
            (None, _) => other,
        };
        let narrow = match (self.narrow_strap, kind == JointKind::DoubleStrap) {
            (Some(b), true) => Field::NarrowStrap.check(b.to_mm())?,
            (Some(b), false) => return Err(stray(Field::NarrowStrap, b)),
            (None, _) => 0.0,
        };
        let margin = match self.margin {
            Some(m) => Field::Margin.check(m.to_mm())?,
            None => 0.0,
        };
        joint.form = self.form;
        (joint.strip, joint.plate, joint.other, joint.narrow, joint.margin) = (strip, plate, other, narrow, margin);
        joint.rows = [Row::default(); MAX_ROWS];
        joint.back = [0.0; MAX_ROWS];
        let stated = self.holes.iter().zip(&self.rivets).zip(self.form.rows());
        for ((slot, ((hole, rivet), row)), number) in joint.rows.iter_mut().zip(stated).zip(1_u8..) {
            let hole = Field::Hole.check(hole.to_mm()).map_err(|e| e.index(number))?;
            let rivet = match rivet {
                Some(r) => Field::Rivet.check(r.to_mm()).map_err(|e| e.index(number))?,
                None => hole,
            };
            if math::below(hole, rivet) {
                return Err(Error::new(ErrorKind::RivetExceedsHole, Field::Rivet)
                    .index(number)
                    .value(rivet)
                    .limit(hole));
            }
            let holes = f64::from(row.rivets) * hole;
            if math::at_least(holes, strip) {
                return Err(Error::new(ErrorKind::HolesFillPitch, Field::Pitch)
                    .index(number)
                    .value(strip)
                    .limit(holes));
            }
            if margin > 0.0 && math::at_most(margin, 0.5 * hole) {
                return Err(Error::new(ErrorKind::HoleCutsEdge, Field::Margin).value(margin).limit(0.5 * hole));
            }
            *slot = Row { rivets: row.rivets, planes: row.planes, hole, rivet };
        }
        joint.place_rows(&self.back)
    }
}

impl Joint {
    /// A single-riveted lap: what stands where no joint has been built yet.
    pub(crate) const SIMPLEST: Joint = {
        let row = Row { rivets: 1, planes: 1, hole: 10.0, rivet: 10.0 };
        let none = Row { rivets: 0, planes: 0, hole: 0.0, rivet: 0.0 };
        Joint {
            form: Form::SINGLE_LAP,
            strip: 30.0,
            plate: 6.0,
            other: 6.0,
            narrow: 0.0,
            rows: [row, none, none, none, none, none, none, none],
            back: [0.0; MAX_ROWS],
            margin: 0.0,
        }
    };

    /// Takes over the stated row distances; rows whose holes overlap are refused.
    fn place_rows(&mut self, back: &[Option<Length>; MAX_ROWS]) -> Result<(), Error> {
        let neighbours = self.rows.iter().zip(self.rows.iter().skip(1));
        for (((slot, stated), (a, b)), number) in self.back.iter_mut().zip(back).zip(neighbours).zip(1_u8..) {
            let Some(stated) = stated else { continue };
            let gap = Field::BackPitch.check(stated.to_mm()).map_err(|e| e.index(number))?;
            let (few, many) = if a.rivets < b.rivets { (a.rivets, b.rivets) } else { (b.rivets, a.rivets) };
            // Rivets lie in the gaps of the next row where it has as many, or twice as many; other rows (a lozenge's 2
            // and 3) may come to lie behind each other somewhere.
            let staggered = many == few || u32::from(many) == u32::from(few).wrapping_mul(2);
            let across = match self.form.arrangement() {
                Arrangement::Zigzag if staggered => 0.5 * self.strip / f64::from(many),
                _ => 0.0,
            };
            let touching = 0.5 * (a.hole + b.hole);
            if math::at_most(gap * gap + across * across, touching * touching) {
                let least = math::sqrt(math::larger(touching * touching - across * across, 0.0));
                return Err(Error::new(ErrorKind::RowsOverlap, Field::BackPitch).index(number).value(gap).limit(least));
            }
            *slot = gap;
        }
        self.rows_behind_each_other()
    }

    /// In a zig-zag the row after the next lies in line again: the two distances together must clear its holes.
    fn rows_behind_each_other(&self) -> Result<(), Error> {
        let gaps = self.back.iter().zip(self.back.iter().skip(1));
        for (((first, second), (a, b)), number) in gaps.zip(self.rows.iter().zip(self.rows.iter().skip(2))).zip(1_u8..)
        {
            let touching = 0.5 * (a.hole + b.hole);
            if *first > 0.0 && *second > 0.0 && math::at_most(first + second, touching) {
                let error = Error::new(ErrorKind::RowsOverlap, Field::BackPitch).index(number);
                return Err(error.value(first + second).limit(touching));
            }
        }
        Ok(())
    }
}

impl Form {
    /// Number of rows as the errors carry it.
    pub(super) const fn count(&self) -> u8 {
        self.row_count() as u8
    }
}

/// A dimension given for a part that the form does not have.
fn stray(field: Field, given: Length) -> Error {
    Error::new(ErrorKind::NotForThisForm, field).value(given.to_mm())
}
