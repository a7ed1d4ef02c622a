//! The register: editions in a line, each holding the hash of the one before.

use super::model::{CardIssue, Edition, IssuedText};
use crate::diagnostics::{Finding, Findings};
use crate::records::{EditionRecord, IssuedTextRecord};
use crate::source::Place;
use std::collections::BTreeMap;
use std::sync::Arc;

/// The texts of each card by the edition that it has its issue from.
type Texts = BTreeMap<String, (String, Arc<[IssuedText]>)>;

/// The editions, the first one first, as far as each follows another; what is wrong is told.
pub(super) fn editions(records: Vec<EditionRecord>, findings: &mut Findings) -> Vec<Arc<Edition>> {
    findings.extend(records.iter().filter(|record| !record.sealed).map(edited));
    findings.extend(records.iter().filter_map(named_otherwise));
    let mut editions: Vec<Arc<Edition>> = Vec::with_capacity(records.len());
    let mut texts = Texts::new();
    let mut left = records;
    loop {
        let before = editions.last().map(|edition| edition.name.clone());
        let follows = |record: &EditionRecord| {
            record.after.as_ref().map(|after| after.edition.as_str()) == before.as_deref()
        };
        let Some(next) = left.iter().position(follows) else { break };
        let record = left.remove(next);
        findings.extend(editions.last().and_then(|before| edited_before(before, &record)));
        match edition(record, &mut texts) {
            Ok(edition) => editions.push(Arc::new(edition)),
            Err(finding) => {
                findings.push(*finding);
                break;
            }
        }
    }
    findings.extend(left.iter().map(out_of_line));
    editions
}

fn edition(record: EditionRecord, texts: &mut Texts) -> Result<Edition, Box<Finding>> {
    for prints in record.prints {
        let own = prints.texts.into_iter().map(text).collect();
        texts.insert(prints.number, (record.edition.clone(), own));
    }
    let place = Place::whole(record.file);
    let mut cards = Vec::with_capacity(record.cards.len());
    for card in record.cards {
        let Some((_, texts)) = texts.get(&card.number).filter(|(since, _)| *since == card.since) else {
            return Err(Box::new(without_texts(place, &card.number)));
        };
        let issue = CardIssue {
            issue: card.issue,
            since: card.since,
            status: card.status,
            superseded_by: card.superseded_by,
            check_code: card.check_code,
            texts: texts.clone(),
        };
        cards.push((card.number, issue));
    }
    Ok(Edition {
        name: record.edition,
        date: record.date,
        checked_by: record.checked_by,
        approved_by: record.approved_by,
        because: record.because,
        notices: record.notices,
        holders: record.holders,
        cards: cards.into_iter().collect(),
        hash: record.hash,
        place,
    })
}

fn text((grade, name, text, about): IssuedTextRecord) -> IssuedText {
    IssuedText { grade: grade.0, name, text, about }
}

const TAKE_BACK: &str = "nobody edits the register: take the file back from your version control or a backup";

fn edited(record: &EditionRecord) -> Finding {
    let message = format!("edition {} was changed after it was issued", record.edition);
    Finding::error("edition-edited", Place::whole(record.file.clone()), message)
        .expected("the text that its seal, the last line, was made of")
        .help(TAKE_BACK)
}

/// An edition whose file is not the one that the next was issued after.
fn edited_before(before: &Edition, record: &EditionRecord) -> Option<Finding> {
    let after = record.after.as_ref().filter(|after| after.blake3 != before.hash)?;
    let message =
        format!("edition {} was changed after edition {} was issued", after.edition, record.edition);
    Some(
        Finding::error("edition-edited", before.place.clone(), message)
            .found(format!("BLAKE3 {}", before.hash))
            .expected(format!("BLAKE3 {}", after.blake3))
            .help(TAKE_BACK)
            .related(Place::whole(record.file.clone()), "holds the hash that it had then"),
    )
}

fn named_otherwise(record: &EditionRecord) -> Option<Finding> {
    let name = format!("register/{}.yaml", record.edition);
    (*record.file.path != *name).then(|| {
        let message = format!("this file holds edition {}", record.edition);
        Finding::error("edition-out-of-line", Place::whole(record.file.clone()), message)
            .expected(format!("the file name {name}"))
            .help(TAKE_BACK)
    })
}

fn without_texts(place: Place, number: &str) -> Finding {
    let message = format!("nothing says what card {number} prints in the issue that it has here");
    Finding::error("edition-out-of-line", place, message).record(number).help(TAKE_BACK)
}

/// An edition that follows none, or the same one as another.
fn out_of_line(record: &EditionRecord) -> Finding {
    let message = format!("edition {} does not stand in one line with the others", record.edition);
    let found = match &record.after {
        Some(after) => format!("it follows edition {}", after.edition),
        None => "it follows no edition".to_owned(),
    };
    Finding::error("edition-out-of-line", Place::whole(record.file.clone()), message)
        .found(found)
        .expected("each edition follows the one before it, and only one follows each")
        .help(
            "if a file of the register is missing, take it back from your version control; if two people issued \
             at once, keep the edition that was handed out and issue the other again",
        )
}
