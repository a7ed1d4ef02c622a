#![doc = include_str!("../explain/codes/edition-behind.md")]

use super::Context;
use crate::diagnostics::{Finding, Findings};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let settings = &context.catalogue.settings;
    let Some((newest, earlier)) = context.catalogue.editions.split_last() else { return };
    let is_behind =
        newest.name != settings.edition && earlier.iter().any(|edition| edition.name == settings.edition);
    if is_behind {
        let message = format!(
            "the catalogue is of edition {}; the newest one on the register is {}",
            settings.edition, newest.name
        );
        let finding = Finding::warning("edition-behind", settings.origin.of("edition"), message);
        findings.push(
            finding.field("edition").help("write the newest edition here, or the next one that is prepared"),
        );
    }
}
