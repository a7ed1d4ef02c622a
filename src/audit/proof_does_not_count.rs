#![doc = include_str!("../explain/codes/proof-does-not-count.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::catalogue::{Part, Proof};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::{Shortfall, proof_counts};
use crate::units::Numerals;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for part in context.catalogue.parts.values() {
        for (nth, proof) in part.proven_on.iter().enumerate() {
            let Some(shortfall) = shortfall(context, part, proof) else { continue };
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

fn shortfall(context: Context<'_>, part: &Part, proof: &Proof) -> Option<Shortfall> {
    let goes_into = |number: &str| {
        context.mixups.bodies.iter().any(|body| {
            body.body.number == number && body.parts.iter().any(|inside| inside.number == part.number)
        })
    };
    let has_body =
        context.mixups.bodies.iter().any(|body| body.parts.iter().any(|inside| inside.number == part.number));
    let limits = &context.catalogue.settings.limits;
    match proof_counts(proof, part, context.catalogue.parts.get(&proof.body).map(AsRef::as_ref), limits) {
        Err(shortfall) => Some(shortfall),
        Ok(()) if proof.body.is_empty() && has_body => Some(Shortfall::NoBody),
        Ok(()) if has_body && !goes_into(&proof.body) => Some(Shortfall::OtherBody),
        Ok(()) => None,
    }
}

fn words(shortfall: Shortfall, numerals: Numerals) -> String {
    match shortfall {
        Shortfall::NoReport => "it names no report".into(),
        Shortfall::NoBody => "it names no body".into(),
        Shortfall::OtherBody => "it was made in a body that the part does not go into".into(),
        Shortfall::NoLoad => "it states no load".into(),
        Shortfall::BreakingLoadNotKnown => "the conductor's breaking load is not known".into(),
        Shortfall::TooLittle { shown, asked } => format!(
            "it shows {} % of the breaking load, less than the {} % that are needed",
            numerals.fixed(shown, 1),
            numerals.shortest(asked, 1)
        ),
    }
}
