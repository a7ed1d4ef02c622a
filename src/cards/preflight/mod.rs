//! What a printer would send back: texts outside the safe area, over each other, too small, too pale, lost;
//! lines too thin; drawings off their scale; ink that is cut away.

mod bounds;
mod classes;
mod contrast;
mod edges;
mod ground;
mod ink;
mod letters;
mod lines;
mod pictures;
mod room;
mod scale;

use super::face::{Card, Face};
use crate::diagnostics::{Finding, Findings, Place};
use crate::typeset::Fonts;
use crate::units::Length;
use ink::Ink;

/// How far inside the cut everything that is read must stay, in millimetres.
pub(super) const SAFE: f64 = 3.0;

/// What cards are held to, beside what holds for all.
#[derive(Debug, Clone, Copy)]
pub(super) struct Held<'a> {
    /// The smallest type on a card.
    pub smallest_type: Length,
    /// The stamp of the gripping part; empty where the card has none.
    pub stamp: &'a str,
    /// The record that the card is about.
    pub place: &'a Place,
    /// The fonts that texts are set in.
    pub fonts: &'a Fonts,
}

/// What a check looks at.
#[derive(Clone, Copy)]
struct Sheet<'a> {
    card: &'a str,
    face: &'a Face,
    smallest_type: Length,
    stamp: &'a str,
    place: &'a Place,
    fonts: &'a Fonts,
}

/// Everything that would print wrong on a card.
pub(super) fn card(card: &Card, held: Held<'_>) -> Findings {
    let mut findings = Findings::new();
    let Held { smallest_type, stamp, place, fonts } = held;
    for face in [&card.front, &card.back] {
        let sheet = Sheet { card: &card.number, face, smallest_type, stamp, place, fonts };
        let ink = Ink::of(face);
        room::check(sheet, &ink, &mut findings);
        letters::check(sheet, &ink, &mut findings);
        classes::check(sheet, &ink, &mut findings);
        contrast::check(sheet, &ink, &mut findings);
        lines::check(sheet, &ink, &mut findings);
        scale::check(sheet, &ink, &mut findings);
        pictures::check(sheet, &ink, &mut findings);
        edges::check(sheet, &ink, &mut findings);
    }
    findings
}

impl Sheet<'_> {
    fn finding(self, code: &'static str, message: String) -> Finding {
        let message = format!("the {} of card {}: {message}", self.face.side.word(), self.card);
        Finding::error(code, self.place.clone(), message).record(self.card)
    }
}

#[cfg(test)]
mod tests;
