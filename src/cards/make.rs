//! Cards from facts, side by side.

use super::compose::{FaceJob, Format};
use super::drawings::Drawings;
use super::face::{Card, Face, Side};
use super::input::Input;
use super::preflight::{self, Limits};
use super::too_full::FaceError;
use super::values;
use crate::diagnostics::{FilePath, Finding, Findings, Place};
use crate::facts::{CardFacts, Content};
use crate::register::Standing;
use rayon::prelude::*;
use serde_json::Value;
use std::sync::Arc;

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

/// One card as a numbered copy of a holder's; `copy` says which and whose, and is no part of the check code.
#[must_use]
pub fn make_copy(input: Input<'_>, facts: &CardFacts, copy: &str) -> (Option<Card>, Findings) {
    make_copy_standing(input, facts, &input.register.standing(facts), copy)
}

/// One card that stands so in the register.
pub(super) fn make_standing(
    input: Input<'_>,
    facts: &CardFacts,
    standing: &Standing,
) -> (Option<Card>, Findings) {
    make_copy_standing(input, facts, standing, "")
}

pub(super) fn make_copy_standing(
    input: Input<'_>,
    facts: &CardFacts,
    standing: &Standing,
    copy: &str,
) -> (Option<Card>, Findings) {
    let mut findings = Findings::new();
    let mut side = |job: &FaceJob<'_>| {
        let called = format!("the {} of card {}", job.side.word(), facts.number);
        let about = About { input, number: &facts.number, called: &called };
        let made =
            job.face().map_err(|error| findings.extend(found("card-too-full", remedy(facts), about, error)));
        let made = made.ok()?;
        findings.extend(check(input, facts, &made));
        Some(made)
    };
    let [front, back] = jobs_standing(input, facts, standing, copy);
    let (Some(front), Some(back)) = (side(&front), side(&back)) else { return (None, findings) };
    (Some(Card { number: facts.number.clone(), title: facts.title.clone(), front, back }), findings)
}

/// The two faces of a card, to be made step by step.
#[must_use]
pub fn jobs<'a>(input: Input<'a>, facts: &CardFacts) -> [FaceJob<'a>; 2] {
    jobs_standing(input, facts, &input.register.standing(facts), "")
}

fn jobs_standing<'a>(
    input: Input<'a>,
    facts: &CardFacts,
    standing: &Standing,
    copy: &str,
) -> [FaceJob<'a>; 2] {
    let drawings = Drawings::of(input, &facts.number);
    let format = Format::of(input, input.catalogue.settings.card, None);
    let mut values = values::of_card(facts, standing, copy, &input.catalogue.settings);
    values.insert("has_assembly".into(), drawings.has_assembly().into());
    values.insert("has_ends".into(), drawings.has_ends().into());
    values.insert("has_wrong".into(), drawings.has_wrong().into());
    values.insert("has_line_up".into(), drawings.has_line_up().into());
    values.extend(format.values());
    let values = Arc::new(Value::Object(values));
    let changed = match standing {
        Standing::Issued(issued) => Arc::new(issued.changed.clone()),
        Standing::Draft => Arc::default(),
    };
    let kind = match facts.content {
        Content::Fitting(_) => "fitting",
        Content::Body(_) => "body",
    };
    [Side::Front, Side::Back].map(|side| {
        let layout = format.layout(&format!("{kind}-{}", side.word()));
        FaceJob {
            format: format.clone(),
            side,
            layout,
            values: values.clone(),
            drawings,
            changed: changed.clone(),
        }
    })
}

/// Everything that would print wrong on a face of a card.
#[must_use]
pub fn check(input: Input<'_>, facts: &CardFacts, face: &Face) -> Findings {
    let called = format!("the {} of card {}", face.side.word(), facts.number);
    let about = About { input, number: &facts.number, called: &called };
    preflight::face(face, limits(input, about, face.side, stamps(facts)))
}

/// What a face is held to.
pub(super) fn limits<'a>(input: Input<'a>, about: About<'a>, side: Side, stamps: &'a [String]) -> Limits<'a> {
    Limits {
        called: about.called,
        number: about.number,
        smallest_type: input.catalogue.settings.limits.smallest_type,
        stamps: if side == Side::Front { stamps } else { &[] },
        place: place(input, about.number, ""),
        fonts: input.fonts,
        design: input.design,
    }
}

/// The gripping part's stamp, on a fitting's card.
fn stamps(facts: &CardFacts) -> &[String] {
    match &facts.content {
        Content::Fitting(fitting) => std::slice::from_ref(&fitting.gripping_stamp),
        Content::Body(_) => &[],
    }
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

/// The findings for a face that can't be made; code and help are those of one that is too full.
pub(super) fn found(code: &'static str, help: &'static str, about: About<'_>, error: FaceError) -> Findings {
    let mut findings = Findings::new();
    match error {
        FaceError::Layout(found) => findings.extend(found),
        FaceError::TooFull(full) => {
            let place = place(about.input, about.number, &full.field);
            let mut finding = Finding::error(code, place, format!("{}: {}", about.called, full.said))
                .record(about.number)
                .field(full.field)
                .found(format!("{} mm too much at the smallest type", full.excess))
                .help(help);
            if let Some(at) = full.at {
                finding = finding.related(at, "its room is set here in the layout");
            }
            for (name, _) in about.input.design.own() {
                let own = Place::whole(FilePath::layouts(name));
                finding = finding.related(own, "a layout of your own: did the texts fit before it?");
            }
            findings.push(finding);
        }
    }
    findings
}

/// The place of a field of the fitting or body of this number; where a fitting has it from a procedure, that in the
/// procedure.
pub(super) fn place(input: Input<'_>, number: &str, field: &str) -> Place {
    let catalogue = input.catalogue;
    let of_fitting = catalogue.fittings.get(number).map(|fitting| fitting.place_of(field));
    let of_part = || catalogue.parts.get(number).map(|part| part.origin.of(field));
    of_fitting.or_else(of_part).unwrap_or_else(|| catalogue.settings.origin.place.clone())
}
