//! What is remembered of a run, so that the next one makes only what has changed.
//!
//! The outputs themselves are what is kept: they lie in the output folder. In `.cache/outputs` beside them stands, of
//! each, the hash of everything that it was made from and of its bytes. An output is kept where both still hold; in
//! doubt it is made again. So nothing that stands in that file can make a card wrong, and it is never larger than the
//! list of the outputs.

mod findings;
mod identity;
mod key;
mod memory;
mod program;
mod store;
mod world;

pub(super) use key::{Inputs, hash, hash_json};
pub(super) use memory::{Ended, FONTS, Memory, PROGRAM, Whole};
pub(super) use program::hash as program;
pub(super) use store::is_ours;
pub(super) use world::of_world;

/// The folder in the output.
pub(super) const FOLDER: &str = ".cache";
