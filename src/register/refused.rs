//! What keeps an edition from being issued, each with its reason and what to do about it.

use super::{CardChange, Comparison, REISSUED, Register};
use crate::catalogue::Catalogue;
use crate::diagnostics::{Finding, Findings, nearest};
use crate::facts::CardFacts;
use crate::records::amiss_in_identifier;
use jiff::civil::Date;
use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

/// What `issue` is asked to put on the register.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked {
    /// The name of the edition.
    pub edition: String,
    /// Its date.
    pub date: Date,
    /// Who checked it.
    pub checked_by: String,
    /// Who approved it.
    pub approved_by: String,
    /// Numbers of cards that are issued again though nothing that they print has changed.
    pub reissue: Vec<String>,
    /// Why, and why cards change that no notice explains; empty where nothing is said.
    pub because: String,
}

/// Why what is asked for can't be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// The reason, in one sentence without a full stop.
    pub message: String,
    /// What to do about it.
    pub help: String,
}

fn refusal(message: impl Into<String>, help: impl Into<String>) -> Refusal {
    Refusal { message: message.into(), help: help.into() }
}

/// What is wrong with what is asked for, whatever the cards print.
#[must_use]
pub fn refusals<'f>(
    asked: &Asked,
    register: &Register,
    catalogue: &Catalogue,
    facts: impl Iterator<Item = &'f CardFacts> + Clone,
) -> Vec<Refusal> {
    let mut refusals = Vec::new();
    refusals.extend(wrong_name(asked, register, catalogue));
    if let Some(newest) = register.newest().filter(|newest| asked.date < newest.date) {
        refusals.push(refusal(
            format!(
                "the date {} is earlier than that of edition {}, {}",
                asked.date, newest.name, newest.date
            ),
            "give the day on which this edition is issued",
        ));
    }
    refusals.extend(wrong_people(asked));
    refusals.extend(wrong_reissue(asked, facts));
    refusals.extend(reason_printed_before(asked, register));
    refusals
}

fn wrong_name(asked: &Asked, register: &Register, catalogue: &Catalogue) -> Option<Refusal> {
    let name = &asked.edition;
    let same = |other: &str| other.eq_ignore_ascii_case(name);
    if let Some(wrong) = amiss_in_identifier(name) {
        let help = "1 to 40 of A–Z, a–z, 0–9, `.`, `_` and `-`, the first a letter or digit, such as 2026-2";
        return Some(refusal(format!("an edition can't be called \"{name}\": {wrong}"), help));
    }
    if let Some(edition) = register.editions().iter().find(|edition| same(&edition.name)) {
        let message = format!("edition {} has been on the register since {}", edition.name, edition.date);
        return Some(refusal(message, "an edition is never written again: choose the next name"));
    }
    let mut records = catalogue
        .fittings
        .keys()
        .chain(catalogue.parts.keys())
        .chain(catalogue.conductors.keys())
        .chain(catalogue.notices.keys())
        .chain(catalogue.holders.keys())
        .chain(catalogue.procedures.keys());
    let record =
        records.find(|record| same(record)).map(|id| format!("{id} is the number or id of a record"));
    // Those that are built in have no record.
    let material = || catalogue.materials.keys().find(|id| same(id));
    let taken = record.or_else(|| material().map(|id| format!("{id} is the id of a material")))?;
    Some(refusal(taken, "choose another name for the edition"))
}

fn wrong_people(asked: &Asked) -> Vec<Refusal> {
    let mut refusals = Vec::new();
    let texts = [
        ("--checked-by", &asked.checked_by, true),
        ("--approved-by", &asked.approved_by, true),
        ("--because", &asked.because, false),
    ];
    for (option, text, needed) in texts {
        if needed && text.is_empty() {
            refusals.push(refusal(format!("{option} is empty"), "give the name of a person"));
        }
        if text.chars().count() > LONGEST || text.chars().any(crate::diagnostics::is_hidden) {
            let message =
                format!("{option} is longer than {LONGEST} characters, or has some that can't be seen");
            refusals.push(refusal(message, "give one line of plain text"));
        }
    }
    for (option, name, _) in texts.iter().filter(|(_, _, is_name)| *is_name) {
        if mixes_scripts(name) {
            let message =
                format!("{option} mixes Latin letters with Greek or Cyrillic ones, which can look the same");
            refusals.push(refusal(message, "write the whole name in the letters of one script"));
        }
    }
    if !asked.checked_by.is_empty() && are_one(&asked.checked_by, &asked.approved_by) {
        refusals.push(refusal(
            format!("{} both checked and approved", asked.checked_by),
            "two people look at an edition: one checks it, another approves it. What stands behind a comma is read as a \
             post: write given names before the family name",
        ));
    }
    refusals
}

/// Whether two texts name one person: as a whole, or by what stands before the first comma. Behind it stands a post.
fn are_one(one: &str, other: &str) -> bool {
    let named = bare(before_comma(one));
    bare(one) == bare(other) || !named.is_empty() && named == bare(before_comma(other))
}

/// What stands before the first comma, that of another script too.
fn before_comma(text: &str) -> &str {
    text.split([',', '，', '、', '،']).next().unwrap_or(text)
}

/// A name without what is written in one way or another: capitals, blanks, full stops, accents as signs of their own.
fn bare(name: &str) -> String {
    let lower = name.nfkc().collect::<String>().to_lowercase();
    lower.nfkc().filter(|letter| letter.is_alphanumeric() || is_combining_mark(*letter)).collect()
}

/// Whether a name has Latin letters and Greek or Cyrillic ones (by their Unicode blocks). No person's name has both, and
/// many of them look the same.
fn mixes_scripts(name: &str) -> bool {
    let is_latin =
        |letter: char| letter.is_alphabetic() && matches!(letter, '\0'..='\u{24f}' | '\u{1e00}'..='\u{1eff}');
    let is_other = |letter: char| matches!(letter, '\u{370}'..='\u{52f}' | '\u{1f00}'..='\u{1fff}');
    name.contains(is_latin) && name.contains(is_other)
}

/// The most characters of a name or a reason: a reason is printed on the card.
const LONGEST: usize = 200;

fn wrong_reissue<'f>(asked: &Asked, facts: impl Iterator<Item = &'f CardFacts> + Clone) -> Vec<Refusal> {
    let mut refusals = Vec::new();
    if !asked.reissue.is_empty() && asked.because.is_empty() {
        let message = "a card is issued again and nothing says why";
        refusals.push(refusal(message, "say it with --because: the reason is printed on the card"));
    }
    let numbers = || facts.clone().map(|card| card.number.as_str());
    for number in asked.reissue.iter().filter(|number| !numbers().any(|known| known == *number)) {
        let help = match nearest(number, numbers()) {
            Some(near) => format!("did you mean {near}?"),
            None => "cards have the number of a fitting or of a shared body".to_owned(),
        };
        refusals.push(refusal(format!("there is no card {number} to be issued again"), help));
    }
    refusals
}

/// Reissues whose reason the card has printed before: its check code would be that of the card that was wrong.
fn reason_printed_before(asked: &Asked, register: &Register) -> Vec<Refusal> {
    let printed = |number: &&String| {
        let cards = register.editions().iter().filter_map(|edition| edition.cards.get(*number));
        let mut texts = cards.flat_map(|card| card.texts.iter());
        texts.any(|text| text.name == REISSUED && text.text == asked.because)
    };
    let again = asked.reissue.iter().filter(printed);
    let told = again.map(|number| {
        refusal(
            format!("card {number} was issued again before for this very reason"),
            "word it otherwise: the reason is all that tells the two cards and their check codes apart",
        )
    });
    told.collect()
}

/// Changes of grade safety that nothing explains, a finding a card.
#[must_use]
pub fn unexplained(comparison: &Comparison, catalogue: &Catalogue) -> Findings {
    let mut findings = Findings::new();
    findings.extend(
        comparison.changed().filter(|card| !card.explained).map(|card| unexplained_card(card, catalogue)),
    );
    findings
}

fn unexplained_card(card: &CardChange, catalogue: &Catalogue) -> Finding {
    let fitting = catalogue.fittings.get(&card.number).map(|fitting| fitting.origin.of("notices"));
    let part = || catalogue.parts.get(&card.number).map(|part| part.origin.place.clone());
    let place = fitting.or_else(part).unwrap_or_else(|| catalogue.settings.origin.place.clone());
    let safety = card
        .changes
        .iter()
        .filter(|change| change.grade == crate::catalogue::Grade::Safety && change.notices.is_empty());
    let words: Vec<String> = safety.map(super::Change::words).collect();
    let message = format!("no notice explains a change of card {} that decides safety", card.number);
    Finding::error("safety-change-unexplained", place, message)
        .record(&card.number)
        .field("notices")
        .found(shown(&words))
        .expected("a notice that its fitting, or a fitting that uses the changed part, did not cite before")
        .help("name the notice in the fitting's `notices`; where there is none, say why with --because")
}

/// The first few of several changes.
fn shown(words: &[String]) -> String {
    const MOST: usize = 3;
    let mut shown = words.iter().take(MOST).cloned().collect::<Vec<_>>().join("; ");
    if words.len() > MOST {
        shown.push_str(&format!("; and {} more", words.len() - MOST));
    }
    shown
}
