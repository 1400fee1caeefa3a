//! The joint, its materials and the conventions by which it is counted.

use std::f64::consts::PI;

/// How the plates meet.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// Two plates overlapping.
    Lap {
        /// Thickness of plate A and of plate B, mm. Row 1 is the outside of plate A, the last row that of plate B.
        plates: [f64; 2],
    },
    /// Two like plates end to end, held by one strap or two; one side of it is modelled.
    Butt {
        /// Thickness of the plate, mm.
        plate: f64,
        /// Thickness of the wide strap, or of the single one, mm.
        wide: f64,
        /// Thickness of the narrow strap, mm; none with a single strap.
        narrow: Option<f64>,
    },
}

/// One row of rivets.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Rivets of this row in one strip, count.
    pub rivets: u32,
    /// Hole diameter, mm.
    pub hole: f64,
    /// Rivet diameter before driving, mm.
    pub rivet: f64,
    /// Shear planes, 1 or 2. Two only count in a butt with two straps; one plane means the wide strap alone.
    pub planes: u32,
}

/// A strip of a riveted joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Joint {
    /// How the plates meet.
    pub form: Form,
    /// Width of the strip: one pitch of a seam, or a tie bar's whole width, mm.
    pub strip: f64,
    /// The rows, the outside of plate A (or of the butt plate) first.
    pub rows: Vec<Row>,
}

/// What the materials bear.
#[derive(Clone, Debug, PartialEq)]
pub struct Stresses {
    /// Tension in plate A or in the butt plate, MPa.
    pub plate_tension: f64,
    /// Tension in plate B or in the straps, MPa.
    pub other_tension: f64,
    /// Shear of a rivet in single shear, MPa.
    pub shear: f64,
    /// Bearing on plate A or on the butt plate, MPa; none: bearing there is not counted.
    pub plate_bearing: Option<f64>,
    /// Bearing on plate B or on the straps, MPa; none: bearing there is not counted.
    pub other_bearing: Option<f64>,
}

/// Which diameter a figure is taken on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Diameter {
    /// The hole, that is the driven rivet.
    Hole,
    /// The rivet before driving.
    Rivet,
}

/// How strengths are counted.
#[derive(Clone, Debug, PartialEq)]
pub struct Convention {
    /// Strength of a rivet in double shear over that of one in single shear, ratio.
    pub double: f64,
    /// Strength of one plane of a double-shear rivet, when only that plane is cut, over single shear, ratio.
    pub one_plane: f64,
    /// The diameter taken out of a torn plate.
    pub tear: Diameter,
    /// Added to that diameter in tearing, mm.
    pub tear_allowance: f64,
    /// The diameter of the sheared section.
    pub shear: Diameter,
    /// The diameter that bears.
    pub bearing: Diameter,
}

impl Row {
    /// The row's diameter of the given sort, mm.
    pub fn diameter(&self, which: Diameter) -> f64 {
        match which {
            Diameter::Hole => self.hole,
            Diameter::Rivet => self.rivet,
        }
    }
}

impl Joint {
    /// Thickness of plate A or of the butt plate, mm.
    pub fn plate(&self) -> f64 {
        match self.form {
            Form::Lap { plates } => plates[0],
            Form::Butt { plate, .. } => plate,
        }
    }

    /// Thicknesses of plate B, or of the wide strap and then the narrow one, mm.
    pub fn others(&self) -> Vec<f64> {
        match self.form {
            Form::Lap { plates } => vec![plates[1]],
            Form::Butt { wide, narrow, .. } => match narrow {
                Some(narrow) => vec![wide, narrow],
                None => vec![wide],
            },
        }
    }

    /// Whether the rivets of a row (from 0) pass through the other part (0: plate B or wide strap, 1: narrow strap).
    pub fn reaches(&self, row: usize, other: usize) -> bool {
        match other {
            0 => true,
            1 => self.others().len() == 2 && self.rows[row].planes >= 2,
            _ => false,
        }
    }

    /// Whether the rivets of a row (from 0) are in double shear.
    pub fn is_double(&self, row: usize) -> bool {
        self.reaches(row, 1)
    }

    /// Strength of a plate of the given thickness, mm, and tension, MPa, torn through a row (from 0), N.
    pub fn tear(&self, row: usize, thickness: f64, tension: f64, c: &Convention) -> f64 {
        let row = &self.rows[row];
        let gone = f64::from(row.rivets) * (row.diameter(c.tear) + c.tear_allowance);
        (self.strip - gone).max(0.0) * thickness * tension
    }

    /// Strength of one rivet of a row (from 0) in single shear, N.
    pub fn single_shear(&self, row: usize, s: &Stresses, c: &Convention) -> f64 {
        let d = self.rows[row].diameter(c.shear);
        PI / 4.0 * d * d * s.shear
    }

    /// Bearing of one rivet of a row (from 0) on plate A or the butt plate, N; infinite where it is not counted.
    pub fn plate_bearing(&self, row: usize, s: &Stresses, c: &Convention) -> f64 {
        match s.plate_bearing {
            Some(stress) => self.rows[row].diameter(c.bearing) * self.plate() * stress,
            None => f64::INFINITY,
        }
    }

    /// Bearing of one rivet of a row (from 0) on another part (0 or 1), N; infinite where it is not counted.
    pub fn other_bearing(&self, row: usize, other: usize, s: &Stresses, c: &Convention) -> f64 {
        match s.other_bearing {
            Some(stress) => self.rows[row].diameter(c.bearing) * self.others()[other] * stress,
            None => f64::INFINITY,
        }
    }
}
