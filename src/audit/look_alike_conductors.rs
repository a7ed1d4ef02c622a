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
}

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
