//! The plan of all outputs, made side by side, put in place at once.

mod clock;
mod counted;
mod data;
mod disk;
mod made;
mod manifest;
mod options;
mod prepared;
mod put;
mod refused;
mod render;
mod staging;
mod tags;
mod workspace;

pub use data::{card_list, catalogue_json};
pub use manifest::{Manifest, ManifestEntry};
pub use options::{BookletForm, Fault, Progress, RenderOptions, Report, Stage, Strictness, Timings};
pub use put::{Leftovers, PutInPlace};
pub use render::{check, render};
pub use staging::Staging;

#[cfg(test)]
mod tests;
