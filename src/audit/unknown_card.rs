#![doc = include_str!("../explain/codes/unknown-card.md")]

use super::Context;
use crate::catalogue::{Catalogue, Holder, Role};
use crate::diagnostics::{Finding, Findings};
use crate::facts;
use std::collections::BTreeMap;

/// Copies of bodies that have no card; numbers that no fitting and no body has are told where records are linked.
pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    // What is left out may be the fitting that shares the body.
    if context.catalogue.gaps.deciding > 0 {
        return;
    }
    let bodies = fittings_of_bodies(context.catalogue);
    for holder in context.catalogue.holders.values() {
        for number in holder.copies.keys() {
            findings.extend(without_card(context, &bodies, holder, number));
        }
    }
}

fn without_card(context: Context<'_>, bodies: &Bodies<'_>, holder: &Holder, number: &str) -> Option<Finding> {
    context.catalogue.parts.get(number).filter(|part| part.role == Role::Body)?;
    let fittings = bodies.get(number).map(Vec::as_slice).unwrap_or_default();
    if facts::body_with_card(number, fittings.len(), context.mixups).is_some() {
        return None;
    }
    let (message, help) = match fittings {
        [] => ("no fitting has it".to_owned(), "take it out".to_owned()),
        [one] => (
            format!("only {one} has it"),
            format!("give the copies of `{one}`: its card tells all of this body"),
        ),
        [first, ..] => (
            "nothing inside it decides whether a fitting holds".to_owned(),
            format!("give copies of its fittings, such as `{first}`"),
        ),
    };
    let field = format!("copies.{number}");
    let message = format!("the body `{number}` has no card of its own: {message}");
    let finding = Finding::error("unknown-card", holder.origin.of(&field), message);
    Some(finding.record(&holder.id).field(field).help(help))
}

/// The numbers of the fittings of each body, by the body's number.
type Bodies<'a> = BTreeMap<&'a str, Vec<&'a str>>;

fn fittings_of_bodies(catalogue: &Catalogue) -> Bodies<'_> {
    let mut bodies = Bodies::new();
    for fitting in catalogue.fittings.values() {
        for item in fitting.bodies() {
            bodies.entry(&item.part.number).or_default().push(&fitting.number);
        }
    }
    bodies
}
