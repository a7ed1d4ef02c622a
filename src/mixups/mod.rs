//! Which parts and conductors can be confused, and what a measured conductor can be.

mod adjustable_dimension;
mod case;
mod design_fix;
mod features;
mod find;
mod identify;
mod inside;
mod json;
mod look_alikes;
mod marks;
mod seat;
mod visibility;
mod what_if;
pub mod words;

pub use case::{BodyMixups, Case, Mixups};
pub use design_fix::{DesignFix, Effect, design_fixes_to_json, without_design_fix};
pub use features::{
    Clue, Features, STOP, Scratch, Shape, clues, features, labels, outer_wires, shape, told_apart,
};
pub use find::find;
pub use identify::{Candidate, Identified, Readings, Unanswerable, identify};
pub use inside::{Closed, Inside, inside, inside_to_json};
pub use json::to_json;
pub use look_alikes::{LookAlike, look_alikes};
pub use marks::{mark_limits, marks};
pub use seat::{Own, held, own, own_worn};
pub use what_if::design_fixes;
