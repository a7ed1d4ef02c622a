#![doc = include_str!("../explain/codes/hold-notice-stands.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::{Notice, Status};
use crate::diagnostics::{Findings, Severity};

/// Words by which a notice holds what it is about. From memory of circulars, no source.
const HOLDS: [&str; 2] = ["on hold", "do not build"];

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values().filter(|fitting| fitting.status == Status::Current) {
        for (nth, notice) in
            fitting.notices.iter().enumerate().filter(|(_, notice)| holds(notice, &fitting.number))
        {
            let message =
                format!("its status lets it be built, but its notice {} puts it on hold", notice.number);
            let field = format!("notices.{nth}");
            let finding = on_fitting(Severity::Warning, "hold-notice-stands", fitting, &field, message);
            findings.push(
                finding
                    .help("set `status: on-hold`, or take the notice out")
                    .related(notice.origin.place.clone(), "the notice"),
            );
        }
    }
}

/// Whether a notice holds a fitting: its title does, or a sentence of its summary that names the fitting.
fn holds(notice: &Notice, number: &str) -> bool {
    let says = |text: &str| HOLDS.iter().any(|words| text.to_lowercase().contains(words));
    says(&notice.title)
        || notice.summary.split(". ").any(|sentence| says(sentence) && sentence.contains(number))
}
