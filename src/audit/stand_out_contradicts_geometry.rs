#![doc = include_str!("../explain/codes/stand-out-contradicts-geometry.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::{Fitting, StandOutFrom};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::facts::stated_window;
use crate::mixups::{Own, own};
use crate::units::{Length, Numerals, Range};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let of_the_part = |from| matches!(from, StandOutFrom::ConeFace | StandOutFrom::WedgeEnd);
        let Some(stated) = fitting.stand_out.as_ref().filter(|stated| of_the_part(stated.from)) else {
            continue;
        };
        let Some(window) = stated.seated else { continue };
        let limits = &context.catalogue.settings.limits;
        let all = own(fitting, limits);
        findings.extend(too_wide(fitting, window, &all, limits.visible_stand_out, numerals));
        for own in &all {
            let (Some(at), Some(interval)) = (own.outcome.stand_out, own.outcome.stand_out_interval) else {
                continue;
            };
            let (severity, what) = if !inside(at, window) {
                (Severity::Error, "lies outside the window")
            } else if !inside(interval.least(), window) || !inside(interval.most(), window) {
                (Severity::Warning, "can lie outside the window, within its tolerances")
            } else {
                continue;
            };
            let message = format!("the right stand-out of {} {what}", own.part.number);
            let finding = on_fitting(
                severity,
                "stand-out-contradicts-geometry",
                fitting,
                "stand_out.seated_mm",
                message,
            )
            .found(stated_window(fitting, "stand_out.seated_mm", window.map(Length::mm), "mm", numerals))
            .expected(format!(
                "{} computed, {} with tolerances",
                numerals.length(at, 1),
                numerals.range(interval.map(Length::mm), 1, "mm")
            ))
            .related(own.part.origin.of("geometry"), "the part's measurements");
            findings.push(finding.help("check the window and the measurements of part and conductor"));
        }
    }
}

/// A window that lets pass what anybody sees is wrong: on no conductor of the fitting its own part can stand there.
fn too_wide(
    fitting: &Fitting,
    window: Range<Length>,
    all: &[Own],
    visible: Length,
    numerals: Numerals,
) -> Option<Finding> {
    let intervals: Option<Vec<Range<Length>>> =
        all.iter().map(|own| own.outcome.stand_out_interval).collect();
    let reach = intervals?
        .into_iter()
        .reduce(|one, other| Range::between(one.least().min(other.least()), one.most().max(other.most())))?;
    // Where none of it is right, that is told already.
    window.overlap(reach)?;
    // A wedge sinks on worn wire.
    let sinks = all.iter().any(|own| own.conductor.lowest_height().is_some());
    let what = if window.most() > reach.most() + visible {
        "more"
    } else if window.least() < reach.least() - visible && !sinks {
        "less"
    } else {
        return None;
    };
    let message = format!("the window lets pass {what} than its own part can stand out");
    let field = "stand_out.seated_mm";
    let finding = on_fitting(Severity::Warning, "stand-out-contradicts-geometry", fitting, field, message)
        .found(stated_window(fitting, field, window.map(Length::mm), "mm", numerals))
        .expected(format!("{} computed with tolerances", numerals.range(reach.map(Length::mm), 1, "mm")));
    Some(finding.help("check both ends of the window, the minus of what is sunk among them"))
}

fn inside(length: Length, window: Range<Length>) -> bool {
    window.widened(Length::from_mm(1e-9)).contains(length)
}
