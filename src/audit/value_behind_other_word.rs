#![doc = include_str!("../explain/codes/value-behind-other-word.md")]

use super::Context;
use super::inspected::on_wording;
use crate::catalogue::{PieceKind, Wording};
use crate::diagnostics::{Findings, Severity};

/// Names of values that are words of a text too. "Mark" is a thing to do as well, as in "Mark {insertion} on the wire".
const WORDS: [&str; 6] = ["insertion", "tail", "torque", "stamp", "tracer", "spanner"];
/// Values that none of those words belongs to but its own.
const VALUES: [&str; 14] = [
    "insertion",
    "tail",
    "torque",
    "mark",
    "stamp",
    "tracer",
    "spanner",
    "seated",
    "tensioned",
    "draw_in",
    "tension_max",
    "plan_height",
    "replace_height",
    "stop_height",
];

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    // The words are English.
    if !context.catalogue.settings.language.to_lowercase().starts_with("en") {
        return;
    }
    for fitting in context.catalogue.fittings.values() {
        for wording in fitting.wordings() {
            for (word, value, at) in at_odds(wording) {
                let message = format!("\u{201c}{word}\u{201d} stands before the value `{value}`");
                let finding =
                    on_wording(Severity::Warning, "value-behind-other-word", fitting, wording, at, message);
                findings.push(finding.help(format!("write `{{{word}}}`, or another word before it")));
            }
        }
    }
}

/// Word, value, and the letters before the value.
fn at_odds(wording: &Wording) -> Vec<(&'static str, &str, usize)> {
    let pieces = wording.pieces();
    let pairs = pieces.windows(2).filter_map(|pair| {
        let (PieceKind::Words(words), PieceKind::Value(value)) = (&pair[0].kind, &pair[1].kind) else {
            return None;
        };
        let named = value.split('.').next().unwrap_or(value);
        let last =
            words.strip_suffix([' ', '\u{a0}'])?.rsplit(|letter: char| !letter.is_alphanumeric()).next()?;
        let word = WORDS.into_iter().find(|word| last.eq_ignore_ascii_case(word))?;
        (word != named && VALUES.contains(&named)).then_some((word, *value, pair[1].at))
    });
    pairs.collect()
}
