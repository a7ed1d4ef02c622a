#![doc = include_str!("../explain/codes/copies-not-issued.md")]

use super::Context;
use super::inspected::copies_in_words;
use crate::diagnostics::{Finding, Findings};
use crate::register::{self, HolderCopies, Register};

const HELP: &str =
    "write the next edition with `issue` before these are handed out: what no edition has is not called in";

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let register = Register::of(context.catalogue);
    let more = register::not_issued(&register, context.catalogue);
    for own in more.chunk_by(|one, next| one.holder == next.holder) {
        findings.extend(not_issued(context, own));
    }
}

fn not_issued(context: Context<'_>, more: &[HolderCopies]) -> Option<Finding> {
    let HolderCopies { holder, name, .. } = more.first()?;
    let origin = &context.catalogue.holders.get(holder)?.origin;
    let message = format!("{name} has more copies than by the newest edition");
    let finding = Finding::warning("copies-not-issued", origin.of("copies"), message).record(holder);
    Some(finding.field("copies").found(format!("beyond it: {}", copies_in_words(more))).help(HELP))
}
