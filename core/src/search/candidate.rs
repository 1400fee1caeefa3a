//! One candidate: how it is made, measured and refused.

use super::bound::Pieces;
use super::brief::{Constraint, SearchBrief};
use super::measures::{BILLION, MILLION, Measures, whole};
use super::weight::Weights;
use crate::bounds::Field;
use crate::check::Verdict;
use crate::error::Error;
use crate::given::Given;
use crate::joint::{Form, JointKind, JointSpec};
use crate::math;
use crate::modes::Cut;
use crate::proportion::{self, Limit};
use crate::quantities::{Length, Pressure};
use crate::rating::{Assumptions, Seam, joint_pressure, pressure_with};
use crate::rules::{Entry, Rules};
use crate::shop::strip_masses;
use crate::sizing::{Brief, Design, size};
use crate::step::Plain;

/// A joint of the grid that meets all constraints.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Candidate {
    /// The form.
    pub form: Form,
    /// The plate.
    pub plate: Length,
    /// The hole.
    pub hole: Length,
    /// The cold rivet.
    pub rivet: Length,
    /// Pitch of the outer row.
    pub pitch: Length,
    /// Efficiency credited.
    pub efficiency: f64,
    /// Rivets in a metre of seam, both sides of a butt.
    pub rivets_per_metre: f64,
    /// Mass that a metre of seam adds, kg, where it was asked for.
    pub mass_per_metre: Option<f64>,
    /// Working pressure, where one was asked for.
    pub pressure: Option<Pressure>,
    /// What governs.
    pub governing: Cut,
    /// The same in whole numbers, by which candidates are compared.
    pub measures: Measures,
}

impl Candidate {
    /// The brief that sizes this joint once more.
    #[must_use]
    pub fn brief(&self, search: &SearchBrief<'_>) -> Brief {
        let strip = Length::mm(self.pitch.to_mm() * f64::from(self.form.outer_rivets()));
        Brief::new(self.form, self.plate, search.materials).hole(self.hole, Some(self.rivet)).pitch(strip)
    }
}

/// All candidates of one form, plate and size: a stretch of the pitch grid.
pub(super) struct Group<'s, 'a> {
    pub search: &'s SearchBrief<'a>,
    pub rules: &'s Rules,
    pub form: Form,
    pub plate: Length,
    pub hole: Length,
    pub rivet: Length,
    /// Step of the pitch, mm.
    pub step: f64,
    /// First and last step of the pitch; none where the last is less.
    pub range: (u32, u32),
    /// The book caps pitches, its table does not reach this form, and nobody named a greatest pitch.
    pub cap_unknown: bool,
}

/// How many steps a pitch has that is one of the grid.
fn steps(pitch: f64, step: f64) -> u32 {
    (pitch / step + 0.5) as u32
}

impl<'s, 'a> Group<'s, 'a> {
    /// The group, with the pitches from the least to the greatest of the book.
    pub(super) fn new(
        search: &'s SearchBrief<'a>,
        rules: &'s Rules,
        form: Form,
        plate: Length,
        (hole, rivet): (Length, Length),
    ) -> Self {
        let step = rules.get(Entry::PITCH_STEP);
        let outer = f64::from(form.outer_rivets());
        let d = match rules.diameter(Entry::DISTANCE_DIAMETER) {
            crate::rules::Diameter::Hole => hole.to_mm(),
            crate::rules::Diameter::Rivet => rivet.to_mm(),
        };
        let (least, _) = proportion::pitch_least(Plain, rules, &form, d);
        let mut first = steps(math::round_up(math::larger(least, Field::Pitch.bound().lo / outer), step), step);
        // Where the book asks for less, the holes of the densest row still need plate between them.
        let holes = f64::from(form.densest_rivets()) * hole.to_mm();
        let touching = steps(math::round_down(holes / outer, step), step);
        if math::at_least(holes, f64::from(first) * step * outer) {
            first = touching.saturating_add(1);
        }
        let mut most = Field::Pitch.bound().hi / outer;
        let mut cap_unknown = false;
        match proportion::pitch_greatest(Plain, rules, &form, plate.to_mm()) {
            Limit::At(cap, _) => most = math::smaller(most, cap),
            Limit::Unknown(_) => cap_unknown = search.pitch_most.is_none(),
            Limit::None => {}
        }
        if let Some(cap) = search.pitch_most {
            most = math::smaller(most, cap.to_mm());
        }
        let last = steps(math::round_down(most, step), step);
        Group { search, rules, form, plate, hole, rivet, step, range: (first, last), cap_unknown }
    }

    /// How many candidates it has.
    pub(super) fn len(&self) -> u32 {
        let (first, last) = self.range;
        if last < first { 0 } else { last.wrapping_sub(first).saturating_add(1) }
    }

    /// Pitch of the outer row at a step, mm.
    pub(super) fn pitch(&self, k: u32) -> f64 {
        f64::from(k) * self.step
    }

    /// Strip at a step, mm.
    pub(super) fn strip(&self, k: u32) -> f64 {
        self.pitch(k) * f64::from(self.form.outer_rivets())
    }

    /// The closed-form bound of its efficiency.
    pub(super) fn pieces(&self) -> Pieces {
        let (first, last) = self.range;
        let ends = [self.strip(first), self.strip(last)];
        let materials = &self.search.materials;
        Pieces::new(&self.form, self.hole, self.rivet, self.plate, materials, self.rules, ends)
            .unwrap_or_else(|_| Pieces::none(self.rules))
    }

    /// The efficiency below which the required pressure is certainly not reached; 0 where none is required.
    ///
    /// The pressure is proportional to the efficiency in the formula of every book, for one plate and form.
    pub(super) fn efficiency_for_pressure(&self) -> f64 {
        let Some((least, shell)) = &self.search.pressure else { return 0.0 };
        let tension = self.search.materials.plate.tension.to_mpa();
        let other = self.search.materials.other.tension.to_mpa();
        let tension = if self.form.kind() == JointKind::Lap { math::smaller(tension, other) } else { tension };
        let seam = Seam { form: &self.form, plate: self.plate.to_mm(), tension, efficiency: 1.0 };
        match pressure_with(Plain, self.rules, shell, &seam, &mut Assumptions::new()) {
            Ok(full) if full.pressure > 0.0 => least.to_mpa() / full.pressure * (1.0 - 4.0 * math::TOLERANCE),
            Ok(_) => f64::INFINITY,
            Err(_) => 0.0,
        }
    }

    /// Rivets in a metre, for a strip.
    pub(super) fn rivets(&self, strip: f64) -> f64 {
        let sides = if self.form.kind() == JointKind::Lap { 1.0 } else { 2.0 };
        1000.0 * sides * f64::from(self.form.rivets()) / strip
    }

    /// The measures that no candidate between two steps betters.
    pub(super) fn bound(&self, pieces: &Pieces, weights: Option<&Weights>, (first, last): (u32, u32)) -> Measures {
        let (low, high) = (self.strip(first), self.strip(last));
        Measures {
            efficiency: whole(pieces.over(low, high), BILLION),
            rivets: whole(self.rivets(high), MILLION),
            mass: weights.map_or(0, |w| whole(w.least(self, low, high), MILLION)),
            plate: whole(self.plate.to_mm(), MILLION),
            pitch: whole(self.pitch(last), MILLION),
        }
    }

    /// Sizes, checks and weighs the candidate at a step.
    pub(super) fn examine(&self, k: u32) -> Result<(Candidate, Design), Constraint> {
        let making = |_: Error| Constraint::Making;
        let pitch = self.pitch(k);
        let brief = Brief::new(self.form, self.plate, self.search.materials)
            .hole(self.hole, Some(self.rivet))
            .pitch(Length::mm(self.strip(k)));
        let design = size(&brief, self.rules).map_err(making)?;
        let credited = design.analysis.credited;
        let efficiency = whole(credited, BILLION);
        if self.search.efficiency.is_some_and(|least| efficiency < whole(least, BILLION)) {
            return Err(Constraint::Efficiency);
        }
        let mut pressure = None;
        if let Some((least, shell)) = &self.search.pressure {
            let found = joint_pressure(&design.joint, &self.search.materials, &design.analysis, shell, self.rules)
                .map_err(making)?;
            if math::below(found.to_mpa(), least.to_mpa()) {
                return Err(Constraint::Pressure);
            }
            pressure = Some(found);
        }
        let mut mass = None;
        if let Some(order) = &self.search.mass {
            let found = strip_masses(Plain, &design.joint, &self.search.materials, order).map_err(making)?;
            mass = Some(found.per_metre);
        }
        if !self.search.any_finding
            && let Some(open) = design.analysis.findings.iter().find(|f| f.verdict == Verdict::Open)
        {
            return Err(Constraint::Rule(open.subject));
        }
        let rivets = self.rivets(design.joint.strip);
        let measures = Measures {
            efficiency,
            rivets: whole(rivets, MILLION),
            mass: whole(mass.unwrap_or(0.0), MILLION),
            plate: whole(self.plate.to_mm(), MILLION),
            pitch: whole(pitch, MILLION),
        };
        let candidate = Candidate {
            form: self.form,
            plate: self.plate,
            hole: self.hole,
            rivet: self.rivet,
            pitch: Length::mm(pitch),
            efficiency: credited,
            rivets_per_metre: rivets,
            mass_per_metre: mass,
            pressure,
            governing: design.analysis.governing.cut,
            measures,
        };
        Ok((candidate, design))
    }

    /// A joint of the group with straps, row distances and margin of one's choosing.
    pub(super) fn joint(
        &self,
        strip: f64,
        straps: [f64; 2],
        gaps: impl Iterator<Item = f64>,
        margin: f64,
    ) -> Result<crate::joint::Joint, Error> {
        let mut spec = JointSpec::new(self.form, Length::mm(strip), self.plate, self.hole)
            .rivet(self.rivet)
            .margin(Length::mm(margin));
        for (row, gap) in (1..self.form.row_count()).zip(gaps) {
            spec = spec.back_pitch(row, Length::mm(gap));
        }
        let [wide, narrow] = straps.map(Length::mm);
        spec = match self.form.kind() {
            JointKind::Lap => spec,
            JointKind::SingleStrap => spec.strap(wide),
            JointKind::DoubleStrap => spec.straps(wide, narrow),
        };
        spec.build()
    }

    /// Dimensions and stresses as the routines of proportion take them.
    pub(super) fn given(&self, joint: &crate::joint::Joint) -> Given<f64> {
        Given::new(Plain, joint, &self.search.materials)
    }
}
