//! Worst cases over tolerances.
//!
//! **The question.** Each dimension may lie anywhere within its tolerance: plates, straps, the hole (one drill makes all
//! holes: they move together), the pitch. What is the least that the efficiency, or the strength for a millimetre of
//! seam, can be?
//!
//! **Why a finite set of candidates is exact.** The least over all modes of the least over the box is the least over the
//! box of each mode alone, so look at one mode with strength `P`.
//!
//! * *Pitch.* `P` is `a p + b` in the pitch: a net section has `p` to the first power, rivets do not know it. Over the
//!   strip, `P/(p t st)` is `a' + b'/p`, and `P/p` is `a + b/p`: monotone, whichever way. The worst lies at an end.
//! * *Plates and straps.* `P` is linear in each thickness with no negative factor (net sections, bearing), and the solid
//!   strip is linear in the thickness of the plate. `P` over it is `a + b/t`: monotone. In a lap the solid strip is that
//!   of the weaker plate; where the two change over there is a kink, so the thickness at which they are equal is a
//!   candidate as well. Along that ridge both plates grow together and the quotient is `a + b/t` again.
//! * *Hole.* A net section falls with `d`, bearing rises with `d`, shear with `d^2`, shear-out falls with `d`: between
//!   the diameters at which some rivet changes its weaker fate, `P` is a quadratic `A + B d + C d^2` with `C >= 0`, and
//!   the solid strip does not know the hole. Such a quadratic may be least *inside* the tolerance, at `-B/(2 C)`. So the
//!   candidates are both ends, the changes of fate, and the stationary point of each mode between them.
//!
//! For a fixed hole the others are monotone one by one, so their worst is a corner; at each corner the worst hole is
//! among the candidates. Fates change in one order as the hole grows (shear first, shear-out last), so the changes are
//! found by bisection.
//!
//! **Where it is not exact.** Two rules make the net section depend on row distances: `s^2/4g`, and the modified plate
//! percentage of Reg. 184(d). Where one of them is at work, [`WorstCase::exact`] is false, and the box is searched on a
//! grid as well.

use crate::bounds::Field;
use crate::check::counted;
use crate::error::{Error, ErrorKind};
use crate::formula;
use crate::given::Given;
use crate::joint::{Joint, JointKind};
use crate::materials::Materials;
use crate::math;
use crate::modes::{Cut, Lens, Strengths};
use crate::quantities::Length;
use crate::rules::{CloseRows, Rules};
use crate::step::Plain;

/// What is to be at its worst.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Target {
    /// The efficiency over all modes.
    Efficiency,
    /// The efficiency by the book.
    BookEfficiency,
    /// The strength for a millimetre of seam over all modes, N/mm: what a shell's pressure follows.
    Strength,
}

/// Tolerances, each to either side; 0 for a dimension that is exact.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Tolerances {
    plate: f64,
    other: f64,
    narrow: f64,
    hole: f64,
    pitch: f64,
}

/// Number of dimensions that have a tolerance.
const DIMENSIONS: usize = 5;

impl Tolerances {
    /// No tolerances.
    #[must_use]
    pub const fn none() -> Self {
        Tolerances { plate: 0.0, other: 0.0, narrow: 0.0, hole: 0.0, pitch: 0.0 }
    }

    /// Of the plate; in a lap of each plate for itself.
    #[must_use]
    pub const fn plate(mut self, either_way: Length) -> Self {
        self.plate = either_way.to_mm();
        self
    }

    /// Of each strap for itself.
    #[must_use]
    pub const fn straps(mut self, either_way: Length) -> Self {
        self.other = either_way.to_mm();
        self.narrow = either_way.to_mm();
        self
    }

    /// Of the holes, which move together.
    #[must_use]
    pub const fn hole(mut self, either_way: Length) -> Self {
        self.hole = either_way.to_mm();
        self
    }

    /// Of the pitch (the width of the strip where the outer row has several rivets in it).
    #[must_use]
    pub const fn pitch(mut self, either_way: Length) -> Self {
        self.pitch = either_way.to_mm();
        self
    }

    /// In the order plate, other plate or wide strap, narrow strap, hole, pitch, as they apply to a joint.
    fn of(&self, joint: &Joint) -> [f64; DIMENSIONS] {
        let lap = joint.form().kind() == JointKind::Lap;
        let other = if lap { self.plate } else { self.other };
        let known = |thickness: f64, by: f64| if thickness > 0.0 { by } else { 0.0 };
        [self.plate, known(joint.other, other), known(joint.narrow, self.narrow), self.hole, self.pitch]
    }
}

/// Where a measure is at its worst.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Worst {
    /// The measure.
    pub value: f64,
    /// Deviations from what was stated, mm: plate, other plate or wide strap, narrow strap, hole, pitch.
    pub deviation: [f64; DIMENSIONS],
    /// The mode that governs there.
    pub cut: Cut,
}

/// A worst case, and what each tolerance alone contributes.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct WorstCase {
    /// The measure of the joint as stated.
    pub stated: f64,
    /// The worst over all tolerances together.
    pub worst: Worst,
    /// The worst with one tolerance alone: plate, other plate or wide strap, narrow strap, hole, pitch. The dimension
    /// with the lowest one matters most.
    pub alone: [f64; DIMENSIONS],
    /// Whether the worst case is proved; otherwise it is the worst that a grid found.
    pub exact: bool,
}

impl WorstCase {
    /// The worst over the stated: 0.98 for two per cent lost.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        if self.stated > 0.0 { self.worst.value / self.stated } else { 1.0 }
    }

    /// Whether the worst lies inside the tolerance of the hole and not at an end of it.
    #[must_use]
    pub fn hole_inside(&self, tolerances: &Tolerances) -> bool {
        let [_, _, _, hole, _] = self.worst.deviation;
        math::below(math::abs(hole), tolerances.hole)
    }
}

/// The worst case of a measure over tolerances.
///
/// # Errors
/// A tolerance that is not finite, negative, or not below its dimension; holes that can fill the pitch; a rivet that a
/// hole can be too small for; what [`check`](crate::check::check) refuses of the joint as stated.
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::sensitivity::{Target, Tolerances, tolerance::worst_case};
/// let joint = JointSpec::new(Form::lap(1)?, Length::mm(50.0), Length::mm(6.0), Length::mm(18.0)).build()?;
/// let steel = Materials::new(Stress::mpa(120.0), Stress::mpa(90.0)).bearing(Stress::mpa(300.0));
/// let drill = Tolerances::none().hole(Length::mm(0.5));
/// let found = worst_case(&joint, &steel, &METRIC.rules, &drill, Target::Efficiency)?;
/// assert!((found.ratio() - (17.5_f64 / 18.0).powi(2)).abs() < 1e-12); // the rivets shear
/// let wild = Tolerances::none().hole(Length::mm(18.0));
/// assert!(worst_case(&joint, &steel, &METRIC.rules, &wild, Target::Efficiency).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn worst_case(
    joint: &Joint,
    materials: &Materials,
    rules: &Rules,
    tolerances: &Tolerances,
    measure: Target,
) -> Result<WorstCase, Error> {
    crate::check::check(joint, materials, rules)?;
    let spans = tolerances.of(joint);
    admissible(joint, &spans)?;
    let mut study = Study { joint, materials, rules, measure, worst: None };
    let exact = study.is_exact();
    study.try_at([0.0; DIMENSIONS]);
    let stated = study.worst.map_or(0.0, |w| w.value);
    let mut alone = [stated; DIMENSIONS];
    for (which, slot) in alone.iter_mut().enumerate() {
        let mut only = [0.0; DIMENSIONS];
        if let (Some(own), Some(span)) = (only.get_mut(which), spans.get(which)) {
            *own = *span;
        }
        let mut one = Study { worst: None, ..study };
        one.search(&only, exact);
        *slot = one.worst.map_or(stated, |w| w.value);
    }
    study.search(&spans, exact);
    study.undo_idle_deviations();
    let nothing = Worst { value: stated, deviation: [0.0; DIMENSIONS], cut: Cut::default() };
    Ok(WorstCase { stated, worst: study.worst.unwrap_or(nothing), alone, exact })
}

/// Whether every joint in the box exists.
fn admissible(joint: &Joint, spans: &[f64; DIMENSIONS]) -> Result<(), Error> {
    let [plate, other, narrow, hole, pitch] = *spans;
    let rows = joint.rows();
    let smallest = rows.iter().fold(f64::INFINITY, |least, row| math::smaller(least, row.hole));
    let limits = [
        (plate, joint.plate),
        (other, if joint.other > 0.0 { joint.other } else { f64::INFINITY }),
        (narrow, if joint.narrow > 0.0 { joint.narrow } else { f64::INFINITY }),
        (hole, smallest),
        (pitch, joint.strip),
    ];
    for (span, dimension) in limits {
        let error = |kind| Error::new(kind, Field::Tolerance).value(span);
        if !span.is_finite() {
            return Err(error(ErrorKind::NotFinite));
        }
        if span < 0.0 {
            return Err(error(ErrorKind::TooSmall).limit(0.0));
        }
        if span >= dimension {
            return Err(error(ErrorKind::TooLarge).limit(dimension));
        }
    }
    for (number, row) in (1_u8..).zip(rows) {
        let holes = f64::from(row.rivets) * (row.hole + hole);
        if math::at_least(holes, joint.strip - pitch) {
            let error = Error::new(ErrorKind::HolesFillPitch, Field::Pitch).index(number);
            return Err(error.value(joint.strip - pitch).limit(holes));
        }
        if row.rivet != row.hole && math::below(row.hole - hole, row.rivet) {
            let error = Error::new(ErrorKind::RivetExceedsHole, Field::Rivet).index(number);
            return Err(error.value(row.rivet).limit(row.hole - hole));
        }
    }
    Ok(())
}

/// Steps of the grid where the worst case is not proved.
const GRID: u8 = 24;
/// Bisections of a change of fate: to the last bits of a millimetre.
const HALVINGS: u8 = 48;

#[derive(Clone, Copy)]
struct Study<'a> {
    joint: &'a Joint,
    materials: &'a Materials,
    rules: &'a Rules,
    measure: Target,
    worst: Option<Worst>,
}

impl Study<'_> {
    /// Whether no rule makes the net section depend on row distances.
    fn is_exact(&self) -> bool {
        let gaps = self.joint.back.iter().any(|gap| *gap > 0.0);
        !gaps || matches!(self.rules.close_rows(), CloseRows::Finding)
    }

    fn moved(&self, deviation: &[f64; DIMENSIONS]) -> Joint {
        let [plate, other, narrow, hole, pitch] = *deviation;
        let mut joint = *self.joint;
        joint.plate += plate;
        joint.other += other;
        joint.narrow += narrow;
        joint.strip += pitch;
        for row in joint.rows.iter_mut().take(self.joint.form().row_count()) {
            // A rivet as large as its hole is that hole, driven.
            if row.rivet == row.hole {
                row.rivet += hole;
            }
            row.hole += hole;
        }
        joint
    }

    fn strengths(&self, joint: &Joint) -> Strengths<f64> {
        let lens = match self.measure {
            Target::BookEfficiency if !Lens::alike(self.materials, self.rules) => Lens::Book,
            _ => Lens::Real,
        };
        Strengths::new(Plain, joint, &Given::new(Plain, joint, self.materials), self.rules, lens)
    }

    fn counts(&self, cut: &Cut) -> bool {
        self.measure != Target::BookEfficiency || counted(self.rules, self.joint, cut)
    }

    /// Works the measure at one place and keeps it where it is the worst so far.
    fn try_at(&mut self, deviation: [f64; DIMENSIONS]) {
        let joint = self.moved(&deviation);
        let strengths = self.strengths(&joint);
        let Some((cut, _)) = strengths.weakest_cuts(&mut |cut| self.counts(cut)) else { return };
        let strength = strengths.mode(cut).strength;
        let value = match self.measure {
            Target::Strength => formula::strength_per_length(strength, joint.strip),
            _ => formula::efficiency(strength, strengths.solid),
        };
        if self.worst.is_none_or(|worst| value < worst.value) {
            self.worst = Some(Worst { value, deviation, cut });
        }
    }

    /// A deviation without which the worst is as bad is none.
    fn undo_idle_deviations(&mut self) {
        for which in 0..DIMENSIONS {
            let Some(worst) = self.worst else { return };
            let mut without = worst.deviation;
            if let Some(one) = without.get_mut(which) {
                *one = 0.0;
            }
            self.worst = None;
            self.try_at(without);
            if self.worst.is_none_or(|now| math::below(worst.value, now.value)) {
                self.worst = Some(worst);
            }
        }
    }

    /// All candidates within the spans.
    fn search(&mut self, spans: &[f64; DIMENSIONS], exact: bool) {
        let [plate, other, narrow, hole, pitch] = *spans;
        self.try_at([0.0; DIMENSIONS]);
        for p in ends(pitch) {
            for b in ends(narrow) {
                for (t, t2) in self.plates(plate, other) {
                    self.try_holes([t, t2, b, 0.0, p], hole);
                }
            }
        }
        if !exact {
            let share = |step: u8| f64::from(step) / f64::from(GRID) * 2.0 - 1.0;
            for p in (0..=GRID).map(share) {
                for d in (0..=GRID).map(share) {
                    for (t, t2) in self.plates(plate, other) {
                        self.try_at([t, t2, 0.0, d * hole, p * pitch]);
                    }
                }
            }
        }
    }

    /// The corners of plate and second plate or wide strap, and in a lap the places where the two are equally strong.
    fn plates(&self, plate: f64, other: f64) -> impl Iterator<Item = (f64, f64)> + use<> {
        let (t, t2) = (self.joint.plate, self.joint.other);
        let lap = self.joint.form().kind() == JointKind::Lap;
        let (s, s2) = (self.materials.plate.tension.to_mpa(), self.materials.other.tension.to_mpa());
        let corners = ends(plate).into_iter().flat_map(move |a| ends(other).into_iter().map(move |b| (a, b)));
        // t s = t2 s2 with one of them at an end.
        let ridge_a = ends(other).into_iter().map(move |b| ((t2 + b) * s2 / s - t, b));
        let ridge_b = ends(plate).into_iter().map(move |a| (a, (t + a) * s / s2 - t2));
        let inside = move |(a, b): &(f64, f64)| lap && math::abs(*a) <= plate && math::abs(*b) <= other;
        corners.chain(ridge_a.filter(inside)).chain(ridge_b.filter(inside))
    }

    /// All candidates of the hole at one corner of the others: ends, changes of fate, stationary points of each mode.
    fn try_holes(&mut self, corner: [f64; DIMENSIONS], span: f64) {
        let at = |hole: f64| {
            let [a, b, c, _, e] = corner;
            [a, b, c, hole, e]
        };
        self.try_at(at(-span));
        if span <= 0.0 {
            return;
        }
        self.try_at(at(span));
        let mut from = -span;
        // Each row has three reaches and few fates: far fewer changes than this.
        for _ in 0..64 {
            let to = self.same_fates_up_to(&at, from, span);
            self.stationary_points(&at, from, to);
            if to >= span {
                return;
            }
            // Both sides of the change.
            self.try_at(at(to));
            let next = to + (2.0 * span) / (1_u64 << 46) as f64;
            self.try_at(at(next));
            from = next;
        }
    }

    /// The largest hole from `from` on up to which every rivet keeps its fate.
    fn same_fates_up_to(&self, at: &impl Fn(f64) -> [f64; DIMENSIONS], from: f64, end: f64) -> f64 {
        let here = self.strengths(&self.moved(&at(from)));
        let same = |hole: f64| self.strengths(&self.moved(&at(hole))).fates_as(&here);
        if same(end) {
            return end;
        }
        let (mut low, mut high) = (from, end);
        for _ in 0..HALVINGS {
            let middle = low + 0.5 * (high - low);
            if same(middle) { low = middle } else { high = middle }
        }
        low
    }

    /// Between two holes each mode is a quadratic: three points of it say where it is stationary.
    fn stationary_points(&mut self, at: &impl Fn(f64) -> [f64; DIMENSIONS], from: f64, to: f64) {
        let middle = from + 0.5 * (to - from);
        let [first, second, third] = [from, middle, to].map(|hole| self.strengths(&self.moved(&at(hole))));
        let half = middle - from;
        if half <= 0.0 {
            return;
        }
        for ((a, b), c) in first.modes().zip(second.modes()).zip(third.modes()) {
            let (a, b, c) = (a.strength, b.strength, c.strength);
            let bend = a - 2.0 * b + c;
            // Flat or bent downwards: the ends are the least.
            if bend <= 1e-12 * b {
                continue;
            }
            let stationary = middle - half * (c - a) / (2.0 * bend);
            if stationary > from && stationary < to {
                self.try_at(at(stationary));
            }
        }
    }
}

/// Both ends of a tolerance; one where there is none.
fn ends(span: f64) -> impl IntoIterator<Item = f64, IntoIter: Clone> + Clone {
    let second = (span > 0.0).then_some(span);
    core::iter::once(-span).chain(second)
}
