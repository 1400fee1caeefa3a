//! Rating: what pressure a shell and its seams allow.
//!
//! The efficiency is always that of the joint as it is: every mode is worked out again at the thickness there is, and
//! the efficiency of another thickness is never carried over.

mod assumption;
mod boiler;
mod existing;
mod girth;
mod life;
mod limits;
mod pressure;
mod rate;
mod safety;
mod shell;

pub use assumption::{ASSUMED, Assumed, Assumption, Assumptions, Basis, MAX_ASSUMPTIONS};
pub use boiler::{Boiler, BoilerLine, BoilerPart, MAX_LINES};
pub use existing::{Existing, KnownLength};
pub use girth::girth_pressure_with;
pub use life::Life;
pub(crate) use limits::findings as shell_findings;
pub use limits::least_plate;
pub use pressure::{Allowed, Seam, joint_pressure, joint_pressure_with, pressure_with};
pub(crate) use pressure::{pressure_named, seam_of};
pub use rate::{Governs, Rating, rate, rate_with, test_pressure_with};
pub use safety::{Factor, FactorBasis, factor_with};
pub use shell::{Footing, HoleMaking, Riveting, Service, Shell};
