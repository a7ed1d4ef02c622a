#![doc = include_str!("../explain/codes/interface-of-no-fitting.md")]

use super::Context;
use super::inspected::on_part;
use crate::catalogue::{Part, Role};
use crate::colour::reads_as_name;
use crate::diagnostics::{Findings, Severity, nearest};
use crate::mixups::decides;
use std::collections::BTreeSet;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    // A fitting that is left out for a fault may have the place.
    if !context.catalogue.left_out.is_empty() {
        return;
    }
    let fittings = context.catalogue.fittings.values();
    let used: Vec<&Part> =
        fittings.flat_map(|fitting| &fitting.items).map(|item| item.part.as_ref()).collect();
    let numbers: BTreeSet<&str> = used.iter().map(|part| part.number.as_str()).collect();
    let places: BTreeSet<(Role, String)> =
        used.iter().map(|part| (part.role, reads_as_name(&part.interface))).collect();
    let stated = context.catalogue.parts.values().filter(|part| !part.interface.is_empty());
    let stray = stated.filter(|part| {
        // What only reads as one of them is told as `interfaces-alike`.
        decides(part)
            && !numbers.contains(part.number.as_str())
            && !places.contains(&(part.role, reads_as_name(&part.interface)))
    });
    for part in stray {
        let same_role = used.iter().filter(|used| used.role == part.role && !used.interface.is_empty());
        let help = match nearest(&part.interface, same_role.map(|used| used.interface.as_str())) {
            Some(near) => format!("did you mean `{near}`?"),
            None => "write the interface as the parts do whose place it goes into".to_owned(),
        };
        let message = "no fitting has a part of this interface: no mix-up with it is looked for".to_owned();
        let finding = on_part(Severity::Warning, "interface-of-no-fitting", part, "interface", message);
        findings.push(finding.found(&*part.interface).help(help));
    }
}
