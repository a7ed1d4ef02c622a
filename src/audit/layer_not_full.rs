#![doc = include_str!("../explain/codes/layer-not-full.md")]

use super::Context;
use super::conductors::warning;
use crate::diagnostics::Findings;
use crate::section::{LooseLayer, loose_layers};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for conductor in context.catalogue.conductors.values() {
        for layer in loose_layers(&conductor.construction).unwrap_or_default() {
            let finding = warning(conductor, "layer-not-full", &layer.field, layer.message())
                .found(layer.wires.to_string())
                .expected(layer.expected());
            findings.push(finding.help(LooseLayer::HELP));
        }
    }
}
