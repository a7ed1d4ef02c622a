//! What a kit tag prints: which parts a storekeeper puts together for a fitting.

use super::{MarkFacts, mark, words};
use crate::catalogue::{Catalogue, Fitting, Item};

/// Everything that the tag of a fitting's kit prints but its edition and check code. What the record
/// lacks is empty or absent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TagFacts {
    /// The number of the fitting.
    pub number: String,
    /// Its name.
    pub name: String,
    /// Its status in words that a storekeeper obeys; empty while it is current.
    pub status_words: String,
    /// The names of the conductors that it is for.
    pub conductors: Vec<String>,
    /// The mark on its gripping part.
    pub mark: Option<MarkFacts>,
    /// Characters to be read on its gripping parts, each once, in item order.
    pub gripping_stamps: Vec<String>,
    /// Its parts, in item order.
    pub parts: Vec<TagPart>,
    /// The catalogue's caution.
    pub caution: String,
}

/// One part of a kit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TagPart {
    /// Its item number.
    pub item: u32,
    /// How many go into the kit.
    pub quantity: u32,
    /// Its name.
    pub name: String,
    /// What it does, in a word.
    pub role: String,
    /// Its number.
    pub number: String,
    /// Its drawing number with revision.
    pub drawing: String,
    /// Its stamp.
    pub stamp: String,
    /// What it is made of, in words.
    pub material: String,
    /// Whether it is a gripping part.
    pub gripping: bool,
    /// Its status in words that a storekeeper obeys; empty while it is current.
    pub status_words: String,
}

pub(super) fn facts(fitting: &Fitting, catalogue: &Catalogue) -> TagFacts {
    TagFacts {
        number: fitting.number.clone(),
        name: fitting.name.clone(),
        status_words: words::status(fitting.status, fitting.use_instead.as_deref()),
        conductors: fitting.conductors.iter().map(|conductor| conductor.name.clone()).collect(),
        mark: fitting.mark.as_ref().map(mark::facts),
        gripping_stamps: gripping_stamps(fitting),
        parts: fitting.items.iter().zip(1..).map(|(item, number)| part(item, number)).collect(),
        caution: catalogue.settings.caution.clone(),
    }
}

fn gripping_stamps(fitting: &Fitting) -> Vec<String> {
    let mut stamps: Vec<String> = Vec::new();
    for item in fitting.gripping() {
        if !item.part.stamp.is_empty() && !stamps.contains(&item.part.stamp) {
            stamps.push(item.part.stamp.clone());
        }
    }
    stamps
}

fn part(item: &Item, number: u32) -> TagPart {
    let part = &item.part;
    TagPart {
        item: number,
        quantity: item.quantity,
        name: part.name.clone(),
        role: words::role(part.role).to_owned(),
        number: part.number.clone(),
        drawing: part.drawing.clone(),
        stamp: part.stamp.clone(),
        material: part.material.name.clone(),
        gripping: part.role.grips(),
        status_words: words::status(part.status, None),
    }
}
