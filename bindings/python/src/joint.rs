//! Forms, joints and stresses.

use pyo3::prelude::*;
use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::joint::{self, JointKind, JointSpec};
use seamwright::materials::{self, PlateStress};
use seamwright::quantities::{Length, Stress};

use crate::error::{raise, wrong_choice};
use crate::words;

/// A form of the core.
#[pyclass(frozen, module = "seamwright._native")]
#[derive(Clone, Copy)]
pub struct Form(pub joint::Form);

/// What a form says of itself.
#[derive(IntoPyObject)]
pub struct FormFacts {
    kind: &'static str,
    arrangement: &'static str,
    rows: Vec<(u8, u8)>,
    rivets: u32,
    shear_areas: u32,
    outer_rivets: u8,
    densest_rivets: u8,
    first_double_row: usize,
    unequal: bool,
    inner_doubled: bool,
    rivets_omitted: bool,
    name: String,
}

#[pymethods]
impl Form {
    /// A form by the name of its maker in the core.
    #[staticmethod]
    fn make(py: Python<'_>, name: &str, rows: u8) -> PyResult<Self> {
        let made = match name {
            "lap" => joint::Form::lap(rows),
            "single_strap" => joint::Form::single_strap(rows),
            "double_strap" => joint::Form::double_strap(rows),
            "unequal_straps" => joint::Form::unequal_straps(rows),
            _ => return Err(wrong_choice(py, "form", name)),
        };
        made.map(Form).map_err(|e| raise(py, &e, None))
    }

    /// Any form.
    #[staticmethod]
    fn from_rows(py: Python<'_>, kind: &str, arrangement: &str, rows: Vec<(u8, u8)>) -> PyResult<Self> {
        let kind = words::kind::read(kind).ok_or_else(|| wrong_choice(py, "kind", kind))?;
        let arrangement =
            words::arrangement::read(arrangement).ok_or_else(|| wrong_choice(py, "arrangement", arrangement))?;
        joint::Form::from_rows(kind, arrangement, &rows).map(Form).map_err(|e| raise(py, &e, None))
    }

    /// The form with every other rivet of the outer row left out.
    fn omit_alternate(&self, py: Python<'_>) -> PyResult<Self> {
        self.0.omit_alternate().map(Form).map_err(|e| raise(py, &e, None))
    }

    /// The form with its rows behind each other.
    fn chain(&self) -> Self {
        Form(self.0.chain())
    }

    /// The form with its rows in the gaps of each other.
    fn zigzag(&self) -> Self {
        Form(self.0.zigzag())
    }

    /// What the form says of itself.
    fn facts(&self) -> FormFacts {
        let f = &self.0;
        FormFacts {
            kind: words::kind::word(f.kind()),
            arrangement: words::arrangement::word(f.arrangement()),
            rows: f.rows().map(|r| (r.rivets, r.planes)).collect(),
            rivets: f.rivets(),
            shear_areas: f.shear_areas(),
            outer_rivets: f.outer_rivets(),
            densest_rivets: f.densest_rivets(),
            first_double_row: f.first_double_row(),
            unequal: f.unequal(),
            inner_doubled: f.inner_doubled(),
            rivets_omitted: f.rivets_omitted(),
            name: f.to_string(),
        }
    }
}

/// A joint of the core.
#[pyclass(frozen, module = "seamwright._native")]
#[derive(Clone, Copy)]
pub struct Joint(pub joint::Joint);

/// What a joint says of itself, lengths in mm.
#[derive(IntoPyObject)]
pub struct JointFacts {
    pitch: f64,
    strip: f64,
    plate: f64,
    other_plate: Option<f64>,
    wide_strap: Option<f64>,
    narrow_strap: Option<f64>,
    holes: Vec<f64>,
    rivets: Vec<f64>,
    back_pitches: Vec<Option<f64>>,
    margin: Option<f64>,
    width: Option<f64>,
    narrow_width: Option<f64>,
}

/// The straps as stated: one for all, or wide and narrow.
pub enum Straps {
    /// None stated.
    None,
    /// The only one, or both alike.
    One(Length),
    /// Wide (or first) and narrow (or second).
    Two(Length, Length),
}

/// Straps from what was given.
pub fn straps(strap: Option<f64>, wide: Option<f64>, narrow: Option<f64>) -> Result<Straps, Error> {
    match (strap, wide, narrow) {
        (None, None, None) => Ok(Straps::None),
        (Some(s), None, None) => Ok(Straps::One(Length::mm(s))),
        (None, Some(w), Some(n)) => Ok(Straps::Two(Length::mm(w), Length::mm(n))),
        (None, Some(_), None) => Err(Error::new(ErrorKind::Missing, Field::NarrowStrap)),
        (None, None, Some(_)) => Err(Error::new(ErrorKind::Missing, Field::WideStrap)),
        (Some(s), ..) => Err(Error::new(ErrorKind::Inconsistent, Field::WideStrap).value(s)),
    }
}

#[pymethods]
impl Joint {
    #[new]
    #[pyo3(signature = (form, pitch, plate, holes, rivets, other_plate, strap, wide_strap, narrow_strap, back_pitches, margin))]
    #[expect(clippy::too_many_arguments, reason = "called by keyword from one place")]
    fn new(
        py: Python<'_>,
        form: &Form,
        pitch: f64,
        plate: f64,
        holes: Vec<f64>,
        rivets: Vec<f64>,
        other_plate: Option<f64>,
        strap: Option<f64>,
        wide_strap: Option<f64>,
        narrow_strap: Option<f64>,
        back_pitches: Vec<Option<f64>>,
        margin: Option<f64>,
    ) -> PyResult<Self> {
        let build = || -> Result<joint::Joint, Error> {
            let rows = form.0.row_count();
            let number = |n: usize| u8::try_from(n).unwrap_or(u8::MAX);
            let missing = |field: Field, n: usize| Err(Error::new(ErrorKind::Missing, field).index(number(n)));
            let Some(first) = holes.first() else { return missing(Field::Hole, 1) };
            let mut spec = JointSpec::new(form.0, Length::mm(pitch), Length::mm(plate), Length::mm(*first));
            for (field, given) in [(Field::Hole, &holes), (Field::Rivet, &rivets)] {
                if given.len() > 1 && given.len() < rows {
                    return missing(field, given.len().saturating_add(1));
                }
            }
            let at = |given: &[f64], n: usize| match given {
                [one] => Some(*one),
                more => more.get(n).copied(),
            };
            for n in 0..rows.max(holes.len()).max(rivets.len()) {
                let hole = at(&holes, n).unwrap_or(*first);
                spec = spec.row(n.saturating_add(1), Length::mm(hole), at(&rivets, n).map(Length::mm));
            }
            if let Some(b) = other_plate {
                spec = spec.other_plate(Length::mm(b));
            }
            spec = match straps(strap, wide_strap, narrow_strap)? {
                Straps::None => spec,
                Straps::One(s) => spec.strap(s),
                Straps::Two(w, n) => spec.straps(w, n),
            };
            for (row, gap) in (1..).zip(&back_pitches) {
                if let Some(gap) = gap {
                    spec = spec.back_pitch(row, Length::mm(*gap));
                }
            }
            if let Some(m) = margin {
                spec = spec.margin(Length::mm(m));
            }
            spec.build()
        };
        build().map(Joint).map_err(|e| raise(py, &e, None))
    }

    /// The form.
    fn form(&self) -> Form {
        Form(*self.0.form())
    }

    /// What the joint says of itself.
    fn facts(&self) -> JointFacts {
        let j = &self.0;
        let widths = j.widths();
        let gaps = j.form().row_count().saturating_sub(1);
        JointFacts {
            pitch: j.pitch().to_mm(),
            strip: j.strip().to_mm(),
            plate: j.plate().to_mm(),
            other_plate: j.other_plate().map(Length::to_mm),
            wide_strap: j.wide_strap().map(Length::to_mm),
            narrow_strap: j.narrow_strap().filter(|_| j.form().kind() == JointKind::DoubleStrap).map(Length::to_mm),
            holes: j.rows().iter().map(|r| r.hole().to_mm()).collect(),
            rivets: j.rows().iter().map(|r| r.rivet().to_mm()).collect(),
            back_pitches: (1..=gaps).map(|row| j.back_pitch(row).map(Length::to_mm)).collect(),
            margin: j.margin().map(Length::to_mm),
            width: widths.map(|(w, _)| w.to_mm()),
            narrow_width: widths.and_then(|(_, n)| n).map(Length::to_mm),
        }
    }
}

/// Stresses of the core.
#[pyclass(frozen, module = "seamwright._native")]
#[derive(Clone, Copy)]
pub struct Materials(pub materials::Materials);

/// One plate: tension, bearing, shear-out in MPa.
pub type Plate = (f64, Option<f64>, Option<f64>);

#[pymethods]
impl Materials {
    #[new]
    fn new(py: Python<'_>, plate: Plate, other: Plate, rivet_shear: f64) -> PyResult<Self> {
        let stress = |(tension, bearing, shear_out): Plate| PlateStress {
            tension: Stress::mpa(tension),
            bearing: bearing.map(Stress::mpa),
            shear_out: shear_out.map(Stress::mpa),
        };
        let made =
            materials::Materials { plate: stress(plate), other: stress(other), rivet_shear: Stress::mpa(rivet_shear) };
        made.validate().map_err(|e| raise(py, &e, None))?;
        Ok(Materials(made))
    }

    /// Divided by a factor of safety.
    fn divided_by(&self, py: Python<'_>, factor: f64) -> PyResult<Self> {
        self.0.divided_by(factor).map(Materials).map_err(|e| raise(py, &e, None))
    }

    /// Plate, other plate or straps, rivets in shear; MPa.
    fn facts(&self) -> (Plate, Plate, f64) {
        let out =
            |p: &PlateStress| (p.tension.to_mpa(), p.bearing.map(Stress::to_mpa), p.shear_out.map(Stress::to_mpa));
        (out(&self.0.plate), out(&self.0.other), self.0.rivet_shear.to_mpa())
    }
}
