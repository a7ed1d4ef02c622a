//! Editions: what is issued, what has changed since, and who is told. What must come out follows from the definitions:
//! a card is listed exactly where its printed texts differ, and the check code is that of the texts on the register.

mod chance;
mod changes;
mod days;
mod demo;
mod later;
mod on_the_register;
mod pages;
mod refusals;
mod whole;
mod year;

use fittingcards::catalogue::{self, Catalogue};
use fittingcards::diagnostics::Findings;
use fittingcards::facts::{self, CardFacts};
use fittingcards::mixups;
use fittingcards::register::{
    Asked, Comparison, Refusal, Register, Reissue, compare, edition_text, refusals, unexplained,
};
use fittingcards::source::{FilePath, MemoryWorld};
use std::collections::{BTreeMap, BTreeSet};

/// A catalogue on a desk: the demo's records, without its register and receipts, to be edited and issued.
#[derive(Clone)]
pub struct Desk {
    pub files: BTreeMap<String, String>,
}

/// The present records, read.
pub struct Read {
    pub catalogue: Catalogue,
    pub findings: Findings,
    pub facts: Vec<CardFacts>,
    pub register: Register,
}

impl Desk {
    pub fn demo() -> Self {
        let root = crate::fixtures::root().join("content");
        let files = walkdir::WalkDir::new(&root).into_iter().map(Result::unwrap);
        let files = files.filter(|entry| entry.file_type().is_file()).map(|entry| {
            let path = entry.path().strip_prefix(&root).unwrap().to_string_lossy().replace('\\', "/");
            (path, entry.into_path())
        });
        let texts = files.filter(|(path, _)| !path.starts_with("register/"));
        let mut desk = Self {
            files: texts.map(|(path, file)| (path, std::fs::read_to_string(file).unwrap())).collect(),
        };
        desk.drop_receipts();
        desk
    }

    /// Without a register there is nothing that could have come back.
    fn drop_receipts(&mut self) {
        let holders = self.files.get_mut("holders/holders.yaml").unwrap();
        let kept = holders.lines().filter(|line| *line != "receipts:" && !line.starts_with("  - { card:"));
        *holders = kept.map(|line| format!("{line}\n")).collect();
    }

    /// The demo with edition 1 on its register.
    pub fn issued() -> Self {
        let mut desk = Self::demo();
        desk.issue("1", "2026-11-25", "");
        desk
    }

    /// Puts another text in the place of one; every place where it stands.
    pub fn edit(&mut self, path: &str, was: &str, is: &str) -> &mut Self {
        let text = self.files.get_mut(path).unwrap_or_else(|| panic!("there is no {path}"));
        assert!(text.contains(was), "{path} has no `{was}`");
        *text = text.replace(was, is);
        self
    }

    /// The same, of one record of a file.
    pub fn edit_record(&mut self, path: &str, number: &str, was: &str, is: &str) -> &mut Self {
        let text = self.files.get_mut(path).unwrap_or_else(|| panic!("there is no {path}"));
        let mut records: Vec<String> = text.split("\n---\n").map(str::to_owned).collect();
        let own = records.iter_mut().find(|record| {
            record.lines().any(|line| line == format!("number: {number}") || line == format!("id: {number}"))
        });
        let own = own.unwrap_or_else(|| panic!("{path} has no {number}"));
        assert!(own.contains(was), "{number} has no `{was}`");
        *own = own.replace(was, is);
        *text = records.join("\n---\n");
        self
    }

    pub fn world(&self) -> MemoryWorld {
        let files = self.files.iter();
        files.fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::catalogue(path), text))
    }

    pub fn read(&self) -> Read {
        let loaded = catalogue::load(&self.world()).unwrap();
        let facts = facts::of_catalogue(&loaded.catalogue, &mixups::find(&loaded.catalogue));
        Read {
            register: Register::of(&loaded.catalogue),
            catalogue: loaded.catalogue,
            findings: loaded.findings,
            facts,
        }
    }

    /// The newest edition against the present.
    pub fn compare(&self) -> Comparison {
        let read = self.read();
        assert!(!read.findings.has_errors(), "{:?}", read.findings.sorted());
        let present = read.register.next(&read.catalogue, &read.facts, "", Reissue::default());
        let newest = read.register.editions().len().checked_sub(1);
        compare(&read.register, &read.catalogue, (newest, None), (&present, ""))
    }

    /// The numbers of all cards of which something has changed.
    pub fn listed(&self) -> BTreeSet<String> {
        self.compare().changed().map(|card| card.number.clone()).collect()
    }

    pub fn issue(&mut self, edition: &str, date: &str, because: &str) -> &mut Self {
        self.issue_as(&asked(edition, date, because)).unwrap();
        self
    }

    /// Issues what is asked for, or says why not.
    pub fn issue_as(&mut self, asked: &Asked) -> Result<(), (Vec<Refusal>, Findings)> {
        let Read { catalogue, facts, register, .. } = self.read();
        let reissue = Reissue { numbers: &asked.reissue, because: &asked.because };
        let next = register.next(&catalogue, &facts, &asked.edition, reissue);
        let newest = register.editions().len().checked_sub(1);
        let comparison = compare(&register, &catalogue, (newest, None), (&next, &asked.because));
        let refused = refusals(asked, &register, &catalogue, facts.iter());
        let unexplained = unexplained(&comparison, &catalogue);
        if !refused.is_empty() || unexplained.has_errors() {
            return Err((refused, unexplained));
        }
        let text = edition_text(&register, &catalogue, &next, asked).unwrap();
        self.files.insert(format!("register/{}.yaml", asked.edition), text);
        Ok(())
    }
}

pub fn asked(edition: &str, date: &str, because: &str) -> Asked {
    Asked {
        edition: edition.to_owned(),
        date: date.parse().unwrap(),
        checked_by: "A. Reed".to_owned(),
        approved_by: "B. Holm".to_owned(),
        reissue: Vec::new(),
        because: because.to_owned(),
    }
}

/// Every printed text of every card, as other programs get it.
pub fn printed(desk: &Desk) -> BTreeMap<String, Vec<(String, String)>> {
    let cards = desk.read().facts;
    let texts = |card: &CardFacts| {
        card.printed().into_iter().map(|printed| (printed.name, printed.text)).collect::<Vec<_>>()
    };
    cards.iter().map(|card| (card.number.clone(), texts(card))).collect()
}
