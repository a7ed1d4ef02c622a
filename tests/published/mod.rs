//! What is computed against what others have published.

mod colour;
mod contact_wires;
mod geometry;
mod materials;
mod own_rules;
mod ropes;
mod sections;
mod table;
