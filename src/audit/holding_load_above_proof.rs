#![doc = include_str!("../explain/codes/holding-load-above-proof.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::{Conductor, Fitting, Part};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::mixups::best_proof;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        let parts = fitting.gripping().map(|item| item.part.as_ref());
        let pairs = parts.flat_map(|part| fitting.conductors.iter().map(move |held| (part, held)));
        findings.extend(pairs.filter_map(|(part, held)| above(context, fitting, part, held)));
    }
}

fn above(context: Context<'_>, fitting: &Fitting, part: &Part, held: &Conductor) -> Option<Finding> {
    const FIELD: &str = "holding_load_kN";
    let holding = fitting.holding_load?;
    let proof = best_proof(fitting, part, held, &context.catalogue.settings.limits)?;
    let shown = proof.holding_load?;
    if holding.newtons() <= shown.newtons() + 1e-6 {
        return None;
    }
    let numerals = numerals(context);
    let shown_as_stated = format!("{}\u{a0}kN", numerals.shortest(shown.kn(), 3));
    let message = format!("no test of {} on {} has shown that it holds so much", part.number, held.id);
    let nth = part.proven_on.iter().position(|known| std::ptr::eq(known, proof))?;
    let tested = part.origin.of(&format!("proven_on.{nth}.{FIELD}"));
    let finding = on_fitting(Severity::Warning, "holding-load-above-proof", fitting, FIELD, message)
        .found(fitting.with_unit(FIELD, holding.kn(), "kN", numerals))
        .expected(format!("at most {}, as report {} says", shown_as_stated, proof.report))
        .related(tested, "what the test showed");
    Some(finding.help("check both loads against the report; the card prints the holding load as proven"))
}
