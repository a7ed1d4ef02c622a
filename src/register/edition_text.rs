//! The text of an edition's file.

use super::copies::holders_now;
use super::refused::Asked;
use super::{Register, State};
use crate::catalogue::{CardIssue, Catalogue, IssuedText};
use crate::records::{AfterRecord, CardIssueRecord, GradeWord, sealed};
use serde::Serialize;
use std::collections::BTreeSet;
use std::fmt::Write;

/// The text of the file of the edition that is asked for: the same state gives the same bytes.
///
/// # Errors
/// Never with what records hold: strings and numbers can be written as JSON.
pub fn edition_text(
    register: &Register,
    catalogue: &Catalogue,
    next: &State,
    asked: &Asked,
) -> Result<String, serde_json::Error> {
    let mut text = String::from(
        "# An edition on the register, written by `fittingcards issue`. Nobody edits it: the next edition holds its\n\
         # hash, and a change is found out.\n",
    );
    let date = asked.date.to_string();
    let heading = [("edition", &asked.edition), ("date", &date), ("checked_by", &asked.checked_by)];
    let heading =
        heading.into_iter().chain([("approved_by", &asked.approved_by), ("because", &asked.because)]);
    for (key, value) in heading.filter(|(_, value)| !value.is_empty()) {
        let _ = writeln!(text, "{key}: {}", json(value)?);
    }
    if let Some(newest) = register.newest() {
        let after = AfterRecord { edition: newest.name.clone(), blake3: newest.hash.clone() };
        let _ = writeln!(text, "after: {}", json(&after)?);
    }
    let _ = writeln!(text, "notices: {}", json(&newly_cited(register, next))?);
    text.push_str("holders:\n");
    for holder in holders_now(catalogue) {
        let _ = writeln!(text, "- {}", json(&holder)?);
    }
    text.push_str("cards:\n");
    for (number, card) in next {
        let _ = writeln!(text, "- {}", json(&line(number, card))?);
    }
    text.push_str("prints:\n");
    for (number, card) in next.iter().filter(|(_, card)| card.since == asked.edition) {
        let _ = writeln!(text, "  {}:", json(number)?);
        for printed in card.texts.iter() {
            let _ = writeln!(text, "  - {}", json(&printed_line(printed))?);
        }
    }
    Ok(sealed(&text))
}

fn json(value: &impl Serialize) -> Result<String, serde_json::Error> {
    serde_json::to_string(value)
}

fn line(number: &str, card: &CardIssue) -> CardIssueRecord {
    CardIssueRecord {
        number: number.to_owned(),
        issue: card.issue,
        since: card.since.clone(),
        status: card.status,
        superseded_by: card.superseded_by.clone(),
        check_code: card.check_code.clone(),
    }
}

fn printed_line(printed: &IssuedText) -> (GradeWord, &str, &str, &[String]) {
    (GradeWord(printed.grade), &printed.name, &printed.text, &printed.about)
}

/// Notices that cards of the next edition cite and none of the newest does.
fn newly_cited(register: &Register, next: &State) -> Vec<String> {
    let cited = |state: &State| -> BTreeSet<String> {
        let texts = state.values().flat_map(|card| card.texts.iter());
        texts.filter(|text| text.name == "notice").map(|text| text.text.clone()).collect()
    };
    let before = register.newest().map(|newest| cited(&newest.cards)).unwrap_or_default();
    cited(next).difference(&before).cloned().collect()
}
