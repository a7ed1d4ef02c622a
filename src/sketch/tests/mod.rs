//! Geometry of drawings, on shapes rather than pictures.

mod assemblies;
mod chance;
mod checks;
mod every_format;
mod lengths;
mod sample;
mod sections;
mod seen;
mod wrong_parts;
