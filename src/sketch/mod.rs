//! Drawings in millimetres, from the same geometry as the numbers.

mod appearance;
mod assembly;
mod balloon;
mod conductor;
mod dimension;
mod draft;
mod drawing;
mod hatch;
mod key;
mod letters;
mod number;
mod options;
mod outline;
mod plane;
mod refused;
mod scale;
mod scene;
mod tones;
mod write;

pub use appearance::dark_rules;
pub use assembly::{assembly, end_views, line_up, stages, wrong_part};
pub use conductor::{Subject, conductor_section, conductor_true_size, section_of, worn_section};
pub use drawing::{Dimension, Drawing};
pub use key::key;
pub use number::number;
pub use options::{Detail, Options};
pub use refused::is_refused;

#[cfg(test)]
mod tests;
