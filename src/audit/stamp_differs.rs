#![doc = include_str!("../explain/codes/stamp-differs.md")]

use super::Context;
use super::inspected::{built, list, on_fitting};
use crate::catalogue::{Fitting, Part};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context).filter(|fitting| !fitting.stamp.is_empty()) {
        let seen: Vec<&Part> = seen(fitting).into_iter().filter(|part| !part.stamp.is_empty()).collect();
        if seen.is_empty() || seen.iter().any(|part| plain(&part.stamp) == plain(&fitting.stamp)) {
            continue;
        }
        let stamps: Vec<String> =
            seen.iter().map(|part| format!("\u{201c}{}\u{201d} ({})", part.stamp, part.number)).collect();
        let message = format!("its stamp is not the one on its parts: {}", list(&stamps));
        let mut finding = on_fitting(Severity::Warning, "stamp-differs", fitting, "stamp", message)
            .found(&*fitting.stamp)
            .help("read the stamp on the body itself: either record may be mistyped");
        for part in seen {
            finding = finding.related(part.origin.of("stamp"), "a stamp of its parts");
        }
        findings.push(finding);
    }
}

/// A stamp without its spaces: "ST 41" is "ST41", and not part of "ST 411".
fn plain(stamp: &str) -> String {
    stamp.split_whitespace().collect()
}

/// What is seen of the assembled fitting: its bodies, or all its parts where it has none.
fn seen(fitting: &Fitting) -> Vec<&Part> {
    let bodies: Vec<&Part> = fitting.bodies().map(|item| item.part.as_ref()).collect();
    if bodies.is_empty() { fitting.items.iter().map(|item| item.part.as_ref()).collect() } else { bodies }
}
