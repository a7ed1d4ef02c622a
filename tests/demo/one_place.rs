//! Each value of the demo stands in one record: where it is changed there, every text of the card that shows it shows the
//! new one, or a finding says which does not.

use crate::fixtures::{DEMO, root};
use fittingcards::audit::{self, Context};
use fittingcards::catalogue::{Fitting, Status, load};
use fittingcards::diagnostics::Findings;
use fittingcards::facts::{self, VALUE_NAMES};
use fittingcards::mixups;
use fittingcards::source::{FilePath, MemoryWorld};
use fittingcards::units::Numerals;
use std::collections::BTreeMap;

/// Files of the demo by their path.
type Files = BTreeMap<String, String>;

/// A value as its record states it, and what stands for it afterwards; both as a card prints them.
struct Change {
    record: String,
    was: String,
    is: String,
    printed: (String, String),
}

#[test]
fn a_value_that_is_changed_in_its_record_changes_everywhere_on_the_card() {
    let files = files();
    let (mut faults, mut changes) = (Vec::new(), 0);
    for fitting in DEMO.catalogue.fittings.values().filter(|fitting| fitting.status == Status::Current) {
        let before = printed(&files, &fitting.number);
        for change in of_fitting(&files, fitting) {
            changes += 1;
            let after = printed(&with(&files, &change), &fitting.number);
            let (was, is) = &change.printed;
            if !before.texts.iter().any(|text| says(text, was))
                || !after.texts.iter().any(|text| says(text, is))
            {
                faults.push(format!("{}: “{was}” or “{is}” is not printed", fitting.number));
            }
            let told =
                after.findings.sorted().iter().any(|finding| finding.code == "text-contradicts-record");
            // Another of its values may read the same.
            let stale =
                after.texts.iter().filter(|text| says(text, was) && !told && !after.values.contains(was));
            faults.extend(stale.map(|text| format!("{}: “{text}” still says “{was}”", fitting.number)));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(changes > 60, "{changes} values were changed");
}

/// The changes of a fitting's own values, of its gripping part's stamp and of its mark.
fn of_fitting(files: &Files, fitting: &Fitting) -> Vec<Change> {
    let mut changes = Vec::new();
    let number = &fitting.number;
    for (key, unit, new) in
        [("insertion_mm", "mm", "333.5"), ("tail_mm", "mm", "7.25"), ("line_tension_max_kN", "kN", "3.17")]
    {
        changes.extend(one(files, number, key, unit, new));
    }
    for key in ["seated_mm", "tensioned_mm"] {
        changes.extend(window(files, number, key, "mm"));
    }
    let procedure = fitting.procedure.as_ref().map(|procedure| &procedure.id);
    let torque = window(files, number, "torque_Nm", "N·m");
    changes.extend(torque.or_else(|| window(files, procedure?, "torque_Nm", "N·m")));
    let gripping = fitting.gripping().next().map(|item| item.part.number.clone());
    if let Some(part) = gripping {
        changes.extend(quoted(files, &part, "stamp: \"", "QX9 77.7"));
        changes.extend(quoted(files, &part, "text: \"", "QZ"));
    }
    changes
}

/// A key with one number.
fn one(files: &Files, record: &str, key: &str, unit: &str, new: &str) -> Option<Change> {
    let (_, rest) = document(files, record)?.split_once(&format!("\n{key}: "))?;
    let old = rest.split_whitespace().next()?;
    Some(Change {
        record: record.to_owned(),
        was: format!("{key}: {old}"),
        is: format!("{key}: {new}"),
        printed: (format!("{old} {unit}"), format!("{new} {unit}")),
    })
}

/// A key with least and most.
fn window(files: &Files, record: &str, key: &str, unit: &str) -> Option<Change> {
    let head = format!("{key}: {{ min: ");
    let (_, rest) = document(files, record)?.split_once(&head)?;
    let (least, rest) = rest.split_once(", max: ")?;
    let (most, _) = rest.split_once(" }")?;
    let old = if least == most { format!("{least} {unit}") } else { format!("{least} to {most} {unit}") };
    Some(Change {
        record: record.to_owned(),
        was: format!("{head}{least}, max: {most} }}"),
        is: format!("{head}1.25, max: 1.50 }}"),
        printed: (old, format!("1.25 to 1.50 {unit}")),
    })
}

/// A key with a text in quotes.
fn quoted(files: &Files, record: &str, head: &str, new: &str) -> Option<Change> {
    let (_, rest) = document(files, record)?.split_once(head)?;
    let (old, _) = rest.split_once('"')?;
    let (was, is) = (format!("{head}{old}\""), format!("{head}{new}\""));
    Some(Change { record: record.to_owned(), was, is, printed: (old.to_owned(), new.to_owned()) })
}

/// Whether a text has a phrase as words of their own.
fn says(text: &str, phrase: &str) -> bool {
    let text = text.replace('\u{a0}', " ");
    text.match_indices(phrase).any(|(at, _)| {
        let around = [text[..at].chars().next_back(), text[at + phrase.len()..].chars().next()];
        around.iter().flatten().all(|letter| !letter.is_alphanumeric() && *letter != '.' && *letter != '-')
            || text[at + phrase.len()..].starts_with(". ")
            || &text[at + phrase.len()..] == "."
    })
}

/// What a fitting's card comes to.
struct Printed {
    /// Its texts, but those of wrong parts.
    texts: Vec<String>,
    /// Its values, each in the form that is printed.
    values: Vec<String>,
    findings: Findings,
}

fn printed(files: &Files, number: &str) -> Printed {
    let world = files
        .iter()
        .fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::catalogue(path), text.as_str()));
    let loaded = load(&world).unwrap();
    let mixups = mixups::find(&loaded.catalogue);
    let findings = audit::check(Context { catalogue: &loaded.catalogue, mixups: &mixups });
    let cards = facts::of_catalogue(&loaded.catalogue, &mixups);
    let card = cards.iter().find(|card| card.number == number).unwrap();
    let own = card.printed().into_iter().filter(|text| !text.name.starts_with("not "));
    let values = facts::values(&loaded.catalogue.fittings[number], Numerals::default());
    let values = VALUE_NAMES.iter().filter_map(|name| values.get(name).ok());
    let values = values.map(|value| value.replace('\u{a0}', " ")).collect();
    Printed { texts: own.map(|text| text.text).collect(), values, findings }
}

/// The document that a record is stated in.
fn document<'a>(files: &'a Files, record: &str) -> Option<&'a str> {
    files.values().flat_map(|text| text.split("\n---\n")).find(|document| is_of(document, record))
}

fn is_of(document: &str, record: &str) -> bool {
    document.lines().any(|line| line == format!("number: {record}") || line == format!("id: {record}"))
}

fn with(files: &Files, change: &Change) -> Files {
    let changed = |text: &String| {
        let documents = text.split("\n---\n").map(|document| {
            if is_of(document, &change.record) {
                document.replace(&change.was, &change.is)
            } else {
                document.to_owned()
            }
        });
        documents.collect::<Vec<_>>().join("\n---\n")
    };
    files.iter().map(|(path, text)| (path.clone(), changed(text))).collect()
}

fn files() -> Files {
    let folder = root().join("content");
    let entries = walkdir::WalkDir::new(&folder).into_iter().map(|entry| entry.unwrap().into_path());
    let records = entries.filter(|path| path.extension().is_some_and(|end| end == "yaml"));
    let read = |path: std::path::PathBuf| {
        let name = path.strip_prefix(&folder).unwrap().to_string_lossy().replace('\\', "/");
        (name, std::fs::read_to_string(path).unwrap())
    };
    records.map(read).collect()
}
