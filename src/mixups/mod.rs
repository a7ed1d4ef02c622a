//! Which parts and conductors can be confused, and what a measured conductor can be.

mod case;
mod find;
mod json;
mod marks;
mod seat;
mod visibility;
pub mod words;

pub use case::{BodyMixups, Case, Mixups};
pub use find::find;
pub use json::to_json;
pub use marks::{mark_limits, marks};
pub use seat::{Own, held, own};
