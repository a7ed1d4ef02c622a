//! Doing a run again whenever what goes in has changed.

use super::options::Globals;
use super::outcome::{Fault, Outcome};
use super::report;
use crate::source::{Folder, World, WorldError};
use std::time::Duration;

/// How long to wait between two looks at the folders.
const PAUSE: Duration = Duration::from_millis(400);

/// Runs at once, and again after each change, until the process is interrupted. A run that fails is
/// told and waits for the next change.
pub(super) fn again_and_again(globals: &Globals, run: impl Fn() -> Result<Outcome, Fault>) -> ! {
    loop {
        let before = state(&globals.world());
        if let Err(fault) = run() {
            report::fault(&fault, globals);
        }
        while state(&globals.world()) == before {
            std::thread::sleep(PAUSE);
        }
    }
}

/// What a run would read or say that it does not read: the hash of all of it, or why there is none. A folder that goes for a moment,
/// and a file that goes between listing and reading it, are changes like others: the run says what is wrong.
fn state(world: &dyn World) -> Result<blake3::Hash, WorldError> {
    let mut hasher = blake3::Hasher::new();
    for folder in [Folder::Catalogue, Folder::Layouts] {
        for file in world.files(folder)? {
            hasher.update(file.path.as_bytes());
            hasher.update(blake3::hash(&world.read(&file)?).as_bytes());
        }
        for unread in world.unread(folder)? {
            hasher.update(format!("{unread:?}").as_bytes());
        }
    }
    Ok(hasher.finalize())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{FilePath, MemoryWorld};

    #[test]
    fn any_change_of_a_name_or_a_byte_is_seen() {
        let world = MemoryWorld::new().with(FilePath::catalogue("a.yaml"), "one");
        let same = world.clone();
        let text = world.clone().with(FilePath::catalogue("a.yaml"), "two");
        let more = world.clone().with(FilePath::layouts("cards/x.svg"), "");
        assert_eq!(state(&world), state(&same));
        assert_ne!(state(&world), state(&text));
        assert_ne!(state(&world), state(&more));
    }
}
