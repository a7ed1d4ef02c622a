//! Inputs that are a file: its path in the first line, its text below. So a seed can be read, and written by hand.

use std::path::{Path, PathBuf};

/// The path, which is one of those that are known, else the first of them; and the bytes below it.
pub fn taken<'a>(input: &'a [u8], known: &[&'a str]) -> (&'a str, &'a [u8]) {
    let end = input.iter().position(|byte| *byte == b'\n').unwrap_or(input.len());
    let path = known.iter().find(|path| path.as_bytes() == &input[..end]);
    (path.unwrap_or(&known[0]), input.get(end + 1..).unwrap_or_default())
}

/// A file as an input.
pub fn given(path: &str, bytes: &[u8]) -> Vec<u8> {
    [path.as_bytes(), b"\n", bytes].concat()
}

/// Every file below a folder of the project, with its path below it, sorted.
pub fn below(folder: &str) -> Vec<(String, Vec<u8>)> {
    let folder = root().join(folder);
    let files = walkdir::WalkDir::new(&folder).sort_by_file_name().into_iter().map(Result::unwrap);
    let files = files.filter(|entry| entry.file_type().is_file());
    let path = |path: &Path| path.strip_prefix(&folder).unwrap().to_str().unwrap().replace('\\', "/");
    files.map(|entry| (path(entry.path()), std::fs::read(entry.path()).unwrap())).collect()
}

/// The project's folder, from whichever package this is built in.
pub fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().find(|folder| folder.join("content").is_dir()).unwrap().to_owned()
}
