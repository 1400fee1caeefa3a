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
    #[inline(always)]
    pub fn new<C: Ctx<N = N>>(c: C, joint: &Joint, materials: &Materials) -> Self {
        let mut given = Self::blank();
        given.take(c, c, joint, materials);
        given
    }

    /// Nothing taken over yet.
    #[inline(never)]
    pub(crate) fn blank() -> Self {
        let zero = N::lit(0.0);
        Given {
            strip: zero,
            plate: zero,
            other: zero,
            narrow: zero,
            margin: zero,
            rivets: [zero; MAX_ROWS],
            hole: [zero; MAX_ROWS],
            rivet: [zero; MAX_ROWS],
            tension: zero,
            other_tension: zero,
            shear: zero,
            bearing: None,
            other_bearing: None,
            shear_out: None,
            other_shear_out: None,
        }
    }

    /// [`new`](Self::new) in place, the width of the strip taken over in a context of its own: a width that is only tried
    /// is not for the reader.
    #[inline(never)]
    pub(crate) fn take<C: Ctx<N = N>>(&mut self, c: C, for_strip: C, joint: &Joint, materials: &Materials) {
        let zero = N::lit(0.0);
        let length = |q: Q, mm: f64| if mm > 0.0 { c.given(Name(q, 0), mm) } else { zero };
        let stress = |q: Q, s: Stress| c.given(Name(q, 0), s.to_mpa());
        let optional = |q: Q, s: Option<Stress>| s.map(|s| c.given(Name(q, 0), s.to_mpa()));
        self.plate = length(Q::Plate, joint.plate);
        let lap_alike = joint.form.kind() == JointKind::Lap && joint.other == joint.plate;
        self.tension = stress(Q::Tension, materials.plate.tension);
        self.bearing = optional(Q::Bearing, materials.plate.bearing);
        self.shear_out = optional(Q::PlateShear, materials.plate.shear_out);
        self.strip = for_strip.given(Name(Q::Pitch, 0), joint.strip);
        self.other = if lap_alike { self.plate } else { length(Q::OtherPlate, joint.other) };
        self.narrow = length(Q::Narrow, joint.narrow);
        self.margin = length(Q::Margin, joint.margin);
        let other = &materials.other;
        let same = *other == materials.plate;
        self.other_tension = if same { self.tension } else { stress(Q::OtherTension, other.tension) };
        self.shear = stress(Q::Shear, materials.rivet_shear);
        self.other_bearing = if same { self.bearing } else { optional(Q::OtherBearing, other.bearing) };
        self.other_shear_out = if same { self.shear_out } else { optional(Q::OtherPlateShear, other.shear_out) };
        let slots = self.rivets.iter_mut().zip(self.hole.iter_mut()).zip(self.rivet.iter_mut());
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
