#![doc = include_str!("../explain/codes/notice-named-nowhere.md")]

use super::Context;
use crate::diagnostics::{Finding, Findings};
use std::collections::BTreeSet;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    // A fitting that is left out for a fault may name it.
    if !context.catalogue.left_out.is_empty() {
        return;
    }
    let fittings = context.catalogue.fittings.values();
    let named: BTreeSet<&str> =
        fittings.flat_map(|fitting| &fitting.notices).map(|notice| notice.number.as_str()).collect();
    let silent = context.catalogue.notices.values().filter(|notice| !named.contains(notice.number.as_str()));
    findings.extend(silent.map(|notice| {
        Finding::warning("notice-named-nowhere", notice.origin.place.clone(), "no fitting names this notice")
            .record(&notice.number)
            .help("name it in the `notices` of the fittings that it concerns")
    }));
}
