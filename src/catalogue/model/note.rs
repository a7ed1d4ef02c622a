//! Markdown and fonts of a catalogue.

use crate::source::Place;
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
