//! Notices, and the holders of copies.

use super::Origin;
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
    /// Where it stands.
    pub origin: Origin,
}
