//! Editions: which card had which issue and which check code.

use crate::facts::CardFacts;

/// Where a card stands: what its foot prints.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Standing {
    /// No edition holds what it prints; it must not be used.
    Draft,
    /// An edition holds it.
    Issued {
        /// The card's issue number.
        issue: u32,
        /// The edition.
        edition: String,
        /// The check code of what it prints.
        check_code: String,
    },
}

/// The editions of a catalogue.
#[derive(Debug, Clone, Default)]
pub struct Register {}

impl Register {
    /// Where a card stands.
    #[must_use]
    pub fn standing(&self, _card: &CardFacts) -> Standing {
        Standing::Draft
    }
}
