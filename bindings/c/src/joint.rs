//! Stresses and joints as stated. A dimension or stress that is not given is 0.

use seamwright::joint::{Form, Joint, JointKind, JointSpec};
use seamwright::materials::{Materials, PlateStress};
use seamwright::quantities::{Length, Stress};

use crate::border::{self, Slot};
use crate::form::{SW_MAX_ROWS, sw_form};
use crate::status::{Failure, answer, sw_error};

/// Stresses of a joint, permissible or ultimate. A record: filled by `sw_materials_init`, then field by field.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_materials {
    /// Tensile stress of the plate, MPa.
    pub tension_mpa: f64,
    /// Shear stress of the rivets, single shear, MPa.
    pub rivet_shear_mpa: f64,
    /// Bearing stress of the plate, MPa; 0: not given.
    pub bearing_mpa: f64,
    /// Shear stress of the plate for shear-out at the margin, MPa; 0: not given, the margin is left to its rule.
    pub shear_out_mpa: f64,
    /// Tensile stress of the second plate or of the straps, MPa; 0: all three stresses there are as of the plate.
    pub other_tension_mpa: f64,
    /// Bearing stress there, MPa; 0: not given. Counts only where `other_tension_mpa` is given.
    pub other_bearing_mpa: f64,
    /// Shear stress there for shear-out, MPa; 0: not given. Counts only where `other_tension_mpa` is given.
    pub other_shear_out_mpa: f64,
}

/// What was given: anything but 0.
fn stress(mpa: f64) -> Option<Stress> {
    (mpa != 0.0).then(|| Stress::mpa(mpa))
}

/// What was given: anything but 0.
pub(crate) fn length(mm: f64) -> Option<Length> {
    (mm != 0.0).then(|| Length::mm(mm))
}

impl sw_materials {
    pub(crate) const fn none() -> Self {
        sw_materials {
            tension_mpa: 0.0,
            rivet_shear_mpa: 0.0,
            bearing_mpa: 0.0,
            shear_out_mpa: 0.0,
            other_tension_mpa: 0.0,
            other_bearing_mpa: 0.0,
            other_shear_out_mpa: 0.0,
        }
    }

    pub(crate) fn of(m: &Materials) -> Self {
        let given = |s: Option<Stress>| s.map_or(0.0, Stress::to_mpa);
        sw_materials {
            tension_mpa: m.plate.tension.to_mpa(),
            rivet_shear_mpa: m.rivet_shear.to_mpa(),
            bearing_mpa: given(m.plate.bearing),
            shear_out_mpa: given(m.plate.shear_out),
            other_tension_mpa: m.other.tension.to_mpa(),
            other_bearing_mpa: given(m.other.bearing),
            other_shear_out_mpa: given(m.other.shear_out),
        }
    }

    pub(crate) fn materials(&self) -> Materials {
        let plate = PlateStress {
            tension: Stress::mpa(self.tension_mpa),
            bearing: stress(self.bearing_mpa),
            shear_out: stress(self.shear_out_mpa),
        };
        let other = stress(self.other_tension_mpa).map_or(plate, |tension| PlateStress {
            tension,
            bearing: stress(self.other_bearing_mpa),
            shear_out: stress(self.other_shear_out_mpa),
        });
        Materials { plate, other, rivet_shear: Stress::mpa(self.rivet_shear_mpa) }
    }
}

/// A joint as stated: required dimensions, and the others as they are known (0: not given).
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_joint {
    /// Size of this struct, set by `sw_joint_init`.
    pub struct_size: u32,
    /// Not used.
    pub reserved: u32,
    /// The form.
    pub form: sw_form,
    /// Pitch of the outer row, mm; the width of the strip where the outer row has several rivets in it (a tie).
    pub pitch_mm: f64,
    /// Thickness of the plate (plate A of a lap), mm.
    pub plate_mm: f64,
    /// Thickness of plate B of a lap, mm; 0: as plate A.
    pub other_plate_mm: f64,
    /// Thickness of the single or the wide strap, mm.
    pub wide_strap_mm: f64,
    /// Thickness of the second or narrow strap, mm; 0 under a double-strapped joint: as the first one.
    pub narrow_strap_mm: f64,
    /// Centre of the edge row to the plate edge, mm.
    pub margin_mm: f64,
    /// Hole of each row, mm; 0 in rows 2 to 8: hole and rivet as in row 1.
    pub hole_mm: [f64; SW_MAX_ROWS],
    /// Cold rivet of each row, mm; 0: as large as its hole.
    pub rivet_mm: [f64; SW_MAX_ROWS],
    /// Distance from each row to the next, mm.
    pub back_pitch_mm: [f64; SW_MAX_ROWS],
}

impl sw_joint {
    pub(crate) fn fresh() -> Self {
        sw_joint {
            struct_size: size_of::<sw_joint>() as u32,
            reserved: 0,
            form: sw_form::none(),
            pitch_mm: 0.0,
            plate_mm: 0.0,
            other_plate_mm: 0.0,
            wide_strap_mm: 0.0,
            narrow_strap_mm: 0.0,
            margin_mm: 0.0,
            hole_mm: [0.0; SW_MAX_ROWS],
            rivet_mm: [0.0; SW_MAX_ROWS],
            back_pitch_mm: [0.0; SW_MAX_ROWS],
        }
    }

    pub(crate) fn of(joint: &Joint) -> Self {
        let given = |l: Option<Length>| l.map_or(0.0, Length::to_mm);
        let mut c = sw_joint {
            form: sw_form::of(joint.form()),
            pitch_mm: joint.strip().to_mm(),
            plate_mm: joint.plate().to_mm(),
            other_plate_mm: given(joint.other_plate()),
            wide_strap_mm: given(joint.wide_strap()),
            narrow_strap_mm: given(joint.narrow_strap()),
            margin_mm: given(joint.margin()),
            ..sw_joint::fresh()
        };
        for (row, (hole, rivet)) in joint.rows().iter().zip(c.hole_mm.iter_mut().zip(c.rivet_mm.iter_mut())) {
            (*hole, *rivet) = (row.hole().to_mm(), row.rivet().to_mm());
        }
        for (slot, row) in c.back_pitch_mm.iter_mut().zip(1_usize..) {
            *slot = given(joint.back_pitch(row));
        }
        c
    }

    pub(crate) fn joint(&self, argument: u32) -> Result<Joint, Failure> {
        Ok(self.spec(self.form.form(argument)?).build()?)
    }

    /// By itself: the copies that the steps of a description make leave the stack before the joint is built.
    #[inline(never)]
    fn spec(&self, form: Form) -> JointSpec {
        let [first, ..] = self.hole_mm;
        let [first_rivet, ..] = self.rivet_mm;
        let mut spec = JointSpec::new(form, Length::mm(self.pitch_mm), Length::mm(self.plate_mm), Length::mm(first));
        if let Some(rivet) = length(first_rivet) {
            spec = spec.rivet(rivet);
        }
        for ((hole, rivet), row) in self.hole_mm.iter().zip(self.rivet_mm).zip(1_usize..).skip(1) {
            match (length(*hole), length(rivet)) {
                (None, None) => {}
                (None, Some(rivet)) => spec = spec.row(row, Length::mm(first), Some(rivet)),
                (Some(hole), rivet) => spec = spec.row(row, hole, rivet),
            }
        }
        if let Some(b) = length(self.other_plate_mm) {
            spec = spec.other_plate(b);
        }
        spec = match (length(self.wide_strap_mm), length(self.narrow_strap_mm)) {
            (Some(wide), Some(narrow)) => spec.straps(wide, narrow),
            (Some(strap), None) => spec.strap(strap),
            // A narrow strap alone: the library says what is missing or out of place.
            (None, Some(narrow)) if form.kind() == JointKind::DoubleStrap => spec.straps(Length::mm(0.0), narrow),
            (None, Some(narrow)) => spec.straps(narrow, narrow),
            (None, None) => spec,
        };
        for (gap, row) in self.back_pitch_mm.iter().zip(1_usize..) {
            if let Some(gap) = length(*gap) {
                spec = spec.back_pitch(row, gap);
            }
        }
        if let Some(margin) = length(self.margin_mm) {
            spec = spec.margin(margin);
        }
        spec
    }
}

/// Fills stresses with 0: not given.
#[unsafe(no_mangle)]
pub extern "C" fn sw_materials_init(materials: *mut sw_materials) {
    if let Ok(out) = Slot::needed(materials, 1) {
        out.put(sw_materials::none());
    }
}

/// Whether all stresses lie in their ranges.
#[unsafe(no_mangle)]
pub extern "C" fn sw_materials_validate(materials: *const sw_materials, error: *mut sw_error) -> u32 {
    answer(error, || Ok(border::record(materials, 1)?.materials().validate()?))
}

/// All stresses divided by a factor of safety (1 to 20).
#[unsafe(no_mangle)]
pub extern "C" fn sw_materials_divide(
    materials: *const sw_materials,
    factor: f64,
    divided: *mut sw_materials,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let out = Slot::needed(divided, 3)?;
        out.put(sw_materials::of(&border::record(materials, 1)?.materials().divided_by(factor)?));
        Ok(())
    })
}

/// Fills a joint with 0: nothing given.
#[unsafe(no_mangle)]
pub extern "C" fn sw_joint_init(joint: *mut sw_joint) {
    border::init(joint);
}

/// Whether the dimensions of a joint are in range and agree with its form: `SW_NOT_FOR_THIS_FORM`, `SW_INCONSISTENT`,
/// `SW_HOLES_FILL_PITCH`, `SW_ROWS_OVERLAP`, `SW_HOLE_CUTS_EDGE`, `SW_RIVET_EXCEEDS_HOLE`. Every function that takes a
/// joint looks at this first.
#[unsafe(no_mangle)]
pub extern "C" fn sw_joint_validate(joint: *const sw_joint, error: *mut sw_error) -> u32 {
    answer(error, || border::read(joint, 1)?.joint(1).map(|_| ()))
}
