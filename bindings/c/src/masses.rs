//! What a metre of seam weighs.

use seamwright::shop::strip_masses;
use seamwright::step::Plain;

use crate::border::{self, Slot};
use crate::joint::{sw_joint, sw_materials};
use crate::shop::sw_order;
use crate::status::{answer, sw_error};

/// Masses of one strip of a seam that goes on and on, kg. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_masses {
    /// All rivets as bought.
    pub rivets_kg: f64,
    /// The straps before drilling; nothing in a lap.
    pub straps_kg: f64,
    /// One plate (plate B) over the lap, before drilling; nothing in a butt joint.
    pub overlap_kg: f64,
    /// What is drilled out of all plies.
    pub holes_kg: f64,
    /// What the strip adds to plates that meet edge to edge.
    pub total_kg: f64,
    /// The same for a metre of seam.
    pub kg_per_m: f64,
}

/// The masses of one strip of a seam without ends. The run of the order is not used. Needs row distances, margin and
/// straps.
#[unsafe(no_mangle)]
pub extern "C" fn sw_joint_masses(
    joint: *const sw_joint,
    materials: *const sw_materials,
    order: *const sw_order,
    masses: *mut sw_masses,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (joint, materials) = (border::read(joint, 1)?.joint(1)?, border::record(materials, 2)?.materials());
        let order = border::read(order, 3)?.order(3)?;
        let out = Slot::needed(masses, 4)?;
        let found = strip_masses(Plain, &joint, &materials, &order)?;
        out.put(sw_masses {
            rivets_kg: found.rivets,
            straps_kg: found.straps,
            overlap_kg: found.overlap,
            holes_kg: found.holes,
            total_kg: found.total,
            kg_per_m: found.per_metre,
        });
        Ok(())
    })
}
