#![doc = include_str!("../explain/codes/mark-colour-reserved.md")]

use super::Context;
use crate::catalogue::Origin;
use crate::colour::{ColourCode, Mark};
use crate::diagnostics::{Finding, Findings};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for Marked { record, origin, mark } in marked(context) {
        if matches!(mark.colour, ColourCode::GN | ColourCode::YE) {
            let message = format!("earthing uses {} too", mark.colour.word());
            let finding = Finding::note("mark-colour-reserved", origin.of("mark.colour"), message)
                .record(record)
                .field("mark.colour")
                .found(mark.colour.letters());
            findings.push(finding.help("use another colour if one is free"));
        }
    }
}

/// A mark with the record that states it.
pub(super) struct Marked<'a> {
    pub(super) record: &'a str,
    pub(super) origin: &'a Origin,
    pub(super) mark: &'a Mark,
}

/// Every mark that a part or a fitting states itself.
pub(super) fn marked<'a>(context: Context<'a>) -> impl Iterator<Item = Marked<'a>> {
    let parts = context.catalogue.parts.values().filter_map(|part| {
        Some(Marked { record: part.number.as_str(), origin: &part.origin, mark: part.mark.as_ref()? })
    });
    let fittings = context.catalogue.fittings.values().filter_map(|fitting| {
        let stated = fitting.origin.fields.contains_key("mark");
        let mark = fitting.mark.as_ref().filter(|_| stated)?;
        Some(Marked { record: fitting.number.as_str(), origin: &fitting.origin, mark })
    });
    parts.chain(fittings)
}
