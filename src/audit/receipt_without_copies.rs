#![doc = include_str!("../explain/codes/receipt-without-copies.md")]

use super::Context;
use crate::catalogue::{Holder, Receipt};
use crate::diagnostics::{Finding, Findings};
use crate::register::{Register, copies_of_issue};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let register = Register::of(context.catalogue);
    for holder in context.catalogue.holders.values() {
        for (nth, receipt) in holder.receipts.iter().enumerate() {
            findings.extend(too_many(holder, nth, receipt, &register));
        }
    }
}

/// The finding at the receipt that makes them too many.
fn too_many(holder: &Holder, nth: usize, receipt: &Receipt, register: &Register) -> Option<Finding> {
    let of_the_same = |other: &&Receipt| other.card == receipt.card && other.issue == receipt.issue;
    let so_far: u32 = holder.receipts[..=nth].iter().filter(of_the_same).map(|receipt| receipt.copies).sum();
    let given = copies_of_issue(register, &holder.id, &receipt.card, receipt.issue);
    if so_far <= given {
        return None;
    }
    let field = format!("receipts.{nth}");
    let message = format!(
        "receipts account for {so_far} copies of {} issue {}; {given} were handed out",
        receipt.card, receipt.issue
    );
    Some(
        Finding::error("receipt-without-copies", holder.origin.of(&field), message)
            .record(&holder.id)
            .field(field)
            .help("compare number, issue and how many with what came back"),
    )
}
