//! Cards from facts, side by side.

use super::compose::{Frame, Sitting, Trouble, face};
use super::drawings::Drawings;
use super::face::{Card, Side};
use super::preflight::{self, Held};
use super::values;
use crate::catalogue::{CardFormat, CardSize, Catalogue, Orientation};
use crate::diagnostics::{Finding, Findings, Place};
use crate::facts::{CardFacts, Content};
use crate::layouts::{Layouts, Values};
use crate::mixups::Mixups;
use crate::register::{Register, Standing};
use crate::typeset::Fonts;
use rayon::prelude::*;
use serde_json::{Map, Value};

/// What cards are made from.
#[derive(Debug, Clone, Copy)]
pub struct Input<'a> {
    /// The records, for what is drawn.
    pub catalogue: &'a Catalogue,
    /// What can be confused, for what is drawn.
    pub mixups: &'a Mixups,
    /// The editions, for what the foot says.
    pub register: &'a Register,
    /// The layouts of the folder `cards`, loaded with [`super::helpers`].
    pub layouts: &'a Layouts,
    /// The fonts.
    pub fonts: &'a Fonts,
}

/// Every card that can be made, in the order of the facts, and what is the matter with the others.
///
/// One thread's work is one card; the order and the bytes don't depend on how many threads there are.
#[must_use]
pub fn make_all(input: Input<'_>, facts: &[CardFacts]) -> (Vec<Card>, Findings) {
    let made: Vec<(Option<Card>, Findings)> = facts.par_iter().map(|facts| make(input, facts)).collect();
    let mut findings = Findings::new();
    let mut cards = Vec::with_capacity(facts.len());
    for (card, found) in made {
        cards.extend(card);
        findings.extend(found);
    }
    (cards, findings)
}

/// One card, with what its preflight finds; none where a face can't be made.
#[must_use]
pub fn make(input: Input<'_>, facts: &CardFacts) -> (Option<Card>, Findings) {
    make_standing(input, facts, &input.register.standing(facts))
}

/// One card that stands so in the register.
pub(super) fn make_standing(
    input: Input<'_>,
    facts: &CardFacts,
    standing: &Standing,
) -> (Option<Card>, Findings) {
    let mut findings = Findings::new();
    let drawings = Drawings::of(input, &facts.number);
    let values = with_drawings(values::of_card(facts, standing, &input.catalogue.settings), &drawings);
    let mut side = |side| {
        let sitting =
            Sitting { side, layout: &layout(input, facts, side), values: &values, drawings: &drawings };
        let called = format!("the {} of card {}", side.word(), facts.number);
        let about = About { input, number: &facts.number, called: &called };
        face(frame(input, input.catalogue.settings.card), sitting)
            .map_err(|trouble| findings.push(found("card-too-full", remedy(facts), about, trouble)))
            .ok()
    };
    let (front, back) = (side(Side::Front), side(Side::Back));
    let (Some(front), Some(back)) = (front, back) else { return (None, findings) };
    let card = Card { number: facts.number.clone(), title: facts.title.clone(), front, back };
    let held = Held {
        smallest_type: input.catalogue.settings.limits.smallest_type,
        stamps: stamps(facts),
        place: &place(input, &facts.number, ""),
        fonts: input.fonts,
    };
    findings.extend(preflight::card(&card, held));
    (Some(card), findings)
}

/// The gripping part's stamp, on a fitting's card.
fn stamps(facts: &CardFacts) -> &[String] {
    match &facts.content {
        Content::Fitting(fitting) => std::slice::from_ref(&fitting.gripping_stamp),
        Content::Body(_) => &[],
    }
}

/// What faces of this format have in common.
pub(super) fn frame(input: Input<'_>, format: CardFormat) -> Frame<'_> {
    let settings = &input.catalogue.settings;
    Frame {
        layouts: input.layouts,
        fonts: input.fonts,
        format,
        bleed: settings.sheet.bleed,
        smallest: settings.limits.smallest_type,
    }
}

fn with_drawings(mut values: Map<String, Value>, drawings: &Drawings<'_>) -> Values {
    values.insert("sections".into(), values::sections(&drawings.sections()));
    values.insert("has_assembly".into(), drawings.has_assembly().into());
    values.insert("has_line_up".into(), drawings.has_line_up().into());
    values.into()
}

/// The path of the layout of a face, such as `cards/a7-portrait-fitting-front.svg`.
fn layout(input: Input<'_>, facts: &CardFacts, side: Side) -> String {
    let format = input.catalogue.settings.card;
    let size = match format.size {
        CardSize::A7 => "a7",
        CardSize::A6 => "a6",
        CardSize::Id1 => "id1",
    };
    let orientation = match format.orientation {
        Orientation::Portrait => "portrait",
        Orientation::Landscape => "landscape",
    };
    let kind = match facts.content {
        Content::Fitting(_) => "fitting",
        Content::Body(_) => "body",
    };
    format!("cards/{size}-{orientation}-{kind}-{}.svg", side.word())
}

/// What can be done about a card that is too full.
fn remedy(facts: &CardFacts) -> &'static str {
    match facts.content {
        Content::Fitting(_) => {
            "shorten the text, let a long word break at soft hyphens (U+00AD), move the rest to the notes, or choose \
             a larger card"
        }
        Content::Body(_) => {
            "a body's card names every part that goes in, with its conductors: choose a larger card, or shorten the \
             names"
        }
    }
}

/// The face that a finding is about.
#[derive(Clone, Copy)]
pub(super) struct About<'a> {
    pub input: Input<'a>,
    /// The number of the fitting or body.
    pub number: &'a str,
    /// What the face is called.
    pub called: &'a str,
}

/// The finding for a face that can't be made; code and help are those of one that is too full.
pub(super) fn found(code: &'static str, help: &'static str, about: About<'_>, trouble: Trouble) -> Finding {
    match trouble {
        Trouble::Layout(finding) => finding.record(about.number),
        Trouble::TooFull { field, excess, said } => {
            let place = place(about.input, about.number, &field);
            Finding::error(code, place, format!("{}: {said}", about.called))
                .record(about.number)
                .field(field)
                .found(format!("{excess} mm too much at the smallest type"))
                .help(help)
        }
    }
}

/// The place of a field of the fitting or body of this number.
pub(super) fn place(input: Input<'_>, number: &str, field: &str) -> Place {
    let fitting = input.catalogue.fittings.get(number).map(|fitting| &fitting.origin);
    let origin = fitting.or_else(|| input.catalogue.parts.get(number).map(|part| &part.origin));
    origin.map_or_else(|| input.catalogue.settings.origin.place.clone(), |origin| origin.of(field))
}
