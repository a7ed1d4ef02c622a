//! Which parts and conductors can be confused, and what a measured conductor can be.

mod case;

pub use case::{BodyMixups, Case, Mixups};
