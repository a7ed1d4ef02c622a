//! Records that are checked and linked: the domain model.

mod model;

pub use model::*;
