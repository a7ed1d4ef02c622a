//! `value-absent`: a text names a value that its fitting does not have.
//!
//! Why: the sentence would have a hole where the crew looks for a torque, a length or a stamp.
//!
//! To put it right: state the value in the record of the fitting, its conductor or its parts, or take the name out of
//! the text. A procedure that several fittings share can name only what all of them have.

use super::Context;
use super::inspected::{numerals, on_wording};
use crate::catalogue::PieceKind;
use crate::diagnostics::{Findings, Severity};
use crate::facts::{self, Unnamed};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let values = facts::values(fitting, numerals(context));
        for wording in fitting.wordings() {
            for piece in wording.pieces() {
                let PieceKind::Value(name) = piece.kind else { continue };
                if values.get(name) != Err(Unnamed::Absent) {
                    continue;
                }
                let message = format!("the fitting has no value for `{name}`");
                let finding =
                    on_wording(Severity::Error, "value-absent", fitting, wording, piece.at, message);
                findings.push(finding.help(
                    "state it in the record of the fitting, its conductor or its parts, or take the name away",
                ));
            }
        }
    }
}
