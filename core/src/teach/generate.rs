//! Drawing a problem: stock sizes and round stresses at random, kept when the wanted effect decides.

use rand_pcg::Lcg64Xsh32;
use rand_pcg::rand_core::Rng;

use super::family::{Effect, Family, Setting, Task};
use super::key::Key;
use crate::bounds::Field;
use crate::check::{Analysis, Verdict};
use crate::error::{Error, ErrorKind};
use crate::given::Given;
use crate::joint::JointKind;
use crate::materials::Materials;
use crate::math;
use crate::modes::{Class, Fate, Lens, Strengths};
use crate::proportion::{HoleBasis, Limit};
use crate::quantities::{Length, Stress};
use crate::reconcile::{Case, Work};
use crate::rules::{Entry, Rules};
use crate::sizing::{Brief, Decided, Design, size};
use crate::step::Plain;

/// By how much the wanted effect decides: the next failure, or the next rule, is at least so far away.
pub const MARGIN_OF_EFFECT: f64 = 0.03;

/// Draws after which a family is given up.
const DRAWS: u32 = 20_000;

/// Stock plates, mm.
const PLATES: &[f64] = &[6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0, 18.0, 20.0, 22.0, 25.0, 28.0];
/// Round stresses, MPa: tension, shear, bearing.
const BOILER: [&[f64]; 3] = [
    &[70.0, 75.0, 80.0, 84.0, 90.0, 95.0, 100.0, 105.0, 110.0],
    &[50.0, 54.0, 56.0, 60.0, 64.0, 70.0, 75.0, 80.0],
    &[90.0, 100.0, 110.0, 120.0, 125.0, 130.0, 140.0, 150.0, 160.0, 180.0],
];
const STRUCTURE: [&[f64]; 3] = [
    &[100.0, 110.0, 120.0, 125.0, 130.0, 140.0, 150.0],
    &[70.0, 75.0, 80.0, 84.0, 90.0, 95.0, 100.0, 105.0, 110.0],
    &[150.0, 160.0, 180.0, 190.0, 200.0, 220.0, 240.0, 250.0],
];

/// A problem with its key.
#[derive(Clone, Debug)]
pub struct Problem {
    /// The number that it was drawn from.
    pub seed: u64,
    /// Its family.
    pub family: Family,
    /// The work, and the rule book's numbers.
    pub case: Case,
    /// The design behind it: of the given joint, or of the one to be found.
    pub design: Design,
    /// What is asked, and the answers.
    pub key: Key,
}

/// Draws a problem.
///
/// # Errors
/// [`ErrorKind::NoProblem`] where the family has none under this book: tearing at an inner row in a form without one, a
/// cap in a book without caps.
///
/// ```
/// use seamwright::{error::ErrorKind, joint::Form, rules::METRIC};
/// use seamwright::teach::{Effect, Family, Setting, Task, problem};
/// let family = Family { form: Form::lap(2)?, setting: Setting::Boiler, task: Task::Check, effect: Effect::Shearing };
/// let drawn = problem(7, &family, &METRIC.rules)?;
/// assert!(drawn.design.analysis.runner_up_ratio() >= 1.03);
/// let none = Family { effect: Effect::Combined, ..family };
/// assert_eq!(problem(7, &none, &METRIC.rules).unwrap_err().kind, ErrorKind::NoProblem);
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn problem(seed: u64, family: &Family, rules: &Rules) -> Result<Problem, Error> {
    rules.validate()?;
    // The stream is the family's own, so that two families of one number have nothing in common.
    let stream = u64::from(family.effect as u8).wrapping_mul(64).wrapping_add(u64::from(family.task as u8));
    let mut draw = Draw(Lcg64Xsh32::new(seed, stream));
    for _ in 0..DRAWS {
        let brief = draw.brief(family, rules);
        let Ok(design) = size(&brief, rules) else { continue };
        if !decides(family, &design, brief.materials(), rules) || !free_of_findings(&design.analysis) {
            continue;
        }
        let work = match family.task {
            Task::Check => Work::Check(design.joint, *brief.materials()),
            Task::Size => Work::Size(brief),
        };
        let case = Case { work, rules: *rules };
        let key = Key::of(&case)?;
        return Ok(Problem { seed, family: *family, case, design, key });
    }
    Err(Error::new(ErrorKind::NoProblem, Field::Form))
}

struct Draw(Lcg64Xsh32);

impl Draw {
    /// A whole number below `n`, by multiplication: the same on every machine.
    fn below(&mut self, n: usize) -> usize {
        let wide = u64::from(self.0.next_u32()).wrapping_mul(u64::try_from(n).unwrap_or(1));
        usize::try_from(wide.wrapping_shr(32)).unwrap_or(0)
    }

    fn one_of(&mut self, list: &[f64]) -> f64 {
        let at = self.below(list.len());
        list.get(at).copied().unwrap_or(1.0)
    }

    fn brief(&mut self, family: &Family, rules: &Rules) -> Brief {
        let [tensions, shears, bearings] = match family.setting {
            Setting::Boiler => BOILER,
            Setting::Structure => STRUCTURE,
        };
        let plate = self.one_of(PLATES);
        let (tension, shear, bearing) = (self.one_of(tensions), self.one_of(shears), self.one_of(bearings));
        let steel = Materials::new(Stress::mpa(tension), Stress::mpa(shear)).bearing(Stress::mpa(bearing));
        let mut brief = Brief::new(family.form, Length::mm(plate), steel);
        if family.task == Task::Check {
            // A given joint has a pitch of its own, on a grid that people use.
            let at = u32::try_from(self.below(80)).unwrap_or(0);
            let pitch = (40.0 + 2.0 * f64::from(at)) * f64::from(family.form.outer_rivets());
            brief = brief.pitch(Length::mm(pitch));
            // Half of the joints have a rivet that the rule would not have chosen.
            if self.below(2) == 1 {
                let series = rules.series().count();
                let at = self.below(series.max(1));
                if let Some(size) = rules.series().nth(at) {
                    brief = brief.hole(Length::mm(size.hole), Some(Length::mm(size.rivet)));
                }
            }
        }
        brief
    }
}

/// Whether nothing is left open or unknown.
fn free_of_findings(analysis: &Analysis) -> bool {
    !analysis.findings.iter().any(|f| matches!(f.verdict, Verdict::Open | Verdict::Unknown))
}

/// Whether the wanted effect decides, by the margin.
fn decides(family: &Family, design: &Design, materials: &Materials, rules: &Rules) -> bool {
    let clear = 1.0 + MARGIN_OF_EFFECT;
    let analysis = &design.analysis;
    let governs = |class: Class, fates: Option<Fate>| {
        let mode = &analysis.governing;
        let rows = family.form.row_count();
        // The plates of a lap are alike here: crushing either is the same.
        let seen =
            |f: Fate| if f == Fate::OtherBearing && family.form.kind() == JointKind::Lap { Fate::Bearing } else { f };
        let alike = fates.is_none_or(|fate| mode.fates.iter().take(rows).all(|f| seen(*f) == fate));
        mode.cut.class(family.form.kind(), rows) == class
            && alike
            && next_other(design, materials, rules, class) >= clear
    };
    match family.effect {
        Effect::Tearing => governs(Class::PlateOuter, None),
        Effect::Shearing => governs(Class::Rivets, Some(Fate::Shear)),
        Effect::Bearing => governs(Class::Rivets, Some(Fate::Bearing)),
        Effect::Combined => governs(Class::PlateInner, None),
        Effect::Cap => match design.pitch.greatest {
            Limit::At(cap, _) if design.pitch.decided == Decided::Cap => {
                design.pitch.by_shear >= cap * clear && design.pitch.by_weaker >= cap * clear
            }
            _ => false,
        },
        Effect::ThinPlate => match design.hole.computed {
            Some((computed, HoleBasis::Thin)) => {
                let root =
                    rules.get(Entry::HOLE_SQRT) * math::sqrt(design.joint.plate().to_mm()) + rules.get(Entry::HOLE_ADD);
                math::abs(computed - root) >= MARGIN_OF_EFFECT * computed
            }
            _ => false,
        },
    }
}

/// The weakest mode of another class over the governing one: both plates of a lap tear alike, and that is one effect.
fn next_other(design: &Design, materials: &Materials, rules: &Rules, class: Class) -> f64 {
    let (kind, rows) = (design.joint.form().kind(), design.joint.form().row_count());
    let analysis = &design.analysis;
    let given = Given::new(Plain, &design.joint, materials);
    let strengths = Strengths::new(Plain, &design.joint, &given, rules, Lens::Real);
    let next = strengths
        .modes()
        .filter(|mode| mode.cut.class(kind, rows) != class)
        .fold(f64::INFINITY, |least, mode| math::smaller(least, mode.strength));
    // Where shear governs, bearing of all rivets is the next effect, and the other way about.
    let [shear, bearing] = [Some(analysis.shear_all), analysis.bearing_all];
    let rival = match (class, shear, bearing) {
        (Class::Rivets, Some(s), Some(b)) => math::larger(s, b),
        _ => f64::INFINITY,
    };
    math::smaller(next, rival) / analysis.governing.strength
}
