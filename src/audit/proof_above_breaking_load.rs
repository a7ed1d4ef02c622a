#![doc = include_str!("../explain/codes/proof-above-breaking-load.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::catalogue::{Part, Proof};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::units::Numerals;

/// How many times its breaking load no conductor holds (own rule): one from a good drum holds a little more than its
/// rated load, and ten times as much is a misplaced digit.
const MOST_TIMES: f64 = 1.5;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for part in context.catalogue.parts.values() {
        let found = part.proven_on.iter().enumerate();
        findings.extend(found.filter_map(|(nth, proof)| above(part, nth, proof, numerals)));
    }
}

fn above(part: &Part, nth: usize, proof: &Proof, numerals: Numerals) -> Option<Finding> {
    let (load, breaking) = (proof.holding_load?, proof.conductor.breaking_load()?);
    if load <= breaking * MOST_TIMES {
        return None;
    }
    let message = format!("no {} holds so much: it breaks before", proof.conductor.id);
    let field = format!("proven_on.{nth}.holding_load_kN");
    let finding = on_part(Severity::Warning, "proof-above-breaking-load", part, &field, message)
        .found(numerals.force(load))
        .expected(format!("about its breaking load of {}", numerals.force(breaking)));
    Some(finding.help("check the load, its decimal point and its unit against the report, and the conductor"))
}
