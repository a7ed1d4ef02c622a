//! Geometry and properties of conductors: what is metal, how wide, how heavy, how strong.

mod citation;
mod compute;
mod construction;
mod error;
mod increments;
mod layers;
mod layout;
mod material;
pub mod materials;
mod outline;
mod profile;
mod properties;
mod result;
mod rope;
mod rope_factors;
mod rope_layout;
pub mod stated;
mod strand;
mod stranded;
mod tolerance;
mod wear_table;
mod wires;
mod worn;

pub use citation::Citation;
pub use compute::compute;
pub use construction::{Composite, Construction, Grooved, Group, Rope, RopeCore, Strands};
pub use error::SectionError;
pub use layout::{Layout, Region, RegionKind, Wire};
pub use material::{Magnetic, Material, MaterialGroup, Strength, StrengthStep};
pub use outline::{Direction, Point, Segment};
pub use profile::{Groove, Profile, profile, round_profile};
pub use result::{Layer, LayerRole, Section};
pub use tolerance::with_wire_tolerance;
pub use wear_table::{WearMarks, WearRow, WearStage, WearTable, wear_table};
pub use wires::wires;
pub use worn::{Tilt, Worn, height_at_flat_width, height_at_loss, tilt, worn};
