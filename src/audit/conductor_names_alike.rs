#![doc = include_str!("../explain/codes/conductor-names-alike.md")]

use super::Context;
use crate::colour::reads_as_name;
use crate::diagnostics::{Finding, Findings};
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let mut first = BTreeMap::new();
    for conductor in context.catalogue.conductors.values() {
        let other = *first.entry(reads_as_name(&conductor.name)).or_insert(conductor);
        if other.id == conductor.id {
            continue;
        }
        let message = format!("{} has the same name, and cards say nothing else of which it is", other.id);
        findings.push(
            Finding::warning("conductor-names-alike", conductor.origin.of("name"), message)
                .record(&conductor.id)
                .field("name")
                .found(&*conductor.name)
                .related(other.origin.of("name"), "the other name")
                .help("give each a name that tells it apart, such as its metal or its maker's tag"),
        );
    }
}
