//! The lists by which a run knows the files of earlier runs from those of others.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The list of what a run wrote, in the output folder. Where it is missing, the output is being replaced.
pub(super) const MANIFEST: &str = "manifest.json";

/// Stands in the output while its files are replaced one by one: all that is there or may come.
pub(super) const BEING_REPLACED: &str = "manifest.being-replaced.json";

/// Every file written, the manifest itself excepted, in the order of their paths.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Manifest {
    /// The files.
    pub files: Vec<ManifestEntry>,
}

/// One file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ManifestEntry {
    /// Path below the output folder, with `/` between its parts.
    pub path: String,
    /// Size in bytes.
    pub size: u64,
    /// BLAKE3 of the bytes, in hexadecimal.
    pub blake3: String,
}

/// What is known of one file's bytes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Fingerprint {
    size: u64,
    blake3: String,
}

/// Files by path.
pub(super) type Files = BTreeMap<String, Fingerprint>;

impl Fingerprint {
    pub(super) fn size(&self) -> u64 {
        self.size
    }

    pub(super) fn of(bytes: &[u8]) -> Self {
        Self::of_pieces(&[bytes])
    }

    /// Of bytes in pieces, one behind the other.
    pub(super) fn of_pieces(pieces: &[impl AsRef<[u8]>]) -> Self {
        let (mut size, mut hasher) = (0, blake3::Hasher::new());
        for piece in pieces {
            size += piece.as_ref().len() as u64;
            hasher.update(piece.as_ref());
        }
        Self { size, blake3: hasher.finalize().to_hex().to_string() }
    }
}

/// A list's text.
pub(super) fn to_text(files: &Files) -> String {
    let entry = |(path, print): (&String, &Fingerprint)| ManifestEntry {
        path: path.clone(),
        size: print.size,
        blake3: print.blake3.clone(),
    };
    let manifest = Manifest { files: files.iter().map(entry).collect() };
    serde_json::to_string_pretty(&manifest).unwrap_or_default() + "\n"
}

/// The files of a list; None where the text isn't one. Anybody may have written it: paths that lead out of
/// the folder, and the lists themselves, are left out.
pub(super) fn from_text(text: &[u8]) -> Option<Files> {
    let manifest: Manifest = serde_json::from_slice(text).ok()?;
    let files = manifest.files.into_iter().filter(|entry| stays_inside(&entry.path));
    Some(files.map(|entry| (entry.path, Fingerprint { size: entry.size, blake3: entry.blake3 })).collect())
}

/// Whether a path names something below the folder that it is taken from, on every system.
fn stays_inside(path: &str) -> bool {
    !path.contains(['\\', ':', '\0'])
        && path != MANIFEST
        && path != BEING_REPLACED
        && path.split('/').all(|part| !part.is_empty() && part != "." && part != "..")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_again() {
        let files = Files::from([("cards/a.svg".to_owned(), Fingerprint::of(b"abc"))]);
        assert_eq!(from_text(to_text(&files).as_bytes()), Some(files));
    }

    #[test]
    fn the_hash_is_blake3() {
        // Published test vector of BLAKE3 for empty input.
        let expected = "af1349b9f5f9a1a6a0404dea36dcc9499bcb25c9adc112b7cc9a93cae41f3262";
        assert_eq!(Fingerprint::of(b"").blake3, expected);
    }

    #[test]
    fn paths_that_lead_outside_are_not_believed() {
        let paths = ["../x", "/etc/x", "C:x", "a/./b", "a/b", "a//b", "..", "", "manifest.json"];
        let entries = paths.map(|path| format!(r#"{{"path":"{path}","size":1,"blake3":""}}"#));
        let files = from_text(format!(r#"{{"files":[{}]}}"#, entries.join(",")).as_bytes()).unwrap();
        assert_eq!(files.into_keys().collect::<Vec<_>>(), ["a/b"]);
    }

    #[test]
    fn other_files_of_that_name_are_no_manifest() {
        assert_eq!(from_text(br#"{"name":"an app","icons":[]}"#), None);
    }
}
