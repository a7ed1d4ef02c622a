//! What is cut from a sheet: cards with a back, tags without.

use crate::cards::{Card, Face, Side, Tag};

/// What the sheets of one file are cut into.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PrintKind {
    /// Two-sided cards.
    Cards,
    /// One-sided kit tags.
    Tags,
}

impl PrintKind {
    /// The sides that are printed, in the order of their pages.
    #[must_use]
    pub fn sides(self) -> &'static [Side] {
        match self {
            Self::Cards => &[Side::Front, Side::Back],
            Self::Tags => &[Side::Front],
        }
    }

    /// What its files are called, without number and ending.
    pub(super) fn stem(self) -> &'static str {
        match self {
            Self::Cards => "cards",
            Self::Tags => "tags",
        }
    }

    /// The word for many.
    pub(super) fn word(self) -> &'static str {
        match self {
            Self::Cards => "cards",
            Self::Tags => "kit tags",
        }
    }

    /// The word for one.
    pub(super) fn one(self) -> &'static str {
        match self {
            Self::Cards => "card",
            Self::Tags => "kit tag",
        }
    }

    /// What a page with this side is called in its margin.
    pub(super) fn page(self, side: Side) -> &'static str {
        match self {
            Self::Cards => side.word(),
            Self::Tags => "tags",
        }
    }
}

/// One card or tag that is cut out.
#[derive(Debug, Clone)]
pub struct PrintItem {
    /// What the outline calls it.
    pub title: String,
    /// The sides that it has.
    pub faces: Vec<Face>,
}

impl From<Card> for PrintItem {
    fn from(card: Card) -> Self {
        Self { title: format!("{} {}", card.number, card.title), faces: vec![card.front, card.back] }
    }
}

impl From<Tag> for PrintItem {
    fn from(tag: Tag) -> Self {
        let turn = tag.turn.words();
        let turn = if turn.is_empty() { turn } else { format!(", tag {turn}") };
        Self { title: format!("{} {}{turn}", tag.number, tag.title), faces: vec![tag.face] }
    }
}
