//! Records that are checked and linked: the domain model.

mod model;

pub use crate::colour::Mark;
pub use model::*;
