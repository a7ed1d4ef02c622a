//! Drawings in millimetres, from the same geometry as the numbers.

mod appearance;
mod assembly;
mod balloon;
mod chip;
mod conductor;
mod dimension;
mod draft;
mod drawing;
mod grips;
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
pub use assembly::{WrongPart, assembly, end_view, end_views, line_up, side_by_side, stages};
pub use conductor::{
    Subject, Wearing, conductor_section, conductor_to_lay_on, section_of, wearing, worn_profiles,
    worn_section,
};
pub use drawing::{Dimension, Drawing};
pub use grips::{
    how_a_cone_grips, how_a_spreading_cone_grips, how_a_wedge_grips, where_stand_out_is_measured,
};
pub use key::key;
pub use number::number;
pub use options::{Detail, Options};
pub use refused::is_refused;

#[cfg(test)]
mod tests;
