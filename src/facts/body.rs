//! The facts of a shared body's card.

use super::ground::Ground;
use super::{BodyColumn, BodyFacts, BodyPart, BodyRow, CardFacts, Cell, CellKind, Content, mark, words};
use crate::catalogue::{Conductor, Fitting, Part};
use crate::mixups::{BodyMixups, Case, Mixups, Summary};
use std::sync::Arc;

/// The facts of a body that at least two fittings share, where a part inside decides.
pub(super) fn facts(body: &Part, ground: &Ground<'_>) -> Option<CardFacts> {
    let found = deciding_parts(&body.number, ground)?;
    let fittings = ground.built_with(&body.number);
    let facts = BodyFacts {
        stamp: body.stamp.clone(),
        fittings: columns(fittings).map(|(fitting, conductor)| column(fitting, conductor)).collect(),
        parts: found.parts.iter().map(|part| body_part(part, found)).collect(),
        rows: found.parts.iter().map(|part| row(part, fittings, found)).collect(),
    };
    Some(CardFacts {
        number: body.number.clone(),
        title: body.name.clone(),
        status: body.status,
        status_words: words::status(body.status, None),
        before_work: ground.catalogue.settings.before_work.clone(),
        content: Content::Body(Box::new(facts)),
        caution: ground.catalogue.settings.caution.clone(),
    })
}

/// The number of the first of a fitting's bodies that has a card of its own.
pub(super) fn shared_body(fitting: &Fitting, ground: &Ground<'_>) -> Option<String> {
    let mut bodies = fitting.bodies().map(|item| &item.part.number);
    bodies.find(|body| deciding_parts(body, ground).is_some()).cloned()
}

fn deciding_parts<'g>(body: &str, ground: &'g Ground<'_>) -> Option<&'g BodyMixups> {
    body_with_card(body, ground.built_with(body).len(), ground.mixups)
}

/// What goes into a body that so many fittings have, where it has a card of its own: they share it, and something inside
/// decides whether they hold. Else a card would have nothing to tell apart.
#[must_use]
pub fn body_with_card<'m>(body: &str, fittings: usize, mixups: &'m Mixups) -> Option<&'m BodyMixups> {
    mixups.body(body).filter(|found| fittings > 1 && !found.parts.is_empty())
}

/// A column for each conductor of each fitting.
fn columns<'a>(
    fittings: &'a [&'a Arc<Fitting>],
) -> impl Iterator<Item = (&'a Arc<Fitting>, &'a Arc<Conductor>)> {
    fittings.iter().flat_map(|fitting| {
        let each = fitting.conductors.iter().enumerate().filter(|(nth, conductor)| {
            fitting.conductors.iter().position(|other| other.id == conductor.id) == Some(*nth)
        });
        each.map(|(_, conductor)| (*fitting, conductor))
    })
}

fn column(fitting: &Fitting, conductor: &Conductor) -> BodyColumn {
    BodyColumn {
        number: fitting.number.clone(),
        conductor: conductor.name.clone(),
        status_words: words::status(fitting.status, fitting.use_instead.as_deref()),
    }
}

fn body_part(part: &Part, found: &BodyMixups) -> BodyPart {
    let mut conductors: Vec<String> = found
        .cases
        .iter()
        .filter(|case| case.right && case.part.number == part.number)
        .map(|case| case.conductor.name.clone())
        .collect();
    conductors.sort();
    conductors.dedup();
    BodyPart {
        number: part.number.clone(),
        name: part.name.clone(),
        stamp: part.stamp.clone(),
        mark: found
            .cases
            .iter()
            .find(|case| case.part.number == part.number)
            .and_then(|case| case.mark.as_ref())
            .map(mark::facts),
        conductors,
        status_words: words::status(part.status, None),
    }
}

fn row(part: &Part, fittings: &[&Arc<Fitting>], found: &BodyMixups) -> BodyRow {
    let cells = columns(fittings).map(|(fitting, conductor)| {
        found.case(&part.number, &fitting.number, &conductor.id).map(cell).unwrap_or_default()
    });
    BodyRow { part: part.number.clone(), cells: cells.collect() }
}

fn cell(case: &Case) -> Cell {
    Cell {
        text: words::to_build(&case.fitting, case).to_owned(),
        noticed: words::unmeasured(case).unwrap_or_default(),
        kind: kind(case),
    }
}

fn kind(case: &Case) -> CellKind {
    match case.summary {
        _ if words::must_not_be_built(&case.fitting, case) => CellKind::Barred,
        Summary::Right => CellKind::Right,
        Summary::WillNotGoIn => CellKind::Apart,
        Summary::ProvenHereToo => CellKind::Proven,
        // Whoever finds a withdrawn part leaves it, whether it would be seen afterwards or not: one sign for its words.
        Summary::Withdrawn => CellKind::Barred,
        _ if case.hidden => CellKind::Hidden,
        Summary::NotKnown => CellKind::Unknown,
        _ => CellKind::Shows,
    }
}
