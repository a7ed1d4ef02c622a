//! Where the pages are that belong to no record.

use crate::catalogue::{Conductor, Part};
use crate::notes::address::{Address, key, slug};

/// The first page.
pub(super) fn start() -> Address {
    Address::page("index")
}

/// Conductors and parts that can be taken for others.
pub(super) fn look_alikes() -> Address {
    Address::page("look-alikes")
}

/// What a measured conductor can be.
pub(super) fn hand() -> Address {
    Address::page("hand")
}

/// What a closed fitting can hold.
pub(super) fn closed() -> Address {
    Address::page("closed")
}

/// What a closed fitting can hold, of one body: in a catalogue with too many for one page.
pub(super) fn closed_body(number: &str) -> Address {
    Address::page(format!("closed-{number}"))
}

/// Whether a printed card is current.
pub(super) fn current() -> Address {
    Address::page("current")
}

/// Wear of contact wires.
pub(super) fn wear() -> Address {
    Address::page("wear")
}

/// Wear of one contact wire.
pub(super) fn wear_of(wire: &Conductor) -> Address {
    wear().at(format!("wear-{}", wire.id))
}

/// The teaching sheet of a shared body.
pub(super) fn teaching(body: &Part) -> Address {
    Address::page(format!("teaching-{}", body.number))
}

/// All numbers and stamps.
pub(super) fn numbers() -> Address {
    Address::page("numbers")
}

/// The trade's words.
pub(super) fn glossary() -> Address {
    Address::page("glossary")
}

/// One of the trade's words.
pub(super) fn word(word: &str) -> Address {
    glossary().at(format!("word-{}", slug(word)))
}

/// The pages that every page leads to at once, in order, and what they are called there: few enough for one line on a
/// phone.
pub(super) fn everywhere() -> [(Address, &'static str); 4] {
    [(start(), "Start"), (hand(), "In my hand"), (closed(), "Closed fitting"), (current(), "My card")]
}

/// Other words that lead to one of these pages: what it is called at its head, and what it is asked.
pub(super) fn sought(page: &Address) -> &'static str {
    match page.name() {
        "hand" => "what is in my hand, measured conductor, identify",
        "closed" => "what is inside a closed fitting, stand-out",
        "current" => "is my card current, check code, register",
        "wear" => "wear of contact wire, remaining height, width of the flat",
        _ => "",
    }
}

/// The pages that every page leads to after one more tap.
pub(super) fn behind_more() -> [(Address, &'static str); 5] {
    [
        (look_alikes(), "Look-alikes"),
        (wear(), "Wear"),
        (numbers(), "Numbers and stamps"),
        (key(), "Materials and lines"),
        (glossary(), "Glossary"),
    ]
}
