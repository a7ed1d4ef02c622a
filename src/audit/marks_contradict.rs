#![doc = include_str!("../explain/codes/marks-contradict.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::Origin;
use crate::colour::Mark;
use crate::diagnostics::{Findings, Severity};
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let mut first: BTreeMap<&str, (&Mark, &Origin)> = BTreeMap::new();
    for part in context.catalogue.parts.values() {
        if let Some(mark) = &part.mark {
            first.insert(&part.number, (mark, &part.origin));
        }
    }
    for fitting in context.catalogue.fittings.values() {
        let Some(mark) = fitting.mark.as_ref().filter(|_| fitting.origin.fields.contains_key("mark")) else {
            continue;
        };
        let parts: Vec<&str> = fitting.gripping().map(|item| item.part.number.as_str()).collect();
        // A joint of two gripping parts carries the mark of one of them.
        if parts.iter().any(|part| first.get(part).is_some_and(|(stated, _)| *stated == mark)) {
            continue;
        }
        for part in parts {
            let (stated, origin) = first.entry(part).or_insert_with(|| (mark, &fitting.origin));
            if *stated != mark {
                let message =
                    format!("it is marked {}, and its {part} is marked {}", mark.words(), stated.words());
                let finding = on_fitting(Severity::Error, "marks-contradict", fitting, "mark", message)
                    .related(origin.of("mark"), "the other mark");
                findings.push(finding.help("state the mark once, on the part"));
            }
        }
    }
}
