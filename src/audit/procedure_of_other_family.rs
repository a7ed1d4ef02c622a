#![doc = include_str!("../explain/codes/procedure-of-other-family.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use crate::catalogue::{Family, Fitting, Role};
use crate::diagnostics::{Findings, Severity};
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let mut taken: BTreeMap<&str, Vec<&Fitting>> = BTreeMap::new();
    for fitting in built(context) {
        if let Some(procedure) = &fitting.procedure {
            taken.entry(&procedure.id).or_default().push(fitting);
        }
    }
    for (procedure, fittings) in taken {
        for fitting in fittings.iter().filter(|fitting| is_stranger(fitting, &fittings)) {
            let others = fittings.iter().filter(|other| kind(other) != kind(fitting));
            let others: Vec<&str> = others.map(|other| other.number.as_str()).collect();
            let message = format!("{procedure} is the procedure of another kind of fitting");
            let finding =
                on_fitting(Severity::Warning, "procedure-of-other-family", fitting, "procedure", message)
                    .found(format!("{procedure}, which {} take too", others.join(", ")));
            findings.push(finding.help("name a procedure of its own kind, or write one"));
        }
    }
}

/// Whether more fittings of another kind take the procedure than of its own; of as many, both are told.
fn is_stranger(fitting: &Fitting, all: &[&Fitting]) -> bool {
    let own = all.iter().filter(|other| kind(other) == kind(fitting)).count();
    let others = all.len() - own;
    others >= own && others > 0
}

/// What goes together alike: the family, and of cones whether they go into a socket.
fn kind(fitting: &Fitting) -> (Family, bool) {
    (fitting.family, fitting.items.iter().any(|item| item.part.role == Role::Socket))
}
