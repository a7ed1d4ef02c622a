//! The notes of a catalogue, found by what they are about, by their file and by their headings.

use super::address::{self, Address};
use super::parse::parse;
use super::values;
use crate::catalogue::{Catalogue, Note, NoteAbout};
use crate::diagnostics::KnownNames;
use crate::facts::Values;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::OnceLock;

/// The notes of a catalogue. Each is read for its title and headings once, however many links lead to it.
#[derive(Debug, Clone)]
pub struct Notes<'a> {
    pub(super) catalogue: &'a Catalogue,
    by_record: BTreeMap<&'a str, usize>,
    by_chapter: BTreeMap<&'a str, usize>,
    by_path: BTreeMap<&'a str, usize>,
    /// In the order of the catalogue's notes.
    outlines: Vec<OnceLock<Outline>>,
    known: OnceLock<KnownNames>,
}

/// Title and headings of a note.
#[derive(Debug, Clone)]
struct Outline {
    title: Option<String>,
    ids: BTreeSet<String>,
}

impl<'a> Notes<'a> {
    /// The notes of a catalogue.
    #[must_use]
    pub fn new(catalogue: &'a Catalogue) -> Self {
        let mut notes = Self {
            catalogue,
            by_record: BTreeMap::new(),
            by_chapter: BTreeMap::new(),
            by_path: BTreeMap::new(),
            outlines: catalogue.notes.iter().map(|_| OnceLock::new()).collect(),
            known: OnceLock::new(),
        };
        for (index, note) in catalogue.notes.iter().enumerate() {
            let (list, name) = match &note.about {
                NoteAbout::Record(id) => (&mut notes.by_record, id),
                NoteAbout::Chapter(stem) => (&mut notes.by_chapter, stem),
            };
            list.entry(name).or_insert(index);
            notes.by_path.entry(&note.place.file.path).or_insert(index);
        }
        notes
    }

    /// The note about a record.
    #[must_use]
    pub fn about(&self, record: &str) -> Option<&'a Note> {
        self.by_record.get(record).map(|index| &self.catalogue.notes[*index])
    }

    /// A chapter, by its file name without `.md`.
    #[must_use]
    pub fn chapter(&self, stem: &str) -> Option<&'a Note> {
        self.by_chapter.get(stem).map(|index| &self.catalogue.notes[*index])
    }

    /// The heading that a chapter opens with, by its file name without `.md`.
    #[must_use]
    pub fn title(&self, stem: &str) -> Option<&str> {
        self.by_chapter.get(stem).and_then(|index| self.outline(*index).title.as_deref())
    }

    /// The id, number or chapter that a wrong name was probably meant to be.
    pub(super) fn nearest(&self, name: &str) -> Option<&str> {
        let names = || records(self.catalogue).chain(self.by_chapter.keys().copied());
        self.known.get_or_init(|| KnownNames::new(names())).nearest(name)
    }

    /// The note in a file of this path, or else the chapter of this name.
    pub(super) fn in_file(&self, path: &str, stem: &str) -> Option<&'a Note> {
        let found = [self.by_path.get(path), self.by_chapter.get(stem)];
        found.into_iter().flatten().min().map(|index| &self.catalogue.notes[*index])
    }

    /// Where the page that shows a note has the heading that these words mean. The title of a chapter is its
    /// page's own; a material has its entry alone.
    pub(super) fn heading(&self, note: &Note, page: &Address, words: &str) -> Option<Address> {
        let outline = self.outline(*self.by_path.get(&*note.place.file.path)?);
        let slug = address::slug(words);
        let id = format!("note-{slug}");
        if outline.ids.contains(&id) {
            return Some(if page.is_page() { page.at(id) } else { page.clone() });
        }
        let is_title = outline.title.as_ref().is_some_and(|title| address::slug(title) == slug);
        is_title.then(|| page.clone())
    }

    /// The values that a note may name; `None` where it is about no fitting.
    pub(super) fn values(&self, note: &Note) -> Option<Values> {
        values::of_note(note, self.catalogue)
    }

    fn outline(&self, index: usize) -> &Outline {
        self.outlines[index].get_or_init(|| {
            let note = &self.catalogue.notes[index];
            let parsed = parse(note, self.values(note).as_ref());
            let ids = parsed.headings.into_iter().map(|heading| heading.id).collect();
            Outline { title: parsed.title, ids }
        })
    }
}

/// The ids and numbers of all records that have a page.
fn records(catalogue: &Catalogue) -> impl Iterator<Item = &str> {
    let keys = catalogue.fittings.keys().chain(catalogue.conductors.keys()).chain(catalogue.parts.keys());
    let keys = keys.chain(catalogue.notices.keys()).chain(catalogue.materials.keys());
    keys.map(String::as_str)
}
