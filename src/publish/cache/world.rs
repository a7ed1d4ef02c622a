//! All that a run reads, in one hash.

use super::key;
use crate::source::{Folder, World, WorldError};
use rayon::prelude::*;

/// The hash of every file, of what is not read, and of the date that the environment gives.
pub(in crate::publish) fn of_world(world: &dyn World) -> Result<String, WorldError> {
    let mut all = vec![key::hash(&world.source_date_epoch())];
    for folder in [Folder::Catalogue, Folder::Layouts] {
        let files = world.files(folder)?;
        let hashes = files.par_iter().map(|file| Ok((file, blake3::hash(&world.read(file)?))));
        let hashes = hashes.collect::<Result<Vec<_>, WorldError>>()?;
        all.push(key::hash(&(hashes, world.unread(folder)?)));
    }
    Ok(key::hash(&all))
}
