//! Doing a run again whenever what goes in has changed.

use super::options::Globals;
use super::outcome::{Fault, Outcome};
use super::report;
use crate::diagnostics::visible;
use crate::source::{FilePath, Folder, World, WorldError};
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::time::{Duration, Instant};

/// How long to wait between two looks at the folders at least; at most a fifth of the time goes into looking.
const PAUSE: Duration = Duration::from_millis(80);
/// How long nothing may change before a run begins: an editor that saves writes, cuts off and renames.
const REST: Duration = Duration::from_millis(40);
/// Files that are named when they change; more of them are counted.
const NAMED: usize = 5;

/// What a run would read: the hash of each file, and of what it would say is not read; or why there is none. A folder
/// that goes for a moment, and a file that goes between listing and reading it, are changes like others: the run says
/// what is wrong.
type Seen = Result<BTreeMap<FilePath, blake3::Hash>, WorldError>;

/// Runs at once, and again after each change, until the process is interrupted. A run that fails is
/// told and waits for the next change.
pub(super) fn again_and_again(globals: &Globals, run: impl Fn() -> Result<Outcome, Fault>) -> ! {
    let mut seen = seen(&globals.world());
    loop {
        if let Err(fault) = run() {
            report::fault(&fault, globals);
        }
        let now = next(globals, &seen);
        if !globals.quiet {
            report::remark(&visible(&told(&seen, &now, &globals.world())));
        }
        seen = now;
    }
}

/// Waits for a change, and then until nothing changes for a moment.
fn next(globals: &Globals, before: &Seen) -> Seen {
    let look = || seen(&globals.world());
    loop {
        let start = Instant::now();
        let mut now = look();
        if now == *before {
            std::thread::sleep(PAUSE.max(start.elapsed() * 4));
            continue;
        }
        loop {
            std::thread::sleep(REST);
            let later = look();
            if later == now {
                return now;
            }
            now = later;
        }
    }
}

fn seen(world: &dyn World) -> Seen {
    let mut seen = BTreeMap::new();
    for folder in [Folder::Catalogue, Folder::Layouts] {
        let files = world.files(folder)?;
        let hashed = files.into_par_iter().map(|file| {
            let hash = blake3::hash(&world.read(&file)?);
            Ok((file, hash))
        });
        seen.extend(hashed.collect::<Result<Vec<_>, WorldError>>()?);
        for unread in world.unread(folder)? {
            let hash = blake3::hash(format!("{unread:?}").as_bytes());
            seen.insert(unread.file, hash);
        }
    }
    Ok(seen)
}

/// What has changed, in a line.
fn told(before: &Seen, now: &Seen, world: &dyn World) -> String {
    let (Ok(before), Ok(now)) = (before, now) else {
        return match now {
            Err(error) => format!("{error}"),
            Ok(_) => "the folders can be read again".to_owned(),
        };
    };
    let all: BTreeSet<&FilePath> = before.keys().chain(now.keys()).collect();
    let what = |file: &&FilePath| match (before.get(*file), now.get(*file)) {
        (None, _) => "new",
        (_, None) => "gone",
        _ => "changed",
    };
    let changed: Vec<&FilePath> =
        all.into_iter().filter(|file| before.get(*file) != now.get(*file)).collect();
    let mut named: Vec<String> =
        changed.iter().take(NAMED).map(|file| format!("{} {}", world.display(file), what(file))).collect();
    match changed.len().saturating_sub(NAMED) {
        0 => {}
        1 => named.push("1 more file".to_owned()),
        more => named.push(format!("{more} more files")),
    }
    named.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::MemoryWorld;

    fn world() -> MemoryWorld {
        MemoryWorld::new().with(FilePath::catalogue("a.yaml"), "one")
    }

    #[test]
    fn any_change_of_a_name_or_a_byte_is_seen() {
        let (world, same) = (world(), world());
        let text = world.clone().with(FilePath::catalogue("a.yaml"), "two");
        let more = world.clone().with(FilePath::layouts("cards/x.svg"), "");
        assert_eq!(seen(&world), seen(&same));
        assert_ne!(seen(&world), seen(&text));
        assert_ne!(seen(&world), seen(&more));
    }

    #[test]
    fn what_has_changed_is_told_by_name() {
        let changed = MemoryWorld::new()
            .with(FilePath::catalogue("a.yaml"), "two")
            .with(FilePath::layouts("cards/x.xml"), "");
        let between = |one: &MemoryWorld, other: &MemoryWorld| told(&seen(one), &seen(other), &changed);
        assert_eq!(between(&world(), &changed), "content/a.yaml changed, layouts/cards/x.xml new");
        assert_eq!(between(&changed, &world()), "content/a.yaml changed, layouts/cards/x.xml gone");
        let many =
            (1..=7).fold(world(), |world, number| world.with(FilePath::catalogue(&format!("b{number}")), ""));
        assert!(
            between(&world(), &many).ends_with("content/b5 new, 2 more files"),
            "{}",
            between(&world(), &many)
        );
    }
}
