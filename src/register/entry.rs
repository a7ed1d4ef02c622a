//! A card's line in an edition, looked at.

use crate::catalogue::CardIssue;

/// A text of a card by its name; empty where the card has none of it.
#[must_use]
pub fn text_of(card: &CardIssue, name: &str) -> String {
    let text = card.texts.iter().find(|text| text.name == name);
    text.map(|text| text.text.clone()).unwrap_or_default()
}
