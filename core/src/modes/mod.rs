//! Every way a joint can fail, enumerated over the one model, lazily and without storage.
//!
//! The joint is cut into a loaded side and a far side. Each plate and each strap may tear at any of its own rows, or
//! stay whole; wherever a rivet still ties loaded plate to a strap on the far side, it fails in its weakest way. All
//! combinations count: straps are cuts of their own, one may tear while the other is sheared off, and a plate may tear
//! together with a strap. The strength of the joint is that of the least cut.
//!
//! - Plate torn at row `i`: the rivets *outside* `i` fail.
//! - Strap (or plate B of a lap) torn at its row `j`: the rivets *inside* `j` fail in that strap's plane.
//! - Nothing torn: all rivets fail.

mod cut;
mod letters;
mod rivets;
mod strengths;

pub use cut::{Class, Cut, Mode, ModeName, Modes};
pub use letters::{LetterName, Lettered, MAX_LETTERS, letters};
pub use rivets::{Fate, RivetFates, rivet_fates};
pub use strengths::{Lens, Strengths, prescribed_gaps};
pub(crate) use strengths::{closest, deducted, prescribed_gap};
