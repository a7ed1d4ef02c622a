//! Files that a command writes one by one.

use super::outcome::Fault;
use std::path::Path;

/// Writes a file, with the folders that lead to it.
pub(super) fn write(path: &Path, bytes: impl AsRef<[u8]>) -> Result<(), Fault> {
    let fault = |error: std::io::Error| Fault::new(format!("{}: {error}", path.display()));
    if let Some(parent) = path.parent() {
        std::fs::create_dir_all(parent).map_err(fault)?;
    }
    std::fs::write(path, bytes).map_err(fault)
}
