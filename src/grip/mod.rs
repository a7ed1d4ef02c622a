//! Whether a gripping part holds a conductor: first-principles geometry, no files, no drawings.

mod geometry;
mod outcome;

pub use geometry::{
    BearsOn, Body, Collet, Ferrule, Geometry, RopeGrip, Socket, SpreadingCone, Thimble, Wedge, WedgeBody,
};
pub use outcome::{Interval, Outcome, Verdict};
