#![doc = include_str!("../explain/codes/steps-out-of-order.md")]

use super::Context;
use super::inspected::on_wording;
use crate::catalogue::{Fitting, PieceKind, Step};
use crate::diagnostics::{Finding, Findings, Severity};

const CODE: &str = "steps-out-of-order";

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        findings.extend(going_back(fitting));
        findings.extend(stated_twice(fitting));
        findings.extend(tensioned_too_early(fitting));
    }
}

fn going_back(fitting: &Fitting) -> Option<Finding> {
    let staged = fitting.steps.iter().filter_map(|step| Some((step, step.stage?)));
    let mut reached = None;
    for (step, stage) in staged {
        let before = reached.replace(stage);
        if let Some(before) = before.filter(|before| *before > stage) {
            let message = format!(
                "this step is of the stage `{}`, the one before it `{}`",
                stage.word(),
                before.word()
            );
            let finding = on_wording(Severity::Warning, CODE, fitting, &step.wording, 0, message);
            return Some(finding.help("put the steps in the order of the work"));
        }
    }
    None
}

/// A step that closes or measures what the line has been tensioned on before: told by the values that steps name.
fn tensioned_too_early(fitting: &Fitting) -> Option<Finding> {
    let names = |step: &Step, value: &str| {
        step.wording.pieces().iter().any(|piece| match piece.kind {
            PieceKind::Value(named) => named.split('.').next() == Some(value),
            PieceKind::Words(_) | PieceKind::Unclosed(_) => false,
        })
    };
    let tensioned = fitting.steps.iter().position(|step| names(step, "tensioned"))?;
    let late = |value: &'static str| {
        let stated = |steps: &[Step]| steps.iter().any(|step| names(step, value));
        // A value that is named again later was named before it, too.
        let (before, behind) = fitting.steps.split_at(tensioned + 1);
        (!stated(before)).then(|| behind.iter().find(|step| names(step, value)))?.map(|step| (value, step))
    };
    let (value, step) = late("torque").or_else(|| late("seated"))?;
    let message = format!("this step has `{{{value}}}`, and a step before it has `{{tensioned}}`");
    let finding = on_wording(Severity::Warning, CODE, fitting, &step.wording, 0, message);
    Some(finding.help("close and measure first; the line is tensioned on a closed fitting"))
}

/// A step that says the very same as the one before it.
fn stated_twice(fitting: &Fitting) -> Option<Finding> {
    let twice = fitting.steps.windows(2).find(|pair| pair[0].wording.text == pair[1].wording.text)?;
    let step = &twice[1].wording;
    let finding =
        on_wording(Severity::Warning, CODE, fitting, step, 0, "this step is the one before it".to_owned());
    Some(finding.found(&*step.text).help("take it out, or say what is done the second time"))
}
