#![doc = include_str!("../explain/codes/limit-looser.md")]

use super::Context;
use crate::catalogue::Limits;
use crate::diagnostics::{Finding, Findings};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let settings = &context.catalogue.settings;
    for (key, value, usual, is_looser) in compared(&settings.limits, &Limits::default()) {
        if !is_looser {
            continue;
        }
        let field = format!("limits.{key}");
        let message = "this limit lets pass more than the usual one".to_owned();
        let finding = Finding::note("limit-looser", settings.origin.of(&field), message).field(field);
        let finding = finding.found(value.to_string()).expected(format!("{usual}, the usual one"));
        findings.push(finding.help("leave it where local rules give it; else take the line out"));
    }
}

/// Key, value, the usual value and whether it is looser. Those left out change no verdict.
fn compared(own: &Limits, usual: &Limits) -> [(&'static str, f64, f64, bool); 10] {
    let at_most = |key, own: f64, usual: f64| (key, own, usual, own > usual);
    let at_least = |key, own: f64, usual: f64| (key, own, usual, own < usual);
    [
        at_most("section_tolerance_percent", own.section_tolerance_percent, usual.section_tolerance_percent),
        at_most("diameter_tolerance_mm", own.diameter_tolerance.mm(), usual.diameter_tolerance.mm()),
        at_most("nominal_tolerance_percent", own.nominal_tolerance_percent, usual.nominal_tolerance_percent),
        at_least(
            "holding_percent_of_breaking_load",
            own.holding_percent_of_breaking_load,
            usual.holding_percent_of_breaking_load,
        ),
        at_most(
            "tension_percent_of_breaking_load",
            own.tension_percent_of_breaking_load,
            usual.tension_percent_of_breaking_load,
        ),
        at_most("wire_friction", own.wire_friction, usual.wire_friction),
        at_least("seat_friction", own.seat_friction, usual.seat_friction),
        at_least("closure_reserve_mm", own.closure_reserve.mm(), usual.closure_reserve.mm()),
        at_least("visible_stand_out_mm", own.visible_stand_out.mm(), usual.visible_stand_out.mm()),
        at_least("mark_difference", own.mark_difference, usual.mark_difference),
    ]
}
