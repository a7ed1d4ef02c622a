//! Records that are checked and linked: the domain model.

mod check;
mod conductors;
mod date;
mod fittings;
mod geometry;
mod load;
mod materials;
mod model;
mod names;
mod notes;
mod notices;
mod parts;
mod quantities;
mod settings;
mod shelf;
mod supersession;

pub use crate::colour::Mark;
pub use load::{Loaded, load};
pub use model::*;
