#![doc = include_str!("../explain/codes/mark-text-is-stamp.md")]

use super::Context;
use super::inspected::on_part;
use crate::colour::reads_as;
use crate::diagnostics::{Findings, Place, Severity};
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let parts = context.catalogue.parts.values();
    let parts = parts.map(|part| (&*part.number, &*part.stamp, part.origin.of("stamp")));
    let fittings = context.catalogue.fittings.values();
    let fittings = fittings.map(|fitting| (&*fitting.number, &*fitting.stamp, fitting.place_of("stamp")));
    let mut stamped: BTreeMap<String, Vec<(&str, Place)>> = BTreeMap::new();
    for (number, stamp, place) in parts.chain(fittings).filter(|(_, stamp, _)| !stamp.is_empty()) {
        stamped.entry(reads_as(stamp)).or_default().push((number, place));
    }
    for part in context.catalogue.parts.values() {
        let Some(mark) = part.mark.as_ref().filter(|mark| !mark.text.is_empty()) else { continue };
        let alike = stamped.get(&reads_as(&mark.text)).into_iter().flatten();
        let Some((other, place)) = alike.into_iter().find(|(number, _)| *number != part.number) else {
            continue;
        };
        let message = format!("its text is the stamp of {other}");
        let finding = on_part(Severity::Warning, "mark-text-is-stamp", part, "mark.text", message)
            .found(&*mark.text)
            .related(place.clone(), "the stamp");
        findings.push(finding.help("choose a text that is not stamped on any part or fitting"));
    }
}
