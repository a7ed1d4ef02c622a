#![doc = include_str!("../explain/codes/look-alike-conductors.md")]

use super::Context;
use super::inspected::{list, numerals};
use crate::diagnostics::{Finding, Findings};
use crate::mixups::{LookAlike, look_alikes};
use std::collections::BTreeMap;

/// A conductor that looks like many others needs no longer list to make the point.
const MOST_RELATED: usize = 5;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let all = look_alikes(context.catalogue);
    let mut by_one: BTreeMap<&str, Vec<&LookAlike>> = BTreeMap::new();
    for alike in &all {
        by_one.entry(&alike.one.id).or_default().push(alike);
    }
    for alikes in by_one.into_values() {
        findings.extend(finding(context, &alikes));
    }
    let mut by_other: BTreeMap<&str, Vec<&LookAlike>> = BTreeMap::new();
    for alike in all.iter().filter(|alike| !alike.settled_by_hand() && alike.labelled_alike()) {
        by_other.entry(&alike.other.id).or_default().push(alike);
    }
    findings.extend(by_other.into_values().filter_map(|alikes| labelled_alike(&alikes)));
}

/// Nothing by hand tells them apart, and neither do their labels.
fn labelled_alike(alikes: &[&LookAlike]) -> Option<Finding> {
    let other = &alikes.first()?.other;
    let ones: Vec<&str> = alikes.iter().map(|alike| alike.one.id.as_str()).collect();
    let message = format!("nothing by hand tells it from {}, and the drum tags say the same", list(&ones));
    let help = format!(
        "give each a drum tag or a tracer of its own; until then the line record must say which it is, {} or {}, and \
         cards say to read that",
        ones.join(", "),
        other.id
    );
    let place = other.origin.of(TAG);
    let mut finding = Finding::warning("look-alike-conductors", place, message)
        .record(&other.id)
        .field(TAG)
        .found(&*other.identity.drum_tag)
        .help(help);
    for alike in alikes.iter().take(MOST_RELATED) {
        finding = finding.related(alike.one.origin.of(TAG), format!("the drum tag of {}", alike.one.id));
    }
    Some(finding)
}

const TAG: &str = "identity.drum_tag";

fn finding(context: Context<'_>, alikes: &[&LookAlike]) -> Option<Finding> {
    let one = &alikes.first()?.one;
    let others: Vec<&str> = alikes.iter().map(|alike| alike.other.id.as_str()).collect();
    let message = format!("with a caliper nobody can tell it from {}", list(&others));
    let mut finding =
        Finding::note("look-alike-conductors", one.origin.place.clone(), message).record(&one.id);
    for alike in alikes.iter().take(MOST_RELATED) {
        let words = format!("{}: {}", alike.other.id, alike.words(numerals(context)));
        finding = finding.related(alike.other.origin.place.clone(), words);
    }
    Some(finding)
}
