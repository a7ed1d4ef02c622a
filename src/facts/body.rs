//! The facts of a shared body's card.

use super::{BodyFacts, BodyPart, BodyRow, CardFacts, Cell, CellKind, Content, mark, words};
use crate::catalogue::{Catalogue, Fitting, Part, Status};
use crate::grip::Verdict;
use crate::mixups::{self, BodyMixups, Case, Mixups};
use std::sync::Arc;

/// The facts of a body that at least two fittings share.
pub(super) fn facts(body: &Part, catalogue: &Catalogue, mixups: &Mixups) -> Option<CardFacts> {
    let fittings = built_with(body, catalogue);
    if fittings.len() < 2 {
        return None;
    }
    let mut facts = BodyFacts {
        stamp: body.stamp.clone(),
        fittings: fittings.iter().map(|fitting| (fitting.number.clone(), conductors(fitting))).collect(),
        ..BodyFacts::default()
    };
    if let Some(found) = mixups.bodies.iter().find(|found| found.body.number == body.number) {
        facts.parts = found.gripping_parts.iter().map(|part| body_part(part, found)).collect();
        facts.rows = found.gripping_parts.iter().map(|part| row(part, &fittings, found)).collect();
    }
    Some(CardFacts {
        number: body.number.clone(),
        title: body.name.clone(),
        status: body.status,
        status_words: words::status(body.status, None),
        content: Content::Body(Box::new(facts)),
        caution: catalogue.settings.caution.clone(),
    })
}

/// The number of the first of a fitting's bodies that has a card of its own.
pub(super) fn shared_body(fitting: &Fitting, catalogue: &Catalogue) -> Option<String> {
    fitting
        .bodies()
        .map(|item| &item.part)
        .find(|body| built_with(body, catalogue).len() > 1)
        .map(|body| body.number.clone())
}

fn built_with<'a>(body: &Part, catalogue: &'a Catalogue) -> Vec<&'a Arc<Fitting>> {
    catalogue
        .fittings
        .values()
        .filter(|fitting| fitting.items.iter().any(|item| item.part.number == body.number))
        .collect()
}

fn conductors(fitting: &Fitting) -> String {
    fitting.conductors.iter().map(|conductor| conductor.name.as_str()).collect::<Vec<_>>().join(" and ")
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
    }
}

fn row(part: &Part, fittings: &[&Arc<Fitting>], found: &BodyMixups) -> BodyRow {
    let cell = |fitting: &&Arc<Fitting>| {
        let case = found
            .cases
            .iter()
            .find(|case| case.part.number == part.number && case.fitting.number == fitting.number);
        case.map(cell).unwrap_or_default()
    };
    BodyRow { part: part.number.clone(), cells: fittings.iter().map(cell).collect() }
}

fn cell(case: &Case) -> Cell {
    Cell { text: mixups::words::verdict(case).to_owned(), kind: kind(case) }
}

fn kind(case: &Case) -> CellKind {
    match case.outcome.verdict {
        _ if case.right => CellKind::Right,
        Verdict::WillNotEnter => CellKind::Apart,
        Verdict::Grips | Verdict::Marginal if case.proven => match case.part.status {
            Status::Current => CellKind::Proven,
            Status::OnHold | Status::Withdrawn | Status::Superseded => CellKind::Barred,
        },
        _ if case.hidden => CellKind::Hidden,
        Verdict::Unknown => CellKind::Unknown,
        _ => CellKind::Shows,
    }
}
