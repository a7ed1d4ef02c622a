#![doc = include_str!("../explain/codes/supersession-does-not-fit.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::{Fitting, Status};
use crate::diagnostics::{Finding, Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let all = &context.catalogue.fittings;
    for fitting in all.values() {
        let Some(instead) = fitting.use_instead.as_ref().and_then(|number| all.get(number)) else { continue };
        findings.extend(other_conductor(fitting, instead));
        findings.extend(unusable(fitting, instead));
    }
}

fn other_conductor(fitting: &Fitting, instead: &Fitting) -> Option<Finding> {
    let held = |id: &str| instead.conductors.iter().any(|conductor| conductor.id == id);
    let lost = fitting.conductors.iter().find(|conductor| !held(&conductor.id))?;
    let message = format!("{} is to be used instead, and it is not for {}", instead.number, lost.id);
    let finding = on_fitting(Severity::Error, "supersession-does-not-fit", fitting, "superseded_by", message);
    Some(
        finding.related(instead.place_of("conductor"), format!("what {} is for", instead.number)).help(
            "name the fitting for that conductor, or write `status: withdrawn` where nothing replaces it",
        ),
    )
}

fn unusable(fitting: &Fitting, instead: &Fitting) -> Option<Finding> {
    let status = match instead.status {
        Status::Current | Status::Superseded => return None,
        Status::OnHold => "on hold",
        Status::Withdrawn => "withdrawn",
    };
    let message = format!("{} is to be used instead, and it is {status}", instead.number);
    let finding =
        on_fitting(Severity::Warning, "supersession-does-not-fit", fitting, "superseded_by", message);
    let help = "name a fitting that may be used, or write `status: withdrawn`";
    Some(finding.related(instead.place_of("status"), "its status").help(help))
}
