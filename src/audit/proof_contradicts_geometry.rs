#![doc = include_str!("../explain/codes/proof-contradicts-geometry.md")]

use super::Context;
use super::inspected::on_part;
use crate::catalogue::Part;
use crate::diagnostics::{Findings, Severity};
use crate::mixups::{Case, Summary, contradicted};
use std::collections::BTreeSet;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let mut told: BTreeSet<(&str, usize)> = BTreeSet::new();
    let bodies = context.mixups.bodies.iter();
    let cases = bodies.flat_map(|body| body.cases.iter().map(move |case| (Some(&*body.body), case)));
    let open = context.mixups.without_body.iter().flat_map(|interface| &interface.cases);
    for (body, case) in cases.chain(open.map(|case| (None, case))) {
        for nth in proofs(body, case) {
            if contradicted(&case.outcome) && told.insert((&case.part.number, nth)) {
                findings.push(finding(case, nth));
            }
        }
    }
}

/// The proofs of a case's part on its conductor in its body.
fn proofs<'a>(body: Option<&'a Part>, case: &'a Case) -> impl Iterator<Item = usize> + 'a {
    let here = move |stated: &str| body.is_none_or(|body| body.number == stated);
    let proofs = case.part.proven_on.iter().enumerate();
    proofs
        .filter(move |(_, proof)| proof.conductor.id == case.conductor.id && here(&proof.body))
        .map(|(nth, _)| nth)
}

fn finding(case: &Case, nth: usize) -> crate::diagnostics::Finding {
    let summary = Summary::of_wrong(&case.outcome).words();
    let message = format!(
        "it is said to be proven on {} in {}, and its measurements say: {summary}",
        case.conductor.id, case.fitting.number
    );
    on_part(Severity::Error, "proof-contradicts-geometry", &case.part, &format!("proven_on.{nth}"), message)
        .related(case.part.origin.of("geometry"), "the part's measurements")
        .help("check the report, its conductor and body, and the measurements of the parts")
}
