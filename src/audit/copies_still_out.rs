#![doc = include_str!("../explain/codes/copies-still-out.md")]

use super::Context;
use crate::diagnostics::{Finding, Findings};
use crate::register::{self, Register, StillOut};

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

fn still_out(context: Context<'_>, out: &[StillOut]) -> Finding {
    const SHOWN: usize = 5;
    let StillOut { holder, name, .. } = &out[0];
    let copies = out.iter().take(SHOWN).map(|out| {
        let copies = &out.copies;
        format!("{} × {} issue {}", copies.copies, copies.number, copies.issue)
    });
    let mut shown = copies.collect::<Vec<_>>().join(", ");
    if out.len() > SHOWN {
        shown.push_str(&format!(", and {} more", out.len() - SHOWN));
    }
    let record = context.catalogue.holders.get(holder);
    let place = record.map_or(&context.catalogue.settings.origin.place, |holder| &holder.origin.place);
    let help = match record {
        Some(_) => "call them in; then say under `receipts` how many were returned, destroyed or lost",
        None => "put the holder's record back, with no copies, and say under `receipts` what became of these",
    };
    let message = format!("{name} has copies that are no longer good");
    Finding::warning("copies-still-out", place.clone(), message).record(holder).found(shown).help(help)
}
