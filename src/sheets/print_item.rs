//! What is cut from a sheet: cards with a back, tags without.

use crate::cards::{Card, Face, FormFace, Side, Tag};

/// What the sheets of one file are cut into.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PrintKind {
    /// Two-sided cards.
    Cards,
    /// One-sided kit tags.
    Tags,
    /// Slips to be filled in by hand: a page each, as large as the slip.
    Slips,
    /// Gauges at true size.
    Gauges,
    /// Labels of bins in stores.
    Labels,
}

impl PrintKind {
    /// The sides that are printed, in the order of their pages.
    #[must_use]
    pub fn sides(self) -> &'static [Side] {
        match self {
            Self::Cards => &[Side::Front, Side::Back],
            Self::Tags | Self::Slips | Self::Gauges | Self::Labels => &[Side::Front],
        }
    }

    /// Whether each is a page of its own, of paper that is not cut.
    pub(super) fn fills_its_page(self) -> bool {
        self == Self::Slips
    }

    /// What its files are called, without number and ending: below the folder of sheets, or with a folder of their own.
    pub(super) fn stem(self) -> &'static str {
        match self {
            Self::Cards => "cards",
            Self::Tags => "tags",
            Self::Slips => "training/assembly-slips",
            Self::Gauges => "training/gauges",
            Self::Labels => "training/bin-labels",
        }
    }

    /// The word for many.
    pub(super) fn word(self) -> &'static str {
        match self {
            Self::Cards => "cards",
            Self::Tags => "kit tags",
            Self::Slips => "assembly slips",
            Self::Gauges => "gauges",
            Self::Labels => "bin labels",
        }
    }

    /// The word for one.
    pub(super) fn one(self) -> &'static str {
        match self {
            Self::Cards => "card",
            Self::Tags => "kit tag",
            Self::Slips => "assembly slip",
            Self::Gauges => "gauge",
            Self::Labels => "bin label",
        }
    }

    /// What a page with this side is called in its margin.
    pub(super) fn page(self, side: Side) -> &'static str {
        match self {
            Self::Cards => side.word(),
            Self::Tags => "tags",
            Self::Slips => "slips",
            Self::Gauges => "gauges",
            Self::Labels => "labels",
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

impl From<FormFace> for PrintItem {
    fn from(form: FormFace) -> Self {
        Self { title: form.title, faces: vec![form.face] }
    }
}
