//! Which parts and conductors can be confused, and what a measured conductor can be.

mod case;
mod features;
mod find;
mod identify;
mod inside;
mod json;
mod knobs;
mod look_alikes;
mod marks;
mod seat;
mod visibility;
mod ways_out;
pub mod words;

pub use case::{BodyMixups, Case, Mixups};
pub use features::{
    Clue, Features, STOP, Scratch, Shape, clues, features, labels, outer_wires, shape, told_apart,
};
pub use find::find;
pub use identify::{Candidate, Identified, Readings, Unanswerable, identify};
pub use inside::{Closed, Inside, inside, inside_to_json};
pub use json::to_json;
pub use knobs::Size;
pub use look_alikes::{LookAlike, look_alikes};
pub use marks::{mark_limits, marks};
pub use seat::{Own, held, own, own_worn};
pub use ways_out::{Effect, WayOut, no_way_out, ways_out, ways_out_to_json};
