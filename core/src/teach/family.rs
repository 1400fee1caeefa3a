//! What kind of problem.

use crate::joint::Form;

/// The effect that a problem is to teach.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Effect {
    /// The plate tears at its outer row.
    Tearing,
    /// All rivets shear.
    Shearing,
    /// All rivets crush the plate.
    Bearing,
    /// A plate tears at an inner row while the rivets outside it fail.
    Combined,
    /// The greatest pitch of the rule book decides the pitch.
    Cap,
    /// The plate is thin: the hole follows from shear and bearing.
    ThinPlate,
}

/// All effects.
pub const EFFECTS: &[Effect] =
    &[Effect::Tearing, Effect::Shearing, Effect::Bearing, Effect::Combined, Effect::Cap, Effect::ThinPlate];

/// Where the joint stands, for its stresses.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Setting {
    /// A boiler: permissible stresses low, for a seam that has to stay tight.
    Boiler,
    /// A structure.
    Structure,
}

/// How much the student has to do.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Task {
    /// The joint is given: find its strengths and its efficiency.
    Check,
    /// The plate and its stresses are given: find the joint.
    Size,
}

/// A family of problems.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Family {
    /// The form of the joint.
    pub form: Form,
    /// Where it stands.
    pub setting: Setting,
    /// What the student has to do. Cap and thin plate are taught by sizing.
    pub task: Task,
    /// The effect.
    pub effect: Effect,
}
