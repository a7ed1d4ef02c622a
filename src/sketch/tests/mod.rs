//! Geometry of drawings, on shapes rather than pictures.

mod assemblies;
mod chance;
mod checks;
mod sample;
mod sections;
mod wrong_parts;
