#![doc = include_str!("../explain/codes/grip-not-known.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Verdict;
use crate::mixups::{own, words};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        for own in own(fitting, &context.catalogue.settings.limits) {
            if own.outcome.verdict != Verdict::Unknown {
                continue;
            }
            let missing = words::missing(&own.outcome);
            let why = if missing.is_empty() {
                "can't be computed for a conductor of this make".to_owned()
            } else {
                format!("is not known without {missing}")
            };
            let message = format!("whether {} holds {} {why}", own.part.number, own.conductor.id);
            let finding = on_fitting(Severity::Note, "grip-not-known", fitting, "parts", message)
                .related(own.part.origin.place.clone(), "the part");
            let keys = own.outcome.missing.join(", ");
            findings.push(if keys.is_empty() { finding } else { finding.help(format!("add {keys}")) });
        }
    }
}
