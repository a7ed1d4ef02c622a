#![doc = include_str!("../explain/codes/thread-of-no-part.md")]

use super::Context;
use super::inspected::{list, on_fitting};
use crate::catalogue::{Fitting, Part, Role};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Thread;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        // A part whose name has no thread can be the one that is tightened.
        let named: Option<Vec<(&Part, Thread)>> =
            closing(fitting).map(|part| Some((part, named(part)?))).collect();
        let Some(named) = named.filter(|named| !named.is_empty()) else { continue };
        for (nth, tightening) in fitting.tightening.iter().enumerate() {
            let Some(thread) = Thread::of(&tightening.thread) else { continue };
            if named.iter().any(|(_, has)| *has == thread) {
                continue;
            }
            let field = format!("tightening.{nth}.thread");
            let parts: Vec<String> =
                named.iter().map(|(part, _)| format!("{} {}", part.number, part.name)).collect();
            let message = "no part of the fitting has this thread by its name".to_owned();
            let mut finding = on_fitting(Severity::Warning, "thread-of-no-part", fitting, &field, message)
                .found(tightening.thread.trim())
                .expected(format!("that of {}", list(&parts)));
            for (part, _) in &named {
                finding = finding.related(part.origin.of("name"), "a part that is tightened");
            }
            findings.push(finding.help("compare thread and parts with the drawing"));
        }
    }
}

fn closing(fitting: &Fitting) -> impl Iterator<Item = &Part> {
    let parts = fitting.items.iter().map(|item| &*item.part);
    parts.filter(|part| matches!(part.role, Role::Screw | Role::Nut | Role::Bolt))
}

/// The thread in a part's name, such as that of "Bolt M10x45 with nut", whose second number is its length.
fn named(part: &Part) -> Option<Thread> {
    part.name.split_whitespace().find_map(Thread::of)
}
