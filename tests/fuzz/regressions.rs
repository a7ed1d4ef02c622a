//! Inputs that once failed: `tests/regressions/NNNN-what/` holds them, each named after its target.

use crate::targets::Target;
use crate::targets::file;

/// Those of a target.
pub fn of(target: &Target) -> Vec<Vec<u8>> {
    let files = file::below("tests/regressions").into_iter();
    let own = files.filter(|(path, _)| path.split('/').nth(1).is_some_and(|name| stem(name) == target.name));
    own.map(|(_, bytes)| bytes).collect()
}

fn stem(name: &str) -> &str {
    name.split('.').next().unwrap_or(name)
}
