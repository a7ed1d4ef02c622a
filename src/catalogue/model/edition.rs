//! Editions on the register.

use crate::records::{Grade, HolderThenRecord, Status};
use crate::source::Place;
use jiff::civil::Date;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A state of the whole catalogue that was checked, approved and put on the register.
#[derive(Debug, Clone)]
pub struct Edition {
    /// Its name.
    pub name: String,
    /// Its date.
    pub date: Date,
    /// Who checked it.
    pub checked_by: String,
    /// Who approved it.
    pub approved_by: String,
    /// Why cards were issued that no notice explains; empty where nothing is said.
    pub because: String,
    /// Notices that cards cite since the edition before.
    pub notices: Vec<String>,
    /// Who held copies then.
    pub holders: Vec<HolderThenRecord>,
    /// Every card by its number.
    pub cards: BTreeMap<String, CardIssue>,
    /// BLAKE3 of its file, in hexadecimal digits.
    pub hash: String,
    /// Where it stands.
    pub place: Place,
}

/// A card in an edition.
#[derive(Debug, Clone)]
pub struct CardIssue {
    /// Its issue number.
    pub issue: u32,
    /// The edition that it has this issue from.
    pub since: String,
    /// Whether it may be used.
    pub status: Status,
    /// The fitting that replaces it.
    pub superseded_by: Option<String>,
    /// The check code of what it prints.
    pub check_code: String,
    /// What it prints, in order; shared by the editions that hold the same issue.
    pub texts: Arc<[IssuedText]>,
}

/// A text that an issued card prints.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct IssuedText {
    /// How much a change of it weighs.
    pub grade: Grade,
    /// What it is.
    pub name: String,
    /// What is printed.
    pub text: String,
    /// Numbers of the parts and fittings that it speaks of.
    pub about: Vec<String>,
}
