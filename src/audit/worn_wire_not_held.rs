#![doc = include_str!("../explain/codes/worn-wire-not-held.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Verdict;
use crate::mixups::{own, own_worn};

/// The height that decides, by its key and in words.
const STOP_HEIGHT: (&str, &str) = ("construction.grooved.wear.stop_height_mm", "the stop height");
/// Where no stop height is stated.
const WEAR: (&str, &str) = ("construction.grooved.wear", "the heights, of which the lowest counts");

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let limits = &context.catalogue.settings.limits;
    for fitting in built(context) {
        let new = own(fitting, limits);
        for worn in own_worn(fitting, limits) {
            let new = new
                .iter()
                .find(|own| own.part.number == worn.part.number && own.conductor.id == worn.conductor.id);
            let holds = match (new.map(|own| own.outcome.verdict), worn.outcome.verdict) {
                (_, Verdict::Grips | Verdict::Unknown) => continue,
                (Some(Verdict::Grips), _) => "holds",
                // Whether it holds at all is told where it may not hold when it is new.
                (Some(Verdict::Marginal), worn) if worn != Verdict::Marginal => "may hold",
                _ => continue,
            };
            let height = worn.conductor.lowest_height().unwrap_or_default();
            let stops = worn.conductor.wear.as_ref().is_some_and(|wear| wear.stop_height.is_some());
            let (key, words) = if stops { STOP_HEIGHT } else { WEAR };
            let message = format!(
                "{} {holds} {} when it is new, but {} when it is worn to {}",
                worn.part.number,
                worn.conductor.id,
                if worn.outcome.verdict == Verdict::Marginal { "may not" } else { "not" },
                numerals(context).length(height, 1)
            );
            let finding = on_fitting(Severity::Error, "worn-wire-not-held", fitting, "parts", message)
                .related(worn.conductor.origin.of(key), words);
            findings.push(finding.help("let the wedge bear on the wire's width, or give it more travel"));
        }
    }
}
