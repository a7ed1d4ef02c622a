//! `proof-too-weak`: a part said to be proven on a conductor without a report, or with a load under the
//! limit.
//!
//! Why: a proof takes a mix-up off the list of dangers; one that nobody can look up, or that shows too
//! little, must not.
//!
//! To put it right: name the report; where the load is right, take the proof out.

use super::Context;
use super::inspected::{breaking_load, numerals, on_part};
use crate::catalogue::Proof;
use crate::diagnostics::{Findings, Severity};
use crate::grip::holding_percent;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for part in context.catalogue.parts.values() {
        for (nth, proof) in part.proven_on.iter().enumerate() {
            let Some(message) = weakness(context, proof) else { continue };
            let field = format!("proven_on.{nth}");
            let finding = on_part(Severity::Warning, "proof-too-weak", part, &field, message);
            findings.push(finding.help("name the report; where the load is right, take the proof out"));
        }
    }
}

fn weakness(context: Context<'_>, proof: &Proof) -> Option<String> {
    let wire = &proof.conductor;
    if proof.report.is_empty() {
        return Some(format!("its proof on {} names no report", wire.id));
    }
    let limit = context.catalogue.settings.limits.holding_percent_of_breaking_load;
    let percent = holding_percent(proof.holding_load?, breaking_load(wire)?);
    (percent < limit - 1e-9).then(|| {
        let numerals = numerals(context);
        format!(
            "its proof on {} shows {} % of the breaking load, under the limit of {} %",
            wire.id,
            numerals.fixed(percent, 1),
            numerals.shortest(limit, 1)
        )
    })
}
