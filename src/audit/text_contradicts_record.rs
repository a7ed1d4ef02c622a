#![doc = include_str!("../explain/codes/text-contradicts-record.md")]

use super::Context;
use super::contradicting_dies::dies;
use super::contradicting_figures::torques_and_loads;
use super::contradicting_names::names;
use super::contradicting_plain_texts::in_plain_texts;
use super::contradicting_wires::wires;
use super::fitting_texts::{notes_of_records, texts};
use super::known_names::known;
use super::known_parts::known_parts;
use super::stretch_of_text::{Contradiction, Stretch};
use super::words_of_text::words;
use crate::diagnostics::{Finding, Findings};
use crate::mixups::marks;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    findings.extend(in_plain_texts(context));
    let (marks, notes) = (marks(context.catalogue), notes_of_records(context.catalogue));
    let parts = known_parts(context.catalogue);
    let is_english = context.catalogue.settings.language.to_lowercase().starts_with("en");
    for fitting in context.catalogue.fittings.values() {
        let known = known(fitting, context, &marks);
        for text in texts(fitting, &notes) {
            for (at, letters) in text.stretches() {
                let words = words(letters);
                let stretch = Stretch { fitting, known: &known, text: &text, is_english, at, letters, words };
                let mut wrong = torques_and_loads(&stretch);
                wrong.extend(names(&stretch, &parts));
                if is_english {
                    wrong.extend(dies(&stretch));
                    wrong.extend(wires(&stretch));
                }
                findings.extend(wrong.into_iter().map(|wrong| finding(&stretch, wrong)));
            }
        }
    }
}

fn finding(stretch: &Stretch<'_>, wrong: Contradiction) -> Finding {
    let help = match wrong.value {
        value if wrong.is_of_wrong_part && stretch.text.tells_of_others() => format!(
            "write `{{{value}}}` where the fitting's own {value} is meant; to warn of another part's, say in the same sentence \
             that it is wrong"
        ),
        value if wrong.is_of_wrong_part => format!(
            "write `{{{value}}}` where the fitting's own {value} is meant; to warn of another part's, leave the sentence out: \
             the card names wrong parts by itself"
        ),
        "" => "correct the text, or say in the same sentence that it does not belong there".to_owned(),
        value => format!(
            "write the name of the value in braces, such as `{{{value}}}`, or correct the text or the record"
        ),
    };
    let at = stretch.at + wrong.at;
    let finding = stretch.text.finding(wrong.severity, "text-contradicts-record", at, &wrong.message);
    finding.found(wrong.found).help(help).related(wrong.place, wrong.is)
}
