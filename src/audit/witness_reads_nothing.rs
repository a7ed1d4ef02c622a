#![doc = include_str!("../explain/codes/witness-reads-nothing.md")]

use super::Context;
use super::inspected::on_wording;
use super::unseen::hidden;
use crate::catalogue::{Fitting, PieceKind, Wording};
use crate::diagnostics::{Findings, Severity};

/// Values that differ from fitting to fitting of one body.
const TELLING: [&str; 6] = ["mark", "stamp", "wires", "drum_tag", "tracer", "grooves"];
/// Words of a witness that says what is read without its name: the card has it.
const READ: [&str; 6] = ["mark", "marks", "stamp", "tag", "groove", "grooves"];

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let is_english = context.catalogue.settings.language.to_lowercase().starts_with("en");
    for (fitting, unseen) in hidden(context) {
        let Some(witness) = &fitting.witness else { continue };
        let is_unseen = unseen.iter().any(|unseen| !unseen.comes.mark_seen);
        if is_english && is_unseen && comes_too_late(&witness.text) {
            let message = "what the witness reads is out of sight by then".to_owned();
            let finding = on_wording(Severity::Error, "witness-reads-nothing", fitting, witness, 0, message)
                .found(&*witness.text)
                .expected("read by a second person before the fitting is closed");
            findings.push(finding.help("write `before closing`; nobody opens it again to look"));
            continue;
        }
        let of_body = names(witness, &["fitting_stamp"]);
        // In another language, only what is the same for every fitting of the body is sure to be nothing.
        let in_words = if is_english { !of_body && has_word(&witness.text) } else { !of_body };
        if in_words || names(witness, &TELLING) || states_one(fitting, &witness.text) {
            continue;
        }
        let message = "the witness reads nothing that a wrong part would change".to_owned();
        let finding = on_wording(Severity::Warning, "witness-reads-nothing", fitting, witness, 0, message)
            .found(&*witness.text)
            .expected("mark or stamp of the gripping part, a count of wires, or the drum tag");
        findings.push(finding.help("write what is read, such as `{mark}` and `{stamp}`"));
    }
}

/// Words for what comes before a thing is read, and for the end of closing.
const LATER: [&str; 3] = ["after", "once", "when"];
const CLOSED: [&str; 9] = [
    "closing",
    "closed",
    "assembly",
    "assembled",
    "tightening",
    "tightened",
    "tensioning",
    "tensioned",
    "pressing",
];

/// Whether a text has it read after closing, or by nobody.
fn comes_too_late(text: &str) -> bool {
    let text = text.to_lowercase();
    let words: Vec<&str> =
        text.split(|letter: char| !letter.is_alphabetic()).filter(|word| !word.is_empty()).collect();
    let later = |nth: usize| {
        LATER.contains(&words[nth]) && words[nth + 1..].iter().take(3).any(|word| CLOSED.contains(word))
    };
    let nobody = |three: &[&str]| three[0] == "no" && three[1] == "second" && three[2] == "person";
    !words.contains(&"before") && (0..words.len()).any(later) || words.windows(3).any(nobody)
}

fn names(witness: &Wording, values: &[&str]) -> bool {
    witness.pieces().iter().any(|piece| match piece.kind {
        PieceKind::Value(value) => values.contains(&value),
        PieceKind::Words(_) | PieceKind::Unclosed(_) => false,
    })
}

fn has_word(text: &str) -> bool {
    let mut words = text.split(|letter: char| !letter.is_alphabetic());
    words.any(|word| READ.contains(&word.to_lowercase().as_str()))
}

/// Whether a text has a mark, a stamp or a drum tag of the fitting, or a figure, as a count of wires has.
fn states_one(fitting: &Fitting, text: &str) -> bool {
    let parts = || fitting.gripping().map(|item| &item.part);
    let stamps = parts().map(|part| part.stamp.as_str());
    let marks =
        parts().filter_map(|part| part.mark.as_ref()).chain(&fitting.mark).map(|mark| mark.text.as_str());
    let tags = fitting.conductors.iter().map(|conductor| conductor.identity.drum_tag.as_str());
    let mut names = stamps.chain(marks).chain(tags).filter(|name| !name.is_empty());
    names.any(|name| text.contains(name)) || text.chars().any(char::is_numeric)
}
