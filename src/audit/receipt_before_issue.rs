#![doc = include_str!("../explain/codes/receipt-before-issue.md")]

use super::Context;
use crate::catalogue::{Holder, Receipt};
use crate::diagnostics::{Finding, Findings};
use crate::register::Register;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let register = Register::of(context.catalogue);
    for holder in context.catalogue.holders.values() {
        for (nth, receipt) in holder.receipts.iter().enumerate() {
            findings.extend(too_early(holder, nth, receipt, &register));
        }
    }
}

fn too_early(holder: &Holder, nth: usize, receipt: &Receipt, register: &Register) -> Option<Finding> {
    let (first, _) = register.issue(&receipt.card, receipt.issue)?;
    if receipt.date >= first.date {
        return None;
    }
    let (what, day, number, issue) = (receipt.what.word(), receipt.date, &receipt.card, receipt.issue);
    let message = format!(
        "{what} on {day}: {number} issue {issue} was first issued with edition {}, on {}",
        first.name, first.date
    );
    let field = format!("receipts.{nth}.date");
    let finding = Finding::warning("receipt-before-issue", holder.origin.of(&field), message);
    Some(finding.record(&holder.id).field(field).help("read the day and the issue on the receipt again"))
}
