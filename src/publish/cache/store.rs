//! The file in the output folder that holds what is remembered.

use super::FOLDER;
use super::findings::Remembered;
use super::identity::Identity;
use super::key::Inputs;
use crate::publish::disk;
use crate::publish::manifest::Fingerprint;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, FileType};
use std::io;
use std::path::Path;

const FILE: &str = "outputs";
const DRAFT: &str = "outputs.new";
/// Stands before the checksum in the first line; the number counts forms of the file.
const HEAD: &str = "fittingcards outputs 2 ";

/// What is remembered. In the file the outputs and the files, of which there are many, stand on lines of their own: they are
/// read side by side, and the outputs are known sooner than the files.
#[derive(Debug, Clone, Default)]
pub(super) struct Stored {
    /// What all outputs of a kind are made from.
    pub common: Inputs,
    /// The outputs by what they are called.
    pub outputs: BTreeMap<String, Output>,
    /// Every file of the output by its path.
    pub files: BTreeMap<String, StoredFile>,
    /// The run as a whole.
    pub whole: Option<StoredRun>,
}

/// What is written beside the outputs.
#[derive(Debug)]
pub(super) struct Rest {
    pub common: Inputs,
    pub files: BTreeMap<String, StoredFile>,
    pub whole: Option<StoredRun>,
}

/// An output that nothing was found in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Output {
    /// What it alone is made from.
    pub inputs: Inputs,
    /// The paths of its files.
    pub files: Vec<String>,
}

/// A file of the output.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct StoredFile {
    pub print: Fingerprint,
    pub identity: Option<Identity>,
}

/// A run that came to its end.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub(super) struct StoredRun {
    /// The hash of all that was read and asked for.
    pub key: String,
    pub findings: Vec<Remembered>,
    pub cards: usize,
    pub written: usize,
    pub bytes: u64,
}

/// Lines of what is remembered.
const PARTS: usize = 3;

/// What is remembered in an output folder, and when that was written. None where there is no such file, or it is not
/// whole, of another form, or somebody else's.
pub(super) fn read(output: &Path) -> Option<(Stored, Option<Identity>)> {
    let folder = output.join(FOLDER);
    let file = folder.join(FILE);
    let bytes = disk::is(&folder, FileType::is_dir).then(|| disk::read(&file))??;
    let end = bytes.iter().position(|&byte| byte == b'\n')?;
    let (head, rest) = (&bytes[..end], &bytes[end + 1..]);
    let checksum = std::str::from_utf8(head).ok()?.strip_prefix(HEAD)?;
    let stored = (checksum == blake3::hash(rest).to_hex().as_str()).then(|| from_lines(rest))??;
    Some((stored, Identity::of(&file)))
}

fn from_lines(lines: &[u8]) -> Option<Stored> {
    let [outputs, files, rest]: [&[u8]; PARTS] =
        lines.splitn(PARTS, |&byte| byte == b'\n').collect::<Vec<_>>().try_into().ok()?;
    let (outputs, (files, rest)) = rayon::join(
        || serde_json::from_slice(outputs).ok(),
        || (serde_json::from_slice(files).ok(), serde_json::from_slice(rest).ok()),
    );
    let (common, whole) = rest?;
    Some(Stored { common, outputs: outputs?, files: files?, whole })
}

/// The line of the outputs.
pub(super) fn line_of(outputs: &BTreeMap<String, Output>) -> serde_json::Result<Vec<u8>> {
    serde_json::to_vec(outputs)
}

/// Writes what is remembered, with the outputs as their line; what can't be written is not remembered, and nothing else
/// comes of that.
pub(super) fn write(output: &Path, outputs: Vec<u8>, rest: &Rest) -> io::Result<()> {
    let folder = output.join(FOLDER);
    if !disk::exists(&folder) {
        fs::create_dir(&folder)?;
    }
    if !is_ours(&folder) {
        return Ok(());
    }
    let Rest { common, files, whole } = rest;
    let lines: [Vec<u8>; PARTS] =
        [outputs, serde_json::to_vec(files)?, serde_json::to_vec(&(common, whole))?];
    let lines = lines.join(&b'\n');
    let mut bytes = format!("{HEAD}{}\n", blake3::hash(&lines).to_hex()).into_bytes();
    bytes.extend(lines);
    let draft = folder.join(DRAFT);
    fs::write(&draft, bytes).and_then(|()| fs::rename(&draft, folder.join(FILE)))
}

/// Whether a folder holds what is remembered, and nothing else.
pub(in crate::publish) fn is_ours(folder: &Path) -> bool {
    let ours = |(name, kind): &(String, FileType)| kind.is_file() && [FILE, DRAFT].contains(&&**name);
    disk::is(folder, FileType::is_dir)
        && disk::entries(folder, &BTreeSet::new()).is_ok_and(|entries| entries.iter().all(ours))
}
