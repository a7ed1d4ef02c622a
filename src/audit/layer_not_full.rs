//! `layer-not-full`: a layer of a stranded conductor with room for more than one wire beyond its own.
//!
//! Why: wires of a layer that is not full lie loose and move under a clamp; mostly the number of wires or their
//! diameter is wrong, and so are section and load.
//!
//! To put it right: check the number of wires and their diameter against the specification.

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
