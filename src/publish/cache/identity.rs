//! Which file it is and when it was last touched: as long as that stays, so do its bytes.

use serde::{Deserialize, Serialize};
use std::fs::Metadata;
use std::path::Path;

/// A file as the system knows it: its number, size and times. Nobody can write to a file without changing the last time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Identity([u64; 6]);

impl Identity {
    /// None where there is no such file, or the system does not tell enough of it.
    pub(super) fn of(path: &Path) -> Option<Self> {
        std::fs::symlink_metadata(path).ok().filter(Metadata::is_file).and_then(|file| of(&file))
    }

    /// Whether it was last touched long enough before another file for a later change to have another time: clocks of
    /// disks tick a few thousandths of a second apart.
    pub(super) fn is_older_than(&self, other: &Self) -> bool {
        let [.., seconds, nanoseconds] = self.0;
        let [.., later, later_nanoseconds] = other.0;
        let whole =
            |seconds: u64, nanoseconds: u64| u128::from(seconds) * 1_000_000_000 + u128::from(nanoseconds);
        // Where no time has a part of a second, the disk counts whole ones.
        nanoseconds != 0 && whole(seconds, nanoseconds) + TICK < whole(later, later_nanoseconds)
    }
}

/// In nanoseconds.
const TICK: u128 = 50_000_000;

#[cfg(unix)]
fn of(file: &Metadata) -> Option<Identity> {
    use std::os::unix::fs::MetadataExt;
    let whole = |time: i64| u64::try_from(time).unwrap_or_default();
    let modified = whole(file.mtime()).rotate_left(32) ^ whole(file.mtime_nsec());
    let changed = [whole(file.ctime()), whole(file.ctime_nsec())];
    Some(Identity([file.dev(), file.ino(), file.size(), modified, changed[0], changed[1]]))
}

/// Elsewhere a file is read to know it.
#[cfg(not(unix))]
fn of(_file: &Metadata) -> Option<Identity> {
    None
}
