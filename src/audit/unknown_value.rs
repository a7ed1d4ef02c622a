#![doc = include_str!("../explain/codes/unknown-value.md")]

use super::Context;
use crate::catalogue::{PieceKind, Wording};
use crate::diagnostics::{Finding, Findings, nearest};
use crate::facts::{Unnamed, VALUE_NAMES, Values};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let none = Values::default();
    for (record, wording) in wordings(context) {
        for piece in wording.pieces() {
            let found = match piece.kind {
                PieceKind::Value(name) if none.get(name) == Err(Unnamed::Unknown) => {
                    unknown(wording, piece.at, name)
                }
                PieceKind::Unclosed(_) => unclosed(wording, piece.at),
                PieceKind::Words(_) | PieceKind::Value(_) => continue,
            };
            findings.push(found.record(record).field(&wording.field));
        }
    }
}

/// Texts where they are stated, with the record that states them.
fn wordings<'a>(context: Context<'a>) -> impl Iterator<Item = (&'a str, &'a Wording)> {
    let fittings = context.catalogue.fittings.values().flat_map(|fitting| {
        let own = fitting.wordings().filter(|wording| fitting.procedure_of(wording).is_none());
        own.map(|wording| (fitting.number.as_str(), wording))
    });
    let procedures = context.catalogue.procedures.values();
    fittings.chain(
        procedures.flat_map(|procedure| procedure.wordings().map(|text| (procedure.id.as_str(), text))),
    )
}

fn unknown(wording: &Wording, at: usize, name: &str) -> Finding {
    let message = format!("there is no value called `{name}`");
    let finding = Finding::error("unknown-value", wording.place(at), message);
    finding.help(match nearest(name, VALUE_NAMES.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("the values are {}; `{{{{` is a brace", VALUE_NAMES.join(", ")),
    })
}

fn unclosed(wording: &Wording, at: usize) -> Finding {
    Finding::error("unknown-value", wording.place(at), "nothing closes this brace")
        .help("write `}` behind the name of the value, or `{{` for a brace")
}
