//! `unknown-value`: a text names a value in braces that no fitting has.
//!
//! Why: the card would print the braces, and nobody would know what stands for them.
//!
//! To put it right: write one of the names that there are; `{{` is a brace.

use super::Context;
use super::inspected::{numerals, on_wording};
use crate::catalogue::{Fitting, PieceKind, Wording};
use crate::diagnostics::{Finding, Findings, Severity, nearest};
use crate::facts::{self, Unnamed, VALUE_NAMES};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let values = facts::values(fitting, numerals(context));
        for wording in fitting.wordings() {
            for piece in wording.pieces() {
                match piece.kind {
                    PieceKind::Value(name) if values.get(name) == Err(Unnamed::Unknown) => {
                        findings.push(unknown(fitting, wording, piece.at, name));
                    }
                    PieceKind::Unclosed(_) => findings.push(unclosed(fitting, wording, piece.at)),
                    PieceKind::Words(_) | PieceKind::Value(_) => {}
                }
            }
        }
    }
}

fn unknown(fitting: &Fitting, wording: &Wording, at: usize, name: &str) -> Finding {
    let message = format!("there is no value called `{name}`");
    let finding = on_wording(Severity::Error, "unknown-value", fitting, wording, at, message);
    finding.help(match nearest(name, VALUE_NAMES.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("the values are {}; `{{{{` is a brace", VALUE_NAMES.join(", ")),
    })
}

fn unclosed(fitting: &Fitting, wording: &Wording, at: usize) -> Finding {
    let message = "nothing closes this brace".to_owned();
    on_wording(Severity::Error, "unknown-value", fitting, wording, at, message)
        .help("write `}` behind the name of the value, or `{{` for a brace")
}
