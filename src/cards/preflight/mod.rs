//! What a printer would send back: texts outside the safe area, over each other, too small, too pale, lost;
//! lines too thin; drawings off their scale; ink that is cut away.

mod bounds;
mod classes;
mod contrast;
mod crossings;
mod edges;
mod ground;
mod ink;
mod letters;
mod lines;
mod outline;
mod pictures;
mod room;
mod scale;

use super::face::{Card, Face, Tag};
use crate::diagnostics::{Finding, Findings, Place};
use crate::typeset::Fonts;
use crate::units::Length;
use ink::Ink;

/// How far inside the cut everything that is read must stay, in millimetres.
pub(super) const SAFE: f64 = 3.0;

/// What cards and tags are held to, beside what holds for all.
#[derive(Debug, Clone, Copy)]
pub(super) struct Held<'a> {
    /// The smallest type on them.
    pub smallest_type: Length,
    /// The stamps of the gripping parts; empty where one has none.
    pub stamps: &'a [String],
    /// The record that the card or tag is about.
    pub place: &'a Place,
    /// The fonts that texts are set in.
    pub fonts: &'a Fonts,
}

/// What a check looks at.
#[derive(Clone, Copy)]
struct Sheet<'a> {
    /// What the record is called.
    number: &'a str,
    /// What the face is called.
    called: &'a str,
    face: &'a Face,
    smallest_type: Length,
    stamps: &'a [String],
    place: &'a Place,
    fonts: &'a Fonts,
}

/// Everything that would print wrong on a card.
pub(super) fn card(card: &Card, held: Held<'_>) -> Findings {
    let mut findings = Findings::new();
    for face in [&card.front, &card.back] {
        let called = format!("the {} of card {}", face.side.word(), card.number);
        check(Sheet::of(&card.number, &called, face, held), &mut findings);
    }
    findings
}

/// Everything that would print wrong on a tag.
pub(super) fn tag(tag: &Tag, held: Held<'_>) -> Findings {
    let mut findings = Findings::new();
    let called = tag.turn.called(&tag.number);
    check(Sheet::of(&tag.number, &called, &tag.face, held), &mut findings);
    findings
}

fn check(sheet: Sheet<'_>, findings: &mut Findings) {
    let ink = Ink::of(sheet.face);
    room::check(sheet, &ink, findings);
    letters::check(sheet, &ink, findings);
    classes::check(sheet, &ink, findings);
    contrast::check(sheet, &ink, findings);
    crossings::check(sheet, &ink, findings);
    lines::check(sheet, &ink, findings);
    scale::check(sheet, &ink, findings);
    pictures::check(sheet, &ink, findings);
    edges::check(sheet, &ink, findings);
}

impl<'a> Sheet<'a> {
    fn of(number: &'a str, called: &'a str, face: &'a Face, held: Held<'a>) -> Self {
        let Held { smallest_type, stamps, place, fonts } = held;
        Self { number, called, face, smallest_type, stamps, place, fonts }
    }

    fn finding(self, code: &'static str, message: String) -> Finding {
        let message = format!("{}: {message}", self.called);
        Finding::error(code, self.place.clone(), message).record(self.number)
    }
}

#[cfg(test)]
mod tests;
