#![doc = include_str!("../explain/codes/proof-does-not-count.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::catalogue::{Part, Proof};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::{Shortfall, proof_counts};
use crate::units::Numerals;
use std::collections::{BTreeMap, BTreeSet};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    let going_in = going_in(context);
    for part in context.catalogue.parts.values() {
        for (nth, proof) in part.proven_on.iter().enumerate() {
            let bodies = going_in.get(&*part.number);
            let Some(shortfall) = shortfall(context, part, bodies, proof) else { continue };
            let message =
                format!("its proof on {} does not count: {}", proof.conductor.id, words(shortfall, numerals));
            let field = format!("proven_on.{nth}");
            let finding = on_part(Severity::Warning, "proof-does-not-count", part, &field, message);
            findings.push(
                finding.help("state report, body and load; if they are right already, delete the proof"),
            );
        }
    }
}

/// The bodies that each part goes into, by number.
type GoingIn<'a> = BTreeMap<&'a str, BTreeSet<&'a str>>;

fn going_in(context: Context<'_>) -> GoingIn<'_> {
    let mut going_in = GoingIn::new();
    for found in &context.mixups.bodies {
        for part in &found.parts {
            going_in.entry(&part.number).or_default().insert(&found.body.number);
        }
    }
    going_in
}

fn shortfall(
    context: Context<'_>,
    part: &Part,
    bodies: Option<&BTreeSet<&str>>,
    proof: &Proof,
) -> Option<Shortfall> {
    let has_body = bodies.is_some();
    let goes_into = |number: &str| bodies.is_some_and(|bodies| bodies.contains(number));
    let limits = &context.catalogue.settings.limits;
    match proof_counts(proof, part, context.catalogue.parts.get(&proof.body).map(AsRef::as_ref), limits) {
        // `date-to-come` tells it at the date.
        Err(Shortfall::ToCome) => None,
        Err(shortfall) => Some(shortfall),
        Ok(()) if proof.body.is_empty() && has_body => Some(Shortfall::NoBody),
        Ok(()) if has_body && !goes_into(&proof.body) => Some(Shortfall::OtherBody),
        Ok(()) => None,
    }
}

fn words(shortfall: Shortfall, numerals: Numerals) -> String {
    match shortfall {
        Shortfall::NoReport => "it names no report that can be looked up".into(),
        Shortfall::ToCome => "its day is still to come".into(),
        Shortfall::NoBody => "it names no body".into(),
        Shortfall::OtherBody => "it was made in a body that the part does not go into".into(),
        Shortfall::NoLoad => "it states no load".into(),
        Shortfall::BreakingLoadNotKnown => "the conductor's breaking load is not known".into(),
        Shortfall::TooLittle { shown, asked } => format!(
            "it shows {} % of the breaking load, less than the {} % that are needed",
            numerals.at_most(shown, 1),
            numerals.shortest(asked, 1)
        ),
    }
}
