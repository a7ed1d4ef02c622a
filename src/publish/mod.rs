//! The plan of all outputs, made side by side, put in place at once.

mod data;
mod disk;
mod manifest;
mod put;
mod staging;
mod workspace;

pub use data::{card_list, catalogue_json};
pub use manifest::{Manifest, ManifestEntry};
pub use staging::{Leftovers, PutInPlace, Staging};

#[cfg(test)]
mod tests;
