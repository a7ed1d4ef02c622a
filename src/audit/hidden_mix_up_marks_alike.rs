#![doc = include_str!("../explain/codes/hidden-mix-up-marks-alike.md")]

use super::Context;
use super::inspected::{numerals, on_fitting};
use super::proposals::Proposals;
use super::unseen::{Unseen, hidden};
use crate::catalogue::{Fitting, Part};
use crate::colour::{Mark, compare};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::{alike_in_place, mark_limits, marks};
use std::cell::OnceCell;
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let proposals = OnceCell::new();
    let marks = marks(context.catalogue);
    for (fitting, unseen) in hidden(context) {
        for unseen in unseen.into_iter().filter(|unseen| !unseen.comes.marks_distinct) {
            let message = format!(
                "{} goes into it, nobody sees it afterwards, and {}",
                unseen.name(numerals(context)),
                why(context, unseen, fitting, &marks)
            );
            let finding = on_fitting(Severity::Error, "hidden-mix-up-marks-alike", fitting, "parts", message)
                .related(unseen.origin().of("mark"), "what goes in wrongly")
                .help(proposals.get_or_init(|| Proposals::of(context)).help(&unseen.part.number));
            findings.push(finding);
        }
    }
}

type Marks<'a> = BTreeMap<&'a str, &'a Mark>;

/// Why the marks do not tell what is wrong from what is right.
fn why(context: Context<'_>, unseen: Unseen<'_>, fitting: &Fitting, marks: &Marks<'_>) -> String {
    let limits = mark_limits(&context.catalogue.settings.limits);
    let own = fitting.items.iter().map(|item| item.part.as_ref());
    let right: Vec<&Part> = own.filter(|own| alike_in_place(own, unseen.part)).collect();
    let Some(wrong) = &unseen.comes.mark else { return "it has no mark".into() };
    for own in &right {
        let Some(mark) = marks.get(own.number.as_str()) else {
            return format!("the right part {} has no mark", own.number);
        };
        let comparison = compare(wrong, mark, limits);
        if !comparison.distinct() {
            return format!("its mark can be confused with that of {}: {}", own.number, comparison.words());
        }
    }
    "no right part has a mark".into()
}
