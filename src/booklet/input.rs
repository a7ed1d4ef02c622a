//! What a booklet is made from, what belongs together in it, and how its links are written.

use super::data_address;
use super::entry::Entry;
use super::uses::Uses;
use crate::catalogue::{Catalogue, Mark, NoteAbout, Part, RecordHashes, Role};
use crate::facts::{CardFacts, Content};
use crate::layouts::Layouts;
use crate::mixups::{self, LookAlike, Mixups};
use crate::notes::Notes;
use crate::notes::address::{Address, Form};
use crate::register::{self, Comparison, IssuedCard, Register};
use crate::sketch::Options;
use crate::units::Numerals;
use serde_json::Value;
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

/// What the booklet is made from.
#[derive(Debug, Clone, Copy)]
pub struct Input<'a> {
    /// The records.
    pub catalogue: &'a Catalogue,
    /// What can be confused.
    pub mixups: &'a Mixups,
    /// What each card prints, by the number of its fitting or body.
    pub facts: &'a BTreeMap<String, CardFacts>,
    /// The editions.
    pub register: &'a Register,
    /// What each edition changed, and what waits to be issued.
    pub history: &'a [Comparison],
    /// The layouts of the folder `booklet`.
    pub layouts: &'a Layouts,
    /// "Draft, not issued" or the like; empty where the edition stands on the register as it is.
    pub state: &'a str,
    /// Issue and check code in words, by card number; a card that is not here is a draft.
    pub issues: &'a BTreeMap<String, String>,
    /// The fonts that drawings are lettered with, and their type size; each drawing takes its own room.
    pub drawing: Options<'a>,
    /// File names of the sheets of cards, in order.
    pub sheets: &'a [String],
    /// The file name of the sheets that each card is on, by its number.
    pub sheet_of: &'a BTreeMap<String, String>,
    /// File names of the sheets of kit tags, in order.
    pub tag_sheets: &'a [String],
}

/// A booklet whose pages can be made one by one, in any order, so that a large one need not be held whole.
#[derive(Debug, Clone)]
pub struct Booklet<'a> {
    pub(super) input: Input<'a>,
    pub(super) notes: Notes<'a>,
    pub(super) uses: Uses,
    pub(super) numerals: Numerals,
    pub(super) look_alikes: Vec<LookAlike>,
    /// Every card that was ever issued.
    pub(super) issued_cards: Vec<IssuedCard>,
    marks: BTreeMap<&'a str, &'a Mark>,
    /// Whether closed fittings are looked up body by body; known once it was asked.
    pub(super) by_body: OnceLock<bool>,
    /// All records that have a number, put together once they were asked for.
    pub(super) numbered: Arc<OnceLock<Vec<Entry>>>,
    /// The lines of all numbers and of all stamps, put together once they were asked for.
    pub(super) lines: Arc<OnceLock<[Vec<Value>; 2]>>,
    /// Where the hash of what drawings are made from stands in their place: those of the records.
    pub(super) outlines: Option<&'a RecordHashes>,
    /// The hash of what all pages carry, which stands in its place in outlines; known once it was asked for.
    pub(super) frame: OnceLock<String>,
    /// Faces as SVG by their file name, where pages hold them; else they are files beside the booklet.
    faces: Option<&'a BTreeMap<String, String>>,
}

impl<'a> Booklet<'a> {
    /// A booklet of a file for each page. Looks up what belongs together.
    #[must_use]
    pub fn new(input: Input<'a>) -> Self {
        let numerals = Numerals::new(input.catalogue.settings.decimal_mark);
        Self {
            issued_cards: register::issued_cards(input.register, input.catalogue, input.facts),
            input,
            notes: Notes::new(input.catalogue),
            uses: Uses::of(input.catalogue, input.mixups),
            numerals,
            look_alikes: mixups::look_alikes(input.catalogue),
            marks: mixups::marks(input.catalogue),
            by_body: OnceLock::new(),
            numbered: Arc::default(),
            lines: Arc::default(),
            outlines: None,
            frame: OnceLock::new(),
            faces: None,
        }
    }

    /// The same booklet with no drawing in its pages, and in their place what they would be drawn from, records as their
    /// hashes: to know whether a page has changed, without drawing it.
    #[must_use]
    pub fn in_outline(self, hashes: &'a RecordHashes) -> Self {
        Self { outlines: Some(hashes), ..self }
    }

    /// The same booklet with its pages and these faces all in one file.
    pub(super) fn in_one_file(self, faces: &'a BTreeMap<String, String>) -> Self {
        Self { faces: Some(faces), ..self }
    }

    /// How it is handed on.
    pub(super) fn form(&self) -> Form {
        if self.faces.is_some() { Form::SingleFile } else { Form::Folder }
    }

    /// What a link to a page or to a place on one holds.
    pub(super) fn link(&self, to: &Address) -> String {
        self.form().link(to)
    }

    /// What a link to a file beside the booklet's folder holds; nothing lies beside a single file.
    pub(super) fn link_to_file(&self, folder: &str, name: &str) -> Option<String> {
        self.faces.is_none().then(|| format!("../{folder}/{name}"))
    }

    /// Where a page takes a face from, by its file name.
    pub(super) fn face(&self, name: &str) -> String {
        match self.faces {
            Some(faces) => data_address::of_svg(faces.get(name).map_or("", String::as_str)),
            None => format!("../cards/{name}"),
        }
    }

    /// The mark of a gripping part: its own, else that of the fittings it is right for.
    pub(super) fn mark_of(&self, part: &Part) -> Option<&'a Mark> {
        self.marks.get(part.number.as_str()).copied()
    }

    /// The chapters' file names without `.md`, in order.
    pub(super) fn chapters(&self) -> impl Iterator<Item = &'a str> {
        self.input.catalogue.notes.iter().filter_map(|note| match &note.about {
            NoteAbout::Chapter(stem) => Some(stem.as_str()),
            NoteAbout::Record(_) => None,
        })
    }

    /// The bodies that several fittings share, each with a page of its own, in the order of their numbers.
    pub(super) fn shared_bodies(&self) -> impl Iterator<Item = &'a Arc<Part>> {
        self.input.catalogue.parts.values().filter(|part| self.is_shared(part))
    }

    /// The body of this number, if several fittings share it.
    pub(super) fn shared_body(&self, number: &str) -> Option<&'a Arc<Part>> {
        self.input.catalogue.parts.get(number).filter(|part| self.is_shared(part))
    }

    fn is_shared(&self, part: &Part) -> bool {
        part.role == Role::Body && self.uses.of_part(&part.number).len() > 1
    }

    /// Whether a shared body has a card of its own: where a part inside decides.
    pub(super) fn has_card(&self, body: &Part) -> bool {
        let card = self.input.facts.get(&body.number);
        card.is_some_and(|card| matches!(card.content, Content::Body(_)))
    }
}
