#![doc = include_str!("../explain/codes/line-tension-too-high.md")]

use super::Context;
use super::inspected::{numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::rope_end_keeps;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in context.catalogue.fittings.values() {
        let Some(used) = fitting.line_tension_max else { continue };
        let mut limits = Vec::new();
        limits.extend(fitting.holding_load.map(|load| {
            (
                "it may be used at more than it is proven to hold".to_owned(),
                "its holding load of".to_owned(),
                load,
            )
        }));
        limits.extend(fitting.conductors.iter().filter_map(|conductor| {
            let carried = conductor.carries()?;
            let message = format!("it may be used at more than {} carries", conductor.id);
            Some((message, format!("{} of", carried.words), carried.load))
        }));
        limits.extend(fitting.conductors.iter().filter_map(|conductor| {
            let kept = rope_end_keeps(fitting, conductor)?;
            let message =
                format!("it may be used at more than this kind of rope end holds of {}", conductor.id);
            Some((message, "what the end holds:".to_owned(), kept))
        }));
        for (message, what, load) in limits.into_iter().filter(|(.., load)| used > *load) {
            let finding =
                on_fitting(Severity::Error, "line-tension-too-high", fitting, "line_tension_max_kN", message)
                    .found(fitting.with_unit("line_tension_max_kN", used.kn(), "kN", numerals))
                    .expected(format!("at most {what} {}", numerals.force_at_most(load)));
            findings.push(finding.help("check the loads and their units"));
        }
    }
}
