//! What a printer would send back: texts outside the safe area, over each other, too small, lost.

mod ink;
mod letters;
mod room;

use super::face::{Card, Face};
use crate::diagnostics::{Finding, Findings, Place};
use crate::units::Length;
use ink::Ink;

/// What a check looks at.
#[derive(Clone, Copy)]
struct Sheet<'a> {
    card: &'a str,
    face: &'a Face,
    smallest_type: Length,
    place: &'a Place,
}

/// Everything that would print wrong on a card. `place` is the record that it is about.
pub(super) fn card(card: &Card, smallest_type: Length, place: &Place) -> Findings {
    let mut findings = Findings::new();
    for face in [&card.front, &card.back] {
        let sheet = Sheet { card: &card.number, face, smallest_type, place };
        let ink = Ink::of(face);
        room::check(sheet, &ink, &mut findings);
        letters::check(sheet, &ink, &mut findings);
    }
    findings
}

impl Sheet<'_> {
    fn finding(self, code: &'static str, message: String) -> Finding {
        let message = format!("the {} of card {}: {message}", self.face.side.word(), self.card);
        Finding::error(code, self.place.clone(), message).record(self.card)
    }
}
