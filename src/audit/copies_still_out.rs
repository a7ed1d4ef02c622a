#![doc = include_str!("../explain/codes/copies-still-out.md")]

use super::Context;
use super::inspected::copies_in_words;
use crate::diagnostics::{Finding, Findings};
use crate::register::{self, HolderCopies, Register};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let register = Register::of(context.catalogue);
    let out = register::still_out(&register, context.catalogue);
    // All of a holder's in one finding: a holder has hundreds of cards.
    for own in out.chunk_by(|one, next| one.holder == next.holder) {
        // What a holder has whose record is wrong is not known until it is put right.
        if !context.catalogue.left_out.contains(&own[0].holder) {
            findings.push(still_out(context, own));
        }
    }
}

fn still_out(context: Context<'_>, out: &[HolderCopies]) -> Finding {
    let HolderCopies { holder, name, .. } = &out[0];
    let record = context.catalogue.holders.get(holder);
    let place = record.map_or(&context.catalogue.settings.origin.place, |holder| &holder.origin.place);
    let help = match record {
        Some(_) => "call them in; then say under `receipts` how many were returned, destroyed or lost",
        None => "put the holder's record back, with no copies, and say under `receipts` what became of these",
    };
    let message = format!("{name} has copies that are no longer good");
    Finding::warning("copies-still-out", place.clone(), message)
        .record(holder)
        .found(copies_in_words(out))
        .help(help)
}
