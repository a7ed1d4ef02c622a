#![doc = include_str!("../explain/codes/unknown-value.md")]

use super::Context;
use super::plain_texts::plain_texts;
use crate::catalogue::{PieceKind, Wording, pieces};
use crate::diagnostics::{Finding, Findings, Severity, nearest};
use crate::facts::{Unnamed, VALUE_NAMES, Values};

const CODE: &str = "unknown-value";

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
    findings.extend(named_in_vain(context));
}

/// Texts that print their braces as they are and yet name a value in them: one finding each. Other braces are signs like
/// any other there.
fn named_in_vain(context: Context<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for plain in plain_texts(context.catalogue) {
        let named = pieces(plain.text).into_iter().find_map(|piece| match piece.kind {
            PieceKind::Value(name) if Values::default().get(name.trim()) != Err(Unnamed::Unknown) => {
                Some(format!("{{{name}}}"))
            }
            PieceKind::Value(_) | PieceKind::Unclosed(_) | PieceKind::Words(_) => None,
        });
        let finding = named.map(|named| {
            let message = "values have no place in this text, and its braces are printed as they are";
            plain.finding(Severity::Error, CODE, message).found(named)
        });
        found
            .extend(finding.map(|finding| finding.help("write out what the card shall say, without braces")));
    }
    found
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
    let finding = Finding::error(CODE, wording.place(at), message);
    finding.help(match nearest(name, VALUE_NAMES.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("the values are {}; `{{{{` is a brace", VALUE_NAMES.join(", ")),
    })
}

fn unclosed(wording: &Wording, at: usize) -> Finding {
    Finding::error(CODE, wording.place(at), "nothing closes this brace")
        .help("write `}` behind the name of the value, or `{{` for a brace")
}
