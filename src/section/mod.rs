//! Geometry and properties of conductors: what is metal, how wide, how heavy, how strong.

mod citation;
mod construction;
mod material;
mod result;

pub use citation::Citation;
pub use construction::{Composite, Construction, Grooved, Group, Rope, RopeCore, Strands};
pub use material::{Magnetic, Material, MaterialGroup, Strength, StrengthStep};
pub use result::{Layer, LayerRole, Section};
