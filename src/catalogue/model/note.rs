//! Files of a catalogue that are no records: Markdown, fonts, lists of installed fittings.

use crate::source::{FilePath, Place};
use std::sync::Arc;

/// Markdown as written.
#[derive(Debug, Clone)]
pub struct Note {
    /// What it is about.
    pub about: NoteAbout,
    /// The text.
    pub markdown: Arc<str>,
    /// Where it stands.
    pub place: Place,
}

/// What a note is about.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum NoteAbout {
    /// The record with this id or number.
    Record(String),
    /// A chapter of the booklet: file name without `.md`, in order.
    Chapter(String),
}

/// A font file of the catalogue.
#[derive(Debug, Clone)]
pub struct FontFile {
    /// The bytes.
    pub bytes: Arc<[u8]>,
    /// Where it stands.
    pub place: Place,
}

/// A list of installed fittings, as it lies on the disk.
#[derive(Clone)]
pub struct InstalledFile {
    /// The file.
    pub file: FilePath,
    /// The bytes.
    pub bytes: Arc<[u8]>,
}

impl std::fmt::Debug for InstalledFile {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(out, "InstalledFile({:?}, {} bytes)", self.file.path, self.bytes.len())
    }
}
