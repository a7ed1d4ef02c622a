//! What a card prints, in words and dimensions, before it has a look.

mod body;
mod card;
mod check_code;
mod completeness;
mod conductor;
mod failed;
mod fitting;
mod forms;
mod grade;
mod ground;
mod mark;
mod not_these;
mod printed;
mod tag;
mod values;
mod wear;
pub mod words;

pub use body::body_with_card;
pub use card::{
    BodyColumn, BodyFacts, BodyPart, BodyRow, CardFacts, Cell, CellKind, CheckFacts, ConductorFacts, Content,
    FittingFacts, IfWrongFacts, MarkFacts, NotThis, NoticeFacts, PartLine, TighteningFacts, WearFacts,
    WearRow,
};
pub use check_code::CheckCode;
pub use completeness::{lacking, unstated};
pub use conductor::conductor;
pub use forms::{load, stated_window, wear_height};
pub use mark::facts as mark_facts;
pub use not_these::drawn_wrong_parts;
pub use printed::PrintedText;
pub use tag::{TagFacts, TagPart};
pub use values::{NAMED_VALUES, Unnamed, VALUE_NAMES, Values, values};
pub use wear::worn_row;

use crate::catalogue::{Catalogue, Role, Status};
use crate::mixups::Mixups;
use ground::Ground;
use rayon::prelude::*;
use std::collections::BTreeMap;

/// The facts of every card of a catalogue, in the order of their numbers: one card a fitting, and one a
/// body that several fittings share, where a part inside decides.
#[must_use]
pub fn of_catalogue(catalogue: &Catalogue, mixups: &Mixups) -> Vec<CardFacts> {
    let ground = Ground::of(catalogue, mixups);
    let fittings: Vec<_> = catalogue.fittings.values().collect();
    let of_fittings = fittings.par_iter().map(|fitting| fitting::facts(fitting, &ground));
    let bodies: Vec<_> = catalogue.parts.values().filter(|part| part.role == Role::Body).collect();
    let of_bodies = bodies.par_iter().filter_map(|body| body::facts(body, &ground));
    let cards: Vec<CardFacts> = of_fittings.chain(of_bodies).collect();
    let by_number: BTreeMap<String, CardFacts> =
        cards.into_iter().map(|card| (card.number.clone(), card)).collect();
    by_number.into_values().collect()
}

/// The facts of the tag of the kit of every fitting that may be built, in the order of the fittings' numbers.
#[must_use]
pub fn tags(catalogue: &Catalogue) -> Vec<TagFacts> {
    let built = catalogue.fittings.values().filter(|fitting| fitting.status == Status::Current);
    built.map(|fitting| tag::facts(fitting, catalogue)).collect()
}

#[cfg(test)]
mod tag_tests;
