//! `mark-colours-too-close`: two marks of one body whose colours some eye can't tell apart.
//!
//! Why: one man in twelve sees red and green alike. CIEDE2000 between the printed colours is under
//! `limits.mark_difference` in normal sight or under a colour-vision deficiency at full severity.
//!
//! To put it right: take the colour that is proposed.

use super::Context;
use super::inspected::{Pair, on_part, pairs};
use crate::colour::{Likeness, Mark, compare, propose_mark};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::{mark_limits, marks};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let limits = mark_limits(&context.catalogue.settings.limits);
    for Pair { one, two } in pairs(context) {
        let close: Vec<String> = compare(one.1, two.1, limits)
            .likenesses
            .iter()
            .filter_map(|likeness| match likeness {
                Likeness::ColourTooClose { sight, difference } => {
                    Some(format!("{} ({difference:.1})", sight.words()))
                }
                _ => None,
            })
            .collect();
        if close.is_empty() {
            continue;
        }
        let message = format!(
            "{} looks like the {} of {} {}",
            two.1.colour.word(),
            one.1.colour.word(),
            one.0.number,
            close.join(" and ")
        );
        let finding = on_part(Severity::Error, "mark-colours-too-close", two.0, "mark.colour", message)
            .found(format!("{} beside {}", two.1.colour.letters(), one.1.colour.letters()))
            .expected(format!("a difference of at least {} for every eye", limits.difference))
            .related(one.0.origin.of("mark.colour"), "the other mark");
        findings.push(finding.help(proposal(context, &two.0.number)));
    }
}

/// A free mark for a part, beside all marks that it can meet.
pub(super) fn proposal(context: Context<'_>, part: &str) -> String {
    let marks = marks(context.catalogue);
    let met = context
        .mixups
        .bodies
        .iter()
        .map(|body| &body.gripping_parts)
        .filter(|parts| parts.iter().any(|other| other.number == part));
    let mut taken: Vec<Mark> = met
        .flatten()
        .filter(|other| other.number != part)
        .filter_map(|other| marks.get(other.number.as_str()).map(|mark| (*mark).clone()))
        .collect();
    taken.sort();
    taken.dedup();
    let stamps: Vec<&str> = context.catalogue.parts.values().map(|part| part.stamp.as_str()).collect();
    match propose_mark(&taken, &stamps, mark_limits(&context.catalogue.settings.limits)) {
        Some(free) => format!(
            "free in its bodies: {} ({}, text {}, notches {})",
            free.words(),
            free.colour.letters(),
            free.text,
            free.notches
        ),
        None => "no colour is free in its bodies: give a part another interface".into(),
    }
}
