//! Drawings in millimetres, from the same geometry as the numbers.

mod drawing;

pub use drawing::{Dimension, Drawing};
