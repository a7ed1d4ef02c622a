#![doc = include_str!("../explain/codes/interfaces-alike.md")]

use super::Context;
use super::inspected::on_part;
use crate::catalogue::{Part, Role};
use crate::colour::reads_as_name;
use crate::diagnostics::{Findings, Severity};
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// Parts by the way in which they write an interface.
type Written<'a> = BTreeMap<&'a str, Vec<&'a Part>>;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for written in by_place(context).values().filter(|written| written.len() > 1) {
        let Some(usual) = usual(written) else { continue };
        let others = written.values().flatten().filter(|part| part.interface != usual.interface);
        for part in others {
            let message = format!("it reads as the interface of {}, and is not the same", usual.number);
            let finding = on_part(Severity::Error, "interfaces-alike", part, "interface", message)
                .found(&*part.interface)
                .expected(&*usual.interface)
                .related(usual.origin.of("interface"), format!("the interface of {}", usual.number));
            findings.push(finding.help("write it the same way, or give the other place a name of its own"));
        }
    }
}

fn by_place(context: Context<'_>) -> BTreeMap<(Role, String), Written<'_>> {
    let mut places: BTreeMap<(Role, String), Written<'_>> = BTreeMap::new();
    for part in context.catalogue.parts.values().filter(|part| !part.interface.is_empty()) {
        let written = places.entry((part.role, reads_as_name(&part.interface))).or_default();
        written.entry(&part.interface).or_default().push(part);
    }
    places
}

/// The first part that writes it as most parts do; of two ways that are as frequent, the one of the first number.
fn usual<'a>(written: &Written<'a>) -> Option<&'a Part> {
    let rank = |parts: &&Vec<&Part>| (parts.len(), Reverse(parts[0].number.clone()));
    written.values().max_by_key(rank).map(|parts| parts[0])
}
