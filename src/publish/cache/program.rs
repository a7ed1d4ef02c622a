//! Which program it is: another one may draw differently.

use super::key;
use std::env;
use std::fs;

/// The program's version and file; None where the system does not tell which file it is: then nothing is remembered.
pub(in crate::publish) fn hash() -> Option<String> {
    let file = env::current_exe().and_then(fs::metadata).ok()?;
    let modified = file.modified().ok()?;
    Some(key::hash(&(env!("CARGO_PKG_VERSION"), file.len(), modified, id(&file))))
}

#[cfg(unix)]
fn id(file: &fs::Metadata) -> (u64, u64, i64, i64) {
    use std::os::unix::fs::MetadataExt;
    (file.dev(), file.ino(), file.ctime(), file.ctime_nsec())
}

#[cfg(not(unix))]
fn id(_file: &fs::Metadata) -> (u64, u64, i64, i64) {
    (0, 0, 0, 0)
}
