//! What a routine is given: the dimensions of a joint and its stresses, taken over once under their names.

use crate::joint::{Joint, JointKind, MAX_ROWS};
use crate::materials::Materials;
use crate::quantities::Stress;
use crate::rules::{Diameter, Entry, Rules};
use crate::step::{Ctx, Name, Num, Quantity as Q};

/// Dimensions (mm) and stresses (MPa) as the context's numbers.
#[derive(Clone, Copy, Debug)]
pub struct Given<N> {
    /// Width of the strip.
    pub strip: N,
    /// Main plate; plate A of a lap.
    pub plate: N,
    /// Plate B, single or wide strap; meaningless unless `joint.other` is known.
    pub other: N,
    /// Narrow strap; meaningless unless known.
    pub narrow: N,
    /// Margin; meaningless unless known.
    pub margin: N,
    /// Rivets by row.
    pub rivets: [N; MAX_ROWS],
    /// Holes by row.
    pub hole: [N; MAX_ROWS],
    /// Cold rivets by row.
    pub rivet: [N; MAX_ROWS],
    /// Tension of the plate.
    pub tension: N,
    /// Tension of the other plate or the straps.
    pub other_tension: N,
    /// Shear of the rivets.
    pub shear: N,
    /// Bearing of the plate, where given.
    pub bearing: Option<N>,
    /// Bearing of the other plate or the straps, where given.
    pub other_bearing: Option<N>,
    /// Shear of the plate at the margin, where given.
    pub shear_out: Option<N>,
    /// Shear of the other plate or the straps at their margin, where given.
    pub other_shear_out: Option<N>,
}

impl<N: Num> Given<N> {
    /// Takes over a joint and its stresses.
    #[inline]
    pub fn new<C: Ctx<N = N>>(c: C, joint: &Joint, materials: &Materials) -> Self {
        Self::with_strip(c, c, joint, materials)
    }

    /// [`new`](Self::new), the width of the strip taken over in a context of its own: a width that is only tried is
    /// not for the reader.
    #[inline]
    pub(crate) fn with_strip<C: Ctx<N = N>>(c: C, for_strip: C, joint: &Joint, materials: &Materials) -> Self {
        let zero = N::lit(0.0);
        let length = |q: Q, mm: f64| if mm > 0.0 { c.given(Name(q, 0), mm) } else { zero };
        let stress = |q: Q, s: Stress| c.given(Name(q, 0), s.to_mpa());
        let optional = |q: Q, s: Option<Stress>| s.map(|s| c.given(Name(q, 0), s.to_mpa()));
        let plate = length(Q::Plate, joint.plate);
        let lap_alike = joint.form.kind() == JointKind::Lap && joint.other == joint.plate;
        let tension = stress(Q::Tension, materials.plate.tension);
        let bearing = optional(Q::Bearing, materials.plate.bearing);
        let shear_out = optional(Q::PlateShear, materials.plate.shear_out);
        let same = materials.other == materials.plate;
        let mut given = Given {
            strip: for_strip.given(Name(Q::Pitch, 0), joint.strip),
            plate,
            other: if lap_alike { plate } else { length(Q::OtherPlate, joint.other) },
            narrow: length(Q::Narrow, joint.narrow),
            margin: length(Q::Margin, joint.margin),
            rivets: [zero; MAX_ROWS],
            hole: [zero; MAX_ROWS],
            rivet: [zero; MAX_ROWS],
            tension,
            other_tension: if same { tension } else { stress(Q::OtherTension, materials.other.tension) },
            shear: stress(Q::Shear, materials.rivet_shear),
            bearing,
            other_bearing: if same { bearing } else { optional(Q::OtherBearing, materials.other.bearing) },
            shear_out,
            other_shear_out: if same { shear_out } else { optional(Q::OtherPlateShear, materials.other.shear_out) },
        };
        let slots = given.rivets.iter_mut().zip(given.hole.iter_mut()).zip(given.rivet.iter_mut());
        // Rows alike share one line of the working: the holes are named once.
        let mut before: Option<(f64, f64, N, N)> = None;
        for ((((n, d), r), row), number) in slots.zip(joint.rows()).zip(1_u8..) {
            let (hole, rivet) = match before {
                Some((h, v, hole, rivet)) if h == row.hole && v == row.rivet => (hole, rivet),
                _ => {
                    let hole = c.given(Name(Q::Hole, number), row.hole);
                    let rivet = if row.rivet == row.hole { hole } else { c.given(Name(Q::Rivet, number), row.rivet) };
                    (hole, rivet)
                }
            };
            before = Some((row.hole, row.rivet, hole, rivet));
            *n = c.given(Name(Q::RivetsInRow, number), f64::from(row.rivets));
            *d = hole;
            *r = rivet;
        }
        given
    }

    /// The diameter of a row (from 1) that an entry of the book names.
    #[inline(always)]
    pub fn diameter(&self, rules: &Rules, entry: Entry, row: usize) -> N {
        match rules.diameter(entry) {
            Diameter::Hole => pick(&self.hole, row),
            Diameter::Rivet => pick(&self.rivet, row),
        }
    }

    /// Rivets of a row (from 1).
    #[inline(always)]
    pub fn rivets_in(&self, row: usize) -> N {
        pick(&self.rivets, row)
    }
}

/// The value of a row (from 1); nothing beyond the last.
#[inline(always)]
pub(crate) fn pick<N: Num>(values: &[N; MAX_ROWS], row: usize) -> N {
    values.get(row.wrapping_sub(1)).copied().unwrap_or(N::lit(0.0))
}
