//! Slopes of the efficiencies and of the strength.

use heapless::Vec;

use super::inputs::{Input, MAX_INPUTS, inputs};
use super::one_sided::{Bent, Sided, Toward, equal};
use crate::check::{check, counted};
use crate::error::Error;
use crate::formula::{self, Formula};
use crate::given::Given;
use crate::joint::Joint;
use crate::materials::Materials;
use crate::modes::{Cut, Lens, Strengths};
use crate::rules::{Entry, Rules};
use crate::step::{Ctx, Name, Quantity as Q, Why};

/// What one input does, each for one unit more of it: mm, MPa, or one.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Slope {
    /// The input.
    pub input: Input,
    /// Its value.
    pub value: f64,
    /// Of the efficiency over all modes.
    pub efficiency: Sided,
    /// Of the efficiency by the book.
    pub book_efficiency: Sided,
    /// Of the efficiency credited.
    pub credited: Sided,
    /// Of the strength of the weakest mode for a millimetre of seam, N/mm. A thin shell's pressure is as that strength
    /// over its inside radius, so this is also how its pressure moves.
    pub strength: Sided,
    /// The mode that governs on the left and on the right.
    pub governs: [Cut; 2],
}

impl Slope {
    /// Per cent of the efficiency for one per cent more of the input.
    #[must_use]
    pub fn relative(&self, efficiency: f64) -> Sided {
        self.efficiency.times(self.value / efficiency)
    }

    /// Whether the governing mode changes here.
    #[must_use]
    pub fn mode_changes(&self) -> bool {
        let [left, right] = self.governs;
        left != right
    }
}

/// The slopes of a joint, by input.
#[derive(Clone, PartialEq, Debug)]
pub struct Slopes {
    /// Efficiency over all modes, by the book, and credited.
    pub efficiencies: [f64; 3],
    /// Strength of the weakest mode, N for a millimetre of seam.
    pub strength: f64,
    /// One line for each input that the figures depend on or might depend on.
    pub lines: Vec<Slope, MAX_INPUTS>,
}

impl Slopes {
    /// The line of an input.
    #[must_use]
    pub fn of(&self, input: Input) -> Option<&Slope> {
        self.lines.iter().find(|line| line.input == input)
    }
}

/// The exact derivatives of a joint's efficiencies and strength to each of its inputs.
///
/// # Errors
/// As [`check`](crate::check::check).
///
/// ```
/// use seamwright::{joint::{Form, JointSpec}, materials::Materials, quantities::{Length, Stress}, rules::METRIC};
/// use seamwright::{sensitivity::{Input, slopes}, step::{Name, Quantity}};
/// let joint = JointSpec::new(Form::lap(1)?, Length::mm(50.0), Length::mm(6.0), Length::mm(18.0)).build()?;
/// let steel = Materials::new(Stress::mpa(120.0), Stress::mpa(90.0)).bearing(Stress::mpa(300.0));
/// // Shear governs: pi/4 d^2 s/(p t st). One per cent more of the hole is two per cent more of the joint.
/// let found = slopes(&joint, &steel, &METRIC.rules)?;
/// let hole = found.of(Input::Given(Name(Quantity::Hole, 1))).unwrap();
/// assert!((hole.relative(found.efficiencies[0]).right - 2.0).abs() < 1e-12);
/// assert!(slopes(&joint, &Materials::new(Stress::mpa(0.0), Stress::mpa(90.0)), &METRIC.rules).is_err());
/// # Ok::<(), seamwright::Error>(())
/// ```
pub fn slopes(joint: &Joint, materials: &Materials, rules: &Rules) -> Result<Slopes, Error> {
    let plain = check(joint, materials, rules)?;
    let mut found = Slopes {
        efficiencies: [plain.efficiency, plain.book_efficiency, plain.credited],
        strength: formula::strength_per_length(plain.governing.strength, joint.strip),
        lines: Vec::new(),
    };
    for (input, value) in inputs(joint, materials, rules) {
        let line = slope(Toward(input), joint, materials, rules, value);
        // As long as the list of inputs.
        let _ = found.lines.push(line);
    }
    Ok(found)
}

fn slope(c: Toward, joint: &Joint, materials: &Materials, rules: &Rules, value: f64) -> Slope {
    let given = Given::new(c, joint, materials);
    let real = Strengths::new(c, joint, &given, rules, Lens::Real);
    let (strength, governs) = least(&real, |_| true);
    let efficiency = formula::efficiency(strength, real.solid);
    let counts = |cut: &Cut| counted(rules, joint, cut);
    let by_book = if Lens::alike(materials, rules) {
        least(&real, counts).0
    } else {
        least(&Strengths::new(c, joint, &given, rules, Lens::Book), counts).0
    };
    let book = formula::efficiency(by_book, real.solid);
    let name = Name(Q::Credited, 0);
    let cap = c.table(name, Entry::EFFICIENCY_CAP.no(), rules.get(Entry::EFFICIENCY_CAP));
    let lesser = |a, b| c.lesser(name, Why::Least(Entry::COUNT_INNER.no()), a, b);
    let credited = lesser(lesser(book, efficiency), cap);
    let per_length = c.formula(
        Name(Q::StrengthPerLength, 0),
        Formula::StrengthPerLength.no(),
        formula::strength_per_length(strength, given.strip),
    );
    Slope {
        input: c.0,
        value,
        efficiency: efficiency.slope,
        book_efficiency: book.slope,
        credited: credited.slope,
        strength: per_length.slope,
        governs,
    }
}

/// The least of the modes that count, bent where several are equal, and the modes that govern left and right.
fn least(strengths: &Strengths<Bent>, mut counts: impl FnMut(&Cut) -> bool) -> (Bent, [Cut; 2]) {
    let zero = Bent { value: 0.0, slope: Sided::default() };
    let Some((first, _)) = strengths.weakest_cuts(&mut counts) else { return (zero, [Cut::default(); 2]) };
    let governing = strengths.mode(first).strength;
    let (mut bent, mut governs) = (governing, [first; 2]);
    for mode in strengths.modes().filter(|mode| counts(&mode.cut) && mode.cut != first) {
        let other = mode.strength;
        if !equal(other.value, governing.value) {
            continue;
        }
        let lower = Bent::least(bent, other);
        let [left, right] = &mut governs;
        if lower.slope.left > bent.slope.left {
            *left = mode.cut;
        }
        if lower.slope.right < bent.slope.right {
            *right = mode.cut;
        }
        bent = lower;
    }
    (bent, governs)
}
