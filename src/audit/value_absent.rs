#![doc = include_str!("../explain/codes/value-absent.md")]

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
