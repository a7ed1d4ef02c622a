//! Notices, and the holders of copies.

use super::Origin;
use crate::records::ReceiptWord;
use jiff::civil::Date;
use std::collections::BTreeMap;

/// A circular or change note.
#[derive(Debug, Clone)]
pub struct Notice {
    /// Its number.
    pub number: String,
    /// When it was written.
    pub date: Date,
    /// From when it holds.
    pub effective: Option<Date>,
    /// By when it is carried out.
    pub action_by: Option<Date>,
    /// Its title.
    pub title: String,
    /// The owner's own reference; empty where not stated.
    pub reference: String,
    /// What it says; empty where not stated.
    pub summary: String,
    /// Where it stands.
    pub origin: Origin,
}

/// A depot, gang or store that holds numbered copies.
#[derive(Debug, Clone)]
pub struct Holder {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Copies by fitting or body number; `*` for every other card.
    pub copies: BTreeMap<String, u32>,
    /// What became of copies that are no longer good.
    pub receipts: Vec<Receipt>,
    /// Where it stands.
    pub origin: Origin,
}

/// What became of copies of an issue.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Receipt {
    /// The card's number.
    pub card: String,
    /// The issue.
    pub issue: u32,
    /// How many copies.
    pub copies: u32,
    /// What became of them.
    pub what: ReceiptWord,
    /// The day.
    pub date: Date,
    /// Who says so.
    pub by: String,
}
