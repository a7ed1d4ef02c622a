//! Whether a gripping part holds a conductor: first-principles geometry, no files, no drawings.

mod bears_on;
mod bolt;
mod bore;
mod closure;
mod collet;
mod compare;
mod depth;
mod geometry;
mod held_conductor;
mod holding;
mod inner_wires;
mod judge;
mod measurement;
mod outcome;
mod pressed;
mod rope;
mod rope_grips;
mod self_holding;
mod slits;
mod spreading_cone;
#[cfg(test)]
mod tests;
mod wedge;

pub use bears_on::BearsOn;
pub use bolt::Thread;
pub use bore::Bore;
pub use collet::{collet, collet_closure};
pub use geometry::{
    Body, Collet, Ferrule, Geometry, RopeGrip, Socket, SpreadingCone, Thimble, Wedge, WedgeBody, measurement,
};
pub use held_conductor::{GripLimits, HeldConductor, HeldConstruction};
pub use holding::{
    NUT_FACTOR, Termination, Weakest, holding_percent, nut_factor, termination_load, weakest_link,
    working_factor,
};
pub use inner_wires::inner_wires;
pub use judge::{judge, possible_outcomes};
pub use measurement::{Adjustment, Listed, Measured, Measurement};
pub use outcome::{Outcome, Verdict};
pub use pressed::{PRESSED_CLEARANCE, ferrule, sleeve};
pub use rope::{THIMBLE_GROOVE, rope_grip, thimble};
pub use rope_grips::{RopeGrips, grip_spacing, rope_grips};
pub use self_holding::Friction;
pub use slits::Slits;
pub use spreading_cone::{small_end_diameter, spreading_cone};
pub use wedge::{bearing_size, wedge};
