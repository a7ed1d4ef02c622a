#![doc = include_str!("../explain/codes/drum-tags-alike.md")]

use super::Context;
use crate::colour::{reads_as, reads_worn};
use crate::diagnostics::{Finding, Findings};
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let mut first = BTreeMap::new();
    for conductor in context.catalogue.conductors.values() {
        let tag = &conductor.identity.drum_tag;
        let plain = reads_worn(tag);
        if plain.is_empty() {
            continue;
        }
        let other = *first.entry(plain).or_insert(conductor);
        if other.id == conductor.id {
            continue;
        }
        let field = "identity.drum_tag";
        let is_same = reads_as(tag) == reads_as(&other.identity.drum_tag);
        let message = if is_same {
            format!("{} has the same drum tag", other.id)
        } else {
            format!("worn or dirty, it reads as the drum tag of {} does", other.id)
        };
        let finding = Finding::warning("drum-tags-alike", conductor.origin.of(field), message)
            .record(&conductor.id)
            .field(field)
            .found(&**tag)
            .related(other.origin.of(field), format!("the other tag, {}", other.identity.drum_tag));
        findings
            .push(finding.help("read the tags of both drums: one of the records may be mistyped or copied"));
    }
}
