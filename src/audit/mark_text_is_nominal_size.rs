#![doc = include_str!("../explain/codes/mark-text-is-nominal-size.md")]

use super::Context;
use super::mark_colour_reserved::{Marked, marked};
use crate::colour::reads_as;
use crate::diagnostics::{Finding, Findings};
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let wires = context.catalogue.conductors.values();
    let sizes: BTreeMap<String, &str> = wires
        .rev()
        .filter_map(|wire| Some((wire.nominal_size?.mm2().to_string(), wire.id.as_str())))
        .collect();
    for Marked { record, origin, mark } in marked(context) {
        let Some(wire) = sizes.get(&reads_as(&mark.text)) else { continue };
        let message = format!("it reads like the nominal size of {wire}");
        let finding = Finding::warning("mark-text-is-nominal-size", origin.of("mark.text"), message)
            .record(record)
            .field("mark.text")
            .found(&*mark.text);
        findings.push(finding.help("choose a text without a meaning"));
    }
}
