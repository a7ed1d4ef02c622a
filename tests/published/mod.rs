//! What is computed against what others have published.

mod colour;
mod contact_wires;
mod ropes;
mod sections;
mod table;
