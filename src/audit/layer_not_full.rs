#![doc = include_str!("../explain/codes/layer-not-full.md")]

use super::Context;
use super::conductors::warning;
use crate::diagnostics::Findings;
use crate::section::room;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for conductor in context.catalogue.conductors.values() {
        for room in room(&conductor.construction).unwrap_or_default() {
            let message =
                format!("a layer of {} wires has room for {} more", room.wires, room.full - room.wires);
            let finding = warning(conductor, "layer-not-full", &room.field, message)
                .found(room.wires.to_string())
                .expected(format!("{} wires make this layer full", room.full));
            findings
                .push(finding.help("check the number of wires and their diameter against the specification"));
        }
    }
}
