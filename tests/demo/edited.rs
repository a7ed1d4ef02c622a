//! The demo's records as texts, with a part of one record put in another's place, and what comes of it.

use crate::fixtures::root;
use fittingcards::audit::{self, Context};
use fittingcards::catalogue::{Catalogue, load};
use fittingcards::diagnostics::Finding;
use fittingcards::facts::{self, CardFacts};
use fittingcards::mixups;
use fittingcards::source::{FilePath, MemoryWorld};
use std::collections::BTreeMap;

/// Files of the demo by their path.
pub(super) type Files = BTreeMap<String, String>;

/// A part of the document of one record, and what stands for it.
pub(super) struct Replaced<'a> {
    pub(super) record: &'a str,
    pub(super) was: &'a str,
    pub(super) is: &'a str,
}

/// What a catalogue comes to.
pub(super) struct Outcome {
    pub(super) catalogue: Catalogue,
    pub(super) cards: Vec<CardFacts>,
    pub(super) findings: Vec<Finding>,
}

/// Reads, checks and audits files.
pub(super) fn outcome(files: &Files) -> Outcome {
    let world = files
        .iter()
        .fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::catalogue(path), text.as_str()));
    let loaded = load(&world).unwrap();
    let mixups = mixups::find(&loaded.catalogue);
    let audited = audit::check(Context { catalogue: &loaded.catalogue, mixups: &mixups });
    let findings = loaded.findings.sorted().into_iter().chain(audited.sorted()).cloned().collect();
    let cards = facts::of_catalogue(&loaded.catalogue, &mixups);
    Outcome { cards, findings, catalogue: loaded.catalogue }
}

impl Outcome {
    /// The card of a fitting or body.
    pub(super) fn card(&self, number: &str) -> &CardFacts {
        self.cards.iter().find(|card| card.number == number).unwrap_or_else(|| panic!("no card {number}"))
    }

    pub(super) fn has(&self, code: &str) -> bool {
        self.findings.iter().any(|finding| finding.code == code)
    }
}

/// Whether a text has a phrase as words of their own.
pub(super) fn says(text: &str, phrase: &str) -> bool {
    let text = text.replace('\u{a0}', " ");
    text.match_indices(phrase).any(|(at, _)| {
        let around = [text[..at].chars().next_back(), text[at + phrase.len()..].chars().next()];
        around.iter().flatten().all(|letter| !letter.is_alphanumeric() && *letter != '.' && *letter != '-')
            || text[at + phrase.len()..].starts_with(". ")
            || &text[at + phrase.len()..] == "."
    })
}

/// The document that a record is stated in; that of the catalogue has no number.
pub(super) fn document<'a>(files: &'a Files, record: &str) -> Option<&'a str> {
    files.values().flat_map(|text| text.split("\n---\n")).find(|document| is_of(document, record))
}

fn is_of(document: &str, record: &str) -> bool {
    if record == "catalogue" {
        return document.contains("\nowner: ");
    }
    document.lines().any(|line| line == format!("number: {record}") || line == format!("id: {record}"))
}

pub(super) fn with(files: &Files, change: &Replaced<'_>) -> Files {
    let changed = |text: &String| {
        let documents = text.split("\n---\n").map(|document| {
            if is_of(document, change.record) {
                document.replace(change.was, change.is)
            } else {
                document.to_owned()
            }
        });
        documents.collect::<Vec<_>>().join("\n---\n")
    };
    files.iter().map(|(path, text)| (path.clone(), changed(text))).collect()
}

pub(super) fn files() -> Files {
    let folder = root().join("content");
    let entries = walkdir::WalkDir::new(&folder).into_iter().map(|entry| entry.unwrap().into_path());
    let records = entries.filter(|path| path.extension().is_some_and(|end| end == "yaml"));
    let read = |path: std::path::PathBuf| {
        let name = path.strip_prefix(&folder).unwrap().to_string_lossy().replace('\\', "/");
        (name, std::fs::read_to_string(path).unwrap())
    };
    records.map(read).collect()
}
