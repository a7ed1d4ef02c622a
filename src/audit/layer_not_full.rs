#![doc = include_str!("../explain/codes/layer-not-full.md")]

use super::Context;
use super::conductors::warning;
use crate::diagnostics::Findings;
use crate::section::{Room, room};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for conductor in context.catalogue.conductors.values() {
        for room in room(&conductor.construction).unwrap_or_default() {
            let finding = warning(conductor, "layer-not-full", &room.field, room.message())
                .found(room.wires.to_string())
                .expected(room.expected());
            findings.push(finding.help(Room::HELP));
        }
    }
}
