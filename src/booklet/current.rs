//! Whether a printed card is current, by its number and check code.

use super::frame::Draft;
use super::input::Booklet;
use super::view::script_json;
use crate::register::{DRAFT, IssuedCard, UNKNOWN};
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let cards = &booklet.issued_cards;
    let values = json!({
        "data": script_json(&json!({
            "cards": cards.iter().map(row).collect::<Vec<_>>(), "unknown": UNKNOWN, "draft": DRAFT,
        })),
        "unknown": UNKNOWN, "draft": DRAFT,
        "cards": cards.iter().map(row).collect::<Vec<_>>(),
    });
    Draft { layout: "current", title: "Is my card current".to_owned(), kind: "Look-up", values }
}

fn row(card: &IssuedCard) -> Value {
    json!({
        "number": card.number, "code": card.check_code, "issue": card.issue, "edition": card.edition,
        "good": card.is_good, "words": card.words,
    })
}
