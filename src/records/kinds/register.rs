//! An edition as `issue` writes it: a heading, who holds copies, a line a card, a line a printed text, a seal.
//!
//! The file is YAML. It is read line by line, each value as JSON, which YAML takes in: a register of many editions
//! has hundreds of thousands of lines, and whatever is not as the program writes it is an edit to be told of.

use crate::diagnostics::Finding;
use crate::records::words::{Grade, Status};
use crate::source::{FilePath, Place};
use jiff::civil::Date;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::collections::BTreeMap;

/// An edition as written.
#[derive(Debug, Clone)]
pub struct EditionRecord {
    /// Its file.
    pub file: FilePath,
    /// Its name.
    pub edition: String,
    /// Its date.
    pub date: Date,
    /// Who checked it.
    pub checked_by: String,
    /// Who approved it.
    pub approved_by: String,
    /// Why cards were issued that no notice explains; empty where nothing is said.
    pub because: String,
    /// The edition before it; none before the first.
    pub after: Option<AfterRecord>,
    /// Notices that cards cite since then.
    pub notices: Vec<String>,
    /// Who held copies.
    pub holders: Vec<HolderThenRecord>,
    /// Every card, in the order of their numbers.
    pub cards: Vec<CardIssueRecord>,
    /// What those cards print that have their issue from this edition.
    pub prints: Vec<PrintsRecord>,
    /// The BLAKE3 hash of the whole file, as the next edition holds it.
    pub hash: String,
    /// Whether the file's own seal fits what stands above it.
    pub sealed: bool,
}

/// The edition before another, and the hash of its file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AfterRecord {
    /// Its name.
    pub edition: String,
    /// BLAKE3 of its file.
    pub blake3: String,
}

/// A holder at the time of an edition.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HolderThenRecord {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Copies by card; `*` for every other card.
    pub copies: BTreeMap<String, u32>,
}

/// The line of a card in an edition.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CardIssueRecord {
    /// Its number.
    pub number: String,
    /// Its issue.
    pub issue: u32,
    /// The edition that it has this issue from.
    pub since: String,
    /// Whether it may be used.
    #[serde(serialize_with = "write_status", deserialize_with = "read_status")]
    pub status: Status,
    /// The fitting that replaces it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub superseded_by: Option<String>,
    /// The check code of what it prints.
    pub check_code: String,
}

/// What a card prints, in order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrintsRecord {
    /// The card's number.
    pub number: String,
    /// Its texts.
    pub texts: Vec<IssuedTextRecord>,
}

/// A printed text: its grade, its name, the text, and the parts and fittings that it speaks of.
pub type IssuedTextRecord = (GradeWord, String, String, Vec<String>);

/// A grade, by its word.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GradeWord(pub Grade);

impl Serialize for GradeWord {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.0.word())
    }
}

impl<'de> Deserialize<'de> for GradeWord {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let word = <&str>::deserialize(deserializer)?;
        let grade = Grade::ALL.iter().find(|grade| grade.word() == word);
        grade.copied().map(Self).ok_or_else(|| serde::de::Error::custom("no grade"))
    }
}

// The signature is serde's.
#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands over a reference")]
fn write_status<S: Serializer>(status: &Status, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(status.word())
}

fn read_status<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Status, D::Error> {
    let word = <&str>::deserialize(deserializer)?;
    let status = Status::ALL.iter().find(|status| status.word() == word);
    status.copied().ok_or_else(|| serde::de::Error::custom("no status"))
}

/// What stands before the hash in the last line.
const SEAL: &str = "blake3: ";

/// A text with its seal below: the hash of all that stands above it.
#[must_use]
pub fn sealed(text: &str) -> String {
    format!("{text}{SEAL}\"{}\"\n", blake3::hash(text.as_bytes()).to_hex())
}

/// Reads an edition.
///
/// # Errors
/// `edition-unreadable`, at the first line that `issue` would not have written.
pub fn read_edition(file: &FilePath, text: &str) -> Result<EditionRecord, Box<Finding>> {
    // Some systems for keeping versions change how lines end; that edits nothing.
    let plain = text.replace("\r\n", "\n");
    let mut lines = Lines::default();
    for (line, text) in (1_u32..).zip(plain.lines()) {
        lines.take(text).ok_or_else(|| unreadable(file, line))?;
    }
    lines.edition(file, &plain).ok_or_else(|| unreadable(file, 0))
}

fn unreadable(file: &FilePath, line: u32) -> Box<Finding> {
    let place = Place { file: file.clone(), line, column: u32::from(line > 0) };
    let message = "this is not as `issue` writes an edition";
    Box::new(
        Finding::error("edition-unreadable", place, message)
            .help("nobody edits the register: take the file back from your version control or a backup"),
    )
}

/// What has been read of a file, line by line.
#[derive(Default)]
struct Lines {
    part: Part,
    heading: BTreeMap<String, serde_json::Value>,
    holders: Vec<HolderThenRecord>,
    cards: Vec<CardIssueRecord>,
    prints: Vec<PrintsRecord>,
}

#[derive(Default, PartialEq)]
enum Part {
    #[default]
    Heading,
    Holders,
    Cards,
    Prints,
}

impl Lines {
    /// Takes a line; none where it is not as it should be.
    fn take(&mut self, line: &str) -> Option<()> {
        if line.starts_with('#') {
            return Some(());
        }
        if let Some(item) = line.strip_prefix("- ") {
            match self.part {
                Part::Holders => self.holders.push(serde_json::from_str(item).ok()?),
                Part::Cards => self.cards.push(serde_json::from_str(item).ok()?),
                Part::Heading | Part::Prints => return None,
            }
        } else if let Some(text) = line.strip_prefix("  - ") {
            let prints = self.prints.last_mut().filter(|_| self.part == Part::Prints)?;
            prints.texts.push(serde_json::from_str(text).ok()?);
        } else if let Some(number) = line.strip_prefix("  ") {
            let number = serde_json::from_str(number.strip_suffix(':')?).ok()?;
            self.prints.push(PrintsRecord { number, texts: Vec::new() });
        } else {
            self.heading(line)?;
        }
        Some(())
    }

    fn heading(&mut self, line: &str) -> Option<()> {
        self.part = match line {
            "holders:" => Part::Holders,
            "cards:" => Part::Cards,
            "prints:" => Part::Prints,
            _ => {
                let (key, value) = line.split_once(": ")?;
                let before = self.heading.insert(key.to_owned(), serde_json::from_str(value).ok()?);
                return before.is_none().then_some(());
            }
        };
        Some(())
    }

    fn edition(mut self, file: &FilePath, text: &str) -> Option<EditionRecord> {
        let seal = self.text("blake3")?;
        let is_sealed = text.rfind(SEAL).is_some_and(|end| {
            let (above, below) = text.split_at(end);
            // What stands below the seal is sealed by nothing.
            let last = format!("{SEAL}\"{}\"", blake3::hash(above.as_bytes()).to_hex());
            below.trim_end() == last && last.contains(&seal)
        });
        let after = self.heading.remove("after");
        let notices = self.heading.remove("notices")?;
        Some(EditionRecord {
            file: file.clone(),
            edition: self.text("edition")?,
            date: self.text("date")?.parse().ok()?,
            checked_by: self.text("checked_by")?,
            approved_by: self.text("approved_by")?,
            because: self.text("because").unwrap_or_default(),
            after: after.map(serde_json::from_value).transpose().ok()?,
            notices: serde_json::from_value(notices).ok()?,
            hash: blake3::hash(text.as_bytes()).to_hex().to_string(),
            sealed: is_sealed,
            holders: self.holders,
            cards: self.cards,
            prints: self.prints,
        })
        .filter(|_| self.heading.is_empty())
    }

    fn text(&mut self, key: &str) -> Option<String> {
        self.heading.remove(key)?.as_str().map(ToOwned::to_owned)
    }
}
