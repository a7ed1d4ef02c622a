//! Geometry of drawings, on shapes rather than pictures.

mod sample;
mod sections;
